#include "support/test.h"

#include "base/random.h"
#include "fill/relax/paths.h"
#include "support/random_wall.h"

/* Every set of joints of a run of up to so many studs, tried one by one. */
enum { STUDS_MOST = 7, WALLS = 12 };

typedef struct Case {
    const Demand *demand;
    const Run *run;
    const Sizes *sizes;
    const int64_t *duals;
    Length longest;
    bool closed[STUDS_MOST + 2], closed_above[STUDS_MOST + 2];
} Case;

/* Price of the way whose joints are the bits of `studs`; -1 where some piece cannot be. */
static int64_t price_of(const Case *that, unsigned studs, const bool *closed)
{
    int end = that->run->stud_count + 1;
    int64_t sum = 0;
    for (int to = 1, from = 0; to <= end; to++) {
        if (to < end && !(studs >> (to - 1) & 1))
            continue;
        Length left = paths_place(that->run, from), right = paths_place(that->run, to);
        Length length = right - left;
        if (demand_is_short(that->run, left, right) || length > that->longest)
            return -1;
        sum += that->duals[sizes_index(that->sizes, length + that->demand->kerf)];
        sum += to < end && closed[to] ? PATHS_CLOSED : 0;
        from = to;
    }
    return sum;
}

static bool keep_stagger(const Case *that, unsigned one, unsigned other)
{
    for (int i = 1; i <= that->run->stud_count; i++)
        for (int j = 1; j <= that->run->stud_count; j++) {
            Length apart = paths_place(that->run, i) - paths_place(that->run, j);
            if ((one >> (i - 1) & 1) && (other >> (j - 1) & 1) && apart < that->demand->stagger &&
                -apart < that->demand->stagger)
                return false;
        }
    return true;
}

static void lower(int64_t *least, int64_t price)
{
    if (*least < 0 || price < *least)
        *least = price;
}

/* What was found last really costs as much as was said. */
static int64_t price_of_found(const Case *that, Paths *paths, bool above, unsigned *studs)
{
    int count;
    const int *places = paths_found(paths, above, &count);
    *studs = 0;
    assert_int_equal(places[0], that->run->stud_count + 1);
    for (int i = 1; i < count; i++) {
        assert_true(places[i] < places[i - 1] && places[i] > 0);
        *studs |= 1U << (places[i] - 1);
    }
    return price_of(that, *studs, above ? that->closed_above : that->closed);
}

static void check_run(const Case *that, Paths *paths)
{
    int64_t one = -1, beside = -1, two = -1;
    unsigned all = 1U << that->run->stud_count, found, found_above;
    for (unsigned i = 0; i < all; i++) {
        int64_t price = price_of(that, i, that->closed);
        bool partner = false;
        if (price < 0)
            continue;
        lower(&one, price);
        for (unsigned j = 0; j < all; j++) {
            int64_t above = price_of(that, j, that->closed_above);
            if (above < 0 || !keep_stagger(that, i, j))
                continue;
            lower(&two, price + above);
            partner = true;
        }
        if (partner)
            lower(&beside, price);
    }
    assert_int_equal(paths_cheapest(paths, that->run, that->duals, that->closed), one);
    if (one >= 0)
        assert_int_equal(price_of_found(that, paths, false, &found), one);
    assert_int_equal(paths_cheapest_beside(paths, that->run, that->duals, that->closed), beside);
    if (beside >= 0)
        assert_int_equal(price_of_found(that, paths, false, &found), beside);
    assert_int_equal(paths_cheapest_pair(paths, that->run, that->duals, that->closed, that->closed_above), two);
    if (two < 0)
        return;
    int64_t sum = price_of_found(that, paths, false, &found);
    assert_int_equal(sum + price_of_found(that, paths, true, &found_above), two);
    assert_true(keep_stagger(that, found, found_above));
}

START_TEST(ways_are_the_cheapest_of_all)
{
    Random random = {1};
    int runs = 0, staggered = 0;
    for (uint64_t seed = 0; seed < WALLS; seed++) {
        Arena *arena = arena_new();
        Err err;
        Wall *wall = random_wall(arena, seed, RANDOM_HOUSE_STUDS);
        if (seed % 3 == 0) /* the next stud is too near as well */
            wall->joints.stagger = 30 * LENGTH_INCH;
        const Layout *layout = layout_wall(arena, wall, &err);
        Demand *demand = demand_new(arena, layout);
        Length longest = 105 * LENGTH_INCH;
        const Sizes *sizes = sizes_find(arena, demand, demand->runs, demand->run_count, longest, 2048);
        int64_t *duals = arena_array(arena, int64_t, sizes->count);
        for (int i = 0; i < sizes->count; i++)
            duals[i] = (int64_t)random_below(&random, 100 * (uint64_t)LENGTH_INCH);
        Paths *paths = paths_new(arena, demand, sizes, longest, STUDS_MOST);
        for (int i = 0; i < demand->run_count; i++) {
            Case that = {demand, &demand->runs[i], sizes, duals, longest, {false}, {false}};
            if (that.run->stud_count > STUDS_MOST)
                continue;
            for (int j = 1; j <= that.run->stud_count; j++) {
                that.closed[j] = random_below(&random, 4) == 0;
                that.closed_above[j] = random_below(&random, 4) == 0;
            }
            check_run(&that, paths);
            runs++;
            staggered += that.run->stud_count > 2;
        }
        arena_free(arena);
    }
    assert_true(runs > 200 && staggered > 100);
}
END_TEST

/* The work of a pair that is promised holds; where studs stand so close that it would be too much, there is none. */
START_TEST(pairs_are_no_more_work_than_is_said)
{
    for (int spacing = 1; spacing <= 16; spacing *= 2) {
        Arena *arena = arena_new();
        Err err;
        Wall *wall = random_wall(arena, 1, RANDOM_HOUSE_STUDS);
        wall->faces.at[0].width = 300 * LENGTH_INCH;
        wall->faces.at[0].openings = (Openings){0};
        wall->faces.at[0].studs =
            (Studs){.given = true, .regular = true, .first = LENGTH_INCH, .spacing = spacing * LENGTH_INCH};
        const Demand *demand = demand_new(arena, layout_wall(arena, wall, &err));
        const Run *run = &demand->runs[0];
        Sizes *sizes = sizes_find(arena, demand, demand->runs, demand->run_count, 200 * LENGTH_INCH, 2048);
        int64_t *duals = arena_array(arena, int64_t, sizes->count);
        Paths *paths = paths_new(arena, demand, sizes, 200 * LENGTH_INCH, 1000);
        int64_t promised = paths_work_of_pair(paths, run);
        assert_true((promised < 0) == (spacing == 1));
        if (promised >= 0) {
            paths_take_work(paths);
            paths_cheapest_pair(paths, run, duals, NULL, NULL);
            int64_t pieces = (int64_t)(run->stud_count + 2) * (run->stud_count + 2);
            assert_true(paths_take_work(paths) <= promised + pieces);
        }
        arena_free(arena);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {ways_are_the_cheapest_of_all, pairs_are_no_more_work_than_is_said};
    return RUN(tests);
}
