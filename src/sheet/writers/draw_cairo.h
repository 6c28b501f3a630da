/*
 * Pages of a sheet on a cairo surface: type is measured and set by pango, lines and drawings by cairo. All measures are
 * points. It knows which marks go where on a page, not what kind of file the page ends up in.
 */
#ifndef SHEET_WRITERS_DRAW_CAIRO_H
#define SHEET_WRITERS_DRAW_CAIRO_H

#include <cairo.h>
#include <pango/pangocairo.h>

#include "sheet/flow.h"
#include "sheet/sheet.h"

/* Letter is 215.9 x 279.4 mm, A4 210 x 297 mm: a page of 210 x 279.4 prints at its own size on both. */
#define PAGE_SHORT (210.0 * 72.0 / 25.4)
#define PAGE_LONG (279.4 * 72.0 / 25.4)
#define AREA_SHORT (184.0 * 72.0 / 25.4)
#define AREA_LONG (254.0 * 72.0 / 25.4)

typedef struct Press {
    Arena *arena;
    const Sheet *sheet;
    PangoContext *pango;
    PangoLayout *layout;
    double page_head; /* height of the page head with its rule */
    SheetPages pages;
} Press;

/* Measures the sheet and breaks it into pages. */
void press_begin(Press *press, Arena *arena, const Sheet *sheet);
void press_end(Press *press);

bool press_landscape(const Press *press, int page);
/* Draws the page with its upper left corner at (0, 0). */
void press_page(Press *press, cairo_t *cairo, int number);

/* Text of `points` size in the press's type; its width and height. Draws it where `cairo` is not NULL, its middle at
 * (x, y). */
void press_label(Press *press, cairo_t *cairo, double x, double y, double points, const char *text, double *width,
                 double *height);

/* The drawing fitted to the width, as high as it then is but no higher than `most`: that height; draws it where `cairo`
 * is not NULL. */
double press_sketch(Press *press, cairo_t *cairo, const Drawing *drawing, double top, double width, double most);

/* The drawing within the box, with a scale bar under it. */
void press_drawing(Press *press, cairo_t *cairo, const Drawing *drawing, double left, double top, double width,
                   double height);

#endif
