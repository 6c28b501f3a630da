/*
 *     narrow:  | the wall, tried  |     wide:  | the wall, tried | list      |
 *              | list             |            |                 | all of it |
 *              | all of the line  |
 */
#include "screen/lists/trial.h"

#include "base/fold.h"
#include "base/panic.h"
#include "base/utf8.h"
#include "screen/views/courses.h"
#include "screen/views/drawn.h"
#include "screen/views/elevation.h"
#include "screen/views/shape.h"

#include <stdlib.h>

enum {
    WIDE_FROM = 112,
    LIST_WIDE = 60,
    WALL_ROWS = 5,
    WHOLE_ROWS = 18,
    LINES_MOST = 8,
    WHOLE_MOST = 6,
    RIGHT_LEAST = 10
};

static void alter(Wall *wall, const TrialLine *line)
{
    if (line->spends) {
        wall->joints.spend = line->spend;
        wall->joints.spend_all = line->spend_all;
        return;
    }
    wall->start = line->start;
    wall->planks.reveal = line->reveal;
    for (int i = 0; i < wall->planks.widths.count; i++)
        wall->planks.widths.at[i] += line->change;
}

/* The document's wall with the line's choice, in `arena`. */
static Wall *altered(App *app, Arena *arena, const TrialLine *line)
{
    Wall *wall = wall_copy(arena, document_wall(app->document));
    alter(wall, line);
    return wall;
}

static void try_focus(App *app, const Trial *trial)
{
    if (trial->lines.count == 0)
        return;
    Arena *arena = arena_new();
    app_try(app, altered(app, arena, &trial->lines.at[trial->focus]));
    arena_free(arena);
}

static bool changes_nothing(const Wall *wall, const TrialLine *line)
{
    if (line->spends)
        return line->spend == wall->joints.spend && line->spend_all == wall->joints.spend_all;
    return line->change == 0 && line->reveal == wall->planks.reveal && line->start == wall->start;
}

static void take(App *app, Trial *trial)
{
    if (trial->lines.count == 0) {
        layers_pop(&app->layers);
        return;
    }
    const TrialLine line = trial->lines.at[trial->focus];
    const Wall *before = document_wall(app->document);
    Err err;
    bool done;
    if (changes_nothing(before, &line)) {
        layers_pop(&app->layers);
        app_say(app, STYLE_DIM, "It is so already; nothing is changed.");
        return;
    }
    if (!line.spends && line.change == 0 && line.reveal == before->planks.reveal) {
        done = edit_start(app->document, line.start, &err);
    } else {
        Arena *arena = arena_new();
        done = edit_whole(app->document, altered(app, arena, &line), trial->step, &err);
        arena_free(arena);
    }
    layers_pop(&app->layers);
    if (!done)
        app_tell(app, &err);
    else
        app_say(app, STYLE_ACCENT, "Done: %s. Ctrl-Z puts it back.", document_undo_name(app->document));
}

static int lines_within(const char *text, int columns, int most)
{
    int begin, lines = 0;
    while (lines < most && fold_line(text, columns, lines, &begin) >= 0)
        lines++;
    return lines;
}

static void fold_draw(Grid *grid, Rect area, const char *text)
{
    int begin, length;
    for (int line = 0; line < area.rows && (length = fold_line(text, area.columns, line, &begin)) >= 0; line++)
        grid_format(grid, area.x, area.y + line, area.columns, STYLE_PLAIN, "%.*s", length, text + begin);
}

static void line_draw(const Trial *trial, Grid *grid, Rect row, int index)
{
    const TrialLine *line = &trial->lines.at[index];
    int used = utf8_cells(line->left) + 2, cells = utf8_cells(line->right);
    grid_text(grid, row.x, row.y, row.columns, STYLE_PLAIN, line->left);
    if (row.columns - used >= (cells < RIGHT_LEAST ? cells : RIGHT_LEAST))
        grid_text_right(grid, row.x + row.columns, row.y, row.columns - used, STYLE_DIM, line->right);
    if (index == trial->focus) {
        grid_restyle(grid, row, STYLE_CHOSEN);
        grid_cursor(grid, row.x, row.y);
    }
}

