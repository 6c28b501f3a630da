/*
 * A picture finer than the cells it is shown in: two dots across and two down in each cell, each dot one kind of thing.
 * A cell can show two inks; this chooses which, and the quarter blocks that show them. In ASCII one sign stands for the
 * four dots. It knows nothing of walls.
 */
#ifndef SCREEN_TERM_MOSAIC_H
#define SCREEN_TERM_MOSAIC_H

#include "screen/term/grid.h"

typedef enum Dot {
    DOT_NOTHING,
    DOT_WOOD,      /* an even course */
    DOT_WOOD_DARK, /* an odd course */
    DOT_REFERENCE,
    DOT_SLIVER,
    DOT_GAP, /* between two pieces or two courses: seen against the wood round it */
    DOT_BARE /* nothing hangs where something should */
} Dot;

typedef struct Mosaic {
    int columns, rows; /* in dots; twice the cells */
    unsigned char *dots;
} Mosaic;

/* For `columns` x `rows` cells, all DOT_NOTHING. */
Mosaic mosaic_new(int columns, int rows);
void mosaic_finish(Mosaic *mosaic);

void mosaic_set(Mosaic *mosaic, int x, int y, Dot dot);
Dot mosaic_get(const Mosaic *mosaic, int x, int y);

/* Draws it with its upper left cell at x, y. Cells with nothing in them are left as they are. */
void mosaic_draw(const Mosaic *mosaic, Grid *grid, int x, int y);

#endif
