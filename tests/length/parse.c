#include "support/test.h"

#include "length/length.h"
#include "support/measures.h"

#include <stdio.h>
#include <string.h>

static void assert_reads(const char *text, Units units, Length expected)
{
    Length length = 0;
    Err err;
    if (!length_parse(text, strlen(text), units, &length, &err))
        FAIL("%s: %s", text, err.text);
    if (length != expected)
        FAIL("\"%s\" gives %lld, not %lld", text, (long long)length, (long long)expected);
}

static void assert_refuses(const char *text, Units units, const char *part)
{
    Length length = 77;
    Err err = {.kind = ERR_LOCKED};
    if (length_parse(text, strlen(text), units, &length, &err))
        FAIL("\"%s\" gives %lld, but is no length", text, (long long)length);
    assert_int_equal(length, 77);
    assert_true(err.kind == ERR_INPUT || err.kind == ERR_VALUE);
    assert_holds(err.text, part);
    assert_holds(err.text, "; write "); /* what to write instead */
    assert_string_equal(err.place, "");
}

static void refuse_both(const char *text, const char *part)
{
    assert_refuses(text, UNITS_IN, part);
    assert_refuses(text, UNITS_MM, part);
}

#define INCH(n) ((n)*LENGTH_INCH)

/* Every notation of the wall file's ground rules. */
START_TEST(reads_every_notation)
{
    assert_reads("3", UNITS_IN, INCH(3));
    assert_reads("3", UNITS_MM, MM(3));
    assert_reads("3.25", UNITS_IN, INCH(13) / 4);
    assert_reads("3.25", UNITS_MM, 3250000);
    assert_reads("3 1/4", UNITS_IN, INCH(13) / 4);
    assert_reads("3-1/4", UNITS_IN, INCH(13) / 4);
    assert_reads("3 1/4", UNITS_MM, 3250000);
    assert_reads("3-1/4", UNITS_MM, 3250000);
    assert_reads("1/2", UNITS_IN, INCH(1) / 2);
    assert_reads("7' 4 1/2\"", UNITS_IN, INCH(177) / 2);
    assert_reads("7' 4 1/2\"", UNITS_MM, INCH(177) / 2);
    assert_reads("7ft 4in", UNITS_MM, INCH(88));
    assert_reads("92.5 in", UNITS_MM, INCH(185) / 2);
    assert_reads("1.95 mm", UNITS_IN, 1950000);
    assert_reads("120 cm", UNITS_IN, MM(1200));
    assert_reads("2.4 m", UNITS_IN, MM(2400));
    assert_reads("8-3-1/2", UNITS_IN, INCH(199) / 2);
    assert_reads("8' 3 1/2\"", UNITS_IN, INCH(199) / 2);
    assert_reads("2527 mm", UNITS_IN, MM(2527));
    assert_reads("2.527 m", UNITS_IN, MM(2527));
}
END_TEST

START_TEST(reads_them_spaced_and_signed)
{
    assert_reads("  3 \t", UNITS_MM, MM(3));
    assert_reads("7'4-1/2\"", UNITS_MM, INCH(177) / 2);
    assert_reads("7 ft 4 1/2 in", UNITS_MM, INCH(177) / 2);
    assert_reads("7ft4in", UNITS_MM, INCH(88));
    assert_reads("7' 1/2\"", UNITS_IN, INCH(169) / 2);
    assert_reads("12'", UNITS_MM, INCH(144));
    assert_reads("1 1/2 ft", UNITS_MM, INCH(18));
    assert_reads("2 m 52 cm 7 mm", UNITS_IN, MM(2527));
    assert_reads("2m527mm", UNITS_IN, MM(2527));
    assert_reads("7\xe2\x80\xb2 4 1/2\xe2\x80\xb3", UNITS_MM, INCH(177) / 2); /* typographic primes */
    assert_reads("-3 1/4", UNITS_IN, -INCH(13) / 4);
    assert_reads("+3", UNITS_MM, MM(3));
    assert_reads("-8-3-1/2", UNITS_IN, -INCH(199) / 2);
    assert_reads("-7' 4 1/2\"", UNITS_IN, -INCH(177) / 2); /* the sign is the whole value's */
    assert_reads("- 3", UNITS_MM, -MM(3));
    assert_reads("-0", UNITS_IN, 0);
    assert_reads("0", UNITS_IN, 0);
    assert_reads("0.5", UNITS_MM, 500000);
    assert_reads("0 1/2", UNITS_MM, 500000);
    assert_reads("5/4", UNITS_IN, INCH(5) / 4); /* five-quarter stock */
    assert_reads("0/8", UNITS_IN, 0);
    assert_reads("10", UNITS_MM, MM(10)); /* a zero that does not lead */
    assert_reads("3.0", UNITS_MM, MM(3));
    assert_reads("3.007", UNITS_MM, 3007000);
}
END_TEST

