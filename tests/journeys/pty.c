/* The program on a bare terminal: every way in and out of it leaves the terminal as it was, and no change is lost. */
#include "support/test.h"

#include "child.h"

#include <signal.h>
#include <string.h>
#include <sys/wait.h>

#define TERMINAL "xterm-256color"

START_TEST(it_opens_and_leaves)
{
    Child *child = child_on_wall(TERMINAL, 80, 24);
    assert_true(child_says(child, "Boathouse reading wall"));
    assert_false(child_modes_are_sane(child));
    child_type(child, "q");
    assert_true(child_ends(child));
    assert_true(WIFEXITED(child->status));
    assert_int_equal(WEXITSTATUS(child->status), 0);
    assert_true(child_modes_are_sane(child));
    child_free(child);
}
END_TEST

START_TEST(without_a_terminal_it_names_the_commands)
{
    const char *const kinds[] = {NULL, "dumb", "no-such-terminal"};
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        Child *child = child_on_wall(kinds[i], 80, 24);
        assert_true(child_ends(child));
        assert_true(WIFEXITED(child->status));
        assert_int_equal(WEXITSTATUS(child->status), 2);
        assert_holds(child->heard.bytes, "datumrow rows FILE");
        child_free(child);
    }
}
END_TEST

/* In a window `check` is a list folded to it; told to write text it is the sheet. */
START_TEST(check_reads_well_in_a_window)
{
    Child *wide = child_on_wall(TERMINAL, 80, 24);
    child_type(wide, "q");
    assert_true(child_ends(wide));
    const char *const list[] = {"check", wide->wall, NULL}, *const sheet[] = {"check", "--as", "text", wide->wall,
                                                                              NULL};
    Child *child = child_start(TERMINAL, 44, 24, list);
    assert_true(child_ends(child));
    assert_int_equal(WEXITSTATUS(child->status), 0);
    assert_holds(child->heard.bytes, "Boathouse reading wall: 1");
    assert_holds(child->heard.bytes, " hazards,");
    assert_holds(child->heard.bytes, "Care, on any such job");
    assert_lacks(child->heard.bytes, "page 1 of");
    for (const char *line = child->heard.bytes; *line != '\0';
         line += strcspn(line, "\n") + (strchr(line, '\n') != NULL))
        assert_in_range(strcspn(line, "\r\n"), 0, 44);
    child_free(child);
    child = child_start(TERMINAL, 44, 24, sheet);
    assert_true(child_ends(child));
    assert_holds(child->heard.bytes, "page 1 of");
    child_free(child);
    child_free(wide);
}
END_TEST

START_TEST(a_nudge_is_saved_with_one_key)
{
    Child *child = child_on_wall(TERMINAL, 80, 24);
    assert_true(child_says(child, "Boathouse"));
    child_type(child, "\x1b[A\x13"); /* Up, Ctrl-S */
    assert_true(child_file_holds(child, child->wall, "start: 2 5/16 # above the level line\nsaw: {kerf: 1/8, square"));
    assert_true(
        child_file_holds(child, child->wall, "# A wall for the journeys: small, so that each figure is known.\n"));
    child_type(child, "q");
    assert_true(child_ends(child));
    assert_int_equal(WEXITSTATUS(child->status), 0);
    child_free(child);
}
END_TEST

START_TEST(a_flood_of_keys_is_taken_whole)
{
    Child *child = child_on_wall(TERMINAL, 80, 24);
    assert_true(child_says(child, "Boathouse"));
    for (int i = 0; i < 32; i++)
        child_type(child, "\x1b[A\x1b[A\x1b[A\x1b[A\x1b[A\x1b[A\x1b[A\x1b[A");
    child_type(child, "\x13");
    assert_true(child_file_holds(child, child->wall, "start: 18 1/4")); /* 2 1/4 + 256/16 */
    child_free(child);
}
END_TEST

/* An edit is on the screen, then the signal: how the program ended is in `status`, and what it said after that is left
 * to be heeded. The change is in the copy, and the terminal as it was. */
static Child *signalled_after_an_edit(int number)
{
    Child *child = child_on_wall(TERMINAL, 80, 24);
    assert_true(child_says(child, "Boathouse"));
    child_type(child, "\x1b[A");
    assert_true(child_says(child, "5/16"));
    child_signal(child, number);
    if (!child_ends(child))
        FAIL("signal %d does not end it", number);
    if (!child_modes_are_sane(child))
        FAIL("signal %d leaves the terminal raw", number);
    const char *copy = child_recovery(child);
    if (copy == NULL || strstr(child_file(child, copy), "2 5/16") == NULL)
        FAIL("signal %d loses the edit", number);
    assert_holds(child->heard.bytes + child->heeded, "recovery");
    return child;
}

