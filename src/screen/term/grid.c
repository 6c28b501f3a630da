#include "screen/term/grid.h"

#include "base/panic.h"
#include "base/utf8.h"

#include <limits.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { CELLS_MOST = 4096 }; /* no side of a grid is longer: a terminal that claims more is not believed */

Grid *grid_new(int columns, int rows)
{
    Grid *grid = calloc(1, sizeof *grid);
    if (grid == NULL)
        panic_no_memory();
    grid->colour = true;
    grid_resize(grid, columns, rows);
    return grid;
}

void grid_free(Grid *grid)
{
    if (grid == NULL)
        return;
    free(grid->cells);
    free(grid);
}

static int side(int cells)
{
    return cells < 1 ? 1 : cells > CELLS_MOST ? CELLS_MOST : cells;
}

void grid_resize(Grid *grid, int columns, int rows)
{
    grid->columns = side(columns);
    grid->rows = side(rows);
    free(grid->cells);
    grid->cells = calloc((size_t)grid->columns * (size_t)grid->rows, sizeof *grid->cells);
    if (grid->cells == NULL)
        panic_no_memory();
    grid_clear(grid);
}

void grid_copy(Grid *grid, const Grid *from)
{
    if (grid->columns != from->columns || grid->rows != from->rows)
        grid_resize(grid, from->columns, from->rows);
    memcpy(grid->cells, from->cells, (size_t)from->columns * (size_t)from->rows * sizeof *from->cells);
    grid->ascii = from->ascii;
    grid->colour = from->colour;
    grid->cursor_x = from->cursor_x;
    grid->cursor_y = from->cursor_y;
}

void grid_clear(Grid *grid)
{
    grid->clip = (Rect){0, 0, grid->columns, grid->rows};
    grid->cursor_x = grid->columns - 1;
    grid->cursor_y = grid->rows - 1;
    size_t count = (size_t)grid->columns * (size_t)grid->rows;
    for (size_t i = 0; i < count; i++)
        grid->cells[i] = (Cell){.code = ' '};
}

Rect grid_clip(Grid *grid, Rect rect)
{
    Rect before = grid->clip;
    int left = rect.x > before.x ? rect.x : before.x;
    int top = rect.y > before.y ? rect.y : before.y;
    int right = rect.x + rect.columns < before.x + before.columns ? rect.x + rect.columns : before.x + before.columns;
    int bottom = rect.y + rect.rows < before.y + before.rows ? rect.y + rect.rows : before.y + before.rows;
    grid->clip = (Rect){left, top, right > left ? right - left : 0, bottom > top ? bottom - top : 0};
    return before;
}

void grid_unclip(Grid *grid, Rect before)
{
    grid->clip = before;
}

static bool inside(const Grid *grid, int x, int y)
{
    const Rect *clip = &grid->clip;
    return x >= clip->x && x < clip->x + clip->columns && y >= clip->y && y < clip->y + clip->rows;
}

static Cell *cell_at(const Grid *grid, int x, int y)
{
    return &grid->cells[(size_t)y * (size_t)grid->columns + (size_t)x];
}

/* A wide character of which one half is drawn over loses the other half too. */
static void part_wide(Grid *grid, int x, int y)
{
    if (cell_at(grid, x, y)->code == 0 && x > 0)
        cell_at(grid, x - 1, y)->code = ' ';
    if (x + 1 < grid->columns && cell_at(grid, x + 1, y)->code == 0)
        cell_at(grid, x + 1, y)->code = ' ';
}

void grid_put(Grid *grid, int x, int y, uint32_t code, int style)
{
    if (!inside(grid, x, y))
        return;
    part_wide(grid, x, y);
    *cell_at(grid, x, y) = (Cell){.code = code, .style = (uint16_t)style};
}

void grid_glyph(Grid *grid, int x, int y, Glyph glyph, int style)
{
    grid_put(grid, x, y, style_glyph(glyph, grid->ascii), style);
}

const Cell *grid_at(const Grid *grid, int x, int y)
{
    if (x < 0 || y < 0 || x >= grid->columns || y >= grid->rows)
        return NULL;
    return cell_at(grid, x, y);
}

