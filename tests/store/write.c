/*
 * What a save writes: it reads back as the wall, twice gives the same bytes, and what a person wrote (comments, order,
 * notation) stays wherever the value did.
 */
#include "support/test.h"

#include "base/file.h"
#include "base/random.h"
#include "base/utf8.h"
#include "everything.h"
#include "store/keep.h"
#include "store/store.h"
#include "support/edit_head.h"
#include "support/random_wall.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { WALLS = 1200, PAIRS = 120, NOTED = 200 };

static void parse(Arena *arena, const char *text, size_t length, Source *out)
{
    Errs errors = {0};
    if (!store_parse(arena, "wall.yaml", text, length, out, &errors))
        FAIL("%d:%d: %s in\n%s", errors.at[0].line, errors.at[0].column, errors.at[0].text, text);
}

START_TEST(each_random_wall_comes_back)
{
    Text text;
    Text again;
    text_init(&text);
    text_init(&again);
    for (int kind = 0; kind < RANDOM_KIND_COUNT; kind++)
        for (uint64_t seed = 0; seed < WALLS; seed += kind < RANDOM_PLAIN ? 1 : 10) {
            Arena *arena = arena_new();
            const Wall *wall = random_wall(arena, seed, (RandomKind)kind);
            Source source;
            store_write(wall, NULL, &text);
            parse(arena, text.bytes, text.length, &source);
            if (!wall_equal(wall, source.wall))
                FAIL("wall %d of kind %s comes back as another", (int)seed, random_kind_word((RandomKind)kind));
            store_write(wall, &source, &again);
            assert_int_equal(text.length, again.length);
            assert_memory_equal(text.bytes, again.bytes, text.length);
            arena_free(arena);
        }
    text_finish(&text);
    text_finish(&again);
}
END_TEST

/* Any wall into the text of any other: the worst that an editor could do to a file. */
START_TEST(any_wall_into_any_text)
{
    Text text;
    Text first;
    Text second;
    text_init(&text);
    text_init(&first);
    text_init(&second);
    for (int kind = 0; kind < RANDOM_KIND_COUNT; kind++)
        for (uint64_t seed = 0; seed < PAIRS; seed++) {
            Arena *arena = arena_new();
            const Wall *old = random_wall(arena, seed, (RandomKind)kind);
            const Wall *new =
                random_wall(arena, seed * 7 + 1, (RandomKind)((kind + (int)(seed % 2)) % RANDOM_KIND_COUNT));
            Source source;
            Source saved;
            store_write(old, NULL, &text);
            parse(arena, text.bytes, text.length, &source);
            if (!keep_text(new, &source, &first) || !keep_reads_as(new, first.bytes, first.length))
                FAIL("wall %d of kind %d cannot be put in piece by piece", (int)seed, kind);
            parse(arena, first.bytes, first.length, &saved);
            store_write(new, &saved, &second);
            assert_int_equal(first.length, second.length);
            assert_memory_equal(first.bytes, second.bytes, first.length);
            arena_free(arena);
        }
    text_finish(&text);
    text_finish(&first);
    text_finish(&second);
}
END_TEST

/* Each character that a name may hold, alone, first and in the middle, comes back. */
START_TEST(every_character_comes_back)
{
    Arena *arena = arena_new();
    Text text;
    Source source;
    Wall *wall = random_wall(arena, 1, RANDOM_PLAIN);
    wall->stock.count = 0;
    for (uint32_t code = 0x20; code < 0x110000; code += code < 0x3000 || code >= 0xfe00 ? 1 : 97) {
        if (code == 0x11000)
            code = 0x1f000;
        if (code == 0x20000)
            code = 0xe0000;
        if (code == 0xe0100)
            break;
        if ((code >= 0x7f && code < 0xa0) || code == 0x2028 || code == 0x2029 || (code >= 0xd800 && code < 0xe000))
            continue;
        char letters[5] = "";
        char label[32];
        utf8_encode(code, letters);
        snprintf(label, sizeof label, "%s", letters);
        char *alone = arena_text(arena, label, strlen(label));
        snprintf(label, sizeof label, "%sz%s b", letters, letters);
        char *within = arena_text(arena, label, strlen(label));
        *arena_push(arena, &wall->stock) = (Stock){.label = alone, .tone = within, .length = LENGTH_MM, .count = 1};
    }
    assert_true(wall->stock.count > 15000);
    text_init(&text);
    store_write(wall, NULL, &text);
    parse(arena, text.bytes, text.length, &source);
    assert_true(wall_equal(wall, source.wall));
    text_finish(&text);
    arena_free(arena);
}
END_TEST

