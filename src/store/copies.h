/*
 * The recovery copies of one wall file. The newest has the name that the session gives it; those before it, which the
 * user wanted to keep for later, have that name with a number behind it, and none is ever written over.
 */
#ifndef STORE_COPIES_H
#define STORE_COPIES_H

#include "store/store.h"

/* A copy of an earlier run. */
typedef struct RecoveryCopy {
    char *path;
    int64_t kept; /* when: seconds since 1970 */
} RecoveryCopy;
typedef struct RecoveryCopies {
    RecoveryCopy *at;
    int count;
    int room;
} RecoveryCopies;

/* Moves the copy at `recovery` aside, to the first number that is free. */
bool copies_aside(const char *recovery, Err *err);

/* Those that differ from the file at `path`, newest first. The one at `recovery` itself only where `newest` is asked
 * for and it was written no earlier than the file, or the file's date lies in the future and says nothing. */
RecoveryCopies copies_waiting(Arena *arena, const char *recovery, bool newest, const char *path);

#endif
