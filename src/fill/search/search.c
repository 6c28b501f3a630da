/*
 * Invariants: `kept` holds the best plan whenever what is laid is worse than it (`away`); otherwise what is laid is the
 * best and `kept` may be old.
 */
#include "fill/search/search.h"

#include "base/panic.h"

#include <string.h>

#define MENDED_MOST (8 * BREAK_COST) /* more shortfall than this is no start for a search */

enum { TOGETHER_MOST = 6, BEAM = 5 };

/* A whole plan set aside: the pieces of run i are pieces[first[i]] .. pieces[first[i+1]-1]. */
typedef struct Kept {
    int *first;
    Placed *pieces;
    int count, room;
} Kept;

/* What decides whether a change stays. */
typedef struct Standing {
    Length shortfall;
    int64_t spent; /* length opened less the worth of what is left over */
    int pieces;
} Standing;

struct Search {
    Arena *arena;
    Laid *laid;
    Weave *weave;
    Random random;
    Cost best;
    bool away;
    Kept kept;
    int runs[TOGETHER_MOST];
    int run_count;
    Placed *old; /* of the runs taken off */
    int old_room;
    int old_first[TOGETHER_MOST + 1];
};

static Standing standing(const Laid *laid)
{
    return (Standing){laid->bare + laid->breaks * BREAK_COST, laid->pile->length_opened - laid->pile->kept,
                      laid->pieces};
}

/* ---- the best, set aside ---- */

static void keep_best(Search *search)
{
    const Laid *laid = search->laid;
    Kept *kept = &search->kept;
    if (kept->room < laid->pieces) {
        kept->room = laid->pieces + laid->pieces / 4 + 16;
        kept->pieces = arena_array(search->arena, Placed, kept->room);
    }
    kept->count = 0;
    for (int i = 0; i < laid->demand->run_count; i++) {
        const Cover *cover = &laid->covers[i];
        kept->first[i] = kept->count;
        if (cover->count > 0)
            memcpy(kept->pieces + kept->count, cover->at, (size_t)cover->count * sizeof *kept->pieces);
        kept->count += cover->count;
    }
    kept->first[laid->demand->run_count] = kept->count;
}

static void clear(Laid *laid)
{
    for (int i = 0; i < laid->demand->run_count; i++)
        laid_clear(laid, i);
}

void search_begin_again(Search *search)
{
    keep_best(search);
    search->away = true;
    clear(search->laid);
}

void search_take_better(Search *search)
{
    Cost cost = laid_cost(search->laid);
    if (cost_compare(&cost, &search->best) <= 0) {
        search->best = cost;
        search->away = false;
    } else if (cost.shortfall > search->best.shortfall + MENDED_MOST ||
               cost.length_opened >= search->best.length_opened) {
        search_restore(search);
    }
}

void search_restore(Search *search)
{
    if (!search->away)
        return;
    Laid *laid = search->laid;
    clear(laid);
    for (int i = 0; i < laid->demand->run_count; i++)
        laid_set(laid, i, search->kept.pieces + search->kept.first[i],
                 search->kept.first[i + 1] - search->kept.first[i]);
    search->away = false;
}

Search *search_new(Arena *arena, Laid *laid, Weave *weave)
{
    Search *search = arena_one(arena, Search);
    search->arena = arena;
    search->laid = laid;
    search->weave = weave;
    search->random.state = UINT64_C(0x64617475); /* any number; the same on every machine */
    search->best = laid_cost(laid);
    search->kept.first = arena_array(arena, int, laid->demand->run_count + 1);
    return search;
}

Cost search_best(const Search *search)
{
    return search->best;
}

const Cover *search_covers(Arena *arena, const Search *search)
{
    if (!search->away)
        return search->laid->covers;
    int count = search->laid->demand->run_count;
    Cover *covers = arena_array(arena, Cover, count);
    for (int i = 0; i < count; i++) {
        covers[i].at = search->kept.pieces + search->kept.first[i];
        covers[i].count = search->kept.first[i + 1] - search->kept.first[i];
    }
    return covers;
}

/* ---- choosing runs ---- */

static int draw(Search *search, int below)
{
    return (int)random_below(&search->random, (uint64_t)below);
}

static void choose(Search *search, int run)
{
    for (int i = 0; i < search->run_count; i++)
        if (search->runs[i] == run)
            return;
    if (search->run_count < TOGETHER_MOST)
        search->runs[search->run_count++] = run;
}

/* A run that has a piece of a board of which a piece of `run` is cut; `run` itself where there is none. */
static int shares_board(Search *search, int run)
{
    const Cover *cover = &search->laid->covers[run];
    if (cover->count == 0)
        return run;
    const Span *span = &search->laid->pile->spans[cover->at[draw(search, cover->count)].span];
    return span->runs[draw(search, span->cuts)];
}

