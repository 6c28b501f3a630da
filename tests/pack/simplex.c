/*
 * The simplex method against what proves an optimum by itself, reckoned here from the columns as they were put in:
 * every row's amount met, no value below 0, no column that gains, and prices that are worth what the columns cost
 * (D. Gale, H. W. Kuhn, A. W. Tucker, 1951).
 */
#include "support/test.h"

#include "base/random.h"
#include "base/wide.h"
#include "pack/simplex.h"

enum { ROWS = 24, COLUMNS = 300, ROUNDS = 60 };

#define COST (INT64_C(1) << 40)
#define GAIN_LEAST (COST >> 30)
#define NEAR (SIMPLEX_ONE >> 24)

typedef struct Made {
    int rows, columns;
    int entries[COLUMNS][ROWS];
    int64_t costs[COLUMNS];
    int64_t amounts[ROWS]; /* whole ones */
} Made;

static int put(Made *made, Simplex *simplex, int64_t cost, const int *entries)
{
    int column = simplex_column(simplex, cost);
    assert_int_equal(column, made->columns);
    made->costs[column] = cost;
    for (int r = 0; r < made->rows; r++) {
        made->entries[column][r] = entries[r];
        if (entries[r] != 0)
            simplex_entry(simplex, r, entries[r]);
    }
    made->columns++;
    return column;
}

/* Demands to be covered, more than that allowed, nothing covered at first but by a dear column for each row. */
static Simplex *begin(Arena *arena, Made *made, Random *random)
{
    made->rows = 3 + (int)random_below(random, ROWS - 2);
    made->columns = 0;
    Simplex *simplex = simplex_new(arena, made->rows);
    for (int r = 0; r < made->rows; r++) {
        int entries[ROWS] = {0};
        entries[r] = 1;
        simplex_basic(simplex, r, put(made, simplex, 3 * COST, entries));
        entries[r] = -1;
        put(made, simplex, 0, entries);
        made->amounts[r] = (int64_t)random_below(random, 9);
        simplex_set_right_side(simplex, r, made->amounts[r] * SIMPLEX_ONE);
    }
    simplex_start(simplex);
    return simplex;
}

static void add(Made *made, Simplex *simplex, Random *random, int count)
{
    for (int i = 0; i < count; i++) {
        int entries[ROWS] = {0};
        for (int n = 0; n < 4; n++)
            entries[random_below(random, (uint64_t)made->rows)] = 1 + (int)random_below(random, 5);
        put(made, simplex, COST / 2 + (int64_t)random_below(random, (uint64_t)COST), entries);
    }
}

static void turn_to_the_end(Simplex *simplex)
{
    for (int turn = 0; simplex_pivot(simplex, GAIN_LEAST); turn++)
        assert_true(turn < 5000);
    assert_false(simplex_overflowed(simplex));
}

static void solve(Simplex *simplex)
{
    turn_to_the_end(simplex);
    simplex_reinvert(simplex);
    turn_to_the_end(simplex);
}

static void check_met(const Made *made, const Simplex *simplex)
{
    for (int r = 0; r < made->rows; r++) {
        Wide sum = 0;
        for (int c = 0; c < made->columns; c++)
            sum += (Wide)made->entries[c][r] * simplex_value(simplex, c);
        Wide over = sum - (Wide)made->amounts[r] * SIMPLEX_ONE;
        assert_true(-NEAR <= over && over <= NEAR);
    }
    for (int c = 0; c < made->columns; c++)
        assert_true(simplex_value(simplex, c) >= -NEAR);
    assert_true(simplex_is_feasible(simplex));
}

static void check_optimal(const Made *made, const Simplex *simplex)
{
    check_met(made, simplex);
    const int64_t *prices = simplex_prices(simplex);
    Wide worth = 0, cost = 0;
    for (int r = 0; r < made->rows; r++)
        worth += (Wide)made->amounts[r] * prices[r];
    for (int c = 0; c < made->columns; c++) {
        Wide gain = -made->costs[c];
        for (int r = 0; r < made->rows; r++)
            gain += (Wide)made->entries[c][r] * prices[r];
        if (gain > 4 * GAIN_LEAST) /* what is basic may be off by some rounding */
            FAIL("column %d gains %lld", c, (long long)gain);
        assert_int_equal(gain, simplex_gain(simplex, c));
        cost += (Wide)made->costs[c] * simplex_value(simplex, c);
    }
    cost = wide_divide(cost, SIMPLEX_ONE);
    assert_true(-4 * GAIN_LEAST <= worth - cost && worth - cost <= 4 * GAIN_LEAST);
    Wide off = simplex_cost(simplex) - cost;
    assert_true(-GAIN_LEAST <= off && off <= GAIN_LEAST);
}

static void change_amounts(Made *made, Simplex *simplex, Random *random)
{
    for (int r = 0; r < made->rows; r++) {
        made->amounts[r] = (int64_t)random_below(random, 9);
        simplex_set_right_side(simplex, r, made->amounts[r] * SIMPLEX_ONE);
    }
    simplex_right_sides_changed(simplex);
}

static void mend(Simplex *simplex)
{
    for (int turn = 0; simplex_dual_pivot(simplex, GAIN_LEAST); turn++)
        assert_true(turn < 5000);
}

START_TEST(turns_end_at_the_optimum)
{
    Random random = {1};
    Arena *arena = arena_new();
    for (int round = 0; round < ROUNDS; round++) {
        Made *made = arena_one(arena, Made);
        Simplex *simplex = begin(arena, made, &random);
        check_met(made, simplex);
        for (int more = 0; more < 4; more++) {
            add(made, simplex, &random, 40);
            solve(simplex);
            check_optimal(made, simplex);
        }
        arena_reset(arena);
    }
    arena_free(arena);
}
END_TEST

