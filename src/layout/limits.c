#include "layout/limits.h"

#include "base/panic.h"
#include "wall/straight.h"

/*
 *        y1 . . . . . . __-o       A rail runs from (x0, y0) to (x1, y1). Its y at x is
 *                  __--            y0 + (y1 - y0) (x - x0) / (x1 - x0);
 *        y0  o__---                it meets the level y at
 *            x0            x1      x0 + (y - y0) (x1 - x0) / (y1 - y0).
 *
 * Sizes: coordinates of marks stay below 2^42 either way, so a place on one slanted rail has its x over a
 * denominator below 2^42 and every value asked there fits in 127 bits. The crossing of two slanted rails has a
 * denominator up to 2^84; the y of both is worked out with it, and a third rail is taken at the rounded x.
 */

/* Largest denominator with which a rail's value still fits. */
#define UNDER_MOST ((Wide)1 << 43)

ExactPlace place_at(Length x)
{
    return (ExactPlace){.over = x, .under = 1, .x = x};
}

int place_compare(const ExactPlace *a, const ExactPlace *b)
{
    if (a->x != b->x)
        return a->x < b->x ? -1 : 1;
    return wide_compare_ratio(a->over, a->under, b->over, b->under);
}

Length rail_at(const Rail *rail, const ExactPlace *place)
{
    if (rail->y0 == rail->y1)
        return rail->y0;
    if (place->one == rail || place->two == rail)
        return place->y;
    const bool exact = place->under <= UNDER_MOST;
    const Wide over = exact ? place->over : place->x;
    const Wide under = exact ? place->under : 1;
    const Wide run = under * (rail->x1 - rail->x0);
    return wide_narrow(wide_divide(rail->y0 * run + (rail->y1 - rail->y0) * (over - rail->x0 * under), run));
}

static bool level(const Rail *rail)
{
    return rail->y0 == rail->y1;
}

static ExactPlace place_of(Wide over, Wide under, const Rail *a, const Rail *b)
{
    if (under < 0) {
        over = -over;
        under = -under;
    }
    return (ExactPlace){.over = over, .under = under, .x = wide_narrow(wide_divide(over, under)), .one = a, .two = b};
}

bool rails_cross(const Rail *a, const Rail *b, ExactPlace *place)
{
    if (level(a)) {
        const Rail *swap = a;
        a = b;
        b = swap;
    }
    if (level(a))
        return false;
    const Wide run = a->x1 - a->x0;
    const Wide rise = a->y1 - a->y0;
    if (level(b)) {
        const Length y = b->y0;
        if ((y < a->y0 && y < a->y1) || (y > a->y0 && y > a->y1))
            return false;
        *place = place_of(a->x0 * rise + (y - a->y0) * run, rise, a, b);
        place->y = y;
    } else {
        const Wide run_b = b->x1 - b->x0;
        const Wide rise_b = b->y1 - b->y0;
        const Wide under = rise * run_b - rise_b * run;
        if (under == 0)
            return false;
        const Wide share = (b->y0 - a->y0) * run_b + (a->x0 - b->x0) * rise_b;
        /* Within a's run, or the numbers below may not fit. */
        if (under > 0 ? share < 0 || share > under : share > 0 || share < under)
            return false;
        *place = place_of(a->x0 * under + run * share, under, a, b);
        place->y = wide_narrow(wide_divide(a->y0 * under + rise * share, under));
    }
    return place->x >= b->x0 && place->x <= b->x1;
}

/* ---- limits ---- */

Rails limit_rails(Arena *arena, const Points *limit, bool upper, Length cut, Length left, Length right)
{
    Rails rails = {0};
    const Edge gentle = upper ? EDGE_CEILING : EDGE_FLOOR;
    for (int i = 0; i <= limit->count; i++) {
        Point a = limit->at[i > 0 ? i - 1 : 0];
        Point b = limit->at[i < limit->count ? i : limit->count - 1];
        if (upper ? a.y >= cut && b.y >= cut : a.y <= cut && b.y <= cut)
            continue;
        if (i == 0)
            a.x = -LAYOUT_FAR;
        if (i == limit->count)
            b.x = LAYOUT_FAR;
        if (a.x >= b.x || a.x >= right || b.x <= left)
            continue;
        *arena_push(arena, &rails) = (Rail){.x0 = a.x,
                                            .y0 = a.y,
                                            .x1 = b.x,
                                            .y1 = b.y,
                                            .edge = straight_is_rake(b.x - a.x, b.y - a.y) ? EDGE_RAKE : gentle,
                                            .opening = -1};
    }
    return rails;
}

void limit_range(const Points *limit, bool by_y, Length from, Length to, Length *lowest, Length *highest)
{
    bool any = false;
    BUG_UNLESS(limit->count > 0 && from < to);
    for (int i = 0; i <= limit->count; i++) {
        const Point *a = &limit->at[i > 0 ? i - 1 : 0];
        const Point *b = &limit->at[i < limit->count ? i : limit->count - 1];
        const Length t0 = i == 0 ? -LAYOUT_FAR : by_y ? a->y : a->x;
        const Length t1 = i == limit->count ? LAYOUT_FAR : by_y ? b->y : b->x;
        if (t0 >= t1 || t0 >= to || t1 <= from)
            continue;
        const Length v0 = by_y ? a->x : a->y;
        const Length v1 = by_y ? b->x : b->y;
        for (int end = 0; end < 2; end++) {
            const Length t = end == 0 ? (t0 > from ? t0 : from) : (t1 < to ? t1 : to);
            const Wide over = v0 == v1 ? v0 : v0 * (Wide)(t1 - t0) + ((Wide)v1 - v0) * (t - t0);
            const Wide under = v0 == v1 ? 1 : t1 - t0;
            const Length down = wide_narrow(wide_floor(over, under));
            const Length up = wide_narrow(wide_ceiling(over, under));
            *lowest = any && *lowest < down ? *lowest : down;
            *highest = any && *highest > up ? *highest : up;
            any = true;
        }
    }
}
