/*
 * Other rip widths and reveals on faces simple enough to be worked by hand.
 */
#include "support/test.h"

#include "support/plain.h"
#include "trade/widths.h"

#include <stdlib.h>

static void add_stock(Bench *bench, Length length, int count, Length width)
{
    *arena_push(bench->arena, &bench->wall->stock) =
        (Stock){.length = length, .count = count, .width_given = width > 0, .width = width};
}

/* 60 in of height: planks of 5 1/4 in leave 11 whole and 2 1/4 in; 5 in go into it twelve times. */
START_TEST(widths_that_give_whole_courses_are_found)
{
    Bench bench = bench_new(INCHES(100), 0, INCHES(60), INCHES(5.25), 0);
    add_stock(&bench, INCHES(52), 7, 0);
    add_stock(&bench, INCHES(78), 3, INCHES(5.5));
    add_stock(&bench, INCHES(70), 2, INCHES(4.75));
    WidthChoices choices = widths_worth(bench.arena, bench.layout);
    assert_int_equal(choices.count, WIDTHS_MOST);
    assert_true(choices.at[0].whole);
    assert_int_equal(choices.at[0].width, INCHES(5));
    assert_int_equal(choices.at[0].change, -INCHES(0.25));
    assert_int_equal(choices.at[0].boards, 10); /* those without a width are 5 1/4 in wide */
    assert_int_equal(choices.at[0].running, 7 * INCHES(52) + 3 * INCHES(78));
    bool own = false;
    for (int i = 0; i < choices.count; i++) {
        const WidthChoice *choice = &choices.at[i];
        own |= choice->change == 0;
        assert_true(llabs(choice->change) <= INCHES(0.5));
        if (choice->width == INCHES(5.375))
            assert_int_equal(choice->boards, 3);
        /* none is beaten by a start of the same planks */
        assert_int_equal(choice->best.least,
                         starts_best_for(bench.arena, bench.layout,
                                         &(Planks){.widths = {.at = (Length[]){choice->width}, .count = 1, .room = 1}})
                             .least);
    }
    assert_true(own);
    arena_free(bench.arena);
}
END_TEST

/* Ten planks of 5 in and nine gaps of a five-cent coin (1.95 mm). A thinner spacer still ends in whole courses while
 * what is left over hides in one more gap at the floor and one at the ceiling: 9 (1.95 - r) <= 2 r, r >= 1.596 mm. A
 * thicker one runs over. */
START_TEST(whole_by_a_spacer)
{
    Length coin = 1950000;
    Bench bench = bench_new(INCHES(100), 0, 10 * INCHES(5) + 9 * coin, INCHES(5), SIXTEENTH);
    bench.wall->round = LENGTH_MM / 10;
    WidthChoices choices = reveals_worth(bench.arena, bench.layout);
    int whole = 0;
    for (int i = 0; i < choices.count; i++) {
        const WidthChoice *choice = &choices.at[i];
        assert_true(choice->by_spacer || choice->change == 0);
        assert_int_equal(choice->whole, choice->reveal * 11 >= coin * 9 && choice->reveal <= coin);
        assert_true(i == 0 || choice->whole <= choices.at[i - 1].whole);
        whole += choice->whole;
    }
    assert_int_equal(whole, 5); /* 0.0635, 0.0673 and 0.0747 in, 1.75 and 1.95 mm */
    assert_int_equal(choices.at[0].reveal, 1612900);
    assert_string_equal(spacer_words(bench.arena, &choices.at[0].spacer), "a piece of 16 gauge zinc-coated steel");
    arena_free(bench.arena);
}
END_TEST

START_TEST(no_width_is_offered_while_something_hangs)
{
    Bench bench = bench_new(INCHES(100), 0, INCHES(60), INCHES(5), SIXTEENTH);
    arena_push(bench.arena, &bench.wall->hung_pieces)->face = bench.wall->faces.at[0].name;
    assert_int_equal(widths_worth(bench.arena, bench.layout).count, 0);
    assert_int_equal(reveals_worth(bench.arena, bench.layout).count, 0);
    arena_free(bench.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        widths_that_give_whole_courses_are_found,
        whole_by_a_spacer,
        no_width_is_offered_while_something_hangs,
    };
    return RUN(tests);
}
