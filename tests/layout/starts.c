/*
 * Start heights on faces simple enough to be worked by hand, and the published examples of balanced end pieces. The
 * layouts here are made by hand: level or slanted limits, plumb or leaning sides, so that nothing but the weighing is
 * tested.
 */
#include "support/test.h"

#include "layout/starts.h"
#include "support/plain.h"

#include <string.h>

static Starts starts_of(Bench *bench)
{
    return starts_of_layout(bench->arena, bench->layout);
}

static bool says(const Start *start, const char *words)
{
    for (int i = 0; i < start->why_count; i++)
        if (strcmp(start->why[i], words) == 0)
            return true;
    return false;
}

/* NAVEDTRA 14044, p. 7-23, the half-unit rule: end piece = (L - n t + t) / 2, n whole units in L. The first two from
 * trade papers, so common practice: 49 1/2 in of 24 in units gives ends of 12 3/4 in; 10 ft 7 in of 12 in units ends of
 * 9 1/2 in. */
START_TEST(the_start_with_equal_ends_is_found)
{
    static const struct {
        Length span, unit, end;
    } rows[] = {
        {INCHES(49.5), INCHES(24), INCHES(12.75)},
        {INCHES(127), INCHES(12), INCHES(9.5)},
        {INCHES(92), INCHES(8), INCHES(6)}, /* worked: 11 whole, (92 - 88 + 8) / 2 */
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        Bench bench = bench_new(INCHES(100), 0, rows[i].span, rows[i].unit, 0);
        Starts starts = starts_of(&bench);
        assert_true(starts.count > 0);
        const Start *best = &starts.at[0];
        assert_int_equal(best->floor, rows[i].end);
        assert_int_equal(best->ceiling, rows[i].end);
        assert_int_equal(best->least, rows[i].end);
        assert_true(says(best, "balanced"));
        assert_true(says(best, "widest least strip"));
        assert_int_equal(starts.weighed, rows[i].unit / SIXTEENTH);
        arena_free(bench.arena);
    }
}
END_TEST

/* Navy manual NAVEDTRA 14044, ch. 4: 61 in of window height takes 6 equal courses of 61/6 in, 31 in below the sill 3 of
 * 31/3 in. With a list of those widths a start at the floor meets the sill, the head and both limits with whole
 * courses. */
START_TEST(the_start_with_whole_courses_everywhere_is_found)
{
    Bench bench = bench_new(INCHES(120), 0, INCHES(92), 0, 0);
    LengthList *widths = &bench.wall->planks.widths;
    widths->count = 0;
    Length below = INCHES(31) / 3 + 1; /* two of the three a nanometre long, so that they add up */
    for (int i = 0; i < 3; i++)
        *arena_push(bench.arena, widths) = i == 0 ? INCHES(31) - 2 * below : below;
    for (int i = 0; i < 6; i++)
        *arena_push(bench.arena, widths) = i == 0 ? INCHES(61) - 5 * (INCHES(61) / 6) : INCHES(61) / 6;
    add_opening(&bench, "loft window", (Box){INCHES(40), INCHES(70), INCHES(31), INCHES(92)});
    Starts starts = starts_of(&bench);
    const Start *best = &starts.at[0];
    assert_int_equal(best->start, 0);
    assert_false(best->narrowest.found);
    assert_true(says(best, "full at the top"));
    assert_true(says(best, "full at the bottom"));
    assert_true(says(best, "reveal at loft window"));
    assert_true(says(best, "as written"));
    assert_int_equal(best->least, INCHES(61) / 6);
    arena_free(bench.arena);
}
END_TEST

/* Rules of reveals: an opening's edge that lies within the gap is met without a strip; 1/16 further there is one. */
START_TEST(an_edge_within_the_reveal_leaves_no_strip)
{
    Bench bench = bench_new(INCHES(100), -INCHES(40), INCHES(53), INCHES(2.75), SIXTEENTH);
    add_opening(&bench, "desk outlet", (Box){INCHES(37), INCHES(39), -INCHES(27.5), -INCHES(23.75)});
    for (int step = -24; step <= 24; step++) {
        Start start = starts_weigh(bench.arena, bench.layout, step * SIXTEENTH);
        /* foot of the course above the edge, worked here on its own */
        Length pitch = INCHES(2.75) + SIXTEENTH;
        Length over = -INCHES(27.5) - step * SIXTEENTH;
        Length rest = ((over % pitch) + pitch) % pitch;
        bool in_gap = rest == 0 || rest >= INCHES(2.75);
        assert_int_equal(start.openings[0].reveal_below, in_gap);
        assert_int_equal(start.openings[0].below, in_gap ? -1 : rest);
    }
    arena_free(bench.arena);
}
END_TEST

