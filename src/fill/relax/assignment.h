/*
 * Pieces to boards: the slots of the patterns that a dive settled get the pieces of the ways that it settled. It
 * decides nothing but which piece of a size lies in which slot. Not for other parts.
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

/* Lays every run that gets wood for all its pieces; `chosen` is the way of each run. What
 * the patterns have no slot for takes a rest or another board. */
void assignment_cover(Arena *arena, const Relaxation *relaxation, Solution *solution, const Chosen *chosen,
                      const FixedPatterns *fixed);

#endif
