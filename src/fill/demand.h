/*
 * What a wall asks of its boards: rows (courses as they stand on a face), in them runs (stretches of segments that no
 * hung piece covers), and where in a run a joint may stand. Hung pieces are read here and held against the layout:
 * those that fit are fixed, those that do not are reported and left out. It knows nothing of boards beyond their
 * lengths, nor of what is best.
 */
#ifndef FILL_DEMAND_H
#define FILL_DEMAND_H

#include "base/arena.h"
#include "fill/pins.h"
#include "layout/layout.h"

#define BREAK_COST (300 * LENGTH_MM) /* one rule broken weighs as much as so much wall left bare */
#define HUNG_NEAR                                                                                       \
    (LENGTH_INCH / 8) /* an end of a hung piece this near (or as near as `closer`) to its segment's end \
                         is taken as that end */

/* A stretch of a segment to be covered: between its ends, hung pieces and pins. */
typedef struct Run {
    int row;
    int face, course, segment; /* indices */
    Length left, right;
    Length origin;                /* the segment's left end, where the marks begin */
    Length shortest;              /* of its pieces, but for one that covers the whole run */
    Length left_kerf, right_kerf; /* what the blade takes at its ends */
    Length closer;                /* kept over by the piece that closes it; 0 where none does */
    Length need;                  /* no piece of it needs a wider board */
    bool varies;                  /* some of its pieces may need less than `need` */
    Intervals forks;              /* where wood is left in two or more parts over one another */
    Intervals bars;               /* where no joint may stand, ends included */
    const LengthList *studs;      /* of the face, less those that are barred */
    int stud_first, stud_count;   /* of these, those strictly inside */
} Run;

/* One course on one face. */
typedef struct Row {
    int face, course;
    int run_first, run_count;
    int below, above;  /* the rows whose joints must keep their stagger to these; -1 where there is none */
    LengthList joints; /* pins, and ends of hung pieces that are no end of their segment; rising, each once */
} Row;

typedef enum HungFault {
    HUNG_FITS,
    HUNG_NO_PLACE, /* no such course there, or nothing of it where the piece is said to be */
    HUNG_LEAVES,   /* reaches beyond its segment */
    HUNG_OVERLAPS, /* over another hung piece */
    HUNG_NO_BOARD,
    HUNG_TOO_SHORT, /* the board is */
    HUNG_TWICE      /* the board's wood at that place is in another hung piece */
} HungFault;

/* A record of what is hung, held against the layout. */
typedef struct Hung {
    HungFault fault;
    int face, course, segment; /* indices; -1 where not found */
    Length left, right;        /* ends near the segment's are moved to it */
    Length left_kerf, right_kerf;
    Length closer; /* kept over beyond its right end */
    PieceState state;
    int board; /* number */
    Length offset;
    const Stretch *across; /* of its board: to be avoided, and cut into by a piece that fits; NULL where none is */
} Hung;

typedef struct Demand {
    const Layout *layout;
    const Wall *wall;
    bool on_studs;
    Length round, stagger, kerf;
    Row *rows; /* face by face, bottom to top */
    int row_count;
    Run *runs; /* row by row, left to right */
    int run_count;
    Hung *hung; /* one for each record of the file, in its order */
    int hung_count;
    Length total;    /* length of all runs */
    Length closers;  /* kept over by the pieces that close them, all together */
    Length longest;  /* run */
    Length least;    /* no piece shorter than this is worth keeping wood for */
    Length smallest; /* no piece shorter than this can be of use at all; at least 1 */
} Demand;

Demand *demand_new(Arena *arena, const Layout *layout);

static inline const Course *demand_course(const Demand *demand, const Run *run)
{
    return &demand->layout->faces[run->face].courses[run->course];
}

/* Rows in hanging order: an array of row_count indices. */
int *demand_row_order(Arena *arena, const Demand *demand);

/* The last mark of the run's segment at or before x that is not barred; the first at or after it. */
Length demand_mark_down(const Demand *demand, const Run *run, Length x);
Length demand_mark_up(const Demand *demand, const Run *run, Length x);

/* Whether a stud's centre is exactly at x. */
bool demand_at_stud(const Run *run, Length x);

/* Whether a piece between the two ends hangs together and neither is a joint that is barred. */
bool demand_whole(const Demand *demand, const Run *run, Length left, Length right);

/* Whether a piece between the two ends is shorter than the rules allow: one that covers the whole run never is. */
static inline bool demand_is_short(const Run *run, Length left, Length right)
{
    return right - left < run->shortest && (left != run->left || right != run->right);
}

/* What the blade takes at the end of a piece. */
static inline Length demand_left_kerf(const Demand *demand, const Run *run, Length left)
{
    return left == run->left ? run->left_kerf : demand->kerf;
}

static inline Length demand_right_kerf(const Demand *demand, const Run *run, Length right)
{
    return right == run->right ? run->right_kerf : demand->kerf;
}

/* By how much the blade takes more than a kerf at the worse end of a piece. */
static inline Length demand_slant(const Demand *demand, const Run *run, Length left, Length right)
{
    Length one = demand_left_kerf(demand, run, left), other = demand_right_kerf(demand, run, right);
    return (one > other ? one : other) - demand->kerf;
}

/* The length that a piece needs of a board: its own, and what is kept over where it closes its run. */
static inline Length demand_length(const Run *run, Length left, Length right)
{
    return right - left + (right == run->right ? run->closer : 0);
}

/* What a piece takes of a span besides one kerf: its length, with `closes` what it keeps over as a closer, and what the
 * blade takes more than a kerf at its worse end. Cut in falling order of that, pieces that fit by their wood fit by
 * their ends; a piece alone needs no more than its length. */
static inline Length demand_wood(const Demand *demand, const Run *run, Length left, Length right, bool closes)
{
    return (closes ? demand_length(run, left, right) : right - left) + demand_slant(demand, run, left, right);
}

/* Width of board that a piece between the two ends needs. */
Length demand_need(const Demand *demand, const Run *run, Length left, Length right);

/* Index of the first of the rising lengths that is x or more; their count where none is. */
int demand_first_from(const LengthList *list, Length x);

/* How many of the rising `joints` are nearer to x than `stagger`. */
int demand_near(const LengthList *joints, Length x, Length stagger);

#endif
