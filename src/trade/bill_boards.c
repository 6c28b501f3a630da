#include "trade/bill_boards.h"

#include "trade/say.h"

#include <stdlib.h>

/*
 * Boards of one width and length are one kind, on however many lines of the stock they stand. A salvaged pile is mostly
 * boards that have few like them: a line for each would bury the bill, so that the odd ones of one width share a line
 * where there are at least ODD_KINDS kinds of them. The spare is counted once, over all boards: a spare one for each
 * kind would double a pile of which no two boards are alike.
 */

enum {
    ODD_BOARDS = 3, /* a kind with fewer at hand is odd */
    ODD_KINDS = 4,
};

typedef struct BoardKind {
    Length width, length, longest; /* longest: of the kinds that share the line */
    int at_hand, opened;
    int first; /* line of the stock where it stands first */
    int kinds; /* that share the line */
} BoardKind;

typedef struct Kinds {
    BoardKind *at;
    int count, room;
} Kinds;

static int by_size(const void *left, const void *right)
{
    const BoardKind *a = left;
    const BoardKind *b = right;
    if (a->width != b->width)
        return a->width < b->width ? -1 : 1;
    if (a->length != b->length)
        return a->length < b->length ? -1 : 1;
    return (a->first > b->first) - (a->first < b->first);
}

static int by_place(const void *left, const void *right)
{
    const BoardKind *a = left;
    const BoardKind *b = right;
    return (a->first > b->first) - (a->first < b->first);
}

static Kinds lines_of_stock(const Bills *bills)
{
    const Wall *wall = bills->wall;
    Kinds kinds = {0};
    int board = 0;
    for (int i = 0; i < wall->stock.count; i++) {
        const Stock *stock = &wall->stock.at[i];
        BoardKind kind = {.width = stock->width_given ? stock->width : wall_widest(wall),
                          .length = stock->length,
                          .longest = stock->length,
                          .at_hand = stock->count,
                          .first = i,
                          .kinds = 1};
        for (int j = 0; j < stock->count; j++, board++)
            kind.opened += board < bills->plan->board_count && bills->plan->boards[board].count > 0;
        *arena_push(bills->arena, &kinds) = kind;
    }
    return kinds;
}

/* Adds a kind that stands behind `into` in order of size to it. */
static void join(BoardKind *into, const BoardKind *kind)
{
    into->longest = kind->longest;
    into->at_hand += kind->at_hand;
    into->opened += kind->opened;
    into->kinds += kind->kinds;
    if (kind->first < into->first)
        into->first = kind->first;
}

static void join_alike(Kinds *kinds)
{
    int kept = 0;
    for (int i = 0; i < kinds->count; i++) {
        BoardKind *last = kept > 0 ? &kinds->at[kept - 1] : NULL;
        if (last && last->width == kinds->at[i].width && last->length == kinds->at[i].length) {
            join(last, &kinds->at[i]);
            last->kinds = 1;
        } else {
            kinds->at[kept++] = kinds->at[i];
        }
    }
    kinds->count = kept;
}

static bool is_odd(const BoardKind *kind)
{
    return kind->at_hand < ODD_BOARDS;
}

/* Of each width, the odd ones that the plan opens on one line, if there are enough of them. */
static void join_odd(Kinds *kinds)
{
    int kept = 0;
    for (int i = 0; i < kinds->count;) {
        int end = i;
        int odd = 0;
        for (; end < kinds->count && kinds->at[end].width == kinds->at[i].width; end++)
            odd += is_odd(&kinds->at[end]) && kinds->at[end].opened > 0;
        int shared = -1;
        for (; i < end; i++) {
            bool shares = odd >= ODD_KINDS && is_odd(&kinds->at[i]);
            if (shares && shared >= 0) {
                join(&kinds->at[shared], &kinds->at[i]);
                continue;
            }
            if (shares)
                shared = kept;
            kinds->at[kept++] = kinds->at[i];
        }
    }
    kinds->count = kept;
}

static const char *kind_words(const Bills *bills, const BoardKind *kind)
{
    const char *length = say_length(bills->arena, bills->wall, kind->length);
    const char *width = say_length(bills->arena, bills->wall, kind->width);
    if (kind->kinds == 1)
        return say(bills->arena, "%s %s long, %s wide (%d on hand)", kind->opened == 1 ? "board" : "boards", length,
                   width, kind->at_hand);
    return say(bills->arena, "boards of odd lengths, %s to %s long, %s wide (%d on hand)", length,
               say_length(bills->arena, bills->wall, kind->longest), width, kind->at_hand);
}

void bill_put_boards(Bills *bills)
{
    Kinds kinds = lines_of_stock(bills);
    if (kinds.count == 0)
        return;
    int opened = 0;
    int at_hand = 0;
    for (int i = 0; i < kinds.count; i++) {
        opened += kinds.at[i].opened;
        at_hand += kinds.at[i].at_hand;
    }
    if (opened == 0)
        return;
    qsort(kinds.at, (size_t)kinds.count, sizeof *kinds.at, by_size);
    join_alike(&kinds);
    join_odd(&kinds);
    qsort(kinds.at, (size_t)kinds.count, sizeof *kinds.at, by_place);
    for (int i = 0; i < kinds.count; i++)
        if (kinds.at[i].opened > 0)
            bill_put(bills, BILL_PLANKS, kinds.at[i].opened * ASSUME_ONE, 0, "board|s",
                     kind_words(bills, &kinds.at[i]));
    int64_t spare = assume(bills->wall, ASSUME_SPARE).value;
    int64_t with_spare = assume_fit(wide_ceiling(assume_more(opened * ASSUME_ONE, spare), ASSUME_ONE));
    BillLine *line = bill_put(bills, BILL_PLANKS, with_spare * ASSUME_ONE, 0, "board|s",
                              say(bills->arena, "%s (%d on hand)", bill_with_spare(bills, "boards in all"), at_hand));
    bill_spare(bills, line);
}
