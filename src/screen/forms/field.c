#include "screen/forms/field.h"

#include "base/nearest.h"
#include "base/panic.h"
#include "base/utf8.h"
#include "store/figure.h"

#include <stdio.h>
#include <string.h>

/*
 * A field as it is filled, typed into and drawn; field_read.c reads what is in it.
 */

void field_set(Field *field, const char *text, Units units)
{
    size_t length = strlen(text);
    if (length >= sizeof field->text) {
        length = sizeof field->text - 1;
        while (length > 0 && ((unsigned char)text[length] & 0xc0) == 0x80)
            length--;
    }
    memcpy(field->text, text, length);
    field->text[length] = '\0';
    field->cursor = length;
    field_judge(field, units);
}

void field_set_length(Field *field, Length value, Units units)
{
    char text[LENGTH_TEXT_MAX];
    length_write(value, units, text);
    field_set(field, text, units);
}

static void set_list(Field *field, const char *text, bool cut, Units units)
{
    field_set(field, text, units);
    field->cut = cut;
    field_judge(field, units);
}

void field_set_lengths(Field *field, const LengthList *lengths, Units units)
{
    char text[FIELD_BYTES] = "";
    size_t used = 0;
    bool cut = false;
    for (int i = 0; i < lengths->count; i++) {
        char one[LENGTH_TEXT_MAX];
        length_write(lengths->at[i], units, one);
        cut = used + strlen(one) + 3 >= sizeof text;
        if (cut)
            break;
        used += (size_t)snprintf(text + used, sizeof text - used, "%s%s", i > 0 ? ", " : "", one);
    }
    set_list(field, text, cut, units);
}

void field_set_stretches(Field *field, const Stretches *stretches, Units units)
{
    char text[FIELD_BYTES] = "";
    size_t used = 0;
    bool cut = false;
    for (int i = 0; i < stretches->count; i++) {
        char from[LENGTH_TEXT_MAX], to[LENGTH_TEXT_MAX];
        length_write(stretches->at[i].from, units, from);
        length_write(stretches->at[i].to, units, to);
        cut = used + strlen(from) + strlen(to) + 7 >= sizeof text;
        if (cut)
            break;
        used += (size_t)snprintf(text + used, sizeof text - used, "%s%s to %s", i > 0 ? ", " : "", from, to);
    }
    set_list(field, text, cut, units);
}

void field_set_count(Field *field, int count)
{
    char text[16];
    snprintf(text, sizeof text, "%d", count);
    field_set(field, text, UNITS_MM);
}

void field_set_thousandths(Field *field, int64_t thousandths)
{
    Text text;
    text_init(&text);
    figure_write_number(thousandths, &text);
    field_set(field, text.bytes, UNITS_MM);
    text_finish(&text);
}

void field_set_temperature(Field *field, const Air *air)
{
    Text text;
    text_init(&text);
    figure_write_temperature(air, &text);
    field_set(field, text.bytes, UNITS_MM);
    text_finish(&text);
}

void field_set_choice(Field *field, int choice)
{
    BUG_UNLESS(choice >= 0 && choice < field->choice_count);
    field_set(field, field->choices[choice], UNITS_MM);
}

static size_t step_back(const Field *field)
{
    size_t at = field->cursor;
    while (at > 0 && ((unsigned char)field->text[--at] & 0xc0) == 0x80)
        continue;
    return at;
}

static size_t step_on(const Field *field)
{
    size_t at = field->cursor;
    if (field->text[at] != '\0')
        at++;
    while (((unsigned char)field->text[at] & 0xc0) == 0x80)
        at++;
    return at;
}

static void take_out(Field *field, size_t from, size_t to)
{
    memmove(field->text + from, field->text + to, strlen(field->text + to) + 1);
    field->cursor = from;
}

static bool put_in(Field *field, const char *bytes, size_t length)
{
    size_t whole = strlen(field->text);
    if (whole + length >= sizeof field->text)
        return false;
    memmove(field->text + field->cursor + length, field->text + field->cursor, whole - field->cursor + 1);
    memcpy(field->text + field->cursor, bytes, length);
    field->cursor += length;
    return true;
}

void field_next_name(Field *field, Units units)
{
    int index = field_name(field);
    if (index >= 0)
        index = (index + 1) % field->choice_count;
    else if (field_empty(field) || nearest_names(field->text, field->choices, field->choice_count, &index, 1) == 0)
        index = 0;
    if (index < field->choice_count)
        field_set(field, field->choices[index], units);
}

