/*
 * An arena for each test of a file, made before it and freed after it, where main ends in `return
 * RUN_WITH_ARENA(tests);`.
 */
#ifndef TESTS_SUPPORT_WITH_ARENA_H
#define TESTS_SUPPORT_WITH_ARENA_H

#include "base/arena.h"
#include "support/test.h"

/* The running test's. */
extern Arena *arena;

void arena_begin(void);
void arena_end(void);

/* A copy of the string in it. */
char *text_in_arena(const char *string);

#define RUN_WITH_ARENA(tests) RUN_WITH(tests, arena_begin, arena_end)

#endif
