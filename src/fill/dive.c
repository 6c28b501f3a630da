/*
 *     ways      row by row upward, all faces side by side; `way` of each run is a column of the table
 *     patterns  whole boards first, then always the one nearest to a whole board more
 *     lay       slots of the patterns get the pieces of the ways
 *
 * Invariant: need[] is what the settled ways ask for, less what the settled patterns give, size by size; below 0 where
 * a pattern gives more than is asked for.
 */
#include "fill/dive.h"

#include "fill/deal.h"

enum {
    BEAM = 8,
    TURNS = 400,
    TOGETHER = 96 /* runs or boards settled one by one; of more, several at once */
};

#define NEAR_ONE (SIMPLEX_ONE / 64)
#define ROUND (SIMPLEX_ONE / 4 * 3)
#define GAIN LENGTH_MM /* of a turn; less is not worth it here */

struct Dive {
    Arena *arena;
    Price *price;
    Laid *laid;
    Weave *weave;
    int *order; /* of runs */
    int next;
    int *way;      /* column of each run, -1 where none is settled */
    bool *closed;  /* places of the run in hand */
    bool *reached; /* of one above it */
    int *need;
    SettledList settled;
};

/* ---- begin ---- */

/* Bottom rows of all faces first, then those above them, and so on. */
static void find_order(Dive *dive)
{
    const Demand *demand = dive->laid->demand;
    int count = 0;
    for (int rank = 0; count < demand->run_count; rank++)
        for (int i = 0, above = 0; i < demand->row_count; i++, above++) {
            if (i > 0 && demand->rows[i].face != demand->rows[i - 1].face)
                above = 0;
            for (int j = 0; above == rank && j < demand->rows[i].run_count; j++)
                dive->order[count++] = demand->rows[i].run_first + j;
        }
}

Dive *dive_new(Arena *arena, Price *price, Laid *laid, Weave *weave)
{
    Dive *dive = arena_one(arena, Dive);
    const Demand *demand = laid->demand;
    dive->arena = arena;
    dive->price = price;
    dive->laid = laid;
    dive->weave = weave;
    dive->order = arena_array(arena, int, demand->run_count);
    dive->way = arena_array(arena, int, demand->run_count);
    int places = 0;
    for (int i = 0; i < demand->run_count; i++) {
        dive->way[i] = -1;
        places = demand->runs[i].stud_count > places ? demand->runs[i].stud_count : places;
    }
    dive->closed = arena_array(arena, bool, places + 2);
    dive->reached = arena_array(arena, bool, places + 2);
    dive->need = arena_array(arena, int, price->sizes->count);
    find_order(dive);
    price_raise(price); /* a whole board is dear at the end, but cheaper than nothing */
    price_raise(price);
    return dive;
}

/* ---- the table ---- */

static int64_t work_of_turn(const Price *price)
{
    int64_t rows = price->sizes->count + price->block_count + price->band_count + price->stud_count;
    return rows * rows / 32;
}

static void put_right(Dive *dive, int64_t *work)
{
    Simplex *table = dive->price->table;
    int most = TURNS;
    while (most-- > 0 && simplex_mend(table))
        *work += work_of_turn(dive->price);
    while (most-- > 0 && simplex_turn(table, GAIN))
        *work += work_of_turn(dive->price);
}

static void find_columns(Dive *dive, int64_t *work)
{
    Price *price = dive->price;
    price_read(price);
    *work += (int64_t)price->sizes->count * price->sizes->cell_count / 32;
    if (price_add_columns(price, GAIN))
        put_right(dive, work);
}

/* ---- ways ---- */

/* Whether a joint at x is too near to one of a run that is laid that way. */
static bool is_near(const Dive *dive, const Run *run, const Note *note, Length x)
{
    Length stagger = dive->laid->demand->stagger;
    for (int i = note->first + 1; i < note->first + note->count; i++) {
        Length joint = price_place(dive->laid->demand, run, dive->price->parts.at[i].at);
        if (joint > x - stagger && joint < x + stagger)
            return true;
    }
    return false;
}

