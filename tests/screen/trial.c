/* Choices tried on the wall, keys fed to the real loop: moving shows, Enter takes as one step, Esc leaves all as it
 * was. */
#include "support/test.h"

#include "base/file.h"
#include "rig.h"
#include "trade/spacer.h"

#include <stdio.h>
#include <string.h>

static const Wall *document_of(const Rig *rig)
{
    return document_wall(rig->app->document);
}

START_TEST(moving_over_the_starts_shows_each_on_the_wall)
{
    Rig *rig = rig_new(80, 24);
    Length written = document_of(rig)->start;
    uint64_t version = document_version(rig->app->document);
    rig_type(rig, "s");
    assert_shows(rig, "Start heights worth considering");
    assert_shows(rig, "widest least strip");
    Length first = app_wall(rig->app)->start;
    assert_int_not_equal(first, written);
    rig_key(rig, PRESS_DOWN);
    Length second = app_wall(rig->app)->start;
    assert_int_not_equal(second, first);
    char shown[LENGTH_TEXT_MAX + 10] = "Start ";
    app_length(rig->app, second, shown + strlen(shown));
    assert_shows(rig, shown);
    /* what is shown is the layout at that start, not that of the document */
    assert_int_equal(app_work(rig->app)->layout->wall->start, second);
    assert_int_equal(document_of(rig)->start, written);
    assert_int_equal(document_version(rig->app->document), version);
    rig_free(rig);
}
END_TEST

/* "start -1 11/16 least 2": the words of a column never touch the figure of the one before. */
START_TEST(columns_of_choices_stand_apart)
{
    static const char *const columns[] = {"least", "top", "bottom"};
    static const char *const lists[] = {"s", "w"};
    Rig *rig = rig_new(80, 24);
    for (int list = 0; list < 2; list++) {
        rig_type(rig, lists[list]);
        for (int line = 0; line < 24; line++) {
            for (int i = 0; i < 3; i++)
                for (const char *at = rig->picture.bytes; (at = strstr(at, columns[i])) != NULL; at++)
                    if (at[-1] >= '0' && at[-1] <= '9')
                        FAIL("\"%s\" touches a figure:\n%s", columns[i], rig->picture.bytes);
            rig_key(rig, PRESS_DOWN);
        }
        rig_key(rig, PRESS_ESCAPE);
    }
    rig_free(rig);
}
END_TEST

START_TEST(esc_leaves_the_wall_as_it_was)
{
    Rig *rig = rig_new(80, 24);
    Text before;
    text_init(&before);
    rig_key(rig, PRESS_UP);
    rig_key(rig, PRESS_CTRL | 'z');
    rig_key(rig, PRESS_RIGHT);
    rig_key(rig, PRESS_LEFT); /* takes the message away */
    text_put(&before, rig->picture.bytes);
    rig_type(rig, "sjjk");
    rig_key(rig, PRESS_ESCAPE);
    assert_string_equal(rig->picture.bytes, before.bytes);
    rig_key(rig, PRESS_CTRL | 'y'); /* what could be done again still can */
    assert_shows(rig, "Start 2 5/16");
    text_finish(&before);
    rig_free(rig);
}
END_TEST

START_TEST(enter_takes_a_start_as_one_step)
{
    Rig *rig = rig_new(80, 24);
    Length written = document_of(rig)->start;
    rig_type(rig, "sjj");
    Length chosen = app_wall(rig->app)->start;
    rig_key(rig, PRESS_ENTER);
    assert_int_equal(document_of(rig)->start, chosen);
    assert_int_not_equal(chosen, written);
    assert_int_equal(rig->app->layers.depth, 1);
    rig_key(rig, PRESS_CTRL | 'z');
    assert_int_equal(document_of(rig)->start, written);
    assert_null(document_undo_name(rig->app->document));
    rig_free(rig);
}
END_TEST

START_TEST(the_other_face_is_looked_at_while_trying)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "s");
    assert_shows(rig, "north: upper and lower end");
    Length tried = app_wall(rig->app)->start;
    rig_key(rig, PRESS_RIGHT);
    assert_shows(rig, "east: upper and lower end");
    assert_int_equal(app_wall(rig->app)->start, tried);
    rig_free(rig);
}
END_TEST

START_TEST(saving_while_trying_saves_the_document)
{
    Rig *rig = rig_on_file(80, 24);
    rig_key(rig, PRESS_UP);
    Length nudged = document_of(rig)->start;
    rig_type(rig, "sj");
    assert_int_not_equal(app_wall(rig->app)->start, nudged);
    rig_pass(rig, 3000); /* the recovery copy is written meanwhile */
    rig_key(rig, PRESS_ESCAPE);
    rig_key(rig, PRESS_CTRL | 's');
    assert_shows(rig, "saved");
    char path[128];
    snprintf(path, sizeof path, "%s/wall.yaml", rig->folder);
    Text text;
    text_init(&text);
    Err err;
    assert_done(file_read(path, 1 << 20, &text, &err), &err);
    assert_non_null(strstr(text.bytes, "start: 2 5/16"));
    text_finish(&text);
    rig_free(rig);
}
END_TEST

