/*
 * What the parts of pack.c share: the problem in small whole numbers, the best way of cutting known, the bound proved
 * and the steps left. Not for other storeys.
 *
 * Sizes stand in falling order, no two alike; kinds of stock in falling order of capacity. All sizes and capacities are
 * divided by what measures every size. A `value` is what opening one board counts: cost and, far below it, the board
 * itself, so that least value is least cost and then fewest boards.
 */
#ifndef PACK_WORK_H
#define PACK_WORK_H

#include "base/arena.h"

#include <stdbool.h>
#include <stdint.h>

typedef struct PackPart {
    int size; /* index */
    int count;
} PackPart;

/* A pattern: one board of a kind and what is cut from it; cut `times` times. */
typedef struct PackCut {
    int kind;
    int times;
    int part_count;
    PackPart *parts;
} PackCut;

typedef struct PackCuts {
    PackCut *at;
    int count;
    int room;
} PackCuts;

/* What is still to be cut, and from what. */
typedef struct PackRest {
    int *demand;    /* of each size */
    int *available; /* of each kind */
} PackRest;

typedef struct PackWork {
    Arena *arena;   /* lives as long as the work */
    Arena *scratch; /* emptied by whoever uses it, at the start of the use */
    int kind_count;
    int64_t *capacity;
    int64_t *value; /* of opening one */
    int *available; /* at most as many as there are pieces */
    int size_count;
    int64_t *size;
    int *demand;
    int64_t total;  /* of all sizes, each as often as demanded */
    int64_t pieces; /* number of them */
    int64_t steps;  /* left; each is about a thousand elementary operations */
    int64_t spent;  /* operations not yet counted as a step */

    /* What values are: where all boards cost alike, 1 each and `many` is 0; else cost x many + 1, and `many` is above
     * the number of boards; where that does not fit, the cost alone, `many` is 0 and `counts_boards` is false. */
    int64_t many;
    bool counts_boards;
    int64_t boards_most; /* no way of cutting takes more */
    int64_t costs_known; /* for costs below it: */
    int *fewest_boards;  /* fewest boards that cost exactly that and hold everything, -1 where none do */
    int *next_cost;      /* least cost, at or above, that boards have; costs_known where none is known */

    PackCuts best;
    int64_t best_missing; /* length, in this problem's units */
    int64_t best_value;
    int64_t bound;     /* proved: cutting everything takes at least this value */
    bool is_exhausted; /* every way of cutting was weighed: the best known is the best there is */
} PackWork;

/* Works out what boards can cost together, up to the best way known, where that is not too much to ask. */
void pack_list_costs(PackWork *work);

/* Counts `operations`; false when the budget is used up. */
bool pack_spend(PackWork *work, int64_t operations);

/* Everything is cut, and at the bound. */
bool pack_is_proved(const PackWork *work);

/* Takes `cuts` (trimmed to what is demanded, bounded by what is available, in order) as the best known where it is
 * better; true then. */
bool pack_offer(PackWork *work, const PackCuts *cuts);

/* Raises the bound to the least value at or above `value` that boards can add up to. */
void pack_raise_bound(PackWork *work, int64_t value);

/* `value` rounded up to the least value that boards can add up to. */
int64_t pack_round_up(const PackWork *work, int64_t value);

PackRest pack_rest_copy(Arena *arena, const PackWork *work, const PackRest *rest);

#endif
