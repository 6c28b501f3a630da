/*
 * Something to be read: facts under one another, scrolled, laid over the elevation. They are put together anew for each
 * picture, so they follow the plan while it gets better; nothing can be changed here.
 */
#ifndef SCREEN_VIEWS_READER_H
#define SCREEN_VIEWS_READER_H

#include "screen/app/app.h"
#include "screen/views/facts.h"

/* Puts what is to be read into `facts`, all of it in `arena`. */
typedef void ReaderFill(App *app, Arena *arena, Facts *facts);

void reader_open(App *app, const char *title, ReaderFill *fill);

#endif
