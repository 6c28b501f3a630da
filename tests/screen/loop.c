/* Keys fed to the real loop: what a person presses, and what is then to be seen. */
#include "support/test.h"

#include "rig.h"
#include "screen/forms/file.h"
#include "screen/forms/question.h"

#include <stdio.h>
#include <string.h>

START_TEST(up_nudges_at_once)
{
    Rig *rig = rig_new(80, 24);
    assert_shows(rig, "Start 2 1/4");
    char before[400];
    snprintf(before, sizeof before, "%.390s", rig->picture.bytes);
    rig_key(rig, PRESS_UP);
    assert_shows(rig, "Start 2 5/16");
    assert_int_not_equal(strncmp(before, rig->picture.bytes, strlen(before)), 0);
    rig_key(rig, PRESS_SHIFT | PRESS_UP);
    assert_shows(rig, "Start 2 13/16");
    rig_type(rig, "[[");
    assert_shows(rig, "Start 1 13/16");
    rig_key(rig, PRESS_DOWN);
    assert_shows(rig, "Start 1 3/4");
    rig_free(rig);
}
END_TEST

START_TEST(the_counts_are_in_sight)
{
    const int widths[] = {60, 80, 120};
    for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
        Rig *rig = rig_new(widths[i], 24);
        const Job *job = work_job(app_work(rig->app));
        char words[80];
        snprintf(words, sizeof words, "%d courses", job->layout->course_total);
        assert_shows(rig, words);
        snprintf(words, sizeof words, "%d pieces", job->plan->piece_count);
        assert_shows(rig, words);
        snprintf(words, sizeof words, "%d%s%d boards", job->plan->boards_opened, widths[i] < 120 ? "/" : " of ",
                 job->plan->board_count);
        assert_shows(rig, words);
        assert_int_equal(rig_shows(rig, "no faults"), widths[i] == 120);
        assert_shows(rig, "hazards");
        assert_shows(rig, "caution");
        rig_free(rig);
    }
}
END_TEST

START_TEST(a_run_of_nudges_is_one_step_back)
{
    Rig *rig = rig_new(80, 24);
    rig_keys(rig, PRESS_UP, 9);
    assert_shows(rig, "Start 2 13/16");
    rig_key(rig, PRESS_CTRL | 'z');
    assert_shows(rig, "Start 2 1/4");
    assert_shows(rig, "Undone: ");
    rig_key(rig, PRESS_CTRL | 'z');
    assert_shows(rig, "Nothing to undo.");
    rig_key(rig, PRESS_CTRL | 'y');
    assert_shows(rig, "Start 2 13/16");
    assert_shows(rig, "Done again: ");
    rig_free(rig);
}
END_TEST

START_TEST(keys_that_wait_are_taken_before_the_picture)
{
    Rig *rig = rig_new(80, 24);
    int before = memory_pictures(rig->term);
    rig_keys(rig, PRESS_UP, 200);
    assert_in_range(memory_pictures(rig->term) - before, 1, 3);
    rig_free(rig);
}
END_TEST

START_TEST(one_key_swaps_the_views)
{
    Rig *rig = rig_new(80, 24);
    assert_shows(rig, "\u2580\u2580\u2580");
    rig_type(rig, "v");
    assert_shows(rig, "rip, left to right");
    assert_shows(rig, "141 3/8 ");
    assert_shows(rig, "\u251c\u2500");
    rig_type(rig, "v");
    assert_hides(rig, "rip, left to right");
    rig_free(rig);
}
END_TEST

START_TEST(left_and_right_walk_the_faces)
{
    Rig *rig = rig_new(80, 24);
    assert_shows(rig, "north (1 of 2)");
    rig_key(rig, PRESS_RIGHT);
    assert_shows(rig, "east (2 of 2)");
    rig_key(rig, PRESS_RIGHT);
    assert_shows(rig, "This is the last face.");
    rig_type(rig, "h");
    assert_shows(rig, "north (1 of 2)");
    rig_free(rig);
}
END_TEST

