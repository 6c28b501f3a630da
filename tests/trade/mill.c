/*
 * Rough boards to planks. Dressed widths of boards: PS 20-20, nominal 4, 6, 8 in are 3 1/2, 5 1/2, 7 1/4 in. Saw kerf
 * 1/8 in: common practice.
 */
#include "support/test.h"

#include "base/random.h"
#include "support/plain.h"
#include "trade/mill.h"

#include <stdlib.h>

/* 2 3/4 in planks, 1/2 in thick, one course of 100 in to cover. */
static Bench pile_new(void)
{
    Bench bench = bench_new(INCHES(100), 0, INCHES(2.75), INCHES(2.75), SIXTEENTH);
    bench.wall->planks.thickness = INCHES(0.5);
    bench.wall->saw.kerf = INCHES(0.125);
    FaceLayout *face = &bench.layout->faces[0];
    face->course_count = 1;
    face->courses = arena_array(bench.arena, Course, 1);
    face->courses[0] = (Course){.width = INCHES(2.75), .segment_count = 1};
    face->courses[0].segments = arena_array(bench.arena, Segment, 1);
    face->courses[0].segments[0] = (Segment){.right = INCHES(100)};
    return bench;
}

static Rough *add_rough(Bench *bench, Length width, Length thickness, Length length, int count)
{
    Rough *rough = arena_push(bench->arena, &bench->wall->rough);
    *rough = (Rough){.width = width, .thickness = thickness, .length = length, .count = count};
    return rough;
}

/* 2 x 2 3/4 + 1/8 = 5 5/8 in: one out of a 1x6 of 5 1/2 in, two out of one of 5 5/8, and each edge to be cleaned takes
 * of it. */
START_TEST(planks_and_kerfs_fit_across_a_board)
{
    static const struct {
        Length width, edge;
        int planks;
        Length off_rip;
    } rows[] = {
        {INCHES(5.5), 0, 1, INCHES(2.625)},
        {INCHES(5.625), 0, 2, 0},
        {INCHES(7.25), 0, 2, INCHES(1.5)},
        {INCHES(5.875), INCHES(0.125), 2, 0},
        {INCHES(3.5), 0, 1, INCHES(0.625)},
        {INCHES(5.875) - 1, INCHES(0.125), 1, INCHES(2.875) - 1},
        {INCHES(2.6875), 0, 0, 0},
        {INCHES(3), INCHES(0.125), 1, 0},
        {INCHES(3) - 1, INCHES(0.125), 0, 0},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        Bench bench = pile_new();
        bench.wall->mill.edge = rows[i].edge;
        add_rough(&bench, rows[i].width, INCHES(0.5), INCHES(72), 1);
        MillSheet sheet = mill_sheet(bench.arena, bench.layout);
        const MillLine *line = &sheet.lines[0];
        assert_int_equal(line->cut_count, rows[i].planks > 0);
        assert_int_equal(line->too_narrow, rows[i].planks == 0);
        if (rows[i].planks > 0) {
            assert_int_equal(line->cuts[0].count, rows[i].planks);
            assert_int_equal(line->cuts[0].width, INCHES(2.75));
            assert_int_equal(line->off_rip, rows[i].off_rip);
        }
        arena_free(bench.arena);
    }
}
END_TEST

/* Wood and kerfs across a board add up to it. */
START_TEST(wood_and_kerfs_across_add_up_to_the_board)
{
    for (Length width = INCHES(3); width < INCHES(14); width += 777777) {
        Bench bench = pile_new();
        bench.wall->mill = (Mill){.given = true, .edge = INCHES(0.125), .keep = INCHES(0.75)};
        *arena_push(bench.arena, &bench.wall->planks.widths) = INCHES(3.5);
        *arena_push(bench.arena, &bench.wall->planks.widths) = INCHES(1.5);
        add_rough(&bench, width, INCHES(0.5), INCHES(72), 1);
        MillSheet sheet = mill_sheet(bench.arena, bench.layout);
        const MillLine *line = &sheet.lines[0];
        Length used = bench.wall->mill.edge;
        for (int i = 0; i < line->cut_count; i++) {
            used += line->cuts[i].count * (line->cuts[i].width + bench.wall->saw.kerf);
            assert_true(i == 0 || line->cuts[i].width < line->cuts[i - 1].width);
        }
        /* the last cut may run out of the board by a part of the kerf */
        assert_true(used + line->off_rip == width || (line->off_rip == 0 && used - bench.wall->saw.kerf < width));
        assert_true(used - bench.wall->saw.kerf + bench.wall->mill.edge <= width);
        if (line->strips > 0)
            assert_true(line->strips * INCHES(0.75) + (line->strips - 1) * bench.wall->saw.kerf + INCHES(0.125) <=
                        line->off_rip);
        else
            assert_true(line->off_rip < INCHES(0.875));
        arena_free(bench.arena);
    }
}
END_TEST

