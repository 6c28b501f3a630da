/*
 * A sheet as plain text: pages of at most 76 columns and 54 lines with a form feed between them. Boxes and rules are
 * ASCII; names keep the characters that they were typed in.
 */
#ifndef SHEET_WRITERS_PLAIN_H
#define SHEET_WRITERS_PLAIN_H

#include "base/text.h"
#include "sheet/sheet.h"

void plain_write(const Sheet *sheet, Text *out);

/* The cells that `text` fills in its `number`-th line (from 0) when it is folded at spaces into lines of `width` cells,
 * a length and its unit kept on one line: its bytes from `*begin` on, the length returned; -1 where there is no such
 * line. */
int plain_fold(const char *text, int width, int number, int *begin);

#endif
