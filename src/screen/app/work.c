/*
 * Each part of the work is attempted: it stands on a copy of the wall and on arenas of its own, so that where an
 * invariant breaks in it, it is let go of as a whole, told as what cannot be laid out is, and the document lives on.
 */
#include "screen/app/work.h"

#include "base/panic.h"

#include <string.h>

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

/* ---- attempts ---- */

static void refuse(Work *work, const char *place)
{
    if (strcmp(place, PANIC_NO_MEMORY) == 0)
        err_set(
            &work->err, ERR_LIMIT,
            "There is not enough memory to work this wall out. Your entries are kept: save, and close other programs "
            "or undo the last change.");
    else
        err_set(
            &work->err, ERR_LIMIT,
            "This wall cannot be worked out: an error in datumrow (%s). Your entries are kept: undo the last change "
            "or save, and report it with the wall file.",
            place);
    work->layout = NULL; /* what stood on it is lost, but not in use any more */
    work->fill = NULL;
    work->job = NULL;
    work->job_arena = arena_new();
    work->filled = true;
}

static bool attempted(Work *work, PanicWork *part, void *with)
{
    char place[64];
    if (panic_attempt(part, with, place, sizeof place))
        return true;
    refuse(work, place);
    return false;
}

typedef struct Beginning {
    Work *work;
    Fill *before;
} Beginning;

static void lay_out_and_fill(void *with)
{
    Work *work = ((Beginning *)with)->work;
    work->layout = layout_wall(work->arena, work->wall, &work->err);
    if (work->layout == NULL)
        return;
    work->fill = fill_begin_after(((Beginning *)with)->before, work->layout);
    work->filled = fill_step(work->fill, 0);
}

typedef struct WorkSlice {
    Work *work;
    int steps;
} WorkSlice;

static void fill_on(void *with)
{
    const WorkSlice *slice = with;
    slice->work->filled = fill_step(slice->work->fill, slice->steps);
}

static void make_job(void *with)
{
    Work *work = with;
    arena_reset(work->job_arena);
    work->job = job_of_parts(work->job_arena, work->layout, fill_plan(work->fill), "", "");
}

/* ---- what is worked out ---- */

bool work_begin(Work *work, const Wall *wall, uint64_t version)
{
    Work before = *work; /* what it knows may hold on: a piece that hangs changes nothing of the plan */
    arena_reset(work->job_arena);
    *work = (Work){.arena = arena_new(), .job_arena = work->job_arena, .filled = true, .version = version};
    work->wall = wall_copy(work->arena, wall);
    attempted(work, lay_out_and_fill, &(Beginning){work, before.fill});
    fill_free(before.fill);
    arena_free(before.arena);
    return work->layout != NULL;
}

bool work_slice(Work *work, int steps)
{
    if (work->filled)
        return false;
    work->job = NULL;
    attempted(work, fill_on, &(WorkSlice){work, steps});
    return !work->filled;
}

void work_complete(Work *work)
{
    while (work_slice(work, COMPLETE_STEPS))
        continue;
}

const Job *work_job(Work *work)
{
    if (work->job == NULL && work->layout != NULL)
        attempted(work, make_job, work);
    return work->job;
}
