#include "support/test.h"

#include "base/panic.h"

#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

static void say(const char *message)
{
    (void)!write(STDERR_FILENO, "hook: ", 6);
    (void)!write(STDERR_FILENO, message, strlen(message));
}

static void panic_again(const char *message)
{
    say(message);
    panic("inner", 1, "a second one");
}

/* Runs `hook` and a broken check in a child; what it wrote to standard error into `out`. */
static int die(PanicHook *hook, char *out, size_t size)
{
    int ends[2];
    assert_int_equal(pipe(ends), 0);
    pid_t child = fork();
    if (child == 0) {
        signal(SIGABRT, SIG_DFL);
        dup2(ends[1], STDERR_FILENO);
        panic_hook(hook);
        BUG_UNLESS(1 + 1 == 3);
        _exit(0);
    }
    close(ends[1]);
    size_t length = 0;
    for (ssize_t got; (got = read(ends[0], out + length, size - 1 - length)) > 0;)
        length += (size_t)got;
    out[length] = '\0';
    close(ends[0]);
    int status;
    assert_int_equal(waitpid(child, &status, 0), child);
    return WIFSIGNALED(status) ? WTERMSIG(status) : 0;
}

START_TEST(names_the_broken_check_and_aborts)
{
    char said[1000];
    assert_int_equal(die(NULL, said, sizeof said), SIGABRT);
    assert_holds(said, "panic.c:");
    assert_holds(said, "this should hold: 1 + 1 == 3");
}
END_TEST

START_TEST(the_hook_speaks_instead)
{
    char said[1000];
    assert_int_equal(die(say, said, sizeof said), SIGABRT);
    assert_holds(said, "hook: ");
    assert_holds(said, "1 + 1 == 3");
    assert_lacks(said, "datumrow:");
}
END_TEST

START_TEST(a_panic_in_the_hook_ends_at_once)
{
    char said[1000];
    assert_int_equal(die(panic_again, said, sizeof said), SIGABRT);
    assert_lacks(said, "a second one");
}
END_TEST

START_TEST(what_holds_is_silent)
{
    BUG_UNLESS(1 + 1 == 2);
}
END_TEST

static void count_up(void *with)
{
    int *count = with;
    ++*count;
    BUG_UNLESS(*count < 3);
    ++*count;
}

static void attempt_inside(void *with)
{
    char place[64];
    assert_false(panic_attempt(count_up, with, place, sizeof place));
    BUG_UNLESS(with == NULL);
}

START_TEST(what_is_attempted_is_given_up)
{
    char place[64] = "";
    int count = 0;
    assert_true(panic_attempt(count_up, &count, place, sizeof place));
    assert_int_equal(count, 2);
    assert_string_equal(place, "");
    assert_false(panic_attempt(count_up, &count, place, sizeof place));
    assert_int_equal(count, 3);
    assert_holds(place, "panic.c:");
    assert_lacks(place, "/");
    char inside[64];
    snprintf(inside, sizeof inside, "%s", place);
    assert_false(panic_attempt(attempt_inside, &count, place, sizeof place));
    assert_holds(place, "panic.c:");
    assert_true(strcmp(place, inside) != 0); /* the outer one's */
    char said[1000];                         /* behind an attempt a broken check ends the program as ever */
    assert_int_equal(die(say, said, sizeof said), SIGABRT);
}
END_TEST

static void want_memory(void *with)
{
    *(int *)with = 1;
    panic_no_memory();
}

START_TEST(without_memory_what_is_attempted_is_given_up)
{
    char place[64] = "";
    int begun = 0;
    panic_reserve(1 << 20);
    assert_false(panic_attempt(want_memory, &begun, place, sizeof place));
    assert_int_equal(begun, 1);
    assert_string_equal(place, PANIC_NO_MEMORY);
    panic_reserve(0);
}
END_TEST

START_TEST(no_path_of_the_build_is_told)
{
    char said[1000];
    assert_int_equal(die(NULL, said, sizeof said), SIGABRT);
    assert_lacks(said, "/");
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        names_the_broken_check_and_aborts, the_hook_speaks_instead,
        a_panic_in_the_hook_ends_at_once,  what_holds_is_silent,
        what_is_attempted_is_given_up,     without_memory_what_is_attempted_is_given_up,
        no_path_of_the_build_is_told,
    };
    return RUN(tests);
}
