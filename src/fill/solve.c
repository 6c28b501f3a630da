/*
 *     begin: hand method | first plan by beam search      the better one is the first incumbent
 *     steps: relaxation (joints on studs) -> bound -> dive (joints on studs) -> neighborhoods -> enumeration
 *            -> spending -> looks
 *
 * Invariants: what a step does depends on the layout and on the steps before it, never on when the plan was asked for;
 * reporting a plan changes nothing that the search reads.
 */
#include "fill/solve.h"

#include "base/wide.h"
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
#define PIECE_COST_LAST (LENGTH_INCH) /* in the last stage, where fewer pieces are sought */

/* The budget of a wall in units of work (one piece looked at, some hundredths of a microsecond). The figures were
 * chosen with tests/bench/fill: where more work no longer opened less on most of its walls. */
enum {
    BUDGET_LEAST = 400000,
    BUDGET_PER_RUN = 24000,
    BUDGET_PER_RUN_DIVED = 10000, /* after a dive that broke no rule and left nothing bare */
    BUDGET_MOST = 24000000,
    RELAXATION_LEAST = 1000000, /* for the relaxation, and again for the dive */
    RELAXATION_PER_RUN = 50000, /* of rooms 19 in 20 need under half of that */
    RELAXATION_MOST = 24000000,
    WORK_PER_STEP = 32,
    BEAM_WIDTH_FIRST = 6,
    STAGES = 5,
    LAST = STAGES - 1
};

struct Solve {
    Arena *arena;
    const Demand *demand;
    Supply *supply;
    Solution *solution;
    Beam *beam;
    Neighborhoods *search;
    const Salvage *stages[STAGES]; /* leftovers count for less from stage to stage of the search */
    int stage;
    Relaxation *relaxation; /* NULL where there is none */
    bool bound_known;
    Bound bound; /* of plans that keep every rule and leave nothing bare */
    Dive *dive;  /* under way; NULL before and after */
    Enumeration *enumeration;
    Length least;          /* length opened by the best plan before any was spent; 0 until that is known */
    int64_t spend_until;   /* work at which the search for fewer pieces ends */
    bool spent;            /* that search is over */
    bool searched;         /* the neighborhoods are over, and the enumeration has begun where there is one */
    Anneal *anneal;        /* of the best plan, for looks; NULL until the search is over */
    const Cover *finished; /* NULL until that is done */
    bool covered_known;
    Length covered; /* by the plan reported last that leaves something bare */
    Bound covered_bound;
    int64_t budget, used; /* of all stages; the search began at `begun` */
    int64_t begun;
};

/* Covers every run in hanging order. */
static void lay_first(Arena *arena, Solution *solution, Beam *beam)
{
    const Demand *demand = solution->demand;
    const int *order = demand_row_order(arena, demand);
    for (int i = 0; i < demand->row_count; i++)
        for (int j = 0; j < demand->rows[order[i]].run_count; j++)
            beam_cover(beam, demand->rows[order[i]].run_first + j, BEAM_WIDTH_FIRST, NULL);
}

static void salvage_by_length(Solve *solve)
{
    const Demand *demand = solve->demand;
    Sizes *sizes = NULL;
    int64_t *best = NULL;
    if (demand->on_studs) {
        sizes = sizes_find(solve->arena, demand, demand->runs, demand->run_count, solve->supply->longest, 2048);
        int64_t *prices = arena_array(solve->arena, int64_t, sizes->count);
        for (int i = 0; i < sizes->count; i++)
            prices[i] = sizes->cells[i] * sizes->width;
        best = arena_array(solve->arena, int64_t, sizes->cell_count);
        salvage_best(sizes, prices, best);
    }
    supply_use_salvage(solve->supply,
                       salvage_table(solve->arena, demand, solve->supply->longest, sizes, best, SALVAGE_USUAL));
}

/* What the relaxation may use, and the dive again. */
static int64_t relaxation_budget(const Solve *solve)
{
    const int64_t budget = RELAXATION_LEAST + solve->demand->run_count * (int64_t)RELAXATION_PER_RUN;
    return budget < RELAXATION_MOST ? budget : RELAXATION_MOST;
}

/* What the search may use, from here on. */
static void give_budget(Solve *solve, int per_run)
{
    int64_t budget = BUDGET_LEAST + solve->demand->run_count * (int64_t)per_run;
    solve->begun = solve->used;
    solve->budget = solve->used + (budget < BUDGET_MOST ? budget : BUDGET_MOST);
}

