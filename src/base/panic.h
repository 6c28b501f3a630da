/*
 * A broken invariant is a bug, and running out of memory is a stop: both end here. Memory set aside before is given
 * back when the rest is gone, so that what the hook does last has some. The editor hangs its own last acts (restore the
 * terminal, name the recovery copy) on the hook; without one the message goes to standard error and the program aborts.
 * Work that can be refused as a whole is attempted: a bug in it gives it up, and its caller goes on.
 */
#ifndef BASE_PANIC_H
#define BASE_PANIC_H

#include <stdbool.h>
#include <stddef.h>

typedef void PanicHook(const char *message);

/* The hook runs once, before the abort; a second panic inside it aborts at once. NULL takes it off. */
void panic_hook(PanicHook *hook);

_Noreturn void panic(const char *file, int line, const char *message);

/* Sets `size` bytes aside, for the last acts. Nobody touches them: until then they are address space alone. */
void panic_reserve(size_t size);

/* An allocation failed: what is attempted is given up, and where nothing is, the program ends as by a panic. */
_Noreturn void panic_no_memory(void);

/* From now on a panic aborts at once: for last acts that no other hook should follow, and no attempt take up. */
void panic_last(void);

typedef void PanicWork(void *with);

/* What `place` says where memory ran out. */
#define PANIC_NO_MEMORY "no memory"

/* Does the work; false where an invariant broke in it: `place` says where in the sources then ("layout.c:354"). For
 * work that writes nothing but what its caller drops when it fails: what it had allocated stays lost. So it is where
 * memory ran out: PANIC_NO_MEMORY. */
bool panic_attempt(PanicWork *work, void *with, char *place, size_t size);

/* The work attempted is given up; a panic where none is. */
_Noreturn void panic_bug(const char *file, int line, const char *message);

/* Stays on in release builds. */
#define BUG_UNLESS(condition) ((condition) ? (void)0 : panic_bug(__FILE__, __LINE__, "this should hold: " #condition))

#endif
