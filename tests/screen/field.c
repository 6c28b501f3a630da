/* A field reads the tape's notation, echoes it in both systems, and keeps what it cannot read. */
#include "support/test.h"

#include "screen/forms/field.h"

#include <string.h>

static Field typed(FieldKind kind, const char *text)
{
    Field field = {.kind = kind, .needed = true, .group = -1};
    field_judge(&field, UNITS_IN);
    for (; *text != '\0'; text++)
        assert_true(field_key(&field, (Key)(unsigned char)*text, UNITS_IN));
    return field;
}

START_TEST(what_a_tape_says_is_read_and_echoed)
{
    Field field = typed(FIELD_LENGTH, "8' 3 1/2\"");
    assert_false(field.bad);
    assert_int_equal(field_length(&field, UNITS_IN), 199 * LENGTH_INCH / 2);
    assert_non_null(strstr(field.says, "8' 3 1/2\""));
    assert_non_null(strstr(field.says, "2527.3 mm"));
    field_judge(&field, UNITS_MM); /* on a wall in millimetres */
    assert_string_equal(field.says, "2527.3 mm = 8' 3 1/2\"");
    field = typed(FIELD_LENGTH, "2527 mm");
    assert_int_equal(field_length(&field, UNITS_IN), 2527 * LENGTH_MM);
}
END_TEST

START_TEST(a_bad_entry_is_kept_and_told)
{
    Field field = typed(FIELD_LENGTH, "12 1/");
    assert_true(field.bad);
    assert_string_equal(field.text, "12 1/");
    assert_true(field.says[0] != '\0');
    field_key(&field, '4', UNITS_IN);
    assert_false(field.bad);
}
END_TEST

START_TEST(an_empty_field_says_what_that_means)
{
    Field field = {.kind = FIELD_LENGTH, .empty = "none: square edges"};
    field_judge(&field, UNITS_IN);
    assert_false(field.bad);
    assert_string_equal(field.says, "none: square edges");
    field.needed = true;
    field_judge(&field, UNITS_IN);
    assert_true(field.bad);
}
END_TEST

