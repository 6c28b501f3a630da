#include "layout/starts_weigh.h"

#include "layout/starts_taken.h"

#include <stdlib.h>

/*
 * A gap leaves a strip of the course that its lower edge cuts and of the course that its upper edge cuts; all courses
 * between are whole. Where an edge is slanted it cuts several courses, one behind the other:
 *
 *      ------------------------- band top of course k+1
 *                  ____-----       here the limit cuts k+1 ...
 *      -------____--------------
 *        ____-                     ... and here k
 *      -------------------------
 *
 * so the stretch is split where an edge crosses a band's; in each part a strip's width is one straight line, and its
 * ends tell all. Which courses exist, and from where to where they reach, depends on the leaning sides as well; that is
 * asked only for courses that have a strip.
 */

typedef struct ThinStretch {
    int64_t course;
    Fine left, right;
} ThinStretch;

typedef struct ThinStretches {
    ThinStretch *at;
    int count;
    int room;
} ThinStretches;

typedef struct Weighing {
    Arena *scratch;
    const WeighFace *face;
    const Bands *bands;
    StartWeight *weight;
    Reaches reaches;
    ThinStretches thin; /* of the column at hand */
} Weighing;

/* ---- strips ---- */

/* One stretch over which a gap leaves a strip of a course. */
typedef struct StripCut {
    int64_t course;
    Fine foot, head;             /* the band */
    Fine left, right;            /* x */
    const GapEdge *bottom, *top; /* what cuts it there; NULL where the band's own edge stands */
} StripCut;

static Fine bottom_at(const StripCut *cutting, Fine x)
{
    return cutting->bottom ? line_at(&cutting->bottom->line, x) : cutting->foot;
}

static Fine top_at(const StripCut *cutting, Fine x)
{
    return cutting->top ? line_at(&cutting->top->line, x) : cutting->head;
}

static bool sloped(const GapEdge *edge)
{
    return edge && edge->line.v0 != edge->line.v1;
}

/* The part of it that is narrower than what is worth hanging, into weighing->thin. */
static void note_thin(Weighing *weighing, const StripCut *cutting, Fine width_left, Fine width_right)
{
    Fine least = fine_of(weighing->bands->least);
    if (width_left >= least && width_right >= least)
        return;
    ThinStretch span = {cutting->course, cutting->left, cutting->right};
    if ((width_left < least) != (width_right < least)) {
        Fine turn;
        if (!sloped(cutting->top))
            turn = line_where(&cutting->bottom->line, top_at(cutting, cutting->left) - least);
        else if (!sloped(cutting->bottom))
            turn = line_where(&cutting->top->line, bottom_at(cutting, cutting->left) + least);
        else
            turn = cutting->left +
                   wide_divide((cutting->right - cutting->left) *
                                   wide_divide((least - width_left) * ((Fine)1 << 44), width_right - width_left),
                               (Fine)1 << 44);
        *(width_left < least ? &span.right : &span.left) = turn;
    }
    *arena_push(weighing->scratch, &weighing->thin) = span;
}

/* A width that is kept where it is narrower than the one before; -1 is none yet. */
static void keep_least(Length *kept, Length width)
{
    if (*kept < 0 || width < *kept)
        *kept = width;
}

static void note_strip(Weighing *weighing, const StripCut *cutting)
{
    StartWeight *weight = weighing->weight;
    Fine width_left = top_at(cutting, cutting->left) - bottom_at(cutting, cutting->left);
    Fine width_right = top_at(cutting, cutting->right) - bottom_at(cutting, cutting->right);
    note_thin(weighing, cutting, width_left, width_right);

    bool at_left = width_left <= width_right;
    Fine fine_width = at_left ? width_left : width_right;
    Length width = fine_round(fine_width > 0 ? fine_width : 0);
    Length at = fine_round(at_left ? cutting->left : cutting->right);
    int under = cutting->bottom ? cutting->bottom->opening : -1;
    int over = cutting->top ? cutting->top->opening : -1;
    if (under >= 0)
        keep_least(&weight->above[under], width);
    if (over >= 0)
        keep_least(&weight->below[over], width);
    if (under < 0 && over < 0)
        keep_least(cutting->bottom ? &weight->floor : &weight->ceiling, width);

    Strip *least = &weight->least;
    bool nearer = width == least->width &&
                  (cutting->course < least->course || (cutting->course == least->course && at < least->at));
    if (!least->found || width < least->width || nearer)
        *least = (Strip){.found = true,
                         .width = width,
                         .face = weighing->face->index,
                         .course = cutting->course,
                         .at = at,
                         .opening = under >= 0 ? under : over,
                         .at_floor = under < 0 && over < 0 && cutting->bottom};
}

/* What floor and ceiling take of a whole face, openings or none. */
static void note_taken(StartWeight *weight, const StripCut *cutting)
{
    for (int end = 0; end < 2; end++) {
        Fine x = end == 0 ? cutting->left : cutting->right;
        if (cutting->bottom && cutting->bottom->edge == EDGE_FLOOR) {
            Length taken = fine_round(bottom_at(cutting, x) - cutting->foot);
            weight->floor_cut = taken > weight->floor_cut ? taken : weight->floor_cut;
        }
        if (cutting->top && cutting->top->edge == EDGE_CEILING) {
            Length taken = fine_round(cutting->head - top_at(cutting, x));
            weight->ceiling_cut = taken > weight->ceiling_cut ? taken : weight->ceiling_cut;
        }
    }
}

