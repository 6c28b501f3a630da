/*
 * Things in order of their length: buckets of equal width, each a list, and a map of which buckets hold anything. Put
 * and take cost the same however many things there are; the next longer or shorter thing is found in a few words of the
 * map. Within a bucket the last one put comes first, so the order depends only on what was done.
 */
#ifndef FILL_BUCKETS_H
#define FILL_BUCKETS_H

#include "base/arena.h"
#include "length/length.h"

#include <stdint.h>

enum { BUCKETS_COUNT = 2048, BUCKETS_NONE = -1 };

typedef struct Buckets {
    Length width;            /* of a cell */
    int *head;               /* first thing of each cell */
    int *next, *prev, *cell; /* of each thing; cell BUCKETS_NONE where it is in no bucket */
    uint64_t full[BUCKETS_COUNT / 64];
} Buckets;

/* For things numbered 0 .. count-1 of lengths 0 .. longest. */
void buckets_start(Buckets *buckets, Arena *arena, int count, Length longest);

void buckets_put(Buckets *buckets, int thing, Length length);
void buckets_take(Buckets *buckets, int thing); /* one that is not there is no matter */

/* A walk upward begins at a thing of the first cell that can hold `length` or more (some of it may be shorter), a walk
 * downward likewise with shorter ones; BUCKETS_NONE at the end. */
int buckets_from(const Buckets *buckets, Length length);
int buckets_up(const Buckets *buckets, int thing);
int buckets_to(const Buckets *buckets, Length length);
int buckets_down(const Buckets *buckets, int thing);

#endif
