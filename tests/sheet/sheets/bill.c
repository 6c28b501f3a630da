/* How the bill's lines stand on paper and in the data; the figures themselves are tests/trade's and tests/command's. */
#include "layout/made.h"

#include "sheet/shown.h"
#include "trade/bill.h"

/* Two lines of boards; a course of 1 m in five rows. */
static Made bench_new(void)
{
    Made made = made_new(UNITS_MM, MM(100), MM(2), 0);
    made_face(&made, "north", MM(1000), 0, MM(508));
    *arena_push(made.arena, &made.wall->stock) = (Stock){.length = MM(1000), .count = 3, .label = "", .tone = ""};
    *arena_push(made.arena, &made.wall->stock) = (Stock){.length = MM(1200), .count = 9, .label = "", .tone = ""};
    return made;
}

START_TEST(a_record_for_each_line)
{
    Made made = bench_new();
    const Job *job = shown_job(made.arena, made_layout(&made));
    const Sheet *sheet = sheet_bill(made.arena, job, "");
    BillLines lines = bill_lines(made.arena, job->layout, job->plan);
    assert_int_equal(sheet->records.count, lines.count);
    for (int i = 0; i < lines.count; i++) {
        assert_string_equal(shown_field(sheet, i, "group"), bill_group_words(lines.at[i].group));
        assert_string_equal(shown_field(sheet, i, "what"), lines.at[i].what);
        assert_string_equal(shown_field(sheet, i, "amount"), bill_amount(made.arena, &lines.at[i]));
        assert_string_equal(shown_field(sheet, i, "unit"), lines.at[i].unit);
        assert_string_equal(shown_field(sheet, i, "assumes"), lines.at[i].assumes);
        assert_string_equal(shown_field(sheet, i, "source"), lines.at[i].source);
    }
    int courses = shown_record(sheet, "what", "courses on all faces");
    assert_string_equal(shown_field(sheet, courses, "amount"), "5");
    assert_string_equal(shown_field(sheet, shown_record(sheet, "what", "net area"), "amount"), "0.5");
    arena_free(made.arena);
}
END_TEST

/* A group's name stands once; what two lines in a row assume alike is said at the first. */
START_TEST(groups_and_assumptions_are_said_once)
{
    Made made = bench_new();
    const Sheet *sheet = sheet_bill(made.arena, shown_job(made.arena, made_layout(&made)), "");
    const char *text = shown(sheet);
    assert_int_equal(shown_times(text, "\nPlanks\n"), 1);
    assert_int_equal(shown_times(text, "\nFinish\n"), 1);
    int boards = shown_record(sheet, "what", "boards in all"), next = boards + 1;
    assert_string_equal(shown_field(sheet, boards, "assumes"), shown_field(sheet, next, "assumes"));
    const char *first = strstr(text, "boards in all"), *second = strstr(text, "running length");
    const char *spare = strstr(text, "10 % spare (bill.spare)");
    assert_non_null(first);
    assert_non_null(second);
    assert_true(first < spare && spare < second);
    const char *after = strstr(second, "running length of the pieces");
    assert_true(strstr(second, "10 % spare") == NULL || strstr(second, "10 % spare") > after);
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {a_record_for_each_line, groups_and_assumptions_are_said_once};
    return RUN(tests);
}
