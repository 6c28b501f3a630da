/*
 * The sheets that are made of a job, each one function. A sheet lives in the job's words and the given arena; it is
 * shown by plain.h, csv.h and, where that is built in, pdf.h.
 */
#ifndef SHEET_SHEETS_SHEETS_H
#define SHEET_SHEETS_SHEETS_H

#include "job/job.h"
#include "sheet/sheet.h"

/* Said once on every sheet that pieces are marked and cut by. */
#define SHEET_WAY_ROUND                                                                                            \
    "Lay every board and piece good face up, labeled end to the left, top edge away from you. Pencil the piece's " \
    "number on the back, each 6 and 9 underlined, with an arrow to its top edge."

/* An empty sheet of this kind ("Row sheet") with the job's title, facts, file and hash. `date` "" leaves a space for
 * it. */
Sheet *sheet_of_job(Arena *arena, const Job *job, const char *kind, const char *date);

/* What to know before anything is cut: plan number, order of work, faces, tools, boards, every finding. Its data are
 * the findings. */
Sheet *sheet_first(Arena *arena, const Job *job, const char *date);

/* Every sheet that work is done by, the first page in front. Its data are the findings. */
Sheet *sheet_all(Arena *arena, const Job *job, const char *date);

/* Every course in hanging order, face by face: marks, rip, pieces, cutouts; then hazards and faults. */
Sheet *sheet_rows(Arena *arena, const Job *job, const char *date);

/* The same behind a first page: without hazards and faults. */
Sheet *sheet_rows_of_all(Arena *arena, const Job *job, const char *date);

/* Every board that is opened, in the order in which its first piece is hung, and what is cut from it. */
Sheet *sheet_cuts(Arena *arena, const Job *job, const char *date);

/* The pieces of the cut sheet by the saw's settings: equal lengths, fence settings, angles. */
Sheet *sheet_batch(Arena *arena, const Job *job, const char *date);

/* Every mark from the level line, highest first. */
Sheet *sheet_pole(Arena *arena, const Job *job, const char *date);

/* How planks are held, and which pieces fasteners alone do not hold. */
Sheet *sheet_nails(Arena *arena, const Job *job, const char *date);

/* What the wall takes: boards, trim, fasteners, adhesive, finish; with what each line assumes. */
Sheet *sheet_bill(Arena *arena, const Job *job, const char *date);

/* Start heights worth considering, best first, with what each does to top, bottom and openings. */
Sheet *sheet_starts(Arena *arena, const Job *job, const char *date);

/* Rough boards to planks: what to do with each, whether it is enough, which rip width makes the most of them. */
Sheet *sheet_mill(Arena *arena, const Job *job, const char *date);

/* The elevation of each face. */
Sheet *sheet_draw(Arena *arena, const Job *job, const char *date);

/* Faults and cautions alone. */
Sheet *sheet_check(Arena *arena, const Job *job, const char *date);

/* Adds the hazards and faults of this wall to the end of a sheet, and where to find the cautions and what holds on any
 * such job; nothing where there is none of them. */
void sheet_add_findings(Sheet *sheet, const Job *job);

/* Adds every finding to the end of a sheet, or that there is none; they become its data. */
void sheet_add_every_finding(Sheet *sheet, const Job *job);

#endif
