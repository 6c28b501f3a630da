/*
 *     board   |square|=====span=====|kerf|--hung--|kerf|===span===|avoid|====span====|square|
 *
 * Invariants: span.left = to - from - sum over its cuts of (wood + kerf); a span is in the buckets `open` exactly if
 * its board is opened and left >= smallest; a slot is in `unopened` exactly if its kind has boards that are not opened;
 * `salvaged` is the sum of salvage values over the spans of opened boards.
 */
#include "fill/supply.h"

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
 * a kerf stays: the bound counts it. `reserved` of each is left for the
 * ends that face what hangs. */
static void settle(Spans *spans, int first, Length smallest, Length reserved)
{
    int kept = first;
    for (int i = first; i < spans->count; i++) {
        Span *span = &spans->at[i];
        span->to -= reserved;
        span->left = span->to - span->from;
        if (span->left > 0 && span->left >= smallest)
            spans->at[kept++] = *span;
    }
    spans->count = kept;
    if (kept - first > 1)
        qsort(spans->at + first, (size_t)(kept - first), sizeof *spans->at, by_place);
}

static void add_spans(Arena *arena, Spans *spans, int board, const Wall *wall, const Stock *stock, Length apart)
{
    int first = spans->count;
    Length square = wall->saw.square;
    if (stock->length - square > square && wall_stock_usable(stock, hung_count(wall)))
        *arena_push(arena, spans) = (Span){.board = board, .from = square, .to = stock->length - square};
    for (int i = 0; i < stock->avoid.count; i++)
        take_out(arena, spans, first, stock->avoid.at[i].from, stock->avoid.at[i].to, 0, apart);
}

/* ---- kinds ---- */

typedef struct Line {
    const Stock *stock;
    bool usable;
    Length width;
    int index;
} Line;

