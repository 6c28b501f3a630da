#include "support/test.h"

#include "base/text.h"

#include <stdio.h>
#include <string.h>

START_TEST(puts_behind_one_another)
{
    Text text;
    text_init(&text);
    assert_string_equal(text.bytes, "");
    text_put(&text, "row ");
    text_format(&text, "%d: %s", -3, "rip");
    text_put_bytes(&text, " of it", 3);
    text_put_times(&text, '-', 4);
    text_put_times(&text, '-', -4);
    assert_string_equal(text.bytes, "row -3: rip of----");
    assert_int_equal(text.length, strlen(text.bytes));
    text_clear(&text);
    assert_string_equal(text.bytes, "");
    assert_int_equal(text.length, 0);
    text_finish(&text);
}
END_TEST

START_TEST(grows_without_end)
{
    Text text;
    text_init(&text);
    for (int i = 0; i < 100000; i++)
        text_format(&text, "%05d", i);
    assert_int_equal(text.length, 500000);
    assert_memory_equal(text.bytes + 5L * 77777, "77777", 5);
    text_finish(&text);
}
END_TEST

START_TEST(holds_nul_bytes)
{
    Text text;
    text_init(&text);
    text_put_bytes(&text, "a\0b", 3);
    assert_int_equal(text.length, 3);
    assert_memory_equal(text.bytes, "a\0b", 4);
    text_finish(&text);
}
END_TEST

START_TEST(pads_to_cells_not_bytes)
{
    Text text;
    text_init(&text);
    text_put(&text, "| ");
    size_t from = text.length;
    text_put(&text, "s\xc3\xa4ule"); /* five cells in six bytes */
    text_pad(&text, from, 8);
    text_put(&text, "|");
    assert_string_equal(text.bytes, "| s\xc3\xa4ule   |");
    text_pad(&text, from, 2);
    assert_string_equal(text.bytes, "| s\xc3\xa4ule   |");
    text_finish(&text);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        puts_behind_one_another,
        grows_without_end,
        holds_nul_bytes,
        pads_to_cells_not_bytes,
    };
    return RUN(tests);
}
