/*
 * A sheet as plain text: pages of at most 76 columns and 54 lines with a form feed between them. Boxes and rules are
 * ASCII; names keep the characters that they were typed in.
 */
#ifndef SHEET_WRITERS_PLAIN_H
#define SHEET_WRITERS_PLAIN_H

#include "base/text.h"
#include "sheet/sheet.h"

void plain_write(const Sheet *sheet, Text *out);

#endif
