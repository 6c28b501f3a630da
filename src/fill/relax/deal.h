/*
 * Pieces to boards: the slots of the patterns that a dive settled get the pieces of the ways that it settled. It
 * decides nothing but which piece of a size lies in which slot. Not for other parts.
 */
#ifndef FILL_RELAX_DEAL_H
#define FILL_RELAX_DEAL_H

#include "fill/relax/climb.h"

typedef struct Settled {
    int column, times; /* a pattern of the table, cut from so many boards */
} Settled;

typedef struct SettledList {
    Settled *at;
    int count, room;
} SettledList;

/* Lays every run that gets wood for all its pieces; `chosen` is the way of each run. What
 * the patterns have no slot for takes a rest or another board. */
void deal_lay(Arena *arena, const Price *price, Laid *laid, const Chosen *chosen, const SettledList *settled);

#endif
