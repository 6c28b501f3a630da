/*
 * Sheets on paper or in a file, out of the editor: the very sheets that the commands print. Asks which and where to.
 */
#ifndef SCREEN_FORMS_PRINT_H
#define SCREEN_FORMS_PRINT_H

#include "screen/app/app.h"

void print_open(App *app);

#endif
