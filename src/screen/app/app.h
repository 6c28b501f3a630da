/*
 * The editor: one document, what is worked out from it, a pile of layers, one loop. The lowest layer is the elevation;
 * forms, lists, questions, menu and help lie over it and are taken off by Esc. A layer is a View (a table of functions
 * in a file of its own) with its state. Views read the document through `app_wall`, name its parts by id, and change it
 * only through the named functions of wall/edit.h.
 *
 * To add a view: one file with its View, a push where an action opens it, a row in the action table.
 */
#ifndef SCREEN_APP_APP_H
#define SCREEN_APP_APP_H

#include "screen/app/action.h"
#include "screen/app/work.h"
#include "screen/term/grid.h"
#include "screen/term/term.h"
#include "store/session.h"
#include "wall/edit.h"

typedef struct App App;
typedef struct Layer Layer;

typedef struct View {
    unsigned places;                                       /* besides, a view may tell its places by `place` */
    unsigned (*place)(const App *app, const Layer *layer); /* NULL: `places` */
    /* Draws into `area`, the body between the head and the foot, and puts the grid's cursor on what has the focus. */
    void (*draw)(App *app, Layer *layer, Grid *grid, Rect area);
    /* A key before the action table sees it: true where it was taken. NULL: none is. */
    bool (*key)(App *app, Layer *layer, Key key);
    /* An action meant for this view: true where it was done. NULL: none is. */
    bool (*act)(App *app, Layer *layer, ActionId action);
    /* Pasted text; NULL: it is dropped and the person told. */
    void (*paste)(App *app, Layer *layer, const char *text);
    /* Asked to go by Esc: false where it stays (it may have asked something). NULL: it goes. */
    bool (*back)(App *app, Layer *layer);
    void (*finish)(void *state); /* NULL: there is nothing to free */
} View;

struct Layer {
    const View *view;
    void *state;
};

/* How the elevation is looked at. */
typedef struct Sight {
    bool rows;   /* one line a course; else in true proportion */
    bool away;   /* looked away from the reference course */
    bool whole;  /* the whole face at once */
    int closer;  /* steps nearer than the usual scale; below 0 farther */
    Length x, y; /* in the middle, when looked away */
} Sight;

enum { LAYERS_MOST = 12, MESSAGE_MOST = 512 };

struct App {
    Term *term;
    Grid *grid;
    bool plain_signs; /* ASCII though the terminal could do more */

    Session *session; /* NULL on the first screen */
    Arena *source_arena;
    Source source; /* the text that the document was opened from, for keeping its comments at every save */
    bool has_source;
    Document *document; /* NULL on the first screen */
    bool fresh;         /* the wall was never in a file: it counts as changed until it is saved */
    Work work;

    Arena *tried_arena;
    const Wall *tried;    /* shown in the document's place; NULL: the document is shown */
    const void *tried_by; /* state of the layer that shows it */
    uint64_t tried_count; /* of all that were shown */

    Layer layers[LAYERS_MOST];
    int depth;

    uint32_t face;    /* id of the face shown */
    uint32_t opening; /* id of the opening in focus, 0: the reference course is */
    Sight sight;

    char message[MESSAGE_MOST];
    int message_style;

    uint64_t kept_version; /* what the recovery copy holds */
    bool kept;             /* there is one, and it is ours */
    int64_t keep_at;       /* when it is to be written; 0: nothing is due */
    uint64_t seen_version;
    uint64_t taken_from;             /* version that the form taken last was taken into */
    int64_t look_at_file;            /* when the file on disk is looked at again */
    bool asked_about_file;           /* once for each time that it changed */
    bool hung_may_move;              /* the person was asked whether the start may change under what hangs */
    ActionId asked_action;           /* done when that is answered */
    bool leave_after_save;           /* leaving waits for the save to go through */
    void (*after_leaving)(App *app); /* what the wall is left for */
    void (*then)(App *app);          /* done at the end of the turn */

    int steps;       /* of a slice of work: as many as take some milliseconds */
    int64_t show_at; /* when the plan so far is shown next */

    bool dirty; /* the picture is no longer true */
    bool over;
    int status;                  /* exit status */
    char farewell[MESSAGE_MOST]; /* told on standard error when all is over; "" says nothing */
};

/* The terminal stays the caller's. */
App *app_new(Term *term);
void app_free(App *app);

/* Starts on `wall` (copied), whose text is `source` (may be NULL; its arena is taken over), under `session` (taken
 * over). */
void app_begin(App *app, Session *session, Arena *source_arena, const Source *source, const Wall *wall);

/* Forgets the document and lets go of its file; the recovery copy stays. */
void app_end(App *app);

/* One turn of the loop: something happens, or a slice of work is done, or the picture is painted. False when it is
 * over. */
bool app_turn(App *app);

/* Turns until it is over; the exit status. */
int app_run(App *app);

/* Paints what is to be seen now into the grid. */
void app_paint(App *app);

void app_push(App *app, const View *view, void *state);
void app_pop(App *app);
/* Takes the layer of that state off, wherever it lies; nothing where none does. */
void app_remove(App *app, const void *state);

/* Puts another layer at the very bottom in place of what is there. */
void app_ground(App *app, const View *view, void *state);

Layer *app_top(App *app);

/* The places of the layer on top. */
unsigned app_places(const App *app);

void app_say(App *app, int style, const char *format, ...) __attribute__((format(printf, 3, 4)));
void app_tell(App *app, const Err *err); /* what could not be done */

/* Shows `wall` (copied) in the document's place, as long as the layer of state `by` lies there or until another is
 * shown; NULL: the document again. The document itself is not touched. */
void app_try(App *app, const void *by, const Wall *wall);

/* The wall that is shown (the document's, or one that is tried), its layout and plan, never stale. The wall is NULL on
 * the first screen; the pointer dies at the next change. */
const Wall *app_wall(const App *app);
Work *app_work(App *app);

/* Whether something would be lost. */
bool app_changed(const App *app);

/* Index of the face shown; of the opening in focus, -1 where none is. */
int app_face_index(App *app);
int app_opening_index(App *app);

/* Does an action, wherever it comes from: a key, the menu. */
void app_do(App *app, ActionId action);

/* "the wall's unit" texts: a length as it is marked, with and without unit. */
const char *app_length(const App *app, Length value, char out[LENGTH_TEXT_MAX]);

#endif
