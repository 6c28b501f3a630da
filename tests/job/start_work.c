/* What a start height asks for at the saw, worked by hand: a face 1000 mm wide and 720 mm high in planks of 90 mm, with
 * a window from 200 to 361 mm, so that from 0 on its head takes 1 mm of the course from 360 to 450. */
#include "job/start_work.h"
#include "layout/made.h"

#include "job/start_words.h"

#include <string.h>

typedef struct Bench {
    Made made;
    Starts starts;
} Bench;

static Bench bench_new(int boards)
{
    Bench bench = {.made = made_new(UNITS_MM, MM(90), 0, 0)};
    Face *face = made_face(&bench.made, "north", MM(1000), 0, MM(720));
    made_opening(&bench.made, face, "window", MM(300), MM(200), MM(400), MM(161));
    for (int i = 0; i < boards; i++) {
        Stock *line = arena_push(bench.made.arena, &bench.made.wall->stock);
        *line = (Stock){.count = 1, .length = MM(1000), .label = "", .tone = ""};
    }
    bench.starts = starts_of_layout(bench.made.arena, made_layout(&bench.made));
    return bench;
}

/* Index of the start at 0, as the file has it. */
static int written(const Bench *bench)
{
    for (int i = 0; i < bench->starts.count; i++)
        if (bench->starts.at[i].start == 0)
            return i;
    FAIL("%s", "the file's own start is not listed");
    return 0;
}

/* The courses from 180 to 450 mm are three; that from 360 on is the shallow one. */
START_TEST(a_notch_of_a_millimetre_is_shallow)
{
    Bench bench = bench_new(0);
    const int i = written(&bench);
    const StartWork *work = start_work(bench.made.arena, bench.made.wall, &bench.starts);
    assert_int_equal(bench.starts.at[i].cutouts, 3);
    assert_int_equal(work[i].shallow, 1);
    assert_int_equal(work[i].boards, START_BOARDS_UNKNOWN);
    const char *text = start_words_work(bench.made.arena, &bench.starts.at[i], &work[i]);
    assert_true(strstr(text, "3 cutouts, 1 of them nowhere 1/8 in (3 mm) deep.") != NULL);
    arena_free(bench.made.arena);
}
END_TEST

/* Eight courses of 1000 mm: seven take a board each, and the eighth, whose middle the window takes, both its pieces
 * from one. */
START_TEST(boards_are_those_of_a_first_plan)
{
    Bench bench = bench_new(20);
    const int i = written(&bench);
    const StartWork *work = start_work(bench.made.arena, bench.made.wall, &bench.starts);
    assert_int_equal(work[i].boards, 8);
    const char *text = start_words_work(bench.made.arena, &bench.starts.at[i], &work[i]);
    assert_true(strstr(text, "8") != NULL && strstr(text, "before the plan is improved.") != NULL);
    arena_free(bench.made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {a_notch_of_a_millimetre_is_shallow, boards_are_those_of_a_first_plan};
    return RUN(tests);
}
