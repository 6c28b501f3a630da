/*
 * Layouts small enough to be worked by hand.
 */
#include "layout/made.h"

#include <string.h>

static void assert_outline(Points outline, int count, const Length *pairs)
{
    assert_int_equal(outline.count, count);
    for (int i = 0; i < count; i++) {
        assert_int_equal(outline.at[i].x, pairs[2 * i]);
        assert_int_equal(outline.at[i].y, pairs[2 * i + 1]);
    }
}

#define OUTLINE(outline, ...) \
    assert_outline((outline), (int)(sizeof((Length[]){__VA_ARGS__}) / sizeof(Length) / 2), (Length[]){__VA_ARGS__})

/* The example of the plan's description: planks of 2 3/4 in, reveal 1/16, start 2 1/4; the left side leans in 1/8 in
 * over 93 in. */
static Made reading_wall(void)
{
    Made made = made_new(UNITS_IN, IN(2.75), IN(0.0625), IN(2.25));
    Face *face = made_face(&made, "north", IN(141.375), 0, 0);
    made_marks(&made, &face->floor, 2, (Length[]){0, IN(40.5), IN(141.375), IN(39.9375)});
    made_marks(&made, &face->ceiling, 3, (Length[]){0, IN(53), IN(70), IN(53.1875), IN(141.375), IN(52.875)});
    made_marks(&made, &face->left, 2, (Length[]){IN(-40), 0, IN(53), IN(0.125)});
    made_marks(&made, &face->right, 1, (Length[]){IN(-40), 0});
    face->margin = (Margin){.floor = IN(0.25), .ceiling = IN(0.125)};
    Opening *outlet = made_opening(&made, face, "desk outlet", IN(37), IN(-27.5), IN(2.25), IN(3.75));
    outlet->kind = OPENING_BOX;
    outlet->clear = IN(0.0625);
    return made;
}

START_TEST(a_course_ends_at_a_leaning_side)
{
    Made made = reading_wall();
    const Layout *layout = made_layout(&made);
    const FaceLayout *face = &layout->faces[0];
    const Course *course = made_course(layout, 0, -10);
    assert_int_equal(course->bottom, -657225000);
    assert_int_equal(course->top, -587375000);
    assert_int_equal(course->rip.shape, RIP_FULL);
    assert_int_equal(course->rip.least, 69850000);
    assert_int_equal(course->left, 482224);
    assert_int_equal(course->segment_count, 1);
    assert_int_equal(course->segments[0].left, 482224);
    assert_int_equal(course->segments[0].right, 3590925000);
    OUTLINE(layout_outline(made.arena, face, course, 482224, 1168882224), 482224, -657225000, 1168882224, -657225000,
            1168882224, -587375000, 576109, -587375000);
    const Cutouts cutouts = layout_cutouts(made.arena, face, course, 482224, 1168882224);
    assert_int_equal(cutouts.count, 1);
    assert_int_equal(cutouts.at[0].shape, CUT_BOTTOM);
    assert_int_equal(cutouts.at[0].box.left, 938212500);
    assert_int_equal(cutouts.at[0].box.right, 998537500);
    assert_int_equal(cutouts.at[0].box.bottom, -657225000);
    assert_int_equal(cutouts.at[0].box.top, -601662500);
    arena_free(made.arena);
}
END_TEST

/* A face 100 in by 80 in from the level line up, planks of 4 in, no reveal. */
static Made plain(void)
{
    return made_new(UNITS_IN, IN(4), 0, 0);
}

START_TEST(a_face_of_whole_courses_has_no_strip)
{
    Made made = plain();
    made_face(&made, "north", IN(100), 0, IN(80));
    const Layout *layout = made_layout(&made);
    assert_int_equal(layout->course_total, 20);
    assert_false(layout->least.found);
    assert_int_equal(layout->findings.count, 0);
    const Course *course = made_course(layout, 0, 7);
    assert_int_equal(course->slab_count, 1);
    assert_int_equal(course->rip.shape, RIP_FULL);
    assert_false(course->rip.lower_cut || course->rip.upper_cut);
    assert_true(layout->faces[0].area == (Wide)IN(100) * IN(80));
    assert_int_equal(layout_course_index(&layout->faces[0], 20), -1);
    arena_free(made.arena);
}
END_TEST

/* Eaves at 10 in, ridge at 60 in over the middle of 100 in: the ceiling rises 1 in 1, so the course from 40 to 44 in
 * runs from 30 to 70 in with ends cut at 45 degrees. Slanted ends are no strips. */
START_TEST(courses_of_a_gable_end_on_its_slopes)
{
    Made made = plain();
    Face *face = made_face(&made, "gable", IN(100), 0, 0);
    made_marks(&made, &face->ceiling, 3, (Length[]){0, IN(10), IN(50), IN(60), IN(100), IN(10)});
    const Layout *layout = made_layout(&made);
    const Course *course = made_course(layout, 0, 10);
    assert_int_equal(course->left, IN(30));
    assert_int_equal(course->right, IN(70));
    assert_int_equal(course->rip.shape, RIP_SCRIBE);
    assert_int_equal(course->rip.left, 0);
    assert_int_equal(course->rip.least, IN(4)); /* outside rakes */
    assert_int_equal(course->rip.most, IN(4));
    OUTLINE(layout_outline(made.arena, &layout->faces[0], course, IN(30), IN(70)), IN(30), IN(40), IN(70), IN(40),
            IN(66), IN(44), IN(34), IN(44));
    assert_false(layout->least.found);
    /* The topmost course ends at the ridge: all of it under the rake. */
    const Course *top = made_course(layout, 0, 14);
    OUTLINE(layout_outline(made.arena, &layout->faces[0], top, top->left, top->right), IN(46), IN(56), IN(54), IN(56),
            IN(50), IN(60));
    assert_int_equal(top->rip.least, 0);
    assert_int_equal(top->rip.most, IN(4));
    assert_true(layout->faces[0].area == (Wide)IN(100) * IN(10) + (Wide)IN(50) * IN(50));
    arena_free(made.arena);
}
END_TEST

