/*
 * Boards to segments: which board is cut where, and where the butt joints stand. The rules and the order of what is
 * best are those of datumrow(5), "Pieces", "Boards", "What is best". A stepper over one layout: begin, so many steps,
 * the plan so far. Its state lives in an arena of its own and depends on the document and the number of steps alone, so
 * that slices between keys and one run end in the same bytes. It knows nothing of time, of how a plan is shown, nor of
 * any rule of geometry beyond what layout answers.
 */
#ifndef FILL_FILL_H
#define FILL_FILL_H

#include "layout/layout.h"

/* One piece of plank. */
typedef struct Piece {
    int number; /* from 1, in hanging order */
    int face;   /* index */
    int course; /* index into the face's courses */
    int segment;
    Length left, right;
    int board;     /* number, from 1 */
    Length offset; /* from the board's first end to the piece's first end */
    bool hung;
} Piece;

/* A stretch of a segment left bare. */
typedef struct Bare {
    int face, course, segment;
    Length left, right;
    bool too_few; /* no board was left; else the rules let none stand there */
} Bare;

/* What became of one board. */
typedef struct BoardUse {
    int first, count; /* its pieces: plan->by_board[first .. first+count), in order of offset */
    Length left_over; /* longest single stretch from which a piece could still be cut; 0 where none */
} BoardUse;

/* What catches the eye; the measures are told in fill/looks.h. */
typedef struct Looks {
    int touching;    /* neighbouring pieces (end to end, or over one another) that both have a tone */
    int equal;       /* of those, of equal tone */
    int chance;      /* of those, of equal tone if the pieces hung as they came */
    int stacked;     /* joints over a joint one or two courses below */
    int stairs;      /* three joints that go up like a stair */
    int short_pairs; /* two short pieces end to end */
    int near_sides;  /* joints all but at the side of a cutout */
} Looks;

typedef struct Plan {
    Piece *pieces; /* in hanging order; number = index + 1 */
    int piece_count;
    Bare *bare; /* in hanging order of their places */
    int bare_count;
    BoardUse *boards; /* one for each board in stock, board number - 1 */
    int board_count;
    int *by_board; /* piece indices grouped by board */

    Length bare_length;
    int breaks;       /* of stagger, shortest and stud together */
    Length shortfall; /* bare_length + breaks x 300 mm */
    Length length_opened;
    int boards_opened;
    int joints;
    Length length_used;

    bool bound_known;    /* false until the bound has been worked out, and where the plan itself refutes it */
    Length length_bound; /* no plan that keeps the rules and covers as much opens less */
    int boards_bound;    /* nor fewer boards; 0 where not known */

    Looks looks;

    bool anew; /* final, and made around all that hangs: the plan that this was hung from holds no longer (keep.h) */

    Findings findings; /* stagger, shortest, stud, stock, hung, anew, bound; in no order */
} Plan;

typedef struct Fill Fill;

/* Starts on a layout, which must outlive it. The first plan (constructive) is there when it returns. Where pieces hang
 * just as a plan said, the final plan is that very plan (keep.h). */
Fill *fill_begin(const Layout *layout);

/* The same, sooner: a plan that `before` knows is not worked out again where it holds on. `before` may be NULL, or of
 * another wall altogether; the final plan does not depend on it. */
Fill *fill_begin_after(const Fill *before, const Layout *layout);

/* Plans around all that hangs, whatever plan it was hung from. */
Fill *fill_begin_anew(const Layout *layout);

void fill_free(Fill *fill);

/* Works on for about `steps` units of work (one is some microseconds); true when there is nothing left to do: the
 * budget of the wall is used up or the plan is proved. */
bool fill_step(Fill *fill, int steps);

/* The best plan so far, whole and consistent; it lives until the next fill_step or fill_free. */
const Plan *fill_plan(const Fill *fill);

/* Begin, work to the end, the final plan copied into `arena`. */
Plan *fill_wall(Arena *arena, const Layout *layout);

/* The hand method: row by row in hanging order, the last offcut first, whole boards in pile order, the last piece cut
 * to fit. The yardstick of tests and benchmark. Keeps the rules where it can see them, tells what it breaks. */
Plan *fill_by_hand(Arena *arena, const Layout *layout);

#endif
