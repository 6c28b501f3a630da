/*
 * A terminal as the editor sees it: it has a size, shows a grid, and tells what happens. Two kinds are made: the real
 * one over curses (term_curses.c, the only file that knows curses), and one in memory that is fed keys and keeps the
 * pictures (tests/support/term_memory.c), so that the same loop runs in a test. Nothing here knows what is shown or
 * what a key does.
 */
#ifndef SCREEN_TERM_TERM_H
#define SCREEN_TERM_TERM_H

#include "base/err.h"
#include "screen/term/grid.h"
#include "screen/term/key.h"

typedef enum HappeningKind {
    HAPPENED_NOTHING, /* the time was up, or nothing waits */
    HAPPENED_KEY,
    HAPPENED_RESIZE,  /* ask for the size again */
    HAPPENED_RESUME,  /* back from being stopped: everything must be drawn anew */
    HAPPENED_SUSPEND, /* asked from outside to stop for a while */
    HAPPENED_STOP,    /* asked from outside to end */
    HAPPENED_GONE     /* nobody is there any more */
} HappeningKind;

typedef struct Happening {
    HappeningKind kind;
    Key key;          /* HAPPENED_KEY */
    const char *text; /* what was pasted, with PRESS_PASTE; dies at the next wait */
} Happening;

typedef struct Term Term;
struct Term {
    bool utf8; /* UTF-8 reaches the person's eyes whole */
    bool colour;

    void (*size)(Term *term, int *columns, int *rows);

    /* What happens next, within `milliseconds` (0: only what waits already; below 0: however long it takes). */
    Happening (*wait)(Term *term, int milliseconds);

    void (*show)(Term *term, const Grid *grid);

    /* A clock that only goes forward, in milliseconds. */
    int64_t (*now)(Term *term);

    /* Gives the terminal back, stops the program until it is called again, takes the terminal. */
    void (*suspend)(Term *term);

    /* The next show draws everything, whatever was there. */
    void (*redraw)(Term *term);

    /* Gives the terminal back for good and frees. */
    void (*finish)(Term *term);
};

/* The real one. NULL, with the reason and what to do instead in `err`, where standard input and output are no terminal
 * that can be drawn on. The locale is set already. */
Term *term_curses(Err *err);

/* What a crash or a panic says on the way out, below its own line: where the recovery copy lies. At most 511 bytes are
 * kept; "" says nothing. Safe to call at any time. */
void term_last_words(const char *words);

/* What is done at a broken invariant of our own, when the terminal is given back, before the last words: it may change
 * them. NULL: nothing. */
void term_last_act(void (*act)(void *with), void *with);

#endif
