#include "layout/starts_face.h"

#include "wall/straight.h"

#include <stdlib.h>

/* The figure and the invariants stand in starts_face.h. */

Fine fine_of(Length value)
{
    return (Fine)value * ((Fine)1 << FINE_BITS);
}

Length fine_round(Fine value)
{
    return wide_narrow(wide_divide(value, (Fine)1 << FINE_BITS));
}

Fine line_at(const EdgeLine *line, Fine t)
{
    if (line->v0 == line->v1)
        return fine_of(line->v0);
    return fine_of(line->v0) + wide_divide((line->v1 - line->v0) * (t - fine_of(line->t0)), line->t1 - line->t0);
}

Fine line_where(const EdgeLine *line, Fine v)
{
    return fine_of(line->t0) + wide_divide((line->t1 - line->t0) * (v - fine_of(line->v0)), line->v1 - line->v0);
}

typedef struct Fines {
    Fine *at;
    int count;
    int room;
} Fines;

static int compare_fine(const void *left, const void *right)
{
    Fine a = *(const Fine *)left;
    Fine b = *(const Fine *)right;
    return (a > b) - (a < b);
}

/* Sorts and drops equal ones. */
static void breaks_settle(Fines *breaks)
{
    if (breaks->count == 0)
        return;
    qsort(breaks->at, (size_t)breaks->count, sizeof *breaks->at, compare_fine);
    int kept = 1;
    for (int i = 1; i < breaks->count; i++)
        if (breaks->at[i] != breaks->at[kept - 1])
            breaks->at[kept++] = breaks->at[i];
    breaks->count = kept;
}

/* The line of a limit over the open stretch that holds x: level beyond its marks. */
static EdgeLine limit_line(const Points *points, Fine x)
{
    int i = 0;
    while (i < points->count && fine_of(points->at[i].x) <= x)
        i++;
    if (i == 0)
        return (EdgeLine){-FINE_FAR, points->at[0].y, FINE_FAR, points->at[0].y};
    const Point *before = &points->at[i - 1];
    if (i == points->count)
        return (EdgeLine){-FINE_FAR, before->y, FINE_FAR, before->y};
    return (EdgeLine){before->x, before->y, points->at[i].x, points->at[i].y};
}

static bool is_rake(const EdgeLine *line)
{
    return straight_is_rake(line->t1 - line->t0, line->v1 - line->v0);
}

static GapEdge limit_edge(const Points *points, Edge edge, Fine left, Fine right)
{
    EdgeLine line = limit_line(points, left + (right - left) / 2);
    return (GapEdge){.edge = is_rake(&line) ? EDGE_RAKE : edge,
                     .opening = -1,
                     .line = line,
                     .left = line_at(&line, left),
                     .right = line_at(&line, right)};
}

static GapEdge opening_edge(int opening, Length y)
{
    return (GapEdge){.edge = EDGE_OPENING,
                     .opening = opening,
                     .line = {-FINE_FAR, y, FINE_FAR, y},
                     .left = fine_of(y),
                     .right = fine_of(y)};
}

/* What the side stretches are: over all heights, plumb beyond the first and last mark. */
static void side_lines(Arena *arena, const Points *points, Lines *sides)
{
    const Point *first = &points->at[0];
    const Point *last = &points->at[points->count - 1];
    if (points->count == 1 || first->y > -FINE_FAR)
        *arena_push(arena, sides) = (EdgeLine){-FINE_FAR, first->x, points->count == 1 ? FINE_FAR : first->y, first->x};
    if (points->count == 1)
        return;
    for (int i = 1; i < points->count; i++)
        if (points->at[i].y > points->at[i - 1].y)
            *arena_push(arena, sides) =
                (EdgeLine){points->at[i - 1].y, points->at[i - 1].x, points->at[i].y, points->at[i].x};
    if (last->y < FINE_FAR)
        *arena_push(arena, sides) = (EdgeLine){last->y, last->x, FINE_FAR, last->x};
}

static bool all_at_one(const Points *points)
{
    for (int i = 1; i < points->count; i++)
        if (points->at[i].x != points->at[0].x)
            return false;
    return true;
}

/* Where two lines cross between the two x, if the one that is below at the left is above at the right. */
static bool cross(const GapEdge *lower, const GapEdge *upper, Fine left, Fine right, Fine *x)
{
    Fine before = upper->left - lower->left;
    Fine behind = upper->right - lower->right;
    if ((before > 0) == (behind > 0) || before == 0 || behind == 0)
        return false;
    Fine share = wide_divide(before * ((Fine)1 << 44), before - behind);
    *x = left + wide_divide((right - left) * share, (Fine)1 << 44);
    return true;
}

