/* The forms of the shop, the wood and the bill, filled key by key and saved: what stands in the file then. And that
 * every key of the wall file has its place in the editor. */
#include "support/test.h"

#include "../store/everything.h"
#include "base/file.h"
#include "paths.h"
#include "rig.h"
#include "screen/forms/form.h"
#include "store/store.h"

#include <stdio.h>
#include <string.h>

#define SHED                                                                       \
    "# The boat shed's back room.\n"                                               \
    "datumrow: 1\n"                                                                \
    "units: in\n"                                                                  \
    "planks: {width: 3, thickness: 1/2, reveal: 1/16}\n"                           \
    "start: 2\n"                                                                   \
    "saw: {kerf: 1/8}\n"                                                           \
    "faces:\n"                                                                     \
    "- name: back          # the one with the window\n"                            \
    "  width: 96\n"                                                                \
    "  floor: [{at: 0, down: 36}]\n"                                               \
    "  ceiling: [{at: 0, up: 40}]\n"                                               \
    "  openings:\n"                                                                \
    "  - {name: sash, kind: window, left: 30, bottom: 0, width: 24, height: 20}\n" \
    "  - {name: hatch, kind: other, left: 70, bottom: -20, width: 10, height: 10}\n"

static const Wall *wall_of(const Rig *rig)
{
    return document_wall(rig->app->document);
}

/* What is typed into the field in focus, and on to the next. */
static void fill(Rig *rig, const char *text)
{
    rig_key(rig, PRESS_CTRL | 'u');
    rig_type(rig, text);
    rig_key(rig, PRESS_TAB);
}

static void take(Rig *rig)
{
    rig_key(rig, PRESS_CTRL | 'd');
}

/* Saves; the file is just `expected`, and reads back as the wall that is shown. */
static void assert_saved(Rig *rig, const char *expected)
{
    rig_key(rig, PRESS_CTRL | 's');
    assert_shows(rig, "wall.yaml, saved");
    char path[200];
    snprintf(path, sizeof path, "%s/wall.yaml", rig->folder);
    Text text;
    text_init(&text);
    Err err;
    assert_done(file_read(path, 1 << 20, &text, &err), &err);
    assert_string_equal(text.bytes, expected);
    Arena *arena = arena_new();
    Source source;
    Errs errs = {0};
    assert_true(store_read(arena, path, &source, &errs));
    assert_true(wall_equal(source.wall, wall_of(rig)));
    arena_free(arena);
    text_finish(&text);
}

/* One step back, and the file is what it was. */
static void assert_one_step(Rig *rig, const char *name, const char *before)
{
    assert_string_equal(document_undo_name(rig->app->document), name);
    rig_key(rig, PRESS_CTRL | 'z');
    assert_null(document_undo_name(rig->app->document));
    assert_saved(rig, before);
}

/* ---- the wood ---- */

START_TEST(the_wood_is_written_down)
{
    Rig *rig = rig_on_text(80, 24, SHED);
    rig_type(rig, "W");
    assert_shows(rig, "not known: no seasons");
    rig_type(rig, "eastern white pine");
    assert_shows(rig, "nearest: pine, eastern");
    rig_key(rig, PRESS_CTRL | 'n');
    assert_shows(rig, "0.212 % flat, 0.071 % quarter"); /* Wood Handbook, Table 13-5: 0.00212 and 0.00071 */
    rig_key(rig, PRESS_TAB);
    rig_type(rig, "q");
    rig_key(rig, PRESS_TAB);
    rig_type(rig, "68");
    assert_shows(rig, "does not say its unit");
    rig_type(rig, " F");
    assert_shows(rig, "68 F = 20 C");
    rig_key(rig, PRESS_TAB);
    fill(rig, "45");
    fill(rig, "21.5 C");
    fill(rig, "25");
    fill(rig, "75 F");
    fill(rig, "65");
    take(rig);
    assert_shows(rig, "Done: change the wood.");
    assert_saved(rig, SHED "wood:\n"
                           "  species: 'pine, eastern white'\n"
                           "  grain: quarter\n"
                           "  hung: {temperature: 68 F, humidity: 45}\n"
                           "  dry: {temperature: 21.5 C, humidity: 25}\n"
                           "  damp: {temperature: 75 F, humidity: 65}\n");
    assert_one_step(rig, "change the wood", SHED);
    rig_free(rig);
}
END_TEST

