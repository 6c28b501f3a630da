/*
 * The first half of a dive: run by run, from the bottom rows up, it fixes one path from stud to stud, or two at once
 * for runs over one another: the one that the table uses most, of those that keep their stagger to what is fixed and
 * leave a path to the runs above. Where the table uses none of them, it takes the cheapest at the duals. For dive.c
 * alone.
 */
#ifndef FILL_RELAX_PATH_FIXING_H
#define FILL_RELAX_PATH_FIXING_H

#include "fill/relax/table.h"
#include "fill/solution.h"

/* The path of a run: a column of the table, the lower or upper of its two; column -1 where there is none. */
typedef struct Chosen {
    int column;
    bool above;
} Chosen;

typedef struct PathFixing PathFixing;

PathFixing *path_fixing_new(Arena *arena, Relaxation *relaxation, const Solution *solution);

/* Fixes the paths of the next run and of the one above it where they go together; false where none is left. Reoptimize
 * the table afterwards. */
bool path_fixing_step(PathFixing *fixing);

/* Units of work since the last call, but for that of the relaxation. */
int64_t path_fixing_take_work(PathFixing *fixing);

/* Of each run. */
const Chosen *path_fixing_chosen(const PathFixing *fixing);

#endif
