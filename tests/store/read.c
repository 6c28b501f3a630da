/* What a file means: every key and notation of datumrow(5), and that how it is written makes no difference. */
#include "support/with_arena.h"

#include "store/store.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define IN(sixteenths) ((Length)(sixteenths) * (LENGTH_INCH / 16))

static const Wall *read_bytes(const char *text, size_t length)
{
    Source out = {0};
    Errs errors = {0};
    if (!store_parse(arena, "wall.yaml", text, length, &out, &errors))
        FAIL("%d:%d: %s", errors.at[0].line, errors.at[0].column, errors.at[0].text);
    assert_int_equal(out.length, length);
    assert_memory_equal(out.text, text, length);
    return out.wall;
}

static const Wall *read_text(const char *text)
{
    return read_bytes(text, strlen(text));
}

/* All keys at once, in another order than the table's. */
static const char everything[] =
    "hung:\n"
    "- {face: north, course: 0, left: 0, right: 46, board: 3, offset: 1/4}\n"
    "- {face: north, course: 4, top: 15 7/16}\n"
    "- {board: 2, offset: 10, length: 41 1/2, state: lost}\n"
    "- {face: north, course: -2, left: 1, right: 40, board: 4, state: cut, plan: anew}\n"
    "- {face: east, course: -1, bottom: -3, plan: anew}\n"
    "datumrow: 1\n"
    "title: Boathouse reading wall\n"
    "round: 1/32\n"
    "planks:\n"
    "  width: [2 3/4, 3 1/2]\n"
    "  thickness: 1/2\n"
    "  reveal: 1/16\n"
    "  lap: 1/4\n"
    "  hang: reference\n"
    "  least: 3/4\n"
    "  leave: 1/8\n"
    "start: -2 1/4\n"
    "joints: {land: studs, stagger: 6, shortest: 10, closer: 1/4, spend: 2.5,\n"
    "  pins: [{face: north, course: 3, at: 62 1/4}], bars: [{face: east, course: -3, from: 30, to: 36}]}\n"
    "saw: {kerf: 1/8, square: 1/4}\n"
    "units: in\n" /* behind lengths that are in it */
    "faces:\n"
    "- name: north\n"
    "  width: 141 3/8\n"
    "  floor:\n"
    "  - {at: 0, down: 40 1/2}\n"
    "  - {at: 141 3/8, down: -1}\n"
    "  ceiling: [{at: 0, up: 53}]\n"
    "  left: [{up: -40, in: 0}, {up: 53, in: -1/8}]\n"
    "  right: [{up: -40, in: 1}]\n"
    "  margin: {floor: 1/4, ceiling: 1/8, left: 1, right: 2}\n"
    "  corner: {kind: inside, joint: butt, through: right, gap: -1/4}\n"
    "  wall: solid wood\n"
    "  backing: 3/8\n"
    "  studs: {first: 14 1/4, spacing: 16}\n"
    "  openings:\n"
    "  - {name: outlet, kind: box, left: 37, bottom: -27 1/2, width: 2 1/4, height: 3 3/4, clear: 1/16,\n"
    "     plate: {width: 2 3/4, height: 4 1/2}, front: -1/2}\n"
    "  - {name: stove, kind: stove, left: 60, bottom: floor, width: 20, top: 3, away: 18}\n"
    "  - {name: collar, kind: pipe, left: 90, above-floor: 13, width: 8, height: 8, proud: 5/8}\n"
    "- name: east\n"
    "  width: 50\n"
    "  floor: [{at: 0, down: 40}]\n"
    "  ceiling: [{at: 0, up: 50}]\n"
    "  studs: {at: [1, 17, 33]}\n"
    "stock:\n"
    "- {length: 52, count: 70, tone: grey}\n"
    "- {label: A7, length: 70 1/4, width: 3, avoid: [{from: 31, to: 34 1/2}, {from: 40, to: 41}],\n"
    "   show: [{at: 20, what: knot hole}, {at: 60, what: old bolt}], found: 1, gone: 5}\n"
    "fasteners: {length: 1 1/4, drywall: 1/2}\n"
    "trim:\n"
    "  stock: [{length: 96, count: 8}]\n"
    "  pieces: [{name: left corner, length: 92 1/4, count: 2}, {name: sill, length: 40}]\n"
    "wood:\n"
    "  species: Pine, eastern white\n"
    "  grain: quarter\n"
    "  hung: {temperature: 68 F, humidity: 45}\n"
    "  dry: {temperature: -0.5 C, humidity: 25.125}\n"
    "  damp: {temperature: 75.25 F, humidity: 65}\n";