#define DAMP_WOOD                                               \
    "wood:   # off the old landing\n"                           \
    "  species: oak, white\n"                                   \
    "  hung: {temperature: 60 F, humidity: 55}\n"               \
    "  dry:  {temperature: 65 F, humidity: 35}   # the stove\n" \
    "  damp: {temperature: 70 F, humidity: 80}\n"

START_TEST(what_is_not_changed_of_the_wood_stays_as_it_was_written)
{
    Rig *rig = rig_on_text(80, 24, SHED DAMP_WOOD);
    rig_type(rig, "W");
    assert_shows(rig, "oak, white");
    take(rig);
    assert_shows(rig, "Nothing was changed.");
    assert_null(document_undo_name(rig->app->document)); /* taken as it was: no change */
    rig_type(rig, "W");
    rig_keys(rig, PRESS_TAB, 5);
    fill(rig, "30");
    take(rig);
    assert_saved(rig, SHED "wood:   # off the old landing\n"
                           "  species: oak, white\n"
                           "  hung: {temperature: 60 F, humidity: 55}\n"
                           "  dry:  {temperature: 65 F, humidity: 30}   # the stove\n"
                           "  damp: {temperature: 70 F, humidity: 80}\n");
    assert_one_step(rig, "change the wood", SHED DAMP_WOOD);
    rig_free(rig);
}
END_TEST

/* What was done before is not told as done now. */
START_TEST(a_form_that_changes_nothing_says_so)
{
    Rig *rig = rig_on_text(80, 24, SHED);
    rig_key(rig, PRESS_UP);
    rig_type(rig, "4");
    take(rig);
    assert_shows(rig, "Nothing was changed.");
    assert_hides(rig, "Done: raise");
    rig_free(rig);
}
END_TEST

START_TEST(a_form_emptied_leaves_the_wood_open)
{
    Rig *rig = rig_on_text(80, 24, SHED DAMP_WOOD);
    rig_type(rig, "W");
    for (int i = 0; i < 8; i++)
        fill(rig, "");
    take(rig);
    assert_false(wall_of(rig)->wood.given);
    assert_saved(rig, SHED);
    assert_one_step(rig, "change the wood", SHED DAMP_WOOD);
    rig_free(rig);
}
END_TEST

START_TEST(what_is_wrong_with_the_wood_is_said_at_its_field)
{
    Rig *rig = rig_on_text(80, 24, SHED DAMP_WOOD);
    Form *form;
    rig_type(rig, "W");
    rig_type(rig, "larch");
    take(rig);
    assert_shows(rig, "One entry is not good yet: Species");
    assert_shows(rig, "not known; nearest: "); /* in whole, at the foot */
    rig_key(rig, PRESS_CTRL | 'u');
    rig_type(rig, "spruce, sitka");
    rig_keys(rig, PRESS_TAB, 3);
    fill(rig, "");
    take(rig);
    form = layers_top(&rig->app->layers)->state;
    assert_string_equal(form->fields[form->focus].path, "hung.humidity");
    assert_shows(rig, "this is missing; write it in percent, like 45");
    rig_type(rig, "99");
    rig_key(rig, PRESS_TAB);
    take(rig);
    assert_string_equal(form->fields[form->focus].path, "hung.humidity");
    assert_shows(rig, "write 0 to 98");
    fill(rig, "50");
    fill(rig, "300 F");
    take(rig);
    assert_string_equal(form->fields[form->focus].path, "dry.temperature");
    assert_shows(rig, "30 F to 210");
    rig_key(rig, PRESS_CTRL | 'u');
    rig_type(rig, "62 F");
    take(rig);
    assert_hides(rig, "take it");
    assert_string_equal(wall_of(rig)->wood.species, "spruce, sitka");
    rig_free(rig);
}
END_TEST

