/* A field reads the tape's notation, echoes it in both systems, and keeps what it cannot read. */
#include "screen/field.h"
#include "check.h"

#include <string.h>

static Field typed(FieldKind kind, const char *text)
{
    Field field = {.kind = kind, .needed = true, .group = -1};
    field_judge(&field, UNITS_IN);
    for (; *text != '\0'; text++)
        assert_true(field_key(&field, (Key)(unsigned char)*text, UNITS_IN));
    return field;
}

static void what_a_tape_says_is_read_and_echoed(void **state)
{
    (void)state;
    Field field = typed(FIELD_LENGTH, "8' 3 1/2\"");
    assert_false(field.bad);
    assert_int_equal(field_length(&field, UNITS_IN), 199 * LENGTH_INCH / 2);
    assert_non_null(strstr(field.says, "8' 3 1/2\""));
    assert_non_null(strstr(field.says, "2527.3 mm"));
    field = typed(FIELD_LENGTH, "2527 mm");
    assert_int_equal(field_length(&field, UNITS_IN), 2527 * LENGTH_MM);
}

static void a_bad_entry_is_kept_and_told(void **state)
{
    (void)state;
    Field field = typed(FIELD_LENGTH, "12 1/");
    assert_true(field.bad);
    assert_string_equal(field.text, "12 1/");
    assert_true(field.says[0] != '\0');
    field_key(&field, '4', UNITS_IN);
    assert_false(field.bad);
}

static void an_empty_field_says_what_that_means(void **state)
{
    (void)state;
    Field field = {.kind = FIELD_LENGTH, .empty = "none: square edges"};
    field_judge(&field, UNITS_IN);
    assert_false(field.bad);
    assert_string_equal(field.says, "none: square edges");
    field.needed = true;
    field_judge(&field, UNITS_IN);
    assert_true(field.bad);
}

static void it_is_edited_in_the_middle(void **state)
{
    (void)state;
    Field field = typed(FIELD_TEXT, "nort\xc3\xbc");
    field.cursor = 0;
    field_set(&field, "nord\u00fcst", UNITS_IN);
    field_key(&field, PRESS_LEFT, UNITS_IN);
    field_key(&field, PRESS_LEFT, UNITS_IN);
    field_key(&field, PRESS_BACKSPACE, UNITS_IN);
    field_key(&field, 'w', UNITS_IN);
    assert_string_equal(field.text, "nordwst");
    field_key(&field, PRESS_HOME, UNITS_IN);
    field_key(&field, PRESS_DELETE, UNITS_IN);
    assert_string_equal(field.text, "ordwst");
}

static void lists_and_stretches_are_read(void **state)
{
    (void)state;
    Arena *arena = arena_new();
    Field field = typed(FIELD_LENGTHS, "2 3/4, 3 1/2,70 mm");
    assert_false(field.bad);
    LengthList lengths = field_lengths(&field, arena, UNITS_IN);
    assert_int_equal(lengths.count, 3);
    assert_int_equal(lengths.at[2], 70 * LENGTH_MM);
    field = typed(FIELD_STRETCHES, "31 to 34 1/2, 50 to 52");
    assert_false(field.bad);
    Stretches stretches = field_stretches(&field, arena, UNITS_IN);
    assert_int_equal(stretches.count, 2);
    assert_int_equal(stretches.at[0].to, 69 * LENGTH_INCH / 2);
    field = typed(FIELD_STRETCHES, "31");
    assert_true(field.bad);
    field = typed(FIELD_COUNT, "12x");
    assert_true(field.bad);
    arena_free(arena);
}

static void a_paste_loses_its_controls_only(void **state)
{
    (void)state;
    Field field = {.kind = FIELD_TEXT};
    assert_true(field_paste(&field, "desk\x1b[A\r\noutlet", UNITS_IN));
    assert_string_equal(field.text, "desk[Aoutlet");
    char most[2 * FIELD_BYTES];
    memset(most, 'a', sizeof most - 1);
    most[sizeof most - 1] = '\0';
    assert_false(field_paste(&field, most, UNITS_IN));
    assert_true(strlen(field.text) < FIELD_BYTES);
}

static void a_choice_turns(void **state)
{
    (void)state;
    static const char *const words[] = {"box", "window", "door"};
    Field field = {.kind = FIELD_CHOICE, .choices = words, .choice_count = 3};
    field_set_choice(&field, 0);
    field_key(&field, PRESS_RIGHT, UNITS_IN);
    assert_int_equal(field_choice(&field), 1);
    field_key(&field, 'd', UNITS_IN);
    assert_int_equal(field_choice(&field), 2);
    field_key(&field, ' ', UNITS_IN);
    assert_int_equal(field_choice(&field), 0);
}

static void the_part_round_the_cursor_is_shown(void **state)
{
    (void)state;
    Grid *grid = grid_new(6, 1);
    Field field = {.kind = FIELD_TEXT};
    field_set(&field, "abcdefghij", UNITS_IN);
    field_draw(&field, grid, 0, 0, 6, true);
    assert_int_equal(grid->cursor_x, 5);
    assert_int_equal(grid_at(grid, 4, 0)->code, 'j');
    grid_free(grid);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_a_tape_says_is_read_and_echoed),
        cmocka_unit_test(a_bad_entry_is_kept_and_told),
        cmocka_unit_test(an_empty_field_says_what_that_means),
        cmocka_unit_test(it_is_edited_in_the_middle),
        cmocka_unit_test(lists_and_stretches_are_read),
        cmocka_unit_test(a_paste_loses_its_controls_only),
        cmocka_unit_test(a_choice_turns),
        cmocka_unit_test(the_part_round_the_cursor_is_shown),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
