/*
 * Enumeration of small supplies: every set of boards that costs less than the incumbent is tried in turn, the cheapest
 * first: can the wall be covered from these boards alone? With few runs and studs backtracking decides it; elsewhere,
 * or where that gives up, the rows are covered several times in random orders, opening a board of the set for nothing,
 * which may miss a cover that exists. One that is found is complete. It knows nothing of how plans are reported.
 */
#ifndef FILL_SEARCH_ENUMERATION_H
#define FILL_SEARCH_ENUMERATION_H

#include "fill/search/beam.h"

typedef struct Enumeration Enumeration;

/* NULL where the supply is too large to enumerate, or has hung pieces. The solution must be the incumbent, or empty. */
Enumeration *enumeration_new(Arena *arena, Solution *solution, Beam *beam, Cost best);

/* One try: the wall is covered again. True when the enumeration is over; `found` says whether the solution is then
 * better than the incumbent was. */
bool enumeration_step(Enumeration *enumeration, int64_t *work, bool *found);

#endif
