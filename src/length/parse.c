#include "length/length.h"

#include "base/panic.h"
#include "base/utf8.h"
#include "base/wide.h"

#include <limits.h>
#include <stdio.h>
#include <string.h>

/*
 * The notation, blanks between its tokens as one likes, but none inside a number:
 *
 *     length   = [sign] ( number | measure { measure } [ number ] | digits "-" digits "-" fraction )
 *     measure  = number unit                  units from large to small, of one system, each once
 *     number   = digits ["." digits] | fraction | digits (blanks | "-") fraction
 *     fraction = digits "/" digits            in the last measure only, and not beside a point
 *     unit     = "ft" | "'" | "in" | '"' | "m" | "cm" | "mm"
 *
 * A number behind the last measure is inches, and that measure is feet.
 * digits never begin with a 0 that another digit follows. The three-part form is feet-inches-fraction.
 *
 * Nothing is rounded before the whole value is known. Whole parts add up to whole nanometres. What stands behind points
 * is summed as one does on paper, from the last digit to the first (decimals_of), in integers, however many digits
 * there are; it is not needed beyond the first digit behind the nanometre, since half goes away from zero: that
 * digit alone decides. A fraction n/d of a unit is one exact division, rounded once.
 */

enum { PARTS_MOST = 3, FRACTION_DIGITS = 18, SHOWN_CELLS = 32 };

#define WHOLE_MOST INT64_C(10000000000000) /* whole numbers stop counting here, far beyond 1 km in any unit */
#define NUMBER_MOST INT64_C(999999999999)  /* of plain numbers: their millionths fit 64 bits */

typedef struct Cursor {
    const char *at;
    const char *end;
    Units units;
    bool plain;                       /* a plain number is wanted, not a length */
    char quoted[4 * SHOWN_CELLS + 1]; /* the whole text, safe to show, for messages */
    Err *err;
} Cursor;

typedef struct Unit {
    const char *name; /* as it is written */
    const char *word; /* as it is called in a message, in the plural */
    int64_t nanometres;
    bool metric;
} Unit;

static const Unit unit_table[] = {
    /* a name that begins another one stands behind it */
    {"ft", "feet", LENGTH_FOOT, false},
    {"'", "feet", LENGTH_FOOT, false},
    {"\xe2\x80\xb2", "feet", LENGTH_FOOT, false}, /* U+2032 PRIME */
    {"in", "inches", LENGTH_INCH, false},
    {"\"", "inches", LENGTH_INCH, false},
    {"\xe2\x80\xb3", "inches", LENGTH_INCH, false}, /* U+2033 DOUBLE PRIME */
    {"mm", "millimetres", LENGTH_MM, true},
    {"cm", "centimetres", 10 * LENGTH_MM, true},
    {"m", "metres", LENGTH_METRE, true},
};

typedef struct Quantity {
    int64_t whole;        /* of a fraction alone 0 */
    const char *decimals; /* the digits behind the point */
    size_t decimal_count;
    bool has_fraction;
    int64_t over;
    int64_t under;
    bool in_three_parts; /* 8-3-1/2: whole is feet, inches and fraction follow */
    int64_t inches;
} Quantity;

typedef struct Measure {
    Quantity number;
    const Unit *unit;
} Measure;

/* ---- messages ---- */

static const char *example(Units units)
{
    return units == UNITS_IN ? "40 1/2 or 7' 4 1/2\"" : "1029 or 12.5";
}

static bool refuse(const Cursor *cursor, const char *what, const char *instead)
{
    return err_set(cursor->err, ERR_INPUT, "\"%s\" %s; %s", cursor->quoted, what, instead);
}

