#include "screen/loop.h"

#include "base/panic.h"
#include "screen/do.h"
#include "screen/forms/file.h"
#include "screen/views/elevation.h"
#include "screen/views/frame.h"

#include <stdlib.h>

enum {
    SHOW_EVERY = 150, /* milliseconds: the plan so far, while it gets better */
    SLICE_SHORT = 4,
    SLICE_LONG = 10, /* milliseconds a slice should take */
    STEPS_FIRST = 64,
    STEPS_MOST = 1 << 16
};

Loop *loop_new(Term *term)
{
    Loop *loop = calloc(1, sizeof *loop);
    if (loop == NULL)
        panic_no_memory();
    *loop = (Loop){.app = app_new(term), .dirty = true, .steps = STEPS_FIRST};
    loop->app->file = file_new();
    loop->app->stand = elevation_stand;
    return loop;
}

void loop_free(Loop *loop)
{
    App *app = loop->app;
    while (app->layers.depth > 0)
        layers_pop(&app->layers);
    file_end(app);
    file_free(app->file);
    app_free(app);
    free(loop);
}

/* ---- painting ---- */

void loop_paint(Loop *loop)
{
    App *app = loop->app;
    Grid *grid = app->grid;
    grid->ascii = app->plain_signs || !app->term->utf8;
    grid->colour = app->term->colour;
    grid_clear(grid);
    int head = frame_head(app, grid);
    int foot = frame_foot(app, grid);
    Rect area = {0, head, grid->columns, grid->rows - head - foot};
    for (int i = 0; i < app->layers.depth; i++) {
        Rect before = grid_clip(grid, area);
        app->layers.at[i].view->draw(app, app->layers.at[i].state, grid, area);
        grid_unclip(grid, before);
    }
    app->term->show(app->term, grid);
    loop->dirty = false;
}

/* ---- what happens ---- */

static void take_size(App *app)
{
    int columns, rows;
    app->term->size(app->term, &columns, &rows);
    if (columns != app->grid->columns || rows != app->grid->rows)
        grid_resize(app->grid, columns, rows);
}

static void take_paste(App *app, const char *text)
{
    Layer layer = *layers_top(&app->layers);
    if (layer.view->paste != NULL)
        layer.view->paste(app, layer.state, text);
    else
        app_say(app, STYLE_CAUTION, "What was pasted is left out: text goes only into a field.");
}

static void take_key(App *app, Key key)
{
    Layer layer = *layers_top(&app->layers);
    if (layer.view->key != NULL && layer.view->key(app, layer.state, key))
        return;
    app->wanted = action_for(layers_places(&app->layers, app), key);
    if (app->wanted != ACTION_NONE)
        return;
    char label[24];
    key_label(key, app->grid->ascii, label, sizeof label);
    app_say(app, STYLE_DIM, "%s does nothing here.", label);
}

static void take(App *app, const Happening *happening)
{
    switch (happening->kind) {
    case HAPPENED_NOTHING: break;
    case HAPPENED_KEY:
        app->message[0] = '\0';
        if (happening->key == PRESS_PASTE)
            take_paste(app, happening->text);
        else
            take_key(app, happening->key);
        break;
    case HAPPENED_RESIZE: take_size(app); break;
    case HAPPENED_RESUME:
        app->term->redraw(app->term);
        take_size(app);
        file_look_soon(app);
        break;
    case HAPPENED_SUSPEND: app->wanted = ACTION_SUSPEND; break;
    case HAPPENED_STOP:
    case HAPPENED_GONE:
        file_keep(app);
        app->over = true;
        break;
    }
}

/* What a key, the menu or an answer wants done; what is done may want more. */
static void do_pending(App *app)
{
    while (app->wanted != ACTION_NONE) {
        ActionId action = app->wanted;
        app->wanted = ACTION_NONE;
        do_action(app, action);
    }
    if (app->then == NULL)
        return;
    void (*then)(App * app) = app->then;
    app->then = NULL;
    then(app);
}

/* ---- a turn ---- */

/* After anything that may have changed the document. */
static void watch_document(Loop *loop)
{
    App *app = loop->app;
    uint64_t version = app->document != NULL ? document_version(app->document) : loop->seen_version;
    if (version == loop->seen_version)
        return;
    loop->seen_version = version;
    loop->dirty = true;
    file_note_change(app);
}

static void work_on(Loop *loop)
{
    Term *term = loop->app->term;
    int64_t before = term->now(term);
    bool more = work_slice(&loop->app->work, loop->steps);
    int64_t after = term->now(term);
    if (after - before < SLICE_SHORT && loop->steps < STEPS_MOST)
        loop->steps *= 2;
    else if (after - before > SLICE_LONG && loop->steps > 1)
        loop->steps /= 2;
    if (!more || after >= loop->show_at) {
        loop->show_at = after + SHOW_EVERY;
        loop->dirty = true;
    }
}

bool loop_turn(Loop *loop)
{
    App *app = loop->app;
    if (app->over)
        return false;
    bool working = app->document != NULL && app_work_begun(app)->layout != NULL && !app->work.filled;
    Happening happening = app->term->wait(app->term, loop->dirty || working ? 0 : file_due_in(app));
    take(app, &happening);
    do_pending(app);
    if (app->over)
        return false;
    watch_document(loop);
    loop->dirty = file_do_due(app) || loop->dirty || happening.kind != HAPPENED_NOTHING;
    if (happening.kind != HAPPENED_NOTHING)
        return true;
    if (loop->dirty)
        loop_paint(loop);
    else if (working)
        work_on(loop);
    return true;
}
