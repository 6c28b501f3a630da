/*
 * Exact lengths. A length is a whole number of nanometres in 64 bits, so that inches to the 64th and tenths of a
 * millimetre are both exact (1 in = 25.4 mm by definition of 1959, hence 1/64 in = 396 875 nm). This storey turns text
 * into lengths and lengths into text. It knows nothing of planks, walls, the locale or floating point.
 */
#ifndef LENGTH_LENGTH_H
#define LENGTH_LENGTH_H

#include "base/err.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef int64_t Length; /* nanometres */

#define LENGTH_MM INT64_C(1000000)
#define LENGTH_INCH INT64_C(25400000)
#define LENGTH_FOOT INT64_C(304800000)
#define LENGTH_METRE INT64_C(1000000000)
#define LENGTH_MOST INT64_C(1000000000000) /* 1 km: beyond it, either way, is an error */

typedef enum Units { UNITS_IN, UNITS_MM } Units;

enum { LENGTH_TEXT_MAX = 48 }; /* room for any printed length with its unit and NUL */

/* Reads the whole of text[0..length). A bare number is in `units`; the notation is that of datumrow(5). A value between
 * two nanometres goes to the nearest, half away from zero. On failure `err` says what is wrong and what to write
 * instead (no place). */
bool length_parse(const char *text, size_t length, Units units, Length *out, Err *err);

/* Plain decimal number without unit, as the wall file takes it, in millionths: "12.5" gives 12500000. At most six
 * digits behind the point, below 10^12 either way; a sign may stand in front. */
bool length_parse_number(const char *text, size_t length, int64_t *millionths, Err *err);

/* To the nearest whole multiple of `step` (> 0), half away from zero. */
Length length_round(Length value, Length step);

/* Floor and ceiling to whole multiples of `step` (> 0). */
Length length_round_down(Length value, Length step);
Length length_round_up(Length value, Length step);

/* For people: rounded to `step`. Inches as "40 1/2", "-1/16", "0" in lowest terms (a `step` that is no whole number of
 * 64ths counts as 1/64 in); millimetres as "1029", "12.5" with as many digits behind the point as `step` needs. No unit
 * sign. out[LENGTH_TEXT_MAX]. */
void length_show(Length value, Units units, Length step, char *out);

/* As length_show with the unit behind it: "40 1/2 in", "1029 mm". */
void length_show_unit(Length value, Units units, Length step, char *out);

/* For echoes: as length_show_unit, but feet and inches from 12 in up ("8' 3 1/2\""), metres from 1 m up ("2.527 m"). */
void length_show_long(Length value, Units units, Length step, char *out);

/* Exact, for the wall file: the shortest text that length_parse reads back to the same value in `units` (fractions to
 * 1/64 where they are exact in inches, else decimals, else millimetres with the unit). */
void length_write(Length value, Units units, char *out);

/* Distinct marks of a running sum: the printed length of [from, to] so that printed neighbours add up: the difference
 * of the two rounded marks, not the rounded difference. */
Length length_between(Length from, Length to, Length step);

#endif
