/*
 * Trim worked out from walls simple enough to be worked by hand: lengths at the long and the short point, tapers,
 * scribes, casings. An outside corner covered by two strips, each beveled to 45 degrees along one edge, its width told
 * to the long point: common practice.
 */
#include "support/test.h"

#include "support/plain.h"
#include "trade/trim_level.h"
#include "trade/trim_runs.h"
#include "trade/trim_slope.h"

#include <stdlib.h>
#include <string.h>

static void add_mark(Bench *bench, Marks *marks, Length at, Length off)
{
    *arena_push(bench->arena, marks) = (Mark){at, off};
}

/* One face 100 in wide, floor 40 in below and ceiling 53 in above the level line, planks 1/2 in thick. */
static Bench wall_new_plain(void)
{
    Bench bench = bench_new(INCHES(100), -INCHES(40), INCHES(53), INCHES(2.75), SIXTEENTH);
    bench.wall->planks.thickness = INCHES(0.5);
    add_mark(&bench, &bench.wall->faces.at[0].floor, 0, INCHES(40));
    add_mark(&bench, &bench.wall->faces.at[0].ceiling, 0, INCHES(53));
    return bench;
}

/* A second face like the first, round the corner. */
static void add_east(Bench *bench, Corner corner)
{
    Faces *faces = &bench->wall->faces;
    Face *east = arena_push(bench->arena, faces);
    *east = faces->at[0];
    east->name = arena_text(bench->arena, "east", 4);
    faces->at[0].corner = corner;
    FaceLayout *laid = arena_array(bench->arena, FaceLayout, 2);
    laid[0] = laid[1] = bench->layout->faces[0];
    bench->layout->faces = laid;
}

static void add_run(Bench *bench, TrimAlong along, Length width)
{
    *arena_push(bench->arena, &bench->wall->trim.runs) = (TrimRun){.along = along, .width = width};
}

static TrimStrips strips_of(Bench *bench, Findings *findings)
{
    return trim_strips(bench->arena, bench->layout, findings);
}

/* Out of level by 1/2 in: tapered from 1 1/2 to 2 in, its free edge level; a third mark off the line makes it a scribe.
 * A strip that stands ends at the free edge. */
START_TEST(ceiling_out_of_level)
{
    Bench bench = wall_new_plain();
    Marks *ceiling = &bench.wall->faces.at[0].ceiling;
    add_mark(&bench, ceiling, INCHES(100), INCHES(53.5));
    add_run(&bench, ALONG_EDGES, INCHES(0.75));
    add_run(&bench, ALONG_CEILING, INCHES(1.5));
    TrimStrips strips = strips_of(&bench, NULL);
    assert_int_equal(strips.count, 3);
    assert_int_equal(strips.at[0].run, 0); /* in the order of the runs */
    assert_int_equal(strips.at[0].long_point, INCHES(91.5));
    assert_int_equal(strips.at[1].long_point, INCHES(91.5));
    const TrimStrip *strip = &strips.at[2];
    assert_int_equal(strip->shape, STRIP_TAPER);
    assert_int_equal(strip->least, INCHES(1.5));
    assert_int_equal(strip->most, INCHES(2));
    assert_int_equal(strip->long_point, INCHES(100));
    assert_int_equal(strip->edge_from, INCHES(51.5));
    assert_int_equal(strip->edge_to, INCHES(51.5));
    assert_string_equal(strip->text, "rip 1 1/2 in to 2 in (taper); left end square; right end square");
    ceiling->at[1] = (Mark){INCHES(50), INCHES(53.25)};
    add_mark(&bench, ceiling, INCHES(100), INCHES(53));
    strips = strips_of(&bench, NULL);
    strip = &strips.at[2];
    assert_int_equal(strip->shape, STRIP_SCRIBE);
    assert_int_equal(strip->most, INCHES(1.75));
    ceiling->at[1].off = INCHES(53) + SIXTEENTH / 2 - 1; /* cannot be marked */
    strips = strips_of(&bench, NULL);
    assert_int_equal(strips.at[2].shape, STRIP_STRAIGHT);
    ceiling->at[1].off++; /* half a mark rounds to one, as every printed length does */
    strips = strips_of(&bench, NULL);
    assert_int_equal(strips.at[2].shape, STRIP_SCRIBE);
    arena_free(bench.arena);
}
END_TEST

