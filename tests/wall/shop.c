/* Copies and equality of what the wall file says of the shop: every member counts, and none is shared with the wall
 * copied. */
#include "support/test.h"

#include "wall/edit.h"

#include <string.h>

static Wall *shop_wall(Arena *arena)
{
    Wall *wall = wall_new(arena, UNITS_IN);
    wall->trim.given = true;
    *arena_push(arena, &wall->trim.runs) = (TrimRun){.along = ALONG_CEILING, .width = 7};
    *arena_push(arena, &wall->trim.runs) = (TrimRun){ALONG_OPENINGS, 9, true, 5, arena_text(arena, "loft window", 11)};
    Rough *rough = arena_push(arena, &wall->rough);
    *rough = (Rough){.id = wall->next_id++,
                     .label = arena_text(arena, "R1", 2),
                     .width = 5,
                     .thickness = 2,
                     .length = 100,
                     .count = 3,
                     .ends = 4};
    *arena_push(arena, &rough->avoid) = (Stretch){10, 20};
    wall->mill = (Mill){true, 1, {true, 2}, 3, 4};
    wall->bill = (Bill){.given = true,
                        .spare = {true, 10},
                        .bead = {true, 6 * LENGTH_MM},
                        .sheet = {true, LENGTH_METRE, LENGTH_METRE},
                        .nominal = {true, 25 * LENGTH_MM}};
    return wall;
}

