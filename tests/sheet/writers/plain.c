#include "support/test.h"

#include "base/random.h"
#include "base/utf8.h"
#include "sheet/made_up.h"
#include "sheet/writers/plain.h"

static char *text_of(Arena *arena, const Sheet *sheet)
{
    Text text;
    text_init(&text);
    plain_write(sheet, &text);
    char *out = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return out;
}

/* Calls `each` with every line and the page it stands on, from 1; how many pages there are. */
static int each_line(const char *text, void (*each)(void *with, int page, int line, const char *bytes), void *with)
{
    int page = 1, line = 1;
    char buffer[1024];
    while (*text != '\0') {
        if (*text == '\f') {
            page++;
            line = 1;
            text++;
        }
        size_t length = strcspn(text, "\n");
        assert_true(length < sizeof buffer);
        memcpy(buffer, text, length);
        buffer[length] = '\0';
        assert_null(strchr(buffer, '\f'));
        each(with, page, line++, buffer);
        assert_int_equal(text[length], '\n');
        text += length + 1;
    }
    return page;
}

static void fits_page(void *with, int page, int line, const char *bytes)
{
    (void)with;
    (void)page;
    assert_in_range(line, 1, SHEET_LINES);
    assert_in_range(utf8_cells(bytes), 0, SHEET_COLUMNS);
    size_t length = strlen(bytes);
    assert_true(length == 0 || bytes[length - 1] != ' ');
}

typedef struct Seen {
    int group, line, page; /* of the last line that names its group */
    int splits, again;     /* how often a group goes on on another page; with its first line once more */
} Seen;

/* Every line once, in order; a group on one page. */
static void in_order(void *with, int page, int line, const char *bytes)
{
    Seen *seen = with;
    int group, number, of;
    (void)line;
    if (sscanf(bytes, " group %d line %d of %d", &group, &number, &of) != 3)
        return;
    if (number == 1 && group == seen->group && page != seen->page) {
        seen->again++;
        return;
    }
    if (number == 1) {
        assert_int_equal(group, seen->group + 1);
    } else {
        assert_int_equal(group, seen->group);
        assert_int_equal(number, seen->line + 1);
        if (page != seen->page)
            seen->splits++;
    }
    *seen = (Seen){group, number, page, seen->splits, seen->again};
}

START_TEST(never_splits_a_group)
{
    Random random = {7};
    for (int round = 0; round < 200; round++) {
        Arena *arena = arena_new();
        Sheet *sheet = made_up_sheet(arena);
        int count = (int)random_between(&random, 1, 40), number = 0;
        int sections = (int)random_between(&random, 1, 3);
        for (int s = 0; s < sections; s++) {
            SheetSection *section = sheet_section(sheet, "Face north", random_below(&random, 2) == 0);
            sheet_words(sheet, &section->heads, 0, WEIGHT_TEXT, "piece  board");
            for (int i = 0; i < count; i++) {
                made_up_group(sheet, section, ++number, (int)random_between(&random, 1, 12));
                section->groups.at[i].apart = random_below(&random, 2) == 0;
                section->groups.at[i].with_next = random_below(&random, 8) == 0;
                section->groups.at[i].lines.at[0].rule = random_below(&random, 2) == 0;
            }
        }
        char *text = text_of(arena, sheet);
        each_line(text, fits_page, NULL);
        Seen seen = {0};
        int pages = each_line(text, in_order, &seen);
        assert_int_equal(seen.group, number);
        assert_int_equal(seen.splits, 0);
        char last[64];
        snprintf(last, sizeof last, "page %d of %d", pages, pages);
        assert_holds(text, last);
        arena_free(arena);
    }
}
END_TEST

START_TEST(splits_only_what_no_page_holds)
{
    Arena *arena = arena_new();
    Sheet *sheet = made_up_sheet(arena);
    SheetSection *section = sheet_section(sheet, "Face north", false);
    sheet_words(sheet, &section->heads, 0, WEIGHT_TEXT, "piece  board");
    made_up_group(sheet, section, 1, 3);
    made_up_group(sheet, section, 2, 150);
    made_up_group(sheet, section, 3, 3);
    char *text = text_of(arena, sheet);
    each_line(text, fits_page, NULL);
    Seen seen = {0};
    /* 3 lines; 150 lines on pages of 49 below four lines of page head and one of heads, from the second on with the
     * first line of the group once more; the last group behind them */
    assert_int_equal(each_line(text, in_order, &seen), 5);
    assert_int_equal(seen.group, 3);
    assert_int_equal(seen.splits, 3);
    assert_int_equal(seen.again, 3);
    arena_free(arena);
}
END_TEST

static void count_heads(void *with, int page, int line, const char *bytes)
{
    int *heads = with;
    (void)line;
    if (strstr(bytes, "HEADS") != NULL)
        heads[page]++;
}

START_TEST(heads_are_repeated_on_each_page)
{
    Arena *arena = arena_new();
    Sheet *sheet = made_up_sheet(arena);
    SheetSection *section = sheet_section(sheet, "Face north", false);
    sheet_words(sheet, &section->heads, 0, WEIGHT_TEXT, "HEADS");
    for (int i = 1; i <= 30; i++)
        made_up_group(sheet, section, i, 4);
    char *text = text_of(arena, sheet);
    int heads[8] = {0};
    assert_int_equal(each_line(text, count_heads, heads), 3);
    assert_int_equal(heads[1], 1);
    assert_int_equal(heads[2], 1);
    assert_int_equal(heads[3], 1);
    assert_holds(text, "page 2 of 3");
    assert_holds(text, "Face north");
    assert_holds(text, "date ____");
    assert_holds(text, "reading-wall.yaml   0123456789ab");
    arena_free(arena);
}
END_TEST

START_TEST(keeps_a_heading_with_what_it_heads)
{
    Arena *arena = arena_new();
    Sheet *sheet = made_up_sheet(arena);
    SheetSection *section = sheet_section(sheet, "", false);
    made_up_group(sheet, section, 1, 45);
    made_up_group(sheet, section, 2, 1);
    section->groups.at[1].with_next = true;
    made_up_group(sheet, section, 3, 10);
    char *text = text_of(arena, sheet);
    const char *page = strchr(text, '\f');
    assert_non_null(page);
    assert_holds(page, "group 2 line 1 of 1");
    arena_free(arena);
}
END_TEST

START_TEST(folds_cells_side_by_side)
{
    Arena *arena = arena_new();
    Sheet *sheet = made_up_sheet(arena);
    SheetSection *section = sheet_section(sheet, "", false);
    SheetLine *line = sheet_line(sheet, &sheet_group(sheet, section)->lines);
    sheet_tick(sheet, line, 0, true);
    sheet_cell(sheet, line, 4, 6, ALIGN_RIGHT, WEIGHT_TEXT, "40 1/2");
    sheet_cell(sheet, line, 12, 9, ALIGN_LEFT, WEIGHT_TEXT, "a notch in the edge");
    sheet_pencil(sheet, line, 30, 14, "measured");
    char *text = text_of(arena, sheet);
    assert_holds(text, "\n[x] 40 1/2  a notch           measured _____\n            in the\n            edge\n");
    arena_free(arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {never_splits_a_group, splits_only_what_no_page_holds, heads_are_repeated_on_each_page,
                                  keeps_a_heading_with_what_it_heads, folds_cells_side_by_side};
    return RUN(tests);
}
