/*
 * Drawing in a process of its own. The libraries that draw end the whole program where memory is gone: so it is only
 * the child that ends, and its parent has an error to tell. What the child drew comes back whole or not at all, and
 * only where it drew the same twice: short of memory the libraries may leave things out without a word.
 */
#ifndef SHEET_WRITERS_APART_H
#define SHEET_WRITERS_APART_H

#include "base/err.h"
#include "base/text.h"
#include "sheet/sheet.h"

typedef bool ApartDraw(const Sheet *sheet, Text *out, Err *err);

/* `draw` in a child: true with what it appended to `out`, which it gets empty; else `err`, its own or that it ended. */
bool apart_draw(ApartDraw *draw, const Sheet *sheet, Text *out, Err *err);

#endif
