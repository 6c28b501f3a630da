/* Copies and equality of what the wall file says of the shop: every member counts, and none is shared with the wall
 * copied. */
#include "check.h"

#include "wall/wall.h"

#include <string.h>

static Wall *shop_wall(Arena *arena)
{
    Wall *wall = wall_new(arena, UNITS_IN);
    wall->trim.given = true;
    *arena_push(arena, &wall->trim.runs) = (TrimRun){.along = ALONG_CEILING, .width = 7};
    *arena_push(arena, &wall->trim.runs) = (TrimRun){ALONG_OPENINGS, 9, true, 5, arena_text(arena, "loft window", 11)};
    Rough *rough = arena_push(arena, &wall->rough);
    *rough =
        (Rough){.label = arena_text(arena, "R1", 2), .width = 5, .thickness = 2, .length = 100, .count = 3, .ends = 4};
    *arena_push(arena, &rough->avoid) = (Stretch){10, 20};
    wall->mill = (Mill){true, 1, {true, 2}, 3, 4};
    wall->bill =
        (Bill){.given = true, .spare = {true, 10}, .bead = {true, 6}, .sheet = {true, 5, 6}, .nominal = {true, 25}};
    return wall;
}

static void copies(void **state)
{
    (void)state;
    Arena *arena = arena_new();
    Arena *other = arena_new();
    Wall *wall = shop_wall(arena);
    Wall *copy = wall_copy(other, wall);
    assert_true(wall_equal(wall, copy));
    assert_ptr_not_equal(wall->trim.runs.at, copy->trim.runs.at);
    assert_ptr_not_equal(wall->trim.runs.at[1].opening, copy->trim.runs.at[1].opening);
    assert_ptr_not_equal(wall->rough.at[0].avoid.at, copy->rough.at[0].avoid.at);
    arena_free(arena); /* the copy stands alone */
    assert_string_equal(copy->trim.runs.at[1].opening, "loft window");
    assert_string_equal(copy->rough.at[0].label, "R1");
    assert_string_equal(copy->rough.at[0].tone, "");
    assert_int_equal(copy->rough.at[0].avoid.at[0].to, 20);
    arena_free(other);
}

/* One member changed makes another wall. */
#define DIFFERS(change)                        \
    do {                                       \
        Wall *other = wall_copy(arena, wall);  \
        other->change;                         \
        assert_false(wall_equal(wall, other)); \
        assert_false(wall_equal(other, wall)); \
    } while (0)

static void differences(void **state)
{
    (void)state;
    Arena *arena = arena_new();
    const Wall *wall = shop_wall(arena);
    DIFFERS(trim.runs.at[0].along = ALONG_FLOOR);
    DIFFERS(trim.runs.at[0].width++);
    DIFFERS(trim.runs.at[0].thickness_given = true);
    DIFFERS(trim.runs.at[1].thickness++);
    DIFFERS(trim.runs.at[1].opening[0] = 'x');
    DIFFERS(trim.runs.count--);
    DIFFERS(rough.at[0].label[0] = 'x');
    DIFFERS(rough.at[0].width++);
    DIFFERS(rough.at[0].thickness++);
    DIFFERS(rough.at[0].length++);
    DIFFERS(rough.at[0].count++);
    DIFFERS(rough.at[0].ends++);
    DIFFERS(rough.at[0].avoid.at[0].from++);
    DIFFERS(rough.at[0].avoid.count--);
    DIFFERS(rough.count--);
    DIFFERS(mill.edge++);
    DIFFERS(mill.kerf.length++);
    DIFFERS(mill.kerf.given = false);
    DIFFERS(mill.plane++);
    DIFFERS(mill.keep++);
    DIFFERS(mill.given = false);
    DIFFERS(bill.spare.thousandths++);
    DIFFERS(bill.fasteners.given = true);
    DIFFERS(bill.glue_given = true);
    DIFFERS(bill.bead.length++);
    DIFFERS(bill.cartridge.given = true);
    DIFFERS(bill.coats.given = true);
    DIFFERS(bill.coverage.given = true);
    DIFFERS(bill.thinning.given = true);
    DIFFERS(bill.sheet.given = false);
    DIFFERS(bill.sheet.width++);
    DIFFERS(bill.sheet.length++);
    DIFFERS(bill.nominal.length++);
    DIFFERS(bill.given = false);
    arena_free(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(copies), cmocka_unit_test(differences)};
    return RUN(tests);
}