START_TEST(every_key_is_read)
{
    const Wall *wall = read_text(everything);
    assert_string_equal(wall->title, "Boathouse reading wall");
    assert_int_equal(wall->units, UNITS_IN);
    assert_true(wall->round_given);
    assert_int_equal(wall->round, LENGTH_INCH / 32);
    assert_int_equal(wall->planks.widths.count, 2);
    assert_int_equal(wall->planks.widths.at[0], IN(44));
    assert_int_equal(wall->planks.widths.at[1], IN(56));
    assert_int_equal(wall->planks.thickness, IN(8));
    assert_int_equal(wall->planks.reveal, IN(1));
    assert_int_equal(wall->planks.lap, IN(4));
    assert_true(wall->planks.hang_given);
    assert_int_equal(wall->planks.hang, HANG_REFERENCE);
    assert_false(wall_hangs_upward(wall));
    assert_true(wall->planks.least_given);
    assert_int_equal(wall->planks.least, IN(12));
    assert_int_equal(wall->planks.leave, IN(2));
    assert_int_equal(wall->start, IN(-36));
    assert_int_equal(wall->joints.land, LAND_STUDS);
    assert_int_equal(wall->joints.stagger, IN(96));
    assert_int_equal(wall->joints.shortest, IN(160));
    assert_int_equal(wall->joints.closer, IN(4));
    assert_int_equal(wall->joints.spend, 2500);
    assert_false(wall->joints.spend_all);
    assert_int_equal(wall->joints.pins.count, 1);
    assert_string_equal(wall->joints.pins.at[0].face, "north");
    assert_int_equal(wall->joints.pins.at[0].course, 3);
    assert_int_equal(wall->joints.pins.at[0].at, IN(62 * 16 + 4));
    assert_int_equal(wall->joints.bars.count, 1);
    assert_string_equal(wall->joints.bars.at[0].face, "east");
    assert_int_equal(wall->joints.bars.at[0].course, -3);
    assert_int_equal(wall->joints.bars.at[0].from, IN(480));
    assert_int_equal(wall->joints.bars.at[0].to, IN(576));
    assert_int_equal(wall->saw.kerf, IN(2));
    assert_int_equal(wall->saw.square, IN(4));

    assert_int_equal(wall->faces.count, 2);
    const Face *north = &wall->faces.at[0];
    assert_string_equal(north->name, "north");
    assert_int_equal(north->width, IN(141 * 16 + 6));
    assert_int_equal(north->floor.count, 2);
    assert_int_equal(north->floor.at[0].off, IN(648));
    assert_int_equal(north->floor.at[1].at, north->width);
    assert_int_equal(north->floor.at[1].off, IN(-16));
    assert_int_equal(north->ceiling.at[0].off, IN(848));
    assert_int_equal(north->left.at[1].at, IN(848));
    assert_int_equal(north->left.at[1].off, IN(-2));
    assert_int_equal(north->right.count, 1);
    assert_int_equal(north->right.at[0].off, IN(16));
    assert_int_equal(north->margin.floor, IN(4));
    assert_int_equal(north->margin.ceiling, IN(2));
    assert_int_equal(north->margin.left, IN(16));
    assert_int_equal(north->margin.right, IN(32));
    assert_int_equal(north->corner.kind, CORNER_INSIDE);
    assert_int_equal(north->corner.joint, CORNER_BUTT);
    assert_int_equal(north->corner.through, THROUGH_RIGHT);
    assert_int_equal(north->backing, IN(6));
    assert_true(north->studs.given && north->studs.regular);
    assert_int_equal(north->studs.first, IN(228));
    assert_int_equal(north->studs.spacing, IN(256));

    assert_int_equal(north->openings.count, 3);
    const Opening *outlet = &north->openings.at[0];
    assert_string_equal(outlet->name, "outlet");
    assert_int_equal(outlet->kind, OPENING_BOX);
    assert_int_equal(outlet->left, IN(592));
    assert_int_equal(outlet->bottom, IN(-440));
    assert_int_equal(outlet->width, IN(36));
    assert_int_equal(outlet->height, IN(60));
    assert_int_equal(outlet->clear, IN(1));
    assert_true(outlet->plate.given && outlet->front_given);
    assert_int_equal(outlet->plate.width, IN(44));
    assert_int_equal(outlet->plate.height, IN(72));
    assert_int_equal(outlet->front, IN(-8));
    assert_false(outlet->away_given || outlet->to_floor || outlet->top_given);
    const Opening *stove = &north->openings.at[1];
    assert_int_equal(stove->kind, OPENING_STOVE);
    assert_true(stove->to_floor && stove->top_given && stove->away_given);
    assert_false(stove->front_given || stove->plate.given);
    assert_int_equal(stove->bottom, 0);
    assert_int_equal(stove->top, IN(48));
    assert_int_equal(stove->away, IN(288));
    /* ids are given, and each is another */
    assert_true(north->id != 0 && outlet->id != 0 && stove->id != 0);
    assert_true(north->id != outlet->id && outlet->id != stove->id && wall->next_id > stove->id);

    const Face *east = &wall->faces.at[1];
    assert_int_equal(east->corner.kind, CORNER_NONE);
    assert_true(east->studs.given && !east->studs.regular);
    assert_int_equal(east->studs.at.count, 3);
    assert_int_equal(east->studs.at.at[2], IN(33 * 16));

    assert_int_equal(wall->stock.count, 2);
    assert_int_equal(wall->stock.at[0].count, 70);
    assert_string_equal(wall->stock.at[0].tone, "grey");
    assert_string_equal(wall->stock.at[0].label, "");
    assert_false(wall->stock.at[0].width_given);
    assert_int_equal(wall->stock.at[1].count, 1);
    assert_string_equal(wall->stock.at[1].label, "A7");
    assert_true(wall->stock.at[1].width_given);
    assert_int_equal(wall->stock.at[1].width, IN(48));
    assert_int_equal(wall->stock.at[1].avoid.count, 2);
    assert_int_equal(wall->stock.at[1].avoid.at[0].to, IN(552));

    assert_true(wall->fasteners.given);
    assert_int_equal(wall->fasteners.length, IN(20));
    assert_int_equal(wall->fasteners.drywall, IN(8));
    assert_true(wall->trim.given);
    assert_int_equal(wall->trim.stock.at[0].count, 8);
    assert_string_equal(wall->trim.pieces.at[0].name, "left corner");
    assert_int_equal(wall->trim.pieces.at[0].count, 2);
    assert_int_equal(wall->trim.pieces.at[1].count, 1);
    assert_true(wall->wood.given);
    assert_string_equal(wall->wood.species, "Pine, eastern white");
    assert_int_equal(wall->wood.grain, GRAIN_QUARTER);
    assert_int_equal(wall->wood.hung.temperature, 68000);
    assert_int_equal(wall->wood.hung.humidity, 45000);
    assert_false(wall->wood.hung.celsius);
    assert_true(wall->wood.dry.celsius);
    assert_int_equal(wall->wood.dry.temperature, -500);
    assert_int_equal(wall->wood.dry.humidity, 25125);
    assert_int_equal(wall->wood.damp.temperature, 75250);

    const Stock *board = &wall->stock.at[1];
    assert_int_equal(board->show.count, 2);
    assert_int_equal(board->show.at[1].at, IN(960));
    assert_string_equal(board->show.at[1].what, "old bolt");
    assert_true(board->gone_given && board->found_given);
    assert_int_equal(board->gone, 5);
    assert_int_equal(board->found, 1);
    assert_false(wall->stock.at[0].gone_given || wall->stock.at[0].found_given);
    assert_int_equal(north->wall, FACE_SOLID_WOOD);
    assert_int_equal(north->corner.gap, IN(-4));
    const Opening *collar = &north->openings.at[2];
    assert_int_equal(collar->kind, OPENING_PIPE);
    assert_true(collar->above_given && collar->proud_given && !collar->to_floor);
    assert_int_equal(collar->above, IN(208));
    assert_int_equal(collar->proud, IN(10));
    assert_int_equal(wall->hung_losses.count, 1);
    assert_int_equal(wall->hung_losses.at[0].board, 2);
    assert_int_equal(wall->hung_losses.at[0].offset, IN(160));
    assert_int_equal(wall->hung_losses.at[0].length, IN(41 * 16 + 8));
    assert_int_equal(wall->hung_pieces.at[0].state, PIECE_HUNG);
    assert_int_equal(wall->hung_pieces.at[1].state, PIECE_CUT);
    assert_int_equal(wall->hung_edges.at[0].plan, PLAN_KEPT);
    assert_int_equal(wall->hung_edges.at[1].plan, PLAN_ANEW);
    static const int kinds[] = {HUNG_PIECE, HUNG_EDGE, HUNG_LOSS, HUNG_PIECE, HUNG_EDGE};
    HungWalk walk = {0};
    for (int i = 0; i < 5; i++) {
        assert_true(hung_walk(wall, &walk));
        assert_int_equal(walk.kind, kinds[i]);
    }
    assert_false(hung_walk(wall, &walk));
    assert_int_equal(hung_count(wall), 5);

    assert_int_equal(wall->hung_pieces.count, 2);
    assert_int_equal(wall->hung_pieces.at[0].board, 3);
    assert_true(wall->hung_pieces.at[0].offset_given);
    assert_int_equal(wall->hung_pieces.at[0].offset, IN(4));
    assert_int_equal(wall->hung_pieces.at[1].course, -2);
    assert_false(wall->hung_pieces.at[1].offset_given);
    assert_int_equal(wall->hung_pieces.at[0].plan, PLAN_KEPT);
    assert_int_equal(wall->hung_pieces.at[1].plan, PLAN_ANEW);
    assert_int_equal(wall->hung_edges.count, 2);
    assert_true(wall->hung_edges.at[0].is_top);
    assert_int_equal(wall->hung_edges.at[0].height, IN(247));
    assert_false(wall->hung_edges.at[1].is_top);
    assert_string_equal(wall->hung_edges.at[1].face, "east");
}
END_TEST

