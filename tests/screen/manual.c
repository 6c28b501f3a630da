/* The manual page's list of keys is the table's own: between two marks in man/datumrow.1 stands what action_write_mdoc
 * writes. With DATUMROW_BLESS=1 it is put there. */
#include "check.h"

#include "base/file.h"
#include "screen/action.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char begin_mark[] = ".\\\" keys begin\n";
static const char end_mark[] = ".\\\" keys end\n";

static void the_manual_lists_the_keys_of_the_table(void **state)
{
    (void)state;
    char path[1000];
    snprintf(path, sizeof path, "%s/man/datumrow.1", getenv("DATUMROW_SOURCE"));
    Text page, keys;
    text_init(&page);
    text_init(&keys);
    action_write_mdoc(&keys);
    Err err;
    assert_done(file_read(path, 1 << 20, &page, &err), &err);
    char *begin = strstr(page.bytes, begin_mark);
    assert_non_null(begin);
    begin += strlen(begin_mark);
    char *end = strstr(begin, end_mark);
    assert_non_null(end);
    if (getenv("DATUMROW_BLESS") != NULL) {
        Text renewed;
        text_init(&renewed);
        text_put_bytes(&renewed, page.bytes, (size_t)(begin - page.bytes));
        text_put(&renewed, keys.bytes);
        text_put(&renewed, end);
        assert_done(file_write_safely(path, renewed.bytes, renewed.length, &err), &err);
        text_finish(&renewed);
    } else {
        assert_int_equal(end - begin, keys.length);
        assert_memory_equal(begin, keys.bytes, keys.length);
    }
    text_finish(&page);
    text_finish(&keys);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(the_manual_lists_the_keys_of_the_table)};
    return RUN(tests);
}
