#include "layout/reckon.h"

#include <stdlib.h>

#define FAR 4e12L

/* A limit as the tape gave it, at t: level before the first mark and behind the last. */
static Real off_at(const Marks *marks, Real t, bool *rake)
{
    *rake = false;
    if (marks->count == 0)
        return 0;
    int next = 0;
    while (next < marks->count && (Real)marks->at[next].at <= t)
        next++;
    if (next == 0)
        return (Real)marks->at[0].off;
    const Mark *a = &marks->at[next - 1];
    if (next == marks->count)
        return (Real)a->off;
    const Mark *b = &marks->at[next];
    const Real run = (Real)(b->at - a->at);
    const Real rise = (Real)(b->off - a->off);
    *rake = (rise < 0 ? -rise : rise) * 12 > run;
    return (Real)a->off + rise * (t - (Real)a->at) / run;
}

Reckoned reckon_face(Arena *arena, const Wall *wall, int index)
{
    const Face *face = &wall->faces.at[index];
    Reckoned reckoned = {.wall = wall, .face = face};
    Box *boxes = arena_array(arena, Box, face->openings.count);
    int *indices = arena_array(arena, int, face->openings.count);
    for (int i = 0; i < face->openings.count; i++) {
        const Opening *opening = &face->openings.at[i];
        if (opening->kind == OPENING_STOVE)
            continue;
        bool rake;
        Box *box = &boxes[reckoned.opening_count];
        const Real floor = -off_at(&face->floor, (Real)opening->left, &rake);
        const Length level = (Length)(floor < 0 ? -(Length)(-floor + 0.5L) : (Length)(floor + 0.5L));
        const bool down = opening->to_floor || opening->kind == OPENING_DOOR;
        box->left = opening->left - opening->clear;
        box->right = opening->left + opening->width + opening->clear;
        const Length bottom = opening->above_given ? level + opening->above : opening->bottom;
        box->bottom = down ? -3 * LENGTH_MOST : bottom - opening->clear;
        box->top = opening->clear + (opening->top_given  ? opening->top
                                     : opening->to_floor ? level + opening->height
                                                         : bottom + opening->height);
        indices[reckoned.opening_count++] = i;
    }
    reckoned.openings = boxes;
    reckoned.opening_index = indices;
    reckoned.left_loss = wall_corner_loss_left(wall, index);
    reckoned.right_loss = wall_corner_loss_right(wall, index);
    return reckoned;
}

Real reckon_lower(const Reckoned *face, Real x)
{
    bool rake;
    return (Real)face->face->margin.floor - off_at(&face->face->floor, x, &rake);
}

Real reckon_upper(const Reckoned *face, Real x)
{
    bool rake;
    return off_at(&face->face->ceiling, x, &rake) - (Real)face->face->margin.ceiling;
}

static Real side_left(const Reckoned *face, Real y)
{
    bool rake;
    return off_at(&face->face->left, y, &rake) + (Real)(face->face->margin.left + face->left_loss);
}

static Real side_right(const Reckoned *face, Real y)
{
    bool rake;
    return (Real)(face->face->width - face->face->margin.right - face->right_loss) -
           off_at(&face->face->right, y, &rake);
}

static int compare_reals(const void *left, const void *right)
{
    const Real a = *(const Real *)left;
    const Real b = *(const Real *)right;
    return (a > b) - (a < b);
}

enum { HEIGHTS_MOST = 96 };

/* Heights at which a side passes x, and at which it has a mark. */
static int side_heights(const Marks *marks, Real off, Real *heights, int count)
{
    for (int i = 0; i < marks->count && count < HEIGHTS_MOST - 2; i++) {
        heights[count++] = (Real)marks->at[i].at;
        if (i + 1 == marks->count)
            break;
        const Real a = (Real)marks->at[i].off - off;
        const Real b = (Real)marks->at[i + 1].off - off;
        if ((a < 0) != (b < 0) && marks->at[i].at < marks->at[i + 1].at)
            heights[count++] = (Real)marks->at[i].at + (Real)(marks->at[i + 1].at - marks->at[i].at) * a / (a - b);
    }
    return count;
}

