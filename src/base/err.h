/*
 * One error: what could not be done, where, and what to do instead. A function that can fail takes an
 * `Err *` last, returns false (or NULL) on failure and fills it once, where the cause is known. On
 * success the Err is untouched. Nothing here prints; `command` and `screen` decide what is shown.
 */
#ifndef BASE_ERR_H
#define BASE_ERR_H

#include <stdbool.h>
#include <stddef.h>

typedef enum ErrKind {
    ERR_USAGE,   /* the call or the command's words are off; exit status 2 */
    ERR_INPUT,   /* a file was read and not understood; exit status 3 */
    ERR_VALUE,   /* one value is out of its range; exit status 3 */
    ERR_LIMIT,   /* beyond a size the program takes; exit status 3 */
    ERR_SYSTEM,  /* the system refused: open, write, rename; exit status 3 */
    ERR_CHANGED, /* the file on disk is not the one that was read */
    ERR_LOCKED   /* another editor holds the file */
} ErrKind;

enum { ERR_PLACE_MAX = 512, ERR_TEXT_MAX = 768 };

typedef struct Err {
    ErrKind kind;
    int line;                  /* from 1; 0 where there is no line */
    int column;                /* from 1, in characters; 0 where there is no column */
    char place[ERR_PLACE_MAX]; /* file name or field path ("faces[1].width"); "" where there is none */
    char text[ERR_TEXT_MAX];   /* "what is wrong; what to write instead", one line, valid UTF-8 */
} Err;

/* Fills `err` and returns false, so that a caller can `return err_set(...)`. `err` may be NULL. */
bool err_set(Err *err, ErrKind kind, const char *format, ...) __attribute__((format(printf, 3, 4)));

/* The same, with the system's reason for `errnum` behind the text. */
bool err_system(Err *err, int errnum, const char *format, ...) __attribute__((format(printf, 3, 4)));

/* Sets the place of an error that is filled already; returns false. */
bool err_at(Err *err, const char *place, int line, int column);

/* Writes "place:line:column: text", leaving out what is not known, into `out` of `size` bytes. */
void err_line(const Err *err, char *out, size_t size);

#endif
