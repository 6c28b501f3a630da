/*
 * Trim worked out from the wall: each run of the wall file (`trim: runs:`) becomes strips, with what to rip them to,
 * how to cut their ends, and how long they are at the long and the short point. Strips lie on the planks, so lengths
 * count backing and thickness at every corner. It cuts nothing: fill/trim does, together with what was measured by
 * hand.
 *
 *   along a ceiling: its free edge level          round an opening                outside corner, from above
 *   ~~~~~~~~~~-------___  ceiling                 \______head______/              ________
 *   |              taper |                         |              |              |_______/|  two strips bevelled to
 *   +--------------------+  level                  |leg        leg|                     / |  45 degrees along their
 *                                                                                      |__|  length
 */
#ifndef TRADE_TRIM_RUNS_H
#define TRADE_TRIM_RUNS_H

#include "layout/layout.h"
#include "trade/trim_strip.h"
#include "trade/wood_part.h"
#include "wall/finding.h"

/* The strips of all runs, run by run, face by face, left to right. RULE_TRIM is added to `findings` (may be NULL) where
 * a strip does not fit, covers nothing, or has nowhere to go. */
TrimStrips trim_strips(Arena *arena, const Layout *layout, Findings *findings);

/* What of its face the strip covers; for a part of a casing the whole casing, opening and all. A strip that is scribed
 * counts with all its width, a corner of a miter with the line that goes on. */
WoodPart trim_strip_part(Arena *arena, const Layout *layout, const TrimStrip *strip);

/* What is to be cut from trim stock: the file's own pieces, then the strips at their long points, alike ones counted
 * together. */
TrimPieces trim_pieces(Arena *arena, const Layout *layout);

#endif
