/*
 * A wall, or any part of it, as fresh text of the wall file: what a file is that nobody has written in yet, and what is
 * put into one that somebody has. It knows nothing of the old text.
 */
#ifndef STORE_PRINT_H
#define STORE_PRINT_H

#include "base/text.h"
#include "store/keys.h"

/* How a fresh piece is laid out. */
typedef struct Print {
    Units units;
    const char *line_end; /* "\n" or "\r\n" */
} Print;

/* The value of a key on one line: a scalar, or lists and mappings in brackets. */
void print_in_line(const Print *print, const FileKey *key, const void *record, Text *out);

/* A record on one line, { } around it. */
void print_record_in_line(const Print *print, const Record *of, const void *record, Text *out);

/* "key: value" with its value below where that is how a fresh file has it; lines after the first are indented by
 * `indent` and end with the line's end only in between. */
void print_key(const Print *print, const FileKey *key, const void *record, int indent, Text *out);

/* An item of a list of records, behind its "- ", as print_key lays it out. */
void print_item(const Print *print, const Record *of, const void *item, int indent, Text *out);

/* A key that a fresh file has: it stands, and is not what a file without it means. */
bool print_wants(const FileKey *key, const void *record);

/* A fresh record of this would have any key. */
bool print_has_keys(const Record *of, const void *record);

/* Going through the items of a list of records, in the order of the file, from (PrintWalk){0} on. */
typedef struct PrintWalk {
    HungWalk hung;
    int next;
} PrintWalk;

/* The next item, what it is in `of`; NULL behind the last. */
const void *print_next(const FileKey *key, const void *record, PrintWalk *walk, const Record **of);

/* The whole file. */
void print_file(const Wall *wall, Text *out);

#endif