/* Height of wood at x; `stretches` counts those that lie apart. */
static Real wood_at(const Reckoned *face, Length bottom, Length top, Real x, int *stretches)
{
    Real heights[HEIGHTS_MOST];
    Real low = reckon_lower(face, x);
    Real high = reckon_upper(face, x);
    int count = 0;
    low = low > (Real)bottom ? low : (Real)bottom;
    high = high < (Real)top ? high : (Real)top;
    heights[count++] = low;
    heights[count++] = high;
    for (int i = 0; i < face->opening_count; i++) {
        heights[count++] = (Real)face->openings[i].bottom;
        heights[count++] = (Real)face->openings[i].top;
    }
    const Face *f = face->face;
    count = side_heights(&f->left, x - (Real)(f->margin.left + face->left_loss), heights, count);
    count = side_heights(&f->right, (Real)(f->width - f->margin.right - face->right_loss) - x, heights, count);
    qsort(heights, (size_t)count, sizeof *heights, compare_reals);
    Real wood = 0;
    bool before = false;
    *stretches = 0;
    for (int i = 0; i + 1 < count; i++) {
        if (heights[i] == heights[i + 1])
            continue;
        const Real y = (heights[i] + heights[i + 1]) / 2;
        bool taken = y < low || y > high || x < side_left(face, y) || x > side_right(face, y);
        for (int j = 0; j < face->opening_count; j++) {
            const Box *box = &face->openings[j];
            taken |= x > (Real)box->left && x < (Real)box->right && y > (Real)box->bottom && y < (Real)box->top;
        }
        if (!taken)
            wood += heights[i + 1] - heights[i];
        *stretches += !taken && !before;
        before = !taken;
    }
    return wood;
}

Real reckon_wood(const Reckoned *face, Length bottom, Length top, Real x)
{
    int stretches;
    return wood_at(face, bottom, top, x, &stretches);
}

int reckon_stretches(const Reckoned *face, Length bottom, Length top, Real x)
{
    Reckoned without = *face;
    int stretches;
    without.opening_count = 0;
    wood_at(&without, bottom, top, x, &stretches);
    return stretches;
}

int reckon_parts(const Reckoned *face, Length bottom, Length top, Real x, Left parts[LEFT_MOST])
{
    bool floor_rake, ceiling_rake;
    const Real lower = (Real)face->face->margin.floor - off_at(&face->face->floor, x, &floor_rake);
    const Real upper = off_at(&face->face->ceiling, x, &ceiling_rake) - (Real)face->face->margin.ceiling;
    Real heights[HEIGHTS_MOST];
    int count = 0;
    const Real low = lower > (Real)bottom ? lower : (Real)bottom;
    const Real high = upper < (Real)top ? upper : (Real)top;
    if (low >= high)
        return 0;
    heights[count++] = low;
    heights[count++] = high;
    for (int i = 0; i < face->opening_count; i++) {
        const Box *box = &face->openings[i];
        if (x < (Real)box->left || x > (Real)box->right)
            continue;
        if ((Real)box->bottom > low && (Real)box->bottom < high)
            heights[count++] = (Real)box->bottom;
        if ((Real)box->top > low && (Real)box->top < high)
            heights[count++] = (Real)box->top;
    }
    qsort(heights, (size_t)count, sizeof *heights, compare_reals);
    int found = 0;
    for (int i = 0; i + 1 < count && found < LEFT_MOST; i++) {
        const Real y = (heights[i] + heights[i + 1]) / 2;
        bool taken = heights[i] == heights[i + 1];
        for (int j = 0; j < face->opening_count; j++) {
            const Box *box = &face->openings[j];
            taken |= x >= (Real)box->left && x <= (Real)box->right && y > (Real)box->bottom && y < (Real)box->top;
        }
        if (taken)
            continue;
        /* Edges of an opening that another one's edge meets in the open do not part the wood. */
        if (found > 0 && parts[found - 1].top == heights[i])
            parts[found - 1].top = heights[i + 1];
        else
            parts[found++] = (Left){.bottom = heights[i], .top = heights[i + 1]};
    }
    for (int i = 0; i < found; i++) {
        Left *part = &parts[i];
        const bool at_low = part->bottom == low, at_high = part->top == high;
        const bool cut_low = at_low && lower > (Real)bottom, cut_high = at_high && upper < (Real)top;
        part->floor = cut_low && !floor_rake;
        part->ceiling = cut_high && !ceiling_rake;
        const bool rake = (cut_low && floor_rake) || (cut_high && ceiling_rake);
        part->strip = !rake && (!at_low || !at_high || cut_low || cut_high);
        part->opening = -1;
    }
    return found;
}

/* ---- areas ---- */

enum { CORNERS_MOST = 32 };

typedef struct Polygon {
    Real x[CORNERS_MOST], y[CORNERS_MOST];
    int count;
} Polygon;

/* What of it has a x + b y <= c. */
static Polygon clipped(const Polygon *polygon, Real a, Real b, Real c)
{
    Polygon out = {.count = 0};
    for (int i = 0; i < polygon->count; i++) {
        const int j = (i + 1) % polygon->count;
        const Real here = a * polygon->x[i] + b * polygon->y[i] - c;
        const Real there = a * polygon->x[j] + b * polygon->y[j] - c;
        if (here <= 0) {
            out.x[out.count] = polygon->x[i];
            out.y[out.count++] = polygon->y[i];
        }
        if ((here < 0 && there > 0) || (here > 0 && there < 0)) {
            const Real share = here / (here - there);
            out.x[out.count] = polygon->x[i] + share * (polygon->x[j] - polygon->x[i]);
            out.y[out.count++] = polygon->y[i] + share * (polygon->y[j] - polygon->y[i]);
        }
    }
    return out;
}

