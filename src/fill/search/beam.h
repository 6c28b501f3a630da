/*
 * Covers one run from what the supply holds: a beam search over its pieces from left to right. A node is a row of
 * pieces that ends at some x; of each number of pieces the nodes of least waste are kept. A piece takes a whole span,
 * or as much of it as brings the joint to a place that the rules allow, or as much as leaves a rest that another span
 * fills or that is still of use. It first tries to break no rule and leave no wall bare; only where that finds nothing
 * may it do both, by their price in shortfall. Of other runs it knows only the joints beside this one.
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

/* What each piece costs besides its wood; 0 at first. */
void beam_use_piece_cost(Beam *beam, Length cost);

/* Covers `run`, which has no pieces, as well as `width` nodes a level can; `random` (may be NULL) draws other covers
 * that are nearly as good. Returns how much work it was: nodes looked at. */
int beam_cover(Beam *beam, int run, int width, Random *random);

#endif
