#include "store/value.h"

#include "base/nearest.h"
#include "base/panic.h"
#include "base/utf8.h"
#include "store/field.h"

#include <string.h>

/*
 * From text to one value. A message quotes what it refuses, safe to show and cut where it is long, and says what would
 * be taken.
 */

enum { SHOWN = 32, WHOLE_DIGITS = 10, THOUSAND = 1000 };

/* The text safe to quote in a message, cut where it is long. */
static const char *quote(const char *text, size_t length, char out[4 * SHOWN + 4])
{
    char start[4 * SHOWN];
    const size_t size = length < sizeof start - 1 ? length : sizeof start - 1;
    memcpy(start, text, size);
    start[size] = '\0';
    utf8_safe(out, 4 * SHOWN, start, SHOWN, false);
    if (strlen(out) < length)
        memcpy(out + strlen(out), "..", 3);
    return out;
}

/* Digits with at most a sign: true and the number where it fits 10 digits; `too_large` where it has more. */
static bool read_whole(const char *text, size_t length, int64_t *out, bool *too_large)
{
    size_t at = 0;
    const bool negative = length > 0 && text[0] == '-';
    if (length > 0 && (text[0] == '-' || text[0] == '+'))
        at++;
    const size_t first = at;
    int64_t value = 0;
    *too_large = false;
    for (; at < length && text[at] >= '0' && text[at] <= '9'; at++) {
        *too_large |= at - first >= WHOLE_DIGITS;
        if (!*too_large)
            value = value * 10 + (text[at] - '0');
    }
    if (at != length || at == first || (text[first] == '0' && at - first > 1))
        return false;
    *out = negative ? -value : value;
    return true;
}

static bool read_count(const char *text, size_t length, int *out, Err *err)
{
    char quoted[4 * SHOWN + 4];
    int64_t value = 0;
    bool too_large;
    quote(text, length, quoted);
    if (!read_whole(text, length, &value, &too_large))
        return err_set(err, ERR_INPUT, "\"%s\" is no count; write a whole number, like 12", quoted);
    if (too_large || value > WALL_BOARDS_MOST)
        return err_set(err, ERR_LIMIT, "%s is more than %d, the most that is taken; write a smaller count", quoted,
                       WALL_BOARDS_MOST);
    if (value < 1)
        return err_set(err, ERR_VALUE, "%s is no count; write 1 or more, or take the line out", quoted);
    *out = (int)value;
    return true;
}

static bool read_number_of(const FileKey *key, const char *text, size_t length, int *out, Err *err)
{
    char quoted[4 * SHOWN + 4];
    int64_t value = 0;
    bool too_large;
    quote(text, length, quoted);
    if (!read_whole(text, length, &value, &too_large))
        return err_set(err, ERR_INPUT, "\"%s\" is no whole number; write %s", quoted,
                       key->range == RANGE_ANY         ? "one, like 3 or -2"
                       : key->range == RANGE_FROM_ZERO ? "one from 0 up"
                                                       : "one from 1 up");
    if (too_large || value > WALL_BOARDS_MOST || value < -WALL_BOARDS_MOST)
        return err_set(err, ERR_LIMIT, "%s is beyond %d; write a smaller number", quoted, WALL_BOARDS_MOST);
    *out = (int)value;
    return true;
}

void value_list_words(const char *const *words, Text *out)
{
    int count = 0;
    while (words[count] != NULL)
        count++;
    bool first = true;
    for (int i = 0; i < count; i++) {
        if (words[i][0] == '\0')
            continue;
        text_format(out, "%s%s", first ? "" : i == count - 1 ? " or " : ", ", words[i]);
        first = false;
    }
}

