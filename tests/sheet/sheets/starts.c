/*
 * The sheet of start heights on a wall worked out by hand: 1 m wide, from -350 to 350, planks of 100 mm with gaps of
 * 10. With the start 20 down the lowest course is whole and 40 mm are left on top; from there every millimetre down
 * takes from the bottom and gives to the top, until both are 70 at 50 down (the half-unit rule: NAVEDTRA 14044, p.
 * 7-23).
 */
#include "layout/made.h"

#include "sheet/shown.h"

#include <stdlib.h>

static Made wall_new_made(void)
{
    Made made = made_new(UNITS_MM, MM(100), MM(10), 0);
    made_face(&made, "north", MM(1000), -MM(350), MM(350));
    return made;
}

START_TEST(the_best_start_stands_first)
{
    Made made = wall_new_made();
    const Sheet *sheet = sheet_starts(made.arena, shown_job(made.arena, made_layout(&made)), "");
    const char *text = shown(sheet);
    assert_holds(text, "110 heights that can be marked");
    assert_holds(text, "[ ]  1. start                50 down    least strip 70\n"
                       "        Widest least strip, balanced\n");
    assert_holds(text, "at the floor. At ceilings 70, at\n        floors 70; no strip is under 33 mm.\n");
    assert_string_equal(shown_field(sheet, 0, "start"), "-50");
    assert_string_equal(shown_field(sheet, 0, "least"), "70");
    assert_string_equal(shown_field(sheet, 0, "why"), "widest least strip, balanced");
    arena_free(made.arena);
}
END_TEST

/* The file's own is ticked and told even where it is poor: 10 at the floor, 20 at the ceiling, both under the least. */
START_TEST(the_files_own_start_is_listed_even_where_it_is_poor)
{
    Made made = wall_new_made();
    const Sheet *sheet = sheet_starts(made.arena, shown_job(made.arena, made_layout(&made)), "");
    int own = shown_record(sheet, "why", "as written");
    assert_string_equal(shown_field(sheet, own, "start"), "0");
    assert_string_equal(shown_field(sheet, own, "least"), "10");
    assert_string_equal(shown_field(sheet, own, "at the ceiling"), "20");
    assert_string_equal(shown_field(sheet, own, "at the floor"), "10");
    const char *text = shown(sheet);
    const char *ticked = strstr(text, "[x]");
    assert_non_null(ticked);
    assert_holds(ticked, "As written");
    assert_string_equal(shown_field(sheet, own, "narrowest where"), "course -4 of north, at the floor");
    arena_free(made.arena);
}
END_TEST

/* 50 down: courses at -50, 60, 170. A window from 0 to 200 leaves 50 below it and 70 above it. */
START_TEST(what_it_does_to_an_opening)
{
    Made made = wall_new_made();
    made_opening(&made, &made.wall->faces.at[0], "bay", MM(300), 0, MM(200), MM(200));
    made.wall->start = -MM(50);
    const char *text = shown(sheet_starts(made.arena, shown_job(made.arena, made_layout(&made)), ""));
    const char *own = strstr(text, "[x]");
    assert_non_null(own);
    const char *bay = strstr(own, "bay (north): ");
    assert_non_null(bay);
    assert_memory_equal(bay, "bay (north): above it 70, below it 50", 37);
    arena_free(made.arena);
}
END_TEST

START_TEST(widths_and_reveals_that_leave_no_strip_are_listed)
{
    Made made = wall_new_made();
    made.wall->planks.reveal = MM(2);
    const char *text = shown(sheet_starts(made.arena, shown_job(made.arena, made_layout(&made)), ""));
    assert_holds(text, "Rip widths worth considering");
    assert_holds(text, "[x] width 100, reveal 2");
    assert_holds(text, "Reveals that things at hand would keep");
    assert_holds(text, "coin");
    assert_lacks(text, "boards"); /* none are written down */
    arena_free(made.arena);
}
END_TEST

/* 700 mm take seven planks of 89 to 91 or six of 105 to 108 with gaps of 10 between, and up to a gap at both ends.
 * Boards without a width are 100 wide. */
START_TEST(boards_that_give_a_width)
{
    Made made = wall_new_made();
    *arena_push(made.arena, &made.wall->stock) = (Stock){.length = MM(1000), .count = 30, .label = "", .tone = ""};
    *arena_push(made.arena, &made.wall->stock) =
        (Stock){.length = MM(1000), .count = 4, .width_given = true, .width = MM(90), .label = "", .tone = ""};
    *arena_push(made.arena, &made.wall->stock) =
        (Stock){.length = MM(1000), .count = 2, .width_given = true, .width = MM(105), .label = "", .tone = ""};
    const char *text = shown(sheet_starts(made.arena, shown_job(made.arena, made_layout(&made)), ""));
    const char *widths = strstr(text, "boards at hand that are wide enough");
    assert_non_null(widths);
    static const struct {
        const char *choice;
        int boards;
    } rows[] = {{"width 105, reveal 10", 2},
                {"width 106, reveal 10", 0},
                {"width 91, reveal 10", 32},
                {"width 90, reveal 10", 36}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const char *row = strstr(widths, rows[i].choice);
        assert_non_null(row);
        assert_int_equal(strtol(row + strlen(rows[i].choice), NULL, 10), rows[i].boards);
    }
    made.wall->planks.reveal = 1500000; /* between two marks, and no 2 */
    assert_holds(shown(sheet_starts(made.arena, shown_job(made.arena, made_layout(&made)), "")), ", reveal 1.5 ");
    arena_free(made.arena);
}
END_TEST

START_TEST(once_something_hangs_there_is_no_choice)
{
    Made made = wall_new_made();
    *arena_push(made.arena, &made.wall->stock) = (Stock){.length = MM(1000), .count = 1, .label = "", .tone = ""};
    *arena_push(made.arena, &made.wall->hung_pieces) =
        (HungPiece){.face = made.wall->faces.at[0].name, .right = MM(500), .board = 1};
    const Sheet *sheet = sheet_starts(made.arena, shown_job(made.arena, made_layout(&made)), "");
    assert_holds(shown(sheet), "Courses hang already: the start height is theirs.");
    assert_int_equal(sheet->records.count, 0);
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        the_best_start_stands_first, the_files_own_start_is_listed_even_where_it_is_poor,
        what_it_does_to_an_opening,  widths_and_reveals_that_leave_no_strip_are_listed,
        boards_that_give_a_width,    once_something_hangs_there_is_no_choice,
    };
    return RUN(tests);
}
