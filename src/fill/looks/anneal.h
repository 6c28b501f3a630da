/*
 * The search for better looks, the last tie-break of a plan that is done: changes that cost nothing (arrangement.h) are
 * tried one after another, drawn from one row of random numbers; one that looks better stays, at first now and then
 * also one that looks a little worse, less and less often (simulated annealing: S. Kirkpatrick, C. D. Gelatt, M. P.
 * Vecchi, "Optimization by simulated annealing", Science 220, 1983; here in whole numbers). It ends after so much work
 * a piece; where nothing was gained the plan stays as it was. It knows nothing of what looks are, nor of rules.
 */
#ifndef FILL_LOOKS_ANNEAL_H
#define FILL_LOOKS_ANNEAL_H

#include "fill/solution.h"

typedef struct Anneal Anneal;

/* Starts from the covers, which must live on; the supply is read for its boards alone. NULL where the planks made from
 * the covers are not theirs: then they stay as they are. */
Anneal *anneal_new(Arena *arena, const Demand *demand, const Supply *supply, const Cover *covers);

/* One try; adds how much work it was. True when the search is over. */
bool anneal_step(Anneal *anneal, int64_t *work);

/* What came out, in `arena`: nothing but looks differs from the start, and it is no worse in those. */
const Cover *anneal_covers(Arena *arena, const Anneal *anneal);

#endif
