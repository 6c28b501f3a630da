/*
 * Small piles, sought through: every choice of boards that costs less than the best plan is tried in turn, the cheapest
 * first, whether the wall can be covered from those boards alone. The rows are woven anew several times in drawn
 * orders, opening a board of the choice costing nothing. What is not found this way may still exist; what is found is
 * whole. It knows nothing of how plans are told.
 */
#ifndef FILL_SEARCH_FEW_H
#define FILL_SEARCH_FEW_H

#include "fill/search/weave.h"

typedef struct Few Few;

/* NULL where the pile is too large to be sought through, or has hung pieces. What is laid must be the best plan, or
 * nothing. */
Few *few_new(Arena *arena, Laid *laid, Weave *weave, Cost best);

/* One try: the wall is laid anew. True when the search is over; `found` tells whether what is laid then is better than
 * the best was. */
bool few_once(Few *few, int64_t *work, bool *found);

#endif
