#include "screen/views/shape.h"

#include "wall/straight.h"

Length shape_between(Length left, Length right, Length y_left, Length y_right, Length x)
{
    if (y_left == y_right || x <= left || right <= left)
        return y_left;
    if (x >= right)
        return y_right;
    return straight_at(left, y_left, right, y_right, x);
}

bool shape_narrow(const Slab *slab, const Part *part, Length x, Length least)
{
    if (part->bottom_edge == EDGE_RAKE || part->top_edge == EDGE_RAKE)
        return false;
    if (part->bottom_edge == EDGE_BAND && part->top_edge == EDGE_BAND)
        return false;
    Length bottom = shape_between(slab->left, slab->right, part->bottom_left, part->bottom_right, x);
    Length top = shape_between(slab->left, slab->right, part->top_left, part->top_right, x);
    return top - bottom < least;
}

void shape_reach(const FaceLayout *face, Length *low, Length *high)
{
    *low = face->lower.at[0].y;
    *high = face->upper.at[0].y;
    for (int i = 1; i < face->lower.count; i++)
        if (face->lower.at[i].y < *low)
            *low = face->lower.at[i].y;
    for (int i = 1; i < face->upper.count; i++)
        if (face->upper.at[i].y > *high)
            *high = face->upper.at[i].y;
}
