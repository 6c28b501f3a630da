/* Straight lines of a wall: rounded once, half away from zero, also where height and slope have opposite signs. */
#include "support/test.h"

#include "base/random.h"
#include "base/wide.h"
#include "wall/straight.h"

START_TEST(half_way_goes_away_from_zero)
{
    static const struct {
        Length y0, y1, x, y;
    } rows[] = {
        {0, 1, 1, 1},     {0, -1, 1, -1},                /* 1/2 and -1/2 */
        {-3, -2, 1, -3},  {3, 2, 1, 3},                  /* -2 1/2 and 2 1/2: not -2 and 2, the slope's own half */
        {-10, -5, 1, -8}, {10, 5, 1, 8},                 /* -7 1/2 and 7 1/2 */
        {-1, 2, 1, 1},    {1, -2, 1, -1},                /* 1/2 and -1/2 */
        {4, 9, 0, 4},     {4, 9, 2, 9},   {4, 9, 4, 14}, /* at both points, and beyond */
        {4, 9, -2, -1},   {0, 3, -1, -2},                /* -1 1/2 */
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        Mark marks[2] = {{0, rows[i].y0}, {2, rows[i].y1}};
        const Marks limit = {marks, 2, 2};
        assert_int_equal(straight_at(0, rows[i].y0, 2, rows[i].y1, rows[i].x), rows[i].y);
        assert_int_equal(straight_at(2, rows[i].y1, 0, rows[i].y0, rows[i].x), rows[i].y); /* from either end */
        if (rows[i].x >= 0 && rows[i].x <= 2)
            assert_int_equal(marks_off(&limit, rows[i].x, true), rows[i].y);
    }
    assert_int_equal(straight_at(7, 1, 7, 5, 7), 5);
}
END_TEST

/* Against the definition: |n y' - (whole)| * 2 <= n, and at a tie the larger of the two. Up to 1 km. */
START_TEST(any_line)
{
    Random random = {11};
    for (int i = 0; i < 20000; i++) {
        const Length most = i % 2 == 0 ? 20 : LENGTH_MOST;
        const Length x0 = random_between(&random, -most, most);
        const Length x1 = random_between(&random, -most, most);
        const Length y0 = random_between(&random, -most, most);
        const Length y1 = random_between(&random, -most, most);
        const Length x = random_between(&random, -most, most);
        if (x0 == x1 || (x < x0 && x < x1) || (x > x0 && x > x1))
            continue;
        const Length y = straight_at(x0, y0, x1, y1, x);
        const Wide run = x1 > x0 ? (Wide)x1 - x0 : (Wide)x0 - x1;
        const Wide exact = x1 > x0 ? y0 * run + ((Wide)y1 - y0) * (x - x0) : y1 * run + ((Wide)y0 - y1) * (x - x1);
        const Wide off = 2 * (y * run - exact);
        assert_true(off <= run && off >= -run);
        if (off == run || off == -run)
            assert_true(exact > 0 ? off > 0 : off < 0);
    }
}
END_TEST

/* "steeper than 1 in 12" */
START_TEST(rakes)
{
    assert_false(straight_is_rake(12000, 1000));
    assert_true(straight_is_rake(12000, 1001));
    assert_true(straight_is_rake(11999, -1000));
    assert_false(straight_is_rake(12000, -1000));
    assert_true(straight_is_rake(0, 1));
    assert_false(straight_is_rake(0, 0));
    assert_true(straight_is_rake(4 * LENGTH_MOST, 4 * LENGTH_MOST));
}
END_TEST

/* Half a mark is seen: length_round goes away from zero. */
START_TEST(marks_that_rounding_makes_one)
{
    const Wall wall = {.round = 16};
    assert_true(marks_alike(&wall, 0, 7));
    assert_false(marks_alike(&wall, 0, 8));
    assert_false(marks_alike(&wall, 0, -8));
    assert_true(marks_alike(&wall, 8, 23));
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {half_way_goes_away_from_zero, any_line, rakes, marks_that_rounding_makes_one};
    return RUN(tests);
}
