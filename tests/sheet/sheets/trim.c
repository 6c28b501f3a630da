/*
 * Trim on the cut sheet, worked out by hand: a casing 2 in wide round a window of 40 by 20 in, so that head and sill
 * are 44 in at their long points and 40 at the short ones, legs 24 and 20; and a strip that was measured, 30 in.
 */
#include "layout/made.h"

#include "sheet/shown.h"

static Made bench_new(Length stock)
{
    Made made = made_new(UNITS_IN, IN(5), 0, 0);
    Face *face = made_face(&made, "north", IN(100), 0, IN(60));
    made_opening(&made, face, "bay", IN(30), IN(20), IN(40), IN(20));
    Wall *wall = made.wall;
    wall->saw = (Saw){.kerf = IN(0.125), .square = IN(0.25)};
    wall->trim.given = true;
    *arena_push(made.arena, &wall->trim.stock) = (TrimStock){.length = stock, .count = 4};
    *arena_push(made.arena, &wall->trim.pieces) = (TrimPiece){.name = "shelf lip", .length = IN(30), .count = 1};
    *arena_push(made.arena, &wall->trim.runs) = (TrimRun){
        .along = ALONG_OPENINGS, .width = IN(2), .thickness_given = true, .thickness = IN(0.75), .opening = ""};
    return made;
}

START_TEST(strips_and_their_points)
{
    Made made = bench_new(IN(96));
    const char *text = shown(sheet_cuts(made.arena, shown_job(made.arena, made_layout(&made)), ""));
    assert_holds(text, "bay head: 44 to the long points, 40 to the short ones, 3/4 thick\n"
                       "    Rip 2 in; left end mitered 45 degrees; right end mitered 45 degrees\n");
    assert_holds(text, "bay left leg: 24 to the long points, 20 to the short ones, 3/4 thick\n");
    assert_holds(text, "No plan uses less.");
    arena_free(made.arena);
}
END_TEST

/* Of 166 in and the cuts two boards of 96 in are enough; each piece is in the data once, with its board. */
START_TEST(pieces_in_the_data)
{
    Made made = bench_new(IN(96));
    const Sheet *sheet = sheet_cuts(made.arena, shown_job(made.arena, made_layout(&made)), "");
    static const struct {
        const char *name, *length;
    } rows[] = {
        {"shelf lip", "30"}, {"bay head", "44"}, {"bay sill", "44"}, {"bay left leg", "24"}, {"bay right leg", "24"}};
    int found = 0;
    for (int i = 0; i < sheet->records.count; i++)
        found += strcmp(shown_field(sheet, i, "kind"), "trim") == 0;
    assert_int_equal(found, 5);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        int record = shown_record(sheet, "name", rows[i].name);
        assert_string_equal(shown_field(sheet, record, "length"), rows[i].length);
        assert_string_equal(shown_field(sheet, record, "board length"), "96");
    }
    assert_holds(shown(sheet), "Uses 2 of 4 boards, 192 in of them for trim.");
    arena_free(made.arena);
}
END_TEST

START_TEST(no_board_long_enough)
{
    Made made = bench_new(IN(40));
    const char *text = shown(sheet_cuts(made.arena, shown_job(made.arena, made_layout(&made)), ""));
    assert_holds(text, "No board is left that is long enough for bay head, 44 in long.");
    assert_holds(text, "Uses 3 of 4 boards, 120 in of them for trim.");
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        strips_and_their_points,
        pieces_in_the_data,
        no_board_long_enough,
    };
    return RUN(tests);
}
