#ifndef TESTS_SUPPORT_UTF8_VALID_H
#define TESTS_SUPPORT_UTF8_VALID_H

#include "base/utf8.h"

/* Index of the first byte that is not valid UTF-8, or `length`. */
static inline size_t utf8_valid(const char *bytes, size_t length)
{
    size_t at = 0;
    uint32_t code;
    while (at < length) {
        int size = utf8_decode(bytes + at, length - at, &code);
        if (size < 0)
            return at;
        at += (size_t)size;
    }
    return length;
}

#endif
