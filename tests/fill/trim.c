#include "support/test.h"

#include "base/random.h"
#include "fill/trim.h"

#include <stdlib.h>
#include <string.h>

static Wall *wall_with(Arena *arena, Length kerf, Length square)
{
    Wall *wall = wall_new(arena, UNITS_MM);
    wall->saw = (Saw){kerf, square};
    wall->trim.given = true;
    return wall;
}

static void put_stock(Arena *arena, Wall *wall, Length length, int count)
{
    *arena_push(arena, &wall->trim.stock) = (TrimStock){length, count};
}

static void put_piece(Arena *arena, Wall *wall, const char *name, Length length, int count)
{
    *arena_push(arena, &wall->trim.pieces) = (TrimPiece){arena_text(arena, name, strlen(name)), length, count};
}

/* Everything that must hold of any plan, counted from the pieces alone. */
static void check_plan(const Wall *wall, const TrimPieces *pieces, const TrimPlan *plan)
{
    Saw saw = wall->saw;
    int *cut = calloc((size_t)pieces->count + 1, sizeof *cut);
    int boards = 0, opened = 0, seen = 0;
    Length length_opened = 0;
    for (int i = 0; i < wall->trim.stock.count; i++)
        for (int n = 0; n < wall->trim.stock.at[i].count; n++, boards++) {
            assert_true(boards < plan->board_count);
            const TrimBoard *board = &plan->boards[boards];
            assert_int_equal(board->length, wall->trim.stock.at[i].length);
            assert_int_equal(board->first, seen);
            Length free_from = saw.square, free_to = board->length - saw.square, last = INT64_MAX;
            for (int p = 0; p < board->count; p++) {
                const TrimCut *piece = &plan->pieces[plan->by_board[board->first + p]];
                assert_int_equal(piece->board, boards + 1);
                assert_true(piece->length <= last);
                last = piece->length;
                assert_true(piece->offset >= free_from);
                assert_true(piece->offset + piece->length <= free_to);
                free_from = piece->offset + piece->length + saw.kerf;
            }
            assert_int_equal(board->left_over, free_to > free_from ? free_to - free_from : 0);
            seen += board->count;
            opened += board->count > 0;
            length_opened += board->count > 0 ? board->length : 0;
        }
    assert_int_equal(boards, plan->board_count);
    assert_int_equal(seen, plan->piece_count);
    assert_int_equal(opened, plan->boards_opened);
    assert_int_equal(length_opened, plan->length_opened);
    assert_true(plan->length_bound <= plan->length_opened);
    for (int i = 0; i < plan->piece_count; i++) {
        assert_int_equal(plan->pieces[i].number, i + 1);
        int line = 0;
        while (line < pieces->count &&
               (pieces->at[line].name != plan->pieces[i].name || pieces->at[line].length != plan->pieces[i].length))
            line++;
        assert_true(line < pieces->count);
        cut[line]++;
    }
    for (int i = 0; i < plan->missing.count; i++)
        for (int line = 0; line < pieces->count; line++)
            if (pieces->at[line].name == plan->missing.at[i].name &&
                pieces->at[line].length == plan->missing.at[i].length)
                cut[line] += plan->missing.at[i].count;
    for (int line = 0; line < pieces->count; line++)
        assert_int_equal(cut[line], pieces->at[line].count);
    free(cut);
}

/* The figures of the plan's own example: 92 1/4 in from 96 in, kerf 1/8, squared 1/4 at each end. */
START_TEST(two_corners_from_two_boards)
{
    Arena *arena = arena_new();
    Wall *wall = wall_with(arena, LENGTH_INCH / 8, LENGTH_INCH / 4);
    put_stock(arena, wall, 96 * LENGTH_INCH, 8);
    put_piece(arena, wall, "left corner", 92 * LENGTH_INCH + LENGTH_INCH / 4, 2);
    TrimPlan *plan = trim_plan(arena, wall, NULL);
    check_plan(wall, &wall->trim.pieces, plan);
    assert_int_equal(plan->piece_count, 2);
    assert_int_equal(plan->board_count, 8);
    assert_int_equal(plan->boards_opened, 2);
    assert_int_equal(plan->pieces[0].board, 1);
    assert_int_equal(plan->pieces[1].board, 2);
    assert_int_equal(plan->pieces[0].offset, 6350000);
    assert_int_equal(plan->boards[0].left_over, 79375000);
    assert_int_equal(plan->boards[7].left_over, 2425700000);
    assert_true(plan->proved);
    arena_free(arena);
}
END_TEST

START_TEST(the_last_piece_needs_no_kerf)
{
    Arena *arena = arena_new();
    Wall *wall = wall_with(arena, 3, 10);
    put_stock(arena, wall, 123, 2);
    put_piece(arena, wall, "shelf edge", 50, 2); /* 10 + 50 + 3 + 50 + 10 = 123 */
    TrimPlan *plan = trim_plan(arena, wall, NULL);
    check_plan(wall, &wall->trim.pieces, plan);
    assert_int_equal(plan->boards_opened, 1);
    wall->trim.stock.at[0].length = 122;
    plan = trim_plan(arena, wall, NULL);
    check_plan(wall, &wall->trim.pieces, plan);
    assert_int_equal(plan->boards_opened, 2);
    assert_true(plan->proved);
    arena_free(arena);
}
END_TEST

