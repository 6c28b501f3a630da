#include "support/test.h"

#include "config.h"
#include "sheet/made_up.h"
#include "sheet/writers/pdf.h"
#include "sheet/writers/plain.h"

static Sheet *three_pages(Arena *arena)
{
    Sheet *sheet = made_up_sheet(arena);
    SheetSection *section = sheet_section(sheet, "Face north", false);
    sheet_words(sheet, &section->heads, 0, WEIGHT_TEXT, "piece  board");
    for (int i = 1; i <= 20; i++)
        made_up_group(sheet, section, i, 5);
    return sheet;
}

#if DATUMROW_PDF

START_TEST(writes_the_same_bytes_twice)
{
    bool (*const writers[])(const Sheet *, Text *, Err *) = {pdf_write, svg_write};
    for (size_t i = 0; i < 2; i++) {
        Arena *arena = arena_new();
        Text first, second;
        Err err = {0};
        text_init(&first);
        text_init(&second);
        assert_done(writers[i](three_pages(arena), &first, &err), &err);
        assert_done(writers[i](three_pages(arena), &second, &err), &err);
        assert_true(first.length > 1000);
        assert_int_equal(first.length, second.length);
        assert_memory_equal(first.bytes, second.bytes, first.length);
        text_finish(&first);
        text_finish(&second);
        arena_free(arena);
    }
}
END_TEST

static bool holds_bytes(const Text *text, const char *part)
{
    size_t length = strlen(part);
    for (size_t i = 0; i + length <= text->length; i++)
        if (memcmp(text->bytes + i, part, length) == 0)
            return true;
    return false;
}

/* The size of an SVG with one number, as a piece's number or as a plain text. */
static size_t size_with_number(int number, bool foot)
{
    Arena *arena = arena_new();
    Sheet *sheet = made_up_sheet(arena);
    SheetLine *line = sheet_line(sheet, &sheet_group(sheet, sheet_section(sheet, "", false))->lines);
    if (foot)
        sheet_number(sheet, line, 0, 8, WEIGHT_TEXT, number);
    else
        sheet_cell(sheet, line, 0, 8, ALIGN_RIGHT, WEIGHT_TEXT, words(arena, "%d", number));
    Text text;
    Err err = {0};
    text_init(&text);
    assert_done(svg_write(sheet, &text, &err), &err);
    const size_t size = text.length;
    text_finish(&text);
    arena_free(arena);
    return size;
}

/* Upside down a 6 is a 9: each has a line under it, no other digit has. */
START_TEST(a_six_and_a_nine_are_underlined)
{
    const size_t one = size_with_number(16, true) - size_with_number(16, false);
    assert_in_range(one, 1, 1000);
    assert_true(size_with_number(19, true) > size_with_number(19, false));
    assert_true(size_with_number(969, true) > size_with_number(969, false));
    assert_int_equal(size_with_number(1234578, true), size_with_number(1234578, false));
}
END_TEST

/* A sketch of a square in 1000 units: its SVG, for what it holds. */
START_TEST(a_sketch_stands_among_the_lines)
{
    Arena *arena = arena_new();
    Drawing *drawing = arena_one(arena, Drawing);
    drawing->bounds = (Box){.left = 0, .right = 1000 * LENGTH_MM, .bottom = 0, .top = 500 * LENGTH_MM};
    Shape *shape = arena_push(arena, &drawing->shapes);
    *shape = (Shape){.kind = SHAPE_PLANK, .closed = true};
    *arena_push(arena, &shape->points) = (Point){0, 0};
    *arena_push(arena, &shape->points) = (Point){1000 * LENGTH_MM, 0};
    *arena_push(arena, &shape->points) = (Point){1000 * LENGTH_MM, 500 * LENGTH_MM};
    size_t sizes[2];
    for (int with = 0; with <= 1; with++) {
        Sheet *sheet = made_up_sheet(arena);
        SheetLines *lines = &sheet_group(sheet, sheet_section(sheet, "", false))->lines;
        sheet_words(sheet, lines, 0, WEIGHT_TEXT, "before");
        if (with)
            sheet_sketch(sheet, lines, drawing, "The elevation shows it.");
        Text text;
        Err err = {0};
        text_init(&text);
        assert_done(svg_write(sheet, &text, &err), &err);
        sizes[with] = text.length;
        text_finish(&text);
        text_init(&text);
        plain_write(sheet, &text);
        assert_int_equal(strstr(text.bytes, "\nThe elevation shows it.\n") != NULL, with);
        text_finish(&text);
    }
    assert_true(sizes[1] > sizes[0] + 100);
    arena_free(arena);
}
END_TEST

/* No clock: the date is the sheet's, or a fixed one. */
START_TEST(carries_the_date_of_the_sheet)
{
    Arena *arena = arena_new();
    Text text;
    Err err = {0};
    text_init(&text);
    Sheet *sheet = three_pages(arena);
    assert_done(pdf_write(sheet, &text, &err), &err);
    assert_true(holds_bytes(&text, "%PDF-1.4"));
    assert_true(holds_bytes(&text, "19700101000000"));
    text_clear(&text);
    sheet->date = "2026-03-14";
    assert_done(pdf_write(sheet, &text, &err), &err);
    assert_true(holds_bytes(&text, "20260314000000"));
    assert_false(holds_bytes(&text, "19700101000000"));
    text_finish(&text);
    arena_free(arena);
}
END_TEST

#else

START_TEST(refuses_where_it_is_not_built_in)
{
    Arena *arena = arena_new();
    Text text;
    Err err = {0};
    text_init(&text);
    assert_false(pdf_write(three_pages(arena), &text, &err));
    assert_int_equal(err.kind, ERR_USAGE);
    assert_holds(err.text, "--as text");
    text_finish(&text);
    arena_free(arena);
}
END_TEST

#endif

int main(void)
{
    const TTest *const tests[] = {
#if DATUMROW_PDF
        writes_the_same_bytes_twice,
        a_six_and_a_nine_are_underlined,
        a_sketch_stands_among_the_lines,
        carries_the_date_of_the_sheet,
#else
        refuses_where_it_is_not_built_in,
#endif
    };
    return RUN(tests);
}
