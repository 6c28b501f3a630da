/* The number that sheets of one plan carry. */
#include "layout/made.h"

#include "job/words.h"
#include "sheet/plan_number.h"
#include "sheet/shown.h"

static Made wall_of(void)
{
    Made made = made_new(UNITS_MM, MM(100), MM(10), 0);
    made_face(&made, "north", MM(1000), 0, MM(210));
    Stock *stock = arena_push(made.arena, &made.wall->stock);
    *stock = (Stock){.length = MM(1100), .count = 4};
    stock->label = stock->tone = arena_text(made.arena, "", 0);
    return made;
}

static const char *number_of(Made *made)
{
    return plan_number(made->arena, shown_job(made->arena, made_layout(made)));
}

START_TEST(every_sheet_carries_it)
{
    Made made = wall_of();
    const Job *job = shown_job(made.arena, made_layout(&made));
    const char *head = words(made.arena, "Plan %s ", plan_number(made.arena, job));
    const char *const texts[] = {shown(sheet_rows(made.arena, job, "")), shown(sheet_cuts(made.arena, job, "")),
                                 shown(sheet_batch(made.arena, job, "")), shown(sheet_pole(made.arena, job, ""))};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
        assert_holds(texts[i], head);
    assert_int_equal(strlen(head), strlen("Plan 12345 "));
    arena_free(made.arena);
}
END_TEST

/* What does not reach the paper keeps it; what moves a mark, a piece or a cutout does not. */
START_TEST(what_reaches_the_paper_changes_it)
{
    Made made = wall_of();
    const char *before = number_of(&made);
    assert_string_equal(number_of(&made), before);
    made.wall->stock.at[0].count = 5; /* a board that stays shut */
    assert_string_equal(number_of(&made), before);
    made.wall->start = MM(1);
    const char *raised = number_of(&made);
    assert_string_not_equal(raised, before);
    made.wall->start = 0;
    assert_string_equal(number_of(&made), before);
    Opening *box = made_opening(&made, &made.wall->faces.at[0], "box", MM(300), MM(20), MM(50), MM(50));
    const char *with_box = number_of(&made);
    assert_string_not_equal(with_box, before);
    box->left = MM(310);
    assert_string_not_equal(number_of(&made), with_box);
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        every_sheet_carries_it,
        what_reaches_the_paper_changes_it,
    };
    return RUN(tests);
}
