/* Lengths held against published figures, each with its publication. */
#include "support/test.h"

#include "base/wide.h"
#include "length/length.h"
#include "support/measures.h"

#include <stdio.h>
#include <string.h>

static Length reads(const char *text, Units units)
{
    Length length = 0;
    Err err;
    if (!length_parse(text, strlen(text), units, &length, &err))
        FAIL("%s", err.text);
    return length;
}

static void assert_shown(Length value, Units units, Length step, const char *expected)
{
    char out[LENGTH_TEXT_MAX];
    length_show(value, units, step, out);
    assert_string_equal(out, expected);
}

/* The international yard and pound agreement of 1959: 1 in = 25.4 mm, 1 ft = 0.3048 m. */
START_TEST(the_inch_of_1959)
{
    assert_int_equal(reads("1 in", UNITS_MM), reads("25.4 mm", UNITS_IN));
    assert_int_equal(reads("1 ft", UNITS_MM), reads("0.3048 m", UNITS_IN));
}
END_TEST

/* NIST Special Publication 811, B.7.2: 36 ft = 10.9728 m, which gives 11.0 m where it is to be rounded to a decimetre.
 */
START_TEST(factors_are_those_of_nist_sp_811)
{
    Length length = reads("36 ft", UNITS_MM);
    assert_int_equal(length, reads("10.9728 m", UNITS_MM));
    assert_int_equal(length_round(length, LENGTH_METRE / 10), reads("11.0 m", UNITS_MM));
}
END_TEST

/* NIST Letter Circular 1137: 36 in is 91 cm to the nearest centimetre (91.44), 40.1 in is 101.9 cm to the millimetre
 * (101.854). */
START_TEST(figures_are_those_of_nist_lc_1137)
{
    assert_int_equal(reads("36 in", UNITS_MM), reads("91.44 cm", UNITS_MM));
    assert_shown(reads("36 in", UNITS_MM), UNITS_MM, 10 * LENGTH_MM, "910");
    assert_int_equal(reads("40.1 in", UNITS_MM), reads("101.854 cm", UNITS_MM));
    assert_shown(reads("40.1 in", UNITS_MM), UNITS_MM, LENGTH_MM, "1019");
}
END_TEST

/* Decimal equivalents of fractions of an inch, as shop tables print them (common practice; exact by definition of the
 * inch). */