static Real area_of(const Polygon *polygon)
{
    Real twice = 0;
    for (int i = 0; i < polygon->count; i++) {
        const int j = (i + 1) % polygon->count;
        twice += (polygon->x[i] - polygon->x[0]) * (polygon->y[j] - polygon->y[0]) -
                 (polygon->x[j] - polygon->x[0]) * (polygon->y[i] - polygon->y[0]);
    }
    return twice / 2;
}

/* Area less openings from `first` on. */
static Real area_without(const Reckoned *face, const Polygon *polygon, int first)
{
    Real area = area_of(polygon);
    for (int i = first; i < face->opening_count; i++) {
        const Box *box = &face->openings[i];
        Polygon shared = clipped(polygon, -1, 0, -(Real)box->left);
        shared = clipped(&shared, 1, 0, (Real)box->right);
        shared = clipped(&shared, 0, -1, -(Real)box->bottom);
        shared = clipped(&shared, 0, 1, (Real)box->top);
        if (shared.count >= 3)
            area -= area_without(face, &shared, i + 1);
    }
    return area;
}

/* A stretch between two marks, or beyond the outermost. */
static bool stretch_of(const Marks *marks, int i, Real *from, Real *to, Real *off_from, Real *off_to)
{
    if (marks->count == 0) {
        *from = -FAR, *to = FAR, *off_from = *off_to = 0;
        return true;
    }
    const Mark *a = &marks->at[i > 0 ? i - 1 : 0];
    const Mark *b = &marks->at[i < marks->count ? i : marks->count - 1];
    *from = i == 0 ? -FAR : (Real)a->at;
    *to = i == marks->count ? FAR : (Real)b->at;
    *off_from = (Real)a->off;
    *off_to = (Real)b->off;
    return *from < *to;
}

/* What of the polygon lies within all stretches of the sides from `right` on (0: left, 1: right). */
static void add_sides(const Reckoned *face, const Polygon *polygon, int right, Real *region, Real *wood)
{
    if (polygon->count < 3)
        return;
    if (right > 1) {
        *region += area_of(polygon);
        *wood += area_without(face, polygon, 0);
        return;
    }
    const Face *f = face->face;
    const Marks *marks = right ? &f->right : &f->left;
    const Real plumb =
        right ? (Real)(f->width - f->margin.right - face->right_loss) : (Real)(f->margin.left + face->left_loss);
    for (int i = 0; i <= marks->count; i++) {
        Real from, to, a, b;
        if (!stretch_of(marks, i, &from, &to, &a, &b))
            continue;
        Polygon within = clipped(polygon, 0, -1, -from);
        within = clipped(&within, 0, 1, to);
        const Real lean = (b - a) / (to - from);
        if (right)
            within = clipped(&within, 1, lean, plumb - a + lean * from);
        else
            within = clipped(&within, -1, lean, -(plumb + a) + lean * from);
        add_sides(face, &within, right + 1, region, wood);
    }
}

void reckon_area(const Reckoned *face, Length bottom, Length top, Real *region, Real *wood)
{
    const Face *f = face->face;
    *region = *wood = 0;
    for (int i = 0; i <= f->floor.count; i++)
        for (int j = 0; j <= f->ceiling.count; j++) {
            Real x0, x1, a0, a1, z0, z1, b0, b1;
            if (!stretch_of(&f->floor, i, &x0, &x1, &a0, &a1) || !stretch_of(&f->ceiling, j, &z0, &z1, &b0, &b1))
                continue;
            const Real left = x0 > z0 ? x0 : z0;
            const Real right = x1 < z1 ? x1 : z1;
            /* Not wider than need be: the finer are the numbers. */
            const Real near = left < -1e10L ? -1e10L : left;
            const Real far = right > 1e10L ? 1e10L : right;
            if (near >= far)
                continue;
            Polygon band = {{near, far, far, near}, {(Real)bottom, (Real)bottom, (Real)top, (Real)top}, 4};
            const Real slope = (a1 - a0) / (x1 - x0);
            const Real rise = (b1 - b0) / (z1 - z0);
            /* y >= margin - off(x); y <= off(x) - margin */
            band = clipped(&band, -slope, -1, a0 - slope * x0 - (Real)f->margin.floor);
            band = clipped(&band, -rise, 1, b0 - rise * z0 - (Real)f->margin.ceiling);
            add_sides(face, &band, 0, region, wood);
        }
}
