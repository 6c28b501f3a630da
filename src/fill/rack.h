/*
 * Things kept in order of their length: cells of equal width, in each a list, over them a map of which cells hold
 * anything. Put and take cost the same however many there are; the next longer or shorter thing is a few words away.
 * Within a cell the last one put stands first, so the order depends on what was done alone.
 */
#ifndef FILL_RACK_H
#define FILL_RACK_H

#include "base/arena.h"
#include "length/length.h"

#include <stdint.h>

enum { RACK_CELLS = 2048, RACK_NONE = -1 };

typedef struct Rack {
    Length width;            /* of a cell */
    int *head;               /* first thing of each cell */
    int *next, *prev, *cell; /* of each thing; cell RACK_NONE where it is not on the rack */
    uint64_t full[RACK_CELLS / 64];
} Rack;

/* For things numbered 0 .. count-1 of lengths 0 .. longest. */
void rack_start(Rack *rack, Arena *arena, int count, Length longest);

void rack_put(Rack *rack, int thing, Length length);
void rack_take(Rack *rack, int thing); /* one that is not there is no matter */

/* A walk upward begins at a thing of the first cell that can hold `length` or more (some of it may be shorter), a walk
 * downward likewise with shorter ones; RACK_NONE at the end. */
int rack_from(const Rack *rack, Length length);
int rack_up(const Rack *rack, int thing);
int rack_to(const Rack *rack, Length length);
int rack_down(const Rack *rack, int thing);

#endif