START_TEST(fractions_are_those_of_the_published_table)
{
    const char *rows[][3] = {
        {"1/16", "0.0625", "1.5875"},     {"1/8", "0.125", "3.175"},
        {"3/16", "0.1875", "4.7625"},     {"1/4", "0.25", "6.35"},
        {"5/16", "0.3125", "7.9375"},     {"3/8", "0.375", "9.525"},
        {"7/16", "0.4375", "11.1125"},    {"1/2", "0.5", "12.7"},
        {"9/16", "0.5625", "14.2875"},    {"5/8", "0.625", "15.875"},
        {"11/16", "0.6875", "17.4625"},   {"3/4", "0.75", "19.05"},
        {"13/16", "0.8125", "20.6375"},   {"7/8", "0.875", "22.225"},
        {"15/16", "0.9375", "23.8125"},   {"1", "1.0", "25.4"},
        {"1/32", "0.03125", "0.79375"},   {"3/32", "0.09375", "2.38125"},
        {"5/32", "0.15625", "3.96875"},   {"7/32", "0.21875", "5.55625"},
        {"9/32", "0.28125", "7.14375"},   {"11/32", "0.34375", "8.73125"},
        {"1/64", "0.015625", "0.396875"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        Length fraction = reads(rows[i][0], UNITS_IN);
        assert_int_equal(reads(rows[i][1], UNITS_IN), fraction);
        assert_int_equal(reads(rows[i][2], UNITS_MM), fraction);
        char out[LENGTH_TEXT_MAX];
        length_write(fraction, UNITS_IN, out);
        assert_string_equal(out, rows[i][0]);
        length_write(fraction, UNITS_MM, out);
        assert_string_equal(out, rows[i][2]);
    }
    /* the same tables' rounding example: 0.123 x 64 = 7.87, so 8/64 */
    assert_shown(reads("0.123", UNITS_IN), UNITS_IN, LENGTH_INCH / 64, "1/8");
}
END_TEST

/* Brick Industry Association, Technical Note 10B (1993), table 3: heights of courses, each rounded to 1/16 in from the
 * exact sum. Sixteenths worked from n x 8/3 and n x 16/5 where the reprint is not legible. */
START_TEST(courses_of_brick_stand_at_the_published_heights)
{
    const struct {
        int courses;
        const char *three_in_8;
        const char *five_in_16;
    } rows[] = {
        {1, "2 11/16", "3 3/16"},        {2, "5 5/16", "6 3/8"},          {3, "8", "9 5/8"},
        {4, "10 11/16", "1' 0 13/16\""}, {5, "1' 1 5/16\"", "1' 4\""},    {6, "1' 4\"", "1' 7 3/16\""},
        {10, "2' 2 11/16\"", "2' 8\""},  {12, "2' 8\"", "3' 2 3/8\""},    {15, "3' 4\"", "4' 0\""},
        {24, "5' 4\"", "6' 4 13/16\""},  {30, "6' 8\"", "8' 0\""},        {36, "8' 0\"", "9' 7 3/16\""},
        {48, "10' 8\"", "12' 9 5/8\""},  {50, "11' 1 5/16\"", "13' 4\""},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        Length third = wide_narrow(wide_divide((Wide)rows[i].courses * 8 * LENGTH_INCH, 3));
        Length fifth = rows[i].courses * 16 * (LENGTH_INCH / 5);
        assert_int_equal(length_round(third, SIXTEENTH), reads(rows[i].three_in_8, UNITS_IN));
        assert_int_equal(length_round(fifth, SIXTEENTH), reads(rows[i].five_in_16, UNITS_IN));
    }
}
END_TEST

/* UK brickwork dimensions, Technical Information Sheet 9, table 1: 215 mm units, 10 mm joints. CO- has one joint less
 * than units, CO as many, CO+ one more. Halves of a unit are 102.5 mm. */
START_TEST(n_units_with_fewer_as_many_and_more_joints)
{
    const struct {
        int halves;
        const char *more;
        const char *same;
        const char *fewer;
    } rows[] = {
        {1, "122.5", "112.5", "102.5"}, {2, "235", "225", "215"},         {3, "347.5", "337.5", "327.5"},
        {4, "460", "450", "440"},       {5, "572.5", "562.5", "552.5"},   {6, "685", "675", "665"},
        {8, "910", "900", "890"},       {10, "1135", "1125", "1115"},     {12, "1360", "1350", "1340"},
        {72, "8110", "8100", "8090"},   {144, "16210", "16200", "16190"},
    };
    Length unit = reads("215", UNITS_MM);
    Length joint = reads("10", UNITS_MM);
    Length half = (unit - joint) / 2;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        Length same = rows[i].halves / 2 * (unit + joint) + rows[i].halves % 2 * (half + joint);
        assert_int_equal(same, reads(rows[i].same, UNITS_MM));
        assert_int_equal(same + joint, reads(rows[i].more, UNITS_MM));
        assert_int_equal(same - joint, reads(rows[i].fewer, UNITS_MM));
    }
    /* the same in inches: three bricks of 7 5/8 and two joints of 3/8 are 23 5/8, not 24 */
    assert_shown(3 * reads("7 5/8", UNITS_IN) + 2 * reads("3/8", UNITS_IN), UNITS_IN, SIXTEENTH, "23 5/8");
}
END_TEST

/* US Navy, Builder 3 & 2 (NAVEDTRA 14044), chapter 4: a window 61 in high takes 6 courses of 10 1/6 in, the 31 in below
 * it 3 of 10 1/3 in. */
START_TEST(siding_courses_are_those_published)
{
    Length above = reads("61", UNITS_IN);
    Length below = reads("31", UNITS_IN);
    assert_int_equal(wide_narrow(wide_divide(above, 6)), reads("10 1/6", UNITS_IN));
    assert_int_equal(wide_narrow(wide_divide(below, 3)), reads("10 1/3", UNITS_IN));
    Length sum = 0;
    for (int course = 0; course < 6; course++) /* marks rounded from the exact sum end at the window's head */
        sum += length_between(course * above / 6, (course + 1) * above / 6, SIXTEENTH);
    assert_int_equal(sum, above);
    assert_shown(wide_narrow(wide_divide(above, 6)), UNITS_IN, SIXTEENTH, "10 3/16"); /* six of these are 61 1/8 */
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        the_inch_of_1959,
        factors_are_those_of_nist_sp_811,
        figures_are_those_of_nist_lc_1137,
        fractions_are_those_of_the_published_table,
        courses_of_brick_stand_at_the_published_heights,
        n_units_with_fewer_as_many_and_more_joints,
        siding_courses_are_those_published,
    };
    return RUN(tests);
}
