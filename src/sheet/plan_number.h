/*
 * A short number for what a job's sheets tell to mark, rip, cut and hang. Sheets of one plan carry the same number;
 * after a change that reaches the paper they carry another, but for one time in some 90,000.
 */
#ifndef SHEET_PLAN_NUMBER_H
#define SHEET_PLAN_NUMBER_H

#include "job/job.h"

/* "48213": five digits, the first not 0. */
const char *plan_number(Arena *arena, const Job *job);

#endif
