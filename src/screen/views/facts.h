/*
 * Facts under one another, each with a short label before it, folded to the room there is and scrolled where they are
 * more. For views that are read: the piece to be hung, seasons and materials, cautions. It knows nothing of what they
 * say.
 */
#ifndef SCREEN_VIEWS_FACTS_H
#define SCREEN_VIEWS_FACTS_H

#include "base/arena.h"
#include "screen/term/grid.h"

typedef struct Fact {
    const char *label; /* "" goes on with the one before */
    const char *text;
    int style; /* of the text */
} Fact;

typedef struct Facts {
    Fact *at;
    int count;
    int room;
    int label_cells; /* room before the texts, the gap counted */
} Facts;

/* A text that is NULL or "" is no fact. */
void facts_add(Arena *arena, Facts *facts, const char *label, int style, const char *text);

/* An empty line. */
void facts_gap(Arena *arena, Facts *facts);

/* Draws from line `*top` on, which is brought back where it is beyond the last page; returns the lines there are. */
int facts_draw(Grid *grid, Rect area, const Facts *facts, int *top);

#endif