static Key small(Key key)
{
    return key >= 'A' && key <= 'Z' ? key + 'a' - 'A' : key;
}

bool field_chooses(const Field *field, Key key)
{
    if (key == PRESS_LEFT || key == PRESS_RIGHT || key == ' ' || key == '+' || key == '-')
        return true;
    for (int i = 0; i < field->choice_count; i++)
        if (small((Key)(unsigned char)field->choices[i][0]) == small(key))
            return true;
    return false;
}

static bool choice_key(Field *field, Key key)
{
    int now = field_choice(field);
    if (key == PRESS_RIGHT || key == ' ' || key == '+') {
        field_set_choice(field, (now + 1) % field->choice_count);
        return true;
    }
    if (key == PRESS_LEFT || key == '-') {
        field_set_choice(field, (now + field->choice_count - 1) % field->choice_count);
        return true;
    }
    for (int i = 1; i <= field->choice_count; i++) {
        int other = (now + i) % field->choice_count;
        if (key_is_text(key) && small((Key)(unsigned char)field->choices[other][0]) == small(key)) {
            field_set_choice(field, other);
            return true;
        }
    }
    return key_is_text(key);
}

bool field_key(Field *field, Key key, Units units)
{
    if (field->kind == FIELD_CHOICE)
        return choice_key(field, key);
    if (key_is_text(key)) {
        char bytes[4];
        put_in(field, bytes, (size_t)utf8_encode(key, bytes));
    } else if (key == PRESS_BACKSPACE) {
        take_out(field, step_back(field), field->cursor);
    } else if (key == PRESS_DELETE) {
        take_out(field, field->cursor, step_on(field));
    } else if (key == PRESS_LEFT) {
        field->cursor = step_back(field);
    } else if (key == PRESS_RIGHT) {
        field->cursor = step_on(field);
    } else if (key == PRESS_HOME || key == (PRESS_CTRL | 'a')) {
        field->cursor = 0;
    } else if (key == PRESS_END || key == (PRESS_CTRL | 'e')) {
        field->cursor = strlen(field->text);
    } else if (key == (PRESS_CTRL | 'u')) {
        take_out(field, 0, field->cursor);
    } else {
        return false;
    }
    field_judge(field, units);
    return true;
}

bool field_paste(Field *field, const char *text, Units units)
{
    if (field->kind == FIELD_CHOICE)
        return false;
    bool whole = true;
    size_t left = strlen(text);
    while (left > 0 && whole) {
        uint32_t code;
        int bytes = utf8_decode(text, left, &code);
        size_t step = bytes > 0 ? (size_t)bytes : 1;
        if (bytes > 0 && code >= ' ' && code != 0x7f && !(code >= 0x80 && code < 0xa0))
            whole = put_in(field, text, step);
        text += step;
        left -= step;
    }
    field_judge(field, units);
    return whole;
}

void field_draw(const Field *field, Grid *grid, int x, int y, int cells, bool focus)
{
    int style = field->bad ? STYLE_FAULT : focus ? STYLE_CHOSEN : STYLE_FIELD;
    grid_fill(grid, (Rect){x, y, cells, 1}, ' ', style);
    if (field->kind == FIELD_CHOICE) {
        grid_text(grid, x + 1, y, cells - 2, style, field->text);
        grid_glyph(grid, x, y, GLYPH_POINT_LEFT, style);
        grid_glyph(grid, x + cells - 1, y, GLYPH_POINT_RIGHT, style);
        if (focus)
            grid_cursor(grid, x + 1, y);
        return;
    }
    /* with the focus the part round the cursor is shown where the whole does not fit, else its beginning */
    char before[FIELD_BYTES];
    snprintf(before, sizeof before, "%.*s", focus ? (int)field->cursor : 0, field->text);
    const char *from = field->text;
    int left = utf8_cells(before), cut = 0; /* the cell that tells so */
    while (*from != '\0' && left > cells - 1 - cut) {
        char one[8];
        size_t bytes = 1;
        while (((unsigned char)from[bytes] & 0xc0) == 0x80 && bytes + 1 < sizeof one)
            bytes++;
        memcpy(one, from, bytes);
        one[bytes] = '\0';
        left -= utf8_cells(one);
        from += bytes;
        cut = cells > 2 ? 1 : 0;
    }
    if (cut > 0)
        grid_glyph(grid, x, y, GLYPH_MORE, style);
    grid_text(grid, x + cut, y, cells - cut, style, from);
    if (focus)
        grid_cursor(grid, x + cut + left, y);
}
