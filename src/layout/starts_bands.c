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

int64_t bands_above(const Bands *bands, Length y)
{
    int64_t turn = wide_narrow(wide_floor((Wide)y - bands->start, bands->run));
    Length rest = wide_narrow((Wide)y - bands->start - (Wide)turn * bands->run);
    int i = 0;
    while (i < bands->count && bands->foot[i] + bands->height[i] <= rest)
        i++;
    return turn * bands->count + i;
}

bool bands_gap_at(const Bands *bands, Length y)
{
    Length rest = wide_narrow((Wide)y - bands->start - wide_floor((Wide)y - bands->start, bands->run) * bands->run);
    for (int i = 0; i < bands->count; i++)
        if (rest > bands->foot[i] && rest < bands->foot[i] + bands->height[i])
            return false;
    return true;
}
