/*
 * A value is cost and boards in one number, cost x M + boards with M above any number of boards, so that less cost wins
 * and then fewer boards. Kinds are split into bundles of 1, 2, 4, ... boards; bundles stand in order of value for
 * usable length, the cheapest first:
 *
 *     taken by the greedy choice          not taken
 *     |-----------------------------------|------------------------|
 *     0            first    ...           break    ...    last     bundles
 *                  |<---------- core ------------>|
 *
 * A state is the greedy choice with some bundles of the core changed: left of the break given back, from the break on
 * taken. States stand in falling order of usable length and, since a state that covers less and costs as much is
 * dropped, of value. What a state can still win outside the core is bounded twice:
 *  - by the rates, value for usable length, at the core's two ends;
 *  - by the same where each board is given `toll`, the least that any board costs beyond what it covers, as a rebate,
 *    and the tolls of the fewest boards that can ever cover are paid back. Without this, boards that all lose the same
 *    at their ends leave a gap of up to one such loss, which no number of states closes.
 * A state that cannot beat the best choice known is dropped. When no state is left, the best choice is proved.
 *
 * Usable lengths stay below 10^18 in all, values below 10^24 in all and 10^18 a board: every product is below 10^36.
 */
#include "pack/knapsack.h"

#include "base/wide.h"

#include <stdlib.h>
#include <string.h>

enum { STEPS_DEFAULT = 2000000, BOARDS_MOST = 1000000, SWAPS_MOST = 16, NO_CHANGE = -1 };

typedef struct Bundle {
    int kind;
    bool is_first; /* of its kind */
    int boards;
    Length usable; /* of the whole bundle */
    Wide value;
    Length unit_usable; /* of one board */
    Wide unit_value;
    Wide unit_net;   /* cost less toll of one board */
    int highest_net; /* the bundle of highest rate of net among this and those before it */
    int lowest_net;  /* the bundle of lowest rate of net among this and those after it */
} Bundle;

typedef struct State {
    Length usable;
    Wide value;
    int change; /* index into `changes`; NO_CHANGE: the greedy choice itself */
} State;

/* How a state came about: one bundle changed after the change `before`. */
typedef struct CoreChange {
    int before;
    int bundle;
} CoreChange;

typedef struct Changes {
    CoreChange *at;
    int count;
    int room;
} Changes;

typedef struct CoreSearch {
    Arena *arena;
    const Bundle *bundles;
    int count;
    int break_at;    /* first bundle that the greedy choice leaves */
    int first, last; /* the core; empty where last < first */
    Length need;
    Wide many; /* M */
    Length toll;
    Length grain;   /* every cost is a whole multiple of it */
    int64_t fewest; /* boards that any covering choice takes at the least */
    Wide best;      /* value of the best choice known */
    bool improved;
    int best_change; /* the choice, where the search improved on the first one */
    State *states, *spare;
    int state_count, room;
    Changes changes;
    int64_t steps;
} CoreSearch;

static int by_rate(const void *a, const void *b)
{
    const Bundle *x = a, *y = b;
    Wide left = x->unit_value * y->unit_usable, right = y->unit_value * x->unit_usable;
    if (left != right)
        return left < right ? -1 : 1;
    if (x->unit_usable != y->unit_usable)
        return x->unit_usable > y->unit_usable ? -1 : 1;
    if (x->kind != y->kind)
        return x->kind < y->kind ? -1 : 1;
    if (x->boards != y->boards)
        return x->boards > y->boards ? -1 : 1;
    return y->is_first - x->is_first;
}

