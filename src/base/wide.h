/*
 * Whole numbers of two machine words, and the few exact operations that geometry in nanometres needs.
 * Coordinates stay below 1 km = 10^12 nm, products of three of them below 10^37, so that 127 bits hold them.
 */
#ifndef BASE_WIDE_H
#define BASE_WIDE_H

#include <stdbool.h>
#include <stdint.h>

__extension__ typedef __int128 Wide;

/* a / b rounded to the nearest whole number, half away from zero; b is not 0. */
Wide wide_divide(Wide a, Wide b);

/* a / b rounded down (toward minus infinity) and up; b is not 0. */
Wide wide_floor(Wide a, Wide b);
Wide wide_ceiling(Wide a, Wide b);

/* Sign of a/b - c/d, exact for any values with b, d > 0 (by continued fractions, no product is formed). */
int wide_compare_ratio(Wide a, Wide b, Wide c, Wide d);

/* The value as 64 bits; a panic where it does not fit. */
int64_t wide_narrow(Wide a);

#endif
