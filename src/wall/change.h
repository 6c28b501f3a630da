/*
 * How a change of a document is begun, checked and kept (in document.c). For the files of wall/ that change something;
 * others call the functions of wall/edit.h.
 */
#ifndef WALL_CHANGE_H
#define WALL_CHANGE_H

#include "base/arena.h"
#include "base/err.h"
#include "base/utf8.h"
#include "wall/wall.h"

typedef struct Document Document; /* wall/document.h */

enum { STEP_NAME_MOST = 192 };

/* What is nudged, so that steps of one kind that follow each other become one. */
typedef struct Nudged {
    enum { NUDGED_NOTHING, NUDGED_START, NUDGED_OPENING } kind;
    uint32_t id;
} Nudged;

/* A copy of the wall to change. It may be made to point at the caller's memory, which only has to last until the
 * commit. The next begin or commit takes it back. */
Wall *document_begin(Document *document);

/* Makes what document_begin gave, changed, the wall: one step of this name. Where it equals the wall as it is, nothing
 * happens. Refused with the first problem that wall_check finds. Nudges of the same thing that follow each other become
 * one; `name` then has to speak of them all, from document_before_nudges on. */
bool document_commit(Document *document, Nudged nudged, const char *name, Err *err);

/* The wall before the nudges that this one would join; the wall as it is where there are none. */
const Wall *document_before_nudges(const Document *document, Nudged nudged);

/* As document_commit of what is no nudge, with the name as a format. */
bool document_step(Document *document, Err *err, const char *format, ...) __attribute__((format(printf, 3, 4)));

/* Refuses a change before it is tried; returns false. */
bool document_refuse(Err *err, const char *place, const char *text);

/* A user's name within a step's name: for "%.*s", cut where it is long. */
#define STEP_NAME(text) (int)utf8_prefix((text), 40), (text)

/* Takes item `index` out of a list, whatever its items are. */
void document_take_out(void *at, int *count, int index, size_t size);
#define TAKE_OUT(list, index) document_take_out((list)->at, &(list)->count, (index), sizeof *(list)->at)

/* Memory that lasts until the commit: for the texts and lists of the wall that document_begin gave. */
Arena *document_arena(Document *document);

/* Puts an item into a list of that wall at `index`, whatever its items are. */
void document_move_last(void *at, int count, int index, size_t size);
#define PUT_IN(document, list, index, item)                  \
    (*arena_push(document_arena(document), (list)) = (item), \
     document_move_last((list)->at, (list)->count, (index), sizeof *(list)->at))

#endif
