#include "support/test.h"

#include "base/fold.h"
#include "base/text.h"

#include <string.h>

START_TEST(folds_at_spaces)
{
    int begin;
    const char *text = "hole, desk outlet: 12 to 14 3/8";
    assert_int_equal(fold_line(text, 12, 0, &begin), 10);
    assert_int_equal(begin, 0);
    assert_int_equal(fold_line(text, 12, 1, &begin), 10);
    assert_memory_equal(text + begin, "outlet: 12", 10);
    assert_int_equal(fold_line(text, 12, 2, &begin), 9);
    assert_memory_equal(text + begin, "to 14 3/8", 9);
    assert_int_equal(fold_line(text, 12, 3, &begin), -1);
    assert_int_equal(fold_line("abcdefgh", 3, 2, &begin), 2);
    assert_int_equal(begin, 6);
    assert_int_equal(fold_line("", 3, 0, &begin), 0);
    assert_int_equal(fold_line("", 3, 1, &begin), -1);
    /* two cells each: three of them do not fit into five */
    assert_int_equal(fold_line("\xe6\x9d\xbf\xe6\x9d\xbf\xe6\x9d\xbf", 5, 0, &begin), 6);
}
END_TEST

/* "3 3/16 in" read over two lines is "3" and then something else. */
START_TEST(a_length_stays_on_one_line)
{
    static const char text[] = "the top course becomes 2 13/16 in to 8' 3 3/16 in, then 1 mm";
    for (int width = 12; width < (int)sizeof text + 1; width++) {
        Text out;
        text_init(&out);
        int begin, length;
        for (int line = 0; (length = fold_line(text, width, line, &begin)) >= 0; line++) {
            assert_true(length <= width);
            text_format(&out, "%.*s\n", length, text + begin);
        }
        assert_non_null(strstr(out.bytes, "2 13/16 in"));
        assert_non_null(strstr(out.bytes, "1 mm"));
        if (width >= 14)
            assert_non_null(strstr(out.bytes, "8' 3 3/16 in,"));
        text_finish(&out);
    }
    /* where nothing else fits, at a space all the same */
    int begin;
    assert_int_equal(fold_line("2 13/16 in", 8, 0, &begin), 7);
    assert_int_equal(fold_line("2 13/16 in", 8, 1, &begin), 2);
    assert_int_equal(begin, 8);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {folds_at_spaces, a_length_stays_on_one_line};
    return RUN(tests);
}
