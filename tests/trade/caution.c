/*
 * Cautions on a small wall whose layout is made by hand: one course of wood, one opening, a few pieces. Figures: IRC
 * R1001.11 exc. 4 (masonry fireplace), NFPA 211 (stove, pipe), NEC 314.20 and 300.4(A)(1), NAVEDTRA 14044 p. 4-5; the
 * bite of 3/4 in is common practice.
 */
#include "support/test.h"

#include "support/measures.h"
#include "trade/bill.h"
#include "trade/care.h"
#include "trade/caution.h"
#include "trade/caution_electric.h"
#include "trade/caution_fire.h"

#include <stdio.h>
#include <string.h>

typedef struct Bench {
    Arena *arena;
    Wall *wall;
    Layout *layout;
    Plan *plan;
    Slab *slab;
} Bench;

/* A face of 100 in with one course from y = 0 to 2 3/4 in, 1/2 in thick; one opening, which cuts it. */
static Bench bench_new(OpeningKind kind, Box box)
{
    Arena *arena = arena_new();
    Bench bench = {arena, wall_new(arena, UNITS_IN), arena_one(arena, Layout), arena_one(arena, Plan), NULL};
    Wall *wall = bench.wall;
    wall->round = LENGTH_INCH / 16;
    wall->planks.thickness = INCHES(0.5);
    *arena_push(arena, &wall->planks.widths) = INCHES(2.75);
    Face *face = arena_push(arena, &wall->faces);
    face->name = arena_text(arena, "north", 5);
    face->width = INCHES(100);
    face->studs.given = true;
    Opening *opening = arena_push(arena, &face->openings);
    opening->name = arena_text(arena, "it", 2);
    opening->kind = kind;
    Layout *layout = bench.layout;
    layout->wall = wall;
    layout->course_total = 1;
    layout->faces = arena_array(arena, FaceLayout, 1);
    FaceLayout *laid = &layout->faces[0];
    laid->openings = arena_array(arena, Box, 1);
    laid->openings[0] = box;
    laid->course_count = 1;
    laid->courses = arena_array(arena, Course, 1);
    Course *course = &laid->courses[0];
    course->top = INCHES(2.75);
    course->right = INCHES(100);
    course->cut_count = 1;
    course->cuts = arena_array(arena, Cut, 1);
    course->slab_count = 1;
    course->slabs = bench.slab = arena_array(arena, Slab, 1);
    bench.slab->right = INCHES(100);
    bench.slab->part_count = 1;
    bench.slab->parts = arena_array(arena, Part, 1);
    bench.slab->parts[0] = (Part){.top_left = INCHES(2.75), .top_right = INCHES(2.75)};
    return bench;
}

static Findings found(Bench *bench)
{
    Findings findings = {0};
    caution_findings(bench->arena, bench->layout, bench->plan, &findings);
    electric_findings(bench->arena, bench->layout, bench->plan, &findings);
    fire_findings(bench->arena, bench->layout, &findings);
    return findings;
}

/* The text of the only finding of a rule; NULL where there is none; fails where there are several. */
static const char *only(const Findings *findings, Rule rule)
{
    const char *text = NULL;
    for (int i = 0; i < findings->count; i++)
        if (findings->at[i].rule == rule) {
            assert_null(text);
            text = findings->at[i].text;
        }
    return text;
}

static void assert_never_safe(const Findings *findings)
{
    for (int i = 0; i < findings->count; i++) {
        assert_lacks(findings->at[i].text, "safe");
        assert_lacks(findings->at[i].text, "clear to");
    }
}

/* How a fireplace whose side stands `away` from the wood, with planks that stand `out` of the masonry, is told. */
static const char *fireplace(Length away, Length out, char *text, size_t size)
{
    Bench bench = bench_new(OPENING_FIREPLACE, (Box){INCHES(100) + away, INCHES(160), -INCHES(10), INCHES(30)});
    bench.wall->planks.thickness = out;
    Findings findings = found(&bench);
    assert_never_safe(&findings);
    const char *told = only(&findings, RULE_FIRE);
    snprintf(text, size, "%s", told ? told : "");
    arena_free(bench.arena);
    return text;
}

