/*
 * A sheet as drawn pages: PDF, or SVG with its pages one below the other. The area of 184 x 254 mm that is drawn on
 * fits both Letter and A4; a section's drawing stands on a landscape page. Black on white, fonts embedded; nothing of
 * the day or the machine is in it but the fonts that were found. Where the program was built without pangocairo both
 * refuse and name the text sheet.
 */
#ifndef SHEET_WRITERS_PDF_H
#define SHEET_WRITERS_PDF_H

#include "base/err.h"
#include "base/text.h"
#include "sheet/sheet.h"

bool pdf_write(const Sheet *sheet, Text *out, Err *err);
bool svg_write(const Sheet *sheet, Text *out, Err *err);

#endif
