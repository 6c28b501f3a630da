/*
 * As built, worked by hand: the last course is ripped to what is left above the one below it, less one reveal (common
 * practice), so an edge that hangs high takes of the top course, and easing the reveals that are left by an equal share
 * gives it back.
 */
#include "support/test.h"

#include "support/plain.h"
#include "trade/asbuilt.h"

#include <string.h>

/* 3 in courses, 1/16 in reveals, from a floor 20 in below to a ceiling 20 in above the level line; course 0 begins at
 * it. */
static Wall *wall_of(Arena *arena)
{
    Wall *wall = wall_new(arena, UNITS_IN);
    *arena_push(arena, &wall->planks.widths) = INCHES(3);
    wall->planks.thickness = INCHES(0.5);
    wall->planks.reveal = SIXTEENTH;
    Face *face = arena_push(arena, &wall->faces);
    face->name = arena_text(arena, "north", 5);
    face->width = INCHES(100);
    *arena_push(arena, &face->floor) = (Mark){0, INCHES(20)};
    *arena_push(arena, &face->ceiling) = (Mark){0, INCHES(20)};
    return wall;
}

static void measure(Arena *arena, Wall *wall, int course, bool is_top, Length height)
{
    *arena_push(arena, &wall->hung_edges) =
        (HungEdge){.face = wall->faces.at[0].name, .course = course, .is_top = is_top, .height = height};
}

static AsBuilt *built_of(Arena *arena, const Wall *wall, const Plan *plan)
{
    Err err;
    const Layout *layout = layout_wall(arena, wall, &err);
    if (!layout)
        FAIL("%s", err.text);
    AsBuilt *built = asbuilt_of(arena, layout, plan, &err);
    assert_non_null(built);
    return built;
}

/* Course 2 was planned to end at 2 x 3 1/16 + 3 = 9 1/8 in. Course 6 begins at 18 3/8 and is ripped to 1 5/8. It hangs
 * 1/4 in high: the top becomes 1 3/8; 4 reveals are left, each 1/16 narrower (0) wins it back. */
START_TEST(courses_that_hang_high_narrow_the_last)
{
    Arena *arena = arena_new();
    Wall *wall = wall_of(arena);
    measure(arena, wall, 2, true, INCHES(9.375));
    AsBuilt *built = built_of(arena, wall, &(Plan){0});
    const AsBuiltWay *up = &built->faces[0].up;
    assert_true(up->measured);
    assert_int_equal(up->off, INCHES(0.25));
    assert_int_equal(up->last_planned, 6);
    assert_int_equal(up->planned_most, INCHES(1.625));
    assert_int_equal(up->now_most, INCHES(1.375));
    assert_int_equal(up->reveals, 4);
    assert_int_equal(up->eased, 0);
    assert_true(up->can_win_back);
    assert_string_equal(up->text, "north: the top of course 2 hangs 1/4 in higher than planned; the top course becomes "
                                  "1 3/8 in (planned: 1 5/8 in); to win it back close the 4 reveals that are "
                                  "left");
    assert_false(built->faces[0].down.measured);
    wall->hung_edges.at[0].height += 4; /* one nanometre each more than there is */
    built = built_of(arena, wall, &(Plan){0});
    assert_false(built->faces[0].up.can_win_back);
    assert_holds(built->faces[0].up.text, "cannot take up");
    arena_free(arena);
}
END_TEST

/* Eased reveals do win it back: laid out with them from the measured edge on, the top course is what was planned. */
START_TEST(eased_reveals_win_it_back)
{
    Arena *arena = arena_new();
    Wall *wall = wall_of(arena);
    measure(arena, wall, 3, true, INCHES(12.1875) - INCHES(0.09375)); /* 3/32 short of it */
    AsBuilt *built = built_of(arena, wall, &(Plan){0});
    const AsBuiltWay *up = &built->faces[0].up;
    assert_int_equal(up->off, -INCHES(0.09375));
    assert_int_equal(up->eased, SIXTEENTH + INCHES(0.03125));
    assert_holds(up->text, "3/32 in lower than planned");
    assert_holds(up->text, "that are left 0.094 in each, nearest at hand"); /* 1/16 + 1/32 */
    wall->planks.reveal = up->eased;
    Err err;
    const Layout *eased = layout_wall(arena, wall, &err);
    const FaceLayout *face = &eased->faces[0];
    assert_int_equal(face->courses[face->course_count - 1].rip.most, up->planned_most);
    arena_free(arena);
}
END_TEST

