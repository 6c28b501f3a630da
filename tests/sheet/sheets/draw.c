/* Courses as rows of characters: one column is 100 mm of a face of 2 m, course 0 from 0 to 100 mm, pieces put by hand.
 */
#include "layout/made.h"

#include "sheet/face.h"

#include <string.h>

enum { COLUMNS = 20 };

typedef struct Bench {
    Made made;
    Face *face;
} Bench;

static Bench bench_new(void)
{
    Bench bench = {.made = made_new(UNITS_MM, MM(100), MM(10), 0)};
    bench.face = made_face(&bench.made, "north", MM(2000), -MM(10), MM(320));
    return bench;
}

/* Course `number`, whose pieces end at the joints given (mm), the last at 2000. */
static const char *row_of(Bench *bench, int64_t number, int joints, const int *at)
{
    Arena *arena = bench->made.arena;
    const Layout *layout = made_layout(&bench->made);
    Plan *plan = arena_one(arena, Plan);
    int course = layout_course_index(&layout->faces[0], number);
    plan->piece_count = joints + 1;
    plan->pieces = arena_array(arena, Piece, joints + 1);
    for (int i = 0; i <= joints; i++)
        plan->pieces[i] = (Piece){.number = i + 7,
                                  .course = course,
                                  .left = i == 0 ? 0 : MM(at[i - 1]),
                                  .right = i == joints ? MM(2000) : MM(at[i])};
    Job *job = arena_one(arena, Job);
    *job = (Job){.wall = bench->made.wall, .layout = layout, .plan = plan};
    Places places = places_of_plan(arena, layout, plan);
    return drawing_row(arena, job, &places, 0, course, COLUMNS);
}

START_TEST(a_face_of_whole_planks_is_drawn)
{
    Bench bench = bench_new();
    assert_string_equal(row_of(&bench, 1, 0, NULL), "|------- 7 --------|");
    assert_string_equal(row_of(&bench, 0, 1, (int[]){1000}), "|=== 7 ===|== 8 ===|");
    arena_free(bench.made.arena);
}
END_TEST

/* 90 mm wide, in one column of 100 and under its middle, or astride two columns and under no middle. */
START_TEST(a_cutout_narrower_than_a_column)
{
    Bench bench = bench_new();
    Opening *opening = made_opening(&bench.made, bench.face, "outlet", MM(1505), MM(150), MM(90), MM(400));
    assert_string_equal(row_of(&bench, 1, 0, NULL), "|----- 7 ------_---|");
    opening->left = MM(1555); /* to 1645: neither 1550 nor 1650 */
    opening->width = MM(90);
    assert_string_equal(row_of(&bench, 1, 0, NULL), "|------ 7 ------_--|");
    opening->width = MM(1); /* a hair */
    assert_string_equal(row_of(&bench, 1, 0, NULL), "|----- 7 ------_---|");
    opening->bottom = MM(140); /* of 110 to 210 */
    opening->height = MM(20);
    assert_string_equal(row_of(&bench, 1, 0, NULL), "|----- 7 ------:---|");
    opening->bottom = MM(0);
    opening->height = MM(120);
    assert_string_equal(row_of(&bench, 1, 0, NULL), "|----- 7 ------\"---|");
    arena_free(bench.made.arena);
}
END_TEST

/* Below where the number would stand: it gives way. */
START_TEST(a_number_hides_no_cutout)
{
    Bench bench = bench_new();
    made_opening(&bench.made, bench.face, "outlet", MM(905), MM(150), MM(90), MM(400));
    assert_string_equal(row_of(&bench, 1, 0, NULL), "|--------_--- 7 ---|");
    arena_free(bench.made.arena);
}
END_TEST

/* In the column of a joint: told on the side of the piece that is cut. */
START_TEST(a_joint_hides_no_cutout)
{
    Bench bench = bench_new();
    Opening *opening = made_opening(&bench.made, bench.face, "outlet", MM(1005), MM(150), MM(40), MM(400));
    assert_string_equal(row_of(&bench, 1, 1, (int[]){1050}), "|-- 7 ---_|-- 8 ---|");
    opening->left = MM(1055);
    assert_string_equal(row_of(&bench, 1, 1, (int[]){1050}), "|--- 7 ---|_-- 8 --|");
    opening->left = MM(1030); /* across the joint: both are cut */
    assert_string_equal(row_of(&bench, 1, 1, (int[]){1050}), "|-- 7 ---_|_-- 8 --|");
    arena_free(bench.made.arena);
}
END_TEST

/* The number stands in a long cutout only where the cutout is still seen on both sides of it. */
START_TEST(a_number_in_a_long_cutout)
{
    Bench bench = bench_new();
    made_opening(&bench.made, bench.face, "window", MM(0), MM(150), MM(2000), MM(400));
    assert_string_equal(row_of(&bench, 1, 0, NULL), "|_______ 7 ________|");
    arena_free(bench.made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        a_face_of_whole_planks_is_drawn, a_cutout_narrower_than_a_column, a_number_hides_no_cutout,
        a_joint_hides_no_cutout,         a_number_in_a_long_cutout,
    };
    return RUN(tests);
}
