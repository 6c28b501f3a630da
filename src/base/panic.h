/*
 * A broken invariant is a bug, and running out of memory is a stop: both end here. The editor hangs its
 * own last acts (restore the terminal, name the recovery copy) on the hook; without one the message goes
 * to standard error and the program aborts.
 */
#ifndef BASE_PANIC_H
#define BASE_PANIC_H

#include <stdbool.h>

typedef void PanicHook(const char *message);

/* The hook runs once, before the abort; a second panic inside it aborts at once. NULL takes it off. */
void panic_hook(PanicHook *hook);

_Noreturn void panic(const char *file, int line, const char *message);

/* Stays on in release builds. */
#define BUG_UNLESS(condition) ((condition) ? (void)0 : panic(__FILE__, __LINE__, "this should hold: " #condition))

#endif
