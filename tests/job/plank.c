/* Pieces measured at the bench, worked out by hand: a face 1000 mm wide, planks that show 100 mm, gaps of 10 mm. */
#include "job/plank.h"
#include "layout/made.h"

#include "job/measures.h"

#include <string.h>

/* With plain spaces where a length is held together; the text lives until the next call. */
static const char *words_plain(const char *text)
{
    static char plain[512];
    size_t length = 0;
    for (const char *c = text; *c != '\0' && length + 1 < sizeof plain; c++) {
        bool hard = strncmp(c, "\xc2\xa0", 2) == 0;
        plain[length++] = hard ? ' ' : *c;
        c += hard ? 1 : 0;
    }
    plain[length] = '\0';
    return plain;
}

typedef struct Bench {
    Made made;
    Face *face;
    const Layout *layout;
} Bench;

static Bench bench_new(Length lower, Length upper)
{
    Bench bench = {.made = made_new(UNITS_MM, MM(100), MM(10), 0)};
    bench.face = made_face(&bench.made, "north", MM(1000), MM(lower), MM(upper));
    return bench;
}

static Plank measure(Bench *bench, int64_t course, Length left, Length right)
{
    bench->layout = made_layout(&bench->made);
    return plank_measure(bench->made.arena, bench->layout, 0, made_course(bench->layout, 0, course), MM(left),
                         MM(right));
}

/* Hundredths of a millimetre are good enough to tell figures apart, and show what is wrong. */
#define assert_mm(length, expected) assert_int_equal((length) / (LENGTH_MM / 100), (expected)*100)

static void assert_end(const PlankEnd *end, Length lower, Length upper, Length height)
{
    assert_mm(end->lower, lower);
    assert_mm(end->upper, upper);
    assert_mm(end->height, height);
}

START_TEST(a_whole_plank_has_square_ends_and_no_cutouts)
{
    Bench bench = bench_new(-350, 350);
    bench.face->studs = (Studs){.given = true, .regular = true, .first = MM(100), .spacing = MM(400)};
    Plank plank = measure(&bench, 0, 100, 600);
    assert_int_equal(plank.shape, RIP_FULL);
    assert_mm(plank.length, 500);
    assert_int_equal(plank.width_count, 2);
    assert_mm(plank.widths[0].width, 100);
    assert_mm(plank.widths[1].at, 500);
    assert_false(plank.lower_cut || plank.upper_cut);
    assert_end(&plank.left, 0, 0, 100);
    assert_end(&plank.right, 0, 0, 100);
    assert_int_equal(plank.from, FROM_LOWER);
    assert_int_equal(plank.cut_count, 0);
    assert_int_equal(plank.stud_first, 0);
    assert_int_equal(plank.stud_count, 2); /* 100, at its very end, and 500 */
    arena_free(bench.made.arena);
}
END_TEST

/* Ripped off its lower edge, from 95 to 85 over the face: what is cut in it is measured from the upper edge at -10. */
START_TEST(a_taper_is_measured_from_its_straight_edge)
{
    Bench bench = bench_new(-350, 350);
    made_marks(&bench.made, &bench.face->floor, 2, (Length[]){0, MM(105), MM(1000), MM(95)});
    made_opening(&bench.made, bench.face, "outlet", MM(200), MM(-60), MM(100), MM(20));
    Plank plank = measure(&bench, -1, 100, 600);
    assert_int_equal(plank.shape, RIP_TAPER);
    assert_true(plank.lower_cut && !plank.upper_cut);
    assert_mm(plank.widths[0].width, 94);
    assert_mm(plank.widths[1].width, 89);
    assert_int_equal(plank.from, FROM_UPPER);
    assert_int_equal(plank.cut_count, 1);
    const PlankCut *cut = &plank.cuts[0];
    assert_int_equal(cut->shape, CUT_HOLE);
    assert_mm(cut->left, 100);
    assert_mm(cut->right, 200);
    assert_mm(cut->near, 30);
    assert_mm(cut->far, 50);
    assert_mm(cut->above, 30);
    assert_mm(cut->below, 42); /* at its right end, where the floor is at -102 */
    assert_false(cut->opens_lower || cut->opens_upper || cut->lap_only);
    arena_free(bench.made.arena);
}
END_TEST

