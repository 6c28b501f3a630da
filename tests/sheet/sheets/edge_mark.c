/* Which marks of a course can be made on the wall: planks that show 100 mm, gaps of 10 mm, a face 1000 mm wide. */
#include "layout/made.h"

#include "job/edge_mark.h"
#include "sheet/shown.h"

static Made wall_of(Face **face, Length lower, Length upper)
{
    Made made = made_new(UNITS_MM, MM(100), MM(10), 0);
    *face = made_face(&made, "north", MM(1000), lower, upper);
    return made;
}

START_TEST(an_edge_below_the_floor_has_no_mark)
{
    Face *face;
    Made made = wall_of(&face, MM(-50), MM(150)); /* course -1 at -110 to -10, course 1 at 110 to 210 */
    face->margin.floor = MM(5);
    const Layout *layout = made_layout(&made);
    const Wall *wall = layout->wall;
    const Course *low = made_course(layout, 0, -1), *high = made_course(layout, 0, 1);
    assert_string_equal(edge_mark_words(made.arena, wall, low, false), "at the floor");
    assert_string_equal(edge_mark_words(made.arena, wall, low, true), "10 down");
    assert_string_equal(edge_mark_words(made.arena, wall, high, false), "110 up");
    assert_string_equal(edge_mark_words(made.arena, wall, high, true), "at the ceiling");
    assert_null(edge_mark_part(made.arena, wall, low, false));
    assert_null(edge_mark_part(made.arena, wall, low, true));

    const Job *job = shown_job(made.arena, layout);
    Sheet *rows = sheet_rows(made.arena, job, "");
    const char *text = shown(rows);
    assert_holds(text, "[ ] Course -1           at the floor");
    assert_holds(text, "       at the ceiling   top");
    assert_holds(text, "The planks stop 5 mm clear of the");
    assert_lacks(text, "110 down"); /* the mark that cannot be made */
    assert_lacks(text, "210 up");

    Sheet *pole = sheet_pole(made.arena, job, "");
    text = shown(pole);
    assert_lacks(text, "110 down");
    assert_lacks(text, "210 up");
    assert_holds(text, "at the floor -1, lower\n");
    int record = shown_record(pole, "what", "Course -1, lower edge");
    assert_string_equal(shown_field(pole, record, "mark"), "at the floor");
    record = shown_record(pole, "what", "Course 1, lower edge");
    assert_string_equal(shown_field(pole, record, "mark"), "110");
    arena_free(made.arena);
}
END_TEST

/* A lap of 10 mm: planks of 110 show 100, pitch 110. The board's own edge is a lap above the face's; under a ceiling
 * that takes the lap, or more, there is none (it is where the ceiling is). */
START_TEST(a_lap_has_a_mark_of_the_boards_own_edge)
{
    Made made = made_new(UNITS_MM, MM(110), MM(10), 0);
    made.wall->planks.lap = MM(10);
    made_face(&made, "north", MM(1000), 0, MM(215)); /* the face of course 1 ends at 210, its board at 220 */
    made_face(&made, "east", MM(1000), 0, MM(230));
    Length own;
    const Layout *layout = made_layout(&made);
    assert_true(edge_mark_own(layout, 0, made_course(layout, 0, 0), &own));
    assert_int_equal(own, MM(110));
    assert_false(edge_mark_own(layout, 0, made_course(layout, 0, 1), &own));
    assert_true(edge_mark_own(layout, 1, made_course(layout, 1, 1), &own));
    assert_int_equal(own, MM(220));
    assert_false(edge_mark_own(layout, 1, made_course(layout, 1, 2), &own)); /* its face is cut */
    const Job *job = shown_job(made.arena, layout);
    Sheet *rows = sheet_rows(made.arena, job, ""), *pole = sheet_pole(made.arena, job, "");
    assert_holds(shown(rows), "the board's own");
    assert_holds(shown(rows), "edge is at 110 up.");
    assert_string_equal(
        shown_field(pole, shown_record(pole, "what", "Course 0, the reference, the board's own"), "mark"), "110");
    assert_string_equal(shown_field(pole, shown_record(pole, "what", "Course 1, the board's own upper edge"), "what"),
                        "Course 1, the board's own upper edge; not on north");
    made.wall->planks.lap = 0;
    made.wall->planks.widths.at[0] = MM(100);
    layout = made_layout(&made);
    assert_false(edge_mark_own(layout, 0, made_course(layout, 0, 0), &own));
    assert_lacks(shown(sheet_pole(made.arena, shown_job(made.arena, layout), "")), "board's own");
    arena_free(made.arena);
}
END_TEST

