/*
 * Invariants: `incumbent` holds the best solution whenever the one at hand is worse (`worse`); otherwise the one at
 * hand is the best, and `incumbent` may be out of date.
 */
#include "fill/search/neighborhoods.h"

#include "base/panic.h"

#include <string.h>

#define MENDED_MOST (8 * BREAK_COST) /* more shortfall than this is no start for a search */

enum { TOGETHER_MOST = 6, BEAM_WIDTH = 5 };

/* A whole plan set aside: the pieces of run i are pieces[first[i]] .. pieces[first[i+1]-1]. */
typedef struct Incumbent {
    int *first;
    Placed *pieces;
    int count, room;
} Incumbent;

/* What decides whether a change stays. */
typedef struct Objective {
    Length shortfall;
    int64_t
        spent; /* length opened less the salvage value of what is left over; with an allowance, what goes beyond it */
    int pieces;
    Length opened; /* with an allowance */
} Objective;

struct Neighborhoods {
    Arena *arena;
    Solution *solution;
    Beam *beam;
    Random random;
    Length allowed; /* length that may be opened for fewer pieces; 0: no more than the least */
    Cost best;
    bool worse;
    Incumbent incumbent;
    int runs[TOGETHER_MOST];
    int run_count;
    Placed *old; /* of the runs taken off */
    int old_room;
    int old_first[TOGETHER_MOST + 1];
};

static Length beyond(Length opened, Length allowed)
{
    return opened > allowed ? opened - allowed : 0;
}

static Objective objective(const Neighborhoods *search)
{
    const Solution *solution = search->solution;
    const Length opened = solution->supply->length_opened;
    Objective now = {solution_cost(solution).shortfall, opened - solution->supply->salvaged, solution->pieces, 0};
    if (search->allowed > 0) {
        now.spent = beyond(opened, search->allowed);
        now.opened = opened;
    }
    return now;
}

/* As datumrow(5), "What is best", has it: with an allowance length counts only beyond it, and last of all. */
static int compare(const Neighborhoods *search, const Cost *a, const Cost *b)
{
    const Length more = beyond(a->length_opened, search->allowed), other = beyond(b->length_opened, search->allowed);
    if (search->allowed == 0 || a->shortfall != b->shortfall)
        return cost_compare(a, b);
    if (more != other)
        return more < other ? -1 : 1;
    if (a->pieces != b->pieces)
        return a->pieces < b->pieces ? -1 : 1;
    if (a->boards_opened != b->boards_opened)
        return a->boards_opened < b->boards_opened ? -1 : 1;
    return cost_compare(a, b);
}

/* ---- the best, set aside ---- */

static void set_aside(Neighborhoods *search)
{
    const Solution *solution = search->solution;
    Incumbent *incumbent = &search->incumbent;
    if (incumbent->room < solution->pieces) {
        incumbent->room = solution->pieces + solution->pieces / 4 + 16;
        incumbent->pieces = arena_array(search->arena, Placed, incumbent->room);
    }
    incumbent->count = 0;
    for (int i = 0; i < solution->demand->run_count; i++) {
        const Cover *cover = &solution->covers[i];
        incumbent->first[i] = incumbent->count;
        if (cover->count > 0)
            memcpy(incumbent->pieces + incumbent->count, cover->at, (size_t)cover->count * sizeof *incumbent->pieces);
        incumbent->count += cover->count;
    }
    incumbent->first[solution->demand->run_count] = incumbent->count;
}

static void clear(Solution *solution)
{
    for (int i = 0; i < solution->demand->run_count; i++)
        solution_clear(solution, i);
}

void neighborhoods_restart(Neighborhoods *search)
{
    if (!search->worse)
        set_aside(search);
    search->worse = true;
    clear(search->solution);
}

void neighborhoods_allow(Neighborhoods *search, Length allowed)
{
    neighborhoods_restore(search);
    search->allowed = allowed;
}