/* A floor that falls 1 in over 100 in and a level start: the strip runs from whole to nothing, and then the next course
 * begins. */
START_TEST(strips_on_a_sloping_floor_run_from_whole_to_nothing)
{
    Bench bench = bench_new(INCHES(100), 0, INCHES(50), INCHES(4), 0);
    Points *lower = &bench.layout->faces[0].lower;
    lower->count = 0;
    put_point(bench.arena, lower, 0, INCHES(1));
    put_point(bench.arena, lower, INCHES(100), 0);
    bench.wall->planks.least_given = true;
    bench.wall->planks.least = INCHES(0.75);
    /* course -1 is [-3.5, 0.5]: floor reaches its top at x = 50, and is wider than 3/4 nowhere */
    Start start = starts_weigh(bench.arena, bench.layout, INCHES(0.5));
    assert_int_equal(start.least, 0);
    assert_int_equal(start.narrowest.course, -1);
    assert_int_equal(start.narrowest.at, INCHES(50));
    assert_true(start.narrowest.at_floor);
    assert_int_equal(start.thin, INCHES(50));
    /* course 0 is [0, 4]: 3 in at the left, whole at the right end */
    start = starts_weigh(bench.arena, bench.layout, 0);
    assert_int_equal(start.floor, INCHES(3));
    assert_int_equal(start.thin, 0);
    /* it counts as full at the bottom: cut by no more than the floor is out of level */
    Starts starts = starts_of(&bench);
    bool told = false;
    for (int i = 0; i < starts.count; i++)
        told |= starts.at[i].start == 0 && says(&starts.at[i], "full at the bottom");
    assert_true(told);
    arena_free(bench.arena);
}
END_TEST

/* Floor and ceiling slant alike and each crosses an edge of the course in one column: 1 in rise over 120 in, a course
 * between 0 and 3 in, floor from -0.5 to 0.5, ceiling from 2.75 to 3.75. The floor cuts from x = 60 on, the ceiling up
 * to x = 30. */
START_TEST(limits_that_cross_a_course_in_one_column_are_both_weighed)
{
    Bench bench = bench_new(INCHES(120), 0, 0, INCHES(3), 0);
    FaceLayout *face = &bench.layout->faces[0];
    face->lower.at[0].y = -INCHES(0.25);
    put_point(bench.arena, &face->lower, INCHES(120), INCHES(0.75));
    face->upper.at[0].y = INCHES(2.5);
    put_point(bench.arena, &face->upper, INCHES(120), INCHES(3.5));
    bench.wall->planks.least_given = true;
    bench.wall->planks.least = INCHES(0.25);
    Start start = starts_weigh(bench.arena, bench.layout, 0);
    assert_int_equal(start.floor, 0);   /* course -1, up to x = 30 */
    assert_int_equal(start.ceiling, 0); /* course 1, from x = 60 */
    assert_int_equal(start.thin, INCHES(30) + INCHES(30));
    face->lower.at[0].y = 0; /* no course below, none above: 3 in cut to 2 1/2 at the right, to 2 3/4 at the left */
    face->lower.at[1].y = INCHES(0.5);
    face->upper.at[0].y = INCHES(2.75);
    face->upper.at[1].y = INCHES(3);
    start = starts_weigh(bench.arena, bench.layout, 0);
    assert_int_equal(start.floor, INCHES(2.5));
    assert_int_equal(start.narrowest.at, INCHES(120));
    arena_free(bench.arena);
}
END_TEST

