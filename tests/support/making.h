/*
 * A wall in the making: how the makers of walls for tests draw their values. They come from a repeatable row of random
 * numbers, or first, as long as there are any, from bytes that somebody else chose: so that a fuzzer can steer.
 */
#ifndef TESTS_MAKING_H
#define TESTS_MAKING_H

#include "base/random.h"
#include "wall/wall.h"

#include <string.h>

typedef struct Making {
    Arena *arena;
    Random random;
    const uint8_t *bytes; /* used up before `random` is asked; NULL where there are none */
    size_t byte_count;
    Wall *wall;
    int first_odd; /* of the odd texts, where this wall begins to take names */
    int names;     /* taken of them so far */
} Making;

/* Between the two, both included. */
static inline int64_t between(Making *making, int64_t low, int64_t high)
{
    if (making->byte_count == 0)
        return random_between(&making->random, low, high);
    const uint64_t bound = (uint64_t)(high - low) + 1;
    uint64_t drawn = 0;
    for (uint64_t reach = 1; reach < bound && making->byte_count > 0;
         reach = reach > bound / 256 ? bound : reach * 256) {
        drawn = drawn << 8 | *making->bytes++;
        making->byte_count--;
    }
    return low + (int64_t)(drawn % bound);
}

static inline int pick(Making *making, int count)
{
    return (int)between(making, 0, count - 1);
}

/* True in one of `in` cases. */
static inline bool chance(Making *making, int in)
{
    return pick(making, in) == 0;
}

/* Between two lengths in millimetres, on a grid of the wall's units; one in twelve is off every grid. */
static inline Length measure(Making *making, int64_t low_mm, int64_t high_mm)
{
    const Length low = low_mm * LENGTH_MM;
    const Length high = high_mm * LENGTH_MM;
    const Length value = between(making, low, high);
    if (chance(making, 12))
        return value;
    static const Length inch_grids[] = {LENGTH_INCH, LENGTH_INCH / 2, LENGTH_INCH / 8, LENGTH_INCH / 16,
                                        LENGTH_INCH / 64};
    static const Length mm_grids[] = {10 * LENGTH_MM, LENGTH_MM, LENGTH_MM, LENGTH_MM / 2, LENGTH_MM / 10};
    const Length grid = (making->wall->units == UNITS_IN ? inch_grids : mm_grids)[pick(making, 5)];
    const Length rounded = length_round(value, grid);
    return rounded < low || rounded > high ? value : rounded;
}

/* Nothing in one of `in` cases. */
static inline Length measure_or_none(Making *making, int in, int64_t low_mm, int64_t high_mm)
{
    return chance(making, in) ? 0 : measure(making, low_mm, high_mm);
}

static inline char *text_of(Making *making, const char *text)
{
    return arena_text(making->arena, text, strlen(text));
}

static inline void add_mark(Making *making, Marks *marks, Length at, Length off)
{
    *arena_push(making->arena, marks) = (Mark){at, off};
}

/* What came to the file later, of random_wall.c: more records and their order; then hang, closer, spend, pins and bars,
 * what faces and corners are, heights above the floor, what boards show, which are gone and found. */
void make_later_records(Making *making);
void make_later(Making *making);

#endif
