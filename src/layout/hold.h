/*
 * What holds a piece that is fastened to studs. Knows nothing of plans.
 *
 *          stud         stud         stud
 *     |=====|============|============|==|        the last stud is too near to the right end: it holds nothing,
 *     <left>                          <  >        unless a joint stands on it, as at the ends of two pieces
 */
#ifndef LAYOUT_HOLD_H
#define LAYOUT_HOLD_H

#include "wall/wall.h"

/* Common practice: a fastener nearer to an end splits it, unless the joint itself stands on the stud; and wood that
 * stands out further from what holds it moves. */
#define STUD_END_LEAST (LENGTH_INCH * 3 / 4)
#define OVERHANG_MOST (16 * LENGTH_INCH)

/* From where to where the piece reaches, and whether another goes on at that end. */
typedef struct HoldSpan {
    Length left, right;
    bool left_joint, right_joint;
} HoldSpan;

/* Studs behind it that are far enough from its ends, or that a joint at an end stands on. */
typedef struct Hold {
    int studs;
    Length left, right; /* how far it stands out beyond the first and the last of them; 0 where there is none */
} Hold;

/* `studs` are centers, rising. */
Hold hold_of(const LengthList *studs, const HoldSpan *span);

/* Whether it can turn or move: fewer than two studs hold it, or an end stands out further than OVERHANG_MOST. */
bool hold_is_loose(const Hold *hold);

/* How many of the rising centers lie from `left` to `right`, ends included. */
int studs_between(const LengthList *studs, Length left, Length right);

#endif
