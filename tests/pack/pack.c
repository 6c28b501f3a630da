#include "support/test.h"

#include "base/random.h"
#include "pack/instances.h"

#include <stdlib.h>
#include <string.h>

static PackResult *solve(Arena *arena, const Instance *instance)
{
    PackResult *result =
        pack_solve(arena, instance->stock, instance->stock_count, instance->items, instance->item_count, 0);
    const char *fault = instance_fault(instance, result);
    if (fault != NULL)
        FAIL("%s: %s", instance->name, fault);
    return result;
}

/* Every instance of a file, but `skip` of each that is taken: all cut, at the known optimum, and proved where asked. */
static void check_file(const char *name, int skip, bool proved)
{
    FILE *file = instances_open(name);
    Arena *arena = arena_new();
    Instance instance;
    int index = 0, checked = 0;
    for (; instance_read(file, false, arena, &instance); index++) {
        if (index % (skip + 1) == 0) {
            PackResult *result = solve(arena, &instance);
            if (result->cost != instance.upper || result->missing_count != 0 || (proved && !result->proved))
                FAIL("%s: cost %lld, known optimum %lld, %s", instance.name, (long long)result->cost,
                     (long long)instance.upper, result->proved ? "proved" : "not proved");
            checked++;
        }
        arena_reset(arena);
    }
    assert_true(checked >= 5);
    arena_free(arena);
    fclose(file);
}

START_TEST(uniform_sets_are_proved)
{
    check_file("binpack1_u120.txt", 0, true);
    check_file("binpack2_u250.txt", 0, true);
    check_file("binpack3_u500.txt", 0, true);
    check_file("binpack4_u1000.txt", 0, true);
}
END_TEST

START_TEST(triplets_are_proved)
{
    check_file("binpack5_t60.txt", 0, true);
    check_file("binpack6_t120.txt", 0, true);
    check_file("binpack7_t249.txt", 1, true);
    check_file("binpack8_t501.txt", 1, true);
}
END_TEST

START_TEST(scholl_sets_are_proved)
{
    check_file("scholl1.txt", 0, true);
    check_file("scholl2.txt", 8, true);
}
END_TEST

START_TEST(schwerin_and_waescher_sets_reach_the_optimum)
{
    check_file("schwerin1.txt", 2, true);
    check_file("schwerin2.txt", 2, true);
    check_file("waescher.txt", 1, false);
}
END_TEST

/* The bound must stay at or below what is known to be reached, also where rounding the relaxation up is not enough. */
START_TEST(bounds_never_pass_the_optimum)
{
    static const char *const files[] = {"hard28.txt", "waescher.txt", "scholl3.txt"};
    for (size_t f = 0; f < sizeof files / sizeof *files; f++) {
        FILE *file = instances_open(files[f]);
        Arena *arena = arena_new();
        Instance instance;
        while (instance_read(file, false, arena, &instance)) {
            for (int64_t steps = 1; steps < 2000; steps *= 40) {
                PackResult *result =
                    pack_solve(arena, instance.stock, instance.stock_count, instance.items, instance.item_count, steps);
                assert_null(instance_fault(&instance, result));
                assert_true(result->cost_bound <= instance.upper);
                assert_true(result->cost >= instance.lower);
            }
            arena_reset(arena);
        }
        arena_free(arena);
        fclose(file);
    }
}
END_TEST

START_TEST(several_lengths_stay_within_what_is_known)
{
    FILE *file = instances_open("boards_several_lengths.txt");
    Arena *arena = arena_new();
    Instance instance;
    int count = 0, at_best = 0;
    while (instance_read(file, true, arena, &instance)) {
        PackResult *result =
            pack_solve(arena, instance.stock, instance.stock_count, instance.items, instance.item_count, 30000);
        const char *fault = instance_fault(&instance, result);
        if (fault != NULL || result->missing_count > 0 || result->cost < instance.lower ||
            result->cost_bound > instance.upper)
            FAIL("%s: %s", instance.name, fault != NULL ? fault : "outside the known bounds");
        count++;
        at_best += result->cost <= instance.upper;
        arena_reset(arena);
    }
    assert_int_equal(count, 41);
    assert_true(at_best * 100 >= count * 85);
    arena_free(arena);
    fclose(file);
}
END_TEST

/* ---- small ones against every way of cutting ---- */

typedef struct Tried {
    const PackStock *stock;
    int stock_count;
    Length room[8]; /* left in each board opened */
    int kind[8];
    int boards;
    int left[8];
    Length pieces[8];
    int piece_count;
    Length missing, cost;
    Length best_missing, best_cost;
    int best_boards;
} Tried;

