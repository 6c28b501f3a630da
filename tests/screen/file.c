/* What happens to the file: saved, kept, changed by somebody else, opened twice, begun anew. */
#include "support/test.h"

#include "base/file.h"
#include "rig.h"
#include "screen/forms/file.h"
#include "screen/lists/lists.h"
#include "sheet/writers/plan.h"

#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

static void path_of(const Rig *rig, const char *name, char out[200])
{
    snprintf(out, 200, "%s/%s", rig->folder, name);
}

/* Whether the file in the rig's folder holds the words. */
static bool file_holds(const Rig *rig, const char *name, const char *words)
{
    char path[200];
    path_of(rig, name, path);
    Text text;
    text_init(&text);
    Err err;
    bool holds = file_read(path, 1 << 20, &text, &err) && strstr(text.bytes, words) != NULL;
    text_finish(&text);
    return holds;
}

/* Somebody else writes the file: `words` become `others`, which are as long. */
static void meddle(const Rig *rig, const char *words, const char *others)
{
    char path[200];
    path_of(rig, "wall.yaml", path);
    Text text;
    text_init(&text);
    Err err;
    assert_done(file_read(path, 1 << 20, &text, &err), &err);
    char *found = strstr(text.bytes, words);
    assert_non_null(found);
    memcpy(found, others, strlen(others));
    assert_done(file_write_safely(path, text.bytes, text.length, &err), &err);
    text_finish(&text);
}

START_TEST(control_s_saves_at_once)
{
    Rig *rig = rig_on_file(80, 24);
    assert_shows(rig, "wall.yaml, saved");
    rig_key(rig, PRESS_UP);
    assert_shows(rig, "wall.yaml, changed");
    rig_key(rig, PRESS_CTRL | 's');
    assert_shows(rig, "wall.yaml, saved");
    assert_true(file_holds(rig, "wall.yaml", "start: 2 5/16"));
    rig_key(rig, PRESS_CTRL | 'z');
    assert_shows(rig, "wall.yaml, changed");
    rig_free(rig);
}
END_TEST

START_TEST(a_form_is_taken_before_it_is_saved)
{
    Rig *rig = rig_on_file(80, 24);
    rig_type(rig, "1");
    rig_type(rig, "3 1/");
    rig_key(rig, PRESS_CTRL | 's');
    assert_true(file_holds(rig, "wall.yaml", "start: 2 1/4"));
    rig_type(rig, "8");
    rig_key(rig, PRESS_CTRL | 's');
    assert_true(file_holds(rig, "wall.yaml", "start: 3 1/8"));
    rig_free(rig);
}
END_TEST

START_TEST(the_recovery_copy_comes_after_two_seconds)
{
    Rig *rig = rig_on_file(80, 24);
    rig_key(rig, PRESS_UP);
    const char *copy = session_recovery_path(rig->app->file->session);
    rig_pass(rig, 1900);
    assert_int_not_equal(access(copy, F_OK), 0);
    rig_pass(rig, 200);
    assert_int_equal(access(copy, F_OK), 0);
    rig_key(rig, PRESS_CTRL | 's');
    assert_int_not_equal(access(copy, F_OK), 0);
    rig_free(rig);
}
END_TEST

START_TEST(what_is_undone_needs_no_copy)
{
    Rig *rig = rig_on_file(80, 24);
    const char *copy = session_recovery_path(rig->app->file->session);
    rig_key(rig, PRESS_UP);
    rig_pass(rig, 2100);
    assert_int_equal(access(copy, F_OK), 0);
    rig_key(rig, PRESS_CTRL | 'z');
    rig_pass(rig, 2100);
    assert_int_not_equal(access(copy, F_OK), 0);
    rig_free(rig);
}
END_TEST

