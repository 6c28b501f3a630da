/*
 * What was printed may be cut already, so a plan outlives what happens to it: the plan in force is the one that was
 * made on the empty wall, changed by one event after another (datumrow(5), "Steadiness"): a record of `hung`, a board
 * gone or found. A piece hung as the plan has it changes nothing; any other event changes as few pieces as the search
 * finds, with no more shortfall than a plan made of all that is left, and `plan: anew` asks for that plan. Pieces that
 * did not change keep their numbers. All this comes from the file alone, so that it does not matter who hung what in
 * which run of the program. It knows nothing of how a plan is found.
 */
#ifndef FILL_STEADY_IN_FORCE_H
#define FILL_STEADY_IN_FORCE_H

#include "fill/demand.h"
#include "fill/plan.h"
#include "layout/layout.h"

typedef struct InForce InForce;

/* A final plan and the wall that it was made for. */
typedef struct KnownPlan {
    const Wall *wall; /* NULL where there is none */
    const Plan *plan;
    const InForce *in_force; /* what came of it on a wall with events; NULL where there were none */
} KnownPlan;

/* Begins to look for the plan in force of the layout's wall; `demand` is of the same layout, and both must outlive it.
 * Where `known` is the plan of the empty wall, it need not be made again, nor what came of the same first events. NULL
 * where nothing has happened yet: the plan in force is the one to be made. */
InForce *in_force_new(const Layout *layout, const Demand *demand, KnownPlan known);
void in_force_free(InForce *in_force);

/* Works on for about `steps` units, as fill_step; true when the plan in force is known. */
bool in_force_step(InForce *in_force, int steps);

/* Whether it is known. Not after a step that could not be laid out at all: then what hangs is planned around. */
bool in_force_holds(const InForce *in_force);

/* What in_force_new may be given the next time, as long as this one is there. */
KnownPlan in_force_known(const InForce *in_force);

/* The plan in force, what hangs in it marked, with its findings, in `arena`. */
Plan *in_force_plan(const InForce *in_force, Arena *arena);

#endif
