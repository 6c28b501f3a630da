#include "support/test.h"

#include "base/hash.h"
#include "base/random.h"

#include <string.h>

/* splitmix64 from seed 1234567; figures from memory. */
START_TEST(random_is_the_published_generator)
{
    const uint64_t expected[] = {UINT64_C(6457827717110365317), UINT64_C(3203168211198807973),
                                 UINT64_C(9817491932198370423), UINT64_C(4593380528125082431),
                                 UINT64_C(16408922859458223821)};
    Random random = {1234567};
    for (size_t i = 0; i < sizeof expected / sizeof *expected; i++)
        assert_true(random_next(&random) == expected[i]);
}
END_TEST

START_TEST(below_gives_every_number_as_often)
{
    Random random = {7};
    int counts[6] = {0};
    for (int i = 0; i < 60000; i++)
        counts[random_below(&random, 6)]++;
    for (int i = 0; i < 6; i++) /* 10000 each; the standard deviation is 91 */
        assert_in_range(counts[i], 9500, 10500);
    for (int i = 0; i < 100; i++)
        assert_int_equal(random_below(&random, 1), 0);
    /* just above half of all numbers: a plain remainder would give the lower half twice as often */
    uint64_t bound = UINT64_C(3) << 62;
    int low = 0;
    for (int i = 0; i < 30000; i++)
        low += random_below(&random, bound) < bound / 3;
    assert_in_range(low, 9500, 10500);
}
END_TEST

START_TEST(between_reaches_both_ends)
{
    Random random = {8};
    int met[5] = {0};
    for (int i = 0; i < 1000; i++) {
        int64_t drawn = random_between(&random, -2, 2);
        assert_true(drawn >= -2 && drawn <= 2);
        met[drawn + 2]++;
    }
    for (int i = 0; i < 5; i++)
        assert_true(met[i] > 0);
    assert_int_equal(random_between(&random, -9, -9), -9);
    int negative = 0;
    for (int i = 0; i < 1000; i++)
        negative += random_between(&random, INT64_MIN, INT64_MAX) < 0;
    assert_in_range(negative, 400, 600);
}
END_TEST

/* IETF draft-eastlake-fnv-14 ("" there; the other two as in its code, from memory). */
START_TEST(hash_is_the_published_one)
{
    assert_true(hash_bytes("", 0) == UINT64_C(0xcbf29ce484222325));
    assert_true(hash_bytes("a", 1) == UINT64_C(0xaf63dc4c8601ec8c));
    assert_true(hash_bytes("foobar", 6) == UINT64_C(0x85944171f73967e8));
}
END_TEST

START_TEST(short_hash_is_twelve_digits)
{
    char out[13];
    hash_short(0, out);
    assert_string_equal(out, "000000000000");
    hash_short(UINT64_C(0x00010000000000ab), out);
    assert_string_equal(out, "0000000000aa"); /* the high bits folded in */
    hash_short(UINT64_MAX, out);
    assert_string_equal(out, "ffffffff0000");
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        random_is_the_published_generator, below_gives_every_number_as_often, between_reaches_both_ends,
        hash_is_the_published_one,         short_hash_is_twelve_digits,
    };
    return RUN(tests);
}
