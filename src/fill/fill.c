/*
 *     begin: hand method | first plan      the better one is laid
 *     steps: prices (joints on studs) -> bound -> dive (joints on studs) -> search -> few -> arrange (looks)
 *
 * Invariants: what a step does depends on the layout and on the steps before it, never on when the plan was asked for;
 * telling a plan changes nothing that the search reads.
 */
#include "fill/fill.h"

#include "fill/keep.h"
#include "fill/looks/arrange.h"
#include "fill/relax/bound.h"
#include "fill/relax/dive.h"
#include "fill/relax/price.h"
#include "fill/search/few.h"
#include "fill/search/hand.h"
#include "fill/search/search.h"
#include "fill/tell.h"
#include "fill/tell_findings.h"

#define HEAT (LENGTH_INCH)

/* The budget of a wall in units of work (one piece looked at, some hundredths of a microsecond). */
enum {
    BUDGET_LEAST = 400000,
    BUDGET_PER_RUN = 24000,
    BUDGET_PER_RUN_DIVED = 10000, /* after a dive that broke no rule and left nothing bare */
    BUDGET_MOST = 24000000,
    PRICE_BUDGET = 24000000,
    WORK_PER_STEP = 32,
    BEAM_FIRST = 6,
    STAGES = 4
};

struct Fill {
    Arena *arena;
    Keep *keep; /* the plan that what hangs was hung from; NULL where there is none to look for */
    const Layout *layout;
    const Demand *demand;
    Pile *pile;
    Laid *laid;
    Weave *weave;
    Search *search;
    const Worth *stages[STAGES]; /* leftovers count for less from stage to stage of the search */
    int stage;
    Price *price; /* NULL where there is none, or it is done */
    bool bound_known;
    Bound bound; /* of plans that keep every rule and leave nothing bare */
    Dive *dive;  /* under way; NULL before and after */
    Few *few;
    bool searched;         /* the search is over, and `few` has begun where there is one */
    Arrange *arrange;      /* of the best plan, for looks; NULL until the search is over */
    const Cover *finished; /* NULL until that is done */
    bool covered_known;
    Length covered; /* by the plan that was told last and leaves something bare */
    Bound covered_bound;
    int64_t budget, used; /* of the whole fill; the search began at `begun` */
    int64_t begun;
    Arena *told; /* holds the plan */
    Plan *plan;  /* NULL where it was not told since the last step */
};

/* Covers every run in hanging order. */
static void lay_first(Arena *arena, Laid *laid, Weave *weave)
{
    const Demand *demand = laid->demand;
    const int *order = tell_row_order(arena, demand);
    for (int i = 0; i < demand->row_count; i++)
        for (int j = 0; j < demand->rows[order[i]].run_count; j++)
            weave_run(weave, demand->rows[order[i]].run_first + j, BEAM_FIRST, NULL);
}

static void price_by_length(Fill *fill)
{
    const Demand *demand = fill->demand;
    Sizes *sizes = NULL;
    int64_t *best = NULL;
    if (demand->on_studs) {
        sizes = worth_sizes(fill->arena, demand, demand->runs, demand->run_count, fill->pile->longest, 2048);
        int64_t *prices = arena_array(fill->arena, int64_t, sizes->count);
        for (int i = 0; i < sizes->count; i++)
            prices[i] = sizes->cells[i] * sizes->width;
        best = arena_array(fill->arena, int64_t, sizes->cell_count);
        worth_best(sizes, prices, best);
    }
    pile_price(fill->pile, worth_table(fill->arena, demand, fill->pile->longest, sizes, best, WORTH_KEEP));
}

/* What the search may use, from here on. */
static void give_budget(Fill *fill, int per_run)
{
    int64_t budget = BUDGET_LEAST + fill->demand->run_count * (int64_t)per_run;
    fill->begun = fill->used;
    fill->budget = fill->used + (budget < BUDGET_MOST ? budget : BUDGET_MOST);
}