/* Whether a joint at x keeps its stagger to the ways settled and to what is hung. */
static bool keeps_stagger(const Dive *dive, const Run *run, Length x)
{
    const Demand *demand = dive->laid->demand;
    const Row *row = &demand->rows[run->row];
    const int beside[] = {row->below, row->above};
    for (int i = 0; i < 2 && demand->stagger > 0; i++) {
        const Row *other = beside[i] >= 0 ? &demand->rows[beside[i]] : NULL;
        if (other == NULL)
            continue;
        if (demand_near(&other->joints, x, demand->stagger) > 0)
            return false;
        for (int j = other->run_first; j < other->run_first + other->run_count; j++) {
            if (dive->way[j] >= 0 && is_near(dive, &demand->runs[j], &dive->price->notes.at[dive->way[j]], x))
                return false;
        }
    }
    return true;
}

static void close_places(Dive *dive, const Run *run)
{
    for (int i = 1; i <= run->stud_count; i++)
        dive->closed[i] = !keeps_stagger(dive, run, price_place(dive->laid->demand, run, i));
    dive->closed[0] = dive->closed[run->stud_count + 1] = false;
}

/* Whether the run itself, which may be longer than its block, can be laid that way. */
static bool way_fits(const Dive *dive, const Run *run, const Note *note)
{
    const Demand *demand = dive->laid->demand;
    const ColumnPart *parts = dive->price->parts.at + note->first;
    for (int i = 0; i < note->count; i++) {
        Length right = price_place(demand, run, parts[i].at);
        Length left = price_place(demand, run, i + 1 < note->count ? parts[i + 1].at : 0);
        if (dive->closed[parts[i].at] || right - left < run->shortest || right - left > dive->laid->pile->longest ||
            !demand_whole(demand, run, left, right))
            return false;
    }
    return true;
}

/* Whether the runs above still have a way when this one is laid so. */
static bool leaves_ways(const Dive *dive, const Run *run, const Note *note)
{
    const Demand *demand = dive->laid->demand;
    int above = demand->rows[run->row].above;
    if (above < 0 || demand->stagger == 0)
        return true;
    for (int i = demand->rows[above].run_first; i < demand->rows[above].run_first + demand->rows[above].run_count;
         i++) {
        const Run *other = &demand->runs[i];
        int last = other->stud_count + 1;
        bool *reached = dive->reached;
        reached[0] = true;
        for (int j = 1; j <= last; j++) {
            reached[j] = false;
            Length to = price_place(demand, other, j);
            if (j < last && (is_near(dive, run, note, to) || !keeps_stagger(dive, other, to)))
                continue;
            for (int k = j - 1; k >= 0 && !reached[j]; k--) {
                Length length = to - price_place(demand, other, k);
                reached[j] = reached[k] && length >= other->shortest && length <= dive->laid->pile->longest;
            }
        }
        if (!reached[last])
            return false;
    }
    return true;
}

/* The way that the table uses most of those that fit; -1 where it uses none. */
static int most_used_way(const Dive *dive, const Run *run, int block)
{
    const Price *price = dive->price;
    int best = -1;
    int64_t most = NEAR_ONE;
    for (int i = 0; i < price->notes.count; i++) {
        const Note *note = &price->notes.at[i];
        int64_t value = note->kind == COLUMN_WAY && note->of == block ? simplex_value(price->table, i) : 0;
        if (value > most && way_fits(dive, run, note) && leaves_ways(dive, run, note)) {
            best = i;
            most = value;
        }
    }
    return best;
}