static void keep_in_sight(Trial *trial, int rows)
{
    if (trial->focus < trial->top)
        trial->top = trial->focus;
    if (rows > 0 && trial->focus >= trial->top + rows)
        trial->top = trial->focus - rows + 1;
}

static void panel_draw(Trial *trial, Grid *grid, Rect panel)
{
    grid_panel(grid, panel, trial->title);
    Rect inside = {panel.x + 2, panel.y + 1, panel.columns - 4, panel.rows - 2};
    grid_cursor(grid, inside.x, inside.y);
    int count = trial->lines.count;
    if (count == 0) {
        fold_draw(grid, inside, trial->nothing);
        return;
    }
    const char *whole = trial->lines.at[trial->focus].whole;
    int foot = lines_within(whole, inside.columns, WHOLE_MOST);
    if (foot > inside.rows - 3)
        foot = inside.rows > 4 ? inside.rows - 3 : 0;
    int rows = foot > 0 ? inside.rows - foot - 1 : inside.rows;
    keep_in_sight(trial, rows);
    for (int i = 0; i < rows && trial->top + i < count; i++)
        line_draw(trial, grid, (Rect){inside.x, inside.y + i, inside.columns, 1}, trial->top + i);
    if (count > rows)
        grid_format(grid, panel.x + panel.columns - 14, panel.y, 12, STYLE_DIM, " %d of %d ", trial->focus + 1, count);
    if (foot == 0)
        return;
    for (int x = inside.x; x < inside.x + inside.columns; x++)
        grid_glyph(grid, x, inside.y + rows, GLYPH_LEVEL, STYLE_FRAME);
    fold_draw(grid, (Rect){inside.x, inside.y + rows + 1, inside.columns, foot}, whole);
}

/* How many rows the panel takes below the wall. */
static int panel_rows(const Trial *trial, Rect area)
{
    int wide = area.columns - 4, foot = 0;
    for (int i = 0; i < trial->lines.count; i++) { /* the same for every line, so that the wall above stands still */
        int lines = lines_within(trial->lines.at[i].whole, wide, WHOLE_MOST);
        foot = lines > foot ? lines : foot;
    }
    int lines = trial->lines.count < LINES_MOST ? trial->lines.count : LINES_MOST;
    int rows = trial->lines.count == 0 ? lines_within(trial->nothing, wide, WHOLE_MOST) + 2 : lines + foot + 3;
    int most = area.rows - WALL_ROWS;
    int least = area.rows / 2;
    rows = rows > most ? most : rows;
    return rows < least && trial->lines.count > 0 ? least : rows;
}

/* One end of the face, drawn into `area`; what the views put around it is clipped away. */
static void end_draw(App *app, Grid *grid, Rect area, Length y)
{
    Rect before = grid_clip(grid, area);
    app->focus.sight.away = true;
    app->focus.sight.x = app_wall(app)->faces.at[app_face_index(app)].width / 2;
    app->focus.sight.y = y;
    if (app->focus.sight.rows)
        courses_draw(app, grid, (Rect){area.x, area.y - 1, area.columns, area.rows + 1});
    else
        drawn_draw(app, grid, (Rect){area.x, area.y, area.columns, area.rows + 1});
    grid_unclip(grid, before);
}

