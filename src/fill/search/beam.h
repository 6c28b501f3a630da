/*
 * One run laid anew from what the pile holds: a beam search over its pieces from left to right (a label is a row of
 * pieces that ends at some x; of each number of pieces the labels of least waste are kept), where a piece takes a whole
 * span, or as much of it as brings the joint to a place that the rules allow, or as much as leaves a rest that another
 * span fills or that is still of use. First without breaking a rule or leaving wood bare; only where that finds
 * nothing, with both, by their price in shortfall. It knows nothing of other runs than the joints beside it.
 */
#ifndef FILL_SEARCH_BEAM_H
#define FILL_SEARCH_BEAM_H

#include "base/random.h"
#include "fill/salvage.h"
#include "fill/solution.h"

typedef struct Beam Beam;

Beam *beam_new(Arena *arena, Solution *solution);

/* Prices of pieces by their size, with joints on studs; NULL: their length. Both must live on. */
void beam_use_prices(Beam *beam, const Sizes *sizes, const int64_t *prices);

/* Lays `run`, which has no pieces, as well as `beam` labels a level find; `random` (may be NULL) draws other ways that
 * are nearly as good. Returns how much work it was: labels looked at. */
int beam_cover(Beam *beam, int run, int width, Random *random);

#endif
