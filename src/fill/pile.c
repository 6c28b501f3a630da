/*
 *     board   |square|=====span=====|kerf|--hung--|kerf|===span===|avoid|====span====|square|
 *
 * Invariants: span.left = to - from - sum over its cuts of (length + kerf); a span is on the rack `open` just where its
 * board is opened and left >= smallest; a slot is on the rack `unopened` just where its kind has boards that are not
 * opened; `kept` is the sum of worth over the spans of opened boards.
 */
#include "fill/pile.h"

#include "base/panic.h"

#include <stdlib.h>
#include <string.h>

/* ---- spans of one board ---- */

typedef struct Spans {
    Span *at;
    int count, room;
} Spans;

/* Takes [from, to] out of the spans of the board that begin at `first`; `apart`: the next piece stands a kerf from it.
 */
static void take_out(Arena *arena, Spans *spans, int first, Length from, Length to, Length apart, Length kerf)
{
    Length before = from - apart;
    Length behind = to + apart > from + kerf ? to + apart : from + kerf;
    int count = spans->count;
    for (int i = first; i < count; i++) {
        Span *span = &spans->at[i];
        if (behind <= span->from || before >= span->to)
            continue;
        Span rest = *span;
        rest.from = behind > rest.from ? behind : rest.from;
        span->to = before;
        if (rest.to > rest.from)
            *arena_push(arena, spans) = rest;
    }
}

static int by_place(const void *a, const void *b)
{
    const Span *one = a, *other = b;
    return (one->from > other->from) - (one->from < other->from);
}

/* Drops spans of the board too short for any piece, sorts the rest. One that a narrow nail makes too short by less than
 * a kerf stays: the bound counts it. */
static void settle(Spans *spans, int first, Length smallest)
{
    int kept = first;
    for (int i = first; i < spans->count; i++) {
        Span *span = &spans->at[i];
        span->left = span->to - span->from;
        if (span->left > 0 && span->left >= smallest)
            spans->at[kept++] = *span;
    }
    spans->count = kept;
    if (kept - first > 1)
        qsort(spans->at + first, (size_t)(kept - first), sizeof *spans->at, by_place);
}

static void add_spans(Arena *arena, Spans *spans, int board, const Wall *wall, const Stock *stock)
{
    int first = spans->count;
    Length square = wall->saw.square;
    if (stock->length - square > square)
        *arena_push(arena, spans) = (Span){.board = board, .from = square, .to = stock->length - square};
    for (int i = 0; i < stock->avoid.count; i++)
        take_out(arena, spans, first, stock->avoid.at[i].from, stock->avoid.at[i].to, 0, wall->saw.kerf);
}

/* ---- kinds ---- */

typedef struct Line {
    const Stock *stock;
    Length width;
    int index;
} Line;

static int compare_lines(const Line *one, const Line *other)
{
    if (one->stock->length != other->stock->length)
        return one->stock->length < other->stock->length ? -1 : 1;
    if (one->width != other->width)
        return one->width < other->width ? -1 : 1;
    if (one->stock->avoid.count != other->stock->avoid.count)
        return one->stock->avoid.count < other->stock->avoid.count ? -1 : 1;
    for (int i = 0; i < one->stock->avoid.count; i++) {
        const Stretch *a = &one->stock->avoid.at[i], *b = &other->stock->avoid.at[i];
        if (a->from != b->from)
            return a->from < b->from ? -1 : 1;
        if (a->to != b->to)
            return a->to < b->to ? -1 : 1;
    }
    return 0;
}

static int by_kind(const void *a, const void *b)
{
    const Line *one = a, *other = b;
    int order = compare_lines(one, other);
    return order != 0 ? order : (one->index > other->index) - (one->index < other->index);
}

/* What avoided stretches lack of a kerf. */
static Length given_up(const Stock *stock, Length kerf)
{
    Length given = 0;
    for (int i = 0; i < stock->avoid.count; i++) {
        const Length width = stock->avoid.at[i].to - stock->avoid.at[i].from;
        given += width < kerf ? kerf - width : 0;
    }
    return given;
}

/* The kind of each stock line; `kinds` gets their lengths and widths. */
static int *sort_kinds(Arena *arena, Pile *pile, const Wall *wall)
{
    int count = wall->stock.count;
    Line *lines = arena_array(arena, Line, count);
    Length widest = wall_widest(wall);
    for (int i = 0; i < count; i++) {
        const Stock *stock = &wall->stock.at[i];
        lines[i] = (Line){stock, stock->width_given ? stock->width : widest, i};
    }
    if (count > 1)
        qsort(lines, (size_t)count, sizeof *lines, by_kind);
    int *kind_of = arena_array(arena, int, count);
    pile->kinds = arena_array(arena, Kind, count);
    for (int i = 0; i < count; i++) {
        if (i == 0 || compare_lines(&lines[i - 1], &lines[i]) != 0) {
            const Length given = given_up(lines[i].stock, wall->saw.kerf);
            pile->kinds[pile->kind_count++] = (Kind){.length = lines[i].stock->length,
                                                     .width = lines[i].width,
                                                     .slack = given > 0 ? wall->saw.kerf : 0,
                                                     .given = given,
                                                     .first = -1};
        }
        kind_of[lines[i].index] = pile->kind_count - 1;
    }
    return kind_of;
}