Solve *solve_new(const Layout *layout)
{
    Arena *arena = arena_new();
    Solve *solve = arena_one(arena, Solve);
    solve->arena = arena;
    solve->demand = demand_new(arena, layout);
    solve->supply = supply_new(arena, solve->demand);
    solve->solution = solution_new(arena, solve->demand, solve->supply);
    solve->beam = beam_new(arena, solve->solution);
    solve->stages[LAST] = salvage_none();
    salvage_by_length(solve);
    hand_cover(arena, solve->solution);
    solve->search = neighborhoods_new(arena, solve->solution, solve->beam);
    neighborhoods_restart(solve->search);
    lay_first(arena, solve->solution, solve->beam);
    neighborhoods_accept(solve->search);
    if (solve->demand->on_studs)
        solve->relaxation = relaxation_new(arena, solve->demand, solve->supply);
    give_budget(solve, BUDGET_PER_RUN);
    return solve;
}

void solve_free(Solve *solve)
{
    if (solve == NULL)
        return;
    arena_free(solve->arena);
}

/* How many parts of SALVAGE_FULL a leftover counts in each stage; at last nothing, so that pieces become fewer. */
static void plan_stages(Solve *solve, const Sizes *sizes, const int64_t *best)
{
    static const int anywhere[LAST] = {SALVAGE_USUAL, SALVAGE_USUAL, SALVAGE_USUAL, 20};
    static const int studs[LAST] = {SALVAGE_USUAL, SALVAGE_USUAL, 18, 18};
    for (int i = 0; i < LAST; i++)
        solve->stages[i] = salvage_table(solve->arena, solve->demand, solve->supply->longest, sizes, best,
                                         solve->demand->on_studs ? studs[i] : anywhere[i]);
}

/* From here on the search goes by the duals. */
static void take_duals(Solve *solve)
{
    const Sizes *sizes = relaxation_sizes(solve->relaxation);
    int64_t *best = arena_array(solve->arena, int64_t, sizes->cell_count);
    salvage_best(sizes, relaxation_duals(solve->relaxation), best);
    supply_use_salvage(solve->supply,
                       salvage_table(solve->arena, solve->demand, solve->supply->longest, sizes, best, SALVAGE_USUAL));
    plan_stages(solve, sizes, best);
    beam_use_prices(solve->beam, sizes, relaxation_duals(solve->relaxation));
}

/* How much more a change may waste: some of an inch at first, cooling down to nothing as the budget is used up. */
static Length heat(const Solve *solve)
{
    if (solve->stage == LAST)
        return 0;
    int64_t left = (solve->budget - solve->used) * 1000 / (solve->budget - solve->begun);
    return HEAT * left / 1000 * left / 1000;
}

static void use_stage(Solve *solve, int stage)
{
    supply_use_salvage(solve->supply, solve->stages[stage]);
    solve->stage = stage;
    if (stage != LAST)
        return;
    beam_use_piece_cost(solve->beam, PIECE_COST_LAST);
    neighborhoods_restore(solve->search);
}

/* The next piece of work; how much it was. */
static int64_t step(Solve *solve)
{
    int64_t work = 1;
    int stage = (int)((solve->used - solve->begun) * STAGES / (solve->budget - solve->begun));
    if (stage > solve->stage && stage < STAGES && solve->stages[stage] != NULL)
        use_stage(solve, stage);
    if (solve->dive != NULL) {
        if (dive_step(solve->dive, &work)) {
            neighborhoods_accept(solve->search);
            solve->dive = NULL;
        }
        solve->used += work;
        give_budget(solve,
                    neighborhoods_incumbent_cost(solve->search).shortfall == 0 ? BUDGET_PER_RUN_DIVED : BUDGET_PER_RUN);
        return 0;
    }
    if (solve->bound_known)
        return neighborhoods_step(solve->search, heat(solve));
    if (solve->relaxation != NULL && !relaxation_step(solve->relaxation, &work) &&
        solve->used < relaxation_budget(solve))
        return work;
    Length priced = 0;
    if (!solve->demand->on_studs)
        plan_stages(solve, NULL, NULL);
    if (solve->relaxation != NULL) {
        take_duals(solve);
        priced = relaxation_bound(solve->relaxation);
    }
    solve->bound = bound_whole(solve->demand, solve->supply, priced);
    solve->bound_known = true;
    give_budget(solve, BUDGET_PER_RUN);
    if (solve->relaxation != NULL) {
        solve->dive = dive_new(solve->arena, solve->relaxation, solve->solution, solve->beam, relaxation_budget(solve));
        neighborhoods_restart(solve->search);
    }
    return work;
}

/* No plan opens less, and a quarter of the budget went into finding one of few pieces. */
static bool is_at_bound(const Solve *solve)
{
    const Cost best = neighborhoods_incumbent_cost(solve->search);
    return best.shortfall == 0 && best.length_opened <= solve->bound.length &&
           best.boards_opened <= solve->bound.boards &&
           solve->used - solve->begun >= (solve->budget - solve->begun) / 4;
}

