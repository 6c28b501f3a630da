/*
 * The face in true proportion: courses as bands of two woods in turn, joints as notches, openings left open. It draws
 * what layout and fill worked out and decides nothing.
 */
#ifndef SCREEN_VIEWS_DRAWN_H
#define SCREEN_VIEWS_DRAWN_H

#include "screen/app/app.h"

void drawn_draw(App *app, Grid *grid, Rect area);

#endif
