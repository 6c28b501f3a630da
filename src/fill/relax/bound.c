#include "fill/relax/bound.h"

#include "pack/knapsack.h"

#include <stdlib.h>

enum { KNAPSACK_STEPS = 100000 };

typedef struct Covering {
    Length need;
    Length least; /* spans shorter than this are of no use */
    bool kerfs;   /* a kerf is counted to each span */
} Covering;

/* What a board of the kind covers at the most. Any span may have given up a kerf, all together no more than `given`. */
static Length usable(const Demand *demand, const Supply *supply, const Kind *kind, const Covering *covering)
{
    Length sum = 0;
    for (int i = 0; i < kind->span_count; i++) {
        const Length left = supply->slots[kind->slot_first + i].left;
        if (left + kind->slack >= covering->least)
            sum += left + (covering->kerfs ? demand->kerf : 0);
    }
    return sum > 0 ? sum + kind->given : 0;
}

/* What is left on boards with hung pieces covers at no cost. */
static Length usable_of_hung(const Demand *demand, const Supply *supply, const Covering *covering, Length *opened,
                             int *boards)
{
    Length sum = 0;
    *opened = 0;
    *boards = 0;
    for (int i = 0; i < supply->board_count; i++) {
        const SupplyBoard *board = &supply->boards[i];
        if (board->kind >= 0)
            continue;
        *opened += supply->boards[i].length;
        ++*boards;
        for (int j = board->span_first; j < board->span_first + board->span_count; j++) {
            Length length = supply->spans[j].to - supply->spans[j].from + supply->apart;
            if (length >= covering->least)
                sum += length + (covering->kerfs ? demand->kerf : 0);
        }
    }
    return sum;
}

static Length common_measure(Length a, Length b)
{
    while (b != 0) {
        Length rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

static int from_most_usable(const void *a, const void *b)
{
    const KnapsackKind *one = a, *other = b;
    if (one->usable != other->usable)
        return one->usable > other->usable ? -1 : 1;
    if (one->cost != other->cost)
        return one->cost < other->cost ? -1 : 1;
    return (one->count < other->count) - (one->count > other->count);
}

/* The largest first reach the need with the fewest; sorts the kinds. */
static int fewest_boards(KnapsackKind *kinds, int count, Length need)
{
    int boards = 0;
    if (count > 1)
        qsort(kinds, (size_t)count, sizeof *kinds, from_most_usable);
    for (int i = 0; i < count && need > 0 && kinds[i].usable > 0; i++) {
        Length take = (need + kinds[i].usable - 1) / kinds[i].usable;
        take = take < kinds[i].count ? take : kinds[i].count;
        need -= take * kinds[i].usable;
        boards += (int)take;
    }
    return boards;
}

static Bound cover(const Demand *demand, const Supply *supply, const Covering *covering)
{
    Arena *arena = arena_new();
    KnapsackKind *kinds = arena_array(arena, KnapsackKind, supply->kind_count);
    Bound bound = {0};
    Length need = covering->need - usable_of_hung(demand, supply, covering, &bound.length, &bound.boards);
    bool small = true; /* else what hangs is all that is proved */
    for (int i = 0; i < supply->kind_count; i++) {
        kinds[i] = (KnapsackKind){usable(demand, supply, &supply->kinds[i], covering), supply->kinds[i].length,
                                  supply->kinds[i].count};
        small = small && kinds[i].usable <= LENGTH_MOST;
    }
    const KnapsackResult *result =
        small ? knapsack_cover(arena, kinds, supply->kind_count, need, KNAPSACK_STEPS) : NULL;
    if (result != NULL && result->covered) {
        bound.length += result->cost_bound;
        bound.boards += fewest_boards(kinds, supply->kind_count, need);
    }
    arena_free(arena);
    return bound;
}

static Bound larger(Bound one, Bound other)
{
    return (Bound){one.length > other.length ? one.length : other.length,
                   one.boards > other.boards ? one.boards : other.boards};
}

Bound bound_covered(const Demand *demand, const Supply *supply, Length covered)
{
    Covering plain = {.need = covered};
    return cover(demand, supply, &plain);
}

/* No piece of a plan that keeps the rules is shorter. */
static Length least_piece(const Demand *demand)
{
    Length least = demand->wall->joints.shortest;
    for (int i = 0; i < demand->run_count; i++) {
        const Run *run = &demand->runs[i];
        if (run->right - run->left < least)
            least = run->right - run->left;
    }
    return least;
}

Bound bound_whole(const Demand *demand, const Supply *supply, Length priced)
{
    Covering plain = {.need = demand->total + demand->closers, .least = least_piece(demand)};
    Covering kerfs = plain;
    kerfs.kerfs = true;
    for (int i = 0; i < demand->run_count && supply->longest > 0; i++) {
        Length length = demand_length(&demand->runs[i], demand->runs[i].left, demand->runs[i].right);
        Length most = supply->longest + demand->kerf;
        kerfs.need += (length + most - 1) / most * demand->kerf;
    }
    Bound bound = larger(cover(demand, supply, &plain), cover(demand, supply, &kerfs));
    Length hung = 0, measure = 0;
    for (int i = 0; i < supply->board_count; i++)
        if (supply->boards[i].kind < 0)
            hung += supply->boards[i].length;
    for (int i = 0; i < supply->kind_count; i++)
        measure = common_measure(measure, supply->kinds[i].length);
    if (priced > hung && measure > 0) {
        Length rounded = hung + length_round_up(priced - hung, measure);
        bound.length = rounded > bound.length ? rounded : bound.length;
    }
    if (supply->kind_count == 1 && supply->kinds[0].length > 0 && bound.length > hung) {
        int boards = (int)((bound.length - hung + supply->kinds[0].length - 1) / supply->kinds[0].length);
        int opened = 0;
        for (int i = 0; i < supply->board_count; i++)
            opened += supply->boards[i].kind < 0;
        bound.boards = boards + opened > bound.boards ? boards + opened : bound.boards;
    }
    return bound;
}
