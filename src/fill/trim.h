/*
 * Trim cut from trim stock with the wall's saw: which piece comes from which board and where, least length opened, then
 * fewest boards (datumrow(5), "Trim"). It knows lengths and names alone: what the pieces are for, and which the wall
 * asks for beyond those of the file, is worked out elsewhere. The cutting itself is pack.h's.
 */
#ifndef FILL_TRIM_H
#define FILL_TRIM_H

#include "wall/wall.h"

/* One piece as it is cut. */
typedef struct TrimCut {
    int number;       /* from 1: in the order of the list, like ones one after the other, those missing left out */
    const char *name; /* the list's own */
    Length length;
    int board;     /* number, from 1 through trim stock in file order */
    Length offset; /* from the board's first end to the piece's first end */
} TrimCut;

typedef struct TrimBoard {
    Length length;
    int first, count; /* its pieces: plan->by_board[first .. first + count), in order of offset, long ones first */
    Length left_over; /* longest single stretch from which a piece could still be cut; 0 where none */
} TrimBoard;

typedef struct TrimPlan {
    TrimCut *pieces; /* number = index + 1 */
    int piece_count;
    TrimBoard *boards; /* every board of trim stock, number - 1; one without pieces is not opened */
    int board_count;
    int *by_board;      /* piece indices grouped by board */
    TrimPieces missing; /* what no board was left for, in the order of the list, names the list's own */
    int boards_opened;
    Length length_opened;
    Length length_bound; /* proved: no plan that cuts as much opens less; never above length_opened */
    bool proved;         /* no plan opens less (nor cuts more) */
} TrimPlan;

/* Plans the cutting of `pieces` (NULL: those of the file) from the wall's trim stock, all in `arena`. A piece of no
 * length is left out. The names must outlive the plan. */
TrimPlan *trim_plan(Arena *arena, const Wall *wall, const TrimPieces *pieces);

#endif
