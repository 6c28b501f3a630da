/*
 * Prices are whole parts of PACK_UNIT, which stands for the greatest value of any kind. With price p of a size, m of a
 * scarce kind and z the most that any pattern of a kind of value v is worth: let r be the greatest z / (v + m) of all
 * kinds, at least 1. Then p / r and m are feasible prices, and  sum of demand x p / r - sum of available x m  is a
 * bound.
 */
#include "pack/generation.h"

#include "base/wide.h"
#include "pack/pattern.h"

#include <string.h>

#define PRICE_MOST (15 * PACK_UNIT)    /* below 2^PACK_PRICE_BITS */
#define BETTER_LEAST (PACK_UNIT >> 32) /* a pattern that is worth less beyond its board is none */

enum { DEARNESS_MOST = 5, ROUNDS_MOST = 60 };

typedef struct Prices {
    int64_t *size; /* of each size */
    int64_t *kind; /* of each kind, 0 where it is not scarce */
    int64_t dearest;
} Prices;

static int64_t usable_price(int64_t price, bool *is_cut)
{
    *is_cut = *is_cut || price > PRICE_MOST;
    return price < 0 ? 0 : price < PRICE_MOST ? price : PRICE_MOST;
}

/* False where a price was too high to be taken as it is: still good for a bound, not for a new pattern. */
static bool read_prices(const PackMaster *master, Prices *prices)
{
    bool is_cut = false;
    for (int i = 0; i < master->work->size_count; i++)
        prices->size[i] = usable_price(pack_master_size_price(master, i), &is_cut);
    for (int k = 0; k < master->work->kind_count; k++)
        prices->kind[k] = usable_price(pack_master_kind_price(master, k), &is_cut);
    return !is_cut;
}

/* The bound of prices where a pattern may be worth at most top/bottom of its board. */
static int64_t value_bound(const PackMaster *master, const PackRest *rest, const Prices *prices, Wide top, Wide bottom)
{
    const PackWork *work = master->work;
    Wide sum = 0;
    for (int i = 0; i < work->size_count; i++)
        sum += (Wide)prices->size[i] * rest->demand[i];
    sum = wide_floor(sum * bottom, top);
    for (int k = 0; k < work->kind_count; k++)
        sum -= (Wide)prices->kind[k] * rest->available[k];
    return sum <= 0 ? 0 : wide_narrow(wide_ceiling(sum * prices->dearest, PACK_UNIT));
}

/* What the relaxation costs, as a value, less what rounding may have added. */
static int64_t cost_reached(const PackMaster *master, int64_t dearest)
{
    int64_t cost = pack_master_cost(master);
    Wide value = wide_floor((Wide)(cost - (cost >> 30)) * dearest, PACK_UNIT);
    return value > 0 && value < INT64_MAX / 2 ? wide_narrow(value) : 0;
}

/* One round of pricing. */
typedef struct Pricing {
    bool found;       /* some pattern is worth more than it costs, and was added */
    bool priced;      /* every kind has a price to be held against: there is a bound */
    Wide top, bottom; /* the greatest worth of a pattern in parts of its kind's price, at least 1 */
} Pricing;

/* Adds the best patterns of each kind that is left. */
static Pricing price_kinds(PackMaster *master, const PackRest *rest, const Prices *prices, Arena *arena)
{
    PackWork *work = master->work;
    Pricing pricing = {.priced = true, .top = 1, .bottom = 1};
    for (int k = 0; k < work->kind_count; k++) {
        if (rest->available[k] == 0)
            continue;
        const int64_t floor = master->value[k] + prices->kind[k];
        const PackPatterns patterns =
            pack_best_pattern(work, arena, prices->size, rest->demand, work->capacity[k], floor + BETTER_LEAST);
        if (floor == 0) {
            pricing.priced = false; /* next to nothing against the dearest kind: no bound from these prices */
        } else if (wide_compare_ratio(patterns.worth, floor, pricing.top, pricing.bottom) > 0) {
            pricing.top = patterns.worth;
            pricing.bottom = floor;
        }
        for (int i = 0; i < patterns.count; i++)
            pack_master_add(master, k, patterns.at[i].parts, patterns.at[i].part_count);
        pricing.found |= patterns.count > 0;
    }
    return pricing;
}

static Prices prices_new(Arena *arena, const PackWork *work)
{
    Prices prices = {.size = arena_array(arena, int64_t, work->size_count),
                     .kind = arena_array(arena, int64_t, work->kind_count),
                     .dearest = 1};
    for (int k = 0; k < work->kind_count; k++)
        prices.dearest = work->value[k] > prices.dearest ? work->value[k] : prices.dearest;
    return prices;
}

int64_t pack_generate_columns(PackMaster *master, const PackRest *rest, int64_t fixed, int64_t enough)
{
    PackWork *work = master->work;
    int64_t proved = 0;
    Arena *arena = arena_new();
    Arena *patterns_arena = arena_new();
    Prices prices = prices_new(arena, work);
    int rounds = 0;
    while (pack_master_solve(master)) {
        const bool whole = read_prices(master, &prices);
        pack_spend(work, 1000);
        arena_reset(patterns_arena);
        const Pricing pricing = price_kinds(master, rest, &prices, patterns_arena);
        const int64_t bound = pricing.priced ? value_bound(master, rest, &prices, pricing.top, pricing.bottom) : 0;
        proved = bound > proved ? bound : proved;
        const int64_t reach = cost_reached(master, prices.dearest);
        const bool substitutes = pack_master_uses_slack(master);
        if (pack_round_up(work, fixed + proved) >= enough)
            break;
        if (!substitutes && pack_round_up(work, fixed + proved) >= pack_round_up(work, fixed + reach + 1))
            break;
        if ((!pricing.found || ++rounds > ROUNDS_MOST) && substitutes && master->dearness < DEARNESS_MOST) {
            pack_master_raise_slack_costs(master);
            rounds = 0;
            continue;
        }
        if (!pricing.found || !whole)
            break;
    }
    arena_free(patterns_arena);
    arena_free(arena);
    return proved;
}