static void try_all(Tried *tried, int piece)
{
    if (tried->missing > tried->best_missing)
        return;
    if (piece == tried->piece_count) {
        if (tried->missing < tried->best_missing || tried->cost < tried->best_cost ||
            (tried->cost == tried->best_cost && tried->boards < tried->best_boards)) {
            tried->best_missing = tried->missing;
            tried->best_cost = tried->cost;
            tried->best_boards = tried->boards;
        }
        return;
    }
    Length size = tried->pieces[piece];
    for (int b = 0; b < tried->boards; b++) {
        if (tried->room[b] < size)
            continue;
        tried->room[b] -= size;
        try_all(tried, piece + 1);
        tried->room[b] += size;
    }
    for (int k = 0; k < tried->stock_count; k++) {
        if (tried->left[k] == 0 || tried->stock[k].capacity < size)
            continue;
        tried->left[k]--;
        tried->room[tried->boards] = tried->stock[k].capacity - size;
        tried->kind[tried->boards++] = k;
        tried->cost += tried->stock[k].cost;
        try_all(tried, piece + 1);
        tried->cost -= tried->stock[k].cost;
        tried->boards--;
        tried->left[k]++;
    }
    tried->missing += size;
    try_all(tried, piece + 1);
    tried->missing -= size;
}

START_TEST(small_ones_equal_every_way_of_cutting)
{
    Random random = {.state = 40};
    int proved = 0, short_of_stock = 0, best = 0;
    enum { ROUNDS = 600 };
    for (int round = 0; round < ROUNDS; round++) {
        Arena *arena = arena_new();
        PackStock stock[3];
        PackItem items[7];
        int stock_count = (int)random_between(&random, 1, 3), item_count = (int)random_between(&random, 1, 7);
        Instance instance = {"small", stock, stock_count, items, item_count, 0, 0};
        for (int k = 0; k < stock_count; k++) {
            Length length = random_between(&random, 20, 60);
            stock[k] = (PackStock){length + 1, round % 4 == 0 ? random_between(&random, 1, 60) : length,
                                   (int)random_between(&random, 1, round % 2 == 0 ? 2 : 4)};
        }
        Tried tried = {.stock = stock, .stock_count = stock_count, .best_missing = INT64_MAX};
        for (int i = 0; i < item_count; i++) {
            items[i] = (PackItem){random_between(&random, 3, 45), 1};
            tried.pieces[tried.piece_count++] = items[i].size;
        }
        for (int k = 0; k < stock_count; k++)
            tried.left[k] = stock[k].count;
        try_all(&tried, 0);
        PackResult *result = solve(arena, &instance);
        Length missing = 0;
        for (int i = 0; i < item_count; i++)
            missing += result->missing[i] * items[i].size;
        short_of_stock += tried.best_missing > 0;
        assert_true(missing >= tried.best_missing);
        bool is_best = missing == tried.best_missing && result->cost == tried.best_cost;
        best += is_best;
        if (missing == tried.best_missing)
            assert_true(result->cost_bound <= tried.best_cost);
        if (result->cost_proved)
            assert_true(is_best);
        if (result->proved)
            assert_int_equal(result->bin_count, tried.best_boards);
        proved += result->proved;
        arena_free(arena);
    }
    printf("# of %d: %d at the optimum, %d proved, %d short of stock\n", ROUNDS, best, proved, short_of_stock);
    assert_true(short_of_stock >= ROUNDS / 20);
    assert_true(best >= ROUNDS * 95 / 100);
}
END_TEST

/* ---- ends of the range ---- */

START_TEST(nothing_and_too_much)
{
    Arena *arena = arena_new();
    PackResult *result = pack_solve(arena, NULL, 0, NULL, 0, 0);
    assert_int_equal(result->bin_count, 0);
    assert_true(result->proved);

    PackStock stock[] = {{100, 100, 2}, {0, 50, 4}, {300, 300, 0}};
    PackItem items[] = {{101, 2}, {100, 1}, {7, 0}};
    Instance instance = {"edges", stock, 3, items, 3, 0, 0};
    result = solve(arena, &instance);
    assert_int_equal(result->missing[0], 2);
    assert_int_equal(result->missing_count, 2);
    assert_int_equal(result->cost, 100);
    assert_true(result->proved);
    arena_free(arena);
}
END_TEST

START_TEST(longest_lengths_do_not_overflow)
{
    Arena *arena = arena_new();
    PackStock stock[] = {{LENGTH_MOST, LENGTH_MOST, 900}, {LENGTH_MOST - 1, LENGTH_MOST - 1, 900}};
    PackItem items[] = {{LENGTH_MOST / 2, 900}, {LENGTH_MOST / 3 - 1, 301}, {LENGTH_MOST / 7, 77}};
    Instance instance = {"long", stock, 2, items, 3, 0, 0};
    PackResult *result = solve(arena, &instance);
    assert_int_equal(result->missing_count, 0);
    assert_true(result->cost_bound * 100 >= result->cost * 99);
    arena_free(arena);
}
END_TEST

