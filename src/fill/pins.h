/*
 * The joints that the file asks for (`pins`) and the places where it wants none (`bars`), row by row. A pin parts its
 * segment into runs, so that there is a joint whatever is chosen; one under a hung piece, or where no wood hangs to
 * both sides of it, is left out and told. No planned joint stands in a bar or at its ends, but for a pin.
 */
#ifndef FILL_PINS_H
#define FILL_PINS_H

#include "base/arena.h"
#include "layout/layout.h"

/* A stretch of x. */
typedef struct Interval {
    Length left, right;
} Interval;

typedef struct Intervals {
    Interval *at;
    int count;
    int room;
} Intervals;

typedef struct RowPins {
    LengthList pins; /* rising, each once */
    Intervals bars;
} RowPins;

/* One for each row, of which those of face i begin at row_first[i]; NULL where the file has neither. */
RowPins *pins_by_row(Arena *arena, const Layout *layout, const int *row_first);

/* Whether x is in one of the bars, ends included. */
bool pins_barred(const Intervals *bars, Length x);

/* The last place at or before x that is in none of them; the first at or after it. */
Length pins_clear_down(const Intervals *bars, Length x);
Length pins_clear_up(const Intervals *bars, Length x);

/* Whether there is a pin of that course, by its number, at x. */
bool pins_pinned(const Wall *wall, int face, int64_t course, Length x);

/* Whether x is in a bar of that course, by its number, ends included. */
bool pins_barred_on(const Wall *wall, int face, int64_t course, Length x);

/* Whether a piece from `left` to `right` of the segment may be planned there: no pin lies inside it, and neither end is
 * a joint that is barred. */
bool pins_allow(const Wall *wall, int face, int64_t course, const Segment *segment, Length left, Length right);

#endif
