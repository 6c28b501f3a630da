/*
 * Errors of one file, gathered while it is read, so that several slips are told at once. Each has its line and column;
 * at the end they stand in the order of the file. Beyond ERRORS_MOST nothing more is noted: who mends those sees the
 * rest next time.
 */
#ifndef STORE_REPORT_H
#define STORE_REPORT_H

#include "store/store.h"

enum { ERRORS_MOST = 40 };

typedef struct Report {
    Arena *arena;
    const char *name; /* the file's, for the errors' place */
    Errs errors;
    bool more; /* there were more than ERRORS_MOST */
} Report;

/* `line` and `column` from 1; 0 where the error is about the file as a whole. */
void report_error(Report *report, ErrKind kind, int line, int column, const char *format, ...)
    __attribute__((format(printf, 5, 6)));

bool report_is_full(const Report *report);

/* Sorts what was noted into the order of the file and hands it out. */
void report_finish(Report *report, Errs *out);

#endif