/* A stair rises 7 in over 10 in along the foot of the wall: several courses end on it, none of them in a strip. */
START_TEST(courses_end_on_a_stair_without_strips)
{
    Made made = plain();
    Face *face = made_face(&made, "stair", IN(100), 0, IN(40));
    made_marks(&made, &face->floor, 2, (Length[]){IN(20), 0, IN(70), -IN(35)});
    const Layout *layout = made_layout(&made);
    for (int64_t number = 0; number < 8; number++) {
        const Course *course = made_course(layout, 0, number);
        /* Its top meets the stair at 20 + (4 k + 4) 10/7 in. */
        const Wide over = (Wide)IN(20) * 7 + (Wide)IN(40) * (number + 1);
        assert_int_equal(course->left, 0);
        assert_int_equal(course->right, wide_narrow(wide_divide(over, 7)));
        assert_int_equal(course->rip.least, IN(4));
        assert_int_equal(course->rip.right, 0);
        assert_true(course->rip.lower_cut);
    }
    /* Course 8 runs out level with the landing at 35 in: 1 in of it is left beyond, a strip at the floor. */
    const Course *landing = made_course(layout, 0, 8);
    assert_int_equal(landing->right, IN(100));
    assert_int_equal(landing->rip.right, IN(1));
    assert_int_equal(layout->least.width, IN(1));
    assert_int_equal(layout->least.course, 8);
    assert_int_equal(layout->least.at, IN(70));
    assert_true(layout->least.at_floor);
    assert_int_equal(layout->least.opening, -1);
    arena_free(made.arena);
}
END_TEST

/* The ceiling falls from 79 to 77 1/2 in over 100 in, a vent's top stands at 77 in: between them 1 1/4 in is left at
 * the vent's right end, where the ceiling is down to 78 1/4. */
START_TEST(a_taper_over_a_vent_is_as_thin_as_at_its_low_end)
{
    Made made = plain();
    Face *face = made_face(&made, "north", IN(100), 0, 0);
    made_marks(&made, &face->ceiling, 2, (Length[]){0, IN(79), IN(100), IN(77.5)});
    made_opening(&made, face, "vent", IN(40), IN(70), IN(10), IN(7));
    const Layout *layout = made_layout(&made);
    const Course *course = made_course(layout, 0, 19);
    assert_int_equal(course->rip.shape, RIP_TAPER);
    assert_int_equal(course->rip.left, IN(3));
    assert_int_equal(course->rip.right, IN(1.5));
    assert_int_equal(course->rip.point_count, 2);
    assert_int_equal(layout->least.width, IN(1.25));
    assert_int_equal(layout->least.course, 19);
    assert_int_equal(layout->least.at, IN(50));
    assert_int_equal(layout->least.opening, 0);
    assert_int_equal(layout->least_ceiling.width, IN(1.25));
    assert_false(layout->least_floor.found);
    const Cutouts cutouts = layout_cutouts(made.arena, &layout->faces[0], course, 0, IN(100));
    assert_int_equal(cutouts.at[0].shape, CUT_BOTTOM);
    /* Thinner than 1 1/3 in (a third of the face) only along the last inches of the vent: 77 + 1 1/3 = 79 - 0.015 x. */
    const char *text = NULL;
    assert_int_equal(made_findings(layout, RULE_SLIVER, &text), 1);
    assert_string_equal(
        text, "Course 19: only 1 1/4 in of plank is left between vent and the ceiling, from 44 7/16 to 50 in.");
    arena_free(made.arena);
}
END_TEST

/* A gentle ceiling that runs out within a course counts as a strip of no width. */
START_TEST(a_ceiling_that_runs_out_in_a_course_leaves_no_width)
{
    Made made = plain();
    Face *face = made_face(&made, "north", IN(100), 0, 0);
    made_marks(&made, &face->ceiling, 2, (Length[]){0, IN(77), IN(100), IN(75)});
    const Layout *layout = made_layout(&made);
    const Course *course = made_course(layout, 0, 19); /* from 76 in */
    assert_int_equal(course->right, IN(50));
    assert_int_equal(layout->least.width, 0);
    assert_int_equal(layout->least.at, IN(50));
    assert_int_equal(layout->least.course, 19);
    const char *text = NULL;
    assert_int_equal(made_findings(layout, RULE_SLIVER, &text), 1);
    assert_string_equal(text, "Course 19: nothing of the plank is left at the ceiling, from 0 to 50 in.");
    /* Left away where it is nowhere above `leave`. */
    made.wall->planks.leave = IN(1);
    layout = made_layout(&made);
    assert_int_equal(layout_course_index(&layout->faces[0], 19), -1);
    assert_int_equal(made_findings(layout, RULE_LEAVE, &text), 1);
    assert_holds(text, "Course 19 is left away: it is nowhere higher than 1 in here");
    arena_free(made.arena);
}
END_TEST

