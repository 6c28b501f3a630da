/* Walls that nothing good can be done with: each still gets a plan that covers what it can and says why. And what
 * is hung. */
#include "support/test.h"

#include "fill/demand.h"
#include "fill/fill.h"
#include "fill/report_findings.h"
#include "support/rules.h"

#include <string.h>

#define IN LENGTH_INCH

/* A face of ten courses, 141 in wide, studs every 16 in from 14 in on; no stock yet. */
static Wall *plain_wall(Arena *arena)
{
    Wall *wall = wall_new(arena, UNITS_IN);
    *arena_push(arena, &wall->planks.widths) = 3 * IN;
    wall->planks.thickness = IN / 2;
    wall->joints = (Joints){.land = LAND_ANYWHERE, .stagger = 6 * IN, .shortest = 10 * IN};
    wall->saw = (Saw){IN / 8, IN / 4};
    Face *face = arena_push(arena, &wall->faces);
    *face = (Face){.id = wall->next_id++, .name = arena_text(arena, "north", 5), .width = 141 * IN};
    *arena_push(arena, &face->floor) = (Mark){0, 0};
    *arena_push(arena, &face->ceiling) = (Mark){0, 30 * IN};
    face->studs = (Studs){.given = true, .regular = true, .first = 14 * IN, .spacing = 16 * IN};
    return wall;
}

static void put_stock(Arena *arena, Wall *wall, Length length, int count)
{
    *arena_push(arena, &wall->stock) =
        (Stock){.id = wall->next_id++, .label = "", .tone = "", .length = length, .count = count};
}

static void put_hung(Arena *arena, Wall *wall, int course, Length left, Length right, int board)
{
    *arena_push(arena, &wall->hung_pieces) = (HungPiece){
        .face = arena_text(arena, "north", 5), .course = course, .left = left, .right = right, .board = board};
}

/* The plan, held to the rules. */
static const Plan *fill(Arena *arena, const Wall *wall)
{
    Err err;
    const Layout *layout = layout_wall(arena, wall, &err);
    assert_non_null(layout);
    const Plan *plan = fill_wall(arena, layout);
    assert_done(rules_hold(layout, plan, &err), &err);
    return plan;
}

static int count_rule(const Plan *plan, Rule rule)
{
    int count = 0;
    for (int i = 0; i < plan->findings.count; i++)
        count += plan->findings.at[i].rule == rule;
    return count;
}

static const Finding *first_of(const Plan *plan, Rule rule)
{
    for (int i = 0; i < plan->findings.count; i++)
        if (plan->findings.at[i].rule == rule)
            return &plan->findings.at[i];
    FAIL("no finding of %s", rule_word(rule));
    return NULL;
}

START_TEST(without_stock_everything_is_missing)
{
    Arena *arena = arena_new();
    const Plan *plan = fill(arena, plain_wall(arena));
    assert_int_equal(plan->piece_count, 0);
    assert_true(plan->bare_length == 1410 * IN && plan->bare_count == 10);
    assert_true(plan->bare[0].too_few);
    assert_holds(first_of(plan, RULE_STOCK)->text, "there are no boards");
    arena_free(arena);
}
END_TEST

START_TEST(board_longer_than_the_wall)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    put_stock(arena, wall, 200 * IN, 1);
    const Plan *plan = fill(arena, wall);
    assert_true(plan->length_used > 198 * IN); /* the whole course, and most of what is left */
    assert_int_equal(plan->boards_opened, 1);
    arena_free(arena);
}
END_TEST

START_TEST(a_hundred_thousand_inch_boards)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    wall->joints.shortest = wall->joints.stagger = 0;
    wall->saw = (Saw){0};
    put_stock(arena, wall, IN, 100000);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->shortfall, 0);
    assert_int_equal(plan->piece_count, 1410);
    assert_true(plan->length_bound == 1410 * IN && plan->length_opened == 1410 * IN);
    arena_free(arena);
}
END_TEST

/* A piece of 40 in breaks one rule and hangs 40 in: worth it. */
START_TEST(shortest_longer_than_every_board)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    wall->joints = (Joints){.land = LAND_ANYWHERE, .stagger = 0, .shortest = 50 * IN};
    put_stock(arena, wall, 41 * IN, 60);
    const Plan *plan = fill(arena, wall);
    assert_true(plan->bare_length < 1410 * IN / 4);
    assert_true(plan->breaks >= 30);
    assert_int_equal(count_rule(plan, RULE_SHORTEST), plan->breaks);
    arena_free(arena);
}
END_TEST