int grid_text(Grid *grid, int x, int y, int cells, int style, const char *text)
{
    if (cells <= 0)
        return 0;
    char safe[1024];
    utf8_safe(safe, sizeof safe, text, INT_MAX, grid->ascii);
    int whole = utf8_cells(safe);
    int room = whole > cells ? cells - 1 : cells;
    int used = 0;
    const char *from = safe;
    size_t left = strlen(safe);
    while (left > 0) {
        uint32_t code;
        int bytes = utf8_decode(from, left, &code);
        if (bytes <= 0)
            break;
        from += bytes;
        left -= (size_t)bytes;
        int width = utf8_width(code);
        if (used + width > room)
            break;
        if (width == 0) {
            if (used > 0 && inside(grid, x + used - 1, y) && cell_at(grid, x + used - 1, y)->code != 0)
                cell_at(grid, x + used - 1, y)->mark = code;
            continue;
        }
        if (width == 2 && !(inside(grid, x + used, y) && inside(grid, x + used + 1, y))) {
            grid_put(grid, x + used, y, ' ', style);
            grid_put(grid, x + used + 1, y, ' ', style);
        } else {
            grid_put(grid, x + used, y, code, style);
            if (width == 2) {
                grid_put(grid, x + used + 1, y, ' ', style);
                cell_at(grid, x + used, y)->code = code;
                cell_at(grid, x + used + 1, y)->code = 0;
            }
        }
        used += width;
    }
    if (whole > cells)
        grid_glyph(grid, x + used++, y, GLYPH_MORE, style);
    return used;
}

int grid_format(Grid *grid, int x, int y, int cells, int style, const char *format, ...)
{
    char text[1024];
    va_list list;
    va_start(list, format);
    vsnprintf(text, sizeof text, format, list);
    va_end(list);
    return grid_text(grid, x, y, cells, style, text);
}

int grid_text_right(Grid *grid, int right, int y, int cells, int style, const char *text)
{
    char safe[1024];
    utf8_safe(safe, sizeof safe, text, INT_MAX, grid->ascii);
    int whole = utf8_cells(safe);
    int x = right - (whole > cells ? cells : whole);
    grid_text(grid, x, y, cells, style, text);
    return x;
}

void grid_fill(Grid *grid, Rect rect, uint32_t code, int style)
{
    Rect before = grid_clip(grid, rect);
    for (int y = grid->clip.y; y < grid->clip.y + grid->clip.rows; y++)
        for (int x = grid->clip.x; x < grid->clip.x + grid->clip.columns; x++)
            grid_put(grid, x, y, code, style);
    grid_unclip(grid, before);
}

void grid_restyle(Grid *grid, Rect rect, int style)
{
    Rect before = grid_clip(grid, rect);
    for (int y = grid->clip.y; y < grid->clip.y + grid->clip.rows; y++)
        for (int x = grid->clip.x; x < grid->clip.x + grid->clip.columns; x++)
            cell_at(grid, x, y)->style = (uint16_t)style;
    grid_unclip(grid, before);
}

void grid_panel(Grid *grid, Rect rect, const char *title)
{
    int right = rect.x + rect.columns - 1, bottom = rect.y + rect.rows - 1;
    grid_fill(grid, (Rect){grid->clip.x, rect.y, grid->clip.columns, rect.rows}, ' ', STYLE_PLAIN);
    for (int x = rect.x; x <= right; x++) {
        grid_glyph(grid, x, rect.y, GLYPH_LEVEL, STYLE_FRAME);
        grid_glyph(grid, x, bottom, GLYPH_LEVEL, STYLE_FRAME);
    }
    for (int y = rect.y; y <= bottom; y++) {
        grid_glyph(grid, rect.x, y, GLYPH_UPRIGHT, STYLE_FRAME);
        grid_glyph(grid, right, y, GLYPH_UPRIGHT, STYLE_FRAME);
    }
    grid_glyph(grid, rect.x, rect.y, GLYPH_TOP_LEFT, STYLE_FRAME);
    grid_glyph(grid, right, rect.y, GLYPH_TOP_RIGHT, STYLE_FRAME);
    grid_glyph(grid, rect.x, bottom, GLYPH_BOTTOM_LEFT, STYLE_FRAME);
    grid_glyph(grid, right, bottom, GLYPH_BOTTOM_RIGHT, STYLE_FRAME);
    if (title[0] == '\0')
        return;
    grid_put(grid, rect.x + 2, rect.y, ' ', STYLE_FRAME);
    int used = grid_text(grid, rect.x + 3, rect.y, rect.columns - 6, STYLE_STRONG, title);
    grid_put(grid, rect.x + 3 + used, rect.y, ' ', STYLE_FRAME);
}

static int within(int value, int count)
{
    return value < 0 ? 0 : value >= count ? count - 1 : value;
}

void grid_cursor(Grid *grid, int x, int y)
{
    grid->cursor_x = within(x, grid->columns);
    grid->cursor_y = within(y, grid->rows);
}
