/*
 * What sheets say of one piece under its line, in words: rip, ends, miters, laps, cutouts, what shows. Rows, cuts and
 * their data share it, so that what one of them tells all of them tell.
 */
#ifndef SHEET_SHEETS_DETAILS_H
#define SHEET_SHEETS_DETAILS_H

#include "job/plank.h"
#include "sheet/sheets/sheets.h"

typedef struct PieceDetails {
    Plank plank;
    Length length;                            /* as it is printed: between ends that are rounded once each */
    const char *rip;                          /* every break of it */
    const char *laps, *ends, *miters, *shows; /* "" where there is nothing to say */
    const char *closer;                       /* how it is cut to fit; "" where it closes no section */
    const char *cuts;                         /* all of them, a bar between two */
} PieceDetails;

const Course *details_course(const Job *job, const Piece *piece);

PieceDetails details_of(Arena *arena, const Job *job, const Piece *piece);

/* A paragraph for each but the rip, from column `at` on; a closer has room for the length found. */
void details_add(Sheet *sheet, SheetLines *lines, int at, const Job *job, const Piece *piece);

/* What a board is found by: "144 (A2)" where it has a label, else "57 · 31 1/2 gray". */
const char *details_board(Arena *arena, const Wall *wall, int number);

/* "31 to 33; 40 to 41.5" from the first end, as decimals for the data; "" where there is none. */
const char *details_stretches(Arena *arena, const Wall *wall, const Stretches *stretches);

#endif
