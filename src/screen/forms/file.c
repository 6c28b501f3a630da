/*
 * Every way by which work could be lost passes through here: saving over what somebody else wrote, leaving with
 * changes, taking up a recovery copy, a second editor. Each is asked, and the answer that changes nothing is always
 * there.
 */
#include "screen/forms/file.h"

#include "screen/forms/form.h"
#include "screen/forms/question.h"
#include "screen/lists/lists.h"
#include "screen/views/elevation.h"

#include <stdio.h>
#include <string.h>

enum { FRESH_KEEP_AFTER = 2000 }; /* milliseconds until a new wall has its recovery copy */

static const Source *source_of(const App *app)
{
    return app->has_source ? &app->source : NULL;
}

/* The name to tell a person; never the whole path when it is long. */
static const char *file_name(const App *app)
{
    const char *path = session_path(app->session);
    if (path == NULL)
        return "This wall, which has no file yet,";
    const char *slash = strrchr(path, '/');
    return slash != NULL ? slash + 1 : path;
}

/* Only a copy of our own: one of an earlier run may have been left for later. */
static void forget_copy(App *app)
{
    if (app->kept)
        session_forget(app->session);
    app->kept = false;
    app->farewell[0] = '\0';
    term_last_words("");
}

static void last_words(const App *app)
{
    char words[sizeof app->farewell + 1];
    snprintf(words, sizeof words, "%s\n", app->farewell);
    term_last_words(words);
}

/* Said now, and once more where the editor has to end before anything is saved. */
static void not_kept(App *app, const Err *err)
{
    char reason[300];
    err_line(err, reason, sizeof reason);
    app_say(app, STYLE_FAULT, "No recovery copy can be kept, so save soon: %s", reason);
    if (app->kept)
        snprintf(app->farewell, sizeof app->farewell,
                 "the last changes could not be kept; those before are in %s; %.150s",
                 session_recovery_path(app->session), reason);
    else
        snprintf(app->farewell, sizeof app->farewell, "what was changed and not saved could not be kept: %s", reason);
    last_words(app);
    app->kept_version = 0;
}

void file_keep(App *app)
{
    if (app->document == NULL || document_version(app->document) == app->kept_version)
        return;
    app->kept_version = document_version(app->document);
    if (!app_changed(app)) {
        forget_copy(app);
        return;
    }
    Err err;
    if (!session_keep(app->session, document_wall(app->document), source_of(app), &err)) {
        not_kept(app, &err);
        return;
    }
    app->kept = true;
    snprintf(app->farewell, sizeof app->farewell, "what was changed and not saved is in %s; %s",
             session_recovery_path(app->session),
             session_path(app->session) != NULL && session_locked(app->session) ? "opening the wall again offers it"
                                                                                : "the first screen offers it");
    last_words(app);
}

/* The wall is let go of, and what waited for that is done at the end of the turn, when no layer is at work any more. */
static void let_go(App *app, bool forget)
{
    if (forget)
        forget_copy(app);
    app->then = app->after_leaving;
    app->after_leaving = NULL;
}

/* ---- saving ---- */

static void save_over(App *app, int choice);

/* Comments are kept from the text as it was opened, however often it is saved: so what is removed, saved and brought
 * back has its comment again. Only a wall that came from no text takes the first that is written. */
static void saved(App *app, Arena *fresh, const Source *source)
{
    if (app->has_source) {
        arena_free(fresh);
    } else {
        app->source_arena = fresh;
        app->source = *source;
        app->has_source = true;
    }
    document_mark_saved(app->document);
    app->kept_version = document_version(app->document);
    app->kept = false;
    app->fresh = false;
    app->keep_at = 0;
    app->asked_about_file = false;
    app->farewell[0] = '\0';
    term_last_words("");
    session_note_recent(session_path(app->session));
    app_say(app, STYLE_GOOD, "Saved as %s.", file_name(app));
    if (app->leave_after_save) {
        app->leave_after_save = false;
        let_go(app, false);
    }
}

static void save_failed(App *app, const Err *err)
{
    app_tell(app, err);
    app->leave_after_save = false;
    app->after_leaving = NULL;
}

static void save_now(App *app, bool over)
{
    Arena *fresh = arena_new();
    Source source = app->has_source ? app->source : (Source){0};
    Err err = {0};
    if (session_save(app->session, fresh, document_wall(app->document), &source, over, &err)) {
        saved(app, fresh, &source);
        return;
    }
    arena_free(fresh);
    if (err.kind != ERR_CHANGED) {
        save_failed(app, &err);
        return;
    }
    static const Choice choices[] = {
        {'o', "write over it with what is here"}, {'n', "save under another name"}, {'s', "stay, save nothing now"}};
    question_ask(app, "The file has changed",
                 "Somebody else has written this file since it was read. Saving now would lose what they wrote.",
                 choices, 3, save_over);
}

static void save_over(App *app, int choice)
{
    if (choice == 0)
        save_now(app, true);
    else if (choice == 1)
        file_save_as(app);
    else
        app->leave_after_save = false;
}

void file_save(App *app)
{
    if (session_path(app->session) == NULL)
        file_save_as(app);
    else
        save_now(app, false);
}

static bool save_under(App *app, const char *path, bool over, Err *err)
{
    Arena *fresh = arena_new();
    Source source = app->has_source ? app->source : (Source){0};
    if (!session_save_as(app->session, fresh, path, document_wall(app->document), &source, over, err)) {
        arena_free(fresh);
        return false;
    }
    saved(app, fresh, &source);
    return true;
}

static bool take_name(App *app, const Form *form, Err *err)
{
    return save_under(app, form->fields[0].text, field_choice(&form->fields[1]) == 1, err);
}

