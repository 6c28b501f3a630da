/* The findings of a plan, in whole sentences. For report.c, steady/in_force.c, solve.c and fill.c. */
#ifndef FILL_REPORT_FINDINGS_H
#define FILL_REPORT_FINDINGS_H

#include "fill/breaks.h"
#include "fill/demand.h"
#include "fill/relax/bound.h"

/* Adds them to plan->findings; says of each bare stretch whether boards or rules were the reason. */
void report_findings(Arena *arena, const Demand *demand, const Breaks *breaks, Plan *plan);

/* Adds which pieces the last event changed, where it changed any. */
void report_changed(Arena *arena, const Demand *demand, Plan *plan);

/* Gives the plan the bound, or, where the plan itself opens less, none, and says so. */
void report_bound(Arena *arena, Bound bound, Plan *plan);

#endif
