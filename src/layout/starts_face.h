/*
 * One face made ready for weighing start heights: its free height in columns that no start changes, so that the strips
 * which one start leaves can be found without laying out the courses that nothing cuts. For starts*.c alone; it knows
 * nothing of courses, ranks and reasons.
 *
 * A face falls into columns between all x at which the order of what bounds it may change: marks of floor and ceiling,
 * sides of openings, places where a limit crosses an opening's edge or the other limit. Within a column the free height
 * is a few gaps, each between two straight edges:
 *
 *      upper ____-----~~~~~       ^ gap 1: from the opening's top to the ceiling
 *      +---------+                |
 *      | opening |
 *      +---------+                ^ gap 0: from the floor to the opening's bottom
 *      lower ______-------        |
 *        column    column
 *
 * Invariants: columns lie left to right and do not overlap; in a column every edge of a gap is one line, and a gap's
 * lower edge lies below its upper one at every inner x.
 *
 * Positions are carried in 2^-40 nm and rounded once, to the nanometre, when they leave. The crossing of two slanted
 * limits may be off by some 2^-12 nm on a wall of a room's size, everything else by less than 2^-38 nm.
 */
#ifndef LAYOUT_STARTS_FACE_H
#define LAYOUT_STARTS_FACE_H

#include "base/wide.h"
#include "layout/layout.h"

typedef Wide Fine; /* 2^-40 nm */

enum { FINE_BITS = 40 };

/* Beyond every coordinate of a wall. */
#define FINE_FAR (4 * LENGTH_MOST)

/* y over x (limits) or x over y (sides): value v0 at t0, v1 at t1, t0 < t1; level where v0 = v1. */
typedef struct EdgeLine {
    Length t0, v0, t1, v1;
} EdgeLine;

typedef struct Lines {
    EdgeLine *at;
    int count;
    int room;
} Lines;

/* One of the edges that bound a column or a gap. */
typedef struct GapEdge {
    Edge edge;   /* EDGE_FLOOR, EDGE_CEILING, EDGE_RAKE or EDGE_OPENING */
    int opening; /* index, or -1 */
    EdgeLine line;
    Fine left, right; /* y at the column's ends */
} GapEdge;

typedef struct Gap {
    GapEdge bottom, top;
} Gap;

typedef struct Column {
    Fine left, right;
    GapEdge lower, upper; /* the limits, whatever openings do */
    Gap *gaps;            /* bottom to top */
    int gap_count;
} Column;

typedef struct Columns {
    Column *at;
    int count;
    int room;
} Columns;

/* What an opening takes of the wall. */
typedef struct TakenSpan {
    Box box;                            /* grown */
    bool beyond;                        /* a leaning side may cut into it */
    int first, count;                   /* columns over which it takes something; none where it takes nothing */
    Fine low, high;                     /* of the wall that it takes */
    Fine floor_highest, ceiling_lowest; /* of the limits over those columns */
} TakenSpan;

typedef struct WeighFace {
    int index; /* of the face */
    int opening_count;
    Columns columns;
    Lines left, right;              /* stretches of the sides, bottom to top, over all heights */
    Fine lowest, highest;           /* of both limits between the sides */
    bool plumb;                     /* both sides are single plumb lines: the columns end at them */
    TakenSpan *taken;               /* for each opening */
    bool *shows_top, *shows_bottom; /* for each opening: free wall lies along that edge somewhere */
    bool has_ceiling, has_floor;    /* there is a stretch no steeper than 1 in 12 with wall along it */
    Length ceiling_out, floor_out;  /* how far those stretches together are out of level */
} WeighFace;

WeighFace *weigh_face_new(Arena *arena, const Layout *layout, int face);

Fine fine_of(Length value);

/* To the nearest nanometre, half away from zero. */
Length fine_round(Fine value);

/* The line's value at t; and the t at which a line that is not level has the value v. */
Fine line_at(const EdgeLine *line, Fine t);
Fine line_where(const EdgeLine *line, Fine v);

#endif