/* ---- the bill ---- */

START_TEST(the_bill_shows_what_holds_where_nothing_is_written)
{
    Rig *rig = rig_on_text(120, 40, SHED);
    rig_type(rig, "B");
    assert_shows(rig, "10 (WWPA, Table 4: 10 % for trim and waste)");
    assert_shows(rig, "1 (NAVEDTRA 14044");
    assert_shows(rig, "pieces (common practice: one bead");
    assert_shows(rig, "1/4 in (common practice)");
    rig_keys(rig, PRESS_TAB, 6); /* what is cut is told in whole at the foot */
    assert_shows(rig, "400 (common practice: makers state 450 sq ft a gallon, plan on 400)");
    assert_shows(rig, "sq ft a gallon");
    assert_shows(rig, "1 in (NAVEDTRA 14044");
    take(rig);
    assert_null(document_undo_name(rig->app->document));
    rig_free(rig);
    /* wider planks take two, thicker ones are counted whole, and a metric wall has metric figures */
    rig = rig_on_text(120, 40,
                      "datumrow: 1\nunits: mm\nplanks: {width: 120, thickness: 30}\nstart: 0\nfaces:\n- name: loft\n"
                      "  width: 900\n  floor: [{at: 0, down: 500}]\n  ceiling: [{at: 0, up: 500}]\n");
    rig_type(rig, "B");
    assert_shows(rig, "2 (NAVEDTRA 14044");
    assert_shows(rig, "300 (common practice: cartridges");
    assert_shows(rig, "m2 a litre");
    assert_shows(rig, "1220 mm (");
    assert_shows(rig, "30 mm (NAVEDTRA");
    rig_free(rig);
}
END_TEST

START_TEST(the_bill_is_written_down)
{
    Rig *rig = rig_on_text(80, 24,
                           SHED "bill:\n"
                                "  spare: 15       # knots\n"
                                "  coats: 3\n");
    rig_type(rig, "B");
    fill(rig, ""); /* the spare */
    fill(rig, "2");
    rig_type(rig, "s");
    rig_key(rig, PRESS_TAB);
    fill(rig, "3/8");
    fill(rig, "28");
    fill(rig, "2.5");
    fill(rig, "350");
    fill(rig, "10");
    fill(rig, "4'");
    fill(rig, "5'");
    fill(rig, "1 1/4");
    take(rig);
    const Bill *bill = &wall_of(rig)->bill;
    assert_false(bill->spare.given);
    assert_int_equal(bill->coats.thousandths, 2500);
    assert_int_equal(bill->glue, GLUE_STUDS);
    assert_int_equal(bill->nominal.length, 5 * LENGTH_INCH / 4);
    assert_saved(rig, SHED "bill:\n"
                           "  fasteners: 2\n"
                           "  glue: studs\n"
                           "  bead: 3/8\n"
                           "  cartridge: 28\n"
                           "  coats: 2.5\n"
                           "  coverage: 350\n"
                           "  thinning: 10\n"
                           "  sheet: {width: 48, length: 60}\n"
                           "  nominal: 1 1/4\n");
    rig_type(rig, "B");
    for (int i = 0; i < 11; i++)
        if (i == 2) {
            rig_type(rig, "a");
            rig_key(rig, PRESS_TAB);
        } else {
            fill(rig, "");
        }
    take(rig);
    assert_false(wall_of(rig)->bill.given);
    assert_saved(rig, SHED);
    rig_keys(rig, PRESS_CTRL | 'z', 2);
    assert_null(document_undo_name(rig->app->document));
    assert_int_equal(wall_of(rig)->bill.spare.thousandths, 15000);
    rig_free(rig);
}
END_TEST

START_TEST(a_mapping_that_says_nothing_stays)
{
    Rig *rig = rig_on_text(80, 24, SHED "bill: {}   # to be asked\nmill: {}\n");
    rig_type(rig, "B");
    take(rig);
    rig_type(rig, "M");
    take(rig);
    assert_hides(rig, "take it");
    assert_null(document_undo_name(rig->app->document));
    rig_free(rig);
}
END_TEST