/* ---- notes ---- */

/* The text with a numbered note behind some lines, and on lines of their own above some. */
static void add_notes(Random *random, const char *plain, Text *out)
{
    int note = 0;
    text_clear(out);
    for (const char *line = plain; *line != '\0';) {
        const size_t length = strcspn(line, "\n");
        const size_t indent = strspn(line, " ");
        if (random_below(random, 6) == 0)
            text_format(out, "%.*s# note %d.\n", (int)indent, line, note++);
        text_put_bytes(out, line, length);
        if (length > 0 && random_below(random, 3) == 0)
            text_format(out, "   # note %d.", note++);
        text_put(out, "\n");
        line += length + (line[length] == '\n');
    }
}

/* How many of the notes of `before` are in `after`, which must have them in the same order. */
static int notes_kept(const char *before, const char *after, int *all)
{
    int kept = 0;
    const char *from = after;
    *all = 0;
    for (const char *note = strstr(before, "# note "); note != NULL; note = strstr(note + 1, "# note ")) {
        char word[32];
        snprintf(word, sizeof word, "%.*s", (int)strcspn(note, ".") + 1, note);
        const char *there = strstr(from, word);
        (*all)++;
        if (there != NULL) {
            kept++;
            from = there;
        }
    }
    return kept;
}

static uint32_t any_stock(const Wall *wall, Random *random)
{
    return wall->stock.at[random_below(random, (uint64_t)wall->stock.count)].id;
}

/* Changes of values alone lose no note; a line of stock taken out loses no more than its own. */
START_TEST(comments_stay_beside_what_they_head)
{
    Text plain;
    Text noted;
    Text out;
    text_init(&plain);
    text_init(&noted);
    text_init(&out);
    Random random = {7};
    for (uint64_t seed = 0; seed < NOTED; seed++) {
        Arena *arena = arena_new();
        Source source;
        Err err;
        int all;
        store_write(random_wall(arena, seed, seed % 2 == 0 ? RANDOM_HOUSE : RANDOM_ANY), NULL, &plain);
        add_notes(&random, plain.bytes, &noted);
        parse(arena, noted.bytes, noted.length, &source);
        Document *document = document_new(source.wall);
        const Wall *wall = document_wall(document);

        assert_done(edit_nudge_start(document, 3 * wall->round, &err), &err);
        Planks planks = document_wall(document)->planks;
        planks.thickness += LENGTH_MM;
        assert_done(edit_planks(document, &planks, &err), &err);
        wall = document_wall(document);
        const Openings *openings = &wall->faces.at[0].openings;
        if (openings->count > 0)
            edit_nudge_opening(document, openings->at[0].id, wall->round, 0, &err);
        assert_true(keep_text(document_wall(document), &source, &out));
        const int kept = notes_kept(noted.bytes, out.bytes, &all);
        if (kept != all)
            FAIL("seed %d: %d of %d notes in\n%s\nwhich was\n%s", (int)seed, kept, all, out.bytes, noted.bytes);

        if (document_wall(document)->stock.count > 1) {
            assert_done(edit_remove_stock(document, any_stock(document_wall(document), &random), &err), &err);
            assert_true(keep_text(document_wall(document), &source, &out));
            assert_in_range(notes_kept(noted.bytes, out.bytes, &all), all - 2, all);
        }
        assert_true(keep_reads_as(document_wall(document), out.bytes, out.length));
        document_free(document);
        arena_free(arena);
    }
    text_finish(&plain);
    text_finish(&noted);
    text_finish(&out);
}
END_TEST

/* ---- by hand ---- */

#define HEAD "datumrow: 1\nunits: in\nplanks: {width: 3, thickness: 1/2}\n"
#define FACE "faces:\n- name: north # sunny\n  width: 100\n  floor: [{at: 0, down: 40}]\n  ceiling: [{at: 0, up: 50}]\n"

typedef bool Change(Document *document, Err *err);