Fill *fill_begin_anew(const Layout *layout)
{
    Arena *arena = arena_new();
    Fill *fill = arena_one(arena, Fill);
    fill->arena = arena;
    fill->told = arena_new();
    fill->layout = layout;
    fill->demand = demand_new(arena, layout);
    fill->pile = pile_new(arena, fill->demand);
    fill->laid = laid_new(arena, fill->demand, fill->pile);
    fill->weave = weave_new(arena, fill->laid);
    price_by_length(fill);
    hand_lay(arena, fill->laid);
    fill->search = search_new(arena, fill->laid, fill->weave);
    search_begin_again(fill->search);
    lay_first(arena, fill->laid, fill->weave);
    search_take_better(fill->search);
    if (fill->demand->on_studs)
        fill->price = price_new(arena, fill->demand, fill->pile);
    give_budget(fill, BUDGET_PER_RUN);
    return fill;
}

/* The plan that `fill` came to, as far as it did. */
static InForce in_force(const Fill *fill)
{
    if (fill != NULL && fill->keep != NULL && keep_holds(fill->keep))
        return keep_in_force(fill->keep);
    if (fill != NULL && fill->finished != NULL)
        return (InForce){fill->layout->wall, fill_plan(fill)};
    return (InForce){0};
}

Fill *fill_begin_after(const Fill *before, const Layout *layout)
{
    Fill *fill = fill_begin_anew(layout);
    fill->keep = keep_new(layout, fill->demand, in_force(before));
    return fill;
}

Fill *fill_begin(const Layout *layout)
{
    return fill_begin_after(NULL, layout);
}

void fill_free(Fill *fill)
{
    if (fill == NULL)
        return;
    keep_free(fill->keep);
    arena_free(fill->told);
    arena_free(fill->arena);
}

/* How many parts of WORTH_FULL a leftover counts in each stage. */
static void plan_stages(Fill *fill, const Sizes *sizes, const int64_t *best)
{
    static const int anywhere[STAGES] = {WORTH_KEEP, WORTH_KEEP, WORTH_KEEP, 20};
    static const int studs[STAGES] = {WORTH_KEEP, WORTH_KEEP, 18, 18};
    for (int i = 0; i < STAGES; i++)
        fill->stages[i] = worth_table(fill->arena, fill->demand, fill->pile->longest, sizes, best,
                                      fill->demand->on_studs ? studs[i] : anywhere[i]);
}

/* From here on the search goes by the prices. */
static void take_prices(Fill *fill)
{
    const Sizes *sizes = price_sizes(fill->price);
    int64_t *best = arena_array(fill->arena, int64_t, sizes->cell_count);
    worth_best(sizes, price_prices(fill->price), best);
    pile_price(fill->pile, worth_table(fill->arena, fill->demand, fill->pile->longest, sizes, best, WORTH_KEEP));
    plan_stages(fill, sizes, best);
    weave_price(fill->weave, sizes, price_prices(fill->price));
}

/* How much more a change may waste: some of an inch at first, cooling down to nothing as the budget is used up. */
static Length heat(const Fill *fill)
{
    int64_t left = (fill->budget - fill->used) * 1000 / (fill->budget - fill->begun);
    return HEAT * left / 1000 * left / 1000;
}

/* The next piece of work; how much it was. */
static int64_t step(Fill *fill)
{
    int64_t work = 1;
    int stage = (int)((fill->used - fill->begun) * STAGES / (fill->budget - fill->begun));
    if (stage > fill->stage && stage < STAGES && fill->stages[stage] != NULL) {
        pile_price(fill->pile, fill->stages[stage]);
        fill->stage = stage;
    }
    if (fill->dive != NULL) {
        if (dive_once(fill->dive, &work)) {
            search_take_better(fill->search);
            fill->dive = NULL;
        }
        fill->used += work;
        give_budget(fill, search_best(fill->search).shortfall == 0 ? BUDGET_PER_RUN_DIVED : BUDGET_PER_RUN);
        return 0;
    }
    if (fill->bound_known)
        return search_once(fill->search, heat(fill));
    if (fill->price != NULL && !price_once(fill->price, &work) && fill->used < PRICE_BUDGET)
        return work;
    Length priced = 0;
    if (!fill->demand->on_studs)
        plan_stages(fill, NULL, NULL);
    if (fill->price != NULL) {
        take_prices(fill);
        priced = price_bound(fill->price);
    }
    fill->bound = bound_whole(fill->demand, fill->pile, priced);
    fill->bound_known = true;
    give_budget(fill, BUDGET_PER_RUN);
    if (fill->price != NULL) {
        fill->dive = dive_new(fill->arena, fill->price, fill->laid, fill->weave);
        search_begin_again(fill->search);
    }
    return work;
}

