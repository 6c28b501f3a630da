/*
 * Where the parts and the limits of a face lie, as the two ways of drawing it ask. It draws nothing.
 */
#ifndef SCREEN_VIEWS_SHAPE_H
#define SCREEN_VIEWS_SHAPE_H

#include "layout/layout.h"

/* Whether `part` of a slab is a strip too narrow to hang at x: cut, not by a rake, and below `least`. */
bool shape_narrow(const Slab *slab, const Part *part, Length x, Length least);

/* y at x of the straight line from (left, y_left) to (right, y_right). */
Length shape_between(Length left, Length right, Length y_left, Length y_right, Length x);

/* The lowest and the highest y of the face's limits. */
void shape_reach(const FaceLayout *face, Length *low, Length *high);

#endif
