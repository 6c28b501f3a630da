#include "sheet/writers/draw_cairo.h"

#include <math.h>

#include "base/panic.h"

/*
 * A line of cells: all stand on one baseline, the highest cell makes the height.
 *
 *     |<- at ->|<- width ->|          character cells, of the area's width / 76 each
 *     [ ]  Course 3    lower   10 11/16 up
 *     ------------------------------------ baseline
 */
enum { RULE_SPACE = 6, HAIR_SPACE = 2, GROUP_SPACE = 8, LINE_SPACE = 0, BOX = 11, SKETCH_MOST = 150 };

static const char family[] = "DejaVu Sans Condensed,Sans";

static double points_of(Weight weight)
{
    switch (weight) {
    case WEIGHT_TEXT:
    case WEIGHT_STRONG: return 12;
    case WEIGHT_WORDS: return 14;
    case WEIGHT_MARK: return 18;
    }
    return 12;
}

static void set_font(Press *press, double points, bool bold)
{
    PangoFontDescription *font = pango_font_description_from_string(family);
    pango_font_description_set_absolute_size(font, points * PANGO_SCALE);
    pango_font_description_set_weight(font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_layout_set_font_description(press->layout, font);
    pango_font_description_free(font);
}

/* Underlines each 6 and 9 of the text, or nothing. */
static void set_foot(PangoLayout *layout, const SheetCell *cell)
{
    if (!cell->foot) {
        pango_layout_set_attributes(layout, NULL);
        return;
    }
    PangoAttrList *list = pango_attr_list_new();
    for (guint i = 0; cell->text[i] != '\0'; i++) {
        if (cell->text[i] != '6' && cell->text[i] != '9')
            continue;
        PangoAttribute *line = pango_attr_underline_new(PANGO_UNDERLINE_SINGLE);
        line->start_index = i;
        line->end_index = i + 1;
        pango_attr_list_insert(list, line);
    }
    pango_layout_set_attributes(layout, list);
    pango_attr_list_unref(list);
}

/* Sets the cell's text. A mark that is too long for its cell is set smaller, so that it stays on one line. */
static void set_cell(Press *press, const SheetCell *cell, double unit)
{
    double width = cell->width * unit;
    double points = points_of(cell->weight);
    PangoLayout *layout = press->layout;
    pango_layout_set_text(layout, cell->text, -1);
    set_foot(layout, cell);
    pango_layout_set_width(layout, -1);
    pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_NONE);
    set_font(press, points, cell->weight != WEIGHT_TEXT);
    int natural;
    pango_layout_get_size(layout, &natural, NULL);
    double over = natural / (width * PANGO_SCALE);
    if (over > 1 && cell->weight == WEIGHT_MARK)
        set_font(press, floor(points / over * 2) / 2, true);
    pango_layout_set_width(layout, (int)(width * PANGO_SCALE));
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    pango_layout_set_ellipsize(layout, cell->cut ? PANGO_ELLIPSIZE_END : PANGO_ELLIPSIZE_NONE);
    pango_layout_set_alignment(layout, cell->align == ALIGN_RIGHT ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT);
}

static void measure_cell(Press *press, const SheetCell *cell, double unit, double *above, double *below)
{
    int height;
    set_cell(press, cell, unit);
    pango_layout_get_size(press->layout, NULL, &height);
    *above = (double)pango_layout_get_baseline(press->layout) / PANGO_SCALE;
    *below = (double)height / PANGO_SCALE - *above;
    if (cell->kind == CELL_TICK) {
        *above = BOX;
        *below = 2;
    }
}

static void measure_line(Press *press, const SheetLine *line, double unit, double *above, double *below)
{
    *above = *below = 0;
    for (int i = 0; i < line->count; i++) {
        double a, b;
        measure_cell(press, &line->at[i], unit, &a, &b);
        *above = fmax(*above, a);
        *below = fmax(*below, b);
    }
}

