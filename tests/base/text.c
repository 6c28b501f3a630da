#include "check.h"

#include "base/text.h"

#include <stdio.h>
#include <string.h>

static void test_puts_behind_one_another(void **state)
{
    (void)state;
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

static void test_grows_without_end(void **state)
{
    (void)state;
    Text text;
    text_init(&text);
    for (int i = 0; i < 100000; i++)
        text_format(&text, "%05d", i);
    assert_int_equal(text.length, 500000);
    assert_memory_equal(text.bytes + 5L * 77777, "77777", 5);
    text_finish(&text);
}

static void test_holds_nul_bytes(void **state)
{
    (void)state;
    Text text;
    text_init(&text);
    text_put_bytes(&text, "a\0b", 3);
    assert_int_equal(text.length, 3);
    assert_memory_equal(text.bytes, "a\0b", 4);
    text_finish(&text);
}

static void test_pads_to_cells_not_bytes(void **state)
{
    (void)state;
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

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_puts_behind_one_another),
        cmocka_unit_test(test_grows_without_end),
        cmocka_unit_test(test_holds_nul_bytes),
        cmocka_unit_test(test_pads_to_cells_not_bytes),
    };
    return RUN(tests);
}