/* Round a corner the free edges meet: the east face's ceiling is level, but 1/4 in higher, so its strip is 1/4 in
 * wider. Where they are too far apart each face has its own. */
START_TEST(free_edges_of_trim_meet_around_a_corner)
{
    Bench bench = wall_new_plain();
    add_east(&bench, (Corner){CORNER_OUTSIDE, CORNER_TRIM, THROUGH_LEFT, 0});
    Marks *ceiling = &bench.wall->faces.at[1].ceiling;
    *ceiling = (Marks){0};
    add_mark(&bench, ceiling, 0, INCHES(53.25));
    add_run(&bench, ALONG_CEILING, INCHES(1.5));
    add_run(&bench, ALONG_OUTSIDE, INCHES(2));
    TrimStrips strips = strips_of(&bench, NULL);
    assert_int_equal(strips.at[0].most, INCHES(1.5));
    assert_int_equal(strips.at[1].least, INCHES(1.75));
    assert_int_equal(strips.at[1].shape, STRIP_STRAIGHT);
    assert_int_equal(strips.at[1].edge_from, INCHES(51.5));
    assert_int_equal(strips.at[2].long_point, strips.at[3].long_point);
    ceiling->at[0].off = INCHES(54);
    strips = strips_of(&bench, NULL);
    assert_int_equal(strips.at[1].most, INCHES(1.5));
    assert_int_equal(strips.at[1].edge_from, INCHES(52.5));
    arena_free(bench.arena);
}
END_TEST

/* More out of level than half its width, it follows the slope: 40 along and 3 up; a rake is a strip of its own: 3,
 * 4, 5. Where they meet, each is mitered by half the angle between them. */
START_TEST(trim_follows_slopes_and_is_mitered_where_they_meet)
{
    Bench bench = wall_new_plain();
    Marks *ceiling = &bench.wall->faces.at[0].ceiling;
    add_mark(&bench, ceiling, INCHES(40), INCHES(56));
    add_mark(&bench, ceiling, INCHES(80), INCHES(86));
    add_run(&bench, ALONG_CEILING, INCHES(1.5));
    TrimStrips strips = strips_of(&bench, NULL);
    assert_int_equal(strips.count, 3);
    assert_int_equal(strips.at[0].shape, STRIP_STRAIGHT);
    assert_int_equal(strips.at[0].start, STRIP_PLUMB);
    assert_int_equal(strips.at[0].end, STRIP_MITER);
    assert_int_equal(strips.at[1].start, STRIP_MITER);
    assert_int_equal(strips.at[2].end, STRIP_SQUARE);
    /* 3 in 4 down to level: tan(d / 2) = 3 / (4 + 5), so that 1/2 in of 1 1/2 in is lost on either side */
    assert_int_equal(strips.at[1].end_shift, -INCHES(0.5));
    assert_int_equal(strips.at[2].start_shift, INCHES(0.5));
    assert_int_equal(strips.at[2].long_point, INCHES(20));
    assert_int_equal(strips.at[2].short_point, INCHES(19.5));
    assert_int_equal(strips.at[1].edge_to, INCHES(86) - INCHES(1.875)); /* 1 1/2 in over 4/5 */
    assert_holds(strips.at[2].text, "left end mitered to the next strip, 18.4 degrees off square with the upper edge");
    assert_int_equal(strips.at[0].long_point, slanted(INCHES(40), INCHES(3)) +
                                                  slope_tangent(INCHES(1.5), (Slope){40, 3}) + strips.at[0].end_shift);
    assert_int_equal(slanted(3, 4), 5);
    assert_int_equal(slanted(1, 1), 2);
    assert_int_equal(slanted(2, 2), 3); /* 2.83 */
    assert_int_equal(slanted(LENGTH_MOST, 0), LENGTH_MOST);
    assert_int_equal(slope_tangent(LENGTH_MOST, (Slope){1, LENGTH_MOST}), LENGTH_MOST);
    /* tan(22.5 degrees) = sqrt(2) - 1 = 0.41421356 */
    assert_int_equal(slope_miter(100000000, (Slope){1, 0}, (Slope){1, -1}), 41421357);
    assert_int_equal(slope_miter(INCHES(1), (Slope){LENGTH_MOST, 0}, (Slope){LENGTH_MOST, LENGTH_MOST}),
                     slope_miter(INCHES(1), (Slope){1, 0}, (Slope){1, 1}));
    arena_free(bench.arena);
}
END_TEST

