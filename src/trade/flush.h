/*
 * Whether the planks end flush with what an opening has around it, from how far that stands out of the bare wall:
 *
 *     wall  |backing|plank |
 *           |              |<-- beyond --  above 0: the planks stand out beyond the casing; below 0: they end behind it
 *           |==== casing =======|
 *           |<---- proud ------>|
 */
#ifndef TRADE_FLUSH_H
#define TRADE_FLUSH_H

#include "layout/layout.h"

/* How far the planks stand out beyond what is around the opening: backing and thickness less `proud`. False where no
 * `proud` is given, or no plank is cut for the opening. */
bool flush_beyond(const Layout *layout, int face, int opening, Length *beyond);

/* "At hatch the planks end 1/4 in behind its casing. A backing of 3/8 in on north, or planks 1 in thick, would make
 * them flush."; NULL where flush_beyond is false. */
const char *flush_words(Arena *arena, const Layout *layout, int face, int opening);

/* RULE_FLUSH where they are not flush by a mark or more. */
void flush_findings(Arena *arena, const Layout *layout, Findings *findings);

#endif
