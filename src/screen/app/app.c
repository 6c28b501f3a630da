/*
 * The loop. A turn takes what happens, one thing at a time; nothing is painted while keys wait, so the picture never
 * lags behind the finger. When nothing waits the picture is painted; when the picture is true the boards are worked on,
 * a few milliseconds at a time; when that is done too, the loop sleeps until the next thing is due (the recovery copy,
 * a look at the file on disk).
 *
 *     happening ──> top layer's key ──> action table ──> app_do ──> edit_... ──> version ──> dirty, recovery copy due
 */
#include "screen/app/app.h"

#include "base/panic.h"
#include "screen/forms/file.h"
#include "screen/views/frame.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
    KEEP_AFTER = 2000, /* milliseconds from the first change to the recovery copy */
    LOOK_EVERY = 4000, /* at the file on disk */
    SHOW_EVERY = 150,  /* the plan so far, while it gets better */
    SLICE_SHORT = 4,
    SLICE_LONG = 10, /* milliseconds a slice should take */
    STEPS_FIRST = 64,
    STEPS_MOST = 1 << 16
};

App *app_new(Term *term)
{
    App *app = calloc(1, sizeof *app);
    if (app == NULL)
        panic(__FILE__, __LINE__, "out of memory");
    app->term = term;
    app->steps = STEPS_FIRST;
    work_init(&app->work);
    int columns, rows;
    term->size(term, &columns, &rows);
    app->grid = grid_new(columns, rows);
    app->dirty = true;
    return app;
}

void app_free(App *app)
{
    while (app->depth > 0)
        app_pop(app);
    app_end(app);
    work_finish(&app->work);
    grid_free(app->grid);
    free(app);
}

void app_begin(App *app, Session *session, Arena *source_arena, const Source *source, const Wall *wall)
{
    if (app->document != NULL)
        app_end(app);
    app->session = session;
    app->source_arena = source_arena;
    app->has_source = source != NULL;
    if (source != NULL)
        app->source = *source;
    app->document = document_new(wall);
    app->seen_version = document_version(app->document);
    app->kept_version = app->seen_version;
    app->keep_at = 0;
    app->kept = false;
    app->fresh = false;
    app->asked_about_file = false;
    app->look_at_file = app->term->now(app->term) + LOOK_EVERY;
    app->face = app_wall(app)->faces.at[0].id;
    app->opening = 0;
    app->sight = (Sight){.rows = app->sight.rows};
    work_begin(&app->work, wall, app->seen_version);
    app->dirty = true;
}

void app_end(App *app)
{
    app_try(app, NULL, NULL);
    document_free(app->document);
    session_close(app->session);
    arena_free(app->source_arena);
    app->document = NULL;
    app->session = NULL;
    app->source_arena = NULL;
    app->has_source = false;
    work_finish(&app->work);
    work_init(&app->work);
    term_last_words("");
}

void app_try(App *app, const void *by, const Wall *wall)
{
    Arena *arena = wall != NULL ? arena_new() : NULL;
    app->tried = wall != NULL ? wall_copy(arena, wall) : NULL;
    app->tried_by = by;
    app->tried_count++;
    arena_free(app->tried_arena);
    app->tried_arena = arena;
    app->dirty = true;
}

static void stop_trying(App *app, const void *by)
{
    if (app->tried != NULL && app->tried_by == by)
        app_try(app, NULL, NULL);
}

void app_push(App *app, const View *view, void *state)
{
    BUG_UNLESS(app->depth < LAYERS_MOST);
    app->layers[app->depth++] = (Layer){view, state};
    app->dirty = true;
}

void app_pop(App *app)
{
    BUG_UNLESS(app->depth > 0);
    Layer *layer = &app->layers[--app->depth];
    stop_trying(app, layer->state);
    if (layer->view->finish != NULL)
        layer->view->finish(layer->state);
    app->dirty = true;
}

