/*
 * Repeatable pseudo-random numbers: the same seed gives the same row on every machine. Used by the fill's search
 * and by the tests' random walls. The generator is splitmix64 (G. Steele, D. Lea, C. Flood, "Fast splittable
 * pseudorandom number generators", OOPSLA 2014).
 */
#ifndef BASE_RANDOM_H
#define BASE_RANDOM_H

#include <stdint.h>

typedef struct Random {
    uint64_t state;
} Random;

uint64_t random_next(Random *random);

/* Even over 0 .. bound-1; bound > 0. */
uint64_t random_below(Random *random, uint64_t bound);

/* Even over low .. high, both included; low <= high. */
int64_t random_between(Random *random, int64_t low, int64_t high);

#endif
