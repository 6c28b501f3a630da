/* Every sample, and every wall of the goldens, piece by piece from the file: the plan that is printed stays the same
 * from the first piece recorded to the last. */
#include "support/test.h"

#include <glob.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "sheet/writers/plan.h"
#include "store/store.h"
#include "trade/asbuilt.h"

enum { STOPS = 5 };

/* Whether the line tells of work that is done once the piece hangs, or that the plan was made anew. */
static bool passes(const char *line)
{
    static const char *const passing[] = {"- {rule: anew,", "- {rule: stub,", "- {rule: shallow,", "- {rule: show,",
                                          "- {rule: care, grade: hazard, text: \"Short pieces:"};
    for (int i = 0; i < (int)(sizeof passing / sizeof *passing); i++)
        if (strncmp(line, passing[i], strlen(passing[i])) == 0)
            return true;
    return false;
}

/* The plan as it is printed, less `starts`, which is empty while anything hangs, and what passes. */
static void print_plan(const Job *job, Text *out)
{
    text_clear(out);
    Text whole;
    text_init(&whole);
    plan_write(job, &whole);
    const char *starts = strstr(whole.bytes, "\nstarts:");
    assert_non_null(starts);
    const char *behind = strstr(starts, "\nseasons:");
    if (behind == NULL)
        behind = strstr(starts, "\nwarnings:");
    assert_non_null(behind);
    text_put_bytes(out, whole.bytes, (size_t)(starts - whole.bytes));
    for (const char *line = behind + 1; *line != '\0';) {
        const char *next = strchr(line, '\n') + 1;
        if (!passes(line))
            text_put_bytes(out, line, (size_t)(next - line));
        line = next;
    }
    text_finish(&whole);
}

/* As the file is written with what hangs, and read again. */
static const Job *job_of_file(Arena *arena, const Wall *wall, const Source *source)
{
    Text file;
    text_init(&file);
    store_write(wall, source, &file);
    Source again = {0};
    Errs errs = {0};
    if (!store_parse(arena, "again", file.bytes, file.length, &again, &errs))
        FAIL("%s: %s", errs.at[0].place, errs.at[0].text);
    text_finish(&file);
    assert_true(wall_equal(wall, again.wall));
    Err err = {0};
    const Job *job = job_of_wall(arena, again.wall, "", "", &err);
    if (job == NULL)
        FAIL("%s", err.text);
    return job;
}

static void check_wall(const char *path)
{
    Arena *arena = arena_new();
    Source source = {0};
    Errs errs = {0};
    Err err = {0};
    if (!store_read(arena, path, &source, &errs))
        FAIL("%s: %s", errs.at[0].place, errs.at[0].text);
    Wall *wall = wall_copy(arena, source.wall);
    const Job *job = job_of_wall(arena, wall_copy(arena, wall), "", "", &err);
    if (job == NULL)
        FAIL("%s: %s", path, err.text);
    Text before, after;
    text_init(&before);
    text_init(&after);
    print_plan(job, &before);
    const Plan *plan = job->plan;
    const int count = plan->piece_count;
    const int stops[STOPS] = {1, 2, count / 3, count - 1, count};
    for (int i = 0, next = 0; i < STOPS; i++) {
        for (; next < stops[i]; next++) {
            if (plan->pieces[next].hung)
                continue;
            HungPiece record = asbuilt_record(job->layout, &plan->pieces[next]);
            record.place = hung_next_place(wall);
            *arena_push(arena, &wall->hung_pieces) = record;
        }
        const Job *now = job_of_file(arena, wall, &source);
        print_plan(now, &after);
        if (strcmp(before.bytes, after.bytes) != 0)
            FAIL("%s: with %d of %d hung the plan is another one", path, next, count);
        for (int j = 0; j < count; j++)
            assert_int_equal(now->plan->pieces[j].hung, j < next || plan->pieces[j].hung);
    }
    text_finish(&before);
    text_finish(&after);
    arena_free(arena);
}

START_TEST(every_plan_stays_while_it_is_hung)
{
    const char *source = getenv("DATUMROW_SOURCE");
    static const char *const folders[] = {"samples/*.yaml", "tests/walls/*.wall.yaml"};
    assert_non_null(source);
    for (int i = 0; i < 2; i++) {
        char pattern[4096];
        glob_t found;
        snprintf(pattern, sizeof pattern, "%s/%s", source, folders[i]);
        assert_int_equal(glob(pattern, 0, NULL, &found), 0);
        for (size_t j = 0; j < found.gl_pathc; j++)
            check_wall(found.gl_pathv[j]);
        globfree(&found);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        every_plan_stays_while_it_is_hung,
    };
    return RUN(tests);
}
