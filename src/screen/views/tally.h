/*
 * At the pile: a length, Enter, the next length, Enter; each board is on the pile at once, as one step, and at every
 * moment it is said how much is there, what the wall needs and what share of it that covers. A tone once typed stays
 * for the boards that follow; what to avoid is of one board alone.
 */
#ifndef SCREEN_VIEWS_TALLY_H
#define SCREEN_VIEWS_TALLY_H

#include "screen/app/app.h"

void tally_open(App *app);

/* In the tally on top: puts down the board that is typed; goes on to the next field. */
void tally_put_down(App *app);
void tally_next_field(App *app);

#endif
