#include "job/start_work.h"

#include "fill/fill.h"
#include "layout/notch.h"

/* Boards at hand that are tried in all, some 10 microseconds each (bench-fill, first plans): the list of a room comes
 * at once, that of a hall in half a second. */
enum { TRIED_MOST = 24000 };

/* Of one course: as of a piece that is as long as it. */
static int shallow_of(Arena *scratch, const FaceLayout *face, const Course *course)
{
    if (course->cut_count == 0)
        return 0;
    const Cutouts cutouts = layout_cutouts(scratch, face, course, course->left, course->right);
    const Points outline = layout_outline(scratch, face, course, course->left, course->right);
    int count = 0;
    for (int i = 0; i < cutouts.count; i++)
        count += notch_depth(&cutouts.at[i], &outline, course->left, course->right) < NOTCH_LEAST;
    return count;
}

static int count_shallow(Arena *scratch, const Layout *layout)
{
    int count = 0;
    for (int i = 0; i < layout->wall->faces.count; i++)
        for (int j = 0; j < layout->faces[i].course_count; j++)
            count += shallow_of(scratch, &layout->faces[i], &layout->faces[i].courses[j]);
    return count;
}

static int first_boards(const Layout *layout)
{
    Fill *fill = fill_begin(layout);
    const int boards = fill_plan(fill)->boards_opened;
    fill_free(fill);
    return boards;
}

static StartWork work_at(const Wall *wall, Length start, bool boards)
{
    StartWork work = {.boards = START_BOARDS_UNKNOWN};
    Wall moved = *wall;
    moved.start = start;
    Arena *arena = arena_new();
    Err err;
    const Layout *layout = layout_wall(arena, &moved, &err);
    if (layout != NULL) {
        work.shallow = count_shallow(arena, layout);
        work.boards = boards ? first_boards(layout) : START_BOARDS_UNKNOWN;
    }
    arena_free(arena);
    return work;
}

StartWork *start_work(Arena *arena, const Wall *wall, const Starts *starts)
{
    StartWork *work = arena_array(arena, StartWork, starts->count + 1);
    const int at_hand = wall_board_count(wall);
    for (int i = 0; i < starts->count; i++) {
        const bool tried = at_hand > 0 && (i == 0 || (int64_t)at_hand * (i + 1) <= TRIED_MOST);
        work[i] = work_at(wall, starts->at[i].start, tried);
    }
    return work;
}
