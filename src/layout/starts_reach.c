#include "layout/starts_reach.h"

#include "base/panic.h"

/* A course of less does not exist (datumrow(5), "Segments"): 0.001 mm2, in nm2. */
#define LEAST_AREA INT64_C(1000000000)

enum { CORNERS_MOST = 24 };

typedef struct Spot {
    Fine x, y;
} Spot;

typedef struct Polygon {
    Spot at[CORNERS_MOST];
    int count;
} Polygon;

typedef enum Cutter { LIMIT, SIDE, LEVEL } Cutter; /* by a line over x, by one over y, at the line's t0 in height */

/* How far above (LIMIT, LEVEL) or right of (SIDE) the line. */
static Fine beyond(const Spot *spot, Cutter cutter, const EdgeLine *line)
{
    switch (cutter) {
    case LIMIT: return spot->y - line_at(line, spot->x);
    case SIDE: return spot->x - line_at(line, spot->y);
    case LEVEL: return spot->y - fine_of(line->t0);
    }
    panic(__FILE__, __LINE__, "no such cutter");
}

/* Where the edge from a to b, which lie `over` and `under` on either side, meets the line: by the edge's own
 * straightness where it is plumb or level, else by its share. */
static Spot meet(const Spot *a, const Spot *b, Fine over, Fine under, Cutter cutter, const EdgeLine *line)
{
    Fine share = wide_divide(over * ((Fine)1 << 44), over - under);
    Spot spot = {a->x + wide_divide((b->x - a->x) * share, (Fine)1 << 44),
                 a->y + wide_divide((b->y - a->y) * share, (Fine)1 << 44)};
    if (cutter == LIMIT && a->x == b->x)
        spot.y = line_at(line, a->x);
    else if (cutter == LIMIT && a->y == b->y)
        spot.x = line_where(line, a->y);
    else if (cutter == SIDE && a->y == b->y)
        spot.x = line_at(line, a->y);
    else if (cutter == LEVEL)
        spot.y = fine_of(line->t0);
    return spot;
}

/* Keeps the part of the shape where sign x beyond >= 0. */
static void clip(Polygon *shape, Cutter cutter, const EdgeLine *line, int sign)
{
    Polygon kept = {.count = 0};
    Fine sides[CORNERS_MOST];
    for (int i = 0; i < shape->count; i++)
        sides[i] = beyond(&shape->at[i], cutter, line) * sign;
    for (int i = 0; i < shape->count; i++) {
        int next = (i + 1) % shape->count;
        BUG_UNLESS(kept.count + 2 <= CORNERS_MOST);
        if (sides[i] >= 0)
            kept.at[kept.count++] = shape->at[i];
        if ((sides[i] > 0 && sides[next] < 0) || (sides[i] < 0 && sides[next] > 0))
            kept.at[kept.count++] = meet(&shape->at[i], &shape->at[next], sides[i], sides[next], cutter, line);
    }
    *shape = kept;
}

/* Twice the area in nm2 / 2^40; products of lengths in 2^-20 nm stay below 2^124. */
static Wide area_twice(const Polygon *shape)
{
    Wide sum = 0;
    for (int i = 1; i + 1 < shape->count; i++) {
        Wide ax = (shape->at[i].x - shape->at[0].x) >> 20;
        Wide ay = (shape->at[i].y - shape->at[0].y) >> 20;
        Wide bx = (shape->at[i + 1].x - shape->at[0].x) >> 20;
        Wide by = (shape->at[i + 1].y - shape->at[0].y) >> 20;
        sum += ax * by - bx * ay;
    }
    return sum < 0 ? -sum : sum;
}

/* Whether some height between the two belongs to both stretches of sides. */
static bool sides_meet(const EdgeLine *const sides[2], Fine bottom, Fine top)
{
    for (int i = 0; i < 2; i++) {
        bottom = fine_of(sides[i]->t0) > bottom ? fine_of(sides[i]->t0) : bottom;
        top = fine_of(sides[i]->t1) < top ? fine_of(sides[i]->t1) : top;
    }
    return bottom < top;
}

