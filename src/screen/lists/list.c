#include "screen/lists/list.h"

#include "base/fold.h"
#include "base/panic.h"
#include "base/utf8.h"

#include <stdlib.h>

enum { WIDE_MOST = 100, WHOLE_ROWS = 5, LOW_FROM = 10 };

static void keep_in_sight(List *list, int count, int rows)
{
    if (list->focus >= count)
        list->focus = count > 0 ? count - 1 : 0;
    if (list->focus < list->top)
        list->top = list->focus;
    if (rows > 0 && list->focus >= list->top + rows)
        list->top = list->focus - rows + 1;
    if (list->top > 0 && list->top + rows > count)
        list->top = count > rows ? count - rows : 0;
}

static void line_draw(App *app, List *list, Grid *grid, Rect row, int index)
{
    Text left, right;
    text_init(&left);
    text_init(&right);
    list->kind->line(app, list, index, &left, &right);
    int style = list->kind->style != NULL ? list->kind->style(app, list, index) : STYLE_PLAIN;
    int cells = utf8_cells(right.bytes);
    if (cells > 0)
        grid_text_right(grid, row.x + row.columns, row.y, cells, STYLE_DIM, right.bytes);
    grid_text(grid, row.x, row.y, row.columns - (cells > 0 ? cells + 1 : 0), style, left.bytes);
    if (index == list->focus) {
        grid_restyle(grid, row, STYLE_CHOSEN);
        grid_glyph(grid, row.x - 1, row.y, GLYPH_CHOSEN, STYLE_STRONG);
        grid_cursor(grid, row.x, row.y);
    }
    text_finish(&left);
    text_finish(&right);
}

/* All of the line in focus, folded, at the foot of the panel. */
static void whole_draw(App *app, const List *list, Grid *grid, Rect foot)
{
    Text text;
    text_init(&text);
    list->kind->whole(app, list, list->focus, &text);
    int begin, length;
    for (int x = foot.x; x < foot.x + foot.columns; x++)
        grid_glyph(grid, x, foot.y, GLYPH_LEVEL, STYLE_FRAME);
    for (int line = 0; line + 1 < foot.rows && (length = fold_line(text.bytes, foot.columns, line, &begin)) >= 0;
         line++)
        grid_format(grid, foot.x, foot.y + 1 + line, foot.columns, STYLE_PLAIN, "%.*s", length, text.bytes + begin);
    text_finish(&text);
}

/* Rows for all of the line in focus: always as many where there is room, so that the box does not jump, and more only
 * for what is longer; in a small window as many as it takes, one line of the list kept. */
static int whole_rows(App *app, List *list, int cells, int most, int count)
{
    if (list->kind->whole == NULL || count == 0 || cells < 1)
        return 0;
    keep_in_sight(list, count, 0);
    Text text;
    text_init(&text);
    list->kind->whole(app, list, list->focus, &text);
    int begin, lines = 0;
    while (fold_line(text.bytes, cells, lines, &begin) >= 0)
        lines++;
    text_finish(&text);
    int least = most > WHOLE_ROWS + 3 && lines + 1 < WHOLE_ROWS ? WHOLE_ROWS : lines + 1;
    int foot = least < most - 3 ? least : most - 3;
    return foot > 1 ? foot : 0;
}

static void list_draw(App *app, void *state, Grid *grid, Rect area)
{
    List *list = state;
    int count = list->kind->count(app, list);
    int wide = area.columns < WIDE_MOST ? area.columns : WIDE_MOST;
    int most = list->kind->low && area.rows >= LOW_FROM ? area.rows * 2 / 3 : area.rows;
    int foot = whole_rows(app, list, wide - 4, most, count);
    int rows = (count > 0 ? count : 1) + 2 + foot;
    if (rows > most)
        rows = most;
    int y = list->kind->low ? area.y + area.rows - rows : area.y + (area.rows - rows) / 2;
    Rect panel = {area.x + (area.columns - wide) / 2, y, wide, rows};
    grid_panel(grid, panel, list->kind->title);
    Rect inside = {panel.x + 2, panel.y + 1, panel.columns - 4, panel.rows - 2 - foot};
    keep_in_sight(list, count, inside.rows);
    grid_cursor(grid, inside.x, inside.y);
    if (count == 0)
        grid_text(grid, inside.x, inside.y, inside.columns, STYLE_DIM, list->kind->nothing);
    for (int i = 0; i < inside.rows && list->top + i < count; i++)
        line_draw(app, list, grid, (Rect){inside.x, inside.y + i, inside.columns, 1}, list->top + i);
    if (foot > 0)
        whole_draw(app, list, grid, (Rect){inside.x, inside.y + inside.rows, inside.columns, foot});
    if (count > inside.rows)
        grid_format(grid, panel.x + panel.columns - 16, panel.y, 14, STYLE_DIM, " %d of %d ", list->focus + 1, count);
}

