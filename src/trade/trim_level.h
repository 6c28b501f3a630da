/*
 * Strips along floor and ceiling. For trim_runs.c alone.
 */
#ifndef TRADE_TRIM_LEVEL_H
#define TRADE_TRIM_LEVEL_H

#include "layout/layout.h"
#include "trade/trim_strip.h"

/* Height of the bare floor or ceiling at x; at a step the value right of it. */
Length bare_floor(const Face *face, Length x);
Length bare_ceiling(const Face *face, Length x);

/* Where a side's bare edge stands at a height, as x. */
Length bare_left(const Face *face, Length y);
Length bare_right(const Face *face, Length y);

/* Whether the run is a casing that is to go round the opening. */
bool run_cases(const TrimRun *run, const Opening *opening);

Length run_thickness(const Wall *wall, int run);

/* What planks and backing stand out of the bare wall of a face. */
Length stack_out(const Wall *wall, int face);

/* Adds the strips of a run along the floor or the ceiling of one face. */
void level_strips(Arena *arena, const Layout *layout, int run, int face, TrimStrips *strips);

/* The free edge of the floor's (ceiling's) strip nearest to x, or the bare floor (ceiling) where there is none. */
Length over_floor_trim(const Layout *layout, const TrimStrips *strips, int face, Length x);
Length under_ceiling_trim(const Layout *layout, const TrimStrips *strips, int face, Length x);

#endif
