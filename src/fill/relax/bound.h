/*
 * The least length of boards that any plan must open, proved in whole numbers. Two bounds, the larger counts:
 *
 * Covering: every piece takes its length and a kerf of a span, whose length and a kerf is all there is, so the spans of
 * the boards opened, a kerf more each, reach the length of all runs and a kerf for each piece that there must be; and
 * without kerfs their lengths reach the length of all runs. The cheapest boards that do are an exact knapsack.
 *
 * Studs: the Lagrangian bound at the prices of the relaxation (price.h).
 *
 * Both are rounded up to what boards of these lengths can add up to, as far as their greatest common measure tells.
 * Where a plan breaks rules or leaves wall bare, the covering bound of the length that it covers.
 */
#ifndef FILL_RELAX_BOUND_H
#define FILL_RELAX_BOUND_H

#include "fill/solution.h"

typedef struct Bound {
    Length length;
    int boards;
} Bound;

/* For plans that keep every rule and leave nothing bare; `priced` is the bound by prices, 0 where there is none. */
Bound bound_whole(const Demand *demand, const Supply *supply, Length priced);

/* For plans that cover so much of the runs. */
Bound bound_covered(const Demand *demand, const Supply *supply, Length covered);

#endif
