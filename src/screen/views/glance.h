/*
 * What the trade works out of the wall, to be read: how the planks move through the year, what the wall takes, and
 * every fault and caution in full. The figures come from below; here they are put under one another.
 */
#ifndef SCREEN_VIEWS_GLANCE_H
#define SCREEN_VIEWS_GLANCE_H

#include "screen/app/app.h"

void glance_seasons_and_bill(App *app);
void glance_cautions(App *app);

#endif
