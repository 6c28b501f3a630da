/*
 * What current runs in: boxes that wood is put around, and what a fastener may meet in the wall. Told always: nothing
 * here says that a depth or a place is without danger. Figures are those of the National Electrical Code (NFPA 70); the
 * program defers to the code in force where the wall stands and to a licensed electrician.
 */
#ifndef TRADE_CAUTION_ELECTRIC_H
#define TRADE_CAUTION_ELECTRIC_H

#include "fill/plan.h"
#include "layout/layout.h"
#include "trade/trim_runs.h"
#include "wall/finding.h"

/* RULE_BOX: one for each box that planks are cut for, that a strip of trim lies over, or that planks round an inside
 * corner come in front of, flush or not. RULE_WIRE: one
 * for each face that takes fasteners, for trim too. RULE_RANGE: any other opening that planks round a corner come in
 * front of. RULE_TRIM: a strip over any other opening. */
void electric_findings(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings);

/* Strips of trim as they lie on the wall, worked out once. */
typedef struct Covers {
    TrimStrips strips;
    WoodPart *parts; /* one for each strip */
} Covers;

Covers covers_of(Arena *arena, const Layout *layout);

/* How deep the extender of a box must be, so that its front is flush with the wood around it: backing, planks and,
 * where a strip of trim lies over it, that; 0 or less where its front stands out as far. False where no wood is near
 * it. */
bool box_extender(const Layout *layout, const Covers *covers, int face, int opening, Length *depth);

#endif
