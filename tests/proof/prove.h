/*
 * Whether what the program says of a wall is true, worked out from the wall and from the printed plan alone: that every
 * course is there and its segments end where they must, that pieces cover them to the nanometre, hang together, can be
 * cut from their boards with kerfs and squared ends, that every broken rule and every bare stretch is told and nothing
 * else is, that numbers follow the hanging order and the totals add up. It shares no line with what it checks: of the
 * program it uses the document, whole numbers of two words, and text.
 *
 * Left to others: looks, prices, starts, seasons, trim; whether a plan is a good one (exact.c, the bound).
 */
#ifndef TESTS_PROOF_PROVE_H
#define TESTS_PROOF_PROVE_H

#include "proof/said.h"

/* False, with the first claims that do not hold in `why`. */
bool prove(const Wall *wall, const char *plan, size_t length, Text *why);

#endif
