/* `check` as it reads in a window. */
#include "support/test.h"

#include <string.h>

#include "base/utf8.h"
#include "command/check_list.h"

static Job job_of(Arena *arena)
{
    Wall *wall = wall_new(arena, UNITS_IN);
    wall->round = LENGTH_INCH / 16;
    wall->title = arena_text(arena, "Boathouse porch", 15);
    for (int i = 0; i < 2; i++) {
        Face *face = arena_push(arena, &wall->faces);
        face->name = i == 0 ? arena_text(arena, "north", 5) : arena_text(arena, "east", 4);
    }
    Job job = {.wall = wall};
    Finding stagger = finding_of(RULE_STAGGER);
    stagger.face = 1;
    stagger.has_course = true;
    stagger.course = -3;
    stagger.piece = 12;
    stagger.has_at = true;
    stagger.at = LENGTH_INCH * 93 / 2;
    stagger.text = "this joint is 2 in from the one in the course below; the rule asks for 6 in.";
    *arena_push(arena, &job.findings) = stagger;
    for (int i = 0; i < 2; i++) {
        Finding anchor = finding_of(RULE_ANCHOR);
        anchor.face = 0;
        anchor.text = "unused";
        anchor.lead = "No stud stands behind these pieces:";
        anchor.item = i == 0 ? "piece 17 (course 5)" : "piece 20 (course 5)";
        *arena_push(arena, &job.findings) = anchor;
    }
    Finding care = finding_of(RULE_CARE);
    care.text = "Dust: Wood dust harms lungs.";
    *arena_push(arena, &job.findings) = care;
    findings_sort(&job.findings);
    job.read = findings_read(arena, &job.findings);
    return job;
}

static const char *list_of(Arena *arena, const Job *job, int columns)
{
    Text text;
    text_init(&text);
    check_list_write(job, columns, &text);
    char *copy = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return copy;
}

START_TEST(by_kind_with_the_place_first)
{
    Arena *arena = arena_new();
    Job job = job_of(arena);
    assert_string_equal(list_of(arena, &job, 80),
                        "Boathouse porch: 1 hazard, 1 of them on any such job, 1 fault, 2 cautions.\n"
                        "\n"
                        "Care, on any such job\n"
                        "  Dust  Wood dust harms lungs.\n"
                        "\n"
                        "Fault: stagger (1)\n"
                        "  east, course -3, piece 12,  This joint is 2 in from the one in the course\n"
                        "  at 46 1/2                   below; the rule asks for 6 in.\n"
                        "\n"
                        "Caution: anchor (2)\n"
                        "  north  No stud stands behind these pieces: piece 17 (course 5); piece 20\n"
                        "         (course 5).\n");
    arena_free(arena);
}
END_TEST

START_TEST(every_window_holds_its_lines)
{
    Arena *arena = arena_new();
    Job job = job_of(arena);
    for (int columns = 1; columns <= 300; columns += columns < 110 ? 1 : 50) {
        int most = columns < CHECK_LIST_LEAST ? CHECK_LIST_LEAST : columns;
        most = most > CHECK_LIST_MOST ? CHECK_LIST_MOST : most;
        const char *list = list_of(arena, &job, columns);
        int words = 0;
        for (const char *line = list; *line != '\0'; line += strcspn(line, "\n") + 1) {
            const char *one = arena_text(arena, line, strcspn(line, "\n"));
            assert_in_range(utf8_cells(one), 0, most);
            assert_true(one[0] == '\0' || one[strlen(one) - 1] != ' ');
            words += strstr(one, "6 in.") != NULL || strstr(one, "lungs.") != NULL;
        }
        assert_int_equal(words, 2);
    }
    arena_free(arena);
}
END_TEST

START_TEST(nothing_found_is_no_clearance)
{
    Arena *arena = arena_new();
    Job job = job_of(arena);
    job.findings = job.read = (Findings){0};
    assert_holds(list_of(arena, &job, 80), "0 hazards, 0 faults, 0 cautions.\nThese checks found nothing.");
    arena_free(arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        by_kind_with_the_place_first,
        every_window_holds_its_lines,
        nothing_found_is_no_clearance,
    };
    return RUN(tests);
}
