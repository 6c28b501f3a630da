#include "screen/forms/field.h"

#include "base/nearest.h"
#include "base/utf8.h"
#include "store/figure.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/*
 * What is typed into a field, read: whether it is good and what is said beside it, and what it comes to.
 */

enum { COUNT_MOST = 1000000000, NAMES_TOLD = 3, NAME_TOLD = 60, THOUSAND = 1000, TENTH = 100 };

bool field_empty(const Field *field)
{
    return field->text[strspn(field->text, " ")] == '\0';
}

/* The part of a list from `at` to the next comma, blanks trimmed. */
static const char *next_part(const char *at, const char **from, size_t *length)
{
    at += strspn(at, " ");
    size_t whole = strcspn(at, ",");
    *from = at;
    *length = whole;
    while (*length > 0 && at[*length - 1] == ' ')
        (*length)--;
    return at[whole] == ',' ? at + whole + 1 : at + whole;
}

/* "31 to 34 1/2": where "to" stands, or NULL. */
static const char *find_to(const char *from, size_t length)
{
    for (size_t i = 1; i + 2 < length; i++)
        if (memcmp(from + i, "to", 2) == 0 && from[i - 1] == ' ' && from[i + 2] == ' ')
            return from + i;
    return NULL;
}

static bool read_stretch(const char *from, size_t length, Units units, Stretch *out, Err *err)
{
    const char *to = find_to(from, length);
    if (to == NULL)
        return err_set(err, ERR_VALUE, "a stretch needs both its ends; write %s",
                       units == UNITS_IN ? "31 to 34 1/2" : "790 to 880");
    size_t first = (size_t)(to - from);
    while (first > 0 && from[first - 1] == ' ')
        first--;
    const char *second = to + 2;
    size_t left = length - (size_t)(second - from);
    while (left > 0 && *second == ' ') {
        second++;
        left--;
    }
    return length_parse(from, first, units, &out->from, err) && length_parse(second, left, units, &out->to, err);
}

static bool read_list(const Field *field, Arena *arena, Units units, LengthList *lengths, Stretches *stretches,
                      Err *err)
{
    const char *at = field->text;
    while (at[strspn(at, " ")] != '\0') {
        const char *from;
        size_t length;
        at = next_part(at, &from, &length);
        if (lengths != NULL) {
            if (!length_parse(from, length, units, arena_push(arena, lengths), err))
                return false;
        } else if (!read_stretch(from, length, units, arena_push(arena, stretches), err)) {
            return false;
        }
    }
    return true;
}

static bool read_count(const char *text, int *count)
{
    text += strspn(text, " ");
    int value = 0, digits = 0;
    for (; *text >= '0' && *text <= '9'; text++, digits++) {
        if (value > COUNT_MOST / 10)
            return false;
        value = value * 10 + (*text - '0');
    }
    *count = value;
    return digits > 0 && text[strspn(text, " ")] == '\0';
}

static const char *trimmed(const Field *field, size_t *length)
{
    const char *from = field->text + strspn(field->text, " ");
    *length = strlen(from);
    while (*length > 0 && from[*length - 1] == ' ')
        (*length)--;
    return from;
}

/* Both systems, the wall's own first, so that a slip between them is seen at once. */
static void say_both(char *out, size_t size, Length value, Units units)
{
    char inches[LENGTH_TEXT_MAX], metric[LENGTH_TEXT_MAX];
    length_show_long(value, UNITS_IN, LENGTH_INCH / 64, inches);
    length_show_unit(value, UNITS_MM, LENGTH_MM / 10, metric);
    if (units == UNITS_IN)
        snprintf(out, size, "%s = %s", inches, metric);
    else
        snprintf(out, size, "%s = %s", metric, inches);
}

static void judge_length(Field *field, Units units)
{
    size_t length;
    const char *from = trimmed(field, &length);
    Length value;
    Err err;
    field->bad = !length_parse(from, length, units, &value, &err);
    if (field->bad)
        snprintf(field->says, sizeof field->says, "%.239s", err.text);
    else
        say_both(field->says, sizeof field->says, value, units);
}

static void judge_list(Field *field, Units units)
{
    Arena *arena = arena_new();
    LengthList lengths = {0};
    Stretches stretches = {0};
    Err err;
    bool plain = field->kind == FIELD_LENGTHS;
    field->bad = !read_list(field, arena, units, plain ? &lengths : NULL, &stretches, &err);
    if (field->bad)
        snprintf(field->says, sizeof field->says, "%.239s", err.text);
    else if (plain && lengths.count == 1)
        say_both(field->says, sizeof field->says, lengths.at[0], units);
    else if (plain)
        snprintf(field->says, sizeof field->says, "%d lengths", lengths.count);
    else
        snprintf(field->says, sizeof field->says, "%d %s", stretches.count,
                 stretches.count == 1 ? "stretch" : "stretches");
    arena_free(arena);
}

static bool read_number(const Field *field, int64_t *thousandths, Err *err)
{
    size_t length;
    const char *from = trimmed(field, &length);
    return field->kind == FIELD_PERCENT ? figure_read_percent(from, length, thousandths, err)
                                        : figure_read_number(from, length, thousandths, err);
}

static bool read_temperature(const Field *field, Air *air, Err *err)
{
    size_t length;
    const char *from = trimmed(field, &length);
    return figure_read_temperature(from, length, air, err);
}