static void settle_way(Dive *dive, int index, int64_t *work)
{
    Price *price = dive->price;
    const Run *run = &dive->laid->demand->runs[index];
    int block = price->block_of[index];
    close_places(dive, run);
    int column = most_used_way(dive, run, block);
    if (column < 0) {
        price_read(price);
        *work += (int64_t)price->sizes->count * price->sizes->cell_count / 32;
        if (price_cheapest_way(price, &price->blocks[block], dive->closed) < 0)
            return;
        column = price_put_way(price, block);
        if (!way_fits(dive, run, &price->notes.at[column]))
            return;
    }
    dive->way[index] = column;
    simplex_settle(price->table, column, 1);
    const Note *note = &price->notes.at[column];
    for (int i = 0; i < note->count; i++) {
        const ColumnPart *parts = price->parts.at + note->first;
        const Run *taken = &price->blocks[block].run;
        Length left = price_place(dive->laid->demand, taken, i + 1 < note->count ? parts[i + 1].at : 0);
        dive->need[price_size(price, price_place(dive->laid->demand, taken, parts[i].at) - left)]++;
    }
}

/* ---- patterns ---- */

static void settle_pattern(Dive *dive, int column, int times)
{
    const Note *note = &dive->price->notes.at[column];
    *arena_push(dive->arena, &dive->settled) = (Settled){column, times};
    simplex_settle(dive->price->table, column, times);
    for (int i = note->first; i < note->first + note->count; i++)
        dive->need[dive->price->parts.at[i].at] -= times;
}

static bool is_needed(const Dive *dive, const Note *note)
{
    for (int i = note->first; i < note->first + note->count; i++)
        if (dive->need[dive->price->parts.at[i].at] > 0)
            return true;
    return false;
}

static bool all_needed(const Dive *dive, const Note *note)
{
    const ColumnPart *parts = dive->price->parts.at + note->first;
    for (int i = 0; i < note->count; i++) {
        int alike = 0;
        for (int j = 0; j < note->count; j++)
            alike += parts[j].at == parts[i].at;
        if (dive->need[parts[i].at] < alike)
            return false;
    }
    return true;
}

/* Settles what is whole, or nearly; then the pattern of which most is missing to a whole board no more. False where
 * none is left. */
static bool settle_patterns(Dive *dive)
{
    const Price *price = dive->price;
    int best = -1;
    int64_t most = NEAR_ONE;
    bool whole = false;
    for (int i = 0; i < price->notes.count; i++) {
        if (price->notes.at[i].kind != COLUMN_PATTERN)
            continue;
        int64_t value = simplex_value(price->table, i);
        int times = (int)((value + NEAR_ONE) / SIMPLEX_ONE);
        if (times == 0 && value >= ROUND && all_needed(dive, &price->notes.at[i]))
            times = 1;
        if (times > 0) {
            settle_pattern(dive, i, times);
            whole = true;
        } else if (value > most && is_needed(dive, &price->notes.at[i])) {
            best = i;
            most = value;
        }
    }
    if (whole)
        return true;
    if (best >= 0)
        settle_pattern(dive, best, 1);
    return best >= 0;
}

static bool is_covered(const Dive *dive)
{
    for (int i = 0; i < dive->price->sizes->count; i++)
        if (dive->need[i] > 0)
            return false;
    return true;
}

/* ---- laying ---- */

static void lay(Dive *dive, int64_t *work)
{
    Laid *laid = dive->laid;
    deal_lay(dive->arena, dive->price, laid, dive->way, &dive->settled);
    for (int i = 0; i < laid->demand->run_count; i++)
        if (laid->covers[dive->order[i]].count == 0)
            *work += weave_run(dive->weave, dive->order[i], BEAM, NULL);
}

/* ---- steps ---- */

bool dive_once(Dive *dive, int64_t *work)
{
    const Demand *demand = dive->laid->demand;
    *work += 1;
    if (dive->next < demand->run_count) {
        int together = 1 + demand->run_count / TOGETHER;
        for (int i = 0; i < together && dive->next < demand->run_count; i++)
            settle_way(dive, dive->order[dive->next++], work);
        put_right(dive, work);
        find_columns(dive, work);
        return false;
    }
    if (!is_covered(dive) && !simplex_worn(dive->price->table)) {
        find_columns(dive, work);
        int together = 1 + dive->laid->pile->board_count / (8 * TOGETHER);
        bool settled = true;
        for (int i = 0; i < together && settled; i++)
            settled = settle_patterns(dive);
        put_right(dive, work);
        if (settled)
            return false;
    }
    lay(dive, work);
    return true;
}
