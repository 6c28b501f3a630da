/* Large figures as one sees them, in half cells and in plain signs. */
#include "support/picture.h"
#include "support/test.h"

#include "screen/views/large.h"

#include <string.h>

static void assert_picture(const char *text, bool ascii, const char *expected)
{
    Grid *grid = grid_new(40, 3);
    grid->ascii = ascii;
    grid_clear(grid);
    int cells = large_draw(grid, 0, 0, STYLE_FIGURE, text);
    Text picture;
    text_init(&picture);
    picture_write(grid, false, &picture);
    assert_int_equal(strncmp(picture.bytes, expected, strlen(expected)), 0);
    assert_in_range(cells, 1, 40);
    text_finish(&picture);
    grid_free(grid);
}

START_TEST(digits_and_fractions_are_three_rows_high)
{
    assert_picture("46 1/4", false,
                   "\u2588 \u2588 \u2588\u2580\u2580   \u2584\u2588    \u2588 \u2588 \u2588\n"
                   "\u2580\u2580\u2588 \u2588\u2580\u2588    \u2588  \u2584\u2580  \u2580\u2580\u2588\n"
                   "  \u2580 \u2580\u2580\u2580   \u2580\u2580\u2580 \u2580     \u2580\n");
}
END_TEST

START_TEST(plain_signs_take_one_row)
{
    assert_picture("46 1/4", true, "46 1/4\n");
}
END_TEST

/* No two figures are drawn alike. */
START_TEST(every_figure_differs)
{
    const char signs[] = "0123456789/-.'\"";
    char seen[sizeof signs][400];
    for (size_t i = 0; signs[i] != '\0'; i++) {
        Grid *grid = grid_new(4, 3);
        grid_clear(grid);
        large_draw(grid, 0, 0, STYLE_FIGURE, (char[]){signs[i], '\0'});
        Text picture;
        text_init(&picture);
        picture_write(grid, false, &picture);
        assert_in_range(picture.length, 1, sizeof seen[0] - 1);
        memcpy(seen[i], picture.bytes, picture.length + 1);
        for (size_t j = 0; j < i; j++)
            assert_string_not_equal(seen[i], seen[j]);
        text_finish(&picture);
        grid_free(grid);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        digits_and_fractions_are_three_rows_high,
        plain_signs_take_one_row,
        every_figure_differs,
    };
    return RUN(tests);
}
