/*
 * Distances from something hot to wood, in space: made-up walls whose distances are worked by hand with whole-number
 * right triangles (Euclid I.47: 3, 4, 5; 2, 3, 6, 7; 1, 4, 8, 9) and, against chance, held against a search over a grid
 * of points. The 6 in, 12 in and 1/8 in an inch: IRC R1001.11 exc. 4 (2009 text).
 */
#include "support/test.h"

#include "base/random.h"
#include "support/measures.h"
#include "trade/caution_fire.h"
#include "trade/wood_near.h"

#include <stdlib.h>
#include <string.h>

/* ---- the shapes ---- */

static Length distance_in(Body body, WoodPart part)
{
    const Reached here = reach_start(0, &body);
    return root_down(wood_distance(&here, &part));
}

START_TEST(distances_to_level_parts_are_exact)
{
    const WoodPart part = {.left = 0, .right = 100, .top_left = 10, .top_right = 10, .out = 5};
    assert_int_equal(distance_in((Body){40, 60, 2, 8, 0, 0}, part), 0);     /* in it */
    assert_int_equal(distance_in((Body){40, 60, 13, 20, 9, 9}, part), 5);   /* 3 above, 4 before */
    assert_int_equal(distance_in((Body){103, 120, 16, 20, 7, 9}, part), 7); /* 3, 6, 2 */
    assert_int_equal(distance_in((Body){-9, -4, -8, -8, -3, -1}, part), 9); /* 4, 8, 1 */
    assert_int_equal(distance_in((Body){-50, 150, -50, 150, 12, BODY_FAR}, part), 7);
}
END_TEST

/* Under an edge that rises 3 in 4: 5 off square. */
START_TEST(distances_to_slanted_parts_are_exact)
{
    const WoodPart part = {.right = 4000, .top_right = 3000};
    assert_int_equal(distance_in((Body){1000, 1000, 2000, 2000, 0, 0}, part), 1000); /* 1250 above it, x 4/5 */
    assert_int_equal(distance_in((Body){1000, 2000, 1000, 1100, 0, 0}, part), 0);    /* the edge goes through it */
    assert_int_equal(distance_in((Body){3000, 3100, 100, 200, 0, 0}, part), 0);      /* in it */
    assert_int_equal(distance_in((Body){-5000, 9000, -5000, 9000, 0, 0}, part), 0);  /* around it */
    assert_int_equal(distance_in((Body){4300, 4400, 3400, 3500, 0, 0}, part), 500);  /* beyond its tip */
}
END_TEST

/* No point of a grid over both is nearer than told, and the nearest is nearer than told and a step of the grid. */
START_TEST(no_point_of_a_grid_is_nearer_than_told)
{
    Random random = {5};
    for (int n = 0; n < 300; n++) {
        WoodPart part = {.left = random_between(&random, 0, 39)};
        part.right = part.left + 1 + random_between(&random, 0, 29);
        part.bottom_left = random_between(&random, 0, 29);
        part.bottom_right = random_between(&random, 0, 29);
        part.top_left = part.bottom_left + random_between(&random, 0, 29);
        part.top_right = part.bottom_right + random_between(&random, 0, 29);
        Body body = {.left = random_between(&random, -10, 79), .bottom = random_between(&random, -10, 79)};
        body.right = body.left + random_between(&random, 0, 9);
        body.top = body.bottom + random_between(&random, 0, 9);
        Wide least = INT64_MAX;
        enum { STEPS = 32 };
        for (int i = 0; i <= STEPS; i++)
            for (int j = 0; j <= STEPS; j++) {
                /* in units of 1 / STEPS^2; the body's nearest point to each of the part */
                const Wide x = (Wide)STEPS * (part.left * STEPS + (part.right - part.left) * i);
                const Wide low = (Wide)part.bottom_left * STEPS + (Wide)(part.bottom_right - part.bottom_left) * i;
                const Wide high = (Wide)part.top_left * STEPS + (Wide)(part.top_right - part.top_left) * i;
                const Wide y = low * STEPS + (high - low) * j;
                const Wide unit = (Wide)STEPS * STEPS;
                const Wide dx = x < body.left * unit    ? body.left * unit - x
                                : x > body.right * unit ? x - body.right * unit
                                                        : 0;
                const Wide dy = y < body.bottom * unit ? body.bottom * unit - y
                                : y > body.top * unit  ? y - body.top * unit
                                                       : 0;
                least = dx * dx + dy * dy < least ? dx * dx + dy * dy : least;
            }
        /* scaled up, so that what is rounded down in it is small */
        const Length scale = 1024;
        Body large = {body.left * scale, body.right * scale, body.bottom * scale, body.top * scale, 0, 0};
        WoodPart wood = {.left = part.left * scale,
                         .right = part.right * scale,
                         .bottom_left = part.bottom_left * scale,
                         .bottom_right = part.bottom_right * scale,
                         .top_left = part.top_left * scale,
                         .top_right = part.top_right * scale};
        const Length told = distance_in(large, wood);
        const Length by_grid = root_down(least); /* in 1 / 1024 */
        assert_true(told <= by_grid + 2);
        assert_true(told >= by_grid - 4 * scale);
    }
}
END_TEST

