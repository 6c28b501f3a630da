/* What stands on the cut sheet beside the cuts, and what both sheets say of ends: two faces 1000 mm wide, planks of
 * 100 mm, 12 mm thick. */
#include "layout/made.h"

#include "fill/report_findings.h"
#include "sheet/shown.h"
#include "sheet/writers/plan.h"

static Made two_faces(CornerKind kind, CornerJoint joint, int boards)
{
    Made made = made_new(UNITS_MM, MM(100), MM(10), 0);
    made.wall->planks.thickness = MM(12);
    Face *north = made_face(&made, "north", MM(1000), 0, MM(210));
    north->corner = (Corner){.kind = kind, .joint = joint};
    made_face(&made, "east", MM(1000), 0, MM(210));
    Stock *stock = arena_push(made.arena, &made.wall->stock);
    *stock = (Stock){.length = MM(1100), .count = boards};
    stock->label = stock->tone = arena_text(made.arena, "", 0);
    return made;
}

START_TEST(boards_that_stay_shut_are_listed)
{
    Made made = two_faces(CORNER_NONE, CORNER_BUTT, 4); /* two courses on two faces: one board each */
    const Layout *layout = made_layout(&made);
    assert_null(strstr(shown(sheet_cuts(made.arena, shown_job(made.arena, layout), "")), "Not used"));
    made.wall->stock.at[0].count = 5;
    layout = made_layout(&made);
    assert_holds(shown(sheet_cuts(made.arena, shown_job(made.arena, layout), "")), "\nNot used: board ");
    made.wall->stock.at[0].count = 7;
    layout = made_layout(&made);
    assert_holds(shown(sheet_cuts(made.arena, shown_job(made.arena, layout), "")), "\nNot used: boards ");
    arena_free(made.arena);
}
END_TEST

START_TEST(a_miter_stands_on_both_sheets)
{
    Made made = two_faces(CORNER_OUTSIDE, CORNER_MITER, 8);
    const Job *job = shown_job(made.arena, made_layout(&made));
    const char *rows = shown(sheet_rows(made.arena, job, "")), *cuts = shown(sheet_cuts(made.arena, job, ""));
    assert_int_equal(shown_times(cuts, "Right end: 45 degree miter, long point at the front"), 2);
    assert_int_equal(shown_times(cuts, "Left end: 45 degree miter, long point at the front"), 2);
    assert_int_equal(shown_times(rows, "45 degree miter"), 4);
    assert_lacks(rows, "Ends at the");
    arena_free(made.arena);
}
END_TEST

/* Square ends at a corner are alike on every course: told once for each face. */
START_TEST(a_square_end_at_a_corner_is_told_for_the_face)
{
    Made made = two_faces(CORNER_INSIDE, CORNER_BUTT, 8);
    const Job *job = shown_job(made.arena, made_layout(&made));
    const char *rows = shown(sheet_rows(made.arena, job, ""));
    assert_int_equal(shown_times(rows, "Ends at the"), 2);
    assert_holds(rows, "Ends at the right corner: square; it runs into the corner behind east.");
    assert_holds(rows, "Ends at the left corner: square, tight against the planks of north.");
    arena_free(made.arena);
}
END_TEST

/* A plan whose bound failed its own check: sheet and plan as data do without it. */
START_TEST(a_plan_without_a_bound_says_so)
{
    Made made = two_faces(CORNER_NONE, CORNER_BUTT, 5);
    Job job = *shown_job(made.arena, made_layout(&made));
    Plan plan = *job.plan;
    job.plan = &plan;
    report_bound(made.arena, (Bound){plan.length_opened, plan.boards_opened}, &plan);
    const char *cuts = shown(sheet_first(made.arena, &job, ""));
    assert_holds(cuts, "do with fewer than 4");
    assert_lacks(cuts, "No lower limit");
    report_bound(made.arena, (Bound){plan.length_opened + 1, 1}, &plan);
    cuts = shown(sheet_first(made.arena, &job, ""));
    assert_lacks(cuts, "do with fewer than");
    assert_holds(cuts, "No lower limit on boards is known for this plan.");
    Text text;
    text_init(&text);
    plan_write(&job, &text);
    assert_lacks(text.bytes, "length-bound");
    text_finish(&text);
    arena_free(made.arena);
}
END_TEST

/* A board that gives one piece from its squared end is one line, two of them beside one another; one that gives two
 * has a line for each, with the place where it begins. */
START_TEST(a_board_that_gives_one_piece_is_one_line)
{
    Made made = two_faces(CORNER_NONE, CORNER_BUTT, 4);
    made.wall->saw.square = MM(5);
    made.wall->joints.shortest = MM(300);
    made.wall->stock.at[0].length = MM(1010);
    const char *text = shown(sheet_cuts(made.arena, shown_job(made.arena, made_layout(&made)), ""));
    assert_holds(text, "[ ] 1 \u00b7 1010         ___   1     1000 [ ] 3 \u00b7 1010         ___   3     1000\n"
                       "[ ] 2 \u00b7 1010         ___   2     1000 [ ] 4 \u00b7 1010         ___   4     1000\n");
    assert_lacks(text, "Board 1");
    made.wall->stock.at[0] = (Stock){.label = "", .tone = "", .length = MM(2020), .count = 2};
    text = shown(sheet_cuts(made.arena, shown_job(made.arena, made_layout(&made)), ""));
    assert_holds(text, "[ ] 1 \u00b7 2020         ___");
    assert_int_equal(shown_times(text, "[ ] from 5 "), 2);
    assert_int_equal(shown_times(text, "[ ] from 1005 "), 2);
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        boards_that_stay_shut_are_listed,
        a_miter_stands_on_both_sheets,
        a_square_end_at_a_corner_is_told_for_the_face,
        a_plan_without_a_bound_says_so,
        a_board_that_gives_one_piece_is_one_line,
    };
    return RUN(tests);
}
