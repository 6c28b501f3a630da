/*
 * Published instances of bin packing and cutting stock (tests/pack/instances/README.md says whose they are), read for
 * tests and benchmark, and a check of a way of cutting that trusts nothing it says of itself.
 */
#ifndef TESTS_PACK_INSTANCES_H
#define TESTS_PACK_INSTANCES_H

#include "pack/pack.h"

#include <stdio.h>

typedef struct Instance {
    char name[64];
    PackStock *stock;
    int stock_count;
    PackItem *items;
    int item_count;
    Length lower, upper; /* known bounds of the cost; equal where the optimum is known */
} Instance;

/* Opens a file of tests/pack/instances; a message and exit where it is not there. */
FILE *instances_open(const char *file);

/* The next instance; false at the end. `several` for the form with several stock lengths. */
bool instance_read(FILE *file, bool several, Arena *arena, Instance *out);

/* NULL where the result is a way of cutting: every item cut or missing, each once, no bin over its capacity, no stock
 * used more often than there is, cost and counts as stated, the bound not above the cost. Else what is wrong. */
const char *instance_fault(const Instance *instance, const PackResult *result);

#endif