/* The shorter board is enough, and stands behind the longer one in the pile. */
START_TEST(least_length_is_opened)
{
    Arena *arena = arena_new();
    Wall *wall = wall_with(arena, 0, 0);
    put_stock(arena, wall, 3000, 2);
    put_stock(arena, wall, 2000, 2);
    put_stock(arena, wall, 3000, 2);
    put_piece(arena, wall, "sill", 1000, 3);
    put_piece(arena, wall, "head", 2000, 1);
    TrimPlan *plan = trim_plan(arena, wall, NULL);
    check_plan(wall, &wall->trim.pieces, plan);
    assert_int_equal(plan->length_opened, 5000);
    assert_int_equal(plan->boards_opened, 2);
    assert_true(plan->proved);
    arena_free(arena);
}
END_TEST

START_TEST(what_cannot_be_cut_is_told)
{
    Arena *arena = arena_new();
    Wall *wall = wall_with(arena, 3, 5);
    put_piece(arena, wall, "long", 5000, 2);
    put_piece(arena, wall, "short", 900, 3);
    TrimPlan *plan = trim_plan(arena, wall, NULL);
    check_plan(wall, &wall->trim.pieces, plan);
    assert_int_equal(plan->missing.count, 2);
    assert_int_equal(plan->missing.at[1].count, 3);
    assert_int_equal(plan->length_opened, 0);
    assert_true(plan->proved);

    put_stock(arena, wall, 2000, 1);
    put_stock(arena, wall, 8, 4); /* shorter than its squared ends */
    plan = trim_plan(arena, wall, NULL);
    check_plan(wall, &wall->trim.pieces, plan);
    assert_int_equal(plan->piece_count, 2);
    assert_int_equal(plan->missing.at[1].count, 1);
    assert_true(plan->proved);

    wall->saw.kerf = 100000; /* wider than any board: one piece a board, which needs no cut between pieces */
    plan = trim_plan(arena, wall, NULL);
    check_plan(wall, &wall->trim.pieces, plan);
    assert_int_equal(plan->piece_count, 1);
    assert_true(plan->proved);
    arena_free(arena);
}
END_TEST

START_TEST(nothing_asked_for_opens_nothing)
{
    Arena *arena = arena_new();
    Wall *wall = wall_with(arena, 3, 5);
    put_stock(arena, wall, 2000, 3);
    TrimPlan *plan = trim_plan(arena, wall, NULL);
    check_plan(wall, &wall->trim.pieces, plan);
    assert_int_equal(plan->boards_opened, 0);
    assert_true(plan->proved);
    TrimPieces none = {0};
    *arena_push(arena, &none) = (TrimPiece){"gone", 0, 4};
    plan = trim_plan(arena, wall, &none);
    assert_int_equal(plan->piece_count, 0);
    assert_int_equal(plan->missing.count, 0);
    arena_free(arena);
}
END_TEST

START_TEST(a_list_of_its_own_replaces_that_of_the_file)
{
    Arena *arena = arena_new();
    Wall *wall = wall_with(arena, 3, 5);
    put_stock(arena, wall, 2000, 3);
    put_piece(arena, wall, "unwanted", 100, 1);
    TrimPieces pieces = {0};
    *arena_push(arena, &pieces) = (TrimPiece){"skirting", 700, 5};
    TrimPlan *plan = trim_plan(arena, wall, &pieces);
    check_plan(wall, &pieces, plan);
    assert_int_equal(plan->piece_count, 5);
    assert_string_equal(plan->pieces[0].name, "skirting");
    arena_free(arena);
}
END_TEST

/* As many pieces and boards as a file may hold, nearly all of different length. */
START_TEST(a_hundred_thousand_pieces)
{
    Random random = {.state = 30};
    Arena *arena = arena_new();
    Wall *wall = wall_with(arena, 3 * LENGTH_MM, 10 * LENGTH_MM);
    for (int i = 0; i < 50000; i++) {
        put_stock(arena, wall, random_between(&random, 2000, 6000) * LENGTH_MM, 2);
        put_piece(arena, wall, "strip", random_between(&random, 100 * LENGTH_MM, 3000 * LENGTH_MM), 2);
    }
    TrimPlan *plan = trim_plan(arena, wall, NULL);
    assert_true(plan->missing.count == 0 || plan->boards_opened == plan->board_count);
    assert_true(plan->length_bound <= plan->length_opened);
    assert_true(plan->length_bound * 102 >= plan->length_opened * 100);
    arena_free(arena);
}
END_TEST

START_TEST(any_wall_gives_a_plan)
{
    Random random = {.state = 31};
    for (int round = 0; round < 300; round++) {
        Arena *arena = arena_new();
        Wall *wall = wall_with(arena, random_between(&random, 0, 5), random_between(&random, 0, 20));
        for (int i = (int)random_below(&random, 4); i > 0; i--)
            put_stock(arena, wall, random_between(&random, 1, 200), (int)random_between(&random, 1, 6));
        for (int i = (int)random_below(&random, 8); i > 0; i--)
            put_piece(arena, wall, "strip", random_between(&random, 1, 120), (int)random_between(&random, 1, 4));
        TrimPlan *plan = trim_plan(arena, wall, NULL);
        check_plan(wall, &wall->trim.pieces, plan);
        TrimPlan *again = trim_plan(arena, wall, NULL);
        assert_int_equal(again->piece_count, plan->piece_count);
        assert_memory_equal(again->pieces, plan->pieces, (size_t)plan->piece_count * sizeof *plan->pieces);
        arena_free(arena);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        two_corners_from_two_boards, the_last_piece_needs_no_kerf,    least_length_is_opened,
        what_cannot_be_cut_is_told,  nothing_asked_for_opens_nothing, a_list_of_its_own_replaces_that_of_the_file,
        a_hundred_thousand_pieces,   any_wall_gives_a_plan,
    };
    return RUN(tests);
}
