/*
 * The face as one looks at it, in two ways that one key swaps: in true proportion, and one line a course. Both draw
 * what layout and fill worked out and decide nothing.
 */
#ifndef SCREEN_VIEWS_ELEVATION_H
#define SCREEN_VIEWS_ELEVATION_H

#include "screen/app/app.h"

/* The lowest layer: the elevation, its focus (the reference course or an opening), its moves. Has no state. */
extern const View elevation_view;

/* What hangs already belongs to the start, widths and reveal that it was hung with: changing them is asked about, once.
 * True: do it now; else `action` is done when the answer allows it. */
bool elevation_may_move(App *app, ActionId action);

/* In true proportion: courses as bands of two woods in turn, joints as notches, openings left open. */
void drawn_draw(App *app, Grid *grid, Rect area);

/* One line a course, marks at the left, rips at the right, joints to scale along it. */
void rows_draw(App *app, Grid *grid, Rect area);

/* Whether `part` of a slab is a strip too narrow to hang at x: cut, not by a rake, and below `least`. */
bool elevation_narrow(const Slab *slab, const Part *part, Length x, Length least);

/* y at x of the straight line from (left, y_left) to (right, y_right). */
Length elevation_between(Length left, Length right, Length y_left, Length y_right, Length x);

/* The lowest and the highest y of the face's limits. */
void elevation_reach(const FaceLayout *face, Length *low, Length *high);

#endif
