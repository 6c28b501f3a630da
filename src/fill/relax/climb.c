/*
 *     row 3          order[4]             order[5]          chosen from what rows 2 and 4 leave open
 *     row 2   =======|======  window  =====|=========       settled
 *     row 1   ===|=========  window  ==========|=====       settled
 *
 * Invariant: the runs of a block are settled from the lowest up, pair after pair, then the odd one; what is not settled
 * is in the table.
 */
#include "fill/relax/climb.h"

#define USED_LEAST (SIMPLEX_ONE / 64)

struct Climb {
    Price *price;
    const Laid *laid;
    int *order; /* of runs */
    int next;
    int *over;       /* of each run: the one above it in its block, -1 where there is none */
    int *pairs;      /* of each block: still in the table */
    bool *settled;   /* of each run */
    Chosen *chosen;  /* of each run */
    bool *closed[2]; /* places of the run in hand and of the one over it */
    bool *reached;   /* places of a run above */
};

/* Bottom rows of all faces first, then those above them, and so on. */
static void find_order(Climb *climb)
{
    const Demand *demand = climb->laid->demand;
    int count = 0;
    for (int rank = 0; count < demand->run_count; rank++)
        for (int i = 0, above = 0; i < demand->row_count; i++, above++) {
            if (i > 0 && demand->rows[i].face != demand->rows[i - 1].face)
                above = 0;
            for (int j = 0; above == rank && j < demand->rows[i].run_count; j++)
                climb->order[count++] = demand->rows[i].run_first + j;
        }
}

Climb *climb_new(Arena *arena, Price *price, const Laid *laid)
{
    Climb *climb = arena_one(arena, Climb);
    const Demand *demand = laid->demand;
    climb->price = price;
    climb->laid = laid;
    climb->order = arena_array(arena, int, demand->run_count);
    climb->over = arena_array(arena, int, demand->run_count);
    climb->chosen = arena_array(arena, Chosen, demand->run_count);
    climb->pairs = arena_array(arena, int, price->block_count);
    climb->settled = arena_array(arena, bool, demand->run_count);
    int *last = arena_array(arena, int, price->block_count);
    for (int i = 0; i < price->block_count; i++) {
        climb->pairs[i] = price->blocks[i].pairs;
        last[i] = -1;
    }
    int places = 0;
    for (int i = 0; i < demand->run_count; i++) {
        int block = price->block_of[i];
        climb->chosen[i].column = -1;
        climb->over[i] = -1;
        if (last[block] >= 0)
            climb->over[last[block]] = i;
        last[block] = i;
        places = demand->runs[i].stud_count > places ? demand->runs[i].stud_count : places;
    }
    for (int i = 0; i < 2; i++)
        climb->closed[i] = arena_array(arena, bool, places + 2);
    climb->reached = arena_array(arena, bool, places + 2);
    find_order(climb);
    return climb;
}

const Chosen *climb_chosen(const Climb *climb)
{
    return climb->chosen;
}

/* ---- stagger ---- */

/* Whether a joint at x is too near to one of a run that is laid that way. */
static bool is_near(const Climb *climb, const Run *run, const Way *way, Length x)
{
    Length stagger = climb->laid->demand->stagger;
    for (int i = 1; i < way->count; i++) {
        Length joint = ways_place(climb->laid->demand, run, way->parts[i].at);
        if (joint > x - stagger && joint < x + stagger)
            return true;
    }
    return false;
}

/* Whether a joint at x keeps its stagger to the ways settled and to what hangs. */
static bool keeps_stagger(const Climb *climb, const Run *run, Length x)
{
    const Demand *demand = climb->laid->demand;
    const int beside[] = {demand->rows[run->row].below, demand->rows[run->row].above};
    for (int i = 0; i < 2 && demand->stagger > 0; i++) {
        if (beside[i] < 0)
            continue;
        const Row *row = &demand->rows[beside[i]];
        if (demand_near(&row->joints, x, demand->stagger) > 0)
            return false;
        for (int j = row->run_first; j < row->run_first + row->run_count; j++) {
            if (climb->chosen[j].column < 0)
                continue;
            Way way = price_way(climb->price, climb->chosen[j].column, climb->chosen[j].above);
            if (is_near(climb, &demand->runs[j], &way, x))
                return false;
        }
    }
    return true;
}

static void close_places(Climb *climb, int run, bool *closed)
{
    const Demand *demand = climb->laid->demand;
    int end = demand->runs[run].stud_count + 1;
    for (int i = 1; i < end; i++)
        closed[i] = !keeps_stagger(climb, &demand->runs[run], ways_place(demand, &demand->runs[run], i));
    closed[0] = closed[end] = false;
}

/* Whether the run itself, which may be longer than its block, can be laid that way. */
static bool can_be_laid(const Climb *climb, const Run *run, const Way *way)
{
    const Demand *demand = climb->laid->demand;
    for (int i = 0; i < way->count; i++) {
        Length right = ways_place(demand, run, way->parts[i].at);
        Length left = ways_place(demand, run, way_from(way, i));
        if (right - left < run->shortest || right - left > climb->laid->pile->longest ||
            !demand_whole(demand, run, left, right))
            return false;
    }
    return true;
}