static bool raise(Document *document, Err *err)
{
    return edit_nudge_start(document, LENGTH_INCH / 4, err);
}

static bool rename_face(Document *document, Err *err)
{
    Face face = document_wall(document)->faces.at[0];
    face.name = (char[]){"no"};
    return edit_face(document, &face, err);
}

static bool give_reveal_and_least(Document *document, Err *err)
{
    Planks planks = document_wall(document)->planks;
    planks.reveal = LENGTH_INCH / 16;
    planks.least_given = true;
    planks.least = LENGTH_INCH;
    return edit_planks(document, &planks, err);
}

static bool take_least(Document *document, Err *err)
{
    Planks planks = document_wall(document)->planks;
    planks.least_given = false;
    return edit_planks(document, &planks, err);
}

static bool give_more_widths(Document *document, Err *err)
{
    Planks planks = document_wall(document)->planks;
    planks.widths.at = (Length[]){3 * LENGTH_INCH, 4 * LENGTH_INCH};
    planks.widths.count = 2;
    return edit_planks(document, &planks, err);
}

static bool hang_two(Document *document, Err *err)
{
    HungPiece piece = {.face = (char[]){"north"}, .right = 10 * LENGTH_INCH, .board = 1};
    bool done = edit_hang(document, &piece, err);
    piece.left = piece.right;
    piece.right = 30 * LENGTH_INCH;
    HungEdge edge = {.face = (char[]){"north"}, .course = 1, .is_top = true, .height = 6 * LENGTH_INCH};
    done = done && edit_measure(document, &edge, err);
    return done && edit_hang(document, &piece, err);
}

static bool take_down_second(Document *document, Err *err)
{
    return edit_take_down(document, 1, err);
}

static bool cut_it(Document *document, Err *err)
{
    Wall wall = *document_wall(document);
    wall.hung_pieces.at[0].state = PIECE_CUT;
    return edit_whole(document, &wall, "cut it", err);
}

static bool take_down_first(Document *document, Err *err)
{
    return edit_take_down(document, 0, err);
}

static bool remove_stock_2(Document *document, Err *err)
{
    return edit_remove_stock(document, document_wall(document)->stock.at[1].id, err);
}

static bool remove_stock_1_and_2(Document *document, Err *err)
{
    return edit_remove_stock(document, document_wall(document)->stock.at[0].id, err) &&
           edit_remove_stock(document, document_wall(document)->stock.at[0].id, err);
}

static bool remove_stock_1(Document *document, Err *err)
{
    return edit_remove_stock(document, document_wall(document)->stock.at[0].id, err);
}

static bool add_stock(Document *document, Err *err)
{
    const Wall *wall = document_wall(document);
    Stock stock = {.label = (char[]){"B # 2"}, .tone = (char[]){""}, .length = 60 * LENGTH_INCH, .count = 1};
    return edit_add_stock(document, wall->stock.count == 0 ? 0 : wall->stock.at[0].id, &stock, NULL, err);
}

static bool change_stock_1(Document *document, Err *err)
{
    Stock stock = document_wall(document)->stock.at[0];
    stock.count = 12;
    stock.tone = (char[]){"null"};
    return edit_stock(document, &stock, err);
}

static bool remove_openings(Document *document, Err *err)
{
    while (document_wall(document)->faces.at[0].openings.count > 0)
        if (!edit_remove_opening(document, document_wall(document)->faces.at[0].openings.at[0].id, err))
            return false;
    return true;
}

static bool opening_to_floor(Document *document, Err *err)
{
    Opening opening = document_wall(document)->faces.at[0].openings.at[0];
    opening.to_floor = true;
    opening.bottom = 0;
    opening.height = 0;
    opening.top_given = true;
    opening.top = 10 * LENGTH_INCH;
    return edit_opening(document, &opening, err);
}

static bool to_metric(Document *document, Err *err)
{
    return edit_units(document, UNITS_MM, LENGTH_MM, err);
}

static bool to_metric_and_zero(Document *document, Err *err)
{
    return edit_units(document, UNITS_MM, LENGTH_MM, err) && edit_start(document, 0, err);
}

static bool stud_list(Document *document, Err *err)
{
    Face face = document_wall(document)->faces.at[0];
    face.studs = (Studs){.given = true, .at = {(Length[]){LENGTH_INCH, 20 * LENGTH_INCH}, 2, 2}};
    return edit_face(document, &face, err);
}