static Length common_divisor(Length a, Length b)
{
    while (b != 0) {
        Length rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

/* Up to the next value that a choice of `fewest` boards or more can have. */
static Wide round_up(const CoreSearch *search, Wide bound)
{
    Wide cost = wide_floor(bound, search->many);
    if (cost % search->grain != 0)
        return wide_ceiling(cost, search->grain) * search->grain * search->many + search->fewest;
    Wide least = cost * search->many + search->fewest;
    return bound > least ? bound : least;
}

/* Least value of any covering choice that keeps the state's core; `best` where it can never cover. */
static Wide state_bound(const CoreSearch *search, const State *state)
{
    Length over = state->usable - search->need;
    Wide cost = wide_floor(state->value, search->many), boards = state->value - cost * search->many;
    Wide bound = state->value, net = cost - boards * search->toll;
    if (over >= 0 && search->first > 0) {
        const Bundle *next = &search->bundles[search->first - 1];
        const Bundle *high = &search->bundles[next->highest_net];
        bound -= wide_floor(over * next->unit_value, next->unit_usable);
        net -= wide_floor(over * high->unit_net, high->unit_usable);
    } else if (over < 0) {
        if (search->last + 1 >= search->count)
            return search->best;
        const Bundle *next = &search->bundles[search->last + 1];
        const Bundle *low = &search->bundles[next->lowest_net];
        bound += wide_ceiling(-over * next->unit_value, next->unit_usable);
        net += wide_ceiling(-over * low->unit_net, low->unit_usable);
    }
    Wide tolled = (net + search->toll * search->fewest) * search->many;
    return round_up(search, bound > tolled ? bound : tolled);
}

static void make_room(CoreSearch *search)
{
    if (search->room > 2 * search->state_count)
        return;
    search->room = 4 * search->state_count + 64;
    State *grown = arena_array(search->arena, State, search->room);
    if (search->state_count > 0)
        memcpy(grown, search->states, (size_t)search->state_count * sizeof *grown);
    search->states = grown;
    search->spare = arena_array(search->arena, State, search->room);
}

/* Changes bundle `index`, which has just come into the core, in every state: the old states and the changed ones,
 * merged, without those that another covers as cheaply and those that cannot win any more. */
static void extend(CoreSearch *search, int index)
{
    const Bundle *bundle = &search->bundles[index];
    int sign = index < search->break_at ? -1 : 1;
    make_room(search);
    const State *from = search->states;
    State *out = search->spare;
    int kept = 0;
    for (int old = 0, changed = 0; old < search->state_count || changed < search->state_count;) {
        State next = {0};
        bool is_new = true;
        if (changed < search->state_count) {
            next = from[changed];
            next.usable += sign * bundle->usable;
            next.value += sign * bundle->value;
        }
        if (old < search->state_count && (changed >= search->state_count || from[old].usable > next.usable ||
                                          (from[old].usable == next.usable && from[old].value <= next.value))) {
            next = from[old++];
            is_new = false;
        } else {
            changed++;
        }
        if (kept > 0 && out[kept - 1].value <= next.value)
            continue;
        bool wins = next.usable >= search->need && next.value < search->best;
        if (!wins && state_bound(search, &next) >= search->best)
            continue;
        if (is_new) {
            *arena_push(search->arena, &search->changes) = (CoreChange){next.change, index};
            next.change = search->changes.count - 1;
        }
        if (wins) {
            search->best = next.value;
            search->best_change = next.change;
            search->improved = true;
        }
        out[kept++] = next;
    }
    search->spare = search->states;
    search->states = out;
    search->steps -= 2 * (int64_t)search->state_count + 1;
    search->state_count = kept;
}

/* Grows the core by turns to the left and to the right until no state is left, the core is everything, or the steps are
 * used up. */
static void search_core(CoreSearch *search)
{
    bool right = true;
    while (search->state_count > 0 && search->steps > 0) {
        bool can_left = search->first > 0, can_right = search->last + 1 < search->count;
        if (!can_left && !can_right)
            break;
        if (can_right && (right || !can_left))
            extend(search, ++search->last);
        else
            extend(search, --search->first);
        right = !right;
    }
}

/* The first choice: kind after kind in order of rate, as many of each as are wanted, the last board the cheapest that
 * is enough. */
static Wide take_greedily(const Bundle *bundles, int count, const KnapsackKind *kinds, Length need, int *taken)
{
    Wide value = 0;
    int last = -1;
    for (int i = 0; i < count && need > 0; i++) {
        const Bundle *bundle = &bundles[i];
        Length enough = (need - 1) / bundle->unit_usable + 1;
        int boards = enough < bundle->boards ? (int)enough : bundle->boards;
        taken[bundle->kind] += boards;
        value += boards * bundle->unit_value;
        need -= boards * bundle->unit_usable;
        last = i;
    }
    if (last < 0)
        return value;
    need += bundles[last].unit_usable;
    int cheapest = last;
    for (int i = last + 1; i < count; i++)
        if (bundles[i].unit_usable >= need && bundles[i].unit_value < bundles[cheapest].unit_value &&
            taken[bundles[i].kind] < kinds[bundles[i].kind].count)
            cheapest = i;
    taken[bundles[last].kind]--;
    taken[bundles[cheapest].kind]++;
    return value - bundles[last].unit_value + bundles[cheapest].unit_value;
}

/* One board as it may be swapped for a taken one: of all that are left with at least this usable length, the cheapest.
 */
typedef struct Spare {
    Length usable;
    int cheapest; /* bundle */
} Spare;

static int by_spare_usable(const void *a, const void *b)
{
    const Spare *x = a, *y = b;
    if (x->usable != y->usable)
        return x->usable < y->usable ? -1 : 1;
    return x->cheapest < y->cheapest ? -1 : x->cheapest > y->cheapest;
}

/* Swaps one taken board for one that is left, as long as that saves value and still covers: the best swap each time. */
static void swap_boards(CoreSearch *search, const KnapsackKind *kinds, int *taken)
{
    const Bundle *bundles = search->bundles;
    Spare *spares = arena_array(search->arena, Spare, search->count);
    for (int turn = 0; turn < SWAPS_MOST; turn++) {
        Length over = -search->need;
        int count = 0;
        for (int i = 0; i < search->count; i++) {
            if (!bundles[i].is_first)
                continue;
            over += bundles[i].unit_usable * taken[bundles[i].kind];
            if (taken[bundles[i].kind] < kinds[bundles[i].kind].count)
                spares[count++] = (Spare){bundles[i].unit_usable, i};
        }
        qsort(spares, (size_t)count, sizeof *spares, by_spare_usable);
        for (int i = count - 2; i >= 0; i--)
            if (bundles[spares[i + 1].cheapest].unit_value < bundles[spares[i].cheapest].unit_value)
                spares[i].cheapest = spares[i + 1].cheapest;
        Wide best = 0;
        int give = 0, take = 0;
        for (int i = 0; i < search->count; i++) {
            if (!bundles[i].is_first || taken[bundles[i].kind] == 0)
                continue;
            int low = 0, high = count;
            while (low < high) {
                int middle = (low + high) / 2;
                if (spares[middle].usable < bundles[i].unit_usable - over)
                    low = middle + 1;
                else
                    high = middle;
            }
            if (low == count)
                continue;
            Wide saved = bundles[i].unit_value - bundles[spares[low].cheapest].unit_value;
            if (saved > best) {
                best = saved;
                give = bundles[i].kind;
                take = bundles[spares[low].cheapest].kind;
            }
        }
        if (best == 0)
            return;
        taken[give]--;
        taken[take]++;
        search->best -= best;
    }
}

static bool net_rate_above(const Bundle *a, const Bundle *b)
{
    return a->unit_net * b->unit_usable > b->unit_net * a->unit_usable;
}

/* Kinds worth taking as bundles in order of rate, lengths in whole `unit`s and costs in whole `price`s. */
static void make_bundles(CoreSearch *search, const KnapsackKind *kinds, int kind_count, Length unit, Length price)
{
    int count = 0;
    for (int i = 0; i < kind_count; i++)
        for (int left = kinds[i].count; left > 0 && kinds[i].usable > 0; left /= 2)
            count++;
    Bundle *bundles = arena_array(search->arena, Bundle, count);
    count = 0;
    for (int i = 0; i < kind_count; i++) {
        if (kinds[i].usable <= 0)
            continue;
        Bundle bundle = {.kind = i, .unit_usable = kinds[i].usable / unit};
        bundle.unit_value = kinds[i].cost / price * search->many + 1;
        bundle.unit_net = kinds[i].cost / price - search->toll;
        for (int left = kinds[i].count, boards = 1; left > 0; left -= boards, boards *= 2) {
            if (boards > left)
                boards = left;
            bundle.boards = boards;
            bundle.is_first = left == kinds[i].count;
            bundle.usable = boards * bundle.unit_usable;
            bundle.value = boards * bundle.unit_value;
            bundles[count++] = bundle;
        }
    }
    qsort(bundles, (size_t)count, sizeof *bundles, by_rate);
    for (int i = 0; i < count; i++)
        bundles[i].highest_net = i > 0 && !net_rate_above(&bundles[i], &bundles[bundles[i - 1].highest_net])
                                     ? bundles[i - 1].highest_net
                                     : i;
    for (int i = count - 1; i >= 0; i--)
        bundles[i].lowest_net = i + 1 < count && net_rate_above(&bundles[i], &bundles[bundles[i + 1].lowest_net])
                                    ? bundles[i + 1].lowest_net
                                    : i;
    search->bundles = bundles;
    search->count = count;
}

static int by_usable_falling(const void *a, const void *b)
{
    const KnapsackKind *x = a, *y = b;
    return x->usable > y->usable ? -1 : x->usable < y->usable;
}

static int64_t fewest_boards(Arena *arena, const KnapsackKind *kinds, int kind_count, Length need)
{
    KnapsackKind *sorted = arena_array(arena, KnapsackKind, kind_count);
    memcpy(sorted, kinds, (size_t)kind_count * sizeof *sorted);
    qsort(sorted, (size_t)kind_count, sizeof *sorted, by_usable_falling);
    int64_t boards = 0;
    for (int i = 0; i < kind_count && need > 0; i++) {
        if (sorted[i].count <= 0)
            continue;
        Length enough = (need - 1) / sorted[i].usable + 1;
        Length taken = enough < sorted[i].count ? enough : sorted[i].count;
        boards += taken;
        need -= taken * sorted[i].usable;
    }
    return boards;
}

/* Turns the best state's changes back into boards taken. */
static void read_choice(const CoreSearch *search, int *taken, int kind_count)
{
    memset(taken, 0, (size_t)kind_count * sizeof *taken);
    for (int i = 0; i < search->break_at; i++)
        taken[search->bundles[i].kind] += search->bundles[i].boards;
    for (int i = search->best_change; i != NO_CHANGE; i = search->changes.at[i].before) {
        const Bundle *bundle = &search->bundles[search->changes.at[i].bundle];
        taken[bundle->kind] += search->changes.at[i].bundle < search->break_at ? -bundle->boards : bundle->boards;
    }
}

static void begin(CoreSearch *search)
{
    Length reached = 0;
    Wide value = 0;
    while (search->break_at < search->count && reached + search->bundles[search->break_at].usable <= search->need) {
        reached += search->bundles[search->break_at].usable;
        value += search->bundles[search->break_at].value;
        search->break_at++;
    }
    search->first = search->break_at;
    search->last = search->break_at - 1;
    make_room(search);
    search->states[search->state_count++] = (State){reached, value, NO_CHANGE};
}

/* Whether every product and sum of the method holds its numbers. */
static bool in_range(const KnapsackKind *kinds, int kind_count)
{
    int64_t boards = 0;
    for (int i = 0; i < kind_count; i++) {
        if (kinds[i].usable > LENGTH_MOST || kinds[i].cost < 0 || kinds[i].cost > LENGTH_MOST)
            return false;
        boards += kinds[i].count > 0 ? kinds[i].count : 0;
    }
    return boards <= BOARDS_MOST;
}

static Length held(Wide length)
{
    return length < INT64_MAX ? (Length)length : INT64_MAX;
}

/* Every board is taken, and nothing is known of fewer. */
static void take_all(const KnapsackKind *kinds, int kind_count, Length need, KnapsackResult *result)
{
    Wide usable = 0, cost = 0, boards = 0;
    for (int i = 0; i < kind_count; i++) {
        if (kinds[i].usable <= 0 || kinds[i].count <= 0)
            continue;
        result->taken[i] = kinds[i].count;
        boards += kinds[i].count;
        usable += (Wide)kinds[i].usable * kinds[i].count;
        cost += kinds[i].cost > 0 ? (Wide)kinds[i].cost * kinds[i].count : 0;
    }
    result->covered = need <= usable;
    result->boards = boards < INT32_MAX ? (int)boards : INT32_MAX;
    result->usable = held(usable);
    result->cost = held(cost);
}

/* All kinds together. */
typedef struct KindSums {
    Length unit, price; /* common divisors of what is usable and of what it costs */
    Length toll;        /* the least that any kind costs beyond what is usable */
    Wide all;           /* usable */
    int64_t boards;
} KindSums;

static KindSums sum_kinds(const KnapsackKind *kinds, int count)
{
    KindSums sums = {.toll = LENGTH_MOST};
    for (int i = 0; i < count; i++) {
        const KnapsackKind *kind = &kinds[i];
        if (kind->usable <= 0 || kind->count <= 0)
            continue;
        sums.unit = common_divisor(sums.unit, kind->usable);
        sums.price = common_divisor(sums.price, kind->cost);
        sums.toll = kind->cost - kind->usable < sums.toll ? kind->cost - kind->usable : sums.toll;
        sums.all += (Wide)kind->usable * kind->count;
        sums.boards += kind->count;
    }
    return sums;
}

/* The least that any choice may come to, by what the search left open. */
static Wide bound_left(const CoreSearch *search)
{
    Wide bound = search->best;
    for (int i = 0; i < search->state_count; i++) {
        const Wide reach = state_bound(search, &search->states[i]);
        bound = reach < bound ? reach : bound;
    }
    return bound;
}

static void sum_taken(const KnapsackKind *kinds, int count, KnapsackResult *result)
{
    for (int i = 0; i < count; i++) {
        result->boards += result->taken[i];
        result->usable += kinds[i].usable * result->taken[i];
        result->cost += kinds[i].cost * result->taken[i];
    }
}

KnapsackResult *knapsack_cover(Arena *arena, const KnapsackKind *kinds, int kind_count, Length need, int64_t steps)
{
    KnapsackResult *result = arena_one(arena, KnapsackResult);
    result->taken = arena_array(arena, int, kind_count);
    if (!in_range(kinds, kind_count)) {
        take_all(kinds, kind_count, need, result);
        return result;
    }
    const KindSums sums = sum_kinds(kinds, kind_count);
    result->covered = need <= sums.all;
    result->proved = result->covered;
    if (need <= 0 || !result->covered)
        return result;

    /* Tolls are lengths: where they are paid, costs are counted in what measures both. */
    const Length price = sums.price, unit = sums.unit;
    const Length fine = sums.toll > 0 ? common_divisor(price, unit) : price > 0 ? price : 1;
    Arena *work = arena_new();
    CoreSearch search = {.arena = work, .need = (need - 1) / unit + 1, .steps = steps > 0 ? steps : STEPS_DEFAULT};
    search.many = sums.boards + 1;
    search.toll = sums.toll > 0 ? sums.toll / fine : 0;
    search.grain = price > 0 ? price / fine : 1;
    search.fewest = fewest_boards(work, kinds, kind_count, need);
    make_bundles(&search, kinds, kind_count, unit, fine);
    search.best = take_greedily(search.bundles, search.count, kinds, search.need, result->taken);
    swap_boards(&search, kinds, result->taken);
    begin(&search);
    search_core(&search);
    if (search.improved)
        read_choice(&search, result->taken, kind_count);
    const Wide bound = bound_left(&search);
    result->proved = bound >= search.best;
    result->cost_bound = wide_narrow(wide_floor(bound, search.many)) * fine;
    sum_taken(kinds, kind_count, result);
    arena_free(work);
    return result;
}
