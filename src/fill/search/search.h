/*
 * The search for a better plan: large neighbourhood search (P. Shaw, "Using constraint programming and local search
 * methods to solve vehicle routing problems", CP 1998). A few runs that have to do with one another (they share boards,
 * or lie over one another, or one of them holds a board of which much is left) are taken off and woven anew; what comes
 * out stays if it is no worse by shortfall, then by the length opened less the worth of what is left over, which
 * gathers the left-over wood on few boards until one of them can stay closed. The best plan by the order of datumrow(5)
 * is kept aside. It draws from one row of random numbers, so it depends on the wall and the steps alone.
 */
#ifndef FILL_SEARCH_SEARCH_H
#define FILL_SEARCH_SEARCH_H

#include "fill/search/weave.h"

typedef struct Search Search;

/* Starts from what is laid. */
Search *search_new(Arena *arena, Laid *laid, Weave *weave);

/* Sets what is laid aside as the best and clears the wall. */
void search_begin_again(Search *search);

/* Goes on from what is laid now, unless the best set aside is clearly better: a few broken rules less length opened are
 * soon mended. */
void search_take_better(Search *search);

/* One neighbourhood; returns how much work it was. A change may stay that wastes up to `heat` more. */
int search_once(Search *search, Length heat);

/* What is best of all so far. */
Cost search_best(const Search *search);

/* The best plan's covers, in `arena`; its spans are those of the pile. */
const Cover *search_covers(Arena *arena, const Search *search);

/* Lays the best again. */
void search_restore(Search *search);

#endif
