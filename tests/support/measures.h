/* Lengths as tests write them. */
#ifndef TESTS_SUPPORT_MEASURES_H
#define TESTS_SUPPORT_MEASURES_H

#include "length/length.h"

#define SIXTEENTH (LENGTH_INCH / 16)
#define INCHES(n) ((Length)((n)*64) * (LENGTH_INCH / 64)) /* n: whole 64ths */
#define FEET(n) ((Length)(n)*LENGTH_FOOT)
#define MM(n) ((Length)(n)*LENGTH_MM)

#endif