/* Steeper than 1 in 12 is a rake: it ends a course in a slanted cut and leaves no strip. */
START_TEST(rake_is_no_strip)
{
    Bench bench = bench_new(INCHES(100), 0, 0, INCHES(4), 0);
    Points *upper = &bench.layout->faces[0].upper;
    upper->count = 0;
    put_point(bench.arena, upper, 0, INCHES(40));
    put_point(bench.arena, upper, INCHES(100), INCHES(60));
    Start start = starts_weigh(bench.arena, bench.layout, 0);
    assert_false(start.narrowest.found);
    assert_int_equal(start.least, INCHES(4));
    upper->at[1].y = INCHES(48); /* gentle again */
    start = starts_weigh(bench.arena, bench.layout, 0);
    assert_int_equal(start.least, 0);
    arena_free(bench.arena);
}
END_TEST

/* A side that leans keeps a course from reaching the strip beyond it: the course's own extent counts. */
START_TEST(strips_beyond_a_leaning_side_do_not_count)
{
    Bench bench = bench_new(INCHES(100), 0, INCHES(40), INCHES(4), 0);
    FaceLayout *face = &bench.layout->faces[0];
    face->left.count = 0;
    put_point(bench.arena, &face->left, INCHES(20), 0); /* 20 in farther in at the floor than at the ceiling */
    put_point(bench.arena, &face->left, 0, INCHES(40));
    Points *lower = &face->lower;
    lower->count = 0; /* a step up of 1 in, all of it left of where the lowest course begins */
    put_point(bench.arena, lower, 0, INCHES(1));
    put_point(bench.arena, lower, INCHES(17), INCHES(1));
    put_point(bench.arena, lower, INCHES(17), 0);
    Start start = starts_weigh(bench.arena, bench.layout, 0);
    assert_false(start.narrowest.found); /* course 0 begins at x = 18 */
    lower->at[1].x = lower->at[2].x = INCHES(19);
    start = starts_weigh(bench.arena, bench.layout, 0);
    assert_int_equal(start.least, INCHES(3));
    assert_int_equal(start.narrowest.at, INCHES(18));
    arena_free(bench.arena);
}
END_TEST

/* A course of less than 0.001 mm2 is none, and one nowhere above `leave` is not hung: neither leaves a strip. */
START_TEST(courses_that_are_none)
{
    Bench bench = bench_new(1000000, 0, 8 * LENGTH_INCH + 999, 4 * LENGTH_INCH, 0);
    Start start = starts_weigh(bench.arena, bench.layout, 0); /* course 2 is 1 mm by 999 nm */
    assert_false(start.narrowest.found);
    bench.layout->faces[0].upper.at[0].y++;
    start = starts_weigh(bench.arena, bench.layout, 0);
    assert_int_equal(start.least, 1000);
    bench.wall->planks.leave = 1000;
    start = starts_weigh(bench.arena, bench.layout, 0);
    assert_false(start.narrowest.found);
    bench.wall->planks.leave = 999;
    start = starts_weigh(bench.arena, bench.layout, 0);
    assert_int_equal(start.least, 1000);
    arena_free(bench.arena);
}
END_TEST

/* Both sides of an outlet are thin at one x: that stretch of wall counts once. */
START_TEST(thin_on_two_sides_at_one_place_counts_once)
{
    Bench bench = bench_new(INCHES(100), 0, INCHES(40), INCHES(4), 0);
    bench.wall->planks.least_given = true;
    bench.wall->planks.least = INCHES(0.75);
    add_opening(&bench, "slot", (Box){INCHES(30), INCHES(50), INCHES(8.5), INCHES(11.5)});
    Start start = starts_weigh(bench.arena, bench.layout, 0);
    assert_int_equal(start.least, INCHES(0.5));
    assert_int_equal(start.thin, INCHES(20));
    assert_int_equal(start.openings[0].above, INCHES(0.5));
    assert_int_equal(start.openings[0].below, INCHES(0.5));
    arena_free(bench.arena);
}
END_TEST

/* Limits of the list: while anything hangs there are none; the file's own is there even off the grid; never more
 * than 24. */
static const Start *start_at(const Starts *starts, Length at)
{
    for (int i = 0; i < starts->count; i++)
        if (starts->at[i].start == at)
            return &starts->at[i];
    FAIL("start %lld is not listed", (long long)at);
    return NULL;
}

