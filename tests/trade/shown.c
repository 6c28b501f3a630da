/*
 * Where what a board shows comes to be on the wall: x = left + at - offset (the plan-file contract, "A knot at `at`
 * comes to be at x = left + at - offset"). Worked by hand on two courses of 60 in.
 */
#include "layout/made.h"

#include "trade/shown.h"

typedef struct Bench {
    Made made;
    Plan plan;
    Piece pieces[2];
} Bench;

/* One board of 70 in with something at 0, 20, 49, 50 and 65 in; its piece begins 2 in from the first end, stands from
 * 10 to 58 on the face, and so takes 2 to 50 of the board. A hatch cuts the course from 27 to 29. */
static void bench_init(Bench *bench)
{
    *bench = (Bench){.made = made_new(UNITS_IN, IN(3), 0, 0)};
    Arena *arena = bench->made.arena;
    Face *face = made_face(&bench->made, "north", IN(60), 0, IN(6));
    made_opening(&bench->made, face, "hatch", IN(27), IN(1), IN(2), IN(1));
    Stock *stock = arena_push(arena, &bench->made.wall->stock);
    *stock = (Stock){.length = IN(70), .count = 1};
    stock->label = stock->tone = arena_text(arena, "", 0);
    static const int at[] = {0, 20, 49, 50, 65};
    for (int i = 0; i < 5; i++)
        *arena_push(arena, &stock->show) = (Show){.at = IN(at[i]), .what = arena_text(arena, "knot hole", 9)};
    bench->pieces[0] =
        (Piece){.number = 1, .left = IN(10), .right = IN(58), .board = 1, .offset = IN(2), .closer = IN(20)};
    bench->plan = (Plan){.pieces = bench->pieces, .piece_count = 1};
}

START_TEST(a_spot_comes_to_be_where_its_board_lies)
{
    Bench bench;
    bench_init(&bench);
    const ShownList list = shown_on_piece(bench.made.arena, made_layout(&bench.made), &bench.pieces[0]);
    assert_int_equal(list.count, 3); /* 0 is squared off; 65 lies in what is kept over */
    assert_int_equal(list.at[0].at, IN(28));
    assert_int_equal(list.at[0].on_piece, IN(18));
    assert_int_equal(list.at[0].on_board, IN(20));
    assert_int_equal(list.at[0].opening, 0);
    assert_int_equal(list.at[1].at, IN(57));
    assert_int_equal(list.at[1].opening, -1);
    assert_int_equal(list.at[2].at, IN(58));
    arena_free(bench.made.arena);
}
END_TEST

START_TEST(a_spot_is_told_until_its_piece_hangs)
{
    Bench bench;
    bench_init(&bench);
    const Layout *layout = made_layout(&bench.made);
    Findings findings = {0};
    shown_findings(bench.made.arena, layout, &bench.plan, &findings);
    assert_int_equal(findings.count, 3);
    assert_int_equal(findings.at[0].rule, RULE_SHOW);
    assert_int_equal(rule_grade(RULE_SHOW), GRADE_CAUTION);
    assert_int_equal(findings.at[0].at, IN(28));
    assert_int_equal(findings.at[0].opening, 0);
    assert_int_equal(findings.at[0].board, 1);
    assert_holds(findings.at[0].text, "Board 1 shows \"knot hole\" 20 in from its first end. It comes to be 28 in from "
                                      "the left end of north (course 0, piece 1); the cut for hatch may take it.");
    assert_holds(findings.at[1].text, "57 in from the left end of north (course 0, piece 1). Paint the wall behind it");
    bench.pieces[0].hung = bench.pieces[0].cut = true;
    shown_findings(bench.made.arena, layout, &bench.plan, &findings);
    assert_int_equal(findings.count, 6);
    bench.pieces[0].cut = false;
    shown_findings(bench.made.arena, layout, &bench.plan, &findings);
    assert_int_equal(findings.count, 6);
    arena_free(bench.made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {a_spot_comes_to_be_where_its_board_lies, a_spot_is_told_until_its_piece_hangs};
    return RUN(tests);
}
