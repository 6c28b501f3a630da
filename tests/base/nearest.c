#include "check.h"

#include <string.h>

#include "base/nearest.h"

static void counts_changes(void **state)
{
    (void)state;
    assert_int_equal(nearest_distance("rows", "rows"), 0);
    assert_int_equal(nearest_distance("rows", "ROWS"), 0);
    assert_int_equal(nearest_distance("row", "rows"), 1);
    assert_int_equal(nearest_distance("rowss", "rows"), 1);
    assert_int_equal(nearest_distance("rews", "rows"), 1);
    assert_int_equal(nearest_distance("rwos", "rows"), 1);
    assert_int_equal(nearest_distance("", "rows"), 4);
    assert_int_equal(nearest_distance("rows", ""), 4);
    /* The usual example of the edit distance: two letters changed, one put in (from memory). */
    assert_int_equal(nearest_distance("kitten", "sitting"), 3);
}

static void finds_the_nearest(void **state)
{
    (void)state;
    static const char *const words[] = {"ceiling", "floor", "face", "faces"};
    assert_int_equal(nearest_word("cieling", words, 4), 0);
    assert_int_equal(nearest_word("flor", words, 4), 1);
    assert_int_equal(nearest_word("facess", words, 4), 3);
    assert_int_equal(nearest_word("Floor", words, 4), 1);
}

static void names_nothing_far_off(void **state)
{
    (void)state;
    static const char *const words[] = {"ceiling", "floor", "at"};
    assert_int_equal(nearest_word("hearth", words, 3), -1);
    assert_int_equal(nearest_word("", words, 3), -1);
    assert_int_equal(nearest_word("x", words, 3), -1);
    assert_int_equal(nearest_word("ceiling", words, 0), -1);
}

static void takes_long_words(void **state)
{
    (void)state;
    char word[300];
    memset(word, 'a', sizeof word - 1);
    word[sizeof word - 1] = '\0';
    static const char *const words[] = {"aaa"};
    assert_int_equal(nearest_word(word, words, 1), -1);
    assert_int_equal(nearest_distance(word, word), 0);
}

static void names_are_the_same_however_they_are_spaced(void **state)
{
    (void)state;
    assert_true(nearest_same("  Pine,Jack ", "pine, jack"));
    assert_true(nearest_same("pine , jack", "pine, jack"));
    assert_true(nearest_same("", "  "));
    assert_false(nearest_same("pine, jack", "pine, jacks"));
    assert_false(nearest_same("pinejack", "pine jack"));
    char a[200], b[200];
    memset(a, 'a', sizeof a);
    memset(b, 'a', sizeof b);
    a[199] = b[199] = '\0';
    assert_true(nearest_same(a, b));
    b[198] = 'b'; /* far beyond what a distance looks at */
    assert_false(nearest_same(a, b));
}

static void a_shared_word_counts_for_more_than_letters(void **state)
{
    (void)state;
    static const char *const names[] = {"fine", "spruce, white", "Pine, Jack", "pine, red"};
    int near[8];
    assert_int_equal(nearest_names("pine jack", names, 4, near, 2), 2);
    assert_int_equal(near[0], 2);
    assert_int_equal(near[1], 3);
    assert_int_equal(nearest_names("white spruse", names, 4, near, 8), 4);
    assert_int_equal(near[0], 1);
    assert_int_equal(nearest_names("", names, 0, near, 3), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(counts_changes),
        cmocka_unit_test(finds_the_nearest),
        cmocka_unit_test(names_nothing_far_off),
        cmocka_unit_test(takes_long_words),
        cmocka_unit_test(names_are_the_same_however_they_are_spaced),
        cmocka_unit_test(a_shared_word_counts_for_more_than_letters),
    };
    return RUN(tests);
}
