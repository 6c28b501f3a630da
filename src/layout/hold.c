#include "layout/hold.h"

/* How many centers lie below x, or at it too with `at`. */
static int below(const LengthList *studs, Length x, bool at)
{
    int low = 0;
    int high = studs->count;
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (studs->at[middle] < x || (at && studs->at[middle] == x))
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

int studs_between(const LengthList *studs, Length left, Length right)
{
    return right < left ? 0 : below(studs, right, true) - below(studs, left, false);
}

Hold hold_of(const LengthList *studs, const HoldSpan *span)
{
    int first = below(studs, span->left, false), last = below(studs, span->right, true) - 1;
    while (first <= last && studs->at[first] < span->left + STUD_END_LEAST &&
           !(span->left_joint && studs->at[first] == span->left))
        first++;
    while (first <= last && studs->at[last] > span->right - STUD_END_LEAST &&
           !(span->right_joint && studs->at[last] == span->right))
        last--;
    if (first > last)
        return (Hold){0};
    return (Hold){last - first + 1, studs->at[first] - span->left, span->right - studs->at[last]};
}

bool hold_is_loose(const Hold *hold)
{
    return hold->studs < 2 || hold->left > OVERHANG_MOST || hold->right > OVERHANG_MOST;
}