static double space_above(const SheetLine *line)
{
    return line->rule ? RULE_SPACE : (line->hair ? HAIR_SPACE : 0);
}

static double line_height(Press *press, const SheetLine *line, double unit)
{
    double above, below;
    if (line->sketch != NULL)
        return press_sketch(press, NULL, line->sketch, 0, SHEET_COLUMNS * unit, SKETCH_MOST);
    measure_line(press, line, unit, &above, &below);
    return space_above(line) + above + below + LINE_SPACE;
}

/* ---- drawing lines ---- */

static void stroke(cairo_t *cairo, double x0, double y0, double x1, double y1, double width)
{
    cairo_set_line_width(cairo, width);
    cairo_move_to(cairo, x0, y0);
    cairo_line_to(cairo, x1, y1);
    cairo_stroke(cairo);
}

static void draw_tick(cairo_t *cairo, double x, double baseline, bool ticked)
{
    cairo_set_line_width(cairo, 0.9);
    cairo_rectangle(cairo, x + 0.5, baseline - BOX + 1, BOX, BOX);
    cairo_stroke(cairo);
    if (ticked) {
        stroke(cairo, x + 2.5, baseline - 4, x + 5, baseline - 1.5, 1.4);
        stroke(cairo, x + 5, baseline - 1.5, x + 10, baseline - 8, 1.4);
    }
}

static void draw_cell(Press *press, cairo_t *cairo, const SheetCell *cell, double unit, double baseline)
{
    double x = cell->at * unit;
    if (cell->kind == CELL_TICK) {
        draw_tick(cairo, x, baseline, cell->text[0] != '\0');
        return;
    }
    set_cell(press, cell, unit);
    cairo_move_to(cairo, x, baseline - (double)pango_layout_get_baseline(press->layout) / PANGO_SCALE);
    pango_cairo_show_layout(cairo, press->layout);
    if (cell->kind == CELL_PENCIL) {
        PangoRectangle extents;
        pango_layout_get_extents(press->layout, NULL, &extents);
        stroke(cairo, x + (double)extents.width / PANGO_SCALE + 4, baseline + 1.5, x + cell->width * unit,
               baseline + 1.5, 0.6);
    }
}

static double draw_line(Press *press, cairo_t *cairo, const SheetLine *line, double unit, double y)
{
    double above, below;
    if (line->sketch != NULL)
        return y + press_sketch(press, cairo, line->sketch, y, SHEET_COLUMNS * unit, SKETCH_MOST);
    measure_line(press, line, unit, &above, &below);
    if (line->rule && y > press->page_head)
        stroke(cairo, 0, y + 3.5, SHEET_COLUMNS * unit, y + 3.5, 0.8);
    else if (line->hair && y > press->page_head)
        stroke(cairo, 0, y + 1, SHEET_COLUMNS * unit, y + 1, 0.3);
    double baseline = y + space_above(line) + above;
    for (int i = 0; i < line->count; i++)
        draw_cell(press, cairo, &line->at[i], unit, baseline);
    return baseline + below + LINE_SPACE;
}

static double draw_lines(Press *press, cairo_t *cairo, const SheetLines *lines, int first, int count, double unit,
                         double y)
{
    for (int i = first; i < first + count; i++)
        y = draw_line(press, cairo, &lines->at[i], unit, y);
    return y;
}

/* ---- pages ---- */

static const double upright_unit = AREA_SHORT / SHEET_COLUMNS;

/* In thousandths of a point. */
static int64_t flow_height(const void *self, const SheetLine *line)
{
    /* measuring sets the layout's text, nothing that lasts */
    const Press *const *press = self;
    Press copy = **press;
    return (int64_t)ceil(line_height(&copy, line, upright_unit) * 1000);
}

