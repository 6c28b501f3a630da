/*
 * At the pile: a length, Enter, the next length, Enter; each board is on the pile at once, as one step, and at every
 * moment it is said how much is there, what the wall needs and what share of it that covers. A tone once typed stays
 * for the boards that follow; what to avoid is of one board alone.
 */
#ifndef SCREEN_VIEWS_TALLY_H
#define SCREEN_VIEWS_TALLY_H

#include "screen/app/app.h"

void tally_open(App *app);

#endif
