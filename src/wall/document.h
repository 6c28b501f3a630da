/*
 * The inside of a Document: how a change is begun, checked and kept. For the files of wall/ that change something;
 * others call the functions of wall/edit.h.
 */
#ifndef WALL_DOCUMENT_H
#define WALL_DOCUMENT_H

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

#endif
