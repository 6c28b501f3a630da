/*
 * A plan as data: pieces, stretches left bare, what became of each board, sums, findings. What makes one, checks one or
 * prints one takes it from here; how it was found is no part of it.
 */
#ifndef FILL_PLAN_H
#define FILL_PLAN_H

#include "wall/finding.h"
#include "wall/wall.h"

/* One piece of plank. */
typedef struct Piece {
    int number; /* from 1, in hanging order; kept over events */
    int face;   /* index */
    int course; /* index into the face's courses */
    int segment;
    Length left, right;
    int board;                    /* number, from 1 */
    Length offset;                /* from the board's first end to the piece's first end */
    bool hung;                    /* or cut already: it stays as it is */
    bool cut;                     /* not yet hung */
    Length left_kerf, right_kerf; /* what the blade takes at its ends */
    Length closer;                /* kept over beyond its right end, to be cut to fit at the wall */
    bool closer_off;              /* it closes its segment, and no board gave it what is to be kept over */
} Piece;

/* Whether it is on the wall: it hangs, and is not only cut. */
static inline bool piece_is_up(const Piece *piece)
{
    return piece->hung && !piece->cut;
}

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

/* What catches the eye; fill/looks/looks.h says how each is measured. */
typedef struct Looks {
    int touching;    /* neighbouring pieces (end to end, or over one another) that both have a tone */
    int equal;       /* of those, of equal tone */
    int chance;      /* of those, of equal tone if the pieces hung as they came */
    int stacked;     /* joints over a joint one or two courses below */
    int stairs;      /* three joints that go up like a stair */
    int short_pairs; /* two short pieces end to end */
    int near_sides;  /* joints all but at an opening's side or corner */
    int loose;       /* pieces that the studs entered hold badly */
} Looks;

typedef struct Plan {
    Piece *pieces; /* in hanging order */
    int piece_count;
    Bare *bare; /* in hanging order of their places */
    int bare_count;
    BoardUse *boards; /* one for each board in stock, board number - 1 */
    int board_count;
    int *by_board; /* piece indices grouped by board */

    Length bare_length;
    Length closers; /* kept over by all pieces together */
    int closers_off;
    int breaks;       /* of stagger, shortest and stud together */
    Length shortfall; /* bare_length + breaks x 300 mm, but for those of pins alone */
    Length length_opened;
    int boards_opened;
    int joints;
    Length length_used;

    bool bound_known;    /* false until the bound has been worked out, and where the plan itself refutes it */
    Length length_bound; /* no plan that keeps the rules and covers as much opens less */
    int boards_bound;    /* nor fewer boards; 0 where not known */
    Length length_least; /* found with nothing to spend; 0 where nothing may be spent, or that is not known yet */

    Looks looks;

    int *changed; /* numbers of the pieces that the last event changed, rising */
    int changed_count;

    Findings findings; /* stagger, shortest, stud, stock, hung, anew, bound; in no order */
} Plan;

/* What a plan costs, in the order of datumrow(5), "What is best". */
typedef struct Cost {
    Length shortfall;
    Length length_opened;
    int boards_opened;
    int pieces;
} Cost;

/* Below, equal or above 0 as `a` is better than, equal to or worse than `b`. */
int cost_compare(const Cost *a, const Cost *b);

/* Longest stretch of a board clear of squared ends and avoided wood, a kerf from each of the pieces, which rise by
 * offset; 0 where there is none. */
Length plan_left_over(const Wall *wall, int board, const Plan *plan, const int *pieces, int count);

/* Whether wood of the board was lost. */
bool plan_has_loss(const Wall *wall, int board);

/* A copy in `arena` with no findings, which is not anew. */
Plan *plan_copy(Arena *arena, const Plan *plan);

#endif
