#include "trade/trim_slope.h"

#include "base/wide.h"
#include "trade/say.h"

#include <inttypes.h>
#include <math.h>
#include <stdlib.h>

/*
 * A miter halves the angle d between the two slopes: the edge at `width` from the line ends width x tan(d / 2) from
 * square. With u and v along the slopes
 *
 *     tan(d / 2) = u x v / (|u| |v| + u . v)
 *
 * and |u| |v| a whole root. Slopes are brought to 30 bits first: finer than a nanometre over a strip
 * 1 m wide.
 */
enum { SLOPE_BITS = 30 };

/* The least whole number whose square is not below `square`. */
static Wide root_up(Wide square)
{
    Wide low = 0;
    Wide high = (Wide)1 << 63;
    while (low < high) {
        const Wide middle = low + (high - low) / 2;
        if (middle * middle >= square)
            high = middle;
        else
            low = middle + 1;
    }
    return low;
}

Length slanted(Length along, Length up)
{
    return wide_narrow(root_up((Wide)along * along + (Wide)up * up));
}

/* No strip is longer than LENGTH_MOST: a slope that nearly stands ends there. */
static Length divide_away(Wide value, Wide by)
{
    const Wide size = wide_ceiling(value < 0 ? -value : value, by);
    const Length length = size > LENGTH_MOST ? LENGTH_MOST : (Length)size;
    return value < 0 ? -length : length;
}

Length slope_tangent(Length width, Slope slope)
{
    return divide_away((Wide)width * slope.up, slope.along);
}

Length slope_upright(Length width, Slope slope)
{
    return slanted(width, slope_tangent(width, slope));
}

/* The same direction in SLOPE_BITS bits; one of the two is not 0. */
static Slope in_bits(Slope slope)
{
    while (llabs(slope.along) >> SLOPE_BITS != 0 || llabs(slope.up) >> SLOPE_BITS != 0) {
        slope.along /= 2;
        slope.up /= 2;
    }
    while (llabs(slope.along) >> (SLOPE_BITS - 1) == 0 && llabs(slope.up) >> (SLOPE_BITS - 1) == 0) {
        slope.along *= 2;
        slope.up *= 2;
    }
    return slope;
}

Length slope_miter(Length width, Slope from, Slope to)
{
    const Slope u = in_bits(from);
    const Slope v = in_bits(to);
    const Wide cross = (Wide)u.along * v.up - (Wide)u.up * v.along;
    const Wide dot = (Wide)u.along * v.along + (Wide)u.up * v.up;
    const Wide lengths =
        root_up(((Wide)u.along * u.along + (Wide)u.up * u.up) * ((Wide)v.along * v.along + (Wide)v.up * v.up));
    /* to the left of a line that turns left the inner edge ends sooner */
    return lengths + dot > 0 ? -divide_away((Wide)width * cross, lengths + dot) : 0;
}

const char *slope_degrees(Arena *arena, Length shift, Length width)
{
    const int64_t tenths = llround(atan2((double)llabs(shift), (double)width) * 1800 / acos(-1.0));
    return tenths % 10 == 0 ? say(arena, "%" PRId64, tenths / 10)
                            : say(arena, "%" PRId64 ".%" PRId64, tenths / 10, tenths % 10);
}
