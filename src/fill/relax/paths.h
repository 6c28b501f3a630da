/*
 * Paths of runs from stud to stud, by prices of pieces: the cheapest of one run, and the cheapest two of runs that lie
 * over one another, whose joints keep their stagger. Shortest paths over places, which are a run's left end (0), its
 * studs, and its right end. It knows nothing of boards beyond the longest.
 */
#ifndef FILL_RELAX_PATHS_H
#define FILL_RELAX_PATHS_H

#include "fill/salvage.h"

typedef struct Paths Paths;

#define PATHS_CLOSED (10000 * LENGTH_MM) /* what a joint at a closed place costs */

/* For runs of up to so many studs. */
Paths *paths_new(Arena *arena, const Demand *demand, const Sizes *sizes, Length longest, int studs);

/* x of a place of the run. */
Length paths_place(const Run *run, int place);

/* The least price; -1 where there is no path. `prices` are those of the sizes, none below 0; `closed` (NULL: none)
 * tells of each place whether a joint there is to be avoided. */
int64_t paths_cheapest(Paths *paths, const Run *run, const int64_t *duals, const bool *closed);

/* Likewise, of the paths that leave one to a run with the same ends and studs above it or below. */
int64_t paths_cheapest_beside(Paths *paths, const Run *run, const int64_t *duals, const bool *closed);

/* Likewise of both together: the run itself, and such a one above it. */
int64_t paths_cheapest_pair(Paths *paths, const Run *run, const int64_t *duals, const bool *closed,
                            const bool *closed_above);

/* The work of either of these at the most, in steps from place to place; -1 where the run has too many studs for them.
 */
int64_t paths_work_of_pair(Paths *paths, const Run *run);

/* Steps from place to place since the last call. */
int64_t paths_take_work(Paths *paths);

/* What was found last, of the run or of the one above: the places at which its pieces end, from the right end on; the
 * last begins at place 0. Lives until the next call. */
const int *paths_found(Paths *paths, bool above, int *count);

#endif