START_TEST(new_amounts_are_met)
{
    Random random = {2};
    Arena *arena = arena_new();
    int lacked = 0;
    for (int round = 0; round < ROUNDS; round++) {
        Made *made = arena_one(arena, Made);
        Simplex *simplex = begin(arena, made, &random);
        add(made, simplex, &random, 120);
        solve(simplex);
        for (int more = 0; more < 8; more++) {
            change_amounts(made, simplex, &random);
            lacked += !simplex_is_feasible(simplex);
            mend(simplex);
            check_met(made, simplex);
            solve(simplex);
            check_optimal(made, simplex);
        }
        arena_reset(arena);
    }
    assert_true(lacked > ROUNDS);
    arena_free(arena);
}
END_TEST

/* One of each of a few columns, basic or not, taken from what is asked for. */
START_TEST(what_is_settled_is_asked_for_no_more)
{
    Random random = {3};
    Arena *arena = arena_new();
    for (int round = 0; round < ROUNDS; round++) {
        Made *made = arena_one(arena, Made);
        Simplex *simplex = begin(arena, made, &random);
        add(made, simplex, &random, 120);
        solve(simplex);
        for (int n = 0; n < 3; n++) {
            int column = (int)random_below(&random, (uint64_t)made->columns);
            int times = 1 + (int)random_below(&random, 2);
            simplex_fix(simplex, column, times);
            for (int r = 0; r < made->rows; r++)
                made->amounts[r] -= times * made->entries[column][r];
        }
        mend(simplex);
        check_met(made, simplex);
        solve(simplex);
        check_optimal(made, simplex);
        arena_reset(arena);
    }
    arena_free(arena);
}
END_TEST

START_TEST(a_copy_goes_its_own_way)
{
    Random random = {4};
    Arena *arena = arena_new();
    for (int round = 0; round < ROUNDS; round++) {
        Made *made = arena_one(arena, Made), *other = arena_one(arena, Made);
        Simplex *simplex = begin(arena, made, &random);
        add(made, simplex, &random, 60);
        for (int turn = 0; turn < 10; turn++)
            simplex_pivot(simplex, GAIN_LEAST);
        Simplex *twin = simplex_copy(arena, simplex), *copy = simplex_copy(arena, simplex);
        *other = *made;
        change_amounts(other, copy, &random);
        add(other, copy, &random, 60);
        mend(copy);
        solve(copy);
        check_optimal(other, copy);
        solve(simplex);
        solve(twin);
        check_optimal(made, simplex);
        for (int r = 0; r < made->rows; r++) {
            assert_int_equal(simplex_prices(simplex)[r], simplex_prices(twin)[r]);
            assert_int_equal(simplex_basic_in(simplex, r), simplex_basic_in(twin, r));
        }
        arena_reset(arena);
    }
    arena_free(arena);
}
END_TEST

/* Up and down over and over: what rounding loses does not add up. */
START_TEST(renewing_keeps_a_long_run_true)
{
    Random random = {5};
    Arena *arena = arena_new();
    Made *made = arena_one(arena, Made);
    Simplex *simplex = begin(arena, made, &random);
    add(made, simplex, &random, COLUMNS - made->columns);
    for (int more = 0; more < 2000; more++) {
        change_amounts(made, simplex, &random);
        mend(simplex);
        solve(simplex);
        check_optimal(made, simplex);
    }
    arena_free(arena);
}
END_TEST

START_TEST(new_costs_move_the_prices)
{
    Random random = {6};
    Arena *arena = arena_new();
    Made *made = arena_one(arena, Made);
    Simplex *simplex = begin(arena, made, &random);
    add(made, simplex, &random, 100);
    solve(simplex);
    for (int c = 0; c < made->columns; c++) {
        made->costs[c] = simplex_column_cost(simplex, c) * 3 / 2;
        simplex_set_cost(simplex, c, made->costs[c]);
    }
    simplex_costs_changed(simplex);
    solve(simplex);
    check_optimal(made, simplex);
    arena_free(arena);
}
END_TEST

/* Ten columns in a chain, each row so many times the one before: the inverse outgrows its places, and says so. */
START_TEST(what_outgrows_the_table_wears_it)
{
    enum { CHAIN = 10, TIMES = 1000 };
    Arena *arena = arena_new();
    Simplex *simplex = simplex_new(arena, CHAIN);
    for (int r = 0; r < CHAIN; r++) {
        simplex_basic(simplex, r, simplex_column(simplex, COST));
        simplex_entry(simplex, r, 1);
        simplex_set_right_side(simplex, r, SIMPLEX_ONE);
    }
    simplex_start(simplex);
    for (int r = 0; r < CHAIN; r++) {
        simplex_column(simplex, 0);
        simplex_entry(simplex, r, 1);
        if (r + 1 < CHAIN)
            simplex_entry(simplex, r + 1, -TIMES);
    }
    int turns = 0;
    while (simplex_pivot(simplex, GAIN_LEAST))
        assert_true(++turns < 100);
    assert_true(simplex_overflowed(simplex));
    assert_false(simplex_dual_pivot(simplex, 0));
    arena_free(arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        turns_end_at_the_optimum,
        new_amounts_are_met,
        what_is_settled_is_asked_for_no_more,
        a_copy_goes_its_own_way,
        renewing_keeps_a_long_run_true,
        new_costs_move_the_prices,
        what_outgrows_the_table_wears_it,
    };
    return RUN(tests);
}