static bool keeps_clear(const Way *way, const bool *closed)
{
    for (int i = 1; i < way->count; i++)
        if (closed[way->parts[i].at])
            return false;
    return true;
}

/* Whether `other`, above the run, still has a way when the run is laid so. */
static bool leaves_way(const Climb *climb, const Run *run, const Way *way, const Run *other)
{
    const Demand *demand = climb->laid->demand;
    int end = other->stud_count + 1;
    bool *reached = climb->reached;
    reached[0] = true;
    for (int to = 1; to <= end; to++) {
        Length x = ways_place(demand, other, to);
        reached[to] = false;
        if (to < end && (is_near(climb, run, way, x) || !keeps_stagger(climb, other, x)))
            continue;
        for (int from = to - 1; from >= 0 && !reached[to]; from--) {
            Length length = x - ways_place(demand, other, from);
            if (length > climb->laid->pile->longest)
                break;
            reached[to] = reached[from] && length >= other->shortest;
        }
    }
    return reached[end];
}

static bool leaves_ways(const Climb *climb, int index, const Way *way)
{
    const Demand *demand = climb->laid->demand;
    const Run *run = &demand->runs[index];
    int above = demand->rows[run->row].above;
    if (above < 0 || demand->stagger == 0)
        return true;
    const Row *row = &demand->rows[above];
    for (int i = row->run_first; i < row->run_first + row->run_count; i++)
        if (!leaves_way(climb, run, way, &demand->runs[i]))
            return false;
    return true;
}

/* ---- choosing ---- */

/* Whether the run can take this way of the column, and the one over it (-1: none) the other. */
static bool fits(const Climb *climb, int column, bool above, int run, int over)
{
    const Run *runs = climb->laid->demand->runs;
    Way way = price_way(climb->price, column, above);
    if (!keeps_clear(&way, climb->closed[0]) || !can_be_laid(climb, &runs[run], &way))
        return false;
    if (over < 0)
        return leaves_ways(climb, run, &way);
    way = price_way(climb->price, column, !above);
    return keeps_clear(&way, climb->closed[1]) && can_be_laid(climb, &runs[over], &way) &&
           leaves_ways(climb, over, &way);
}

/* The column of the block that the table uses most of those that fit, pairs where there is a run over this one. */
static Chosen most_used(const Climb *climb, int run, int over)
{
    const Price *price = climb->price;
    Chosen best = {.column = -1};
    int64_t most = USED_LEAST;
    for (int i = 0; i < price->notes.count; i++) {
        const Note *note = &price->notes.at[i];
        if (note->kind != COLUMN_WAYS || note->of != price->block_of[run] ||
            (note->lower < note->count) != (over >= 0) || simplex_value(price->table, i) <= most)
            continue;
        for (int above = 0; above <= (over >= 0 ? 1 : 0); above++)
            if (fits(climb, i, above != 0, run, over)) {
                best = (Chosen){i, above != 0};
                most = simplex_value(price->table, i);
                break;
            }
    }
    return best;
}

/* The cheapest at the prices of now, which keeps clear of closed places as far as can be; column -1 where there is
 * none. */
static Chosen cheapest(Climb *climb, int run, int over, int64_t *work)
{
    Price *price = climb->price;
    int index = price->block_of[run];
    const Block *block = &price->blocks[index];
    price_read(price);
    *work += price_column_work(price);
    int64_t cost = over >= 0 ? ways_two(price->ways, &block->run, price->prices, climb->closed[0], climb->closed[1])
                             : ways_one(price->ways, &block->run, price->prices, climb->closed[0]);
    if (cost < 0)
        return (Chosen){.column = -1};
    return (Chosen){price_put_ways(price, index, over >= 0), false};
}

/* The run takes the way, if it can: where it cannot, it is left to be woven. */
static void take(Climb *climb, int run, Chosen chosen)
{
    climb->settled[run] = true;
    if (chosen.column < 0)
        return;
    Way way = price_way(climb->price, chosen.column, chosen.above);
    if (can_be_laid(climb, &climb->laid->demand->runs[run], &way))
        climb->chosen[run] = chosen;
}

bool climb_on(Climb *climb, int64_t *work)
{
    const Demand *demand = climb->laid->demand;
    while (climb->next < demand->run_count && climb->settled[climb->order[climb->next]])
        climb->next++;
    if (climb->next == demand->run_count)
        return false;
    int run = climb->order[climb->next++];
    int *pairs = &climb->pairs[climb->price->block_of[run]];
    int over = *pairs > 0 ? climb->over[run] : -1;
    close_places(climb, run, climb->closed[0]);
    if (over >= 0)
        close_places(climb, over, climb->closed[1]);
    Chosen chosen = most_used(climb, run, over);
    if (chosen.column < 0)
        chosen = cheapest(climb, run, over, work);
    if (chosen.column >= 0)
        simplex_settle(climb->price->table, chosen.column, 1);
    take(climb, run, chosen);
    if (over >= 0) {
        take(climb, over, (Chosen){chosen.column, !chosen.above});
        --*pairs;
    }
    return true;
}