static bool move_middle_mark(Document *document, Err *err)
{
    Face face = document_wall(document)->faces.at[0];
    Mark marks[3];
    memcpy(marks, face.ceiling.at, sizeof marks);
    marks[1].off += LENGTH_INCH / 8;
    face.ceiling.at = marks;
    return edit_face(document, &face, err);
}

static bool add_face(Document *document, Err *err)
{
    Face face = document_wall(document)->faces.at[0];
    face.name = (char[]){"east"};
    face.openings.count = 0;
    face.width = 50 * LENGTH_INCH;
    return edit_add_face(document, document_wall(document)->faces.at[0].id, &face, NULL, err);
}

static const struct {
    const char *what;
    Change *change;
    const char *before, *after;
} cases[] = {
    {"a value, its comment in its column", raise, HEAD "start: 2 1/4   # up\n" FACE, HEAD "start: 2 1/2   # up\n" FACE},
    {"a longer value", raise, HEAD "start: 2   # up\n" FACE, HEAD "start: 2 1/4 # up\n" FACE},
    {"in a flow", raise,
     "{datumrow: 1, start:  0.5 , units: in, planks: {width: 3 in, thickness: 0.500}, faces: [{name: a, width: 9, "
     "floor: [{at: 0, down: 9}], ceiling: [{at: 0, up: 9}]}]}",
     "{datumrow: 1, start:  3/4 , units: in, planks: {width: 3 in, thickness: 0.500}, faces: [{name: a, width: 9, "
     "floor: [{at: 0, down: 9}], ceiling: [{at: 0, up: 9}]}]}"},
    {"quoted, at the end without a line's end", raise, HEAD FACE "start: \"2 1/4\"", HEAD FACE "start: 2 1/2"},
    {"a block of text", raise, HEAD "start: >-\n  2\n  1/4\n\n# faces\n" FACE, HEAD "start: 2 1/2\n\n# faces\n" FACE},
    {"CRLF and a byte order mark", give_reveal_and_least,
     "\xef\xbb\xbf"
     "datumrow: 1\r\nunits: in\r\nplanks:\r\n  width: 3\r\n  thickness: 1/2 # t\r\nstart: 0\r\nfaces: [{name: a, "
     "width: 9, floor: [{at: 0, down: 9}], ceiling: [{at: 0, up: 9}]}]\r\n",
     "\xef\xbb\xbf"
     "datumrow: 1\r\nunits: in\r\nplanks:\r\n  width: 3\r\n  thickness: 1/2 # t\r\n  reveal: 1/16\r\n  least: "
     "1\r\nstart: 0\r\nfaces: [{name: a, width: 9, floor: [{at: 0, down: 9}], ceiling: [{at: 0, up: 9}]}]\r\n"},
    {"a name that others would misread", rename_face, HEAD "start: 0\n" FACE,
     HEAD "start: 0\nfaces:\n- name: 'no' # sunny\n  width: 100\n  floor: [{at: 0, down: 40}]\n  ceiling: [{at: 0, up: "
          "50}]\n"},
    {"new keys in a flow", give_reveal_and_least, HEAD "start: 0\n" FACE,
     "datumrow: 1\nunits: in\nplanks: {width: 3, thickness: 1/2, reveal: 1/16, least: 1}\nstart: 0\n" FACE},
    {"a key taken out of a flow", take_least,
     "datumrow: 1\nunits: in\nplanks: {least: 1, width: 3, thickness: 1/2}\nstart: 0\n" FACE,
     "datumrow: 1\nunits: in\nplanks: {width: 3, thickness: 1/2}\nstart: 0\n" FACE},
    {"a key with its comments taken out of a block", take_least,
     "datumrow: 1\nunits: in\nplanks:\n  width: 3\n  thickness: 1/2\n  # or it splits\n  least: 1   # I think\nstart: "
     "0\n" FACE,
     "datumrow: 1\nunits: in\nplanks:\n  width: 3\n  thickness: 1/2\nstart: 0\n" FACE},
    {"one width becomes two", give_more_widths, HEAD "start: 0\n" FACE,
     "datumrow: 1\nunits: in\nplanks: {width: [3, 4], thickness: 1/2}\nstart: 0\n" FACE},
    {"a block list becomes one line", give_more_widths,
     "datumrow: 1\nunits: in\nplanks:\n  width: # three\n  - 1\n  - 2\n  - 3\n  thickness: 1/2\nstart: 0\n" FACE,
     "datumrow: 1\nunits: in\nplanks:\n  width: [3, 4] # three\n  thickness: 1/2\nstart: 0\n" FACE},
    {"the first pieces hung", hang_two, HEAD "start: 0\n" FACE "stock: [{length: 99}]\nhung: []   # nothing yet\n",
     HEAD "start: 0\n" FACE "stock: [{length: 99}]\nhung:   # nothing yet\n"
          "- {face: north, course: 0, left: 0, right: 10, board: 1}\n- {face: north, course: 1, top: 6}\n"
          "- {face: north, course: 0, left: 10, right: 30, board: 1}\n"},
    {"hung where there was no key", hang_two, HEAD "start: 0\n" FACE "stock: [{length: 99}]",
     HEAD "start: 0\n" FACE "stock: [{length: 99}]\nhung:\n"
          "- {face: north, course: 0, left: 0, right: 10, board: 1}\n- {face: north, course: 1, top: 6}\n"
          "- {face: north, course: 0, left: 10, right: 30, board: 1}"},
    {"pieces and edges mixed", hang_two,
     HEAD "start: 0\n" FACE "stock: [{length: 99}]\nhung:\n- {face: north, course: 2, top: 9}  # a\n"
          "- {board: 1, face: north, course: 2, left: 0, right: 5}  # b\n- {face: north, course: 3, top: 12}  # c\n",
     HEAD "start: 0\n" FACE "stock: [{length: 99}]\nhung:\n- {face: north, course: 2, top: 9}  # a\n"
          "- {board: 1, face: north, course: 2, left: 0, right: 5}  # b\n"
          "- {face: north, course: 3, top: 12}  # c\n"
          "- {face: north, course: 0, left: 0, right: 10, board: 1}\n- {face: north, course: 1, top: 6}\n"
          "- {face: north, course: 0, left: 10, right: 30, board: 1}\n"},
    {"a piece taken down", take_down_first,
     HEAD "start: 0\nsaw: {kerf: 1/8, square: 1/4}\n" FACE
          "stock: [{length: 99}]\nhung:\n- {face: north, course: 0, left: 0, right: 5, board: 1}\n"
          "- {face: north, course: 0, left: 5, right: 9, board: 1}  # stays\n",
     HEAD "start: 0\nsaw: {kerf: 1/8, square: 1/4}\n" FACE "stock: [{length: 99}]\nhung:\n"
          "- {face: north, course: 0, left: 5, right: 9, board: 1, offset: 5 3/8}  # stays\n"},
    {"a line of a group", remove_stock_2,
     HEAD "start: 0\n" FACE "stock:\n# slats\n- {length: 10}\n- {length: 20}  # worn\n- {length: 30}\n",
     HEAD "start: 0\n" FACE "stock:\n# slats\n- {length: 10}\n- {length: 30}\n"},
    {"the first of two alike", remove_stock_1,
     HEAD "start: 0\n" FACE "stock:\n- {length: 10}  # a\n- {length: 10}  # b\n",
     HEAD "start: 0\n" FACE "stock:\n- {length: 10}  # b\n"},
    {"what cannot be read in the new units and is 0 now", to_metric_and_zero,
     "datumrow: 1\nunits: in\nplanks: {width: 80 mm, thickness: 9 mm}\nstart: 8-3-1/2 # up\nfaces: [{name: a, width: 1 "
     "m, "
     "floor: [{at: 0, down: 1 m}], ceiling: [{at: 0, up: 1 m}]}]\n",
     "datumrow: 1\nunits: mm\nplanks: {width: 80 mm, thickness: 9 mm}\nstart: 0 # up\nfaces: [{name: a, width: 1 m, "
     "floor: [{at: 0, down: 1 m}], ceiling: [{at: 0, up: 1 m}]}]\n"},
    {"a whole group", remove_stock_1_and_2,
     HEAD "start: 0\n" FACE "stock:\n# slats\n- {length: 10}\n- {length: 20}\n\n# shelves\n- {length: 30}\n",
     HEAD "start: 0\n" FACE "stock:\n\n# shelves\n- {length: 30}\n"},
    {"out of a flow list", remove_stock_2,
     HEAD "start: 0\n" FACE "stock: [{length: 10}, {length: 20},\n  {length: 30} ] # three\n",
     HEAD "start: 0\n" FACE "stock: [{length: 10},\n  {length: 30} ] # three\n"},
    {"the first of a flow list", remove_stock_1_and_2,
     HEAD "start: 0\n" FACE "stock: [ {length: 10}, {length: 20}, {length: 30}]\n",
     HEAD "start: 0\n" FACE "stock: [ {length: 30}]\n"},
    {"all of them", remove_stock_1_and_2,
     HEAD "start: 0\n" FACE "stock: # the pile\n- {length: 10}\n- {length: 20} # worn\nsaw: {}\n",
     HEAD "start: 0\n" FACE "stock: [] # the pile\nsaw: {}\n"},
    {"a new line between", add_stock,
     HEAD "start: 0\n" FACE "stock:\n  - {length: 10}  # a\n\n  # shelves\n  - {length: 20}",
     HEAD "start: 0\n" FACE
          "stock:\n  - {length: 10}  # a\n  - {label: 'B # 2', length: 60}\n\n  # shelves\n  - {length: 20}"},
    {"a new line in a flow", add_stock, HEAD "start: 0\n" FACE "stock: [{length: 10}, {length: 20}]\n",
     HEAD "start: 0\n" FACE "stock: [{length: 10}, {label: 'B # 2', length: 60}, {length: 20}]\n"},
    {"the first line", add_stock, HEAD "start: 0\n" FACE "\n# end\n",
     HEAD "start: 0\n" FACE "stock:\n- {label: 'B # 2', length: 60}\n\n# end\n"},
    {"keys of an item in a block", change_stock_1,
     HEAD "start: 0\n" FACE "stock:\n- tone: grey # as slate\n  length: 1' 2\" # long\n- length: 3\n",
     HEAD "start: 0\n" FACE "stock:\n- tone: 'null' # as slate\n  length: 1' 2\" # long\n  count: 12\n- length: 3\n"},
    {"no opening any more", remove_openings,
     HEAD "start: 0\n" FACE
          "  openings:\n  # only one\n  - name: w\n    kind: window\n    left: 1\n    bottom: 1\n    width: 9\n    "
          "height: 9 # high\n- name: south\n  width: 9\n  floor: [{at: 0, down: 9}]\n  ceiling: [{at: 0, up: 9}]\n",
     HEAD "start: 0\n" FACE
          "  openings: []\n- name: south\n  width: 9\n  floor: [{at: 0, down: 9}]\n  ceiling: [{at: 0, up: 9}]\n"},
    {"one key in place of another", opening_to_floor,
     HEAD "start: 0\n" FACE "  openings:\n  - height: 9 # high\n    name: w\n    kind: window\n    left: 1\n    "
          "bottom: 1  # sill\n    width: 9\n",
     HEAD
     "start: 0\n" FACE
     "  openings:\n  - name: w\n    kind: window\n    left: 1\n    bottom: floor # sill\n    width: 9\n    top: 10\n"},
    {"records of several kinds", hang_two,
     HEAD "start: 0\n" FACE
          "stock: [{length: 60, count: 2, gone: 2}]\nhung:\n- {face: north, course: 0, top: 3} # high\n"
          "- {board: 2, offset: 0, length: 9, state: lost} # split\n",
     HEAD "start: 0\n" FACE
          "stock: [{length: 60, count: 2, gone: 2}]\nhung:\n- {face: north, course: 0, top: 3} # high\n"
          "- {board: 2, offset: 0, length: 9, state: lost} # split\n"
          "- {face: north, course: 0, left: 0, right: 10, board: 1}\n- {face: north, course: 1, top: 6}\n"
          "- {face: north, course: 0, left: 10, right: 30, board: 1}\n"},
    {"one of several kinds out, and what came behind it", take_down_second,
     HEAD
     "start: 0\n" FACE "stock:\n- {length: 60, gone: 3} # bowed\n- {length: 60, found: 1, gone: 2}\nhung:\n"
     "- {face: north, course: 0, left: 0, right: 10, board: 1}\n- {board: 2, offset: 9, length: 9, state: lost} # a\n"
     "- {face: north, course: 1, left: 0, right: 10, board: 1, offset: 20}\n- {face: north, course: 1, top: 6} # b\n",
     HEAD
     "start: 0\n" FACE "stock:\n- {length: 60, gone: 2} # bowed\n- {length: 60, found: 1, gone: 2}\nhung:\n"
     "- {face: north, course: 0, left: 0, right: 10, board: 1}\n- {board: 2, offset: 9, length: 9, state: lost} # a\n"
     "- {face: north, course: 1, top: 6} # b\n"},
    {"a state", cut_it,
     HEAD "start: 0\n" FACE "hung: [{board: 2, offset: 9, length: 9, state: lost}, {left: 0, face: north, right: 10, "
          "course: 0, board: 1}]\n",
     HEAD "start: 0\n" FACE "hung: [{board: 2, offset: 9, length: 9, state: lost}, {left: 0, face: north, right: 10, "
          "course: 0, board: 1, state: cut}]\n"},
    {"studs by a list", stud_list, HEAD "start: 0\n" FACE "  studs: {first: 3, spacing: 16} # guessed\n",
     HEAD "start: 0\n" FACE "  studs: {at: [1, 20]} # guessed\n"},
    {"a mark", move_middle_mark,
     HEAD "start: 0\nfaces:\n- name: north\n  width: 100\n  floor: [{at: 0, down: 40}]\n  ceiling:\n  - {at: 0, up: "
          "50}   # left\n  - {at: 4' 2\", up: 50 1/4}   # beam\n  - {at: 100, up: 50}\n",
     HEAD "start: 0\nfaces:\n- name: north\n  width: 100\n  floor: [{at: 0, down: 40}]\n  ceiling:\n  - {at: 0, up: "
          "50}   # left\n  - {at: 4' 2\", up: 50 3/8}   # beam\n  - {at: 100, up: 50}\n"},
    {"a face", add_face, HEAD "start: 0\n" FACE "\n# pile\nstock: []\n",
     HEAD "start: 0\n" FACE "\n- name: east\n  width: 50\n  floor:\n  - {at: 0, down: 40}\n  ceiling:\n  - {at: 0, up: "
          "50}\n\n# pile\nstock: []\n"},
    {"other units", to_metric,
     "datumrow: 1\nunits: in # as the tape has it\nplanks: {width: 80 mm, thickness: 1/2}\nstart: 0\nfaces:\n- name: "
     "north\n  width: 8' 4\"\n  floor: [{at: 0, down: 40}]\n  ceiling: [{at: 0, up: 1.27 m}]\n  studs: {at: "
     "[8-3-1/2]}\n",
     "datumrow: 1\nunits: mm # as the tape has it\nplanks: {width: 80 mm, thickness: 12.7}\nstart: 0\nfaces:\n- name: "
     "north\n  width: 8' 4\"\n  floor: [{at: 0, down: 1016}]\n  ceiling: [{at: 0, up: 1.27 m}]\n  studs: {at: "
     "[2527.3]}\n"},
    {"a dash on a line of its own", change_stock_1, HEAD "start: 0\n" FACE "stock:\n-\n  length: 3 # three\n",
     HEAD "start: 0\n" FACE "stock:\n-\n  length: 3 # three\n  count: 12\n  tone: 'null'\n"},
};