/* Where the whole face does not fit, what a choice changes is to be seen at its upper and its lower end. */
static void ends_draw(App *app, Grid *grid, Rect area)
{
    const Sight sight = app->focus.sight;
    int index = app_face_index(app);
    const FaceLayout *face = &app_work(app)->layout->faces[index];
    Length low, high;
    shape_reach(face, &low, &high);
    int upper = area.rows / 2;
    app->focus.sight.whole = false;
    end_draw(app, grid, (Rect){area.x, area.y, area.columns, upper}, high);
    end_draw(app, grid, (Rect){area.x, area.y + upper + 1, area.columns, area.rows - upper - 1}, low);
    app->focus.sight = sight;
    for (int x = area.x; x < area.x + area.columns; x++)
        grid_glyph(grid, x, area.y + upper, GLYPH_LEVEL, STYLE_FRAME);
    grid_format(grid, area.x + 2, area.y + upper, area.columns - 4, STYLE_LABEL, " %s: upper and lower end ",
                app_wall(app)->faces.at[index].name);
}

static void wall_draw(App *app, Grid *grid, Rect area)
{
    if (app_work(app)->layout == NULL)
        grid_text(grid, area.x, area.y, area.columns, STYLE_FAULT, app->work.err.text);
    else if (area.rows < WHOLE_ROWS && area.rows >= WALL_ROWS && area.columns >= 20)
        ends_draw(app, grid, area);
    else
        elevation_draw(app, grid, area);
}

static void trial_draw(App *app, void *state, Grid *grid, Rect area)
{
    Trial *trial = state;
    Rect wall = area, panel = area;
    if (area.columns >= WIDE_FROM) {
        wall.columns = area.columns - LIST_WIDE;
        panel = (Rect){area.x + wall.columns, area.y, LIST_WIDE, area.rows};
    } else {
        panel.rows = panel_rows(trial, area);
        panel.rows = panel.rows > 3 ? panel.rows : area.rows;
        wall.rows = area.rows - panel.rows;
        panel.y = area.y + wall.rows;
    }
    grid_fill(grid, area, ' ', STYLE_PLAIN);
    if (trial->learn != NULL && trial->lines.count > 0)
        trial->learn(app, trial);
    Rect before = grid_clip(grid, wall);
    if (wall.rows > 0)
        wall_draw(app, grid, wall);
    grid_unclip(grid, before);
    panel_draw(trial, grid, panel);
}

static void move_to(App *app, Trial *trial, int index)
{
    int count = trial->lines.count;
    trial->focus = index < 0 ? 0 : index >= count ? (count > 0 ? count - 1 : 0) : index;
    try_focus(app, trial);
}

static bool trial_key(App *app, void *state, Key key)
{
    Trial *trial = state;
    switch (key) {
    case PRESS_HOME: move_to(app, trial, 0); return true;
    case PRESS_END: move_to(app, trial, trial->lines.count - 1); return true;
    case PRESS_PAGE_UP: move_to(app, trial, trial->focus - LINES_MOST); return true;
    case PRESS_PAGE_DOWN: move_to(app, trial, trial->focus + LINES_MOST); return true;
    case 'j': move_to(app, trial, trial->focus + 1); return true;
    case 'k': move_to(app, trial, trial->focus - 1); return true;
    case 'q': layers_pop(&app->layers); return true;
    default: return false;
    }
}

static void trial_step(App *app, void *state, int by)
{
    Trial *trial = state;
    move_to(app, trial, trial->focus + by);
}

static void trial_choose(App *app, void *state)
{
    take(app, state);
}

static void trial_finish(void *state)
{
    Trial *trial = state;
    app_try(trial->app, NULL);
    arena_free(trial->arena);
    free(trial);
}

static const View trial_view = {
    .places = PLACE_TRIAL,
    .draw = trial_draw,
    .key = trial_key,
    .step = trial_step,
    .choose = trial_choose,
    .finish = trial_finish,
};

Trial *trial_new(const char *title, const char *step)
{
    Trial *trial = calloc(1, sizeof *trial);
    if (trial == NULL)
        panic_no_memory();
    trial->title = title;
    trial->step = step;
    trial->nothing = "";
    trial->arena = arena_new();
    return trial;
}

void trial_open(App *app, Trial *trial)
{
    trial->app = app;
    layers_push(&app->layers, &trial_view, trial);
    try_focus(app, trial);
}
