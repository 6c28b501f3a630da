/*
 * A linear program that grows by columns: least cost, rows that are equations, columns not below 0. The revised simplex
 * method with the inverse of the basis in fixed point, so that every machine makes the same pivots; Devex weights
 * choose the entering column (P. M. J. Harris, Mathematical Programming 5, 1973). Right sides may change: pivots of the
 * dual method then make the table feasible again. Its answers are close enough to guide a search; they prove nothing.
 * It knows nothing of walls.
 */
#ifndef PACK_SIMPLEX_H
#define PACK_SIMPLEX_H

#include "pack/simplex_table.h"

/* One pivot: the best column enters the basis. False where none gains more than `least`, or the table overflowed. */
bool simplex_pivot(Simplex *simplex, int64_t least);

/* One pivot of the dual method: the value farthest below 0 leaves the basis, and the duals move by as little as
 * possible, within `tolerance`. False where no value is below 0, or no column can help; simplex_is_feasible tells
 * which.
 */
bool simplex_dual_pivot(Simplex *simplex, int64_t tolerance);
bool simplex_is_feasible(const Simplex *simplex);

#endif
