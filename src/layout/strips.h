/*
 * Strips: the thin parts that floors, ceilings and openings leave of a course, as datumrow(5) has them. Knows nothing
 * of how a sliver is told.
 */
#ifndef LAYOUT_STRIPS_H
#define LAYOUT_STRIPS_H

#include "layout/courses.h"

/* A stretch of one course along which a strip is thinner than it should be, bounded alike all along. */
typedef struct Sliver {
    Length left, right;
    Length least; /* the narrowest of it */
    Edge bottom_edge, top_edge;
    int bottom_opening, top_opening; /* index, or -1 */
} Sliver;

typedef struct Slivers {
    Sliver *at;
    int count;
    int room;
} Slivers;

/* Takes the course's strips into the narrowest of `layout`. Courses come by face, then bottom to top. */
void strips_weigh(Layout *layout, int face, const Course *course);

/* The course's strips below `least`, by where they begin. */
Slivers strips_thin(Arena *arena, const Course *course, Length least);

#endif
