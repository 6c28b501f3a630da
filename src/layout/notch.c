#include "layout/notch.h"

static Length lesser(Length a, Length b)
{
    return a < b ? a : b;
}

static Length greater(Length a, Length b)
{
    return a > b ? a : b;
}

/* The outline's highest point (or lowest) between two places. */
static Length reach(const Points *outline, Length left, Length right, bool up)
{
    bool found = false;
    Length most = 0;
    for (int i = 0; i < outline->count; i++) {
        const Point a = outline->at[i], b = outline->at[(i + 1) % outline->count];
        const Point *first = a.x < b.x ? &a : &b, *last = a.x < b.x ? &b : &a;
        if (last->x < left || first->x > right)
            continue;
        const Length places[] = {greater(first->x, left), lesser(last->x, right)};
        for (int k = 0; k < 2; k++) {
            Length y = up ? greater(a.y, b.y) : lesser(a.y, b.y);
            if (last->x > first->x)
                y = first->y +
                    (Length)wide_floor((Wide)(last->y - first->y) * (places[k] - first->x), last->x - first->x);
            most = !found ? y : up ? greater(most, y) : lesser(most, y);
            found = true;
        }
    }
    return most;
}

/* How far the notch reaches in from a long side that it breaks. */
static Length depth_across(const Cutout *cut, const Points *outline, Length left, Length right)
{
    left = greater(cut->box.left, left);
    right = lesser(cut->box.right, right);
    const Length from_top = reach(outline, left, right, true) - cut->box.bottom;
    const Length from_bottom = cut->box.top - reach(outline, left, right, false);
    if (cut->shape == CUT_TOP)
        return from_top;
    return cut->shape == CUT_BOTTOM ? from_bottom : lesser(from_top, from_bottom);
}

/* And from an end. */
static Length depth_along(const Cutout *cut, Length left, Length right)
{
    const Length from_left = cut->box.right - left, from_right = right - cut->box.left;
    if (cut->shape == CUT_LEFT)
        return from_left;
    return cut->shape == CUT_RIGHT ? from_right : lesser(from_left, from_right);
}

Length notch_depth(const Cutout *cut, const Points *outline, Length left, Length right)
{
    switch (cut->shape) {
    case CUT_HOLE: return NOTCH_LEAST;
    case CUT_TOP:
    case CUT_BOTTOM:
    case CUT_EDGE: return depth_across(cut, outline, left, right);
    case CUT_LEFT:
    case CUT_RIGHT: return depth_along(cut, left, right);
    case CUT_CORNER: return lesser(depth_across(cut, outline, left, right), depth_along(cut, left, right));
    }
    return NOTCH_LEAST;
}
