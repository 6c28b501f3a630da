/*
 * The linear relaxation, joints on studs: runs over one another take, two by two, a mixture of pairs of paths from stud
 * to stud that keep their stagger, and every board a mixture of cutting patterns, which must supply the pieces that the
 * paths ask for. It is solved by column generation (P. C. Gilmore, R. E. Gomory, Operations Research 9, 1961): patterns
 * by an unbounded knapsack, paths as shortest paths (paths.h), over a revised simplex method in fixed point, so that
 * every machine makes the same pivots. Its duals are prices for lengths of piece and guide the search; as a bound they
 * count only through relaxation_bound, which is exact whatever they are.
 */
#ifndef FILL_RELAX_RELAXATION_H
#define FILL_RELAX_RELAXATION_H

#include "fill/relax/table.h"

/* NULL where the wall or its numbers are too large for the table, or some run has no path from stud to stud. */
Relaxation *relaxation_new(Arena *arena, const Demand *demand, const Supply *supply);

/* One pivot or one round of new columns; adds its work to `work`. True when there is nothing left to do. */
bool relaxation_step(Relaxation *relaxation, int64_t *work);

/* The sizes and the prices of now (nm), in the price's own memory. */
const Sizes *relaxation_sizes(const Relaxation *relaxation);
const int64_t *relaxation_duals(const Relaxation *relaxation);

/* The least length of boards that any plan must open which keeps the rules and leaves nothing bare, proved: the
 * Lagrangian bound at these prices, in whole numbers, hung boards counted. */
Length relaxation_bound(const Relaxation *relaxation);

#endif
