/* Boards counted at the pile, worked by hand. */
#include "support/test.h"

#include "support/plain.h"
#include "trade/tally.h"

#include <string.h>

/* One course of 2 3/4 in on 100 in, in one slab. */
static Bench tally_bench(void)
{
    Bench bench = bench_new(INCHES(100), 0, INCHES(2.75), INCHES(2.75), 0);
    FaceLayout *face = &bench.layout->faces[0];
    face->course_count = 1;
    Course *course = face->courses = arena_array(bench.arena, Course, 1);
    *course =
        (Course){.top = INCHES(2.75), .width = INCHES(2.75), .right = INCHES(100), .slab_count = 1, .segment_count = 1};
    course->segments = arena_array(bench.arena, Segment, 1);
    course->segments[0] = (Segment){.right = INCHES(100), .slab_count = 1};
    course->slabs = arena_array(bench.arena, Slab, 1);
    course->slabs[0] = (Slab){.right = INCHES(100), .upper_left = INCHES(2.75), .upper_right = INCHES(2.75)};
    course->slabs[0].parts = arena_array(bench.arena, Part, 1);
    course->slabs[0].part_count = 1;
    course->slabs[0].parts[0] =
        (Part){.top_left = INCHES(2.75), .top_right = INCHES(2.75), .bottom_opening = -1, .top_opening = -1};
    return bench;
}

static Stock *add_stock(Bench *bench, Length length, int count, const char *tone)
{
    Stock *stock = arena_push(bench->arena, &bench->wall->stock);
    *stock = (Stock){.length = length, .count = count, .tone = arena_text(bench->arena, tone, strlen(tone))};
    return stock;
}

START_TEST(an_empty_tally_asks_for_the_whole_wall)
{
    Bench bench = tally_bench();
    Tally tally = tally_of(bench.arena, bench.layout);
    assert_int_equal(tally.boards, 0);
    assert_int_equal(tally.needed, INCHES(100));
    assert_int_equal(tally.missing, INCHES(110));
    assert_int_equal(tally.share, 0);
    assert_int_equal(tally.more_boards, 0);
    assert_string_equal(tally.text,
                        "0 boards, 0 in usable; the wall needs 8' 4\": 0 % covered, 9' 2\" short with the spare");
    arena_free(bench.arena);
}
END_TEST

START_TEST(boards_count_by_what_can_be_used_of_them)
{
    Bench bench = tally_bench();
    bench.wall->saw.square = INCHES(1);
    bench.wall->joints.shortest = INCHES(10);
    add_stock(&bench, INCHES(22), 2, "grey"); /* 20 in of use each */
    Stock *stock = add_stock(&bench, INCHES(42), 1, "pale");
    *arena_push(bench.arena, &stock->avoid) = (Stretch){INCHES(10), INCHES(11)}; /* 9 in before it: too short */
    add_stock(&bench, INCHES(12), 1, "grey");
    Tally tally = tally_of(bench.arena, bench.layout);
    assert_int_equal(tally.boards, 4);
    assert_int_equal(tally.running, INCHES(98));
    assert_int_equal(tally.usable, INCHES(40) + INCHES(30) + INCHES(10));
    assert_int_equal(tally.shortest, INCHES(12));
    assert_int_equal(tally.longest, INCHES(42));
    assert_int_equal(tally.tone_count, 2);
    assert_int_equal(tally.tones[0].boards, 3);
    assert_int_equal(tally.tones[0].running, INCHES(56));
    assert_int_equal(tally.share, 8000);
    assert_int_equal(tally.missing, INCHES(30));
    assert_int_equal(tally.more_boards, 2); /* of 20 in on average */
    assert_int_equal(tally.too_wide, 0);
    bench.wall->bill.spare = (Number){true, 0};
    add_stock(&bench, INCHES(22), 1, "");
    tally = tally_of(bench.arena, bench.layout);
    assert_int_equal(tally.missing, 0);
    assert_int_equal(tally.share, 10000);
    assert_holds(tally.text, "100 % covered, with the spare");
    arena_free(bench.arena);
}
END_TEST

START_TEST(too_narrow_boards)
{
    Bench bench = tally_bench();
    Stock *stock = add_stock(&bench, INCHES(120), 1, "");
    stock->width_given = true;
    stock->width = INCHES(2.5);
    assert_int_equal(tally_of(bench.arena, bench.layout).too_wide, INCHES(100));
    arena_free(bench.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        an_empty_tally_asks_for_the_whole_wall,
        boards_count_by_what_can_be_used_of_them,
        too_narrow_boards,
    };
    return RUN(tests);
}