START_TEST(a_change_writes_what_a_person_would)
{
    Text text;
    text_init(&text);
    int wrong = 0;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        Arena *arena = arena_new();
        Source source;
        Err err;
        parse(arena, cases[i].before, strlen(cases[i].before), &source);
        Document *document = document_new(source.wall);
        assert_done(cases[i].change(document, &err), &err);
        store_write(document_wall(document), &source, &text);
        if (strcmp(text.bytes, cases[i].after) != 0) {
            tests_note("%s:\n%s\nshould be\n%s\n", cases[i].what, text.bytes, cases[i].after);
            wrong++;
        }
        document_free(document);
        arena_free(arena);
    }
    text_finish(&text);
    assert_int_equal(wrong, 0);
}
END_TEST

static const char in_flow[] =
    "{datumrow: 1, units: in, planks: {width: 3, thickness: 1/2}, start: 0, stock: [{\"length\":4},{length: 5}],\n"
    "faces: [{name: north, width: 9, floor: [{at: 0, down: 9}], ceiling: [{at: 0, up: 9}]}]}\n...\n";

/* Laid out as nobody does: comments may go, values never. */
START_TEST(odd_layouts_lose_comments_never_values)
{
    static const char *const texts[] = {
        "? datumrow\n: 1\n? units\n: in\nplanks: {width: 3, thickness: 1/2}\nstart: 0\n" FACE "stock: [{length: 4}]\n",
        HEAD "start: 0\n" FACE "stock:\n- # the first\n  length: 4\n- ? length\n  : 5\n",
        HEAD "start: 0\n" FACE "stock:\n- {length: 4,\n   # which tone\n   tone: grey}\n- {length: 5,}\n",
        in_flow,
    };
    static Change *const changes[] = {raise,     add_stock, remove_stock_1, change_stock_1, give_reveal_and_least,
                                      to_metric, hang_two,  rename_face};
    Text text;
    Text again;
    text_init(&text);
    text_init(&again);
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
        for (size_t k = 0; k < sizeof changes / sizeof *changes; k++) {
            Arena *arena = arena_new();
            Source source;
            Source saved;
            Err err;
            parse(arena, texts[i], strlen(texts[i]), &source);
            Document *document = document_new(source.wall);
            assert_done(changes[k](document, &err), &err);
            store_write(document_wall(document), &source, &text);
            parse(arena, text.bytes, text.length, &saved);
            assert_true(wall_equal(saved.wall, document_wall(document)));
            store_write(document_wall(document), &saved, &again);
            assert_string_equal(text.bytes, again.bytes);
            document_free(document);
            arena_free(arena);
        }
    text_finish(&text);
    text_finish(&again);
}
END_TEST

