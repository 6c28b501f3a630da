/*
 * Which pieces may stand: no shorter than the rules say, one where two would be too short, a little kept over by the
 * piece that closes a section, the blade's way through slanted ends, pinned joints and bars. Worked by hand.
 */
#include "support/test.h"

#include "fill/fill.h"
#include "support/rules.h"

#define IN LENGTH_INCH
#define SIXTEENTHS(n) ((n)*IN / 16)

/* A face of `courses` courses of 3 in, no studs, no stock yet; the saw takes nothing. */
static Wall *plain_wall(Arena *arena, Length width, int courses)
{
    Wall *wall = wall_new(arena, UNITS_IN);
    *arena_push(arena, &wall->planks.widths) = 3 * IN;
    wall->planks.thickness = IN / 2;
    Face *face = arena_push(arena, &wall->faces);
    *face = (Face){.id = wall->next_id++, .name = arena_text(arena, "north", 5), .width = width};
    *arena_push(arena, &face->floor) = (Mark){0, 0};
    *arena_push(arena, &face->ceiling) = (Mark){0, courses * 3 * IN};
    return wall;
}

static void put_stock(Arena *arena, Wall *wall, Length length, int count)
{
    *arena_push(arena, &wall->stock) =
        (Stock){.id = wall->next_id++, .label = "", .tone = "", .length = length, .count = count};
}

static const Layout *lay_out(Arena *arena, const Wall *wall)
{
    Err err;
    const Layout *layout = layout_wall(arena, wall, &err);
    assert_non_null(layout);
    return layout;
}

/* The plan, held to the rules. */
static const Plan *fill(Arena *arena, const Wall *wall)
{
    Err err;
    const Layout *layout = lay_out(arena, wall);
    const Plan *plan = fill_wall(arena, layout);
    assert_done(rules_hold(layout, plan, &err), &err);
    assert_true(!plan->bound_known || plan->length_bound <= plan->length_opened);
    return plan;
}

/* Offcuts of 15 1/4 and 4 3/4 in would do for 20 in, but no two lawful pieces do: one piece from a longer board. */
START_TEST(one_piece_where_two_would_be_too_short)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 20 * IN, 6);
    wall->joints.shortest = 24 * IN;
    put_stock(arena, wall, SIXTEENTHS(244), 6);
    put_stock(arena, wall, SIXTEENTHS(76), 6);
    put_stock(arena, wall, 50 * IN, 3);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->piece_count, 6);
    assert_int_equal(plan->shortfall, 0);
    assert_int_equal(plan->boards_opened, 3);
    arena_free(arena);
}
END_TEST

/* 36 in with pieces of 20 in at the least: one piece, though two boards of 18 in are shorter. */
START_TEST(one_piece_up_to_twice_the_shortest)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 36 * IN, 2);
    wall->joints.shortest = 20 * IN;
    put_stock(arena, wall, 18 * IN, 4);
    put_stock(arena, wall, 40 * IN, 2);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->piece_count, 2);
    assert_int_equal(plan->breaks, 0);
    assert_int_equal(plan->shortfall, 0);
    arena_free(arena);
}
END_TEST

/* No board gives 36 in: two pieces of 18 in break the rule twice (600 mm), one breaks it once and leaves 18 in bare
 * (757.2 mm). */
START_TEST(two_short_pieces_where_no_board_gives_one)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 36 * IN, 1);
    wall->joints.shortest = 20 * IN;
    put_stock(arena, wall, 18 * IN, 4);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->piece_count, 2);
    assert_int_equal(plan->breaks, 2);
    assert_int_equal(plan->bare_length, 0);
    arena_free(arena);
}
END_TEST

