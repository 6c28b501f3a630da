/*
 * The menu, which lists what can be done here and is typed into, and the help, which lists all keys. Both are drawn
 * from the table of actions.
 */
#ifndef SCREEN_LISTS_MENU_H
#define SCREEN_LISTS_MENU_H

#include "screen/app/app.h"

void menu_open(App *app);
void help_open(App *app);

#endif
