/*
 * Walls that are no kinder than houses are, and now and then less kind than any: for tests that nothing legal stops the
 * program. The same seed gives the same wall on every machine. Each passes wall_check. Sides lean up to a third of the
 * width; studs are few, dense, regular or none; widths come in lists; planks lap; boards are of one length or many, too
 * few by far or plenty, some narrower than the planks, some all stretches to avoid; stagger and shortest contradict
 * each other and the studs; openings touch, overlap, reach the floor, take whole courses; floors and ceilings step and
 * rake; faces meet at corners of every kind; edges are measured and pieces hang where some of them fit nowhere.
 *
 * Half of them are tiny (one face, three to six courses), four in ten a small room, one in ten a big one. The texts,
 * the trim, the bill and the seasons are those of random_wall.
 */
#ifndef TESTS_UNKIND_WALL_H
#define TESTS_UNKIND_WALL_H

#include "wall/wall.h"

#include <stddef.h>

typedef enum UnkindSize { UNKIND_TINY, UNKIND_ROOM, UNKIND_BIG } UnkindSize;

/* What that seed's wall is to be. */
UnkindSize unkind_size(uint64_t seed);

Wall *unkind_wall(Arena *arena, uint64_t seed);

/* The wall that these bytes choose, whatever they are; the same bytes give the same wall. Never a big one. */
Wall *unkind_wall_of_bytes(Arena *arena, const uint8_t *bytes, size_t count);

#endif
