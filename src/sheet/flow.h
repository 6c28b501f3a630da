/*
 * Which part of a sheet stands on which page: groups are kept whole, headings stay with what they head, the heads of a
 * section come again on each of its pages. The medium (text page, drawn page) says how high a line is; what that is
 * measured in is its own affair.
 */
#ifndef SHEET_FLOW_H
#define SHEET_FLOW_H

#include "sheet/sheet.h"

#include <stdint.h>

typedef struct Medium {
    const void *self;
    int64_t room;  /* of a page, below its head */
    int64_t space; /* in front of a group that stands apart */
    int64_t (*height)(const void *self, const SheetLine *line);
    bool draws; /* a section's drawing gets a page of its own, and its groups are not shown */
} Medium;

/* A run of lines of one group; group -1: only the heads of the section, or its drawing. */
typedef struct Slice {
    int section;
    int group;
    int first, count; /* lines of the group */
    bool heads;       /* the section's heads stand in front of it */
    bool again;       /* the group goes on from the page before: its first line comes once more, in front */
    bool space;
} Slice;

typedef struct SheetPage {
    int section; /* of its first slice: names the place in the page head */
    bool drawing;
    Slice *at;
    int count;
    int room;
} SheetPage;

typedef struct SheetPages {
    SheetPage *at;
    int count;
    int room;
} SheetPages;

/* At least one page. A group that is higher than a whole page is split between lines, and only such a one. */
SheetPages flow_pages(Arena *arena, const Sheet *sheet, const Medium *medium);

#endif
