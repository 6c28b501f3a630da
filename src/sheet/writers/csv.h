/*
 * A sheet's records as comma-separated values (RFC 4180): a header line of names, CRLF at the end of each line, a field
 * in quotes where it holds a quote, a comma or a line end.
 */
#ifndef SHEET_WRITERS_CSV_H
#define SHEET_WRITERS_CSV_H

#include "base/text.h"
#include "sheet/sheet.h"

void csv_write(const Sheet *sheet, Text *out);

#endif
