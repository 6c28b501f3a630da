/*
 * Every way by which work could be lost passes through here: saving over what somebody else wrote, leaving with
 * changes, taking up a recovery copy, a second editor. Each is asked, and the answer that changes nothing is always
 * there.
 */
#include "screen/forms/file.h"

#include "base/panic.h"
#include "screen/forms/form.h"
#include "screen/forms/question.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

File *file_new(void)
{
    File *file = calloc(1, sizeof *file);
    if (file == NULL)
        panic_no_memory();
    return file;
}

void file_free(File *file)
{
    free(file);
}

/* ---- what is known ---- */

/* Whether something would be lost. */
static bool is_changed(const App *app)
{
    return app->document != NULL && (app->file->fresh || document_changed(app->document));
}

const char *file_path(const App *app)
{
    return app->file->session != NULL ? session_path(app->file->session) : NULL;
}

const char *file_base_name(const App *app)
{
    const char *path = file_path(app);
    const char *slash = path != NULL ? strrchr(path, '/') : NULL;
    return slash != NULL ? slash + 1 : path;
}

void file_state_words(const App *app, char *out, size_t size)
{
    const Session *session = app->file->session;
    const char *state = file_path(app) == NULL ? "" : is_changed(app) ? ", changed" : ", saved";
    const char *lock = session_locked(session) ? "" : session_elsewhere(session) ? "; open elsewhere" : "; no lock";
    snprintf(out, size, "%s%s", state, lock);
}

const char *file_farewell(const App *app)
{
    return app->file->farewell;
}

/* The name to tell a person; never the whole path when it is long. */
static const char *file_name(const App *app)
{
    const char *name = file_base_name(app);
    return name != NULL ? name : "This wall, which has no file yet,";
}

/* ---- the recovery copy ---- */

static void say_nothing_at_the_end(File *file)
{
    file->farewell[0] = '\0';
    term_last_words("");
}

/* Only a copy of our own: one of an earlier run may have been left for later. */
static void forget_copy(File *file)
{
    if (file->kept)
        session_forget(file->session);
    file->kept = false;
    say_nothing_at_the_end(file);
}

static void last_words(const File *file)
{
    char words[sizeof file->farewell + 1];
    snprintf(words, sizeof words, "%s\n", file->farewell);
    term_last_words(words);
}

/* Said now, and once more where the editor has to end before anything is saved. */
static void not_kept(App *app, const Err *err)
{
    File *file = app->file;
    char reason[300];
    err_line(err, reason, sizeof reason);
    app_say(app, STYLE_FAULT, "No recovery copy can be kept, so save soon: %s", reason);
    if (file->kept)
        snprintf(file->farewell, sizeof file->farewell,
                 "the last changes could not be kept; those before are in %s; %.150s",
                 session_recovery_path(file->session), reason);
    else
        snprintf(file->farewell, sizeof file->farewell, "what was changed and not saved could not be kept: %s", reason);
    last_words(file);
    file->kept_version = 0;
}

void file_keep(App *app)
{
    File *file = app->file;
    if (app->document == NULL || document_version(app->document) == file->kept_version)
        return;
    if (!is_changed(app)) {
        file->kept_version = document_version(app->document);
        forget_copy(file);
        return;
    }
    Err err;
    if (!session_keep(file->session, document_wall(app->document), file->has_source ? &file->source : NULL, &err)) {
        not_kept(app, &err);
        return;
    }
    file->kept_version = document_version(app->document); /* not before: who dies in between tries once more */
    file->kept = true;
    snprintf(file->farewell, sizeof file->farewell, "what was changed and not saved is in %s; %s",
             session_recovery_path(file->session),
             session_path(file->session) != NULL && session_locked(file->session) ? "opening the wall again offers it"
                                                                                  : "the first screen offers it");
    last_words(file);
}

/* The wall is let go of, and what waited for that is done at the end of the turn, when no layer is at work any more. */
static void let_go(App *app, bool forget)
{
    File *file = app->file;
    if (forget)
        forget_copy(file);
    app->then = file->after_leaving;
    file->after_leaving = NULL;
}

/* ---- saving ---- */

static void save_over(App *app, int choice);

/* Comments are kept from the text as it was opened, however often it is saved: so what is removed, saved and brought
 * back has its comment again. Only a wall that came from no text takes the first that is written. */