START_TEST(an_opening_is_chosen_moved_and_removed)
{
    Rig *rig = rig_new(80, 24);
    const Opening *opening = &app_wall(rig->app)->faces.at[0].openings.at[1];
    Length left = opening->left, bottom = opening->bottom;
    rig_keys(rig, PRESS_TAB, 2);
    assert_shows(rig, "desk outlet (box)");
    rig_key(rig, PRESS_UP);
    rig_type(rig, "l}");
    opening = &app_wall(rig->app)->faces.at[0].openings.at[1];
    assert_int_equal(opening->bottom, bottom + LENGTH_INCH / 16);
    assert_int_equal(opening->left, left + 9 * LENGTH_INCH / 16);
    rig_type(rig, "x");
    assert_int_equal(app_wall(rig->app)->faces.at[0].openings.count, 2);
    rig_key(rig, PRESS_CTRL | 'z');
    assert_int_equal(app_wall(rig->app)->faces.at[0].openings.count, 3);
    rig_key(rig, PRESS_TAB);
    assert_int_not_equal(rig->app->focus.opening, 0);
    rig_key(rig, PRESS_ESCAPE);
    assert_int_equal(rig->app->focus.opening, 0);
    rig_free(rig);
}
END_TEST

START_TEST(an_opening_is_added_in_a_form)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "a");
    assert_shows(rig, "A new opening on north");
    rig_key(rig, PRESS_ENTER);
    rig_type(rig, "v");
    rig_key(rig, PRESS_ENTER);
    rig_type(rig, "12");
    rig_key(rig, PRESS_ENTER);
    rig_type(rig, "10 1/2");
    assert_shows(rig, "10 1/2 in = 266.7 mm");
    rig_keys(rig, PRESS_ENTER, 2);
    rig_type(rig, "-38");
    rig_keys(rig, PRESS_ENTER, 2);
    rig_type(rig, "6");
    rig_key(rig, PRESS_CTRL | 'd');
    assert_hides(rig, "A new opening on north");
    const Openings *openings = &app_wall(rig->app)->faces.at[0].openings;
    assert_int_equal(openings->count, 4);
    assert_int_equal(openings->at[3].kind, OPENING_VENT);
    assert_int_equal(openings->at[3].height, 6 * LENGTH_INCH);
    assert_int_equal(openings->at[3].id, rig->app->focus.opening);
    rig_free(rig);
}
END_TEST

START_TEST(a_bad_entry_is_kept_and_mended)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "2");
    assert_shows(rig, "Planks");
    rig_key(rig, PRESS_CTRL | 'u');
    rig_type(rig, "3 1/");
    rig_key(rig, PRESS_CTRL | 'd');
    assert_shows(rig, "3 1/ ");
    assert_shows(rig, "One entry is not good yet: Width");
    rig_type(rig, "2");
    rig_key(rig, PRESS_CTRL | 'd');
    assert_hides(rig, "Narrowest strip");
    assert_int_equal(app_wall(rig->app)->planks.widths.at[0], 7 * LENGTH_INCH / 2);
    rig_key(rig, PRESS_CTRL | 'z');
    assert_int_equal(app_wall(rig->app)->planks.widths.at[0], 11 * LENGTH_INCH / 4);
    rig_free(rig);
}
END_TEST

START_TEST(typing_replaces_and_an_arrow_edits)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "1");
    rig_type(rig, "5 3/8");
    rig_key(rig, PRESS_CTRL | 'd');
    assert_shows(rig, "Start 5 3/8");
    rig_type(rig, "1");
    rig_key(rig, PRESS_LEFT);
    rig_key(rig, PRESS_BACKSPACE);
    rig_key(rig, PRESS_BACKSPACE);
    rig_type(rig, "7/");
    rig_key(rig, PRESS_CTRL | 'd');
    assert_shows(rig, "Start 5 7/8");
    rig_free(rig);
}
END_TEST

