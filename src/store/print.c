#include "store/print.h"

#include "base/panic.h"
#include "store/value.h"

enum { STEP = 2 };

static bool is_list(const Key *key)
{
    return key->kind == VALUE_RECORDS || key->kind == VALUE_HUNG;
}

bool print_wants(const Key *key, const void *record)
{
    return value_stands(key, record) &&
           (key->required || key->flag != NO_FLAG || key->stands != NULL || !value_is_default(key, record));
}

int print_item_count(const Key *key, const void *record)
{
    return array_of(record, key->at).count + (key->other == NULL ? 0 : array_of(record, key->other_at).count);
}

const void *print_item_at(const Key *key, const void *record, int index, const Record **of)
{
    Array array = array_of(record, key->at);
    *of = key->record;
    if (index >= array.count) {
        BUG_UNLESS(key->other != NULL);
        index -= array.count;
        array = array_of(record, key->other_at);
        *of = key->other;
    }
    return array_item(&array, *of, index);
}

/* ---- on one line ---- */

void print_record_in_line(const Print *print, const Record *of, const void *record, Text *out)
{
    bool first = true;
    text_put(out, "{");
    for (int i = 0; i < of->count; i++) {
        const Key *key = &of->keys[i];
        if (!print_wants(key, record))
            continue;
        text_format(out, "%s%s: ", first ? "" : ", ", key->name);
        print_in_line(print, key, record, out);
        first = false;
    }
    text_put(out, "}");
}

static void print_lengths(const Print *print, const Key *key, const void *record, Text *out)
{
    const Array array = array_of(record, key->at);
    const bool alone = key->kind == VALUE_WIDTHS && array.count == 1;
    if (!alone)
        text_put(out, "[");
    for (int i = 0; i < array.count; i++) {
        char written[LENGTH_TEXT_MAX];
        length_write(((const Length *)array.at)[i], print->units, written);
        text_format(out, "%s%s", i == 0 ? "" : ", ", written);
    }
    if (!alone)
        text_put(out, "]");
}

void print_in_line(const Print *print, const Key *key, const void *record, Text *out)
{
    if (key->kind == VALUE_RECORD) {
        print_record_in_line(print, key->record, value_inner_const(key, record), out);
    } else if (is_list(key)) {
        text_put(out, "[");
        for (int i = 0; i < print_item_count(key, record); i++) {
            const Record *of;
            const void *item = print_item_at(key, record, i, &of);
            text_put(out, i == 0 ? "" : ", ");
            print_record_in_line(print, of, item, out);
        }
        text_put(out, "]");
    } else if (key->kind == VALUE_WIDTHS || key->kind == VALUE_LENGTHS) {
        print_lengths(print, key, record, out);
    } else {
        value_write(key, record, print->units, out);
    }
}

/* ---- over lines ---- */

static void new_line(const Print *print, int indent, Text *out)
{
    text_put(out, print->line_end);
    text_put_times(out, ' ', indent);
}

/* The keys of a record, a line each; a record without any is {}. */
static void print_keys(const Print *print, const Record *of, const void *record, int indent, Text *out)
{
    bool first = true;
    for (int i = 0; i < of->count; i++) {
        if (!print_wants(&of->keys[i], record))
            continue;
        if (!first)
            new_line(print, indent, out);
        print_key(print, &of->keys[i], record, indent, out);
        first = false;
    }
    if (first)
        text_put(out, "{}");
}

bool print_has_keys(const Record *of, const void *record)
{
    for (int i = 0; i < of->count; i++)
        if (print_wants(&of->keys[i], record))
            return true;
    return false;
}

void print_item(const Print *print, const Record *of, const void *item, int indent, Text *out)
{
    text_put(out, "- ");
    if (of->one_line)
        print_record_in_line(print, of, item, out);
    else
        print_keys(print, of, item, indent + STEP, out);
}

void print_key(const Print *print, const Key *key, const void *record, int indent, Text *out)
{
    text_format(out, "%s:", key->name);
    if (key->kind == VALUE_RECORD && !key->record->one_line &&
        print_has_keys(key->record, value_inner_const(key, record))) {
        new_line(print, indent + STEP, out);
        print_keys(print, key->record, value_inner_const(key, record), indent + STEP, out);
        return;
    }
    if (!is_list(key) || print_item_count(key, record) == 0) {
        text_put(out, " ");
        print_in_line(print, key, record, out);
        return;
    }
    for (int i = 0; i < print_item_count(key, record); i++) {
        const Record *of;
        const void *item = print_item_at(key, record, i, &of);
        if (i > 0 && of->apart)
            text_put(out, print->line_end);
        new_line(print, indent, out);
        print_item(print, of, item, indent, out);
    }
}

void print_file(const Wall *wall, Text *out)
{
    const Print print = {wall->units, "\n"};
    bool before_apart = false;
    for (int i = 0; i < keys_of_file.count; i++) {
        const Key *key = &keys_of_file.keys[i];
        if (!print_wants(key, wall))
            continue;
        /* groups and lists have air around them */
        const bool apart = key->kind == VALUE_RECORD || is_list(key);
        if (i > 0 && (apart || before_apart))
            text_put(out, "\n");
        print_key(&print, key, wall, 0, out);
        text_put(out, "\n");
        before_apart = apart;
    }
}
