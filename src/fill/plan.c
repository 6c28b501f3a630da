#include "fill/plan.h"

#include <string.h>

int cost_compare(const Cost *a, const Cost *b)
{
    if (a->shortfall != b->shortfall)
        return a->shortfall < b->shortfall ? -1 : 1;
    if (a->length_opened != b->length_opened)
        return a->length_opened < b->length_opened ? -1 : 1;
    if (a->boards_opened != b->boards_opened)
        return a->boards_opened < b->boards_opened ? -1 : 1;
    return (a->pieces > b->pieces) - (a->pieces < b->pieces);
}

/* The stretch lost that begins first of those that end behind x, or NULL. */
static const HungLoss *next_loss(const Wall *wall, int board, Length x)
{
    const HungLoss *next = NULL;
    for (int i = 0; i < wall->hung_losses.count; i++) {
        const HungLoss *loss = &wall->hung_losses.at[i];
        if (loss->board == board && loss->offset + loss->length + wall->saw.kerf > x &&
            (next == NULL || loss->offset < next->offset))
            next = loss;
    }
    return next;
}

bool plan_has_loss(const Wall *wall, int board)
{
    return next_loss(wall, board, -1) != NULL;
}

Length plan_left_over(const Wall *wall, int board, const Plan *plan, const int *pieces, int count)
{
    const Stock *stock = wall_board(wall, board);
    if (!wall_stock_usable(stock, hung_count(wall)))
        return 0;
    Length longest = 0, from = wall->saw.square, end = stock->length - wall->saw.square;
    int avoid = 0, piece = 0;
    while (from < end) { /* the next thing in the way begins at `to` and is past at `behind` */
        Length to = end, behind = end;
        int *done = NULL;
        if (avoid < stock->avoid.count && stock->avoid.at[avoid].from < to) {
            to = stock->avoid.at[avoid].from;
            behind = stock->avoid.at[avoid].to;
            done = &avoid;
        }
        const Piece *cut = piece < count ? &plan->pieces[pieces[piece]] : NULL;
        if (cut != NULL && cut->offset - cut->left_kerf <= to) {
            to = cut->offset - cut->left_kerf;
            behind = cut->offset + (cut->right - cut->left) + cut->closer + cut->right_kerf;
            done = &piece;
        }
        const HungLoss *loss = wall->hung_losses.count > 0 ? next_loss(wall, board, from) : NULL;
        if (loss != NULL && loss->offset - wall->saw.kerf <= to) {
            to = loss->offset - wall->saw.kerf;
            behind = loss->offset + loss->length + wall->saw.kerf;
            done = NULL;
        }
        if (to - from > longest)
            longest = to - from;
        if (behind > from)
            from = behind;
        if (done != NULL)
            ++*done;
    }
    return longest;
}

#define COPY(arena, Type, from, count) \
    memcpy(arena_array((arena), Type, (count)), (from), (size_t)(count) * sizeof(Type))

Plan *plan_copy(Arena *arena, const Plan *plan)
{
    Plan *copy = arena_one(arena, Plan);
    *copy = *plan;
    copy->findings = (Findings){0};
    if (plan->piece_count > 0) {
        copy->pieces = COPY(arena, Piece, plan->pieces, plan->piece_count);
        copy->by_board = COPY(arena, int, plan->by_board, plan->piece_count);
    }
    if (plan->bare_count > 0)
        copy->bare = COPY(arena, Bare, plan->bare, plan->bare_count);
    if (plan->board_count > 0)
        copy->boards = COPY(arena, BoardUse, plan->boards, plan->board_count);
    return copy;
}