START_TEST(a_spacer_sets_the_reveal)
{
    Rig *rig = rig_new(80, 24);
    Length written = document_of(rig)->planks.reveal;
    rig_type(rig, "r");
    assert_shows(rig, "Source: ");
    assert_int_equal(document_of(rig)->planks.reveal, written);
    rig_key(rig, PRESS_DOWN);
    Length tried = app_wall(rig->app)->planks.reveal;
    rig_key(rig, PRESS_ENTER);
    assert_int_equal(document_of(rig)->planks.reveal, tried);
    assert_int_not_equal(tried, written);
    bool is_a_thing = false;
    for (int i = 0; i < spacer_thing_count(); i++)
        for (int count = 1; count <= SPACER_STACK_MOST; count++)
            is_a_thing = is_a_thing || spacer_thing(i)->thickness * count == tried;
    assert_true(is_a_thing);
    rig_key(rig, PRESS_CTRL | 'z');
    assert_int_equal(document_of(rig)->planks.reveal, written);
    rig_free(rig);
}
END_TEST

START_TEST(another_width_comes_with_its_start)
{
    Rig *rig = rig_new(80, 24);
    Length width = document_of(rig)->planks.widths.at[0], start = document_of(rig)->start;
    rig_type(rig, "w");
    while (app_wall(rig->app)->planks.widths.at[0] == width)
        rig_key(rig, PRESS_DOWN);
    Length tried = app_wall(rig->app)->planks.widths.at[0];
    rig_key(rig, PRESS_ENTER);
    assert_int_equal(document_of(rig)->planks.widths.at[0], tried);
    rig_key(rig, PRESS_CTRL | 'z');
    assert_int_equal(document_of(rig)->planks.widths.at[0], width);
    assert_int_equal(document_of(rig)->start, start);
    assert_null(document_undo_name(rig->app->document));
    rig_free(rig);
}
END_TEST

START_TEST(nothing_is_offered_while_pieces_hang)
{
    Rig *rig = rig_new(80, 24);
    char face[] = "north";
    const Course *course = &app_work(rig->app)->layout->faces[0].courses[3];
    Err err;
    HungPiece piece = {.face = face,
                       .course = (int)course->number,
                       .left = course->segments[0].left,
                       .right = course->segments[0].left + 20 * LENGTH_INCH,
                       .board = 1};
    assert_done(edit_hang(rig->app->document, &piece, &err), &err);
    for (const char *key = "swr"; *key != '\0'; key++) {
        rig_type(rig, (char[]){*key, '\0'});
        assert_shows(rig, "Pieces hang already");
        rig_key(rig, PRESS_ENTER);
        assert_int_equal(rig->app->layers.depth, 1);
    }
    rig_free(rig);
}
END_TEST

START_TEST(every_size_is_survived)
{
    static const int sizes[][2] = {{1, 1}, {20, 6}, {60, 18}, {80, 24}, {112, 8}, {140, 50}};
    for (const char *key = "swr"; *key != '\0'; key++) {
        Rig *rig = rig_new(80, 24);
        rig_type(rig, (char[]){*key, '\0'});
        for (int i = 0; i < 6; i++) {
            memory_resize(rig->term, sizes[i][0], sizes[i][1]);
            rig_type(rig, "jjvk");
            assert_int_equal(rig->app->layers.depth, 2);
        }
        rig_free(rig);
    }
}
END_TEST

/* Each share's figures come as one moves over it; Enter takes it as one step, which undo takes back. */
START_TEST(what_spending_buys_is_tried_on_the_wall)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "J");
    assert_shows(rig, "Fewer joints for more wood");
    assert_shows(rig, "0 %");
    assert_shows(rig, "as written");
    assert_shows(rig, "stacked");
    assert_shows(rig, "1 %    move here to see what it buys");
    rig_key(rig, PRESS_END);
    assert_true(app_wall(rig->app)->joints.spend_all);
    assert_false(document_of(rig)->joints.spend_all);
    rig_key(rig, PRESS_UP);
    assert_int_equal(app_wall(rig->app)->joints.spend, 20000);
    rig_key(rig, PRESS_ENTER);
    assert_int_equal(document_of(rig)->joints.spend, 20000);
    assert_shows(rig, "choose what may be spent");
    rig_type(rig, "J");
    rig_key(rig, PRESS_ENTER);
    assert_shows(rig, "It is so already");
    rig_key(rig, PRESS_CTRL | 'z');
    assert_int_equal(document_of(rig)->joints.spend, 0);
    rig_type(rig, "J");
    rig_key(rig, PRESS_END);
    rig_key(rig, PRESS_ESCAPE);
    assert_false(document_of(rig)->joints.spend_all);
    rig_free(rig);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        what_spending_buys_is_tried_on_the_wall,
        moving_over_the_starts_shows_each_on_the_wall,
        columns_of_choices_stand_apart,
        esc_leaves_the_wall_as_it_was,
        enter_takes_a_start_as_one_step,
        the_other_face_is_looked_at_while_trying,
        saving_while_trying_saves_the_document,
        a_spacer_sets_the_reveal,
        another_width_comes_with_its_start,
        nothing_is_offered_while_pieces_hang,
        every_size_is_survived,
    };
    return RUN(tests);
}
