#include "support/test.h"

#include "support/utf8_valid.h"

#include <limits.h>
#include <string.h>

#define STAND_IN "\xef\xbf\xbd"

START_TEST(every_code_point_goes_there_and_back)
{
    for (uint32_t code = 0; code <= 0x10ffff; code++) {
        if (code >= 0xd800 && code <= 0xdfff)
            continue;
        char bytes[4];
        uint32_t back;
        int size = utf8_encode(code, bytes);
        assert_int_equal(utf8_decode(bytes, (size_t)size, &back), size);
        assert_int_equal(back, code);
        if (size > 1)
            assert_int_equal(utf8_decode(bytes, (size_t)size - 1, &back), -1); /* cut short */
    }
}
END_TEST

/* The rows of table 3-7 in the Unicode Standard, chapter 3 (from memory): what is not in it is not well formed. */
START_TEST(refuses_what_is_not_well_formed)
{
    const char *bad[] = {
        "\x80",             /* continues nothing */
        "\xc0\x80",         /* overlong NUL */
        "\xc1\xbf",         /* overlong */
        "\xe0\x9f\xbf",     /* overlong */
        "\xf0\x8f\xbf\xbf", /* overlong */
        "\xed\xa0\x80",     /* surrogate */
        "\xed\xbf\xbf",     /* surrogate */
        "\xf4\x90\x80\x80", /* beyond U+10FFFF */
        "\xf9\x80\x80\x80",
        "\xfb\xbf\xbf\xbf",
        "\xf5\x80\x80\x80",
        "\xff",
        "\xc3(",
        "\xe2\x82(",
        "\xf0\x9f\x98(",
    };
    uint32_t code;
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        assert_int_equal(utf8_decode(bad[i], strlen(bad[i]), &code), -1);
        assert_int_equal(utf8_valid(bad[i], strlen(bad[i])), 0);
    }
    assert_int_equal(utf8_decode("", 0, &code), 0);
    assert_int_equal(utf8_valid("ab\xc3\xa4\xff", 5), 4);
    assert_int_equal(utf8_valid("ab\xc3\xa4", 4), 4);
    assert_int_equal(utf8_valid("a\0b", 3), 3);
}
END_TEST

START_TEST(characters_take_the_cells_that_terminals_give_them)
{
    assert_int_equal(utf8_width('a'), 1);
    assert_int_equal(utf8_width(0x00e4), 1);  /* a with diaeresis */
    assert_int_equal(utf8_width(0x0301), 0);  /* combining acute */
    assert_int_equal(utf8_width(0x4e00), 2);  /* an ideograph */
    assert_int_equal(utf8_width(0xff01), 2);  /* a full-width mark */
    assert_int_equal(utf8_width(0x1f600), 2); /* an emoji */
    assert_int_equal(utf8_width(0x200d), 0);  /* joiner */
    assert_int_equal(utf8_width(0x2588), 1);  /* full block */
    assert_int_equal(utf8_width(0x202e), 1);  /* turns direction: its stand-in is seen */
    assert_int_equal(utf8_width(0x1b), 1);
    assert_int_equal(utf8_width(0xe000), 1);
    assert_int_equal(utf8_width(0x2fffd), 2);
    assert_int_equal(utf8_width(0x10ffff), 1);
}
END_TEST

START_TEST(nothing_harmful_comes_through)
{
    char out[200];
    utf8_safe(out, sizeof out, "a\x1b[31m\x07\x7f\xc2\x9b", INT_MAX, false);
    assert_string_equal(out, "a" STAND_IN "[31m" STAND_IN STAND_IN STAND_IN);
    utf8_safe(out, sizeof out, "x\xe2\x80\xaey\xe2\x81\xa6z\xef\xbb\xbf", INT_MAX, false);
    assert_string_equal(out, "x" STAND_IN "y" STAND_IN "z" STAND_IN);
    utf8_safe(out, sizeof out, "\xff\xc3", INT_MAX, false);
    assert_string_equal(out, STAND_IN STAND_IN);
    utf8_safe(out, sizeof out,
              "\xcc\x81"
              "a\xcc\x81",
              INT_MAX, false);
    assert_string_equal(out, STAND_IN "a\xcc\x81");
    utf8_safe(out, sizeof out, "s\xc3\xa4ule \xe4\xb8\x80\xff\n", INT_MAX, true);
    assert_string_equal(out, "s?ule ???");
}
END_TEST

START_TEST(what_came_through_comes_through_again)
{
    for (uint32_t code = 1; code <= 0x10ffff; code += code < 0x3000 ? 1 : 37) {
        if (code >= 0xd800 && code <= 0xdfff)
            continue;
        char bytes[8] = "a";
        utf8_encode(code, bytes + 1);
        char once[32];
        char twice[32];
        utf8_safe(once, sizeof once, bytes, INT_MAX, false);
        utf8_safe(twice, sizeof twice, once, INT_MAX, false);
        assert_string_equal(once, twice);
        assert_int_equal(utf8_cells(bytes), utf8_cells(once));
        char plain[32];
        utf8_safe(plain, sizeof plain, bytes, INT_MAX, true);
        for (const char *at = plain; *at != '\0'; at++)
            assert_in_range(*at, 0x20, 0x7e);
    }
}
END_TEST

START_TEST(cuts_at_cells_and_at_bytes)
{
    char out[8];
    utf8_safe(out, sizeof out, "\xe4\xb8\x80\xe4\xb8\x81\xe4\xb8\x82", 5, false); /* two cells each */
    assert_string_equal(out, "\xe4\xb8\x80\xe4\xb8\x81");
    utf8_safe(out, sizeof out, "\xe4\xb8\x80\xe4\xb8\x81\xe4\xb8\x82", 99, false); /* 9 bytes into 7 */
    assert_string_equal(out, "\xe4\xb8\x80\xe4\xb8\x81");
    utf8_safe(out, 1, "abc", 99, false);
    assert_string_equal(out, "");
    utf8_safe(out, sizeof out, "abc", 0, false);
    assert_string_equal(out, "");
    out[0] = 'q';
    utf8_safe(out, 0, "abc", 99, false);
    assert_int_equal(out[0], 'q');
    assert_int_equal(utf8_prefix("\xe4\xb8\x80\xe4\xb8\x81", 3), 3);
    assert_int_equal(utf8_prefix("e\xcc\x81x", 1), 3); /* a mark goes with its letter */
    assert_int_equal(utf8_prefix("abc", 10), 3);
    assert_int_equal(utf8_cells("s\xc3\xa4ule \xe4\xb8\x80"), 8);
    assert_int_equal(utf8_cells(""), 0);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        every_code_point_goes_there_and_back,
        refuses_what_is_not_well_formed,
        characters_take_the_cells_that_terminals_give_them,
        nothing_harmful_comes_through,
        what_came_through_comes_through_again,
        cuts_at_cells_and_at_bytes,
    };
    return RUN(tests);
}
