/* Boards counted at the pile, keys fed to the real loop. */
#include "support/test.h"

#include "rig.h"
#include "trade/tally.h"

#include <stdio.h>
#include <string.h>

static const Stocks *stock_of(const Rig *rig)
{
    return &document_wall(rig->app->document)->stock;
}

static void type_board(Rig *rig, const char *length)
{
    memory_type(rig->term, length);
    rig_key(rig, PRESS_ENTER);
}

/* A rig without boards, at the pile. */
static Rig *empty_pile(int columns, int rows)
{
    Rig *rig = rig_new(columns, rows);
    Err err;
    while (stock_of(rig)->count > 0)
        assert_done(edit_remove_stock(rig->app->document, stock_of(rig)->at[0].id, &err), &err);
    rig_type(rig, "t");
    return rig;
}

START_TEST(length_enter_length_enter)
{
    Rig *rig = empty_pile(80, 24);
    assert_shows(rig, "Board 1 ");
    type_board(rig, "52");
    type_board(rig, "4' 4\"");
    type_board(rig, "61 1/2");
    assert_shows(rig, "Board 4 ");
    assert_int_equal(stock_of(rig)->count, 2); /* two alike stand in one line */
    assert_int_equal(stock_of(rig)->at[0].count, 2);
    assert_int_equal(stock_of(rig)->at[0].length, 52 * LENGTH_INCH);
    assert_int_equal(stock_of(rig)->at[1].length, 123 * LENGTH_INCH / 2);
    assert_shows(rig, "board 3: 61 1/2 in");
    assert_shows(rig, "boards 1 to 2: 52 in");
    rig_free(rig);
}
END_TEST

/* Boards keep the numbers that are written on them: one like the first but put down later stands behind. */
START_TEST(boards_keep_their_numbers)
{
    Rig *rig = empty_pile(80, 24);
    type_board(rig, "52");
    type_board(rig, "60");
    type_board(rig, "52");
    assert_int_equal(stock_of(rig)->count, 3);
    assert_int_equal(stock_of(rig)->at[2].length, 52 * LENGTH_INCH);
    rig_free(rig);
}
END_TEST

START_TEST(the_share_is_said_at_every_moment)
{
    Rig *rig = empty_pile(80, 24);
    Arena *arena = arena_new();
    for (int i = 0; i < 5; i++) {
        Tally tally = tally_of(arena, app_work(rig->app)->layout);
        assert_int_equal(tally.boards, i);
        char share[60], boards[40];
        snprintf(share, sizeof share, ": %d %%", tally.share / 100);
        snprintf(boards, sizeof boards, "%d board", i);
        assert_shows(rig, share);
        assert_shows(rig, boards);
        type_board(rig, "141");
    }
    arena_free(arena);
    rig_free(rig);
}
END_TEST

START_TEST(a_tone_stays_and_what_to_avoid_does_not)
{
    Rig *rig = empty_pile(80, 24);
    rig_type(rig, "70");
    rig_key(rig, PRESS_TAB);
    rig_type(rig, "grey");
    rig_key(rig, PRESS_TAB);
    rig_type(rig, "31 to 34 1/2");
    rig_key(rig, PRESS_ENTER);
    type_board(rig, "70");
    assert_int_equal(stock_of(rig)->count, 2);
    const Stock *first = &stock_of(rig)->at[0], *second = &stock_of(rig)->at[1];
    assert_string_equal(first->tone, "grey");
    assert_int_equal(first->avoid.count, 1);
    assert_int_equal(first->avoid.at[0].from, 31 * LENGTH_INCH);
    assert_int_equal(first->avoid.at[0].to, 69 * LENGTH_INCH / 2);
    assert_string_equal(second->tone, "grey");
    assert_int_equal(second->avoid.count, 0);
    rig_free(rig);
}
END_TEST

START_TEST(each_board_is_one_step_back)
{
    Rig *rig = empty_pile(80, 24);
    type_board(rig, "52");
    type_board(rig, "52");
    rig_key(rig, PRESS_CTRL | 'z');
    assert_int_equal(stock_of(rig)->at[0].count, 1);
    rig_key(rig, PRESS_CTRL | 'z');
    assert_int_equal(stock_of(rig)->count, 0);
    rig_key(rig, PRESS_CTRL | 'y');
    assert_int_equal(stock_of(rig)->count, 1);
    rig_free(rig);
}
END_TEST

START_TEST(a_bad_length_is_kept_and_no_board)
{
    Rig *rig = empty_pile(80, 24);
    type_board(rig, "5o");
    assert_int_equal(stock_of(rig)->count, 0);
    assert_shows(rig, "5o");
    rig_key(rig, PRESS_BACKSPACE);
    type_board(rig, "2");
    assert_int_equal(stock_of(rig)->at[0].length, 52 * LENGTH_INCH);
    rig_key(rig, PRESS_ENTER); /* nothing typed */
    assert_shows(rig, "Type the board's length first.");
    type_board(rig, "0");
    assert_int_equal(wall_board_count(document_wall(rig->app->document)), 1);
    rig_free(rig);
}
END_TEST

START_TEST(esc_drops_what_is_typed_and_then_the_view)
{
    Rig *rig = empty_pile(80, 24);
    rig_type(rig, "77");
    rig_key(rig, PRESS_ESCAPE);
    assert_int_equal(rig->app->layers.depth, 2);
    rig_key(rig, PRESS_ESCAPE);
    assert_int_equal(rig->app->layers.depth, 1);
    assert_int_equal(stock_of(rig)->count, 0);
    rig_free(rig);
}
END_TEST

START_TEST(every_size_is_survived)
{
    static const int sizes[][2] = {{1, 1}, {20, 6}, {60, 18}, {80, 24}, {140, 50}};
    Rig *rig = empty_pile(80, 24);
    for (int i = 0; i < 5; i++) {
        memory_resize(rig->term, sizes[i][0], sizes[i][1]);
        type_board(rig, "52");
        rig_key(rig, PRESS_PAGE_DOWN);
        assert_int_equal(stock_of(rig)->at[0].count, i + 1);
    }
    rig_free(rig);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        length_enter_length_enter,
        boards_keep_their_numbers,
        the_share_is_said_at_every_moment,
        a_tone_stays_and_what_to_avoid_does_not,
        each_board_is_one_step_back,
        a_bad_length_is_kept_and_no_board,
        esc_drops_what_is_typed_and_then_the_view,
        every_size_is_survived,
    };
    return RUN(tests);
}
