/*
 * The search for a better plan: large neighbourhood search (P. Shaw, "Using constraint programming and local search
 * methods to solve vehicle routing problems", CP 1998). A few runs that have to do with one another (they share boards,
 * or lie over one another, or one of them holds a board of which much is left) are taken off and woven anew; what comes
 * out stays if it is no worse by shortfall, then by the length opened less the worth of what is left over, which
 * gathers the left-over wood on few boards until one of them can stay closed. The best plan by the order of datumrow(5)
 * is kept aside. It draws from one row of random numbers, so it depends on the wall and the steps alone.
 */
#ifndef FILL_SEARCH_NEIGHBORHOODS_H
#define FILL_SEARCH_NEIGHBORHOODS_H

#include "fill/search/beam.h"

typedef struct Neighborhoods Neighborhoods;

/* Starts from what is laid. */
Neighborhoods *neighborhoods_new(Arena *arena, Solution *solution, Beam *beam);

/* Sets what is laid aside as the best and clears the wall. */
void neighborhoods_restart(Neighborhoods *search);

/* Goes on from what is laid now, unless the best set aside is clearly better: a few broken rules less length opened are
 * soon mended. */
void neighborhoods_accept(Neighborhoods *search);

/* One neighbourhood; returns how much work it was. A change may stay that wastes up to `heat` more. */
int neighborhoods_step(Neighborhoods *search, Length heat);

/* What is best of all so far. */
Cost neighborhoods_incumbent_cost(const Neighborhoods *search);

/* The best plan's covers, in `arena`; its spans are those of the pile. */
const Cover *neighborhoods_incumbent(Arena *arena, const Neighborhoods *search);

/* Lays the best again. */
void neighborhoods_restore(Neighborhoods *search);

#endif
