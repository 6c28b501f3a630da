/*
 * From the relaxation to boards: diving with limited discrepancy. Patterns that the relaxation takes whole are fixed,
 * else the one that it takes most of; what is left is priced again and cut greedily, over and over; later dives take
 * the second choice at one depth (R. Sadykov, F. Vanderbeck and others, "Primal heuristics for branch and price: the
 * assets of diving methods", INFORMS Journal on Computing 31, 2019; W. Harvey, M. Ginsberg, "Limited discrepancy
 * search", 1995). The first pricing proves the bound.
 */
#ifndef PACK_DIVE_H
#define PACK_DIVE_H

#include "pack/work.h"

/* Works until the best way known is proved or the steps run out. */
void pack_dive(PackWork *work);

#endif
