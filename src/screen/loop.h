/*
 * The loop of the editor. A turn takes what happens, one thing at a time; nothing is painted while keys wait, so the
 * picture never lags behind the finger. When nothing waits the picture is painted; when the picture is true the boards
 * are worked on, a few milliseconds at a time; when that is done too, the loop sleeps until the file is due (its
 * recovery copy, a look at it on disk).
 *
 *     key ──> top layer's key ──> action ──> do ──> edit_... ──> version ──> picture no longer true, copy due
 */
#ifndef SCREEN_LOOP_H
#define SCREEN_LOOP_H

#include "screen/app/app.h"

typedef struct Loop {
    App *app;
    bool dirty;            /* the picture is no longer true */
    uint64_t seen_version; /* of the document, at the end of the last turn */
    int steps;             /* of a slice of work: as many as take some milliseconds */
    int64_t show_at;       /* when the plan so far is shown next */
} Loop;

/* The editor over `term`, which stays the caller's: with no document and no layer yet. */
Loop *loop_new(Term *term);
void loop_free(Loop *loop);

/* One turn: something happens, or a slice of work is done, or the picture is painted. False when it is over. */
bool loop_turn(Loop *loop);

/* Paints what is to be seen now and shows it. */
void loop_paint(Loop *loop);

#endif