/* What stands at the cursor is no part of a length: names the slip where it is a common one. */
static bool refuse_here(const Cursor *cursor)
{
    if (cursor->plain)
        return refuse(cursor, "is not a plain number",
                      "write digits with at most one point among them, like 45 or 68.5");
    static const struct {
        const char *slip;
        const char *what;
        const char *instead;
    } slips[] = {
        {"_", "holds an underscore", "write the digits without it"},
        {":", "holds a colon", "write feet and inches like 7' 4 1/2\""},
        {",", "holds a comma", "write a point before decimals, and thousands without a sign between"},
        {";", "holds a semicolon", "write one length alone"},
        {"\xe2\x88\x92", "has a minus sign that is not the keyboard's", "write -"},
        {"\xe2\x80\x93", "holds a dash that is not the keyboard's", "write -"},
        {"\xe2\x80\x99", "holds a curly quote", "write feet as ' or ft"},
        {"\xe2\x80\x9d", "holds a curly quote", "write inches as \" or in"},
        {"\xc2\xbd", "holds a fraction in one sign", "write it like 1/2"},
        {"\xc2\xbc", "holds a fraction in one sign", "write it like 1/4"},
        {"\xc2\xbe", "holds a fraction in one sign", "write it like 3/4"},
        {"\xe2\x85", "holds a fraction in one sign", "write it like 1/8"},
        {"\xe2\x81\x84", "holds a fraction stroke that is not the keyboard's", "write /"},
        {"+", "has a sign in the middle", "write one sign, in front"},
        {"-", "has a - in the middle", "write a fraction like 3-1/4, and a sign only in front"},
        {".", "holds a point too many", "write one point, with a digit on both sides"},
        {"/", "has a / without a number on both sides", "write a fraction like 1/2"},
    };
    size_t left = (size_t)(cursor->end - cursor->at);
    for (size_t i = 0; i < sizeof slips / sizeof *slips; i++)
        if (strlen(slips[i].slip) <= left && memcmp(cursor->at, slips[i].slip, strlen(slips[i].slip)) == 0)
            return refuse(cursor, slips[i].what, slips[i].instead);
    char instead[80];
    snprintf(instead, sizeof instead, "write one like %s", example(cursor->units));
    return refuse(cursor, "is not a length", instead);
}

/* ---- tokens ---- */

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static bool is_blank(char c)
{
    return c == ' ' || c == '\t';
}

static void skip_blanks(Cursor *cursor)
{
    while (cursor->at < cursor->end && is_blank(*cursor->at))
        cursor->at++;
}

static bool skip_char(Cursor *cursor, char c)
{
    if (cursor->at == cursor->end || *cursor->at != c)
        return false;
    cursor->at++;
    return true;
}

static bool at_digit(const Cursor *cursor)
{
    return cursor->at < cursor->end && is_digit(*cursor->at);
}

/* Digits without a leading zero; beyond `most` the value stays at `most`. */
static bool read_digits(Cursor *cursor, int64_t most, int64_t *value)
{
    if (!at_digit(cursor))
        return refuse_here(cursor);
    const char *start = cursor->at;
    *value = 0;
    for (; at_digit(cursor); cursor->at++) {
        int digit = *cursor->at - '0';
        *value = *value > (most - digit) / 10 ? most : *value * 10 + digit;
    }
    if (*start == '0' && cursor->at - start > 1)
        return refuse(cursor, "has a leading zero", "write the number without it, like 7 or 0.7");
    return true;
}

static bool read_fraction_part(Cursor *cursor, int64_t *value)
{
    const char *start = cursor->at;
    if (!read_digits(cursor, INT64_MAX, value))
        return false;
    if (cursor->at - start > FRACTION_DIGITS)
        return refuse(cursor, "has a fraction of very many digits", "write it in lowest terms, or with a point");
    return true;
}

/* "1/2", the cursor on the first digit. */
static bool read_fraction(Cursor *cursor, Quantity *number)
{
    number->has_fraction = true;
    if (!read_fraction_part(cursor, &number->over))
        return false;
    if (!skip_char(cursor, '/'))
        return refuse(cursor, "lacks a fraction at its end", "write one like 8-3-1/2 or 3-1/4");
    if (!read_fraction_part(cursor, &number->under))
        return false;
    if (number->under == 0)
        return refuse(cursor, "divides by zero", "write a fraction like 1/2");
    return true;
}

