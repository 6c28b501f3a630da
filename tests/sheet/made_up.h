/*
 * Sheets made up for the tests of pages: groups of so many lines, each line naming its group and itself.
 */
#ifndef TESTS_SHEET_MADE_UP_H
#define TESTS_SHEET_MADE_UP_H

#include <stdio.h>
#include <string.h>

#include "job/words.h"
#include "sheet/sheet.h"

static inline Sheet *made_up_sheet(Arena *arena)
{
    Sheet *sheet = arena_one(arena, Sheet);
    *sheet = (Sheet){.arena = arena,
                     .kind = "Row sheet",
                     .title = "Boathouse reading wall",
                     .facts = "inches, marked to 1/16; start 2 1/4 up",
                     .file = "reading-wall.yaml",
                     .hash = "0123456789ab",
                     .date = ""};
    return sheet;
}

/* Adds a group whose lines read "group 3 line 1 of 5". */
static inline void made_up_group(Sheet *sheet, SheetSection *section, int number, int lines)
{
    SheetGroup *group = sheet_group(sheet, section);
    for (int i = 1; i <= lines; i++)
        sheet_words(sheet, &group->lines, 4, WEIGHT_TEXT,
                    words(sheet->arena, "group %d line %d of %d", number, i, lines));
}

#endif
