/* Pieces by the saw's settings: faces 1000 mm wide, planks of 100 mm, gaps of 10 mm. */
#include "layout/made.h"

#include "sheet/shown.h"

static void put_stock(Made *made, Length length, int count)
{
    Stock *stock = arena_push(made->arena, &made->wall->stock);
    *stock = (Stock){.length = length, .count = count};
    stock->label = stock->tone = arena_text(made->arena, "", 0);
}

/* Two courses of two pieces: 600 and 400, on boards that give one each. */
static Made two_courses(void)
{
    Made made = made_new(UNITS_MM, MM(100), MM(10), 0);
    made_face(&made, "north", MM(1000), 0, MM(210));
    made.wall->joints.shortest = MM(100);
    made.wall->saw.kerf = MM(3);
    return made;
}

START_TEST(equal_lengths_stand_on_one_line)
{
    Made made = two_courses();
    put_stock(&made, MM(1000), 2);
    Sheet *batch = sheet_batch(made.arena, shown_job(made.arena, made_layout(&made)), "");
    const char *text = shown(batch);
    assert_holds(text, "2 pieces to cut.");
    assert_holds(text, "Boards 1000 long, first cut: 2 pieces");
    assert_int_equal(shown_times(text, "[ ]       1000  1 of "), 1);
    assert_int_equal(shown_times(text, "; 2 of "), 1);
    assert_holds(text, "2 pieces have the full width, 100 mm.");
    assert_lacks(text, "Fence at");
    assert_lacks(text, "\nSaw angles");
    assert_lacks(text, "(closer)");
    arena_free(made.arena);
}
END_TEST

/* A floor that takes 40 of the lowest course: straight rips are one setting, full planks another. */
START_TEST(rips_are_grouped_by_the_fence)
{
    Made made = made_new(UNITS_MM, MM(100), MM(10), 0);
    made_face(&made, "north", MM(1000), MM(40), MM(210));
    made_face(&made, "east", MM(1000), MM(40), MM(210));
    Face *west = made_face(&made, "west", MM(1000), 0, MM(100));
    made_marks(&made, &west->floor, 2, (Length[]){0, MM(-20), MM(1000), MM(-30)});
    put_stock(&made, MM(1000), 5);
    Sheet *batch = sheet_batch(made.arena, shown_job(made.arena, made_layout(&made)), "");
    const char *text = shown(batch);
    assert_holds(text, "Fence at 60 mm: 2 pieces\n    Pieces 1, 3.");
    assert_holds(text, "2 pieces have the full width, 100 mm.");
    assert_holds(text, "Piece 5\n    taper off the lower edge, 80 at the left to 70 at the right");
    int straight = shown_record(batch, "fence", "60");
    assert_string_equal(shown_field(batch, straight, "rip"), "straight");
    int taper = shown_record(batch, "rip", "taper");
    assert_string_equal(shown_field(batch, taper, "fence"), "");
    arena_free(made.arena);
}
END_TEST

START_TEST(ends_are_grouped_by_their_angle)
{
    Made made = made_new(UNITS_MM, MM(100), MM(10), 0);
    made.wall->planks.thickness = MM(12);
    Face *north = made_face(&made, "north", MM(1000), 0, MM(210));
    north->corner = (Corner){.kind = CORNER_OUTSIDE, .joint = CORNER_MITER};
    made_face(&made, "east", MM(1000), 0, MM(210));
    made.wall->joints.shortest = MM(300);
    put_stock(&made, MM(1020), 4);
    const char *text = shown(sheet_batch(made.arena, shown_job(made.arena, made_layout(&made)), ""));
    assert_int_equal(shown_times(text, "45 degree miter"), 1);
    assert_holds(text, "    Left ends of pieces 2, 4. Right ends of pieces 1, 3.");
    assert_holds(text, "1* of ");
    arena_free(made.arena);
}
END_TEST

/* Under a ceiling that rises 1 in 2 the saw is set to 63.4 degrees off square. */
START_TEST(a_rake_has_its_angle)
{
    Made made = made_new(UNITS_MM, MM(100), MM(10), 0);
    Face *face = made_face(&made, "north", MM(1000), 0, 0);
    made_marks(&made, &face->ceiling, 2, (Length[]){0, 0, MM(1000), MM(500)});
    put_stock(&made, MM(1000), 8);
    const char *text = shown(sheet_batch(made.arena, shown_job(made.arena, made_layout(&made)), ""));
    assert_int_equal(shown_times(text, "Slanted, about 63.4 degrees off square, lower edge longer"), 1);
    arena_free(made.arena);
}
END_TEST

/* A board that gives two pieces is cut twice: the second cut stands under a heading of its own. */
START_TEST(the_first_cut_of_a_board_comes_first)
{
    Made made = two_courses();
    put_stock(&made, MM(2010), 1);
    Sheet *batch = sheet_batch(made.arena, shown_job(made.arena, made_layout(&made)), "");
    const char *text = shown(batch);
    const char *first = strstr(text, "Boards 2010 long, first cut: 1 piece");
    const char *second = strstr(text, "Boards 2010 long, second cut: 1 piece");
    assert_non_null(first);
    assert_true(first < second);
    assert_lacks(text, " from 1");
    arena_free(made.arena);
}
END_TEST

/* Wood to be avoided stands between: the second piece begins at a place of its own. */
START_TEST(what_does_not_follow_says_where_it_begins)
{
    Made made = two_courses();
    put_stock(&made, MM(2110), 1);
    Stretch *avoid = arena_push(made.arena, &made.wall->stock.at[0].avoid);
    *avoid = (Stretch){MM(1005), MM(1050)};
    const char *text = shown(sheet_batch(made.arena, shown_job(made.arena, made_layout(&made)), ""));
    assert_int_equal(shown_times(text, " of 1 from 10"), 1);
    arena_free(made.arena);
}
END_TEST

START_TEST(a_closer_is_cut_longer)
{
    Made made = two_courses();
    made.wall->joints.closer = MM(6);
    put_stock(&made, MM(1100), 2);
    const char *text = shown(sheet_batch(made.arena, shown_job(made.arena, made_layout(&made)), ""));
    assert_int_equal(shown_times(text, "(closer)"), 3);
    assert_holds(text, "1006  1 of ");
    assert_holds(text, "its length here holds 6 mm to spare");
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        equal_lengths_stand_on_one_line,
        rips_are_grouped_by_the_fence,
        ends_are_grouped_by_their_angle,
        a_rake_has_its_angle,
        the_first_cut_of_a_board_comes_first,
        what_does_not_follow_says_where_it_begins,
        a_closer_is_cut_longer,
    };
    return RUN(tests);
}
