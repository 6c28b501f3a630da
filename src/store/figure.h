/*
 * Figures of the wall file that are no lengths, one at a time: read and written as the file has them, for whoever asks
 * a person for one. It knows no keys and no ranges.
 */
#ifndef STORE_FIGURE_H
#define STORE_FIGURE_H

#include "base/err.h"
#include "base/text.h"
#include "wall/wall.h"

/* Thousandths; false with `err` filled (no place), the number untouched. A percentage is refused with its sign. */
bool figure_read_number(const char *text, size_t length, int64_t *thousandths, Err *err);
bool figure_read_percent(const char *text, size_t length, int64_t *thousandths, Err *err);

/* "68 F", "20 C": into the air's temperature, its humidity untouched. */
bool figure_read_temperature(const char *text, size_t length, Air *air, Err *err);

void figure_write_number(int64_t thousandths, Text *out);
void figure_write_temperature(const Air *air, Text *out);

#endif
