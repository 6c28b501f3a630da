/*
 * Copies and equality of what the wall file says of the shop: trim runs, rough boards, milling, the bill. For wall.c
 * alone.
 */
#ifndef WALL_SHOP_H
#define WALL_SHOP_H

#include "wall/wall.h"

/* Makes the lists and texts of `wall`, which was copied bit for bit, its own. */
void shop_own(Arena *arena, Wall *wall);

bool shop_equal(const Wall *a, const Wall *b);

#endif
