/*
 * What can be tried on the wall: start heights worth considering, widths and reveals near those written, reveals kept
 * by things at hand, and what more length of boards would buy. The choices and their reasons are worked out below; here
 * they become lines.
 */
#ifndef SCREEN_LISTS_TRIALS_H
#define SCREEN_LISTS_TRIALS_H

#include "screen/lists/trial.h"

void trials_starts(App *app);
void trials_widths(App *app);
void trials_spacers(App *app);
void trials_spending(App *app);

#endif