static int compare_lines(const Line *one, const Line *other)
{
    if (one->stock->length != other->stock->length)
        return one->stock->length < other->stock->length ? -1 : 1;
    if (one->width != other->width)
        return one->width < other->width ? -1 : 1;
    if (one->usable != other->usable)
        return one->usable ? -1 : 1;
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

/* What avoided stretches lack of what keeps two pieces apart. */
static Length given_up(const Stock *stock, Length apart)
{
    Length given = 0;
    for (int i = 0; i < stock->avoid.count; i++) {
        const Length width = stock->avoid.at[i].to - stock->avoid.at[i].from;
        given += width < apart ? apart - width : 0;
    }
    return given;
}

/* The kind of each stock line; `kinds` gets their lengths and widths. */
static int *sort_kinds(Arena *arena, Supply *supply, const Wall *wall)
{
    int count = wall->stock.count;
    Line *lines = arena_array(arena, Line, count);
    int records = hung_count(wall);
    Length widest = wall_widest(wall);
    for (int i = 0; i < count; i++) {
        const Stock *stock = &wall->stock.at[i];
        lines[i] = (Line){stock, wall_stock_usable(stock, records), stock->width_given ? stock->width : widest, i};
    }
    if (count > 1)
        qsort(lines, (size_t)count, sizeof *lines, by_kind);
    int *kind_of = arena_array(arena, int, count);
    supply->kinds = arena_array(arena, Kind, count);
    for (int i = 0; i < count; i++) {
        if (i == 0 || compare_lines(&lines[i - 1], &lines[i]) != 0) {
            const Length given = given_up(lines[i].stock, supply->apart);
            supply->kinds[supply->kind_count++] = (Kind){.length = lines[i].stock->length,
                                                         .width = lines[i].width,
                                                         .slack = given > 0 ? supply->apart : 0,
                                                         .given = given,
                                                         .first = -1};
        }
        kind_of[lines[i].index] = supply->kind_count - 1;
    }
    return kind_of;
}

static void link_board(Supply *supply, int board)
{
    Kind *kind = &supply->kinds[supply->boards[board].kind];
    supply->boards[board].prev = -1;
    supply->boards[board].next = kind->first;
    if (kind->first >= 0)
        supply->boards[kind->first].prev = board;
    kind->first = board;
    if (kind->unopened++ == 0)
        for (int i = 0; i < kind->span_count; i++)
            buckets_put(&supply->unopened, kind->slot_first + i, supply->slots[kind->slot_first + i].left);
}

static void unlink_board(Supply *supply, int board)
{
    SupplyBoard *entry = &supply->boards[board];
    Kind *kind = &supply->kinds[entry->kind];
    if (entry->prev >= 0)
        supply->boards[entry->prev].next = entry->next;
    else
        kind->first = entry->next;
    if (entry->next >= 0)
        supply->boards[entry->next].prev = entry->prev;
    entry->next = entry->prev = -1;
    if (--kind->unopened == 0)
        for (int i = 0; i < kind->span_count; i++)
            buckets_take(&supply->unopened, kind->slot_first + i);
}

/* ---- opening and closing ---- */

static void put_span_in_bucket(Supply *supply, int span)
{
    if (supply->spans[span].left >= supply->smallest)
        buckets_put(&supply->open, span, supply->spans[span].left);
}

static void begin_board(Supply *supply, int board)
{
    SupplyBoard *entry = &supply->boards[board];
    for (int i = entry->span_first; i < entry->span_first + entry->span_count; i++) {
        put_span_in_bucket(supply, i);
        supply->salvaged += salvage_of(supply->salvage, supply->spans[i].left);
    }
    supply->length_opened += entry->length;
    supply->boards_opened++;
}

int supply_open(Supply *supply, int kind)
{
    int board = supply->kinds[kind].first;
    BUG_UNLESS(board >= 0);
    unlink_board(supply, board);
    begin_board(supply, board);
    return board;
}

static void close_board(Supply *supply, int board)
{
    SupplyBoard *entry = &supply->boards[board];
    for (int i = entry->span_first; i < entry->span_first + entry->span_count; i++) {
        buckets_take(&supply->open, i);
        supply->salvaged -= salvage_of(supply->salvage, supply->spans[i].left);
    }
    supply->length_opened -= supply->kinds[entry->kind].length;
    supply->boards_opened--;
    link_board(supply, board);
}

static bool is_unopened(const Supply *supply, int board)
{
    const SupplyBoard *entry = &supply->boards[board];
    return entry->kind >= 0 && (entry->prev >= 0 || entry->next >= 0 || supply->kinds[entry->kind].first == board);
}

static void change(Supply *supply, int index, Length by)
{
    Span *span = &supply->spans[index];
    supply->salvaged -= salvage_of(supply->salvage, span->left);
    buckets_take(&supply->open, index);
    span->left += by;
    supply->salvaged += salvage_of(supply->salvage, span->left);
    put_span_in_bucket(supply, index);
}

void supply_cut(Supply *supply, int index, Length wood, int run)
{
    Span *span = &supply->spans[index];
    BUG_UNLESS(wood > 0 && (wood <= span->left || span->cuts == 0));
    if (is_unopened(supply, span->board)) {
        unlink_board(supply, span->board);
        begin_board(supply, span->board);
    }
    change(supply, index, -(wood + supply->kerf));
    if (span->cuts == span->room) {
        int room = span->room == 0 ? 4 : 2 * span->room;
        int *runs = arena_array(supply->arena, int, room);
        if (span->cuts > 0)
            memcpy(runs, span->runs, (size_t)span->cuts * sizeof *runs);
        span->runs = runs;
        span->room = room;
    }
    span->runs[span->cuts++] = run;
    supply->boards[span->board].cuts++;
}

void supply_uncut(Supply *supply, int index, Length wood, int run)
{
    Span *span = &supply->spans[index];
    change(supply, index, wood + supply->kerf);
    int at = span->cuts - 1;
    while (at > 0 && span->runs[at] != run)
        at--;
    span->runs[at] = span->runs[--span->cuts];
    SupplyBoard *board = &supply->boards[span->board];
    if (--board->cuts == 0 && board->kind >= 0)
        close_board(supply, span->board);
}

void supply_withhold(Supply *supply, int board)
{
    unlink_board(supply, board);
}

void supply_return(Supply *supply, int board)
{
    link_board(supply, board);
}

void supply_open_free(Supply *supply)
{
    for (int i = 0; i < supply->slot_count; i++)
        supply->slots[i].price = salvage_of(supply->salvage, supply->slots[i].left);
}

/* ---- the whole supply ---- */

static void price_slots(Supply *supply)
{
    for (int i = 0; i < supply->kind_count; i++) {
        const Kind *kind = &supply->kinds[i];
        int64_t all = 0;
        for (int j = 0; j < kind->span_count; j++)
            all += salvage_of(supply->salvage, supply->slots[kind->slot_first + j].left);
        for (int j = 0; j < kind->span_count; j++) {
            Slot *slot = &supply->slots[kind->slot_first + j];
            slot->price = kind->length - (all - salvage_of(supply->salvage, slot->left));
        }
    }
}

void supply_use_salvage(Supply *supply, const Salvage *salvage)
{
    supply->salvage = salvage;
    supply->salvaged = 0;
    for (int i = 0; i < supply->span_count; i++)
        if (supply->boards[supply->spans[i].board].cuts > 0 || supply->boards[supply->spans[i].board].kind < 0)
            supply->salvaged += salvage_of(salvage, supply->spans[i].left);
    price_slots(supply);
}

static void add_slots(Arena *arena, Supply *supply, const Spans *spans)
{
    supply->slots = arena_array(arena, Slot, spans->count + 1);
    for (int board = 0; board < supply->board_count; board++) {
        const SupplyBoard *entry = &supply->boards[board];
        if (entry->kind < 0 || supply->kinds[entry->kind].count++ > 0)
            continue;
        Kind *kind = &supply->kinds[entry->kind];
        kind->slot_first = supply->slot_count;
        kind->span_count = entry->span_count;
        BUG_UNLESS(entry->span_count == 0 || spans->at != NULL);
        for (int i = 0; i < entry->span_count; i++)
            supply->slots[supply->slot_count++] =
                (Slot){.kind = entry->kind, .span = i, .left = spans->at[entry->span_first + i].left};
    }
}

/* What was taken of each board, listed by board: index + 1 of the first and, by that, of each next; 0 ends. */
typedef struct Taken {
    int *hung_first, *hung_next; /* pieces that hang */
    int *loss_first, *loss_next; /* wood lost */
} Taken;

static Taken list_taken(Arena *arena, const Demand *demand, int board_count)
{
    const HungLosses *losses = &demand->wall->hung_losses;
    const Taken taken = {.hung_first = arena_array(arena, int, board_count + 2),
                         .hung_next = arena_array(arena, int, demand->hung_count + 1),
                         .loss_first = arena_array(arena, int, board_count + 2),
                         .loss_next = arena_array(arena, int, losses->count + 1)};
    for (int i = demand->hung_count - 1; i >= 0; i--) {
        if (demand->hung[i].fault != HUNG_FITS)
            continue;
        taken.hung_next[i] = taken.hung_first[demand->hung[i].board];
        taken.hung_first[demand->hung[i].board] = i + 1;
    }
    for (int i = losses->count - 1; i >= 0; i--) {
        const int of = losses->at[i].board;
        if (of < 1 || of > board_count)
            continue;
        taken.loss_next[i] = taken.loss_first[of];
        taken.loss_first[of] = i + 1;
    }
    return taken;
}

static void take_out_taken(Arena *arena, Spans *spans, int first, const Demand *demand, const Taken *taken, int number)
{
    const Length kerf = demand->wall->saw.kerf;
    for (int hung = taken->hung_first[number]; hung > 0; hung = taken->hung_next[hung - 1]) {
        const Hung *piece = &demand->hung[hung - 1];
        const Length end = piece->offset + (piece->right - piece->left) + piece->closer;
        take_out(arena, spans, first, piece->offset - piece->left_kerf + kerf, end + piece->right_kerf - kerf, kerf, 0);
    }
    for (int loss = taken->loss_first[number]; loss > 0; loss = taken->loss_next[loss - 1]) {
        const HungLoss *lost = &demand->wall->hung_losses.at[loss - 1];
        take_out(arena, spans, first, lost->offset, lost->offset + lost->length, kerf, 0);
    }
}

static void find_boards(Arena *arena, Supply *supply, const Demand *demand, Spans *spans)
{
    const Wall *wall = demand->wall;
    const int *kind_of = sort_kinds(arena, supply, wall);
    const Taken taken = list_taken(arena, demand, supply->board_count);
    int board = 0;
    for (int line = 0; line < wall->stock.count; line++) {
        const Stock *stock = &wall->stock.at[line];
        for (int i = 0; i < stock->count; i++, board++) {
            SupplyBoard *entry = &supply->boards[board];
            const bool whole = taken.hung_first[board + 1] == 0 && taken.loss_first[board + 1] == 0;
            entry->span_first = spans->count;
            entry->next = entry->prev = -1;
            entry->length = stock->length;
            entry->kind = whole ? kind_of[line] : -1;
            supply->widths[board] = supply->kinds[kind_of[line]].width;
            add_spans(arena, spans, board, wall, stock, supply->apart);
            take_out_taken(arena, spans, entry->span_first, demand, &taken, board + 1);
            settle(spans, entry->span_first, demand->smallest - supply->kinds[kind_of[line]].slack,
                   whole ? 0 : supply->slant);
            entry->span_count = spans->count - entry->span_first;
        }
    }
}

/* Whether some board as it lies can give the run in one piece. */
const Salvage *salvage_none(void)
{
    static int64_t nothing[1];
    static const Salvage none = {.width = LENGTH_MOST, .count = 1, .at = nothing};
    return &none;
}

static bool gives_whole(const Supply *supply, const Run *run)
{
    for (int i = 0; i < supply->span_count; i++) {
        const Span *span = &supply->spans[i];
        if (span->to - span->from >= run->right - run->left && supply->widths[span->board] >= run->need)
            return true;
    }
    return false;
}

static void find_single(Arena *arena, Supply *supply, const Demand *demand)
{
    supply->single = arena_array(arena, bool, demand->run_count);
    for (int i = 0; i < demand->run_count; i++) {
        const Run *run = &demand->runs[i];
        supply->single[i] = run->right - run->left < 2 * run->shortest &&
                            demand_whole(demand, run, run->left, run->right) && gives_whole(supply, run);
    }
}

Supply *supply_new(Arena *arena, const Demand *demand)
{
    Supply *supply = arena_one(arena, Supply);
    supply->arena = arena;
    supply->wall = demand->wall;
    supply->kerf = demand->kerf;
    for (int i = 0; i < demand->run_count; i++) {
        Length slant = demand_slant(demand, &demand->runs[i], demand->runs[i].left, demand->runs[i].right);
        supply->slant = slant > supply->slant ? slant : supply->slant;
    }
    supply->apart = supply->kerf + supply->slant;
    supply->smallest = demand->smallest;
    supply->board_count = wall_board_count(demand->wall);
    supply->boards = arena_array(arena, SupplyBoard, supply->board_count);
    supply->widths = arena_array(arena, Length, supply->board_count);
    supply->salvage = salvage_none();
    Spans spans = {0};
    find_boards(arena, supply, demand, &spans);
    Length need = 0;
    for (int i = 0; i < demand->run_count; i++)
        need = demand->runs[i].need > need ? demand->runs[i].need : need;
    for (int i = 0; i < supply->kind_count; i++)
        supply->narrow = supply->narrow || supply->kinds[i].width < need;
    supply->spans = spans.at;
    supply->span_count = spans.count;
    for (int i = 0; i < spans.count; i++)
        if (spans.at[i].left > supply->longest)
            supply->longest = spans.at[i].left;
    add_slots(arena, supply, &spans);
    buckets_start(&supply->open, arena, supply->span_count, supply->longest);
    buckets_start(&supply->unopened, arena, supply->slot_count, supply->longest);
    for (int board = supply->board_count - 1; board >= 0; board--) {
        if (supply->boards[board].kind >= 0)
            link_board(supply, board);
        else
            begin_board(supply, board);
    }
    price_slots(supply);
    find_single(arena, supply, demand);
    return supply;
}