/* The budget is used up, or nothing can be better. */
static bool is_done(const Fill *fill)
{
    if (!fill->bound_known || fill->dive != NULL)
        return false;
    if (fill->used >= fill->budget)
        return true;
    Cost best = search_best(fill->search);
    return best.shortfall == 0 && best.length_opened <= fill->bound.length &&
           best.boards_opened <= fill->bound.boards && fill->used - fill->begun >= (fill->budget - fill->begun) / 4;
}

/* Behind the search: a small pile is sought through, then what was found is arranged for looks. */
static int64_t finish(Fill *fill)
{
    int64_t work = 1;
    if (!fill->searched) {
        fill->searched = true;
        search_restore(fill->search);
        fill->few = few_new(fill->arena, fill->laid, fill->weave, search_best(fill->search));
        if (fill->few != NULL)
            search_begin_again(fill->search);
        return work;
    }
    if (fill->few != NULL) {
        bool found;
        if (few_once(fill->few, &work, &found) || fill->used >= 2 * fill->budget) {
            search_take_better(fill->search);
            fill->few = NULL;
        }
        return work;
    }
    if (fill->arrange == NULL) {
        const Cover *best = search_covers(fill->arena, fill->search);
        fill->arrange = arrange_new(fill->arena, fill->demand, fill->pile, best);
        if (fill->arrange == NULL) {
            fill->finished = best;
            return work;
        }
    }
    if (arrange_once(fill->arrange, &work))
        fill->finished = arrange_covers(fill->arena, fill->arrange);
    return work;
}

bool fill_step(Fill *fill, int steps)
{
    int64_t until = fill->used + (int64_t)(steps > 0 ? steps : 0) * WORK_PER_STEP;
    if (fill->plan != NULL) {
        arena_reset(fill->told);
        fill->plan = NULL;
    }
    if (fill->keep != NULL && !keep_step(fill->keep, steps))
        return false;
    if (fill->keep != NULL && keep_holds(fill->keep))
        return true;
    while (fill->used < until && fill->finished == NULL)
        fill->used += fill->searched || is_done(fill) ? finish(fill) : step(fill);
    return fill->finished != NULL;
}

/* Worked out once for each length. */
static Bound bound_of_covered(const Fill *fill, Length covered)
{
    Fill *own = (Fill *)(uintptr_t)fill;
    if (!own->covered_known || own->covered != covered) {
        own->covered_bound = bound_covered(fill->demand, fill->pile, covered);
        own->covered = covered;
        own->covered_known = true;
    }
    return own->covered_bound;
}

static Plan *tell(const Fill *fill, Arena *arena)
{
    if (fill->keep != NULL && keep_holds(fill->keep))
        return keep_plan(fill->keep, arena);
    const Cover *covers = fill->finished != NULL ? fill->finished : search_covers(fill->told, fill->search);
    Plan *plan = tell_plan(arena, fill->demand, fill->pile, covers);
    if (fill->keep != NULL && fill->finished != NULL) {
        plan->anew = true;
        tell_anew(arena, fill->demand, keep_breach(fill->keep), plan);
    }
    if (!fill->bound_known)
        return plan;
    Bound bound = fill->bound;
    if (plan->shortfall > 0)
        bound = bound_of_covered(fill, fill->demand->total - plan->bare_length);
    tell_bound(arena, bound, plan);
    return plan;
}

const Plan *fill_plan(const Fill *fill)
{
    if (fill->plan != NULL)
        return fill->plan;
    Fill *own = (Fill *)(uintptr_t)fill; /* the plan is told when it is first asked for; the search does not see that */
    own->plan = tell(own, own->told);
    return own->plan;
}

Plan *fill_wall(Arena *arena, const Layout *layout)
{
    Fill *fill = fill_begin(layout);
    while (!fill_step(fill, 1 << 20))
        continue;
    Plan *plan = tell(fill, arena);
    fill_free(fill);
    return plan;
}

Plan *fill_by_hand(Arena *arena, const Layout *layout)
{
    Arena *work = arena_new();
    const Demand *demand = demand_new(work, layout);
    Pile *pile = pile_new(work, demand);
    Laid *laid = laid_new(work, demand, pile);
    hand_lay(work, laid);
    Plan *plan = tell_plan(arena, demand, pile, laid->covers);
    arena_free(work);
    return plan;
}
