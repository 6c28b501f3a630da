/*
 * Cuts that go wrong at the saw: pieces too short to hold, notches too shallow to cut, boards cut in two while nobody
 * has said what the blade takes. What the sizes are is common practice.
 */
#ifndef TRADE_CAUTION_CUTS_H
#define TRADE_CAUTION_CUTS_H

#include "fill/plan.h"
#include "layout/layout.h"
#include "wall/finding.h"

/* RULE_STUB: one for each piece still to be cut whose longer edge is under 4 in, or whose shorter edge, at a miter its
 * back, is under 1 in. RULE_SHALLOW: one for each notch, of a piece still to be cut, that is nowhere 1/8 in deep.
 * RULE_KERF: one where no kerf is given and a board gives two pieces. In no order. */
void cut_findings(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings);

#endif