/* IRC R1001.11 exc. 4 (2009 text) and those worked from it: 6 in always; then p = d/8: 3/4 in exactly at 6 in, 1 in at
 * 8 in, 1 1/2 in at 12 in. It is told with its nearest wood and whom to ask, whatever the figures. */
START_TEST(wood_near_a_masonry_fireplace_is_told)
{
    char text[2048];
    assert_holds(fireplace(INCHES(6) - 1, INCHES(0.25), text, sizeof text),
                 "Wood (planks) on north comes within 5 15/16 in");
    assert_holds(fireplace(0, INCHES(0.25), text, sizeof text), "Wood (planks) on north comes right up to it");
    assert_holds(text, "local code");
    static const char *const breaches[] = {"comes ", "stands "};
    const struct {
        Length away, out;
    } met[] = {
        {INCHES(6), INCHES(0.75)}, {INCHES(8), INCHES(1)}, {INCHES(12), INCHES(1.5)}, {INCHES(12) + 1, INCHES(4)}};
    for (size_t i = 0; i < sizeof met / sizeof *met; i++) {
        fireplace(met[i].away, met[i].out, text, sizeof text);
        for (size_t j = 0; j < sizeof breaches / sizeof *breaches; j++)
            assert_null(strstr(text, breaches[j]));
        assert_holds(text, "Nearest wood to it: on north ");
        assert_holds(text, "building department");
        assert_holds(text, "manual");
    }
    assert_holds(fireplace(INCHES(6), INCHES(0.75) + 1, text, sizeof text), "1/8 in for each inch");
    assert_holds(fireplace(INCHES(8) - 1, INCHES(1), text, sizeof text), "stands 1 in out");
    assert_holds(fireplace(INCHES(12), INCHES(1.5) + 1, text, sizeof text), "stands 1 1/2 in out");
}
END_TEST

/* Backing counts as projection; distance is straight across the corner: 3 and 4 make 5. */
START_TEST(fireplace_across_a_corner)
{
    Bench bench =
        bench_new(OPENING_FIREPLACE, (Box){INCHES(106), INCHES(130), INCHES(10.75), INCHES(40)}); /* 6, 8: 10 */
    bench.wall->planks.thickness = INCHES(0.75);
    bench.wall->faces.at[0].backing = INCHES(0.5);
    Findings findings = found(&bench);
    assert_null(strstr(only(&findings, RULE_FIRE), "stands")); /* 1 1/4 in is 10 in / 8 */
    bench.wall->faces.at[0].backing++;
    findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "Wood (planks) on north, 10 in from it, stands 1 1/4 in out");
    arena_free(bench.arena);
}
END_TEST

START_TEST(grown_fireplace_counts_as_written)
{
    Bench bench = bench_new(OPENING_FIREPLACE, (Box){INCHES(105), INCHES(130), 0, INCHES(40)});
    bench.wall->faces.at[0].openings.at[0].clear = INCHES(1);
    Findings findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "on north 6 in (planks)"); /* 5 in and 1 in */
    arena_free(bench.arena);
}
END_TEST

/* A casing round the fireplace lies at the opening itself, however far the planks are kept; a strip along the ceiling
 * stands out by its own thickness more than the planks do. */
START_TEST(trim_is_wood_too)
{
    Bench bench = bench_new(OPENING_FIREPLACE, (Box){INCHES(40), INCHES(70), INCHES(20), INCHES(50)});
    Face *face = &bench.wall->faces.at[0];
    *arena_push(bench.arena, &face->floor) = (Mark){0, 0};
    *arena_push(bench.arena, &face->ceiling) = (Mark){0, INCHES(62)};
    Findings findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "on north 17 1/4 in (planks)");
    bench.wall->trim.given = true;
    TrimRun *run = arena_push(bench.arena, &bench.wall->trim.runs);
    *run = (TrimRun){.along = ALONG_CEILING, .width = INCHES(4), .thickness_given = true, .thickness = INCHES(0.5)};
    findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "on north 8 in (trim (north ceiling))");
    assert_null(strstr(only(&findings, RULE_FIRE), "stands")); /* 8 in from it, 1/2 and 1/2 in out: 8 in / 8 */
    run->thickness++;
    findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "Wood (trim (north ceiling)) on north, 8 in from it, stands 1 in out");
    run->width = INCHES(6) + 1;
    findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "Wood (trim (north ceiling)) on north comes within 5 15/16 in of it");
    run->width = INCHES(3);
    run->along = ALONG_OPENINGS;
    run->opening = arena_text(bench.arena, "it", 2);
    findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "Wood (trim (it head)) on north comes right up to it");
    assert_never_safe(&findings);
    bench.wall->trim.runs.count = 0; /* what was measured by hand hangs nobody knows where */
    const TrimPiece mantel = {.name = arena_text(bench.arena, "mantel", 6), .length = INCHES(60), .count = 1};
    *arena_push(bench.arena, &bench.wall->trim.pieces) = mantel;
    findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "by its length alone (mantel) is not counted: measure to it.");
    *arena_push(bench.arena, &bench.wall->trim.pieces) = mantel;
    findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "(mantel and one other) is not counted");
    arena_free(bench.arena);
}
END_TEST