void neighborhoods_accept(Neighborhoods *search)
{
    Cost cost = solution_cost(search->solution);
    if (compare(search, &cost, &search->best) <= 0) {
        search->best = cost;
        search->worse = false;
    } else if (cost.shortfall > search->best.shortfall + MENDED_MOST ||
               cost.length_opened >= search->best.length_opened) {
        neighborhoods_restore(search);
    }
}

void neighborhoods_restore(Neighborhoods *search)
{
    if (!search->worse)
        return;
    Solution *solution = search->solution;
    clear(solution);
    for (int i = 0; i < solution->demand->run_count; i++)
        solution_set(solution, i, search->incumbent.pieces + search->incumbent.first[i],
                     search->incumbent.first[i + 1] - search->incumbent.first[i]);
    search->worse = false;
}

Neighborhoods *neighborhoods_new(Arena *arena, Solution *solution, Beam *beam)
{
    Neighborhoods *search = arena_one(arena, Neighborhoods);
    search->arena = arena;
    search->solution = solution;
    search->beam = beam;
    search->random.state = UINT64_C(0x64617475); /* any number; the same on every machine */
    search->best = solution_cost(solution);
    search->incumbent.first = arena_array(arena, int, solution->demand->run_count + 1);
    return search;
}

Cost neighborhoods_incumbent_cost(const Neighborhoods *search)
{
    return search->best;
}

const Cover *neighborhoods_incumbent(Arena *arena, const Neighborhoods *search)
{
    if (!search->worse)
        return search->solution->covers;
    int count = search->solution->demand->run_count;
    Cover *covers = arena_array(arena, Cover, count);
    for (int i = 0; i < count; i++) {
        covers[i].at = search->incumbent.pieces + search->incumbent.first[i];
        covers[i].count = search->incumbent.first[i + 1] - search->incumbent.first[i];
    }
    return covers;
}

/* ---- choosing runs ---- */

static int draw(Neighborhoods *search, int below)
{
    return (int)random_below(&search->random, (uint64_t)below);
}

static void choose(Neighborhoods *search, int run)
{
    for (int i = 0; i < search->run_count; i++)
        if (search->runs[i] == run)
            return;
    if (search->run_count < TOGETHER_MOST)
        search->runs[search->run_count++] = run;
}

/* A run that has a piece of a board of which a piece of `run` is cut; `run` itself where there is none. */
static int shares_board(Neighborhoods *search, int run)
{
    const Cover *cover = &search->solution->covers[run];
    if (cover->count == 0)
        return run;
    const Span *span = &search->solution->supply->spans[cover->at[draw(search, cover->count)].span];
    return span->runs[draw(search, span->cuts)];
}

static int beside(Neighborhoods *search, int run)
{
    const Demand *demand = search->solution->demand;
    const Row *row = &demand->rows[demand->runs[run].row];
    int other = draw(search, 2) == 0 ? row->below : row->above;
    if (other < 0)
        other = row->below >= 0 ? row->below : row->above;
    if (other < 0 || demand->rows[other].run_count == 0)
        return run;
    return demand->rows[other].run_first + draw(search, demand->rows[other].run_count);
}

/* A run that is cut from an opened board of which something is left: of a few drawn the one with the longest rest. */
static int with_rest(Neighborhoods *search)
{
    const Supply *supply = search->solution->supply;
    int best = -1;
    for (int i = 0; i < 4; i++) {
        Length drawn = (Length)random_below(&search->random, (uint64_t)supply->longest + 1);
        int span = buckets_from(&supply->open, drawn);
        if (span == BUCKETS_NONE)
            span = buckets_to(&supply->open, drawn);
        if (span != BUCKETS_NONE && supply->spans[span].cuts > 0 &&
            (best < 0 || supply->spans[span].left > supply->spans[best].left))
            best = span;
    }
    if (best < 0)
        return draw(search, search->solution->demand->run_count);
    return supply->spans[best].runs[draw(search, supply->spans[best].cuts)];
}

