#include "fill/pins.h"

#include <stdlib.h>
#include <string.h>

static int row_of(const Layout *layout, const int *row_first, const char *name, int course)
{
    const int face = wall_face_named(layout->wall, name);
    const int index = face < 0 ? -1 : layout_course_index(&layout->faces[face], course);
    return index < 0 ? -1 : row_first[face] + index;
}

static int ascending(const void *a, const void *b)
{
    const Length one = *(const Length *)a, other = *(const Length *)b;
    return (one > other) - (one < other);
}

static void put_in_order(LengthList *list)
{
    int kept = 0;
    if (list->count > 1)
        qsort(list->at, (size_t)list->count, sizeof *list->at, ascending);
    for (int i = 0; i < list->count; i++)
        if (kept == 0 || list->at[kept - 1] != list->at[i])
            list->at[kept++] = list->at[i];
    list->count = kept;
}

RowPins *pins_by_row(Arena *arena, const Layout *layout, const int *row_first)
{
    const Joints *joints = &layout->wall->joints;
    const int rows = row_first[layout->wall->faces.count];
    if (joints->pins.count + joints->bars.count == 0)
        return NULL;
    RowPins *by_row = arena_array(arena, RowPins, rows + 1);
    for (int i = 0; i < joints->pins.count; i++) {
        const Pin *pin = &joints->pins.at[i];
        const int row = row_of(layout, row_first, pin->face, pin->course);
        if (row >= 0)
            *arena_push(arena, &by_row[row].pins) = pin->at;
    }
    for (int i = 0; i < joints->bars.count; i++) {
        const Bar *bar = &joints->bars.at[i];
        const int row = row_of(layout, row_first, bar->face, bar->course);
        if (row >= 0)
            *arena_push(arena, &by_row[row].bars) = (Interval){bar->from, bar->to};
    }
    for (int i = 0; i < rows; i++)
        put_in_order(&by_row[i].pins);
    return by_row;
}

static const Interval *bar_at(const Intervals *bars, Length x)
{
    for (int i = 0; i < bars->count; i++)
        if (bars->at[i].left <= x && x <= bars->at[i].right)
            return &bars->at[i];
    return NULL;
}

bool pins_barred(const Intervals *bars, Length x)
{
    return bar_at(bars, x) != NULL;
}

Length pins_clear_down(const Intervals *bars, Length x)
{
    for (const Interval *bar = bar_at(bars, x); bar != NULL; bar = bar_at(bars, x))
        x = bar->left - 1;
    return x;
}

Length pins_clear_up(const Intervals *bars, Length x)
{
    for (const Interval *bar = bar_at(bars, x); bar != NULL; bar = bar_at(bars, x))
        x = bar->right + 1;
    return x;
}

/* ---- one course ---- */

static bool is_on(const Wall *wall, const char *name, int number, int face, int64_t course)
{
    return number == course && wall_face_named(wall, name) == face;
}

/* Whether there is a pin right of `after` and left of `before`. */
static bool pinned_between(const Wall *wall, int face, int64_t course, Length after, Length before)
{
    const Pins *pins = &wall->joints.pins;
    for (int i = 0; i < pins->count; i++)
        if (pins->at[i].at > after && pins->at[i].at < before &&
            is_on(wall, pins->at[i].face, pins->at[i].course, face, course))
            return true;
    return false;
}

bool pins_pinned(const Wall *wall, int face, int64_t course, Length x)
{
    return pinned_between(wall, face, course, x - 1, x + 1);
}

bool pins_barred_on(const Wall *wall, int face, int64_t course, Length x)
{
    const Bars *bars = &wall->joints.bars;
    for (int i = 0; i < bars->count; i++)
        if (bars->at[i].from <= x && x <= bars->at[i].to &&
            is_on(wall, bars->at[i].face, bars->at[i].course, face, course))
            return true;
    return false;
}

static bool may_be_joint(const Wall *wall, int face, int64_t course, Length x)
{
    return !pins_barred_on(wall, face, course, x) || pins_pinned(wall, face, course, x);
}

bool pins_allow(const Wall *wall, int face, int64_t course, const Segment *segment, Length left, Length right)
{
    return !pinned_between(wall, face, course, left, right) &&
           (left == segment->left || may_be_joint(wall, face, course, left)) &&
           (right == segment->right || may_be_joint(wall, face, course, right));
}