static const char least[] = "datumrow: 1\n"
                            "units: mm\n"
                            "planks: {width: 100, thickness: 12}\n"
                            "start: 0\n"
                            "faces:\n"
                            "- name: north\n"
                            "  width: 2000\n"
                            "  floor: [{at: 0, down: 1000}]\n"
                            "  ceiling: [{at: 0, up: 1400}]\n";

START_TEST(what_is_not_written_has_its_default)
{
    const Wall *wall = read_text(least);
    assert_string_equal(wall->title, "");
    assert_false(wall->round_given);
    assert_int_equal(wall->round, LENGTH_MM);
    assert_int_equal(wall->planks.reveal, 0);
    assert_false(wall->planks.least_given || wall->planks.hang_given || wall_hangs_upward(wall));
    assert_int_equal(wall->joints.spend, 0);
    assert_false(wall->joints.spend_all);
    assert_int_equal(wall->joints.pins.count + wall->joints.bars.count, 0);
    assert_int_equal(wall->faces.at[0].wall, FACE_STUDS);
    assert_int_equal(wall_least(wall), 33333333); /* a third of the face, to the nanometre */
    assert_int_equal(wall->joints.land, LAND_ANYWHERE);
    assert_int_equal(wall->stock.count, 0);
    assert_false(wall->fasteners.given || wall->trim.given || wall->wood.given || wall->faces.at[0].studs.given);
    assert_int_equal(wall->faces.at[0].openings.count, 0);
    assert_int_equal(wall->faces.at[0].corner.kind, CORNER_NONE);
    assert_int_equal(wall->hung_pieces.count + wall->hung_edges.count, 0);
    assert_int_equal(read_text("datumrow: 1\nunits: in\nplanks: {width: 4, thickness: 1}\nstart: 0\nfaces: [{name: a, "
                               "width: 9, floor: [{at: 0, down: 9}], ceiling: [{at: 0, up: 9}]}]\n")
                         ->round,
                     LENGTH_INCH / 16);
}
END_TEST

