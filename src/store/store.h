/*
 * The wall file: one table of keys, by which it is read, checked, written and documented. Reading reports every
 * independent mistake at once, each with line and column. Writing keeps what a person wrote: comments, the order of
 * keys and the notation of every value that did not change. It knows nothing of courses or boards cut; only this storey
 * includes yaml.h.
 */
#ifndef STORE_STORE_H
#define STORE_STORE_H

#include "base/err.h"
#include "base/text.h"
#include "wall/wall.h"

enum { STORE_FILE_MOST = 8 * 1024 * 1024, STORE_NESTING_MOST = 16 };

typedef struct Errs {
    Err *at;
    int count;
    int room;
} Errs;

/* What was read: the wall and the text it came from. */
typedef struct Source {
    Wall *wall;
    char *text; /* the file's bytes, for keeping comments at a save */
    size_t length;
    uint64_t hash; /* of the bytes: tells later whether the file on disk changed */
} Source;

/* Understands `text`; `name` stands in the errors' place. On failure at least one error is in `errs` (allocated in
 * `arena`), in the order of the file, and `out` is untouched. */
bool store_parse(Arena *arena, const char *name, const char *text, size_t length, Source *out, Errs *errs);

/* Reads the file at `path` ("-": standard input) and understands it. */
bool store_read(Arena *arena, const char *path, Source *out, Errs *errs);

/* Where the place of `err` is a field path of the wall that was read, puts the file `name`, line and column in its
 * stead; any other error is left as it is. */
void store_locate(const Source *source, const char *name, Err *err);

/* The text of `wall` as a wall file. With `source` (may be NULL) its comments, order and notation are kept wherever the
 * value did not change. Saving twice gives equal bytes; parsing the result gives an equal wall. */
void store_write(const Wall *wall, const Source *source, Text *out);

#endif
