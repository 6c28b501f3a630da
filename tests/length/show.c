#include "support/test.h"

#include "base/random.h"
#include "length/length.h"
#include "support/measures.h"

#include <string.h>

#define INCH(n) ((n)*LENGTH_INCH)

typedef void Shower(Length value, Units units, Length step, char *out);

static void assert_shows(Shower *show, Length value, Units units, Length step, const char *expected)
{
    char out[LENGTH_TEXT_MAX];
    show(value, units, step, out);
    assert_string_equal(out, expected);
}

START_TEST(inches_in_lowest_terms)
{
    assert_shows(length_show, INCH(81) / 2, UNITS_IN, SIXTEENTH, "40 1/2");
    assert_shows(length_show, -SIXTEENTH, UNITS_IN, SIXTEENTH, "-1/16");
    assert_shows(length_show, 0, UNITS_IN, SIXTEENTH, "0");
    assert_shows(length_show, INCH(3), UNITS_IN, SIXTEENTH, "3");
    assert_shows(length_show, INCH(1) / 4, UNITS_IN, LENGTH_INCH / 64, "1/4");
    assert_shows(length_show, -INCH(9) / 4, UNITS_IN, SIXTEENTH, "-2 1/4");
    assert_shows(length_show, LENGTH_INCH / 64, UNITS_IN, LENGTH_INCH / 64, "1/64");
    assert_shows(length_show_unit, INCH(81) / 2, UNITS_IN, SIXTEENTH, "40 1/2 in");
}
END_TEST

START_TEST(millimetres_with_the_steps_digits)
{
    assert_shows(length_show, MM(1029), UNITS_MM, MM(1), "1029");
    assert_shows(length_show, 12500000, UNITS_MM, MM(1) / 2, "12.5");
    assert_shows(length_show, MM(12), UNITS_MM, MM(1) / 2, "12.0");
    assert_shows(length_show, MM(12), UNITS_MM, MM(1) / 10, "12.0");
    assert_shows(length_show, -50000, UNITS_MM, MM(1) / 10, "-0.1");
    assert_shows(length_show, 1587500, UNITS_MM, SIXTEENTH, "1.5875");
    assert_shows(length_show, 1, UNITS_MM, 1, "0.000001");
    assert_shows(length_show_unit, MM(1029), UNITS_MM, MM(1), "1029 mm");
}
END_TEST

START_TEST(a_small_negative_has_no_sign_once_it_is_nothing)
{
    assert_shows(length_show, -1, UNITS_IN, SIXTEENTH, "0");
    assert_shows(length_show, -1, UNITS_MM, MM(1) / 10, "0.0");
    assert_shows(length_show_long, -1, UNITS_IN, SIXTEENTH, "0 in");
}
END_TEST

START_TEST(long_forms_for_echoes)
{
    assert_shows(length_show_long, INCH(199) / 2, UNITS_IN, SIXTEENTH, "8' 3 1/2\"");
    assert_shows(length_show_long, INCH(23) / 2, UNITS_IN, SIXTEENTH, "11 1/2 in");
    assert_shows(length_show_long, INCH(12), UNITS_IN, SIXTEENTH, "1' 0\"");
    assert_shows(length_show_long, INCH(12) - 1, UNITS_IN, SIXTEENTH, "1' 0\"");
    assert_shows(length_show_long, -INCH(199) / 2, UNITS_IN, SIXTEENTH, "-8' 3 1/2\"");
    assert_shows(length_show_long, MM(2527), UNITS_MM, MM(1), "2.527 m");
    assert_shows(length_show_long, MM(999), UNITS_MM, MM(1), "999 mm");
    assert_shows(length_show_long, MM(1000) - 1, UNITS_MM, MM(1), "1.000 m");
    assert_shows(length_show_long, -MM(2527) - 500000, UNITS_MM, MM(1) / 2, "-2.5275 m");
}
END_TEST

START_TEST(a_step_that_is_no_64th_counts_as_one_in_inches)
{
    assert_shows(length_show, MM(100), UNITS_IN, MM(1), "3 15/16"); /* 3.937 in = 3 59.97/64 */
    assert_shows(length_show_long, MM(2527), UNITS_IN, MM(1) / 10, "8' 3 31/64\"");
}
END_TEST