/* The floor steps up 6 in at x = 60 in: course 1 ends there, course 0 and the left part of course 1 stand below. */
START_TEST(a_course_ends_at_a_step_of_the_floor)
{
    Made made = plain();
    Face *face = made_face(&made, "north", IN(100), 0, IN(40));
    made_marks(&made, &face->floor, 2, (Length[]){IN(60), 0, IN(60), -IN(6)});
    const Layout *layout = made_layout(&made);
    assert_int_equal(made_course(layout, 0, 0)->right, IN(60));
    assert_int_equal(made_course(layout, 0, 0)->rip.shape, RIP_FULL);
    const Course *course = made_course(layout, 0, 1);
    assert_int_equal(course->rip.shape, RIP_SCRIBE);
    assert_int_equal(course->rip.point_count, 4);
    assert_int_equal(course->rip.left, IN(4));
    assert_int_equal(course->rip.right, IN(2));
    assert_int_equal(course->segment_count, 1);
    assert_true(layout_whole(course, 0, IN(100)));
    OUTLINE(layout_outline(made.arena, &layout->faces[0], course, 0, IN(100)), 0, IN(4), IN(60), IN(4), IN(60), IN(6),
            IN(100), IN(6), IN(100), IN(8), 0, IN(8));
    assert_int_equal(layout->least.width, IN(2));
    assert_int_equal(layout->least.at, IN(60));
    arena_free(made.arena);
}
END_TEST

/* One box in each place of a piece from 0 to 50 in of the course from 4 to 8 in. */
START_TEST(a_cutout_has_the_shape_of_its_place)
{
    static const struct {
        double left, bottom, width, height;
        CutShape shape;
    } rows[] = {
        {10, 5, 4, 2, CUT_HOLE},   {10, 5, 4, 3, CUT_TOP},    {10, 3, 4, 3, CUT_BOTTOM}, {-1, 5, 4, 2, CUT_LEFT},
        {48, 5, 4, 2, CUT_RIGHT},  {-1, 2, 4, 4, CUT_CORNER}, {48, 6, 4, 4, CUT_CORNER}, {-1, 6, 60, 4, CUT_EDGE},
        {10, 4, 4, 2, CUT_BOTTOM}, {46, 5, 4, 2, CUT_RIGHT},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        Made made = plain();
        Face *face = made_face(&made, "north", IN(100), 0, IN(40));
        made_opening(&made, face, "box", IN(rows[i].left), IN(rows[i].bottom), IN(rows[i].width), IN(rows[i].height));
        const Layout *layout = made_layout(&made);
        const Cutouts cutouts = layout_cutouts(made.arena, &layout->faces[0], made_course(layout, 0, 1), 0, IN(50));
        assert_int_equal(cutouts.count, 1);
        assert_string_equal(cut_shape_word(cutouts.at[0].shape), cut_shape_word(rows[i].shape));
        arena_free(made.arena);
    }
}
END_TEST

/* A taper that crosses a box is a broken side: over the box the plank is gone. */
START_TEST(over_a_box_that_a_taper_crosses_the_plank_is_gone)
{
    Made made = plain();
    Face *face = made_face(&made, "north", IN(100), 0, 0);
    made_marks(&made, &face->ceiling, 2, (Length[]){0, IN(40), IN(100), IN(36)});
    made_opening(&made, face, "box", IN(40), IN(37), IN(20), IN(1));
    const Layout *layout = made_layout(&made);
    const Course *course = made_course(layout, 0, 9); /* 36 to 40 in */
    const Cutouts cutouts = layout_cutouts(made.arena, &layout->faces[0], course, 0, IN(100));
    assert_int_equal(cutouts.count, 1);
    assert_int_equal(cutouts.at[0].shape, CUT_TOP); /* the ceiling is down to 38 in at x = 50 in */
    /* The wood under it is 1 in. */
    assert_int_equal(course->segment_count, 1);
    arena_free(made.arena);
}
END_TEST

/* A box across two courses leaves a strip above and one below; where it stands 1/4 in over a joint, 3 3/4 in. */
START_TEST(a_box_across_two_courses_notches_both)
{
    Made made = plain();
    Face *face = made_face(&made, "north", IN(100), 0, IN(40));
    Opening *box = made_opening(&made, face, "desk outlet", IN(37), IN(12.5), IN(2.25), IN(5));
    box->clear = IN(0.0625);
    const Layout *layout = made_layout(&made);
    assert_int_equal(layout->least.width, IN(12.5) - IN(0.0625) - IN(12));
    assert_int_equal(layout->least.course, 3);
    assert_int_equal(layout->least.at, IN(37) - IN(0.0625));
    assert_int_equal(layout->least.opening, 0);
    const char *text = NULL;
    assert_int_equal(made_findings(layout, RULE_SLIVER, &text), 1);
    assert_string_equal(text,
                        "Course 3: only 7/16 in of plank is left under desk outlet, from 36 15/16 to 39 5/16 in.");
    const Course *above = made_course(layout, 0, 4);
    assert_int_equal(above->slab_count, 3);
    assert_int_equal(above->slabs[1].part_count, 1);
    assert_int_equal(above->slabs[1].parts[0].bottom_edge, EDGE_OPENING);
    assert_int_equal(above->slabs[1].parts[0].bottom_left, IN(17.5625));
    /* Either joint over the box would cut the plank from it; both at once leave nothing between. */
    assert_true(layout_whole(above, 0, IN(100)));
    arena_free(made.arena);
}
END_TEST

/* A hole with wood above and below: a piece with both joints over it falls in two. */
START_TEST(a_piece_hangs_together_or_falls_apart)
{
    Made made = plain();
    Face *face = made_face(&made, "north", IN(100), 0, IN(40));
    made_opening(&made, face, "box", IN(40), IN(5), IN(20), IN(2));
    const Layout *layout = made_layout(&made);
    const Course *course = made_course(layout, 0, 1);
    assert_true(layout_whole(course, 0, IN(100)));
    assert_true(layout_whole(course, IN(45), IN(100)));
    assert_true(layout_whole(course, 0, IN(45)));
    assert_false(layout_whole(course, IN(42), IN(58)));
    assert_false(layout_whole(course, IN(40), IN(60)));
    assert_true(layout_whole(course, IN(39), IN(60)));
    arena_free(made.arena);
}
END_TEST

