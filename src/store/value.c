#include "store/value.h"

#include "base/panic.h"
#include "base/utf8.h"
#include "store/field.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

enum { THOUSAND = 1000 };

void *value_inner(const FileKey *key, void *record)
{
    return (char *)record + key->at;
}

const void *value_inner_const(const FileKey *key, const void *record)
{
    return (const char *)record + key->at;
}

/* ---- arrays ---- */

Array array_of(const void *record, size_t at)
{
    Array array;
    FIELD_GET(record, at, &array);
    return array;
}

void *array_item(const Array *array, const Record *of, int index)
{
    return (char *)array->at + (size_t)index * of->size;
}

void *array_push(Arena *arena, void *record, size_t at, size_t size)
{
    Array array = array_of(record, at);
    array.at = arena_grow(arena, array.at, &array.count, &array.room, size);
    FIELD_PUT(record, at, &array);
    void *item = (char *)array.at + (size_t)(array.count - 1) * size;
    memset(item, 0, size);
    return item;
}

/* ---- flags and defaults ---- */

static bool flag_of(const FileKey *key, const void *record)
{
    bool flag;
    FIELD_GET(record, key->flag, &flag);
    return flag;
}

/* The flag says which of two ways a value is written in, not whether the key stands. */
static bool is_or_word(const FileKey *key)
{
    return key->kind == VALUE_LENGTH_OR_WORD || key->kind == VALUE_PERCENT_OR_WORD;
}

bool value_stands(const FileKey *key, const void *record)
{
    if (key->stands != NULL)
        return key->stands(record);
    if (key->flag == NO_FLAG || is_or_word(key))
        return true;
    return flag_of(key, record) == key->flag_is;
}

void value_mark_given(const FileKey *key, void *record)
{
    if (key->flag != NO_FLAG && !is_or_word(key))
        FIELD_PUT(record, key->flag, &key->flag_is);
}

void value_default(Arena *arena, const FileKey *key, void *record)
{
    if (key->kind == VALUE_TEXT) {
        char *empty = arena_text(arena, "", 0);
        FIELD_PUT(record, key->at, &empty);
    } else if (key->kind == VALUE_COUNT) {
        const int one = 1;
        FIELD_PUT(record, key->at, &one);
    } else if (key->kind == VALUE_RECORD) {
        for (int i = 0; i < key->record->count; i++)
            value_default(arena, &key->record->keys[i], value_inner(key, record));
    }
}

bool value_is_default(const FileKey *key, const void *record)
{
    switch (key->kind) {
    case VALUE_TEXT: {
        const char *text;
        FIELD_GET(record, key->at, &text);
        return text == NULL || text[0] == '\0';
    }
    case VALUE_COUNT: {
        int count;
        FIELD_GET(record, key->at, &count);
        return count == 1;
    }
    case VALUE_LENGTH: {
        Length length;
        FIELD_GET(record, key->at, &length);
        return length == 0;
    }
    case VALUE_WORD: {
        unsigned word;
        FIELD_GET(record, key->at, &word);
        return word == 0;
    }
    case VALUE_RECORD:
        for (int i = 0; i < key->record->count; i++)
            if (!value_is_default(&key->record->keys[i], value_inner_const(key, record)))
                return false;
        return true;
    case VALUE_RECORDS:
    case VALUE_WIDTHS:
    case VALUE_LENGTHS: return array_of(record, key->at).count == 0;
    case VALUE_HUNG: return hung_count(record) == 0;
    case VALUE_PERCENT_OR_WORD: {
        int64_t number;
        FIELD_GET(record, key->at, &number);
        return number == 0 && !flag_of(key, record);
    }
    case VALUE_VERSION:
    case VALUE_ONE_WORD:
    case VALUE_UNITS:
    case VALUE_LENGTH_OR_WORD:
    case VALUE_WHOLE:
    case VALUE_TEMPERATURE:
    case VALUE_PERCENT:
    case VALUE_NUMBER: return false;
    }
    return false;
}

/* ---- writing ---- */

static bool equals_ignoring_case(const char *string, const char *word)
{
    for (; *string != '\0' && *word != '\0'; string++, word++)
        if ((*string >= 'A' && *string <= 'Z' ? *string - 'A' + 'a' : *string) != *word)
            return false;
    return *string == *word;
}

/* Begins with a letter and goes on with what means nothing in YAML, in a flow or outside; and is no word that YAML 1.1
 * or its readers take for a truth value, nothing, or a number. */