/* A run with bare wall, from a drawn one on; a drawn one where none is near. */
static int with_bare(Neighborhoods *search)
{
    const Solution *solution = search->solution;
    int drawn = draw(search, solution->demand->run_count);
    for (int i = 0; i < 64 && i < solution->demand->run_count; i++) {
        int run = (drawn + i) % solution->demand->run_count;
        const Cover *cover = &solution->covers[run];
        Length x = solution->demand->runs[run].left;
        for (int j = 0; j < cover->count && cover->at[j].left == x; j++)
            x = cover->at[j].right;
        if (x != solution->demand->runs[run].right)
            return run;
    }
    return drawn;
}

static void choose_runs(Neighborhoods *search)
{
    int wanted = 2 + draw(search, 3);
    int seed;
    search->run_count = 0;
    if (search->solution->bare > 0 && draw(search, 3) == 0)
        seed = with_bare(search);
    else if (draw(search, 2) == 0)
        seed = with_rest(search);
    else
        seed = draw(search, search->solution->demand->run_count);
    choose(search, seed);
    for (int tried = 0; tried < 3 * wanted && search->run_count < wanted; tried++) {
        int from = search->runs[draw(search, search->run_count)];
        int way = draw(search, 8);
        if (way < 4)
            choose(search, shares_board(search, from));
        else if (way < 6)
            choose(search, beside(search, from));
        else if (way < 7)
            choose(search, with_rest(search));
        else
            choose(search, draw(search, search->solution->demand->run_count));
    }
}

/* ---- one neighbourhood ---- */

static void take_off(Neighborhoods *search)
{
    Solution *solution = search->solution;
    int count = 0;
    for (int i = 0; i < search->run_count; i++)
        count += solution->covers[search->runs[i]].count;
    if (search->old_room < count) {
        search->old_room = 2 * count;
        search->old = arena_array(search->arena, Placed, search->old_room);
    }
    count = 0;
    for (int i = 0; i < search->run_count; i++) {
        const Cover *cover = &solution->covers[search->runs[i]];
        search->old_first[i] = count;
        if (cover->count > 0)
            memcpy(search->old + count, cover->at, (size_t)cover->count * sizeof *search->old);
        count += cover->count;
        solution_clear(solution, search->runs[i]);
    }
    search->old_first[search->run_count] = count;
}

static void put_back(Neighborhoods *search)
{
    for (int i = 0; i < search->run_count; i++)
        solution_clear(search->solution, search->runs[i]);
    for (int i = 0; i < search->run_count; i++)
        solution_set(search->solution, search->runs[i], search->old + search->old_first[i],
                     search->old_first[i + 1] - search->old_first[i]);
}

static bool no_worse(const Objective *now, const Objective *before)
{
    if (now->shortfall != before->shortfall)
        return now->shortfall < before->shortfall;
    if (now->spent != before->spent)
        return now->spent < before->spent;
    if (now->pieces != before->pieces)
        return now->pieces < before->pieces;
    return now->opened <= before->opened;
}

int neighborhoods_step(Neighborhoods *search, Length heat)
{
    Solution *solution = search->solution;
    if (solution->demand->run_count == 0)
        return 1;
    choose_runs(search);
    Objective before = objective(search);
    take_off(search);
    int work = 0;
    int order[TOGETHER_MOST] = {0};
    for (int i = 0; i < search->run_count; i++)
        order[i] = search->runs[i];
    for (int i = search->run_count - 1; i > 0; i--) {
        int other = draw(search, i + 1);
        int held = order[i];
        order[i] = order[other];
        order[other] = held;
    }
    for (int i = 0; i < search->run_count; i++)
        work += beam_cover(search->beam, order[i], BEAM_WIDTH, &search->random);
    Objective now = objective(search);
    if (heat > 0)
        before.spent += (int64_t)random_below(&search->random, (uint64_t)heat);
    if (!no_worse(&now, &before)) {
        put_back(search);
        return work + 1;
    }
    Cost cost = solution_cost(solution);
    if (compare(search, &cost, &search->best) <= 0) {
        search->best = cost;
        search->worse = false;
    } else if (!search->worse) { /* the best is about to be left: it is set aside, the change is made another time */
        put_back(search);
        set_aside(search);
        search->worse = true;
    }
    return work + 1;
}
