#include "trade/nominal.h"

/* Sixty-fourths of an inch. */
typedef struct Size {
    int nominal, dressed;
} Size;

static const Size widths[] = {
    {2 * 64, 96},  {3 * 64, 160},  {4 * 64, 224},  {5 * 64, 288},  {6 * 64, 352},  {7 * 64, 416},  {8 * 64, 464},
    {9 * 64, 528}, {10 * 64, 592}, {11 * 64, 656}, {12 * 64, 720}, {14 * 64, 848}, {16 * 64, 976},
};

static const Size thicknesses[] = {{24, 20}, {32, 28}, {40, 36}, {48, 40}, {64, 48}, {80, 64}, {96, 80}};

static Length nominal_of(const Size *sizes, int count, Length dressed, Length step)
{
    for (int i = 0; i < count; i++)
        if (dressed <= sizes[i].dressed * (LENGTH_INCH / 64))
            return sizes[i].nominal * (LENGTH_INCH / 64);
    return length_round_up(dressed, step);
}

Length nominal_width(Length dressed)
{
    return nominal_of(widths, sizeof widths / sizeof *widths, dressed, LENGTH_INCH);
}

Length nominal_thickness(Length dressed)
{
    return nominal_of(thicknesses, sizeof thicknesses / sizeof *thicknesses, dressed, LENGTH_INCH / 4);
}
