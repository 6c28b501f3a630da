#include "screen/forms/file.h"

#include "screen/forms/question.h"

#include <stdio.h>
#include <sys/stat.h>
#include <time.h>

enum {
    KEEP_AFTER = 2000, /* milliseconds from the first change to the recovery copy */
    LOOK_EVERY = 4000  /* at the file on disk */
};

/* ---- what is on disk, and beside it ---- */

/* Takes another text in place of the wall, as one step that can be undone: that of a recovery copy, or (NULL) of the
 * file. */
static void replace(App *app, const char *copy)
{
    const bool recovered = copy != NULL;
    File *file = app->file;
    Arena *fresh = arena_new();
    Source source;
    Errs errs = {0};
    Err err;
    bool read = recovered ? session_recover(file->session, fresh, copy, &source, &errs)
                          : session_read(file->session, fresh, &source, &errs);
    if (!read) {
        if (errs.count > 0)
            app_tell(app, &errs.at[0]);
        arena_free(fresh);
        return;
    }
    const char *step = recovered ? "take up the recovery copy" : "read the file anew";
    if (!edit_whole(app->document, source.wall, step, &err)) {
        app_tell(app, &err);
        arena_free(fresh);
        return;
    }
    app->focus.opening = 0;
    if (recovered) {
        arena_free(fresh);
        app_say(app, STYLE_GOOD, "The recovery copy is taken up; Ctrl-S saves it, Ctrl-Z goes back to the file.");
        return;
    }
    arena_free(file->arena);
    file->arena = fresh;
    file->source = source;
    file->has_source = true;
    document_mark_saved(app->document);
    file->asked = false;
    app_say(app, STYLE_GOOD, "The file is read anew; Ctrl-Z goes back to what was here.");
}

static void answer_changed(App *app, int choice)
{
    if (choice == 0)
        replace(app, NULL);
}

static void answer_gone(App *app, int choice)
{
    if (choice == 1)
        file_save_as(app);
}

static void ask_changed(App *app)
{
    static const Choice choices[] = {{'r', "read it anew; what was changed here is lost"},
                                     {'k', "keep what is here; saving will ask again"}};
    question_ask(app, "The file on disk has changed", "Another program has written the file since it was read.",
                 choices, 2, answer_changed);
}

static void ask_gone(App *app, bool gone)
{
    static const Choice choices[] = {{'k', "keep what is here; saving will ask again"},
                                     {'n', "save under another name"}};
    question_ask(
        app, gone ? "The file is gone" : "The file cannot be read any more",
        gone ? "It was moved or removed since it was read. What is on the screen is all there is of it here."
             : "It may not be read now, or something else lies in its place. What is on the screen is as it was "
               "read.",
        choices, 2, answer_gone);
}

/* True where it asks. */
static bool look(App *app)
{
    File *file = app->file;
    if (file_path(app) == NULL)
        return false;
    DiskState state = session_disk(file->session);
    bool asked = file->asked;
    file->asked = state != DISK_SAME;
    if (state == DISK_SAME || asked)
        return false;
    if (state == DISK_CHANGED)
        ask_changed(app);
    else
        ask_gone(app, state == DISK_GONE);
    return true;
}

/* ---- what is due ---- */

void file_note_change(App *app)
{
    File *file = app->file;
    if (file->keep_at == 0 && document_version(app->document) != file->kept_version)
        file->keep_at = app->term->now(app->term) + KEEP_AFTER;
}

void file_look_soon(App *app)
{
    app->file->look_at = 0;
}

/* Never under a form: what it is about could change. */
static bool may_look(const App *app)
{
    return app->layers.depth == 1;
}

int file_due_in(const App *app)
{
    const File *file = app->file;
    if (app->document == NULL || (file->keep_at == 0 && !may_look(app)))
        return -1;
    int64_t due = may_look(app) ? file->look_at : file->keep_at;
    if (file->keep_at != 0 && file->keep_at < due)
        due = file->keep_at;
    int64_t now = app->term->now(app->term);
    return due <= now ? 1 : (int)(due - now);
}

bool file_do_due(App *app)
{
    File *file = app->file;
    if (app->document == NULL)
        return false;
    int64_t now = app->term->now(app->term);
    bool keep = file->keep_at != 0 && now >= file->keep_at;
    if (keep) {
        file->keep_at = 0;
        file_keep(app);
    }
    if (now < file->look_at || !may_look(app))
        return keep;
    file->look_at = now + LOOK_EVERY;
    return look(app) || keep;
}

/* ---- opening ---- */

static void ask_recovery(App *app);

static void answer_recovery(App *app, int choice)
{
    File *file = app->file;
    const char *copy = file->copies.at[file->copy].path;
    if (choice == 0) {
        replace(app, copy);
        return;
    }
    if (choice == 2)
        session_drop(file->session, copy);
    file->copy++;
    ask_recovery(app);
}

static void date_words(int64_t seconds, char *out, size_t size)
{
    const time_t when = (time_t)seconds;
    struct tm parts;
    if (localtime_r(&when, &parts) == NULL || strftime(out, size, "%Y-%m-%d at %H:%M", &parts) == 0)
        snprintf(out, size, "a day that is not known");
}

