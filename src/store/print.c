#include "store/print.h"

#include "base/panic.h"
#include "store/value.h"

enum { STEP = 2 };

static bool is_list(const FileKey *key)
{
    return key->kind == VALUE_RECORDS || key->kind == VALUE_HUNG;
}

bool print_wants(const FileKey *key, const void *record)
{
    const bool flagged = key->flag != NO_FLAG && key->kind != VALUE_PERCENT_OR_WORD;
    return value_stands(key, record) &&
           (key->required || flagged || key->stands != NULL || !value_is_default(key, record));
}

const void *print_next(const FileKey *key, const void *record, PrintWalk *walk, const Record **of)
{
    if (key->kind == VALUE_HUNG) {
        if (!hung_walk(record, &walk->hung))
            return NULL;
        const ListPart *part = &key->parts[walk->hung.kind];
        const Array array = array_of(record, part->at);
        *of = part->record;
        return array_item(&array, part->record, walk->hung.index);
    }
    const Array array = array_of(record, key->at);
    *of = key->record;
    return walk->next < array.count ? array_item(&array, key->record, walk->next++) : NULL;
}

/* ---- on one line ---- */

void print_record_in_line(const Print *print, const Record *of, const void *record, Text *out)
{
    bool first = true;
    text_put(out, "{");
    for (int i = 0; i < of->count; i++) {
        const FileKey *key = &of->keys[i];
        if (!print_wants(key, record))
            continue;
        text_format(out, "%s%s: ", first ? "" : ", ", key->name);
        print_in_line(print, key, record, out);
        first = false;
    }
    text_put(out, "}");
}

static void print_lengths(const Print *print, const FileKey *key, const void *record, Text *out)
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

void print_in_line(const Print *print, const FileKey *key, const void *record, Text *out)
{
    if (key->kind == VALUE_RECORD) {
        print_record_in_line(print, key->record, value_inner_const(key, record), out);
    } else if (is_list(key)) {
        text_put(out, "[");
        PrintWalk walk = {0};
        const Record *of;
        bool first = true;
        for (const void *item; (item = print_next(key, record, &walk, &of)) != NULL; first = false) {
            text_put(out, first ? "" : ", ");
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

void print_key(const Print *print, const FileKey *key, const void *record, int indent, Text *out)
{
    text_format(out, "%s:", key->name);
    if (key->kind == VALUE_RECORD && !key->record->one_line &&
        print_has_keys(key->record, value_inner_const(key, record))) {
        new_line(print, indent + STEP, out);
        print_keys(print, key->record, value_inner_const(key, record), indent + STEP, out);
        return;
    }
    if (!is_list(key) || value_is_default(key, record)) {
        text_put(out, " ");
        print_in_line(print, key, record, out);
        return;
    }
    PrintWalk walk = {0};
    const Record *of;
    bool first = true;
    for (const void *item; (item = print_next(key, record, &walk, &of)) != NULL; first = false) {
        if (!first && of->apart)
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
        const FileKey *key = &keys_of_file.keys[i];
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