START_TEST(what_the_wall_refuses_is_said_beside_its_field)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "2");
    rig_key(rig, PRESS_TAB);
    rig_key(rig, PRESS_CTRL | 'u');
    rig_type(rig, "-1");
    rig_key(rig, PRESS_CTRL | 'd');
    assert_shows(rig, "Narrowest strip"); /* still open */
    assert_int_equal(app_wall(rig->app)->planks.thickness, LENGTH_INCH / 2);
    assert_int_equal(document_undo_name(rig->app->document) == NULL, true);
    rig_free(rig);
}
END_TEST

START_TEST(a_changed_form_asks_before_it_is_dropped)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "1");
    rig_key(rig, PRESS_ESCAPE);
    assert_hides(rig, "Take it");
    rig_type(rig, "1");
    rig_key(rig, PRESS_CTRL | 'u');
    rig_type(rig, "5");
    rig_key(rig, PRESS_ESCAPE);
    assert_shows(rig, "has not been taken yet");
    rig_key(rig, PRESS_ESCAPE);
    assert_shows(rig, "Take it");
    rig_key(rig, PRESS_ESCAPE);
    rig_type(rig, "t");
    assert_shows(rig, "Start 5");
    rig_free(rig);
}
END_TEST

START_TEST(marks_grow_a_line_when_the_last_is_filled)
{
    Rig *rig = rig_new(80, 40);
    rig_type(rig, "5");
    assert_shows(rig, "Floor, measured down");
    rig_keys(rig, PRESS_TAB, 6); /* name, width, two marks: the blank line */
    rig_type(rig, "150");
    rig_key(rig, PRESS_TAB);
    rig_type(rig, "40");
    rig_key(rig, PRESS_CTRL | 'd');
    assert_int_equal(app_wall(rig->app)->faces.at[0].floor.count, 3);
    assert_int_equal(app_wall(rig->app)->faces.at[0].floor.at[2].off, 40 * LENGTH_INCH);
    rig_type(rig, "5");
    rig_keys(rig, PRESS_TAB, 6);
    rig_key(rig, PRESS_CTRL | 'u');
    rig_key(rig, PRESS_TAB);
    rig_key(rig, PRESS_CTRL | 'u');
    rig_key(rig, PRESS_CTRL | 'd');
    assert_int_equal(app_wall(rig->app)->faces.at[0].floor.count, 2);
    assert_int_equal(app_wall(rig->app)->faces.at[0].openings.count, 3);
    rig_free(rig);
}
END_TEST

START_TEST(a_paste_goes_only_into_a_field)
{
    Rig *rig = rig_new(80, 24);
    memory_paste(rig->term, "xq\rv");
    rig_settle(rig);
    assert_shows(rig, "text goes only into a field");
    assert_int_equal(app_wall(rig->app)->faces.at[0].openings.count, 3);
    rig_type(rig, "1");
    rig_key(rig, PRESS_CTRL | 'u');
    memory_paste(rig->term, "7 1/2\r\n");
    rig_settle(rig);
    assert_shows(rig, "7 1/2 in = 190.5 mm");
    rig_free(rig);
}
END_TEST

START_TEST(escape_never_leaves)
{
    Rig *rig = rig_new(80, 24);
    rig_keys(rig, PRESS_ESCAPE, 20);
    assert_true(rig->running);
    rig_type(rig, "m");
    assert_shows(rig, "Type a word");
    rig_keys(rig, PRESS_ESCAPE, 5);
    assert_true(rig->running);
    assert_hides(rig, "Type a word");
    rig_free(rig);
}
END_TEST

START_TEST(leaving_with_changes_asks)
{
    Rig *rig = rig_new(80, 24);
    rig_key(rig, PRESS_UP);
    rig_type(rig, "q");
    assert_shows(rig, "Leave with changes?");
    rig_type(rig, "t");
    assert_true(rig->running);
    rig_type(rig, "q");
    rig_type(rig, "l");
    assert_false(rig->running);
    assert_string_equal(file_farewell(rig->app), "");
    rig_free(rig);
    rig = rig_on_file(80, 24);
    rig_type(rig, "q");
    assert_false(rig->running);
    rig_free(rig);
}
END_TEST