/* The floor rises from -120 to -100: it passes the edge at -110 in the middle. */
START_TEST(an_edge_that_the_floor_crosses_has_one_where_it_is_on_the_wall)
{
    Face *face;
    Made made = wall_of(&face, 0, MM(150));
    made_marks(&made, &face->floor, 2, (Length[]){0, MM(120), MM(1000), MM(100)});
    const Layout *layout = made_layout(&made);
    const Course *low = made_course(layout, 0, -1);
    assert_string_equal(edge_mark_words(made.arena, layout->wall, low, false), "110 down");
    assert_string_equal(edge_mark_part(made.arena, layout->wall, low, false),
                        "Lower mark only from 0 to 500 along the face: the floor cuts the rest.");
    assert_null(edge_mark_part(made.arena, layout->wall, low, true));
    const char *text = shown(sheet_rows(made.arena, shown_job(made.arena, layout), ""));
    assert_holds(text, "Lower mark only from 0 to 500");
    assert_lacks(text, "at the floor\" stand");
    arena_free(made.arena);
}
END_TEST

/* Under a rake of 1 in 2 the upper edge is shorter than the lower one: that is the course's slanted end. */
START_TEST(a_slanted_end_takes_no_mark_away)
{
    Face *face;
    Made made = wall_of(&face, MM(-50), 0);
    made_marks(&made, &face->ceiling, 2, (Length[]){0, 0, MM(1000), MM(500)});
    const Layout *layout = made_layout(&made);
    const Course *course = made_course(layout, 0, 1);
    assert_string_equal(edge_mark_words(made.arena, layout->wall, course, true), "210 up");
    assert_null(edge_mark_part(made.arena, layout->wall, course, true));
    arena_free(made.arena);
}
END_TEST

/* What is on the wall of one face is a mark of the pole; it tells where it is not. */
START_TEST(the_pole_tells_on_which_face_a_mark_is_off)
{
    Face *face;
    Made made = wall_of(&face, MM(-50), MM(150));
    made_face(&made, "east", MM(1000), MM(-300), MM(150));
    const Layout *layout = made_layout(&made);
    Sheet *pole = sheet_pole(made.arena, shown_job(made.arena, layout), "");
    int record = shown_record(pole, "what", "Course -1, lower edge; at the floor on north");
    assert_string_equal(shown_field(pole, record, "mark"), "-110");
    record = shown_record(pole, "what", "Course 1, upper edge");
    assert_string_equal(shown_field(pole, record, "mark"), "at the ceiling");
    arena_free(made.arena);
}
END_TEST

/* A window is cut round and marked at both its edges; a stove stands before the wall and is not cut round. */
START_TEST(the_pole_marks_what_is_cut)
{
    Face *face;
    Made made = wall_of(&face, MM(-300), MM(300));
    made_opening(&made, face, "window", MM(600), MM(20), MM(200), MM(60));
    made_opening(&made, face, "stove", MM(100), MM(-250), MM(200), MM(90))->kind = OPENING_STOVE;
    Sheet *pole = sheet_pole(made.arena, shown_job(made.arena, made_layout(&made)), "");
    assert_holds(shown(pole), "80 up window, top of ");
    assert_holds(shown(pole), "20 up window, bottom");
    assert_null(strstr(shown(pole), "stove"));
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        a_lap_has_a_mark_of_the_boards_own_edge,
        an_edge_below_the_floor_has_no_mark,
        an_edge_that_the_floor_crosses_has_one_where_it_is_on_the_wall,
        a_slanted_end_takes_no_mark_away,
        the_pole_tells_on_which_face_a_mark_is_off,
        the_pole_marks_what_is_cut,
    };
    return RUN(tests);
}