START_TEST(what_is_wrong_with_the_bill_is_said_at_its_field)
{
    Rig *rig = rig_on_text(80, 24, SHED);
    rig_type(rig, "B");
    const Form *form = layers_top(&rig->app->layers)->state;
    rig_type(rig, "10 %");
    assert_shows(rig, "in percent already");
    rig_key(rig, PRESS_CTRL | 'u');
    rig_keys(rig, PRESS_TAB, 6);
    fill(rig, "0");
    take(rig);
    assert_string_equal(form->fields[form->focus].path, "coverage");
    assert_shows(rig, "out of its range; write a number from 1");
    fill(rig, "");
    rig_key(rig, PRESS_TAB);
    fill(rig, "2");
    take(rig);
    assert_string_equal(form->fields[form->focus].path, "sheet.width"); /* narrower than any sheet */
    fill(rig, "48");
    take(rig);
    assert_string_equal(form->fields[form->focus].path, "sheet.length"); /* a sheet has two sizes */
    fill(rig, "3");
    take(rig);
    assert_string_equal(form->fields[form->focus].path, "sheet.length");
    assert_shows(rig, "the length of a sheet");
    assert_null(document_undo_name(rig->app->document));
    rig_free(rig);
}
END_TEST

/* ---- milling and rough boards ---- */

START_TEST(milling_is_written_down)
{
    Rig *rig = rig_on_text(80, 24, SHED);
    rig_type(rig, "M");
    assert_shows(rig, "that of the saw: 1/8 in");
    fill(rig, "1/8");
    fill(rig, "3/32");
    fill(rig, "-1");
    take(rig);
    const Form *form = layers_top(&rig->app->layers)->state;
    assert_string_equal(form->fields[form->focus].path, "plane");
    fill(rig, "1/16");
    take(rig);
    assert_saved(rig, SHED "mill: {edge: 1/8, kerf: 3/32, plane: 1/16}\n");
    assert_one_step(rig, "change the milling", SHED);
    rig_free(rig);
}
END_TEST

#define PILE                    \
    "mill: {edge: 1/8}\n"       \
    "# off the old boat shed\n" \
    "rough:\n"                  \
    "- {label: C, width: 7 3/8, thickness: 7/8, length: 63, count: 9}   # grey\n"

START_TEST(rough_boards_are_written_down)
{
    Rig *rig = rig_on_text(80, 24, SHED PILE);
    rig_type(rig, "R");
    assert_shows(rig, "7 3/8 by 7/8, 63 long");
    assert_shows(rig, "2 planks each"); /* 2 x 3, 2 x 1/8 off the edges and a kerf of 1/8: 6 3/8; a third takes 9 1/2 */
    rig_type(rig, "a");
    assert_shows(rig, "More rough boards, all alike");
    fill(rig, "84");
    fill(rig, "9 3/4");
    fill(rig, "1");
    fill(rig, "42"); /* both ends: nothing is left */
    fill(rig, "tan");
    fill(rig, "D1");
    fill(rig, "30 to 36, 50 to 51");
    take(rig);
    const Form *form = layers_top(&rig->app->layers)->state;
    assert_string_equal(form->fields[form->focus].path, "ends");
    fill(rig, "3");
    fill(rig, "tan");
    fill(rig, "D1");
    fill(rig, "40 to 36");
    take(rig);
    assert_string_equal(form->fields[form->focus].path, "avoid"); /* the check names one of its stretches */
    fill(rig, "30 to 36, 50 to 51");
    take(rig);
    assert_shows(rig, "Done: add 1 rough board.");
    rig_type(rig, "j");
    assert_shows(rig, "3 planks each"); /* 9 1/2 of 9 3/4 */
    assert_shows(rig, "Each: cut 3 in off each end");
    rig_key(rig, PRESS_ESCAPE);
    assert_saved(rig, SHED PILE "- {label: D1, width: 9 3/4, thickness: 1, length: 84, ends: 3, tone: tan, "
                                "avoid: [{from: 30, to: 36}, {from: 50, to: 51}]}\n");
    assert_one_step(rig, "add 1 rough board", SHED PILE);
    rig_type(rig, "R");
    rig_key(rig, PRESS_ENTER);
    fill(rig, "8");
    take(rig);
    assert_shows(rig, "Done: change line 1 of the rough boards.");
    assert_int_equal(wall_of(rig)->rough.at[0].count, 8);
    rig_type(rig, "x");
    assert_shows(rig, "Ctrl-Z brings it back");
    assert_shows(rig, "No rough boards yet; a adds some.");
    rig_key(rig, PRESS_CTRL | 'z'); /* in the list */
    assert_int_equal(wall_of(rig)->rough.count, 1);
    rig_free(rig);
}
END_TEST

