#include "trade/studs.h"

/* How many centres lie below x, or at it too with `at`. */
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
