/*
 * Invariant: the plan that is handed out is the one in force where that is known to hold, else the best that solve.h
 * has found.
 */
#include "fill/fill.h"

#include "fill/report.h"
#include "fill/report_findings.h"
#include "fill/search/hand.h"
#include "fill/solve.h"
#include "fill/steady/in_force.h"

struct Fill {
    Arena *arena;
    const Layout *layout;
    Solve *solve;
    InForce *in_force; /* the plan that what hangs was hung from; NULL where there is none to look for */
    Arena *reported;   /* holds the plan */
    Plan *plan;        /* NULL where it was not asked for since the last step */
};

static Fill *begin(const Layout *layout)
{
    Arena *arena = arena_new();
    Fill *fill = arena_one(arena, Fill);
    fill->arena = arena;
    fill->layout = layout;
    fill->solve = solve_new(layout);
    fill->reported = arena_new();
    return fill;
}

static bool holds(const Fill *fill)
{
    return fill->in_force != NULL && in_force_holds(fill->in_force);
}

/* The plan that `fill` came to, as far as it did. */
static KnownPlan known_plan(Fill *fill)
{
    if (fill != NULL && holds(fill))
        return in_force_known(fill->in_force);
    if (fill != NULL && solve_is_done(fill->solve))
        return (KnownPlan){.wall = fill->layout->wall, .plan = fill_plan(fill)};
    return (KnownPlan){0};
}

Fill *fill_begin_after(Fill *before, const Layout *layout)
{
    Fill *fill = begin(layout);
    fill->in_force = in_force_new(layout, solve_demand(fill->solve), known_plan(before));
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
    solve_free(fill->solve);
    arena_free(fill->reported);
    arena_free(fill->arena);
}

bool fill_step(Fill *fill, int steps)
{
    if (fill->plan != NULL) {
        arena_reset(fill->reported);
        fill->plan = NULL;
    }
    if (fill->in_force != NULL && !in_force_step(fill->in_force, steps))
        return false;
    return holds(fill) || solve_step(fill->solve, steps);
}

static Plan *report(Fill *fill, Arena *arena)
{
    if (holds(fill))
        return in_force_plan(fill->in_force, arena);
    return solve_plan(fill->solve, arena);
}

const Plan *fill_plan(Fill *fill)
{
    if (fill->plan == NULL)
        fill->plan = report(fill, fill->reported);
    return fill->plan;
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
