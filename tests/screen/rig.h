/*
 * The editor over a terminal in memory, on a wall built here: two faces, a window, two outlets. A test presses keys and
 * looks at what is to be seen; time passes only where the test lets it.
 */
#ifndef TESTS_SCREEN_RIG_H
#define TESTS_SCREEN_RIG_H

#include "screen/loop.h"
#include "support/term_memory.h"

typedef struct Rig {
    Term *term;
    Loop *loop;
    App *app;        /* the loop's */
    Text picture;    /* what is to be seen now, as lines */
    char folder[64]; /* of this rig alone: the state folder, and room for files */
    bool running;
} Rig;

/* A wall without a file of its own; stands on the elevation. */
Rig *rig_new(int columns, int rows);

/* The same over a file in the rig's folder, opened as the program opens it. */
Rig *rig_on_file(int columns, int rows);
/* On a file of this text. */
Rig *rig_on_text(int columns, int rows, const char *text);
void rig_free(Rig *rig);

/* Lets the editor work and paint until it has nothing to do. */
void rig_settle(Rig *rig);

void rig_key(Rig *rig, Key key);
void rig_keys(Rig *rig, Key key, int times);
void rig_type(Rig *rig, const char *text);
void rig_pass(Rig *rig, int milliseconds);

/* Whether the picture holds the words. */
bool rig_shows(const Rig *rig, const char *words);

/* For unit tests, which include support/test.h. */
#define assert_shows(rig, words)                                                  \
    do {                                                                          \
        if (!rig_shows(rig, words))                                               \
            FAIL("\"%s\" is not to be seen:\n%s", (words), (rig)->picture.bytes); \
    } while (0)
#define assert_hides(rig, words)                                                    \
    do {                                                                            \
        if (rig_shows(rig, words))                                                  \
            FAIL("\"%s\" is still to be seen:\n%s", (words), (rig)->picture.bytes); \
    } while (0)

/* The wall that the rig stands on. */
Wall *rig_wall(Arena *arena);

#endif
