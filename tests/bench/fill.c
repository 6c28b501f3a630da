/*
 * The fill measured: over seeded rooms of each kind what is opened over the bound and over the hand method, equal tones
 * beside what chance would give, times; the times of all kinds of walls together; then halls that grow. How far each
 * target is met is printed, not judged. Argument: rooms a kind (200), of which five times as many walls are timed;
 * `walls` behind it leaves it at those.
 */
#include "fill/fill.h"
#include "base/random.h"
#include "memory.h"
#include "support/random_wall.h"
#include "support/rules.h"
#include "support/unkind_wall.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { ROOMS = 200 };

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

static int by_size(const void *a, const void *b)
{
    double one = *(const double *)a, other = *(const double *)b;
    return (one > other) - (one < other);
}

typedef struct Row {
    double at[ROOMS];
    int count;
} Row;

static void put(Row *row, double value)
{
    if (row->count < ROOMS)
        row->at[row->count++] = value;
}

static double mean(const Row *row)
{
    double sum = 0;
    for (int i = 0; i < row->count; i++)
        sum += row->at[i];
    return row->count > 0 ? sum / row->count : 0;
}

/* The value that `part` of 1 are at or below. */
static double at_part(Row *row, double part)
{
    if (row->count == 0)
        return 0;
    qsort(row->at, (size_t)row->count, sizeof *row->at, by_size);
    return row->at[(int)(part * (row->count - 1))];
}

static Length longest_board(const Wall *wall)
{
    Length longest = 0;
    for (int i = 0; i < wall->stock.count; i++)
        longest = wall->stock.at[i].length > longest ? wall->stock.at[i].length : longest;
    return longest;
}

enum { SLICE = 20000 };

/* The looks of the plan that the search found, before it was arranged for looks: the last plan that there was before
 * the fill was done. */
static Looks looks_before(const Layout *layout)
{
    Fill *fill = fill_begin(layout);
    Looks before = fill_plan(fill)->looks;
    while (!fill_step(fill, SLICE))
        before = fill_plan(fill)->looks;
    fill_free(fill);
    return before;
}

static void add_looks(Looks *sum, const Looks *looks)
{
    sum->touching += looks->touching;
    sum->equal += looks->equal;
    sum->chance += looks->chance;
    sum->stacked += looks->stacked;
    sum->stairs += looks->stairs;
    sum->short_pairs += looks->short_pairs;
    sum->near_sides += looks->near_sides;
}

static void tell_looks(const char *when, const Looks *sum, int joints, int rooms)
{
    double all = sum->touching > 0 ? sum->touching : 1;
    printf("#   looks %s: neighbours of one tone %.1f %%, by chance %.1f %%; a room: %.1f joints, %.1f stacked, %.1f "
           "stairs, %.1f short pairs, %.1f beside a cutout\n",
           when, 100.0 * sum->equal / all, 100.0 * sum->chance / all, (double)joints / rooms,
           (double)sum->stacked / rooms, (double)sum->stairs / rooms, (double)sum->short_pairs / rooms,
           (double)sum->near_sides / rooms);
}

