/*
 * Pieces ticked as cut while they wait for the wall: one, all of a board, all of a face. What is ticked stays where it
 * was cut, whatever happens to the plan; it comes from the final plan alone, as what hangs does.
 */
#ifndef SCREEN_VIEWS_HANG_CUT_H
#define SCREEN_VIEWS_HANG_CUT_H

#include "screen/app/app.h"

typedef enum CutScope { CUT_THIS, CUT_THIS_BOARD, CUT_THIS_FACE } CutScope;

/* In the hanging view on top: ticks as cut what neither hangs nor is cut, as one step; where the piece shown alone is
 * asked for and is cut, it counts as not cut again. */
void hang_cut(App *app, CutScope scope);

#endif
