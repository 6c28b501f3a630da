/*
 * The wall under the editor: as it is, all that it was (undo) and all that was undone (redo), without limit, as whole
 * snapshots; and what it was when last saved. Who changes it calls the functions of wall/edit.h.
 */
#ifndef WALL_DOCUMENT_H
#define WALL_DOCUMENT_H

#include "wall/wall.h"

typedef struct Document Document;

/* Takes a deep copy of `wall`; the document counts as saved. */
Document *document_new(const Wall *wall);
void document_free(Document *document);

/* The wall as it is; the pointer dies at the next change, undo or redo. */
const Wall *document_wall(const Document *document);

/* Counts up with every change, undo and redo: what was computed for another number is stale. */
uint64_t document_version(const Document *document);

bool document_changed(const Document *document); /* differs from the saved wall */
void document_mark_saved(Document *document);

/* The name of the step that would be undone ("raise the reference course 1/2 in"), or NULL. */
const char *document_undo_name(const Document *document);
const char *document_redo_name(const Document *document);
bool document_undo(Document *document);
bool document_redo(Document *document);

/* Ends a run of nudges, so that the next nudge starts a step of its own. */
void document_end_run(Document *document);

#endif