/* Splits at the places where a limit crosses an opening's level edges or the other limit. */
static void break_at_crossings(Arena *arena, const FaceLayout *face, const bool *cuts, int openings, Fines *breaks)
{
    int count = breaks->count;
    for (int i = 0; i + 1 < count; i++) {
        Fine left = breaks->at[i];
        Fine right = breaks->at[i + 1];
        GapEdge edges[2] = {limit_edge(&face->lower, EDGE_FLOOR, left, right),
                            limit_edge(&face->upper, EDGE_CEILING, left, right)};
        for (int j = 0; j < openings; j++) {
            const Box *box = &face->openings[j];
            if (!cuts[j] || fine_of(box->left) > left || fine_of(box->right) < right)
                continue;
            for (int side = 0; side < 4; side++) {
                const GapEdge *limit = &edges[side % 2];
                Fine y = fine_of(side < 2 ? box->bottom : box->top);
                if ((limit->left < y && limit->right > y) || (limit->left > y && limit->right < y))
                    *arena_push(arena, breaks) = line_where(&limit->line, y);
            }
        }
        Fine x;
        if (cross(&edges[0], &edges[1], left, right, &x))
            *arena_push(arena, breaks) = x;
    }
    breaks_settle(breaks);
}

typedef struct Covered {
    Length bottom, top;
    int opening;
} Covered;

static int compare_cover(const void *left, const void *right)
{
    const Covered *a = left;
    const Covered *b = right;
    if (a->bottom != b->bottom)
        return a->bottom < b->bottom ? -1 : 1;
    return a->opening - b->opening;
}

static Fine middle_of(const GapEdge *edge)
{
    return (edge->left + edge->right) / 2;
}

/* The gaps that the covering openings leave between the column's limits. */
static void column_gaps(Arena *arena, Column *column, Covered *covers, int count)
{
    if (middle_of(&column->lower) >= middle_of(&column->upper))
        return;
    if (count > 1)
        qsort(covers, (size_t)count, sizeof *covers, compare_cover);
    column->gaps = arena_array(arena, Gap, count + 1);
    GapEdge foot = column->lower;
    for (int i = 0; i < count; i++) {
        GapEdge bottom = opening_edge(covers[i].opening, covers[i].bottom);
        GapEdge top = opening_edge(covers[i].opening, covers[i].top);
        if (middle_of(&bottom) >= middle_of(&column->upper))
            break;
        if (middle_of(&bottom) > middle_of(&foot))
            column->gaps[column->gap_count++] = (Gap){foot, bottom};
        if (middle_of(&top) > middle_of(&foot))
            foot = top;
    }
    if (middle_of(&foot) < middle_of(&column->upper))
        column->gaps[column->gap_count++] = (Gap){foot, column->upper};
}

/* Widens [low, high] to hold the edge's ends. */
static void widen(const GapEdge *edge, bool *any, Fine *low, Fine *high)
{
    Fine least = edge->left < edge->right ? edge->left : edge->right;
    Fine most = edge->left < edge->right ? edge->right : edge->left;
    *low = *any && *low < least ? *low : least;
    *high = *any && *high > most ? *high : most;
    *any = true;
}

/* How far the gentle stretches are out of level; which edges of openings show. */
static void note_columns(WeighFace *weigh)
{
    Fine low = 0, high = 0, floor_low = 0, floor_high = 0;
    bool any = false;
    for (int i = 0; i < weigh->columns.count; i++) {
        const Column *column = &weigh->columns.at[i];
        widen(&column->lower, &any, &weigh->lowest, &weigh->highest);
        widen(&column->upper, &any, &weigh->lowest, &weigh->highest);
        for (int g = 0; g < column->gap_count; g++) {
            const Gap *gap = &column->gaps[g];
            if (gap->bottom.edge == EDGE_FLOOR)
                widen(&gap->bottom, &weigh->has_floor, &floor_low, &floor_high);
            if (gap->top.edge == EDGE_CEILING)
                widen(&gap->top, &weigh->has_ceiling, &low, &high);
            if (gap->bottom.opening >= 0)
                weigh->shows_top[gap->bottom.opening] = true;
            if (gap->top.opening >= 0)
                weigh->shows_bottom[gap->top.opening] = true;
        }
    }
    weigh->ceiling_out = fine_round(high - low);
    weigh->floor_out = fine_round(floor_high - floor_low);
}

/* Adds the column to what the opening takes, if it takes something there. */
static void take_column(TakenSpan *span, const Column *column, int index)
{
    const Fine low = column->lower.left < column->lower.right ? column->lower.left : column->lower.right;
    const Fine high = column->upper.left > column->upper.right ? column->upper.left : column->upper.right;
    const Fine bottom = fine_of(span->box.bottom), top = fine_of(span->box.top);
    if (middle_of(&column->lower) >= middle_of(&column->upper) || low >= top || high <= bottom)
        return;
    const Fine floor_high = column->lower.left + column->lower.right - low;
    const Fine ceiling_low = column->upper.left + column->upper.right - high;
    const bool first = span->count == 0;
    const Fine from = low > bottom ? low : bottom, to = high < top ? high : top;
    span->first = first ? index : span->first;
    span->count = index + 1 - span->first;
    span->low = first || from < span->low ? from : span->low;
    span->high = first || to > span->high ? to : span->high;
    span->floor_highest = first || floor_high > span->floor_highest ? floor_high : span->floor_highest;
    span->ceiling_lowest = first || ceiling_low < span->ceiling_lowest ? ceiling_low : span->ceiling_lowest;
}

