/*
 * While the planks go up: what has been hung, what comes next, what a measured edge does to the last course, and by how
 * much the reveals still to come have to be eased to win it back. Hung pieces never move; one that no longer fits is
 * told by the fill (`hung`).
 *
 *     ceiling  ~~~~~~~~~~~~~~~~~~~
 *              [ last course, ripped to what is left ]
 *              -- r --                  n reveals are left between the measured edge and the last course:
 *              [ ... ]                  each is made `ease` narrower, so that n x ease = off
 *              -- r --
 *     measured =================== top, `off` above where it was planned
 */
#ifndef TRADE_ASBUILT_H
#define TRADE_ASBUILT_H

#include "fill/plan.h"
#include "layout/layout.h"

/* What measured edges do in one direction: upward from course 0 (tops) or downward (bottoms). */
typedef struct AsBuiltWay {
    bool measured;
    int64_t course; /* the outermost one whose edge was measured */
    Length height;  /* of its edge, as measured */
    Length off;     /* how far that is beyond where it was planned, away from course 0; below 0: short of it */
    bool has_last;  /* there is a course beyond it, whether planned or now */
    int64_t last_planned, last_now;     /* number of the outermost course */
    Length planned_least, planned_most; /* its rip */
    Length now_least, now_most;
    int reveals;       /* between the measured edge and the outermost course as planned */
    Length eased;      /* what each of them is to be, so that the outermost course becomes what was planned */
    Length grows;      /* what a plank grows by at most through the seasons, where the wall's wood is known */
    bool can_win_back; /* eased is not below 0 nor below `grows`, and what is won back is wider than 1/16 in */
    int beside;        /* the face round a corner whose courses these would miss by most; -1: none */
    Length miss_eased, miss_now; /* by how much at most, with eased reveals and as they are */
    const char *text;            /* all that in words; "" where nothing was measured */
} AsBuiltWay;

typedef struct AsBuiltFace {
    AsBuiltWay up, down;
} AsBuiltFace;

typedef struct AsBuilt {
    AsBuiltFace *faces; /* one for each face */
    int hung, left;     /* pieces of the plan */
    int next;           /* index of the next piece in hanging order; -1 where all hang */
    bool course_done; /* the next piece begins a course, and something hangs: a time to measure the edge of the last one
                       */
} AsBuilt;

/* `layout` is that of the wall with its record; NULL and `err` only where the wall without its measured edges has too
 * many courses. */
AsBuilt *asbuilt_of(Arena *arena, const Layout *layout, const Plan *plan, Err *err);

/* The record that hanging a piece of the final plan adds to the wall file; its texts live as long as the wall. */
HungPiece asbuilt_record(const Layout *layout, const Piece *piece);

#endif
