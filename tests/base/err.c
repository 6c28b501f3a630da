#include "support/test.h"

#include "base/err.h"
#include "support/utf8_valid.h"

#include <errno.h>
#include <string.h>

START_TEST(a_line_says_what_is_known)
{
    Err err;
    char line[ERR_PLACE_MAX + ERR_TEXT_MAX];
    assert_false(err_set(&err, ERR_INPUT, "unknown key \"%s\"; write faces", "fases"));
    err_line(&err, line, sizeof line);
    assert_string_equal(line, "unknown key \"fases\"; write faces");
    assert_int_equal(err.kind, ERR_INPUT);

    assert_false(err_at(&err, "wall.yaml", 0, 0));
    err_line(&err, line, sizeof line);
    assert_string_equal(line, "wall.yaml: unknown key \"fases\"; write faces");

    err_at(&err, "wall.yaml", 12, 0);
    err_line(&err, line, sizeof line);
    assert_string_equal(line, "wall.yaml:12: unknown key \"fases\"; write faces");

    err_at(&err, "wall.yaml", 12, 3);
    err_line(&err, line, sizeof line);
    assert_string_equal(line, "wall.yaml:12:3: unknown key \"fases\"; write faces");
}
END_TEST

START_TEST(setting_it_again_forgets_the_old_place)
{
    Err err;
    err_set(&err, ERR_INPUT, "first");
    err_at(&err, "wall.yaml", 4, 2);
    err_set(&err, ERR_VALUE, "second");
    assert_string_equal(err.place, "");
    assert_int_equal(err.line, 0);
}
END_TEST

START_TEST(the_systems_reason_stands_behind)
{
    Err err;
    assert_false(err_system(&err, ENOSPC, "cannot be written"));
    assert_int_equal(err.kind, ERR_SYSTEM);
    assert_holds(err.text, "cannot be written: ");
    assert_holds(err.text, strerror(ENOSPC));
}
END_TEST

START_TEST(what_a_user_typed_is_made_safe)
{
    Err err;
    err_set(&err, ERR_INPUT, "\"%s\" is no name", "a\x1b[2Jb\nc\xff");
    assert_string_equal(err.text, "\"a\xef\xbf\xbd[2Jb\xef\xbf\xbd"
                                  "c\xef\xbf\xbd\" is no name");
}
END_TEST

START_TEST(a_long_text_is_cut_at_a_character)
{
    char name[4001];
    for (int i = 0; i < 4000; i += 2)
        memcpy(name + i, "\xc3\xa4", 2);
    name[4000] = '\0';
    Err err;
    for (int shift = 0; shift < 2; shift++) {
        err_set(&err, ERR_INPUT, "%s%s", shift ? "x" : "", name);
        assert_int_equal(utf8_valid(err.text, strlen(err.text)), strlen(err.text));
        err_at(&err, name + 2 * shift, 1, 1);
        assert_int_equal(utf8_valid(err.place, strlen(err.place)), strlen(err.place));
        char line[100];
        err_line(&err, line, sizeof line);
        assert_true(strlen(line) < sizeof line);
        assert_int_equal(utf8_valid(line, strlen(line)), strlen(line));
    }
}
END_TEST

START_TEST(nobody_has_to_ask_for_it)
{
    assert_false(err_set(NULL, ERR_INPUT, "x"));
    assert_false(err_system(NULL, EIO, "x"));
    assert_false(err_at(NULL, "x", 1, 1));
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        a_line_says_what_is_known,      setting_it_again_forgets_the_old_place, the_systems_reason_stands_behind,
        what_a_user_typed_is_made_safe, a_long_text_is_cut_at_a_character,      nobody_has_to_ask_for_it,
    };
    return RUN(tests);
}
