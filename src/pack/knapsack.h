/*
 * Covering knapsack: of boards of several kinds, a limited count of each, choose those whose usable lengths reach a
 * length that is needed, so that they cost least, then are fewest. It serves as the covering bound of the fill and of
 * cutting stock, and, with cost = usable, as subset sum from above. It knows boards as two numbers alone.
 *
 * Method: dynamic programming over a core that grows from the break item outward, states kept by dominance and dropped
 * by the bound of the continuous relaxation (D. Pisinger, "A minimal algorithm for the 0-1 knapsack problem",
 * Operations Research 45, 1997), the counts split into powers of two. Whole numbers only; repeatable; a budget of
 * steps.
 */
#ifndef PACK_KNAPSACK_H
#define PACK_KNAPSACK_H

#include "base/arena.h"
#include "length/length.h"

#include <stdbool.h>
#include <stdint.h>

/* Boards alike. A kind with nothing usable or a count of 0 is never taken. Usable lengths and costs are at most
 * LENGTH_MOST, counts add up to at most 1,000,000: beyond that every board is taken and nothing is proved. */
typedef struct KnapsackKind {
    Length usable;
    Length cost; /* >= 0 */
    int count;
} KnapsackKind;

typedef struct KnapsackResult {
    bool covered; /* false where all boards together do not reach the need; then nothing else is set */
    int *taken;   /* of each kind */
    int boards;
    Length usable;     /* of those taken, >= need */
    Length cost;       /* of those taken */
    Length cost_bound; /* proved: no choice that covers costs less */
    bool proved;       /* none costs less, and none that costs as much takes fewer boards */
} KnapsackResult;

/* Covers `need`; a need of 0 or less takes nothing. `steps` bounds the states looked at (0: the default, some tens of
 * milliseconds at the very most); a step is the same work everywhere. */
KnapsackResult *knapsack_cover(Arena *arena, const KnapsackKind *kinds, int kind_count, Length need, int64_t steps);

#endif
