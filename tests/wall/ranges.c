/* The table of ranges of the wall file, row by row in both units: asked about from one nanometre beyond the first
 * limit, refused from one beyond the second, with the range in the words. */
#include "support/test.h"

#include "wall/check.h"
#include "wall/ranges.h"

#include <string.h>

#define IN LENGTH_INCH
#define MM LENGTH_MM

static Arena *arena;
static Wall *wall;

static char *text(const char *string)
{
    return arena_text(arena, string, strlen(string));
}

static Stock *add_stock(Length length, int count)
{
    Stock *stock = arena_push(arena, &wall->stock);
    *stock = (Stock){.label = text(""), .length = length, .count = count, .tone = text("")};
    return stock;
}

/* One face 4 m wide, 2 m high, planks of 100 mm; everything at ease. */
static void begin(Units units)
{
    wall = wall_new(arena, units);
    *arena_push(arena, &wall->planks.widths) = 100 * MM;
    wall->planks.thickness = 12 * MM;
    Face *face = arena_push(arena, &wall->faces);
    face->name = text("north");
    face->width = 4000 * MM;
    *arena_push(arena, &face->floor) = (Mark){0, 1000 * MM};
    *arena_push(arena, &face->ceiling) = (Mark){0, 1000 * MM};
    Opening *box = arena_push(arena, &face->openings);
    *box = (Opening){.name = text("desk outlet"), .left = 900 * MM, .width = 60 * MM, .height = 90 * MM};
    wall->fasteners = (Fasteners){.given = true, .length_given = true, .length = 50 * MM};
    wall->trim.given = wall->mill.given = wall->bill.given = true;
    *arena_push(arena, &wall->trim.stock) = (TrimStock){2000 * MM, 1};
    *arena_push(arena, &wall->trim.pieces) = (TrimPiece){text("sill"), 1000 * MM, 1};
    *arena_push(arena, &wall->trim.runs) = (TrimRun){
        .along = ALONG_FLOOR, .width = 50 * MM, .thickness_given = true, .thickness = 12 * MM, .opening = text("")};
    Rough *rough = arena_push(arena, &wall->rough);
    *rough = (Rough){
        .label = text(""), .tone = text(""), .width = 150 * MM, .thickness = 25 * MM, .length = 2000 * MM, .count = 1};
    add_stock(2000 * MM, 30);
}

static void set_up(void)
{
    arena = arena_new();
}

static void tear_down(void)
{
    arena_free(arena);
}

static int asked(void)
{
    Findings findings = {0};
    ranges_ask(arena, wall, &findings);
    for (int i = 0; i < findings.count; i++) {
        assert_int_equal(findings.at[i].rule, RULE_RANGE);
        assert_int_equal(findings.at[i].text[strlen(findings.at[i].text) - 1], '.');
    }
    return findings.count;
}

/* How many of what is asked hold the text. */
static int asked_of(const char *words)
{
    Findings findings = {0};
    int count = 0;
    ranges_ask(arena, wall, &findings);
    for (int i = 0; i < findings.count; i++)
        count += strstr(findings.at[i].text, words) != NULL;
    return count;
}

static const char *first_asked(void)
{
    Findings findings = {0};
    ranges_ask(arena, wall, &findings);
    assert_true(findings.count > 0);
    return findings.at[0].text;
}

/* The path of the first problem, "" where there is none. */
static const char *refused(const char **words)
{
    const Problems problems = wall_check(arena, wall);
    *words = problems.count > 0 ? problems.at[0].text : "";
    return problems.count > 0 ? problems.at[0].path : "";
}