static void judge_number(Field *field)
{
    int64_t thousandths;
    Err err;
    field->bad = !read_number(field, &thousandths, &err);
    if (field->bad)
        snprintf(field->says, sizeof field->says, "%.239s", err.text);
    else if (field->kind == FIELD_PERCENT)
        snprintf(field->says, sizeof field->says, "percent");
}

static void put_degrees(char *out, size_t size, int64_t thousandths, char unit)
{
    int64_t tenths = (thousandths + (thousandths < 0 ? -TENTH / 2 : TENTH / 2)) / TENTH;
    int64_t whole = tenths < 0 ? -tenths : tenths;
    char behind[8] = "";
    if (whole % 10 != 0)
        snprintf(behind, sizeof behind, ".%d", (int)(whole % 10));
    snprintf(out, size, "%s%" PRId64 "%s %c", tenths < 0 ? "-" : "", whole / 10, behind, unit);
}

static void judge_temperature(Field *field)
{
    Air air = {0};
    Err err;
    field->bad = !read_temperature(field, &air, &err);
    if (field->bad) {
        snprintf(field->says, sizeof field->says, "%.239s", err.text);
        return;
    }
    int64_t freezing = (int64_t)32 * THOUSAND;
    char celsius[40], fahrenheit[40];
    put_degrees(celsius, sizeof celsius, air.celsius ? air.temperature : (air.temperature - freezing) * 5 / 9, 'C');
    put_degrees(fahrenheit, sizeof fahrenheit, air.celsius ? air.temperature * 9 / 5 + freezing : air.temperature, 'F');
    snprintf(field->says, sizeof field->says, "%s = %s", air.celsius ? celsius : fahrenheit,
             air.celsius ? fahrenheit : celsius);
}

static void say_note(Field *field, int index)
{
    if (field->notes != NULL)
        snprintf(field->says, sizeof field->says, "%s", field->notes[index]);
}

static void judge_name(Field *field)
{
    int index = field_name(field), near[NAMES_TOLD];
    field->bad = index < 0;
    if (!field->bad) {
        say_note(field, index);
        return;
    }
    int count = nearest_names(field->text, field->choices, field->choice_count, near, NAMES_TOLD);
    size_t used = (size_t)snprintf(field->says, sizeof field->says, count > 0 ? "not known; nearest: " : "not known");
    for (int i = 0; i < count && used < sizeof field->says; i++)
        used += (size_t)snprintf(field->says + used, sizeof field->says - used, "%s%.*s",
                                 i == 0           ? ""
                                 : i == count - 1 ? " or "
                                                  : "; ",
                                 (int)utf8_prefix(field->choices[near[i]], NAME_TOLD), field->choices[near[i]]);
}

void field_judge(Field *field, Units units)
{
    field->bad = false;
    field->says[0] = '\0';
    if (field_empty(field)) {
        field->cut = false;
        field->bad = field->needed;
        const char *says = field->empty != NULL ? field->empty : field->needed ? "cannot be left empty" : "";
        snprintf(field->says, sizeof field->says, "%s", says);
        return;
    }
    if (field->cut) {
        field->bad = true;
        snprintf(field->says, sizeof field->says, "longer than a field; change it in the file, or empty this first");
        return;
    }
    switch (field->kind) {
    case FIELD_LENGTH: judge_length(field, units); break;
    case FIELD_LENGTHS:
    case FIELD_STRETCHES: judge_list(field, units); break;
    case FIELD_COUNT: {
        int count;
        field->bad = !read_count(field->text, &count);
        if (field->bad)
            snprintf(field->says, sizeof field->says, "a whole number; write 12");
        break;
    }
    case FIELD_NUMBER:
    case FIELD_PERCENT: judge_number(field); break;
    case FIELD_TEMPERATURE: judge_temperature(field); break;
    case FIELD_NAME: judge_name(field); break;
    case FIELD_CHOICE: say_note(field, field_choice(field)); break;
    case FIELD_TEXT: break;
    }
}

Length field_length(const Field *field, Units units)
{
    size_t length;
    const char *from = trimmed(field, &length);
    Length value = 0;
    if (length > 0)
        length_parse(from, length, units, &value, NULL);
    return value;
}

int field_count(const Field *field)
{
    int count = 0;
    read_count(field->text, &count);
    return count;
}

int64_t field_thousandths(const Field *field)
{
    int64_t thousandths = 0;
    read_number(field, &thousandths, NULL);
    return thousandths;
}

Air field_temperature(const Field *field)
{
    Air air = {0};
    read_temperature(field, &air, NULL);
    return air;
}

int field_name(const Field *field)
{
    for (int i = 0; i < field->choice_count && !field_empty(field); i++)
        if (nearest_same(field->choices[i], field->text))
            return i;
    return -1;
}

int field_choice(const Field *field)
{
    for (int i = 0; i < field->choice_count; i++)
        if (strcmp(field->choices[i], field->text) == 0)
            return i;
    return 0;
}

LengthList field_lengths(const Field *field, Arena *arena, Units units)
{
    LengthList lengths = {0};
    read_list(field, arena, units, &lengths, NULL, NULL);
    return lengths;
}

Stretches field_stretches(const Field *field, Arena *arena, Units units)
{
    Stretches stretches = {0};
    read_list(field, arena, units, NULL, &stretches, NULL);
    return stretches;
}
