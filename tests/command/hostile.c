/*
 * Whatever a wall file says in any of its texts, nothing comes out that turns the direction of text, controls a
 * terminal, is no character at all or is cut inside one: every text field of the table of keys, every output, by bytes.
 */
#include "support/test.h"

#include <stdlib.h>
#include <string.h>

#include "base/file.h"
#include "base/utf8.h"
#include "command/check_list.h"
#include "command/table.h"
#include "config.h"
#include "sheet/writers/csv.h"
#include "sheet/writers/pdf.h"
#include "sheet/writers/plain.h"
#include "sheet/writers/plan.h"
#include "store/store.h"
#include "store/value.h"

enum { MARKS = 112, POISON_MOST = 260 };

/* What is put behind each text: marks that turn direction, controls, and what is no character; then marks alone. */
static const char *const turned =
    "\xe2\x80\xae\xe2\x81\xa6\xd8\x9c\x1b[31m\x07\x7f\xef\xbf\xbe\xef\xb7\x90\xf0\x9f\xbf\xbf"
    "\xc2\x9b=\"',;<&\xe2\x80\xa8\xef\xbb\xbf";

static void put_marks(char *out)
{
    for (int i = 0; i < MARKS; i++)
        memcpy(out + 2 * i, "\xcc\x81", 2);
    out[2 * MARKS] = '\0';
}

static int poisoned; /* texts, of all walls */

/* ---- into every text of the table of keys ---- */

static void poison_record(Arena *arena, const Record *of, void *record, const char *poison);

static void poison_text(Arena *arena, const FileKey *key, void *record, const char *poison)
{
    char *text;
    memcpy(&text, (char *)record + key->at, sizeof text);
    /* a wood is looked up by its name; where there is no text, none is asked for */
    if (text == NULL || text[0] == '\0' || strcmp(key->name, "species") == 0)
        return;
    char *more = arena_bytes(arena, POISON_MOST + 1);
    snprintf(more, POISON_MOST, "%.20s%s", text, poison);
    memcpy((char *)record + key->at, &more, sizeof more);
    poisoned++;
}

static void poison_list(Arena *arena, const Record *of, const Array *list, const char *poison)
{
    for (int i = 0; i < list->count; i++)
        poison_record(arena, of, array_item(list, of, i), poison);
}

static void poison_record(Arena *arena, const Record *of, void *record, const char *poison)
{
    for (int i = 0; i < of->count; i++) {
        const FileKey *key = &of->keys[i];
        if (key->kind == VALUE_TEXT)
            poison_text(arena, key, record, poison);
        else if (key->kind == VALUE_RECORD)
            poison_record(arena, key->record, value_inner(key, record), poison);
        if (key->kind == VALUE_RECORDS) {
            const Array list = array_of(record, key->at);
            poison_list(arena, key->record, &list, poison);
        }
        for (int k = 0; key->kind == VALUE_HUNG && k < HUNG_KINDS; k++) {
            const Array list = array_of(record, key->parts[k].at);
            poison_list(arena, key->parts[k].record, &list, poison);
        }
    }
}

/* ---- what comes out ---- */

/* Nothing but characters that may be shown, line ends and form feeds. */
static void hold_safe(const char *path, const char *what, const Text *text)
{
    uint32_t code;
    for (size_t at = 0; at < text->length;) {
        int size = utf8_decode(text->bytes + at, text->length - at, &code);
        if (size <= 0)
            FAIL("%s, %s: byte %d is cut or no UTF-8", path, what, (int)at);
        bool line = code == '\n' || code == '\r' || code == '\f';
        bool control = (code < 0x20 && !line) || (code >= 0x7f && code < 0xa0);
        bool nothing = (code & 0xfffe) == 0xfffe || (code >= 0xfdd0 && code <= 0xfdef);
        bool turns = (code >= 0x202a && code <= 0x202e) || (code >= 0x2066 && code <= 0x2069) || code == 0x61c ||
                     code == 0x200e || code == 0x200f;
        if (control || nothing || turns || code == 0x2028 || code == 0xfeff)
            FAIL("%s, %s: U+%04X at byte %d", path, what, (unsigned)code, (int)at);
        at += (size_t)size;
    }
}

static void hold_sheets(const char *path, Arena *arena, const Job *job)
{
    for (int i = 0; i < table_command_count(); i++) {
        const Command *command = table_command(i);
        if (command->sheet == NULL)
            continue;
        const Sheet *sheet = command->sheet(arena, job, "");
        Err err = {0};
        Text text;
        text_init(&text);
        plain_write(sheet, &text);
        hold_safe(path, command->name, &text);
        text_clear(&text);
        csv_write(sheet, &text);
        hold_safe(path, command->name, &text);
        if (DATUMROW_PDF) {
            text_clear(&text);
            if (!svg_write(sheet, &text, &err))
                FAIL("%s, %s as SVG: %s", path, command->name, err.text);
            hold_safe(path, "svg", &text);
            text_clear(&text);
            if (!pdf_write(sheet, &text, &err))
                FAIL("%s, %s as PDF: %s", path, command->name, err.text);
            assert_true(text.length > 5 && memcmp(text.bytes, "%PDF-", 5) == 0);
        }
        text_finish(&text);
    }
}

static void hold_wall(const char *path, const Source *source, Arena *arena)
{
    Err err = {0};
    const Job *job = job_of_wall(arena, source->wall, path, "0123456789ab", &err);
    if (job == NULL)
        FAIL("%s: %s", path, err.text);
    hold_sheets(path, arena, job);
    Text text;
    text_init(&text);
    for (int columns = CHECK_LIST_LEAST; columns <= CHECK_LIST_MOST; columns += 38) {
        text_clear(&text);
        check_list_write(job, columns, &text);
        hold_safe(path, "check in a window", &text);
    }
    text_clear(&text);
    plan_write(job, &text);
    hold_safe(path, "plan", &text);
    text_clear(&text);
    store_write(source->wall, NULL, &text);
    hold_safe(path, "the file", &text);
    text_finish(&text);
}

static void hold_file(const char *name, const char *poison)
{
    Arena *arena = arena_new();
    char path[1000];
    snprintf(path, sizeof path, "%s/%s", getenv("DATUMROW_SOURCE"), name);
    Source source;
    Errs errs = {0};
    if (!store_read(arena, path, &source, &errs))
        FAIL("%s: %s", path, errs.at[0].text);
    poison_record(arena, &keys_of_file, source.wall, poison);
    hold_wall(name, &source, arena);
    arena_free(arena);
}

static const char *const files[] = {"samples/stove-corner.yaml", "samples/shop-mill.yaml", "samples/gable.yaml",
                                    "tests/walls/alcove.wall.yaml", "tests/walls/landing.wall.yaml"};

START_TEST(nothing_turns_or_controls)
{
    for (size_t i = 0; i < sizeof files / sizeof *files; i++)
        hold_file(files[i], turned);
    assert_true(poisoned > 40);
}
END_TEST

START_TEST(no_character_is_cut)
{
    char marks[2 * MARKS + 1];
    put_marks(marks);
    for (size_t i = 0; i < sizeof files / sizeof *files; i++)
        hold_file(files[i], marks);
    assert_true(poisoned > 40);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {nothing_turns_or_controls, no_character_is_cut};
    return RUN(tests);
}
