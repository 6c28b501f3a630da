#include "trade/corner_angle.h"

#include "base/wide.h"
#include "trade/trim_slope.h"

#include <stdlib.h>

/* The arm of 4 ft or 1.2 m that `gap` is measured at. */
CornerAngle corner_angle(const Wall *wall, const Corner *corner)
{
    return (CornerAngle){corner->gap, wall->units == UNITS_IN ? 48 * LENGTH_INCH : 1200 * LENGTH_MM};
}

static Length share(Length of, Length part, Length whole)
{
    return wide_narrow(wide_divide((Wide)of * part, whole));
}

/* The adjacent side of half the angle: its opposite one is `off`. */
static Length half_arm(CornerAngle angle)
{
    return slanted(angle.arm, angle.off) + angle.arm;
}

Length corner_square_open(CornerAngle angle, Length thickness)
{
    return share(thickness, (Length)llabs(angle.off), angle.arm);
}

Length corner_miter_back(CornerAngle angle, Length thickness)
{
    return share(thickness, half_arm(angle) - angle.off, half_arm(angle) + angle.off);
}

/* The cut is thickness x root 2 long, and each of the two is off the corner's middle by half the angle. */
Length corner_miter_open(CornerAngle angle, Length thickness)
{
    return share(2 * slanted(thickness, thickness), (Length)llabs(angle.off), slanted(half_arm(angle), angle.off));
}

const char *corner_degrees(Arena *arena, CornerAngle angle)
{
    return slope_degrees(arena, angle.off, angle.arm);
}

const char *corner_miter_degrees(Arena *arena, CornerAngle angle)
{
    return slope_degrees(arena, half_arm(angle) - angle.off, half_arm(angle) + angle.off);
}