/* True where blanks, digits and a / follow: "3 1/4" goes on, "7 4" does not. */
static bool fraction_follows(const Cursor *cursor)
{
    Cursor ahead = *cursor;
    skip_blanks(&ahead);
    const char *start = ahead.at;
    while (at_digit(&ahead))
        ahead.at++;
    return ahead.at > start && ahead.at < ahead.end && *ahead.at == '/';
}

static bool read_decimals(Cursor *cursor, Quantity *number)
{
    if (!at_digit(cursor))
        return refuse(cursor, "has a point with no digit behind it", "write a digit on both sides, like 3.0");
    number->decimals = cursor->at;
    while (at_digit(cursor))
        cursor->at++;
    number->decimal_count = (size_t)(cursor->at - number->decimals);
    if (fraction_follows(cursor) || (cursor->at < cursor->end && *cursor->at == '/'))
        return refuse(cursor, "has a point and a fraction", "write either one, like 3.25 or 3 1/4");
    return true;
}

/* Behind "8-": a fraction, or inches and a fraction. */
static bool read_dashed(Cursor *cursor, Quantity *number)
{
    const char *start = cursor->at;
    int64_t second = 0;
    if (!read_digits(cursor, WHOLE_MOST, &second))
        return false;
    if (!skip_char(cursor, '-')) {
        if (cursor->at == cursor->end || *cursor->at != '/')
            return refuse(cursor, "could be read in two ways", "write 8' 3\" for feet and inches, 8-3-1/2 or 3-1/4");
        cursor->at = start;
        return read_fraction(cursor, number);
    }
    number->in_three_parts = true;
    number->inches = second;
    return read_fraction(cursor, number);
}

static bool read_number(Cursor *cursor, Quantity *number)
{
    *number = (Quantity){.under = 1};
    if (cursor->at < cursor->end && *cursor->at == '.')
        return refuse(cursor, "begins a number with a point", "write a digit in front, like 0.5");
    const char *start = cursor->at;
    if (!read_digits(cursor, WHOLE_MOST, &number->whole))
        return false;
    if (skip_char(cursor, '.'))
        return read_decimals(cursor, number);
    if (skip_char(cursor, '-'))
        return read_dashed(cursor, number);
    if (cursor->at < cursor->end && *cursor->at == '/') {
        cursor->at = start;
        number->whole = 0;
        return read_fraction(cursor, number);
    }
    if (!fraction_follows(cursor))
        return true;
    skip_blanks(cursor);
    return read_fraction(cursor, number);
}

/* NULL in `unit` where none is written. */
static bool read_unit(Cursor *cursor, const Unit **unit)
{
    *unit = NULL;
    const char *word = cursor->at;
    while (cursor->at < cursor->end && is_letter(*cursor->at))
        cursor->at++;
    bool letters = cursor->at > word;
    size_t left = (size_t)((letters ? cursor->at : cursor->end) - word);
    for (size_t i = 0; i < sizeof unit_table / sizeof *unit_table; i++) {
        size_t size = strlen(unit_table[i].name);
        if (letters ? size != left : size > left)
            continue;
        if (memcmp(word, unit_table[i].name, size) == 0) {
            *unit = &unit_table[i];
            cursor->at = word + size;
            return true;
        }
    }
    if (!letters)
        return true;
    cursor->at = word;
    bool more = word + 1 < cursor->end;
    if (strchr("eE", *word) != NULL && left == 1 && more && !is_blank(word[1]))
        return refuse(cursor, "looks like a number with an exponent", "write it out, like 1000");
    if (strchr("xX", *word) != NULL)
        return refuse(cursor, "looks like a hexadecimal number", "write plain decimal digits");
    return refuse(cursor, "has a unit that is not known", "write ft or ' and in or \", or m, cm and mm");
}