/* What is known of the copy and the file, so that the user can choose. */
static void recovery_words(const App *app, const RecoveryCopy *copy, char *out, size_t size)
{
    enum { DATE = 64 };
    char kept[DATE], written[DATE];
    struct stat what;
    date_words(copy->kept, kept, sizeof kept);
    if (stat(file_path(app), &what) != 0) {
        snprintf(out, size, "The editor ended before everything was saved. It kept this copy on %s.", kept);
        return;
    }
    date_words((int64_t)what.st_mtim.tv_sec, written, sizeof written);
    snprintf(out, size, "The editor ended before everything was saved. It kept this copy on %s; the file is of %s.%s",
             kept, written,
             what.st_mtim.tv_sec > time(NULL) ? " That day is still to come: the dates do not say which is newer."
                                              : "");
}

/* One after the other, newest first, until one is taken up. */
static void ask_recovery(App *app)
{
    const File *file = app->file;
    static const Choice choices[] = {{'t', "take up the copy; undo goes back to the file"},
                                     {'k', "keep the copy for later"},
                                     {'d', "drop the copy"}};
    if (file->copy >= file->copies.count)
        return;
    char title[64] = "There is a recovery copy", text[500];
    if (file->copies.count > 1)
        snprintf(title, sizeof title, "There are recovery copies: %d of %d", file->copy + 1, file->copies.count);
    recovery_words(app, &file->copies.at[file->copy], text, sizeof text);
    question_ask(app, title, text, choices, 3, answer_recovery);
}

static void answer_locked(App *app, int choice)
{
    if (choice == 1)
        app->wanted = ACTION_OPEN;
}

static void ask_locked(App *app, const Err *err)
{
    static const Choice choices[] = {{'l', "look at it here all the same"}, {'b', "back to the first screen"}};
    char text[ERR_TEXT_MAX + 100];
    snprintf(text, sizeof text, "%s. Saving from here would cross what is done there.", err->text);
    if (text[0] >= 'a' && text[0] <= 'z')
        text[0] = (char)(text[0] - 'a' + 'A');
    question_ask(app, "This file is open in another editor", text, choices, 2, answer_locked);
}

/* The changes of the last moment, of which there is no recovery copy yet. */
static void keep_at_the_last(void *with)
{
    file_keep(with);
}

/* Begins with a wall read, whose text `source` lies in `arena`; both and the session are taken over. */
static void begin(App *app, Session *session, Arena *arena, const Source *source, const Wall *wall)
{
    file_end(app);
    app_begin(app, wall);
    *app->file = (File){.session = session,
                        .arena = arena,
                        .has_source = source != NULL,
                        .kept_version = document_version(app->document),
                        .look_at = app->term->now(app->term) + LOOK_EVERY};
    if (source != NULL)
        app->file->source = *source;
    term_last_act(keep_at_the_last, app);
    app->stand(app);
}

/* It counts as changed, and its first recovery copy is due, though nobody has touched it. */
static void begin_fresh(App *app)
{
    app->file->fresh = true;
    app->file->kept_version = 0;
    file_note_change(app);
}

static void copy_errors(Arena *arena, Errs *errs, const Errs *own)
{
    for (int i = 0; i < own->count; i++)
        *arena_push(arena, errs) = own->at[i];
}

bool file_open(App *app, const char *path, Arena *arena, Errs *errs)
{
    Err err = {0};
    Session *session = session_open(path, &err);
    if (session == NULL) {
        *arena_push(arena, errs) = err;
        return false;
    }
    Arena *source_arena = arena_new();
    Source source;
    Errs own = {0};
    if (!session_read(session, source_arena, &source, &own)) {
        copy_errors(arena, errs, &own);
        arena_free(source_arena);
        session_close(session);
        return false;
    }
    begin(app, session, source_arena, &source, source.wall);
    session_note_recent(path);
    app->file->copies = session_copies(session, source_arena);
    if (session_locked(session))
        ask_recovery(app); /* what the living editor keeps is no business of another */
    else if (session_elsewhere(session))
        ask_locked(app, &err);
    else
        app_say(app, STYLE_CAUTION, "No lock can be laid on the file, so a second editor would not be told: %s",
                err.text);
    return true;
}

bool file_open_copy(App *app, const char *path, Arena *arena, Errs *errs)
{
    Arena *source_arena = arena_new();
    Source source;
    Errs own = {0};
    Err err = {0};
    Session *session = NULL;
    if (!store_read(source_arena, path, &source, &own)) {
        copy_errors(arena, errs, &own);
    } else {
        session = session_open(NULL, &err);
        if (session == NULL)
            *arena_push(arena, errs) = err;
    }
    if (session == NULL) {
        arena_free(source_arena);
        return false;
    }
    begin(app, session, source_arena, &source, source.wall);
    return true;
}

bool file_begin(App *app, const char *path, const Wall *wall, Err *err)
{
    Session *session = session_open(NULL, err);
    if (session == NULL)
        return false;
    begin(app, session, NULL, NULL, wall);
    begin_fresh(app);
    return path == NULL || file_save_under(app, path, false, err);
}

bool file_take_up(App *app, const char *path, Arena *arena, Errs *errs)
{
    if (!file_open_copy(app, path, arena, errs))
        return false;
    begin_fresh(app);
    file_keep(app);
    if (app->file->kept)
        session_drop_left_over(path);
    app_say(app, STYLE_GOOD, "This wall was never saved; Ctrl-S saves it.");
    return true;
}