/* Several widths: 2 3/4 and 1 1/2 in with a kerf fill 4 3/8 in; twice 2 3/4 would leave 1 1/2 in unused. */
START_TEST(the_best_mix_of_widths_is_found)
{
    Bench bench = pile_new();
    *arena_push(bench.arena, &bench.wall->planks.widths) = INCHES(1.5);
    add_rough(&bench, INCHES(4.375), INCHES(0.5), INCHES(72), 1);
    add_rough(&bench, INCHES(7.25), INCHES(0.5), INCHES(72), 1);
    MillSheet sheet = mill_sheet(bench.arena, bench.layout);
    assert_int_equal(sheet.lines[0].cut_count, 2);
    assert_int_equal(sheet.lines[0].off_rip, 0);
    assert_int_equal(sheet.lines[1].cuts[0].count, 2);
    assert_int_equal(sheet.lines[1].cuts[1].count, 1);
    arena_free(bench.arena);
}
END_TEST

/* 3 in off each end of 72 in and a rotten stretch of 6 in, half of it in what is cut off anyway: 66 in long, 63 in of
 * use. */
START_TEST(ends_and_rot_shorten_a_board)
{
    Bench bench = pile_new();
    bench.wall->mill = (Mill){.given = true, .plane = INCHES(0.125)};
    Rough *rough = add_rough(&bench, INCHES(5.625), INCHES(0.625), INCHES(72), 4);
    rough->ends = INCHES(3);
    *arena_push(bench.arena, &rough->avoid) = (Stretch){0, INCHES(6)};
    MillSheet sheet = mill_sheet(bench.arena, bench.layout);
    const MillLine *line = &sheet.lines[0];
    assert_int_equal(line->length, INCHES(66));
    assert_int_equal(line->usable, INCHES(63));
    assert_int_equal(line->plane, INCHES(0.125));
    assert_false(line->too_thin);
    /* 100 in and 10 % are needed; 4 boards of 2 planks of 63 in give 504 in: 394 in over, 3 boards (126 in each) to
     * spare */
    assert_int_equal(sheet.need_count, 1);
    assert_int_equal(sheet.needs[0].needed, INCHES(100));
    assert_int_equal(sheet.needs[0].spare, INCHES(10));
    assert_int_equal(sheet.needs[0].milled, INCHES(504));
    assert_int_equal(sheet.needs[0].over, INCHES(394));
    assert_int_equal(sheet.needs[0].boards, 3);
    assert_holds(line->steps[0], "cut 3 in off each end");
    assert_string_equal(line->steps[1], "mark 0 in to 6 in from the first end: do not use it");
    assert_string_equal(line->steps[2], "flatten one face");
    assert_string_equal(line->steps[3], "joint one edge straight and square to that face");
    assert_holds(line->steps[4], "plane 1/8 in off");
    assert_string_equal(line->steps[5], "fence at 2 3/4 in: rip 2 planks"); /* 5 5/8 in: nothing to rip full from */
    assert_int_equal(line->step_count, 6);
    bench.wall->rough.at[0].thickness--;
    sheet = mill_sheet(bench.arena, bench.layout);
    assert_true(sheet.lines[0].too_thin);
    assert_int_equal(sheet.needs[0].milled, 0);
    assert_int_equal(sheet.needs[0].over, -INCHES(110));
    assert_holds(sheet.lines[0].steps[0], "leave it");
    arena_free(bench.arena);
}
END_TEST

/* Of 72 in with nails from 9 to 30 and 34 to 40 in, 9 and 4 in are shorter than any piece may be: 32 in of use; without
 * the end beyond them none at all. The same goes for milled boards. */