static bool read_word(const FileKey *key, const char *text, size_t length, unsigned *out, Err *err)
{
    int count = 0;
    for (; key->words[count] != NULL; count++)
        if (length > 0 && strlen(key->words[count]) == length && memcmp(key->words[count], text, length) == 0) {
            *out = (unsigned)count;
            return true;
        }
    char quoted[4 * SHOWN + 4];
    char whole[SHOWN + 1];
    const size_t size = length < SHOWN ? length : SHOWN;
    memcpy(whole, text, size);
    whole[size] = '\0';
    const char *renamed = keys_renamed(whole);
    for (int i = 0; renamed != NULL && i < count; i++)
        if (strcmp(key->words[i], renamed) == 0)
            return err_set(err, ERR_INPUT, "\"%s\" is written %s now; write %s", whole, renamed, renamed);
    const char *meant = keys_meant(whole);
    for (int i = 0; meant != NULL && i < count; i++)
        if (strcmp(key->words[i], meant) == 0)
            return err_set(err, ERR_INPUT, "\"%s\" is unknown; for that write %s", whole, meant);
    const int near = nearest_word(whole, key->words, count);
    Text known;
    text_init(&known);
    value_list_words(key->words, &known);
    if (near >= 0 && key->words[near][0] != '\0')
        err_set(err, ERR_INPUT, "\"%s\" is not one of %s; did you mean %s?", quote(text, length, quoted), known.bytes,
                key->words[near]);
    else
        err_set(err, ERR_INPUT, "\"%s\" is unknown; write %s", quote(text, length, quoted), known.bytes);
    text_finish(&known);
    return false;
}

static bool read_thousandths(const char *text, size_t length, int64_t *out, Err *err)
{
    int64_t millionths;
    if (!length_parse_number(text, length, &millionths, err))
        return false;
    if (millionths % THOUSAND != 0)
        return err_set(err, ERR_INPUT, "more than three digits behind the point; write three at most");
    *out = millionths / THOUSAND;
    return true;
}

static bool read_temperature(const char *text, size_t length, Air *air, Err *err)
{
    static const char degree[] = "\xc2\xb0";
    char quoted[4 * SHOWN + 4];
    const char unit = length > 0 ? text[length - 1] : '\0';
    size_t end = length > 0 ? length - 1 : 0;
    if (unit != 'F' && unit != 'C' && unit != 'f' && unit != 'c')
        return err_set(err, ERR_INPUT, "\"%s\" does not say its unit; write it like 68 F or 20 C",
                       quote(text, length, quoted));
    if (end >= 2 && memcmp(text + end - 2, degree, 2) == 0)
        end -= 2;
    int64_t value = 0;
    if (!read_thousandths(text, end, &value, err))
        return false;
    air->temperature = value;
    air->celsius = unit == 'C' || unit == 'c';
    return true;
}

static bool read_percent(const char *text, size_t length, int64_t *out, Err *err)
{
    if (length > 0 && text[length - 1] == '%')
        return err_set(err, ERR_INPUT, "it is in percent already; write the number alone, like 45");
    return read_thousandths(text, length, out, err);
}

static bool read_text(Arena *arena, const FileKey *key, const char *text, size_t length, char **out, Err *err)
{
    if (length > WALL_NAME_MOST)
        return err_set(err, ERR_LIMIT, "this has %zu bytes; write %d at most", length, WALL_NAME_MOST);
    if (memchr(text, '\0', length) != NULL || memchr(text, '\n', length) != NULL)
        return err_set(err, ERR_INPUT, "a line break or NUL stands in it; write it on one line");
    if (length == 0 && key->required)
        return err_set(err, ERR_INPUT, "nothing stands here; write a few letters or digits");
    *out = arena_text(arena, text, length);
    return true;
}

static bool read_version(const char *text, size_t length, Err *err)
{
    char quoted[4 * SHOWN + 4];
    int64_t version;
    bool too_large;
    if (!read_whole(text, length, &version, &too_large) || version < 1)
        return err_set(err, ERR_INPUT, "\"%s\" is no version of the format; write 1", quote(text, length, quoted));
    if (too_large || version != 1)
        return err_set(err, ERR_INPUT, "the file is of format %s, this program reads format 1; use a newer datumrow",
                       quote(text, length, quoted));
    return true;
}

/* A value as it stands in the file, and where it goes. */
typedef struct Entry {
    Arena *arena;
    const FileKey *key;
    const char *text;
    size_t length;
    Units units;
    void *record;
} Entry;

