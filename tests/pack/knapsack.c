#include "support/test.h"

#include "base/random.h"
#include "pack/knapsack.h"

#include <stdio.h>

/* Every choice of up to six kinds, tried one by one. */
static bool best_of_all(const KnapsackKind *kinds, int count, Length need, Length *cost, int *boards)
{
    int taken[6] = {0};
    bool found = false;
    for (;;) {
        Length usable = 0, spent = 0;
        int used = 0;
        for (int i = 0; i < count; i++) {
            usable += taken[i] * (kinds[i].usable > 0 ? kinds[i].usable : 0);
            spent += taken[i] * kinds[i].cost;
            used += taken[i];
        }
        if (usable >= need && (!found || spent < *cost || (spent == *cost && used < *boards))) {
            found = true;
            *cost = spent;
            *boards = used;
        }
        int i = 0;
        while (i < count && taken[i] == kinds[i].count)
            taken[i++] = 0;
        if (i == count)
            return found;
        taken[i]++;
    }
}

static void check_consistent(const KnapsackKind *kinds, int count, Length need, const KnapsackResult *result)
{
    Length usable = 0, cost = 0;
    int boards = 0;
    for (int i = 0; i < count; i++) {
        assert_in_range(result->taken[i], 0, kinds[i].count);
        usable += result->taken[i] * kinds[i].usable;
        cost += result->taken[i] * kinds[i].cost;
        boards += result->taken[i];
    }
    assert_true(usable >= need);
    assert_int_equal(usable, result->usable);
    assert_int_equal(cost, result->cost);
    assert_int_equal(boards, result->boards);
    assert_true(result->cost_bound <= result->cost);
    if (result->proved)
        assert_int_equal(result->cost_bound, result->cost);
}

START_TEST(small_ones_equal_the_best_of_all_choices)
{
    Random random = {.state = 20};
    int covered = 0;
    for (int round = 0; round < 3000; round++) {
        Arena *arena = arena_new();
        KnapsackKind kinds[6];
        int count = (int)random_between(&random, 0, 6);
        Length all = 0;
        for (int i = 0; i < count; i++) {
            Length usable = random_between(&random, 0, 40);
            Length cost = round % 3 == 0 ? usable + 5 : round % 3 == 1 ? usable : random_between(&random, 0, 40);
            kinds[i] = (KnapsackKind){usable, cost, (int)random_between(&random, 0, 4)};
            all += usable * kinds[i].count;
        }
        Length need = random_between(&random, 0, all + 3);
        Length cost = 0;
        int boards = 0;
        KnapsackResult *result = knapsack_cover(arena, kinds, count, need, 0);
        assert_int_equal(result->covered, best_of_all(kinds, count, need, &cost, &boards));
        if (result->covered) {
            covered++;
            check_consistent(kinds, count, need, result);
            assert_true(result->proved);
            assert_int_equal(result->cost, cost);
            assert_int_equal(result->boards, boards);
        }
        arena_free(arena);
    }
    assert_in_range(covered, 2000, 2999);
}
END_TEST

/* A pile as a house has it: 10,000 boards of uneven length in 16ths of an inch, squared by 1/4 in at each end. */
START_TEST(a_large_pile_is_proved)
{
    Random random = {.state = 21};
    Arena *arena = arena_new();
    KnapsackKind *kinds = arena_array(arena, KnapsackKind, 10000);
    Length all = 0;
    for (int i = 0; i < 10000; i++) {
        Length length = random_between(&random, 24 * 16, 105 * 16) * LENGTH_INCH / 16;
        kinds[i] = (KnapsackKind){length - LENGTH_INCH / 2, length, 1};
        all += kinds[i].usable;
    }
    for (int part = 1; part < 8; part++) {
        Length need = all / 8 * part + part;
        KnapsackResult *result = knapsack_cover(arena, kinds, 10000, need, 0);
        check_consistent(kinds, 10000, need, result);
        assert_true(result->proved);
    }
    arena_free(arena);
}
END_TEST

START_TEST(little_budget_still_covers)
{
    Random random = {.state = 22};
    Arena *arena = arena_new();
    KnapsackKind kinds[200];
    for (int i = 0; i < 200; i++) {
        Length usable = random_between(&random, LENGTH_METRE, 3 * LENGTH_METRE);
        kinds[i] = (KnapsackKind){usable, usable + random_between(&random, 0, LENGTH_METRE / 10), 2};
    }
    Length need = 200 * LENGTH_METRE;
    KnapsackResult *full = knapsack_cover(arena, kinds, 200, need, 0);
    for (int64_t steps = 1; steps < 100000; steps *= 7) {
        KnapsackResult *result = knapsack_cover(arena, kinds, 200, need, steps);
        check_consistent(kinds, 200, need, result);
        assert_true(result->cost_bound <= full->cost);
        assert_true(result->cost >= full->cost_bound);
    }
    arena_free(arena);
}
END_TEST

START_TEST(beyond_the_range_every_board_is_taken_and_nothing_proved)
{
    Arena *arena = arena_new();
    KnapsackKind long_ones[] = {{LENGTH_MOST + 1, 5, 3}, {7, INT64_MAX, INT32_MAX}, {0, 5, 3}, {-7, -5, 3}};
    KnapsackResult *result = knapsack_cover(arena, long_ones, 4, 8, 0);
    assert_true(result->covered);
    assert_false(result->proved);
    assert_int_equal(result->cost_bound, 0);
    assert_int_equal(result->taken[0], 3);
    assert_int_equal(result->taken[1], INT32_MAX);
    assert_int_equal(result->taken[2], 0);
    assert_int_equal(result->taken[3], 0);
    assert_int_equal(result->boards, INT32_MAX);
    assert_true(result->cost == INT64_MAX);
    assert_int_equal(result->usable, 3 * (LENGTH_MOST + 1) + 7 * (Length)INT32_MAX);
    assert_false(knapsack_cover(arena, long_ones, 4, result->usable + 1, 0)->covered);
    KnapsackKind many[] = {{5, 5, 1000001}};
    assert_false(knapsack_cover(arena, many, 1, 8, 0)->proved);
    arena_free(arena);
}
END_TEST

START_TEST(ends_of_the_range)
{
    Arena *arena = arena_new();
    KnapsackKind most[] = {{LENGTH_MOST, LENGTH_MOST, 50000}, {LENGTH_MOST - 1, LENGTH_MOST - 1, 50000}};
    KnapsackResult *result = knapsack_cover(arena, most, 2, LENGTH_MOST * 99999 - 49998, 0);
    assert_true(result->covered);
    check_consistent(most, 2, LENGTH_MOST * 99999 - 49998, result);
    assert_false(knapsack_cover(arena, most, 2, LENGTH_MOST * 100000, 0)->covered);
    assert_false(knapsack_cover(arena, NULL, 0, 1, 0)->covered);
    assert_true(knapsack_cover(arena, NULL, 0, 0, 0)->covered);
    KnapsackKind nothing[] = {{0, 5, 3}, {-7, 5, 3}};
    assert_false(knapsack_cover(arena, nothing, 2, 1, 0)->covered);
    arena_free(arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        small_ones_equal_the_best_of_all_choices,
        a_large_pile_is_proved,
        little_budget_still_covers,
        ends_of_the_range,
        beyond_the_range_every_board_is_taken_and_nothing_proved,
    };
    return RUN(tests);
}