/* NFPA 211: 36 in from a radiant stove that is not listed to wood without a shield. */
START_TEST(stove_is_always_told)
{
    Bench bench = bench_new(OPENING_STOVE, (Box){INCHES(40), INCHES(70), 0, INCHES(40)});
    Opening *stove = &bench.wall->faces.at[0].openings.at[0];
    Findings findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "manual and the local code");
    assert_holds(only(&findings, RULE_FIRE), "36 in");
    assert_holds(only(&findings, RULE_FIRE), "on north not known: measure it");
    stove->away_given = true;
    stove->away = INCHES(18);
    bench.wall->faces.at[0].backing = INCHES(0.25);
    findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "The planks reduce the 18 in from the bare wall to it to 17 1/4 in.");
    assert_holds(only(&findings, RULE_FIRE), "on north 17 1/4 in (planks)");
    stove->away = INCHES(0.5);
    findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "to nothing.");
    assert_never_safe(&findings);
    arena_free(bench.arena);
}
END_TEST

/* NFPA 211 figure for single-wall stovepipe: 18 in. A collar with planks cut 1/4 in around it. */
START_TEST(pipe_is_always_told)
{
    Bench bench = bench_new(OPENING_PIPE, (Box){INCHES(40), INCHES(50.5), -INCHES(4), INCHES(6)});
    bench.wall->faces.at[0].openings.at[0].clear = INCHES(0.25);
    bench.slab->right = INCHES(40);
    Findings findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "Nearest wood to it: on north 1/4 in (planks).");
    assert_holds(only(&findings, RULE_FIRE), "18 in to bare wood");
    assert_holds(only(&findings, RULE_FIRE), "measure from the pipe");
    bench.slab->right = INCHES(10); /* and when it is kept off as far as the figure says */
    findings = found(&bench);
    assert_holds(only(&findings, RULE_FIRE), "on north 30 1/4 in (planks)");
    assert_never_safe(&findings);
    arena_free(bench.arena);
}
END_TEST

/* NEC 314.20: flush with wood or standing out of it. Power off is told flush or not. */
START_TEST(a_box_behind_the_planks_is_told)
{
    Bench bench = bench_new(OPENING_BOX, (Box){INCHES(37), INCHES(39.25), -INCHES(1), INCHES(2.75)});
    Opening *box = &bench.wall->faces.at[0].openings.at[0];
    bench.wall->faces.at[0].backing = INCHES(0.25);
    Findings findings = found(&bench);
    assert_holds(only(&findings, RULE_BOX), "3/4 in behind");
    assert_holds(only(&findings, RULE_BOX), "Switch the power off and test");
    assert_holds(only(&findings, RULE_BOX), "never cover a box");
    assert_null(only(&findings, RULE_PLATE)); /* no plate written */
    box->front_given = true;
    box->front = INCHES(0.5);
    findings = found(&bench);
    assert_holds(only(&findings, RULE_BOX), "1/4 in behind");
    box->front = INCHES(0.75); /* flush */
    findings = found(&bench);
    assert_lacks(only(&findings, RULE_BOX), "extender");
    assert_holds(only(&findings, RULE_BOX), "Switch the power off and test");
    assert_holds(only(&findings, RULE_BOX), "licensed electrician");
    box->front = -INCHES(0.25);
    findings = found(&bench);
    assert_holds(only(&findings, RULE_BOX), "1 in behind");
    box->plate = (Plate){true, INCHES(2.25), INCHES(3.75)}; /* just hides it */
    findings = found(&bench);
    assert_null(only(&findings, RULE_PLATE));
    box->plate.height -= 1;
    findings = found(&bench);
    assert_holds(only(&findings, RULE_PLATE), "does not hide");
    bench.layout->faces[0].courses[0].cut_count = 0; /* no wood round it */
    findings = found(&bench);
    assert_null(only(&findings, RULE_BOX));
    assert_null(only(&findings, RULE_PLATE));
    arena_free(bench.arena);
}
END_TEST

