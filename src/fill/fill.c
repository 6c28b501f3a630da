/*
 *     begin: hand method | first plan      the better one is laid
 *     steps: prices (joints on studs) -> bound -> dive (joints on studs) -> search -> few -> arrange (looks)
 *
 * Invariants: what a step does depends on the layout and on the steps before it, never on when the plan was asked for;
 * telling a plan changes nothing that the search reads.
 */
#include "fill/fill.h"

#include "fill/in_force.h"
#include "fill/looks/anneal.h"
#include "fill/relax/bound.h"
#include "fill/relax/dive.h"
#include "fill/relax/relaxation.h"
#include "fill/report.h"
#include "fill/report_findings.h"
#include "fill/search/enumeration.h"
#include "fill/search/hand.h"
#include "fill/search/neighborhoods.h"

#define HEAT (LENGTH_INCH)

/* The budget of a wall in units of work (one piece looked at, some hundredths of a microsecond). */
enum {
    BUDGET_LEAST = 400000,
    BUDGET_PER_RUN = 24000,
    BUDGET_PER_RUN_DIVED = 10000, /* after a dive that broke no rule and left nothing bare */
    BUDGET_MOST = 24000000,
    RELAXATION_BUDGET = 24000000,
    WORK_PER_STEP = 32,
    BEAM_WIDTH_FIRST = 6,
    STAGES = 4
};

struct Fill {
    Arena *arena;
    InForce *in_force; /* the plan that what hangs was hung from; NULL where there is none to look for */
    const Layout *layout;
    const Demand *demand;
    Supply *supply;
    Solution *solution;
    Beam *beam;
    Neighborhoods *search;
    const Salvage *stages[STAGES]; /* leftovers count for less from stage to stage of the search */
    int stage;
    Relaxation *relaxation; /* NULL where there is none, or it is done */
    bool bound_known;
    Bound bound; /* of plans that keep every rule and leave nothing bare */
    Dive *dive;  /* under way; NULL before and after */
    Enumeration *enumeration;
    bool searched;         /* the search is over, and `few` has begun where there is one */
    Anneal *anneal;        /* of the best plan, for looks; NULL until the search is over */
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
static void lay_first(Arena *arena, Solution *solution, Beam *beam)
{
    const Demand *demand = solution->demand;
    const int *order = report_row_order(arena, demand);
    for (int i = 0; i < demand->row_count; i++)
        for (int j = 0; j < demand->rows[order[i]].run_count; j++)
            beam_cover(beam, demand->rows[order[i]].run_first + j, BEAM_WIDTH_FIRST, NULL);
}

static void salvage_by_length(Fill *fill)
{
    const Demand *demand = fill->demand;
    Sizes *sizes = NULL;
    int64_t *best = NULL;
    if (demand->on_studs) {
        sizes = sizes_find(fill->arena, demand, demand->runs, demand->run_count, fill->supply->longest, 2048);
        int64_t *prices = arena_array(fill->arena, int64_t, sizes->count);
        for (int i = 0; i < sizes->count; i++)
            prices[i] = sizes->cells[i] * sizes->width;
        best = arena_array(fill->arena, int64_t, sizes->cell_count);
        salvage_best(sizes, prices, best);
    }
    supply_use_salvage(fill->supply,
                       salvage_table(fill->arena, demand, fill->supply->longest, sizes, best, SALVAGE_USUAL));
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
    fill->supply = supply_new(arena, fill->demand);
    fill->solution = solution_new(arena, fill->demand, fill->supply);
    fill->beam = beam_new(arena, fill->solution);
    salvage_by_length(fill);
    hand_cover(arena, fill->solution);
    fill->search = neighborhoods_new(arena, fill->solution, fill->beam);
    neighborhoods_restart(fill->search);
    lay_first(arena, fill->solution, fill->beam);
    neighborhoods_accept(fill->search);
    if (fill->demand->on_studs)
        fill->relaxation = relaxation_new(arena, fill->demand, fill->supply);
    give_budget(fill, BUDGET_PER_RUN);
    return fill;
}

/* The plan that `fill` came to, as far as it did. */
static KnownPlan known_plan(const Fill *fill)
{
    if (fill != NULL && fill->in_force != NULL && in_force_holds(fill->in_force))
        return in_force_known(fill->in_force);
    if (fill != NULL && fill->finished != NULL)
        return (KnownPlan){fill->layout->wall, fill_plan(fill)};
    return (KnownPlan){0};
}

Fill *fill_begin_after(const Fill *before, const Layout *layout)
{
    Fill *fill = fill_begin_anew(layout);
    fill->in_force = in_force_new(layout, fill->demand, known_plan(before));
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
    in_force_free(fill->in_force);
    arena_free(fill->told);
    arena_free(fill->arena);
}

/* How many parts of SALVAGE_FULL a leftover counts in each stage. */
static void plan_stages(Fill *fill, const Sizes *sizes, const int64_t *best)
{
    static const int anywhere[STAGES] = {SALVAGE_USUAL, SALVAGE_USUAL, SALVAGE_USUAL, 20};
    static const int studs[STAGES] = {SALVAGE_USUAL, SALVAGE_USUAL, 18, 18};
    for (int i = 0; i < STAGES; i++)
        fill->stages[i] = salvage_table(fill->arena, fill->demand, fill->supply->longest, sizes, best,
                                        fill->demand->on_studs ? studs[i] : anywhere[i]);
}

/* From here on the search goes by the prices. */
static void take_duals(Fill *fill)
{
    const Sizes *sizes = relaxation_sizes(fill->relaxation);
    int64_t *best = arena_array(fill->arena, int64_t, sizes->cell_count);
    salvage_best(sizes, relaxation_duals(fill->relaxation), best);
    supply_use_salvage(fill->supply,
                       salvage_table(fill->arena, fill->demand, fill->supply->longest, sizes, best, SALVAGE_USUAL));
    plan_stages(fill, sizes, best);
    beam_use_prices(fill->beam, sizes, relaxation_duals(fill->relaxation));
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
        supply_use_salvage(fill->supply, fill->stages[stage]);
        fill->stage = stage;
    }
    if (fill->dive != NULL) {
        if (dive_step(fill->dive, &work)) {
            neighborhoods_accept(fill->search);
            fill->dive = NULL;
        }
        fill->used += work;
        give_budget(fill,
                    neighborhoods_incumbent_cost(fill->search).shortfall == 0 ? BUDGET_PER_RUN_DIVED : BUDGET_PER_RUN);
        return 0;
    }
    if (fill->bound_known)
        return neighborhoods_step(fill->search, heat(fill));
    if (fill->relaxation != NULL && !relaxation_step(fill->relaxation, &work) && fill->used < RELAXATION_BUDGET)
        return work;
    Length priced = 0;
    if (!fill->demand->on_studs)
        plan_stages(fill, NULL, NULL);
    if (fill->relaxation != NULL) {
        take_duals(fill);
        priced = relaxation_bound(fill->relaxation);
    }
    fill->bound = bound_whole(fill->demand, fill->supply, priced);
    fill->bound_known = true;
    give_budget(fill, BUDGET_PER_RUN);
    if (fill->relaxation != NULL) {
        fill->dive = dive_new(fill->arena, fill->relaxation, fill->solution, fill->beam);
        neighborhoods_restart(fill->search);
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
    Cost best = neighborhoods_incumbent_cost(fill->search);
    return best.shortfall == 0 && best.length_opened <= fill->bound.length &&
           best.boards_opened <= fill->bound.boards && fill->used - fill->begun >= (fill->budget - fill->begun) / 4;
}

/* Behind the search: a small pile is sought through, then what was found is arranged for looks. */
static int64_t finish(Fill *fill)
{
    int64_t work = 1;
    if (!fill->searched) {
        fill->searched = true;
        neighborhoods_restore(fill->search);
        fill->enumeration =
            enumeration_new(fill->arena, fill->solution, fill->beam, neighborhoods_incumbent_cost(fill->search));
        if (fill->enumeration != NULL)
            neighborhoods_restart(fill->search);
        return work;
    }
    if (fill->enumeration != NULL) {
        bool found;
        if (enumeration_step(fill->enumeration, &work, &found) || fill->used >= 2 * fill->budget) {
            neighborhoods_accept(fill->search);
            fill->enumeration = NULL;
        }
        return work;
    }
    if (fill->anneal == NULL) {
        const Cover *best = neighborhoods_incumbent(fill->arena, fill->search);
        fill->anneal = anneal_new(fill->arena, fill->demand, fill->supply, best);
        if (fill->anneal == NULL) {
            fill->finished = best;
            return work;
        }
    }
    if (anneal_step(fill->anneal, &work))
        fill->finished = anneal_covers(fill->arena, fill->anneal);
    return work;
}

bool fill_step(Fill *fill, int steps)
{
    int64_t until = fill->used + (int64_t)(steps > 0 ? steps : 0) * WORK_PER_STEP;
    if (fill->plan != NULL) {
        arena_reset(fill->told);
        fill->plan = NULL;
    }
    if (fill->in_force != NULL && !in_force_step(fill->in_force, steps))
        return false;
    if (fill->in_force != NULL && in_force_holds(fill->in_force))
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
        own->covered_bound = bound_covered(fill->demand, fill->supply, covered);
        own->covered = covered;
        own->covered_known = true;
    }
    return own->covered_bound;
}

