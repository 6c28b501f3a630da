#include "job/job.h"

#include <stdio.h>

#include "fill/fill.h"
#include "trade/trade.h"

static void add_findings(Arena *arena, Findings *all, const Findings *more)
{
    for (int i = 0; i < more->count; i++)
        *arena_push(arena, all) = more->at[i];
}

Job *job_of_parts(Arena *arena, const Layout *layout, const Plan *plan, const char *file, const char *hash)
{
    Job *job = arena_one(arena, Job);
    job->wall = layout->wall;
    job->file = file;
    snprintf(job->hash, sizeof job->hash, "%s", hash);
    job->layout = layout;
    job->plan = plan;
    add_findings(arena, &job->findings, &layout->findings);
    add_findings(arena, &job->findings, &plan->findings);
    trade_findings(arena, layout->wall, layout, plan, &job->findings);
    findings_sort(&job->findings);
    job->read = findings_read(arena, &job->findings);
    return job;
}

Job *job_of_wall(Arena *arena, const Wall *wall, const char *file, const char *hash, Err *err)
{
    const Layout *layout = layout_wall(arena, wall, err);
    if (layout == NULL)
        return NULL;
    return job_of_parts(arena, layout, fill_wall(arena, layout), file, hash);
}