void app_remove(App *app, const void *state)
{
    for (int i = 0; i < app->depth; i++) {
        Layer layer = app->layers[i];
        if (layer.state != state)
            continue;
        memmove(&app->layers[i], &app->layers[i + 1], (size_t)(app->depth - i - 1) * sizeof layer);
        app->depth--;
        stop_trying(app, layer.state);
        if (layer.view->finish != NULL)
            layer.view->finish(layer.state);
        app->dirty = true;
        return;
    }
}

void app_ground(App *app, const View *view, void *state)
{
    if (app->depth > 0 && app->layers[0].view->finish != NULL)
        app->layers[0].view->finish(app->layers[0].state);
    app->layers[0] = (Layer){view, state};
    app->depth = app->depth > 0 ? app->depth : 1;
    app->dirty = true;
}

Layer *app_top(App *app)
{
    BUG_UNLESS(app->depth > 0);
    return &app->layers[app->depth - 1];
}

unsigned app_places(const App *app)
{
    const Layer *layer = &app->layers[app->depth - 1];
    return layer->view->place != NULL ? layer->view->place(app, layer) : layer->view->places;
}

void app_say(App *app, int style, const char *format, ...)
{
    va_list list;
    va_start(list, format);
    vsnprintf(app->message, sizeof app->message, format, list);
    va_end(list);
    app->message_style = style;
    app->dirty = true;
}

void app_tell(App *app, const Err *err)
{
    char line[ERR_PLACE_MAX + ERR_TEXT_MAX];
    err_line(err, line, sizeof line);
    app_say(app, STYLE_FAULT, "%s", line);
}

const Wall *app_wall(const App *app)
{
    if (app->tried != NULL)
        return app->tried;
    return app->document == NULL ? NULL : document_wall(app->document);
}

bool app_changed(const App *app)
{
    return app->document != NULL && (app->fresh || document_changed(app->document));
}

Work *app_work(App *app)
{
    /* versions of what is tried are counted down, those of the document up: they never meet */
    uint64_t version = app->tried != NULL ? UINT64_MAX - app->tried_count : document_version(app->document);
    if (app->work.version != version || app->work.wall == NULL)
        work_begin(&app->work, app_wall(app), version);
    return &app->work;
}

int app_face_index(App *app)
{
    const Wall *wall = app_wall(app);
    int index = wall_face_index(wall, app->face);
    if (index < 0) {
        index = 0;
        app->face = wall->faces.at[0].id;
        app->opening = 0;
    }
    return index;
}

int app_opening_index(App *app)
{
    if (app->opening == 0)
        return -1;
    int index = wall_opening_index(&app_wall(app)->faces.at[app_face_index(app)], app->opening);
    if (index < 0)
        app->opening = 0;
    return index;
}

const char *app_length(const App *app, Length value, char out[LENGTH_TEXT_MAX])
{
    const Wall *wall = app_wall(app);
    length_show(value, wall->units, wall->round, out);
    return out;
}

void app_paint(App *app)
{
    Grid *grid = app->grid;
    grid->ascii = app->plain_signs || !app->term->utf8;
    grid->colour = app->term->colour;
    grid_clear(grid);
    int head = frame_head(app, grid);
    int foot = frame_foot(app, grid);
    Rect area = {0, head, grid->columns, grid->rows - head - foot};
    for (int i = 0; i < app->depth; i++) {
        Rect before = grid_clip(grid, area);
        app->layers[i].view->draw(app, &app->layers[i], grid, area);
        grid_unclip(grid, before);
    }
}

static void take_size(App *app)
{
    int columns, rows;
    app->term->size(app->term, &columns, &rows);
    if (columns != app->grid->columns || rows != app->grid->rows)
        grid_resize(app->grid, columns, rows);
    app->dirty = true;
}