START_TEST(hints_name_every_arrow_and_one_word_for_one_thing)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "n");
    assert_shows(rig, "\u2191\u2193\u2190\u2192 move it");
    rig_type(rig, "2");
    assert_shows(rig, "\u2191\u2193 go");
    assert_hides(rig, "\u2190\u2192");
    assert_shows(rig, "Ctrl-D take it");
    assert_shows(rig, " Take it ");
    rig_key(rig, PRESS_ESCAPE);
    rig_type(rig, "3");
    assert_shows(rig, "\u2190\u2192 change");
    rig_key(rig, PRESS_ESCAPE);
    rig_type(rig, "m");
    rig_type(rig, "open another");
    assert_shows(rig, " Shift-O ");
    rig_free(rig);
}
END_TEST

START_TEST(a_choice_takes_a_letter_and_says_what_it_does_not_take)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "Ol");
    rig_key(rig, PRESS_ENTER);
    assert_shows(rig, "\u25c2inches");
    rig_type(rig, "k");
    assert_shows(rig, "No word to choose from begins so");
    rig_type(rig, "M");
    assert_shows(rig, "\u25c2millimetres");
    rig_key(rig, PRESS_ENTER);
    rig_type(rig, "2500");
    assert_shows(rig, "2500.0 mm = ");
    rig_free(rig);
}
END_TEST

START_TEST(several_bad_entries_are_counted)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "a");
    rig_key(rig, PRESS_CTRL | 'd');
    assert_shows(rig, "3 entries are not good yet; the first is: From the left end.");
    rig_free(rig);
}
END_TEST

/* The half that helps stands at the end of the sentence. */
START_TEST(what_would_be_good_is_told_in_whole)
{
    static const int sizes[][2] = {{80, 24}, {60, 18}, {40, 10}};
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        Rig *rig = rig_new(sizes[i][0], sizes[i][1]);
        rig_type(rig, "1");
        rig_type(rig, "3 1/");
        assert_shows(rig, "7' 4"); /* "write one like 40 1/2 or 7' 4 1/2\"" */
        rig_free(rig);
    }
}
END_TEST

/* Answers are what a question is for: they are seen where there is room for little else. */
START_TEST(answers_come_before_the_text)
{
    static const int sizes[][2] = {{80, 24}, {60, 18}, {40, 10}, {30, 7}, {20, 5}};
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        Rig *rig = rig_new(sizes[i][0], sizes[i][1]);
        rig_key(rig, PRESS_UP);
        rig_type(rig, "q");
        assert_shows(rig, "s  save, then");
        assert_shows(rig, "l  leave them");
        assert_shows(rig, "t  stay");
        rig_free(rig);
    }
}
END_TEST

START_TEST(a_question_shows_the_line_in_focus_by_a_sign_of_its_own)
{
    Rig *rig = rig_new(40, 10);
    rig_key(rig, PRESS_UP);
    rig_type(rig, "q");
    assert_shows(rig, "\u00bbs  save");
    rig_key(rig, PRESS_DOWN);
    assert_shows(rig, "\u00bbl  leave");
    assert_hides(rig, "\u25b8");
    rig_key(rig, PRESS_ESCAPE);
    assert_shows(rig, "\u25b8");
    rig_type(rig, "m");
    assert_shows(rig, "\u00bbStart heights worth");
    assert_hides(rig, "\u25b8");
    rig_free(rig);
}
END_TEST

/* A text that does not fit can be gone through. */
START_TEST(the_text_of_a_question_can_be_gone_through)
{
    Rig *rig = rig_new(40, 10);
    Choice choices[] = {{'a', "the first of two answers that are folded over two lines"}, {'b', "the other"}};
    question_ask(rig->app, "Title",
                 "begin one two three four five six seven eight nine ten eleven twelve thirteen "
                 "fourteen fifteen sixteen seventeen eighteen nineteen twenty last",
                 choices, 2, NULL);
    rig_type(rig, "z"); /* no answer; the picture is painted */
    assert_shows(rig, "begin one");
    assert_shows(rig, "two lines");
    assert_hides(rig, "eighteen");
    rig_keys(rig, PRESS_PAGE_DOWN, 9);
    assert_shows(rig, "eighteen");
    assert_hides(rig, "begin one");
    rig_keys(rig, PRESS_PAGE_UP, 9);
    assert_shows(rig, "begin one");
    rig_free(rig);
}
END_TEST

