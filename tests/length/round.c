#include "support/test.h"

#include "base/random.h"
#include "length/length.h"
#include "support/measures.h"

START_TEST(half_goes_away_from_zero)
{
    assert_int_equal(length_round(5, 10), 10);
    assert_int_equal(length_round(-5, 10), -10);
    assert_int_equal(length_round(4, 10), 0);
    assert_int_equal(length_round(-4, 10), 0);
    assert_int_equal(length_round(15, 10), 20);
    assert_int_equal(length_round(25, 10), 30); /* not to even */
    assert_int_equal(length_round(SIXTEENTH / 2, SIXTEENTH), SIXTEENTH);
    assert_int_equal(length_round(-SIXTEENTH / 2, SIXTEENTH), -SIXTEENTH);
    assert_int_equal(length_round(SIXTEENTH / 2 - 1, SIXTEENTH), 0);
}
END_TEST

START_TEST(down_goes_below_and_up_goes_above)
{
    assert_int_equal(length_round_down(19, 10), 10);
    assert_int_equal(length_round_down(-11, 10), -20);
    assert_int_equal(length_round_up(11, 10), 20);
    assert_int_equal(length_round_up(-19, 10), -10);
    assert_int_equal(length_round_down(20, 10), 20);
    assert_int_equal(length_round_up(-20, 10), -20);
}
END_TEST

START_TEST(rounding_is_near_and_symmetric)
{
    Random random = {16};
    for (int i = 0; i < 100000; i++) {
        Length step = random_between(&random, 1, LENGTH_INCH);
        Length value = random_between(&random, -LENGTH_MOST, LENGTH_MOST);
        Length rounded = length_round(value, step);
        Length off = rounded > value ? rounded - value : value - rounded;
        assert_int_equal(rounded % step, 0);
        assert_true(2 * off <= step);
        assert_int_equal(length_round(-value, step), -rounded);
        assert_int_equal(length_round(rounded, step), rounded);
        Length down = length_round_down(value, step);
        Length up = length_round_up(value, step);
        assert_true(down <= value && value <= up && up - down <= step);
        assert_int_equal(length_round_up(-value, step), -down);
    }
}
END_TEST

/* Rounded once, from the exact sum: thirty courses of 2 3/4 in and a reveal of 1.95 mm stand within half a mark of
 * where they belong, while a pitch that was rounded first is off by more than a mark at the thirtieth. */
START_TEST(thirty_courses_drift_by_nothing)
{
    Length pitch = 11 * LENGTH_INCH / 4 + 1950000;
    for (int course = -30; course <= 30; course++) {
        Length exact = course * pitch;
        Length off = length_round(exact, SIXTEENTH) - exact;
        assert_true(2 * off <= SIXTEENTH && -2 * off <= SIXTEENTH);
    }
    assert_true(30 * length_round(pitch, SIXTEENTH) - length_round(30 * pitch, SIXTEENTH) < -SIXTEENTH);
}
END_TEST

START_TEST(printed_pieces_add_up_to_the_printed_row)
{
    Random random = {17};
    for (int i = 0; i < 10000; i++) {
        Length at = random_between(&random, -LENGTH_METRE, LENGTH_METRE);
        Length left = at;
        Length sum = 0;
        int pieces = (int)random_between(&random, 1, 12);
        for (int p = 0; p < pieces; p++) {
            Length next = at + random_between(&random, 0, 2 * LENGTH_METRE);
            Length printed = length_between(at, next, SIXTEENTH);
            Length off = printed - (next - at);
            assert_true(off <= SIXTEENTH && -off <= SIXTEENTH);
            sum += printed;
            at = next;
        }
        assert_int_equal(sum, length_between(left, at, SIXTEENTH));
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        half_goes_away_from_zero,        down_goes_below_and_up_goes_above,        rounding_is_near_and_symmetric,
        thirty_courses_drift_by_nothing, printed_pieces_add_up_to_the_printed_row,
    };
    return RUN(tests);
}
