/*
 * Prices for lengths of piece, joints on studs: the duals of the linear relaxation in which runs over one another are,
 * two by two, a mixture of pairs of ways from stud to stud that keep their stagger, and every board a mixture of
 * cutting patterns, which must supply the pieces that the ways ask for. Solved by column generation (P. C. Gilmore, R.
 * E. Gomory, Operations Research 9, 1961): patterns by an unbounded knapsack, ways by shortest paths (ways.h), over a
 * revised simplex method in fixed point, so that every machine takes the same turns. The prices guide the search; as a
 * bound they count only through price_bound, which is exact whatever they are.
 */
#ifndef FILL_RELAX_PRICE_H
#define FILL_RELAX_PRICE_H

#include "fill/worth.h"

typedef struct Price Price;

/* NULL where the wall or its numbers are too large for the table, or some run has no way from stud to stud. */
Price *price_new(Arena *arena, const Demand *demand, const Pile *pile);

/* One pivot or one round of new columns; adds its work to `work`. True when there is nothing left to do. */
bool price_once(Price *price, int64_t *work);

/* The sizes and the prices of now (nm), in the price's own memory. */
const Sizes *price_sizes(const Price *price);
const int64_t *price_prices(const Price *price);

/* The least length of boards that any plan must open which keeps the rules and leaves nothing bare, proved: the
 * Lagrangian bound at these prices, in whole numbers, hung boards counted. */
Length price_bound(const Price *price);

#endif
