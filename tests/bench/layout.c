/*
 * How long a layout takes: the room of 34 courses and five openings, and halls of 1,000 and 10,000 boards
 * (counted as the run of the planks over boards of 1.2 m). To reach: room under 0.2 ms, hall of 10,000 boards under 16
 * ms, growth close to linear.
 */
#include "layout/layout.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static char *named(Arena *arena, const char *name)
{
    return arena_text(arena, name, strlen(name));
}

static void put(Arena *arena, Marks *marks, Length at, Length off)
{
    *arena_push(arena, marks) = (Mark){at, off};
}

static Face *new_face(Arena *arena, Wall *wall, Length width, Length height)
{
    Face *face = arena_push(arena, &wall->faces);
    face->name = named(arena, "north");
    face->width = width;
    put(arena, &face->floor, 0, LENGTH_METRE);
    put(arena, &face->floor, width / 2, LENGTH_METRE + 9 * LENGTH_MM);
    put(arena, &face->floor, width, LENGTH_METRE - 4 * LENGTH_MM);
    put(arena, &face->ceiling, 0, height - LENGTH_METRE);
    put(arena, &face->ceiling, width, height - LENGTH_METRE + 6 * LENGTH_MM);
    put(arena, &face->left, -LENGTH_METRE, 0);
    put(arena, &face->left, height - LENGTH_METRE, 3 * LENGTH_MM);
    put(arena, &face->right, -LENGTH_METRE, 2 * LENGTH_MM);
    put(arena, &face->right, height - LENGTH_METRE, 0);
    return face;
}

static void new_opening(Arena *arena, Face *face, OpeningKind kind, Length left, Length bottom, Length width,
                        Length height)
{
    Opening *opening = arena_push(arena, &face->openings);
    opening->name = named(arena, "opening");
    opening->kind = kind;
    opening->left = left;
    opening->bottom = bottom;
    opening->width = width;
    opening->height = height;
    opening->clear = LENGTH_MM;
}

/* Planks of 70 mm and a reveal of 1.5 mm: 34 courses in 2.4 m. */
static Wall *new_wall(Arena *arena)
{
    Wall *wall = wall_new(arena, UNITS_MM);
    *arena_push(arena, &wall->planks.widths) = 70 * LENGTH_MM;
    wall->planks.reveal = LENGTH_MM * 3 / 2;
    wall->planks.thickness = 12 * LENGTH_MM;
    return wall;
}

static Wall *room(Arena *arena)
{
    Wall *wall = new_wall(arena);
    Face *face = new_face(arena, wall, 3600 * LENGTH_MM, 2400 * LENGTH_MM);
    new_opening(arena, face, OPENING_WINDOW, 900 * LENGTH_MM, 0, 1200 * LENGTH_MM, 1000 * LENGTH_MM);
    new_opening(arena, face, OPENING_DOOR, 2600 * LENGTH_MM, 0, 800 * LENGTH_MM, 1050 * LENGTH_MM);
    for (int i = 0; i < 3; i++)
        new_opening(arena, face, OPENING_BOX, (300 + 500 * i) * LENGTH_MM, -700 * LENGTH_MM, 57 * LENGTH_MM,
                    95 * LENGTH_MM);
    return wall;
}

/* Faces of 34 courses, 9 m long: 34 * 9 m make about 250 boards of 1.2 m; with a window and a box each. */
static Wall *hall(Arena *arena, int boards)
{
    Wall *wall = new_wall(arena);
    for (int i = 0; i < boards / 250; i++) {
        Face *face = new_face(arena, wall, 9000 * LENGTH_MM, 2400 * LENGTH_MM);
        new_opening(arena, face, OPENING_WINDOW, 3000 * LENGTH_MM, 0, 1200 * LENGTH_MM, 1000 * LENGTH_MM);
        new_opening(arena, face, OPENING_BOX, 6000 * LENGTH_MM, -700 * LENGTH_MM, 57 * LENGTH_MM, 95 * LENGTH_MM);
    }
    return wall;
}

static double now(void)
{
    struct timespec at;
    clock_gettime(CLOCK_MONOTONIC, &at);
    return (double)at.tv_sec * 1e3 + (double)at.tv_nsec / 1e6;
}

static int compare(const void *left, const void *right)
{
    const double a = *(const double *)left;
    const double b = *(const double *)right;
    return (a > b) - (a < b);
}

enum { TIMES = 101 };

/* Median milliseconds of a layout into an arena that is used again. */
static double measure(const Wall *wall, bool texts, int *courses)
{
    double times[TIMES];
    Arena *arena = arena_new();
    for (int i = 0; i < TIMES; i++) {
        arena_reset(arena);
        const double start = now();
        const Layout *layout = texts ? layout_wall(arena, wall, NULL) : layout_wall_at(arena, wall, wall->start, NULL);
        times[i] = now() - start;
        *courses = layout->course_total;
    }
    arena_free(arena);
    qsort(times, TIMES, sizeof *times, compare);
    return times[TIMES / 2];
}

static double report(const char *what, const Wall *wall, double aim)
{
    int courses;
    const double at = measure(wall, false, &courses);
    const double all = measure(wall, true, &courses);
    printf("%-20s %5d courses: %8.4f ms, without texts %8.4f ms (to reach: %g ms)\n", what, courses, all, at, aim);
    return all;
}

int main(void)
{
    Arena *arena = arena_new();
    report("room", room(arena), 0.2);
    const double small = report("hall, 1,000 boards", hall(arena, 1000), 1.6);
    const double large = report("hall, 10,000 boards", hall(arena, 10000), 16);
    printf("growth from 1,000 to 10,000 boards: %.1f times\n", large / small);
    arena_free(arena);
    return 0;
}