static void take_key(App *app, const Happening *happening)
{
    app->message[0] = '\0';
    app->dirty = true;
    Layer *layer = app_top(app);
    if (happening->key == PRESS_PASTE) {
        if (layer->view->paste != NULL)
            layer->view->paste(app, layer, happening->text);
        else
            app_say(app, STYLE_CAUTION, "What was pasted is left out: text goes only into a field.");
        return;
    }
    if (layer->view->key != NULL && layer->view->key(app, layer, happening->key))
        return;
    ActionId action = action_for(app_places(app), happening->key);
    if (action != ACTION_NONE) {
        app_do(app, action);
        return;
    }
    char label[24];
    key_label(happening->key, app->grid->ascii, label, sizeof label);
    app_say(app, STYLE_DIM, "%s does nothing here.", label);
}

static void take(App *app, const Happening *happening)
{
    switch (happening->kind) {
    case HAPPENED_NOTHING: break;
    case HAPPENED_KEY: take_key(app, happening); break;
    case HAPPENED_RESIZE: take_size(app); break;
    case HAPPENED_RESUME:
        app->term->redraw(app->term);
        take_size(app);
        app->look_at_file = app->term->now(app->term);
        break;
    case HAPPENED_SUSPEND: app_do(app, ACTION_SUSPEND); break;
    case HAPPENED_STOP:
    case HAPPENED_GONE:
        file_keep(app);
        app->over = true;
        break;
    }
}

/* After anything that may have changed the document. */
static void watch_document(App *app)
{
    if (app->document == NULL)
        return;
    uint64_t version = document_version(app->document);
    if (version == app->seen_version)
        return;
    app->seen_version = version;
    app->dirty = true;
    if (app->keep_at == 0)
        app->keep_at = app->term->now(app->term) + KEEP_AFTER;
}

static void do_what_is_due(App *app, int64_t now)
{
    if (app->document == NULL)
        return;
    if (app->keep_at != 0 && now >= app->keep_at) {
        app->keep_at = 0;
        file_keep(app);
    }
    if (now >= app->look_at_file && app->depth == 1) { /* never under a form: what it is about could change */
        app->look_at_file = now + LOOK_EVERY;
        file_look(app);
    }
}

/* Milliseconds until something is due; below 0 where nothing is. */
static int until_due(const App *app, int64_t now)
{
    if (app->document == NULL)
        return -1;
    int64_t due = app->look_at_file;
    if (app->keep_at != 0 && app->keep_at < due)
        due = app->keep_at;
    return due <= now ? 1 : (int)(due - now);
}

static void work_on(App *app)
{
    int64_t before = app->term->now(app->term);
    bool more = work_slice(&app->work, app->steps);
    int64_t after = app->term->now(app->term);
    if (after - before < SLICE_SHORT && app->steps < STEPS_MOST)
        app->steps *= 2;
    else if (after - before > SLICE_LONG && app->steps > 1)
        app->steps /= 2;
    if (!more || after >= app->show_at) {
        app->show_at = after + SHOW_EVERY;
        app->dirty = true;
    }
}

bool app_turn(App *app)
{
    if (app->over)
        return false;
    bool working = app->document != NULL && app_work(app)->layout != NULL && !app->work.filled;
    int64_t now = app->term->now(app->term);
    Happening happening = app->term->wait(app->term, app->dirty || working ? 0 : until_due(app, now));
    take(app, &happening);
    if (app->then != NULL) {
        void (*then)(App * app) = app->then;
        app->then = NULL;
        then(app);
    }
    if (app->over)
        return false;
    watch_document(app);
    do_what_is_due(app, app->term->now(app->term));
    if (happening.kind != HAPPENED_NOTHING)
        return true;
    if (app->dirty) {
        app_paint(app);
        app->term->show(app->term, app->grid);
        app->dirty = false;
    } else if (working) {
        work_on(app);
    }
    return true;
}

int app_run(App *app)
{
    while (app_turn(app))
        continue;
    return app->status;
}
