/*
 * Layouts held against published figures; each test names its publication.
 */
#include "layout/made.h"

/* NAVEDTRA 14044, ch. 4, p. 4-4: a window frame 61 in high takes 6 courses of 10 1/6 in, the 31 in below its sill 3 of
 * 10 1/3 in. Ripped to those widths and started under the sill, courses meet sill, head and floor. */
START_TEST(siding_courses_meet_sill_and_head_as_published)
{
    static const struct {
        double height;
        int courses;
        Length most; /* printed exposure */
    } rows[] = {{61, 6, 10 * LENGTH_INCH + LENGTH_INCH / 6}, {31, 3, 10 * LENGTH_INCH + LENGTH_INCH / 3}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const Length exposure = IN(rows[i].height) / rows[i].courses;
        assert_in_range(exposure, rows[i].most - 1, rows[i].most + 1);
        Made made = made_new(UNITS_IN, exposure, 0, 0);
        made_face(&made, "north", IN(120), 0, exposure * rows[i].courses);
        const Layout *layout = made_layout(&made);
        assert_int_equal(layout->course_total, rows[i].courses);
        assert_false(layout->least.found);
        arena_free(made.arena);
    }
    /* Both at once: three below the sill, six beside the window, none of them cut by it. */
    Made made = made_new(UNITS_IN, 0, 0, 0);
    made.wall->planks.widths.count = 0;
    for (int i = 0; i < 9; i++) {
        const int of = i < 3 ? 3 : 6;
        const Length total = IN(i < 3 ? 31 : 61);
        const int at = i < 3 ? i : i - 3;
        *arena_push(made.arena, &made.wall->planks.widths) = total * (at + 1) / of - total * at / of;
    }
    Face *face = made_face(&made, "north", IN(120), 0, IN(92));
    made_opening(&made, face, "window", IN(40), IN(31), IN(30), IN(61));
    const Layout *layout = made_layout(&made);
    assert_int_equal(layout->course_total, 9);
    assert_false(layout->least.found);
    for (int64_t number = 0; number < 9; number++)
        assert_int_equal(made_course(layout, 0, number)->segment_count, number < 3 ? 1 : 2);
    arena_free(made.arena);
}
END_TEST

/* BIA Technical Note 10B (June 1993), table 3: heights of courses where 3 make 8 in and 5 make 16 in, printed to the
 * sixteenth. A list of widths that adds up to the run keeps them from drifting. */
START_TEST(heights_of_courses_are_those_published)
{
    static const struct {
        int courses, of;
        double run, height;
    } rows[] = {
        {1, 3, 8, 2.6875},     {2, 3, 8, 5.3125},    {3, 3, 8, 8},        {4, 3, 8, 10.6875},   {5, 3, 8, 13.3125},
        {6, 3, 8, 16},         {10, 3, 8, 26.6875},  {12, 3, 8, 32},      {15, 3, 8, 40},       {24, 3, 8, 64},
        {30, 3, 8, 80},        {36, 3, 8, 96},       {48, 3, 8, 128},     {50, 3, 8, 133.3125}, {1, 5, 16, 3.1875},
        {2, 5, 16, 6.375},     {3, 5, 16, 9.625},    {4, 5, 16, 12.8125}, {5, 5, 16, 16},       {6, 5, 16, 19.1875},
        {10, 5, 16, 32},       {12, 5, 16, 38.375},  {15, 5, 16, 48},     {24, 5, 16, 76.8125}, {30, 5, 16, 96},
        {36, 5, 16, 115.1875}, {48, 5, 16, 153.625}, {50, 5, 16, 160},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const Length reveal = IN(0.375);
        Made made = made_new(UNITS_IN, 0, reveal, 0);
        made.wall->planks.widths.count = 0;
        for (int j = 0; j < rows[i].of; j++)
            *arena_push(made.arena, &made.wall->planks.widths) =
                IN(rows[i].run) * (j + 1) / rows[i].of - IN(rows[i].run) * j / rows[i].of - reveal;
        made_face(&made, "north", IN(100), 0, IN(170));
        const Layout *layout = made_layout(&made);
        /* A unit and its joint: up to where the next course begins. */
        const Course *next = made_course(layout, 0, rows[i].courses);
        assert_int_equal(length_round(next->bottom, LENGTH_INCH / 16), IN(rows[i].height));
        arena_free(made.arena);
    }
}
END_TEST

/* Army EN5156, figure 2-38, stairs: 13 risers of 7 1/4 in, 12 treads of 10 1/2 in, a run of 10 ft 6 in. Planks as high
 * as a riser fill the rise with 13 whole ones; under a floor that steps up with the stair one course ends at every
 * riser. */
START_TEST(a_stair_is_laid_out_as_published)
{
    const Length riser = IN(7.25), tread = IN(10.5);
    Made made = made_new(UNITS_IN, riser, 0, 0);
    Face *face = made_face(&made, "stair", 12 * LENGTH_FOOT, 0, 13 * riser);
    face->floor.count = 0;
    for (int i = 0; i < 12; i++) { /* the wall below each tread is not covered */
        *arena_push(made.arena, &face->floor) = (Mark){i * tread, -i * riser};
        *arena_push(made.arena, &face->floor) = (Mark){(i + 1) * tread, -i * riser};
    }
    *arena_push(made.arena, &face->floor) = (Mark){12 * tread, -12 * riser};
    const Layout *layout = made_layout(&made);
    assert_int_equal(layout->course_total, 13);
    assert_false(layout->least.found);
    assert_int_equal(made_course(layout, 0, 12)->right, 12 * LENGTH_FOOT);
    assert_int_equal(made_course(layout, 0, 11)->right, 10 * LENGTH_FOOT + 6 * LENGTH_INCH);
    for (int i = 0; i < 12; i++)
        assert_int_equal(made_course(layout, 0, i)->right, (i + 1) * tread);
    arena_free(made.arena);
}
END_TEST

