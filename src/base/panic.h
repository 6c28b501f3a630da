/*
 * A broken invariant is a bug, and running out of memory is a stop: both end here. The editor hangs its
 * own last acts (restore the terminal, name the recovery copy) on the hook; without one the message goes
 * to standard error and the program aborts. Work that can be refused as a whole is attempted: a bug in it
 * gives it up, and its caller goes on.
 */
#ifndef BASE_PANIC_H
#define BASE_PANIC_H

#include <stdbool.h>
#include <stddef.h>

typedef void PanicHook(const char *message);

/* The hook runs once, before the abort; a second panic inside it aborts at once. NULL takes it off. */
void panic_hook(PanicHook *hook);

_Noreturn void panic(const char *file, int line, const char *message);

typedef void PanicWork(void *with);

/* Does the work; false where an invariant broke in it: `place` says where in the sources then ("layout.c:354"). For
 * work that writes nothing but what its caller drops when it fails: what it had allocated stays lost. Running out of
 * memory is still a stop. */
bool panic_attempt(PanicWork *work, void *with, char *place, size_t size);

/* The work attempted is given up; a panic where none is. */
_Noreturn void panic_bug(const char *file, int line, const char *message);

/* Stays on in release builds. */
#define BUG_UNLESS(condition) ((condition) ? (void)0 : panic_bug(__FILE__, __LINE__, "this should hold: " #condition))

#endif
