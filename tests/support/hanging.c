#include "support/hanging.h"

void hang_piece(Arena *arena, Wall *wall, const Layout *layout, const Piece *piece)
{
    *arena_push(arena, &wall->hung_pieces) =
        (HungPiece){.face = wall->faces.at[piece->face].name,
                    .course = (int)layout->faces[piece->face].courses[piece->course].number,
                    .left = piece->left,
                    .right = piece->right,
                    .board = piece->board,
                    .offset_given = true,
                    .offset = piece->offset,
                    .place = hung_next_place(wall)};
}

void spoil_board(Arena *arena, Wall *wall, int board)
{
    Stocks stock = {0};
    for (int i = 0; i < wall->stock.count; i++) {
        Stock line = wall->stock.at[i], spoiled = line, behind = line;
        int place = board - wall_stock_first(wall, i);
        if (place < 0 || place >= line.count) {
            *arena_push(arena, &stock) = line;
            continue;
        }
        line.count = place;
        behind.count -= place + 1;
        spoiled.count = 1;
        spoiled.gone_given = true;
        spoiled.gone = hung_count(wall);
        if (line.count > 0)
            *arena_push(arena, &stock) = line;
        *arena_push(arena, &stock) = spoiled;
        if (behind.count > 0)
            *arena_push(arena, &stock) = behind;
    }
    wall->stock = stock;
}

int board_to_spoil(const Plan *plan, int hung)
{
    for (int i = hung; i < plan->piece_count; i++) {
        const BoardUse *use = &plan->boards[plan->pieces[i].board - 1];
        bool hangs = false;
        for (int j = use->first; j < use->first + use->count; j++)
            hangs = hangs || plan->by_board[j] < hung;
        if (!hangs)
            return plan->pieces[i].board;
    }
    return 0;
}
