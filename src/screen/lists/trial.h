/*
 * Choices that are tried as one moves over them: the wall is laid out with the choice in focus and shown above (in a
 * wide window beside) the list, and the document is left alone until Enter takes it, as one step. Esc leaves everything
 * as it was. It knows nothing of where choices come from.
 */
#ifndef SCREEN_LISTS_TRIAL_H
#define SCREEN_LISTS_TRIAL_H

#include "screen/app/app.h"

/* One choice: what it makes of the wall, and its words, which live in the trial's arena. */
typedef struct TrialLine {
    Length start;
    Length change; /* added to the width of each plank */
    Length reveal;
    bool spends; /* what may be spent is tried, and nothing else of these */
    int64_t spend;
    bool spend_all;
    bool known;        /* its plan was seen */
    const char *left;  /* begins the line */
    const char *right; /* ends it where there is room */
    const char *whole; /* all there is to say, shown below the list */
} TrialLine;

typedef struct TrialLines {
    TrialLine *at;
    int count;
    int room;
} TrialLines;

typedef struct Trial {
    App *app; /* that shows it; NULL before it is opened */
    const char *title;
    const char *step;    /* the undo step's name */
    const char *nothing; /* why there is no line */
    Arena *arena;
    TrialLines lines;
    int focus, top;
    void (*learn)(App *app, struct Trial *trial); /* adds to the line in focus what its plan shows; may be NULL */
} Trial;

/* Fill its arena and lines, set the focus, then open it. */
Trial *trial_new(const char *title, const char *step);

/* Opens it and tries the line in focus; it is freed with its layer. */
void trial_open(App *app, Trial *trial);

#endif
