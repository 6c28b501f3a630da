/*
 * One editor at a time on a file. The lock is a record lock on a small file beside it (`.NAME.lock`), which the system
 * lets go of when the process ends, however it ends; the file itself says who holds it, for people. Where nothing can
 * be written beside the file, the lock lies in the state folder. Locks of one process are counted, so that an editor
 * that opens its own file again does not stand in its own way.
 */
#ifndef STORE_LOCK_H
#define STORE_LOCK_H

#include "base/err.h"

typedef struct Lock Lock;

/* Takes the lock of the file at `real`, a path without links. NULL with ERR_LOCKED where somebody else holds it, told
 * with process number and machine; NULL with ERR_SYSTEM where no lock can be had. */
Lock *lock_take(const char *real, Err *err);

/* It was taken more than once in this process. */
bool lock_is_shared(const Lock *lock);

/* Lets go of it; NULL does nothing. */
void lock_leave(Lock *lock);

#endif
