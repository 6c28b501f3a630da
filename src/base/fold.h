/*
 * Text folded at spaces into lines of so many cells. A length and its unit ("2 11/16 in") stay on one line where they
 * fit. It knows nothing of who shows the lines.
 */
#ifndef BASE_FOLD_H
#define BASE_FOLD_H

#include "base/arena.h"
#include "base/text.h"

/* Line `number` (from 0) of `text` in lines of `width` cells: it begins at byte `*begin`; its length in bytes is
 * returned, -1 where there is no such line. */
int fold_line(const char *text, int width, int number, int *begin);

/* How many lines that makes; at least one. */
int fold_lines(const char *text, int width);

/* Puts `count` bytes of such a line; a space that does not break comes out as a plain one. */
void fold_put(Text *out, const char *text, size_t count);

/* The text with a space that does not break (U+00A0) between the parts of a length and before its unit. The text itself
 * where it holds none. */
const char *fold_hold(Arena *arena, const char *text);

#endif
