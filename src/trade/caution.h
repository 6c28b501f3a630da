/*
 * What can hurt someone, or the work, on this very wall: wood near fire, boxes left behind wood, fasteners that miss
 * the wood or reach too far, plates that do not hide their cut; pieces with nothing to be nailed to. A caution tells
 * what to look up and whom to ask. It defers to the local code, the appliance's manual and licensed trades; it never
 * says that something is safe, and silence means nothing either.
 *
 * Figures are model-code figures; each stands in caution.c with its source.
 */
#ifndef TRADE_CAUTION_H
#define TRADE_CAUTION_H

#include "fill/plan.h"
#include "layout/layout.h"
#include "wall/finding.h"
#include "wall/wall.h"

/* Adds RULE_PLATE, RULE_FIRE, RULE_BOX, RULE_NAIL, RULE_WIRE and RULE_ANCHOR, in no order. */
void caution_findings(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings);

#endif
