/* Cuts that go wrong at the saw, on walls laid out as ever with pieces put in by hand. The sizes are common practice;
 * each case is worked by hand. */
#include "support/test.h"

#include "trade/caution_cuts.h"

#define IN LENGTH_INCH
#define EIGHTH (LENGTH_INCH / 8)

typedef struct Bench {
    Arena *arena;
    Wall *wall;
    Plan plan;
} Bench;

/* Two faces of 60 in, round an outside miter, two courses of 3 in each, planks 1/2 in thick. */
static Bench bench_new(void)
{
    Arena *arena = arena_new();
    Bench bench = {.arena = arena, .wall = wall_new(arena, UNITS_IN)};
    Wall *wall = bench.wall;
    *arena_push(arena, &wall->planks.widths) = 3 * IN;
    wall->planks.thickness = IN / 2;
    for (int i = 0; i < 2; i++) {
        Face *face = arena_push(arena, &wall->faces);
        *face = (Face){.id = wall->next_id++, .name = arena_text(arena, i == 0 ? "north" : "east", i == 0 ? 5 : 4)};
        face->width = 60 * IN;
        *arena_push(arena, &face->floor) = (Mark){0, 0};
        *arena_push(arena, &face->ceiling) = (Mark){0, 6 * IN};
    }
    wall->faces.at[0].corner = (Corner){.kind = CORNER_OUTSIDE, .joint = CORNER_MITER};
    wall->saw.kerf = EIGHTH;
    bench.plan.pieces = arena_array(arena, Piece, 8);
    bench.plan.boards = arena_array(arena, BoardUse, 1);
    bench.plan.board_count = 1;
    return bench;
}

static void put_piece(Bench *bench, int course, Length left, Length right)
{
    bench->plan.pieces[bench->plan.piece_count] =
        (Piece){.number = bench->plan.piece_count + 1, .course = course, .left = left, .right = right, .board = 1};
    bench->plan.boards[0].count = ++bench->plan.piece_count;
}

/* How many findings of the rule there are; `first` gets the first. */
static int found(Bench *bench, Rule rule, Finding *first)
{
    Err err;
    Findings findings = {0};
    const Layout *layout = layout_wall(bench->arena, bench->wall, &err);
    assert_non_null(layout);
    cut_findings(bench->arena, layout, &bench->plan, &findings);
    int count = 0;
    for (int i = 0; i < findings.count; i++)
        if (findings.at[i].rule == rule && count++ == 0)
            *first = findings.at[i];
    return count;
}

START_TEST(a_piece_under_four_inches_is_a_stub)
{
    Bench bench = bench_new();
    Finding first = {0};
    put_piece(&bench, 0, 0, 4 * IN);
    put_piece(&bench, 1, 0, 4 * IN - 1);
    put_piece(&bench, 1, 4 * IN, 30 * IN);
    assert_int_equal(found(&bench, RULE_STUB, &first), 1);
    assert_int_equal(first.piece, 2);
    assert_int_equal(first.at, 0);
    bench.plan.pieces[1].hung = true;
    assert_int_equal(found(&bench, RULE_STUB, &first), 0);
    arena_free(bench.arena);
}
END_TEST

/* 4 in at its lower edge under a rake of 45 degrees, so that its upper edge is 3 in shorter: 1 in, or an eighth less.
 */
START_TEST(an_edge_under_an_inch_makes_a_stub)
{
    for (int less = 0; less < 2; less++) {
        Bench bench = bench_new();
        Finding first = {0};
        Marks *left = &bench.wall->faces.at[0].left;
        *arena_push(bench.arena, left) = (Mark){0, 0};
        *arena_push(bench.arena, left) = (Mark){3 * IN, 3 * IN};
        put_piece(&bench, 0, 0, 4 * IN - less * EIGHTH);
        assert_int_equal(found(&bench, RULE_STUB, &first), less);
        arena_free(bench.arena);
    }
}
END_TEST

/* Thick planks: what is 6 in at its face is 1 in at the back of its miter, or less. */
START_TEST(a_miter_is_as_short_as_its_back)
{
    for (int less = 0; less < 2; less++) {
        Bench bench = bench_new();
        Finding first = {0};
        bench.wall->planks.thickness = 5 * IN;
        Err err;
        const Layout *layout = layout_wall(bench.arena, bench.wall, &err);
        assert_non_null(layout);
        const Length right = layout->faces[0].courses[0].segments[0].right;
        put_piece(&bench, 0, right - 6 * IN + less * EIGHTH, right);
        assert_int_equal(found(&bench, RULE_STUB, &first), less);
        arena_free(bench.arena);
    }
}
END_TEST

/* A hatch that reaches so much into the lower course from above, or stands in it as a hole. */
START_TEST(a_notch_under_an_eighth_is_shallow)
{
    static const struct {
        Length bottom, height;
        int told;
    } cases[] = {{3 * IN - IN / 8, 2 * IN, 0}, {3 * IN - IN / 16, 2 * IN, 1}, {IN, IN / 16, 0}};
    for (int i = 0; i < 3; i++) {
        Bench bench = bench_new();
        Finding first = {0};
        *arena_push(bench.arena, &bench.wall->faces.at[0].openings) = (Opening){.id = 9,
                                                                                .name = "hatch",
                                                                                .kind = OPENING_OTHER,
                                                                                .left = 20 * IN,
                                                                                .bottom = cases[i].bottom,
                                                                                .width = 10 * IN,
                                                                                .height = cases[i].height};
        put_piece(&bench, 0, 0, 50 * IN);
        assert_int_equal(found(&bench, RULE_SHALLOW, &first), cases[i].told);
        if (cases[i].told) {
            assert_holds(first.text, "hatch");
            assert_int_equal(first.opening, 0);
            assert_int_equal(first.at, 20 * IN);
        }
        arena_free(bench.arena);
    }
}
END_TEST

START_TEST(a_saw_that_takes_nothing_is_told_where_boards_are_cut_in_two)
{
    Bench bench = bench_new();
    Finding first = {0};
    bench.wall->saw.kerf = 0;
    put_piece(&bench, 0, 0, 30 * IN);
    assert_int_equal(found(&bench, RULE_KERF, &first), 0);
    put_piece(&bench, 1, 0, 30 * IN);
    assert_int_equal(found(&bench, RULE_KERF, &first), 1);
    bench.wall->saw.kerf = 1;
    assert_int_equal(found(&bench, RULE_KERF, &first), 0);
    arena_free(bench.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        a_piece_under_four_inches_is_a_stub,
        an_edge_under_an_inch_makes_a_stub,
        a_miter_is_as_short_as_its_back,
        a_notch_under_an_eighth_is_shallow,
        a_saw_that_takes_nothing_is_told_where_boards_are_cut_in_two,
    };
    return RUN(tests);
}