/* Floor and ceiling both out of level, and no straight edge left: heights are from the line of the lower mark. */
START_TEST(without_a_straight_edge_the_mark_is_the_edge)
{
    Bench bench = bench_new(0, 0);
    made_marks(&bench.made, &bench.face->floor, 2, (Length[]){0, MM(-10), MM(1000), MM(-20)});
    made_marks(&bench.made, &bench.face->ceiling, 2, (Length[]){0, MM(90), MM(1000), MM(80)});
    made_opening(&bench.made, bench.face, "outlet", MM(200), MM(40), MM(100), MM(20));
    Plank plank = measure(&bench, 0, 0, 1000);
    assert_int_equal(plank.from, FROM_MARK);
    assert_true(plank.lower_cut && plank.upper_cut);
    assert_mm(plank.cuts[0].near, 40);
    assert_mm(plank.cuts[0].far, 60);
    arena_free(bench.made.arena);
}
END_TEST

/* A floor with one mark in the middle: the plank is scribed, with a break there; the break that an opening makes in the
 * layout is none. */
START_TEST(a_scribe_tells_its_breaks)
{
    Bench bench = bench_new(-350, 350);
    made_marks(&bench.made, &bench.face->floor, 3, (Length[]){0, MM(105), MM(400), MM(95), MM(1000), MM(101)});
    made_opening(&bench.made, bench.face, "outlet", MM(600), MM(-60), MM(100), MM(20));
    Plank plank = measure(&bench, -1, 100, 1000);
    assert_int_equal(plank.shape, RIP_SCRIBE);
    assert_int_equal(plank.width_count, 3);
    assert_mm(plank.widths[1].at, 300);
    assert_mm(plank.widths[1].width, 85);
    assert_mm(plank.widths[2].width, 91);
    assert_int_equal(measure(&bench, -1, 0, 400).shape, RIP_TAPER);
    arena_free(bench.made.arena);
}
END_TEST

/*
 * Under a ceiling that rises 1 in 2 course 0 begins with a slant 200 long:
 *
 *            _________
 *       ___/
 *     /______________
 *     0  100  200
 */
START_TEST(a_rake_gives_long_and_short_edges)
{
    Bench bench = bench_new(-350, 0);
    made_marks(&bench.made, &bench.face->ceiling, 2, (Length[]){0, 0, MM(1000), MM(500)});
    Plank plank = measure(&bench, 0, 0, 800);
    assert_int_equal(plank.shape, RIP_FULL);
    assert_end(&plank.left, 0, 200, 0);
    assert_end(&plank.right, 0, 0, 100);
    plank = measure(&bench, 0, 100, 800); /* a joint within the slant */
    assert_int_equal(plank.shape, RIP_FULL);
    assert_end(&plank.left, 0, 100, 50);
    plank = measure(&bench, 0, 50, 150); /* all of it under the slant: a taper with square ends */
    assert_int_equal(plank.shape, RIP_TAPER);
    assert_end(&plank.left, 0, 0, 25);
    assert_end(&plank.right, 0, 0, 75);
    assert_mm(plank.widths[0].width, 25);
    assert_mm(plank.widths[1].width, 75);
    plank = measure(&bench, 0, 300, 800);
    assert_int_equal(plank.shape, RIP_FULL);
    assert_end(&plank.left, 0, 0, 100);
    arena_free(bench.made.arena);
}
END_TEST

START_TEST(under_a_gable_both_ends_slant)
{
    Bench bench = bench_new(-350, 0);
    made_marks(&bench.made, &bench.face->ceiling, 3, (Length[]){0, MM(-150), MM(500), MM(100), MM(1000), MM(-150)});
    Plank plank = measure(&bench, 0, 300, 700);
    assert_int_equal(plank.width_count, 2);
    assert_end(&plank.left, 0, 200, 0);
    assert_end(&plank.right, 0, 200, 0);
    arena_free(bench.made.arena);
}
END_TEST

/* A side that leans in by 10 over the height of the course. */
START_TEST(a_leaning_side_slants_the_end)
{
    Bench bench = bench_new(-350, 350);
    made_marks(&bench.made, &bench.face->left, 2, (Length[]){0, 0, MM(100), MM(10)});
    made_marks(&bench.made, &bench.face->right, 2, (Length[]){0, MM(10), MM(100), 0});
    Plank plank = measure(&bench, 0, 0, 1000);
    assert_int_equal(plank.shape, RIP_FULL);
    assert_mm(plank.left.lower, 0);
    assert_mm(plank.left.upper, 10);
    assert_mm(plank.right.lower, 10);
    assert_mm(plank.right.upper, 0);
    arena_free(bench.made.arena);
}
END_TEST

