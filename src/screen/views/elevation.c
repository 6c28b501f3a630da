#include "screen/views/elevation.h"

#include "base/utf8.h"
#include "screen/forms/form.h"
#include "screen/forms/question.h"

#include <stdio.h>
#include <string.h>

enum { GOOD_STEP_IN = 8, GOOD_STEP_MM = 10 }; /* marks in the larger step */

Length elevation_between(Length left, Length right, Length y_left, Length y_right, Length x)
{
    if (y_left == y_right || x <= left || right <= left)
        return y_left;
    if (x >= right)
        return y_right;
    return y_left + (Length)wide_divide((Wide)(y_right - y_left) * (x - left), right - left);
}

bool elevation_narrow(const Slab *slab, const Part *part, Length x, Length least)
{
    if (part->bottom_edge == EDGE_RAKE || part->top_edge == EDGE_RAKE)
        return false;
    if (part->bottom_edge == EDGE_BAND && part->top_edge == EDGE_BAND)
        return false;
    Length bottom = elevation_between(slab->left, slab->right, part->bottom_left, part->bottom_right, x);
    Length top = elevation_between(slab->left, slab->right, part->top_left, part->top_right, x);
    return top - bottom < least;
}

void elevation_reach(const FaceLayout *face, Length *low, Length *high)
{
    *low = face->lower.at[0].y;
    *high = face->upper.at[0].y;
    for (int i = 1; i < face->lower.count; i++)
        if (face->lower.at[i].y < *low)
            *low = face->lower.at[i].y;
    for (int i = 1; i < face->upper.count; i++)
        if (face->upper.at[i].y > *high)
            *high = face->upper.at[i].y;
}

