/*
 * What a sheet shows, for the tests of single sheets: its plain text, and its data by the names of their columns.
 */
#ifndef TESTS_SHEET_SHOWN_H
#define TESTS_SHEET_SHOWN_H

#include <string.h>

#include "fill/fill.h"
#include "sheet/sheets/sheets.h"
#include "sheet/writers/plain.h"

/* The sheet as plain text, in its own arena. */
static inline const char *shown(const Sheet *sheet)
{
    Text text;
    text_init(&text);
    plain_write(sheet, &text);
    const char *copy = arena_text(sheet->arena, text.bytes, text.length);
    text_finish(&text);
    return copy;
}

static inline const char *shown_field(const Sheet *sheet, int record, const char *name)
{
    for (int i = 0; i < sheet->records.name_count; i++)
        if (strcmp(sheet->records.names[i], name) == 0)
            return sheet->records.at[record].at[i];
    FAIL("there is no column %s", name);
    return NULL;
}

/* The first record whose column begins with `text`; fails where there is none. */
static inline int shown_record(const Sheet *sheet, const char *name, const char *text)
{
    for (int i = 0; i < sheet->records.count; i++)
        if (strncmp(shown_field(sheet, i, name), text, strlen(text)) == 0)
            return i;
    FAIL("no %s begins with %s", name, text);
    return -1;
}

static inline int shown_times(const char *text, const char *part)
{
    int count = 0;
    for (const char *at = text; (at = strstr(at, part)) != NULL; at++)
        count++;
    return count;
}

static inline const Job *shown_job(Arena *arena, const Layout *layout)
{
    return job_of_parts(arena, layout, fill_by_hand(arena, layout), "wall.yaml", "0123456789ab");
}

#endif
