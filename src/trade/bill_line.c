#include "trade/bill_line.h"

#include "base/panic.h"
#include "trade/say.h"

#include <inttypes.h>
#include <string.h>

/*
 * Counts are whole; everything else is carried in millionths of its unit and rounded when it is shown. Products of
 * areas and lengths go through two words.
 */

#define SQUARE_FOOT ((Wide)LENGTH_FOOT * LENGTH_FOOT)
#define SQUARE_METRE ((Wide)LENGTH_METRE * LENGTH_METRE)
#define CUBIC_INCH ((Wide)LENGTH_INCH * LENGTH_INCH * LENGTH_INCH)
#define CUBIC_MM ((Wide)LENGTH_MM * LENGTH_MM * LENGTH_MM)

int64_t bill_board_feet(Length thickness, Length width, Length length)
{
    Wide across = wide_divide((Wide)thickness * width * ASSUME_ONE, (Wide)LENGTH_INCH * LENGTH_INCH);
    return assume_fit(wide_divide(across * length, (Wide)144 * LENGTH_INCH));
}

/* A cubic metre is 10^27 nm3. */
int64_t bill_cubic_metres(Length thickness, Length width, Length length)
{
    Wide across = wide_divide((Wide)thickness * width, LENGTH_MM);
    return assume_fit(wide_divide(across * length, (Wide)LENGTH_MM * LENGTH_METRE));
}

int64_t bill_running_factor(Length face)
{
    return assume_fit(wide_divide((Wide)LENGTH_FOOT * ASSUME_ONE, face));
}

/* A gallon is 231 cubic inches and 128 fluid ounces; 355/113 stands for pi, off by less than one in ten million. */
Length bill_bead_length(int64_t volume, bool fluid_ounces, Length diameter)
{
    Wide across = (Wide)355 * diameter * diameter; /* x 4 x 113: the bead's section */
    Wide cubic = fluid_ounces ? CUBIC_INCH * 231 / 128 : CUBIC_MM * 1000;
    Wide whole = wide_divide(cubic / 1000 * volume, ASSUME_ONE / 1000);
    Wide length = wide_divide(whole * 452, across);
    return length < LENGTH_MOST * 1000 ? (Length)length : LENGTH_MOST * 1000;
}

const char *bill_group_words(BillGroup group)
{
    static const char *const words[BILL_GROUPS] = {
        "Wall", "Planks", "Trim", "Fastening", "Finish", "Behind the planks", "Spacers", "May be left out"};
    BUG_UNLESS(group < BILL_GROUPS);
    return words[group];
}

const char *bill_amount(Arena *arena, const BillLine *line)
{
    int64_t step = ASSUME_ONE;
    int64_t unit = 1;
    for (int i = 0; i < line->decimals; i++) {
        step /= 10;
        unit *= 10;
    }
    int64_t shown = assume_fit(wide_divide(line->amount, step));
    if (line->decimals == 0)
        return say(arena, "%" PRId64, shown);
    return say(arena, "%" PRId64 ".%0*" PRId64, shown / unit, line->decimals, shown % unit);
}

/* ---- lines ---- */

BillLine *bill_put(Bills *bills, BillGroup group, int64_t amount, int decimals, const char *unit, const char *what)
{
    BillLine *line = arena_push(bills->arena, &bills->lines);
    const char *many = strchr(unit, '|');
    if (many)
        unit = say(bills->arena, "%.*s%s", (int)(many - unit), unit, amount == ASSUME_ONE ? "" : many + 1);
    *line = (BillLine){group, what, amount, decimals, unit, "", ""};
    return line;
}

void bill_assumes(Bills *bills, BillLine *line, Assumed which, const char *words)
{
    Assumption assumption = assume(bills->wall, which);
    const char *key = assumption.key[0] ? say(bills->arena, " (%s)", assumption.key) : "";
    line->assumes = say(bills->arena, "%s%s%s%s", line->assumes, line->assumes[0] ? ", " : "", words, key);
    if (!line->source[0])
        line->source = assumption.source;
}

const char *bill_number(Arena *arena, int64_t millionths)
{
    BillLine line = {.amount = millionths, .decimals = 6};
    for (int64_t rest = millionths; line.decimals > 0 && rest % 10 == 0; rest /= 10)
        line.decimals--;
    return bill_amount(arena, &line);
}

void bill_spare(Bills *bills, BillLine *line)
{
    bill_assumes(bills, line, ASSUME_SPARE,
                 say(bills->arena, "%s %% spare", bill_number(bills->arena, assume(bills->wall, ASSUME_SPARE).value)));
}

int64_t bill_running(const Bills *bills, Length length)
{
    return assume_fit(
        wide_divide((Wide)length * ASSUME_ONE, bills->wall->units == UNITS_IN ? LENGTH_FOOT : LENGTH_METRE));
}

int64_t bill_area(const Bills *bills, Wide area)
{
    return assume_fit(wide_divide(area * ASSUME_ONE, bills->wall->units == UNITS_IN ? SQUARE_FOOT : SQUARE_METRE));
}

const char *bill_with_spare(const Bills *bills, const char *what)
{
    return assume(bills->wall, ASSUME_SPARE).value > 0 ? say(bills->arena, "%s, with spare", what) : what;
}