static const char *corner_words(Corner corner)
{
    static const char *const words[3][4] = {
        [CORNER_INSIDE] = {"inside, butt", "inside, trim", "inside", "inside"},
        [CORNER_OUTSIDE] = {"outside", "outside, trim", "outside, lap", "outside, mitre"},
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

static void elevation_draw(App *app, Layer *layer, Grid *grid, Rect area)
{
    (void)layer;
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
    if (app->sight.rows)
        rows_draw(app, grid, below);
    else
        drawn_draw(app, grid, below);
    grid_unclip(grid, before);
}

static unsigned elevation_place(const App *app, const Layer *layer)
{
    (void)layer;
    return (app->opening != 0 ? PLACE_OPENING : PLACE_COURSES) | (app->sight.rows ? 0u : PLACE_DRAWN);
}

static Length good_step(const Wall *wall)
{
    return wall->round * (wall->units == UNITS_IN ? GOOD_STEP_IN : GOOD_STEP_MM);
}

static void say_undo(App *app)
{
    const char *name = document_undo_name(app->document);
    if (name != NULL)
        app_say(app, STYLE_DIM, "%c%s.", name[0] >= 'a' && name[0] <= 'z' ? name[0] - 'a' + 'A' : name[0], name + 1);
}

static void nudge_start(App *app, Length by)
{
    Err err;
    if (!edit_nudge_start(app->document, by, &err))
        app_tell(app, &err);
    else
        say_undo(app);
}

static void answer_hung(App *app, int choice)
{
    if (choice != 0)
        return;
    app->hung_may_move = true;
    app_do(app, app->asked_action);
}

bool elevation_may_move(App *app, ActionId action)
{
    const Wall *wall = app_wall(app);
    if (app->hung_may_move || wall->hung_pieces.count + wall->hung_edges.count == 0)
        return true;
    static const Choice choices[] = {{'g', "go on; every piece that no longer fits is told as a fault"},
                                     {'l', "leave it as it is"}};
    app->asked_action = action;
    question_ask(app, "Pieces hang already",
                 "What hangs belongs to the start, the widths and the reveal as they are now. The pieces on the wall "
                 "do not move with them.",
                 choices, 2, answer_hung);
    return false;
}

static void nudge_opening(App *app, Length dx, Length dy)
{
    Err err;
    if (!edit_nudge_opening(app->document, app->opening, dx, dy, &err))
        app_tell(app, &err);
    else
        say_undo(app);
}

static void walk_faces(App *app, int by)
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
    app->face = wall->faces.at[to].id;
    app->opening = 0;
    app->sight.away = false;
    document_end_run(app->document);
}

/* Round all openings of the face, and between the last and the first the courses. */
static void walk_openings(App *app, int by)
{
    const Face *face = &app_wall(app)->faces.at[app_face_index(app)];
    int count = face->openings.count;
    if (count == 0) {
        app_say(app, STYLE_DIM, "This face has no opening; a adds one.");
        return;
    }
    int stations = count + 1; /* station 0: the courses */
    int station = (app_opening_index(app) + 1 + by + stations) % stations;
    app->opening = station == 0 ? 0 : face->openings.at[station - 1].id;
    document_end_run(app->document);
    if (station > 0) {
        const Opening *opening = &face->openings.at[station - 1];
        app_say(app, STYLE_ACCENT, "%s (%s)", opening->name, opening_kind_word(opening->kind));
    }
}

/* Begins to look elsewhere from where one looks now. */
static void look(App *app, int right, int up)
{
    const Wall *wall = app_wall(app);
    Sight *sight = &app->sight;
    const FaceLayout *face = &app_work(app)->layout->faces[app_face_index(app)];
    Length low, high;
    elevation_reach(face, &low, &high);
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

static void change_scale(App *app, int by)
{
    Sight *sight = &app->sight;
    sight->whole = false;
    if (sight->closer + by >= -20 && sight->closer + by <= 20)
        sight->closer += by;
}

static bool act_on_openings(App *app, ActionId action)
{
    Length mark = app_wall(app)->round, step = good_step(app_wall(app));
    switch ((int)action) {
    case ACTION_OPENING_UP: nudge_opening(app, 0, mark); return true;
    case ACTION_OPENING_DOWN: nudge_opening(app, 0, -mark); return true;
    case ACTION_OPENING_LEFT: nudge_opening(app, -mark, 0); return true;
    case ACTION_OPENING_RIGHT: nudge_opening(app, mark, 0); return true;
    case ACTION_OPENING_UP_MORE: nudge_opening(app, 0, step); return true;
    case ACTION_OPENING_DOWN_MORE: nudge_opening(app, 0, -step); return true;
    case ACTION_OPENING_LEFT_MORE: nudge_opening(app, -step, 0); return true;
    case ACTION_OPENING_RIGHT_MORE: nudge_opening(app, step, 0); return true;
    case ACTION_OPENING_NEXT: walk_openings(app, 1); return true;
    case ACTION_OPENING_PREVIOUS: walk_openings(app, -1); return true;
    default: return false;
    }
}

static bool act_on_courses(App *app, ActionId action)
{
    Length mark = app_wall(app)->round, step = good_step(app_wall(app));
    Length by = action == ACTION_RAISE        ? mark
                : action == ACTION_LOWER      ? -mark
                : action == ACTION_RAISE_MORE ? step
                                              : -step;
    switch ((int)action) {
    case ACTION_RAISE:
    case ACTION_LOWER:
    case ACTION_RAISE_MORE:
    case ACTION_LOWER_MORE:
        if (elevation_may_move(app, action))
            nudge_start(app, by);
        return true;
    case ACTION_FACE_LEFT: walk_faces(app, -1); return true;
    case ACTION_FACE_RIGHT: walk_faces(app, 1); return true;
    default: return false;
    }
}

static bool elevation_act(App *app, Layer *layer, ActionId action)
{
    (void)layer;
    Sight *sight = &app->sight;
    if (app_work(app)->layout != NULL)
        switch ((int)action) {
        case ACTION_LOOK_UP: look(app, 0, 1); return true;
        case ACTION_LOOK_DOWN: look(app, 0, -1); return true;
        case ACTION_LOOK_LEFT: look(app, -1, 0); return true;
        case ACTION_LOOK_RIGHT: look(app, 1, 0); return true;
        default: break;
        }
    switch ((int)action) {
    case ACTION_SWAP_VIEW: sight->rows = !sight->rows; return true;
    case ACTION_LOOK_BACK: *sight = (Sight){.rows = sight->rows}; return true;
    case ACTION_CLOSER: change_scale(app, 1); return true;
    case ACTION_FARTHER: change_scale(app, -1); return true;
    case ACTION_WHOLE: *sight = (Sight){.whole = true}; return true;
    default: break;
    }
    return act_on_courses(app, action) || act_on_openings(app, action);
}

/* Esc lets go of the opening in focus; the elevation itself stays. */
static bool elevation_back(App *app, Layer *layer)
{
    (void)layer;
    if (app->opening != 0)
        app->opening = 0;
    else if (app->sight.away || app->sight.whole || app->sight.closer != 0)
        app->sight = (Sight){.rows = app->sight.rows};
    else
        app_say(app, STYLE_DIM, "Nothing to go back from; q leaves.");
    return false;
}

const View elevation_view = {
    .place = elevation_place,
    .draw = elevation_draw,
    .act = elevation_act,
    .back = elevation_back,
};