/* ---- over corners ---- */

typedef struct Room {
    Arena *arena;
    Wall *wall;
} Room;

/* Faces of these widths, 8 ft high, planks 1/2 in thick and 4 in wide from floor to ceiling, all their corners of one
 * kind with trim in them. */
static Room room_new(int count, const Length *widths, CornerKind kind)
{
    Room room = {arena_new(), NULL};
    room.wall = wall_new(room.arena, UNITS_IN);
    room.wall->round = LENGTH_INCH / 16;
    room.wall->planks.thickness = INCHES(0.5);
    *arena_push(room.arena, &room.wall->planks.widths) = INCHES(4);
    static const char *const names[] = {"north", "east", "south", "west"};
    for (int i = 0; i < count; i++) {
        Face *face = arena_push(room.arena, &room.wall->faces);
        face->name = arena_text(room.arena, names[i], strlen(names[i]));
        face->width = widths[i];
        *arena_push(room.arena, &face->floor) = (Mark){0, 0};
        *arena_push(room.arena, &face->ceiling) = (Mark){0, INCHES(96)};
        if (i + 1 < count)
            face->corner = (Corner){.kind = kind, .joint = CORNER_TRIM};
    }
    return room;
}

static Opening *add_hot(const Room *room, int face, OpeningKind kind, Length left, Length bottom, Length width,
                        Length height)
{
    Opening *opening = arena_push(room->arena, &room->wall->faces.at[face].openings);
    *opening = (Opening){.name = arena_text(room->arena, "it", 2),
                         .kind = kind,
                         .left = left,
                         .bottom = bottom,
                         .width = width,
                         .height = height};
    return opening;
}

/* The text of the only fire finding. */
static const char *told(const Room *room)
{
    const Layout *layout = layout_wall(room->arena, room->wall, NULL);
    Findings findings = {0};
    fire_findings(room->arena, layout, &findings);
    assert_int_equal(findings.count, 1);
    assert_int_equal(findings.at[0].rule, RULE_FIRE);
    return findings.at[0].text;
}

/* A stove whose side is 8 1/4 in from the side wall: planks of 1/2 in leave 7 3/4 in, whatever it stands before its own
 * wall; backing and a strip in the corner take more. */
