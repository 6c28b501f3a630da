/*
 * A wall half covered: for each run its pieces and the span each is cut from, and what that costs by the order of
 * datumrow(5), "What is best", kept up to date with every change. The plan that people see is told from it. It knows
 * nothing of how pieces are chosen.
 */
#ifndef FILL_LAID_H
#define FILL_LAID_H

#include "fill/pile.h"
#include "fill/rules.h"

typedef struct Placed {
    Length left, right;
    int span;
} Placed;

/* The pieces of one run, left to right; what they do not cover stays bare. */
typedef struct Cover {
    Placed *at;
    int count;
    int room;
} Cover;

typedef struct Laid {
    const Demand *demand;
    Pile *pile;
    Cover *covers; /* one for each run */
    Length bare;
    int breaks;              /* of the pieces laid; pairs of joints among them once */
    int pieces;              /* without those hung */
    LengthList near, joints; /* scratch */
    Arena *arena;
} Laid;

Laid *laid_new(Arena *arena, const Demand *demand, Pile *pile);

/* Takes a run's pieces off; they go back to their spans. */
void laid_clear(Laid *laid, int run);

/* Lays a run that has no pieces. The spans must have the wood; they are cut. */
void laid_set(Laid *laid, int run, const Placed *pieces, int count);

Cost laid_cost(const Laid *laid);

/* Joints in the rows beside this run's, rising; one that both rows have stands there twice. `out` is emptied first. */
void laid_near(const Laid *laid, int run, LengthList *out);

/* The joints of one run's pieces, rising, behind what `out` holds. */
void laid_joints(const Laid *laid, int run, LengthList *out);

#endif
