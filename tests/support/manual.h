/*
 * Lists in the manual pages that are made of tables in the code: what stands between two marks in the page is held to
 * what the table says now.
 */
#ifndef TESTS_SUPPORT_MANUAL_H
#define TESTS_SUPPORT_MANUAL_H

#include "base/text.h"

/* Fails where the page man/`page` does not hold `made` between the lines `.\" WHAT begin` and `.\" WHAT end`. With
 * DATUMROW_RENEW=1 it is put there. */
void manual_hold(const char *page, const char *what, const Text *made);

#endif
