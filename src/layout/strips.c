#include "layout/strips.h"

#include "base/wide.h"

#include <stdlib.h>

/*
 *      band top     ------------------------------          Over the opening and under it a part is left that a cut
 *                    part |   part    |  part               bounds: two strips. Left and right of it the whole face
 *                         +-----------+                     stands: no strip. A part with a rake for an edge is none.
 *                         |  opening  |
 *                         +-----------+
 *                    part |   part    |  part
 *      band bottom  ------------------------------
 *
 * Within a slab the width of a part is one straight line, so that its narrowest place is one of its ends.
 */

static bool is_strip(const Part *part)
{
    const bool whole = part->bottom_edge == EDGE_BAND && part->top_edge == EDGE_BAND;
    return !whole && part->bottom_edge != EDGE_RAKE && part->top_edge != EDGE_RAKE;
}

/* Narrower; or as narrow in the same course and further left. */
static void narrow(Strip *kept, const Strip *strip)
{
    const bool same_course = kept->face == strip->face && kept->course == strip->course;
    if (!kept->found || strip->width < kept->width ||
        (strip->width == kept->width && same_course && strip->at < kept->at))
        *kept = *strip;
}

void strips_weigh(Layout *layout, int face, const Course *course)
{
    for (int i = 0; i < course->slab_count; i++) {
        const Slab *slab = &course->slabs[i];
        for (int j = 0; j < slab->part_count; j++) {
            const Part *part = &slab->parts[j];
            if (!is_strip(part))
                continue;
            const Length left = part->top_left - part->bottom_left;
            const Length right = part->top_right - part->bottom_right;
            const Strip strip = {.found = true,
                                 .width = left <= right ? left : right,
                                 .face = face,
                                 .course = course->number,
                                 .at = left <= right ? slab->left : slab->right,
                                 .opening = part->bottom_opening >= 0 ? part->bottom_opening : part->top_opening,
                                 .at_floor = part->bottom_edge == EDGE_FLOOR};
            narrow(&layout->least, &strip);
            if (part->bottom_edge == EDGE_FLOOR)
                narrow(&layout->least_floor, &strip);
            if (part->top_edge == EDGE_CEILING)
                narrow(&layout->least_ceiling, &strip);
        }
    }
}

/* The stretch of the slab along which the part is thinner than `least`; false where it is nowhere. */
static bool thin_stretch(const Slab *slab, const Part *part, Length least, Sliver *sliver)
{
    const Length left = part->top_left - part->bottom_left;
    const Length right = part->top_right - part->bottom_right;
    if (left >= least && right >= least)
        return false;
    *sliver = (Sliver){.left = slab->left,
                       .right = slab->right,
                       .least = left < right ? left : right,
                       .bottom_edge = part->bottom_edge,
                       .top_edge = part->top_edge,
                       .bottom_opening = part->bottom_opening,
                       .top_opening = part->top_opening};
    if (left < least && right < least)
        return true;
    const Wide along = wide_divide(((Wide)least - left) * (slab->right - slab->left), (Wide)right - left);
    if (left < least)
        sliver->right = slab->left + (Length)along;
    else
        sliver->left = slab->left + (Length)along;
    return sliver->left < sliver->right;
}

static bool alike(const Sliver *a, const Sliver *b)
{
    return a->bottom_edge == b->bottom_edge && a->top_edge == b->top_edge && a->bottom_opening == b->bottom_opening &&
           a->top_opening == b->top_opening;
}

/* Joins it to one that ends where it begins, else adds it. `open` is the first that may still go on. */
static void join(Arena *arena, Slivers *slivers, const Sliver *sliver)
{
    for (int i = slivers->count - 1; i >= 0; i--) {
        Sliver *last = &slivers->at[i];
        if (last->right == sliver->left && alike(last, sliver)) {
            last->right = sliver->right;
            last->least = last->least < sliver->least ? last->least : sliver->least;
            return;
        }
    }
    *arena_push(arena, slivers) = *sliver;
}

static int compare(const void *left, const void *right)
{
    const Sliver *a = left;
    const Sliver *b = right;
    if (a->left != b->left)
        return a->left < b->left ? -1 : 1;
    if (a->right != b->right)
        return a->right < b->right ? -1 : 1;
    if (a->bottom_opening != b->bottom_opening)
        return a->bottom_opening - b->bottom_opening;
    return a->top_opening - b->top_opening;
}

Slivers strips_thin(Arena *arena, const Course *course, Length least)
{
    Slivers slivers = {0};
    for (int i = 0; i < course->slab_count; i++)
        for (int j = 0; j < course->slabs[i].part_count; j++) {
            Sliver sliver;
            if (is_strip(&course->slabs[i].parts[j]) &&
                thin_stretch(&course->slabs[i], &course->slabs[i].parts[j], least, &sliver))
                join(arena, &slivers, &sliver);
        }
    if (slivers.count > 1)
        qsort(slivers.at, (size_t)slivers.count, sizeof *slivers.at, compare);
    return slivers;
}