static void measure_rooms(RandomKind kind, int rooms)
{
    static Row over_bound, over_hand, first, final, middling;
    Looks before = {0}, after = {0};
    int joints = 0;
    int missed = 0, worse = 0, bare = 0, proved = 0;
    over_bound.count = over_hand.count = first.count = final.count = middling.count = 0;
    for (int seed = 0; seed < rooms; seed++) {
        Arena *arena = arena_new();
        Err err;
        const Layout *layout = layout_wall(arena, random_wall(arena, (uint64_t)seed, kind), &err);
        double start = seconds();
        Fill *fill = fill_begin(layout);
        put(&first, 1e3 * (seconds() - start));
        while (!fill_step(fill, 1000))
            continue;
        put(&final, 1e3 * (seconds() - start));
        const Plan *plan = fill_plan(fill);
        if (plan->boards_opened >= 140 && plan->boards_opened <= 160)
            put(&middling, final.at[final.count - 1]);
        const Plan *hand = fill_by_hand(arena, layout);
        Cost cost = rules_cost(layout, plan), by_hand = rules_cost(layout, hand);
        worse += cost_compare(&cost, &by_hand) > 0;
        if (plan->shortfall > 0) {
            bare++;
        } else {
            Length over = plan->length_opened - plan->length_bound;
            put(&over_bound, 100.0 * (double)over / (double)plan->length_bound);
            missed += over * 200 > plan->length_bound && over > longest_board(layout->wall);
            proved += over == 0;
        }
        if (plan->shortfall == hand->shortfall)
            put(&over_hand, 100.0 * ((double)hand->length_opened / (double)plan->length_opened - 1));
        Looks found = looks_before(layout);
        add_looks(&before, &found);
        add_looks(&after, &plan->looks);
        joints += plan->joints;
        fill_free(fill);
        arena_free(arena);
    }
    printf("# %s, %d rooms\n", random_kind_word(kind), rooms);
    printf("#   opened over bound: mean %.2f %%, 95th of 100 %.2f %%, worst %.2f %%; at the bound: %d; beyond 0.5 %% "
           "and a board: %d\n",
           mean(&over_bound), at_part(&over_bound, 0.95), at_part(&over_bound, 1), proved, missed);
    printf(
        "#   by hand over opened: mean %.2f %%, least %.2f %%; worse than by hand: %d; rules broken or wall bare: %d\n",
        mean(&over_hand), at_part(&over_hand, 0), worse, bare);
    tell_looks("before", &before, joints, rooms);
    tell_looks("after", &after, joints, rooms);
    printf("#   first plan: median %.2f ms, worst %.2f ms; final plan: median %.0f ms, worst %.0f ms\n",
           at_part(&first, 0.5), at_part(&first, 1), at_part(&final, 0.5), at_part(&final, 1));
    printf("#   final plan of the %d rooms of about 150 boards: median %.0f ms, worst %.0f ms\n", middling.count,
           at_part(&middling, 0.5), at_part(&middling, 1));
    fflush(stdout);
}

/* ---- times of walls ---- */

enum { WALLS = 1000, PIECES_MOST = 300, SLOW_SHOWN = 4 };

typedef struct Timed {
    double seconds;
    const char *kind;
    int seed, pieces, boards;
} Timed;

static int slowest_first(const void *a, const void *b)
{
    const Timed *one = a, *other = b;
    return (one->seconds < other->seconds) - (one->seconds > other->seconds);
}

static Wall *wall_to_time(Arena *arena, int number, Timed *timed)
{
    static const RandomKind kinds[] = {RANDOM_ANY,
                                       RANDOM_HUNG,
                                       RANDOM_HOUSE,
                                       RANDOM_HOUSE_STUDS,
                                       RANDOM_HOUSE_ONE_LENGTH,
                                       RANDOM_HOUSE_STUDS_ONE_LENGTH};
    enum { KINDS = sizeof kinds / sizeof *kinds };
    timed->seed = number / 2;
    timed->kind = "unkind";
    if (number % 2 == 0)
        return unkind_wall(arena, (uint64_t)timed->seed);
    RandomKind kind = kinds[timed->seed % KINDS];
    timed->kind = random_kind_word(kind);
    return random_wall(arena, (uint64_t)timed->seed, kind);
}

/* Unkind walls and kind ones by turns, those of up to 300 pieces: from layout to final plan. To reach: median 0.15 s,
 * 99 of 100 0.4 s, worst 1 s. */
static void measure_walls(int walls)
{
    static Timed timed[WALLS];
    static Length opened, bound, missing;
    int count = 0, within = 0;
    double sum = 0;
    for (int i = 0; i < walls; i++) {
        Arena *arena = arena_new();
        Err err;
        Timed *now = &timed[count];
        double start = seconds();
        const Layout *layout = layout_wall(arena, wall_to_time(arena, i, now), &err);
        if (layout != NULL) {
            const Plan *plan = fill_wall(arena, layout);
            now->seconds = seconds() - start;
            now->pieces = plan->piece_count;
            now->boards = plan->boards_opened;
            if (now->pieces <= PIECES_MOST) {
                count++;
                sum += now->seconds;
                within += now->seconds <= 0.4;
                opened += plan->length_opened;
                bound += plan->length_bound;
                missing += plan->shortfall;
            }
        }
        arena_free(arena);
    }
    qsort(timed, (size_t)count, sizeof *timed, slowest_first);
    printf("# %d walls of up to %d pieces, layout and plan: median %.3f s, 99 of 100 within %.3f s, worst %.3f s; "
           "within 0.4 "
           "s: %.1f %%; together %.1f s\n",
           count, PIECES_MOST, timed[count / 2].seconds, timed[count / 100].seconds, timed[0].seconds,
           100.0 * within / count, sum);
    printf("#   opened %.3f %% over the bounds; missing %.1f m\n", 100.0 * ((double)opened / (double)bound - 1),
           (double)missing / 1e9);
    for (int i = 0; i < SLOW_SHOWN && i < count; i++)
        printf("#   %.3f s: %s %d, %d pieces, %d boards\n", timed[i].seconds, timed[i].kind, timed[i].seed,
               timed[i].pieces, timed[i].boards);
    fflush(stdout);
}