START_TEST(asked_to_stop_it_keeps_and_says_where)
{
    Rig *rig = rig_on_file(80, 24);
    rig_key(rig, PRESS_UP);
    memory_stop(rig->term);
    rig_settle(rig);
    assert_false(rig->running);
    assert_holds(file_farewell(rig->app), session_recovery_path(rig->app->file->session));
    assert_int_equal(access(session_recovery_path(rig->app->file->session), F_OK), 0);
    rig_free(rig);
}
END_TEST

/* A file stands where the folder of the copies was. */
START_TEST(where_no_copy_can_be_kept_it_says_so_to_the_end)
{
    Rig *rig = rig_on_file(80, 24);
    char place[PATH_MAX];
    char away[PATH_MAX + 8];
    snprintf(place, sizeof place, "%s", session_recovery_path(rig->app->file->session));
    *strrchr(place, '/') = '\0';
    snprintf(away, sizeof away, "%s.away", place);
    assert_int_equal(rename(place, away), 0);
    FILE *in_the_way = fopen(place, "w");
    assert_non_null(in_the_way);
    fclose(in_the_way);
    rig_key(rig, PRESS_UP);
    rig_pass(rig, 2100);
    assert_shows(rig, "No recovery copy can be kept, so save soon");
    memory_stop(rig->term);
    rig_settle(rig);
    assert_false(rig->running);
    assert_holds(file_farewell(rig->app), "what was changed and not saved could not be kept: ");
    assert_int_equal(remove(place), 0);
    assert_int_equal(rename(away, place), 0);
    rig_free(rig);
}
END_TEST

START_TEST(a_terminal_that_is_gone_ends_it)
{
    Rig *rig = rig_on_file(80, 24);
    rig_key(rig, PRESS_UP);
    memory_hang_up(rig->term);
    rig_settle(rig);
    assert_false(rig->running);
    assert_int_equal(access(session_recovery_path(rig->app->file->session), F_OK), 0);
    rig_free(rig);
}
END_TEST

START_TEST(a_file_changed_on_disk_is_noticed)
{
    Rig *rig = rig_on_file(80, 24);
    meddle(rig, "start: 2 1/4", "start: 7 1/4");
    rig_pass(rig, 5000);
    assert_shows(rig, "The file on disk has changed");
    rig_type(rig, "r");
    assert_shows(rig, "Start 7 1/4");
    assert_shows(rig, "wall.yaml, saved");
    rig_key(rig, PRESS_CTRL | 'z'); /* what was here before is not lost */
    assert_shows(rig, "Start 2 1/4");
    rig_free(rig);
}
END_TEST

START_TEST(a_file_changed_on_disk_is_not_saved_over)
{
    Rig *rig = rig_on_file(80, 24);
    rig_key(rig, PRESS_UP);
    meddle(rig, "start: 2 1/4", "start: 7 1/4");
    rig_key(rig, PRESS_CTRL | 's');
    assert_shows(rig, "The file has changed");
    rig_type(rig, "s");
    assert_true(file_holds(rig, "wall.yaml", "start: 7 1/4"));
    rig_key(rig, PRESS_CTRL | 's');
    rig_type(rig, "o");
    assert_true(file_holds(rig, "wall.yaml", "start: 2 5/16"));
    rig_free(rig);
}
END_TEST

START_TEST(a_file_that_is_gone_is_told_as_that)
{
    Rig *rig = rig_on_file(80, 24);
    char path[200];
    path_of(rig, "wall.yaml", path);
    assert_int_equal(unlink(path), 0);
    rig_pass(rig, 5000);
    assert_shows(rig, "The file is gone");
    rig_type(rig, "k");
    rig_key(rig, PRESS_UP);
    rig_key(rig, PRESS_CTRL | 's');
    assert_shows(rig, "The file is gone");
    rig_type(rig, "o");
    assert_true(file_holds(rig, "wall.yaml", "start: 2 5/16"));
    rig_free(rig);
}
END_TEST

