/*
 * The figures that change with every nudge: rips, least strip, courses, pieces, boards, faults. It shows; it decides
 * nothing.
 */
#ifndef SCREEN_VIEWS_FIGURES_H
#define SCREEN_VIEWS_FIGURES_H

#include "screen/app/app.h"

/* Draws as many lines as `area` has, the weightiest first. */
void figures_draw(App *app, Grid *grid, Rect area);

/* How much a rip is told in: "1 7/8 > 1 3/4, scribe", "1 7/8 > 1 3/4 ~", "1 7/8~1 3/4". A taper has the arrow alone. */
typedef enum RipWords { RIP_WORDS, RIP_SIGNS, RIP_TIGHT } RipWords;

/* "1 7/8", "full", "1 7/8 > 1 3/4, taper", "raked": a course's rip. A course that only rakes cut is not ripped. */
void figures_rip(const App *app, const Course *course, RipWords words, char *out, size_t size);

/* The same by signs, tight where that is wider than `cells`: a figure is not cut before its spaces are gone. */
void figures_rip_within(const App *app, const Course *course, int cells, char *out, size_t size);

#endif
