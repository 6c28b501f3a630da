/*
 * The problem as it is given becomes one in small whole numbers (work.h), is settled, and becomes boards again:
 *
 *     items, some alike, some too long  ->  sizes, falling, no two alike, in units that measure them all
 *     stock, some alike                 ->  kinds, falling, no two alike
 *
 * `order` lists the items that take part by falling size; those of size s are order[first[s] .. first[s + 1]).
 */
#include "pack/pack.h"

#include "base/panic.h"
#include "base/wide.h"
#include "pack/bound.h"
#include "pack/complete.h"
#include "pack/dive.h"
#include "pack/greedy.h"
#include "pack/pattern.h"
#include "pack/work.h"

#include <stdlib.h>
#include <string.h>

enum { STEPS_DEFAULT = 1500000, LEAST_SLACK_PIECES = 20000 };

typedef struct Given {
    const PackStock *stock;
    const PackItem *items;
    int *order;       /* item indices */
    int *first;       /* of each size, into `order` */
    int *stock_order; /* stock indices by kind */
    int *stock_first; /* of each kind, into `stock_order` */
    Length unit;      /* of sizes */
    Length price;     /* of costs */
} Given;

typedef struct Ranked {
    int64_t by, then;
    int index;
} Ranked;

/* Falling by `by`, then rising by `then`, then in the order given. */
static int by_rank(const void *a, const void *b)
{
    const Ranked *x = a, *y = b;
    if (x->by != y->by)
        return x->by > y->by ? -1 : 1;
    if (x->then != y->then)
        return x->then < y->then ? -1 : 1;
    return x->index < y->index ? -1 : x->index > y->index;
}

