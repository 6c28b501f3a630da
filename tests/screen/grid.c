/* The grid clips, measures and never lets a control character through; the mosaic shows courses and joints with and
 * without colour. */
#include "support/picture.h"
#include "support/test.h"

#include "screen/term/grid.h"
#include "screen/term/mosaic.h"

#include <string.h>

static void looks_like(const Grid *grid, const char *wanted)
{
    Text text;
    text_init(&text);
    picture_write(grid, false, &text);
    assert_string_equal(text.bytes, wanted);
    text_finish(&text);
}

START_TEST(text_is_cut_with_a_sign)
{
    Grid *grid = grid_new(10, 2);
    assert_int_equal(grid_text(grid, 0, 0, 10, STYLE_PLAIN, "boathouse"), 9);
    assert_int_equal(grid_text(grid, 0, 1, 6, STYLE_PLAIN, "boathouse"), 6);
    looks_like(grid, "boathouse\nboath\u2026\n");
    grid_free(grid);
}
END_TEST

START_TEST(nothing_is_drawn_outside)
{
    Grid *grid = grid_new(4, 2);
    grid_text(grid, -2, 0, 20, STYLE_PLAIN, "abcdefgh");
    grid_text(grid, 0, -1, 4, STYLE_PLAIN, "no");
    grid_text(grid, 0, 2, 4, STYLE_PLAIN, "no");
    Rect before = grid_clip(grid, (Rect){1, 1, 2, 5});
    grid_fill(grid, (Rect){-5, -5, 50, 50}, '#', STYLE_PLAIN);
    grid_unclip(grid, before);
    looks_like(grid, "cdef\n ##\n");
    grid_free(grid);
}
END_TEST

START_TEST(controls_are_shown_never_sent)
{
    Grid *grid = grid_new(20, 1);
    grid_text(grid, 0, 0, 20, STYLE_PLAIN, "a\x1b[2Jb\x07\xff\xe2\x80\xae");
    for (int x = 0; x < 20; x++) {
        uint32_t code = grid_at(grid, x, 0)->code;
        assert_true(code >= ' ' && code != 0x7f && code != 0x202e);
    }
    grid_free(grid);
}
END_TEST

START_TEST(wide_characters_take_two_cells_and_are_never_halved)
{
    Grid *grid = grid_new(6, 1);
    assert_int_equal(grid_text(grid, 0, 0, 6, STYLE_PLAIN, "\u6728x"), 3);
    assert_int_equal(grid_at(grid, 1, 0)->code, 0);
    grid_put(grid, 1, 0, '|', STYLE_PLAIN);
    looks_like(grid, " |x\n");
    grid_clear(grid);
    grid_text(grid, 5, 0, 6, STYLE_PLAIN, "\u6728"); /* its right half would be outside */
    looks_like(grid, "\n");
    grid_free(grid);
}
END_TEST

START_TEST(marks_stand_on_their_letter)
{
    Grid *grid = grid_new(4, 1);
    assert_int_equal(grid_text(grid, 0, 0, 4, STYLE_PLAIN, "e\u0301x"), 2);
    assert_int_equal(grid_at(grid, 0, 0)->mark, 0x301);
    looks_like(grid, "e\u0301x\n");
    grid_free(grid);
}
END_TEST

START_TEST(ascii_holds_text_and_glyphs_to_ascii)
{
    Grid *grid = grid_new(12, 3);
    grid->ascii = true;
    grid_panel(grid, (Rect){0, 0, 12, 3}, "Nische\u00fc");
    grid_text(grid, 2, 1, 4, STYLE_PLAIN, "abcdef");
    looks_like(grid, "+- Nisch~ -+\n| abc~     |\n+----------+\n");
    for (int glyph = 0; glyph < GLYPH_COUNT; glyph++)
        assert_true(style_glyph((Glyph)glyph, true) < 0x7f && style_glyph((Glyph)glyph, true) > ' ');
    grid_free(grid);
}
END_TEST

