#include "screen/screen.h"

#include "base/panic.h"
#include "base/utf8.h"
#include "screen/forms/file.h"
#include "screen/forms/forms.h"
#include "screen/lists/lists.h"
#include "screen/loop.h"

#include <langinfo.h>
#include <locale.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum { STATUS_USAGE = 2, STATUS_FILE = 3 };

/* For writing the recovery copy of the largest wall file when memory is gone: its text twice, and what it reads as. */
enum { RESERVE = 64 << 20 };

static void tell(const Errs *errs)
{
    char line[ERR_PLACE_MAX + ERR_TEXT_MAX];
    for (int i = 0; i < errs->count; i++) {
        char safe[sizeof line];
        err_line(&errs->at[i], line, sizeof line);
        utf8_safe(safe, sizeof safe, line, (int)sizeof safe, false);
        fprintf(stderr, "datumrow: %s\n", safe);
    }
}

/* Lays the first layers. */
static bool begin(App *app, const char *path, ScreenTask task, Arena *arena, Errs *errs)
{
    if (path == NULL || task == SCREEN_NEW)
        lists_first(app);
    if (task == SCREEN_NEW)
        forms_new(app, path);
    return path == NULL || task == SCREEN_NEW || file_open(app, path, arena, errs);
}

int screen_run(const char *path, ScreenTask task)
{
    setlocale(LC_CTYPE, "");
    panic_reserve(RESERVE);
    Err err;
    Term *term = term_curses(&err);
    if (term == NULL) {
        fprintf(stderr, "datumrow: %s\n", err.text);
        return STATUS_USAGE;
    }
    term->utf8 = strcmp(nl_langinfo(CODESET), "UTF-8") == 0;
    Loop *loop = loop_new(term);
    /* the fonts of the Linux console lack the fine signs; P tries them all the same */
    const char *name = getenv("TERM");
    loop->app->plain_signs = name != NULL && strcmp(name, "linux") == 0;
    Arena *arena = arena_new();
    Errs errs = {0};
    bool begun = begin(loop->app, path, task, arena, &errs);
    while (begun && loop_turn(loop))
        continue;
    char farewell[MESSAGE_MOST];
    snprintf(farewell, sizeof farewell, "%s", file_farewell(loop->app));
    loop_free(loop);
    term->finish(term);
    if (!begun)
        tell(&errs);
    arena_free(arena);
    if (farewell[0] != '\0') {
        char safe[MESSAGE_MOST];
        utf8_safe(safe, sizeof safe, farewell, (int)sizeof safe, false);
        fprintf(stderr, "datumrow: %s\n", safe);
    }
    return begun && farewell[0] == '\0' ? 0 : STATUS_FILE;
}
