/* The keys of the shop: trim runs, rough boards, milling, the bill: read, written, refused. */
#include "support/test.h"

#include "store/store.h"
#include "wall/check.h"

#include <string.h>

static const char head[] = "datumrow: 1\n"
                           "units: in\n"
                           "planks: {width: 2 3/4, thickness: 1/2}\n"
                           "start: 0\n"
                           "faces:\n"
                           "- {name: shop, width: 100, floor: [{at: 0, down: 40}], ceiling: [{at: 0, up: 50}]}\n";

static const char shop[] = "trim:\n"
                           "  runs:\n"
                           "  - {along: ceiling, width: 1 1/2}\n"
                           "  - {along: outside, width: 1 1/4, thickness: 3/8}\n"
                           "  - {along: openings, width: 2, opening: loft window}\n"
                           "rough:\n"
                           "- {label: R1, width: 5 1/2, thickness: 5/8, length: 72, count: 40, ends: 3, tone: grey,\n"
                           "   avoid: [{from: 10, to: 12}]}\n"
                           "mill: {edge: 1/8, kerf: 3/32, plane: 1/8, keep: 3/4}\n"
                           "bill:\n"
                           "  spare: 12.5\n"
                           "  fasteners: 2\n"
                           "  glue: studs\n"
                           "  bead: 3/8\n"
                           "  cartridge: 28\n"
                           "  coats: 3\n"
                           "  coverage: 350\n"
                           "  thinning: 10\n"
                           "  sheet: {width: 48, length: 120}\n"
                           "  nominal: 1\n";

static bool read(Arena *arena, const char *tail, Source *source, Errs *errs)
{
    char text[4096];
    const size_t size = sizeof head - 1 + strlen(tail);
    assert_true(size < sizeof text);
    memcpy(text, head, sizeof head - 1);
    memcpy(text + sizeof head - 1, tail, strlen(tail) + 1);
    return store_parse(arena, "shop.yaml", text, size, source, errs);
}

START_TEST(every_key_of_the_shop_is_read_and_written)
{
    Arena *arena = arena_new();
    Source source;
    Errs errs = {0};
    if (!read(arena, shop, &source, &errs))
        FAIL("%d: %s", errs.at[0].line, errs.at[0].text);
    const Wall *wall = source.wall;
    assert_int_equal(wall_check(arena, wall).count, 0);
    assert_int_equal(wall->trim.runs.count, 3);
    assert_int_equal(wall->trim.runs.at[0].along, ALONG_CEILING);
    assert_false(wall->trim.runs.at[0].thickness_given);
    assert_int_equal(wall->trim.runs.at[1].thickness, LENGTH_INCH * 3 / 8);
    assert_string_equal(wall->trim.runs.at[2].opening, "loft window");
    assert_int_equal(wall->rough.at[0].ends, 3 * LENGTH_INCH);
    assert_int_equal(wall->rough.at[0].avoid.at[0].to, 12 * LENGTH_INCH);
    assert_int_equal(wall->mill.kerf.length, LENGTH_INCH * 3 / 32);
    assert_int_equal(wall->bill.spare.thousandths, 12500);
    assert_int_equal(wall->bill.glue, GLUE_STUDS);
    assert_int_equal(wall->bill.coverage.thousandths, 350000);
    assert_int_equal(wall->bill.sheet.length, 120 * LENGTH_INCH);
    assert_true(wall->bill.nominal.given);

    Text written;
    text_init(&written);
    store_write(wall, NULL, &written);
    Source again;
    assert_true(store_parse(arena, "again", written.bytes, written.length, &again, &errs));
    assert_true(wall_equal(wall, again.wall));
    text_finish(&written);
    arena_free(arena);
}
END_TEST

START_TEST(what_the_shop_leaves_out_has_its_default)
{
    Arena *arena = arena_new();
    Source source;
    Errs errs = {0};
    assert_true(read(arena, "bill: {coats: 0}\n", &source, &errs));
    assert_true(source.wall->bill.coats.given);
    assert_false(source.wall->bill.spare.given || source.wall->bill.glue_given || source.wall->mill.given);
    Text written;
    text_init(&written);
    store_write(source.wall, NULL, &written);
    assert_lacks(written.bytes, "spare");
    assert_lacks(written.bytes, "rough");
    text_finish(&written);
    arena_free(arena);
}
END_TEST

START_TEST(what_the_shop_cannot_mean_is_refused)
{
    static const struct {
        const char *text, *part;
    } rows[] = {
        {"bill: {coverage: 0}\n", "from 1"},
        {"bill: {sheet: {width: 1, length: 96}}\n", "whole size"},
        {"bill: {spare: 10 %}\n", "percent already"},
        {"bill: {spare: -1}\n", "from 0 to"},
        {"bill: {glue: some}\n", "pieces"},
        {"bill: {bead: 0}\n", "bead"},
        {"trim: {runs: [{along: roof, width: 1}]}\n", "ceiling"},
        {"trim: {runs: [{along: floor}]}\n", "width"},
        {"trim: {runs: [{along: floor, width: 3, opening: dock door}]}\n", "along: openings"},
        {"rough: [{width: 5, thickness: 1, length: 10, ends: 5}]\n", "half its length"},
        {"rough: [{width: 5, thickness: 1, length: 10, avoid: [{from: 5, to: 12}]}]\n", "leaves the board"},
        {"rough: [{width: 0, thickness: 1, length: 10}]\n", "rough board"},
        {"mill: {edge: -1/8}\n", "edge"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        Arena *arena = arena_new();
        Source source;
        Errs errs = {0};
        if (read(arena, rows[i].text, &source, &errs))
            FAIL("\"%s\" was taken", rows[i].text);
        assert_true(errs.count >= 1);
        assert_holds(errs.at[0].text, rows[i].part);
        assert_int_equal(errs.at[0].line, 7);
        arena_free(arena);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {every_key_of_the_shop_is_read_and_written, what_the_shop_leaves_out_has_its_default,
                                  what_the_shop_cannot_mean_is_refused};
    return RUN(tests);
}
