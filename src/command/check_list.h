/*
 * What `check` says at a terminal: hazards, faults and cautions by kind, the place first, the text folded beside it to
 * the width of the window, no pages. A pipe, a file and a printer get the sheet instead (sheet/findings).
 */
#ifndef COMMAND_CHECK_LIST_H
#define COMMAND_CHECK_LIST_H

#include "base/text.h"
#include "job/job.h"

enum { CHECK_LIST_LEAST = 24, CHECK_LIST_MOST = 100 }; /* cells of a line, whatever the window has */

/* The list for a window `columns` wide. */
void check_list_write(const Job *job, int columns, Text *out);

#endif