/* Two copies of earlier runs: kept for later, the newer one is followed by the other, which is taken up. */
START_TEST(every_copy_is_offered_with_its_date)
{
    Rig *rig = rig_on_file(80, 24);
    char path[200], copy[300], older[310];
    path_of(rig, "wall.yaml", path);
    snprintf(copy, sizeof copy, "%s", session_recovery_path(rig->app->file->session));
    snprintf(older, sizeof older, "%s.1", copy);
    Arena *arena = arena_new();
    Errs errs = {0};
    Err err;
    Text text;
    text_init(&text);
    for (int i = 0; i < 2; i++) {
        Wall *wall = rig_wall(arena);
        wall->start = (i + 4) * LENGTH_INCH;
        text_clear(&text);
        store_write(wall, NULL, &text);
        assert_done(file_create(i == 0 ? older : copy, text.bytes, text.length, &err), &err);
        const struct timespec at[2] = {{2000000000 + i * 86400, 0}, {2000000000 + i * 86400, 0}};
        assert_int_equal(utimensat(AT_FDCWD, i == 0 ? older : copy, at, 0), 0);
    }
    text_finish(&text);
    assert_true(file_open(rig->app, path, arena, &errs));
    rig_type(rig, "");
    memory_resize(rig->term, 80, 24);
    rig_settle(rig);
    assert_shows(rig, "There are recovery copies: 1 of 2");
    assert_shows(rig, "2033-05-19");
    rig_type(rig, "k");
    assert_shows(rig, "2 of 2");
    assert_shows(rig, "2033-05-18");
    rig_type(rig, "t");
    assert_shows(rig, "Start 4");
    rig_key(rig, PRESS_CTRL | 's');
    assert_int_not_equal(access(older, F_OK), 0);
    assert_int_equal(access(copy, F_OK), 0);
    arena_free(arena);
    rig_free(rig);
}
END_TEST

START_TEST(kept_changes_are_asked_about_once)
{
    Rig *rig = rig_on_file(80, 24);
    meddle(rig, "start: 2 1/4", "start: 7 1/4");
    rig_pass(rig, 5000);
    rig_type(rig, "k");
    rig_pass(rig, 20000);
    assert_shows(rig, "Start 2 1/4");
    assert_false(rig_shows(rig, "The file on disk has changed"));
    rig_free(rig);
}
END_TEST

/* What was opened is where comments are kept from, also after a save without them. */
START_TEST(a_comment_comes_back_with_its_opening)
{
    Rig *rig = rig_on_file(80, 24);
    char path[200];
    path_of(rig, "wall.yaml", path);
    Text plain, before, after;
    text_init(&plain);
    text_init(&before);
    text_init(&after);
    Err err;
    assert_done(file_read(path, 1 << 20, &plain, &err), &err);
    const char *line = strstr(plain.bytes, "lamp outlet");
    assert_non_null(line);
    while (line[-1] != '\n')
        line--;
    const size_t blanks = strspn(line, " ");
    text_put_bytes(&before, plain.bytes, (size_t)(line - plain.bytes));
    text_put_times(&before, ' ', (int)blanks);
    text_format(&before, "# behind the lamp\n%s", line);
    assert_done(file_write_safely(path, before.bytes, before.length, &err), &err);
    rig_pass(rig, 5000);
    rig_type(rig, "r");
    rig_type(rig, "nnnx");
    rig_key(rig, PRESS_CTRL | 's');
    assert_false(file_holds(rig, "wall.yaml", "# behind the lamp"));
    rig_key(rig, PRESS_CTRL | 'z');
    rig_key(rig, PRESS_CTRL | 's');
    assert_done(file_read(path, 1 << 20, &after, &err), &err);
    assert_string_equal(after.bytes, before.bytes);
    text_finish(&plain);
    text_finish(&before);
    text_finish(&after);
    rig_free(rig);
}
END_TEST

/* In another process: opens the file, keeps a raised wall, says so by its exit from `ready`, and lives until `stop`
 * closes. Leaves its copy, as a crash would. */