static int64_t common_divisor(int64_t a, int64_t b)
{
    while (b != 0) {
        int64_t rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

/* Kinds of stock that can hold anything. */
static void read_stock(PackWork *work, Given *given, int stock_count)
{
    Ranked *ranked = arena_array(work->arena, Ranked, stock_count);
    int count = 0;
    for (int i = 0; i < stock_count; i++) {
        BUG_UNLESS(given->stock[i].cost >= 0 && given->stock[i].cost <= LENGTH_MOST);
        if (given->stock[i].count > 0 && given->stock[i].capacity > 0)
            ranked[count++] = (Ranked){given->stock[i].capacity, given->stock[i].cost, i};
    }
    qsort(ranked, (size_t)count, sizeof *ranked, by_rank);
    given->stock_order = arena_array(work->arena, int, count);
    given->stock_first = arena_array(work->arena, int, count + 1);
    work->capacity = arena_array(work->arena, int64_t, count);
    work->value = arena_array(work->arena, int64_t, count);
    work->available = arena_array(work->arena, int, count);
    for (int i = 0; i < count; i++) {
        if (i == 0 || ranked[i].by != ranked[i - 1].by || ranked[i].then != ranked[i - 1].then) {
            given->stock_first[work->kind_count] = i;
            work->capacity[work->kind_count] = ranked[i].by;
            work->value[work->kind_count] = ranked[i].then;
            given->price = common_divisor(given->price, ranked[i].then);
            work->kind_count++;
        }
        given->stock_order[i] = ranked[i].index;
        int *available = &work->available[work->kind_count - 1];
        int more = given->stock[ranked[i].index].count;
        *available = more < PACK_PIECES_MOST - *available ? *available + more : PACK_PIECES_MOST;
    }
    given->stock_first[work->kind_count] = count;
}

/* Sizes that some stock can hold; the others are left out and so remain missing. */
static void read_items(PackWork *work, Given *given, int item_count)
{
    Ranked *ranked = arena_array(work->arena, Ranked, item_count);
    int64_t longest = work->kind_count > 0 ? work->capacity[0] : 0;
    int count = 0;
    for (int i = 0; i < item_count; i++) {
        BUG_UNLESS(given->items[i].size > 0 && given->items[i].count >= 0);
        if (given->items[i].size <= longest && given->items[i].count > 0)
            ranked[count++] = (Ranked){given->items[i].size, 0, i};
    }
    qsort(ranked, (size_t)count, sizeof *ranked, by_rank);
    given->order = arena_array(work->arena, int, count);
    given->first = arena_array(work->arena, int, count + 1);
    work->size = arena_array(work->arena, int64_t, count);
    work->demand = arena_array(work->arena, int, count);
    for (int i = 0; i < count; i++) {
        if (i == 0 || ranked[i].by != ranked[i - 1].by) {
            given->first[work->size_count] = i;
            work->size[work->size_count++] = ranked[i].by;
            given->unit = common_divisor(given->unit, ranked[i].by);
        }
        given->order[i] = ranked[i].index;
        int pieces = given->items[ranked[i].index].count;
        work->pieces += pieces;
        BUG_UNLESS(work->pieces <= PACK_PIECES_MOST);
        work->demand[work->size_count - 1] += pieces;
    }
    given->first[work->size_count] = count;
}

/* Divides sizes by their unit and turns costs into values. */
static void scale(PackWork *work, Given *given)
{
    if (work->size_count == 0)
        given->unit = 1;
    for (int i = 0; i < work->size_count; i++) {
        work->size[i] /= given->unit;
        work->total += work->size[i] * work->demand[i];
    }
    while (work->kind_count > 0 && work->capacity[work->kind_count - 1] < given->unit)
        work->kind_count--; /* too short for any size */
    int64_t boards = 0, dearest = 0;
    bool alike = true;
    for (int k = 0; k < work->kind_count; k++) {
        work->capacity[k] /= given->unit;
        if (work->available[k] > work->pieces)
            work->available[k] = (int)work->pieces;
        boards += work->available[k];
        work->value[k] = given->price > 0 ? work->value[k] / given->price : 0;
        dearest = work->value[k] > dearest ? work->value[k] : dearest;
        alike = alike && work->value[k] == work->value[0];
    }
    boards = boards < work->pieces ? boards : work->pieces;
    work->boards_most = boards;
    const Wide room = (Wide)1 << 60;
    Wide all = (Wide)(dearest + 1) * boards;
    work->counts_boards = true;
    if (alike)
        work->many = 0;
    else if (all * (64 * (boards + 1)) < room)
        work->many = 64 * (boards + 1);
    else if (all * (boards + 1) < room)
        work->many = boards + 1;
    else
        work->counts_boards = false;
    for (int k = 0; k < work->kind_count; k++) {
        if (alike)
            work->value[k] = 1;
        else if (work->counts_boards)
            work->value[k] = work->value[k] * work->many + 1;
        else if (work->value[k] == 0)
            work->value[k] = 1; /* what costs nothing is counted as the least that costs something */
    }
}

static void cut_greedily(PackWork *work, PackGreed greed, int64_t effort)
{
    arena_reset(work->scratch);
    PackRest whole = {work->demand, work->available}, rest = pack_rest_copy(work->scratch, work, &whole);
    PackCuts cuts = {0};
    pack_greedily(work, &rest, greed, effort, work->scratch, &cuts);
    pack_offer(work, &cuts);
}

/* Whether the stock is enough by length alone. */
static bool fits_perhaps(const PackWork *work)
{
    Wide room = 0;
    for (int k = 0; k < work->kind_count; k++)
        room += (Wide)work->capacity[k] * work->available[k];
    return room >= work->total;
}

static void settle(PackWork *work)
{
    pack_bound(work);
    cut_greedily(work, PACK_FIRST_FIT, 0);
    pack_list_costs(work);
    if (!pack_is_proved(work) && work->pieces <= LEAST_SLACK_PIECES)
        cut_greedily(work, PACK_LEAST_SLACK, 4000);
    if (pack_is_proved(work))
        return;
    /* Small jobs leave half of the steps to weighing every way of cutting. */
    int64_t kept = work->pieces <= PACK_COMPLETE_MOST ? work->steps / 2 : 0;
    work->steps -= kept;
    if (fits_perhaps(work))
        pack_dive(work);
    work->steps = (work->steps > 0 ? work->steps : 0) + kept;
    if (!pack_is_proved(work) && kept > 0)
        pack_complete(work);
}

/* What a value proves of the cost. */
static Length cost_bound(const PackWork *work, const Given *given, int64_t value)
{
    if (!work->counts_boards)
        return value > work->boards_most ? (value - work->boards_most) * given->price : 0;
    if (work->kind_count == 0)
        return 0;
    if (work->many == 0)
        return value * given->stock[given->stock_order[0]].cost;
    int64_t cost = value / work->many;
    return (value - cost * work->many > work->boards_most ? cost + 1 : cost) * given->price;
}

/* Whether the stock left could cut no more than was cut: each board filled as well as any of its kind can be. */
static bool least_is_missing(PackWork *work)
{
    int64_t room = 0;
    for (int k = 0; k < work->kind_count && room < work->total; k++) {
        arena_reset(work->scratch);
        PackPatterns best = pack_best_pattern(work, work->scratch, work->size, work->demand, work->capacity[k], 0);
        room += best.worth * work->available[k];
    }
    return work->total - room >= work->best_missing;
}

static void state_proof(PackWork *work, const Given *given, PackResult *result)
{
    if (work->best_missing > 0)
        work->bound = pack_cover_bound(work, work->total - work->best_missing);
    bool least = work->best_missing == 0 || work->is_exhausted || least_is_missing(work);
    if (work->bound > work->best_value || work->is_exhausted)
        work->bound = work->best_value;
    result->cost_bound = cost_bound(work, given, work->bound);
    if (result->cost_bound > result->cost)
        result->cost_bound = result->cost;
    result->cost_proved = least && result->cost_bound == result->cost;
    result->proved = result->cost_proved && work->bound == work->best_value && work->counts_boards;
}

/* Puts bins in the order of their stock, those of one stock as they are. */
static void sort_bins(Arena *arena, PackResult *result, int stock_count)
{
    PackBin *sorted = arena_array(arena, PackBin, result->bin_count);
    int *at = arena_array(arena, int, stock_count + 1);
    for (int i = 0; i < result->bin_count; i++)
        at[result->bins[i].stock + 1]++;
    for (int i = 1; i <= stock_count; i++)
        at[i] += at[i - 1];
    for (int i = 0; i < result->bin_count; i++)
        sorted[at[result->bins[i].stock]++] = result->bins[i];
    result->bins = sorted;
}

/* Patterns of one kind in order: of the first size in which they differ, the one that cuts more of it first. */
static int by_parts(const void *a, const void *b)
{
    const PackCut *x = a, *y = b;
    if (x->kind != y->kind)
        return x->kind < y->kind ? -1 : 1;
    for (int p = 0; p < x->part_count && p < y->part_count; p++) {
        if (x->parts[p].size != y->parts[p].size)
            return x->parts[p].size < y->parts[p].size ? -1 : 1;
        if (x->parts[p].count != y->parts[p].count)
            return x->parts[p].count > y->parts[p].count ? -1 : 1;
    }
    return x->part_count > y->part_count ? -1 : x->part_count < y->part_count;
}

static int by_size(const void *a, const void *b)
{
    const PackPart *x = a, *y = b;
    return x->size < y->size ? -1 : x->size > y->size;
}

/* Hands out items of each size in order, boards of each kind in order. */
static void read_best(Arena *arena, PackWork *work, const Given *given, PackResult *result)
{
    int *item_at = arena_array(work->arena, int, work->size_count); /* into `order` */
    int *item_used = arena_array(work->arena, int, work->size_count);
    int *stock_at = arena_array(work->arena, int, work->kind_count);
    int *stock_used = arena_array(work->arena, int, work->kind_count);
    int bins = 0;
    for (int i = 0; i < work->best.count; i++) {
        bins += work->best.at[i].times;
        qsort(work->best.at[i].parts, (size_t)work->best.at[i].part_count, sizeof(PackPart), by_size);
    }
    if (work->best.count > 0)
        qsort(work->best.at, (size_t)work->best.count, sizeof *work->best.at, by_parts);
    result->bins = arena_array(arena, PackBin, bins);
    for (int s = 0; s < work->size_count; s++)
        item_at[s] = given->first[s];
    for (int k = 0; k < work->kind_count; k++)
        stock_at[k] = given->stock_first[k];
    for (int i = 0; i < work->best.count; i++) {
        const PackCut *cut = &work->best.at[i];
        int pieces = 0;
        for (int p = 0; p < cut->part_count; p++)
            pieces += cut->parts[p].count;
        for (int t = 0; t < cut->times; t++) {
            PackBin *bin = &result->bins[result->bin_count++];
            while (stock_used[cut->kind] == given->stock[given->stock_order[stock_at[cut->kind]]].count) {
                stock_at[cut->kind]++;
                stock_used[cut->kind] = 0;
            }
            bin->stock = given->stock_order[stock_at[cut->kind]];
            stock_used[cut->kind]++;
            result->cost += given->stock[bin->stock].cost;
            bin->items = arena_array(arena, int, pieces);
            for (int p = 0; p < cut->part_count; p++) {
                int size = cut->parts[p].size;
                for (int n = 0; n < cut->parts[p].count; n++) {
                    while (item_used[size] == given->items[given->order[item_at[size]]].count) {
                        item_at[size]++;
                        item_used[size] = 0;
                    }
                    int item = given->order[item_at[size]];
                    item_used[size]++;
                    bin->items[bin->item_count++] = item;
                    result->missing[item]--;
                    result->missing_count--;
                }
            }
        }
    }
}

PackResult *pack_solve(Arena *arena, const PackStock *stock, int stock_count, const PackItem *items, int item_count,
                       int64_t steps)
{
    Given given = {.stock = stock, .items = items};
    PackWork work = {.arena = arena_new(), .scratch = arena_new()};
    work.steps = steps > 0 ? steps : STEPS_DEFAULT;
    read_stock(&work, &given, stock_count);
    read_items(&work, &given, item_count);
    scale(&work, &given);
    work.best_missing = work.total;
    if (work.pieces > 0)
        settle(&work);

    PackResult *result = arena_one(arena, PackResult);
    result->missing = arena_array(arena, int, item_count);
    for (int i = 0; i < item_count; i++) {
        result->missing[i] = items[i].count;
        result->missing_count += items[i].count;
    }
    read_best(arena, &work, &given, result);
    sort_bins(arena, result, stock_count);
    state_proof(&work, &given, result);
    arena_free(work.scratch);
    arena_free(work.arena);
    return result;
}
