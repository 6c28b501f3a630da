/*
 * What is worth seeing on a board (`show`), and where on the wall it comes to be with the piece that holds it:
 *
 *     board   |===========o======|      `at` from the board's first end
 *               |--offset-->|  piece, from `left` on the face:  x = left + at - offset
 *
 * What lies in an offcut, or in what is kept over to be cut to fit, is on no wall.
 */
#ifndef TRADE_SHOWN_H
#define TRADE_SHOWN_H

#include "fill/plan.h"
#include "layout/layout.h"

typedef struct Shown {
    const char *what; /* the wall's */
    Length on_board;  /* from the board's first end */
    Length on_piece;  /* from the piece's left end */
    Length at;        /* x on the face */
    int opening;      /* one whose cutout takes wood at that x, index on the face; -1: none */
} Shown;

typedef struct ShownList {
    Shown *at;
    int count;
    int room;
} ShownList;

/* What a piece of the plan shows, in the order of the file. */
ShownList shown_on_piece(Arena *arena, const Layout *layout, const Piece *piece);

/* RULE_SHOW for each thing that a piece not yet hung would bring to the wall. */
void shown_findings(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings);

#endif
