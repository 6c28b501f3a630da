/*
 * The lists of the editor: what each holds, and what choosing a line does.
 */
#ifndef SCREEN_LISTS_LISTS_H
#define SCREEN_LISTS_LISTS_H

#include "screen/lists/list.h"

void lists_findings(App *app);  /* faults and cautions; the line in focus is shown on the elevation */
void lists_openings(App *app);  /* of the face shown */
void lists_stock(App *app);     /* boards at hand, line by line */
void lists_rough(App *app);     /* boards still to be milled, and what comes of them */
void lists_trim_runs(App *app); /* runs of trim, and the strips that are worked out for them */

/* The first screen: a new wall, the sample, recent files. Lets go of the document first. */
void lists_first(App *app);

#endif
