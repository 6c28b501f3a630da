#include "base/random.h"

#include "base/panic.h"

uint64_t random_next(Random *random)
{
    random->state += UINT64_C(0x9e3779b97f4a7c15);
    uint64_t z = random->state;
    z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
    return z ^ (z >> 31);
}

/* The first 2^64 mod bound numbers are drawn again, so that what is left is a whole number of rounds of `bound`. */
uint64_t random_below(Random *random, uint64_t bound)
{
    BUG_UNLESS(bound > 0);
    uint64_t odd_ones = (UINT64_MAX - bound + 1) % bound;
    uint64_t drawn = random_next(random);
    while (drawn < odd_ones)
        drawn = random_next(random);
    return drawn % bound;
}

int64_t random_between(Random *random, int64_t low, int64_t high)
{
    BUG_UNLESS(low <= high);
    uint64_t span = (uint64_t)high - (uint64_t)low;
    uint64_t step = span == UINT64_MAX ? random_next(random) : random_below(random, span + 1);
    return (int64_t)((uint64_t)low + step);
}