/* Pieces of 7 1/2 in would break a rule, 300 mm each, and hang less: the wall stays bare, and not for want of boards.
 */
START_TEST(boards_too_short_for_any_piece)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    put_stock(arena, wall, 8 * IN, 2000);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->piece_count, 0);
    assert_holds(first_of(plan, RULE_STOCK)->text,
                 "no board is long enough: the longest gives 7 1/2 in, and no piece may be shorter than 10 in");
    arena_free(arena);
}
END_TEST

START_TEST(boards_too_narrow_for_a_course_are_left)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    put_stock(arena, wall, 80 * IN, 60);
    wall->stock.at[0].width_given = true;
    wall->stock.at[0].width = 3 * IN - 1;
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->piece_count, 0);
    assert_holds(first_of(plan, RULE_STOCK)->text, "no board at hand is 3 in wide");
    arena_free(arena);
}
END_TEST

START_TEST(stagger_wider_than_the_wall)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    wall->joints.stagger = 200 * IN;
    put_stock(arena, wall, 80 * IN, 60);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->breaks, 9); /* one joint a course: nine pairs */
    assert_int_equal(plan->bare_length, 0);
    assert_int_equal(count_rule(plan, RULE_STAGGER), 9);
    assert_true(first_of(plan, RULE_STAGGER)->has_at && first_of(plan, RULE_STAGGER)->has_course);
    arena_free(arena);
}
END_TEST

START_TEST(no_studs_with_joints_on_studs)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    wall->joints.land = LAND_STUDS;
    wall->faces.at[0].studs.given = false;
    put_stock(arena, wall, 80 * IN, 60);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->bare_length, 0);
    assert_int_equal(plan->breaks, 10); /* one joint a course */
    assert_holds(first_of(plan, RULE_STUD)->text, "none written down");
    arena_free(arena);
}
END_TEST

START_TEST(kerf_longer_than_a_board)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    wall->saw.kerf = 90 * IN;
    put_stock(arena, wall, 80 * IN, 30);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->shortfall, 0); /* one piece a board needs no kerf */
    assert_int_equal(plan->boards_opened, plan->piece_count);
    arena_free(arena);
}
END_TEST

START_TEST(squared_ends_longer_than_a_board)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    wall->saw.square = 50 * IN;
    put_stock(arena, wall, 80 * IN, 30);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->piece_count, 0);
    assert_holds(first_of(plan, RULE_STOCK)->text, "squaring and the stretches to avoid take all of every board");
    arena_free(arena);
}
END_TEST

START_TEST(all_of_every_board_avoided)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    put_stock(arena, wall, 80 * IN, 30);
    *arena_push(arena, &wall->stock.at[0].avoid) = (Stretch){0, 80 * IN};
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->piece_count, 0);
    assert_true(plan->bare[0].too_few);
    assert_holds(first_of(plan, RULE_STOCK)->text, "squaring and the stretches to avoid take all of every board");
    assert_int_equal(plan->boards[0].left_over, 0);
    arena_free(arena);
}
END_TEST

/* Boards of 52 in and studs at 20 and 121 in alone: a course with joints on both has one more off a stud, its
 * neighbours two. */
START_TEST(studs_too_far_apart)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    wall->joints.land = LAND_STUDS;
    wall->faces.at[0].studs.regular = false;
    *arena_push(arena, &wall->faces.at[0].studs.at) = 20 * IN;
    *arena_push(arena, &wall->faces.at[0].studs.at) = 121 * IN;
    put_stock(arena, wall, 52 * IN, 60);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->bare_length, 0);
    assert_int_equal(count_rule(plan, RULE_STUD), 15);
    assert_int_equal(plan->breaks, 15);
    arena_free(arena);
}
END_TEST

START_TEST(hung_pieces_stay)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    put_stock(arena, wall, 80 * IN, 40);
    put_hung(arena, wall, 0, IN / 16, 33 * IN + 7, 3); /* its left end is the wall's, its right end on no mark */
    put_hung(arena, wall, 1, 100 * IN, 141 * IN, 3);   /* a kerf further on the same board */
    put_hung(arena, wall, 1, 30 * IN, 33 * IN, 5);     /* shorter than any piece should be */
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->shortfall, 0);
    assert_int_equal(count_rule(plan, RULE_HUNG), 0);
    const Piece *first = &plan->pieces[0];
    assert_true(first->hung && first->left == 0 && first->right == 33 * IN + 7 && first->offset == IN / 4);
    const BoardUse *use = &plan->boards[2];
    const Piece *second = &plan->pieces[plan->by_board[use->first + 1]];
    assert_true(second->hung && second->course == 1 && second->offset == IN / 4 + 33 * IN + 7 + IN / 8);
    arena_free(arena);
}
END_TEST