/* What hangs leaves gaps: one that a short piece fills alone breaks nothing. */
START_TEST(a_piece_that_fills_a_gap_is_not_too_short)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 60 * IN, 1);
    wall->joints.shortest = 20 * IN;
    put_stock(arena, wall, 50 * IN, 3);
    *arena_push(arena, &wall->hung_pieces) =
        (HungPiece){.face = arena_text(arena, "north", 5), .course = 0, .left = 5 * IN, .right = 40 * IN, .board = 1};
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->piece_count, 3);
    assert_int_equal(plan->breaks, 0);
    arena_free(arena);
}
END_TEST

/* The last piece of each section asks 1/4 in more of its board: 50 and 50 1/4 in do not come of two boards of 50. */
START_TEST(a_closer_keeps_a_little_over)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 100 * IN, 1);
    wall->joints.closer = IN / 4;
    put_stock(arena, wall, 50 * IN, 3);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->boards_opened, 3);
    assert_int_equal(plan->closers, IN / 4);
    assert_true(plan->bound_known && plan->length_bound == 150 * IN);
    for (int i = 0; i < plan->piece_count; i++)
        assert_int_equal(plan->pieces[i].closer, plan->pieces[i].right == 100 * IN ? IN / 4 : 0);
    arena_free(arena);
}
END_TEST

/* Two boards are all there is: the wall is covered, and the closer goes without. */
START_TEST(a_closer_gives_way_before_wood_stays_bare)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 100 * IN, 1);
    wall->joints.closer = IN / 4;
    put_stock(arena, wall, 50 * IN, 2);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->bare_length, 0);
    assert_int_equal(plan->shortfall, 0);
    assert_int_equal(plan->closers, 0);
    assert_int_equal(plan->closers_off, 1);
    arena_free(arena);
}
END_TEST

/* A window closes in what lies left of it; an outside corner closes nothing in. */
START_TEST(closers_stand_at_openings_and_not_at_outside_corners)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 100 * IN, 2);
    Face *east = arena_push(arena, &wall->faces);
    *east = wall->faces.at[0];
    east->id = wall->next_id++;
    east->name = arena_text(arena, "east", 4);
    Face *face = &wall->faces.at[0];
    wall->joints.closer = IN / 4;
    wall->joints.shortest = 20 * IN;
    face->corner = (Corner){.kind = CORNER_OUTSIDE, .joint = CORNER_TRIM};
    *arena_push(arena, &face->openings) = (Opening){.id = wall->next_id++,
                                                    .name = arena_text(arena, "window", 6),
                                                    .kind = OPENING_WINDOW,
                                                    .left = 40 * IN,
                                                    .bottom = -IN,
                                                    .width = 20 * IN,
                                                    .height = 10 * IN};
    put_stock(arena, wall, 60 * IN, 10);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->shortfall, 0);
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        bool closes = piece->face == 0 ? piece->right == 40 * IN : piece->right == 100 * IN;
        assert_int_equal(piece->closer, closes ? IN / 4 : 0);
    }
    arena_free(arena);
}
END_TEST

/* Both ends of each piece stand under a rake of 45 degrees: between two of them a blade of 1/8 in takes 4 490 129 nm. A
 * board that lacks 1 nm of it does not give both; the fill asks for the blade's slant at each piece. */
START_TEST(slanted_ends_take_the_blade_at_an_angle)
{
    for (int short_by = 0; short_by < 2; short_by++) {
        Arena *arena = arena_new();
        Wall *wall = plain_wall(arena, 60 * IN, 2);
        wall->saw.kerf = IN / 8;
        Face *face = &wall->faces.at[0];
        face->ceiling = (Marks){0};
        *arena_push(arena, &face->ceiling) = (Mark){0, 0};
        *arena_push(arena, &face->ceiling) = (Mark){6 * IN, 6 * IN};
        *arena_push(arena, &face->ceiling) = (Mark){54 * IN, 6 * IN};
        *arena_push(arena, &face->ceiling) = (Mark){60 * IN, 0};
        put_stock(arena, wall, (60 + 54) * IN + (short_by ? 4490128 : 4490129 + 1315129), 1);
        const Plan *plan = fill(arena, wall);
        assert_int_equal(plan->pieces[0].left_kerf, 4490129);
        assert_int_equal(plan->bare_length == 0, short_by == 0);
        arena_free(arena);
    }
}
END_TEST