/* ---- runs of trim ---- */

START_TEST(runs_of_trim_are_written_down)
{
    Rig *rig = rig_on_text(80, 24, SHED);
    rig_type(rig, "T");
    assert_shows(rig, "No runs of trim; a adds one: floor, ceiling, corner, opening or edge.");
    rig_type(rig, "a");
    assert_shows(rig, "A new run of trim");
    assert_shows(rig, "that of the planks: ");
    rig_type(rig, "c");
    rig_key(rig, PRESS_TAB);
    fill(rig, "1 1/2");
    take(rig);
    assert_shows(rig, "Done: add trim along the ceiling.");
    assert_shows(rig, "1 strip, 96 in"); /* the face's width, cut short by nothing */
    rig_type(rig, "a");
    rig_type(rig, "o");
    rig_type(rig, "o"); /* past the outside corners */
    rig_key(rig, PRESS_TAB);
    fill(rig, "2 1/4");
    fill(rig, "3/4");
    rig_type(rig, "hach");
    assert_shows(rig, "nearest: ");
    rig_key(rig, PRESS_CTRL | 'n');
    assert_shows(rig, "other on back");
    rig_key(rig, PRESS_CTRL | 'n'); /* round to the first */
    assert_shows(rig, "window on back");
    take(rig);
    assert_shows(rig, "Done: add trim round openings.");
    rig_key(rig, PRESS_ESCAPE);
    assert_saved(rig, SHED "trim:\n"
                           "  runs:\n"
                           "  - {along: ceiling, width: 1 1/2}\n"
                           "  - {along: openings, width: 2 1/4, thickness: 3/4, opening: sash}\n");
    rig_type(rig, "T");
    rig_key(rig, PRESS_ENTER);
    rig_keys(rig, PRESS_TAB, 3);
    rig_type(rig, "sash");
    take(rig);
    const Form *form = layers_top(&rig->app->layers)->state;
    assert_string_equal(form->fields[form->focus].path, "opening"); /* a ceiling goes round nothing */
    fill(rig, "");
    take(rig);
    rig_type(rig, "xx");
    assert_false(wall_of(rig)->trim.given);
    rig_key(rig, PRESS_ESCAPE);
    assert_saved(rig, SHED);
    rig_keys(rig, PRESS_CTRL | 'z', 4);
    assert_null(document_undo_name(rig->app->document));
    rig_free(rig);
}
END_TEST

/* ---- the head of the file ---- */

/* The rig's last face, then one more: the floor and the ceiling stand at the corner as high as on the face it meets,
 * whose other marks lie on that face alone. */
START_TEST(a_new_face_begins_where_the_last_ends)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "A");
    fill(rig, "south");
    fill(rig, "40");
    take(rig);
    assert_int_equal(wall_of(rig)->faces.count, 3);
    const Face *face = &wall_of(rig)->faces.at[1]; /* to the right of north */
    assert_string_equal(face->name, "south");
    assert_int_equal(face->floor.count, 1);
    assert_int_equal(face->floor.at[0].at, 0);
    assert_int_equal(face->floor.at[0].off, 39 * LENGTH_INCH + 15 * (LENGTH_INCH / 16));
    assert_int_equal(face->ceiling.count, 1);
    assert_int_equal(face->ceiling.at[0].off, 52 * LENGTH_INCH + 14 * (LENGTH_INCH / 16));
    rig_free(rig);
}
END_TEST

