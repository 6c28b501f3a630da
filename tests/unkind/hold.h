/*
 * One wall from its file to its paper, as a command takes it: written and read back, laid out, filled, looked at by the
 * trade, every sheet in every form. What must hold on the way of any wall is held here; nothing is compared with what
 * another run said.
 */
#ifndef TESTS_UNKIND_HOLD_H
#define TESTS_UNKIND_HOLD_H

#include "base/text.h"
#include "wall/wall.h"

typedef struct Wish {
    bool drawn; /* PDF and SVG too, where they are built in, and the sheet of starts: as long as all the others */
    int steps;  /* of the fill; 0: to its end */
} Wish;

typedef struct Held {
    int pieces, boards; /* of its plan */
    int faults;
} Held;

/* False, with the first thing that does not hold in `why`. */
bool hold_wall(const Wall *wall, Wish wish, Held *held, Text *why);

#endif