/* ANSI/NEMA WD 6: a plate of one gang is 2 3/4 in wide and 4 1/2 in high (4.49). A cut as large is just hidden. */
START_TEST(a_plate_of_one_gang_hides_as_much_as_it_is_wide)
{
    for (int more = 0; more < 3; more++) {
        const Length high = more == 2 ? 2 : 0, wide = more == 1 ? 2 : 0;
        Bench bench = bench_new(OPENING_BOX, (Box){INCHES(37), INCHES(39.75) + wide, -INCHES(1), INCHES(3.5) + high});
        bench.wall->faces.at[0].openings.at[0].plate = (Plate){true, INCHES(2.75), INCHES(4.5)};
        const Findings findings = found(&bench);
        assert_int_equal(only(&findings, RULE_PLATE) != NULL, more > 0);
        arena_free(bench.arena);
    }
}
END_TEST

/* Planks 1/2 in thick on a backing of 1/4 in, round an inside corner, take the last 3/4 in before it; a plate 2 3/4 in
 * wide stands out 1/4 in beside its box. */
START_TEST(a_box_in_a_corner_that_planks_come_in_front_of_is_told)
{
    for (int left = 0; left < 2; left++)
        for (int plate = 0; plate < 2; plate++) {
            Bench bench = bench_new(OPENING_BOX, (Box){INCHES(37), INCHES(39.25), -INCHES(1), INCHES(2.75)});
            Wall *wall = bench.wall;
            Face *east = arena_push(bench.arena, &wall->faces);
            *east = (Face){.name = arena_text(bench.arena, "east", 4), .width = INCHES(50)};
            FaceLayout *laid = arena_array(bench.arena, FaceLayout, 2);
            laid[0] = laid[1] = bench.layout->faces[0];
            laid[1].openings = NULL;
            bench.layout->faces = laid;
            const int on = left ? 1 : 0; /* the box is on the face before or behind the corner */
            if (left) {
                wall->faces.at[1].openings = wall->faces.at[0].openings;
                wall->faces.at[0].openings = (Openings){0};
                laid[1].openings = laid[0].openings;
            }
            wall->faces.at[0].corner = (Corner){.kind = CORNER_INSIDE, .joint = CORNER_BUTT};
            wall->faces.at[1 - on].backing = INCHES(0.25);
            Opening *box = &wall->faces.at[on].openings.at[0];
            box->width = INCHES(2.25);
            box->plate = (Plate){plate == 1, INCHES(2.75), INCHES(4.5)};
            const Length out = INCHES(0.75) + (plate ? INCHES(0.25) : 0);
            box->left = left ? out : INCHES(100) - out - box->width;
            Findings findings = found(&bench);
            assert_lacks(only(&findings, RULE_BOX), "In the corner");
            box->left += left ? -1 : 1;
            findings = found(&bench);
            assert_holds(only(&findings, RULE_BOX), left ? "In the corner the planks of north come in front of it"
                                                         : "In the corner the planks of east come in front of it");
            assert_null(findings.at[0].lead);
            box->kind = OPENING_VENT;
            box->plate.given = false;
            box->left += left ? -INCHES(0.5) : INCHES(0.5);
            findings = found(&bench);
            assert_holds(only(&findings, RULE_RANGE), "so near the corner that the planks of");
            arena_free(bench.arena);
        }
}
END_TEST