/* A ceiling below its floor is no wall: where one is, somewhere, it is told once, with the worst place. */
START_TEST(a_ceiling_below_its_floor)
{
    Made made = plain();
    Face *face = made_face(&made, "north", IN(100), 0, IN(40));
    const char *text = NULL;
    made_marks(&made, &face->ceiling, 3, (Length[]){0, IN(40), IN(50), -IN(2), IN(100), IN(40)});
    assert_int_equal(made_findings(made_layout(&made), RULE_CROSSING, &text), 1);
    assert_string_equal(text, "The ceiling lies 2 in below the floor at 50 in from the left end, and nothing is hung "
                              "there: measure both again, `down` and `up` from the level line.");
    /* a step, worst on its right side, at the very end of the face none */
    made_marks(&made, &face->ceiling, 3, (Length[]){0, IN(40), IN(60), IN(40), IN(60), -IN(1)});
    assert_int_equal(made_findings(made_layout(&made), RULE_CROSSING, &text), 1);
    assert_holds(text, "1 in below the floor at 60 in");
    made_marks(&made, &face->ceiling, 3, (Length[]){0, IN(40), IN(100), IN(40), IN(100), -IN(1)});
    assert_int_equal(made_findings(made_layout(&made), RULE_CROSSING, NULL), 0);
    /* a rake that runs out to the floor is a wall; the margins beside it are none of the walls */
    made_marks(&made, &face->ceiling, 2, (Length[]){0, 0, IN(100), IN(40)});
    face->margin.floor = IN(1);
    assert_int_equal(made_findings(made_layout(&made), RULE_CROSSING, NULL), 0);
    arena_free(made.arena);
}
END_TEST

/* Beyond 100,000 courses the layout refuses, and says which value makes them so many. */
START_TEST(too_many_courses_name_their_key)
{
    Made made = plain();
    Face *face = made_face(&made, "north", IN(100), 0, IN(400));
    made.wall->planks.widths.at[0] = IN(1) / 512;
    made.wall->planks.reveal = 0;
    Err err = {0};
    assert_null(layout_wall(made.arena, made.wall, &err));
    assert_int_equal(err.kind, ERR_LIMIT);
    assert_string_equal(err.place, "planks.width");
    made.wall->planks.widths.at[0] = IN(1) / 4;
    face->ceiling.at[0].off = 900 * (Length)1000000000;
    assert_null(layout_wall(made.arena, made.wall, &err));
    assert_string_equal(err.place, "faces[0].ceiling");
    assert_holds(err.text, "more than 100000 courses");
    arena_free(made.arena);
}
END_TEST

/* Two openings that overlap take what both take; that is told. */
START_TEST(openings_that_overlap_take_what_both_take)
{
    Made made = plain();
    Face *face = made_face(&made, "north", IN(100), 0, IN(40));
    made_opening(&made, face, "low", IN(20), IN(2), IN(10), IN(4));
    made_opening(&made, face, "high", IN(25), IN(5), IN(10), IN(6));
    const Layout *layout = made_layout(&made);
    const char *text = NULL;
    assert_int_equal(made_findings(layout, RULE_CROSSING, &text), 1);
    assert_holds(text, "low and high overlap");
    /* Course 1, 4 to 8 in: 25..30 both: nothing; 20..25 above 6 in; 30..35 below 5 in. */
    const Course *course = made_course(layout, 0, 1);
    assert_int_equal(course->segment_count, 2);
    assert_int_equal(course->segments[0].right, IN(25));
    assert_int_equal(course->segments[1].left, IN(30));
    const Wide taken = (Wide)IN(10) * IN(4) + (Wide)IN(10) * IN(6) - (Wide)IN(5) * IN(1);
    assert_true(layout->faces[0].area == (Wide)IN(100) * IN(40) - taken);
    /* Touching is no overlap. */
    face->openings.at[1].left = IN(30);
    assert_int_equal(made_findings(made_layout(&made), RULE_CROSSING, NULL), 0);
    face->openings.at[1].left = IN(95);
    assert_int_equal(made_findings(made_layout(&made), RULE_CROSSING, &text), 1);
    assert_holds(text, "high reaches past the right end of the face");
    face->openings.at[1].left = IN(50);
    face->openings.at[1].bottom = IN(35);
    assert_int_equal(made_findings(made_layout(&made), RULE_CROSSING, &text), 1);
    assert_holds(text, "above the ceiling");
    arena_free(made.arena);
}
END_TEST

/* A door splits every course up to its head; the head's strip stands above. A fireplace from the floor has its height
 * from the floor at its left edge. A stove cuts nothing. */
START_TEST(doors_and_fireplaces_split_courses_and_stoves_do_not)
{
    Made made = plain();
    Face *face = made_face(&made, "north", IN(100), 0, IN(40));
    made_marks(&made, &face->floor, 2, (Length[]){0, 0, IN(100), IN(2)});
    face->margin.floor = IN(0.25);
    made_opening(&made, face, "door", IN(20), IN(1), IN(10), IN(21))->kind = OPENING_DOOR;
    Opening *fireplace = made_opening(&made, face, "fireplace", IN(50), 0, IN(10), IN(9));
    fireplace->kind = OPENING_FIREPLACE;
    fireplace->to_floor = true;
    made_opening(&made, face, "stove", IN(70), 0, IN(20), IN(30))->kind = OPENING_STOVE;
    const Layout *layout = made_layout(&made);
    const FaceLayout *laid = &layout->faces[0];
    assert_int_equal(laid->openings[0].top, IN(22));
    assert_true(laid->openings[0].bottom < -LENGTH_MOST);
    assert_int_equal(laid->openings[1].left, IN(50));
    assert_int_equal(laid->openings[1].top, IN(8)); /* floor at 50 in: 1 in down, its margin left aside */
    const Course *course = made_course(layout, 0, 1);
    assert_int_equal(course->segment_count, 3);
    assert_int_equal(course->segments[0].right, IN(20));
    assert_int_equal(course->segments[1].left, IN(30));
    assert_int_equal(course->segments[1].right, IN(50));
    assert_int_equal(course->segments[2].left, IN(60));
    assert_int_equal(course->segments[2].right, IN(100));
    assert_int_equal(made_course(layout, 0, 2)->segment_count, 2);
    assert_int_equal(made_course(layout, 0, 5)->segment_count, 1);
    arena_free(made.arena);
}
END_TEST

