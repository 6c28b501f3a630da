#include "screen/app/app.h"

#include "base/panic.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>

App *app_new(Term *term)
{
    App *app = calloc(1, sizeof *app);
    if (app == NULL)
        panic_no_memory();
    app->term = term;
    work_init(&app->work);
    int columns, rows;
    term->size(term, &columns, &rows);
    app->grid = grid_new(columns, rows);
    return app;
}

void app_free(App *app)
{
    work_finish(&app->work);
    grid_free(app->grid);
    free(app);
}

void app_begin(App *app, const Wall *wall)
{
    app_end(app);
    app->document = document_new(wall);
    app->focus = (Focus){.face = app_wall(app)->faces.at[0].id, .sight.rows = app->focus.sight.rows};
}

void app_end(App *app)
{
    app_try(app, NULL);
    document_free(app->document);
    app->document = NULL;
    work_finish(&app->work);
    work_init(&app->work);
}

void app_try(App *app, const Wall *wall)
{
    Arena *arena = wall != NULL ? arena_new() : NULL;
    app->tried.wall = wall != NULL ? wall_copy(arena, wall) : NULL;
    app->tried.count++;
    arena_free(app->tried.arena);
    app->tried.arena = arena;
}

void app_say(App *app, int style, const char *format, ...)
{
    va_list list;
    va_start(list, format);
    vsnprintf(app->message, sizeof app->message, format, list);
    va_end(list);
    app->message_style = style;
}

void app_tell(App *app, const Err *err)
{
    char line[ERR_PLACE_MAX + ERR_TEXT_MAX];
    err_line(err, line, sizeof line);
    app_say(app, STYLE_FAULT, "%s", line);
}

const Wall *app_wall(const App *app)
{
    if (app->tried.wall != NULL)
        return app->tried.wall;
    return app->document == NULL ? NULL : document_wall(app->document);
}

Work *app_work_begun(App *app)
{
    /* versions of what is tried are counted down, those of the document up: they never meet */
    uint64_t version = app->tried.wall != NULL ? UINT64_MAX - app->tried.count : document_version(app->document);
    if (app->work.version != version || app->work.wall == NULL)
        work_begin(&app->work, app_wall(app), version);
    return &app->work;
}

Work *app_work(App *app)
{
    work_job(app_work_begun(app)); /* where it cannot be made there is no layout either, and whoever asks sees that */
    return &app->work;
}

int app_face_index(App *app)
{
    const Wall *wall = app_wall(app);
    int index = wall_face_index(wall, app->focus.face);
    if (index < 0) {
        index = 0;
        app->focus.face = wall->faces.at[0].id;
        app->focus.opening = 0;
    }
    return index;
}

int app_opening_index(App *app)
{
    if (app->focus.opening == 0)
        return -1;
    int index = wall_opening_index(&app_wall(app)->faces.at[app_face_index(app)], app->focus.opening);
    if (index < 0)
        app->focus.opening = 0;
    return index;
}

const char *app_length(const App *app, Length value, char out[LENGTH_TEXT_MAX])
{
    const Wall *wall = app_wall(app);
    length_show(value, wall->units, wall->round, out);
    return out;
}
