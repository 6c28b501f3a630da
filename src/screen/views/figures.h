/*
 * The figures that change with every nudge: rips, least strip, courses, pieces, boards, faults. It shows; it decides
 * nothing.
 */
#ifndef SCREEN_VIEWS_FIGURES_H
#define SCREEN_VIEWS_FIGURES_H

#include "screen/app/app.h"

/* Draws as many lines as `area` has, the weightiest first. */
void figures_draw(App *app, Grid *grid, Rect area);

/* A course's rip: "1 7/8", "full", "1 7/8 > 1 3/4", "1 7/8 > 1 3/4 ~" for a scribe, "raked" where only rakes cut the
 * course; without spaces where that would be wider than `cells`. */
void figures_rip_within(const App *app, const Course *course, int cells, char *out, size_t size);

#endif
