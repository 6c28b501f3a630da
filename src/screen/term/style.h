/*
 * How things look: the roles that a cell can play, the few inks that they are drawn in, and the glyphs, once in UTF-8
 * and once in plain ASCII on the same grid. It knows nothing of curses: a terminal asks here which colour and which
 * weight a style means. No meaning hangs on colour alone, so without colour everything can still be read.
 */
#ifndef SCREEN_TERM_STYLE_H
#define SCREEN_TERM_STYLE_H

#include <stdbool.h>
#include <stdint.h>

/* What can be laid on a cell. INK_NONE is the terminal's own background or foreground. */
typedef enum Ink {
    INK_NONE,
    INK_WOOD,      /* even courses */
    INK_WOOD_DARK, /* odd courses */
    INK_REFERENCE, /* the reference course */
    INK_SLIVER,    /* a strip that is too narrow; faults */
    INK_GOOD,
    INK_CAUTION,
    INK_ACCENT,
    INK_COUNT
} Ink;

/* Roles. From STYLE_MOSAIC up: two inks, see style_mosaic. */
typedef enum Style {
    STYLE_PLAIN,
    STYLE_DIM,
    STYLE_STRONG,
    STYLE_TITLE,  /* the line at the top */
    STYLE_LABEL,  /* words before a figure */
    STYLE_FIGURE, /* a number that a person looks for */
    STYLE_KEY,    /* a key in a hint */
    STYLE_CHOSEN, /* the line or opening in focus */
    STYLE_FIELD,  /* what is typed into */
    STYLE_FAULT,
    STYLE_CAUTION,
    STYLE_GOOD,
    STYLE_ACCENT,
    STYLE_FRAME, /* lines round panels */
    STYLE_MOSAIC /* the first of INK_COUNT x INK_COUNT */
} Style;

/* A cell of two inks: the glyph's own, and what shows through it. */
int style_mosaic(Ink front, Ink back);

typedef struct Look {
    int pair; /* 0 .. STYLE_PAIRS - 1; 0 is the terminal's own colours */
    bool bold, dim, reverse, underline;
} Look;

enum { STYLE_PAIRS = 16 };

/* How `style` is drawn where there is colour, and where there is none. A mosaic whose two inks have no pair of their
 * own is drawn in that of its front ink. */
Look style_look(int style, bool colour);

/* The colours of a pair for a terminal of `depth` colours (8, 16 or 256); -1 is the terminal's own. */
void style_pair(int pair, int depth, int *front, int *back);

/* Whether front over back has a pair, so that both can be seen in one cell. */
bool style_has_pair(Ink front, Ink back);

typedef enum Glyph {
    GLYPH_LEVEL,    /* horizontal line */
    GLYPH_UPRIGHT,  /* vertical line */
    GLYPH_TOP_LEFT, /* corners of a frame */
    GLYPH_TOP_RIGHT,
    GLYPH_BOTTOM_LEFT,
    GLYPH_BOTTOM_RIGHT,
    GLYPH_JOINT,    /* two pieces meet */
    GLYPH_END_LEFT, /* a segment begins */
    GLYPH_END_RIGHT,
    GLYPH_PLANK,        /* along a piece */
    GLYPH_PLANK_TOP,    /* a piece of which the lower side is cut away here */
    GLYPH_PLANK_BOTTOM, /* the upper side */
    GLYPH_HOLE,         /* cut in its middle */
    GLYPH_BARE,         /* nothing hangs here */
    GLYPH_BOX,          /* an opening too small to draw */
    GLYPH_STUD,
    GLYPH_POINT_LEFT,
    GLYPH_POINT_RIGHT,
    GLYPH_POINT_UP,
    GLYPH_POINT_DOWN,
    GLYPH_HERE, /* the reference course */
    GLYPH_DOT,  /* between words */
    GLYPH_TO,   /* from one figure to the other */
    GLYPH_MORE, /* text was cut here */
    GLYPH_TICK,
    GLYPH_CHOSEN, /* before the line in focus of a list, a menu, a question */
    GLYPH_COUNT
} Glyph;

uint32_t style_glyph(Glyph glyph, bool ascii);

#endif