/* ---- values ---- */

/* Whole nanometres behind the points of all parts; the digit behind the nanometre into `next_digit`. Position i is the
 * i-th digit behind the point: (carry + digits at i) / 10 goes on to position i-1. */
static int64_t decimals_of(const Measure *parts, int count, int *next_digit)
{
    size_t longest = 0;
    for (int p = 0; p < count; p++)
        if (parts[p].number.decimal_count > longest)
            longest = parts[p].number.decimal_count;
    int64_t carry = 0;
    *next_digit = 0;
    for (size_t i = longest; i > 0; i--) {
        for (int p = 0; p < count; p++)
            if (i <= parts[p].number.decimal_count)
                carry += (parts[p].number.decimals[i - 1] - '0') * parts[p].unit->nanometres;
        *next_digit = (int)(carry % 10);
        carry /= 10;
    }
    return carry;
}

static bool finish(const Cursor *cursor, const Measure *parts, int count, bool negative, Length *out)
{
    Wide sum = 0;
    int next_digit;
    bool has_fraction = parts[count - 1].number.has_fraction;
    for (int p = 0; p < count; p++) {
        if (has_fraction && parts[p].number.decimal_count > 0)
            return refuse(cursor, "has a point and a fraction", "write either one, like 3.25 or 3 1/4");
        const Quantity *number = &parts[p].number;
        sum += (Wide)number->whole * parts[p].unit->nanometres;
        if (number->has_fraction)
            sum += wide_divide((Wide)number->over * parts[p].unit->nanometres, number->under);
    }
    sum += decimals_of(parts, count, &next_digit);
    if (next_digit >= 5)
        sum++;
    if (sum > LENGTH_MOST)
        return err_set(cursor->err, ERR_VALUE, "\"%s\" is beyond 1 km; write a length within a wall", cursor->quoted);
    *out = negative ? -(Length)sum : (Length)sum;
    return true;
}

/* How a part may follow the one before it. Behind feet a bare number is inches, as a tape says it. */
static bool check_order(const Cursor *cursor, const Measure *before, Measure *part)
{
    if (part->unit == NULL && before->unit->nanometres == LENGTH_FOOT)
        part->unit = &unit_table[3];
    if (part->unit == NULL)
        return refuse(cursor, "ends in a number without a unit", "write it like 7' 4\" or 2 m 40 cm");
    if (part->unit->metric != before->unit->metric)
        return refuse(cursor, "mixes feet and inches with metres", "write it in one of the two");
    if (part->unit->nanometres == before->unit->nanometres) {
        char what[64];
        snprintf(what, sizeof what, "has %s twice", part->unit->word);
        return refuse(cursor, what, "write each unit once, like 7' 4\" or 2 m 40 cm");
    }
    if (part->unit->nanometres > before->unit->nanometres)
        return refuse(cursor, "has its smaller unit first", "write the larger one first, like 7' 4\" or 2 m 40 cm");
    if (before->number.has_fraction)
        return refuse(cursor, "has a fraction in the middle", "write the fraction last, like 7' 4 1/2\"");
    return true;
}

static bool finish_three_parts(const Cursor *cursor, const Quantity *number, bool negative, Length *out)
{
    if (cursor->units != UNITS_IN)
        return refuse(cursor, "is feet, inches and a fraction, but bare numbers are millimetres here",
                      "write it like 8' 3 1/2\"");
    if (cursor->at != cursor->end)
        return refuse(cursor, "has something behind feet-inches-fraction",
                      "write it alone, like 8-3-1/2 or 8' 3 1/2\"");
    Measure part = {*number, &unit_table[3]};
    part.number.whole = number->whole * 12 + number->inches;
    return finish(cursor, &part, 1, negative, out);
}

