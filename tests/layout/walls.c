#include "layout/walls.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct Maker {
    Arena *arena;
    Random random;
    Wall *wall;
    Length grain; /* lengths are whole multiples of it */
} Maker;

static bool one_in(Maker *maker, uint64_t n)
{
    return random_below(&maker->random, n) == 0;
}

/* A length between two numbers of millimetres, on the wall's grain. */
static Length pick(Maker *maker, int64_t low, int64_t high)
{
    return length_round(random_between(&maker->random, low * LENGTH_MM, high * LENGTH_MM), maker->grain);
}

static char *named(Maker *maker, const char *what, int number)
{
    char name[64];
    snprintf(name, sizeof name, "%s %d", what, number);
    return arena_text(maker->arena, name, strlen(name));
}

/* Marks along 0..`run` with offs about `middle`: level, sloping, broken, stepped. */
static void put_marks(Maker *maker, Marks *marks, Length run, Length middle, int spread)
{
    const int count = 1 + (int)random_below(&maker->random, 4);
    const Length before = one_in(maker, 4) ? 300 * LENGTH_MM : 0;
    Length at = count == 1 ? 0 : -before;
    for (int i = 0; i < count; i++) {
        const Length off = middle + pick(maker, -spread, spread);
        *arena_push(maker->arena, marks) = (Mark){at, off};
        if (one_in(maker, 5))
            *arena_push(maker->arena, marks) = (Mark){at, off + pick(maker, -3 * spread, 3 * spread)};
        const Length step = length_round(run / (count > 1 ? count - 1 : 1), maker->grain) +
                            (one_in(maker, 2) ? pick(maker, -50, 50) : 0);
        at += step > maker->grain ? step : maker->grain;
    }
}

/* A ridge: a ceiling that rises and falls steeply. */
static void put_gable(Maker *maker, Face *face)
{
    const Length eaves = pick(maker, 100, 900);
    face->ceiling = (Marks){0};
    *arena_push(maker->arena, &face->ceiling) = (Mark){0, eaves};
    *arena_push(maker->arena, &face->ceiling) =
        (Mark){length_round(face->width / 2, maker->grain), eaves + pick(maker, 200, 1500)};
    *arena_push(maker->arena, &face->ceiling) = (Mark){face->width, eaves + pick(maker, -50, 50)};
}

static void put_side(Maker *maker, Marks *marks)
{
    if (one_in(maker, 3))
        return;
    const int spread = one_in(maker, 4) ? 200 : 8;
    put_marks(maker, marks, 2000 * LENGTH_MM, one_in(maker, 2) ? 0 : pick(maker, -20, 60), spread);
    for (int i = 0; i < marks->count; i++)
        marks->at[i].at -= 900 * LENGTH_MM;
}

static void put_opening(Maker *maker, Face *face, int number)
{
    Opening *opening = arena_push(maker->arena, &face->openings);
    const OpeningKind kinds[] = {OPENING_BOX,    OPENING_WINDOW, OPENING_DOOR, OPENING_BOX,
                                 OPENING_WINDOW, OPENING_HEARTH, OPENING_VENT, OPENING_STOVE};
    opening->id = maker->wall->next_id++;
    opening->name = named(maker, "opening", number);
    opening->kind = kinds[random_below(&maker->random, 8)];
    const bool small = opening->kind == OPENING_BOX;
    opening->width = pick(maker, 40, small ? 120 : 900);
    opening->height = pick(maker, 40, small ? 120 : 1200);
    opening->left = pick(maker, -100, face->width / LENGTH_MM);
    opening->bottom = pick(maker, -900, 900);
    if (one_in(maker, 2))
        opening->clear = pick(maker, 0, 6);
    if (opening->kind == OPENING_HEARTH || one_in(maker, 12)) {
        opening->to_floor = true;
        opening->bottom = 0;
        if (one_in(maker, 3)) {
            opening->top_given = true;
            opening->top = pick(maker, -600, 900);
            opening->height = 0;
        }
    }
}

