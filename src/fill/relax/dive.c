/*
 *     climb     ways of all runs
 *     patterns  whole boards first, then always the one nearest to a whole board more
 *     deal      slots of the patterns get the pieces of the ways
 *
 * Invariant: need[] is what the settled ways ask for, less what the settled patterns give, size by size; below 0 where
 * a pattern gives more than is asked for.
 */
#include "fill/relax/dive.h"

#include "fill/relax/climb.h"
#include "fill/relax/deal.h"

enum {
    BEAM = 8,
    TURNS = 400,
    TURNS_A_ROW = 40,
    TOGETHER = 96 /* runs or boards settled one by one; of more, several at once */
};

#define NEAR_ONE (SIMPLEX_ONE / 64)
#define ROUND (SIMPLEX_ONE / 4 * 3)
#define GAIN LENGTH_MM          /* of a turn; less is not worth it here */
#define LITTLE (LENGTH_MM / 20) /* what a turn may lose beyond the least */

struct Dive {
    Arena *arena;
    Price *price;
    Laid *laid;
    Weave *weave;
    Climb *climb;
    int turns;    /* of the table that may still be made: a table that turns without end is left as it is */
    bool climbed; /* every way is settled, and `need` counted */
    int *need;
    SettledList settled;
};

/* ---- begin ---- */

Dive *dive_new(Arena *arena, Price *price, Laid *laid, Weave *weave)
{
    Dive *dive = arena_one(arena, Dive);
    dive->arena = arena;
    dive->price = price;
    dive->laid = laid;
    dive->weave = weave;
    dive->climb = climb_new(arena, price, laid);
    dive->need = arena_array(arena, int, price->sizes->count);
    dive->turns = TURNS_A_ROW * price->rows;
    price_raise(price); /* a whole board is dear at the end, but cheaper than nothing */
    price_raise(price);
    return dive;
}

/* ---- the table ---- */

static void put_right(Dive *dive, int64_t *work)
{
    Simplex *table = dive->price->table;
    int most = dive->turns < TURNS ? dive->turns : TURNS;
    int left = most;
    while (left > 0 && simplex_mend(table, LITTLE))
        left--;
    while (left > 0 && simplex_turn(table, GAIN))
        left--;
    dive->turns -= most - left;
    *work += (most - left) * price_turn_work(dive->price);
}

static void find_columns(Dive *dive, int64_t *work)
{
    Price *price = dive->price;
    price_read(price);
    *work += price_column_work(price);
    if (price_add_columns(price, GAIN))
        put_right(dive, work);
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
    deal_lay(dive->arena, dive->price, laid, climb_chosen(dive->climb), &dive->settled);
    for (int i = 0; i < laid->demand->run_count; i++)
        if (laid->covers[i].count == 0)
            *work += weave_run(dive->weave, i, BEAM, NULL);
}

/* ---- steps ---- */

static void count_need(Dive *dive)
{
    const Price *price = dive->price;
    const Chosen *chosen = climb_chosen(dive->climb);
    for (int i = 0; i < dive->laid->demand->run_count; i++) {
        if (chosen[i].column < 0)
            continue;
        Way way = price_way(price, chosen[i].column, chosen[i].above);
        for (int j = 0; j < way.count; j++)
            dive->need[price_size(price, &price->blocks[price->block_of[i]], &way, j)]++;
    }
}

bool dive_once(Dive *dive, int64_t *work)
{
    *work += 1;
    if (!dive->climbed) {
        int together = 1 + dive->laid->demand->run_count / TOGETHER;
        for (int i = 0; i < together && !dive->climbed; i++)
            dive->climbed = !climb_on(dive->climb, work);
        put_right(dive, work);
        find_columns(dive, work);
        if (dive->climbed)
            count_need(dive);
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
