/*
 * The lists of the editor: what each holds, and what choosing a line does.
 */
#ifndef SCREEN_LISTS_H
#define SCREEN_LISTS_H

#include "screen/list.h"

void lists_findings(App *app); /* faults and cautions; the line in focus is shown on the elevation */
void lists_openings(App *app); /* of the face shown */
void lists_stock(App *app);    /* boards at hand, line by line */

/* The first screen: a new wall, the sample, recent files. Lets go of the document first. */
void lists_first(App *app);

#endif
