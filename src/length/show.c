#include "length/length.h"

#include "base/panic.h"

#include <inttypes.h>
#include <stdio.h>

enum { SIXTY_FOURTH = 396875 };

static uint64_t size_of(Length value)
{
    return value < 0 ? -(uint64_t)value : (uint64_t)value;
}

static const char *sign_of(Length value)
{
    return value < 0 ? "-" : "";
}

/* How many digits behind the point a whole multiple of `step` needs, of six where 1000000 is one. */
static int digits_for(uint64_t step)
{
    int digits = 6;
    while (digits > 0 && step % 10 == 0) {
        step /= 10;
        digits--;
    }
    return digits;
}

/* value / 10^6 with so many digits behind the point; the rest of them is zeros. */
static void put_decimal(char *out, const char *sign, uint64_t millionths, int digits)
{
    uint64_t whole = millionths / 1000000;
    uint64_t behind = millionths % 1000000;
    for (int i = digits; i < 6; i++)
        behind /= 10;
    if (digits == 0)
        snprintf(out, LENGTH_TEXT_MAX, "%s%" PRIu64, sign, whole);
    else
        snprintf(out, LENGTH_TEXT_MAX, "%s%" PRIu64 ".%0*" PRIu64, sign, whole, digits, behind);
}

/* Inches out of 64ths, in lowest terms. */
static void put_inches(char *out, const char *sign, uint64_t sixty_fourths)
{
    uint64_t whole = sixty_fourths / 64;
    uint64_t over = sixty_fourths % 64;
    uint64_t under = 64;
    for (; over != 0 && over % 2 == 0; over /= 2)
        under /= 2;
    if (over == 0)
        snprintf(out, LENGTH_TEXT_MAX, "%s%" PRIu64, sign, whole);
    else if (whole == 0)
        snprintf(out, LENGTH_TEXT_MAX, "%s%" PRIu64 "/%" PRIu64, sign, over, under);
    else
        snprintf(out, LENGTH_TEXT_MAX, "%s%" PRIu64 " %" PRIu64 "/%" PRIu64, sign, whole, over, under);
}

/* The step that can be shown in `units`: inches come in 64ths and whole multiples of them. */
static Length shown_step(Units units, Length step)
{
    BUG_UNLESS(step > 0);
    return units == UNITS_IN && step % SIXTY_FOURTH != 0 ? SIXTY_FOURTH : step;
}

void length_show(Length value, Units units, Length step, char *out)
{
    step = shown_step(units, step);
    Length rounded = length_round(value, step);
    if (units == UNITS_IN)
        put_inches(out, sign_of(rounded), size_of(rounded) / SIXTY_FOURTH);
    else
        put_decimal(out, sign_of(rounded), size_of(rounded), digits_for((uint64_t)step));
}

void length_show_unit(Length value, Units units, Length step, char *out)
{
    char bare[LENGTH_TEXT_MAX];
    length_show(value, units, step, bare);
    snprintf(out, LENGTH_TEXT_MAX, "%.40s %s", bare, units == UNITS_IN ? "in" : "mm");
}

void length_show_long(Length value, Units units, Length step, char *out)
{
    step = shown_step(units, step);
    Length rounded = length_round(value, step);
    uint64_t size = size_of(rounded);
    if (units == UNITS_IN && size >= LENGTH_FOOT) {
        char inches[LENGTH_TEXT_MAX];
        put_inches(inches, "", size % LENGTH_FOOT / SIXTY_FOURTH);
        snprintf(out, LENGTH_TEXT_MAX, "%s%" PRIu64 "' %.20s\"", sign_of(rounded), size / LENGTH_FOOT, inches);
    } else if (units == UNITS_MM && size >= LENGTH_METRE) {
        int digits = digits_for((uint64_t)step) + 3;
        uint64_t behind = size % LENGTH_METRE;
        for (int i = digits; i < 9; i++)
            behind /= 10;
        snprintf(out, LENGTH_TEXT_MAX, "%s%" PRIu64 ".%0*" PRIu64 " m", sign_of(rounded), size / LENGTH_METRE, digits,
                 behind);
    } else {
        length_show_unit(rounded, units, step, out);
    }
}

/* An inch is 127 x 200000 nm, and 1/200000 is 5 millionths: a whole multiple of 127 nm has six decimals of an inch at
 * the most. */
void length_write(Length value, Units units, char *out)
{
    uint64_t size = size_of(value);
    if (units == UNITS_MM) {
        put_decimal(out, sign_of(value), size, digits_for(size));
    } else if (size % SIXTY_FOURTH == 0) {
        put_inches(out, sign_of(value), size / SIXTY_FOURTH);
    } else if (size % 127 == 0) {
        put_decimal(out, sign_of(value), size / 127 * 5, digits_for(size / 127 * 5));
    } else {
        char bare[LENGTH_TEXT_MAX];
        put_decimal(bare, sign_of(value), size, digits_for(size));
        snprintf(out, LENGTH_TEXT_MAX, "%.40s mm", bare);
    }
}
