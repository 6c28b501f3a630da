#include "support/test.h"

#include "base/random.h"
#include "base/wide.h"

static int64_t divided(Wide a, Wide b)
{
    return wide_narrow(wide_divide(a, b));
}

START_TEST(halves_go_away_from_zero)
{
    assert_int_equal(divided(5, 2), 3);
    assert_int_equal(divided(-5, 2), -3);
    assert_int_equal(divided(5, -2), -3);
    assert_int_equal(divided(-5, -2), 3);
    assert_int_equal(divided(4, 3), 1);
    assert_int_equal(divided(-4, 3), -1);
    assert_int_equal(divided(5, 3), 2);
    assert_int_equal(divided(0, -7), 0);
    assert_int_equal(divided(1, 3), 0);
    assert_int_equal(divided(-1, 2), -1);
}
END_TEST

START_TEST(floor_and_ceiling_hold_the_value_between)
{
    for (int a = -30; a <= 30; a++) {
        for (int b = -7; b <= 7; b++) {
            if (b == 0)
                continue;
            int64_t floor = wide_narrow(wide_floor(a, b));
            int64_t ceiling = wide_narrow(wide_ceiling(a, b));
            int sign = b < 0 ? -1 : 1; /* compare a * sign with floor * |b| */
            assert_true(floor * b * sign <= a * sign && a * sign < (floor + 1) * b * sign);
            assert_int_equal(ceiling, a % b == 0 ? floor : floor + 1);
        }
    }
}
END_TEST

START_TEST(large_products_do_not_overflow)
{
    Wide km = INT64_C(1000000000000);
    Wide huge = km * km * km;
    assert_true(wide_divide(huge, km * km) == km);
    assert_true(wide_divide(-huge - km * km / 2, km * km) == -km - 1);
    assert_true(wide_floor(-huge - 1, km) == -km * km - 1);
    assert_true(wide_ceiling(huge + 1, km) == km * km + 1);
}
END_TEST

START_TEST(ratios_compare_as_products_do)
{
    Random random = {3};
    for (int i = 0; i < 100000; i++) {
        int64_t a = random_between(&random, -50, 50);
        int64_t b = random_between(&random, 1, 40);
        int64_t c = random_between(&random, -50, 50);
        int64_t d = random_between(&random, 1, 40);
        int64_t difference = a * d - c * b;
        assert_int_equal(wide_compare_ratio(a, b, c, d), (difference > 0) - (difference < 0));
    }
}
END_TEST

START_TEST(ratios_compare_where_products_would_overflow)
{
    Wide most = (((Wide)1 << 126) - 1) * 2 + 1;
    assert_int_equal(wide_compare_ratio(most, most - 1, most - 1, most - 2), -1);
    assert_int_equal(wide_compare_ratio(most - 1, most, most - 2, most - 1), 1);
    assert_int_equal(wide_compare_ratio(-most, most - 1, -most + 1, most - 2), 1);
    assert_int_equal(wide_compare_ratio(most, most, 1, 1), 0);
    assert_int_equal(wide_compare_ratio(most / 3 * 2, most / 3, 2, 1), 0);
    assert_int_equal(wide_compare_ratio(-most - 1, 1, -most, 1), -1);
    assert_int_equal(wide_compare_ratio(-most - 1, most, most, 1), -1);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        halves_go_away_from_zero,      floor_and_ceiling_hold_the_value_between,     large_products_do_not_overflow,
        ratios_compare_as_products_do, ratios_compare_where_products_would_overflow,
    };
    return RUN(tests);
}