static Bench lapped(Length ceiling)
{
    Bench bench = bench_new(-350, ceiling);
    bench.made.wall->planks.widths.at[0] = MM(120);
    bench.made.wall->planks.lap = MM(20);
    return bench;
}

START_TEST(the_lap_belongs_to_the_plank)
{
    Bench bench = lapped(350);
    Plank plank = measure(&bench, 0, 0, 1000);
    assert_int_equal(plank.shape, RIP_FULL);
    assert_mm(plank.widths[0].width, 120);
    assert_int_equal(plank.lap_count, 0);
    arena_free(bench.made.arena);

    bench = lapped(110); /* ten above the face: cuts ten of the lap */
    plank = measure(&bench, 0, 0, 1000);
    assert_int_equal(plank.shape, RIP_STRAIGHT);
    assert_mm(plank.widths[0].width, 110);
    assert_int_equal(plank.lap_count, 1);
    assert_mm(plank.laps[0].left, 0);
    assert_mm(plank.laps[0].right, 1000);
    arena_free(bench.made.arena);

    bench = lapped(90); /* cuts the face: no lap is left, and none is cut alone */
    plank = measure(&bench, 0, 0, 1000);
    assert_int_equal(plank.shape, RIP_STRAIGHT);
    assert_mm(plank.widths[0].width, 90);
    assert_int_equal(plank.lap_count, 0);
    arena_free(bench.made.arena);

    bench = lapped(0); /* from 110 to 90: the lap alone as far as the middle */
    made_marks(&bench.made, &bench.face->ceiling, 2, (Length[]){0, MM(110), MM(1000), MM(90)});
    plank = measure(&bench, 0, 200, 1000);
    assert_int_equal(plank.shape, RIP_TAPER);
    assert_mm(plank.widths[0].width, 106);
    assert_mm(plank.widths[1].width, 90);
    assert_int_equal(plank.lap_count, 1);
    assert_mm(plank.laps[0].left, 0);
    assert_mm(plank.laps[0].right, 300);
    arena_free(bench.made.arena);
}
END_TEST

START_TEST(cutouts_go_on_through_the_lap)
{
    Bench bench = lapped(350);
    made_opening(&bench.made, bench.face, "low", MM(100), MM(50), MM(50), MM(60));    /* 50 to 110 */
    made_opening(&bench.made, bench.face, "high", MM(300), MM(105), MM(50), MM(300)); /* 105 to 405 */
    made_opening(&bench.made, bench.face, "tall", MM(500), MM(-40), MM(50), MM(300));
    Plank plank = measure(&bench, 0, 0, 500);
    assert_int_equal(plank.cut_count, 2);
    assert_int_equal(plank.cuts[0].opening, 0);
    assert_int_equal(plank.cuts[0].shape, CUT_TOP); /* of the face */
    assert_false(plank.cuts[0].opens_upper);        /* ten of lap are left over it */
    assert_mm(plank.cuts[0].near, 50);
    assert_mm(plank.cuts[0].far, 110);
    assert_mm(plank.cuts[0].below, 50);
    assert_int_equal(plank.cuts[1].opening, 1);
    assert_true(plank.cuts[1].lap_only && plank.cuts[1].opens_upper);
    assert_mm(plank.cuts[1].near, 105);
    assert_mm(plank.cuts[1].far, 120);
    arena_free(bench.made.arena);
}
END_TEST

/* Course 1 was planned at 110 to 210; its upper edge hangs at 213, and nobody hung a plank of 103. */
START_TEST(a_measured_edge_makes_no_plank_wider)
{
    Bench bench = bench_new(-350, 350);
    *arena_push(bench.made.arena, &bench.made.wall->hung_edges) =
        (HungEdge){.face = "north", .course = 1, .is_top = true, .height = MM(213)};
    made_opening(&bench.made, bench.face, "outlet", MM(200), MM(150), MM(100), MM(20));
    Plank plank = measure(&bench, 1, 0, 1000);
    assert_int_equal(plank.shape, RIP_FULL);
    assert_mm(plank.widths[0].width, 100);
    assert_mm(plank.widths[1].width, 100);
    assert_mm(plank.cuts[0].near, 37); /* its lower edge is at 113, since its upper one was measured */
    assert_mm(plank.cuts[0].far, 57);
    assert_mm(plank.cuts[0].below, 37);
    assert_mm(plank.cuts[0].above, 43);
    assert_true(measures_full(made_course(bench.layout, 0, 1), &plank));
    assert_mm(measure(&bench, 2, 0, 1000).widths[0].width, 100);
    arena_free(bench.made.arena);
}
END_TEST