/* Downward the other way round: course -7 is ripped to what six whole courses and seven reveals leave of 20 in. */
START_TEST(courses_that_hang_low_widen_the_last)
{
    Arena *arena = arena_new();
    Wall *wall = wall_of(arena);
    measure(arena, wall, 0, false, -INCHES(0.125));
    measure(arena, wall, -1, false, -INCHES(3.1875)); /* 1/8 too low; the outermost counts */
    AsBuilt *built = built_of(arena, wall, &(Plan){0});
    const AsBuiltWay *down = &built->faces[0].down;
    assert_int_equal(down->course, -1);
    assert_int_equal(down->off, INCHES(0.125));
    assert_int_equal(down->last_planned, -7);
    assert_int_equal(down->planned_most, INCHES(20) - 6 * (INCHES(3) + SIXTEENTH) - SIXTEENTH);
    assert_int_equal(down->now_most, down->planned_most - INCHES(0.125));
    assert_int_equal(down->reveals, 6);
    assert_holds(down->text, "the bottom of course -1 hangs 1/8 in lower than planned; the bottom course becomes");
    wall->hung_edges.at[1].height = -INCHES(3.0625);
    built = built_of(arena, wall, &(Plan){0});
    assert_holds(built->faces[0].down.text, "where it was planned");
    arena_free(arena);
}
END_TEST

/* A top course planned at 1/16 in is no loss; one mark more is one. */
START_TEST(a_course_like_a_pencil_line_is_not_won_back)
{
    for (int more = 0; more < 2; more++) {
        Arena *arena = arena_new();
        Wall *wall = wall_of(arena);
        wall->faces.at[0].ceiling.at[0].off =
            INCHES(18.375) + SIXTEENTH + more;         /* where course 6 begins, and as much */
        measure(arena, wall, 2, true, INCHES(9.1875)); /* 1/16 high: course 6 is gone */
        const AsBuiltWay up = built_of(arena, wall, &(Plan){0})->faces[0].up;
        assert_int_equal(up.planned_most, SIXTEENTH + more);
        assert_int_equal(up.can_win_back, more);
        assert_true((strstr(up.text, "is not worth winning back") != NULL) == (more == 0));
        arena_free(arena);
    }
}
END_TEST

/* Eastern white pine, flat grain, 3 in wide: by eq. 13-2 of FPL-GTR-282 with C = 0.00212 (table 13-5) it grows by 3 x
 * 0.00212 x (11.86 - 8.49) = 0.0214 in from 68 F, 45 % to 75 F, 65 %. Eased to 1/32 in the planks have room, to 1/64
 * they do not. */
START_TEST(eased_reveals_leave_room_for_the_seasons)
{
    for (int close = 0; close < 2; close++) {
        Arena *arena = arena_new();
        Wall *wall = wall_of(arena);
        wall->wood.given = true;
        wall->wood.species = arena_text(arena, "pine, eastern white", 19);
        wall->wood.hung = (Air){68000, false, 45000};
        wall->wood.dry = (Air){70000, false, 25000};
        wall->wood.damp = (Air){75000, false, 65000};
        measure(arena, wall, 2, true, INCHES(9.125) + (close ? INCHES(0.1875) : INCHES(0.125)));
        const AsBuiltWay up = built_of(arena, wall, &(Plan){0})->faces[0].up;
        assert_int_equal(up.eased, close ? INCHES(0.015625) : INCHES(0.03125));
        assert_near(up.grows, 544000, 3000); /* 0.0214 in */
        assert_int_equal(up.can_win_back, !close);
        if (close)
            assert_holds(up.text,
                         "would be 0.016 in each, and a plank grows by up to 0.021 in: leave them as they are");
        arena_free(arena);
    }
}
END_TEST