static void live_elsewhere(const char *path, int ready, int stop)
{
    Arena *arena = arena_new();
    Wall *wall = rig_wall(arena);
    wall->start += LENGTH_INCH;
    Err err;
    Session *session = session_open(path, &err);
    const bool kept = session != NULL && session_locked(session) && session_keep(session, wall, NULL, &err);
    const char *copy = kept ? session_recovery_path(session) : "";
    if (write(ready, copy, strlen(copy) + 1) < 0)
        _exit(1);
    char byte;
    while (read(stop, &byte, 1) > 0)
        continue;
    _exit(0);
}

/* Another process has the file open and keeps a copy; what is said and asked here leaves that alone. */
START_TEST(a_second_editor_asks_one_thing_and_drops_nothing)
{
    Rig *rig = rig_new(80, 24);
    char path[200], copy[300] = "";
    path_of(rig, "held.yaml", path);
    Arena *arena = arena_new();
    Text text;
    text_init(&text);
    store_write(rig_wall(arena), NULL, &text);
    Err err;
    assert_done(file_create(path, text.bytes, text.length, &err), &err);
    text_finish(&text);
    int ready[2], stop[2];
    assert_int_equal(pipe(ready), 0);
    assert_int_equal(pipe(stop), 0);
    const pid_t other = fork();
    if (other == 0) {
        close(stop[1]);
        live_elsewhere(path, ready[1], stop[0]);
    }
    close(stop[0]);
    assert_true(read(ready[0], copy, sizeof copy - 1) > 1);
    Errs errs = {0};
    assert_true(file_open(rig->app, path, arena, &errs));
    rig_type(rig, "");
    memory_resize(rig->term, 80, 24);
    rig_settle(rig);
    assert_shows(rig, "This file is open in another editor");
    assert_shows(rig, "Another editor has this file open");
    assert_false(rig_shows(rig, "recovery copy"));
    rig_type(rig, "l");
    assert_shows(rig, "saved; open elsewhere");
    assert_false(rig_shows(rig, "recovery copy"));
    rig_key(rig, PRESS_UP);
    rig_pass(rig, 2100);
    rig_type(rig, "q");
    rig_type(rig, "l");
    assert_int_equal(access(copy, F_OK), 0);
    close(stop[1]);
    int status;
    assert_int_equal(waitpid(other, &status, 0), other);
    arena_free(arena);
    rig_free(rig);
}
END_TEST

START_TEST(leaving_can_save)
{
    Rig *rig = rig_on_file(80, 24);
    rig_key(rig, PRESS_UP);
    rig_type(rig, "q");
    rig_type(rig, "s");
    assert_false(rig->running);
    assert_true(file_holds(rig, "wall.yaml", "start: 2 5/16"));
    rig_free(rig);
}
END_TEST

START_TEST(a_save_that_fails_does_not_leave)
{
    Rig *rig = rig_new(80, 24);
    rig_key(rig, PRESS_UP);
    rig_type(rig, "q");
    rig_type(rig, "s"); /* no file yet: a name is asked for */
    assert_shows(rig, "Save under another name");
    rig_type(rig, "/no/such/folder/wall.yaml");
    rig_key(rig, PRESS_CTRL | 'd');
    assert_true(rig->running);
    assert_shows(rig, "Save under another name");
    char path[200];
    path_of(rig, "named.yaml", path);
    rig_key(rig, PRESS_CTRL | 'u');
    rig_type(rig, path);
    rig_key(rig, PRESS_CTRL | 'd');
    assert_true(file_holds(rig, "named.yaml", "start: 2 5/16"));
    rig_free(rig);
}
END_TEST