/* Whoever measures in millimetres is shown no inches to imitate. */
START_TEST(examples_are_in_the_units_of_the_wall)
{
    static const char metric[] = "datumrow: 1\nunits: mm\nplanks: {width: 90, thickness: 14}\nstart: 0\n"
                                 "faces: [{name: end, width: 900, floor: [{at: 0, down: 500}], "
                                 "ceiling: [{at: 0, up: 500}]}]\nstock: [{length: 1000, count: 9}]\n";
    static const char *const ways[] = {"5", "6\r", "t", "Ra"};
    for (int i = 0; i < 4; i++) {
        Rig *rig = rig_on_text(100, 40, metric);
        for (const char *key = ways[i]; *key != '\0'; key++)
            rig_key(rig, *key == '\r' ? PRESS_ENTER : (Key)*key);
        assert_hides(rig, "34 1/2");
        assert_hides(rig, "30 1/4");
        assert_shows(rig, i == 0 ? "else 360, 770" : "else 790 to 880");
        rig_free(rig);
    }
}
END_TEST

/* What a choice says is not dropped without a word. */
START_TEST(a_joint_takes_a_corner)
{
    Rig *rig =
        rig_on_text(80, 24, SHED "- {name: side, width: 40, floor: [{at: 0, down: 36}], ceiling: [{at: 0, up: 40}]}\n");
    rig_type(rig, "5");
    rig_keys(rig, PRESS_UP, 9);
    rig_key(rig, PRESS_RIGHT); /* its joint */
    take(rig);
    assert_shows(rig, "a joint takes a corner: choose inside or outside first");
    rig_key(rig, PRESS_RIGHT); /* the corner has the focus */
    rig_key(rig, PRESS_DOWN);
    rig_key(rig, PRESS_LEFT);
    take(rig);
    assert_int_equal(wall_of(rig)->faces.at[0].corner.kind, CORNER_INSIDE);
    rig_free(rig);
}
END_TEST

/* The wall of all keys, without asking before what hangs is moved under. */
static Rig *rig_on_everything(void)
{
    Rig *rig = rig_on_text(80, 24, everything);
    rig_type(rig, "1g"); /* the form of the start; go on */
    rig_key(rig, PRESS_ESCAPE);
    return rig;
}

START_TEST(a_gap_takes_a_corner)
{
    Rig *rig =
        rig_on_text(80, 24, SHED "- {name: side, width: 40, floor: [{at: 0, down: 36}], ceiling: [{at: 0, up: 40}]}\n");
    rig_type(rig, "5");
    rig_keys(rig, PRESS_UP, 7);
    fill(rig, "-1/4");
    take(rig);
    assert_shows(rig, "a gap takes a corner: choose inside or outside first");
    rig_key(rig, PRESS_RIGHT);
    take(rig);
    assert_int_equal(wall_of(rig)->faces.at[0].corner.gap, -LENGTH_INCH / 4);
    rig_free(rig);
}
END_TEST

START_TEST(what_boards_show_is_typed_line_by_line)
{
    Rig *rig = rig_on_everything();
    const Stock *stock = &wall_of(rig)->stock.at[0];
    assert_int_equal(stock->show.count, 1);
    rig_type(rig, "6");
    rig_key(rig, PRESS_ENTER);
    rig_keys(rig, PRESS_UP, 3);
    fill(rig, "33 1/2");
    fill(rig, "old bolt");
    take(rig);
    stock = &wall_of(rig)->stock.at[0];
    assert_int_equal(stock->show.count, 2);
    assert_int_equal(stock->show.at[1].at, 67 * LENGTH_INCH / 2);
    assert_string_equal(stock->show.at[1].what, "old bolt");
    rig_free(rig);
}
END_TEST