static bool is_plain(const char *string)
{
    static const char *const taken[] = {"y",    "n",     "yes",  "no",  "on",  "off",
                                        "true", "false", "null", "nan", "inf", "infinity"};
    const size_t length = strlen(string);
    for (size_t i = 0; i < sizeof taken / sizeof *taken; i++)
        if (equals_ignoring_case(string, taken[i]))
            return false;
    if (length == 0 || string[length - 1] == ' ')
        return false;
    for (size_t i = 0; i < length; i++) {
        const char c = string[i];
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
        const bool other = (c >= '0' && c <= '9') || strchr(" _./()+-'\"", c) != NULL;
        if (!letter && (i == 0 || !other))
            return false;
    }
    return true;
}

/* A text as it is written: plain where every YAML reader takes it for just this text, else in quotes. */
static void write_text(const char *string, Text *out)
{
    const size_t length = strlen(string);
    if (is_plain(string)) {
        text_put(out, string);
        return;
    }
    /* Single quotes take everything that can be seen as it is; what cannot be seen is escaped in double ones. */
    bool unseen = false;
    uint32_t code;
    for (size_t at = 0; at < length; at += (size_t)utf8_decode(string + at, length - at, &code)) {
        const int bytes = utf8_decode(string + at, length - at, &code);
        BUG_UNLESS(bytes > 0);
        unseen |= utf8_unseen(code) || code == 0xa0 || (code >= 0x2000 && code <= 0x206f) ||
                  (code >= 0xfff0 && code <= 0xffff) || code >= 0xe0000;
    }
    text_put(out, unseen ? "\"" : "'");
    for (size_t at = 0; at < length;) {
        const int bytes = utf8_decode(string + at, length - at, &code);
        if (!unseen && code == '\'')
            text_put(out, "''");
        else if (unseen && (code == '"' || code == '\\'))
            text_format(out, "\\%c", (char)code);
        else if (unseen && (code < 0x20 || code >= 0x7f))
            text_format(out, code > 0xffff ? "\\U%08" PRIX32 : "\\u%04" PRIX32, code);
        else
            text_put_bytes(out, string + at, (size_t)bytes);
        at += (size_t)bytes;
    }
    text_put(out, unseen ? "\"" : "'");
}

static void write_thousandths(int64_t value, Text *out)
{
    char number[LENGTH_TEXT_MAX];
    length_write(value * THOUSAND, UNITS_MM, number); /* millionths as a plain decimal */
    text_put(out, number);
}

static void write_length(const FileKey *key, const void *record, Units units, Text *out)
{
    char written[LENGTH_TEXT_MAX];
    Length length;
    FIELD_GET(record, key->at, &length);
    length_write(length, units, written);
    text_put(out, written);
}

static void write_number(const FileKey *key, const void *record, Text *out)
{
    int64_t number;
    FIELD_GET(record, key->at, &number);
    write_thousandths(number, out);
}

static void write_temperature(const void *record, Text *out)
{
    Air air;
    FIELD_GET(record, offsetof(Air, temperature), &air.temperature);
    FIELD_GET(record, offsetof(Air, celsius), &air.celsius);
    write_thousandths(air.temperature, out);
    text_put(out, air.celsius ? " C" : " F");
}

static void write_string(const FileKey *key, const void *record, Text *out)
{
    const char *string;
    FIELD_GET(record, key->at, &string);
    write_text(string == NULL ? "" : string, out);
}

static void write_whole(const FileKey *key, const void *record, Text *out)
{
    int number;
    FIELD_GET(record, key->at, &number);
    text_format(out, "%d", number);
}

static void write_word(const FileKey *key, const void *record, Text *out)
{
    unsigned word;
    FIELD_GET(record, key->at, &word);
    text_put(out, key->words[word]);
}

void value_write(const FileKey *key, const void *record, Units units, Text *out)
{
    const bool or_word = key->kind == VALUE_LENGTH_OR_WORD || key->kind == VALUE_PERCENT_OR_WORD;
    if (or_word && flag_of(key, record)) {
        text_put(out, key->words[0]);
        return;
    }
    switch (key->kind) {
    case VALUE_VERSION: text_put(out, "1"); return;
    case VALUE_TEXT: write_string(key, record, out); return;
    case VALUE_LENGTH_OR_WORD:
    case VALUE_LENGTH: write_length(key, record, units, out); return;
    case VALUE_COUNT:
    case VALUE_WHOLE: write_whole(key, record, out); return;
    case VALUE_ONE_WORD: text_put(out, key->words[0]); return;
    case VALUE_UNITS:
    case VALUE_WORD: write_word(key, record, out); return;
    case VALUE_TEMPERATURE: write_temperature(record, out); return;
    case VALUE_PERCENT_OR_WORD:
    case VALUE_PERCENT:
    case VALUE_NUMBER: write_number(key, record, out); return;
    case VALUE_WIDTHS:
    case VALUE_LENGTHS:
    case VALUE_RECORD:
    case VALUE_RECORDS:
    case VALUE_HUNG: break;
    }
    panic(__FILE__, __LINE__, "a list or mapping is no single value");
}
