/*
 * Things at hand as spacers. Thicknesses: United States Mint, "Coin Specifications"; Manufacturers' Standard Gauge for
 * uncoated sheet steel.
 */
#include "support/test.h"

#include "trade/spacer.h"

#include <string.h>

static Length thickness_of(const char *name)
{
    for (int i = 0; i < spacer_thing_count(); i++)
        if (strcmp(spacer_thing(i)->name, name) == 0)
            return spacer_thing(i)->thickness;
    return -1;
}

/* Every thing of the table, in nanometres by 1 in = 25.4 mm: coins in mm as the Mint prints them (1.52 mm), gauges in
 * ten-thousandths of an inch (14 gauge: 0.0747 in), zinc-coated steel 16 gauge 0.0635 in and 14 gauge 0.0785 in. */
START_TEST(thicknesses_are_those_published)
{
    static const struct {
        const char *name;
        Length thickness;
    } rows[] = {
        {"one-cent coin", 1520000},
        {"five-cent coin", 1950000},
        {"dime", 1350000},
        {"quarter dollar", 1750000},
        {"half dollar", 2150000},
        {"dollar coin", 2000000},
        {"10 gauge sheet steel", 3416300},
        {"11 gauge sheet steel", 3037840},
        {"12 gauge sheet steel", 2656840},
        {"13 gauge sheet steel", 2278380},
        {"14 gauge sheet steel", 1897380},
        {"15 gauge sheet steel", 1709420},
        {"16 gauge sheet steel", 1518920},
        {"17 gauge sheet steel", 1366520}, /* from memory */
        {"18 gauge sheet steel", 1214120},
        {"19 gauge sheet steel", 1061720}, /* from memory */
        {"20 gauge sheet steel", 911860},
        {"22 gauge sheet steel", 759460},
        {"24 gauge sheet steel", 607060},
        {"16 gauge zinc-coated steel", 1612900},
        {"14 gauge zinc-coated steel", 1993900},
    };
    assert_int_equal(spacer_thing_count(), sizeof rows / sizeof *rows);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        if (thickness_of(rows[i].name) != rows[i].thickness)
            FAIL("%s is %lld", rows[i].name, (long long)thickness_of(rows[i].name));
}
END_TEST

START_TEST(things_stand_from_thin_to_thick)
{
    for (int i = 1; i < spacer_thing_count(); i++)
        assert_true(spacer_thing(i - 1)->thickness < spacer_thing(i)->thickness);
}
END_TEST

/* Common practice: thirty courses set with a five-cent coin instead of 14 gauge steel end one sixteenth (1.6 mm)
 * higher. */
START_TEST(over_thirty_courses_a_coin_drifts_by_a_sixteenth)
{
    Length drift = 30 * (thickness_of("five-cent coin") - thickness_of("14 gauge sheet steel"));
    assert_int_equal(length_round(drift, LENGTH_INCH / 16), LENGTH_INCH / 16);
    assert_int_equal(length_round(drift, 100000), 1600000);
}
END_TEST

START_TEST(choices_stand_in_order_and_within_bounds)
{
    Arena *arena = arena_new();
    Length low = 1500000;
    Length high = 3200000;
    Spacers choices = spacer_choices(arena, low, high);
    assert_true(choices.count > 10);
    for (int i = 0; i < choices.count; i++) {
        const Spacer *spacer = &choices.at[i];
        Length sum = 0;
        int pieces = 0;
        for (int kind = 0; kind < spacer->kinds; kind++) {
            sum += spacer->count[kind] * spacer_thing(spacer->thing[kind])->thickness;
            pieces += spacer->count[kind];
        }
        assert_int_equal(sum, spacer->thickness);
        assert_true(pieces >= 1 && pieces <= SPACER_STACK_MOST);
        assert_true(spacer->thickness >= low && spacer->thickness <= high);
        if (i > 0)
            assert_true(choices.at[i - 1].thickness <= spacer->thickness);
    }
    assert_int_equal(spacer_choices(arena, 1, 2).count, 0);
    arena_free(arena);
}
END_TEST

START_TEST(the_nearest_spacer_is_found)
{
    Arena *arena = arena_new();
    Spacer spacer;
    assert_true(spacer_nearest(1940000, &spacer));
    assert_string_equal(spacer_words(arena, &spacer), "a five-cent coin");
    /* 1/16 in = 1.5875 mm: nothing alone comes nearer than 16 gauge zinc-coated steel, 0.0635 in */
    assert_true(spacer_nearest(LENGTH_INCH / 16, &spacer));
    assert_string_equal(spacer_words(arena, &spacer), "a piece of 16 gauge zinc-coated steel");
    assert_true(spacer_at_least(1960000, &spacer));
    assert_string_equal(spacer_words(arena, &spacer), "a piece of 14 gauge zinc-coated steel");
    assert_true(spacer_at_least(3900000, &spacer));
    assert_int_equal(spacer.thickness, 3900000);
    assert_string_equal(spacer_words(arena, &spacer), "two five-cent coins");
    assert_false(spacer_at_least(20000000, &spacer));
    arena_free(arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        thicknesses_are_those_published,
        things_stand_from_thin_to_thick,
        over_thirty_courses_a_coin_drifts_by_a_sixteenth,
        choices_stand_in_order_and_within_bounds,
        the_nearest_spacer_is_found,
    };
    return RUN(tests);
}