/* ---- whole files ---- */

static int lines_that_differ(const char *a, const char *b)
{
    int count = 0;
    while (*a != '\0' || *b != '\0') {
        const size_t of_a = strcspn(a, "\n");
        const size_t of_b = strcspn(b, "\n");
        count += of_a != of_b || memcmp(a, b, of_a) != 0;
        a += of_a + (a[of_a] == '\n');
        b += of_b + (b[of_b] == '\n');
    }
    return count;
}

START_TEST(samples_change_only_where_something_changed)
{
    static const char *const names[] = {"gable", "hall", "reading-wall", "stove-corner"};
    const char *folder = getenv("DATUMROW_SOURCE");
    Text text;
    text_init(&text);
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        Arena *arena = arena_new();
        char path[4096];
        Source source;
        Errs errors = {0};
        Err err;
        snprintf(path, sizeof path, "%s/samples/%s.yaml", folder == NULL ? "." : folder, names[i]);
        assert_true(store_read(arena, path, &source, &errors));
        store_write(source.wall, &source, &text);
        assert_string_equal(text.bytes, source.text);
        Document *document = document_new(source.wall);
        assert_done(edit_nudge_start(document, document_wall(document)->round, &err), &err);
        store_write(document_wall(document), &source, &text);
        assert_int_equal(lines_that_differ(text.bytes, source.text), 1);
        document_free(document);
        arena_free(arena);
    }
    text_finish(&text);
}
END_TEST

START_TEST(all_keys_in_both_units)
{
    Arena *arena = arena_new();
    Text text;
    Source source;
    Source other;
    Err err;
    text_init(&text);
    parse(arena, everything, strlen(everything), &source);
    Document *document = document_new(source.wall);
    assert_done(edit_units(document, UNITS_MM, LENGTH_MM / 2, &err), &err);
    assert_true(keep_text(document_wall(document), &source, &text));
    parse(arena, text.bytes, text.length, &other);
    assert_true(wall_equal(document_wall(document), other.wall));
    assert_int_equal(other.wall->planks.widths.at[0], 3 * LENGTH_INCH);
    document_free(document);
    text_finish(&text);
    arena_free(arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        every_character_comes_back,
        each_random_wall_comes_back,
        any_wall_into_any_text,
        comments_stay_beside_what_they_head,
        a_change_writes_what_a_person_would,
        odd_layouts_lose_comments_never_values,
        samples_change_only_where_something_changed,
        all_keys_in_both_units,
    };
    return RUN(tests);
}