void press_begin(Press *press, Arena *arena, const Sheet *sheet)
{
    *press = (Press){.arena = arena, .sheet = sheet};
    PangoFontMap *map = pango_cairo_font_map_new();
    pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(map), 72);
    press->pango = pango_font_map_create_context(map);
    g_object_unref(map);
    cairo_font_options_t *options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(press->pango, options);
    cairo_font_options_destroy(options);
    pango_context_set_language(press->pango, pango_language_from_string("en"));
    pango_context_set_base_dir(press->pango, PANGO_DIRECTION_LTR);
    press->layout = pango_layout_new(press->pango);
    pango_layout_set_auto_dir(press->layout, FALSE);

    BUG_UNLESS(sheet->sections.count > 0);
    SheetLines head = sheet_page_head(arena, sheet, &sheet->sections.at[0], 1, 1);
    for (int i = 0; i < head.count; i++)
        press->page_head += line_height(press, &head.at[i], upright_unit);
    press->page_head += 8;
    const Press *self = press;
    Medium medium = {.self = &self,
                     .room = (int64_t)((AREA_LONG - press->page_head) * 1000),
                     .space = GROUP_SPACE * 1000,
                     .height = flow_height,
                     .draws = true};
    press->pages = flow_pages(arena, sheet, &medium);
}

void press_end(Press *press)
{
    g_object_unref(press->layout);
    g_object_unref(press->pango);
}

bool press_landscape(const Press *press, int page)
{
    return press->pages.at[page].drawing;
}

void press_page(Press *press, cairo_t *cairo, int number)
{
    const SheetPage *page = &press->pages.at[number];
    double width = page->drawing ? AREA_LONG : AREA_SHORT;
    double height = page->drawing ? AREA_SHORT : AREA_LONG;
    double unit = width / SHEET_COLUMNS;
    cairo_save(cairo);
    cairo_set_source_rgb(cairo, 0, 0, 0);
    if (page->drawing)
        cairo_translate(cairo, (PAGE_LONG - AREA_LONG) / 2, (PAGE_SHORT - AREA_SHORT) / 2);
    else
        cairo_translate(cairo, (PAGE_SHORT - AREA_SHORT) / 2, (PAGE_LONG - AREA_LONG) / 2);
    const SheetSection *section = &press->sheet->sections.at[page->section];
    SheetLines head = sheet_page_head(press->arena, press->sheet, section, number + 1, press->pages.count);
    double y = draw_lines(press, cairo, &head, 0, head.count, unit, 0) + 2;
    stroke(cairo, 0, y, width, y, 1.6);
    y = press->page_head;
    if (page->drawing)
        press_drawing(press, cairo, section->drawing, 0, y, width, height - y);
    for (int i = 0; i < page->count && !page->drawing; i++) {
        const Slice *slice = &page->at[i];
        const SheetSection *of = &press->sheet->sections.at[slice->section];
        if (slice->heads)
            y = draw_lines(press, cairo, &of->heads, 0, of->heads.count, unit, y);
        if (slice->space)
            y += GROUP_SPACE;
        if (slice->again)
            y = draw_lines(press, cairo, &of->groups.at[slice->group].lines, 0, 1, unit, y);
        if (slice->group >= 0)
            y = draw_lines(press, cairo, &of->groups.at[slice->group].lines, slice->first, slice->count, unit, y);
    }
    cairo_restore(cairo);
}

void press_label(Press *press, cairo_t *cairo, double x, double y, double points, const char *text, double *width,
                 double *height)
{
    PangoLayout *layout = press->layout;
    set_font(press, points, false);
    pango_layout_set_width(layout, -1);
    pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_NONE);
    pango_layout_set_alignment(layout, PANGO_ALIGN_LEFT);
    pango_layout_set_text(layout, text, -1);
    pango_layout_set_attributes(layout, NULL);
    int w, h;
    pango_layout_get_size(layout, &w, &h);
    *width = (double)w / PANGO_SCALE;
    *height = (double)h / PANGO_SCALE;
    if (cairo != NULL) {
        cairo_move_to(cairo, x - *width / 2, y - *height / 2);
        pango_cairo_show_layout(cairo, layout);
    }
}