static void set_kerf(Length value)
{
    wall->saw.kerf = value;
}
static void set_rip_kerf(Length value)
{
    wall->mill.kerf = (OwnLength){true, value};
}
static void set_width(Length value)
{
    wall->planks.widths.at[0] = value;
}
static void set_reveal(Length value)
{
    wall->planks.reveal = value;
}
static void set_length(Length value)
{
    add_stock(value, 1);
    wall->stock.at[0].length = value;
}
static void set_rough_length(Length value)
{
    wall->rough.at[0].length = value;
}
static void set_trim_length(Length value)
{
    wall->trim.stock.at[0].length = value;
}
static void set_piece_length(Length value)
{
    wall->trim.pieces.at[0].length = value;
}
static void set_board_width(Length value)
{
    wall->stock.at[0].width_given = true;
    wall->stock.at[0].width = value;
}
static void set_rough_width(Length value)
{
    wall->rough.at[0].width = value;
}
static void set_front(Length value)
{
    wall->faces.at[0].openings.at[0].front_given = true;
    wall->faces.at[0].openings.at[0].front = value;
}
static void set_back(Length value)
{
    set_front(-value);
}
static void set_proud(Length value)
{
    wall->faces.at[0].openings.at[0].proud_given = true;
    wall->faces.at[0].openings.at[0].proud = value;
}
static void set_thickness(Length value)
{
    wall->planks.thickness = value;
}
static void set_backing(Length value)
{
    wall->faces.at[0].backing = value;
}
static void set_fastener(Length value)
{
    wall->fasteners.length = value;
}
static void set_drywall(Length value)
{
    wall->fasteners.drywall = value;
}
static void set_run_width(Length value)
{
    wall->trim.runs.at[0].width = value;
}
static void set_edge(Length value)
{
    wall->mill.edge = value;
}
static void set_plane(Length value)
{
    wall->mill.plane = value;
}
static void set_keep(Length value)
{
    wall->mill.keep = value;
}
static void set_bead(Length value)
{
    wall->bill.bead = (OwnLength){true, value};
}
static void set_nominal(Length value)
{
    wall->bill.nominal = (OwnLength){true, value};
}