START_TEST(another_name_is_not_written_over_unasked)
{
    Rig *rig = rig_on_file(80, 24);
    char path[200];
    path_of(rig, "other.yaml", path);
    Err err;
    assert_done(file_create(path, "mine\n", 5, &err), &err);
    rig_type(rig, "S");
    rig_type(rig, path);
    rig_key(rig, PRESS_CTRL | 'd');
    assert_true(file_holds(rig, "other.yaml", "mine"));
    rig_key(rig, PRESS_TAB);
    rig_type(rig, "w");
    rig_key(rig, PRESS_CTRL | 'd');
    assert_true(file_holds(rig, "other.yaml", "datumrow: 1"));
    assert_shows(rig, "other.yaml, saved");
    rig_free(rig);
}
END_TEST

START_TEST(a_wall_is_begun_with_few_sizes)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "Ol");
    assert_shows(rig, "A new wall");
    rig_key(rig, PRESS_ENTER);
    const char *const answers[] = {"m", "2400", "1000", "1300", "70", "12", "2", "0", "", "200", "", "2000", "60"};
    for (size_t i = 0; i < sizeof answers / sizeof *answers; i++) {
        rig_type(rig, answers[i]);
        rig_key(rig, PRESS_ENTER);
    }
    rig_key(rig, PRESS_ENTER);
    assert_shows(rig, "2400 mm wide");
    const Wall *wall = app_wall(rig->app);
    assert_int_equal(wall->units, UNITS_MM);
    assert_int_equal(wall->planks.widths.at[0], 70 * LENGTH_MM);
    assert_int_equal(wall->stock.at[0].count, 60);
    assert_int_equal(wall->saw.kerf, 3 * LENGTH_MM); /* usual values stand where nothing else is typed */
    assert_int_equal(wall->joints.stagger, 200 * LENGTH_MM);
    assert_int_equal(wall->joints.shortest, 300 * LENGTH_MM);
    rig_free(rig);
}
END_TEST

START_TEST(a_new_wall_is_not_lost)
{
    Rig *rig = rig_new(80, 24); /* begun, never saved */
    rig_pass(rig, 2100);
    char copy[300];
    snprintf(copy, sizeof copy, "%s", session_recovery_path(rig->app->file->session));
    assert_int_equal(access(copy, F_OK), 0);
    rig_type(rig, "q");
    assert_shows(rig, "Leave with changes?");
    rig_type(rig, "t");
    /* as after a crash: the editor is gone, the copy is there */
    Text text;
    text_init(&text);
    Err err;
    assert_done(file_read(copy, 1 << 20, &text, &err), &err);
    rig_type(rig, "Ol");
    assert_shows(rig, "A new wall");
    assert_done(file_create(copy, text.bytes, text.length, &err), &err);
    text_finish(&text);
    lists_first(rig->app);
    rig_key(rig, PRESS_END);
    assert_shows(rig, "A wall that was never saved");
    rig_key(rig, PRESS_ENTER);
    assert_shows(rig, "Boathouse reading wall");
    assert_int_equal(access(session_recovery_path(rig->app->file->session), F_OK), 0);
    rig_type(rig, "q");
    assert_shows(rig, "Leave with changes?");
    rig_free(rig);
}
END_TEST

START_TEST(a_bad_new_wall_says_which_size)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "Ol");
    rig_key(rig, PRESS_ENTER);
    const char *const answers[] = {"i", "-5", "40", "50", "2 3/4", "1/2"};
    for (size_t i = 0; i < sizeof answers / sizeof *answers; i++) {
        rig_type(rig, answers[i]);
        rig_key(rig, PRESS_ENTER);
    }
    rig_key(rig, PRESS_CTRL | 'd');
    assert_shows(rig, "A new wall: heights");
    const Grid *picture = memory_picture(rig->term); /* the cursor stands on the size that is wrong */
    assert_int_equal(grid_at(picture, picture->cursor_x - 1, picture->cursor_y)->code, '5');
    rig_free(rig);
}
END_TEST