/* A strip 3 in wide and 3/4 in thick along the floor at 0 lies over a box that begins 2 in up: 1/2 + 3/4 in. */
START_TEST(trim_over_openings)
{
    Bench bench = bench_new(OPENING_BOX, (Box){INCHES(37), INCHES(39.25), INCHES(2), INCHES(6)});
    Face *face = &bench.wall->faces.at[0];
    *arena_push(bench.arena, &face->floor) = (Mark){0, 0};
    *arena_push(bench.arena, &face->ceiling) = (Mark){0, INCHES(62)};
    *arena_push(bench.arena, &bench.wall->trim.runs) =
        (TrimRun){.along = ALONG_FLOOR, .width = INCHES(3), .thickness_given = true, .thickness = INCHES(0.75)};
    Findings findings = found(&bench);
    assert_holds(only(&findings, RULE_BOX), "1 1/4 in behind the face of the wood");
    assert_holds(only(&findings, RULE_BOX), "A strip of trim (north floor) lies over it");
    bench.layout->faces[0].courses[0].cut_count = 0; /* though no plank is cut for it */
    findings = found(&bench);
    assert_holds(only(&findings, RULE_BOX), "lies over it");
    BillLines lines = bill_lines(bench.arena, bench.layout, bench.plan);
    bool counted = false;
    for (int i = 0; i < lines.count; i++)
        counted |= strcmp(lines.at[i].what, "box extender, 1 1/4 in") == 0;
    assert_true(counted);
    bench.wall->trim.runs.at[0].width = INCHES(2); /* up to it */
    findings = found(&bench);
    assert_null(only(&findings, RULE_BOX));
    bench.wall->trim.runs.at[0].width = INCHES(2) + 2;
    findings = found(&bench);
    assert_non_null(only(&findings, RULE_BOX));
    face->openings.at[0].kind = OPENING_VENT; /* any other opening */
    findings = found(&bench);
    assert_holds(only(&findings, RULE_TRIM), "A strip of trim (north floor) lies over it.");
    arena_free(bench.arena);
}
END_TEST

/* Bites: common practice 3/4 in. NEC 300.4(A)(1): 1 1/4 in. The wire is told for each face, whatever the bite. */
START_TEST(fasteners_too_short_for_the_stud_are_told)
{
    Bench bench = bench_new(OPENING_WINDOW, (Box){0, 1, 0, 1});
    bench.wall->fasteners = (Fasteners){.given = true,
                                        .length_given = true,
                                        .length = INCHES(1.75),
                                        .drywall = INCHES(0.5)}; /* planks 1/2, drywall 1/2: bite 3/4 */
    Findings findings = found(&bench);
    assert_null(only(&findings, RULE_NAIL));
    assert_holds(only(&findings, RULE_WIRE), "reach 3/4 in into the studs; cables and pipes may lie nearer");
    assert_holds(only(&findings, RULE_WIRE), "licensed electrician");
    bench.wall->fasteners.length--;
    findings = found(&bench);
    assert_holds(only(&findings, RULE_NAIL), "into the stud at the least, here a fastener of 1 3/4 in");
    bench.wall->fasteners.length = INCHES(1);
    findings = found(&bench);
    assert_holds(only(&findings, RULE_NAIL), "do not reach the stud");
    assert_holds(only(&findings, RULE_WIRE), "end before the studs, but in a hollow");
    bench.wall->fasteners.length = INCHES(2.25); /* 1 1/4 in into the stud: not more */
    findings = found(&bench);
    assert_lacks(only(&findings, RULE_WIRE), "take shorter ones");
    bench.wall->fasteners.length++;
    findings = found(&bench);
    assert_holds(only(&findings, RULE_WIRE), "more than the 1 1/4 in behind which codes let cables run");
    bench.wall->faces.at[0].backing = 1; /* backing takes of the reach */
    findings = found(&bench);
    assert_lacks(only(&findings, RULE_WIRE), "take shorter ones");
    bench.wall->fasteners.drywall = 0;
    findings = found(&bench);
    assert_holds(only(&findings, RULE_WIRE), "drywall counted as none");
    bench.wall->fasteners = (Fasteners){.given = true, .drywall = INCHES(0.5)}; /* drywall alone */
    findings = found(&bench);
    assert_null(only(&findings, RULE_NAIL));
    assert_holds(only(&findings, RULE_WIRE), "No fastener length is entered");
    assert_lacks(only(&findings, RULE_WIRE), "counted as none");
    bench.wall->faces.at[0].studs.given = false;
    findings = found(&bench);
    assert_holds(only(&findings, RULE_WIRE), "No studs are known there");
    assert_never_safe(&findings);
    bench.layout->faces[0].course_count = 0; /* nothing is fastened */
    findings = found(&bench);
    assert_null(only(&findings, RULE_WIRE));
    *arena_push(bench.arena, &bench.wall->faces.at[0].floor) = (Mark){0, 0}; /* but a strip along the floor */
    *arena_push(bench.arena, &bench.wall->faces.at[0].ceiling) = (Mark){0, INCHES(62)};
    *arena_push(bench.arena, &bench.wall->trim.runs) = (TrimRun){.along = ALONG_FLOOR, .width = INCHES(3)};
    findings = found(&bench);
    assert_non_null(only(&findings, RULE_WIRE));
    arena_free(bench.arena);
}
END_TEST

