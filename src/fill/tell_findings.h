/* The findings of a plan, in whole sentences. For tell.c alone. */
#ifndef FILL_TELL_FINDINGS_H
#define FILL_TELL_FINDINGS_H

#include "fill/breaks.h"
#include "fill/demand.h"

/* Adds them to plan->findings; says of each bare stretch whether boards or rules were the reason. */
void tell_findings(Arena *arena, const Demand *demand, const Breaks *breaks, Plan *plan);

#endif
