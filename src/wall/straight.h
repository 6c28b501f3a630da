/*
 * The straight lines of a wall: the one place where a line is interpolated, a limit taken at a place, a rake told from
 * a gentle slope, an opening set on its floor, and marks held to be one. Every result is rounded once, to the nearest
 * nanometre, half away from zero, so that all who ask get the same.
 */
#ifndef WALL_STRAIGHT_H
#define WALL_STRAIGHT_H

#include "wall/wall.h"

/* y at x of the straight line through (x0, y0) and (x1, y1), also beyond them; y1 where x0 == x1. */
Length straight_at(Length x0, Length y0, Length x1, Length y1, Length x);

/* Steeper than 1 in 12: `run` (>= 0) along, `rise` up or down. An upright rise is, no rise at all is not. */
bool straight_is_rake(Length run, Length rise);

/* The floor, ceiling or side that `marks` (at least one) describe, at `at`: straight between marks, level beyond. At a
 * step: the side before it, or with `after` the one behind it. */
Length marks_off(const Marks *marks, Length at, bool after);

/* Lower and upper edge of an opening as measured, from the level line. One that goes down to the floor, or whose lower
 * edge was measured from it, goes by the floor straight below its left edge as written, without clear and margin (a
 * step there: on its right side). */
Length opening_foot(const Face *face, const Opening *opening);
Length opening_head(const Face *face, const Opening *opening);

/* Whether two lengths round to one mark of the wall: nobody can tell them apart on a tape. */
bool marks_alike(const Wall *wall, Length a, Length b);

#endif