START_TEST(title_and_units_are_one_step)
{
    Rig *rig = rig_on_text(80, 24, SHED);
    rig_type(rig, "9");
    fill(rig, "Back room");
    rig_type(rig, "m");
    rig_key(rig, PRESS_TAB);
    fill(rig, "0.5");
    take(rig);
    assert_shows(rig, "Done: change title, units and marking.");
    assert_int_equal(wall_of(rig)->units, UNITS_MM);
    assert_one_step(rig, "change title, units and marking", SHED);
    rig_type(rig, "9");
    char longest[WALL_NAME_MOST + 2];
    memset(longest, 'a', sizeof longest - 1);
    longest[sizeof longest - 1] = '\0';
    fill(rig, longest);
    rig_type(rig, "m");
    rig_key(rig, PRESS_TAB);
    fill(rig, "1");
    take(rig); /* refused as a whole */
    const Form *form = layers_top(&rig->app->layers)->state;
    assert_string_equal(form->fields[form->focus].path, "title");
    assert_int_equal(wall_of(rig)->units, UNITS_IN);
    rig_free(rig);
}
END_TEST

/* ---- trim measured by hand, fasteners ---- */

START_TEST(a_count_left_empty_is_one)
{
    Rig *rig = rig_on_text(80, 24, SHED);
    rig_type(rig, "8");
    fill(rig, "96");
    rig_keys(rig, PRESS_TAB, 3); /* its count, and the blank line */
    fill(rig, "lip");
    fill(rig, "36");
    take(rig);
    assert_saved(rig, SHED "trim:\n"
                           "  stock:\n"
                           "  - {length: 96}\n"
                           "  pieces:\n"
                           "  - {name: lip, length: 36}\n");
    rig_free(rig);
}
END_TEST

START_TEST(drywall_without_a_fastener_is_not_dropped)
{
    Rig *rig = rig_on_text(80, 24, SHED);
    rig_type(rig, "7");
    rig_key(rig, PRESS_TAB);
    fill(rig, "1/2");
    take(rig);
    assert_saved(rig, SHED "fasteners: {drywall: 1/2}\n");
    rig_type(rig, "7");
    fill(rig, "2");
    take(rig);
    assert_saved(rig, SHED "fasteners: {length: 2, drywall: 1/2}\n");
    rig_free(rig);
}
END_TEST

/* ---- all keys ---- */

/* How one gets to the form of the keys that begin so, on the wall of everything.h. The first that fits counts. */
typedef struct Way {
    const char *begin;
    const char *keys; /* '\n' is Enter; NULL: no form, and `why` */
    const char *why;
} Way;

static const Way ways[] = {
    {"datumrow", NULL, "the format is not the user's"},
    {"hung[]", NULL, "recorded while hanging (tests/screen/hang.c)"},
    {"planks.hang", NULL, "no field yet"},
    {"joints.closer", NULL, "no field yet"},
    {"joints.spend", NULL, "no field yet"},
    {"joints.pins", NULL, "no field yet"},
    {"joints.bars", NULL, "no field yet"},
    {"faces[].openings[].above-floor", NULL, "no field yet: the lower edge, in another unit"},
    {"stock[].gone", NULL, "no field yet"},
    {"stock[].found", NULL, "no field yet"},
    {"planks.", "2", NULL},
    {"start", "1", NULL},
    {"joints.", "3", NULL},
    {"saw.", "4", NULL},
    {"faces[].openings[].top", "nn\n", NULL},
    {"faces[].openings[].", "n\n", NULL},
    {"faces[].", "5", NULL},
    {"stock[].", "6\n", NULL},
    {"fasteners.", "7", NULL},
    {"trim.runs[].", "T\n", NULL},
    {"trim.", "8", NULL},
    {"wood.", "W", NULL},
    {"rough[].", "R\n", NULL},
    {"mill.", "M", NULL},
    {"bill.", "B", NULL},
    {"", "9", NULL},
};

static Form *open_form(Rig *rig, const Way *way)
{
    for (const char *key = way->keys; *key != '\0'; key++) {
        rig_key(rig, *key == '\n' ? PRESS_ENTER : (Key)(unsigned char)*key);
        if (key[1] == '\0')
            assert_shows(rig, "take it");
    }
    return layers_top(&rig->app->layers)->state;
}

