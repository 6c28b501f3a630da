/*
 * Wood of one face as shapes: between two upright lines and two straight edges, so far out of the bare wall.
 */
#ifndef TRADE_WOOD_PART_H
#define TRADE_WOOD_PART_H

#include "layout/layout.h"

typedef struct WoodPart {
    Length left, right;
    Length bottom_left, bottom_right, top_left, top_right;
    Length out;
    const char *what; /* "planks", "backing", "trim (north ceiling)" */
} WoodPart;

typedef struct WoodParts {
    WoodPart *at;
    int count;
    int room;
} WoodParts;

#endif
