/*
 * Lower bounds without search: the covering knapsack for any stock; for one stock length besides it L2 of S. Martello
 * and P. Toth ("Lower bounds and reduction procedures for the bin packing problem", Discrete Applied Mathematics 28,
 * 1990) and the dual feasible functions u(k) of S. Fekete and J. Schepers ("New classes of fast lower bounds for bin
 * packing problems", Mathematical Programming 91, 2001).
 */
#ifndef PACK_BOUND_H
#define PACK_BOUND_H

#include "pack/work.h"

/* Raises the bound of the work by all of these. */
void pack_bound(PackWork *work);

/* Proved: boards that cost less than this cannot hold `length` (in the work's units), whatever is cut; counted as
 * value. 0 where the boards together do not hold it. */
int64_t pack_cover_bound(PackWork *work, int64_t length);

#endif
