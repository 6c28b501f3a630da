/*
 * Trim that the trim stock does not give. Boards of 96 in, a quarter inch squared off each end: 95 1/2 in to cut from,
 * kerf 1/8 in.
 */
#include "support/test.h"

#include "fill/trim.h"
#include "support/plain.h"
#include "trade/trim_short.h"

#include <string.h>

static Bench trim_bench(int boards)
{
    Bench bench = bench_new(INCHES(100), -INCHES(40), INCHES(53), INCHES(2.75), SIXTEENTH);
    bench.wall->saw = (Saw){.kerf = INCHES(0.125), .square = INCHES(0.25)};
    bench.wall->trim.given = true;
    if (boards > 0)
        *arena_push(bench.arena, &bench.wall->trim.stock) = (TrimStock){.length = INCHES(96), .count = boards};
    return bench;
}

static void add_piece(Bench *bench, char *name, Length length, int count)
{
    *arena_push(bench->arena, &bench->wall->trim.pieces) = (TrimPiece){name, length, count};
}

/* What is told agrees, strip for strip, with what the plan lacks. */
static Findings told(const Bench *bench)
{
    Findings findings = {0};
    trim_short_findings(bench->arena, bench->layout, &findings);
    for (int i = 0; i < findings.count; i++)
        assert_int_equal(findings.at[i].rule, RULE_MISSING);
    const TrimPlan *plan = trim_plan(bench->arena, bench->wall, NULL);
    assert_int_equal(findings.count > 0, plan->missing.count > 0);
    return findings;
}

START_TEST(what_fits_is_not_told)
{
    Bench bench = trim_bench(2);
    add_piece(&bench, "lip", INCHES(95.5), 1);   /* a whole board between its squared ends */
    add_piece(&bench, "stop", INCHES(31.75), 3); /* 3 x 31 3/4 and two kerfs */
    assert_int_equal(told(&bench).count, 0);
    bench.wall->trim.pieces.at[1].length += SIXTEENTH;
    assert_int_equal(told(&bench).count, 1);
    arena_free(bench.arena);
}
END_TEST

START_TEST(longer_than_every_board)
{
    Bench bench = trim_bench(3);
    add_piece(&bench, "rail", INCHES(120), 2);
    add_piece(&bench, "lip", INCHES(36), 1);
    add_piece(&bench, "rail", INCHES(120), 1); /* of the same kind: one warning */
    Findings findings = told(&bench);
    assert_int_equal(findings.count, 1);
    assert_string_equal(findings.at[0].text,
                        "3 strips of rail, 120 in long, cannot be cut from the trim stock: its longest board gives "
                        "95 1/2 in; add longer ones under trim.stock, or make two strips of one.");
    arena_free(bench.arena);
}
END_TEST

START_TEST(too_few_boards)
{
    Bench bench = trim_bench(2);
    add_piece(&bench, "rail", INCHES(90), 3);
    add_piece(&bench, "lip", INCHES(60), 1);
    Findings findings = told(&bench);
    assert_int_equal(findings.count, 2);
    assert_string_equal(findings.at[0].text, "One strip of rail, 90 in long, cannot be cut from the trim stock: no "
                                             "board that is long enough is left; add more under trim.stock.");
    assert_holds(findings.at[1].text, "One strip of lip, 60 in long");
    arena_free(bench.arena);
}
END_TEST

START_TEST(no_boards_at_all)
{
    Bench bench = trim_bench(0);
    assert_int_equal(told(&bench).count, 0); /* nothing is asked for */
    add_piece(&bench, "rail", INCHES(90), 1);
    Findings findings = told(&bench);
    assert_int_equal(findings.count, 1);
    assert_holds(findings.at[0].text, "there are no boards; write what is at hand under trim.stock");
    arena_free(bench.arena);
}
END_TEST

/* The longest first, each where there is room, leaves one over here (38 + 38; 29 + 29 + 29; of 96 each); the plan finds
 * 38 + 29 + 29 twice. */
START_TEST(where_the_quick_way_fails_the_plan_is_asked)
{
    Bench bench = trim_bench(2);
    bench.wall->saw = (Saw){0};
    add_piece(&bench, "stile", INCHES(38), 2);
    add_piece(&bench, "rail", INCHES(29), 4);
    assert_int_equal(told(&bench).count, 0);
    bench.wall->trim.pieces.at[1].length += SIXTEENTH;
    Findings findings = told(&bench);
    assert_int_equal(findings.count, 1);
    assert_holds(findings.at[0].text, "One strip of rail, 29 1/16 in long");
    arena_free(bench.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        what_fits_is_not_told,
        longer_than_every_board,
        too_few_boards,
        no_boards_at_all,
        where_the_quick_way_fails_the_plan_is_asked,
    };
    return RUN(tests);
}