/* Boards opened already cost nothing more; they are used up before a new one is opened. */
START_TEST(boards_that_cost_nothing_come_first)
{
    Random random = {.state = 42};
    for (int round = 0; round < 4; round++) {
        Arena *arena = arena_new();
        PackStock stock[] = {{LENGTH_METRE, 0, 4}, {3 * LENGTH_METRE, LENGTH_MOST, 30}, {2 * LENGTH_METRE, 0, 3}};
        PackItem items[30];
        Length sum = 0;
        for (int i = 0; i < 30; i++) {
            items[i] = (PackItem){random_between(&random, LENGTH_METRE / 5, LENGTH_METRE) + i, 3};
            sum += 3 * items[i].size;
        }
        Instance instance = {"free", stock, 3, items, 30, 0, 0};
        PackResult *result = solve(arena, &instance);
        assert_int_equal(result->missing_count, 0);
        Length boards = (sum - 10 * LENGTH_METRE + 3 * LENGTH_METRE - 1) / (3 * LENGTH_METRE);
        assert_true(result->cost >= boards * LENGTH_MOST);
        assert_true(result->cost <= (boards + 1) * LENGTH_MOST);
        arena_free(arena);
    }
}
END_TEST

START_TEST(the_same_again_is_the_same)
{
    FILE *file = instances_open("hard28.txt");
    Arena *arena = arena_new();
    Instance instance;
    assert_true(instance_read(file, false, arena, &instance));
    PackResult *one = solve(arena, &instance), *two = solve(arena, &instance);
    assert_int_equal(one->bin_count, two->bin_count);
    for (int b = 0; b < one->bin_count; b++) {
        assert_int_equal(one->bins[b].item_count, two->bins[b].item_count);
        assert_memory_equal(one->bins[b].items, two->bins[b].items,
                            (size_t)one->bins[b].item_count * sizeof *one->bins[b].items);
    }
    arena_free(arena);
    fclose(file);
}
END_TEST

/* As many pieces as there may be: no board of 100 holds more than 99, none of 59 more than 58, so that no way costs
 * less than the pieces over 0.99; what is found is within a board of that. */
START_TEST(a_million_pieces_of_few_sizes)
{
    Arena *arena = arena_new();
    PackStock stock[] = {{100, 100, 900000}, {59, 59, 900000}};
    PackItem items[] = {{41, 333000}, {35, 333000}, {23, 333000}, {33, 1000}};
    Instance instance = {"million", stock, 2, items, 4, 0, 0};
    PackResult *result = solve(arena, &instance);
    assert_int_equal(result->missing_count, 0);
    assert_true(result->cost_bound <= result->cost);
    assert_true(result->cost < 33000000 / 99 * 100 + 100);
    arena_free(arena);
}
END_TEST

/* Nearly every piece and every board of a length of its own. */
START_TEST(a_hundred_thousand_pieces_end_near_the_bound)
{
    Random random = {.state = 41};
    Arena *arena = arena_new();
    enum { MANY = 100000 };
    PackStock *stock = arena_array(arena, PackStock, MANY);
    PackItem *items = arena_array(arena, PackItem, MANY);
    for (int i = 0; i < MANY; i++) {
        Length length = random_between(&random, 2 * LENGTH_METRE, 6 * LENGTH_METRE);
        stock[i] = (PackStock){length, length, 1};
        items[i] = (PackItem){random_between(&random, LENGTH_MM, 3 * LENGTH_METRE), 1};
    }
    Instance instance = {"many", stock, MANY, items, MANY, 0, 0};
    PackResult *result = solve(arena, &instance);
    assert_int_equal(result->missing_count, 0);
    assert_true(result->cost - result->cost_bound <= result->cost_bound / 10000);
    arena_free(arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        uniform_sets_are_proved,
        triplets_are_proved,
        scholl_sets_are_proved,
        schwerin_and_waescher_sets_reach_the_optimum,
        bounds_never_pass_the_optimum,
        several_lengths_stay_within_what_is_known,
        small_ones_equal_every_way_of_cutting,
        nothing_and_too_much,
        longest_lengths_do_not_overflow,
        boards_that_cost_nothing_come_first,
        the_same_again_is_the_same,
        a_million_pieces_of_few_sizes,
        a_hundred_thousand_pieces_end_near_the_bound,
    };
    return RUN(tests);
}
