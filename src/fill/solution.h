/*
 * A solution in the making: for each run its pieces and the span each is cut from, and what that costs by the order of
 * datumrow(5), "What is best", kept up to date with every change. report.h makes the plan that people see from it. It
 * knows nothing of how pieces are chosen.
 */
#ifndef FILL_SOLUTION_H
#define FILL_SOLUTION_H

#include "fill/plan.h"
#include "fill/supply.h"

typedef struct Placed {
    Length left, right;
    int span;
    Length wood; /* what it takes of the span besides a kerf */
} Placed;

/* The pieces of one run, left to right; what they do not cover stays bare. */
typedef struct Cover {
    Placed *at;
    int count;
    int room;
} Cover;

/* Whether the piece closes its run without what is to be kept over. */
static inline bool laid_leaves_off(const Demand *demand, const Run *run, const Placed *placed)
{
    return placed->wood < demand_wood(demand, run, placed->left, placed->right, true);
}

typedef struct Solution {
    const Demand *demand;
    Supply *supply;
    Cover *covers; /* one for each run */
    Length bare;
    int breaks;              /* of the pieces in it; pairs of joints among them once */
    int closers_off;         /* pieces that close a run without what is to be kept over */
    int pieces;              /* without those hung */
    LengthList near, joints; /* scratch */
    Arena *arena;
} Solution;

Solution *solution_new(Arena *arena, const Demand *demand, Supply *supply);

/* Takes a run's pieces off; they go back to their spans. */
void solution_clear(Solution *solution, int run);

/* Lays a run that has no pieces. The spans must have the wood; they are cut. */
void solution_set(Solution *solution, int run, const Placed *pieces, int count);

/* What it costs; a closer left off counts one nanometre, so that it goes before any wood stays bare. */
Cost solution_cost(const Solution *solution);

/* Joints in the rows beside this run's, rising; one that both rows have stands there twice. `out` is emptied first. */
void solution_joints_beside(const Solution *solution, int run, LengthList *out);

#endif