static const Wall *with(const char *line)
{
    char text[400];
    snprintf(text, sizeof text, "%s%s\n", least, line);
    return read_text(text);
}

/* What the file leaves out where something else stands in it. */
START_TEST(defaults_that_hang_on_others)
{
    static const char lapped[] =
        "datumrow: 1\nunits: mm\nplanks: {width: 100, thickness: 12, lap: 10%s}\nstart: 0\n"
        "faces: [{name: a, width: 900, floor: [{at: 0, down: 9}], ceiling: [{at: 0, up: 9}]}]\n";
    char text[400];
    snprintf(text, sizeof text, lapped, "");
    assert_true(wall_hangs_upward(read_text(text)));
    snprintf(text, sizeof text, lapped, ", hang: reference");
    assert_false(wall_hangs_upward(read_text(text)));
    const Wall *wall = with("joints: {spend: all}");
    assert_true(wall->joints.spend_all);
    assert_int_equal(wall->joints.spend, 0);
    wall = with("fasteners: {drywall: 12.5}");
    assert_true(wall->fasteners.given);
    assert_false(wall->fasteners.length_given);
    assert_int_equal(wall->fasteners.drywall, 12500000);
    assert_true(with("fasteners: {length: 30}")->fasteners.length_given);
}
END_TEST