static void saved(App *app, Arena *fresh, const Source *source)
{
    File *file = app->file;
    if (file->has_source) {
        arena_free(fresh);
    } else {
        file->arena = fresh;
        file->source = *source;
        file->has_source = true;
    }
    document_mark_saved(app->document);
    file->kept_version = document_version(app->document);
    file->kept = false;
    file->fresh = false;
    file->keep_at = 0;
    file->asked = false;
    say_nothing_at_the_end(file);
    session_note_recent(session_path(file->session));
    app_say(app, STYLE_GOOD, "Saved as %s.", file_name(app));
    if (file->leave_after_save) {
        file->leave_after_save = false;
        let_go(app, false);
    }
}

static void ask_over(App *app)
{
    static const Choice choices[] = {
        {'o', "write it with what is here"}, {'n', "save under another name"}, {'s', "stay, save nothing now"}};
    DiskState state = session_disk(app->file->session);
    if (state == DISK_GONE)
        question_ask(app, "The file is gone",
                     "It was moved or removed since it was read; saving makes a new one there.", choices, 3, save_over);
    else if (state == DISK_UNREADABLE)
        question_ask(app, "The file cannot be read any more",
                     "What lies there now cannot be read; saving would put what is here in its place.", choices, 3,
                     save_over);
    else
        question_ask(app, "The file has changed",
                     "Somebody else has written this file since it was read. Saving now would lose what they wrote.",
                     choices, 3, save_over);
}

static void save_now(App *app, bool over)
{
    File *file = app->file;
    Arena *fresh = arena_new();
    Source source = file->has_source ? file->source : (Source){0};
    Err err = {0};
    if (session_save(file->session, fresh, document_wall(app->document), &source, over, &err)) {
        saved(app, fresh, &source);
        return;
    }
    arena_free(fresh);
    if (err.kind != ERR_CHANGED) {
        app_tell(app, &err);
        file->leave_after_save = false;
        file->after_leaving = NULL;
        return;
    }
    ask_over(app);
}

static void save_over(App *app, int choice)
{
    if (choice == 0)
        save_now(app, true);
    else if (choice == 1)
        file_save_as(app);
    else
        app->file->leave_after_save = false;
}

void file_save(App *app)
{
    if (file_path(app) == NULL)
        file_save_as(app);
    else
        save_now(app, false);
}

bool file_save_under(App *app, const char *path, bool over, Err *err)
{
    File *file = app->file;
    Arena *fresh = arena_new();
    Source source = file->has_source ? file->source : (Source){0};
    if (!session_save_as(file->session, fresh, path, document_wall(app->document), &source, over, err)) {
        arena_free(fresh);
        return false;
    }
    saved(app, fresh, &source);
    return true;
}

static bool take_name(App *app, const Form *form, Err *err)
{
    return file_save_under(app, form->fields[0].text, field_choice(&form->fields[1]) == 1, err);
}

void file_save_as(App *app)
{
    static const char *const over[] = {"say so", "write over it"};
    Form *form = form_new("Save under another name", app_wall(app)->units, 0, take_name);
    form_field(form, FIELD_TEXT, "File", "path", NULL);
    form_choice(form, "If the file exists", "over", over, 2, 0);
    const char *path = file_path(app);
    field_set(&form->fields[0], path != NULL ? path : "wall.yaml", form->units);
    form_open(app, form);
}

/* ---- leaving ---- */

static void answer_leave(App *app, int choice)
{
    File *file = app->file;
    if (choice == 0) {
        file->leave_after_save = true;
        file_save(app);
    } else if (choice == 1) {
        let_go(app, true);
    } else {
        file->after_leaving = NULL;
    }
}

void file_leave(App *app, void (*then)(App *app))
{
    File *file = app->file;
    file->after_leaving = then;
    if (!is_changed(app)) {
        let_go(app, false);
        return;
    }
    static const Choice choices[] = {
        {'s', "save, then leave"}, {'l', "leave them: what was changed is lost"}, {'t', "stay"}};
    char text[600];
    snprintf(text, sizeof text, "%s has changes that are not saved.", file_name(app));
    question_ask(app, "Leave with changes?", text, choices, 3, answer_leave);
}

void file_end(App *app)
{
    File *file = app->file;
    app_end(app);
    session_close(file->session);
    arena_free(file->arena);
    *file = (File){0};
    term_last_words("");
    term_last_act(NULL, NULL);
}
