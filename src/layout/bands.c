#include "layout/bands.h"

#include "base/wide.h"

#include <stdlib.h>
#include <string.h>

/*
 *      foot(2)  -------------          Nominal feet stand from course 0 in runs of the list of widths:
 *      foot(1)  -------------          foot(k) = run * (k div n) + before[k mod n].
 *      foot(0)  -------------  0
 *      foot(-1) -------------          An edge measured at course m is an anchor: from there outwards courses keep
 *                                      their distances from each other, but start one reveal from the measured edge.
 *
 * The base is the course that all others are counted from: course 0, or, where planks hang from the lowest course
 * upward, the lowest below it that a top was measured of; at its nominal foot.
 *
 * Invariant: anchors upwards rise in number, the first is the base at its foot; downwards they fall, the first is the
 * course under the reveal below the base. A measured course's other edge stays where it was. An edge that would leave
 * its own course no height is a misfit, never an anchor: else courses would lie over one another.
 */

typedef struct Anchor {
    int64_t number; /* the first course that stands on it (upwards) or hangs from it (downwards) */
    Length edge;    /* its bottom (upwards) or top (downwards) */
} Anchor;

typedef struct Anchors {
    Anchor *at;
    int count;
    int room;
} Anchors;

typedef struct Stack {
    const Wall *wall;
    int count;      /* of the list of widths */
    Length *before; /* foot of each within the run */
    Length run;
    HungEdges tops, bottoms; /* measured edges that count */
    Anchor base;
} Stack;

static Length foot(const Stack *stack, int64_t number)
{
    int64_t place = number % stack->count;
    if (place < 0)
        place += stack->count;
    return wide_narrow((Wide)stack->run * ((number - place) / stack->count)) + stack->before[place];
}

static int compare_up(const void *left, const void *right)
{
    const HungEdge *a = left;
    const HungEdge *b = right;
    return (a->course > b->course) - (a->course < b->course);
}

/* Edges measured on the face: tops of courses from 0 up (of all where planks hang upward), or bottoms from 0 down;
 * rising in number. */
static HungEdges measured(Arena *arena, const Wall *wall, const Face *face, bool tops)
{
    HungEdges edges = {0};
    for (int i = 0; i < wall->hung_edges.count; i++) {
        const HungEdge *edge = &wall->hung_edges.at[i];
        const bool outward = edge->is_top ? edge->course >= 0 || wall_hangs_upward(wall) : edge->course <= 0;
        if (outward && edge->is_top == tops && strcmp(edge->face, face->name) == 0)
            *arena_push(arena, &edges) = *edge;
    }
    if (edges.count > 1)
        qsort(edges.at, (size_t)edges.count, sizeof *edges.at, compare_up);
    return edges;
}

static const HungEdge *measured_at(const HungEdges *edges, int64_t number)
{
    int low = 0, high = edges->count;
    while (low < high) {
        const int middle = (low + high) / 2;
        if (edges->at[middle].course < number)
            low = middle + 1;
        else
            high = middle;
    }
    return low < edges->count && edges->at[low].course == number ? &edges->at[low] : NULL;
}

static Length bottom_above(const Stack *stack, const Anchor *anchor, int64_t number)
{
    return anchor->edge + foot(stack, number) - foot(stack, anchor->number);
}

static Length top_below(const Stack *stack, const Anchor *anchor, int64_t number)
{
    return anchor->edge - (foot(stack, anchor->number + 1) - foot(stack, number + 1));
}

/* Takes the bottom of course 0 out where it does not lie below the course's top. */
static void part_reference(Arena *arena, Stack *stack, Length start, HungEdges *misfits)
{
    const HungEdge *bottom = measured_at(&stack->bottoms, 0);
    const HungEdge *top = measured_at(&stack->tops, 0);
    if (bottom == NULL || bottom->height < (top != NULL ? top->height : start + wall_course_face(stack->wall, 0)))
        return;
    *arena_push(arena, misfits) = *bottom;
    stack->bottoms.count--; /* no bottom stands after that of course 0 */
}

static void part_tops(Arena *arena, Stack *stack, HungEdges *misfits)
{
    HungEdges *tops = &stack->tops;
    const HungEdge *reference = measured_at(&stack->bottoms, 0);
    Anchor anchor = stack->base;
    int kept = 0;
    for (int i = 0; i < tops->count; i++) {
        const HungEdge edge = tops->at[i];
        const bool own = edge.course == 0 && reference != NULL;
        if (edge.height <= (own ? reference->height : bottom_above(stack, &anchor, edge.course))) {
            *arena_push(arena, misfits) = edge;
            continue;
        }
        anchor = (Anchor){(int64_t)edge.course + 1, edge.height + stack->wall->planks.reveal};
        tops->at[kept++] = edge;
    }
    tops->count = kept;
}

