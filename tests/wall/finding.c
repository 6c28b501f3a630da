/* Findings in the order of the plan, faults first. */
#include "support/test.h"

#include "base/random.h"
#include "wall/finding.h"

#include <string.h>

static void add(Arena *arena, Findings *findings, Finding finding, const char *text)
{
    finding.text = text;
    *arena_push(arena, findings) = finding;
}

/* By rule, face, course, place, opening, board, piece; what has no course or place before what has one; then as added.
 */
START_TEST(the_order_of_the_plan)
{
    Arena *arena = arena_new();
    Findings findings = {0};
    const Finding sliver = finding_of(RULE_SLIVER);
    Finding on_face = sliver;
    on_face.face = 1;
    Finding course = on_face;
    course.has_course = true;
    course.course = -3;
    Finding higher = course;
    higher.course = 2;
    Finding at = course;
    at.has_at = true;
    at.at = -5;
    Finding further = at;
    further.at = 7;
    Finding stud = finding_of(RULE_STUD);
    stud.face = 9;
    Finding opening = further;
    opening.opening = 2;
    Finding board = opening;
    board.board = 3;
    Finding piece = board;
    piece.piece = 8;
    add(arena, &findings, piece, "k");
    add(arena, &findings, board, "j");
    add(arena, &findings, opening, "i");
    add(arena, &findings, finding_of(RULE_CARE), "b");
    add(arena, &findings, higher, "l");
    add(arena, &findings, further, "h");
    add(arena, &findings, course, "f");
    add(arena, &findings, sliver, "d");
    add(arena, &findings, at, "g");
    add(arena, &findings, finding_of(RULE_PLATE), "m");
    add(arena, &findings, on_face, "e");
    add(arena, &findings, stud, "a");
    assert_int_equal(findings_of(&findings, GRADE_FAULT), 1);
    add(arena, &findings, finding_of(RULE_FIRE), "A");
    findings_sort(&findings);
    assert_int_equal(findings_of(&findings, GRADE_HAZARD), 2);
    assert_int_equal(findings_of(&findings, GRADE_CAUTION), findings.count - 3);
    const Findings read = findings_read(arena, &findings);
    assert_int_equal(read.count, findings.count);
    for (int i = 0; i < findings.count; i++) {
        assert_int_equal(findings.at[i].text[0], "aAbdefghijklm"[i]);
        assert_int_equal(read.at[i].text[0], "Abadefghijklm"[i]); /* hazards lead */
    }
    arena_free(arena);
}
END_TEST

/* Of one rule and face, those of one lead stand where the first of them does. */
START_TEST(what_shares_a_lead_is_read_together)
{
    static const char *const leads[] = {"x", NULL, "y", "x", NULL, "y", "x"};
    Arena *arena = arena_new();
    Findings findings = {0};
    for (int i = 0; i < 7; i++) {
        Finding finding = finding_of(RULE_ANCHOR);
        finding.face = i == 6;
        finding.lead = leads[i];
        finding.text = (const char *[]){"a", "b", "c", "d", "e", "f", "g"}[i];
        *arena_push(arena, &findings) = finding;
    }
    const Findings read = findings_read(arena, &findings);
    assert_int_equal(read.count, 7);
    for (int i = 0; i < 7; i++)
        assert_int_equal(read.at[i].text[0], "adbcfeg"[i]);
    arena_free(arena);
}
END_TEST

START_TEST(equal_ones_stay_as_added)
{
    for (int count = 0; count < 70; count++) {
        Arena *arena = arena_new();
        Findings findings = {0};
        Random random = {(uint64_t)count};
        char(*texts)[4] = arena_array_bytes(arena, 70, sizeof *texts);
        for (int i = 0; i < count; i++) {
            Finding finding = finding_of((Rule)random_below(&random, 3));
            finding.board = (int)random_below(&random, 2);
            texts[i][0] = (char)(i + 1);
            add(arena, &findings, finding, texts[i]);
        }
        findings_sort(&findings);
        assert_int_equal(findings.count, count);
        for (int i = 1; i < count; i++) {
            const Finding *before = &findings.at[i - 1];
            const Finding *finding = &findings.at[i];
            assert_true(before->rule <= finding->rule);
            if (before->rule == finding->rule)
                assert_true(before->board <= finding->board);
            if (before->rule == finding->rule && before->board == finding->board)
                assert_true(before->text[0] < finding->text[0]);
        }
        arena_free(arena);
    }
}
END_TEST

/* "Faults: ...; Hazards: ...; Cautions: ..., then others that the trade needs, by name in byte order." */
START_TEST(each_rule_has_its_word_and_grade)
{
    static const char *const named[] = {
        "stagger", "shortest", "stud", "stock",   "crossing", "hung",  "corner", "missing", "fire",   "box",   "wire",
        "care",    "sliver",   "stub", "shallow", "kerf",     "plate", "nail",   "season",  "anchor", "range", "bound"};
    enum { NAMED = sizeof named / sizeof *named, FAULTS = 8, HAZARDS = 4 };
    for (int i = 0; i < (int)RULE_COUNT; i++) {
        const Grade grade = i < FAULTS ? GRADE_FAULT : i < FAULTS + HAZARDS ? GRADE_HAZARD : GRADE_CAUTION;
        assert_int_equal(rule_grade((Rule)i), grade);
        if (i < NAMED)
            assert_string_equal(rule_word((Rule)i), named[i]);
        else if (i > NAMED)
            assert_true(strcmp(rule_word((Rule)(i - 1)), rule_word((Rule)i)) < 0);
        for (int k = 0; k < i; k++)
            assert_string_not_equal(rule_word((Rule)i), rule_word((Rule)k));
    }
    assert_string_equal(grade_word(GRADE_FAULT), "fault");
    assert_string_equal(grade_word(GRADE_HAZARD), "hazard");
    assert_string_equal(grade_word(GRADE_CAUTION), "caution");
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        the_order_of_the_plan,
        what_shares_a_lead_is_read_together,
        equal_ones_stay_as_added,
        each_rule_has_its_word_and_grade,
    };
    return RUN(tests);
}
