/*
 * Saw settings for planks that end under a rake: one angle for each straight stretch of floor or ceiling steeper than
 * 1 in 12, whatever course it cuts. Degrees are for setting a saw; no length comes from them.
 */
#ifndef TRADE_RAKES_H
#define TRADE_RAKES_H

#include "layout/layout.h"

/* One stretch a sentence: how many degrees off square the saw is set for every plank end that it cuts, and the angle
 * at the plank's edge. NULL where the face has no rake. */
const char *rake_words(Arena *arena, const Layout *layout, int face);

#endif