/* Both sides lean; the right one steps. */
START_TEST(sides_that_lean_or_step_end_courses)
{
    Made made = plain();
    Face *face = made_face(&made, "north", IN(100), 0, IN(40));
    made_marks(&made, &face->left, 2, (Length[]){0, IN(2), IN(8), -IN(2)}); /* outwards by 2 in at 8 in */
    made_marks(&made, &face->right, 2, (Length[]){IN(6), 0, IN(6), IN(10)});
    const Layout *layout = made_layout(&made);
    const FaceLayout *laid = &layout->faces[0];
    const Course *course = made_course(layout, 0, 1); /* 4 to 8 in: left from 0 to -2 in; right 100, above 6 in 90 */
    assert_int_equal(course->left, -IN(2));
    assert_int_equal(course->right, IN(100));
    OUTLINE(layout_outline(made.arena, laid, course, -IN(2), IN(100)), 0, IN(4), IN(100), IN(4), IN(100), IN(6), IN(90),
            IN(6), IN(90), IN(8), -IN(2), IN(8));
    assert_int_equal(course->rip.shape, RIP_FULL);
    const Course *lowest = made_course(layout, 0, 0);
    assert_int_equal(lowest->left, 0);
    OUTLINE(layout_outline(made.arena, laid, lowest, 0, IN(50)), IN(2), 0, IN(50), 0, IN(50), IN(4), 0, IN(4));
    /* An opening that takes the upper half by the right end parts nothing; one that takes the lower half does. */
    made_opening(&made, face, "box", IN(85), IN(4), IN(8), IN(2));
    course = made_course(made_layout(&made), 0, 1);
    assert_int_equal(course->segment_count, 2);
    assert_int_equal(course->segments[0].right, IN(90));
    assert_int_equal(course->segments[1].left, IN(93));
    assert_int_equal(course->segments[1].right, IN(100));
    arena_free(made.arena);
}
END_TEST

START_TEST(a_lap_hides_part_of_each_plank)
{
    Made made = made_new(UNITS_IN, IN(4.5), IN(0.25), 0);
    made.wall->planks.lap = IN(0.5);
    Face *face = made_face(&made, "north", IN(100), 0, IN(40));
    made_opening(&made, face, "window", IN(40), IN(6), IN(20), IN(10));
    const Layout *layout = made_layout(&made);
    const Course *course = made_course(layout, 0, 1); /* 4.25 to 8.25 in */
    assert_int_equal(course->bottom, IN(4.25));
    assert_int_equal(course->top, IN(8.25));
    assert_int_equal(course->width, IN(4.5));
    assert_int_equal(layout_height(course, 0, IN(30)), IN(4));
    assert_int_equal(layout_need(made.wall, course, 0, IN(30)), IN(4.5));
    assert_int_equal(layout_need(made.wall, course, IN(42), IN(58)),
                     IN(4));                       /* all its upper side lies under the window */
    const Course *top = made_course(layout, 0, 9); /* from 38.25 in, cut at 40 */
    assert_int_equal(top->rip.shape, RIP_STRAIGHT);
    assert_int_equal(layout_need(made.wall, top, 0, IN(30)), IN(1.75));
    arena_free(made.arena);
}
END_TEST

/* Widths 3, 4, 5 in, repeated both ways: course -1 is 5 in wide, -2 is 4 in. */
START_TEST(a_list_of_widths_repeats_both_ways)
{
    Made made = made_new(UNITS_IN, IN(3), IN(0.5), IN(1));
    *arena_push(made.arena, &made.wall->planks.widths) = IN(4);
    *arena_push(made.arena, &made.wall->planks.widths) = IN(5);
    made_face(&made, "north", IN(100), -IN(40), IN(40));
    const Layout *layout = made_layout(&made);
    static const struct {
        int64_t number;
        double bottom, top;
    } rows[] = {{0, 1, 4},       {1, 4.5, 8.5}, {2, 9, 14},       {3, 14.5, 17.5},
                {-1, -4.5, 0.5}, {-2, -9, -5},  {-3, -12.5, -9.5}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const Course *course = made_course(layout, 0, rows[i].number);
        assert_int_equal(course->bottom, IN(rows[i].bottom));
        assert_int_equal(course->top, IN(rows[i].top));
    }
    arena_free(made.arena);
}
END_TEST

/* Each joint of a corner between two faces, backing 1/4 in on the first and 1/2 in on the second, planks 3/4 in: what
 * the right end of the first and the left end of the second come to. */
