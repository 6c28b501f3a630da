/*
 * What the seasons do to a wall, in a sentence for those who hang it: the reveal in the driest and the dampest air, and
 * how much the planks of a face together shrink and grow. The figures are season.h's.
 */
#ifndef SHEET_YEAR_H
#define SHEET_YEAR_H

#include "job/job.h"

/* NULL where the wall does not say of what wood it is, or nothing hangs on the face. */
const char *year_words(Arena *arena, const Job *job, int face);

#endif
