/*
 * Everything that sheets and screens show of one wall, worked out once: layout, plan, what the trade adds, and all
 * findings in the plan's order. The command line works it out to the end; the editor makes one with the plan so far and
 * makes it anew as the fill goes on.
 */
#ifndef JOB_JOB_H
#define JOB_JOB_H

#include "fill/plan.h"
#include "layout/layout.h"
#include "wall/wall.h"

typedef struct Job {
    const Wall *wall;
    const char *file; /* name of the wall file as sheets print it, "" where none */
    char hash[13];    /* short content hash of the wall as canonical text */
    const Layout *layout;
    const Plan *plan;
    Findings findings; /* of all storeys, sorted */
    Findings read;     /* the same, as people read them */
} Job;

/* Works out everything of `wall`, all in `arena`. NULL where layout refuses. */
Job *job_of_wall(Arena *arena, const Wall *wall, const char *file, const char *hash, Err *err);

/* A job from parts that are there already; they must outlive it. */
Job *job_of_parts(Arena *arena, const Layout *layout, const Plan *plan, const char *file, const char *hash);

#endif
