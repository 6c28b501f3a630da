/*
 * The editor's dealings with the file: opening, saving, the recovery copy, the look at what is on disk, leaving. Each
 * asks where something could be lost. The bytes are the store's business.
 */
#ifndef SCREEN_FORMS_FILE_H
#define SCREEN_FORMS_FILE_H

#include "screen/app/app.h"

/* Opens `path` and stands on its elevation, or asks first: a newer recovery copy, another editor. False, with what is
 * wrong with the file in `errs` (in `arena`), where it cannot be read; nothing has changed then. */
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

/* Writes the recovery copy where there are changes. */
void file_keep(App *app);

/* Looks whether the file on disk has changed, and asks what to do. */
void file_look(App *app);

/* Leaves, asking where there are changes. `then` is called when the wall is let go of: NULL ends the program. */
void file_leave(App *app, void (*then)(App *app));

#endif
