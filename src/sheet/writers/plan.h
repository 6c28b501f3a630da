/*
 * The plan as data: one YAML document in an order that never changes, every length in nanometres (the contract of
 * datumrow(5), "The plan"). It says what was worked out and rounds nothing.
 */
#ifndef SHEET_WRITERS_PLAN_H
#define SHEET_WRITERS_PLAN_H

#include "base/text.h"
#include "job/job.h"

void plan_write(const Job *job, Text *out);

#endif