static void move_to(App *app, List *list, int index)
{
    list->focus = index;
    if (list->kind->moved != NULL)
        list->kind->moved(app, list, index);
}

static bool list_key(App *app, void *state, Key key)
{
    List *list = state;
    int count = list->kind->count(app, list);
    int to;
    if (key == PRESS_HOME)
        to = 0;
    else if (key == PRESS_END)
        to = count - 1;
    else if (key == PRESS_PAGE_UP)
        to = list->focus - 10;
    else if (key == PRESS_PAGE_DOWN)
        to = list->focus + 10;
    else if (key == 'k' || key == 'j')
        to = list->focus + (key == 'j' ? 1 : -1);
    else
        return false;
    if (count > 0)
        move_to(app, list, to < 0 ? 0 : to >= count ? count - 1 : to);
    return true;
}

/* The line in focus, -1 where there is none. */
static int focus_of(App *app, List *list)
{
    int count = list->kind->count(app, list);
    if (list->focus >= count)
        list->focus = count > 0 ? count - 1 : 0;
    return count > 0 ? list->focus : -1;
}

static void list_step(App *app, void *state, int by)
{
    List *list = state;
    int count = list->kind->count(app, list), focus = focus_of(app, list);
    if (focus >= 0)
        move_to(app, list, (focus + by + count) % count);
}

static void list_choose(App *app, void *state)
{
    List *list = state;
    int focus = focus_of(app, list);
    if (focus >= 0)
        list->kind->choose(app, list, focus);
}

/* What was shown in passing is left again. */
static bool list_back(App *app, void *state)
{
    const List *list = state;
    if (list->kind->moved != NULL && document_version(app->document) == list->version)
        app->focus = list->before;
    return true;
}

/* Over the elevation q goes back; on the first screen it leaves. */
static bool laid_key(App *app, void *state, Key key)
{
    if (key != 'q')
        return list_key(app, state, key);
    list_back(app, state);
    layers_pop(&app->layers);
    return true;
}

static unsigned list_place(const App *app, const void *state)
{
    (void)app;
    return ((const List *)state)->kind->places;
}

static void list_finish(void *state)
{
    List *list = state;
    arena_free(list->arena);
    free(list);
}

static bool stay(App *app, void *state)
{
    (void)state;
    app_say(app, STYLE_DIM, "This is the first screen; q leaves.");
    return false;
}

static const View list_view = {
    .place = list_place,
    .draw = list_draw,
    .key = laid_key,
    .step = list_step,
    .choose = list_choose,
    .back = list_back,
    .finish = list_finish,
};

static const View ground_view = {
    .place = list_place,
    .draw = list_draw,
    .key = list_key,
    .step = list_step,
    .choose = list_choose,
    .back = stay,
    .finish = list_finish,
};

static List *list_new(const ListKind *kind)
{
    List *list = calloc(1, sizeof *list);
    if (list == NULL)
        panic_no_memory();
    list->kind = kind;
    list->arena = arena_new();
    return list;
}

List *list_open(App *app, const ListKind *kind)
{
    List *list = list_new(kind);
    list->before = app->focus;
    list->version = app->document != NULL ? document_version(app->document) : 0;
    layers_push(&app->layers, &list_view, list);
    return list;
}

List *list_ground(App *app, const ListKind *kind)
{
    List *list = list_new(kind);
    layers_ground(&app->layers, &ground_view, list);
    return list;
}

void list_add_line(App *app)
{
    List *list = layers_state(&app->layers, &list_view);
    if (list->kind->add != NULL)
        list->kind->add(app, list, focus_of(app, list));
}

void list_remove_line(App *app)
{
    List *list = layers_state(&app->layers, &list_view);
    int focus = focus_of(app, list);
    if (list->kind->remove != NULL && focus >= 0)
        list->kind->remove(app, list, focus);
}
