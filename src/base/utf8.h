/*
 * UTF-8, checked and made safe to show. What a user typed may hold control characters, marks that turn the
 * direction of text, or bytes that are no UTF-8 at all: those are shown as visible stand-ins, never sent to
 * a terminal or put on a sheet as they are. Widths are counted by a table of our own, not by the locale.
 */
#ifndef BASE_UTF8_H
#define BASE_UTF8_H

#include "base/arena.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Decodes the character at bytes[0..length): its code point into `code`, its length in bytes returned; 0 at the
 * end, -1 on a byte that starts no valid character (overlong, surrogate, beyond U+10FFFF, cut short). */
int utf8_decode(const char *bytes, size_t length, uint32_t *code);

/* Writes 1 to 4 bytes; returns how many. */
int utf8_encode(uint32_t code, char out[4]);

/* Cells that a code point takes: 0, 1 or 2. Controls and direction marks count 1, as their stand-in does. */
int utf8_width(uint32_t code);

/* Whether the character is shown by a stand-in: a control, a direction mark, a noncharacter. */
bool utf8_unseen(uint32_t code);

/* Cells that a string takes once made safe. */
int utf8_cells(const char *string);

/* Copies `string` into out[size]: control characters, direction marks, noncharacters, bad bytes and a combining mark
 * with nothing before it become U+FFFD, all else is kept; with `ascii` each of them, and each character beyond ASCII,
 * becomes '?', and combining marks are left out. Cut at a character so that it fits both `size` and `cells`. */
void utf8_safe(char *out, size_t size, const char *string, int cells, bool ascii);

/* The text itself where it is safe to show as it is, else a safe copy in `arena`. */
const char *utf8_safe_in(Arena *arena, const char *string);

/* Bytes of the longest prefix of `string` that takes at most `cells` cells. */
size_t utf8_prefix(const char *string, int cells);

#endif
