/*
 * The reveal is kept by something thin pushed between two courses. This knows the thickness of things that lie about in
 * every house and shop: coins as their mint publishes them, off-cuts of sheet steel by their gauge; one alone or a few
 * stacked. It knows nothing of walls, nor which reveal would be best.
 *
 * Sources: United States Mint, "Coin Specifications" (thickness in mm). Manufacturers' Standard Gauge for uncoated
 * sheet steel (decimals of an inch); a gauge marked so is from memory. Zinc-coated sheet is thicker than the bare steel
 * of its gauge and is listed by itself. A coin worn by use or a dented off-cut is thinner or thicker than this: measure
 * a stack of ten where it matters (common practice).
 */
#ifndef TRADE_SPACER_H
#define TRADE_SPACER_H

#include "base/arena.h"
#include "length/length.h"

#include <stdbool.h>

typedef struct SpacerThing {
    const char *name;   /* "five-cent coin" */
    const char *plural; /* "five-cent coins" */
    Length thickness;
    bool coin;          /* else sheet steel */
    const char *source; /* the publication, and "from memory" where it was not looked up */
} SpacerThing;

/* The table, thinnest first. */
int spacer_thing_count(void);
const SpacerThing *spacer_thing(int index);

enum { SPACER_STACK_MOST = 3 }; /* more than three slip apart in the hand (common practice) */

/* One thing or a stack: `count[i]` pieces of thing `thing[i]`. */
typedef struct Spacer {
    Length thickness; /* of the whole stack */
    int kinds;        /* 1 or 2 */
    int thing[2];     /* index into the table */
    int count[2];
} Spacer;

typedef struct Spacers {
    Spacer *at;
    int count;
    int room;
} Spacers;

/* All things and stacks of at most SPACER_STACK_MOST with low <= thickness <= high, thinnest first; of equal ones the
 * one with fewer pieces. Coins and steel are not mixed. */
Spacers spacer_choices(Arena *arena, Length low, Length high);

/* Of single things and stacks of one kind of thing: the one whose thickness is nearest to `wish`, and the thinnest that
 * is not under `least`; false where there is none. Of equal ones the one with fewer pieces. */
bool spacer_nearest(Length wish, Spacer *out);
bool spacer_at_least(Length least, Spacer *out);

/* "a five-cent coin", "two dimes and a quarter dollar". */
const char *spacer_words(Arena *arena, const Spacer *spacer);

#endif