/* ---- pins and bars ---- */

static void put_pin(Arena *arena, Wall *wall, int course, Length at)
{
    *arena_push(arena, &wall->joints.pins) = (Pin){arena_text(arena, "north", 5), course, at};
}

static void put_bar(Arena *arena, Wall *wall, int course, Length from, Length to)
{
    *arena_push(arena, &wall->joints.bars) = (Bar){arena_text(arena, "north", 5), course, from, to};
}

static int findings_of_rule(const Plan *plan, Rule rule)
{
    int count = 0;
    for (int i = 0; i < plan->findings.count; i++)
        count += plan->findings.at[i].rule == rule;
    return count;
}

/* One board would cover each course; on a mark or off it, the pinned one has its joint. */
START_TEST(a_pin_makes_a_joint)
{
    static const Length places[] = {60 * IN, 60 * IN + IN / 7};
    for (int i = 0; i < 2; i++) {
        Arena *arena = arena_new();
        Wall *wall = plain_wall(arena, 96 * IN, 3);
        put_stock(arena, wall, 100 * IN, 8);
        put_pin(arena, wall, 1, places[i]);
        const Plan *plan = fill(arena, wall);
        assert_int_equal(plan->piece_count, 4);
        assert_int_equal(plan->pieces[1].right, places[i]);
        assert_int_equal(plan->pieces[2].left, places[i]);
        assert_int_equal(plan->shortfall, 0);
        assert_int_equal(findings_of_rule(plan, RULE_PIN), 0);
        arena_free(arena);
    }
}
END_TEST

/* 5 in are less than any piece should be, and less than a break weighs; the joint is made all the same, and told. */
START_TEST(a_pin_that_breaks_a_rule_is_told_as_that_break)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 96 * IN, 2);
    wall->joints.shortest = 20 * IN;
    wall->joints.stagger = 10 * IN;
    put_stock(arena, wall, 100 * IN, 8);
    put_pin(arena, wall, 0, 5 * IN);
    put_pin(arena, wall, 1, 8 * IN);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->piece_count, 4);
    assert_int_equal(plan->bare_length, 0);
    assert_int_equal(findings_of_rule(plan, RULE_SHORTEST), 2);
    assert_int_equal(findings_of_rule(plan, RULE_STAGGER), 1);
    arena_free(arena);
}
END_TEST

START_TEST(a_pin_off_the_studs_is_told)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 96 * IN, 1);
    wall->joints.land = LAND_STUDS;
    wall->faces.at[0].studs = (Studs){.given = true, .regular = true, .first = 0, .spacing = 16 * IN};
    put_stock(arena, wall, 100 * IN, 2);
    put_pin(arena, wall, 0, 50 * IN);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->piece_count, 2);
    assert_int_equal(findings_of_rule(plan, RULE_STUD), 1);
    arena_free(arena);
}
END_TEST

/* Boards of 60 in on 100 in: a joint from 40 to 60 in, but the bar leaves 59 1/16 in and more. */
START_TEST(no_joint_stands_in_a_bar)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 100 * IN, 1);
    put_stock(arena, wall, 60 * IN, 2);
    put_bar(arena, wall, 0, 0, 59 * IN);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->piece_count, 2);
    assert_int_equal(plan->shortfall, 0);
    assert_in_range(plan->pieces[0].right, 59 * IN + 1, 60 * IN);
    arena_free(arena);
}
END_TEST

