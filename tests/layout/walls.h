/*
 * Random walls for the properties that every layout must have: all kinds of limits, sides, corners, openings and width
 * lists, also such as no house has. The same seed gives the same wall.
 */
#ifndef TESTS_LAYOUT_WALLS_H
#define TESTS_LAYOUT_WALLS_H

#include "base/random.h"
#include "wall/wall.h"

Wall *walls_random(Arena *arena, uint64_t seed);

/* How many walls a test looks at: the environment's DATUMROW_WALLS, or `usual`. */
int walls_count(int usual);

#endif
