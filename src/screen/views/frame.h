/*
 * What stands in sight whatever is done: the line at the top, the figures of the wall, the line that answers, the
 * hints. It shows; it decides nothing.
 */
#ifndef SCREEN_VIEWS_FRAME_H
#define SCREEN_VIEWS_FRAME_H

#include "screen/app/app.h"

/* Title and figures at the top of the grid; returns how many rows they took. */
int frame_head(App *app, Grid *grid);

/* Message and hints at the bottom; returns how many rows they took. */
int frame_foot(App *app, Grid *grid);

#endif