static void link_board(Pile *pile, int board)
{
    Kind *kind = &pile->kinds[pile->boards[board].kind];
    pile->boards[board].prev = -1;
    pile->boards[board].next = kind->first;
    if (kind->first >= 0)
        pile->boards[kind->first].prev = board;
    kind->first = board;
    if (kind->unopened++ == 0)
        for (int i = 0; i < kind->span_count; i++)
            rack_put(&pile->unopened, kind->slot_first + i, pile->slots[kind->slot_first + i].left);
}

static void unlink_board(Pile *pile, int board)
{
    PileBoard *entry = &pile->boards[board];
    Kind *kind = &pile->kinds[entry->kind];
    if (entry->prev >= 0)
        pile->boards[entry->prev].next = entry->next;
    else
        kind->first = entry->next;
    if (entry->next >= 0)
        pile->boards[entry->next].prev = entry->prev;
    entry->next = entry->prev = -1;
    if (--kind->unopened == 0)
        for (int i = 0; i < kind->span_count; i++)
            rack_take(&pile->unopened, kind->slot_first + i);
}

/* ---- opening and closing ---- */

static void rack_span(Pile *pile, int span)
{
    if (pile->spans[span].left >= pile->smallest)
        rack_put(&pile->open, span, pile->spans[span].left);
}

static void begin_board(Pile *pile, int board)
{
    PileBoard *entry = &pile->boards[board];
    for (int i = entry->span_first; i < entry->span_first + entry->span_count; i++) {
        rack_span(pile, i);
        pile->kept += worth_of(pile->worth, pile->spans[i].left);
    }
    pile->length_opened += entry->length;
    pile->boards_opened++;
}

int pile_open(Pile *pile, int kind)
{
    int board = pile->kinds[kind].first;
    BUG_UNLESS(board >= 0);
    unlink_board(pile, board);
    begin_board(pile, board);
    return board;
}

static void close_board(Pile *pile, int board)
{
    PileBoard *entry = &pile->boards[board];
    for (int i = entry->span_first; i < entry->span_first + entry->span_count; i++) {
        rack_take(&pile->open, i);
        pile->kept -= worth_of(pile->worth, pile->spans[i].left);
    }
    pile->length_opened -= pile->kinds[entry->kind].length;
    pile->boards_opened--;
    link_board(pile, board);
}

static bool is_unopened(const Pile *pile, int board)
{
    const PileBoard *entry = &pile->boards[board];
    return entry->kind >= 0 && (entry->prev >= 0 || entry->next >= 0 || pile->kinds[entry->kind].first == board);
}

static void change(Pile *pile, int index, Length by)
{
    Span *span = &pile->spans[index];
    pile->kept -= worth_of(pile->worth, span->left);
    rack_take(&pile->open, index);
    span->left += by;
    pile->kept += worth_of(pile->worth, span->left);
    rack_span(pile, index);
}

void pile_cut(Pile *pile, int index, Length length, int run)
{
    Span *span = &pile->spans[index];
    BUG_UNLESS(length > 0 && length <= span->left);
    if (is_unopened(pile, span->board)) {
        unlink_board(pile, span->board);
        begin_board(pile, span->board);
    }
    change(pile, index, -(length + pile->kerf));
    if (span->cuts == span->room) {
        int room = span->room == 0 ? 4 : 2 * span->room;
        int *runs = arena_array(pile->arena, int, room);
        if (span->cuts > 0)
            memcpy(runs, span->runs, (size_t)span->cuts * sizeof *runs);
        span->runs = runs;
        span->room = room;
    }
    span->runs[span->cuts++] = run;
    pile->boards[span->board].cuts++;
}

void pile_mend(Pile *pile, int index, Length length, int run)
{
    Span *span = &pile->spans[index];
    change(pile, index, length + pile->kerf);
    int at = span->cuts - 1;
    while (at > 0 && span->runs[at] != run)
        at--;
    span->runs[at] = span->runs[--span->cuts];
    PileBoard *board = &pile->boards[span->board];
    if (--board->cuts == 0 && board->kind >= 0)
        close_board(pile, span->board);
}

void pile_withhold(Pile *pile, int board)
{
    unlink_board(pile, board);
}

void pile_return(Pile *pile, int board)
{
    link_board(pile, board);
}

void pile_open_free(Pile *pile)
{
    for (int i = 0; i < pile->slot_count; i++)
        pile->slots[i].price = worth_of(pile->worth, pile->slots[i].left);
}

/* ---- the whole pile ---- */

