/*
 * Trim that the trim stock does not give: which strips, of the file's own and of those worked out, no board is left
 * for, and why. What is cut from which board is fill/trim's, and the plan's; this only tells what is missing from it.
 */
#ifndef TRADE_TRIM_SHORT_H
#define TRADE_TRIM_SHORT_H

#include "layout/layout.h"
#include "wall/finding.h"

/* RULE_MISSING: one for each name and length of which the trim plan lacks some, in the order of the strips. */
void trim_short_findings(Arena *arena, const Layout *layout, Findings *findings);

#endif