/* The same above a floor that cuts into the course from 500 on: the plank is whole up to where 100 are left of the
 * height. */
START_TEST(a_measured_edge_and_a_floor)
{
    Bench bench = bench_new(-350, 350);
    made_marks(&bench.made, &bench.face->floor, 3, (Length[]){0, MM(-110), MM(500), MM(-110), MM(1000), MM(-120)});
    *arena_push(bench.made.arena, &bench.made.wall->hung_edges) =
        (HungEdge){.face = "north", .course = 1, .is_top = true, .height = MM(213)};
    Plank plank = measure(&bench, 1, 0, 1000);
    assert_int_equal(plank.shape, RIP_SCRIBE);
    assert_int_equal(plank.width_count, 3);
    assert_mm(plank.widths[0].width, 100);
    assert_mm(plank.widths[1].at, 650);
    assert_mm(plank.widths[1].width, 100);
    assert_mm(plank.widths[2].width, 93);
    arena_free(bench.made.arena);
}
END_TEST

/* An edge measured low leaves less than the plank: what is not hung yet has to be ripped. */
START_TEST(a_measured_edge_can_ask_for_a_rip)
{
    Bench bench = bench_new(-350, 350);
    *arena_push(bench.made.arena, &bench.made.wall->hung_edges) =
        (HungEdge){.face = "north", .course = 1, .is_top = true, .height = MM(208)};
    Plank plank = measure(&bench, 1, 0, 1000);
    assert_int_equal(plank.shape, RIP_STRAIGHT);
    assert_string_equal(measures_rip(bench.made.arena, bench.made.wall, &plank), "straight, rip to 98");
    arena_free(bench.made.arena);
}
END_TEST

static const char *rip_of(Bench *bench, Length left, Length right)
{
    Plank plank = measure(bench, -1, left, right);
    return measures_rip(bench->made.arena, bench->made.wall, &plank);
}

/* Marked to 1 mm: a break 0.4 mm behind another is no other break on paper; a step stays one. */
START_TEST(breaks_nearer_than_a_marking_step_are_one)
{
    Bench bench = bench_new(-350, 350);
    made_marks(&bench.made, &bench.face->floor, 4,
               (Length[]){0, MM(105), MM(400), MM(95), MM(400) + MM(4) / 10, MM(95) + MM(1) / 100, MM(1000), MM(101)});
    assert_int_equal(measure(&bench, -1, 100, 1000).width_count, 4);
    assert_string_equal(words_plain(rip_of(&bench, 100, 1000)),
                        "scribe off the lower edge: width 93 at 0, 85 at 300, 91 at 900 from the left end");
    made_marks(&bench.made, &bench.face->floor, 4,
               (Length[]){0, MM(105), MM(400), MM(95), MM(400), MM(85), MM(1000), MM(91)});
    assert_string_equal(words_plain(rip_of(&bench, 100, 1000)), "scribe off the lower edge: width 93 at 0, 85 and then "
                                                                "75 at 300, 81 at 900 from the left end");
    /* a break right before the end is the end */
    made_marks(&bench.made, &bench.face->floor, 3,
               (Length[]){0, MM(105), MM(1000) - MM(4) / 10, MM(95), MM(1000), MM(95)});
    assert_string_equal(words_plain(rip_of(&bench, 0, 1000)),
                        "taper off the lower edge, 95 at the left to 85 at the right");
    made_marks(&bench.made, &bench.face->floor, 4,
               (Length[]){0, MM(105), MM(400), MM(95), MM(1000) - MM(4) / 10, MM(101), MM(1000), MM(101)});
    assert_string_equal(words_plain(rip_of(&bench, 0, 1000)),
                        "scribe off the lower edge: width 95 at 0, 85 at 400, 91 at 1000 from the left end");
    arena_free(bench.made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        a_whole_plank_has_square_ends_and_no_cutouts,
        a_taper_is_measured_from_its_straight_edge,
        without_a_straight_edge_the_mark_is_the_edge,
        a_scribe_tells_its_breaks,
        a_rake_gives_long_and_short_edges,
        under_a_gable_both_ends_slant,
        a_leaning_side_slants_the_end,
        the_lap_belongs_to_the_plank,
        cutouts_go_on_through_the_lap,
        a_measured_edge_makes_no_plank_wider,
        a_measured_edge_and_a_floor,
        a_measured_edge_can_ask_for_a_rip,
        breaks_nearer_than_a_marking_step_are_one,
    };
    return RUN(tests);
}
