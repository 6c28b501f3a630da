/*
 * The hand method, as one would do it at the wall: row by row in hanging order, the last offcut first, then whole
 * boards in the order of the stock, each as long as the rules let it be, the last piece of a row cut to fit. The
 * yardstick of tests and benchmark, and a plan that the search starts from where it is the better one. It looks no
 * further than the piece in hand.
 */
#ifndef FILL_SEARCH_HAND_H
#define FILL_SEARCH_HAND_H

#include "fill/solution.h"

/* Covers every run of a wall that has no pieces yet. */
void hand_cover(Arena *arena, Solution *solution);

#endif