START_TEST(writes_the_shortest_exact_text)
{
    const struct {
        Length value;
        Units units;
        const char *text;
    } rows[] = {
        {INCH(11) / 4, UNITS_IN, "2 3/4"},    {-INCH(11) / 4, UNITS_IN, "-2 3/4"}, {0, UNITS_IN, "0"},
        {LENGTH_INCH / 64, UNITS_IN, "1/64"}, {LENGTH_INCH / 10, UNITS_IN, "0.1"}, {127, UNITS_IN, "0.000005"},
        {-127, UNITS_IN, "-0.000005"},        {1950000, UNITS_IN, "1.95 mm"},      {1, UNITS_IN, "0.000001 mm"},
        {MM(120), UNITS_MM, "120"},           {1950000, UNITS_MM, "1.95"},         {-1, UNITS_MM, "-0.000001"},
        {INCH(1), UNITS_MM, "25.4"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        char out[LENGTH_TEXT_MAX];
        length_write(rows[i].value, rows[i].units, out);
        assert_string_equal(out, rows[i].text);
    }
}
END_TEST

static Length read_back(const char *text, Units units)
{
    Length back = 0;
    Err err;
    if (!length_parse(text, strlen(text), units, &back, &err))
        FAIL("%s", err.text);
    return back;
}

/* Lengths of every size, on the marks of either system and between them. */
static Length random_length(Random *random)
{
    const Length steps[] = {1, 127, 1000, LENGTH_MM / 10, LENGTH_MM, LENGTH_INCH / 64, LENGTH_INCH / 10, LENGTH_INCH};
    Length step = steps[random_below(random, sizeof steps / sizeof *steps)];
    Length most = LENGTH_MOST >> random_below(random, 40);
    return random_between(random, -most, most) / step * step;
}

START_TEST(print_then_parse_is_the_identity)
{
    Random random = {2026};
    for (int i = 0; i < 200000; i++) {
        Length value = random_length(&random);
        char out[LENGTH_TEXT_MAX];
        for (Units units = UNITS_IN; units <= UNITS_MM; units++) {
            length_write(value, units, out);
            assert_int_equal(read_back(out, units), value);
        }
    }
    Length ends[] = {LENGTH_MOST, -LENGTH_MOST, LENGTH_MOST - 1, 1 - LENGTH_MOST, 1, -1, 0};
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
        char out[LENGTH_TEXT_MAX];
        length_write(ends[i], UNITS_IN, out);
        assert_int_equal(read_back(out, UNITS_IN), ends[i]);
        length_write(ends[i], UNITS_MM, out);
        assert_int_equal(read_back(out, UNITS_MM), ends[i]);
    }
}
END_TEST

START_TEST(what_is_shown_reads_back_on_its_step)
{
    const struct {
        Units units;
        Length step;
    } grids[] = {
        {UNITS_IN, LENGTH_INCH / 8},  {UNITS_IN, LENGTH_INCH / 16}, {UNITS_IN, LENGTH_INCH / 32},
        {UNITS_IN, LENGTH_INCH / 64}, {UNITS_MM, LENGTH_MM},        {UNITS_MM, LENGTH_MM / 2},
        {UNITS_MM, LENGTH_MM / 10},
    };
    Random random = {64};
    for (int i = 0; i < 200000; i++) {
        size_t g = (size_t)random_below(&random, sizeof grids / sizeof *grids);
        Units units = grids[g].units;
        Length value = random_length(&random) / 2;
        Length rounded = length_round(value, grids[g].step);
        char out[LENGTH_TEXT_MAX];
        length_show(value, units, grids[g].step, out);
        assert_int_equal(read_back(out, units), rounded);
        length_show_unit(value, units, grids[g].step, out);
        assert_int_equal(read_back(out, units == UNITS_IN ? UNITS_MM : UNITS_IN), rounded);
        length_show_long(value, units, grids[g].step, out);
        assert_int_equal(read_back(out, units == UNITS_IN ? UNITS_MM : UNITS_IN), rounded);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        inches_in_lowest_terms,
        millimetres_with_the_steps_digits,
        a_small_negative_has_no_sign_once_it_is_nothing,
        long_forms_for_echoes,
        a_step_that_is_no_64th_counts_as_one_in_inches,
        writes_the_shortest_exact_text,
        print_then_parse_is_the_identity,
        what_is_shown_reads_back_on_its_step,
    };
    return RUN(tests);
}