/* Which openings take something, and every x at which an edge of wall or opening begins, turns or ends. */
static Fines face_breaks(Arena *arena, const Layout *layout, const WeighFace *weigh, const Box *reach, bool *cuts)
{
    const FaceLayout *face = &layout->faces[weigh->index];
    const Openings *openings = &layout->wall->faces.at[weigh->index].openings;
    Fines breaks = {0};
    *arena_push(arena, &breaks) = fine_of(reach->left);
    *arena_push(arena, &breaks) = fine_of(reach->right);
    const Points *limits[2] = {&face->lower, &face->upper};
    for (int which = 0; which < 2; which++)
        for (int i = 0; i < limits[which]->count; i++)
            if (limits[which]->at[i].x > reach->left && limits[which]->at[i].x < reach->right)
                *arena_push(arena, &breaks) = fine_of(limits[which]->at[i].x);
    for (int i = 0; i < openings->count; i++) {
        const Box *box = &face->openings[i];
        cuts[i] = openings->at[i].kind != OPENING_STOVE && box->right > reach->left && box->left < reach->right &&
                  box->right > box->left && box->top > box->bottom;
        if (cuts[i] && box->left > reach->left)
            *arena_push(arena, &breaks) = fine_of(box->left);
        if (cuts[i] && box->right < reach->right)
            *arena_push(arena, &breaks) = fine_of(box->right);
    }
    breaks_settle(&breaks);
    break_at_crossings(arena, face, cuts, openings->count, &breaks);
    return breaks;
}

/* Openings that cover the column at hand. */
typedef struct CoverList {
    const bool *cuts; /* of each opening: whether it takes something anywhere */
    Covered *at;      /* room for all */
    Box inner;        /* between the sides at every height */
} CoverList;

/* The column between two breaks, and what the openings that cover it take. */
static void add_column(Arena *arena, const FaceLayout *face, WeighFace *weigh, const Fine *breaks, CoverList *list)
{
    Column *column = arena_push(arena, &weigh->columns);
    column->left = breaks[0];
    column->right = breaks[1];
    column->lower = limit_edge(&face->lower, EDGE_FLOOR, column->left, column->right);
    column->upper = limit_edge(&face->upper, EDGE_CEILING, column->left, column->right);
    int count = 0;
    for (int j = 0; j < weigh->opening_count; j++) {
        const Box *box = &face->openings[j];
        if (list->cuts[j] && fine_of(box->left) <= column->left && fine_of(box->right) >= column->right)
            list->at[count++] = (Covered){box->bottom, box->top, j};
    }
    for (int j = 0; j < count; j++) {
        TakenSpan *span = &weigh->taken[list->at[j].opening];
        span->box = face->openings[list->at[j].opening];
        span->beyond = !weigh->plumb && (span->box.left < list->inner.left || span->box.right > list->inner.right);
        take_column(span, column, weigh->columns.count - 1);
    }
    column_gaps(arena, column, list->at, count);
}

/* The least x of the points, or the greatest. */
static Length x_most(const Points *points, bool greatest)
{
    Length most = points->at[0].x;
    for (int i = 1; i < points->count; i++)
        if (greatest ? points->at[i].x > most : points->at[i].x < most)
            most = points->at[i].x;
    return most;
}

WeighFace *weigh_face_new(Arena *arena, const Layout *layout, int index)
{
    const FaceLayout *face = &layout->faces[index];
    const int openings = layout->wall->faces.at[index].openings.count;
    WeighFace *weigh = arena_one(arena, WeighFace);
    weigh->index = index;
    weigh->opening_count = openings;
    weigh->taken = arena_array(arena, TakenSpan, openings + 1);
    weigh->shows_top = arena_array(arena, bool, openings + 1);
    weigh->shows_bottom = arena_array(arena, bool, openings + 1);
    side_lines(arena, &face->left, &weigh->left);
    side_lines(arena, &face->right, &weigh->right);
    weigh->plumb = all_at_one(&face->left) && all_at_one(&face->right);
    const Box reach = {.left = x_most(&face->left, false), .right = x_most(&face->right, true)};
    if (reach.left >= reach.right)
        return weigh;
    bool *cuts = arena_array(arena, bool, openings + 1);
    const Fines breaks = face_breaks(arena, layout, weigh, &reach, cuts);
    CoverList list = {.cuts = cuts,
                      .at = arena_array(arena, Covered, openings + 1),
                      .inner = {.left = x_most(&face->left, true), .right = x_most(&face->right, false)}};
    for (int i = 0; i + 1 < breaks.count; i++)
        add_column(arena, face, weigh, &breaks.at[i], &list);
    note_columns(weigh);
    return weigh;
}
