/* What is read at a glance says what sheets and findings say. */
#include "support/test.h"

#include "rig.h"
#include "trade/bill.h"
#include "trade/season.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/* The words of a text in order, whatever lines they were folded into and whatever frames stand between. */
static bool shows_in_order(const Rig *rig, const char *text)
{
    const char *at = rig->picture.bytes;
    char word[120];
    while (*text != '\0') {
        size_t length = strcspn(text, " \u00a0");
        if (length > 0 && length < sizeof word) {
            memcpy(word, text, length);
            word[length] = '\0';
            at = strstr(at, word);
            if (at == NULL)
                return false;
            at += length;
        }
        text += length;
        text += strspn(text, " \u00a0");
    }
    return true;
}

static void set_wood(Rig *rig)
{
    char species[] = "pine, eastern white";
    Wood wood = {.given = true,
                 .species = species,
                 .hung = {68000, false, 45000},
                 .dry = {70000, false, 25000},
                 .damp = {75000, false, 65000}};
    Err err;
    assert_done(edit_wood(rig->app->document, &wood, &err), &err);
}

START_TEST(seasons_are_those_of_the_trade)
{
    Rig *rig = rig_new(100, 60);
    rig_type(rig, "y");
    assert_shows(rig, "does not say what wood");
    rig_key(rig, PRESS_ESCAPE);
    set_wood(rig);
    rig_type(rig, "y");
    Seasons seasons = season_of_wall(document_wall(rig->app->document));
    assert_true(seasons.given);
    const Season *times[3] = {&seasons.hung, &seasons.dry, &seasons.damp};
    for (int i = 0; i < 3; i++) {
        char moisture[40];
        snprintf(moisture, sizeof moisture, "moisture %" PRId64 ".%02" PRId64 " %%", times[i]->moisture / 100,
                 times[i]->moisture % 100);
        assert_shows(rig, moisture);
    }
    rig_free(rig);
}
END_TEST

START_TEST(every_line_of_the_bill_is_there)
{
    Rig *rig = rig_new(100, 70);
    rig_type(rig, "y");
    Arena *arena = arena_new();
    Work *work = app_work(rig->app);
    BillLines bill = bill_lines(arena, work->layout, fill_plan(work->fill));
    assert_in_range(bill.count, 3, 1000);
    for (int i = 0; i < bill.count; i++) {
        char amount[80];
        snprintf(amount, sizeof amount, " %s %s", bill_amount(arena, &bill.at[i]), bill.at[i].unit);
        assert_shows(rig, amount);
        assert_true(shows_in_order(rig, bill.at[i].what));
    }
    arena_free(arena);
    rig_free(rig);
}
END_TEST

START_TEST(cautions_stand_in_full)
{
    Rig *rig = rig_new(90, 24);
    memory_resize(rig->term, 100, 200);
    rig_type(rig, "c");
    const Findings *findings = &work_job(app_work(rig->app))->findings;
    assert_in_range(findings->count, 1, 1000);
    for (int i = 0; i < findings->count; i++) {
        const Finding *finding = &findings->at[i];
        if (finding->lead == NULL) {
            assert_true(shows_in_order(rig, finding->text + 1)); /* its first letter may be made a capital */
        } else if (!shows_in_order(rig, finding->text + 1)) {
            assert_true(shows_in_order(rig, finding->lead));
            assert_true(shows_in_order(rig, finding->item));
        }
    }
    assert_true(shows_in_order(rig, "No warning does not mean it is safe."));
    rig_free(rig);
}
END_TEST

START_TEST(what_is_long_is_scrolled_to_its_end)
{
    Rig *rig = rig_new(60, 18);
    rig_type(rig, "c");
    assert_shows(rig, "1 to 10 of ");
    rig_key(rig, PRESS_END);
    assert_shows(rig, "No warning does not mean it is safe.");
    rig_key(rig, PRESS_HOME);
    assert_shows(rig, "1 to 10 of ");
    rig_key(rig, PRESS_DOWN);
    assert_shows(rig, "2 to 11 of ");
    rig_key(rig, PRESS_UP);
    rig_key(rig, PRESS_UP);
    assert_shows(rig, "1 to 10 of ");
    rig_type(rig, "q");
    assert_int_equal(rig->app->layers.depth, 1);
    rig_free(rig);
}
END_TEST

START_TEST(every_size_is_survived)
{
    static const int sizes[][2] = {{1, 1}, {20, 6}, {60, 18}, {80, 24}, {140, 50}};
    for (const char *key = "yc"; *key != '\0'; key++) {
        Rig *rig = rig_new(80, 24);
        rig_type(rig, (char[]){*key, '\0'});
        for (int i = 0; i < 5; i++) {
            memory_resize(rig->term, sizes[i][0], sizes[i][1]);
            rig_type(rig, " jjk");
            assert_int_equal(rig->app->layers.depth, 2);
        }
        rig_free(rig);
    }
}
END_TEST

/* A broken invariant of our own in what is worked out: it is told like a wall that cannot be laid out, and the next
 * change is worked out as ever. */
START_TEST(an_error_of_ours_is_told_and_work_goes_on)
{
    Rig *rig = rig_new(100, 30);
    Arena *arena = arena_new();
    Wall *broken = wall_copy(arena, document_wall(rig->app->document));
    broken->planks.widths.count = 0; /* which no check lets through */
    Work work;
    work_init(&work);
    assert_false(work_begin(&work, broken, 1));
    assert_null(work.layout);
    assert_holds(work.err.text, "an error in datumrow (layout.c:");
    assert_holds(work.err.text, "Your entries are kept");
    assert_null(work_job(&work));
    assert_false(work_slice(&work, 1000));
    assert_true(work_begin(&work, document_wall(rig->app->document), 2));
    work_complete(&work);
    assert_non_null(work_job(&work));
    work_finish(&work);
    arena_free(arena);
    rig_free(rig);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        seasons_are_those_of_the_trade,      every_line_of_the_bill_is_there, cautions_stand_in_full,
        what_is_long_is_scrolled_to_its_end, every_size_is_survived,          an_error_of_ours_is_told_and_work_goes_on,
    };
    return RUN(tests);
}
