/*
 * Which items of a list as it was are which items of the list as it is now, so that what was written beside one stays
 * beside it. Items never change their order: partners rise together. It knows nothing of what the items are.
 */
#ifndef STORE_ALIGN_H
#define STORE_ALIGN_H

#include "base/arena.h"

#include <stdbool.h>
#include <stdint.h>

typedef struct AlignItem {
    uint64_t text; /* hash of all that it says */
    uint64_t id;   /* what it is, however it changed; 0 where that cannot be told */
    uint64_t name; /* hash of its name; 0 where it has none */
    /* Of what has neither: hashes of all that such an item has to say, and of the first of that; 0 for others. */
    uint64_t core, first;
} AlignItem;

/* partner[i] for each item now: the item as it was that it comes from, or -1. Equal ones first, then those of one id,
 * of one name; then those that have neither id nor name, by what they say first and foremost; at last, in what is left
 * between, the first with the first. */
void align_lists(Arena *arena, const AlignItem *was, int was_count, const AlignItem *now, int now_count, int *partner);

#endif
