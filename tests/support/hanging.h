/*
 * What happens to a wall while it is hung, as the editor records it.
 */
#ifndef TESTS_SUPPORT_HANGING_H
#define TESTS_SUPPORT_HANGING_H

#include "fill/plan.h"
#include "layout/layout.h"

/* The piece hangs as the plan has it. */
void hang_piece(Arena *arena, Wall *wall, const Layout *layout, const Piece *piece);

/* The board, which becomes a line of its own, is gone from now on. */
void spoil_board(Arena *arena, Wall *wall, int board);

/* A board in hand that nothing hanging is cut from and the first `hung` pieces are not either: that of the first piece
 * behind them; 0 where there is none. */
int board_to_spoil(const Plan *plan, int hung);

#endif