/* Whether the budget is used up; where nothing can open less, what is left of it but for the last stage is not used. */
static bool is_done(Solve *solve)
{
    if (!solve->bound_known || solve->dive != NULL)
        return false;
    if (solve->stage < LAST && is_at_bound(solve)) {
        const int64_t last = solve->used + (solve->budget - solve->begun) / STAGES;
        solve->budget = last < solve->budget ? last : solve->budget;
        use_stage(solve, LAST);
    }
    return solve->used >= solve->budget;
}

/* Length that may be opened in all; 0 where the least is asked for. What hangs or is held on to goes before. */
static Length allowance(const Solve *solve)
{
    const Joints *joints = &solve->demand->wall->joints;
    const int64_t whole = 100 * 1000; /* 100 % in thousandths */
    if (solve->demand->hung_count > 0 || (joints->spend == 0 && !joints->spend_all))
        return 0;
    if (joints->spend_all)
        return INT64_MAX;
    return (Length)wide_floor((Wide)solve->least * (whole + joints->spend), whole);
}

/* Spends what may be spent: fewer pieces, whatever boards they come from. */
static int64_t spend(Solve *solve)
{
    if (solve->least == 0) {
        solve->least = neighborhoods_incumbent_cost(solve->search).length_opened;
        const Length allowed = allowance(solve);
        solve->spent = allowed == 0 || solve->least == 0;
        if (solve->spent)
            return 1;
        solve->spend_until = solve->used + (solve->budget - solve->begun);
        neighborhoods_allow(solve->search, allowed);
        beam_use_piece_cost(solve->beam, PIECE_COST_LAST);
        supply_use_salvage(solve->supply, salvage_none());
        supply_open_free(solve->supply);
    }
    if (solve->used < solve->spend_until)
        return neighborhoods_step(solve->search, 0);
    neighborhoods_restore(solve->search);
    solve->spent = true;
    return 1;
}

/* After the neighborhoods: small supplies are enumerated, then what may be spent is spent, then looks are improved. */
static int64_t finish(Solve *solve)
{
    int64_t work = 1;
    if (!solve->searched) {
        solve->searched = true;
        neighborhoods_restore(solve->search);
        solve->enumeration =
            enumeration_new(solve->arena, solve->solution, solve->beam, neighborhoods_incumbent_cost(solve->search));
        if (solve->enumeration != NULL)
            neighborhoods_restart(solve->search);
        return work;
    }
    if (solve->enumeration != NULL) {
        bool found;
        if (enumeration_step(solve->enumeration, &work, &found) || solve->used >= 2 * solve->budget) {
            neighborhoods_accept(solve->search);
            solve->enumeration = NULL;
        }
        return work;
    }
    if (!solve->spent)
        return spend(solve);
    if (solve->anneal == NULL) {
        const Cover *best = neighborhoods_incumbent(solve->arena, solve->search);
        solve->anneal = anneal_new(solve->arena, solve->demand, solve->supply, best);
        if (solve->anneal == NULL) {
            solve->finished = best;
            return work;
        }
    }
    if (anneal_step(solve->anneal, &work))
        solve->finished = anneal_covers(solve->arena, solve->anneal);
    return work;
}

bool solve_step(Solve *solve, int steps)
{
    int64_t until = solve->used + (int64_t)(steps > 0 ? steps : 0) * WORK_PER_STEP;
    while (solve->used < until && solve->finished == NULL)
        solve->used += solve->searched || is_done(solve) ? finish(solve) : step(solve);
    return solve->finished != NULL;
}

/* Worked out once for each length. */
static Bound bound_of_covered(Solve *solve, Length covered)
{
    if (!solve->covered_known || solve->covered != covered) {
        solve->covered_bound = bound_covered(solve->demand, solve->supply, covered);
        solve->covered = covered;
        solve->covered_known = true;
    }
    return solve->covered_bound;
}

Plan *solve_plan(Solve *solve, Arena *arena)
{
    const Cover *covers = solve->finished != NULL ? solve->finished : neighborhoods_incumbent(arena, solve->search);
    Plan *plan = report_plan(arena, solve->demand, solve->supply, covers);
    plan->length_least = solve->spend_until > 0 ? solve->least : 0;
    if (!solve->bound_known)
        return plan;
    Bound bound = solve->bound;
    if (plan->shortfall > 0 || plan->closers_off > 0)
        bound = bound_of_covered(solve, solve->demand->total - plan->bare_length + plan->closers);
    report_bound(arena, bound, plan);
    return plan;
}

bool solve_is_done(const Solve *solve)
{
    return solve->finished != NULL;
}

const Demand *solve_demand(const Solve *solve)
{
    return solve->demand;
}