/* A parallelogram is as long as its edge and width x tangent, and stands width over cosine (Euclid's geometry): 48 in
 * along at 45 degrees are 67.88 in of edge; a strip 3 in wide with plumb ends needs 70.88 in, 70 7/8 in marked. Both
 * sides of a ridge, along ceiling and floor. */
START_TEST(plumb_ends_make_a_strip_longer_than_its_edge)
{
    for (int upper = 0; upper < 2; upper++) {
        Bench bench = wall_new_plain();
        Face *face = &bench.wall->faces.at[0];
        face->width = INCHES(96);
        Marks *marks = upper ? &face->ceiling : &face->floor;
        *marks = (Marks){0};
        add_mark(&bench, marks, 0, INCHES(60));
        add_mark(&bench, marks, INCHES(48), INCHES(108));
        add_mark(&bench, marks, INCHES(96), INCHES(60));
        add_run(&bench, upper ? ALONG_CEILING : ALONG_FLOOR, INCHES(3));
        TrimStrips strips = strips_of(&bench, NULL);
        assert_int_equal(strips.count, 2);
        for (int i = 0; i < 2; i++) {
            const TrimStrip *strip = &strips.at[i];
            char shown[LENGTH_TEXT_MAX];
            length_show_unit(strip->long_point, UNITS_IN, SIXTEENTH, shown);
            assert_string_equal(shown, "70 7/8 in");
            length_show_unit(strip->short_point, UNITS_IN, SIXTEENTH, shown);
            assert_string_equal(shown, "67 7/8 in");
            /* never too short for its true length, and not a nanometre longer than it must be */
            const Wide edge = strip->long_point - INCHES(3);
            const Wide square = 2 * (Wide)INCHES(48) * INCHES(48);
            assert_true(edge * edge >= square && (edge - 1) * (edge - 1) < square);
            assert_holds(strip->text, "45 degrees off square");
            assert_holds(strip->text, i == 0 ? "left end plumb" : "right end plumb");
            /* the ridge: each side's miter is plumb by symmetry */
            assert_int_equal(i == 0 ? strip->end_shift : strip->start_shift,
                             i == 0 ? strip->start_shift : strip->end_shift);
            const Length limit = (upper ? 1 : -1) * (i == 0 ? INCHES(60) : INCHES(108));
            const Length upright = strip->edge_from - limit;
            const Wide high = llabs(upright); /* 3 in over the cosine of 45 degrees: 4.243 in */
            assert_true(high * high >= 2 * (Wide)INCHES(3) * INCHES(3));
            assert_true((high - 1) * (high - 1) < 2 * (Wide)INCHES(3) * INCHES(3));
        }
        const TrimPieces pieces = trim_pieces(bench.arena, bench.layout);
        assert_int_equal(pieces.at[0].length, strips.at[0].long_point);
        assert_holds(strips.at[0].text, upper ? "with the lower edge the longer; right end mitered"
                                              : "with the upper edge the longer; right end mitered");
        arena_free(bench.arena);
    }
}
END_TEST

/* Inside: the one runs to the planks of the other face, the other to the face of that strip. Planks 1/2 in, backing
 * 1/4 in on the second face. */
START_TEST(in_an_inside_corner_one_run_stops_at_the_other)
{
    Bench bench = wall_new_plain();
    add_east(&bench, (Corner){CORNER_INSIDE, CORNER_BUTT, THROUGH_LEFT, 0});
    bench.wall->faces.at[1].backing = INCHES(0.25);
    add_run(&bench, ALONG_FLOOR, INCHES(3));
    add_run(&bench, ALONG_INSIDE, INCHES(0.75));
    bench.wall->trim.runs.at[0].thickness_given = true;
    bench.wall->trim.runs.at[0].thickness = INCHES(0.625);
    TrimStrips strips = strips_of(&bench, NULL);
    assert_int_equal(strips.count, 3);
    assert_int_equal(strips.at[0].long_point, INCHES(99.25));
    assert_int_equal(strips.at[1].long_point, INCHES(100) - INCHES(0.5) - INCHES(0.625));
    assert_int_equal(strips.at[2].long_point, INCHES(90)); /* 40 + 53 less the strip along the floor */
    assert_string_equal(strips.at[2].name, "inside corner north and east");
    assert_false(strips.at[2].bevelled);
    arena_free(bench.arena);
}
END_TEST

