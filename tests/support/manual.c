#include "support/test.h"

#include "support/manual.h"

#include "base/file.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void manual_hold(const char *page, const char *what, const Text *made)
{
    char path[1000], begin_mark[64], end_mark[64];
    Text text;
    Err err = {0};
    snprintf(path, sizeof path, "%s/man/%s", getenv("DATUMROW_SOURCE"), page);
    snprintf(begin_mark, sizeof begin_mark, ".\\\" %s begin\n", what);
    snprintf(end_mark, sizeof end_mark, ".\\\" %s end\n", what);
    text_init(&text);
    assert_done(file_read(path, 1 << 20, &text, &err), &err);
    char *begin = strstr(text.bytes, begin_mark);
    assert_non_null(begin);
    begin += strlen(begin_mark);
    char *end = strstr(begin, end_mark);
    assert_non_null(end);
    if (getenv("DATUMROW_RENEW") != NULL) {
        Text renewed;
        text_init(&renewed);
        text_put_bytes(&renewed, text.bytes, (size_t)(begin - text.bytes));
        text_put(&renewed, made->bytes);
        text_put(&renewed, end);
        assert_done(file_write_safely(path, renewed.bytes, renewed.length, &err), &err);
        text_finish(&renewed);
    } else {
        *end = '\0';
        assert_string_equal(begin, made->bytes);
    }
    text_finish(&text);
}
