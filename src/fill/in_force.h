/*
 * A plan outlives the hanging of its own pieces: the sheets that somebody carries go on holding. The plan in force is
 * the one that was made around the pieces recorded before the last one marked `plan: anew`, or on the empty wall where
 * none is marked. Where every piece recorded since is one of its pieces, to the nanometre and from the same place of
 * the same board, it holds as it is, and they hang in it. Where one is not (hung otherwise, its board spoiled, the wall
 * changed) the plan in force holds no longer, and another is made around all that hangs. Records that fit nowhere are
 * reported and do not count. All this comes from the file alone, so that it does not matter who hung what in which run
 * of the program. It knows nothing of how a plan is found.
 */
#ifndef FILL_IN_FORCE_H
#define FILL_IN_FORCE_H

#include "fill/demand.h"
#include "fill/plan.h"
#include "layout/layout.h"

/* A final plan and the wall that it was made for. */
typedef struct KnownPlan {
    const Wall *wall; /* NULL where there is none */
    const Plan *plan;
} KnownPlan;

typedef struct InForce InForce;

/* Looks for the plan in force of the layout's wall; `demand` is of the same layout, and both must outlive it. Where
 * `known` is that plan already, it is copied and nothing is left to do. NULL where there is nothing to look for. */
InForce *in_force_new(const Layout *layout, const Demand *demand, KnownPlan known);
void in_force_free(InForce *in_force);

/* Works on for about `steps` units, as fill_step; true when it is known whether the plan in force holds. */
bool in_force_step(InForce *in_force, int steps);

/* Whether it is known to hold. */
bool in_force_holds(const InForce *in_force);

/* The first record that is no piece of the plan in force, once that is known not to hold; else -1. */
int in_force_breach(const InForce *in_force);

/* The plan in force, once it is known to hold: the one that in_force_new may be given the next time. */
KnownPlan in_force_known(const InForce *in_force);

/* The plan that holds, with what hangs in it marked and reported, in `arena`. */
Plan *in_force_plan(const InForce *in_force, Arena *arena);

#endif
