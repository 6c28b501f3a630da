/*
 * A wall written into the text that it came from: comments, the order of keys and the notation of every value that did
 * not change are kept, values that did are replaced where they stand.
 */
#ifndef STORE_KEEP_H
#define STORE_KEEP_H

#include "store/store.h"

/* The text of `source` changed so that it says `wall`. False where it is laid out so that this cannot be done piece by
 * piece. What comes out is to be read back and compared before it is trusted. */
bool keep_text(const Wall *wall, const Source *source, Text *out);

/* `text` reads as `wall`, checks of ranges aside. */
bool keep_reads_as(const Wall *wall, const char *text, size_t length);

#endif
