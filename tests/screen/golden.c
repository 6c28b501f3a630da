/*
 * The picture as a whole, at the sizes that matter, in every set of signs, with and without colour. What is expected
 * lies in goldens/, one file a picture; after a change that was meant, run this with DATUMROW_RENEW=1 and read the
 * difference.
 */
#include "support/picture.h"
#include "support/test.h"

#include "base/file.h"
#include "rig.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct Case {
    const char *name;
    int columns, rows;
    bool ascii, colour;
    const char *keys; /* pressed before the picture is taken */
} Case;

enum { COUNTS_ROW = 3 };

static const Case cases[] = {
    {"1x1", 1, 1, false, true, ""},
    {"1x1-ascii", 1, 1, true, false, ""},
    {"60x17", 60, 17, false, true, ""},
    {"60x17-plain", 60, 17, false, false, "v"},
    {"60x17-ascii", 60, 17, true, false, ""},
    {"80x24", 80, 24, false, true, ""},
    {"80x24-plain", 80, 24, false, false, ""},
    {"80x24-ascii", 80, 24, true, false, ""},
    {"80x24-rows", 80, 24, false, true, "v"},
    {"80x24-rows-ascii", 80, 24, true, false, "v"},
    {"80x24-closer", 80, 24, false, true, "++"},
    {"80x24-menu", 80, 24, false, true, "m"},
    {"80x24-help", 80, 24, false, true, "?"},
    {"80x24-starts", 80, 24, false, true, "s"},
    {"60x18-starts-ascii", 60, 18, true, false, "s"},
    {"120x40-spacers", 120, 40, false, true, "r"},
    {"80x24-planks", 80, 24, false, true, "2"},
    {"80x24-face-ascii", 80, 24, true, false, "5"},
    {"80x24-opening", 80, 24, false, true, "nn"},
    {"80x24-wood", 80, 24, false, true, "W"},
    {"60x18-wood-ascii", 60, 18, true, false, "Wlarch"},
    {"80x24-bill", 80, 24, false, true, "B"},
    {"60x18-bill-ascii", 60, 18, true, false, "B"},
    {"80x24-mill", 80, 24, false, true, "M"},
    {"80x24-rough-board-ascii", 80, 24, true, false, "Ra"},
    {"80x24-trim-run", 80, 24, false, true, "Ta"},
    {"60x18-trim-ascii", 60, 18, true, false, "8"},
    {"60x18-trim-run-ascii", 60, 18, true, false, "Ta"},
    {"80x24-leave", 80, 24, false, true, "kq"},
    {"120x40", 120, 40, false, true, ""},
    {"120x40-plain", 120, 40, false, false, ""},
    {"120x40-ascii", 120, 40, true, true, ""},
    {"120x40-rows", 120, 40, false, true, "v"},
};

static void golden_path(const Case *wanted, char *out, size_t size)
{
    snprintf(out, size, "%s/tests/screen/goldens/%s.txt", getenv("DATUMROW_SOURCE"), wanted->name);
}

/* How many boards are opened, and how many cautions there are, is the business of other storeys: the line of counts is
 * left out. */
static void leave_out_counts(Grid *picture)
{
    if (picture->rows >= 12)
        grid_fill(picture, (Rect){0, COUNTS_ROW, picture->columns, 1}, ' ', STYLE_PLAIN);
}

/* Where the cursor stands belongs to the picture: a screen reader follows it. */
static void take_picture(const Case *wanted, Text *out)
{
    Rig *rig = rig_new(wanted->columns, wanted->rows);
    rig->term->utf8 = !wanted->ascii;
    rig->term->colour = wanted->colour;
    rig_type(rig, wanted->keys);
    rig_type(rig, "");
    memory_resize(rig->term, wanted->columns, wanted->rows);
    rig_settle(rig);
    Grid *picture = grid_new(1, 1);
    grid_copy(picture, memory_picture(rig->term));
    leave_out_counts(picture);
    picture_write(picture, wanted->colour, out);
    text_format(out, "cursor %d,%d\n", picture->cursor_x, picture->cursor_y);
    grid_free(picture);
    rig_free(rig);
}

START_TEST(pictures_are_as_expected)
{
    int wrong = 0;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        Text picture, expected;
        text_init(&picture);
        text_init(&expected);
        take_picture(&cases[i], &picture);
        char path[1000];
        golden_path(&cases[i], path, sizeof path);
        Err err = {.text = ""};
        if (getenv("DATUMROW_RENEW") != NULL)
            assert_done(file_write_safely(path, picture.bytes, picture.length, &err), &err);
        file_read(path, 1 << 20, &expected, &err);
        if (strcmp(picture.bytes, expected.bytes) != 0) {
            wrong++;
            tests_note("%s is not as expected (%s); it is now:\n%s", cases[i].name, err.text, picture.bytes);
        }
        text_finish(&picture);
        text_finish(&expected);
    }
    assert_int_equal(wrong, 0);
}
END_TEST

START_TEST(ascii_pictures_are_ascii)
{
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        if (!cases[i].ascii)
            continue;
        Text picture;
        text_init(&picture);
        take_picture(&cases[i], &picture);
        for (size_t at = 0; at < picture.length; at++)
            assert_true((unsigned char)picture.bytes[at] < 0x7f);
        text_finish(&picture);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        pictures_are_as_expected,
        ascii_pictures_are_ascii,
    };
    return RUN(tests);
}
