/*
 * The salvage value of wood: what it is worth to a wall. With joints anywhere every bit of a span that is long enough
 * for a piece can be used, so its worth is its length. With joints on studs only some lengths of piece exist, and the
 * rest of a span is worth the best that can be cut from it: an unbounded knapsack over those lengths (Gilmore, Gomory,
 * 1961) by their prices, which are the lengths themselves at first and the duals of the relaxation later. It knows
 * nothing of boards.
 */
#ifndef FILL_SALVAGE_H
#define FILL_SALVAGE_H

#include "fill/supply.h"

/* The lengths a piece can have, joints on studs: by cells of equal width, rounded down with the kerf counted in, so
 * that pieces which fit together also fit by their cells. */
typedef struct Sizes {
    Length width;   /* of a cell */
    int cell_count; /* one more than the longest span, a kerf counted in, fills */
    int *cells;     /* rising: cells that some piece between two studs, or a stud and an end, has */
    int count;
    int *index; /* of each cell: the largest size that is not above it, -1 where there is none */
} Sizes;

/* The sizes that the runs ask for, of spans up to `longest`, in at most `most` cells. */
Sizes *sizes_find(Arena *arena, const Demand *demand, const Run *runs, int run_count, Length longest, int most);

/* The size, an index, of a piece with its kerf; -1 where it is shorter than all, or longer. */
static inline int sizes_index(const Sizes *sizes, Length length)
{
    int64_t cell = length / sizes->width;
    return cell < sizes->cell_count ? sizes->index[cell] : -1;
}

/* The best that can be cut from each capacity of whole cells by the prices of the sizes: best[0 .. cell_count). */
void salvage_best(const Sizes *sizes, const int64_t *prices, int64_t *best);

/* Of SALVAGE_FULL parts of what the wood is worth on the wall, a leftover counts `keep`. */
enum { SALVAGE_FULL = 31, SALVAGE_USUAL = 30 };

/* The table for joints anywhere, or, with `best`, for joints on studs. A leftover is worth a little less than the wood
 * on the wall, a long one a little more than two half as long: that gathers what is left on few boards. */
Salvage *salvage_table(Arena *arena, const Demand *demand, Length longest, const Sizes *sizes, const int64_t *best,
                       int keep);

#endif