/* Block or flow, quoted or not, keys in any order, comments, CRLF, a byte order mark, a document's start and end. */
START_TEST(every_notation_means_the_same)
{
    static const char *const same[] = {
        "{datumrow: 1, units: mm, planks: {width: 100, thickness: 12}, start: 0, faces: [{name: north, width: 2000, "
        "floor: [{at: 0, down: 1000}], ceiling: [{at: 0, up: 1400}]}]}",
        "\"datumrow\": \"1\"\n'units': 'mm'\n\"planks\": {\"width\": \"100\", 'thickness': '12'}\nstart: '0'\n"
        "faces: [{name: \"north\", width: \"2000\", floor: [{at: '0', down: 1 m}], ceiling: [{at: 0.0, up: 140 "
        "cm}]}]\n",
        "---\n# a wall\nfaces: # one\n-\n  ceiling:\n    -\n      up: 1400.000\n      at: 0\n  floor:\n  - at: 0\n    "
        "down: +1000\n  width: 2.0 m\n  name: >-\n    north\nstart: 0 in\nplanks:\n  width:\n  - 10 cm\n  thickness: "
        "12\n"
        "units: mm\ndatumrow: 1\n...\n",
        "\xef\xbb\xbf"
        "datumrow: 1\r\nunits: mm\r\nplanks: {width: 100, thickness: 12}\r\nstart: 0\r\nfaces:\r\n- name: north\r\n"
        "  width: 2000\r\n  floor: [{at: 0, down: 1000}]\r\n  ceiling: [{at: 0, up: 1400}]\r\n",
        "%YAML 1.1\n---\ndatumrow: 1\nunits: mm\nplanks: {width: [100], thickness: 12, lap: 0}\nstart: -0\nstock: []\n"
        "faces: [{name: north, width: 2000, floor: [{at: 0, down: 1000}], ceiling: [{at: 0, up: 1400}], left: []}]",
    };
    const Wall *wall = read_text(least);
    for (size_t i = 0; i < sizeof same / sizeof *same; i++) {
        const Wall *other = read_text(same[i]);
        if (!wall_equal(wall, other))
            FAIL("this reads otherwise:\n%s", same[i]);
    }
}
END_TEST

/* A scalar is what its key makes of it, whatever other readers take it for. */
START_TEST(names_stay_as_written)
{
    static const char *const names[][2] = {
        {"no", "no"},
        {"~", "~"},
        {"null", "null"},
        {"1.0", "1.0"},
        {"2024-01-01", "2024-01-01"},
        {"'it''s'", "it's"},
        {"\"a\\\"b\"", "a\"b"},
        {"left of  it", "left of  it"},
        {"'a: b'", "a: b"},
        {"T\xc3\xbcr", "T\xc3\xbcr"},
        {"\"\\u00e9\"", "\xc3\xa9"},
        {"0x1F", "0x1F"},
        {"yes", "yes"},
        {".nan", ".nan"},
    };
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        char text[512];
        snprintf(
            text, sizeof text,
            "datumrow: 1\nunits: mm\nplanks: {width: 100, thickness: 12}\nstart: 0\nfaces:\n- name: %s\n  width: 9\n"
            "  floor: [{at: 0, down: 9}]\n  ceiling: [{at: 0, up: 9}]\n",
            names[i][0]);
        assert_string_equal(read_text(text)->faces.at[0].name, names[i][1]);
    }
}
END_TEST