START_TEST(a_corner_takes_or_gives_what_its_joint_says)
{
    static const struct {
        Corner corner;
        double right, left; /* lost; negative: gained */
    } rows[] = {
        {{CORNER_INSIDE, CORNER_BUTT, THROUGH_LEFT, 0}, 0.5, 1},
        {{CORNER_INSIDE, CORNER_BUTT, THROUGH_RIGHT, 0}, 1.25, 0.25},
        {{CORNER_INSIDE, CORNER_TRIM, THROUGH_LEFT, 0}, 0.5, 0.25},
        {{CORNER_OUTSIDE, CORNER_TRIM, THROUGH_LEFT, 0}, 0, 0},
        {{CORNER_OUTSIDE, CORNER_LAP, THROUGH_LEFT, 0}, -1.25, -0.25},
        {{CORNER_OUTSIDE, CORNER_LAP, THROUGH_RIGHT, 0}, -0.5, -1},
        {{CORNER_OUTSIDE, CORNER_MITER, THROUGH_LEFT, 0}, -1.25, -1},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        Made made = plain();
        made.wall->planks.thickness = IN(0.75);
        made_face(&made, "north", IN(100), 0, IN(40));
        made_face(&made, "east", IN(60), 0, IN(40));
        made.wall->faces.at[0].corner = rows[i].corner;
        made.wall->faces.at[0].backing = IN(0.25);
        made.wall->faces.at[1].backing = IN(0.5);
        made.wall->faces.at[1].margin.left = IN(0.125);
        const Layout *layout = made_layout(&made);
        assert_int_equal(made_course(layout, 0, 0)->left, 0);
        assert_int_equal(made_course(layout, 0, 0)->right, IN(100) - IN(rows[i].right));
        assert_int_equal(made_course(layout, 1, 0)->left, IN(rows[i].left) + IN(0.125));
        assert_int_equal(made_course(layout, 1, 0)->right, IN(60));
        arena_free(made.arena);
    }
}
END_TEST

/* Edges measured after hanging move the courses beyond, on their face alone; the corner is told. */
START_TEST(measured_edges_move_the_courses_beyond_on_their_face)
{
    Made made = made_new(UNITS_IN, IN(4), IN(0.25), 0);
    made_face(&made, "north", IN(100), -IN(20), IN(40));
    made_face(&made, "east", IN(100), -IN(20), IN(40));
    made.wall->faces.at[0].corner = (Corner){CORNER_INSIDE, CORNER_BUTT, THROUGH_LEFT, 0};
    *arena_push(made.arena, &made.wall->hung_edges) =
        (HungEdge){.face = "north", .course = 2, .is_top = true, .height = IN(12.625)}; /* nominal 12.5 */
    *arena_push(made.arena, &made.wall->hung_edges) =
        (HungEdge){.face = "north", .course = 0, .is_top = false, .height = -IN(0.0625)}; /* nominal 0 */
    const Layout *layout = made_layout(&made);
    assert_int_equal(made_course(layout, 0, 2)->bottom, IN(8.5));
    assert_int_equal(made_course(layout, 0, 2)->top, IN(12.625));
    assert_int_equal(layout_need(made.wall, made_course(layout, 0, 2), 0, IN(50)), IN(4)); /* planks do not grow */
    assert_int_equal(made_course(layout, 0, 3)->bottom, IN(12.875));
    assert_int_equal(made_course(layout, 0, 3)->top, IN(16.875));
    assert_int_equal(made_course(layout, 0, 0)->bottom, -IN(0.0625));
    assert_int_equal(made_course(layout, 0, 0)->top, IN(4));
    assert_int_equal(made_course(layout, 0, -1)->top, -IN(0.3125));
    assert_int_equal(made_course(layout, 0, -2)->top, -IN(4.5625));
    assert_int_equal(made_course(layout, 1, 3)->bottom, IN(12.75));
    const char *text = NULL;
    assert_int_equal(made_findings(layout, RULE_CORNER, &text), 1);
    assert_holds(text, "does not meet round the corner");
    arena_free(made.arena);
}
END_TEST

/* Hung from the lowest course up: every edge measured is a top, and all courses above start one reveal from it. */
START_TEST(measured_from_the_lowest_up)
{
    Made made = made_new(UNITS_IN, IN(4), IN(0.25), 0);
    made_face(&made, "north", IN(100), -IN(20), IN(40));
    made.wall->planks.hang_given = true;
    made.wall->planks.hang = HANG_UPWARD;
    *arena_push(made.arena, &made.wall->hung_edges) =
        (HungEdge){.face = "north", .course = -3, .is_top = true, .height = -IN(8.5)}; /* nominal -8 3/4 */
    *arena_push(made.arena, &made.wall->hung_edges) =
        (HungEdge){.face = "north", .course = 1, .is_top = true, .height = IN(8.75)}; /* 8 1/2 from there */
    const Layout *layout = made_layout(&made);
    assert_int_equal(made_course(layout, 0, -4)->top, -IN(13));
    assert_int_equal(made_course(layout, 0, -3)->bottom, -IN(12.75));
    assert_int_equal(made_course(layout, 0, -3)->top, -IN(8.5));
    assert_int_equal(made_course(layout, 0, -2)->bottom, -IN(8.25));
    assert_int_equal(made_course(layout, 0, 0)->bottom, IN(0.25));
    assert_int_equal(made_course(layout, 0, 1)->top, IN(8.75));
    assert_int_equal(made_course(layout, 0, 2)->bottom, IN(9));
    arena_free(made.arena);
}
END_TEST

/* A reference course that starts above the ceiling is there where its lower edge was measured below it. */
START_TEST(measured_below_the_ceiling)
{
    Made made = made_new(UNITS_IN, IN(4), IN(0.25), IN(41));
    made_face(&made, "north", IN(100), 0, IN(40));
    *arena_push(made.arena, &made.wall->hung_edges) =
        (HungEdge){.face = "north", .course = 0, .is_top = false, .height = IN(38)};
    const Layout *layout = made_layout(&made);
    assert_int_equal(made_course(layout, 0, 0)->bottom, IN(38));
    assert_int_equal(made_course(layout, 0, -1)->top, IN(37.75));
    arena_free(made.arena);
}
END_TEST

