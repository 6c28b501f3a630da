/*
 * Backtracking over a small wall with joints on studs: can these boards alone cover every run and keep every rule? Runs
 * are covered in order, pieces from left to right, the longest first, each cut from the span that it leaves least of. A
 * branch ends where what is left of the boards is shorter than what is left of the wall. It knows nothing of what
 * boards cost.
 */
#ifndef FILL_SEARCH_BACKTRACKING_H
#define FILL_SEARCH_BACKTRACKING_H

#include "fill/solution.h"

typedef enum BacktrackingEnd {
    BACKTRACKING_FOUND, /* the solution is laid */
    BACKTRACKING_NONE,  /* there is no such cover */
    BACKTRACKING_LEFT   /* given up after so many nodes */
} BacktrackingEnd;

typedef struct Backtracking Backtracking;

/* NULL where joints may stand anywhere, or there are too many runs or studs. */
Backtracking *backtracking_new(Arena *arena, Solution *solution);

/* Tries the boards whose bits are set; the solution must be empty. Adds to `work` what was done, one for each node. */
BacktrackingEnd backtracking_cover(Backtracking *backtracking, uint32_t boards, int nodes_most, int64_t *work);

#endif
