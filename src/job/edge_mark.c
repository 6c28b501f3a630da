#include "job/edge_mark.h"

#include "base/text.h"
#include "job/plank.h"
#include "job/words.h"
#include "wall/straight.h"

/*
 *      ______________________________  upper mark: all along
 *     |______________________________|
 *      - - - - - -.------------------  lower mark: only right of here
 *      ____------``  floor
 *
 * Over one slab an edge is the course's own or a limit's, never both: a slab ends where they cross.
 */

static Edge edge_of(const Slab *slab, bool upper)
{
    return upper ? slab->upper_edge : slab->lower_edge;
}

bool edge_mark_off(const Wall *wall, const Course *course, bool upper)
{
    Length left = 0;
    for (int i = 0; i < course->slab_count; i++)
        if (edge_of(&course->slabs[i], upper) == EDGE_BAND)
            left += course->slabs[i].right - course->slabs[i].left;
    return left < wall->round;
}

const char *edge_mark_limit(bool upper)
{
    return upper ? "at the ceiling" : "at the floor";
}

const char *edge_mark_words(Arena *arena, const Wall *wall, const Course *course, bool upper)
{
    if (edge_mark_off(wall, course, upper))
        return edge_mark_limit(upper);
    return words_mark(arena, wall, upper ? course->top : course->bottom);
}

bool edge_mark_own(const Layout *layout, int face, const Course *course, Length *height)
{
    const Length lap = layout->wall->planks.lap;
    *height = course->top + lap;
    if (lap == 0 || edge_mark_off(layout->wall, course, true))
        return false;
    Arena *arena = arena_new();
    const bool cut = plank_measure(arena, layout, face, course, course->left, course->right).upper_cut;
    arena_free(arena);
    return !cut;
}

const char *edge_mark_decimal(Arena *arena, const Wall *wall, const Course *course, bool upper)
{
    if (edge_mark_off(wall, course, upper))
        return edge_mark_limit(upper);
    return words_decimal(arena, wall, upper ? course->top : course->bottom);
}

/* Whether a gentle stretch of floor or ceiling takes a marking step or more of the edge. */
static bool cut_gently(const Wall *wall, const Course *course, bool upper)
{
    Length cut = 0;
    for (int i = 0; i < course->slab_count; i++) {
        Edge edge = edge_of(&course->slabs[i], upper);
        if (edge == EDGE_FLOOR || edge == EDGE_CEILING)
            cut += course->slabs[i].right - course->slabs[i].left;
    }
    return cut >= wall->round;
}

const char *edge_mark_part(Arena *arena, const Wall *wall, const Course *course, bool upper)
{
    if (edge_mark_off(wall, course, upper) || !cut_gently(wall, course, upper))
        return NULL;
    Text text;
    text_init(&text);
    text_format(&text, "%s mark only", upper ? "Upper" : "Lower");
    int count = 0;
    for (int i = 0; i < course->slab_count;) {
        if (edge_of(&course->slabs[i], upper) != EDGE_BAND) {
            i++;
            continue;
        }
        Length left = course->slabs[i].left, right = course->slabs[i].right;
        for (i++;
             i < course->slab_count && edge_of(&course->slabs[i], upper) == EDGE_BAND && course->slabs[i].left == right;
             i++)
            right = course->slabs[i].right;
        if (marks_alike(wall, left, right))
            continue;
        text_format(&text, "%s from %s to %s", count++ == 0 ? "" : ",", words_length(arena, wall, left),
                    words_length(arena, wall, right));
    }
    text_format(&text, " along the face: the %s cuts the rest.", upper ? "ceiling" : "floor");
    char *out = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return count == 0 ? NULL : out;
}
