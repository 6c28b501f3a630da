/*
 * What every part of the editor works on: one document and what is worked out from it, what is in focus, the pile of
 * layers, the line that answers. It knows no view, no file and no loop; what a part keeps for itself stands in that
 * part. Views read the document through `app_wall`, name its parts by id, and change it only through the named
 * functions of wall/edit.h.
 */
#ifndef SCREEN_APP_APP_H
#define SCREEN_APP_APP_H

#include "screen/app/action.h"
#include "screen/app/layers.h"
#include "screen/app/work.h"
#include "screen/term/term.h"
#include "wall/edit.h"

typedef struct File File; /* forms/file.h */

/* How the elevation is looked at. */
typedef struct Sight {
    bool rows;   /* one line a course; else in true proportion */
    bool away;   /* looked away from the reference course */
    bool whole;  /* the whole face at once */
    int closer;  /* steps nearer than the usual scale; below 0 farther */
    Length x, y; /* in the middle, when looked away */
} Sight;

/* What of the wall is in focus. */
typedef struct Focus {
    uint32_t face;    /* id of the face shown */
    uint32_t opening; /* id of the opening in focus, 0: the reference course is */
    Sight sight;
} Focus;

/* A wall shown in the document's place. */
typedef struct Tried {
    Arena *arena;
    const Wall *wall; /* NULL: the document is shown */
    uint64_t count;   /* of all that were shown */
} Tried;

enum { MESSAGE_MOST = 512 };

struct App {
    Term *term;
    Grid *grid;         /* the picture */
    bool plain_signs;   /* ASCII though the terminal could do more */
    File *file;         /* what lies under the document */
    Document *document; /* NULL on the first screen */
    Tried tried;
    Work work;
    Layers layers;
    Focus focus;
    char message[MESSAGE_MOST]; /* until the next key */
    int message_style;

    /* Pending: the loop does them when no view is at work any more, and sets them back before it does. */
    ActionId wanted;
    void (*then)(App *app);

    void (*stand)(App *app); /* lays the elevation at the bottom; handed in, since views stand above */
    bool over;               /* the program ends */
};

/* Without a document, without a layer. The terminal stays the caller's. */
App *app_new(Term *term);
void app_free(App *app); /* app_end first */

/* Begins with `wall` (copied), its first face in focus. */
void app_begin(App *app, const Wall *wall);

/* Forgets the document. */
void app_end(App *app);

void app_say(App *app, int style, const char *format, ...) __attribute__((format(printf, 3, 4)));
void app_tell(App *app, const Err *err); /* what could not be done */

/* Shows `wall` (copied) in the document's place until another is shown; NULL: the document again. The document itself
 * is not touched. */
void app_try(App *app, const Wall *wall);

/* The wall that is shown (the document's, or one that is tried), its layout and plan, never stale. The wall is NULL on
 * the first screen; the pointer dies at the next change. */
const Wall *app_wall(const App *app);
Work *app_work(App *app);

/* The same, before its job is made. */
Work *app_work_begun(App *app);

/* Index of the face shown; of the opening in focus, -1 where none is. */
int app_face_index(App *app);
int app_opening_index(App *app);

/* A length as it is marked on the wall, without unit. */
const char *app_length(const App *app, Length value, char out[LENGTH_TEXT_MAX]);

#endif