START_TEST(stretches_too_short_for_a_piece)
{
    Bench bench = pile_new();
    bench.wall->joints.shortest = INCHES(10);
    Rough *rough = add_rough(&bench, INCHES(5.625), INCHES(0.5), INCHES(72), 1);
    *arena_push(bench.arena, &rough->avoid) = (Stretch){INCHES(9), INCHES(30)};
    *arena_push(bench.arena, &rough->avoid) = (Stretch){INCHES(34), INCHES(40)};
    Stock *stock = arena_push(bench.arena, &bench.wall->stock);
    *stock = (Stock){.length = INCHES(72), .count = 1, .avoid = rough->avoid};
    MillSheet sheet = mill_sheet(bench.arena, bench.layout);
    assert_int_equal(sheet.lines[0].usable, INCHES(32));
    assert_int_equal(sheet.needs[0].milled, 2 * INCHES(32));
    assert_int_equal(sheet.needs[0].at_hand, INCHES(32));
    bench.wall->rough.at[0].length = stock->length = INCHES(50) - 1;
    sheet = mill_sheet(bench.arena, bench.layout);
    assert_true(sheet.lines[0].too_short);
    assert_int_equal(sheet.needs[0].milled, 0);
    assert_int_equal(sheet.needs[0].at_hand, 0);
    arena_free(bench.arena);
}
END_TEST

START_TEST(too_few_rough_boards_are_told)
{
    Bench bench = pile_new();
    bench.wall->bill.spare = (Number){true, 0};
    bench.wall->saw.square = INCHES(1);
    add_rough(&bench, INCHES(5.625), INCHES(0.5), INCHES(15), 2); /* 30 in each */
    Stock *stock = arena_push(bench.arena, &bench.wall->stock);
    *stock = (Stock){.length = INCHES(20), .count = 1};
    *arena_push(bench.arena, &stock->avoid) = (Stretch){INCHES(10), INCHES(15)};
    MillSheet sheet = mill_sheet(bench.arena, bench.layout);
    assert_int_equal(sheet.needs[0].at_hand, INCHES(13));
    assert_int_equal(sheet.needs[0].over, -INCHES(27)); /* one board more */
    assert_int_equal(sheet.needs[0].boards, -1);
    arena_free(bench.arena);
}
END_TEST

/* Common practice: ripped full, let rest, finished to width; no more full than 1/8 in, and no more than the board has.
 * Strips for trim come first. */
START_TEST(boards_are_ripped_full_and_finished_to_width)
{
    static const struct {
        Length width, keep, full;
    } rows[] = {
        {INCHES(5.5), 0, INCHES(0.125)},
        {INCHES(5.625), 0, 0},
        {INCHES(5.75), 0, INCHES(0.0625)}, /* 1/8 in, shared by two */
        {INCHES(5.6875), 0, 0},            /* 1/16 in: less than a mark each */
        {INCHES(3.875), INCHES(1), 0},     /* the strip and its kerf take what is left */
        {INCHES(4), INCHES(1), INCHES(0.125)},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        Bench bench = pile_new();
        bench.wall->mill.keep = rows[i].keep;
        add_rough(&bench, rows[i].width, INCHES(0.5), INCHES(72), 1);
        const MillLine *line = &mill_sheet(bench.arena, bench.layout).lines[0];
        assert_int_equal(line->full, rows[i].full);
        assert_int_equal(line->strips, rows[i].keep > 0);
        const char *last = line->steps[line->step_count - 1];
        if (rows[i].full > 0)
            assert_string_equal(last, "let them rest, then finish to 2 3/4 in");
        assert_true(line->off_rip - line->cuts[0].count * rows[i].full >= line->strips * rows[i].keep ||
                    line->off_rip == 0);
        arena_free(bench.arena);
    }
}
END_TEST

/* Boards of 90 and of 30 in, one plank each: short of 70 in, two boards like their average of 45 in are wanted, not one
 * of the longest; with 130 in over any two boards can stay away, with 60 in over not every one. */
