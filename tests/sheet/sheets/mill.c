/*
 * The mill sheet worked out by hand: planks of 2 3/4 by 1/2 in out of 1x6 boards, 5 1/2 in wide as dressed (PS 20-20),
 * 72 in long, 1 in cut off each end, 3/4 in thick; kerf 1/8. One plank and an off-rip of 2 5/8: the saw takes 1/8.
 */
#include "layout/made.h"

#include "sheet/shown.h"

static Made bench_new(void)
{
    Made made = made_new(UNITS_IN, IN(2.75), 0, 0);
    made.wall->planks.thickness = IN(0.5);
    made.wall->saw.kerf = IN(0.125);
    made_face(&made, "north", IN(100), 0, IN(11));
    return made;
}

static void add_rough(Made *made, Length thickness, int count)
{
    *arena_push(made->arena, &made->wall->rough) = (Rough){.label = "P",
                                                           .tone = "",
                                                           .width = IN(5.5),
                                                           .thickness = thickness,
                                                           .length = IN(72),
                                                           .count = count,
                                                           .ends = IN(1)};
    made->wall->mill = (Mill){.given = true, .keep = IN(1)};
}

START_TEST(what_to_do_with_a_board)
{
    Made made = bench_new();
    add_rough(&made, IN(0.75), 6);
    *arena_push(made.arena, &made.wall->rough.at[0].avoid) = (Stretch){IN(4), IN(7)};
    const Sheet *sheet = sheet_mill(made.arena, shown_job(made.arena, made_layout(&made)), "");
    const char *text = shown(sheet);
    assert_holds(text, "[ ] 6 boards (P) of 5 1/2 by 3/4, 72 long\n    [ ] Cut 1 in off each end\n");
    assert_holds(text, "    [ ] Fence at 2 7/8 in: rip one plank full\n");
    assert_holds(text, "    [ ] Plane 1/4 in off, both sides together, to 1/2 in\n");
    assert_string_equal(shown_field(sheet, 0, "boards"), "6");
    assert_string_equal(shown_field(sheet, 0, "fence"), "2.75");
    assert_string_equal(shown_field(sheet, 0, "planks of each"), "1");
    assert_string_equal(shown_field(sheet, 0, "length"), "70");
    assert_string_equal(shown_field(sheet, 0, "plane off"), "0.25");
    assert_string_equal(shown_field(sheet, 0, "off-rip"), "2.625");
    assert_string_equal(shown_field(sheet, 0, "usable"), "67");
    assert_string_equal(shown_field(sheet, 0, "avoid"), "4 to 7");
    assert_holds(text, "    [ ] Mark 4 in to 7 in from the first end: do not use it\n");
    assert_holds(text, "    [ ] Let them rest, then finish to 2 3/4 in\n");
    assert_holds(text, "Never rip a cupped");
    /* four courses of 100 in and 10 %: 440; six planks of 70 less 3 in: 402; 38 in short: one more board */
    assert_holds(text, "Planks 2 3/4 wide: 38 in short, about one board more like these\n");
    assert_holds(text, "Needed: 400 in and 40 in spare. On hand: 0 in. From milling: 402 in.");
    assert_holds(text, "Rip widths, best use of the pile first");
    arena_free(made.arena);
}
END_TEST

START_TEST(a_board_too_thin)
{
    Made made = bench_new();
    add_rough(&made, IN(0.4375), 6);
    const Sheet *sheet = sheet_mill(made.arena, shown_job(made.arena, made_layout(&made)), "");
    assert_holds(shown(sheet), "Leave it: 7/16 in thick");
    assert_string_equal(shown_field(sheet, 0, "planks of each"), "0");
    assert_string_equal(shown_field(sheet, 0, "fence"), "");
    arena_free(made.arena);
}
END_TEST

START_TEST(without_rough_boards_it_says_so)
{
    Made made = bench_new();
    const Sheet *sheet = sheet_mill(made.arena, shown_job(made.arena, made_layout(&made)), "");
    assert_holds(shown(sheet), "No rough boards are written down");
    assert_int_equal(sheet->records.count, 0);
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        what_to_do_with_a_board,
        a_board_too_thin,
        without_rough_boards_it_says_so,
    };
    return RUN(tests);
}