static void price_slots(Pile *pile)
{
    for (int i = 0; i < pile->kind_count; i++) {
        const Kind *kind = &pile->kinds[i];
        int64_t all = 0;
        for (int j = 0; j < kind->span_count; j++)
            all += worth_of(pile->worth, pile->slots[kind->slot_first + j].left);
        for (int j = 0; j < kind->span_count; j++) {
            Slot *slot = &pile->slots[kind->slot_first + j];
            slot->price = kind->length - (all - worth_of(pile->worth, slot->left));
        }
    }
}

void pile_price(Pile *pile, const Worth *worth)
{
    pile->worth = worth;
    pile->kept = 0;
    for (int i = 0; i < pile->span_count; i++)
        if (pile->boards[pile->spans[i].board].cuts > 0 || pile->boards[pile->spans[i].board].kind < 0)
            pile->kept += worth_of(worth, pile->spans[i].left);
    price_slots(pile);
}

static void add_slots(Arena *arena, Pile *pile, const Spans *spans)
{
    pile->slots = arena_array(arena, Slot, spans->count + 1);
    for (int board = 0; board < pile->board_count; board++) {
        const PileBoard *entry = &pile->boards[board];
        if (entry->kind < 0 || pile->kinds[entry->kind].count++ > 0)
            continue;
        Kind *kind = &pile->kinds[entry->kind];
        kind->slot_first = pile->slot_count;
        kind->span_count = entry->span_count;
        BUG_UNLESS(entry->span_count == 0 || spans->at != NULL);
        for (int i = 0; i < entry->span_count; i++)
            pile->slots[pile->slot_count++] =
                (Slot){.kind = entry->kind, .span = i, .left = spans->at[entry->span_first + i].left};
    }
}

static void find_boards(Arena *arena, Pile *pile, const Demand *demand, Spans *spans)
{
    const Wall *wall = demand->wall;
    int *kind_of = sort_kinds(arena, pile, wall);
    int *hung_first = arena_array(arena, int, pile->board_count + 2); /* hung pieces, listed by board */
    int *hung_next = arena_array(arena, int, demand->hung_count + 1);
    for (int i = demand->hung_count - 1; i >= 0; i--) {
        if (demand->hung[i].fault != HUNG_FITS)
            continue;
        hung_next[i] = hung_first[demand->hung[i].board];
        hung_first[demand->hung[i].board] = i + 1;
    }
    int board = 0;
    for (int line = 0; line < wall->stock.count; line++) {
        const Stock *stock = &wall->stock.at[line];
        for (int i = 0; i < stock->count; i++, board++) {
            PileBoard *entry = &pile->boards[board];
            entry->span_first = spans->count;
            entry->next = entry->prev = -1;
            entry->length = stock->length;
            entry->kind = hung_first[board + 1] == 0 ? kind_of[line] : -1;
            pile->widths[board] = pile->kinds[kind_of[line]].width;
            add_spans(arena, spans, board, wall, stock);
            for (int hung = hung_first[board + 1]; hung > 0; hung = hung_next[hung - 1]) {
                const Hung *piece = &demand->hung[hung - 1];
                take_out(arena, spans, entry->span_first, piece->offset, piece->offset + (piece->right - piece->left),
                         wall->saw.kerf, 0);
            }
            settle(spans, entry->span_first, demand->smallest - pile->kinds[kind_of[line]].slack);
            entry->span_count = spans->count - entry->span_first;
        }
    }
}

Pile *pile_new(Arena *arena, const Demand *demand)
{
    static int64_t nothing[1];
    static const Worth worthless = {.width = LENGTH_MOST, .count = 1, .at = nothing};
    Pile *pile = arena_one(arena, Pile);
    pile->arena = arena;
    pile->wall = demand->wall;
    pile->kerf = demand->kerf;
    pile->smallest = demand->smallest;
    pile->board_count = wall_board_count(demand->wall);
    pile->boards = arena_array(arena, PileBoard, pile->board_count);
    pile->widths = arena_array(arena, Length, pile->board_count);
    pile->worth = &worthless;
    Spans spans = {0};
    find_boards(arena, pile, demand, &spans);
    Length need = 0;
    for (int i = 0; i < demand->run_count; i++)
        need = demand->runs[i].need > need ? demand->runs[i].need : need;
    for (int i = 0; i < pile->kind_count; i++)
        pile->narrow = pile->narrow || pile->kinds[i].width < need;
    pile->spans = spans.at;
    pile->span_count = spans.count;
    for (int i = 0; i < spans.count; i++)
        if (spans.at[i].left > pile->longest)
            pile->longest = spans.at[i].left;
    add_slots(arena, pile, &spans);
    rack_start(&pile->open, arena, pile->span_count, pile->longest);
    rack_start(&pile->unopened, arena, pile->slot_count, pile->longest);
    for (int board = pile->board_count - 1; board >= 0; board--) {
        if (pile->boards[board].kind >= 0)
            link_board(pile, board);
        else
            begin_board(pile, board);
    }
    price_slots(pile);
    return pile;
}
