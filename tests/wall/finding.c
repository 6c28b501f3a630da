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

/* By rule, face, course, place, opening, board; what has no course or place before what has one; then as added. */
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
    add(arena, &findings, finding_of(RULE_CARE), "i");
    add(arena, &findings, higher, "g");
    add(arena, &findings, further, "f");
    add(arena, &findings, course, "d");
    add(arena, &findings, sliver, "b");
    add(arena, &findings, at, "e");
    add(arena, &findings, finding_of(RULE_PLATE), "h");
    add(arena, &findings, on_face, "c");
    add(arena, &findings, stud, "a");
    assert_int_equal(findings_faults(&findings), 1);
    findings_sort(&findings);
    for (int i = 0; i < findings.count; i++)
        assert_int_equal(findings.at[i].text[0], "abcdefghi"[i]);
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

START_TEST(each_rule_has_its_word)
{
    for (int i = 0; i < (int)RULE_COUNT; i++) {
        assert_true(strlen(rule_word((Rule)i)) > 2);
        for (int k = 0; k < i; k++)
            assert_string_not_equal(rule_word((Rule)i), rule_word((Rule)k));
        if (i > 0) /* faults first, then cautions */
            assert_true(rule_grade((Rule)(i - 1)) <= rule_grade((Rule)i));
    }
    assert_string_equal(rule_word(RULE_STAGGER), "stagger");
    assert_int_equal(rule_grade(RULE_CORNER), GRADE_FAULT);
    assert_string_equal(rule_word(RULE_MISSING), "missing");
    assert_int_equal(rule_grade(RULE_MISSING), GRADE_FAULT);
    assert_int_equal(rule_grade(RULE_SLIVER), GRADE_CAUTION);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        the_order_of_the_plan,
        equal_ones_stay_as_added,
        each_rule_has_its_word,
    };
    return RUN(tests);
}