/* Every notation of a length, read in its place (the notations as such: tests/length). */
START_TEST(lengths_take_the_units_of_the_file)
{
    static const struct {
        const char *written;
        Length inches;
        Length millimetres;
    } cases[] = {
        {"3", IN(48), 3 * LENGTH_MM},
        {"3.25", IN(52), 3250000},
        {"3 1/4", IN(52), 3250000},
        {"3-1/4", IN(52), 3250000},
        {"1/2", IN(8), 500000},
        {"7' 4 1/2\"", IN(88 * 16 + 8), IN(88 * 16 + 8)},
        {"7ft 4in", IN(88 * 16), IN(88 * 16)},
        {"92.5 in", IN(1480), IN(1480)},
        {"1.95 mm", 1950000, 1950000},
        {"120 cm", 1200 * LENGTH_MM, 1200 * LENGTH_MM},
        {"2.4 m", 2400 * LENGTH_MM, 2400 * LENGTH_MM},
        {"-3", IN(-48), -3 * LENGTH_MM},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        for (int inches = 0; inches < 2; inches++) {
            char text[512];
            snprintf(text, sizeof text,
                     "datumrow: 1\nunits: %s\nplanks: {width: 10 cm, thickness: 12 mm}\nstart: %s\n"
                     "faces: [{name: a, width: 9, floor: [{at: 0, down: 9}], ceiling: [{at: 0, up: 9}]}]\n",
                     inches ? "in" : "mm", cases[i].written);
            assert_int_equal(read_text(text)->start, inches ? cases[i].inches : cases[i].millimetres);
        }
}
END_TEST

/* What is told as a finding is no error: openings that leave the face or overlap, boards that are not there, a start
 * far off, too little stock. */
START_TEST(findings_are_no_errors)
{
    char text[2048];
    snprintf(text, sizeof text, "%s%s", least,
             "  openings:\n"
             "  - {name: a, kind: window, left: -900, bottom: 0, width: 100, height: 100}\n"
             "  - {name: b, kind: window, left: 1900, bottom: 0, width: 600, height: 100}\n"
             "  - {name: c, kind: window, left: 1950, bottom: 50, width: 600, height: 9000}\n"
             "hung:\n"
             "- {face: north, course: 0, left: 0, right: 10, board: 77}\n"
             "- {face: north, course: 0, left: 5, right: 10000, board: 1}\n");
    assert_int_equal(read_text(text)->faces.at[0].openings.count, 3);
    assert_int_equal(
        read_text("datumrow: 1\nunits: mm\nplanks: {width: 100, thickness: 12}\nstart: 999 m\nfaces: [{name: a, "
                  "width: 9, floor: [{at: 0, down: 9}], ceiling: [{at: 0, up: 9}]}]\n")
            ->start,
        999 * LENGTH_METRE);
}
END_TEST

/* Places are counted in characters, as editors do, also behind a byte order mark and letters of several bytes. */
START_TEST(what_is_refused_has_its_place)
{
    static const struct {
        const char *text;
        int line, column;
    } cases[] = {
        {"\xef\xbb\xbf{a: 1}", 1, 2},
        {"{datumrow: 1, title: \xc3\xa4\xc3\xb6, a: 1}", 1, 26},
        {"datumrow: 1\r\ntitle: \xe6\x9c\xa8\r\nb: 1\r\n", 3, 1},
        {"datumrow: 1\ntitle: \xf0\x9f\xaa\x9f: 1\n", 2, 9},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        Source out;
        Errs errors = {0};
        assert_false(store_parse(arena, "w", cases[i].text, strlen(cases[i].text), &out, &errors));
        bool found = false;
        for (int k = 0; k < errors.count; k++)
            found |= errors.at[k].line == cases[i].line && errors.at[k].column == cases[i].column;
        if (!found)
            FAIL("case %zu: the first is told at %d:%d: %s", i, errors.at[0].line, errors.at[0].column,
                 errors.at[0].text);
    }
}
END_TEST

START_TEST(every_sample_is_read)
{
    static const char *const names[] = {"gable", "hall", "reading-wall", "stove-corner"};
    static const int faces[] = {1, 2, 1, 3};
    const char *source = getenv("DATUMROW_SOURCE");
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        char path[4096];
        Source out;
        Errs errors = {0};
        snprintf(path, sizeof path, "%s/samples/%s.yaml", source == NULL ? "." : source, names[i]);
        if (!store_read(arena, path, &out, &errors))
            FAIL("%s:%d: %s", names[i], errors.at[0].line, errors.at[0].text);
        assert_int_equal(out.wall->faces.count, faces[i]);
    }
}
END_TEST

START_TEST(files_that_cannot_be_read)
{
    Source out;
    Errs errors = {0};
    assert_false(store_read(arena, "/nowhere/wall.yaml", &out, &errors));
    assert_int_equal(errors.count, 1);
    assert_int_equal(errors.at[0].kind, ERR_SYSTEM);
    assert_string_equal(errors.at[0].place, "/nowhere/wall.yaml");
    assert_false(store_read(arena, "/", &out, &errors));
    assert_holds(errors.at[0].text, "folder");
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        every_key_is_read,
        what_is_not_written_has_its_default,
        defaults_that_hang_on_others,
        every_notation_means_the_same,
        names_stay_as_written,
        lengths_take_the_units_of_the_file,
        findings_are_no_errors,
        what_is_refused_has_its_place,
        every_sample_is_read,
        files_that_cannot_be_read,
    };
    return RUN_WITH_ARENA(tests);
}
