/*
 * The best pattern for given prices: which pieces, at most so many of each size, to cut from one board so that their
 * prices add up to most. Whole numbers only, so that what it finds is a proof: no pattern is worth more than `worth`.
 *
 * Method: depth-first search in falling order of price for length with the bound of the continuous knapsack (P.
 * Gilmore, R. Gomory, Operations Research 11, 1963; S. Martello, P. Toth, "Knapsack Problems", 1990, ch. 3); where that
 * takes longer than dynamic programming over the length would, that. Once a pattern above the floor is found it does
 * not go on for long: the best is wanted only where there is hardly any.
 */
#ifndef PACK_PATTERN_H
#define PACK_PATTERN_H

#include "pack/work.h"

enum { PACK_PATTERNS_MOST = 4, PACK_PRICE_BITS = 40 };

typedef struct PackPattern {
    int64_t price; /* of all its pieces */
    int part_count;
    PackPart *parts;
} PackPattern;

/* Patterns worth more than the floor, each better than the one before. */
typedef struct PackPatterns {
    int64_t worth; /* proved: no pattern is worth more. At least the floor; what the last one found is worth, or more
                    * where the search was not carried to its end */
    int count;
    PackPattern at[PACK_PATTERNS_MOST]; /* the last ones found, best last */
} PackPatterns;

/* Prices are 0 to 2^PACK_PRICE_BITS for each size of the work; `demand` of each size; looks only for patterns above
 * `floor`. Allocates in `arena`. */
PackPatterns pack_best_pattern(PackWork *work, Arena *arena, const int64_t *price, const int *demand, int64_t capacity,
                               int64_t floor);

#endif