START_TEST(what_the_wall_is)
{
    Bench bench = bench_new(OPENING_WINDOW, (Box){0, 1, 0, 1});
    bench.wall->faces.at[0].wall = FACE_MASONRY;
    bench.wall->faces.at[0].studs.given = false;
    bench.wall->fasteners = (Fasteners){.given = true, .length_given = true, .length = INCHES(0.75)};
    bench.plan->piece_count = 1;
    bench.plan->pieces = arena_array(bench.arena, Piece, 1);
    bench.plan->pieces[0] = (Piece){.number = 1, .right = INCHES(20)};
    Findings findings = found(&bench);
    assert_holds(only(&findings, RULE_ANCHOR), "The wall of north is masonry");
    assert_lacks(only(&findings, RULE_ANCHOR), "tud are");
    assert_lacks(only(&findings, RULE_ANCHOR), "Find them");
    assert_null(only(&findings, RULE_NAIL));
    assert_holds(only(&findings, RULE_WIRE), "chases of the masonry");
    bench.wall->faces.at[0].studs.given = true;
    findings = found(&bench);
    assert_holds(only(&findings, RULE_ANCHOR), "Studs are entered for it too");
    bench.wall->faces.at[0].wall = FACE_SOLID_WOOD;
    findings = found(&bench);
    assert_null(only(&findings, RULE_ANCHOR));
    assert_holds(only(&findings, RULE_NAIL), "into the wood behind at the least, here a fastener of 1 1/4 in");
    assert_holds(only(&findings, RULE_WIRE), "grooves or holes of the wood");
    arena_free(bench.arena);
}
END_TEST

/* The words of the piece's anchor finding, NULL where it has none. */
static const char *anchor_of(const Findings *findings, int piece)
{
    for (int i = 0; i < findings->count; i++)
        if (findings->at[i].rule == RULE_ANCHOR && findings->at[i].piece == piece)
            return findings->at[i].text;
    return NULL;
}

/* Studs at 16, 32 and 64 in; what each piece has behind it decides what is said. */
START_TEST(what_holds_a_piece_is_told)
{
    static const struct {
        double left, right;
        const char *says;
    } cases[] = {
        {17, 31, "no stud stands behind it"},
        {15.5, 20, "only stud stands less than 3/4 in from an end"},
        {15.25, 20, "one stud alone holds it"},
        {15.25, 32.75, NULL},
        {15.25, 32.5, "stands out more than 16 in"}, /* 1/2 in to the end: that one holds nothing */
        {16, 32, NULL},                              /* joints on studs */
        {0, 33, NULL},
        {15, 49, "stands out more than 16 in"},
        {15, 48, NULL},
    };
    enum { CASES = sizeof cases / sizeof *cases };
    Bench bench = bench_new(OPENING_WINDOW, (Box){0, 1, 0, 1});
    Plan *plan = bench.plan;
    LengthList *studs = &bench.layout->faces[0].studs;
    *arena_push(bench.arena, studs) = INCHES(16);
    *arena_push(bench.arena, studs) = INCHES(32);
    *arena_push(bench.arena, studs) = INCHES(64);
    bench.layout->faces[0].courses[0].segments = arena_array(bench.arena, Segment, 1);
    bench.layout->faces[0].courses[0].segments[0] = (Segment){.left = -1, .right = INCHES(100)};
    bench.layout->faces[0].courses[0].segment_count = 1;
    plan->piece_count = CASES;
    plan->pieces = arena_array(bench.arena, Piece, CASES);
    for (int i = 0; i < CASES; i++)
        plan->pieces[i] = (Piece){.number = i + 1, .left = INCHES(cases[i].left), .right = INCHES(cases[i].right)};
    Findings findings = found(&bench);
    for (int i = 0; i < CASES; i++) {
        const char *told = anchor_of(&findings, i + 1);
        if (cases[i].says == NULL)
            assert_null(told);
        else
            assert_holds(told, cases[i].says);
    }
    assert_holds(only(&findings, RULE_WIRE), "Behind one piece no stud stands: a fastener there goes into the hollow");
    bench.wall->faces.at[0].studs.given = false; /* told once for the face, not for each piece */
    findings = found(&bench);
    assert_holds(only(&findings, RULE_ANCHOR), "do not assume");
    arena_free(bench.arena);
}
END_TEST

