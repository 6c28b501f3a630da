/*
 * Wood near fire: planks, the backing under them, and the trim that is worked out from the wall. Model-code figures for
 * very different things, never mixed: a masonry fireplace (`fireplace`), where trim on the masonry's front has a
 * published distance; a stove, insert or factory-built fireplace (`stove`), which goes by its own manual; a stovepipe
 * or flue (`pipe`). Never a clearance to go ahead.
 */
#ifndef TRADE_CAUTION_FIRE_H
#define TRADE_CAUTION_FIRE_H

#include "layout/layout.h"
#include "wall/finding.h"

/* RULE_FIRE: exactly one for each fireplace, stove and pipe, whatever the distances: with the nearest wood on its own
 * face and on every face that corners join to it, or that it is not known and to be measured. */
void fire_findings(Arena *arena, const Layout *layout, Findings *findings);

#endif
