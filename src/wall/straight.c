#include "wall/straight.h"

#include "base/panic.h"
#include "base/wide.h"

Length straight_at(Length x0, Length y0, Length x1, Length y1, Length x)
{
    if (x0 == x1)
        return y1;
    const Wide run = (Wide)x1 - x0;
    return wide_narrow(wide_divide(y0 * run + ((Wide)y1 - y0) * ((Wide)x - x0), run));
}

bool straight_is_rake(Length run, Length rise)
{
    return (rise < 0 ? -(Wide)rise : rise) * 12 > run;
}

Length marks_off(const Marks *marks, Length at, bool after)
{
    BUG_UNLESS(marks->count > 0);
    /* The first mark beyond `at`: behind it, or with `after` strictly behind it. */
    int next = 0;
    while (next < marks->count && (after ? marks->at[next].at <= at : marks->at[next].at < at))
        next++;
    if (next == 0)
        return marks->at[0].off;
    const Mark *before = &marks->at[next - 1];
    if (next == marks->count)
        return before->off;
    return straight_at(before->at, before->off, marks->at[next].at, marks->at[next].off, at);
}

Length opening_foot(const Face *face, const Opening *opening)
{
    if (!opening->to_floor && !opening->above_given)
        return opening->bottom;
    return (opening->above_given ? opening->above : 0) - marks_off(&face->floor, opening->left, true);
}

Length opening_head(const Face *face, const Opening *opening)
{
    return opening->top_given ? opening->top : opening_foot(face, opening) + opening->height;
}

bool marks_alike(const Wall *wall, Length a, Length b)
{
    return length_round(a, wall->round) == length_round(b, wall->round);
}
