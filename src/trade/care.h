/*
 * The general cautions of the trade: what hurts people on any such job, each once. Most hold wherever boards are cut;
 * some only where the wall gives the occasion for them. They defer to the product's label, the local code and people
 * licensed for the work.
 */
#ifndef TRADE_CARE_H
#define TRADE_CARE_H

#include "fill/plan.h"
#include "layout/layout.h"
#include "wall/finding.h"

/* RULE_CARE: one for each that applies, and one that names openings which may be hot (`other`, `vent`). */
void care_findings(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings);

#endif
