/*
 * The editor's dealings with the file under the document: opening, saving, the recovery copy, the look at what is on
 * disk, leaving. Each asks where something could be lost. The bytes are the store's business.
 */
#ifndef SCREEN_FORMS_FILE_H
#define SCREEN_FORMS_FILE_H

#include "screen/app/app.h"
#include "store/session.h"

/* What is known of the file under the document; for file.c and file_open.c, others ask below. */
struct File {
    Session *session;
    Arena *arena;  /* of `source` */
    Source source; /* the text that the document was opened from, for keeping its comments at every save */
    bool has_source;
    bool fresh; /* the wall was never in a file: it counts as changed until it is saved */

    uint64_t kept_version; /* what the recovery copy holds */
    bool kept;             /* there is one, and it is ours */
    int64_t keep_at;       /* when it is to be written; 0: nothing is due */
    int64_t look_at;       /* when the file on disk is looked at again */
    RecoveryCopies copies; /* that waited at the opening, in `arena`: asked about one after the other */
    int copy;              /* the one asked about */
    bool asked;            /* about the file on disk: once for each time that it changed */

    bool leave_after_save;           /* leaving waits for the save to go through */
    void (*after_leaving)(App *app); /* what the wall is left for */
    char farewell[MESSAGE_MOST];
};

/* Knows of no file before one of the openings below. */
File *file_new(void);
void file_free(File *file);

/* Opens `path` and stands on its elevation, or asks first: recovery copies that wait, another editor. False, with what
 * is wrong with the file in `errs` (in `arena`), where it cannot be read; nothing has changed then. */
bool file_open(App *app, const char *path, Arena *arena, Errs *errs);

/* The same for a wall without a file of its own, read from the text at `path` (the sample). */
bool file_open_copy(App *app, const char *path, Arena *arena, Errs *errs);

/* A new wall, to be saved under `path` (NULL: asked at the first save). */
bool file_begin(App *app, const char *path, const Wall *wall, Err *err);

/* A wall that never had a file, out of the recovery copy at `path`, which is dropped once it is kept anew. */
bool file_take_up(App *app, const char *path, Arena *arena, Errs *errs);

/* Saves, asking for a name or before anything is written over. */
void file_save(App *app);
void file_save_as(App *app);

/* Saves under that name and goes on with that file. */
bool file_save_under(App *app, const char *path, bool over, Err *err);

/* Writes the recovery copy where there are changes. */
void file_keep(App *app);

/* Leaves, asking where there are changes. `then` is called when the wall is let go of. */
void file_leave(App *app, void (*then)(App *app));

/* Forgets the document and lets go of its file; the recovery copy stays. */
void file_end(App *app);

/* ---- what is due ---- */

/* The document has changed: a recovery copy is due in a while. */
void file_note_change(App *app);

/* The file on disk is looked at as soon as nothing lies over the wall. */
void file_look_soon(App *app);

/* Milliseconds until something is due; below 0: nothing is. */
int file_due_in(const App *app);

/* Keeps the copy and looks at the file on disk, each when its time has come; true where something is said or asked. */
bool file_do_due(App *app);

/* ---- what is known ---- */

/* NULL while the wall has no file of its own. */
const char *file_path(const App *app);
const char *file_base_name(const App *app);

/* What follows the file's name: ", saved", ", changed; open elsewhere"; "" without a file. */
void file_state_words(const App *app, char *out, size_t size);

/* What to say on standard error when all is over; "" says nothing. */
const char *file_farewell(const App *app);

#endif