/* An opening from 20 to 40 1/16 in: with 8 in courses from 0 it takes some of 16-24, 24-32, 32-40 and 40-48. Three
 * courses reach over 20 1/16 in where an edge of theirs lies from 16 1/16 to 20. */
START_TEST(the_marks_with_the_fewest_cutouts_are_named)
{
    Bench bench = bench_new(INCHES(100), 0, INCHES(92), INCHES(8), 0);
    add_opening(&bench, "loft window", (Box){INCHES(40), INCHES(70), INCHES(20), INCHES(40) + SIXTEENTH});
    Starts starts = starts_of(&bench);
    const Start *written = start_at(&starts, 0);
    assert_int_equal(written->cutouts, 4);
    assert_false(says(written, "fewest cutouts"));
    for (int mark = -4 * 16 + 1; mark <= 4 * 16; mark++) {
        Start start = starts_weigh(bench.arena, bench.layout, mark * SIXTEENTH);
        assert_int_equal(start.cutouts, mark >= 1 && mark <= 4 * 16 ? 3 : 4);
    }
    bool said = false;
    for (int i = 0; i < starts.count; i++) {
        assert_true(says(&starts.at[i], "fewest cutouts") == (starts.at[i].cutouts == 3));
        said |= starts.at[i].cutouts == 3;
    }
    assert_true(said);
    arena_free(bench.arena);
}
END_TEST

/* A door that takes the whole width leaves nothing of the courses beside it: they ask for no cutout. */
START_TEST(a_course_that_an_opening_takes_whole_is_no_cutout)
{
    Bench bench = bench_new(INCHES(100), 0, INCHES(92), INCHES(8), 0);
    add_opening(&bench, "boat door", (Box){0, INCHES(100), -INCHES(1), INCHES(36)});
    Start start = starts_weigh(bench.arena, bench.layout, 0); /* 0 to 32 are taken whole, 32 to 40 half */
    assert_int_equal(start.cutouts, 1);
    assert_int_equal(starts_weigh(bench.arena, bench.layout, INCHES(4)).cutouts, 0);
    arena_free(bench.arena);
}
END_TEST

START_TEST(the_list_is_short_and_holds_the_files_own)
{
    Bench bench = bench_new(INCHES(100), -INCHES(40), INCHES(53), INCHES(2.75), SIXTEENTH);
    bench.wall->start = 123456789;
    for (int i = 0; i < 40; i++)
        add_opening(&bench, "box",
                    (Box){INCHES(2 * i), INCHES(2 * i + 1), i * INCHES(0.6875), i * INCHES(0.6875) + INCHES(3.625)});
    Starts starts = starts_of(&bench);
    assert_int_equal(starts.count, STARTS_MOST);
    assert_int_equal(starts.weighed, 45 + 1);
    int written = 0;
    for (int i = 0; i < starts.count; i++) {
        const Start *start = &starts.at[i];
        assert_true(start->why_count > 0);
        assert_true(start->start == 123456789 || start->start % SIXTEENTH == 0);
        written += says(start, "as written");
        if (i > 0)
            assert_true(starts.at[i - 1].least >= start->least);
        assert_true(2 * (start->start - 123456789) <= wall_run(bench.wall));
        assert_true(2 * (start->start - 123456789) > -wall_run(bench.wall));
    }
    assert_int_equal(written, 1);
    arena_push(bench.arena, &bench.wall->hung_edges)->face = bench.wall->faces.at[0].name;
    assert_int_equal(starts_of(&bench).count, 0);
    arena_free(bench.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        the_start_with_equal_ends_is_found,
        the_start_with_whole_courses_everywhere_is_found,
        an_edge_within_the_reveal_leaves_no_strip,
        strips_on_a_sloping_floor_run_from_whole_to_nothing,
        rake_is_no_strip,
        strips_beyond_a_leaning_side_do_not_count,
        courses_that_are_none,
        thin_on_two_sides_at_one_place_counts_once,
        the_list_is_short_and_holds_the_files_own,
        the_marks_with_the_fewest_cutouts_are_named,
        a_course_that_an_opening_takes_whole_is_no_cutout,
        limits_that_cross_a_course_in_one_column_are_both_weighed,
    };
    return RUN(tests);
}