START_TEST(reads_only_the_bytes_given)
{
    Length length;
    Err err;
    assert_done(length_parse("123456", 2, UNITS_MM, &length, &err), &err);
    assert_int_equal(length, MM(12));
    assert_false(length_parse("3\0 4", 4, UNITS_MM, &length, &err));
    assert_false(length_parse("3\0", 2, UNITS_MM, &length, &err));
}
END_TEST

START_TEST(refuses_numbers_in_other_dress)
{
    refuse_both("1e3", "exponent");
    refuse_both("1E3", "exponent");
    refuse_both("1e+3", "exponent");
    refuse_both("1.5e-3", "exponent");
    refuse_both("1_000", "underscore");
    refuse_both("7:30", "colon");
    refuse_both("007", "leading zero");
    refuse_both("00", "leading zero");
    refuse_both("00.5", "leading zero");
    refuse_both("-01 mm", "leading zero");
    refuse_both("3 01/4", "leading zero");
    refuse_both("1/04", "leading zero");
    refuse_both("7' 04\"", "leading zero");
    refuse_both("0x1F", "hexadecimal");
    refuse_both("0o17", "unit");
    refuse_both("inf", "not a length");
    refuse_both("-inf", "not a length");
    refuse_both("nan", "not a length");
    refuse_both(".inf", "point");
    refuse_both(".NaN", "point");
    refuse_both(".5", "digit in front");
    refuse_both("5.", "no digit behind");
    refuse_both("5. mm", "no digit behind");
    refuse_both(".", "point");
    refuse_both("1.2.3", "point too many");
    refuse_both("1..2", "no digit behind");
    refuse_both("1,5", "comma");
    refuse_both("1 000", "two numbers");
    refuse_both("5\xc2\xbd", "1/2");
    refuse_both("\xe2\x88\x92"
                "5",
                "minus");
    refuse_both("\xd9\xa3", "not a length"); /* a digit of another script */
}
END_TEST

START_TEST(refuses_fractions_that_are_none)
{
    refuse_both("1/0", "zero");
    refuse_both("3 1/0", "zero");
    refuse_both("1/", "not a length");
    refuse_both("/2", "without a number");
    refuse_both("1/2/3", "without a number");
    refuse_both("3.5 1/4", "point and a fraction");
    refuse_both("3.5/4", "point and a fraction");
    refuse_both("1/2.5", "point");
    refuse_both("3 1/4 1/8", "two numbers");
    refuse_both("1000000000000000000/2000000000000000000", "very many digits");
    refuse_both("1/99999999999999999999", "very many digits");
    refuse_both("8-3", "two ways");
    refuse_both("8-3-1", "fraction");
    assert_refuses("8-3-1/2-1/4", UNITS_IN, "behind");
    refuse_both("8-3-", "not a length");
}
END_TEST

START_TEST(three_parts_want_inches)
{
    assert_refuses("8-3-1/2", UNITS_MM, "millimetres here");
    assert_refuses("8-3-1/2 in", UNITS_IN, "behind");
    assert_refuses("7' 8-3-1/2\"", UNITS_IN, "too many parts");
    assert_refuses("8.5-3-1/2", UNITS_IN, "in the middle");
    assert_refuses("8-3.5-1/2", UNITS_IN, "two ways");
}
END_TEST

