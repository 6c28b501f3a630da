/*
 * A fuzz target is one C file that feeds a storey with arbitrary bytes and checks what must hold for all of them. It is
 * linked either with libFuzzer or with replay.c, which runs it over the seeds and over changes of them.
 */
#ifndef TESTS_FUZZ_H
#define TESTS_FUZZ_H

#include <stddef.h>
#include <stdint.h>

/* libFuzzer's entry; returns 0. What does not hold ends in a panic. */
int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size);

#endif