START_TEST(against_the_piles_own_boards)
{
    Bench bench = pile_new();
    bench.wall->bill.spare = (Number){true, 0};
    add_rough(&bench, INCHES(3), INCHES(0.5), INCHES(90), 1);
    add_rough(&bench, INCHES(3), INCHES(0.5), INCHES(30), 3);
    add_rough(&bench, INCHES(2), INCHES(0.5), INCHES(900), 9); /* too narrow: they do not count */
    Segment *segment = &bench.layout->faces[0].courses[0].segments[0];
    segment->right = INCHES(250);
    MillNeed need = mill_sheet(bench.arena, bench.layout).needs[0];
    assert_int_equal(need.over, -INCHES(70));
    assert_int_equal(need.givers, 4);
    assert_int_equal(need.boards, -2);
    segment->right = INCHES(50);
    need = mill_sheet(bench.arena, bench.layout).needs[0];
    assert_int_equal(need.over, INCHES(130));
    assert_int_equal(need.boards, 2); /* 90 and 30: two more of 30 may be needed */
    segment->right = INCHES(120);
    need = mill_sheet(bench.arena, bench.layout).needs[0];
    assert_int_equal(need.over, INCHES(60));
    assert_int_equal(need.boards, 0); /* not whichever: the long one is needed */
    arena_free(bench.arena);
}
END_TEST

/* 5 1/2 in boards: 2 11/16 in planks come out twice (5 1/2 = 2 x 2 11/16 + 1/8), 2 3/4 in but once; whole boards of
 * 5 1/2 in use most. */
START_TEST(width_for_the_pile)
{
    Bench bench = pile_new();
    add_rough(&bench, INCHES(5.5), INCHES(0.5), INCHES(72), 10);
    MillWidths widths = mill_widths(bench.arena, bench.wall);
    assert_int_equal(widths.at[0].width, INCHES(5.5));
    assert_int_equal(widths.at[0].used, 10000);
    assert_int_equal(widths.at[1].width, INCHES(2.6875));
    assert_int_equal(widths.at[1].planks, 20);
    assert_int_equal(widths.at[1].running, INCHES(1440));
    assert_int_equal(widths.at[1].used, 9773); /* 5.375 / 5.5 */
    int own = 0;
    for (int i = 0; i < widths.count; i++) {
        own += widths.at[i].width == INCHES(2.75);
        assert_true(widths.at[i].planks > 0);
    }
    assert_int_equal(own, 1);
    bench.wall->planks.widths.at[0] = INCHES(6); /* no board gives it */
    widths = mill_widths(bench.arena, bench.wall);
    for (int i = 0; i < widths.count; i++)
        assert_true(widths.at[i].width <= INCHES(5.5));
    bench.wall->rough.count = 0;
    assert_int_equal(mill_widths(bench.arena, bench.wall).count, 0);
    arena_free(bench.arena);
}
END_TEST

/* Nothing on the marking grid uses more of a made-up pile than the best width told, and what it uses is reckoned
 * again. */
START_TEST(no_width_is_better)
{
    Random random = {11};
    for (int n = 0; n < 40; n++) {
        Bench bench = pile_new();
        bench.wall->mill.edge = random_between(&random, 0, 3) * SIXTEENTH;
        const int lines = (int)random_between(&random, 1, 5);
        for (int i = 0; i < lines; i++)
            add_rough(&bench, random_between(&random, 20, 200) * SIXTEENTH + random_between(&random, 0, 999),
                      INCHES(0.5), INCHES(72), (int)random_between(&random, 1, 9));
        const MillWidths widths = mill_widths(bench.arena, bench.wall);
        int best = 0;
        for (Length width = INCHES(1.375); width <= INCHES(13); width += SIXTEENTH) {
            Wide used = 0;
            Wide whole = 0;
            for (int i = 0; i < lines; i++) {
                const Rough *rough = &bench.wall->rough.at[i];
                Length free = rough->width - 2 * bench.wall->mill.edge;
                int planks = 0;
                for (; free >= width; free -= width + INCHES(0.125))
                    planks++;
                used += (Wide)planks * width * rough->count;
                whole += (Wide)rough->width * rough->count;
            }
            const int share = (int)wide_divide(used * 10000, whole);
            best = share > best ? share : best;
        }
        assert_true(widths.count > 0 ? abs(widths.at[0].used - best) <= 1 : best == 0);
        for (int i = 1; i < widths.count; i++)
            assert_true(widths.at[i - 1].used >= widths.at[i].used);
        arena_free(bench.arena);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        planks_and_kerfs_fit_across_a_board,
        wood_and_kerfs_across_add_up_to_the_board,
        the_best_mix_of_widths_is_found,
        ends_and_rot_shorten_a_board,
        too_few_rough_boards_are_told,
        width_for_the_pile,
        no_width_is_better,
        boards_are_ripped_full_and_finished_to_width,
        against_the_piles_own_boards,
        stretches_too_short_for_a_piece,
    };
    return RUN(tests);
}
