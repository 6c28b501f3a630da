/*
 * Quick ways of cutting, one board after the other: first fit decreasing, and minimum bin slack with the largest piece
 * fixed (J. Gupta, J. Ho, "A new heuristic algorithm for the one-dimensional bin-packing problem", Production Planning
 * and Control 10, 1999; K. Fleszar, K. Hindi, Computers & Operations Research 29, 2002). Of several kinds of stock each
 * board is of the kind that costs least for the length cut from it.
 */
#ifndef PACK_GREEDY_H
#define PACK_GREEDY_H

#include "pack/work.h"

typedef enum PackGreed {
    PACK_FIRST_FIT,       /* the largest that fits, again and again */
    PACK_LEAST_SLACK,     /* the largest, and with it what leaves least */
    PACK_LEAST_SLACK_LONG /* the same; of equal slack, the one of fewest pieces */
} PackGreed;

/* Cuts what `rest` asks for, as far as it goes, and adds the patterns to `cuts`, allocated in `arena`. `rest` is used
 * up: its demand is what no stock was left for. `effort` bounds the work for one board. */
void pack_greedily(PackWork *work, PackRest *rest, PackGreed greed, int64_t effort, Arena *arena, PackCuts *cuts);

#endif