START_TEST(stove_beside_a_wall)
{
    Room room = room_new(2, (Length[]){INCHES(60), INCHES(80)}, CORNER_INSIDE);
    Opening *stove = add_hot(&room, 0, OPENING_STOVE, INCHES(20), 0, INCHES(31.75), INCHES(30));
    stove->away_given = true;
    stove->away = INCHES(14);
    const char *text = told(&room);
    assert_holds(text, "on north 13 1/2 in (planks); on east, around the inside corner, 7 3/4 in (planks).");
    assert_holds(text, "Its depth is not known: measure in front of it");
    room.wall->faces.at[1].backing = INCHES(0.25);
    assert_holds(told(&room), "on east, around the inside corner, 7 1/2 in (planks).");
    *arena_push(room.arena, &room.wall->trim.runs) =
        (TrimRun){.along = ALONG_FLOOR, .width = INCHES(3), .thickness_given = true, .thickness = INCHES(0.75)};
    assert_holds(told(&room), "on east, around the inside corner, 6 3/4 in (trim (east floor)).");
    assert_holds(told(&room), "on north 12 3/4 in (trim (north floor));");
    /* further off the wall than the side wall is long: 3 in beyond its end */
    room.wall->trim.runs.count = 0;
    stove->away = INCHES(80) + 10 * stove->width;
    assert_null(strstr(told(&room), "on east, around the inside corner, 7"));
    stove->away_given = false;
    assert_holds(told(&room), "on east, around the inside corner, as near as 7 1/2 in (planks).");
    arena_free(room.arena);
}
END_TEST

/* In front of a stove stands the opposite wall: how far depends on its depth. */
START_TEST(the_opposite_wall_stands_as_far_as_its_room_is_deep)
{
    Room room = room_new(3, (Length[]){INCHES(60), INCHES(80), INCHES(60)}, CORNER_INSIDE);
    Opening *stove = add_hot(&room, 0, OPENING_STOVE, INCHES(20), 0, INCHES(20), INCHES(30));
    stove->away_given = true;
    stove->away = INCHES(14);
    assert_holds(told(&room), "; on south, around 2 corners, not known: measure it.");
    /* a fireplace has no depth: 80 in less 1/2 in of planks */
    stove->kind = OPENING_FIREPLACE;
    assert_holds(told(&room), "; on south, around 2 corners, 79 1/2 in (planks).");
    arena_free(room.arena);
}
END_TEST

/* Corners of all four kinds, seen from a fireplace at the far face: 3 in from an outside corner, 7 in from an inside
 * one. */
START_TEST(fireplace_near_corners)
{
    Room room = room_new(2, (Length[]){INCHES(60), INCHES(80)}, CORNER_OUTSIDE);
    Opening *fireplace = add_hot(&room, 0, OPENING_FIREPLACE, INCHES(27), 0, INCHES(30), INCHES(30));
    room.wall->faces.at[0].margin.right = INCHES(40); /* no planks of its own near it */
    room.wall->faces.at[0].margin.left = INCHES(3);
    const char *text = told(&room);
    assert_holds(text, "on east, around the outside corner, 3 in (planks)");
    assert_holds(text, "Wood (planks) on east comes within 3 in of it");
    room.wall->faces.at[0].corner.kind = CORNER_INSIDE;
    fireplace->width = INCHES(25.5);
    text = told(&room); /* 60 - 27 - 25 1/2 - 1/2 */
    assert_holds(text, "on east, around the inside corner, 7 in (planks)");
    assert_holds(text, "Wood (planks) on east is 7 in from it and stands out of the masonry's face without limit");
    fireplace->width = INCHES(20.5);
    assert_holds(told(&room), "on east is 12 in from it and stands out");
    fireplace->width--;
    assert_null(strstr(told(&room), "without limit"));
    assert_holds(told(&room), "on east, around the inside corner, 12 in (planks)");
    arena_free(room.arena);

    /* the same from the right: the fireplace is on the second face */
    for (int outside = 0; outside < 2; outside++) {
        room = room_new(2, (Length[]){INCHES(80), INCHES(60)}, outside ? CORNER_OUTSIDE : CORNER_INSIDE);
        add_hot(&room, 1, OPENING_FIREPLACE, INCHES(7.5), 0, INCHES(30), INCHES(30));
        room.wall->faces.at[1].margin.left = INCHES(50);
        text = told(&room);
        assert_holds(text, outside ? "on north, around the outside corner, 7 1/2 in (planks)"
                                   : "on north, around the inside corner, 7 in (planks)");
        assert_int_equal(strstr(text, "without limit") != NULL, !outside);
        arena_free(room.arena);
    }
}
END_TEST

