/*
 * What every test includes first: cmocka with the headers it wants before itself, and a few assertions that show more
 * than a line number when they fail. A test is a function that takes `void **state`; main ends in RUN(tests).
 */
#ifndef TESTS_CHECK_H
#define TESTS_CHECK_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/err.h"

/* The call, whose last argument is `err`, did what it should; else its message is shown. */
#define assert_done(call, err)                                                                             \
    do {                                                                                                   \
        if (!(call))                                                                                       \
            fail_msg("%s refused: %s%s%s", #call, (err)->place, (err)->place[0] ? ": " : "", (err)->text); \
    } while (0)

/* `text` holds `part`. */
#define assert_holds(text, part)                                     \
    do {                                                             \
        if (strstr((text), (part)) == NULL)                          \
            fail_msg("\"%s\" does not hold \"%s\"", (text), (part)); \
    } while (0)

#define RUN(tests) cmocka_run_group_tests(tests, NULL, NULL)

#endif
