/*
 * The door to what the trade knows of a wall: everything that it has to warn of, in one call. Each part has a header of
 * its own for those who show it: season, caution, corner, shown, flush, spacer, trim_runs, trim_short, mill, bill,
 * asbuilt, tally.
 */
#ifndef TRADE_TRADE_H
#define TRADE_TRADE_H

#include "fill/plan.h"
#include "layout/layout.h"
#include "wall/finding.h"

/* Adds the trade's findings on `wall`, laid out as `layout` and cut as `plan`, to `findings`, unsorted. */
void trade_findings(Arena *arena, const Wall *wall, const Layout *layout, const Plan *plan, Findings *findings);

#endif
