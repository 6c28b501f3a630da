/*
 * Doing an action, wherever it comes from: a key, the menu, an answer. The only file that knows every view.
 */
#ifndef SCREEN_DO_H
#define SCREEN_DO_H

#include "screen/app/app.h"

/* Not from within a view: a view puts what it wants into `app->wanted`, and the loop does it. */
void do_action(App *app, ActionId action);

#endif
