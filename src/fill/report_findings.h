/* The findings of a plan, in whole sentences. For report.c, in_force.c, solve.c and fill.c. */
#ifndef FILL_REPORT_FINDINGS_H
#define FILL_REPORT_FINDINGS_H

#include "fill/breaks.h"
#include "fill/demand.h"
#include "fill/relax/bound.h"

/* Adds them to plan->findings; says of each bare stretch whether boards or rules were the reason. */
void report_findings(Arena *arena, const Demand *demand, const Breaks *breaks, Plan *plan);

/* Adds that the plan was made anew, `record` being the first that is not of the plan before. */
void report_anew(Arena *arena, const Demand *demand, int record, Plan *plan);

/* Gives the plan the bound, or, where the plan itself opens less, none, and says so. */
void report_bound(Arena *arena, Bound bound, Plan *plan);

#endif
