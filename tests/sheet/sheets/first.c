/* The first page, and all sheets in one: a face 1000 mm wide, planks of 100 mm. */
#include "layout/made.h"

#include "sheet/plan_number.h"
#include "sheet/shown.h"

static void put_stock(Made *made, Stock stock)
{
    if (stock.label == NULL)
        stock.label = "";
    if (stock.tone == NULL)
        stock.tone = "";
    *(Stock *)arena_push(made->arena, &made->wall->stock) = stock;
}

static Made wall_of(void)
{
    Made made = made_new(UNITS_MM, MM(100), MM(10), 0);
    made_face(&made, "north", MM(1000), 0, MM(210));
    put_stock(&made, (Stock){.length = MM(1100), .count = 3, .tone = "gray"});
    put_stock(&made, (Stock){.length = MM(1200), .count = 1, .label = "A7", .width_given = true, .width = MM(120)});
    return made;
}

START_TEST(it_says_what_to_know_before_the_first_cut)
{
    Made made = wall_of();
    const Job *job = shown_job(made.arena, made_layout(&made));
    const char *text = shown(sheet_first(made.arena, job, ""));
    assert_holds(text, plan_number(made.arena, job));
    assert_holds(text, "Throw out sheets with another number.");
    assert_holds(text, "[ ] Hang by the row sheet: the faces in their order, on each course 0 first");
    assert_holds(text, "spacers of 10 mm for");
    assert_holds(text, "         1-3 1100 gray, 3 alike");
    assert_holds(text, "           4 1200, 120 wide, label");
    assert_holds(text, "Hazards, faults and cautions");
    assert_holds(text, "Care, on any such job");
    assert_lacks(text, "Faces in hanging order"); /* one face alone */
    assert_lacks(text, "The last event");
    assert_lacks(text, "Mill the rough boards");
    assert_lacks(text, "taper jig");
    arena_free(made.arena);
}
END_TEST

START_TEST(faces_stand_in_hanging_order)
{
    Made made = wall_of();
    made.wall->faces.at[0].corner = (Corner){.kind = CORNER_INSIDE, .through = THROUGH_RIGHT};
    made_face(&made, "east", MM(1000), 0, MM(210));
    const char *text = shown(sheet_first(made.arena, shown_job(made.arena, made_layout(&made)), ""));
    const char *east = strstr(text, "[ ] east: "), *north = strstr(text, "[ ] north: ");
    assert_non_null(east);
    assert_true(east < north);
    arena_free(made.arena);
}
END_TEST

/* What the last event changed, as the plan has it. */
START_TEST(it_tells_what_changed)
{
    Made made = wall_of();
    Job job = *shown_job(made.arena, made_layout(&made));
    Plan plan = *job.plan;
    int changed[] = {2, 5};
    plan.changed = changed;
    plan.changed_count = 2;
    job.plan = &plan;
    assert_holds(shown(sheet_first(made.arena, &job, "")), "The last event changed pieces 2, 5.");
    arena_free(made.arena);
}
END_TEST

/* All sheets: each kind in its page heads, under one plan number, every hazard once. */
START_TEST(all_sheets_are_in_one)
{
    Made made = wall_of();
    const Job *job = shown_job(made.arena, made_layout(&made));
    const char *text = shown(sheet_all(made.arena, job, ""));
    static const char *const kinds[] = {"First page\n",  "Elevation\n",  "Row sheet\n",    "Cut sheet\n",
                                        "Batch sheet\n", "Story pole\n", "Nailing page\n", "Materials\n"};
    const char *last = text;
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        const char *at = strstr(text, kinds[i]);
        assert_non_null(at);
        assert_true(at > last);
        last = at;
    }
    assert_int_equal(shown_times(text, "Care, on any such job"), 1);
    assert_holds(text, "Read the hazards first: they stand on the first page.");
    assert_lacks(text, "they stand on the last page");
    assert_lacks(text, "Mill sheet");
    const int pages = shown_times(text, "\f") + 1;
    assert_int_equal(shown_times(text, " Plan "), pages);
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        it_says_what_to_know_before_the_first_cut,
        faces_stand_in_hanging_order,
        it_tells_what_changed,
        all_sheets_are_in_one,
    };
    return RUN(tests);
}
