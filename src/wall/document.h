/*
 * The inside of a Document: how a change is begun, checked and kept. For the files of wall/ that change something;
 * others call the functions of wall/edit.h.
 */
#ifndef WALL_DOCUMENT_H
#define WALL_DOCUMENT_H

#include "base/utf8.h"
#include "wall/edit.h"

enum { STEP_NAME_MOST = 192 };

/* What is nudged, so that steps of one kind that follow each other become one. */
typedef struct Run {
    enum { RUN_NONE, RUN_START, RUN_OPENING } kind;
    uint32_t id;
} Run;

/* A copy of the wall to change. It may be made to point at the caller's memory, which only has to last until the
 * commit. The next begin or commit takes it back. */
Wall *document_begin(Document *document);

/* Makes what document_begin gave, changed, the wall: one step of this name. Where it equals the wall as it is, nothing
 * happens. Refused with the first problem that wall_check finds. Steps of the same run become one; `name` then has to
 * speak of the whole run, from document_before_run on. */
bool document_commit(Document *document, Run run, const char *name, Err *err);

/* The wall before the run that `run` would go on with; the wall as it is, where there is none to go on with. */
const Wall *document_before_run(const Document *document, Run run);

/* As document_commit, of no run, with the name as a format. */
bool document_step(Document *document, Err *err, const char *format, ...) __attribute__((format(printf, 3, 4)));

/* Refuses a change before it is tried; returns false. */
bool document_refuse(Err *err, const char *place, const char *text);

/* A user's name within a step's name: for "%.*s", cut where it is long. */
#define STEP_NAME(text) (int)utf8_prefix((text), 40), (text)

/* Takes item `index` out of a list, whatever its items are. */
void document_take_out(void *at, int *count, int index, size_t size);
#define TAKE_OUT(list, index) document_take_out((list)->at, &(list)->count, (index), sizeof *(list)->at)

/* Moves the last of `count` items to `index`; `spare` has room for one. */
void document_move_last(void *at, int count, int index, size_t size, void *spare);

#endif
