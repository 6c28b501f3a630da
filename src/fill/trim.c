/*
 * A board, squared at both ends, and its pieces, a kerf between neighbours:
 *
 *     |square|-- piece --|kerf|-- piece --|kerf|---- left over ----|square|
 *            |<-------- length - 2 square ------------------------>|
 *
 * With a kerf folded into each piece, and one more into the board since the last piece needs none, pieces fit where
 *     sum of (piece + kerf) <= length - 2 square + kerf
 */
#include "fill/trim.h"

#include "pack/pack.h"

#include <string.h>

static PackStock *read_stock(Arena *arena, const Wall *wall)
{
    const TrimStocks *lines = &wall->trim.stock;
    PackStock *stock = arena_array(arena, PackStock, lines->count);
    for (int i = 0; i < lines->count; i++) {
        Length usable = lines->at[i].length - 2 * wall->saw.square;
        stock[i] = (PackStock){usable > 0 ? usable + wall->saw.kerf : 0, lines->at[i].length, lines->at[i].count};
    }
    return stock;
}

static PackItem *read_items(Arena *arena, const Wall *wall, const TrimPieces *pieces)
{
    PackItem *items = arena_array(arena, PackItem, pieces->count);
    for (int i = 0; i < pieces->count; i++) {
        bool is_any = pieces->at[i].length > 0;
        items[i] = (PackItem){is_any ? pieces->at[i].length + wall->saw.kerf : 1, is_any ? pieces->at[i].count : 0};
    }
    return items;
}

/* Numbers the boards and what each keeps when nothing is cut from it. */
static void list_boards(Arena *arena, const Wall *wall, TrimPlan *plan)
{
    const TrimStocks *lines = &wall->trim.stock;
    for (int i = 0; i < lines->count; i++)
        plan->board_count += lines->at[i].count;
    plan->boards = arena_array(arena, TrimBoard, plan->board_count);
    int number = 0;
    for (int i = 0; i < lines->count; i++)
        for (int n = 0; n < lines->at[i].count; n++) {
            Length usable = lines->at[i].length - 2 * wall->saw.square;
            plan->boards[number++] = (TrimBoard){.length = lines->at[i].length, .left_over = usable > 0 ? usable : 0};
        }
}

/* What is not cut, and for each line of the list the index of its first piece that is. */
static int *list_pieces(Arena *arena, const TrimPieces *pieces, const PackItem *items, const PackResult *packed,
                        TrimPlan *plan)
{
    int *next = arena_array(arena, int, pieces->count);
    for (int i = 0; i < pieces->count; i++) {
        next[i] = plan->piece_count;
        plan->piece_count += items[i].count - packed->missing[i];
        if (packed->missing[i] > 0)
            *arena_push(arena, &plan->missing) =
                (TrimPiece){pieces->at[i].name, pieces->at[i].length, packed->missing[i]};
    }
    plan->pieces = arena_array(arena, TrimCut, plan->piece_count);
    plan->by_board = arena_array(arena, int, plan->piece_count);
    return next;
}

static void cut_board(const Wall *wall, const TrimPieces *pieces, const PackBin *bin, int number, int *next,
                      TrimPlan *plan)
{
    TrimBoard *board = &plan->boards[number - 1];
    Length at = wall->saw.square;
    for (int i = 0; i < bin->item_count; i++) {
        const TrimPiece *piece = &pieces->at[bin->items[i]];
        int index = next[bin->items[i]]++;
        plan->pieces[index] = (TrimCut){index + 1, piece->name, piece->length, number, at};
        plan->by_board[board->first + board->count++] = index;
        at += piece->length + wall->saw.kerf;
    }
    Length end = board->length - wall->saw.square;
    board->left_over = end > at ? end - at : 0;
    plan->boards_opened++;
    plan->length_opened += board->length;
}

TrimPlan *trim_plan(Arena *arena, const Wall *wall, const TrimPieces *pieces)
{
    if (pieces == NULL)
        pieces = &wall->trim.pieces;
    TrimPlan *plan = arena_one(arena, TrimPlan);
    Arena *work = arena_new();
    const PackItem *items = read_items(work, wall, pieces);
    const PackResult *packed =
        pack_solve(work, read_stock(work, wall), wall->trim.stock.count, items, pieces->count, 0);
    list_boards(arena, wall, plan);
    int *next = list_pieces(arena, pieces, items, packed, plan);

    int bin = 0, line_first = 0, cut = 0;
    for (int i = 0; i < wall->trim.stock.count; i++) {
        for (int n = 0; n < wall->trim.stock.at[i].count; n++) {
            plan->boards[line_first + n].first = cut;
            if (bin == packed->bin_count || packed->bins[bin].stock != i)
                continue;
            cut_board(wall, pieces, &packed->bins[bin], line_first + n + 1, next, plan);
            cut += packed->bins[bin++].item_count;
        }
        line_first += wall->trim.stock.at[i].count;
    }
    plan->length_bound = packed->cost_bound;
    plan->proved = packed->cost_proved;
    arena_free(work);
    return plan;
}
