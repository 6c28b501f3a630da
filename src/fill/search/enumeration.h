/*
 * Small piles, sought through: every choice of boards that costs less than the best plan is tried in turn, the cheapest
 * first, whether the wall can be covered from those boards alone. The rows are woven anew several times in drawn
 * orders, opening a board of the choice costing nothing. What is not found this way may still exist; what is found is
 * whole. It knows nothing of how plans are told.
 */
#ifndef FILL_SEARCH_ENUMERATION_H
#define FILL_SEARCH_ENUMERATION_H

#include "fill/search/beam.h"

typedef struct Enumeration Enumeration;

/* NULL where the pile is too large to be sought through, or has hung pieces. What is laid must be the best plan, or
 * nothing. */
Enumeration *enumeration_new(Arena *arena, Solution *solution, Beam *beam, Cost best);

/* One try: the wall is laid anew. True when the search is over; `found` tells whether what is laid then is better than
 * the best was. */
bool enumeration_step(Enumeration *enumeration, int64_t *work, bool *found);

#endif
