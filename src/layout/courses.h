/*
 * A layout as data: courses with their bands, rips, segments and cutouts, face by face, and what was found on the way.
 *
 * All coordinates are wall coordinates of the face: x from its left end, y from the level line, whole nanometres,
 * rounded once from the exact value, half away from zero.
 */
#ifndef LAYOUT_COURSES_H
#define LAYOUT_COURSES_H

#include "base/wide.h"
#include "wall/finding.h"
#include "wall/wall.h"

typedef struct Point {
    Length x, y;
} Point;

typedef struct Points {
    Point *at;
    int count;
    int room;
} Points;

typedef struct Box {
    Length left, right, bottom, top;
} Box;

/* What an edge of a part is made by. */
typedef enum Edge {
    EDGE_BAND,    /* the plank's own straight edge: not cut */
    EDGE_FLOOR,   /* a gentle stretch of floor (its margin counted) */
    EDGE_CEILING, /* a gentle stretch of ceiling */
    EDGE_RAKE,    /* a stretch of floor or ceiling steeper than 1 in 12 */
    EDGE_OPENING  /* a grown opening */
} Edge;

/* One part of a slab that is left when the openings are taken out: a trapezoid between two straight edges. */
typedef struct Part {
    Length bottom_left, bottom_right; /* y of its lower edge at the slab's ends */
    Length top_left, top_right;
    Edge bottom_edge, top_edge;
    int bottom_opening, top_opening; /* index into the face's openings where the edge is EDGE_OPENING, else -1 */
} Part;

/* A stretch of a course over which every edge is one straight line and no opening begins or ends. The slabs of a course
 * tile its extent from left to right wherever the course has height; leaning sides are not in it (they cut the outline
 * only). */
typedef struct Slab {
    Length left, right;
    Length lower_left, lower_right; /* max(band bottom, lower(x)) at its ends */
    Length upper_left, upper_right; /* min(band top, upper(x)) */
    Edge lower_edge, upper_edge;
    Part *parts; /* bottom to top; none where openings take the whole height */
    int part_count;
} Slab;

typedef enum RipShape { RIP_FULL, RIP_STRAIGHT, RIP_TAPER, RIP_SCRIBE } RipShape;

/* Where the width changes its run: the width at x, from the left end to the right end. Two at one x are a step. */
typedef struct RipPoint {
    Length x, width;
} RipPoint;

typedef struct Rip {
    RipShape shape;
    Length left, right; /* width(x) at the course's leftmost and rightmost x */
    Length least, most; /* over all its x outside rakes; where all is rake: over all its x */
    RipPoint *points;   /* at least two */
    int point_count;
    bool lower_cut; /* floor cuts the lower edge somewhere */
    bool upper_cut; /* ceiling cuts the upper edge somewhere */
} Rip;

/* What a segment ends at. */
typedef enum SegmentEnd {
    SEGMENT_AT_LIMIT, /* floor or ceiling runs it out to nothing */
    SEGMENT_AT_SIDE,
    SEGMENT_AT_OPENING
} SegmentEnd;

/* A longest stretch of x at every inner point of which some wood is left. */
typedef struct Segment {
    Length left, right;
    SegmentEnd left_end, right_end;
    Length left_kerf, right_kerf; /* what the blade takes at its ends: more than the saw's kerf where they are slanted
                                     or mitered */
    int slab_first, slab_count;   /* the course's slabs that it spans */
} Segment;

/* A grown opening that touches a course's region, whole (not clipped). */
typedef struct Cut {
    int opening; /* index into the face's openings */
    Box box;
} Cut;

typedef struct Course {
    int64_t number;     /* 0 is the reference course */
    Length bottom, top; /* band of the face; a measured edge moves them */
    Length width;       /* full width of its planks, lap counted */
    Length left, right; /* leftmost and rightmost x of its region */
    Rip rip;
    Slab *slabs;
    int slab_count;
    Segment *segments;
    int segment_count;
    Cut *cuts;
    int cut_count;
} Course;

typedef struct FaceLayout {
    Course *courses; /* bottom to top */
    int course_count;
    Points lower, upper; /* the limits with their margins, over x: left to right */
    Points left, right;  /* the side limits with margins and corner, over y: bottom to top */
    Box *openings;    /* grown, one for each opening of the face; those that reach below the floor go down beyond every
                         course */
    Wide area;        /* nm2: courses' regions less the grown openings, before bare stretches */
    LengthList studs; /* centres on the face, rising */
} FaceLayout;

/* The narrowest strip of all, or of one place. */
typedef struct Strip {
    bool found;
    Length width;
    int face;
    int64_t course;
    Length at;     /* x */
    int opening;   /* index, or -1 */
    bool at_floor; /* where opening is -1: bounded by the floor, else by the ceiling */
} Strip;

typedef struct Layout {
    const Wall *wall;
    FaceLayout *faces;                /* wall->faces.count */
    Strip least;                      /* over every face; of equal ones the first by face, course from the bottom, x */
    Strip least_floor, least_ceiling; /* narrowest strip bounded by a floor; by a ceiling */
    Findings findings;                /* sliver, crossing, corner, reference, leave; in no order */
    int course_total;
} Layout;

/* Index of course `number` on the face, or -1. */
int layout_course_index(const FaceLayout *face, int64_t number);

#endif