void file_save_as(App *app)
{
    static const char *const over[] = {"say so", "write over it"};
    Form *form = form_new("Save under another name", app_wall(app)->units, 0, take_name);
    form_field(form, FIELD_TEXT, "File", "path", NULL);
    form_choice(form, "If the file exists", "over", over, 2, 0);
    const char *path = session_path(app->session);
    field_set(&form->fields[0], path != NULL ? path : "wall.yaml", form->units);
    form_open(app, form);
}

/* ---- leaving ---- */

static void answer_leave(App *app, int choice)
{
    if (choice == 0) {
        app->leave_after_save = true;
        file_save(app);
    } else if (choice == 1) {
        let_go(app, true);
    } else {
        app->after_leaving = NULL;
    }
}

void file_leave(App *app, void (*then)(App *app))
{
    app->after_leaving = then;
    if (!app_changed(app)) {
        let_go(app, false);
        return;
    }
    static const Choice choices[] = {
        {'s', "save, then leave"}, {'l', "leave them: what was changed is lost"}, {'t', "stay"}};
    char text[600];
    snprintf(text, sizeof text, "%s has changes that are not saved.", file_name(app));
    question_ask(app, "Leave with changes?", text, choices, 3, answer_leave);
}

/* ---- what is on disk, and beside it ---- */

static void first_error(App *app, const Errs *errs)
{
    if (errs->count > 0)
        app_tell(app, &errs->at[0]);
}

/* Takes another text in place of the wall, as one step that can be undone. */
static void replace(App *app, bool recovered)
{
    Arena *fresh = arena_new();
    Source source;
    Errs errs = {0};
    Err err;
    bool read = recovered ? session_recover(app->session, fresh, &source, &errs)
                          : session_read(app->session, fresh, &source, &errs);
    if (!read) {
        first_error(app, &errs);
        arena_free(fresh);
        return;
    }
    const char *step = recovered ? "take up the recovery copy" : "read the file anew";
    if (!edit_whole(app->document, source.wall, step, &err)) {
        app_tell(app, &err);
        arena_free(fresh);
        return;
    }
    app->opening = 0;
    if (recovered) {
        arena_free(fresh);
        app_say(app, STYLE_GOOD, "The recovery copy is taken up; Ctrl-S saves it, Ctrl-Z goes back to the file.");
        return;
    }
    arena_free(app->source_arena);
    app->source_arena = fresh;
    app->source = source;
    app->has_source = true;
    document_mark_saved(app->document);
    app->asked_about_file = false;
    app_say(app, STYLE_GOOD, "The file is read anew; Ctrl-Z goes back to what was here.");
}

static void answer_changed(App *app, int choice)
{
    if (choice == 0)
        replace(app, false);
}

void file_look(App *app)
{
    if (session_path(app->session) == NULL)
        return;
    if (!session_file_changed(app->session)) {
        app->asked_about_file = false;
        return;
    }
    if (app->asked_about_file)
        return;
    app->asked_about_file = true;
    static const Choice choices[] = {{'r', "read it anew; what was changed here is lost"},
                                     {'k', "keep what is here; saving will ask again"}};
    question_ask(app, "The file on disk has changed",
                 "Another program has written, moved or removed the file since it was read.", choices, 2,
                 answer_changed);
}

/* ---- opening ---- */

static void answer_recovery(App *app, int choice)
{
    if (choice == 0)
        replace(app, true);
    else if (choice == 2)
        session_forget(app->session);
}

static void ask_recovery(App *app)
{
    static const Choice choices[] = {{'t', "take up the copy; undo goes back to the file"},
                                     {'k', "keep the copy for later; show the file"},
                                     {'d', "drop the copy; show the file"}};
    if (session_recovery_waits(app->session))
        question_ask(
            app, "There is a recovery copy",
            "Last time the editor ended before everything was saved. The copy that it kept is newer than the file.",
            choices, 3, answer_recovery);
}

static void answer_locked(App *app, int choice)
{
    if (choice == 1)
        file_leave(app, lists_first);
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

static void stand_on_wall(App *app)
{
    app_ground(app, &elevation_view, NULL);
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
        for (int i = 0; i < own.count; i++)
            *arena_push(arena, errs) = own.at[i];
        arena_free(source_arena);
        session_close(session);
        return false;
    }
    app_begin(app, session, source_arena, &source, source.wall);
    session_note_recent(path);
    stand_on_wall(app);
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
    if (!store_read(source_arena, path, &source, &own)) {
        for (int i = 0; i < own.count; i++)
            *arena_push(arena, errs) = own.at[i];
        arena_free(source_arena);
        return false;
    }
    Err err = {0};
    Session *session = session_open(NULL, &err);
    if (session == NULL) {
        *arena_push(arena, errs) = err;
        arena_free(source_arena);
        return false;
    }
    app_begin(app, session, source_arena, &source, source.wall);
    stand_on_wall(app);
    return true;
}

bool file_begin(App *app, const char *path, const Wall *wall, Err *err)
{
    Session *session = session_open(NULL, err);
    if (session == NULL)
        return false;
    app_begin(app, session, NULL, NULL, wall);
    app->fresh = true;
    app->kept_version = 0;
    app->keep_at = app->term->now(app->term) + FRESH_KEEP_AFTER;
    stand_on_wall(app);
    return path == NULL || save_under(app, path, false, err);
}

bool file_take_up(App *app, const char *path, Arena *arena, Errs *errs)
{
    if (!file_open_copy(app, path, arena, errs))
        return false;
    app->fresh = true;
    app->kept_version = 0;
    file_keep(app);
    if (app->kept)
        session_drop_left_over(path);
    app_say(app, STYLE_GOOD, "This wall was never saved; Ctrl-S saves it.");
    return true;
}