static int beside(Search *search, int run)
{
    const Demand *demand = search->laid->demand;
    const Row *row = &demand->rows[demand->runs[run].row];
    int other = draw(search, 2) == 0 ? row->below : row->above;
    if (other < 0)
        other = row->below >= 0 ? row->below : row->above;
    if (other < 0 || demand->rows[other].run_count == 0)
        return run;
    return demand->rows[other].run_first + draw(search, demand->rows[other].run_count);
}

/* A run that is cut from an opened board of which something is left: of a few drawn the one with the longest rest. */
static int with_rest(Search *search)
{
    const Pile *pile = search->laid->pile;
    int best = -1;
    for (int i = 0; i < 4; i++) {
        Length drawn = (Length)random_below(&search->random, (uint64_t)pile->longest + 1);
        int span = rack_from(&pile->open, drawn);
        if (span == RACK_NONE)
            span = rack_to(&pile->open, drawn);
        if (span != RACK_NONE && pile->spans[span].cuts > 0 &&
            (best < 0 || pile->spans[span].left > pile->spans[best].left))
            best = span;
    }
    if (best < 0)
        return draw(search, search->laid->demand->run_count);
    return pile->spans[best].runs[draw(search, pile->spans[best].cuts)];
}

/* A run with bare wall, from a drawn one on; a drawn one where none is near. */
static int with_bare(Search *search)
{
    const Laid *laid = search->laid;
    int drawn = draw(search, laid->demand->run_count);
    for (int i = 0; i < 64 && i < laid->demand->run_count; i++) {
        int run = (drawn + i) % laid->demand->run_count;
        const Cover *cover = &laid->covers[run];
        Length x = laid->demand->runs[run].left;
        for (int j = 0; j < cover->count && cover->at[j].left == x; j++)
            x = cover->at[j].right;
        if (x != laid->demand->runs[run].right)
            return run;
    }
    return drawn;
}

static void choose_runs(Search *search)
{
    int wanted = 2 + draw(search, 3);
    int seed;
    search->run_count = 0;
    if (search->laid->bare > 0 && draw(search, 3) == 0)
        seed = with_bare(search);
    else if (draw(search, 2) == 0)
        seed = with_rest(search);
    else
        seed = draw(search, search->laid->demand->run_count);
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
            choose(search, draw(search, search->laid->demand->run_count));
    }
}

/* ---- one neighbourhood ---- */

static void take_off(Search *search)
{
    Laid *laid = search->laid;
    int count = 0;
    for (int i = 0; i < search->run_count; i++)
        count += laid->covers[search->runs[i]].count;
    if (search->old_room < count) {
        search->old_room = 2 * count;
        search->old = arena_array(search->arena, Placed, search->old_room);
    }
    count = 0;
    for (int i = 0; i < search->run_count; i++) {
        const Cover *cover = &laid->covers[search->runs[i]];
        search->old_first[i] = count;
        if (cover->count > 0)
            memcpy(search->old + count, cover->at, (size_t)cover->count * sizeof *search->old);
        count += cover->count;
        laid_clear(laid, search->runs[i]);
    }
    search->old_first[search->run_count] = count;
}

static void put_back(Search *search)
{
    for (int i = 0; i < search->run_count; i++)
        laid_clear(search->laid, search->runs[i]);
    for (int i = 0; i < search->run_count; i++)
        laid_set(search->laid, search->runs[i], search->old + search->old_first[i],
                 search->old_first[i + 1] - search->old_first[i]);
}

static bool no_worse(const Standing *now, const Standing *before)
{
    if (now->shortfall != before->shortfall)
        return now->shortfall < before->shortfall;
    if (now->spent != before->spent)
        return now->spent < before->spent;
    return now->pieces <= before->pieces;
}

int search_once(Search *search, Length heat)
{
    Laid *laid = search->laid;
    if (laid->demand->run_count == 0)
        return 1;
    choose_runs(search);
    Standing before = standing(laid);
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
        work += weave_run(search->weave, order[i], BEAM, &search->random);
    Standing now = standing(laid);
    if (heat > 0)
        before.spent += (int64_t)random_below(&search->random, (uint64_t)heat);
    if (!no_worse(&now, &before)) {
        put_back(search);
        return work + 1;
    }
    Cost cost = laid_cost(laid);
    if (cost_compare(&cost, &search->best) <= 0) {
        search->best = cost;
        search->away = false;
    } else if (!search->away) { /* the best is about to be left: it is set aside, the change is made another time */
        put_back(search);
        keep_best(search);
        search->away = true;
    }
    return work + 1;
}