START_TEST(general_care_is_always_told)
{
    Bench bench = bench_new(OPENING_WINDOW, (Box){0, 1, 0, 1});
    bench.layout->faces[0].courses[0].rip.least = INCHES(2.75);
    Findings findings = {0};
    care_findings(bench.arena, bench.layout, bench.plan, &findings);
    const int plain = findings.count;
    assert_true(plain >= 6);
    static const char *const each[] = {"lead",      "arsenic",       "metal detector", "respirator",
                                       "stickered", "rags",          "asbestos",       "creosote",
                                       "fumigated", "docks, fences", "hearing",        "the wall itself"};
    for (size_t i = 0; i < sizeof each / sizeof *each; i++) {
        int told = 0;
        for (int j = 0; j < findings.count; j++)
            told += strstr(findings.at[j].text, each[i]) != NULL;
        assert_int_equal(told, 1);
    }
    assert_never_safe(&findings);
    for (int j = 0; j < findings.count; j++) {
        const char *text = findings.at[j].text;
        /* 16 CFR 1303: lead paint banned for homes from February 27, 1978 */
        if (strncmp(text, "Old paint", 9) == 0)
            assert_holds(text, "in the United States before 1978; elsewhere other dates hold");
        /* EPA, 68 FR 17366: most home uses of CCA ended after December 30, 2003, other wood and uses did not: no date
         */
        if (strncmp(text, "Treated wood", 12) == 0) {
            assert_holds(text, "whatever its date");
            assert_lacks(text, "200");
        }
    }
    Rip *rip = &bench.layout->faces[0].courses[0].rip;
    rip->shape = RIP_TAPER;
    rip->least = rip->most = INCHES(2);
    bench.wall->faces.at[0].studs.regular = true;
    findings.count = 0;
    care_findings(bench.arena, bench.layout, bench.plan, &findings);
    assert_int_equal(findings.count, plain + 1); /* studs counted, not found */
    rip->least--;
    findings.count = 0;
    care_findings(bench.arena, bench.layout, bench.plan, &findings);
    assert_int_equal(findings.count, plain + 2); /* and a narrow rip */
    rip->shape = RIP_FULL;                       /* planks of that width are ripped too */
    findings.count = 0;
    care_findings(bench.arena, bench.layout, bench.plan, &findings);
    assert_int_equal(findings.count, plain + 2);
    rip->least = INCHES(2);
    TrimRun *run = arena_push(bench.arena, &bench.wall->trim.runs);
    run->width = INCHES(2) - 1; /* and strips of trim */
    findings.count = 0;
    care_findings(bench.arena, bench.layout, bench.plan, &findings);
    assert_int_equal(findings.count, plain + 2);
    run->width++;
    findings.count = 0;
    care_findings(bench.arena, bench.layout, bench.plan, &findings);
    assert_int_equal(findings.count, plain + 1);
    bench.plan->piece_count = 1;
    bench.plan->pieces = arena_array(bench.arena, Piece, 1);
    bench.plan->pieces[0].right = INCHES(4);
    findings.count = 0;
    care_findings(bench.arena, bench.layout, bench.plan, &findings);
    assert_int_equal(findings.count, plain + 1);
    bench.plan->pieces[0].right--; /* shorter than 4 in: common practice */
    findings.count = 0;
    care_findings(bench.arena, bench.layout, bench.plan, &findings);
    assert_int_equal(findings.count, plain + 2);
    bench.wall->faces.at[0].openings.at[0].kind = OPENING_OTHER;
    findings.count = 0;
    care_findings(bench.arena, bench.layout, bench.plan, &findings);
    assert_int_equal(findings.count, plain + 3);
    assert_holds(findings.at[0].text, "Heat: it may be or hide something hot.");
    for (int i = 0; i < findings.count; i++)
        assert_holds(findings.at[i].text, ": ");
    bench.layout->course_total = 0; /* nothing is cut */
    findings.count = 0;
    care_findings(bench.arena, bench.layout, bench.plan, &findings);
    assert_int_equal(findings.count, 0);
    arena_free(bench.arena);
}
END_TEST

