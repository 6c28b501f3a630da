/*
 * What every unit test includes first: the library Check, the assertions, and how the tests of one file are run. A test
 * is START_TEST(what_holds) { ... } END_TEST; main lists them and ends in `return RUN(tests);`.
 *
 * The assertions are ours, not Check's: Check writes a mark into a file for each of its own that holds: a
 * million of them take 4.8 s of processor time, a million of ours 4 ms. A failed one ends the test and says the place,
 * what was asserted and what was found; what a program prints beyond that begins with "# ".
 */
#ifndef TESTS_SUPPORT_TEST_H
#define TESTS_SUPPORT_TEST_H

#include <inttypes.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <check.h>

#include "base/err.h"

/* Runs the tests of one file, each in a process of its own and each with `set_up` before and `tear_down` after it
 * (either may be NULL), and prints TAP: main's exit status. CK_FORK=no keeps them in one process, for a debugger;
 * CK_RUN_CASE=name runs one alone. */
int tests_run(const TTest *const *tests, int count, SFun set_up, SFun tear_down);

#define RUN_WITH(tests, set_up, tear_down) \
    tests_run((tests), (int)(sizeof(tests) / sizeof *(tests)), (set_up), (tear_down))
#define RUN(tests) RUN_WITH(tests, NULL, NULL)

/* Prints what a reader of the results should know beyond them, each line behind "# ". */
void tests_note(const char *format, ...) CK_ATTRIBUTE_FORMAT(printf, 1, 2);

/* Ends the test: it failed, as the words say. */
#define FAIL(...) ck_abort_msg(__VA_ARGS__)

/* Ends the test: what it needs is not here. It counts as left out. */
#define SKIP_MARK "left out: "
#define SKIP(reason) ck_abort_msg(SKIP_MARK reason)

#define assert_true(condition)                           \
    do {                                                 \
        if (!(condition))                                \
            FAIL("%s", "this should hold: " #condition); \
    } while (0)

#define assert_false(condition)                              \
    do {                                                     \
        if (condition)                                       \
            FAIL("%s", "this should not hold: " #condition); \
    } while (0)

#define assert_null(pointer)                              \
    do {                                                  \
        if ((pointer) != NULL)                            \
            FAIL("%s", "this should be null: " #pointer); \
    } while (0)

#define assert_non_null(pointer)                              \
    do {                                                      \
        if ((pointer) == NULL)                                \
            FAIL("%s", "this should not be null: " #pointer); \
    } while (0)

#define assert_ptr_equal(pointer, expected)                              \
    do {                                                                 \
        if ((const void *)(pointer) != (const void *)(expected))         \
            FAIL("%s", "these should be one: " #pointer ", " #expected); \
    } while (0)

#define assert_ptr_not_equal(pointer, other)                          \
    do {                                                              \
        if ((const void *)(pointer) == (const void *)(other))         \
            FAIL("%s", "these should be two: " #pointer ", " #other); \
    } while (0)

/* Whole numbers of any type that has at most 64 bits, compared as signed ones. */
#define assert_int_equal(value, expected)                                                            \
    do {                                                                                             \
        const intmax_t value_ = (intmax_t)(value), expected_ = (intmax_t)(expected);                 \
        if (value_ != expected_)                                                                     \
            FAIL("%s is %" PRIdMAX ", not %" PRIdMAX " (%s)", #value, value_, expected_, #expected); \
    } while (0)

#define assert_int_not_equal(value, other)                                                   \
    do {                                                                                     \
        const intmax_t value_ = (intmax_t)(value), other_ = (intmax_t)(other);               \
        if (value_ == other_)                                                                \
            FAIL("%s is %" PRIdMAX ", as %s is, but should not be", #value, value_, #other); \
    } while (0)

/* low <= value <= high. */
#define assert_in_range(value, low, high)                                                                \
    do {                                                                                                 \
        const intmax_t value_ = (intmax_t)(value), low_ = (intmax_t)(low), high_ = (intmax_t)(high);     \
        if (value_ < low_ || value_ > high_)                                                             \
            FAIL("%s is %" PRIdMAX ", not from %" PRIdMAX " to %" PRIdMAX, #value, value_, low_, high_); \
    } while (0)

/* No further than `within` from `expected`. */
#define assert_near(value, expected, within)                                                                       \
    do {                                                                                                           \
        const intmax_t value_ = (intmax_t)(value), expected_ = (intmax_t)(expected), within_ = (intmax_t)(within); \
        if (value_ - expected_ > within_ || expected_ - value_ > within_)                                          \
            FAIL("%s is %" PRIdMAX ", not within %" PRIdMAX " of %" PRIdMAX, #value, value_, within_, expected_);  \
    } while (0)

#define assert_string_equal(text, expected)                                               \
    do {                                                                                  \
        const char *text_ = (text), *expected_ = (expected);                              \
        if (text_ == NULL || strcmp(text_, expected_) != 0)                               \
            FAIL("%s is\n%s\nnot\n%s", #text, text_ == NULL ? "null" : text_, expected_); \
    } while (0)

#define assert_string_not_equal(text, other)                                         \
    do {                                                                             \
        const char *text_ = (text), *other_ = (other);                               \
        if (strcmp(text_, other_) == 0)                                              \
            FAIL("%s is \"%s\", as %s is, but should not be", #text, text_, #other); \
    } while (0)

#define assert_memory_equal(bytes, expected, size)                                         \
    do {                                                                                   \
        if (memcmp((bytes), (expected), (size)) != 0)                                      \
            FAIL("%s", #bytes " and " #expected " differ in their first " #size " bytes"); \
    } while (0)

/* The call, whose last argument is `err`, did what it should; else its message is shown. */
#define assert_done(call, err)                                                                         \
    do {                                                                                               \
        if (!(call))                                                                                   \
            FAIL("%s refused: %s%s%s", #call, (err)->place, (err)->place[0] ? ": " : "", (err)->text); \
    } while (0)

/* `text` holds `part`. */
#define assert_holds(text, part)                               \
    do {                                                       \
        const char *text_ = (text), *part_ = (part);           \
        if (strstr(text_, part_) == NULL)                      \
            FAIL("this:\n%s\nshould hold:\n%s", text_, part_); \
    } while (0)

#define assert_lacks(text, part)                                   \
    do {                                                           \
        const char *text_ = (text), *part_ = (part);               \
        if (strstr(text_, part_) != NULL)                          \
            FAIL("this:\n%s\nshould not hold:\n%s", text_, part_); \
    } while (0)

#endif
