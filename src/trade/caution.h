/*
 * What can hurt someone, or the work, on this very wall: wood near fire, boxes left behind wood, fasteners that miss the wood or reach too far, plates that do
 * not hide their cut; and the general cautions of the trade, each where the wall file gives the occasion for it and each once. A caution tells what to
 * look up and whom to ask. It defers to the local code, the appliance's manual and licensed trades; it never says that something is safe, and
 * silence means nothing either.
 *
 * Figures are model-code figures; each stands in caution.c with its source.
 */
#ifndef TRADE_CAUTION_H
#define TRADE_CAUTION_H

#include "fill/fill.h"
#include "layout/layout.h"
#include "wall/finding.h"
#include "wall/wall.h"

/* Adds plate, fire, box, nail, wire and anchor, in no order. */
void caution_findings(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings);

/* General advice: for the sheets' last page, the screen's help and the manual. The same on every wall of the same make; each once. */
typedef struct Advice {
    const char *head; /* two or three words: "Old paint" */
    const char *text; /* whole sentences */
    const char *source;
} Advice;

int caution_advice_count(void);
const Advice *caution_advice(int index);

#endif
