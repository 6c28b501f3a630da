/* A grid of cells as text, for goldens and for what a test looks for on the screen. */
#ifndef TESTS_SUPPORT_PICTURE_H
#define TESTS_SUPPORT_PICTURE_H

#include "base/text.h"
#include "screen/term/grid.h"

/* The picture as lines of text, trailing blanks dropped; with `styles`, the style of each cell as a letter in a second
 * picture. */
void picture_write(const Grid *grid, bool styles, Text *out);

#endif
