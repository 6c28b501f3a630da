/*
 * What a course is ripped to: its width over x, read off its tiles. For layout.c alone; knows nothing of openings.
 */
#ifndef LAYOUT_RIP_H
#define LAYOUT_RIP_H

#include "layout/tiles.h"

/* `tiles` span the course's extent, at least one; `face` is the height of its band. The points live in `arena`. */
Rip rip_of(Arena *arena, Arena *scratch, const Tiles *tiles, Length face);

#endif