/* East, round the corner, hangs as planned. North is 1/8 in high above course 2: so are its courses 3 to 6 where they
 * meet; with each reveal 1/32 narrower course 3 is off by 3/32, course 6 by nothing. */
START_TEST(eased_reveals_are_held_against_the_next_face)
{
    Arena *arena = arena_new();
    Wall *wall = wall_of(arena);
    Face *east = arena_push(arena, &wall->faces);
    *east = wall->faces.at[0];
    east->name = arena_text(arena, "east", 4);
    measure(arena, wall, 2, true, INCHES(9.25));
    assert_int_equal(built_of(arena, wall, &(Plan){0})->faces[0].up.beside, -1);
    wall->faces.at[0].corner = (Corner){.kind = CORNER_INSIDE, .joint = CORNER_BUTT};
    const AsBuilt *built = built_of(arena, wall, &(Plan){0});
    const AsBuiltWay *up = &built->faces[0].up;
    assert_int_equal(up->beside, 1);
    assert_int_equal(up->miss_now, INCHES(0.125));
    assert_int_equal(up->miss_eased, INCHES(0.09375));
    assert_holds(up->text, "; at the corner with east the courses then miss by up to 3/32 in, as they are by 1/8 in");
    *arena_push(arena, &wall->hung_edges) =
        (HungEdge){.face = east->name, .course = 2, .is_top = true, .height = INCHES(9.25)}; /* so does east */
    built = built_of(arena, wall, &(Plan){0});
    assert_int_equal(built->faces[0].up.miss_now, 0);
    assert_int_equal(built->faces[0].up.miss_eased, INCHES(0.125));
    arena_free(arena);
}
END_TEST

/* A number beyond every wall is no reason to count for years, nor to run over. */
START_TEST(a_course_beyond_every_wall_is_not_counted_to)
{
    Arena *arena = arena_new();
    Wall *wall = wall_of(arena);
    measure(arena, wall, 2000000000, true, INCHES(9));
    AsBuilt *built = built_of(arena, wall, &(Plan){0});
    assert_true(built->faces[0].up.measured);
    assert_false(built->faces[0].up.has_last);
    arena_free(arena);
}
END_TEST

START_TEST(the_next_piece_is_the_first_that_does_not_hang)
{
    Arena *arena = arena_new();
    Wall *wall = wall_of(arena);
    Piece pieces[4] = {{.number = 1, .course = 7, .right = INCHES(50), .board = 3, .offset = 7, .hung = true},
                       {.number = 2, .course = 7, .left = INCHES(50), .right = INCHES(100), .hung = true},
                       {.number = 3, .course = 8, .right = INCHES(60)},
                       {.number = 4, .course = 8, .left = INCHES(60), .right = INCHES(100)}};
    Plan plan = {.pieces = pieces, .piece_count = 4};
    AsBuilt *built = built_of(arena, wall, &plan);
    assert_int_equal(built->next, 2);
    assert_int_equal(built->hung, 2);
    assert_int_equal(built->left, 2);
    assert_true(built->course_done); /* time to measure */
    pieces[2].hung = true;
    built = built_of(arena, wall, &plan);
    assert_int_equal(built->next, 3);
    assert_false(built->course_done);
    pieces[3].hung = true;
    assert_int_equal(built_of(arena, wall, &plan)->next, -1);
    Err err;
    const Layout *layout = layout_wall(arena, wall, &err);
    HungPiece record = asbuilt_record(layout, &pieces[0]);
    assert_string_equal(record.face, "north");
    assert_int_equal(record.course, layout->faces[0].courses[7].number);
    assert_int_equal(record.board, 3);
    assert_true(record.offset_given);
    assert_int_equal(record.offset, 7);
    assert_int_equal(record.plan, PLAN_KEPT);
    arena_free(arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        courses_that_hang_high_narrow_the_last,       eased_reveals_win_it_back,
        courses_that_hang_low_widen_the_last,         a_course_like_a_pencil_line_is_not_won_back,
        eased_reveals_leave_room_for_the_seasons,     eased_reveals_are_held_against_the_next_face,
        a_course_beyond_every_wall_is_not_counted_to, the_next_piece_is_the_first_that_does_not_hang,
    };
    return RUN(tests);
}