START_TEST(hung_pieces_that_fit_nowhere_are_told)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    put_stock(arena, wall, 80 * IN, 40);
    put_hung(arena, wall, 0, 0, 40 * IN, 1);
    put_hung(arena, wall, 0, 30 * IN, 60 * IN, 2);   /* over the first */
    put_hung(arena, wall, 2, 100 * IN, 142 * IN, 3); /* beyond the corner */
    put_hung(arena, wall, 3, 0, 40 * IN, 41);        /* no such board */
    put_hung(arena, wall, 4, 0, 81 * IN, 4);         /* longer than its board */
    put_hung(arena, wall, 50, 0, 40 * IN, 5);        /* no such course */
    const Plan *plan = fill(arena, wall);
    assert_int_equal(count_rule(plan, RULE_HUNG), 5);
    int hung = 0;
    for (int i = 0; i < plan->piece_count; i++)
        hung += plan->pieces[i].hung;
    assert_int_equal(hung, 1);
    assert_int_equal(plan->bare_length, 0);
    arena_free(arena);
}
END_TEST

/* ---- each fault of what hangs, by itself ---- */

static HungPiece *last_hung(Wall *wall)
{
    return &wall->hung_pieces.at[wall->hung_pieces.count - 1];
}

/* The one finding about what hangs says `words`; `hung` pieces hang in the plan; nothing of the wall is left bare. */
static const Finding *one_told(const Plan *plan, const char *words, int hung)
{
    assert_int_equal(count_rule(plan, RULE_HUNG), 1);
    const Finding *finding = first_of(plan, RULE_HUNG);
    assert_holds(finding->text, words);
    assert_int_equal(rule_grade(RULE_HUNG), GRADE_FAULT);
    for (int i = 0; i < plan->piece_count; i++)
        hung -= plan->pieces[i].hung;
    assert_int_equal(hung, 0);
    assert_int_equal(plan->bare_length, 0);
    return finding;
}

START_TEST(a_hung_piece_of_a_board_that_is_not_there)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    put_stock(arena, wall, 80 * IN, 40);
    put_hung(arena, wall, 3, 20 * IN, 40 * IN, 41);
    const Finding *finding = one_told(fill(arena, wall), "from 20 in to 40 in is from board 41, which is not there", 0);
    assert_true(finding->face == 0 && finding->has_course && finding->course == 3);
    assert_true(finding->has_at && finding->at == 20 * IN);
    arena_free(arena);
}
END_TEST

START_TEST(hung_pieces_over_one_another)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    put_stock(arena, wall, 80 * IN, 40);
    put_hung(arena, wall, 0, 0, 40 * IN, 1);
    put_hung(arena, wall, 0, 40 * IN, 60 * IN, 2); /* end to end is not over one another */
    put_hung(arena, wall, 0, 60 * IN - 1, 80 * IN, 3);
    const Finding *finding = one_told(fill(arena, wall), "lies over another hung piece", 2);
    assert_int_equal(finding->board, 3);
    arena_free(arena);
}
END_TEST

START_TEST(hung_pieces_of_the_same_wood)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    put_stock(arena, wall, 80 * IN, 40);
    put_hung(arena, wall, 0, 0, 40 * IN, 7);
    put_hung(arena, wall, 1, 0, 30 * IN, 7);
    last_hung(wall)->offset_given = true;
    last_hung(wall)->offset = IN / 4 + 40 * IN; /* where the first ends */
    put_hung(arena, wall, 2, 0, 5 * IN, 7);
    last_hung(wall)->offset_given = true;
    last_hung(wall)->offset = IN / 4 + 70 * IN - 1;
    const Finding *finding = one_told(fill(arena, wall), "takes wood of board 7 that is in another hung piece", 2);
    assert_int_equal(finding->course, 2);
    arena_free(arena);
}
END_TEST

START_TEST(a_hung_piece_beyond_the_end_of_its_board)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    put_stock(arena, wall, 80 * IN, 40);
    put_hung(arena, wall, 0, 0, 40 * IN, 7);
    last_hung(wall)->offset_given = true;
    last_hung(wall)->offset = 40 * IN; /* to the very end */
    put_hung(arena, wall, 1, 0, 40 * IN, 8);
    last_hung(wall)->offset_given = true;
    last_hung(wall)->offset = 40 * IN + 1;
    const Finding *finding = one_told(fill(arena, wall), "is from board 8, which is too short for it", 1);
    assert_int_equal(finding->course, 1);
    arena_free(arena);
}
END_TEST

