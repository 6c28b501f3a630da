#include "screen/views/elevation.h"

#include "base/panic.h"
#include "base/utf8.h"
#include "screen/forms/question.h"
#include "screen/views/courses.h"
#include "screen/views/drawn.h"
#include "screen/views/shape.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { ZOOM_MOST = 20 };

typedef struct Elevation {
    bool hung_may_move; /* the person was asked whether the start may change under what hangs */
    ActionId asked;     /* done when that is answered */
} Elevation;

static Elevation *elevation_of(App *app);

/* ---- what is seen ---- */

static const char *corner_words(Corner corner)
{
    static const char *const words[3][4] = {
        [CORNER_INSIDE] = {"inside, butt", "inside, trim", "inside", "inside"},
        [CORNER_OUTSIDE] = {"outside", "outside, trim", "outside, lap", "outside, miter"},
    };
    return words[corner.kind][corner.joint];
}

/* "stove side: inside, butt", as much of it as the room takes: the joint goes first, then the corner. */
static void neighbour_words(const Face *face, Corner corner, int cells, char *out, size_t size)
{
    if (corner.kind != CORNER_NONE) {
        const char *words = corner_words(corner);
        snprintf(out, size, "%s: %s", face->name, words);
        if (utf8_cells(out) <= cells)
            return;
        snprintf(out, size, "%s: %.*s", face->name, (int)strcspn(words, ","), words);
        if (utf8_cells(out) <= cells)
            return;
    }
    snprintf(out, size, "%s", face->name);
}

/* The line above the face: its neighbours round the corners, itself in the middle. */
static void face_line(App *app, Grid *grid, Rect row)
{
    const Wall *wall = app_wall(app);
    int index = app_face_index(app), count = wall->faces.count;
    const Face *face = &wall->faces.at[index];
    char width[LENGTH_TEXT_MAX], text[700];
    length_show_unit(face->width, wall->units, wall->round, width);
    snprintf(text, sizeof text, "%s%s%s, %s wide", face->name, count > 1 ? "" : " face", "", width);
    if (count > 1)
        snprintf(text, sizeof text, "%s (%d of %d), %s wide", face->name, index + 1, count, width);
    int cells = utf8_cells(text);
    int x = row.x + (row.columns - cells) / 2;
    grid_text(grid, x > row.x ? x : row.x, row.y, row.columns, STYLE_STRONG, text);
    int room = (row.columns - cells) / 2 - 2;
    bool through;
    Corner left = wall_corner_left(wall, index, &through);
    if (room > 8 && (left.kind != CORNER_NONE || index > 0)) {
        const Face *other = &wall->faces.at[(index + count - 1) % count];
        grid_glyph(grid, row.x, row.y, GLYPH_POINT_LEFT, STYLE_ACCENT);
        neighbour_words(other, left, room - 2, text, sizeof text);
        grid_text(grid, row.x + 2, row.y, room - 2, STYLE_LABEL, text);
    }
    Corner right = wall_corner_right(wall, index, &through);
    if (room > 8 && (right.kind != CORNER_NONE || index + 1 < count)) {
        const Face *other = &wall->faces.at[(index + 1) % count];
        grid_glyph(grid, row.x + row.columns - 1, row.y, GLYPH_POINT_RIGHT, STYLE_ACCENT);
        neighbour_words(other, right, room - 2, text, sizeof text);
        grid_text_right(grid, row.x + row.columns - 2, row.y, room - 2, STYLE_LABEL, text);
    }
}

void elevation_draw(App *app, Grid *grid, Rect area)
{
    if (area.columns < 20 || area.rows < 4) {
        grid_text(grid, area.x, area.y, area.columns, STYLE_CAUTION, "Make the window bigger to see the wall.");
        grid_cursor(grid, area.x, area.y);
        return;
    }
    Work *work = app_work(app);
    if (work->layout == NULL)
        return;
    face_line(app, grid, (Rect){area.x + 1, area.y, area.columns - 2, 1});
    Rect below = {area.x, area.y + 1, area.columns, area.rows - 1};
    Rect before = grid_clip(grid, below);
    if (app->focus.sight.rows)
        courses_draw(app, grid, below);
    else
        drawn_draw(app, grid, below);
    grid_unclip(grid, before);
}

static unsigned elevation_place(const App *app, const void *state)
{
    (void)state;
    return (app->focus.opening != 0 ? PLACE_OPENING : PLACE_COURSES) | (app->focus.sight.rows ? 0u : PLACE_DRAWN);
}

static void say_undo(App *app)
{
    const char *name = document_undo_name(app->document);
    if (name != NULL)
        app_say(app, STYLE_DIM, "%c%s.", name[0] >= 'a' && name[0] <= 'z' ? name[0] - 'a' + 'A' : name[0], name + 1);
}

/* ---- courses ---- */

static void answer_hung(App *app, int choice)
{
    Elevation *elevation = elevation_of(app);
    if (choice != 0)
        return;
    elevation->hung_may_move = true;
    app->wanted = elevation->asked;
}

bool elevation_may_move(App *app, ActionId action)
{
    const Wall *wall = app_wall(app);
    Elevation *elevation = elevation_of(app);
    if (elevation->hung_may_move || wall->hung_pieces.count + wall->hung_edges.count == 0)
        return true;
    static const Choice choices[] = {{'g', "go on; every piece that no longer fits is told as a fault"},
                                     {'l', "leave it as it is"}};
    elevation->asked = action;
    question_ask(app, "Pieces hang already",
                 "What hangs belongs to the start, the widths and the reveal as they are now. The pieces on the wall "
                 "do not move with them.",
                 choices, 2, answer_hung);
    return false;
}