/* Studs at 32, 48, 64 in: with 48 barred the joint stands on another, with all barred the wall stays bare in part. */
START_TEST(no_joint_stands_on_a_barred_stud)
{
    for (int all = 0; all < 2; all++) {
        Arena *arena = arena_new();
        Wall *wall = plain_wall(arena, 96 * IN, 1);
        wall->joints.land = LAND_STUDS;
        wall->faces.at[0].studs = (Studs){.given = true, .regular = true, .first = 0, .spacing = 16 * IN};
        put_stock(arena, wall, all ? 50 * IN : 66 * IN, 2);
        put_bar(arena, wall, 0, all ? 0 : 48 * IN, all ? 96 * IN : 48 * IN);
        const Plan *plan = fill(arena, wall);
        if (all) {
            assert_int_equal(plan->bare_length, 96 * IN);
        } else {
            assert_int_equal(plan->shortfall, 0);
            assert_true(plan->pieces[0].right == 32 * IN || plan->pieces[0].right == 64 * IN);
        }
        arena_free(arena);
    }
}
END_TEST

/* A pin in a bar is made; one under a hung piece, or where no course is, cannot be. Each is told. */
START_TEST(a_pin_that_is_not_kept_is_told)
{
    for (int hung = 0; hung < 2; hung++) {
        Arena *arena = arena_new();
        Wall *wall = plain_wall(arena, 96 * IN, 1);
        put_stock(arena, wall, 100 * IN, 2);
        put_pin(arena, wall, 0, 60 * IN);
        put_bar(arena, wall, 0, 50 * IN, 70 * IN);
        if (hung)
            *arena_push(arena, &wall->hung_pieces) = (HungPiece){
                .face = arena_text(arena, "north", 5), .course = 0, .left = 0, .right = 96 * IN, .board = 1};
        const Plan *plan = fill(arena, wall);
        assert_int_equal(plan->piece_count, hung ? 1 : 2);
        assert_int_equal(findings_of_rule(plan, RULE_PIN), 1);
        arena_free(arena);
    }
}
END_TEST

/* Two boards of 48 in a course open least; one of 100 in makes fewer pieces, for 300 in 288, which is 4.17 % more. */
START_TEST(what_may_be_spent_makes_fewer_pieces)
{
    static const struct {
        int64_t spend;
        bool all;
        int pieces;
        Length opened;
    } cases[] = {
        {0, false, 6, 288 * IN}, {4166, false, 4, 296 * IN}, {4167, false, 3, 300 * IN}, {0, true, 3, 300 * IN}};
    for (int i = 0; i < 4; i++) {
        Arena *arena = arena_new();
        Wall *wall = plain_wall(arena, 96 * IN, 3);
        put_stock(arena, wall, 48 * IN, 10);
        put_stock(arena, wall, 100 * IN, 10);
        wall->joints.spend = cases[i].spend;
        wall->joints.spend_all = cases[i].all;
        const Plan *plan = fill(arena, wall);
        assert_int_equal(plan->length_least, cases[i].spend > 0 || cases[i].all ? 288 * IN : 0);
        assert_int_equal(plan->piece_count, cases[i].pieces);
        assert_int_equal(plan->length_opened, cases[i].opened);
        assert_int_equal(plan->shortfall, 0);
        arena_free(arena);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        one_piece_where_two_would_be_too_short,
        one_piece_up_to_twice_the_shortest,
        two_short_pieces_where_no_board_gives_one,
        a_piece_that_fills_a_gap_is_not_too_short,
        a_closer_keeps_a_little_over,
        a_closer_gives_way_before_wood_stays_bare,
        closers_stand_at_openings_and_not_at_outside_corners,
        slanted_ends_take_the_blade_at_an_angle,
        a_pin_makes_a_joint,
        a_pin_that_breaks_a_rule_is_told_as_that_break,
        a_pin_off_the_studs_is_told,
        no_joint_stands_in_a_bar,
        no_joint_stands_on_a_barred_stud,
        a_pin_that_is_not_kept_is_told,
        what_may_be_spent_makes_fewer_pieces,
    };
    return RUN(tests);
}