START_TEST(it_is_edited_in_the_middle)
{
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
END_TEST

START_TEST(lists_and_stretches_are_read)
{
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
END_TEST

START_TEST(a_paste_loses_its_controls_only)
{
    Field field = {.kind = FIELD_TEXT};
    assert_true(field_paste(&field, "desk\x1b[A\r\noutlet", UNITS_IN));
    assert_string_equal(field.text, "desk[Aoutlet");
    char most[2 * FIELD_BYTES];
    memset(most, 'a', sizeof most - 1);
    most[sizeof most - 1] = '\0';
    assert_false(field_paste(&field, most, UNITS_IN));
    assert_true(strlen(field.text) < FIELD_BYTES);
}
END_TEST

START_TEST(a_choice_turns_through_its_words)
{
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
END_TEST

START_TEST(the_part_round_the_cursor_is_shown)
{
    Grid *grid = grid_new(6, 1);
    Field field = {.kind = FIELD_TEXT};
    field_set(&field, "abcdefghij", UNITS_IN);
    field_draw(&field, grid, 0, 0, 6, true);
    assert_int_equal(grid->cursor_x, 5);
    assert_int_equal(grid_at(grid, 4, 0)->code, 'j');
    assert_int_equal(grid_at(grid, 1, 0)->code, 'g'); /* behind the sign that something is cut */
    field_set(&field, "ab\u00fcd\u00e9f", UNITS_IN);
    field_draw(&field, grid, 0, 0, 6, true);
    assert_int_equal(grid->cursor_x, 5);
    assert_int_equal(grid_at(grid, 1, 0)->code, 0xfc);
    field_draw(&field, grid, 0, 0, 6, false); /* without the focus: from the beginning */
    assert_int_equal(grid_at(grid, 0, 0)->code, 'a');
    grid_free(grid);
}
END_TEST

START_TEST(numbers_are_read_as_the_file_reads_them)
{
    Field field = typed(FIELD_NUMBER, "2.5");
    assert_false(field.bad);
    assert_int_equal(field_thousandths(&field), 2500);
    field = typed(FIELD_NUMBER, "2,5");
    assert_true(field.bad);
    field = typed(FIELD_NUMBER, "1.2345");
    assert_true(field.bad);
    assert_non_null(strstr(field.says, "three at most"));
    field = typed(FIELD_PERCENT, "45");
    assert_int_equal(field_thousandths(&field), 45000);
    field = typed(FIELD_PERCENT, "45 %");
    assert_true(field.bad);
    assert_non_null(strstr(field.says, "write the number alone"));
    field = (Field){.kind = FIELD_NUMBER};
    field_set_thousandths(&field, 10125);
    assert_string_equal(field.text, "10.125");
}
END_TEST

START_TEST(a_temperature_is_echoed_in_both_scales)
{
    static const struct {
        const char *typed, *says;
        int64_t thousandths;
        bool celsius;
    } cases[] = {
        {"68 F", "68 F = 20 C", 68000, false},   {"212F", "212 F = 100 C", 212000, false},
        {"20 C", "20 C = 68 F", 20000, true},    {"-40 c", "-40 C = -40 F", -40000, true},
        {"31 F", "31 F = -0.6 C", 31000, false}, {"21.55 C", "21.6 C = 70.8 F", 21550, true},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        Field field = typed(FIELD_TEMPERATURE, cases[i].typed);
        assert_false(field.bad);
        assert_string_equal(field.says, cases[i].says);
        assert_int_equal(field_temperature(&field).temperature, cases[i].thousandths);
        assert_int_equal(field_temperature(&field).celsius, cases[i].celsius);
    }
    Field field = typed(FIELD_TEMPERATURE, "68");
    assert_true(field.bad);
    field_set_temperature(&field, &(Air){.temperature = 20500, .celsius = true});
    assert_string_equal(field.text, "20.5 C");
}
END_TEST

START_TEST(a_name_that_is_not_known_tells_the_nearest)
{
    static const char *const names[] = {"fireplace", "lamp outlet", "window"};
    static const char *const notes[] = {"on north", "on east", "on west"};
    Field field = {.kind = FIELD_NAME, .choices = names, .notes = notes, .choice_count = 3, .empty = "all"};
    field_judge(&field, UNITS_IN);
    assert_false(field.bad);
    assert_int_equal(field_name(&field), -1);
    field_set(&field, " Lamp  OUTLET", UNITS_IN);
    assert_false(field.bad);
    assert_int_equal(field_name(&field), 1);
    assert_string_equal(field.says, "on east");
    field_set(&field, "winow", UNITS_IN);
    assert_true(field.bad);
    assert_int_equal(field_name(&field), -1);
    assert_non_null(strstr(field.says, "nearest: window"));
    field_next_name(&field, UNITS_IN);
    assert_string_equal(field.text, "window");
    field_next_name(&field, UNITS_IN); /* behind the last, the first */
    assert_string_equal(field.text, "fireplace");
    field_set(&field, "", UNITS_IN);
    field_next_name(&field, UNITS_IN);
    assert_string_equal(field.text, "fireplace");
    field = (Field){.kind = FIELD_NAME}; /* no names at all */
    field_next_name(&field, UNITS_IN);
    assert_string_equal(field.text, "");
    field_set(&field, "x", UNITS_IN);
    assert_true(field.bad);
    field_next_name(&field, UNITS_IN);
    assert_string_equal(field.text, "x");
}
END_TEST

/* A form that holds less than the wall must not be taken. */
START_TEST(a_list_too_long_for_the_field_is_bad)
{
    Arena *arena = arena_new();
    Stretches many = {0};
    for (int i = 0; i < 1000; i++)
        *arena_push(arena, &many) = (Stretch){i * LENGTH_INCH, i * LENGTH_INCH + LENGTH_INCH / 2};
    Field field = {.kind = FIELD_STRETCHES};
    field_set_stretches(&field, &many, UNITS_IN);
    assert_true(field.cut && field.bad);
    field_key(&field, PRESS_BACKSPACE, UNITS_IN);
    assert_true(field.bad);
    field_key(&field, PRESS_CTRL | 'u', UNITS_IN);
    assert_false(field.cut || field.bad);
    many.count = 100;
    field_set_stretches(&field, &many, UNITS_IN);
    assert_false(field.bad);
    assert_int_equal(field_stretches(&field, arena, UNITS_IN).count, 100);
    LengthList lengths = {0};
    for (int i = 0; i < 3000; i++)
        *arena_push(arena, &lengths) = i * LENGTH_INCH;
    field = (Field){.kind = FIELD_LENGTHS};
    field_set_lengths(&field, &lengths, UNITS_IN);
    assert_true(field.cut && field.bad);
    arena_free(arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        what_a_tape_says_is_read_and_echoed,
        a_bad_entry_is_kept_and_told,
        an_empty_field_says_what_that_means,
        it_is_edited_in_the_middle,
        lists_and_stretches_are_read,
        a_paste_loses_its_controls_only,
        a_choice_turns_through_its_words,
        the_part_round_the_cursor_is_shown,
        numbers_are_read_as_the_file_reads_them,
        a_temperature_is_echoed_in_both_scales,
        a_name_that_is_not_known_tells_the_nearest,
        a_list_too_long_for_the_field_is_bad,
    };
    return RUN(tests);
}