/* The door takes the middle of courses 0 to 5: nothing hangs there, and little beyond the ends of what is left. */
START_TEST(hung_pieces_outside_any_segment)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    put_stock(arena, wall, 80 * IN, 40);
    *arena_push(arena, &wall->faces.at[0].openings) = (Opening){.id = wall->next_id++,
                                                                .name = arena_text(arena, "door", 4),
                                                                .kind = OPENING_DOOR,
                                                                .left = 50 * IN,
                                                                .width = 40 * IN,
                                                                .height = 18 * IN};
    put_hung(arena, wall, 0, 0, 50 * IN + HUNG_NEAR, 1); /* taken as the segment's end */
    put_hung(arena, wall, 2, 55 * IN, 85 * IN, 2);       /* in the door */
    const Finding *finding = one_told(fill(arena, wall), "lies where no wood hangs", 1);
    assert_int_equal(finding->course, 2);
    wall->hung_pieces.at[1].right = 141 * IN;
    one_told(fill(arena, wall), "reaches beyond the end of its section by more than 1/8 in", 1);
    wall->hung_pieces.at[1] = wall->hung_pieces.at[0];
    wall->hung_pieces.at[1].course = 1;
    wall->hung_pieces.at[1].right++; /* one nanometre more is too much */
    wall->hung_pieces.at[1].board = 2;
    one_told(fill(arena, wall), "reaches beyond the end of its section by more than 1/8 in", 1);
    arena_free(arena);
}
END_TEST

/* It hangs, so it stays; but it is told, whether it was cut across the stretch, into its end, or from within it. */
START_TEST(a_hung_piece_of_wood_to_be_avoided)
{
    static const struct {
        Length offset, length;
        bool told;
    } cases[] = {
        {20 * IN, 40 * IN, true},
        {30 * IN, 12 * IN, true},
        {33 * IN, IN / 2, true},
        {34 * IN, 12 * IN, true},
        {19 * IN, 12 * IN, false},
        {19 * IN, 12 * IN + 1, true},
        {34 * IN + IN / 2, 12 * IN, false},
        {34 * IN + IN / 2 - 1, 12 * IN, true},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        Arena *arena = arena_new();
        Wall *wall = plain_wall(arena);
        put_stock(arena, wall, 80 * IN, 6);
        put_stock(arena, wall, 80 * IN, 34);
        *arena_push(arena, &wall->stock.at[0].avoid) = (Stretch){31 * IN, 34 * IN + IN / 2};
        put_hung(arena, wall, 4, 60 * IN, 60 * IN + cases[i].length, 2);
        last_hung(wall)->offset_given = true;
        last_hung(wall)->offset = cases[i].offset;
        const Plan *plan = fill(arena, wall);
        if (cases[i].told) {
            const Finding *finding =
                one_told(plan, "cut across 31 in to 34 1/2 in of board 2, which is to be avoided", 1);
            assert_true(finding->board == 2 && finding->course == 4 && finding->at == 60 * IN);
            assert_holds(finding->text, "it stays in the plan");
        } else {
            assert_int_equal(count_rule(plan, RULE_HUNG), 0);
        }
        arena_free(arena);
    }
}
END_TEST

/* Boards with their own width: the wide course takes wide ones, the narrow course what is too narrow for it. */
START_TEST(narrow_boards_go_to_narrow_courses)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    *arena_push(arena, &wall->planks.widths) = 2 * IN;
    put_stock(arena, wall, 80 * IN, 12);
    put_stock(arena, wall, 80 * IN, 12);
    wall->stock.at[1].width_given = true;
    wall->stock.at[1].width = 2 * IN;
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->bare_length, 0); /* six courses of each width: 12 boards each, not one to spare */
    arena_free(arena);
}
END_TEST

/* Nails at 20 and 40 in, each taking less than a kerf: a board of 60 in gives 59 3/8 in and no more, so that four of
 * them fall 1/2 in short of two courses of 119 in, and something else must be opened. */
START_TEST(nails_take_their_own_width_from_the_bound)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    wall->joints.shortest = wall->joints.stagger = 0;
    wall->faces.at[0].width = 119 * IN;
    wall->faces.at[0].ceiling.at[0].off = 6 * IN;
    put_stock(arena, wall, 60 * IN, 5);
    put_stock(arena, wall, 4 * IN, 1);
    for (int i = 0; i < 2; i++)
        *arena_push(arena, &wall->stock.at[0].avoid) = (Stretch){20 * (i + 1) * IN, 20 * (i + 1) * IN + IN / 16};
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->shortfall, 0);
    assert_true(plan->length_bound >= 244 * IN && plan->length_bound <= plan->length_opened);
    arena_free(arena);
}
END_TEST