/* A field with the name; one of several stretches stands for both its ends. */
static bool has_field(const Form *form, const char *name)
{
    for (int i = 0; i < form->count; i++) {
        char path[160];
        const Field *field = &form->fields[i];
        if (field->group >= 0)
            snprintf(path, sizeof path, "%s[].%s", form->groups[field->group].path, field->path);
        else
            snprintf(path, sizeof path, "%s", field->path);
        size_t length = strlen(path);
        if (strcmp(path, name) == 0 ||
            (field->kind == FIELD_STRETCHES && strncmp(path, name, length) == 0 && name[length] == '['))
            return true;
    }
    return false;
}

enum { WAYS = sizeof ways / sizeof *ways, PATHS_MOST = 400, PATH_BYTES = 128 };

typedef struct Paths {
    char at[PATHS_MOST][PATH_BYTES];
    int count;
} Paths;

static void keep_path(const char *path, void *context)
{
    Paths *paths = context;
    assert_true(paths->count < PATHS_MOST);
    snprintf(paths->at[paths->count++], PATH_BYTES, "%s", path);
}

static const Way *way_to(const char *path)
{
    const Way *way = ways;
    while (strncmp(path, way->begin, strlen(way->begin)) != 0)
        way++;
    return way;
}

/* What the form calls the key: its path behind the way's, which ends in a dot where it is that of a mapping. */
static const char *name_in_form(const Way *way, const char *path)
{
    size_t length = strlen(way->begin);
    if (length == 0 || way->begin[length - 1] == '.')
        return path + length;
    const char *dot = strrchr(path, '.');
    return dot != NULL ? dot + 1 : path;
}

START_TEST(every_key_of_the_file_has_its_place)
{
    Paths paths = {.count = 0};
    paths_of_values(keep_path, &paths);
    int missing = 0, found = 0;
    for (const Way *way = ways; way < ways + WAYS; way++) {
        if (way->keys == NULL)
            continue;
        Rig *rig = rig_on_everything();
        const Form *form = open_form(rig, way);
        for (int i = 0; i < paths.count; i++) {
            if (way_to(paths.at[i]) != way)
                continue;
            found++;
            if (!has_field(form, name_in_form(way, paths.at[i]))) {
                missing++;
                printf("# %s has no field in the form behind %s\n", paths.at[i], way->keys);
            }
        }
        rig_free(rig);
    }
    assert_int_equal(missing, 0);
    assert_true(found > 80);
}
END_TEST

START_TEST(a_form_taken_as_it_is_changes_nothing)
{
    for (const Way *way = ways; way < ways + WAYS; way++) {
        if (way->keys == NULL)
            continue;
        Rig *rig = rig_on_everything();
        open_form(rig, way);
        take(rig);
        assert_hides(rig, "take it");
        if (document_undo_name(rig->app->document) != NULL)
            FAIL("the form behind %s changed something: %s", way->keys, document_undo_name(rig->app->document));
        rig_free(rig);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        the_wood_is_written_down,
        what_is_not_changed_of_the_wood_stays_as_it_was_written,
        a_form_that_changes_nothing_says_so,
        a_form_emptied_leaves_the_wood_open,
        what_is_wrong_with_the_wood_is_said_at_its_field,
        the_bill_shows_what_holds_where_nothing_is_written,
        the_bill_is_written_down,
        a_mapping_that_says_nothing_stays,
        what_is_wrong_with_the_bill_is_said_at_its_field,
        milling_is_written_down,
        rough_boards_are_written_down,
        runs_of_trim_are_written_down,
        a_new_face_begins_where_the_last_ends,
        examples_are_in_the_units_of_the_wall,
        a_joint_takes_a_corner,
        a_gap_takes_a_corner,
        what_boards_show_is_typed_line_by_line,
        title_and_units_are_one_step,
        a_count_left_empty_is_one,
        drywall_without_a_fastener_is_not_dropped,
        every_key_of_the_file_has_its_place,
        a_form_taken_as_it_is_changes_nothing,
    };
    return RUN(tests);
}