START_TEST(ended_from_outside_it_keeps_the_changes)
{
    const int signals[] = {SIGTERM, SIGINT,  SIGQUIT,   SIGUSR1, SIGUSR2, SIGALRM,
                           SIGPOLL, SIGPROF, SIGVTALRM, SIGXCPU, SIGPWR,  SIGRTMIN};
    for (size_t i = 0; i < sizeof signals / sizeof *signals; i++) {
        Child *child = signalled_after_an_edit(signals[i]);
        assert_true(WIFEXITED(child->status));
        assert_int_equal(WEXITSTATUS(child->status), 3);
        child_free(child);
    }
}
END_TEST

START_TEST(a_crash_keeps_the_changes)
{
    const int crashes[] = {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT, SIGTRAP, SIGSYS};
    for (size_t i = 0; i < sizeof crashes / sizeof *crashes; i++) {
        Child *child = signalled_after_an_edit(crashes[i]);
        assert_true(WIFSIGNALED(child->status));
        assert_int_equal(WTERMSIG(child->status), crashes[i]);
        child_free(child);
    }
}
END_TEST

/* Edit after edit with no memory to be had: what cannot be worked out any more is told, and where not even that is
 * possible the copy is written from what was set aside. */
START_TEST(without_memory_no_edit_is_lost)
{
#ifdef __SANITIZE_ADDRESS__
    SKIP("the sanitizer ends the program where memory does");
#endif
    Child *child = child_on_wall(TERMINAL, 80, 24);
    assert_true(child_says(child, "Boathouse"));
    child_type(child, "\x1b[A");
    assert_true(child_says(child, "5/16"));
    if (!child_starve(child))
        SKIP("this system gives no limit to another process");
    for (int i = 0; i < 20; i++)
        child_type(child, "\x1b[A\x1b[A\x1b[A\x1b[A\x1b[A\x1b[Av?\x1b\x1b[A\x1b[A\x1b[A\x1b[A\x1b[A\x1b[A");
    assert_true(child_says(child, "not enough memory"));
    child_signal(child, SIGTERM); /* where it still lives */
    assert_true(child_ends(child));
    assert_true(child_modes_are_sane(child));
    const char *copy = child_recovery(child);
    if (copy == NULL)
        FAIL("no copy; status %d, said: %s", child->status,
             child->heard.bytes + (child->heard.length > 300 ? child->heard.length - 300 : 0));
    assert_lacks(child_file(child, copy), "start: 2 1/4");
    assert_holds(child_file(child, copy), "start: ");
    child_free(child);
}
END_TEST

START_TEST(a_closed_terminal_loses_nothing)
{
    Child *child = child_on_wall(TERMINAL, 80, 24);
    assert_true(child_says(child, "Boathouse"));
    child_type(child, "\x1b[A");
    assert_true(child_says(child, "5/16"));
    child_hang_up(child);
    assert_true(child_ends(child));
    const char *copy = child_recovery(child);
    assert_non_null(copy);
    assert_holds(child_file(child, copy), "2 5/16");
    child_free(child);
}
END_TEST

START_TEST(a_recovery_copy_is_offered)
{
    Child *child = child_on_wall(TERMINAL, 80, 24);
    assert_true(child_says(child, "Boathouse"));
    child_type(child, "\x1b[A");
    assert_true(child_says(child, "5/16"));
    child_signal(child, SIGTERM);
    assert_true(child_ends(child));
    child_again(child, TERMINAL);
    assert_true(child_says(child, "recovery copy"));
    child_type(child, "t");
    assert_true(child_says(child, "5/16"));
    child_type(child, "\x13");
    assert_true(child_file_holds(child, child->wall, "start: 2 5/16"));
    child_type(child, "q");
    assert_true(child_ends(child));
    assert_null(child_recovery(child));
    child_free(child);
}
END_TEST

