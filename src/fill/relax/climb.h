/*
 * The first half of a dive: run by run, from the bottom rows up, one way from stud to stud is settled, or two at once
 * for runs over one another, that the table uses most of those that keep their stagger to what is settled and leave a
 * way to the runs above. Where the table uses none of them, the cheapest at its prices. Not for other parts.
 */
#ifndef FILL_RELAX_CLIMB_H
#define FILL_RELAX_CLIMB_H

#include "fill/laid.h"
#include "fill/relax/price_work.h"

/* The way of a run: a column of the table, the lower or upper of its two; column -1 where there is none. */
typedef struct Chosen {
    int column;
    bool above;
} Chosen;

typedef struct Climb Climb;

Climb *climb_new(Arena *arena, Price *price, const Laid *laid);

/* Settles the ways of the next run and of the one above it where they go together; false where none is left. The table
 * is to be mended afterwards. */
bool climb_on(Climb *climb, int64_t *work);

/* Of each run. */
const Chosen *climb_chosen(const Climb *climb);

#endif
