/*
 * Cutting stock in one dimension: lengths to be cut from stock lengths, several of each, so that the length opened is
 * least, then the number of boards opened. It serves the trim, and the exact completion of the fill's last boards. It
 * knows nothing of walls: kerf and squared ends are folded into the numbers by the caller (trim.h does so for trim).
 * Whole numbers decide; repeatable; a budget of steps, not of time.
 *
 * Method: quick ways of cutting (greedy.h) against lower bounds (bound.h: S. Martello, P. Toth; S. Fekete,
 * J. Schepers) settle most; what they leave goes to column generation with bounds proved in whole numbers
 * (generation.h: P. Gilmore, R. Gomory; A. Farley) and diving (dive.h: R. Sadykov, F. Vanderbeck and
 * others); of small jobs every way of cutting is weighed (complete.h: R. Korf). Each header names its publication.
 */
#ifndef PACK_PACK_H
#define PACK_PACK_H

#include "base/arena.h"
#include "length/length.h"

#include <stdbool.h>
#include <stdint.h>

typedef struct PackStock {
    Length capacity; /* usable length with a kerf added once, where each piece carries its own kerf; <= 2 LENGTH_MOST */
    Length cost;     /* what opening one costs: its whole length; 0 to LENGTH_MOST */
    int count;
} PackStock;

typedef struct PackItem {
    Length size; /* piece with its kerf; > 0 */
    int count;
} PackItem;

typedef struct PackBin {
    int stock;  /* index */
    int *items; /* item indices, one entry for each piece cut, largest piece first */
    int item_count;
} PackBin;

typedef struct PackResult {
    PackBin *bins; /* by stock index */
    int bin_count;
    int *missing;      /* for each item: how many no stock was left for */
    int missing_count; /* their sum */
    Length cost;
    Length cost_bound; /* proved: no way of cutting as much costs less */
    bool cost_proved;  /* no way of cutting more, nor any of cutting as much that costs less */
    bool proved;       /* nor any of as little cost that takes fewer bins */
} PackResult;

/* `steps` bounds the search (0: the default; each is about a thousand elementary operations). Where not everything
 * fits, most length is cut first, then least cost. Pieces, counts included, are at most PACK_PIECES_MOST. */
enum { PACK_PIECES_MOST = 1000000 };

PackResult *pack_solve(Arena *arena, const PackStock *stock, int stock_count, const PackItem *items, int item_count,
                       int64_t steps);

#endif
