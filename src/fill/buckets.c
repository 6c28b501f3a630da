/*
 *     full:  0 1 0 0 1 1 0 ...   a bit a cell
 *              |     | |
 *              7     2 9         head of each cell's list
 *              |       |
 *              4       3         next
 */
#include "fill/buckets.h"

#include <string.h>

void buckets_start(Buckets *buckets, Arena *arena, int count, Length longest)
{
    buckets->width = longest / BUCKETS_COUNT + 1;
    buckets->head = arena_array(arena, int, BUCKETS_COUNT);
    buckets->next = arena_array(arena, int, count);
    buckets->prev = arena_array(arena, int, count);
    buckets->cell = arena_array(arena, int, count);
    for (int i = 0; i < BUCKETS_COUNT; i++)
        buckets->head[i] = BUCKETS_NONE;
    for (int i = 0; i < count; i++)
        buckets->cell[i] = BUCKETS_NONE;
    memset(buckets->full, 0, sizeof buckets->full);
}

static int cell_of(const Buckets *buckets, Length length)
{
    if (length < 0)
        return 0;
    Length cell = length / buckets->width;
    return cell < BUCKETS_COUNT ? (int)cell : BUCKETS_COUNT - 1;
}

void buckets_put(Buckets *buckets, int thing, Length length)
{
    int cell = cell_of(buckets, length);
    buckets->cell[thing] = cell;
    buckets->prev[thing] = BUCKETS_NONE;
    buckets->next[thing] = buckets->head[cell];
    if (buckets->head[cell] != BUCKETS_NONE)
        buckets->prev[buckets->head[cell]] = thing;
    buckets->head[cell] = thing;
    buckets->full[cell / 64] |= UINT64_C(1) << (cell % 64);
}

void buckets_take(Buckets *buckets, int thing)
{
    int cell = buckets->cell[thing];
    if (cell == BUCKETS_NONE)
        return;
    if (buckets->prev[thing] != BUCKETS_NONE)
        buckets->next[buckets->prev[thing]] = buckets->next[thing];
    else
        buckets->head[cell] = buckets->next[thing];
    if (buckets->next[thing] != BUCKETS_NONE)
        buckets->prev[buckets->next[thing]] = buckets->prev[thing];
    if (buckets->head[cell] == BUCKETS_NONE)
        buckets->full[cell / 64] &= ~(UINT64_C(1) << (cell % 64));
    buckets->cell[thing] = BUCKETS_NONE;
}

/* The head of the first cell at or after `cell` that holds anything. */
static int head_from(const Buckets *buckets, int cell)
{
    for (int word = cell / 64; word < BUCKETS_COUNT / 64; word++) {
        uint64_t bits = buckets->full[word];
        if (word == cell / 64)
            bits &= ~UINT64_C(0) << (cell % 64);
        if (bits != 0)
            return buckets->head[word * 64 + __builtin_ctzll(bits)];
    }
    return BUCKETS_NONE;
}

/* The head of the last cell at or before `cell` that holds anything. */
static int head_to(const Buckets *buckets, int cell)
{
    for (int word = cell / 64; word >= 0; word--) {
        uint64_t bits = buckets->full[word];
        if (word == cell / 64 && cell % 64 != 63)
            bits &= (UINT64_C(1) << (cell % 64 + 1)) - 1;
        if (bits != 0)
            return buckets->head[word * 64 + 63 - __builtin_clzll(bits)];
    }
    return BUCKETS_NONE;
}

int buckets_from(const Buckets *buckets, Length length)
{
    return head_from(buckets, cell_of(buckets, length));
}

int buckets_up(const Buckets *buckets, int thing)
{
    if (buckets->next[thing] != BUCKETS_NONE)
        return buckets->next[thing];
    return buckets->cell[thing] + 1 < BUCKETS_COUNT ? head_from(buckets, buckets->cell[thing] + 1) : BUCKETS_NONE;
}

int buckets_to(const Buckets *buckets, Length length)
{
    return length < 0 ? BUCKETS_NONE : head_to(buckets, cell_of(buckets, length));
}

int buckets_down(const Buckets *buckets, int thing)
{
    if (buckets->next[thing] != BUCKETS_NONE)
        return buckets->next[thing];
    return buckets->cell[thing] > 0 ? head_to(buckets, buckets->cell[thing] - 1) : BUCKETS_NONE;
}