/* Round an outside corner the planks of the side begin 4 in behind the front and 3 in beside the opening: 5 in. */
START_TEST(straight_across_an_outside_corner)
{
    Room room = room_new(2, (Length[]){INCHES(60), INCHES(80)}, CORNER_OUTSIDE);
    add_hot(&room, 0, OPENING_FIREPLACE, INCHES(27), 0, INCHES(30), INCHES(30));
    room.wall->faces.at[0].margin.right = INCHES(40);
    room.wall->faces.at[1].margin.left = INCHES(4);
    assert_holds(told(&room), "on east, around the outside corner, 5 in (planks)");
    arena_free(room.arena);
}
END_TEST

/* Planks kept off by a margin, but the sheet behind them is not; through the gaps of open reveals too. */
START_TEST(backing_is_wood)
{
    Room room = room_new(2, (Length[]){INCHES(60), INCHES(80)}, CORNER_INSIDE);
    add_hot(&room, 0, OPENING_FIREPLACE, INCHES(10), INCHES(20), INCHES(30), INCHES(30));
    room.wall->faces.at[1].margin.left = INCHES(60);
    const char *text = told(&room); /* 60 in along and 19 1/2 in beside */
    assert_holds(text, "on east, around the inside corner, 63 1/16 in (planks)");
    room.wall->faces.at[1].backing = INCHES(0.5);
    text = told(&room);
    assert_holds(text, "on east, around the inside corner, 19 1/2 in (backing)");
    arena_free(room.arena);
}
END_TEST

/* Faces that no corner joins are not known. */
START_TEST(faces_that_no_corner_joins_are_told)
{
    Room room = room_new(3, (Length[]){INCHES(60), INCHES(80), INCHES(60)}, CORNER_INSIDE);
    room.wall->faces.at[0].corner.kind = CORNER_NONE;
    add_hot(&room, 0, OPENING_FIREPLACE, INCHES(10), INCHES(20), INCHES(30), INCHES(30));
    assert_holds(told(&room), "No corner joins east, south to it: measure from it to wood there.");
    arena_free(room.arena);
}
END_TEST

/* Round a ring of four faces every one is reached both ways: the nearer way counts. */
START_TEST(around_a_ring_the_nearer_way_counts)
{
    Room room = room_new(4, (Length[]){INCHES(60), INCHES(80), INCHES(60), INCHES(80)}, CORNER_INSIDE);
    room.wall->faces.at[3].corner = (Corner){.kind = CORNER_INSIDE, .joint = CORNER_TRIM};
    add_hot(&room, 0, OPENING_FIREPLACE, INCHES(10), INCHES(20), INCHES(30), INCHES(30));
    const char *text = told(&room);
    assert_holds(text, "on east, around the inside corner, 19 1/2 in (planks)");
    assert_holds(text, "on west, around the inside corner, 9 1/2 in (planks)");
    assert_holds(text, "on south, around 2 corners, 79 1/2 in (planks)");
    assert_lacks(text, "No corner joins");
    arena_free(room.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        distances_to_level_parts_are_exact,
        distances_to_slanted_parts_are_exact,
        no_point_of_a_grid_is_nearer_than_told,
        stove_beside_a_wall,
        the_opposite_wall_stands_as_far_as_its_room_is_deep,
        fireplace_near_corners,
        straight_across_an_outside_corner,
        backing_is_wood,
        faces_that_no_corner_joins_are_told,
        around_a_ring_the_nearer_way_counts,
    };
    return RUN(tests);
}