/* A measured edge on the wrong side of its own course would lay courses over one another: it is told and left out, and
 * what is measured beyond it still counts. */
START_TEST(measured_edges_that_overlap_are_told)
{
    static const struct {
        HungEdge edges[2];
        int told; /* how many of them */
        int64_t number;
        Length bottom, top; /* of that course */
    } rows[] = {
        {{{"north", 1, true, -IN(3), PLAN_KEPT, 0}, {"north", 2, true, IN(12.625), PLAN_KEPT, 0}},
         1,
         1,
         IN(4.25),
         IN(8.25)},
        {{{"north", 1, true, IN(4.25), PLAN_KEPT, 0}, {"north", 2, true, IN(12.625), PLAN_KEPT, 0}},
         1,
         3,
         IN(12.875),
         IN(16.875)},
        {{{"north", 1, true, IN(20), PLAN_KEPT, 0}, {"north", 2, true, IN(5), PLAN_KEPT, 0}},
         1,
         2,
         IN(20.25),
         IN(24.25)},
        {{{"north", 90000, true, IN(9), PLAN_KEPT, 0}, {"north", 2, true, IN(12.625), PLAN_KEPT, 0}},
         1,
         3,
         IN(12.875),
         IN(16.875)},
        {{{"north", -1, false, IN(3), PLAN_KEPT, 0}, {"north", -2, false, -IN(9), PLAN_KEPT, 0}},
         1,
         -1,
         -IN(4.25),
         -IN(0.25)},
        {{{"north", 0, false, IN(4), PLAN_KEPT, 0}, {"north", -2, false, -IN(9), PLAN_KEPT, 0}}, 1, 0, 0, IN(4)},
        {{{"north", 0, false, IN(5), PLAN_KEPT, 0}, {"north", 0, true, IN(6), PLAN_KEPT, 0}}, 0, 0, IN(5), IN(6)},
        {{{"north", 0, false, IN(0.5), PLAN_KEPT, 0}, {"north", 0, true, IN(0.25), PLAN_KEPT, 0}}, 1, 0, 0, IN(0.25)},
        {{{"north", 0, false, -IN(2), PLAN_KEPT, 0}, {"north", 0, true, -IN(1), PLAN_KEPT, 0}}, 0, 0, -IN(2), -IN(1)},
        {{{"north", 0, false, IN(1), PLAN_KEPT, 0}, {"north", 0, true, -IN(1), PLAN_KEPT, 0}}, 2, 0, 0, IN(4)},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        Made made = made_new(UNITS_IN, IN(4), IN(0.25), 0);
        made_face(&made, "north", IN(100), -IN(20), IN(40));
        for (int j = 0; j < 2; j++)
            *arena_push(made.arena, &made.wall->hung_edges) = rows[i].edges[j];
        const Layout *layout = made_layout(&made);
        const char *text = NULL;
        assert_int_equal(made_findings(layout, RULE_HUNG, &text), rows[i].told);
        if (rows[i].told > 0)
            assert_holds(text, "it is left out of the plan");
        assert_int_equal(made_course(layout, 0, rows[i].number)->bottom, rows[i].bottom);
        assert_int_equal(made_course(layout, 0, rows[i].number)->top, rows[i].top);
        const FaceLayout *face = &layout->faces[0];
        for (int j = 1; j < face->course_count; j++)
            assert_true(face->courses[j].bottom - face->courses[j - 1].top == IN(0.25));
        arena_free(made.arena);
    }
}
END_TEST

/* What is measured off by more than a quarter of a plank is a slip of the tape or the pen; it counts, and is told, as
 * is an edge of a course that no wall is there for. */
