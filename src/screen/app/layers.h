/*
 * What lies over what: the elevation or the first screen at the bottom, and over it forms, lists, questions, menu and
 * help, which Esc takes off again. A layer is a View, the functions of one kind of layer, with the state of this one.
 * Nothing here knows what a view shows.
 *
 * A view may take itself off, or put another over itself, in any of its functions but `draw`; its state is freed then.
 */
#ifndef SCREEN_APP_LAYERS_H
#define SCREEN_APP_LAYERS_H

#include "screen/term/grid.h"
#include "screen/term/key.h"

typedef struct App App;

typedef struct View {
    unsigned places;                                      /* where one is while it is on top: see action.h */
    unsigned (*place)(const App *app, const void *state); /* the same where it varies; NULL: `places` */
    /* Draws into `area`, the body between the head and the foot, and puts the grid's cursor on what has the focus. */
    void (*draw)(App *app, void *state, Grid *grid, Rect area);
    /* A key before the actions see it: true where it was taken. NULL: none is. */
    bool (*key)(App *app, void *state, Key key);
    /* Pasted text; NULL: it is dropped and the person told. */
    void (*paste)(App *app, void *state, const char *text);
    /* To the next line (1) or the one before (-1); NULL: there are no lines. */
    void (*step)(App *app, void *state, int by);
    /* Takes the line in focus; NULL: there is nothing to take. */
    void (*choose)(App *app, void *state);
    /* Asked to go by Esc: false where it stays (it may have asked something). NULL: it goes. */
    bool (*back)(App *app, void *state);
    void (*finish)(void *state); /* NULL: there is nothing to free */
} View;

typedef struct Layer {
    const View *view;
    void *state;
} Layer;

enum { LAYERS_MOST = 12 };

typedef struct Layers {
    Layer at[LAYERS_MOST]; /* the lowest first */
    int depth;
} Layers;

/* The state is the layer's from here on. */
void layers_push(Layers *layers, const View *view, void *state);

void layers_pop(Layers *layers);

/* Takes the layer of that state off, wherever it lies; nothing where none does. */
void layers_remove(Layers *layers, const void *state);

/* Puts another layer at the very bottom in place of what is there. */
void layers_ground(Layers *layers, const View *view, void *state);

/* There is at least one. */
Layer *layers_top(Layers *layers);

/* The state of the layer on top, which must be of that view. */
void *layers_state(Layers *layers, const View *view);

/* Where one is: the places of the layer on top. */
unsigned layers_places(const Layers *layers, const App *app);

#endif