START_TEST(the_menu_is_typed_into)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "m");
    rig_type(rig, "kerf");
    assert_shows(rig, "Saw: what a cut takes");
    assert_hides(rig, "Boards at hand");
    rig_key(rig, PRESS_ENTER);
    assert_shows(rig, "Kerf, each cut");
    rig_free(rig);
}
END_TEST

/* The file on disk is looked at only when nothing lies over the wall: until then nobody needs to wake up for it. */
START_TEST(the_loop_sleeps_while_a_form_is_open)
{
    Rig *rig = rig_on_file(80, 24);
    rig_type(rig, "1");
    memory_pass(rig->term, 60000);
    int turns = 0;
    while (!memory_idle(rig->term) && turns < 1000) {
        loop_turn(rig->loop);
        turns++;
    }
    assert_in_range(turns, 1, 20);
    rig_free(rig);
}
END_TEST

START_TEST(nothing_can_be_undone_on_the_first_screen)
{
    Rig *rig = rig_on_file(80, 24);
    rig_type(rig, "O");
    assert_shows(rig, "A new wall");
    rig_key(rig, PRESS_CTRL | 'z');
    assert_shows(rig, "Nothing to undo.");
    rig_key(rig, PRESS_CTRL | 'y');
    assert_shows(rig, "Nothing to do again.");
    rig_free(rig);
}
END_TEST

START_TEST(help_lists_keys_and_closes)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "?");
    assert_shows(rig, "All keys");
    assert_shows(rig, "raise the reference course");
    rig_key(rig, PRESS_END);
    assert_shows(rig, "\u2573                    bare: no board is left");
    rig_key(rig, PRESS_PAGE_UP);
    assert_shows(rig, "leave; asks first");
    rig_key(rig, PRESS_ESCAPE);
    assert_hides(rig, "All keys");
    rig_free(rig);
}
END_TEST

START_TEST(the_cursor_stands_on_the_focus)
{
    Rig *rig = rig_new(80, 24);
    const Grid *picture = memory_picture(rig->term);
    assert_int_equal(grid_at(picture, picture->cursor_x, picture->cursor_y)->code, style_glyph(GLYPH_HERE, false));
    rig_type(rig, "12");
    picture = memory_picture(rig->term);
    int x = picture->cursor_x;
    rig_type(rig, "2");
    picture = memory_picture(rig->term);
    assert_int_equal(picture->cursor_x, x + 1);
    rig_free(rig);
}
END_TEST

START_TEST(every_size_is_survived)
{
    Rig *rig = rig_new(1, 1);
    rig_key(rig, PRESS_UP);
    const char *const layers[] = {"", "v", "m", "?", "2", "f", "6", "W", "B", "R", "Ta", "q"};
    for (size_t i = 0; i < sizeof layers / sizeof *layers; i++) {
        rig_type(rig, layers[i]);
        for (int columns = 1; columns <= 100; columns += columns < 12 ? 1 : 11)
            for (int rows = 1; rows <= 40; rows += rows < 12 ? 1 : 7)
                memory_resize(rig->term, columns, rows);
        rig_settle(rig);
        for (int size = 1; size < 30; size++) { /* each painted */
            memory_resize(rig->term, size * 3, size);
            rig_settle(rig);
        }
        rig_keys(rig, PRESS_ESCAPE, 3);
    }
    assert_true(rig->running);
    rig_free(rig);
}
END_TEST

START_TEST(findings_show_their_place)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "6x"); /* no boards: everything is left bare */
    rig_key(rig, PRESS_ESCAPE);
    rig_type(rig, "f");
    assert_shows(rig, "Hazards, faults and cautions");
    assert_shows(rig, "hazard   ");
    rig_key(rig, PRESS_ENTER);
    assert_hides(rig, "Hazards, faults and cautions");
    rig_free(rig);
}
END_TEST

