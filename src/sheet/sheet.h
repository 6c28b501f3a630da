/*
 * A sheet of paper work before it is paper: title, sections, groups of lines that stay together, cells on a line. Each
 * sheet is laid out once in these terms and then shown as text, PDF, SVG or, from its table of data, CSV. Places on a
 * line are character cells of a page 76 wide; a drawn page has the same proportions. It knows nothing of walls and
 * boards, nor of how a page is drawn.
 */
#ifndef SHEET_SHEET_H
#define SHEET_SHEET_H

#include "base/arena.h"
#include "sheet/drawing.h"

#include <stdbool.h>

enum {
    SHEET_COLUMNS = 76, /* of a text page */
    SHEET_LINES = 54    /* of a text page */
};

typedef enum Weight {
    WEIGHT_TEXT,   /* 12 pt */
    WEIGHT_STRONG, /* 12 pt, bold */
    WEIGHT_WORDS,  /* 14 pt, bold: what a line is about */
    WEIGHT_MARK    /* 18 pt, bold: what is marked on the wall */
} Weight;

typedef enum Align { ALIGN_LEFT, ALIGN_RIGHT } Align;

typedef enum CellKind {
    CELL_TEXT,
    CELL_TICK,  /* a box to tick; ticked where `text` is not "" */
    CELL_PENCIL /* a ruled space to write on; `text` stands in front of it */
} CellKind;

typedef struct SheetCell {
    CellKind kind;
    Weight weight;
    Align align;
    int at, width;    /* character cells from the page's left edge */
    bool foot;        /* drawn pages underline each 6 and 9: upside down the one is the other */
    bool cut;         /* what is longer than `width` is cut; else it goes on in the next line */
    const char *text; /* UTF-8, safe to show */
} SheetCell;

typedef struct SheetLine {
    SheetCell *at;
    int count;
    int room;
    bool rule;             /* a line above it */
    bool hair;             /* a thin line above it, on drawn pages alone */
    const Drawing *sketch; /* drawn pages show this in the cells' place, without scale; NULL where there is none */
} SheetLine;

typedef struct SheetLines {
    SheetLine *at;
    int count;
    int room;
} SheetLines;

/* What is never split over two pages, unless it fills more than one. */
typedef struct SheetGroup {
    SheetLines lines;
    bool with_next; /* it also stays with the group behind it: a heading */
    bool apart;     /* some space in front of it, but not on top of a page */
} SheetGroup;

typedef struct SheetGroups {
    SheetGroup *at;
    int count;
    int room;
} SheetGroups;

/* A section begins a page of its own where `new_page`; its heads stand again on top of each page that it goes on. */
typedef struct SheetSection {
    const char *kind;  /* for the page head: "Row sheet"; NULL: what the whole sheet is */
    const char *place; /* for the page head: the face, or "" */
    bool new_page;
    SheetLines heads;
    SheetGroups groups;
    const Drawing *drawing; /* drawn pages show this on a landscape page, not the groups; NULL where there is none */
} SheetSection;

typedef struct SheetSections {
    SheetSection *at;
    int count;
    int room;
} SheetSections;

/* The sheet's content as rows of fields, for CSV. */
typedef struct SheetRecord {
    const char **at; /* as many as there are names */
} SheetRecord;

typedef struct SheetRecords {
    const char **names;
    int name_count;
    SheetRecord *at;
    int count;
    int room;
} SheetRecords;

typedef struct Sheet {
    Arena *arena;
    const char *kind;  /* "Row sheet" */
    const char *title; /* the job */
    const char *facts; /* units, rounding, start height */
    const char *file;
    const char *hash;
    const char *plan; /* its number; NULL where there is none */
    const char *date; /* "" leaves a space to write it on */
    SheetSections sections;
    SheetRecords records;
} Sheet;

SheetSection *sheet_section(Sheet *sheet, const char *place, bool new_page);
SheetGroup *sheet_group(Sheet *sheet, SheetSection *section);
/* A new line at the end of `lines`; the pointer dies at the next. */
SheetLine *sheet_line(Sheet *sheet, SheetLines *lines);
void sheet_cell(Sheet *sheet, SheetLine *line, int at, int width, Align align, Weight weight, const char *text);
/* The number of a piece, right aligned, each 6 and 9 underlined where that can be. */
void sheet_number(Sheet *sheet, SheetLine *line, int at, int width, Weight weight, int number);
void sheet_tick(Sheet *sheet, SheetLine *line, int at, bool ticked);
void sheet_pencil(Sheet *sheet, SheetLine *line, int at, int width, const char *label);
/* A line with a drawing of no scale on drawn pages; on text pages it holds `text`. */
void sheet_sketch(Sheet *sheet, SheetLines *lines, const Drawing *drawing, const char *text);
/* A paragraph from `at` to the page's right edge: one line, or several where it would fill half a page. */
void sheet_words(Sheet *sheet, SheetLines *lines, int at, Weight weight, const char *text);

/* Names of the CSV's columns, once; then rows of as many texts, copied. */
void sheet_records(Sheet *sheet, const char *const *names, int count);
/* A new row, every field "" until it is set. */
SheetRecord *sheet_record(Sheet *sheet);

/* The head of page `page` (from 1) of `pages`: always as many lines as of any other page. */
SheetLines sheet_page_head(Arena *arena, const Sheet *sheet, const SheetSection *section, int page, int pages);

#endif
