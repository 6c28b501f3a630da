/*
 * What is worked out from the document for showing: its layout, the plan so far, and the findings. Made anew after each
 * change, made better in slices while nobody presses a key, until it is the very plan that `datumrow plan` prints. It
 * stands on a copy of the wall, so nothing in it dies when the document moves on. It decides nothing itself.
 */
#ifndef SCREEN_APP_WORK_H
#define SCREEN_APP_WORK_H

#include "fill/fill.h"
#include "job/job.h"

typedef struct Work {
    Arena *arena;     /* wall and layout */
    Arena *job_arena; /* the job, made anew after each slice */
    const Wall *wall; /* copy; NULL before the first begin */
    Layout *layout;   /* NULL where the wall cannot be laid out, or an error of ours came between: see `err` */
    Fill *fill;
    bool filled;      /* nothing left to do */
    const Job *job;   /* NULL until asked for, and after each slice */
    uint64_t version; /* of the document */
    Err err;
} Work;

void work_init(Work *work);
void work_finish(Work *work);

/* Lays out `wall` and makes the first plan; false where there is no layout. */
bool work_begin(Work *work, const Wall *wall, uint64_t version);

/* Works on for about `steps`; true while there is more to do. Pointers into the plan and the job die; the layout may
 * come to be NULL. */
bool work_slice(Work *work, int steps);

/* Works to the end. */
void work_complete(Work *work);

/* Everything that is shown; NULL where there is no layout. Dies at the next begin or slice. */
const Job *work_job(Work *work);

#endif
