#include "trade/backing.h"

#include "wall/straight.h"

#include <stdlib.h>

static int compare_lengths(const void *left, const void *right)
{
    const Length a = *(const Length *)left;
    const Length b = *(const Length *)right;
    return (a > b) - (a < b);
}

static int compare_boxes(const void *left, const void *right)
{
    const Box *const *a = left;
    const Box *const *b = right;
    return ((*a)->bottom > (*b)->bottom) - ((*a)->bottom < (*b)->bottom);
}

static Length most(Length a, Length b)
{
    return a > b ? a : b;
}

/* The backing between two places, none of whose openings or marks lies between them: from floor to ceiling, less
 * `taken` openings, which reach over all of it. */
static void add_backing_between(Arena *arena, const Face *face, Length left, Length right, const Box **taken, int count,
                                WoodParts *parts)
{
    WoodPart part = {.left = left, .right = right, .out = face->backing, .what = "backing"};
    const Length ceiling_left = marks_off(&face->ceiling, left, true);
    const Length ceiling_right = marks_off(&face->ceiling, right, false);
    part.bottom_left = -marks_off(&face->floor, left, true);
    part.bottom_right = -marks_off(&face->floor, right, false);
    if (count > 1)
        qsort(taken, (size_t)count, sizeof *taken, compare_boxes);
    for (int i = 0; i <= count; i++) {
        part.top_left = i < count ? taken[i]->bottom : ceiling_left;
        part.top_right = i < count ? taken[i]->bottom : ceiling_right;
        if (part.top_left > part.bottom_left || part.top_right > part.bottom_right) {
            WoodPart *added = arena_push(arena, parts);
            *added = part;
            added->top_left = most(part.top_left, part.bottom_left);
            added->top_right = most(part.top_right, part.bottom_right);
        }
        if (i < count) {
            part.bottom_left = most(part.bottom_left, taken[i]->top);
            part.bottom_right = most(part.bottom_right, taken[i]->top);
        }
    }
}

static void add_place(Arena *arena, const Face *face, Length x, LengthList *places)
{
    *arena_push(arena, places) = x < 0 ? 0 : x > face->width ? face->width : x;
}

/* The bare wall of a face that has planks: where its backing lies, if it has some. None on a face without planks. */
static void bare_parts(Arena *arena, const Layout *layout, int index, WoodParts *parts)
{
    const Face *face = &layout->wall->faces.at[index];
    const FaceLayout *laid = &layout->faces[index];
    if (laid->course_count == 0 || face->floor.count == 0 || face->ceiling.count == 0)
        return;
    LengthList places = {0};
    add_place(arena, face, 0, &places);
    add_place(arena, face, face->width, &places);
    for (int i = 0; i < face->floor.count; i++)
        add_place(arena, face, face->floor.at[i].at, &places);
    for (int i = 0; i < face->ceiling.count; i++)
        add_place(arena, face, face->ceiling.at[i].at, &places);
    for (int i = 0; i < face->openings.count; i++)
        if (face->openings.at[i].kind != OPENING_STOVE) {
            add_place(arena, face, laid->openings[i].left, &places);
            add_place(arena, face, laid->openings[i].right, &places);
        }
    qsort(places.at, (size_t)places.count, sizeof *places.at, compare_lengths);
    const Box **taken = arena_array(arena, const Box *, face->openings.count);
    for (int i = 0; i + 1 < places.count; i++) {
        const Length left = places.at[i];
        const Length right = places.at[i + 1];
        int count = 0;
        for (int j = 0; j < face->openings.count; j++)
            if (face->openings.at[j].kind != OPENING_STOVE && laid->openings[j].left <= left &&
                laid->openings[j].right >= right)
                taken[count++] = &laid->openings[j];
        if (left < right)
            add_backing_between(arena, face, left, right, taken, count, parts);
    }
}

void backing_parts(Arena *arena, const Layout *layout, int face, WoodParts *parts)
{
    if (layout->wall->faces.at[face].backing > 0)
        bare_parts(arena, layout, face, parts);
}

Wide bare_area(Arena *arena, const Layout *layout, int face)
{
    WoodParts parts = {0};
    bare_parts(arena, layout, face, &parts);
    Wide area = 0;
    for (int i = 0; i < parts.count; i++) {
        const WoodPart *part = &parts.at[i];
        const Wide heights = (Wide)(part->top_left - part->bottom_left) + (part->top_right - part->bottom_right);
        area += (part->right - part->left) * heights;
    }
    return area / 2;
}