Wide band_in_column(const WeighFace *face, const Column *column, Fine bottom, Fine top, Fine *left, Fine *right)
{
    Polygon whole = {.at = {{column->left, bottom}, {column->right, bottom}, {column->right, top}, {column->left, top}},
                     .count = 4};
    clip(&whole, LIMIT, &column->lower.line, 1);
    clip(&whole, LIMIT, &column->upper.line, -1);
    Wide area = 0;
    for (int i = 0; i < face->left.count; i++)
        for (int j = 0; j < face->right.count; j++) {
            const EdgeLine *sides[2] = {&face->left.at[i], &face->right.at[j]};
            if (!face->plumb && !sides_meet(sides, bottom, top))
                continue;
            Polygon shape = whole;
            for (int side = 0; side < 2 && !face->plumb; side++) {
                clip(&shape, LEVEL, &(EdgeLine){.t0 = sides[side]->t0}, 1);
                clip(&shape, LEVEL, &(EdgeLine){.t0 = sides[side]->t1}, -1);
                clip(&shape, SIDE, sides[side], side == 0 ? 1 : -1);
            }
            Wide part = area_twice(&shape);
            for (int k = 0; part > 0 && k < shape.count; k++) {
                if (area == 0 && k == 0)
                    *left = *right = shape.at[k].x;
                *left = shape.at[k].x < *left ? shape.at[k].x : *left;
                *right = shape.at[k].x > *right ? shape.at[k].x : *right;
            }
            area += part;
        }
    return area;
}

/* The most that the course's height comes to anywhere between its ends. */
static Fine most_height(const Columns *columns, Fine bottom, Fine top, Fine left, Fine right)
{
    Fine most = 0;
    for (int i = 0; i < columns->count; i++) {
        const Column *column = &columns->at[i];
        Fine from = column->left > left ? column->left : left;
        Fine to = column->right < right ? column->right : right;
        if (to <= from)
            continue;
        Fine xs[6] = {from, to};
        int count = 2;
        const EdgeLine *lines[2] = {&column->lower.line, &column->upper.line};
        for (int j = 0; j < 4; j++) {
            const EdgeLine *line = lines[j % 2];
            if (line->v0 == line->v1)
                continue;
            Fine x = line_where(line, j < 2 ? bottom : top);
            if (x > from && x < to)
                xs[count++] = x;
        }
        for (int j = 0; j < count; j++) {
            Fine low = line_at(lines[0], xs[j]);
            Fine high = line_at(lines[1], xs[j]);
            Fine height = (high < top ? high : top) - (low > bottom ? low : bottom);
            most = height > most ? height : most;
        }
    }
    return most;
}

Reaches reaches_of(Arena *arena, const WeighFace *face, const Bands *bands)
{
    Reaches reaches = {.face = face,
                       .bands = bands,
                       .first = bands_above(bands, wide_narrow(face->lowest >> FINE_BITS)),
                       .last = bands_above(bands, wide_narrow(face->highest >> FINE_BITS))};
    reaches.at = arena_array(arena, CourseReach, reaches.last - reaches.first + 1);
    return reaches;
}

/* How far right the course reaches that is there. */
static Fine right_of(const WeighFace *face, Fine bottom, Fine top)
{
    const Columns *columns = &face->columns;
    int i = columns->count - 1;
    if (face->plumb) /* where the course has no height there is no strip either */
        return columns->at[i].right;
    Fine left, right;
    while (band_in_column(face, &columns->at[i], bottom, top, &left, &right) == 0)
        i--;
    return right;
}

const CourseReach *reach_of(Reaches *reaches, int64_t course)
{
    BUG_UNLESS(course >= reaches->first && course <= reaches->last);
    CourseReach *reach = &reaches->at[course - reaches->first];
    if (reach->asked)
        return reach;
    reach->asked = true;
    Length foot;
    const int in_list = bands_foot(reaches->bands, course, &foot);
    const Fine bottom = fine_of(foot), top = fine_of(foot + reaches->bands->height[in_list]);
    const Columns *columns = &reaches->face->columns;
    const Wide enough = (Wide)LEAST_AREA * 2 * ((Wide)1 << 40);
    Wide area = 0;
    for (int i = 0; i < columns->count && area < enough; i++) {
        Fine left, right;
        Wide part = band_in_column(reaches->face, &columns->at[i], bottom, top, &left, &right);
        if (part > 0 && area == 0)
            reach->left = left;
        area += part;
    }
    if (area < enough)
        return reach;
    reach->right = right_of(reaches->face, bottom, top);
    const Length leave = reaches->bands->leave;
    reach->hung = leave == 0 || most_height(columns, bottom, top, reach->left, reach->right) > fine_of(leave);
    return reach;
}
