/*
 * Each row of app/actions.h says what is called. What is short and belongs to no view stands here.
 */
#include "screen/do.h"

#include "screen/forms/file.h"
#include "screen/forms/forms.h"
#include "screen/forms/print.h"
#include "screen/forms/question.h"
#include "screen/lists/lists.h"
#include "screen/lists/menu.h"
#include "screen/lists/trials.h"
#include "screen/views/elevation.h"
#include "screen/views/glance.h"
#include "screen/views/hang.h"
#include "screen/views/hang_cut.h"
#include "screen/views/tally.h"

#include <stdio.h>

static void undo(App *app)
{
    const char *step = app->document != NULL ? document_undo_name(app->document) : NULL;
    char name[MESSAGE_MOST];
    snprintf(name, sizeof name, "%s", step != NULL ? step : "");
    if (step == NULL)
        app_say(app, STYLE_DIM, "Nothing to undo.");
    else if (document_undo(app->document))
        app_say(app, STYLE_ACCENT, "Undone: %s.", name);
}

static void redo(App *app)
{
    const char *step = app->document != NULL ? document_redo_name(app->document) : NULL;
    char name[MESSAGE_MOST];
    snprintf(name, sizeof name, "%s", step != NULL ? step : "");
    if (step == NULL)
        app_say(app, STYLE_DIM, "Nothing to do again.");
    else if (document_redo(app->document))
        app_say(app, STYLE_ACCENT, "Done again: %s.", name);
}

static void step(App *app, int by)
{
    Layer layer = *layers_top(&app->layers);
    if (layer.view->step != NULL)
        layer.view->step(app, layer.state, by);
}

static void choose(App *app)
{
    Layer layer = *layers_top(&app->layers);
    if (layer.view->choose != NULL)
        layer.view->choose(app, layer.state);
}

static void go_back(App *app)
{
    Layer layer = *layers_top(&app->layers);
    if (layer.view->back == NULL || layer.view->back(app, layer.state))
        layers_pop(&app->layers);
}

/* Out of a form its entries are taken first; what they do not allow is not saved. */
static void save(App *app)
{
    if (form_take_top(app) && app->document != NULL)
        file_save(app);
}

static void end_program(App *app)
{
    app->over = true;
}

/* A question is answered first. */
static void leave(App *app)
{
    if (!question_waits(app))
        file_leave(app, end_program);
}

static void suspend(App *app)
{
    app->term->suspend(app->term);
    app_say(app, STYLE_DIM, "Back again.");
    file_look_soon(app);
}

/* What hangs belongs to the start and the widths as they are. */
static void start_form(App *app)
{
    if (elevation_may_move(app, ACTION_START_FORM))
        forms_start(app);
}

static void planks_form(App *app)
{
    if (elevation_may_move(app, ACTION_PLANKS_FORM))
        forms_planks(app);
}

/* Marks in the larger step. */
static int good_step(const App *app)
{
    return app_wall(app)->units == UNITS_IN ? 8 : 10;
}

void do_action(App *app, ActionId action)
{
    switch (action) {
#define ROW(id, call, ...) \
    case ACTION_##id:      \
        call;              \
        break;
#include "screen/app/actions.h"
    case ACTION_NONE:
    case ACTION_COUNT: break;
    }
}
