#include "layout/slant.h"

/*
 *           ________________            An end is bounded by the sides that lean, and by the rakes that run out toward
 *          /|      |                    it: tiles are walked inward from the end as long as some part of them has such
 *    side / | rake |   level            an edge. Of several lines the flattest counts; the blade's way through the
 *        /__|______|_________           plank is longest there.
 */

static bool is_flatter(Length run, Length rise, const Slant *than)
{
    return (Wide)run * than->rise > (Wide)than->run * rise;
}

/* Takes the rail in where it bounds the end: a side's own stretch, or a rake that the wood grows away from. */
static bool take(Slant *slant, const Rail *rail, bool is_top, bool right)
{
    if (rail->y0 == rail->y1 || (!rail->side && rail->edge != EDGE_RAKE))
        return false;
    /* Wood under a rail that rises to the right, or over one that falls, lies to the right of it. */
    const bool wood_is_right = is_top == (rail->y1 > rail->y0);
    if (wood_is_right == right)
        return false;
    const Length run = rail->x1 - rail->x0;
    const Length rise = rail->y1 > rail->y0 ? rail->y1 - rail->y0 : rail->y0 - rail->y1;
    if (is_flatter(run, rise, slant)) {
        slant->run = run;
        slant->rise = rise;
    }
    slant->side |= rail->side;
    return true;
}

Slant slant_of_end(const Tiles *tiles, int first, int last, bool right)
{
    Slant slant = {.run = 0, .rise = 1};
    const int step = right ? -1 : 1;
    bool bounded = true;
    for (int i = right ? last : first; bounded && i >= first && i <= last; i += step) {
        const Tile *tile = &tiles->at[i];
        bounded = false;
        for (int j = 0; j < tile->part_count; j++) {
            bounded |= take(&slant, tile->parts[j].top, true, right);
            bounded |= take(&slant, tile->parts[j].bottom, false, right);
        }
    }
    return slant;
}

Length slant_kerf(Length kerf, const Slant *slant, bool miter)
{
    if (slant->run == 0 && !miter)
        return kerf;
    /* The least `low` with (low / kerf)^2 >= (rise^2 (1 + m^2) + run^2) / rise^2; kerf x (2 + run / rise) is enough. */
    const Wide rise = slant->rise, run = slant->run;
    const Wide over = rise * rise * (miter ? 2 : 1) + run * run;
    const Wide under = rise * rise;
    Wide low = kerf, high = 2 * (Wide)kerf + wide_ceiling((Wide)kerf * run, rise);
    if (kerf == 0 || high > LENGTH_MOST)
        return kerf == 0 ? 0 : LENGTH_MOST;
    while (low < high) {
        const Wide middle = low + (high - low) / 2;
        if (wide_compare_ratio(middle * middle, (Wide)kerf * kerf, over, under) >= 0)
            high = middle;
        else
            low = middle + 1;
    }
    return wide_narrow(low);
}
