/*
 *     | title                                        file, changed |   1 row
 *     | figures                                                     |   3 rows, fewer where there is little room
 *     | body                                                        |
 *     | what was just done, or could not be                         |   1 row
 *     | keys                                                        |   1 row
 */
#include "screen/views/frame.h"

#include "base/fold.h"
#include "base/utf8.h"
#include "screen/forms/file.h"
#include "screen/views/figures.h"

#include <stdio.h>
#include <string.h>

enum { MESSAGE_LINES = 4 };

static void title_draw(App *app, Grid *grid)
{
    grid_fill(grid, (Rect){0, 0, grid->columns, 1}, ' ', STYLE_TITLE);
    const Wall *wall = app_wall(app);
    if (wall == NULL) {
        grid_text(grid, 1, 0, grid->columns - 2, STYLE_TITLE, "datumrow");
        return;
    }
    char right[600], state[40];
    const char *name = file_base_name(app);
    file_state_words(app, state, sizeof state);
    snprintf(right, sizeof right, "%s%s", name != NULL ? name : "not saved yet", state);
    int cells = utf8_cells(right);
    int room = grid->columns - 2;
    const char *title = wall->title[0] != '\0' ? wall->title : "A wall without a title";
    if (cells < room * 2 / 3)
        grid_text_right(grid, grid->columns - 1, 0, cells, STYLE_TITLE, right);
    else
        cells = -2;
    grid_text(grid, 1, 0, room - cells - 2, STYLE_TITLE, title);
}

int frame_head(App *app, Grid *grid)
{
    bool laid_over = app->layers.depth > 1; /* what lies over the wall needs the rows more than its figures do */
    if (grid->rows < (laid_over ? 8 : 4))
        return 0;
    title_draw(app, grid);
    if (app_wall(app) == NULL || grid->rows < (laid_over ? 14 : 7))
        return 1;
    int rows = grid->rows < 12 ? 2 : 3;
    figures_draw(app, grid, (Rect){1, 1, grid->columns - 2, rows});
    return 1 + rows;
}

/* One hint, "keys word"; returns the cells it takes, drawn or not. */
static int hint_draw(Grid *grid, int x, int y, const Action *action, bool draw)
{
    char keys[64];
    action_key_text(action, grid->ascii, false, keys, sizeof keys);
    for (ActionId with = action->with; with != ACTION_NONE; with = action_of(with)->with) {
        char other[32];
        action_key_text(action_of(with), grid->ascii, false, other, sizeof other);
        const char *second = strncmp(other, "Shift-", 6) == 0 ? other + 6 : other;
        size_t used = strlen(keys);
        snprintf(keys + used, sizeof keys - used, "%s%s", grid->ascii ? "/" : "", second);
    }
    int cells = utf8_cells(keys) + 1 + utf8_cells(action->word);
    if (draw) {
        int used = grid_text(grid, x, y, grid->columns, STYLE_KEY, keys);
        grid_text(grid, x + used + 1, y, grid->columns, STYLE_PLAIN, action->word);
    }
    return cells;
}

/* Drawn from the table, in its order; what does not fit is left away from the middle, so that menu, help and back stay;
 * in a form saving goes first, which takes the form as well. */
static void hints_draw(App *app, Grid *grid, int y)
{
    const Action *fits[ACTION_COUNT];
    int count = 0, cells = 0;
    unsigned places = layers_places(&app->layers, app);
    for (int id = 1; id < ACTION_COUNT; id++) {
        const Action *action = action_of((ActionId)id);
        if ((action->hints & places) != 0) {
            fits[count++] = action;
            cells += hint_draw(grid, 0, y, action, false) + 2;
        }
    }
    while (count > 1 && cells - 2 > grid->columns - 2) {
        int drop = count <= 3 ? count - 1 : (places & PLACE_FORM) != 0 ? count - 2 : count - 3;
        cells -= hint_draw(grid, 0, y, fits[drop], false) + 2;
        memmove(&fits[drop], &fits[drop + 1], (size_t)(count - drop - 1) * sizeof *fits);
        count--;
    }
    int x = 1;
    for (int i = 0; i < count; i++)
        x += hint_draw(grid, x, y, fits[i], true) + 2;
}

static const char *message_text(const App *app, int *style)
{
    *style = app->message_style;
    bool working = app->document != NULL && app->work.layout != NULL && !app->work.filled;
    if (app->message[0] != '\0' || !working)
        return app->message;
    *style = STYLE_DIM;
    return "Looking for a better way to cut the boards ...";
}

/* Folded into as many lines as it takes, so that no reason is cut off; returns how many. */
static int message_draw(App *app, Grid *grid, int bottom)
{
    int style, begin, length, lines = 1;
    const char *text = message_text(app, &style);
    int wide = grid->columns - 2;
    int most = grid->rows < 14 ? 1 : MESSAGE_LINES;
    while (lines < most && fold_line(text, wide, lines, &begin) > 0)
        lines++;
    for (int line = 0; line < lines; line++)
        if ((length = fold_line(text, wide, line, &begin)) > 0)
            grid_format(grid, 1, bottom - lines + 1 + line, wide, style, "%.*s", length, text + begin);
    return lines;
}

int frame_foot(App *app, Grid *grid)
{
    if (grid->rows < 3)
        return 0;
    hints_draw(app, grid, grid->rows - 1);
    if (grid->rows < 6)
        return 1;
    return 1 + message_draw(app, grid, grid->rows - 2);
}