static bool put_text(const Entry *entry, Err *err)
{
    char *string = NULL;
    if (!read_text(entry->arena, entry->key, entry->text, entry->length, &string, err))
        return false;
    FIELD_PUT(entry->record, entry->key->at, &string);
    return true;
}

static bool put_length(const Entry *entry, Err *err)
{
    Length measure = 0;
    if (!length_parse(entry->text, entry->length, entry->units, &measure, err))
        return false;
    FIELD_PUT(entry->record, entry->key->at, &measure);
    return true;
}

static bool put_item(const Entry *entry, Err *err)
{
    Length measure = 0;
    if (!length_parse(entry->text, entry->length, entry->units, &measure, err))
        return false;
    void *item = array_push(entry->arena, entry->record, entry->key->at, sizeof measure);
    memcpy(item, &measure, sizeof measure);
    return true;
}

/* A length or a percentage, or the key's own word. */
static bool put_or_word(const Entry *entry, bool percent, Err *err)
{
    const char *word = entry->key->words[0];
    const bool is_word = entry->length == strlen(word) && memcmp(entry->text, word, entry->length) == 0;
    int64_t number = 0;
    Err slip;
    if (!is_word && !(percent ? read_percent(entry->text, entry->length, &number, &slip)
                              : length_parse(entry->text, entry->length, entry->units, &number, &slip)))
        return err_set(err, slip.kind, "%s, or the word %s", slip.text, word);
    FIELD_PUT(entry->record, entry->key->at, &number);
    FIELD_PUT(entry->record, entry->key->flag, &is_word);
    return true;
}

static bool put_whole(const Entry *entry, Err *err)
{
    int number = 0;
    if (!(entry->key->kind == VALUE_COUNT ? read_count(entry->text, entry->length, &number, err)
                                          : read_number_of(entry->key, entry->text, entry->length, &number, err)))
        return false;
    FIELD_PUT(entry->record, entry->key->at, &number);
    return true;
}

static bool put_word(const Entry *entry, Err *err)
{
    unsigned word = 0;
    if (!read_word(entry->key, entry->text, entry->length, &word, err))
        return false;
    if (entry->key->kind != VALUE_ONE_WORD)
        FIELD_PUT(entry->record, entry->key->at, &word);
    return true;
}

static bool put_temperature(const Entry *entry, Err *err)
{
    Air air = {0};
    if (!read_temperature(entry->text, entry->length, &air, err))
        return false;
    FIELD_PUT(entry->record, offsetof(Air, temperature), &air.temperature);
    FIELD_PUT(entry->record, offsetof(Air, celsius), &air.celsius);
    return true;
}

static bool put_number(const Entry *entry, Err *err)
{
    int64_t number = 0;
    if (!(entry->key->kind == VALUE_PERCENT ? read_percent : read_thousandths)(entry->text, entry->length, &number,
                                                                               err))
        return false;
    FIELD_PUT(entry->record, entry->key->at, &number);
    return true;
}

bool value_read(Arena *arena, const FileKey *key, const char *text, size_t length, Units units, void *record, Err *err)
{
    const Entry entry = {arena, key, text, length, units, record};
    switch (key->kind) {
    case VALUE_VERSION: return read_version(text, length, err);
    case VALUE_TEXT: return put_text(&entry, err);
    case VALUE_LENGTH: return put_length(&entry, err);
    case VALUE_LENGTH_OR_WORD: return put_or_word(&entry, false, err);
    case VALUE_PERCENT_OR_WORD: return put_or_word(&entry, true, err);
    case VALUE_WIDTHS:
    case VALUE_LENGTHS: return put_item(&entry, err);
    case VALUE_COUNT:
    case VALUE_WHOLE: return put_whole(&entry, err);
    case VALUE_ONE_WORD:
    case VALUE_UNITS:
    case VALUE_WORD: return put_word(&entry, err);
    case VALUE_TEMPERATURE: return put_temperature(&entry, err);
    case VALUE_PERCENT:
    case VALUE_NUMBER: return put_number(&entry, err);
    case VALUE_RECORD:
    case VALUE_RECORDS:
    case VALUE_HUNG: break;
    }
    panic(__FILE__, __LINE__, "a list or mapping is no single value");
}
