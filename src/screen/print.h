/*
 * Sheets on paper or in a file, out of the editor: the very sheets that the commands print. Asks which and where to.
 */
#ifndef SCREEN_PRINT_H
#define SCREEN_PRINT_H

#include "screen/app.h"

void print_open(App *app);

#endif
