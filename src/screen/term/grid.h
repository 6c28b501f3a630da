/*
 * A grid of character cells: everything the editor shows is drawn here first, so a picture can be looked at without a
 * terminal. It clips at its own edges and at the clip laid on it, so no caller needs to count. It knows nothing of
 * walls, keys or curses. x counts cells from the left, y from the top, both from 0.
 */
#ifndef SCREEN_TERM_GRID_H
#define SCREEN_TERM_GRID_H

#include "base/text.h"
#include "screen/term/style.h"

#include <stdbool.h>
#include <stdint.h>

typedef struct Cell {
    uint32_t code; /* 0: right half of the wide character before it */
    uint32_t mark; /* one mark that stands over `code`, 0 where none */
    uint16_t style;
} Cell;

typedef struct Rect {
    int x, y, columns, rows;
} Rect;

typedef struct Grid {
    int columns, rows; /* at least 1 each */
    Cell *cells;       /* row by row */
    Rect clip;
    bool ascii;  /* glyphs and text are held to ASCII */
    bool colour; /* else pictures must tell courses apart by ink and no ink */
    int cursor_x, cursor_y;
} Grid;

Grid *grid_new(int columns, int rows);
void grid_free(Grid *grid);

/* Loses what was drawn. Sizes below 1 are taken as 1. */
void grid_resize(Grid *grid, int columns, int rows);

/* Takes the size, the cells and the cursor of another. */
void grid_copy(Grid *grid, const Grid *from);

/* All cells blank, the clip taken off, the cursor in the lower right corner. */
void grid_clear(Grid *grid);

/* Nothing is drawn outside of `rect` and the clip that was there, which is returned to be laid back by grid_unclip. */
Rect grid_clip(Grid *grid, Rect rect);
void grid_unclip(Grid *grid, Rect before);

/* One character that takes one cell. */
void grid_put(Grid *grid, int x, int y, uint32_t code, int style);
void grid_glyph(Grid *grid, int x, int y, Glyph glyph, int style);

/* The cell there, or NULL outside. */
const Cell *grid_at(const Grid *grid, int x, int y);

/* Text made safe (base/utf8.h), cut to `cells` with a sign that more was there. Returns the cells it took. */
int grid_text(Grid *grid, int x, int y, int cells, int style, const char *text);
int grid_format(Grid *grid, int x, int y, int cells, int style, const char *format, ...)
    __attribute__((format(printf, 6, 7)));

/* The same, its last cell at `right` - 1; returns its first x. */
int grid_text_right(Grid *grid, int right, int y, int cells, int style, const char *text);

void grid_fill(Grid *grid, Rect rect, uint32_t code, int style);

/* Gives the cells of `rect` another style, glyphs kept. */
void grid_restyle(Grid *grid, Rect rect, int style);

/* Lines round `rect`, `title` in the upper one; the inside is blanked, and its rows on both sides of it, so that no
 * sign of what lies below stands beside it. */
void grid_panel(Grid *grid, Rect rect, const char *title);

/* Where the terminal's cursor stands: on what has the focus. Kept inside the grid. */
void grid_cursor(Grid *grid, int x, int y);

#endif
