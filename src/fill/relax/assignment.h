/*
 * Pieces to boards: the pieces of the fixed paths are assigned to the slots of the fixed patterns. It decides only
 * which piece of a size goes to which slot. For dive.c alone.
 */
#ifndef FILL_RELAX_ASSIGNMENT_H
#define FILL_RELAX_ASSIGNMENT_H

#include "fill/relax/path_fixing.h"

typedef struct FixedPattern {
    int column, times; /* a pattern of the table, cut from so many boards */
} FixedPattern;

typedef struct FixedPatterns {
    FixedPattern *at;
    int count, room;
} FixedPatterns;

/* Covers every run that gets wood for all its pieces; `chosen` is the path of each run. A piece without a slot takes a
 * leftover or another board. */
void assignment_cover(Arena *arena, const Relaxation *relaxation, Solution *solution, const Chosen *chosen,
                      const FixedPatterns *fixed);

#endif