void elevation_nudge(App *app, ActionId action, int by)
{
    Err err;
    if (!elevation_may_move(app, action))
        return;
    if (!edit_nudge_start(app->document, by * app_wall(app)->round, &err))
        app_tell(app, &err);
    else
        say_undo(app);
}

void elevation_walk_faces(App *app, int by)
{
    const Wall *wall = app_wall(app);
    int count = wall->faces.count, index = app_face_index(app);
    if (count == 1) {
        app_say(app, STYLE_DIM, "This wall has one face.");
        return;
    }
    bool through;
    bool ring = wall_corner_right(wall, count - 1, &through).kind != CORNER_NONE;
    int to = index + by;
    if (to < 0 || to >= count) {
        if (!ring) {
            app_say(app, STYLE_DIM, by < 0 ? "This is the first face." : "This is the last face.");
            return;
        }
        to = (to + count) % count;
    }
    app->focus.face = wall->faces.at[to].id;
    app->focus.opening = 0;
    app->focus.sight.away = false;
    document_end_run(app->document);
}

void elevation_remove_face(App *app)
{
    Err err;
    if (!edit_remove_face(app->document, app->focus.face, &err))
        app_tell(app, &err);
    else
        app_say(app, STYLE_ACCENT, "The face is removed; Ctrl-Z brings it back.");
}

/* ---- openings ---- */

void elevation_move_opening(App *app, int right, int up)
{
    Err err;
    Length mark = app_wall(app)->round;
    if (!edit_nudge_opening(app->document, app->focus.opening, right * mark, up * mark, &err))
        app_tell(app, &err);
    else
        say_undo(app);
}

/* Round all openings of the face, and between the last and the first the courses. */
void elevation_walk_openings(App *app, int by)
{
    const Face *face = &app_wall(app)->faces.at[app_face_index(app)];
    int count = face->openings.count;
    if (count == 0) {
        app_say(app, STYLE_DIM, "This face has no opening; a adds one.");
        return;
    }
    int stations = count + 1; /* station 0: the courses */
    int station = (app_opening_index(app) + 1 + by + stations) % stations;
    app->focus.opening = station == 0 ? 0 : face->openings.at[station - 1].id;
    document_end_run(app->document);
    if (station > 0) {
        const Opening *opening = &face->openings.at[station - 1];
        app_say(app, STYLE_ACCENT, "%s (%s)", opening->name, opening_kind_word(opening->kind));
    }
}

void elevation_remove_opening(App *app)
{
    Err err;
    if (!edit_remove_opening(app->document, app->focus.opening, &err))
        app_tell(app, &err);
    else
        app_say(app, STYLE_ACCENT, "The opening is removed; Ctrl-Z brings it back.");
    app->focus.opening = 0;
}

/* ---- looking ---- */

/* Begins to look elsewhere from where one looks now. */
void elevation_look(App *app, int right, int up)
{
    if (app_work(app)->layout == NULL)
        return;
    const Wall *wall = app_wall(app);
    Sight *sight = &app->focus.sight;
    const FaceLayout *face = &app_work(app)->layout->faces[app_face_index(app)];
    Length low, high;
    shape_reach(face, &low, &high);
    if (!sight->away) {
        sight->y = wall->start;
        sight->x = wall->faces.at[app_face_index(app)].width / 2;
    }
    sight->away = true;
    sight->whole = false;
    Length step = 4 * wall_run(wall) / wall->planks.widths.count;
    sight->x += right * 2 * step;
    sight->y += up * step;
    Length width = wall->faces.at[app_face_index(app)].width;
    sight->x = sight->x < 0 ? 0 : sight->x > width ? width : sight->x;
    sight->y = sight->y < low ? low : sight->y > high ? high : sight->y;
}

void elevation_look_back(App *app)
{
    app->focus.sight = (Sight){.rows = app->focus.sight.rows};
}

void elevation_zoom(App *app, int by)
{
    Sight *sight = &app->focus.sight;
    sight->whole = false;
    if (sight->closer + by >= -ZOOM_MOST && sight->closer + by <= ZOOM_MOST)
        sight->closer += by;
}

void elevation_show_whole(App *app)
{
    app->focus.sight = (Sight){.whole = true};
}

void elevation_swap_view(App *app)
{
    app->focus.sight.rows = !app->focus.sight.rows;
}

/* ---- the view ---- */

static void draw(App *app, void *state, Grid *grid, Rect area)
{
    (void)state;
    elevation_draw(app, grid, area);
}

/* Esc lets go of the opening in focus; the elevation itself stays. */
static bool elevation_back(App *app, void *state)
{
    (void)state;
    if (app->focus.opening != 0)
        app->focus.opening = 0;
    else if (app->focus.sight.away || app->focus.sight.whole || app->focus.sight.closer != 0)
        elevation_look_back(app);
    else
        app_say(app, STYLE_DIM, "Nothing to go back from; q leaves.");
    return false;
}

static const View elevation_view = {
    .place = elevation_place,
    .draw = draw,
    .back = elevation_back,
    .finish = free,
};

/* It lies at the bottom wherever there is a document. */
static Elevation *elevation_of(App *app)
{
    BUG_UNLESS(app->layers.depth > 0 && app->layers.at[0].view == &elevation_view);
    return app->layers.at[0].state;
}

void elevation_stand(App *app)
{
    Elevation *elevation = calloc(1, sizeof *elevation);
    if (elevation == NULL)
        panic_no_memory();
    layers_ground(&app->layers, &elevation_view, elevation);
}