static bool parse(Cursor *cursor, Length *out)
{
    bool negative = skip_char(cursor, '-');
    if (!negative)
        skip_char(cursor, '+');
    skip_blanks(cursor);
    Measure parts[PARTS_MOST];
    int count = 0;
    do {
        Measure part;
        if (!read_number(cursor, &part.number))
            return false;
        skip_blanks(cursor);
        if (part.number.in_three_parts && count == 0)
            return finish_three_parts(cursor, &part.number, negative, out);
        if (!read_unit(cursor, &part.unit))
            return false;
        if (part.number.in_three_parts)
            return refuse(cursor, "has too many parts", "write it like 8' 3 1/2\"");
        if (count > 0 && !check_order(cursor, &parts[count - 1], &part))
            return false;
        skip_blanks(cursor);
        BUG_UNLESS(count < PARTS_MOST); /* three units at most fall from large to small in one system */
        parts[count++] = part;
    } while (parts[count - 1].unit != NULL && cursor->at < cursor->end);
    if (cursor->at < cursor->end) {
        if (at_digit(cursor))
            return refuse(cursor, "has two numbers without a unit", "write it like 7' 4\" or 3 1/4");
        return refuse_here(cursor);
    }
    if (parts[0].unit == NULL)
        parts[0].unit = cursor->units == UNITS_IN ? &unit_table[3] : &unit_table[6];
    return finish(cursor, parts, count, negative, out);
}

/* A copy of text[0..length), safe to show and short; cut where it is longer. */
static void quote(char out[4 * SHOWN_CELLS + 1], const char *text, size_t length)
{
    char start[4 * SHOWN_CELLS + 1];
    size_t size = length < sizeof start - 1 ? length : sizeof start - 1;
    for (size_t i = 0; i < size; i++)
        start[i] = text[i] == '\0' ? '\x01' : text[i]; /* either is shown as a stand-in */
    start[size] = '\0';
    utf8_safe(out, 4 * SHOWN_CELLS + 1, start, SHOWN_CELLS, false);
}

static bool begin(Cursor *cursor, const char *text, size_t length, Err *err)
{
    *cursor = (Cursor){.at = text, .end = text + length, .err = err};
    skip_blanks(cursor);
    while (cursor->end > cursor->at && is_blank(cursor->end[-1]))
        cursor->end--;
    quote(cursor->quoted, cursor->at, (size_t)(cursor->end - cursor->at));
    return cursor->at < cursor->end;
}

bool length_parse(const char *text, size_t length, Units units, Length *out, Err *err)
{
    Cursor cursor;
    if (!begin(&cursor, text, length, err))
        return err_set(err, ERR_INPUT, "nothing stands here; write a length like %s", example(units));
    cursor.units = units;
    return parse(&cursor, out);
}

bool length_parse_number(const char *text, size_t length, int64_t *millionths, Err *err)
{
    Cursor cursor;
    if (!begin(&cursor, text, length, err))
        return err_set(err, ERR_INPUT, "nothing stands here; write a number like 45 or 68.5");
    cursor.plain = true;
    bool negative = skip_char(&cursor, '-');
    if (!negative)
        skip_char(&cursor, '+');
    int64_t value = 0;
    if (!read_digits(&cursor, WHOLE_MOST, &value))
        return false;
    if (value > NUMBER_MOST)
        return err_set(err, ERR_VALUE, "\"%s\" is beyond all measure here; write a number below 10^12", cursor.quoted);
    int digits = 0;
    if (skip_char(&cursor, '.')) {
        for (; at_digit(&cursor) && digits < 6; digits++)
            value = value * 10 + (*cursor.at++ - '0');
        if (digits == 0)
            return refuse(&cursor, "has a point with no digit behind it", "write a digit on both sides, like 3.0");
        if (at_digit(&cursor))
            return refuse(&cursor, "has more than six digits behind the point", "write six at most");
    }
    if (cursor.at < cursor.end)
        return refuse_here(&cursor);
    for (; digits < 6; digits++)
        value *= 10;
    *millionths = negative ? -value : value;
    return true;
}