/* The strips that one gap of one column leaves of one course. */
static void weigh_course(Weighing *weighing, const Column *column, const Gap *gap, int64_t course)
{
    Length foot;
    int in_list = bands_foot(weighing->bands, course, &foot);
    Fine bottom = fine_of(foot);
    Fine top = fine_of(foot + weighing->bands->height[in_list]);
    const CourseReach *reach = reach_of(&weighing->reaches, course);
    if (!reach->hung)
        return;
    const Fine left = column->left > reach->left ? column->left : reach->left;
    const Fine right = column->right < reach->right ? column->right : reach->right;
    if (right <= left)
        return;
    Fine xs[6] = {left, right};
    int count = 2;
    const GapEdge *edges[2] = {&gap->bottom, &gap->top};
    for (int i = 0; i < 4; i++) {
        const GapEdge *edge = edges[i % 2];
        if (!sloped(edge))
            continue;
        Fine x = line_where(&edge->line, i < 2 ? bottom : top);
        if (x <= left || x >= right)
            continue;
        int j = count++; /* kept in order; the right end stays last */
        for (; j > 0 && xs[j - 1] > x; j--)
            xs[j] = xs[j - 1];
        xs[j] = x;
    }
    for (int i = 0; i + 1 < count; i++) {
        StripCut cutting = {.course = course, .foot = bottom, .head = top, .left = xs[i], .right = xs[i + 1]};
        Fine middle = xs[i] + (xs[i + 1] - xs[i]) / 2;
        if (xs[i + 1] <= xs[i])
            continue;
        if (line_at(&gap->bottom.line, middle) > bottom)
            cutting.bottom = &gap->bottom;
        if (line_at(&gap->top.line, middle) < top)
            cutting.top = &gap->top;
        if ((!cutting.bottom && !cutting.top) || top_at(&cutting, middle) <= bottom_at(&cutting, middle))
            continue;
        note_taken(weighing->weight, &cutting);
        if ((cutting.bottom && cutting.bottom->edge == EDGE_RAKE) || (cutting.top && cutting.top->edge == EDGE_RAKE))
            continue;
        note_strip(weighing, &cutting);
    }
}

/* The courses that an edge cuts: none where last < first. A rake leaves no strip. */
static void courses_of(const Bands *bands, const GapEdge *edge, int64_t *first, int64_t *last)
{
    *first = 0;
    *last = -1;
    if (edge->edge == EDGE_RAKE)
        return;
    Fine low = edge->left < edge->right ? edge->left : edge->right;
    Fine high = edge->left < edge->right ? edge->right : edge->left;
    *first = bands_above(bands, wide_narrow(low >> FINE_BITS));
    *last = bands_above(bands, wide_narrow(high >> FINE_BITS));
    Length foot;
    bands_foot(bands, *last, &foot);
    if (fine_of(foot) >= high)
        --*last;
}

static int compare_spans(const void *left, const void *right)
{
    const ThinStretch *a = left;
    const ThinStretch *b = right;
    if (a->course != b->course)
        return a->course < b->course ? -1 : 1;
    return (a->left > b->left) - (a->left < b->left);
}

/* Adds up the column's thin stretches, those of one course that lie over one another once. */
static void settle_thin(Weighing *weighing)
{
    ThinStretches *thin = &weighing->thin;
    if (thin->count > 1)
        qsort(thin->at, (size_t)thin->count, sizeof *thin->at, compare_spans);
    for (int i = 0; i < thin->count;) {
        int64_t course = thin->at[i].course;
        Fine left = thin->at[i].left;
        Fine right = thin->at[i].right;
        for (i++; i < thin->count && thin->at[i].course == course && thin->at[i].left <= right; i++)
            right = thin->at[i].right > right ? thin->at[i].right : right;
        weighing->weight->thin += right - left;
    }
    thin->count = 0;
}

void weigh_face(Arena *scratch, const WeighFace *face, const Bands *bands, StartWeight *weight)
{
    Length *above = weight->above;
    Length *below = weight->below;
    *weight = (StartWeight){.ceiling = -1, .floor = -1, .above = above, .below = below};
    for (int i = 0; i < face->opening_count; i++)
        above[i] = below[i] = -1;
    if (face->columns.count == 0)
        return;
    arena_reset(scratch);
    Weighing weighing = {.scratch = scratch, .face = face, .bands = bands, .weight = weight};
    weighing.reaches = reaches_of(scratch, face, bands);
    for (int i = 0; i < face->columns.count; i++) {
        const Column *column = &face->columns.at[i];
        for (int g = 0; g < column->gap_count; g++) {
            const Gap *gap = &column->gaps[g];
            int64_t first, last, high_first, high_last;
            courses_of(bands, &gap->bottom, &first, &last);
            courses_of(bands, &gap->top, &high_first, &high_last);
            for (int64_t course = first; course <= last; course++)
                weigh_course(&weighing, column, gap, course);
            for (int64_t course = high_first; course <= high_last; course++)
                if (course < first || course > last)
                    weigh_course(&weighing, column, gap, course);
        }
        settle_thin(&weighing);
    }
    weight->cutouts = taken_count(&weighing.reaches);
}
