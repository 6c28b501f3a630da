/*
 * Sentences for findings and sheets, made in an arena, with lengths printed as the wall marks them. It knows no rules.
 */
#ifndef TRADE_SAY_H
#define TRADE_SAY_H

#include "base/arena.h"
#include "wall/wall.h"

#include <stdarg.h>

/* A formatted text in `arena`, made safe to show (utf8_safe): it may hold names out of the file. */
const char *say(Arena *arena, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* A size, "40 1/2 in": rounded to the wall's marks; what is not 0 never reads 0, but "under 1/16 in". */
const char *say_length(Arena *arena, const Wall *wall, Length length);

/* A place or a height, likewise rounded: what lies within half a mark of 0 reads "0 in". */
const char *say_place(Arena *arena, const Wall *wall, Length place);

/* To 1/64 in or 0.1 mm: reveals and their changes. */
const char *say_fine(Arena *arena, const Wall *wall, Length length);

/* "1.95 mm" or "0.077 in": to a hundredth of a millimetre or a thousandth of an inch, as coins and sheet steel are
 * measured. */
const char *say_thin(Arena *arena, const Wall *wall, Length length);

/* "one piece", "3 pieces". */
const char *say_count(Arena *arena, int64_t count, const char *one, const char *many);

#endif
