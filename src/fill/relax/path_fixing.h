/*
 * The first half of a dive: run by run, from the bottom rows up, one way from stud to stud is settled, or two at once
 * for runs over one another, that the table uses most of those that keep their stagger to what is settled and leave a
 * way to the runs above. Where the table uses none of them, the cheapest at its prices. Not for other parts.
 */
#ifndef FILL_RELAX_PATH_FIXING_H
#define FILL_RELAX_PATH_FIXING_H

#include "fill/relax/table.h"
#include "fill/solution.h"

/* The way of a run: a column of the table, the lower or upper of its two; column -1 where there is none. */
typedef struct Chosen {
    int column;
    bool above;
} Chosen;

typedef struct PathFixing PathFixing;

PathFixing *path_fixing_new(Arena *arena, Relaxation *relaxation, const Solution *solution);

/* Settles the ways of the next run and of the one above it where they go together; false where none is left. The table
 * is to be mended afterwards. */
bool path_fixing_step(PathFixing *fixing, int64_t *work);

/* Of each run. */
const Chosen *path_fixing_chosen(const PathFixing *fixing);

#endif