/* UK brickwork dimensions, Technical Information Sheet 9, table 1: n units of 215 mm with n - 1, n or n + 1 joints of
 * 10 mm. */
START_TEST(units_and_joints_add_up_as_published)
{
    static const struct {
        int units;
        double less, equal, more; /* mm */
    } rows[] = {
        {1, 215, 225, 235},    {2, 440, 450, 460},    {3, 665, 675, 685},     {4, 890, 900, 910},
        {5, 1115, 1125, 1135}, {6, 1340, 1350, 1360}, {36, 8090, 8100, 8110}, {72, 16190, 16200, 16210},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const Length heights[] = {MM(rows[i].less), MM(rows[i].equal), MM(rows[i].more)};
        for (int more = 0; more < 3; more++) {
            /* The first stands on a joint where there is one more joint than units. */
            Made made = made_new(UNITS_MM, MM(215), MM(10), more == 2 ? MM(10) : 0);
            made_face(&made, "north", MM(1000), 0, heights[more]);
            const Layout *layout = made_layout(&made);
            assert_int_equal(layout->course_total, rows[i].units);
            assert_false(layout->least.found);
            const Course *top = made_course(layout, 0, rows[i].units - 1);
            assert_int_equal(top->top, heights[more] - (more == 0 ? 0 : MM(10)));
            arena_free(made.arena);
        }
    }
}
END_TEST

/* NAVEDTRA 14044, p. 7-23, half-unit rule: end piece = (L - n t + t) / 2, n whole units in L. Planks set so leave the
 * same strip at floor and ceiling. 49 1/2 in of 24 in and 10 ft 7 in of 12 in: common practice. */
START_TEST(ends_balance_by_the_published_rule)
{
    static const struct {
        double span, unit, end;
    } rows[] = {{49.5, 24, 12.75}, {127, 12, 9.5}, {92, 8, 6}, {186, 24, 21}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const int whole = (int)(rows[i].span / rows[i].unit);
        const Length end = (IN(rows[i].span) - whole * IN(rows[i].unit) + IN(rows[i].unit)) / 2;
        assert_int_equal(end, IN(rows[i].end));
        Made made = made_new(UNITS_IN, IN(rows[i].unit), 0, end);
        made_face(&made, "north", IN(100), 0, IN(rows[i].span));
        const Layout *layout = made_layout(&made);
        assert_int_equal(layout->least_floor.width, end);
        assert_int_equal(layout->least_ceiling.width, end);
        assert_int_equal(layout->least.width, end);
        assert_int_equal(layout->course_total, whole + 1);
        arena_free(made.arena);
    }
}
END_TEST

/* PS 20 dressed widths of boards (dry): so many whole courses in 8 ft, and the rip that is left (worked). */
START_TEST(dressed_widths_fill_eight_feet_as_worked)
{
    static const struct {
        double width;
        int whole;
        double rest;
    } rows[] = {{1.5, 64, 0},     {2.5, 38, 1},    {3.5, 27, 1.5}, {4.5, 21, 1.5},   {5.5, 17, 2.5},
                {7.25, 13, 1.75}, {9.25, 10, 3.5}, {11.25, 8, 6},  {13.25, 7, 3.25}, {15.25, 6, 4.5}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        Made made = made_new(UNITS_IN, IN(rows[i].width), 0, 0);
        made_face(&made, "north", IN(100), 0, IN(96));
        const Layout *layout = made_layout(&made);
        assert_int_equal(layout->course_total, rows[i].whole + (rows[i].rest > 0));
        if (rows[i].rest > 0) {
            const Course *top = made_course(layout, 0, rows[i].whole);
            assert_int_equal(top->rip.shape, RIP_STRAIGHT);
            assert_int_equal(top->rip.least, IN(rows[i].rest));
        }
        arena_free(made.arena);
    }
}
END_TEST

/* Common practice: the last course is ripped to what is left above the one below it less one reveal; below the
 * reference course each plank hangs one reveal under its upper neighbour. */
START_TEST(rip_of_the_last)
{
    Made made = made_new(UNITS_IN, IN(2.75), IN(0.0625), IN(2.25));
    Face *face = made_face(&made, "north", IN(100), -IN(40), IN(53.125));
    face->margin.ceiling = IN(0.125);
    const Layout *layout = made_layout(&made);
    const FaceLayout *laid = &layout->faces[0];
    const Course *last = &laid->courses[laid->course_count - 1];
    assert_int_equal(last->rip.least, IN(53.125) - IN(0.125) - (last[-1].top + IN(0.0625)));
    for (int i = 1; i < laid->course_count; i++)
        assert_int_equal(laid->courses[i - 1].top, laid->courses[i].bottom - IN(0.0625));
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        siding_courses_meet_sill_and_head_as_published,
        heights_of_courses_are_those_published,
        a_stair_is_laid_out_as_published,
        units_and_joints_add_up_as_published,
        ends_balance_by_the_published_rule,
        dressed_widths_fill_eight_feet_as_worked,
        rip_of_the_last,
    };
    return RUN(tests);
}
