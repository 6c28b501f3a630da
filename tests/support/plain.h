/*
 * A plain face for tests of what stands on a layout: level limits, plumb sides, made by hand, so that nothing but the
 * thing tested is tested. Points may be put in place of the level ones afterwards.
 */
#ifndef TESTS_SUPPORT_PLAIN_H
#define TESTS_SUPPORT_PLAIN_H

#include "layout/layout.h"
#include "support/measures.h"

#include <string.h>

typedef struct Bench {
    Arena *arena;
    Wall *wall;
    Layout *layout;
} Bench;

static inline void put_point(Arena *arena, Points *points, Length x, Length y)
{
    *arena_push(arena, points) = (Point){x, y};
}

/* A face of `width`, from `lower` up to `upper`, both level. */
static inline Bench bench_new(Length width, Length lower, Length upper, Length plank, Length reveal)
{
    Arena *arena = arena_new();
    Bench bench = {arena, wall_new(arena, UNITS_IN), arena_one(arena, Layout)};
    bench.wall->round = SIXTEENTH;
    *arena_push(arena, &bench.wall->planks.widths) = plank;
    bench.wall->planks.reveal = reveal;
    Face *face = arena_push(arena, &bench.wall->faces);
    face->name = arena_text(arena, "north", 5);
    face->width = width;
    bench.layout->wall = bench.wall;
    bench.layout->faces = arena_array(arena, FaceLayout, 1);
    FaceLayout *laid = &bench.layout->faces[0];
    put_point(arena, &laid->lower, 0, lower);
    put_point(arena, &laid->upper, 0, upper);
    put_point(arena, &laid->left, 0, 0);
    put_point(arena, &laid->right, width, 0);
    laid->openings = arena_array(arena, Box, 64); /* at most so many are added */
    return bench;
}

static inline void add_opening(Bench *bench, const char *name, Box box)
{
    Face *face = &bench->wall->faces.at[0];
    Opening *opening = arena_push(bench->arena, &face->openings);
    opening->name = arena_text(bench->arena, name, strlen(name));
    opening->kind = OPENING_WINDOW;
    bench->layout->faces[0].openings[face->openings.count - 1] = box;
}

#endif