static void put_corner(Maker *maker, Face *face)
{
    static const Corner corners[] = {
        {CORNER_NONE, CORNER_BUTT, THROUGH_LEFT},    {CORNER_INSIDE, CORNER_BUTT, THROUGH_LEFT},
        {CORNER_INSIDE, CORNER_BUTT, THROUGH_RIGHT}, {CORNER_INSIDE, CORNER_TRIM, THROUGH_LEFT},
        {CORNER_OUTSIDE, CORNER_TRIM, THROUGH_LEFT}, {CORNER_OUTSIDE, CORNER_LAP, THROUGH_RIGHT},
        {CORNER_OUTSIDE, CORNER_LAP, THROUGH_LEFT},  {CORNER_OUTSIDE, CORNER_MITRE, THROUGH_LEFT},
    };
    face->corner = corners[random_below(&maker->random, sizeof corners / sizeof *corners)];
}

static void put_face(Maker *maker, int number)
{
    Face *face = arena_push(maker->arena, &maker->wall->faces);
    face->id = maker->wall->next_id++;
    face->name = named(maker, "face", number);
    face->width = pick(maker, 300, 4500);
    put_marks(maker, &face->floor, face->width, 1000 * LENGTH_MM, one_in(maker, 3) ? 150 : 10);
    put_marks(maker, &face->ceiling, face->width, 1100 * LENGTH_MM, one_in(maker, 3) ? 150 : 10);
    if (one_in(maker, 4))
        put_gable(maker, face);
    put_side(maker, &face->left);
    put_side(maker, &face->right);
    if (one_in(maker, 2))
        face->margin = (Margin){pick(maker, 0, 12), pick(maker, 0, 12), pick(maker, 0, 12), pick(maker, 0, 12)};
    if (one_in(maker, 3))
        face->underlay = pick(maker, 0, 12);
    put_corner(maker, face);
    face->studs = (Studs){.given = true, .regular = true, .first = pick(maker, 0, 400), .spacing = 400 * LENGTH_MM};
    const int openings = (int)random_below(&maker->random, 5);
    for (int i = 0; i < openings; i++)
        put_opening(maker, face, i);
}

static void put_edges(Maker *maker)
{
    Wall *wall = maker->wall;
    const int course = (int)random_between(&maker->random, -4, 4);
    Length at = wall->start;
    for (int i = 0; i < course; i++)
        at += wall_course_face(wall, i) + wall->planks.reveal;
    for (int i = -1; i >= course; i--)
        at -= wall_course_face(wall, i) + wall->planks.reveal;
    HungEdge *edge = arena_push(maker->arena, &wall->hung_edges);
    edge->face = wall->faces.at[0].name;
    edge->course = course;
    edge->is_top = course > 0 || (course == 0 && one_in(maker, 2));
    edge->height = at + (edge->is_top ? wall_course_face(wall, course) : 0) + pick(maker, -3, 3);
}

Wall *walls_random(Arena *arena, uint64_t seed)
{
    const bool inches = seed % 2 == 0;
    Maker maker = {.arena = arena, .random = {seed}, .wall = wall_new(arena, inches ? UNITS_IN : UNITS_MM)};
    Wall *wall = maker.wall;
    maker.grain = inches ? LENGTH_INCH / 16 : LENGTH_MM / 2;
    if (one_in(&maker, 6))
        maker.grain = 1;
    const int widths = one_in(&maker, 3) ? 1 + (int)random_below(&maker.random, 4) : 1;
    for (int i = 0; i < widths; i++)
        *arena_push(arena, &wall->planks.widths) = pick(&maker, 45, 220);
    wall->planks.thickness = pick(&maker, 9, 20);
    if (!one_in(&maker, 4))
        wall->planks.reveal = pick(&maker, 0, 6);
    if (one_in(&maker, 4))
        wall->planks.lap = pick(&maker, 1, 15);
    if (one_in(&maker, 6))
        wall->planks.leave = pick(&maker, 1, 15);
    wall->start = one_in(&maker, 10) ? pick(&maker, -9000, 9000) : pick(&maker, -200, 200);
    const int faces = 1 + (int)random_below(&maker.random, 3);
    for (int i = 0; i < faces; i++)
        put_face(&maker, i);
    if (faces < 3)
        wall->faces.at[faces - 1].corner.kind = CORNER_NONE;
    if (one_in(&maker, 5))
        put_edges(&maker);
    return wall;
}

int walls_count(int usual)
{
    const char *text = getenv("DATUMROW_WALLS");
    int count = 0;
    for (; text != NULL && *text >= '0' && *text <= '9' && count < 10000000; text++)
        count = count * 10 + (*text - '0');
    return count > 0 ? count : usual;
}
