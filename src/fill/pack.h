/*
 * Cutting stock in one dimension: lengths to be cut from stock lengths, several of each, so that the length opened is least, then the number of boards opened. It serves the
 * trim, and the exact completion of the fill's last boards. It knows nothing of walls: kerf and squared ends are folded into the numbers by the caller's helper below.
 * Whole numbers only; repeatable; a budget of steps, not of time.
 */
#ifndef FILL_PACK_H
#define FILL_PACK_H

#include "base/arena.h"
#include "length/length.h"

#include <stdbool.h>
#include <stdint.h>

typedef struct PackStock {
    Length capacity; /* what can be cut from one: usable length with a kerf added once, where each piece carries its own kerf */
    Length cost;     /* what opening one costs: its whole length */
    int count;
} PackStock;

typedef struct PackItem {
    Length size; /* piece with its kerf */
    int count;
} PackItem;

typedef struct PackBin {
    int stock;     /* index */
    int *items;    /* item indices, one entry for each piece cut */
    int item_count;
} PackBin;

typedef struct PackResult {
    PackBin *bins;
    int bin_count;
    int *missing; /* for each item: how many no stock was left for */
    int missing_count; /* their sum */
    Length cost;
    Length cost_bound; /* no way of cutting as much costs less */
    bool proved;       /* least cost, then fewest bins, proved */
} PackResult;

/* `steps` bounds the search (0: the default). Where not everything fits, most length is cut first, then least cost. */
PackResult *pack_solve(Arena *arena, const PackStock *stock, int stock_count, const PackItem *items, int item_count, int64_t steps);

#endif