static Plan *report(const Fill *fill, Arena *arena)
{
    if (fill->in_force != NULL && in_force_holds(fill->in_force))
        return in_force_plan(fill->in_force, arena);
    const Cover *covers = fill->finished != NULL ? fill->finished : neighborhoods_incumbent(fill->told, fill->search);
    Plan *plan = report_plan(arena, fill->demand, fill->supply, covers);
    if (fill->in_force != NULL && fill->finished != NULL) {
        plan->anew = true;
        report_anew(arena, fill->demand, in_force_breach(fill->in_force), plan);
    }
    if (!fill->bound_known)
        return plan;
    Bound bound = fill->bound;
    if (plan->shortfall > 0 || plan->closers_off > 0)
        bound = bound_of_covered(fill, fill->demand->total - plan->bare_length + plan->closers);
    report_bound(arena, bound, plan);
    return plan;
}

const Plan *fill_plan(const Fill *fill)
{
    if (fill->plan != NULL)
        return fill->plan;
    Fill *own = (Fill *)(uintptr_t)fill; /* the plan is told when it is first asked for; the search does not see that */
    own->plan = report(own, own->told);
    return own->plan;
}

Plan *fill_wall(Arena *arena, const Layout *layout)
{
    Fill *fill = fill_begin(layout);
    while (!fill_step(fill, 1 << 20))
        continue;
    Plan *plan = report(fill, arena);
    fill_free(fill);
    return plan;
}

Plan *fill_by_hand(Arena *arena, const Layout *layout)
{
    Arena *work = arena_new();
    const Demand *demand = demand_new(work, layout);
    Supply *supply = supply_new(work, demand);
    Solution *solution = solution_new(work, demand, supply);
    hand_cover(work, solution);
    Plan *plan = report_plan(arena, demand, supply, solution->covers);
    arena_free(work);
    return plan;
}
