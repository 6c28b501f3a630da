/*
 * Planks that are ripped to follow a floor or a ceiling, and how to be spared that: where a strip of trim lies along
 * it, one straight rip may do for the whole course, if the strip hides the gap that is left.
 *
 *      ~~~~~~~~~~~~~~~~~~~~  ceiling       +------+ strip
 *      ...gap, widest here..               |      |
 *      ====================  straight rip  | over |  at least OVER_LEAST of the plank lies behind the strip
 *      |  plank           |                +------+
 */
#ifndef TRADE_SCRIBE_H
#define TRADE_SCRIBE_H

#include "layout/layout.h"
#include "trade/trim_strip.h"

/* How a scribed edge is cut; NULL where no course of the face has one. */
const char *scribe_words(const Layout *layout, int face);

typedef struct StraightRip {
    bool offered;
    bool upper;  /* along the ceiling */
    Length rip;  /* the plank's whole width, a mark of the wall */
    Length face; /* the same of its face, without the lap */
    Length gap;  /* to the ceiling or floor, where it is widest */
} StraightRip;

/* The straight rip that spares a taper or a scribe of a course, never one below the narrowest strip worth hanging;
 * `strips` are those of the layout (trim_strips). */
StraightRip scribe_straight(const Layout *layout, const TrimStrips *strips, int face, const Course *course);

/* "Or rip all of it straight to 2 3/8 in: the trim along the ceiling hides the gap of up to 7/16 in."; NULL where that
 * is not offered. */
const char *scribe_straight_words(Arena *arena, const Layout *layout, const TrimStrips *strips, int face,
                                  const Course *course);

#endif
