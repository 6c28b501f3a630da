/*
 * A list to choose from, laid over the elevation: findings, openings, boards, files, sheets. What a list holds and does
 * is a ListKind; the list knows how to walk through it and how to show it. `moved` lets a list show on the elevation
 * what the line in focus is about; only choosing a line stays there.
 */
#ifndef SCREEN_LISTS_LIST_H
#define SCREEN_LISTS_LIST_H

#include "screen/app/app.h"

typedef struct List List;

typedef struct ListKind {
    const char *title;
    const char *nothing; /* said where there is no line */
    unsigned places;     /* PLACE_LIST and more */
    int (*count)(App *app, const List *list);
    /* Writes line `index`: `left` begins it, `right` ends it (may stay empty). */
    void (*line)(App *app, const List *list, int index, Text *left, Text *right);
    /* Writes all of a line that may be cut, shown below; NULL: none. */
    void (*whole)(App *app, const List *list, int index, Text *out);
    int (*style)(App *app, const List *list, int index); /* NULL: plain */
    void (*choose)(App *app, List *list, int index);     /* Enter */
    void (*moved)(App *app, List *list, int index);      /* NULL: nothing follows the focus */
    void (*add)(App *app, List *list, int index);        /* NULL: there is no adding; index -1 where empty */
    void (*remove)(App *app, List *list, int index);     /* NULL: there is no removing */
    bool low; /* lies in the lower half, so that the wall above it stays in sight */
} ListKind;

struct List {
    const ListKind *kind;
    Arena *arena; /* for what the kind keeps */
    void *held;   /* the kind's own */
    int focus;
    int top;
    /* Where one stood when it was opened: Esc goes back there, unless the wall was changed meanwhile. */
    Focus before;
    uint64_t version;
};

/* Opens it; the arena, and all in it, is freed with its layer. */
List *list_open(App *app, const ListKind *kind);

/* The same as the lowest layer of all: Esc does not take it off. */
List *list_ground(App *app, const ListKind *kind);

/* In the list on top, behind the line in focus and that line. */
void list_add_line(App *app);
void list_remove_line(App *app);

#endif
