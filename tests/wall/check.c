/*
 * What makes a wall impossible, where no file is: paths, order, and values that only an editor could bring about. The
 * words of each problem are held by tests/store/bad.
 */
#include "support/with_arena.h"

#include "support/random_wall.h"
#include "wall/check.h"

#include <stdio.h>
#include <string.h>

static void expect(const Wall *wall, const char *const *paths, int count)
{
    const Problems problems = wall_check(arena, wall);
    for (int i = 0; i < problems.count && i < count; i++) {
        assert_string_equal(problems.at[i].path, paths[i]);
        assert_true(strchr(problems.at[i].text, ';') != NULL); /* what is wrong; what to write instead */
    }
    assert_int_equal(problems.count, count);
}

#define EXPECT(wall, ...)                                           \
    do {                                                            \
        const char *const paths[] = {__VA_ARGS__};                  \
        expect((wall), paths, (int)(sizeof paths / sizeof *paths)); \
    } while (0)

START_TEST(an_empty_wall)
{
    EXPECT(wall_new(arena, UNITS_IN), "planks.width", "planks.thickness", "faces");
}
END_TEST

START_TEST(in_the_order_of_the_file)
{
    Wall *wall = random_wall(arena, 1, RANDOM_HOUSE);
    wall->title = text_in_arena("two\nlines");
    wall->round = 1;
    wall->planks.widths.at[0] = -1;
    wall->start = LENGTH_MOST + 1;
    wall->saw.kerf = -1;
    wall->faces.at[0].width = LENGTH_MOST + 1;
    wall->faces.at[1].floor.at[1].off = -LENGTH_MOST - 1;
    wall->faces.at[1].margin.right = -1;
    wall->stock.at[2].count = 0;
    wall->fasteners = (Fasteners){.given = true, .length_given = true, .length = 0};
    *arena_push(arena, &wall->hung_pieces) = (HungPiece){.face = text_in_arena("attic"), .right = 1, .board = 1};
    EXPECT(wall, "title", "round", "planks.width", "start", "saw.kerf", "faces[0].width", "faces[1].floor[1]",
           "faces[1].margin.right", "stock[2].count", "fasteners.length", "hung.pieces[0].face");
}
END_TEST

START_TEST(names_that_no_file_can_hold)
{
    static const char *const bad[] = {"a\nb",         "tab\t", "\x7f",     "\xc2\x85",
                                      "\xe2\x80\xa8", "\xff",  "cut \xc3", "\xed\xa0\x80"};
    static const char *const good[] = {"T\xc3\xbcr", "it's # 1: a", "\xe2\x80\xae", " ", "\xf0\x9f\xaa\x9f"};
    Wall *wall = random_wall(arena, 1, RANDOM_PLAIN);
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        wall->faces.at[0].name = text_in_arena(bad[i]);
        EXPECT(wall, "faces[0].name");
    }
    for (size_t i = 0; i < sizeof good / sizeof *good; i++) {
        wall->faces.at[0].name = text_in_arena(good[i]);
        assert_int_equal(wall_check(arena, wall).count, 0);
    }
}
END_TEST

/* A ceiling is above the floor somewhere, if only at one side of a step or at an end. */
START_TEST(a_ceiling_stands_above_the_floor_somewhere)
{
    Wall *wall = random_wall(arena, 1, RANDOM_PLAIN);
    Face *face = &wall->faces.at[0];
    face->width = 100;
    face->floor.at[0] = (Mark){0, 0};
    const struct {
        Mark marks[3];
        int count;
        bool room;
    } cases[] = {
        {{{0, 0}}, 1, false},
        {{{0, 1}}, 1, true},
        {{{0, -5}, {100, 1}}, 2, true},  /* at the right end alone */
        {{{0, -5}, {200, 4}}, 2, false}, /* only beyond the face */
        {{{-50, 9}, {0, -1}, {100, -1}}, 3, false},
        {{{0, -1}, {50, 3}, {100, -1}}, 3, true},   /* a peak */
        {{{0, -1}, {50, -1}, {50, 2}}, 3, true},    /* behind a step */
        {{{0, -1}, {100, -1}, {100, 9}}, 3, false}, /* behind the face */
        {{{0, 9}, {0, -1}, {100, -1}}, 3, false},   /* before it */
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        face->ceiling = (Marks){0};
        for (int k = 0; k < cases[i].count; k++)
            *arena_push(arena, &face->ceiling) = cases[i].marks[k];
        if ((wall_check(arena, wall).count == 0) != cases[i].room)
            FAIL("case %zu", i);
    }
    face->ceiling = (Marks){0};
    *arena_push(arena, &face->ceiling) = (Mark){0, 10};
    face->margin.floor = 10;
    EXPECT(wall, "faces[0].ceiling");
}
END_TEST

START_TEST(more_than_a_file_can_hold_is_refused)
{
    Wall *wall = random_wall(arena, 1, RANDOM_PLAIN);
    wall->stock.at[0].count = WALL_BOARDS_MOST;
    assert_int_equal(wall_check(arena, wall).count, 0);
    Stock more = wall->stock.at[0];
    more.count = 1;
    *arena_push(arena, &wall->stock) = more;
    EXPECT(wall, "stock");
    wall->stock.at[0].count = INT32_MAX; /* sums do not overflow */
    wall->stock.at[1].count = INT32_MAX;
    EXPECT(wall, "stock");
    wall->stock.count = 0;
    for (int i = 1; i <= WALL_FACES_MOST; i++) {
        char name[16];
        Face face = wall->faces.at[0];
        snprintf(name, sizeof name, "%d", i);
        face.name = text_in_arena(name);
        *arena_push(arena, &wall->faces) = face;
    }
    EXPECT(wall, "faces");
    wall->faces.count--;
    assert_int_equal(wall_check(arena, wall).count, 0);
}
END_TEST

START_TEST(nothing_is_allocated_for_a_good_wall)
{
    const Wall *wall = random_wall(arena, 3, RANDOM_HOUSE);
    Arena *own = arena_new();
    const void *first = arena_bytes(own, 1);
    arena_reset(own);
    assert_int_equal(wall_check(own, wall).count, 0);
    assert_ptr_equal(arena_bytes(own, 1), first);
    arena_free(own);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        an_empty_wall,
        in_the_order_of_the_file,
        names_that_no_file_can_hold,
        a_ceiling_stands_above_the_floor_somewhere,
        more_than_a_file_can_hold_is_refused,
        nothing_is_allocated_for_a_good_wall,
    };
    return RUN_WITH_ARENA(tests);
}