START_TEST(a_crash_gives_the_terminal_back)
{
    const int crashes[] = {SIGSEGV, SIGABRT, SIGFPE};
    for (size_t i = 0; i < sizeof crashes / sizeof *crashes; i++) {
        Child *child = child_on_wall(TERMINAL, 80, 24);
        assert_true(child_says(child, "Boathouse"));
        child_signal(child, crashes[i]);
        assert_true(child_ends(child));
        assert_true(WIFSIGNALED(child->status));
        assert_int_equal(WTERMSIG(child->status), crashes[i]);
        assert_true(child_modes_are_sane(child));
        assert_true(child_says(child, "\x1b[?1049l"));
        child_free(child);
    }
}
END_TEST

START_TEST(it_stops_and_comes_back)
{
    Child *child = child_on_wall(TERMINAL, 80, 24);
    assert_true(child_says(child, "Boathouse"));
    for (int round = 0; round < 3; round++) {
        if (round == 1)
            child_type(child, "Z");
        else
            child_signal(child, SIGTSTP);
        assert_true(child_stops(child));
        assert_true(child_modes_are_sane(child));
        child->heeded = child->heard.length;
        child_signal(child, SIGCONT);
        assert_true(child_says(child, "Boathouse")); /* everything is drawn again */
        assert_false(child_modes_are_sane(child));
    }
    child_type(child, "q");
    assert_true(child_ends(child));
    assert_int_equal(WEXITSTATUS(child->status), 0);
    child_free(child);
}
END_TEST

START_TEST(stopped_from_outside_it_draws_itself_again)
{
    Child *child = child_on_wall(TERMINAL, 80, 24);
    assert_true(child_says(child, "Boathouse"));
    child_signal(child, SIGSTOP);
    assert_true(child_stops(child));
    tcsetattr(child->slave, TCSANOW, &child->sane); /* as a shell does */
    child->heeded = child->heard.length;
    child_signal(child, SIGCONT);
    assert_true(child_says(child, "Boathouse"));
    assert_false(child_modes_are_sane(child));
    child_free(child);
}
END_TEST

START_TEST(a_storm_of_sizes_is_survived)
{
    Child *child = child_on_wall(TERMINAL, 80, 24);
    assert_true(child_says(child, "Boathouse"));
    for (int i = 0; i < 150; i++) {
        child_resize(child, 1 + i * 37 % 211, 1 + i * 23 % 67);
        if (i % 5 == 0)
            child_type(child, "v");
    }
    child_resize(child, 80, 24);
    child_type(child, "\x1b[A\x13");
    assert_true(child_file_holds(child, child->wall, "start: 2 5/16"));
    child_type(child, "q");
    assert_true(child_ends(child));
    assert_int_equal(WEXITSTATUS(child->status), 0);
    child_free(child);
}
END_TEST

START_TEST(a_second_editor_is_told)
{
    Child *first = child_on_wall(TERMINAL, 80, 24);
    assert_true(child_says(first, "Boathouse"));
    Child *second = child_beside(first, TERMINAL);
    assert_true(child_says(second, "open in another editor"));
    child_type(second, "lq");
    assert_true(child_ends(second));
    child_type(first, "q");
    assert_true(child_ends(first));
    child_free(second);
    child_free(first);
}
END_TEST

START_TEST(a_file_changed_on_disk_is_asked_about)
{
    Child *child = child_on_wall(TERMINAL, 80, 24);
    assert_true(child_says(child, "Boathouse"));
    child_write(child, child->wall, "start: 2 1/4", "start: 5 1/2");
    child_type(child, "\x1b[A\x13");
    assert_true(child_says(child, "changed"));
    child_type(child, "\x1b");
    assert_holds(child_file(child, child->wall), "start: 5 1/2");
    child_free(child);
}
END_TEST

int main(void)
{
    signal(SIGPIPE, SIG_IGN);
    const TTest *const tests[] = {
        it_opens_and_leaves,
        without_a_terminal_it_names_the_commands,
        check_reads_well_in_a_window,
        a_nudge_is_saved_with_one_key,
        a_flood_of_keys_is_taken_whole,
        ended_from_outside_it_keeps_the_changes,
        a_crash_keeps_the_changes,
        without_memory_no_edit_is_lost,
        a_closed_terminal_loses_nothing,
        a_recovery_copy_is_offered,
        a_crash_gives_the_terminal_back,
        it_stops_and_comes_back,
        stopped_from_outside_it_draws_itself_again,
        a_storm_of_sizes_is_survived,
        a_second_editor_is_told,
        a_file_changed_on_disk_is_asked_about,
    };
    return RUN(tests);
}
