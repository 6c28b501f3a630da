#include "support/test.h"

#include <string.h>

#include "base/nearest.h"

START_TEST(counts_changes)
{
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
END_TEST

START_TEST(finds_the_nearest)
{
    static const char *const words[] = {"ceiling", "floor", "face", "faces"};
    assert_int_equal(nearest_word("cieling", words, 4), 0);
    assert_int_equal(nearest_word("flor", words, 4), 1);
    assert_int_equal(nearest_word("facess", words, 4), 3);
    assert_int_equal(nearest_word("Floor", words, 4), 1);
}
END_TEST

START_TEST(names_nothing_far_off)
{
    static const char *const words[] = {"ceiling", "floor", "at"};
    assert_int_equal(nearest_word("fireplace", words, 3), -1);
    assert_int_equal(nearest_word("", words, 3), -1);
    assert_int_equal(nearest_word("x", words, 3), -1);
    assert_int_equal(nearest_word("ceiling", words, 0), -1);
}
END_TEST

START_TEST(takes_long_words)
{
    char word[300];
    memset(word, 'a', sizeof word - 1);
    word[sizeof word - 1] = '\0';
    static const char *const words[] = {"aaa"};
    assert_int_equal(nearest_word(word, words, 1), -1);
    assert_int_equal(nearest_distance(word, word), 0);
}
END_TEST

START_TEST(names_are_the_same_however_they_are_spaced)
{
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
END_TEST

START_TEST(a_shared_word_counts_for_more_than_letters)
{
    static const char *const names[] = {"fine", "spruce, white", "Pine, Jack", "pine, red"};
    int near[8];
    assert_int_equal(nearest_names("pine jack", names, 4, near, 2), 2);
    assert_int_equal(near[0], 2);
    assert_int_equal(near[1], 3);
    assert_int_equal(nearest_names("white spruse", names, 4, near, 8), 4);
    assert_int_equal(near[0], 1);
    assert_int_equal(nearest_names("", names, 0, near, 3), 0);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        counts_changes,
        finds_the_nearest,
        names_nothing_far_off,
        takes_long_words,
        names_are_the_same_however_they_are_spaced,
        a_shared_word_counts_for_more_than_letters,
    };
    return RUN(tests);
}
