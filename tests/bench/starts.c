/*
 * Time to weigh every start of a room (to reach: under 20 ms): median over random rooms of a house, marked in 1/16 in
 * or 1 mm as they come, and in 1/64 in.
 */
#include "layout/starts.h"
#include "support/random_wall.h"

#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { ROOMS = 200 };

static double milliseconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec * 1e3 + (double)now.tv_nsec / 1e6;
}

static int compare(const void *left, const void *right)
{
    const double a = *(const double *)left;
    const double b = *(const double *)right;
    return (a > b) - (a < b);
}

static void bench(const char *what, Length round, int number)
{
    double times[ROOMS];
    long marks = 0;
    for (int i = 0; i < ROOMS; i++) {
        Arena *arena = arena_new();
        Wall *wall = random_wall(arena, (uint64_t)i + 1, RANDOM_HOUSE);
        if (round > 0)
            wall->round = round;
        Err err;
        const Layout *layout = layout_wall(arena, wall, &err);
        if (layout) {
            double from = milliseconds();
            marks += starts_of_layout(arena, layout).weighed;
            times[i] = milliseconds() - from;
        }
        arena_free(arena);
    }
    qsort(times, ROOMS, sizeof *times, compare);
    printf("ok %d - starts of %d rooms, %s: median %.2f ms, worst %.2f ms, %ld marks each on average\n", number, ROOMS,
           what, times[ROOMS / 2], times[ROOMS - 1], marks / ROOMS);
}

int main(void)
{
    printf("1..2\n");
    bench("marked as they come", 0, 1);
    bench("marked in 1/64 in", LENGTH_INCH / 64, 2);
    return 0;
}
