/*
 * Figures large enough to be read from the saw: digits and the marks of a tape's notation, three rows high, drawn in
 * half cells. On a terminal that knows only ASCII they are drawn in one row, as they are.
 */
#ifndef SCREEN_VIEWS_LARGE_H
#define SCREEN_VIEWS_LARGE_H

#include "screen/term/grid.h"

/* Rows that a large text takes on this grid. */
int large_rows(const Grid *grid);

/* Draws digits, space, `/`, `-`, `.`, `'` and `"`; other characters leave a gap. Returns the cells it took. */
int large_draw(Grid *grid, int x, int y, int style, const char *text);

#endif
