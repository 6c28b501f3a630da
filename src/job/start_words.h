/*
 * What is said of a start height worth considering: why one would take it, where its narrowest strip is, what it does
 * to top, bottom and openings. The sheet of starts and the editor say the same. It weighs nothing.
 */
#ifndef JOB_START_WORDS_H
#define JOB_START_WORDS_H

#include "base/arena.h"
#include "job/start_work.h"

/* "widest least strip, full at the top" */
const char *start_words_why(Arena *arena, const Start *start);

/* "course 3 of north, at the ceiling"; "no strip anywhere". */
const char *start_words_where(Arena *arena, const Wall *wall, const Strip *strip);

/* "Narrowest: WHERE. At ceilings 1 3/16, at floors 2; no strip below the least." */
const char *start_words_strips(Arena *arena, const Wall *wall, const Start *start);

/* "window (north): above it 1, below it a reveal" */
const char *start_words_opening(Arena *arena, const Wall *wall, const StartOpening *opening);

/* "12 cutouts, 2 of them nowhere 1/8 in (3 mm) deep. About 131 boards, before the plan is improved." Nothing is said of
 * boards that are not known. */
const char *start_words_work(Arena *arena, const Start *start, const StartWork *work);

#endif
