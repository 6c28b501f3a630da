/*
 * The straight edges that courses are cut by, and their exact crossings. For the sources of layout alone. A rail is an
 * edge with y over x; a place is an x that may lie between two nanometres, held as a ratio until it is rounded once.
 * Knows nothing of courses.
 */
#ifndef LAYOUT_LIMITS_H
#define LAYOUT_LIMITS_H

#include "layout/courses.h"

/* Beyond every coordinate of a wall. */
#define LAYOUT_FAR (4 * LENGTH_MOST)

typedef struct Rail {
    Length x0, y0, x1, y1; /* x0 < x1; y0 == y1 where it is level */
    Edge edge;
    int opening; /* index where `edge` is EDGE_OPENING, else -1 */
    bool side;   /* a stretch of a leaning side: `edge` does not count */
} Rail;

typedef struct Rails {
    Rail *at;
    int count;
    int room;
} Rails;

typedef struct ExactPlace {
    Wide over, under; /* x exactly, under > 0 */
    Length x;         /* x rounded, half away from zero */
    Length y;         /* of the crossing that it is, where it is one */
    const Rail *one, *two;
} ExactPlace;

ExactPlace place_at(Length x);

/* Sign of a - b, exactly. */
int place_compare(const ExactPlace *a, const ExactPlace *b);

/* y of the rail at the place, rounded once. Where a third slanted rail is asked for at the crossing of two, it is taken
 * at the rounded x. */
Length rail_at(const Rail *rail, const ExactPlace *place);

/* The crossing of two rails within the stretch that both have; false where there is none, or where they run alongside.
 */
bool rails_cross(const Rail *a, const Rail *b, ExactPlace *place);

/* The stretches of a limit over x (level beyond its ends) that have some part above `above`, or with `upper` below it,
 * and meet left..right: what can cut a course whose edge is at that height. */
Rails limit_rails(Arena *arena, const Points *limit, bool upper, Length cut, Length left, Length right);

/* Lowest and highest values of a limit between two ends of its run (x for floor and ceiling, y for sides), to the
 * nanometre outwards. `by_y` for a side. A step at either end counts only with its inner value. */
void limit_range(const Points *limit, bool by_y, Length from, Length to, Length *lowest, Length *highest);

#endif