START_TEST(sizes_are_kept_within_reason)
{
    Grid *grid = grid_new(-3, 0);
    assert_int_equal(grid->columns, 1);
    assert_int_equal(grid->rows, 1);
    grid_panel(grid, (Rect){0, 0, 1, 1}, "x");
    grid_cursor(grid, 99, -4);
    assert_int_equal(grid->cursor_x, 0);
    grid_free(grid);
}
END_TEST

/* Two courses over one another in each cell, a joint in the upper one. */
static Mosaic two_courses(void)
{
    Mosaic mosaic = mosaic_new(4, 2);
    for (int x = 0; x < 8; x++)
        for (int y = 0; y < 4; y++)
            mosaic_set(&mosaic, x, y, y % 2 == 0 ? DOT_WOOD : DOT_WOOD_DARK);
    mosaic_set(&mosaic, 2, 0, DOT_GAP);
    mosaic_set(&mosaic, 4, 3, DOT_GAP);
    return mosaic;
}

START_TEST(a_mosaic_shows_stripes_and_joints)
{
    Grid *grid = grid_new(4, 2);
    Mosaic mosaic = two_courses();
    mosaic_draw(&mosaic, grid, 0, 0);
    looks_like(grid, "\u2580\u2599\u2580\u2580\n\u2580\u2580\u259b\u2580\n");
    assert_int_equal(grid_at(grid, 0, 0)->style, style_mosaic(INK_WOOD, INK_WOOD_DARK));
    grid_clear(grid);
    grid->colour = false;
    mosaic_draw(&mosaic, grid, 0, 0);
    looks_like(grid, "\u2580\u259d\u2580\u2580\n\u2580\u2580\u259b\u2580\n");
    grid_clear(grid);
    grid->ascii = true;
    mosaic_draw(&mosaic, grid, 0, 0);
    looks_like(grid, "=|==\n==|=\n");
    mosaic_finish(&mosaic);
    grid_free(grid);
}
END_TEST

START_TEST(meaning_does_not_hang_on_colour)
{
    const Dot kinds[] = {DOT_WOOD, DOT_WOOD_DARK, DOT_SLIVER, DOT_BARE};
    for (int ascii = 0; ascii < 2; ascii++) {
        uint32_t signs[4];
        for (int i = 0; i < 4; i++) {
            Grid *grid = grid_new(1, 1);
            grid->colour = false;
            grid->ascii = ascii == 1;
            Mosaic mosaic = mosaic_new(1, 1);
            for (int dot = 0; dot < 4; dot++)
                mosaic_set(&mosaic, dot & 1, dot >> 1, kinds[i]);
            mosaic_draw(&mosaic, grid, 0, 0);
            signs[i] = grid_at(grid, 0, 0)->code;
            for (int other = 0; other < i; other++)
                assert_int_not_equal(signs[other], signs[i]);
            mosaic_finish(&mosaic);
            grid_free(grid);
        }
    }
}
END_TEST

START_TEST(every_style_has_a_look)
{
    for (int style = 0; style < STYLE_MOSAIC + INK_COUNT * INK_COUNT; style++) {
        Look look = style_look(style, true);
        assert_true(look.pair >= 0 && look.pair < STYLE_PAIRS);
        assert_int_equal(style_look(style, false).pair, 0);
    }
    for (int pair = 0; pair < STYLE_PAIRS; pair++) { /* blue cannot be read on black */
        int front, back;
        style_pair(pair, 8, &front, &back);
        assert_int_not_equal(front, 4);
        assert_int_not_equal(back, 4);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        text_is_cut_with_a_sign,         nothing_is_drawn_outside,
        controls_are_shown_never_sent,   wide_characters_take_two_cells_and_are_never_halved,
        marks_stand_on_their_letter,     ascii_holds_text_and_glyphs_to_ascii,
        sizes_are_kept_within_reason,    a_mosaic_shows_stripes_and_joints,
        meaning_does_not_hang_on_colour, every_style_has_a_look,
    };
    return RUN(tests);
}
