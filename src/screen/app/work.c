#include "screen/app/work.h"

enum { COMPLETE_STEPS = 100000 };

void work_init(Work *work)
{
    *work = (Work){.arena = arena_new(), .job_arena = arena_new()};
}

void work_finish(Work *work)
{
    fill_free(work->fill);
    arena_free(work->arena);
    arena_free(work->job_arena);
    *work = (Work){0};
}

bool work_begin(Work *work, const Wall *wall, uint64_t version)
{
    Work before = *work; /* what it knows may hold on: a piece that hangs changes nothing of the plan */
    arena_reset(work->job_arena);
    *work = (Work){.arena = arena_new(), .job_arena = work->job_arena, .filled = true, .version = version};
    work->wall = wall_copy(work->arena, wall);
    work->layout = layout_wall(work->arena, work->wall, &work->err);
    if (work->layout != NULL) {
        work->fill = fill_begin_after(before.fill, work->layout);
        work->filled = fill_step(work->fill, 0);
    }
    fill_free(before.fill);
    arena_free(before.arena);
    return work->layout != NULL;
}

bool work_slice(Work *work, int steps)
{
    if (work->filled)
        return false;
    work->job = NULL;
    work->filled = fill_step(work->fill, steps);
    return !work->filled;
}

void work_complete(Work *work)
{
    while (work_slice(work, COMPLETE_STEPS))
        continue;
}

const Job *work_job(Work *work)
{
    if (work->job == NULL && work->layout != NULL) {
        arena_reset(work->job_arena);
        work->job = job_of_parts(work->job_arena, work->layout, fill_plan(work->fill), "", "");
    }
    return work->job;
}