/* Avoided wood in the middle: pieces may end at it and begin behind it, to the nanometre. */
START_TEST(avoided_wood_is_cut_round)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    wall->faces.at[0].width = 60 * IN;
    wall->faces.at[0].ceiling.at[0].off = 6 * IN;
    put_stock(arena, wall, 123 * IN + IN / 2, 1);
    *arena_push(arena, &wall->stock.at[0].avoid) = (Stretch){60 * IN + IN / 4, 63 * IN + IN / 4};
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->shortfall, 0);
    assert_int_equal(plan->piece_count, 2);
    assert_int_equal(plan->boards[0].left_over, 0);
    arena_free(arena);
}
END_TEST

/* A side that leans: runs over one another are longer from course to course, by 7/16 in each and 2 3/16 in all. What
 * they are thought of as one for the bound, their shortest pieces must be shorter by all of it. */
START_TEST(a_leaning_side_keeps_the_bound)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    wall->joints = (Joints){.land = LAND_STUDS, .stagger = 0, .shortest = 10 * IN};
    wall->saw = (Saw){IN / 8, 0};
    Face *face = &wall->faces.at[0];
    face->width = 60 * IN;
    face->ceiling.at[0].off = 18 * IN;
    *arena_push(arena, &face->left) = (Mark){0, 0};
    *arena_push(arena, &face->left) = (Mark){18 * IN, 21 * IN / 8};
    face->studs = (Studs){.given = true};
    *arena_push(arena, &face->studs.at) = 21 * IN / 2;
    *arena_push(arena, &face->studs.at) = 30 * IN;
    put_stock(arena, wall, 397 * IN / 8, 14);
    const Plan *plan = fill(arena, wall);
    assert_int_equal(plan->shortfall, 0);
    assert_true(plan->bound_known && plan->length_bound <= plan->length_opened);
    assert_int_equal(count_rule(plan, RULE_BOUND), 0);
    arena_free(arena);
}
END_TEST

/* A bound above what the plan opens is wrong: the plan does without it, says so, and is as good as before. */
START_TEST(a_refuted_bound_is_left_out_and_told)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena);
    put_stock(arena, wall, 70 * IN, 25);
    Plan *plan = (Plan *)(uintptr_t)fill(arena, wall);
    const Bound known = {plan->length_bound, plan->boards_bound};
    const int findings = plan->findings.count;
    const Bound refuted[] = {{plan->length_opened + 1, known.boards}, {known.length, plan->boards_opened + 1}};
    for (int i = 0; i < 2; i++) {
        report_bound(arena, refuted[i], plan);
        assert_false(plan->bound_known);
        assert_int_equal(count_rule(plan, RULE_BOUND), 1);
        assert_true(rule_grade(RULE_BOUND) == GRADE_CAUTION);
        Err err;
        assert_done(rules_hold(layout_wall(arena, wall, &err), plan, &err), &err);
        plan->findings.count = findings;
    }
    report_bound(arena, known, plan);
    assert_true(plan->bound_known && plan->length_bound == known.length && plan->boards_bound == known.boards);
    assert_int_equal(plan->findings.count, findings);
    arena_free(arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        without_stock_everything_is_missing,
        board_longer_than_the_wall,
        a_hundred_thousand_inch_boards,
        shortest_longer_than_every_board,
        boards_too_short_for_any_piece,
        boards_too_narrow_for_a_course_are_left,
        stagger_wider_than_the_wall,
        no_studs_with_joints_on_studs,
        kerf_longer_than_a_board,
        squared_ends_longer_than_a_board,
        all_of_every_board_avoided,
        studs_too_far_apart,
        hung_pieces_stay,
        hung_pieces_that_fit_nowhere_are_told,
        a_hung_piece_of_a_board_that_is_not_there,
        hung_pieces_over_one_another,
        hung_pieces_of_the_same_wood,
        a_hung_piece_beyond_the_end_of_its_board,
        hung_pieces_outside_any_segment,
        a_hung_piece_of_wood_to_be_avoided,
        narrow_boards_go_to_narrow_courses,
        nails_take_their_own_width_from_the_bound,
        avoided_wood_is_cut_round,
        a_leaning_side_keeps_the_bound,
        a_refuted_bound_is_left_out_and_told,
    };
    return RUN(tests);
}