/* Outside: strips along the wall meet in front of the strips of the other face: 100 + 1/2 (planks) + 1/2 (strip) to the
 * long point. */
START_TEST(runs_meet_at_an_outside_corner)
{
    Bench bench = wall_new_plain();
    Findings findings = {0};
    add_east(&bench, (Corner){CORNER_OUTSIDE, CORNER_TRIM, THROUGH_LEFT, 0});
    add_run(&bench, ALONG_CEILING, INCHES(2));
    add_run(&bench, ALONG_OUTSIDE, INCHES(1.25));
    TrimStrips strips = strips_of(&bench, &findings);
    assert_int_equal(strips.count, 4);
    for (int i = 0; i < 2; i++) {
        assert_int_equal(strips.at[i].long_point, INCHES(101));
        assert_int_equal(strips.at[i].short_point, INCHES(100.5));
        assert_int_equal(i == 0 ? strips.at[i].end : strips.at[i].start, STRIP_BEVEL);
        assert_int_equal(i == 0 ? strips.at[i].start : strips.at[i].end, STRIP_SQUARE);
        const TrimStrip *upright = &strips.at[2 + i];
        assert_true(upright->bevelled);
        assert_int_equal(upright->most, INCHES(1.25));
        assert_int_equal(upright->long_point, INCHES(91));
        assert_holds(upright->text, "rip 1 1/4 in to the long point, that edge beveled 45 degrees; lower end square");
    }
    assert_int_equal(findings.count, 0);
    bench.wall->faces.at[0].corner.gap = -42575328; /* 48 in x tan(2 degrees) narrower: 46 halve it */
    strips = strips_of(&bench, &findings);
    assert_holds(strips.at[0].text, "right end beveled 46 degrees");
    assert_holds(strips.at[1].text, "left end beveled 46 degrees");
    assert_holds(strips.at[2].text, "that edge beveled 46 degrees");
    assert_holds(strips.at[3].text, "that edge beveled 46 degrees");
    bench.wall->trim.runs.at[1].width = INCHES(1); /* as much as planks and strip stand out */
    strips_of(&bench, &findings);
    assert_int_equal(findings.count, 2);
    assert_int_equal(findings.at[0].rule, RULE_TRIM);
    assert_holds(findings.at[0].text, "does not reach the planks");
    arena_free(bench.arena);
}
END_TEST

static Opening *add_measured(Bench *bench, const char *name, OpeningKind kind, Box box, Length clear)
{
    add_opening(bench, name,
                (Box){box.left - clear, box.right + clear, box.bottom - clear, box.top + clear}); /* grown */
    Opening *opening = &bench->wall->faces.at[0].openings.at[bench->wall->faces.at[0].openings.count - 1];
    opening->kind = kind;
    opening->clear = clear;
    return opening;
}

