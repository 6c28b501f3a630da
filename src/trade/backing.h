/*
 * The sheets under the planks: they lie on all of the bare wall of a face that has planks, behind the gaps between
 * courses too, and are cut out with the planks at openings. Where the bare wall is, whether it has backing or not.
 */
#ifndef TRADE_BACKING_H
#define TRADE_BACKING_H

#include "trade/wood_part.h"

/* Where the backing of a face lies: on the bare wall, from floor to ceiling and side to side, less the grown openings.
 * None on a face without planks or without backing. */
void backing_parts(Arena *arena, const Layout *layout, int face, WoodParts *parts);

/* The bare wall of a face that has planks, in nm2, backed or not. */
Wide bare_area(Arena *arena, const Layout *layout, int face);

#endif
