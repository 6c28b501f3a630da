/*
 * Walls for property tests and benchmarks: the same seed and kind give the same wall on every machine. Each passes
 * wall_check. A storey's tests link it by support = files('../support/random_wall.c') in their meson.build.
 */
#ifndef TESTS_RANDOM_WALL_H
#define TESTS_RANDOM_WALL_H

#include "wall/wall.h"

typedef enum RandomKind {
    /* All that a file can hold, small and odd: inches or millimetres, one to five faces, floors and ceilings level,
     * uneven, stepped, raked, gabled, crossing each other at an end; sides that lean either way; every corner; laps,
     * lists of widths, reveals, margins, backings; openings of every kind, to the floor, one over the other, off the
     * face; studs or none; little stock or much, with avoided stretches, widths, tones, labels; odd names. No hung
     * pieces. */
    RANDOM_ANY,
    /* The same with pieces hung and edges measured; a good part of them fits nowhere. */
    RANDOM_HUNG,
    /* One level face without openings: the simplest, for a first look at a failure. */
    RANDOM_PLAIN,
    /* Rooms of a house: 2 to 4 faces, openings, studs at 16 or 24 in, boards of 24 to 105 in a good tenth more than the
     * wall takes, some with stretches to avoid. Joints anywhere or on studs; boards of many lengths or of one. */
    RANDOM_HOUSE,
    RANDOM_HOUSE_STUDS,
    RANDOM_HOUSE_ONE_LENGTH,
    RANDOM_HOUSE_STUDS_ONE_LENGTH,
    RANDOM_KIND_COUNT
} RandomKind;

Wall *random_wall(Arena *arena, uint64_t seed, RandomKind kind);

/* A word for the kind, for messages. */
const char *random_kind_word(RandomKind kind);

#endif
