/*
 *     full:  0 1 0 0 1 1 0 ...   a bit a cell
 *              |     | |
 *              7     2 9         head of each cell's list
 *              |       |
 *              4       3         next
 */
#include "fill/rack.h"

#include <string.h>

void rack_start(Rack *rack, Arena *arena, int count, Length longest)
{
    rack->width = longest / RACK_CELLS + 1;
    rack->head = arena_array(arena, int, RACK_CELLS);
    rack->next = arena_array(arena, int, count);
    rack->prev = arena_array(arena, int, count);
    rack->cell = arena_array(arena, int, count);
    for (int i = 0; i < RACK_CELLS; i++)
        rack->head[i] = RACK_NONE;
    for (int i = 0; i < count; i++)
        rack->cell[i] = RACK_NONE;
    memset(rack->full, 0, sizeof rack->full);
}

static int cell_of(const Rack *rack, Length length)
{
    if (length < 0)
        return 0;
    Length cell = length / rack->width;
    return cell < RACK_CELLS ? (int)cell : RACK_CELLS - 1;
}

void rack_put(Rack *rack, int thing, Length length)
{
    int cell = cell_of(rack, length);
    rack->cell[thing] = cell;
    rack->prev[thing] = RACK_NONE;
    rack->next[thing] = rack->head[cell];
    if (rack->head[cell] != RACK_NONE)
        rack->prev[rack->head[cell]] = thing;
    rack->head[cell] = thing;
    rack->full[cell / 64] |= UINT64_C(1) << (cell % 64);
}

void rack_take(Rack *rack, int thing)
{
    int cell = rack->cell[thing];
    if (cell == RACK_NONE)
        return;
    if (rack->prev[thing] != RACK_NONE)
        rack->next[rack->prev[thing]] = rack->next[thing];
    else
        rack->head[cell] = rack->next[thing];
    if (rack->next[thing] != RACK_NONE)
        rack->prev[rack->next[thing]] = rack->prev[thing];
    if (rack->head[cell] == RACK_NONE)
        rack->full[cell / 64] &= ~(UINT64_C(1) << (cell % 64));
    rack->cell[thing] = RACK_NONE;
}

/* The head of the first cell at or behind `cell` that holds anything. */
static int head_from(const Rack *rack, int cell)
{
    for (int word = cell / 64; word < RACK_CELLS / 64; word++) {
        uint64_t bits = rack->full[word];
        if (word == cell / 64)
            bits &= ~UINT64_C(0) << (cell % 64);
        if (bits != 0)
            return rack->head[word * 64 + __builtin_ctzll(bits)];
    }
    return RACK_NONE;
}

/* The head of the last cell at or before `cell` that holds anything. */
static int head_to(const Rack *rack, int cell)
{
    for (int word = cell / 64; word >= 0; word--) {
        uint64_t bits = rack->full[word];
        if (word == cell / 64 && cell % 64 != 63)
            bits &= (UINT64_C(1) << (cell % 64 + 1)) - 1;
        if (bits != 0)
            return rack->head[word * 64 + 63 - __builtin_clzll(bits)];
    }
    return RACK_NONE;
}

int rack_from(const Rack *rack, Length length)
{
    return head_from(rack, cell_of(rack, length));
}

int rack_up(const Rack *rack, int thing)
{
    if (rack->next[thing] != RACK_NONE)
        return rack->next[thing];
    return rack->cell[thing] + 1 < RACK_CELLS ? head_from(rack, rack->cell[thing] + 1) : RACK_NONE;
}

int rack_to(const Rack *rack, Length length)
{
    return length < 0 ? RACK_NONE : head_to(rack, cell_of(rack, length));
}

int rack_down(const Rack *rack, int thing)
{
    if (rack->next[thing] != RACK_NONE)
        return rack->next[thing];
    return rack->cell[thing] > 0 ? head_to(rack, rack->cell[thing] - 1) : RACK_NONE;
}
