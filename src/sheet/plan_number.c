#include "sheet/plan_number.h"

#include <inttypes.h>

#include "base/hash.h"
#include "base/text.h"
#include "job/words.h"

enum { NUMBERS = 90000, LEAST = 10000 };

static void put(Text *text, int64_t value)
{
    text_format(text, "%" PRId64 ",", value);
}

static void put_points(Text *text, const Points *points)
{
    for (int i = 0; i < points->count; i++) {
        put(text, points->at[i].x);
        put(text, points->at[i].y);
    }
}

static void put_course(Text *text, const Course *course)
{
    const Length own[] = {course->number, course->bottom, course->top, course->width, course->left, course->right};
    for (size_t i = 0; i < sizeof own / sizeof *own; i++)
        put(text, own[i]);
    for (int i = 0; i < course->rip.point_count; i++) {
        put(text, course->rip.points[i].x);
        put(text, course->rip.points[i].width);
    }
    for (int i = 0; i < course->cut_count; i++) {
        const Box *box = &course->cuts[i].box;
        const Length sides[] = {box->left, box->right, box->bottom, box->top};
        for (size_t k = 0; k < sizeof sides / sizeof *sides; k++)
            put(text, sides[k]);
    }
}

/* The faces with their edges, studs and courses. */
static void put_layout(Text *text, const Layout *layout)
{
    put(text, layout->wall->round);
    for (int i = 0; i < layout->wall->faces.count; i++) {
        const FaceLayout *face = &layout->faces[i];
        text_format(text, "\n%s:", layout->wall->faces.at[i].name);
        put_points(text, &face->lower);
        put_points(text, &face->upper);
        put_points(text, &face->left);
        put_points(text, &face->right);
        for (int k = 0; k < face->studs.count; k++)
            put(text, face->studs.at[k]);
        for (int k = 0; k < face->course_count; k++)
            put_course(text, &face->courses[k]);
    }
}

static void put_plan(Text *text, const Plan *plan)
{
    text_put(text, "\n");
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        const Length own[] = {piece->number, piece->face,  piece->course, piece->segment, piece->left,
                              piece->right,  piece->board, piece->offset, piece->closer};
        for (size_t k = 0; k < sizeof own / sizeof *own; k++)
            put(text, own[k]);
    }
    for (int i = 0; i < plan->bare_count; i++) {
        put(text, plan->bare[i].left);
        put(text, plan->bare[i].right);
    }
}

const char *plan_number(Arena *arena, const Job *job)
{
    Text text;
    text_init(&text);
    put_layout(&text, job->layout);
    put_plan(&text, job->plan);
    const uint64_t hash = hash_bytes(text.bytes, text.length);
    text_finish(&text);
    return words(arena, "%d", LEAST + (int)(hash % NUMBERS));
}
