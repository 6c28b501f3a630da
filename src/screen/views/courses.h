/*
 * The face course by course, a line each: marks at the left, rips at the right, joints to scale along it. It draws what
 * layout and fill worked out and decides nothing.
 */
#ifndef SCREEN_VIEWS_COURSES_H
#define SCREEN_VIEWS_COURSES_H

#include "screen/app/app.h"

void courses_draw(App *app, Grid *grid, Rect area);

#endif
