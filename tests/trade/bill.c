/*
 * The bill's arithmetic against published examples: Navy 6-3, Army EN5155 p. 1-28, NAVEDTRA
 * 14044 (board feet); WWPA, Table 4 (coverage factors); PS 20-20 (nominal sizes); bead lengths are worked from 231
 * cubic inches a gallon.
 */
#include "support/test.h"

#include "support/plain.h"
#include "trade/bill.h"
#include "trade/nominal.h"
#include "trade/penny.h"

#include <stdlib.h>
#include <string.h>

/* 2 x 4 in, 14 ft: 9 1/3 (Navy 6-3); 8 of 1 x 4 in, 14 ft: 37 1/3; 1 x 10 in, 10 ft: 8 4/12 (Army EN5155, p. 1-28); a
 * board foot is 1 ft of 1 by 12 in, 144 cubic inches (NAVEDTRA 14044). */
START_TEST(board_feet_are_those_published)
{
    assert_near(bill_board_feet(INCHES(2), INCHES(4), FEET(14)), 9333333, 1);      /* 9 1/3 */
    assert_near(bill_board_feet(INCHES(1), INCHES(4), FEET(14)) * 8, 37333333, 8); /* 37 1/3 */
    assert_near(bill_board_feet(INCHES(1), INCHES(10), FEET(10)), 8333333, 1);     /* 8 4/12 */
    assert_near(bill_board_feet(INCHES(1), INCHES(7), FEET(33)), 19250000, 1);     /* 3 x 6 5/12 */
    assert_near(bill_board_feet(INCHES(1), INCHES(12), FEET(1)), 1000000, 0);
    assert_int_equal(bill_cubic_metres(LENGTH_METRE, LENGTH_METRE, LENGTH_METRE), 1000000);
    assert_int_equal(bill_cubic_metres(20 * LENGTH_MM, 100 * LENGTH_MM, 3 * LENGTH_METRE), 6000);
    bill_board_feet(LENGTH_MOST / 1000, LENGTH_MOST / 1000, LENGTH_MOST); /* does not run over */
}
END_TEST

/* Lineal feet for each square foot as WWPA, Table 4 prints them, to two decimals, half up: bevel, rabbeted, tongued and
 * log patterns by their exposed face. */
