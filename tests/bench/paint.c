/*
 * The editor on a room (34 courses, 150 boards, 5 openings): a whole repaint, a nudge from the key to the painted
 * picture, a move over the starts, the memory that all of it takes. Over a terminal in memory: what the real terminal
 * does with the bytes is not counted. To reach: nudge to painted screen under 8 ms, memory under 16 MiB.
 */
#include "base/panic.h"
#include "memory.h"
#include "screen/forms/file.h"
#include "screen/loop.h"
#include "support/term_memory.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { RUNS = 201, STEP_BACK = 40 };

static double milliseconds(void)
{
    struct timespec time;
    clock_gettime(CLOCK_MONOTONIC, &time);
    return (double)time.tv_sec * 1e3 + (double)time.tv_nsec / 1e6;
}

static int by_size(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return x < y ? -1 : x > y;
}

static double median(double *runs)
{
    qsort(runs, RUNS, sizeof *runs, by_size);
    return runs[RUNS / 2];
}

static char *words(Arena *arena, const char *text)
{
    return arena_text(arena, text, strlen(text));
}

static Wall *room(Arena *arena)
{
    const Length in = LENGTH_INCH;
    Wall *wall = wall_new(arena, UNITS_IN);
    *arena_push(arena, &wall->planks.widths) = 11 * in / 4;
    wall->planks.thickness = in / 2;
    wall->planks.reveal = in / 16;
    wall->start = 9 * in / 4;
    wall->saw = (Saw){in / 8, in / 4};
    wall->joints = (Joints){.land = LAND_ANYWHERE, .stagger = 6 * in, .shortest = 10 * in};
    Face *face = arena_push(arena, &wall->faces);
    *face = (Face){.id = wall->next_id++, .name = words(arena, "north"), .width = 1131 * in / 8};
    *arena_push(arena, &face->floor) = (Mark){0, 42 * in};
    *arena_push(arena, &face->floor) = (Mark){1131 * in / 8, 671 * in / 16};
    *arena_push(arena, &face->ceiling) = (Mark){0, 105 * in / 2};
    *arena_push(arena, &face->ceiling) = (Mark){70 * in, 843 * in / 16};
    const Length places[5][4] = {
        {52, -4, 36, 42}, {37, -28, 3, 4}, {107, 18, 3, 4}, {10, -30, 12, 6}, {120, -20, 3, 4}};
    for (int i = 0; i < 5; i++) {
        char name[20];
        snprintf(name, sizeof name, "opening %d", i);
        *arena_push(arena, &face->openings) = (Opening){.id = wall->next_id++,
                                                        .name = words(arena, name),
                                                        .kind = OPENING_OTHER,
                                                        .left = places[i][0] * in,
                                                        .bottom = places[i][1] * in,
                                                        .width = places[i][2] * in,
                                                        .height = places[i][3] * in};
    }
    const Length lengths[3] = {52, 78, 96};
    for (int i = 0; i < 3; i++)
        *arena_push(arena, &wall->stock) = (Stock){.id = wall->next_id++,
                                                   .label = words(arena, ""),
                                                   .tone = words(arena, ""),
                                                   .length = lengths[i] * in,
                                                   .count = 50};
    return wall;
}

static void settle(Loop *loop, Term *term)
{
    while (!memory_idle(term))
        BUG_UNLESS(loop_turn(loop));
}

static double repaint(Loop *loop)
{
    double runs[RUNS];
    for (int i = 0; i < RUNS; i++) {
        double begin = milliseconds();
        loop_paint(loop);
        runs[i] = milliseconds() - begin;
    }
    return median(runs);
}

/* From the key to the first picture that shows it; the search goes on later. */
static double nudge(Loop *loop, Term *term)
{
    double runs[RUNS];
    for (int i = 0; i < RUNS; i++) {
        int pictures = memory_pictures(term);
        memory_key(term, i % STEP_BACK < STEP_BACK / 2 ? PRESS_UP : PRESS_DOWN);
        double begin = milliseconds();
        while (memory_pictures(term) == pictures)
            BUG_UNLESS(loop_turn(loop));
        runs[i] = milliseconds() - begin;
    }
    return median(runs);
}

int main(void)
{
    Term *term = term_memory(80, 24);
    Loop *loop = loop_new(term);
    Arena *arena = arena_new();
    Err err;
    BUG_UNLESS(file_begin(loop->app, NULL, room(arena), &err));
    arena_free(arena);
    double begin = milliseconds();
    settle(loop, term);
    printf("room, opened and its boards worked out to the end: %.1f ms\n", milliseconds() - begin);
    for (int rows = 0; rows < 2; rows++) {
        const char *view = rows == 0 ? "in proportion" : "row by row";
        printf("80x24, %s: repaint %.3f ms, nudge to painted %.3f ms\n", view, repaint(loop), nudge(loop, term));
        memory_resize(term, 200, 60);
        settle(loop, term);
        printf("200x60, %s: repaint %.3f ms, nudge to painted %.3f ms\n", view, repaint(loop), nudge(loop, term));
        memory_resize(term, 80, 24);
        memory_key(term, 'v');
        settle(loop, term);
    }
    settle(loop, term);
    memory_key(term, 's');
    settle(loop, term);
    printf("80x24, starts: repaint %.3f ms, next start to painted %.3f ms\n", repaint(loop), nudge(loop, term));
    memory_resize(term, 200, 60);
    settle(loop, term);
    printf("200x60, starts: repaint %.3f ms, next start to painted %.3f ms\n", repaint(loop), nudge(loop, term));
    memory_key(term, PRESS_ESCAPE);
    settle(loop, term);
    if (most_memory() > 0)
        printf("memory, at most: %.1f MiB\n", (double)most_memory() / 1024);
    loop_free(loop);
    term->finish(term);
    return 0;
}