/* Looking through a list is no going there; choosing is. */
START_TEST(looking_through_findings_leaves_one_where_one_was)
{
    static const Key ways_back[] = {PRESS_ESCAPE, 'q'};
    for (size_t i = 0; i < sizeof ways_back / sizeof *ways_back; i++) {
        Rig *rig = rig_new(80, 24);
        rig_key(rig, PRESS_RIGHT);
        rig_type(rig, "f");
        assert_true(work_job(app_work(rig->app))->findings.count > 1);
        rig_key(rig, PRESS_DOWN);
        rig_key(rig, PRESS_HOME);
        assert_shows(rig, "north (1 of 2)");
        rig_key(rig, ways_back[i]);
        assert_shows(rig, "east (2 of 2)");
        assert_int_equal(rig->app->focus.opening, 0);
        assert_false(rig->app->focus.sight.away);
        rig_type(rig, "f");
        rig_key(rig, PRESS_ENTER);
        assert_shows(rig, "north (1 of 2)");
        rig_free(rig);
    }
}
END_TEST

START_TEST(a_finding_is_told_in_whole)
{
    static const int sizes[][2] = {{80, 24}, {60, 18}, {40, 10}};
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        Rig *rig = rig_new(sizes[i][0], sizes[i][1]);
        rig_type(rig, "f");
        const Findings *findings = &work_job(app_work(rig->app))->findings;
        int first = findings->count - findings_of(findings, GRADE_CAUTION); /* a sliver, told in a few words */
        const char *text = findings->at[first].text;
        rig_keys(rig, PRESS_DOWN, first);
        const char *last = strrchr(text, ' ');
        assert_non_null(last);
        assert_shows(rig, last + 1);
        rig_free(rig);
    }
}
END_TEST

/* No boards: every course of both faces is bare by the same words, so that the list says which it is. */
START_TEST(a_finding_says_its_course)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "6xxx");
    rig_key(rig, PRESS_ESCAPE);
    rig_type(rig, "f");
    const Findings *findings = &work_job(app_work(rig->app))->findings;
    const Finding *finding = &findings->at[1];
    assert_true(finding->has_course);
    rig_keys(rig, PRESS_DOWN, findings_of(findings, GRADE_HAZARD) + 1); /* hazards lead */
    char words[80];
    snprintf(words, sizeof words, "fault    Course %d: bare from", (int)finding->course);
    assert_shows(rig, words);
    snprintf(words, sizeof words, "\u2502 north: Course %d: bare from", (int)finding->course);
    assert_shows(rig, words);
    rig_free(rig);
}
END_TEST

START_TEST(the_head_names_the_key_of_the_faults)
{
    for (int columns = 60; columns <= 120; columns += 20) {
        Rig *rig = rig_new(columns, 24);
        rig_type(rig, "6xxx"); /* no boards: everything is left bare */
        rig_key(rig, PRESS_ESCAPE);
        char words[40];
        const Findings *findings = &work_job(app_work(rig->app))->findings;
        snprintf(words, sizeof words, "%d hazards (f)", findings_of(findings, GRADE_HAZARD));
        assert_shows(rig, words);
        int faults = findings_of(findings, GRADE_FAULT);
        snprintf(words, sizeof words, "%d fault%s", faults, faults == 1 ? "" : "s");
        assert_true(faults > 0);
        assert_shows(rig, words);
        rig_free(rig);
    }
}
END_TEST

/* Both rips with their shapes, whatever the marks: eighths to sixteenths at 80 columns, shorter at 60. */
START_TEST(the_shapes_of_the_rips_are_never_cut)
{
    static const int widths[] = {60, 80, 100};
    for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
        Rig *rig = rig_new(widths[i], 24);
        for (int step = 0; step < 45; step++) {
            const char *end = strchr(strchr(rig->picture.bytes, '\n') + 1, '\n');
            const char *line = strchr(rig->picture.bytes, '\n') + 1;
            char text[400];
            snprintf(text, sizeof text, "%.*s", (int)(end - line), line);
            assert_lacks(text, "\u2026"); /* nothing was cut */
            assert_non_null(strstr(text, "Bottom"));
            rig_key(rig, PRESS_UP);
        }
        rig_free(rig);
    }
}
END_TEST

