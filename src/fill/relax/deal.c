/*
 * Invariants: left[] is what each span still holds once the pieces given it are cut; a board none of whose spans has
 * given anything counts as unopened.
 */
#include "fill/relax/deal.h"

/* A piece that the ways ask for. */
typedef struct Wanted {
    int run, size;
    Length left, right;
    int span; /* -1: no wood yet */
} Wanted;

typedef struct Deal {
    Arena *arena;
    const Price *price;
    Laid *laid;
    const Chosen *chosen;
    const SettledList *settled;
    struct {
        Wanted *at;
        int count, room;
    } wanted;          /* run by run */
    int *by_size;      /* wanted pieces sorted by size */
    int *first, *last; /* of each size: where those not given yet begin, and its end */
    Length *left;      /* of each span */
    int *next;         /* of each kind: the first board that may be untouched */
} Deal;

static void find_wanted(Deal *deal)
{
    const Demand *demand = deal->laid->demand;
    for (int i = 0; i < demand->run_count; i++) {
        if (deal->chosen[i].column < 0)
            continue;
        const Run *run = &demand->runs[i];
        const Block *block = &deal->price->blocks[deal->price->block_of[i]];
        Way way = price_way(deal->price, deal->chosen[i].column, deal->chosen[i].above);
        for (int j = way.count - 1; j >= 0; j--)
            *arena_push(deal->arena, &deal->wanted) =
                (Wanted){i, price_size(deal->price, block, &way, j), ways_place(demand, run, way_from(&way, j)),
                         ways_place(demand, run, way.parts[j].at), -1};
    }
}

static bool span_fits(const Deal *deal, const Wanted *wanted, int span)
{
    const Laid *laid = deal->laid;
    const Pile *pile = laid->pile;
    if (wanted->span >= 0 || wanted->right - wanted->left > deal->left[span])
        return false;
    return !pile->narrow || demand_need(laid->demand, &laid->demand->runs[wanted->run], wanted->left, wanted->right) <=
                                pile->widths[pile->spans[span].board];
}

static void give(Deal *deal, Wanted *wanted, int span)
{
    wanted->span = span;
    deal->left[span] -= wanted->right - wanted->left + deal->laid->demand->kerf;
}

static bool is_touched(const Deal *deal, int board)
{
    const Pile *pile = deal->laid->pile;
    for (int i = 0; i < pile->boards[board].span_count; i++) {
        int span = pile->boards[board].span_first + i;
        if (deal->left[span] != pile->spans[span].left)
            return true;
    }
    return false;
}

/* A board of the kind from which nothing is cut yet; -1 where there is none. */
static int untouched(Deal *deal, int kind)
{
    int *next = &deal->next[kind];
    while (*next >= 0 && is_touched(deal, *next))
        *next = deal->laid->pile->boards[*next].next;
    return *next;
}

/* The first piece of the size that fits; -1 where none does. */
static int fitting(Deal *deal, int size, int span)
{
    int *from = &deal->first[size];
    while (*from < deal->last[size] && deal->wanted.at[deal->by_size[*from]].span >= 0)
        ++*from;
    for (int i = *from; i < deal->last[size]; i++)
        if (span_fits(deal, &deal->wanted.at[deal->by_size[i]], span))
            return deal->by_size[i];
    return -1;
}

/* A board for the pattern: of its kind, or, where there is none left, the shortest that holds as much; -1 where there
 * is none. */
static int board_for(Deal *deal, const Note *note)
{
    const Pile *pile = deal->laid->pile;
    int board = untouched(deal, note->of);
    int64_t cells = 0;
    for (int i = note->first; i < note->first + note->count; i++)
        cells += deal->price->sizes->cells[deal->price->parts.at[i].at];
    for (int i = 0; i < pile->kind_count && board < 0 && pile->kinds[note->of].span_count == 1; i++) {
        const Kind *kind = &pile->kinds[i];
        if (kind->span_count == 1 &&
            (pile->slots[kind->slot_first].left + pile->kerf) / deal->price->sizes->width >= cells)
            board = untouched(deal, i);
    }
    return board;
}

