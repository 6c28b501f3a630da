/*
 * What spares a scribe: one straight rip behind a strip of trim. Trim laps at least 1/4 in over what it hides, and a
 * scribed edge is back-beveled 3 to 5 degrees: common practice. Each case is worked by hand.
 */
#include "layout/made.h"

#include "trade/scribe.h"
#include "trade/trim_runs.h"

/* Planks of 3 in from 0 up under a ceiling that falls from 5 to 4 3/4 in over 60 in, 1/8 in clear of it: course 1, from
 * 3 to 6, is ripped from 1 7/8 to 1 5/8. */
static Made bench_new(Length trim)
{
    Made made = made_new(UNITS_IN, IN(3), 0, 0);
    made.wall->round = IN(1) / 16;
    made.wall->planks.thickness = IN(0.5);
    Face *face = made_face(&made, "north", IN(60), 0, IN(5));
    const Length ceiling[] = {0, IN(5), IN(60), IN(4.75)};
    made_marks(&made, &face->ceiling, 2, ceiling);
    face->margin.ceiling = IN(0.25);
    if (trim > 0)
        *arena_push(made.arena, &made.wall->trim.runs) = (TrimRun){.along = ALONG_CEILING, .width = trim};
    return made;
}

static StraightRip straight_of(Made *made, int64_t course)
{
    const Layout *layout = made_layout(made);
    const TrimStrips strips = trim_strips(made->arena, layout, NULL);
    return scribe_straight(layout, &strips, 0, made_course(layout, 0, course));
}

/* A strip twice as wide as the ceiling is out of level has its free edge level, 1/2 in below 4 3/4; the straight plank
 * ends at 4 1/2, 1/4 in behind it. A sixty-fourth more margin makes the rip 1 7/16, and leaves 3/16. */
START_TEST(trim_spares_a_taper)
{
    Made made = bench_new(IN(0.5));
    StraightRip rip = straight_of(&made, 1);
    assert_true(rip.offered && rip.upper);
    assert_int_equal(rip.rip, IN(1.5));
    assert_int_equal(rip.gap, IN(0.5)); /* 1/4 in of taper and 1/4 in of margin */
    const Layout *layout = made_layout(&made);
    const TrimStrips strips = trim_strips(made.arena, layout, NULL);
    assert_string_equal(
        scribe_straight_words(made.arena, layout, &strips, 0, made_course(layout, 0, 1)),
        "Or rip all of it straight to 1 1/2 in: the trim along the ceiling hides the gap of up to 1/2 in.");
    assert_null(scribe_straight_words(made.arena, layout, &strips, 0, made_course(layout, 0, 0)));
    made.wall->faces.at[0].margin.ceiling += IN(1) / 64;
    assert_false(straight_of(&made, 1).offered);
    arena_free(made.arena);
    made = bench_new(IN(0.5));
    made.wall->planks.least_given = true;
    made.wall->planks.least = IN(1.5) + 1;
    assert_false(straight_of(&made, 1).offered);
    arena_free(made.arena);
    made = bench_new(0);
    assert_false(straight_of(&made, 1).offered);
    arena_free(made.arena);
}
END_TEST

/* Under a ceiling that leaves the course whole somewhere, the next course stands above it there. */
START_TEST(no_straight_rip_where_the_course_is_whole_somewhere)
{
    Made made = bench_new(IN(3));
    const Length ceiling[] = {0, IN(7), IN(60), IN(5)};
    made_marks(&made, &made.wall->faces.at[0].ceiling, 2, ceiling);
    assert_false(straight_of(&made, 1).offered);
    arena_free(made.arena);
}
END_TEST

/* A floor that falls: the lap of the plank stays on it. */
START_TEST(floor_trim_spares_a_scribe_with_a_lap)
{
    Made made = made_new(UNITS_IN, IN(3.5), 0, 0);
    made.wall->round = IN(1) / 16;
    made.wall->planks.thickness = IN(0.5);
    made.wall->planks.lap = IN(0.5);
    Face *face = made_face(&made, "north", IN(60), 0, IN(9));
    const Length floor[] = {0, -IN(1), IN(30), -IN(1.5), IN(60), -IN(1)};
    made_marks(&made, &face->floor, 3, floor);
    *arena_push(made.arena, &made.wall->trim.runs) = (TrimRun){.along = ALONG_FLOOR, .width = IN(2)};
    const StraightRip rip = straight_of(&made, 0);
    assert_true(rip.offered && !rip.upper);
    assert_int_equal(rip.face, IN(1.5)); /* from 1 1/2 up to 3 */
    assert_int_equal(rip.rip, IN(2));
    assert_int_equal(rip.gap, IN(0.5));
    assert_holds(scribe_words(made_layout(&made), 0), "back-bevel the cut 3 to 5 degrees");
    arena_free(made.arena);
}
END_TEST

START_TEST(a_taper_alone_wants_no_back_bevel)
{
    Made made = bench_new(0);
    assert_null(scribe_words(made_layout(&made), 0));
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {trim_spares_a_taper, no_straight_rip_where_the_course_is_whole_somewhere,
                                  floor_trim_spares_a_scribe_with_a_lap, a_taper_alone_wants_no_back_bevel};
    return RUN(tests);
}
