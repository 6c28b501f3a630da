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

Length plan_left_over(const Wall *wall, const Stock *stock, const Plan *plan, const int *pieces, int count)
{
    Length longest = 0, from = wall->saw.square, end = stock->length - wall->saw.square;
    int avoid = 0, piece = 0;
    while (from < end) { /* the next thing in the way begins at `to` and is past at `behind` */
        Length to = end, behind = end;
        if (avoid < stock->avoid.count && stock->avoid.at[avoid].from < to) {
            to = stock->avoid.at[avoid].from;
            behind = stock->avoid.at[avoid].to;
        }
        bool at_piece = false;
        if (piece < count) {
            const Piece *cut = &plan->pieces[pieces[piece]];
            if (cut->offset - cut->left_kerf <= to) {
                to = cut->offset - cut->left_kerf;
                behind = cut->offset + (cut->right - cut->left) + cut->closer + cut->right_kerf;
                at_piece = true;
            }
        }
        if (to - from > longest)
            longest = to - from;
        if (behind > from)
            from = behind;
        if (at_piece)
            piece++;
        else
            avoid++;
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
    copy->anew = false;
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
