/*
 * Solves one wall: which board is cut where, and where the joints stand, around all that hangs and whatever plan that
 * was hung from. A stepper: the stages stand at the head of solve.c. It knows nothing of plans in force
 * (steady/in_force.h).
 */
#ifndef FILL_SOLVE_H
#define FILL_SOLVE_H

#include "fill/demand.h"
#include "fill/plan.h"

typedef struct Solve Solve;

/* The layout must outlive it. The first plan is there when it returns. */
Solve *solve_new(const Layout *layout);
void solve_free(Solve *solve);

/* Works on for about `steps` units, as fill_step; true when it is done. */
bool solve_step(Solve *solve, int steps);
bool solve_is_done(const Solve *solve);

const Demand *solve_demand(const Solve *solve);

/* The best plan so far, in `arena`. */
Plan *solve_plan(Solve *solve, Arena *arena);

#endif
