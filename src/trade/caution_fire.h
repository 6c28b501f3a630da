/*
 * Wood near fire: planks, and the trim that is worked out from the wall. Model-code figures for two very different
 * things, never mixed: a masonry fireplace (`fireplace`), where trim on the masonry's front has a published distance;
 * and a stove, insert or factory-built fireplace (`stove`), which goes by its own manual. Never a clearance to go
 * ahead: silence means nothing either.
 */
#ifndef TRADE_CAUTION_FIRE_H
#define TRADE_CAUTION_FIRE_H

#include "layout/layout.h"
#include "wall/finding.h"

/* RULE_FIRE: at most one for each fireplace, exactly one for each stove. */
void fire_findings(Arena *arena, const Layout *layout, Findings *findings);

#endif
