/*
 * The first screen: where there is no wall yet. A new one, the sample on a copy, or a file opened lately.
 */
#include "config.h"
#include "screen/forms/file.h"
#include "screen/forms/form.h"
#include "screen/forms/forms.h"
#include "screen/lists/lists.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

typedef enum FirstLine { FIRST_NEW, FIRST_SAMPLE, FIRST_NAME, FIRST_RECENT } FirstLine;

/* Walls that were never saved come before the files opened lately. */
typedef struct First {
    Recent left_over, recent;
} First;

static int first_count(App *app, const List *list)
{
    (void)app;
    const First *first = list->held;
    return FIRST_RECENT + first->left_over.count + first->recent.count;
}

static void first_line(App *app, const List *list, int index, Text *left, Text *right)
{
    (void)app;
    const First *first = list->held;
    switch (index) {
    case FIRST_NEW:
        text_put(left, "A new wall");
        text_put(right, "asks the few sizes it needs");
        return;
    case FIRST_SAMPLE:
        text_put(left, "The sample: a boathouse reading wall");
        text_put(right, "on a copy, to try everything on");
        return;
    case FIRST_NAME: text_put(left, "Open a file by its name"); return;
    default: break;
    }
    if (index - FIRST_RECENT < first->left_over.count) {
        text_put(left, "A wall that was never saved");
        text_put(right, "kept when the editor ended without saving");
        return;
    }
    const char *path = first->recent.at[index - FIRST_RECENT - first->left_over.count];
    const char *slash = strrchr(path, '/');
    text_put(left, slash != NULL ? slash + 1 : path);
    text_put(right, path);
}

static void say_error(App *app, const Errs *errs)
{
    if (errs->count > 1)
        app_say(app, STYLE_FAULT, "%s:%d: %s (and %d more; datumrow check FILE lists them)", errs->at[0].place,
                errs->at[0].line, errs->at[0].text, errs->count - 1);
    else if (errs->count == 1)
        app_tell(app, &errs->at[0]);
}

static void open_path(App *app, const char *path)
{
    Arena *arena = arena_new();
    Errs errs = {0};
    char name[4096];
    snprintf(name, sizeof name, "%s", path); /* the list it comes from may go */
    if (!file_open(app, name, arena, &errs))
        say_error(app, &errs);
    arena_free(arena);
}

static void take_up(App *app, const char *path)
{
    Arena *arena = arena_new();
    Errs errs = {0};
    char name[4096];
    snprintf(name, sizeof name, "%s", path);
    if (!file_take_up(app, name, arena, &errs))
        say_error(app, &errs);
    arena_free(arena);
}

static bool take_path(App *app, const Form *form, Err *err)
{
    Arena *arena = arena_new();
    Errs errs = {0};
    bool opened = file_open(app, form->fields[0].text, arena, &errs);
    if (!opened && errs.count > 0) {
        *err = errs.at[0];
        snprintf(err->place, sizeof err->place, "path");
    }
    arena_free(arena);
    return opened;
}

static void open_sample(App *app)
{
    Arena *arena = arena_new();
    Errs errs = {0};
    const char *folder = getenv("DATUMROW_SAMPLES");
    char path[4096];
    snprintf(path, sizeof path, "%s/reading-wall.yaml", folder != NULL ? folder : DATUMROW_DATA "/samples");
    if (!file_open_copy(app, path, arena, &errs))
        say_error(app, &errs);
    arena_free(arena);
}

static void first_choose(App *app, List *list, int index)
{
    const First *first = list->held;
    int kept = index - FIRST_RECENT;
    if (index == FIRST_NEW) {
        forms_new(app, NULL);
    } else if (index == FIRST_SAMPLE) {
        open_sample(app);
    } else if (index == FIRST_NAME) {
        Form *form = form_new("Open a file", UNITS_MM, 0, take_path);
        form_field(form, FIELD_TEXT, "File", "path", NULL);
        form_open(app, form);
    } else if (kept < first->left_over.count) {
        take_up(app, first->left_over.at[kept]);
    } else {
        open_path(app, first->recent.at[kept - first->left_over.count]);
    }
}

void lists_first(App *app)
{
    static const ListKind kind = {
        .title = "datumrow: narrow planks, laid out on a wall",
        .nothing = "",
        .places = PLACE_LIST,
        .count = first_count,
        .line = first_line,
        .choose = first_choose,
    };
    while (app->layers.depth > 1)
        layers_pop(&app->layers);
    List *list = list_ground(app, &kind);
    file_end(app);
    First *first = arena_one(list->arena, First);
    first->left_over = session_left_over(list->arena);
    first->recent = session_recent(list->arena);
    list->held = first;
}
