/* What a benchmark took of memory. */
#ifndef TESTS_BENCH_MEMORY_H
#define TESTS_BENCH_MEMORY_H

/* The most that the process itself ever held, in KiB, 0 where that cannot be told: getrusage would count what it was
 * forked from. */
long most_memory(void);

#endif
