/*
 * What the blade takes where an end is not square: kerf x sqrt(1 + s^2 + m^2), worked by hand.
 */
#include "layout/made.h"

#include "layout/slant.h"

#define KERF (LENGTH_INCH / 8)

static Length kerf_of(Length run, Length rise, bool miter)
{
    const Slant slant = {.run = run, .rise = rise};
    return slant_kerf(KERF, &slant, miter);
}

/* 3 175 000 nm times the square roots of 2 and 3 are 4 490 128.06 and 5 499 261.31; a 3-4-5 slant is exact. */
START_TEST(kerf_over_the_cosine)
{
    assert_int_equal(kerf_of(0, 1, false), KERF);
    assert_int_equal(kerf_of(IN(48), IN(48), false), 4490129);
    assert_int_equal(kerf_of(0, 1, true), 4490129);
    assert_int_equal(kerf_of(IN(48), IN(48), true), 5499262);
    assert_int_equal(kerf_of(IN(3), IN(4), false), KERF / 4 * 5);
    assert_int_equal(kerf_of(LENGTH_MOST, 1, false), LENGTH_MOST);
    const Slant square = {.run = IN(1), .rise = IN(1)};
    assert_int_equal(slant_kerf(0, &square, true), 0);
}
END_TEST

static Made with_kerf(void)
{
    Made made = made_new(UNITS_IN, IN(3), 0, 0);
    made.wall->saw.kerf = KERF;
    return made;
}

/* A gable of 45 degrees over a face of 60 in: each course above the eaves ends under the rake on both sides. */
START_TEST(ends_under_a_rake)
{
    Made made = with_kerf();
    Face *face = made_face(&made, "gable", IN(60), 0, IN(6));
    made_marks(&made, &face->ceiling, 3, (Length[]){0, IN(6), IN(30), IN(36), IN(60), IN(6)});
    const Layout *layout = made_layout(&made);
    const Segment *whole = &made_course(layout, 0, 1)->segments[0];
    assert_int_equal(whole->left_kerf, KERF);
    assert_int_equal(whole->right_kerf, KERF);
    const Segment *raked = &made_course(layout, 0, 2)->segments[0];
    assert_int_equal(raked->left_kerf, 4490129);
    assert_int_equal(raked->right_kerf, 4490129);
    assert_int_equal(made_course(layout, 0, 4)->segments[0].left_end, SEGMENT_AT_LIMIT);
    arena_free(made.arena);
}
END_TEST

/* The left side leans in 3 in over 4 in of height up to the second course and is plumb above. */
START_TEST(ends_at_a_leaning_side)
{
    Made made = with_kerf();
    Face *face = made_face(&made, "north", IN(60), 0, IN(12));
    made_marks(&made, &face->left, 2, (Length[]){0, 0, IN(4), IN(3)});
    const Layout *layout = made_layout(&made);
    for (int64_t course = 0; course < 4; course++) {
        const Segment *segment = &made_course(layout, 0, course)->segments[0];
        assert_int_equal(segment->left_kerf, course < 2 ? KERF / 4 * 5 : KERF);
        assert_int_equal(segment->right_kerf, KERF);
        assert_int_equal(segment->left_end, SEGMENT_AT_SIDE);
        assert_int_equal(segment->right_end, SEGMENT_AT_SIDE);
    }
    arena_free(made.arena);
}
END_TEST

/* Two faces that meet at an outside miter; a window stands in the first. */
START_TEST(ends_at_a_miter_and_at_an_opening)
{
    Made made = with_kerf();
    made_face(&made, "north", IN(60), 0, IN(12));
    made_face(&made, "east", IN(60), 0, IN(12));
    Face *north = &made.wall->faces.at[0];
    north->corner = (Corner){.kind = CORNER_OUTSIDE, .joint = CORNER_MITER};
    made_opening(&made, north, "window", IN(20), IN(-1), IN(10), IN(30));
    const Layout *layout = made_layout(&made);
    const Course *course = made_course(layout, 0, 1);
    assert_int_equal(course->segment_count, 2);
    assert_int_equal(course->segments[0].left_kerf, KERF);
    assert_int_equal(course->segments[0].right_kerf, KERF);
    assert_int_equal(course->segments[0].right_end, SEGMENT_AT_OPENING);
    assert_int_equal(course->segments[1].left_end, SEGMENT_AT_OPENING);
    assert_int_equal(course->segments[1].right_kerf, 4490129);
    assert_int_equal(made_course(layout, 1, 1)->segments[0].left_kerf, 4490129);
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        kerf_over_the_cosine,
        ends_under_a_rake,
        ends_at_a_leaning_side,
        ends_at_a_miter_and_at_an_opening,
    };
    return RUN(tests);
}
