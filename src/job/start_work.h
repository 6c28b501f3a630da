/*
 * What each start height asks for at the saw, beside what is weighed on the wall: notches too shallow to cut out, and
 * how many boards the plan's first construction, not improved, opens there.
 */
#ifndef JOB_START_WORK_H
#define JOB_START_WORK_H

#include "layout/starts.h"

enum { START_BOARDS_UNKNOWN = -1 };

typedef struct StartWork {
    int shallow; /* of the start's cutouts those that are nowhere NOTCH_LEAST deep */
    int boards;  /* START_BOARDS_UNKNOWN where the wall has none, where layout refuses, and for the last of a list where
                    so many are at hand that it would be waited for */
} StartWork;

/* For each of the starts, in their order. */
StartWork *start_work(Arena *arena, const Wall *wall, const Starts *starts);

#endif