/* A hall of about so many boards: faces of 40 courses, joints anywhere or on studs, boards of many lengths. */
static Wall *hall(Arena *arena, int boards, JointLand land)
{
    Random random = {(uint64_t)boards};
    Wall *wall = wall_new(arena, UNITS_IN);
    *arena_push(arena, &wall->planks.widths) = 5 * LENGTH_INCH;
    wall->planks.thickness = LENGTH_INCH / 2;
    wall->joints = (Joints){.land = land, .stagger = 6 * LENGTH_INCH, .shortest = 10 * LENGTH_INCH};
    wall->saw = (Saw){LENGTH_INCH / 8, LENGTH_INCH / 4};
    Length need = 0;
    for (int i = 0; i < 10; i++) {
        Face *face = arena_push(arena, &wall->faces);
        char name[16];
        snprintf(name, sizeof name, "face %d", i);
        *face = (Face){.id = wall->next_id++, .name = arena_text(arena, name, strlen(name))};
        face->width = boards * 60 * LENGTH_INCH / 10 / 40;
        *arena_push(arena, &face->floor) = (Mark){0, 0};
        *arena_push(arena, &face->ceiling) = (Mark){0, 200 * LENGTH_INCH};
        face->studs = (Studs){.given = true, .regular = true, .first = 8 * LENGTH_INCH, .spacing = 16 * LENGTH_INCH};
        need += 40 * face->width;
    }
    for (Length have = 0; have < need + need / 5;) {
        Length length = random_between(&random, 24 * 4, 105 * 4) * (LENGTH_INCH / 4);
        *arena_push(arena, &wall->stock) =
            (Stock){.id = wall->next_id++, .label = "", .length = length, .count = 1, .tone = ""};
        have += length;
    }
    return wall;
}

typedef struct Times {
    double first, final; /* seconds */
} Times;

static Times measure_hall(int boards, JointLand land)
{
    Arena *arena = arena_new();
    Err err;
    const Layout *layout = layout_wall(arena, hall(arena, boards, land), &err);
    double start = seconds();
    Fill *fill = fill_begin(layout);
    double first = seconds() - start;
    while (!fill_step(fill, 100000))
        continue;
    const Plan *plan = fill_plan(fill);
    double final = seconds() - start;
    printf(
        "# hall, joints %s: %d boards in stock, %d opened, %.2f %% over the bound, first plan %.0f ms, final %.2f s; "
        "most memory so far %.1f MiB\n",
        land == LAND_STUDS ? "on studs" : "anywhere", plan->board_count, plan->boards_opened,
        100.0 * ((double)plan->length_opened / (double)plan->length_bound - 1), 1e3 * first, final,
        (double)most_memory() / 1024);
    fflush(stdout);
    fill_free(fill);
    arena_free(arena);
    return (Times){first, final};
}

int main(int count, char **arguments)
{
    int rooms = count > 1 ? (int)strtol(arguments[1], NULL, 10) : ROOMS;
    if (rooms < 1 || rooms > ROOMS)
        rooms = ROOMS;
    measure_walls(rooms * (WALLS / ROOMS));
    if (count > 2 && strcmp(arguments[2], "walls") == 0)
        return 0;
    for (RandomKind kind = RANDOM_HOUSE; kind < RANDOM_KIND_COUNT; kind++)
        measure_rooms(kind, rooms);
    for (JointLand land = LAND_ANYWHERE; land <= LAND_STUDS; land++) {
        Times small = measure_hall(1000, land), large = measure_hall(10000, land);
        printf("#   from 1,000 to 10,000 boards: first plan %.1f times, final plan %.1f times\n",
               large.first / small.first, large.final / small.final);
    }
    return 0;
}
