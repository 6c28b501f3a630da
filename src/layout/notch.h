/*
 * How deep the notch of a cutout is. Knows nothing of what is told of it.
 */
#ifndef LAYOUT_NOTCH_H
#define LAYOUT_NOTCH_H

#include "layout/layout.h"

/* Common practice: less is planed off, not cut out. */
#define NOTCH_LEAST (LENGTH_INCH / 8)

/* How far the cutout reaches in, at its deepest, from the sides of the outline that it breaks: at a corner the lesser
 * of both ways; NOTCH_LEAST for a hole. `outline` is that of the piece from `left` to `right`, which the cutout is
 * of. */
Length notch_depth(const Cutout *cut, const Points *outline, Length left, Length right);

#endif
