/*
 * The search for a better solution: large neighborhood search (P. Shaw, "Using constraint programming and local search
 * methods to solve vehicle routing problems", CP 1998). A few runs that have to do with one another (they share boards,
 * or lie over one another, or one of them holds a board of which much is left) are taken off and covered again. The
 * result stays if it is no worse by shortfall, then by the length opened less the salvage value of what is left; that
 * gathers leftovers on few boards until one of them can stay closed. The incumbent, best by the order of datumrow(5),
 * is kept aside. All draws come from one row of random numbers, so that the result depends on the wall and the steps
 * alone.
 */
#ifndef FILL_SEARCH_NEIGHBORHOODS_H
#define FILL_SEARCH_NEIGHBORHOODS_H

#include "fill/search/beam.h"

typedef struct Neighborhoods Neighborhoods;

/* Starts from the solution as it is. */
Neighborhoods *neighborhoods_new(Arena *arena, Solution *solution, Beam *beam);

/* Sets the solution aside as the incumbent and clears the wall. */
void neighborhoods_restart(Neighborhoods *search);

/* Goes on from the solution as it is now, unless the incumbent is clearly better. A solution with less length opened
 * and a few broken rules is accepted: the search soon repairs those. */
void neighborhoods_accept(Neighborhoods *search);

/* From here on length counts only beyond what is allowed, which is not below what the incumbent opens: fewer pieces
 * come first. Begins at the incumbent. */
void neighborhoods_allow(Neighborhoods *search, Length allowed);

/* One neighbourhood; returns how much work it was. A change may stay that wastes up to `heat` more. */
int neighborhoods_step(Neighborhoods *search, Length heat);

/* The cost of the incumbent. */
Cost neighborhoods_incumbent_cost(const Neighborhoods *search);

/* The incumbent's covers, in `arena`; its spans are those of the supply. */
const Cover *neighborhoods_incumbent(Arena *arena, const Neighborhoods *search);

/* Makes the incumbent the solution again. */
void neighborhoods_restore(Neighborhoods *search);

#endif
