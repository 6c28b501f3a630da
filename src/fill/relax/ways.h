/*
 * Ways of runs from stud to stud, by prices of pieces: the cheapest of one run, and the cheapest two of runs that lie
 * over one another, whose joints keep their stagger. Shortest paths over places, which are a run's left end (0), its
 * studs, and its right end. It knows nothing of boards beyond the longest.
 */
#ifndef FILL_RELAX_WAYS_H
#define FILL_RELAX_WAYS_H

#include "fill/worth.h"

typedef struct Ways Ways;

#define WAYS_CLOSED (10000 * LENGTH_MM) /* what a joint at a closed place costs */

/* For runs of up to so many studs. */
Ways *ways_new(Arena *arena, const Demand *demand, const Sizes *sizes, Length longest, int studs);

/* x of a place of the run. */
Length ways_place(const Demand *demand, const Run *run, int place);

/* The least price; -1 where there is no way. `prices` are those of the sizes, none below 0; `closed` (NULL: none) tells
 * of each place whether a joint there is to be avoided. */
int64_t ways_one(Ways *ways, const Run *run, const int64_t *prices, const bool *closed);

/* Likewise, of the ways that leave one to a run with the same ends and studs above it or below. */
int64_t ways_beside(Ways *ways, const Run *run, const int64_t *prices, const bool *closed);

/* Likewise of both together: the run itself, and such a one above it. */
int64_t ways_two(Ways *ways, const Run *run, const int64_t *prices, const bool *closed, const bool *closed_above);

/* Whether ways_beside and ways_two may be asked for: a run of very many studs takes too much room. */
bool ways_has_two(const Ways *ways);

/* What was found last, of the run or of the one above: the places at which its pieces end, from the right end on; the
 * last begins at place 0. Lives until the next call. */
const int *ways_found(Ways *ways, bool above, int *count);

#endif
