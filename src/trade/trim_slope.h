/*
 * Strips that follow a slope: how much longer one gets by its slanted ends, and how high it stands. Corners and rakes
 * use it for their degrees. A slope is `up` over `along`, along above 0. Whatever must suffice is rounded up.
 *
 *              /|      plumb ends: both edges are as long as the slope; the blank is longer by
 *             / |      width x tangent
 *            /  /
 *           |  / |
 *           | /  | upright: width over cosine
 *           |/
 */
#ifndef TRADE_TRIM_SLOPE_H
#define TRADE_TRIM_SLOPE_H

#include "base/arena.h"
#include "wall/wall.h"

typedef struct Slope {
    Length along, up;
} Slope;

/* Whole length of a slanted line, rounded up. */
Length slanted(Length along, Length up);

/* Width x tangent of the slope, below 0 where it falls; rounded away from 0. */
Length slope_tangent(Length width, Slope slope);

/* Width over cosine: what a strip on the slope measures along a plumb line; rounded up. */
Length slope_upright(Length width, Slope slope);

/* How far along `from` the edge at `width` to its left (up for a level strip) ends beyond the edge on the line, where
 * the strip is mitered to one that goes on along `to`; below 0 where it ends before. Rounded away from 0. */
Length slope_miter(Length width, Slope from, Slope to);

/* "45", "33.7": degrees of an end that slants by `shift` over `width`, off square. */
const char *slope_degrees(Arena *arena, Length shift, Length width);

#endif
