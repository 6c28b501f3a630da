#include "screen/views/reader.h"

#include "base/panic.h"

#include <stdlib.h>

enum { WIDE_MOST = 90 };

typedef struct Reader {
    const char *title;
    ReaderFill *fill;
    int top, page; /* first line shown; lines shown */
} Reader;

static void reader_draw(App *app, void *state, Grid *grid, Rect area)
{
    Reader *reader = state;
    int wide = area.columns < WIDE_MOST ? area.columns : WIDE_MOST;
    Rect panel = {area.x + (area.columns - wide) / 2, area.y, wide, area.rows};
    grid_panel(grid, panel, reader->title);
    Rect inside = {panel.x + 2, panel.y + 1, panel.columns - 4, panel.rows - 2};
    grid_cursor(grid, inside.x, inside.y);
    if (inside.rows < 1)
        return;
    Arena *arena = arena_new();
    Facts facts = {0};
    reader->fill(app, arena, &facts);
    int count = facts_draw(grid, inside, &facts, &reader->top);
    arena_free(arena);
    reader->page = inside.rows;
    if (count > inside.rows)
        grid_format(grid, panel.x + panel.columns - 22, panel.y, 20, STYLE_DIM, " %d to %d of %d ", reader->top + 1,
                    reader->top + inside.rows < count ? reader->top + inside.rows : count, count);
}

static void scroll(Reader *reader, int by)
{
    reader->top = reader->top + by < 0 ? 0 : reader->top + by; /* the end is found when it is drawn */
}

static bool reader_key(App *app, void *state, Key key)
{
    Reader *reader = state;
    int page = reader->page > 2 ? reader->page - 1 : 1;
    switch (key) {
    case PRESS_PAGE_DOWN:
    case ' ': scroll(reader, page); return true;
    case PRESS_PAGE_UP: scroll(reader, -page); return true;
    case PRESS_HOME: reader->top = 0; return true;
    case PRESS_END: reader->top = 1 << 20; return true;
    case 'j': scroll(reader, 1); return true;
    case 'k': scroll(reader, -1); return true;
    case 'q':
    case PRESS_ENTER: layers_pop(&app->layers); return true;
    default: return false;
    }
}

static void reader_step(App *app, void *state, int by)
{
    (void)app;
    scroll(state, by);
}

static const View reader_view = {
    .places = PLACE_HELP,
    .draw = reader_draw,
    .key = reader_key,
    .step = reader_step,
    .finish = free,
};

void reader_open(App *app, const char *title, ReaderFill *fill)
{
    Reader *reader = calloc(1, sizeof *reader);
    if (reader == NULL)
        panic_no_memory();
    reader->title = title;
    reader->fill = fill;
    layers_push(&app->layers, &reader_view, reader);
}
