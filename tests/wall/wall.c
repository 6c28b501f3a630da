/* Values that follow from the document: limits between marks, studs, corners, the order of hanging, boards. */
#include "support/test.h"

#include "support/random_wall.h"
#include "wall/straight.h"
#include "wall/wall.h"

#include <string.h>

#define MM LENGTH_MM

static Marks marks_of(Mark *at, int count)
{
    return (Marks){.at = at, .count = count, .room = count};
}

START_TEST(limits_run_straight_between_marks)
{
    Mark marks[] = {{0, 100}, {100, 200}, {100, 50}, {103, 51}, {300, -100}};
    const Marks all = marks_of(marks, 5);
    static const struct {
        Length at;
        bool after;
        Length off;
    } cases[] = {
        {-50, false, 100}, {0, false, 100},  {0, true, 100},  {50, false, 150},   {99, true, 199},   {100, false, 200},
        {100, true, 50},   {101, false, 50}, {102, true, 51}, {300, false, -100}, {900, true, -100}, {103, false, 51},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_int_equal(marks_off(&all, cases[i].at, cases[i].after), cases[i].off);
    /* half away from zero, of the value itself, not of the rise from the mark before: 1 - 3/2 = -1/2 */
    Mark falls[] = {{0, 1}, {2, -2}};
    const Marks fall = marks_of(falls, 2);
    assert_int_equal(marks_off(&fall, 1, false), -1);
    /* no product is too large */
    Mark far[] = {{-LENGTH_MOST, -LENGTH_MOST}, {LENGTH_MOST, LENGTH_MOST}};
    const Marks wide = marks_of(far, 2);
    assert_int_equal(marks_off(&wide, 123456789, false), 123456789);
}
END_TEST

START_TEST(openings_on_the_floor)
{
    Mark floor[] = {{0, 1000 * MM}, {500 * MM, 1010 * MM}, {500 * MM, 900 * MM}};
    const Face face = {.floor = marks_of(floor, 3)};
    Opening door = {.to_floor = true, .left = 250 * MM, .width = 900 * MM, .height = 2000 * MM};
    assert_int_equal(opening_foot(&face, &door), -1005 * MM);
    assert_int_equal(opening_head(&face, &door), 995 * MM);
    door.left = 500 * MM; /* at the step: on its right side, where the door stands */
    assert_int_equal(opening_foot(&face, &door), -900 * MM);
    door.top_given = true;
    door.top = 1200 * MM;
    assert_int_equal(opening_head(&face, &door), 1200 * MM);
    const Opening window = {.bottom = -3 * MM, .height = 10 * MM};
    assert_int_equal(opening_foot(&face, &window), -3 * MM);
    assert_int_equal(opening_head(&face, &window), 7 * MM);
}
END_TEST

START_TEST(evenly_spaced_studs_are_counted_within_the_face)
{
    Arena *arena = arena_new();
    Face face = {.width = 1000, .studs = {.given = true, .regular = true, .first = -350, .spacing = 400}};
    LengthList list = wall_studs(arena, &face);
    assert_int_equal(list.count, 3);
    assert_int_equal(list.at[0], 50);
    assert_int_equal(list.at[2], 850);
    face.studs.first = 200;
    list = wall_studs(arena, &face);
    assert_int_equal(list.count, 3); /* 200, 600, 1000: the end counts */
    assert_int_equal(list.at[2], 1000);
    face.studs.first = -400;
    assert_int_equal(wall_studs(arena, &face).at[0], 0); /* so does the beginning */
    Length at[] = {-1, 0, 500, 1000, 1001};
    face.studs = (Studs){.given = true, .at = {at, 5, 5}};
    list = wall_studs(arena, &face);
    assert_int_equal(list.count, 3);
    assert_int_equal(list.at[1], 500);
    face.studs.given = false;
    assert_int_equal(wall_studs(arena, &face).count, 0);
    arena_free(arena);
}
END_TEST

START_TEST(widths_of_courses_repeat)
{
    Length widths[] = {100, 70, 90};
    const Wall wall = {.planks = {.widths = {widths, 3, 3}, .lap = 10, .reveal = 2}};
    assert_int_equal(wall_course_width(&wall, 0), 100);
    assert_int_equal(wall_course_width(&wall, 4), 70);
    assert_int_equal(wall_course_width(&wall, -1), 90); /* -1 is the last of the list */
    assert_int_equal(wall_course_width(&wall, -3), 100);
    assert_int_equal(wall_course_face(&wall, -2), 60);
    assert_int_equal(wall_run(&wall), 92 + 62 + 82);
    assert_int_equal(wall_least(&wall), 20); /* a third of the narrowest face */
    assert_int_equal(wall_widest(&wall), 100);
}
END_TEST

START_TEST(boards_are_numbered_over_all_lines)
{
    Stock lines[] = {{.count = 3, .length = 1}, {.count = 1, .length = 2}, {.count = 2, .length = 3}};
    const Wall wall = {.stock = {lines, 3, 3}};
    static const Length of[] = {1, 1, 1, 2, 3, 3};
    assert_int_equal(wall_board_count(&wall), 6);
    for (int i = 0; i < 6; i++)
        assert_int_equal(wall_board(&wall, i + 1)->length, of[i]);
    assert_null(wall_board(&wall, 0));
    assert_null(wall_board(&wall, 7));
    assert_int_equal(wall_stock_first(&wall, 0), 1);
    assert_int_equal(wall_stock_first(&wall, 2), 5);
}
END_TEST

/* `above-floor` counts from the floor straight below the left edge as written: clear and margin are no part of it, and
 * at a step the floor to the right counts. */
START_TEST(a_foot_above_the_floor)
{
    Mark marks[] = {{0, 900 * MM}, {1000 * MM, 1000 * MM}, {1000 * MM, 1300 * MM}, {4000 * MM, 1300 * MM}};
    const Face face = {.width = 4000 * MM, .floor = {marks, 4, 4}, .margin = {.floor = 7 * MM}};
    Opening outlet = {
        .above_given = true, .above = 330 * MM, .left = 500 * MM, .width = 60 * MM, .height = 90 * MM, .clear = 2 * MM};
    assert_int_equal(opening_foot(&face, &outlet), 330 * MM - 950 * MM); /* half way down the slope */
    assert_int_equal(opening_head(&face, &outlet), 330 * MM - 950 * MM + 90 * MM);
    outlet.left = 1000 * MM - 1;
    assert_int_equal(opening_foot(&face, &outlet), 330 * MM - 1000 * MM); /* the slope, to the nearest nanometre */
    outlet.left = 1000 * MM;
    assert_int_equal(opening_foot(&face, &outlet), 330 * MM - 1300 * MM);
    outlet.left = 5000 * MM; /* level beyond the last mark */
    assert_int_equal(opening_foot(&face, &outlet), 330 * MM - 1300 * MM);
    outlet.top_given = true;
    outlet.top = 20 * MM;
    assert_int_equal(opening_head(&face, &outlet), 20 * MM);
    outlet.left = -5 * MM;
    assert_int_equal(opening_foot(&face, &outlet), 330 * MM - 900 * MM);
}
END_TEST

/* Three faces, backings 1, 2, 3, planks 10 thick. s is the backing of the face that is met, t = s + 10. */
START_TEST(a_corner_takes_what_its_joint_says)
{
    static const struct {
        Corner corner;
        Length right_of_first, left_of_second;
    } cases[] = {
        {{CORNER_NONE, CORNER_BUTT, THROUGH_LEFT, 0}, 0, 0},
        {{CORNER_INSIDE, CORNER_BUTT, THROUGH_LEFT, 0}, 2, 11}, /* runs through: s; the other: t */
        {{CORNER_INSIDE, CORNER_BUTT, THROUGH_RIGHT, 0}, 12, 1},
        {{CORNER_INSIDE, CORNER_TRIM, THROUGH_LEFT, 0}, 2, 1},    /* each s */
        {{CORNER_OUTSIDE, CORNER_TRIM, THROUGH_LEFT, 0}, 0, 0},   /* both stop at the corner */
        {{CORNER_OUTSIDE, CORNER_LAP, THROUGH_LEFT, 0}, -12, -1}, /* runs through gains t; the other s */
        {{CORNER_OUTSIDE, CORNER_LAP, THROUGH_RIGHT, 0}, -2, -11},
        {{CORNER_OUTSIDE, CORNER_MITER, THROUGH_LEFT, 0}, -12, -11}, /* each gains t */
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        Face faces[] = {{.backing = 1, .corner = cases[i].corner}, {.backing = 2}, {.backing = 3}};
        Wall wall = {.planks = {.thickness = 10}, .faces = {faces, 3, 3}};
        assert_int_equal(wall_corner_loss_right(&wall, 0), cases[i].right_of_first);
        assert_int_equal(wall_corner_loss_left(&wall, 1), cases[i].left_of_second);
        assert_int_equal(wall_corner_loss_left(&wall, 0), 0);
        assert_int_equal(wall_corner_loss_right(&wall, 2), 0);
        /* the same corner between the last face and the first */
        faces[2].corner = cases[i].corner;
        faces[2].backing = 1;
        faces[0] = (Face){.backing = 2};
        assert_int_equal(wall_corner_loss_right(&wall, 2), cases[i].right_of_first);
        assert_int_equal(wall_corner_loss_left(&wall, 0), cases[i].left_of_second);
        wall.faces.count = 2; /* two faces are no ring */
        faces[1].corner = cases[i].corner;
        assert_int_equal(wall_corner_loss_right(&wall, 1), 0);
    }
}
END_TEST

static void expect_order(const Corner *corners, int count, const int *expected)
{
    Face faces[4] = {{0}};
    int order[4];
    for (int i = 0; i < count; i++)
        faces[i].corner = corners[i];
    const Wall wall = {.faces = {faces, count, count}};
    wall_face_order(&wall, order);
    for (int i = 0; i < count; i++)
        assert_int_equal(order[i], expected[i]);
}

/* "face by face in the file's order, but a face that runs through an inside corner before the one that butts on it, and
 * a face that laps an outside corner after the one whose ends it covers (a ring of such is opened at its first face)"
 */
START_TEST(a_face_that_butts_hangs_later)
{
    const Corner butt_left = {CORNER_INSIDE, CORNER_BUTT, THROUGH_LEFT, 0};
    const Corner butt_right = {CORNER_INSIDE, CORNER_BUTT, THROUGH_RIGHT, 0};
    const Corner lap_left = {CORNER_OUTSIDE, CORNER_LAP, THROUGH_LEFT, 0};
    const Corner lap_right = {CORNER_OUTSIDE, CORNER_LAP, THROUGH_RIGHT, 0};
    const Corner miter = {CORNER_OUTSIDE, CORNER_MITER, THROUGH_RIGHT, 0};
    const Corner none = {0};
    expect_order((Corner[]){none, none, none}, 3, (int[]){0, 1, 2});
    expect_order((Corner[]){butt_left, miter, none}, 3, (int[]){0, 1, 2});
    expect_order((Corner[]){butt_right, none, none}, 3, (int[]){1, 0, 2});
    expect_order((Corner[]){butt_right, butt_right, none}, 3, (int[]){2, 1, 0});
    expect_order((Corner[]){lap_left, none, none}, 3, (int[]){1, 0, 2});
    expect_order((Corner[]){lap_right, none, none}, 3, (int[]){0, 1, 2});
    expect_order((Corner[]){lap_left, butt_right, none}, 3, (int[]){2, 1, 0});
    expect_order((Corner[]){butt_right, none, none, butt_left}, 4, (int[]){1, 2, 3, 0});
    expect_order((Corner[]){butt_left, butt_left, butt_left}, 3, (int[]){0, 1, 2}); /* a ring */
    expect_order((Corner[]){butt_right, butt_right, butt_right}, 3, (int[]){0, 2, 1});
}
END_TEST

START_TEST(copies_are_equal_and_apart)
{
    for (uint64_t seed = 0; seed < 500; seed++) {
        Arena *arena = arena_new();
        Arena *own = arena_new();
        Wall *wall = random_wall(arena, seed, RANDOM_HUNG);
        Wall *copy = wall_copy(own, wall);
        assert_true(wall_equal(wall, copy));
        copy->faces.at[0].name[0] ^= 1;
        copy->faces.at[0].floor.at[0].off++;
        assert_false(wall_equal(wall, copy));
        arena_free(own);
        /* nothing of it was in the copy's arena */
        assert_true(wall_equal(wall, random_wall(arena, seed, RANDOM_HUNG)));
        arena_free(arena);
    }
}
END_TEST

START_TEST(random_walls_repeat_and_differ)
{
    for (int kind = 0; kind < RANDOM_KIND_COUNT; kind++) {
        Arena *arena = arena_new();
        const Wall *wall = random_wall(arena, 5, (RandomKind)kind);
        assert_true(wall_equal(wall, random_wall(arena, 5, (RandomKind)kind)));
        assert_false(wall_equal(wall, random_wall(arena, 6, (RandomKind)kind)));
        arena_free(arena);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        limits_run_straight_between_marks,
        openings_on_the_floor,
        a_foot_above_the_floor,
        evenly_spaced_studs_are_counted_within_the_face,
        widths_of_courses_repeat,
        boards_are_numbered_over_all_lines,
        a_corner_takes_what_its_joint_says,
        a_face_that_butts_hangs_later,
        copies_are_equal_and_apart,
        random_walls_repeat_and_differ,
    };
    return RUN(tests);
}
