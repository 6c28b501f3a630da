#include "layout/starts_bands.h"

#include "base/wide.h"

Bands bands_of(Arena *arena, const Planks *planks)
{
    int count = planks->widths.count;
    Length *foot = arena_array(arena, Length, count);
    Length *height = arena_array(arena, Length, count);
    Length run = 0;
    Length narrowest = LENGTH_MOST;
    for (int i = 0; i < count; i++) {
        foot[i] = run;
        height[i] = planks->widths.at[i] - planks->lap;
        run += height[i] + planks->reveal;
        if (height[i] < narrowest)
            narrowest = height[i];
    }
    return (Bands){.count = count,
                   .foot = foot,
                   .height = height,
                   .run = run,
                   .leave = planks->leave,
                   .least = planks->least_given ? planks->least : wide_narrow(wide_divide(narrowest, 3))};
}

int bands_foot(const Bands *bands, int64_t number, Length *bottom)
{
    int64_t turn = wide_narrow(wide_floor(number, bands->count));
    int i = (int)(number - turn * bands->count);
    *bottom = wide_narrow(bands->start + (Wide)turn * bands->run + bands->foot[i]);
    return i;
}

/* The first course of the list whose upper edge lies above `rest`, which is measured from the list's foot; `count`
 * where none does. */
static int first_above(const Bands *bands, Length rest)
{
    int low = 0;
    int high = bands->count;
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (bands->foot[middle] + bands->height[middle] > rest)
            high = middle;
        else
            low = middle + 1;
    }
    return low;
}

int64_t bands_above(const Bands *bands, Length y)
{
    int64_t turn = wide_narrow(wide_floor((Wide)y - bands->start, bands->run));
    Length rest = wide_narrow((Wide)y - bands->start - (Wide)turn * bands->run);
    return turn * bands->count + first_above(bands, rest);
}

bool bands_gap_at(const Bands *bands, Length y)
{
    Length rest = wide_narrow((Wide)y - bands->start - wide_floor((Wide)y - bands->start, bands->run) * bands->run);
    int i = first_above(bands, rest);
    return i == bands->count || rest <= bands->foot[i];
}