START_TEST(feet_for_each_square_foot_are_those_printed)
{
    static const struct {
        Length face;
        int hundredths;
    } rows[] = {{INCHES(2.5), 480},   {INCHES(4.5), 267},    {INCHES(6.25), 192},  {INCHES(8.25), 145},
                {INCHES(3), 400},     {INCHES(5), 240},      {INCHES(6.75), 178},  {INCHES(8.75), 137},
                {INCHES(10.75), 112}, {INCHES(3.125), 384},  {INCHES(5.125), 234}, {INCHES(6.875), 175},
                {INCHES(8.875), 135}, {INCHES(4.9375), 243}, {INCHES(6.625), 181}, {INCHES(8.625), 139}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        assert_int_equal((bill_running_factor(rows[i].face) + 5000) / 10000, rows[i].hundredths);
}
END_TEST

/* Feet of round bead, worked: 10 fl oz at 1/8, 3/16, 1/4, 3/8, 1/2 in; 28 fl oz at 1/4 and 3/8 in. */
START_TEST(feet_of_bead_are_as_worked)
{
    static const struct {
        int64_t ounces;
        Length bead;
        double feet;
    } rows[] = {{10000000, INCHES(0.125), 122.5}, {10000000, INCHES(0.1875), 54.5}, {10000000, INCHES(0.25), 30.6},
                {10000000, INCHES(0.375), 13.6},  {10000000, INCHES(0.5), 7.7},     {28000000, INCHES(0.25), 85.8},
                {28000000, INCHES(0.375), 38.1},  {10100000, INCHES(0.25), 30.9},   {29000000, INCHES(0.25), 88.8}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        assert_near(bill_bead_length(rows[i].ounces, true, rows[i].bead), (Length)(rows[i].feet * LENGTH_FOOT),
                    LENGTH_FOOT / 18);
    /* 300 ml at 6 mm: 300 / (0.2827 cm2) = 1061 cm */
    assert_near(bill_bead_length(300000000, false, 6 * LENGTH_MM), 10610 * LENGTH_MM, LENGTH_MM);
}
END_TEST

/* One face of 10 ft by 10 ft, net, ten planks opened out of twelve; a stud every 16 in. */
static Bench bill_bench(Plan *plan)
{
    Bench bench = bench_new(FEET(10), 0, FEET(10), INCHES(2.75), SIXTEENTH);
    Wall *wall = bench.wall;
    FaceLayout *face = &bench.layout->faces[0];
    wall->planks.thickness = INCHES(0.5);
    wall->faces.at[0].studs.given = true;
    face->area = (Wide)FEET(10) * FEET(10);
    bench.layout->course_total = 5;
    for (int i = 1; i <= 6; i++)
        *arena_push(bench.arena, &face->studs) = INCHES(16) * i;
    *arena_push(bench.arena, &wall->stock) = (Stock){.length = FEET(5), .count = 12};
    face->course_count = 5;
    face->courses = arena_array(bench.arena, Course, 5);
    *plan = (Plan){.board_count = 12, .piece_count = 10, .length_used = FEET(50)};
    plan->boards = arena_array(bench.arena, BoardUse, 12);
    plan->pieces = arena_array(bench.arena, Piece, 10);
    for (int i = 0; i < 5; i++) {
        Slab *slab = arena_one(bench.arena, Slab);
        *slab = (Slab){.right = FEET(10), .parts = arena_one(bench.arena, Part), .part_count = 1};
        slab->parts[0] = (Part){.top_left = INCHES(2.75), .top_right = INCHES(2.75)};
        face->courses[i].slabs = slab;
        face->courses[i].slab_count = 1;
    }
    *arena_push(bench.arena, &wall->faces.at[0].floor) = (Mark){0, 0};
    *arena_push(bench.arena, &wall->faces.at[0].ceiling) = (Mark){0, FEET(10)};
    for (int i = 0; i < 10; i++) {
        plan->boards[i].count = 1;
        plan->pieces[i] = (Piece){.course = i / 2, .left = i % 2 ? FEET(5) : 0, .right = i % 2 ? FEET(10) : FEET(5)};
    }
    return bench;
}

static const BillLine *line_with(const BillLines *lines, const char *words)
{
    for (int i = 0; i < lines->count; i++)
        if (strstr(lines->at[i].what, words))
            return &lines->at[i];
    return NULL;
}

static int64_t amount_of(const BillLines *lines, const char *words)
{
    const BillLine *line = line_with(lines, words);
    if (!line)
        FAIL("no line says \"%s\"", words);
    return line->amount;
}

START_TEST(the_bill_of_one_face_adds_up)
{
    Plan plan;
    Bench bench = bill_bench(&plan);
    BillLines lines = bill_lines(bench.arena, bench.layout, &plan);
    assert_int_equal(amount_of(&lines, "net area"), 100000000);
    assert_int_equal(amount_of(&lines, "courses"), 5000000);
    assert_int_equal(amount_of(&lines, "boards 60 in long"), 10000000);
    assert_holds(line_with(&lines, "boards 60 in long")->what, "(12 on hand)");
    assert_int_equal(amount_of(&lines, "boards in all, with spare (12 on hand)"), 11000000); /* 10 and one to spare */
    assert_int_equal(amount_of(&lines, "running length"), 55000000);
    assert_near(amount_of(&lines, "coverage factor"), 480000000, 100); /* 100 x 12 / 2 3/4 x 1.1 */
    assert_near(amount_of(&lines, "by dressed width"), 12604167, 10);  /* 10 x 1 x 2 3/4 x 60 / 144 x 1.1 */
    /* 60 in cross studs at 16, 32, 48; the other half those at 64, 80, 96: 3 each, 30 in all and 10 % */
    assert_int_equal(amount_of(&lines, "fasteners"), 33000000);
    assert_int_equal(amount_of(&lines, "adhesive bead"), 55000000); /* 50 ft and 10 % */
    assert_int_equal(amount_of(&lines, "cartridges"), 2000000);     /* at 30.6 ft each */
    /* 1/2 in is sold as 5/8, 2 3/4 as 4 in (PS 20): 10 x 1 x 4 x 60 / 144 x 1.1 */
    assert_near(amount_of(&lines, "by nominal size"), 18333333, 10);
    assert_holds(line_with(&lines, "by nominal size")->assumes, "sold as 5/8 in by 4 in");
    assert_int_equal(amount_of(&lines, "end sealer"), 20000000);
    assert_int_equal(amount_of(&lines, "finish"), 500000); /* 100 sq ft twice at 400 a gallon */
    assert_int_equal(amount_of(&lines, "spacers"), 4000000);
    assert_null(line_with(&lines, "backing"));
    assert_null(line_with(&lines, "thinner"));
    for (int i = 0; i < lines.count; i++) {
        assert_true(i == 0 || lines.at[i].group >= lines.at[i - 1].group);
        assert_true(lines.at[i].assumes[0] == '\0' || lines.at[i].source[0] != '\0');
    }
    arena_free(bench.arena);
}
END_TEST

/* A pile of uneven boards: 12 of 5 ft, then odd ones of which the plan opens all but one. The spare is 10 % of the 15
 * that are opened, rounded up once: 17. */
START_TEST(a_spare_of_uneven_boards_is_rounded_up_once)
{
    Plan plan;
    Bench bench = bill_bench(&plan);
    const double odd[] = {52, 61.5, 47, 70.25, 52, 80};
    for (int i = 0; i < 6; i++)
        *arena_push(bench.arena, &bench.wall->stock) =
            (Stock){.length = INCHES(odd[i]), .count = 1, .width_given = i == 5, .width = INCHES(3.5)};
    BoardUse *boards = arena_array(bench.arena, BoardUse, 18);
    for (int i = 0; i < 18; i++)
        boards[i].count = i < 10 || (i >= 12 && i != 13);
    plan.boards = boards;
    plan.board_count = 18;
    BillLines lines = bill_lines(bench.arena, bench.layout, &plan);
    /* three odd lengths are opened at 2 3/4 in: a line each */
    assert_int_equal(amount_of(&lines, "boards 52 in long, 2 3/4 in wide (2 on hand)"), 2000000);
    assert_int_equal(amount_of(&lines, "board 47 in long, 2 3/4 in wide (1 on hand)"), 1000000);
    assert_int_equal(amount_of(&lines, "board 80 in long, 3 1/2 in wide (1 on hand)"), 1000000);
    assert_null(line_with(&lines, "61 1/2"));
    assert_int_equal(amount_of(&lines, "boards in all, with spare (18 on hand)"), 17000000);
    /* with the fourth they share one, in the place of the first of them */
    boards[13].count = 1;
    lines = bill_lines(bench.arena, bench.layout, &plan);
    assert_int_equal(amount_of(&lines, "boards of odd lengths, 47 in to 70 1/4 in long, 2 3/4 in wide (5 on hand)"),
                     5000000);
    assert_null(line_with(&lines, "boards 52 in long"));
    assert_int_equal(amount_of(&lines, "boards 60 in long"), 10000000);
    assert_int_equal(amount_of(&lines, "board 80 in long"), 1000000);
    assert_true(line_with(&lines, "boards 60 in long") < line_with(&lines, "boards of odd"));
    assert_true(line_with(&lines, "boards of odd") < line_with(&lines, "board 80 in long"));
    assert_int_equal(amount_of(&lines, "boards in all, with spare (18 on hand)"), 18000000); /* 16 x 1.1 = 17.6 */
    arena_free(bench.arena);
}
END_TEST

/* Every assumption can be changed in the file. Magazine example (common practice): 1,800 sq ft at 450 sq ft a gallon
 * take 4 gallons, at 500 3.6. */
START_TEST(every_assumption_can_be_changed)
{
    Plan plan;
    Bench bench = bill_bench(&plan);
    Wall *wall = bench.wall;
    bench.layout->faces[0].area = (Wide)FEET(40) * FEET(45);
    wall->bill = (Bill){.given = true,
                        .spare = {true, 0},
                        .fasteners = {true, 2000},
                        .glue_given = true,
                        .glue = GLUE_STUDS,
                        .bead = {true, INCHES(0.375)},
                        .cartridge = {true, 28000},
                        .coats = {true, 1000},
                        .coverage = {true, 450000},
                        .thinning = {true, 10000},
                        .nominal = {true, INCHES(2)},
                        .sheet = {true, FEET(5), FEET(5)}};
    wall->faces.at[0].backing = INCHES(0.25);
    BillLines lines = bill_lines(bench.arena, bench.layout, &plan);
    assert_int_equal(amount_of(&lines, "boards in all"), 10000000);
    assert_int_equal(amount_of(&lines, "fasteners"), 60000000);
    assert_int_equal(amount_of(&lines, "adhesive bead"), 6875000);
    assert_int_equal(amount_of(&lines, "finish"), 4000000);
    assert_int_equal(amount_of(&lines, "thinner"), 400000);
    assert_near(amount_of(&lines, "by dressed width"), 22916667, 10);
    assert_int_equal(amount_of(&lines, "backing"), 4000000); /* 100 sq ft of bare wall, 25 a sheet */
    assert_string_equal(line_with(&lines, "finish")->source, "the wall file");
    wall->bill.coverage.thousandths = 500000;
    wall->bill.glue = GLUE_NONE;
    lines = bill_lines(bench.arena, bench.layout, &plan);
    assert_int_equal(amount_of(&lines, "finish"), 3600000);
    assert_null(line_with(&lines, "adhesive"));
    wall->bill.coats.thousandths = 0;
    lines = bill_lines(bench.arena, bench.layout, &plan);
    assert_null(line_with(&lines, "finish"));
    arena_free(bench.arena);
}
END_TEST

/* PS 20-20, boards, dry: nominal and minimum dressed sizes. */
START_TEST(nominal_sizes_are_those_of_ps_20)
{
    static const struct {
        double nominal, dressed;
    } widths[] = {{2, 1.5},  {3, 2.5},   {4, 3.5},    {5, 4.5},    {6, 5.5},    {7, 6.5},   {8, 7.25},
                  {9, 8.25}, {10, 9.25}, {11, 10.25}, {12, 11.25}, {14, 13.25}, {16, 15.25}},
      thicknesses[] = {{0.375, 0.3125}, {0.5, 0.4375}, {0.625, 0.5625}, {0.75, 0.625},
                       {1, 0.75},       {1.25, 1},     {1.5, 1.25}};
    for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
        assert_int_equal(nominal_width(INCHES(widths[i].dressed)), INCHES(widths[i].nominal));
        if (i > 0)
            assert_int_equal(nominal_width(INCHES(widths[i - 1].dressed) + 1), INCHES(widths[i].nominal));
    }
    for (size_t i = 0; i < sizeof thicknesses / sizeof *thicknesses; i++) {
        assert_int_equal(nominal_thickness(INCHES(thicknesses[i].dressed)), INCHES(thicknesses[i].nominal));
        if (i > 0)
            assert_int_equal(nominal_thickness(INCHES(thicknesses[i - 1].dressed) + 1), INCHES(thicknesses[i].nominal));
    }
    assert_int_equal(nominal_width(INCHES(15.5)), INCHES(16));
    assert_int_equal(nominal_width(INCHES(20.5)), INCHES(21));
    assert_int_equal(nominal_thickness(INCHES(1.625)), INCHES(1.75));
}
END_TEST

/* Penny sizes: 2d is 1 in, 60d 6 in (NAVEDTRA 14119, figure 3-50); those between as nail tables print them (common
 * practice). Half-inch planks on half-inch drywall and 3/4 in into the stud: 1 3/4 in, which is 5d. */
START_TEST(nails_have_their_penny_sizes)
{
    static const struct {
        int penny;
        double inches;
    } rows[] = {{2, 1},  {3, 1.25},  {4, 1.5},  {5, 1.75}, {6, 2},    {7, 2.25}, {8, 2.5},  {9, 2.75},
                {10, 3}, {12, 3.25}, {16, 3.5}, {20, 4},   {30, 4.5}, {40, 5},   {50, 5.5}, {60, 6}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        assert_int_equal(penny_of(INCHES(rows[i].inches)), rows[i].penny);
        assert_int_equal(penny_of(INCHES(rows[i].inches) + 1),
                         i + 1 < sizeof rows / sizeof *rows ? rows[i + 1].penny : 0);
    }
    Plan plan;
    Bench bench = bill_bench(&plan);
    bench.wall->fasteners = (Fasteners){.given = true, .drywall = INCHES(0.5)};
    BillLines lines = bill_lines(bench.arena, bench.layout, &plan);
    assert_holds(line_with(&lines, "fasteners")->what, "at least 1 3/4 in, 18 gauge, or 5d by hand");
    arena_free(bench.arena);
}
END_TEST

/* Common practice: two fasteners in each piece, though one stud or none is behind it; NAVEDTRA 14044, p. 4-5: one or
 * two on each stud. A joint on a stud is one place for adhesive. */
START_TEST(every_piece_gets_two_fasteners_at_least)
{
    Plan plan;
    Bench bench = bill_bench(&plan);
    bench.wall->bill.spare = (Number){true, 0};
    plan.piece_count = 3;
    plan.pieces[0] = (Piece){.right = INCHES(15)};                                       /* no stud */
    plan.pieces[1] = (Piece){.course = 1, .left = -INCHES(1), .right = INCHES(32)};      /* studs at 16, 32 */
    plan.pieces[2] = (Piece){.course = 1, .left = INCHES(32), .right = INCHES(32 + 40)}; /* 32, 48, 64 */
    BillLines lines = bill_lines(bench.arena, bench.layout, &plan);
    assert_int_equal(amount_of(&lines, "fasteners"), 7000000);
    assert_holds(line_with(&lines, "fasteners")->assumes, "two in each piece at least");
    assert_null(line_with(&lines, "with spare"));
    bench.wall->bill.glue_given = true;
    bench.wall->bill.glue = GLUE_STUDS;
    lines = bill_lines(bench.arena, bench.layout, &plan);
    assert_near(amount_of(&lines, "adhesive bead"), 916667, 1); /* four places of 2 3/4 in */
    const BillHolding how = bill_holding(bench.arena, bench.layout, &plan);
    assert_int_equal(how.count, 4);
    assert_holds(how.at[0], "two at the least");
    assert_holds(how.at[3],
                 "further than 16 in past its last stud gets adhesive or a backing strip. Here one end reaches");
    arena_free(bench.arena);
}
END_TEST

/* The sheets reach behind the reveals and to the bare floor: 8 ft by 10 ft less a window of 2 ft by 4 ft. */
START_TEST(backing_behind_open_reveals_is_counted)
{
    Plan plan;
    Bench bench = bill_bench(&plan);
    bench.wall->bill.spare = (Number){true, 0};
    bench.wall->faces.at[0].backing = INCHES(0.5);
    bench.wall->faces.at[0].ceiling.at[0].off = FEET(8);
    add_opening(&bench, "window", (Box){FEET(2), FEET(4), FEET(1), FEET(5)});
    bench.wall->bill.sheet = (BackingSheet){true, FEET(1), FEET(1)};
    BillLines lines = bill_lines(bench.arena, bench.layout, &plan);
    assert_int_equal(amount_of(&lines, "backing 1/2 in thick"), 72000000);
    bench.wall->planks.reveal = SIXTEENTH;
    bench.wall->bill.coverage = (Number){true, 72000};
    lines = bill_lines(bench.arena, bench.layout, &plan);
    assert_int_equal(amount_of(&lines, "dark paint"), 1000000);
    bench.wall->faces.at[0].floor.at[0].off = -FEET(1); /* 1 ft higher at the left end, even along */
    *arena_push(bench.arena, &bench.wall->faces.at[0].floor) = (Mark){FEET(10), FEET(1)};
    lines = bill_lines(bench.arena, bench.layout, &plan);
    assert_int_equal(amount_of(&lines, "backing 1/2 in thick"), 72000000);
    arena_free(bench.arena);
}
END_TEST

START_TEST(each_box_that_needs_one_gets_an_extender)
{
    Plan plan;
    Bench bench = bill_bench(&plan);
    for (int i = 0; i < 4; i++)
        add_opening(&bench, "box", (Box){INCHES(10 * i), INCHES(10 * i + 2), 0, INCHES(4)});
    Openings *openings = &bench.wall->faces.at[0].openings;
    for (int i = 0; i < 4; i++)
        openings->at[i].kind = OPENING_BOX;
    openings->at[1].front = INCHES(0.25);
    openings->at[3].front = INCHES(0.5); /* flush */
    Course *course = &bench.layout->faces[0].courses[0];
    course->cuts = arena_array(bench.arena, Cut, 4);
    for (int i = 0; i < 4; i++)
        course->cuts[course->cut_count++].opening = i;
    BillLines lines = bill_lines(bench.arena, bench.layout, &plan);
    assert_int_equal(amount_of(&lines, "box extenders, 1/2 in"), 2000000);
    assert_int_equal(amount_of(&lines, "box extender, 1/4 in"), 1000000);
    arena_free(bench.arena);
}
END_TEST

static void assert_shown(int64_t amount, int decimals, const char *expected)
{
    Arena *arena = arena_new();
    assert_string_equal(bill_amount(arena, &(BillLine){.amount = amount, .decimals = decimals}), expected);
    arena_free(arena);
}

START_TEST(amounts_are_shown_to_their_decimals)
{
    assert_shown(37333333, 1, "37.3");
    assert_shown(1950000, 1, "2.0");
    assert_shown(12000000, 0, "12");
    assert_shown(4100, 3, "0.004");
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        board_feet_are_those_published,
        feet_for_each_square_foot_are_those_printed,
        feet_of_bead_are_as_worked,
        the_bill_of_one_face_adds_up,
        a_spare_of_uneven_boards_is_rounded_up_once,
        nominal_sizes_are_those_of_ps_20,
        nails_have_their_penny_sizes,
        every_piece_gets_two_fasteners_at_least,
        backing_behind_open_reveals_is_counted,
        each_box_that_needs_one_gets_an_extender,
        amounts_are_shown_to_their_decimals,
        every_assumption_can_be_changed,
    };
    return RUN(tests);
}
