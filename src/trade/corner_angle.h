/*
 * What a corner that is not square in plan asks of the saw. A 3-4-5 square laid into it, or round it, stands off by
 * `off` at the end of its longer arm; the corner, measured through the room inside and through the wall outside, is
 * wider than square by the angle whose tangent is off / arm, or narrower:
 *
 *          |  /                     |         tan d = off / arm
 *       arm|_/ off, above 0     arm |\ off, below 0
 *          |/____                   |_\___
 *
 * A miter halves the corner: off square it is 45 degrees less d / 2, and tan(d / 2) = off / (root + arm), root the
 * square root of off^2 + arm^2. Lengths are rounded to the nearest nanometre.
 */
#ifndef TRADE_CORNER_ANGLE_H
#define TRADE_CORNER_ANGLE_H

#include "wall/wall.h"

typedef struct CornerAngle {
    Length off, arm;
} CornerAngle;

CornerAngle corner_angle(const Wall *wall, const Corner *corner);

/* How far a square cut through `thickness` stands open at one of its edges. */
Length corner_square_open(CornerAngle angle, Length thickness);

/* How much shorter the back of a mitered end is than its front. */
Length corner_miter_back(CornerAngle angle, Length thickness);

/* How far two ends cut at 45 degrees stand open at the front (narrower) or at the back (wider). */
Length corner_miter_open(CornerAngle angle, Length thickness);

/* "1.2": how many degrees the corner is off square; "44.4": how far off square the saw is set for a miter. */
const char *corner_degrees(Arena *arena, CornerAngle angle);
const char *corner_miter_degrees(Arena *arena, CornerAngle angle);

#endif
