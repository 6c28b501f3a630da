#include "support/test.h"

#include <stdarg.h>
#include <stdlib.h>

/* For a test that hangs, not for a slow machine: the longest takes a minute, ten under sanitizers on a busy machine.
 * CK_TIMEOUT_MULTIPLIER stretches it. */
#define SECONDS_MOST 600

/* Room for a screen of 120 columns; Check ends a test whose message is longer than it expects. */
#define MESSAGE_MOST 65536

/* Each line of the message behind a "#", as TAP wants it. */
static void print_message(const char *message)
{
    while (*message != '\0') {
        size_t length = strcspn(message, "\n");
        printf("# %.*s\n", (int)length, message);
        message += length + (message[length] == '\n');
    }
}

/* Prints the result of one test, which has the number `number`; returns whether it held or was left out. */
static bool print_result(TestResult *result, const TTest *test, int number)
{
    const char *message = tr_msg(result);
    if (tr_rtype(result) == CK_PASS) {
        printf("ok %d - %s\n", number, test->name);
        return true;
    }
    if (tr_rtype(result) == CK_FAILURE && strncmp(message, SKIP_MARK, strlen(SKIP_MARK)) == 0) {
        printf("ok %d - %s # SKIP %s\n", number, test->name, message + strlen(SKIP_MARK));
        return true;
    }
    printf("not ok %d - %s\n", number, test->name);
    printf("# %s:%d%s:\n", tr_lfile(result) == NULL ? test->file : tr_lfile(result), tr_lno(result),
           tr_rtype(result) == CK_ERROR ? " was the last place known" : "");
    print_message(message);
    return false;
}

/* A case and a runner of its own for each test, so that each is told as soon as it ends and CK_RUN_CASE can name it. */
static bool run(const TTest *test, int number, SFun set_up, SFun tear_down)
{
    Suite *suite = suite_create(test->file);
    TCase *only = tcase_create(test->name);
    tcase_add_checked_fixture(only, set_up, tear_down);
    tcase_set_timeout(only, SECONDS_MOST);
    tcase_add_test(only, test);
    suite_add_tcase(suite, only);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_SILENT);
    bool held = true;
    if (srunner_ntests_run(runner) == 0) {
        printf("ok %d - %s # SKIP not asked for\n", number, test->name);
    } else {
        TestResult **results = srunner_results(runner);
        for (int i = 0; i < srunner_ntests_run(runner); i++)
            held = print_result(results[i], test, number) && held;
        free(results);
    }
    srunner_free(runner);
    return held;
}

int tests_run(const TTest *const *tests, int count, SFun set_up, SFun tear_down)
{
    /* A test that fails ends without writing what waits in a buffer. */
    setvbuf(stdout, NULL, _IOLBF, BUFSIZ);
    check_set_max_msg_size(MESSAGE_MOST);
    printf("1..%d\n", count);
    int failed = 0;
    for (int i = 0; i < count; i++)
        failed += !run(tests[i], i + 1, set_up, tear_down);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}

void tests_note(const char *format, ...)
{
    char note[MESSAGE_MOST];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(note, sizeof note, format, arguments);
    va_end(arguments);
    print_message(note);
}
