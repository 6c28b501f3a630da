#include "base/hash.h"

#include <inttypes.h>
#include <stdio.h>

uint64_t hash_bytes(const void *bytes, size_t length)
{
    const unsigned char *at = bytes;
    uint64_t hash = UINT64_C(14695981039346656037);
    for (size_t i = 0; i < length; i++) {
        hash ^= at[i];
        hash *= UINT64_C(1099511628211);
    }
    return hash;
}

/* 64 bits folded to 48, as the makers of FNV advise: the high bits that are cut off go into the low ones. */
void hash_short(uint64_t hash, char out[13])
{
    uint64_t folded = (hash >> 48) ^ (hash & UINT64_C(0xffffffffffff));
    snprintf(out, 13, "%012" PRIx64, folded);
}
