/*
 * The sheets under the planks: they lie on all of the bare wall of a face that has planks, behind the gaps between
 * courses too, and are cut out with the planks at openings. Where the bare wall is, whether it has backing or not.
 */
#ifndef TRADE_BACKING_H
#define TRADE_BACKING_H

#include "trade/wood_part.h"

/* The bare wall of a face that has planks, from floor to ceiling and side to side, less the grown openings: where its
 * backing lies, if it has some. None on a face without planks. */
void bare_parts(Arena *arena, const Layout *layout, int face, WoodParts *parts);

/* The same where the face has backing; else none. */
void backing_parts(Arena *arena, const Layout *layout, int face, WoodParts *parts);

/* nm2. */
Wide bare_area(Arena *arena, const Layout *layout, int face);

#endif