START_TEST(edges_that_can_hardly_be_meant)
{
    static const struct {
        HungEdge edge;
        int far, nowhere;
        const char *text;
    } rows[] = {
        {{"north", 2, true, IN(13.5), PLAN_KEPT, 0}, 0, 0, NULL}, /* nominal 12.5, planks of 4 */
        {{"north", 2, true, IN(13.5) + 1, PLAN_KEPT, 0},
         1,
         0,
         "Course 2 is 5 in high as its top is measured, 1 in more than"},
        {{"north", 2, true, IN(11.5), PLAN_KEPT, 0}, 0, 0, NULL},
        {{"north", 2, true, IN(11.5) - 1, PLAN_KEPT, 0}, 1, 0, "1 in less than its planks show"},
        {{"north", 2, true, IN(78), PLAN_KEPT, 0}, 1, 0, "65 1/2 in more"},
        {{"north", -1, false, -IN(14), PLAN_KEPT, 0}, 1, 0, "Course -1 is 13 3/4 in high as its bottom is measured"},
        {{"north", 9, true, IN(42), PLAN_KEPT, 0}, 0, 0, NULL}, /* 38.25 to 42.25: cut by the ceiling at 40 */
        {{"north", 10, true, IN(46.5), PLAN_KEPT, 0},
         0,
         1,
         "the top of course 10 is measured, but no such course is on north"},
        {{"north", -6, false, -IN(26), PLAN_KEPT, 0}, 0, 1, "the bottom of course -6 is measured"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        Made made = made_new(UNITS_IN, IN(4), IN(0.25), 0);
        made_face(&made, "north", IN(100), -IN(20), IN(40));
        made_face(&made, "east", IN(100), -IN(20), IN(60)); /* where course 10 is */
        *arena_push(made.arena, &made.wall->hung_edges) = rows[i].edge;
        const Layout *layout = made_layout(&made);
        const char *text = NULL;
        assert_int_equal(made_findings(layout, RULE_HUNG, &text), rows[i].nowhere);
        assert_int_equal(made_findings(layout, RULE_EDGE, &text), rows[i].far);
        if (rows[i].text)
            assert_holds(text, rows[i].text);
        arena_free(made.arena);
    }
}
END_TEST

/* A start far off the wall: the courses that meet it are found without counting there, and it is told. */
START_TEST(a_start_far_off_the_wall_still_gives_its_courses)
{
    Made made = plain();
    made_face(&made, "north", IN(100), 0, IN(40));
    made.wall->start = -IN(4) * 7000000;
    const Layout *layout = made_layout(&made);
    assert_int_equal(layout->course_total, 10);
    assert_int_equal(layout->faces[0].courses[0].number, 7000000);
    assert_int_equal(layout->faces[0].courses[0].bottom, 0);
    assert_int_equal(made_findings(layout, RULE_REFERENCE, NULL), 1);
    made.wall->start = IN(4) * 7000000;
    layout = made_layout(&made);
    assert_int_equal(layout->course_total, 10);
    assert_int_equal(layout->faces[0].courses[0].number, -7000000);
    arena_free(made.arena);
}
END_TEST

START_TEST(too_many_courses_are_refused)
{
    Made made = made_new(UNITS_MM, LENGTH_MM, 0, 0);
    Face *face = made_face(&made, "north", MM(1000), 0, MM(100000));
    Err err = {0};
    assert_non_null(layout_wall(made.arena, made.wall, &err));
    face->ceiling.at[0].off += 1;
    face->ceiling.at[0].off += LENGTH_MM;
    assert_null(layout_wall(made.arena, made.wall, &err));
    assert_int_equal(err.kind, ERR_LIMIT);
    assert_holds(err.text, "100000 courses");
    made.wall->planks.widths.at[0] = 1; /* a nanometre: refused at once, not counted out */
    assert_null(layout_wall(made.arena, made.wall, &err));
    arena_free(made.arena);
}
END_TEST

/* The largest wall that a file can hold, with everything as far off as it may be: nothing overflows. */
START_TEST(the_largest_wall_overflows_nothing)
{
    const Length far = LENGTH_MOST;
    Made made = made_new(UNITS_MM, far, far, -far);
    Face *face = made_face(&made, "north", far, 0, 0);
    made_marks(&made, &face->floor, 3, (Length[]){-far, -far, 1, far, far, -far});
    made_marks(&made, &face->ceiling, 3, (Length[]){-far, -far + 1, 0, far, far, -far});
    made_marks(&made, &face->left, 2, (Length[]){-far, -far, far, far - 1});
    made_marks(&made, &face->right, 2, (Length[]){-far, far - 3, far, -far});
    face->margin = (Margin){0, 0, far / 1000, far / 1000};
    made_opening(&made, face, "window", -far, -far, far, far)->clear = far;
    made_opening(&made, face, "fireplace", far / 3, 0, far / 2, far / 2)->to_floor = true;
    const Layout *layout = made_layout(&made);
    for (int i = 0; i < layout->faces[0].course_count; i++) {
        const Course *course = &layout->faces[0].courses[i];
        for (int j = 0; j < course->segment_count; j++) {
            const Segment *segment = &course->segments[j];
            layout_outline(made.arena, &layout->faces[0], course, segment->left, segment->right);
            layout_area(made.arena, &layout->faces[0], course, segment->left, segment->right);
            layout_cutouts(made.arena, &layout->faces[0], course, segment->left, segment->right);
        }
    }
    assert_true(layout->course_total > 0);
    arena_free(made.arena);
}
END_TEST

/* No wall at all: ceiling below the floor, sides past each other. */
START_TEST(a_wall_without_room_for_a_course_is_told)
{
    Made made = plain();
    Face *face = made_face(&made, "north", IN(100), IN(40), IN(20));
    assert_int_equal(made_layout(&made)->course_total, 0);
    face->floor.at[0].off = 0;
    face->margin.left = IN(101);
    assert_int_equal(made_layout(&made)->course_total, 0);
    /* 0.001 mm2 is the least: 4 in by 9 nm is less, by 10 nm more. */
    face->margin.left = IN(100) - 9;
    assert_int_equal(made_layout(&made)->course_total, 0);
    face->margin.left = IN(100) - 10;
    assert_int_equal(made_layout(&made)->course_total, 5);
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        a_course_ends_at_a_leaning_side,
        a_face_of_whole_courses_has_no_strip,
        courses_of_a_gable_end_on_its_slopes,
        courses_end_on_a_stair_without_strips,
        a_taper_over_a_vent_is_as_thin_as_at_its_low_end,
        a_ceiling_that_runs_out_in_a_course_leaves_no_width,
        a_course_ends_at_a_step_of_the_floor,
        a_cutout_has_the_shape_of_its_place,
        over_a_box_that_a_taper_crosses_the_plank_is_gone,
        a_box_across_two_courses_notches_both,
        a_piece_hangs_together_or_falls_apart,
        a_ceiling_below_its_floor,
        too_many_courses_name_their_key,
        openings_that_overlap_take_what_both_take,
        doors_and_fireplaces_split_courses_and_stoves_do_not,
        sides_that_lean_or_step_end_courses,
        a_lap_hides_part_of_each_plank,
        a_list_of_widths_repeats_both_ways,
        a_corner_takes_or_gives_what_its_joint_says,
        measured_edges_move_the_courses_beyond_on_their_face,
        measured_from_the_lowest_up,
        measured_below_the_ceiling,
        edges_that_can_hardly_be_meant,
        measured_edges_that_overlap_are_told,
        a_start_far_off_the_wall_still_gives_its_courses,
        too_many_courses_are_refused,
        the_largest_wall_overflows_nothing,
        a_wall_without_room_for_a_course_is_told,
    };
    return RUN(tests);
}