/* "11' 3 3/8" is what a tape says: feet, then inches. In a file in millimetres too. */
START_TEST(behind_feet_a_bare_number_is_inches)
{
    static const struct {
        const char *text;
        Length sixteenths;
    } rows[] = {{"11' 3 3/8", 2166}, {"7' 4", 1408},   {"7ft 4", 1408},   {"7' 1/2", 1352},
                {"7' 4-1/2", 1416},  {"-7' 4", -1408}, {"7' 4.25", 1412}, {"  7 ' 4  ", 1408}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        for (int units = UNITS_IN; units <= UNITS_MM; units++) {
            Length value = 0;
            Err err;
            assert_done(length_parse(rows[i].text, strlen(rows[i].text), (Units)units, &value, &err), &err);
            assert_int_equal(value, rows[i].sixteenths * (LENGTH_INCH / 16));
        }
}
END_TEST

START_TEST(refuses_parts_out_of_order)
{
    refuse_both("4in 7ft", "smaller unit first");
    refuse_both("3 mm 2 m", "smaller unit first");
    refuse_both("7' 4'", "feet twice");
    refuse_both("7ft 4'", "feet twice");
    refuse_both("4\" 4\"", "inches twice");
    refuse_both("2 m 3 m", "metres twice");
    refuse_both("2 m 3 in", "mixes");
    refuse_both("7' 30 mm", "mixes");
    refuse_both("7' 4 5", "without a unit");
    refuse_both("7' 4\" 5", "without a unit");
    refuse_both("2 m 40", "without a unit");
    refuse_both("1/2' 3\"", "fraction in the middle");
    refuse_both("7 1/2' 3\"", "fraction in the middle");
    refuse_both("7.5' 1/2\"", "point and a fraction");
    refuse_both("1.5 m 2 cm 1/2 mm", "point and a fraction");
    refuse_both("7' -4\"", "in the middle");
}
END_TEST

START_TEST(refuses_junk)
{
    refuse_both("", "nothing stands here");
    refuse_both("   ", "nothing stands here");
    refuse_both("-", "not a length");
    refuse_both("--3", "in the middle");
    refuse_both("+-3", "in the middle");
    refuse_both("3 inches", "unit");
    refuse_both("3 MM", "unit");
    refuse_both("3 yd", "unit");
    refuse_both("mm", "not a length");
    refuse_both("\"", "not a length");
    refuse_both("3 mm!", "not a length");
    refuse_both("3 mm junk", "not a length");
    refuse_both("wide", "not a length");
    refuse_both("\xff\xfe", "not a length");
}
END_TEST

START_TEST(a_message_shows_no_control_characters)
{
    Length length;
    Err err;
    char text[2000];
    memset(text, '\x1b', sizeof text);
    assert_false(length_parse(text, sizeof text, UNITS_IN, &length, &err));
    assert_null(strchr(err.text, '\x1b'));
    assert_true(strlen(err.text) < 300);
}
END_TEST

START_TEST(a_kilometre_is_the_most)
{
    assert_reads("1000 m", UNITS_IN, LENGTH_MOST);
    assert_reads("-1000 m", UNITS_IN, -LENGTH_MOST);
    assert_reads("999999.999999", UNITS_MM, LENGTH_MOST - 1);
    refuse_both("1000.000000001 m", "1 km");
    refuse_both("-1000.000000001 m", "1 km");
    refuse_both("1000001 mm", "1 km");
    refuse_both("3281 ft", "1 km");
    refuse_both("999999999999999999/1", "1 km");
    refuse_both("99999999999999999999999999999999999999999999999999", "1 km");
    refuse_both("18446744073709551617", "1 km"); /* 2^64 + 1 */
    refuse_both("1000000000", "1 km");
}
END_TEST

/* A millionth of a millimetre is a nanometre; what falls between goes to the nearest, half away from zero. */
START_TEST(rounds_once_half_away_from_zero)
{
    assert_reads("0.0000004", UNITS_MM, 0);
    assert_reads("0.0000005", UNITS_MM, 1);
    assert_reads("-0.0000005", UNITS_MM, -1);
    assert_reads("0.0000015", UNITS_MM, 2);
    assert_reads("0.0000025", UNITS_MM, 3);
    assert_reads("0.00000049999999999999999999999999999999999999999999999", UNITS_MM, 0); /* not 0.0000005 */
    assert_reads("0.00000050000000000000000000000000000000000000000000001", UNITS_MM, 1);
    assert_reads("1/3", UNITS_MM, 333333);
    assert_reads("2/3", UNITS_MM, 666667);
    assert_reads("-2/3", UNITS_MM, -666667);
    assert_reads("1/2000000", UNITS_MM, 1);
    assert_reads("1/2000001", UNITS_MM, 0);
    assert_reads("1/3", UNITS_IN, 8466667);
    assert_reads("123456789012345678/246913578024691356", UNITS_MM, 500000);
    assert_reads("0.3333333333333333333333333333333333333333333333333333", UNITS_IN, 8466667);
    /* the parts are added before they are rounded: 0.4 + 0.4 nm */
    assert_reads("0.0000000004 m 0.0000004 mm", UNITS_IN, 1);
    assert_reads("0.0000000002 m 0.0000002 mm", UNITS_IN, 0);
    assert_reads("0.1 ft 0.2 in", UNITS_MM, 35560000);
}
END_TEST

START_TEST(takes_any_number_of_digits)
{
    static char text[20000];
    memset(text, '9', sizeof text);
    memcpy(text, "0.", 2);
    Length length;
    Err err;
    assert_done(length_parse(text, sizeof text, UNITS_MM, &length, &err), &err);
    assert_int_equal(length, MM(1));
    memset(text + 2, '3', sizeof text - 2);
    assert_done(length_parse(text, sizeof text, UNITS_IN, &length, &err), &err);
    assert_int_equal(length, 8466667);
    memset(text, '1', sizeof text);
    assert_false(length_parse(text, sizeof text, UNITS_MM, &length, &err));
    text[1] = '/';
    assert_false(length_parse(text, sizeof text, UNITS_MM, &length, &err));
    assert_holds(err.text, "very many digits");
}
END_TEST

START_TEST(nobody_has_to_ask_why)
{
    Length length;
    assert_false(length_parse("x", 1, UNITS_MM, &length, NULL));
    assert_false(length_parse("", 0, UNITS_MM, &length, NULL));
    assert_false(length_parse("1001 m", 6, UNITS_MM, &length, NULL));
}
END_TEST

static void assert_number(const char *text, int64_t expected)
{
    int64_t millionths = 0;
    Err err;
    assert_done(length_parse_number(text, strlen(text), &millionths, &err), &err);
    assert_int_equal(millionths, expected);
}

START_TEST(plain_numbers_take_the_units_of_the_wall)
{
    assert_number("0", 0);
    assert_number("45", 45000000);
    assert_number(" 12.5 ", 12500000);
    assert_number("-0.000001", -1);
    assert_number("+1", 1000000);
    assert_number("999999999999.999999", INT64_C(999999999999999999));
    const char *bad[] = {"",    "-",   "1e3", "1_0", "0x1",  "inf",       "nan",           ".5",  "5.",  "1.2.",
                         "1/2", "1:2", "3 4", "45%", "4 mm", "1.2345678", "1000000000000", "007", "--1", "12.5 F",
                         "1,5", "01.5"};
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        int64_t millionths = 77;
        Err err;
        if (length_parse_number(bad[i], strlen(bad[i]), &millionths, &err))
            FAIL("\"%s\" is no plain number", bad[i]);
        assert_int_equal(millionths, 77);
        assert_holds(err.text, "; write ");
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        reads_every_notation,
        reads_them_spaced_and_signed,
        reads_only_the_bytes_given,
        refuses_numbers_in_other_dress,
        refuses_fractions_that_are_none,
        three_parts_want_inches,
        behind_feet_a_bare_number_is_inches,
        refuses_parts_out_of_order,
        refuses_junk,
        a_message_shows_no_control_characters,
        a_kilometre_is_the_most,
        rounds_once_half_away_from_zero,
        takes_any_number_of_digits,
        nobody_has_to_ask_why,
        plain_numbers_take_the_units_of_the_wall,
    };
    return RUN(tests);
}
