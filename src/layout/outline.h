/*
 * The outline of tiles that hang together, walked along its edges. For the sources of layout alone.
 */
#ifndef LAYOUT_OUTLINE_H
#define LAYOUT_OUTLINE_H

#include "layout/tiles.h"

/* Of the body to which the widest part belongs: anticlockwise from its lower left corner, no point on a straight line
 * between its neighbours. */
Points outline_of(Arena *arena, const Tiles *tiles);

#endif