/* A published figure is that of the wall file's own table; "common practice" where the table has none. */
START_TEST(each_row_of_the_table)
{
    static const struct {
        void (*set)(Length value);
        const char *path;
        Length asked[2], refused[2]; /* from above these; inches, millimetres */
        const char *range[2];
    } rows[] = {
        {set_kerf, "saw.kerf", {IN / 4, 6 * MM}, {IN, 25 * MM}, {"0 in to 1 in", "0 mm to 25 mm"}},
        {set_rip_kerf, "mill.kerf", {IN / 4, 6 * MM}, {IN, 25 * MM}, {"0 in to 1 in", "0 mm to 25 mm"}},
        {set_width, "planks.width", {12 * IN, 300 * MM}, {48 * IN, 1200 * MM}, {"to 48 in", "to 1200 mm"}},
        {set_reveal, "planks.reveal", {IN / 2, 13 * MM}, {100 * MM - 1, 100 * MM - 1}, {"100 mm", "100 mm"}},
        {set_length, "stock[0].length", {288 * IN, 7500 * MM}, {1200 * IN, 30000 * MM}, {"to 1200 in", "to 30000 mm"}},
        {set_rough_length,
         "rough[0].length",
         {288 * IN, 7500 * MM},
         {1200 * IN, 30000 * MM},
         {"to 1200 in", "to 30000 mm"}},
        {set_trim_length,
         "trim.stock[0].length",
         {288 * IN, 7500 * MM},
         {1200 * IN, 30000 * MM},
         {"to 1200 in", "to 30000 mm"}},
        {set_piece_length,
         "trim.pieces[0].length",
         {288 * IN, 7500 * MM},
         {1200 * IN, 30000 * MM},
         {"to 1200 in", "to 30000 mm"}},
        {set_board_width, "stock[0].width", {24 * IN, 600 * MM}, {48 * IN, 1200 * MM}, {"to 48 in", "to 1200 mm"}},
        {set_rough_width, "rough[0].width", {24 * IN, 600 * MM}, {48 * IN, 1200 * MM}, {"to 48 in", "to 1200 mm"}},
        {set_front,
         "faces[0].openings[0].front",
         {4 * IN, 100 * MM},
         {24 * IN, 600 * MM},
         {"-24 in to 24 in", "-600 mm to 600 mm"}},
        {set_back,
         "faces[0].openings[0].front",
         {4 * IN, 100 * MM},
         {24 * IN, 600 * MM},
         {"-24 in to 24 in", "-600 mm to 600 mm"}},
        {set_proud, "faces[0].openings[0].proud", {4 * IN, 100 * MM}, {24 * IN, 600 * MM}, {"to 24 in", "to 600 mm"}},
        /* common practice */
        {set_thickness, "planks.thickness", {3 * IN, 75 * MM}, {12 * IN, 300 * MM}, {"to 12 in", "to 300 mm"}},
        {set_backing, "faces[0].backing", {4 * IN, 100 * MM}, {24 * IN, 600 * MM}, {"to 24 in", "to 600 mm"}},
        {set_fastener, "fasteners.length", {6 * IN, 150 * MM}, {24 * IN, 600 * MM}, {"to 24 in", "to 600 mm"}},
        {set_drywall, "fasteners.drywall", {2 * IN, 50 * MM}, {24 * IN, 600 * MM}, {"to 24 in", "to 600 mm"}},
        {set_run_width, "trim.runs[0].width", {12 * IN, 300 * MM}, {48 * IN, 1200 * MM}, {"to 48 in", "to 1200 mm"}},
        {set_edge, "mill.edge", {IN, 25 * MM}, {4 * IN, 100 * MM}, {"to 4 in", "to 100 mm"}},
        {set_plane, "mill.plane", {IN / 2, 13 * MM}, {4 * IN, 100 * MM}, {"to 4 in", "to 100 mm"}},
        {set_keep, "mill.keep", {6 * IN, 150 * MM}, {24 * IN, 600 * MM}, {"to 24 in", "to 600 mm"}},
        {set_bead, "bill.bead", {IN / 2, 13 * MM}, {2 * IN, 50 * MM}, {"1/32 in to 2 in", "1 mm to 50 mm"}},
        {set_nominal, "bill.nominal", {4 * IN, 100 * MM}, {12 * IN, 300 * MM}, {"to 12 in", "to 300 mm"}},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        for (int units = UNITS_IN; units <= UNITS_MM; units++) {
            const char *words;
            for (Length beyond = 0; beyond < 2; beyond++) {
                begin((Units)units);
                rows[i].set(rows[i].asked[units] + beyond);
                assert_string_equal(refused(&words), "");
                if ((asked() > 0) != (beyond > 0))
                    FAIL("row %d in units %d, %d beyond: asked %d times", (int)i, units, (int)beyond, asked());
                begin((Units)units);
                rows[i].set(rows[i].refused[units] + beyond);
                assert_string_equal(refused(&words), beyond > 0 ? rows[i].path : "");
                if (beyond > 0)
                    assert_holds(words, rows[i].range[units]);
                else
                    assert_true(asked() > 0);
            }
        }
}
END_TEST

START_TEST(studs_too_near)
{
    for (int units = UNITS_IN; units <= UNITS_MM; units++) {
        const Length rim = units == UNITS_IN ? 6 * IN : 150 * MM;
        const Length least = units == UNITS_IN ? IN : 25 * MM;
        const char *words;
        begin((Units)units);
        Studs *studs = &wall->faces.at[0].studs;
        *studs = (Studs){.given = true, .regular = true, .spacing = rim};
        assert_int_equal(asked(), 0);
        studs->spacing = rim - 1;
        assert_int_equal(asked(), 1);
        studs->spacing = least;
        assert_string_equal(refused(&words), "");
        studs->spacing = least - 1;
        assert_string_equal(refused(&words), "faces[0].studs.spacing");
        assert_holds(words, units == UNITS_IN ? "write 1 in or more" : "write 25 mm or more");
        *studs = (Studs){.given = true};
        *arena_push(arena, &studs->at) = 100 * MM;
        *arena_push(arena, &studs->at) = 100 * MM + rim;
        assert_int_equal(asked(), 0);
        studs->at.at[1]--;
        assert_int_equal(asked(), 1);
        assert_holds(first_asked(), "Two studs of north");
        studs->at.at[1] = 100 * MM + 1; /* doubled studs are one */
        assert_string_equal(refused(&words), "");
    }
}
END_TEST

/* 1,000 are taken, one more is not: 0, 25, ... 24975 mm are 1,000. */
START_TEST(studs_too_many)
{
    const char *words;
    begin(UNITS_MM);
    Face *face = &wall->faces.at[0];
    face->width = 24999 * MM;
    face->studs = (Studs){.given = true, .regular = true, .spacing = 25 * MM};
    assert_string_equal(refused(&words), "");
    face->width++;
    face->width = 25000 * MM;
    assert_string_equal(refused(&words), "faces[0].studs.spacing");
    assert_holds(words, "1000");
    face->studs = (Studs){.given = true};
    for (int i = 0; i < 1001; i++)
        *arena_push(arena, &face->studs.at) = i * MM;
    assert_string_equal(refused(&words), "faces[0].studs.at");
    face->studs.at.count--;
    assert_string_equal(refused(&words), "");
}
END_TEST

/* The median of 30 boards of 2 m and one of L is 2 m; of two boards it lies half way. */
START_TEST(a_board_ten_times_the_median)
{
    begin(UNITS_MM);
    wall->stock.at[0].length = 700 * MM;
    Stock *odd = add_stock(7000 * MM, 1);
    assert_int_equal(asked(), 0);
    odd = &wall->stock.at[1];
    odd->length++;
    assert_int_equal(asked(), 1);
    assert_holds(first_asked(), "ten times the median of 700 mm");
    wall->stock.at[0].count = 1; /* half way: 3850 */
    assert_int_equal(asked(), 0);
}
END_TEST

START_TEST(what_may_be_a_slip_always)
{
    const char *words;
    begin(UNITS_IN);
    add_stock(2000 * MM, 1)->label = text("A7");
    assert_int_equal(asked(), 0);
    wall->stock.at[1].count = 2; /* two boards, one label */
    assert_int_equal(asked(), 1);
    wall->stock.at[1].count = 1;
    add_stock(1500 * MM, 1)->label = text("A7");
    assert_int_equal(asked(), 1);
    assert_holds(first_asked(), "Two boards are labeled A7");
    wall->stock.at[2].label = text("A8");
    Face *face = &wall->faces.at[0];
    face->studs = (Studs){.given = true, .regular = true, .spacing = 16 * IN};
    face->wall = FACE_SOLID_WOOD;
    assert_holds(first_asked(), "north is solid wood");
    face->wall = FACE_STUDS;
    Opening *stove = &face->openings.at[0];
    stove->kind = OPENING_STOVE;
    assert_int_equal(asked(), 0);
    stove->left = 3940 * MM;
    assert_int_equal(asked(), 0);
    stove->left++;
    assert_holds(first_asked(), "desk outlet stands beyond north");
    stove->left = 0;
    stove->bottom = 1000 * MM; /* over the ceiling */
    assert_int_equal(asked(), 1);
    stove->bottom = -1090 * MM; /* under the floor */
    assert_int_equal(asked(), 1);
    stove->bottom++;
    assert_int_equal(asked(), 0);
    assert_string_equal(refused(&words), "");
}
END_TEST

START_TEST(numbers_of_the_bill)
{
    const char *words;
    begin(UNITS_IN);
    wall->bill.spare = (Number){true, 50000};
    wall->bill.coats = (Number){true, 6000};
    assert_int_equal(asked(), 0);
    wall->bill.spare.thousandths++;
    wall->bill.coats.thousandths++;
    assert_int_equal(asked(), 2);
    wall->bill.spare.thousandths = 1000001;
    assert_string_equal(refused(&words), "bill.spare");
    assert_holds(words, "0 to 1000");
    wall->bill.spare.thousandths = 0;
    wall->bill.coverage = (Number){true, 9999};
    assert_string_equal(refused(&words), "bill.coverage");
    assert_holds(words, "10 to 10000");
}
END_TEST

/* "A corner's gap over a fifth of the arm": of 4 ft 9.6 in, of 1.2 m 240 mm. */
START_TEST(a_corner_gap)
{
    for (int units = UNITS_IN; units <= UNITS_MM; units++) {
        const Length fifth = units == UNITS_IN ? 48 * IN / 5 : 240 * MM;
        const char *words;
        begin((Units)units);
        Face *next = arena_push(arena, &wall->faces);
        *next = wall->faces.at[0];
        next->name = text("east");
        next->openings = (Openings){0};
        Corner *corner = &wall->faces.at[0].corner;
        *corner = (Corner){.kind = CORNER_INSIDE, .joint = CORNER_BUTT, .gap = fifth};
        assert_string_equal(refused(&words), "");
        corner->gap = -fifth;
        assert_string_equal(refused(&words), "");
        corner->gap = -fifth - 1;
        assert_string_equal(refused(&words), "faces[0].corner.gap");
        assert_holds(words, units == UNITS_IN ? "9.6 in" : "240 mm");
    }
}
END_TEST

/* Courses of 100 mm from 0 up; the face from -1000 to 1000 mm, its left side leaning in 50 mm over the whole height. */
/* 1/8 in and 3 mm are common practice for what two readings may differ by. */
START_TEST(floors_and_ceilings_meet_round_a_corner)
{
    for (int i = 0; i < 2; i++) {
        const Length tape = i == 0 ? IN / 8 : 3 * MM;
        begin(i == 0 ? UNITS_IN : UNITS_MM);
        Face *east = arena_push(arena, &wall->faces);
        Face *north = &wall->faces.at[0];
        *east = (Face){.name = text("east"), .width = 2000 * MM};
        *arena_push(arena, &east->floor) = (Mark){0, 1000 * MM + tape + 1};
        *arena_push(arena, &east->ceiling) = (Mark){0, 1000 * MM - tape};
        assert_int_equal(asked_of("ceiling of north ends"), 0);
        assert_int_equal(asked_of("floor of north ends"), 0); /* they do not touch */
        north->corner = (Corner){.kind = CORNER_INSIDE, .joint = CORNER_BUTT};
        assert_int_equal(asked_of("ceiling of north ends"), 0);
        assert_int_equal(asked_of("higher than the floor of east begins, round their corner"), 1);
        east->ceiling.at[0].off--;
        assert_int_equal(asked_of("higher than the ceiling of east begins, round their corner"), 1);
        *arena_push(arena, &north->ceiling) = (Mark){4000 * MM, 1000 * MM - 3 * tape};
        assert_int_equal(asked_of("lower than the ceiling of east begins, round their corner"), 1);
    }
}
END_TEST

START_TEST(a_pin_off_its_course)
{
    static const struct {
        int course;
        Length at;
        bool is_on;
    } rows[] = {
        {0, 2000 * MM, true},     {9, 2000 * MM, true},    {10, 2000 * MM, false}, /* 1000 to 1100 */
        {-10, 2000 * MM, true},   {-11, 2000 * MM, false}, {100000, 1, false},     {-100000, 1, false},
        {9, 4000 * MM - 1, true}, {9, 4000 * MM, false},   {9, 0, false},          {9, 47500 * 1000 + 1, true},
        {9, 47500 * 1000, false}, /* at 900 mm the side leans in 47.5 mm, the least of that band */
        {-10, 1, true},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const char *words;
        begin(UNITS_MM);
        Face *face = &wall->faces.at[0];
        *arena_push(arena, &face->left) = (Mark){-1000 * MM, 0};
        *arena_push(arena, &face->left) = (Mark){1000 * MM, 50 * MM};
        *arena_push(arena, &wall->joints.pins) = (Pin){text("north"), rows[i].course, rows[i].at};
        assert_string_equal(refused(&words), rows[i].is_on ? "" : "joints.pins[0]");
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        each_row_of_the_table,     studs_too_near,      studs_too_many, a_board_ten_times_the_median,
        what_may_be_a_slip_always, numbers_of_the_bill, a_corner_gap,   floors_and_ceilings_meet_round_a_corner,
        a_pin_off_its_course,
    };
    return RUN_WITH(tests, set_up, tear_down);
}