START_TEST(copies_of_the_shop_are_equal_and_apart)
{
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
END_TEST

/* One member changed makes another wall. */
#define DIFFERS(change)                        \
    do {                                       \
        Wall *other = wall_copy(arena, wall);  \
        other->change;                         \
        assert_false(wall_equal(wall, other)); \
        assert_false(wall_equal(other, wall)); \
    } while (0)

START_TEST(every_difference_in_the_shop_is_seen)
{
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
END_TEST

/* A wall that can be laid out, so that changes are taken. */
static Document *document_of(Arena *arena)
{
    Wall *wall = shop_wall(arena);
    *arena_push(arena, &wall->planks.widths) = LENGTH_INCH;
    wall->planks.thickness = LENGTH_INCH;
    Face *face = arena_push(arena, &wall->faces);
    face->name = arena_text(arena, "shop", 4);
    face->width = LENGTH_METRE;
    *arena_push(arena, &face->floor) = (Mark){0, LENGTH_METRE};
    *arena_push(arena, &face->ceiling) = (Mark){0, LENGTH_METRE};
    return document_new(wall);
}

START_TEST(every_edit_of_the_shop_is_one_step)
{
    Arena *arena = arena_new();
    Document *document = document_of(arena);
    Err err;
    const Rough nine = {.width = 9, .thickness = 2, .length = 50, .count = 1};
    uint32_t id = 0;
    const uint32_t first = document_wall(document)->rough.at[0].id;
    assert_done(edit_add_rough(document, first, &nine, &id, &err), &err);
    assert_string_equal(document_undo_name(document), "add 1 rough board");
    const Wall *wall = document_wall(document);
    assert_int_equal(wall->rough.count, 2);
    assert_true(id != 0 && id != first && wall->rough.at[1].id == id);
    Rough eight = nine;
    eight.id = id;
    eight.width = 8;
    assert_done(edit_rough(document, &eight, &err), &err);
    assert_int_equal(document_wall(document)->rough.at[1].width, 8);
    eight.ends = 25; /* leaves nothing */
    assert_false(edit_rough(document, &eight, &err));
    assert_string_equal(err.place, "rough[1].ends");
    assert_done(edit_remove_rough(document, first, &err), &err);
    assert_int_equal(document_wall(document)->rough.at[0].id, id);
    assert_false(edit_remove_rough(document, first, &err));
    assert_false(edit_rough(document, &(Rough){.id = first}, &err));
    assert_false(edit_add_rough(document, first, &nine, NULL, &err));
    for (int i = 0; i < 3; i++)
        assert_true(document_undo(document));
    assert_done(edit_mill(document, &(Mill){.given = true, .edge = 7}, &err), &err);
    assert_int_equal(document_wall(document)->mill.edge, 7);
    assert_done(edit_bill(document, &(Bill){.given = true, .coats = {true, 3000}}, &err), &err);
    assert_int_equal(document_wall(document)->bill.coats.thousandths, 3000);
    assert_string_equal(document_undo_name(document), "change what the bill assumes");
    assert_false(edit_bill(document, &(Bill){.given = true, .coverage = {true, 0}}, &err)); /* covers nothing */
    assert_string_equal(err.place, "bill.coverage");
    assert_holds(err.text, "from 1");
    assert_int_equal(document_wall(document)->bill.coats.thousandths, 3000);
    assert_true(document_undo(document) && document_undo(document));
    assert_false(document_undo(document));
    assert_int_equal(document_wall(document)->rough.count, 1);
    document_free(document);
    arena_free(arena);
}
END_TEST

START_TEST(runs_of_trim_are_edited)
{
    Arena *arena = arena_new();
    Document *document = document_of(arena);
    Err err;
    char none[] = "", named[] = "window";
    const int before = document_wall(document)->trim.runs.count;
    const TrimRun floor = {.along = ALONG_FLOOR, .width = 7, .opening = none};
    assert_done(edit_add_trim_run(document, 0, &floor, &err), &err);
    assert_string_equal(document_undo_name(document), "add trim along the floor");
    assert_int_equal(document_wall(document)->trim.runs.count, before + 1);
    assert_int_equal(document_wall(document)->trim.runs.at[0].width, 7);
    const TrimRun edges = {.along = ALONG_EDGES, .width = 5, .opening = none};
    assert_done(edit_trim_run(document, 0, &edges, &err), &err);
    assert_int_equal(document_wall(document)->trim.runs.at[0].along, ALONG_EDGES);
    assert_false(edit_trim_run(document, 0, &(TrimRun){.along = ALONG_EDGES, .width = 5, .opening = named}, &err));
    assert_string_equal(err.place, "trim.runs[0].opening");
    assert_false(edit_trim_run(document, before + 1, &edges, &err));
    assert_false(edit_add_trim_run(document, before + 2, &edges, &err));
    assert_false(edit_remove_trim_run(document, -1, &err));
    for (int i = 0; i <= before; i++)
        assert_done(edit_remove_trim_run(document, 0, &err), &err);
    const Trim *trim = &document_wall(document)->trim;
    assert_int_equal(trim->given, trim->stock.count + trim->pieces.count > 0); /* nothing left: no trim at all */
    document_free(document);
    arena_free(arena);
}
END_TEST

/* Two faces have an opening of one name: the run goes round both, and is left without one only by the last. */
START_TEST(a_run_of_trim_follows_the_name_of_its_opening)
{
    Arena *arena = arena_new();
    Wall *wall = shop_wall(arena);
    *arena_push(arena, &wall->planks.widths) = LENGTH_INCH;
    wall->planks.thickness = LENGTH_INCH;
    char loft[] = "loft window", attic[] = "attic window", shed[] = "shed";
    for (int i = 0; i < 2; i++) {
        Face *face = arena_push(arena, &wall->faces);
        *face = (Face){.id = wall->next_id++, .name = i == 0 ? shed : attic, .width = LENGTH_METRE};
        *arena_push(arena, &face->floor) = (Mark){0, LENGTH_METRE};
        *arena_push(arena, &face->ceiling) = (Mark){0, LENGTH_METRE};
        *arena_push(arena, &face->openings) =
            (Opening){.id = wall->next_id++, .name = loft, .width = LENGTH_INCH, .height = LENGTH_INCH};
    }
    Document *document = document_new(wall);
    Err err;
    for (int i = 0; i < 2; i++) {
        assert_string_equal(document_wall(document)->trim.runs.at[1].opening, "loft window");
        Opening opening = document_wall(document)->faces.at[i].openings.at[0];
        opening.name = attic;
        assert_done(edit_opening(document, &opening, &err), &err);
    }
    assert_string_equal(document_wall(document)->trim.runs.at[1].opening, "attic window");
    assert_string_equal(document_wall(document)->trim.runs.at[0].opening, "");
    assert_true(document_undo(document)); /* in the same step */
    assert_string_equal(document_wall(document)->trim.runs.at[1].opening, "loft window");
    document_free(document);
    arena_free(arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {copies_of_the_shop_are_equal_and_apart, every_difference_in_the_shop_is_seen,
                                  every_edit_of_the_shop_is_one_step, runs_of_trim_are_edited,
                                  a_run_of_trim_follows_the_name_of_its_opening};
    return RUN(tests);
}