/* Beside a long head there is no room for the joint: it is left out, not cut. */
START_TEST(a_neighbour_is_named_as_far_as_there_is_room)
{
#define SIDE "floor: [{at: 0, down: 36}], ceiling: [{at: 0, up: 40}]"
    static const char text[] = "datumrow: 1\nunits: in\nplanks: {width: 3, thickness: 1/2}\nstart: 0\nfaces:\n"
                               "- {name: north, width: 138 1/2, corner: {kind: inside, joint: butt}, " SIDE "}\n"
                               "- {name: stove side, width: 96, " SIDE "}\nstock: [{length: 60, count: 60}]\n";
    static const struct {
        int columns;
        const char *words;
    } rows[] = {{120, "stove side: inside, butt "}, {80, "stove side: inside "}, {64, "stove side "}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        Rig *rig = rig_on_text(rows[i].columns, 24, text);
        assert_shows(rig, rows[i].words);
        rig_free(rig);
    }
#undef SIDE
}
END_TEST

/* A plank of 5 1/4 under a sloping ceiling: "2 15/16 > 2 13/16 ~" is wider than the column beside the courses. */
START_TEST(the_figures_of_a_rip_are_never_cut)
{
    static const char text[] = "datumrow: 1\nunits: in\n"
                               "planks: {width: 5 1/4, thickness: 1/2, reveal: 1/16}\nstart: 0\n"
                               "faces:\n- name: north\n  width: 138\n  floor: [{at: 0, down: 4}]\n"
                               "  ceiling: [{at: 0, up: 24 3/16}, {at: 69, up: 24 7/16}, {at: 138, up: 24 1/16}]\n"
                               "stock: [{length: 60, count: 60}]\n";
    static const struct {
        int columns;
        const char *words;
    } rows[] = {{80, "2 15/16~2 13/16"}, {120, "2 15/16 \u2192 2 13/16 ~"}};
    for (int i = 0; i < 2; i++) {
        Rig *rig = rig_on_text(rows[i].columns, 24, text);
        if (!rig->app->focus.sight.rows)
            rig_type(rig, "v");
        assert_true(rig->app->focus.sight.rows);
        assert_shows(rig, rows[i].words);
        rig_free(rig);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        up_nudges_at_once,
        the_counts_are_in_sight,
        a_run_of_nudges_is_one_step_back,
        keys_that_wait_are_taken_before_the_picture,
        one_key_swaps_the_views,
        left_and_right_walk_the_faces,
        an_opening_is_chosen_moved_and_removed,
        an_opening_is_added_in_a_form,
        a_bad_entry_is_kept_and_mended,
        typing_replaces_and_an_arrow_edits,
        what_the_wall_refuses_is_said_beside_its_field,
        a_changed_form_asks_before_it_is_dropped,
        marks_grow_a_line_when_the_last_is_filled,
        a_paste_goes_only_into_a_field,
        escape_never_leaves,
        leaving_with_changes_asks,
        hints_name_every_arrow_and_one_word_for_one_thing,
        a_choice_takes_a_letter_and_says_what_it_does_not_take,
        several_bad_entries_are_counted,
        what_would_be_good_is_told_in_whole,
        answers_come_before_the_text,
        a_question_shows_the_line_in_focus_by_a_sign_of_its_own,
        the_text_of_a_question_can_be_gone_through,
        the_menu_is_typed_into,
        the_loop_sleeps_while_a_form_is_open,
        nothing_can_be_undone_on_the_first_screen,
        help_lists_keys_and_closes,
        the_cursor_stands_on_the_focus,
        every_size_is_survived,
        findings_show_their_place,
        looking_through_findings_leaves_one_where_one_was,
        a_finding_is_told_in_whole,
        a_finding_says_its_course,
        the_head_names_the_key_of_the_faults,
        the_shapes_of_the_rips_are_never_cut,
        the_figures_of_a_rip_are_never_cut,
        a_neighbour_is_named_as_far_as_there_is_room,
    };
    return RUN(tests);
}