/* Whether a kind of care is told, by the word that heads it. */
static bool cared(Bench *bench, const char *head)
{
    Findings findings = {0};
    bool told = false;
    care_findings(bench->arena, bench->layout, bench->plan, &findings);
    assert_never_safe(&findings);
    for (int i = 0; i < findings.count; i++)
        told = told || strncmp(findings.at[i].text, head, strlen(head)) == 0;
    return told;
}

/* Common practice: tapers go in a jig, cutouts to the jigsaw, a course that begins over 78 in above the floor needs a
 * ladder. */
START_TEST(care_follows_from_what_the_wall_asks_for)
{
    Bench bench = bench_new(OPENING_WINDOW, (Box){0, 1, 0, 1});
    Course *course = &bench.layout->faces[0].courses[0];
    course->rip = (Rip){.shape = RIP_FULL, .least = INCHES(2.75), .most = INCHES(2.75)};
    assert_true(cared(&bench, "Cutouts: "));
    course->cut_count = 0;
    assert_false(cared(&bench, "Cutouts: "));
    assert_false(cared(&bench, "Tapers: "));
    course->rip.shape = RIP_SCRIBE; /* along a line that no mark tells from a level one */
    assert_false(cared(&bench, "Tapers: "));
    course->rip.least = INCHES(2.5);
    assert_true(cared(&bench, "Tapers: "));
    *arena_push(bench.arena, &bench.wall->faces.at[0].floor) = (Mark){0, INCHES(40)};
    *arena_push(bench.arena, &bench.wall->faces.at[0].floor) = (Mark){INCHES(100), INCHES(78)};
    assert_false(cared(&bench, "Ladder: "));
    bench.wall->faces.at[0].floor.at[1].off++;
    assert_true(cared(&bench, "Ladder: "));
    arena_free(bench.arena);
}
END_TEST

/* A place is told as the wall is marked, however near to 0 it is: "under 1/16 in" is for sizes alone. A width of
 * 2134 nm is one. */
START_TEST(places_are_exact_and_small_sizes_are_under_a_mark)
{
    Bench bench = bench_new(OPENING_WINDOW, (Box){0, 1, 0, 1});
    bench.plan->piece_count = 2;
    bench.plan->pieces = arena_array(bench.arena, Piece, 2);
    bench.plan->pieces[0] = (Piece){.number = 1, .left = 2134, .right = INCHES(10)};
    bench.plan->pieces[1] = (Piece){.number = 2, .left = INCHES(10), .right = INCHES(10) + 2134};
    Findings findings = {0};
    caution_findings(bench.arena, bench.layout, bench.plan, &findings);
    assert_int_equal(findings.count, 2);
    assert_holds(findings.at[0].text, "Piece 1 (course 0 of north, 10 in from 0 in)");
    assert_string_equal(findings.at[0].item, "piece 1 (course 0, 10 in from 0 in)");
    assert_string_equal(findings.at[1].item, "piece 2 (course 0, under 1/16 in from 10 in)");
    assert_string_equal(findings.at[0].lead, findings.at[1].lead);
    arena_free(bench.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        wood_near_a_masonry_fireplace_is_told,
        fireplace_across_a_corner,
        trim_is_wood_too,
        stove_is_always_told,
        pipe_is_always_told,
        a_plate_of_one_gang_hides_as_much_as_it_is_wide,
        a_box_in_a_corner_that_planks_come_in_front_of_is_told,
        trim_over_openings,
        what_the_wall_is,
        grown_fireplace_counts_as_written,
        a_box_behind_the_planks_is_told,
        fasteners_too_short_for_the_stud_are_told,
        what_holds_a_piece_is_told,
        places_are_exact_and_small_sizes_are_under_a_mark,
        care_follows_from_what_the_wall_asks_for,
        general_care_is_always_told,
    };
    return RUN(tests);
}