static void give_out_patterns(Deal *deal)
{
    const Pile *pile = deal->laid->pile;
    for (int i = 0; i < deal->settled->count; i++) {
        const Note *note = &deal->price->notes.at[deal->settled->at[i].column];
        for (int j = 0; j < deal->settled->at[i].times; j++) {
            int board = board_for(deal, note);
            for (int k = note->first; k < note->first + note->count && board >= 0; k++) {
                const ColumnPart *part = &deal->price->parts.at[k];
                int span = pile->boards[board].span_first + part->span;
                int piece = fitting(deal, part->at, span);
                if (piece >= 0)
                    give(deal, &deal->wanted.at[piece], span);
            }
        }
    }
}

/* What the patterns had no slot for: the shortest rest that fits, else the shortest board. */
static void give_out_rest(Deal *deal)
{
    const Pile *pile = deal->laid->pile;
    for (int i = 0; i < deal->wanted.count; i++) {
        Wanted *wanted = &deal->wanted.at[i];
        int best = -1;
        bool best_opened = false;
        for (int j = 0; j < pile->span_count && wanted->span < 0; j++) {
            if (!span_fits(deal, wanted, j))
                continue;
            bool opened = deal->left[j] != pile->spans[j].left;
            if (best < 0 || opened > best_opened || (opened == best_opened && deal->left[j] < deal->left[best])) {
                best = j;
                best_opened = opened;
            }
        }
        if (best >= 0)
            give(deal, wanted, best);
    }
}

static void sort_by_size(Deal *deal)
{
    int sizes = deal->price->sizes->count;
    deal->by_size = arena_array(deal->arena, int, deal->wanted.count + 1);
    deal->first = arena_array(deal->arena, int, sizes + 1);
    deal->last = arena_array(deal->arena, int, sizes + 1);
    for (int i = 0; i < deal->wanted.count; i++)
        deal->first[deal->wanted.at[i].size + 1]++;
    for (int i = 0; i < sizes; i++) {
        deal->first[i + 1] += deal->first[i];
        deal->last[i] = deal->first[i];
    }
    for (int i = 0; i < deal->wanted.count; i++)
        deal->by_size[deal->last[deal->wanted.at[i].size]++] = i;
}

static void lay_whole_runs(const Deal *deal)
{
    Placed *pieces = arena_array(deal->arena, Placed, deal->wanted.count + 1);
    for (int i = 0; i < deal->wanted.count;) {
        int run = deal->wanted.at[i].run, count = 0;
        bool whole = true;
        for (; i < deal->wanted.count && deal->wanted.at[i].run == run; i++) {
            const Wanted *wanted = &deal->wanted.at[i];
            pieces[count++] = (Placed){wanted->left, wanted->right, wanted->span};
            whole = whole && wanted->span >= 0;
        }
        if (whole)
            laid_set(deal->laid, run, pieces, count);
    }
}

void deal_lay(Arena *arena, const Price *price, Laid *laid, const Chosen *chosen, const SettledList *settled)
{
    Deal deal = {.arena = arena, .price = price, .laid = laid, .chosen = chosen, .settled = settled};
    find_wanted(&deal);
    sort_by_size(&deal);
    deal.left = arena_array(arena, Length, laid->pile->span_count);
    for (int i = 0; i < laid->pile->span_count; i++)
        deal.left[i] = laid->pile->spans[i].left;
    deal.next = arena_array(arena, int, laid->pile->kind_count);
    for (int i = 0; i < laid->pile->kind_count; i++)
        deal.next[i] = laid->pile->kinds[i].first;
    give_out_patterns(&deal);
    give_out_rest(&deal);
    lay_whole_runs(&deal);
}