static void part_bottoms(Arena *arena, Stack *stack, HungEdges *misfits)
{
    HungEdges *bottoms = &stack->bottoms;
    Anchor anchor = {stack->base.number - 1, stack->base.edge - stack->wall->planks.reveal};
    int kept = bottoms->count; /* those from here on are kept: it fills from the end */
    for (int i = bottoms->count - 1; i >= 0; i--) {
        const HungEdge edge = bottoms->at[i];
        if (edge.course < 0 && edge.height >= top_below(stack, &anchor, edge.course)) {
            *arena_push(arena, misfits) = edge;
            continue;
        }
        anchor = (Anchor){(int64_t)edge.course - 1, edge.height - stack->wall->planks.reveal};
        bottoms->at[--kept] = edge;
    }
    if (kept > 0) /* a list without any has no address to count on from */
        bottoms->at += kept;
    bottoms->count -= kept;
}

/* How many whole runs lie between the edge and the height: those courses need not be looked at. */
static int64_t runs_between(const Stack *stack, Length from, Length to)
{
    if (to <= from)
        return 0;
    const Wide runs = wide_floor((Wide)to - from, stack->run) - 1;
    return runs > 0 ? wide_narrow(runs) : 0;
}

static bool bands_up(Arena *arena, const Stack *stack, const BandsAsked *asked, CourseBands *bands)
{
    const HungEdges *tops = &stack->tops;
    const HungEdge *reference = measured_at(&stack->bottoms, 0);
    Anchors anchors = {0};
    *arena_push(arena, &anchors) = stack->base;
    for (int i = 0; i < tops->count; i++)
        *arena_push(arena, &anchors) =
            (Anchor){(int64_t)tops->at[i].course + 1, tops->at[i].height + stack->wall->planks.reveal};
    for (int i = 0; i < anchors.count; i++) {
        const Anchor *anchor = &anchors.at[i];
        const int64_t last = i + 1 < anchors.count ? anchors.at[i + 1].number - 1 : INT64_MAX;
        if (last < anchor->number)
            continue;
        int64_t number = anchor->number + runs_between(stack, anchor->edge, asked->lowest) * stack->count;
        if (number > last)
            number = last;
        for (; number <= last; number++) {
            CourseBand band = {.number = number, .bottom = bottom_above(stack, anchor, number)};
            const HungEdge *top = measured_at(tops, number);
            band.top = top != NULL ? top->height : band.bottom + wall_course_face(stack->wall, number);
            if (number == 0 && reference != NULL)
                band.bottom = reference->height;
            if (band.bottom >= asked->highest)
                break;
            if (band.top <= asked->lowest || band.top <= band.bottom)
                continue;
            if (bands->count >= asked->most)
                return false;
            *arena_push(arena, bands) = band;
        }
    }
    return true;
}

/* From the topmost down; the caller turns them round. */
static bool bands_down(Arena *arena, const Stack *stack, const BandsAsked *asked, CourseBands *bands)
{
    const HungEdges *bottoms = &stack->bottoms;
    const Length reveal = stack->wall->planks.reveal;
    Anchors anchors = {0};
    *arena_push(arena, &anchors) = (Anchor){stack->base.number - 1, stack->base.edge - reveal};
    for (int i = bottoms->count - 1; i >= 0; i--)
        *arena_push(arena, &anchors) = (Anchor){(int64_t)bottoms->at[i].course - 1, bottoms->at[i].height - reveal};
    for (int i = 0; i < anchors.count; i++) {
        const Anchor *anchor = &anchors.at[i];
        const int64_t last = i + 1 < anchors.count ? anchors.at[i + 1].number + 1 : INT64_MIN;
        if (last > anchor->number)
            continue;
        int64_t number = anchor->number - runs_between(stack, asked->highest, anchor->edge) * stack->count;
        if (number < last)
            number = last;
        for (; number >= last; number--) {
            CourseBand band = {.number = number, .top = top_below(stack, anchor, number)};
            const HungEdge *bottom = measured_at(bottoms, number);
            band.bottom = bottom != NULL ? bottom->height : band.top - wall_course_face(stack->wall, number);
            if (band.top <= asked->lowest)
                break;
            if (band.bottom >= asked->highest || band.top <= band.bottom)
                continue;
            if (bands->count >= asked->most)
                return false;
            *arena_push(arena, bands) = band;
        }
    }
    return true;
}

bool bands_of_face(Arena *arena, const Wall *wall, int face, const BandsAsked *asked, CourseBands *bands)
{
    Stack stack = {.wall = wall, .count = wall->planks.widths.count, .run = wall_run(wall)};
    stack.before = arena_array(arena, Length, stack.count);
    for (int i = 1; i < stack.count; i++)
        stack.before[i] = stack.before[i - 1] + wall_course_face(wall, i - 1) + wall->planks.reveal;
    stack.tops = measured(arena, wall, &wall->faces.at[face], true);
    stack.bottoms = measured(arena, wall, &wall->faces.at[face], false);
    *bands = (CourseBands){0};
    part_reference(arena, &stack, asked->start, &bands->misfits);
    if (stack.tops.count > 0 && stack.tops.at[0].course < 0)
        stack.base.number = stack.tops.at[0].course;
    stack.base.edge = asked->start + foot(&stack, stack.base.number);
    part_tops(arena, &stack, &bands->misfits);
    part_bottoms(arena, &stack, &bands->misfits);
    CourseBands below = {0};
    if (!bands_down(arena, &stack, asked, &below))
        return false;
    for (int i = below.count - 1; i >= 0; i--)
        *arena_push(arena, bands) = below.at[i];
    return bands_up(arena, &stack, asked, bands);
}
