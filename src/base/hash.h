/*
 * A content hash for telling one file's text from another: FNV-1a, 64 bits (G. Fowler, L. Noll, K.-P. Vo; the
 * offset basis and prime from memory). Not for secrets.
 */
#ifndef BASE_HASH_H
#define BASE_HASH_H

#include <stddef.h>
#include <stdint.h>

uint64_t hash_bytes(const void *bytes, size_t length);

/* Twelve lower-case hexadecimal digits and a NUL: what sheets print. */
void hash_short(uint64_t hash, char out[13]);

#endif