START_TEST(casings_run_around_windows_and_doors)
{
    Bench bench = wall_new_plain();
    Findings findings = {0};
    add_measured(&bench, "loft window", OPENING_WINDOW, (Box){INCHES(60), INCHES(90), 0, INCHES(20)}, INCHES(0.125));
    Opening *door =
        add_measured(&bench, "dock door", OPENING_DOOR, (Box){INCHES(10), INCHES(40), -INCHES(4000), INCHES(38)}, 0);
    add_measured(&bench, "outlet", OPENING_BOX, (Box){INCHES(50), INCHES(52), 0, INCHES(4)}, 0);
    add_run(&bench, ALONG_OPENINGS, INCHES(2));
    add_run(&bench, ALONG_FLOOR, INCHES(3));
    TrimStrips strips = strips_of(&bench, &findings);
    assert_int_equal(findings.count, 0);
    assert_int_equal(strips.count, 4 + 3 + 2);
    static const struct {
        const char *name;
        Length inner, outer;
    } rows[] = {{"loft window head", INCHES(30), INCHES(34)},      {"loft window left leg", INCHES(20), INCHES(24)},
                {"loft window right leg", INCHES(20), INCHES(24)}, {"loft window sill", INCHES(30), INCHES(34)},
                {"dock door head", INCHES(30), INCHES(34)},        {"dock door left leg", INCHES(78), INCHES(80)},
                {"dock door right leg", INCHES(78), INCHES(80)}};
    for (int i = 0; i < 7; i++) {
        assert_string_equal(strips.at[i].name, rows[i].name);
        assert_int_equal(strips.at[i].short_point, rows[i].inner);
        assert_int_equal(strips.at[i].long_point, rows[i].outer);
    }
    assert_holds(strips.at[5].text, "lower end square; upper end mitered 45 degrees");
    /* the floor strips stop at the door's casing: 0 to 8, 42 to 100 */
    assert_int_equal(strips.at[7].long_point, INCHES(8));
    assert_int_equal(strips.at[8].long_point, INCHES(58));
    door->left = 0;
    bench.layout->faces[0].openings[1].left = INCHES(1); /* 1 in from the side */
    bench.wall->trim.runs.at[0].opening = arena_text(bench.arena, "dock door", 9);
    strips = strips_of(&bench, &findings);
    assert_int_equal(strips.count, 1); /* along the floor from 42 on */
    assert_int_equal(findings.count, 1);
    assert_holds(findings.at[0].text, "does not fit round dock door: the side of the face is in the way");
    bench.wall->trim.runs.at[0].opening = arena_text(bench.arena, "hatch", 5);
    findings.count = 0;
    strips_of(&bench, &findings);
    assert_int_equal(findings.count, 1);
    assert_holds(findings.at[0].text, "no opening has that name");
    arena_free(bench.arena);
}
END_TEST

START_TEST(pieces_asked_for_are_added_to_the_runs)
{
    Bench bench = wall_new_plain();
    *arena_push(bench.arena, &bench.wall->trim.pieces) =
        (TrimPiece){.name = arena_text(bench.arena, "shelf lip", 9), .length = INCHES(30), .count = 2};
    add_east(&bench, (Corner){CORNER_OUTSIDE, CORNER_TRIM, THROUGH_LEFT, 0});
    add_run(&bench, ALONG_OUTSIDE, INCHES(2));
    TrimPieces pieces = trim_pieces(bench.arena, bench.layout);
    assert_int_equal(pieces.count, 2);
    assert_string_equal(pieces.at[0].name, "shelf lip");
    assert_int_equal(pieces.at[0].count, 2);
    assert_string_equal(pieces.at[1].name, "outside corner north and east");
    assert_int_equal(pieces.at[1].count, 2); /* two strips, alike */
    assert_int_equal(pieces.at[1].length, INCHES(93));
    arena_free(bench.arena);
}
END_TEST

/* A side with a belly of 1/4 in: the strip along it is scribed by as much. */
START_TEST(trim_on_a_crooked_side_is_scribed)
{
    Bench bench = wall_new_plain();
    Marks *left = &bench.wall->faces.at[0].left;
    add_mark(&bench, left, -INCHES(40), 0);
    add_mark(&bench, left, 0, INCHES(0.25));
    add_mark(&bench, left, INCHES(40), 0);
    add_run(&bench, ALONG_EDGES, INCHES(0.75));
    TrimStrips strips = strips_of(&bench, NULL);
    assert_int_equal(strips.at[0].shape, STRIP_SCRIBE);
    assert_int_equal(strips.at[0].most, INCHES(1));
    assert_int_equal(strips.at[1].shape, STRIP_STRAIGHT);
    arena_free(bench.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        ceiling_out_of_level,
        trim_follows_slopes_and_is_mitered_where_they_meet,
        plumb_ends_make_a_strip_longer_than_its_edge,
        in_an_inside_corner_one_run_stops_at_the_other,
        runs_meet_at_an_outside_corner,
        casings_run_around_windows_and_doors,
        pieces_asked_for_are_added_to_the_runs,
        trim_on_a_crooked_side_is_scribed,
        free_edges_of_trim_meet_around_a_corner,
    };
    return RUN(tests);
}