/* A length without a count is refused; emptying the length mends that, wherever it was said. */
START_TEST(boards_of_a_new_wall_are_all_or_none)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "Ol");
    rig_key(rig, PRESS_ENTER);
    const char *const answers[] = {"i", "96", "40", "50", "2 3/4", "1/2", "1/16", "0", "", "", "", "40"};
    for (size_t i = 0; i < sizeof answers / sizeof *answers; i++) {
        rig_type(rig, answers[i]);
        rig_key(rig, PRESS_ENTER);
    }
    rig_key(rig, PRESS_CTRL | 'd');
    assert_shows(rig, "say how many boards of that length there are");
    rig_key(rig, PRESS_UP);
    rig_key(rig, PRESS_CTRL | 'u');
    rig_key(rig, PRESS_DOWN);
    rig_type(rig, "12");
    rig_key(rig, PRESS_CTRL | 'd');
    assert_shows(rig, "say how long those boards are");
    rig_key(rig, PRESS_DOWN);
    rig_key(rig, PRESS_CTRL | 'u');
    rig_key(rig, PRESS_CTRL | 'd');
    assert_shows(rig, "96 in wide");
    assert_int_equal(app_wall(rig->app)->stock.count, 0);
    rig_free(rig);
}
END_TEST

/* Slices between keys end in the very plan that the commands print. */
START_TEST(slices_end_in_the_plan_of_the_commands)
{
    Rig *rig = rig_on_file(80, 24);
    rig_keys(rig, PRESS_UP, 3);
    rig_settle(rig);
    assert_true(rig->app->work.filled);
    Arena *arena = arena_new();
    Text sliced, whole;
    text_init(&sliced);
    text_init(&whole);
    Err err;
    const Job *job = job_of_wall(arena, app_wall(rig->app), "", "", &err);
    assert_non_null(job);
    plan_write(work_job(&rig->app->work), &sliced);
    plan_write(job, &whole);
    assert_string_equal(sliced.bytes, whole.bytes);
    text_finish(&sliced);
    text_finish(&whole);
    arena_free(arena);
    rig_free(rig);
}
END_TEST

START_TEST(a_sheet_goes_to_a_file)
{
    Rig *rig = rig_on_file(80, 24);
    rig_type(rig, "p");
    assert_shows(rig, "Print a sheet");
    rig_key(rig, PRESS_TAB);
    rig_type(rig, "t");
    rig_key(rig, PRESS_CTRL | 'd');
    assert_shows(rig, "All sheets are in");
    assert_true(file_holds(rig, "wall-all.txt", "Boathouse reading wall"));
    rig_type(rig, "p"); /* a second time it is there already */
    rig_key(rig, PRESS_TAB);
    rig_type(rig, "t");
    rig_key(rig, PRESS_CTRL | 'd');
    assert_shows(rig, "Print a sheet");
    rig_free(rig);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        control_s_saves_at_once,
        a_form_is_taken_before_it_is_saved,
        the_recovery_copy_comes_after_two_seconds,
        what_is_undone_needs_no_copy,
        asked_to_stop_it_keeps_and_says_where,
        where_no_copy_can_be_kept_it_says_so_to_the_end,
        a_terminal_that_is_gone_ends_it,
        a_file_changed_on_disk_is_noticed,
        a_file_changed_on_disk_is_not_saved_over,
        a_file_that_is_gone_is_told_as_that,
        every_copy_is_offered_with_its_date,
        kept_changes_are_asked_about_once,
        a_comment_comes_back_with_its_opening,
        a_second_editor_asks_one_thing_and_drops_nothing,
        leaving_can_save,
        a_save_that_fails_does_not_leave,
        another_name_is_not_written_over_unasked,
        a_wall_is_begun_with_few_sizes,
        a_new_wall_is_not_lost,
        a_bad_new_wall_says_which_size,
        boards_of_a_new_wall_are_all_or_none,
        slices_end_in_the_plan_of_the_commands,
        a_sheet_goes_to_a_file,
    };
    return RUN(tests);
}
