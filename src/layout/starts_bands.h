/*
 * Where the courses lie for one start height: a list of widths that repeats up and down without end. Nothing is hung,
 * so it is the same for every face. For starts*.c alone.
 *
 *      foot[1]  ---------------  course 1 of the list
 *               ---------------  foot[0] + height[0]
 *      foot[0]  ---------------  course 0, at `start`
 */
#ifndef LAYOUT_STARTS_BANDS_H
#define LAYOUT_STARTS_BANDS_H

#include "base/arena.h"
#include "wall/wall.h"

typedef struct Bands {
    int count;            /* widths in the list */
    const Length *foot;   /* of course i of the list above that of course 0 */
    const Length *height; /* face of course i of the list */
    Length run;           /* from one course 0 of the list to the next */
    Length start;         /* lower edge of course 0 */
    Length leave;
    Length least; /* narrowest strip worth hanging, in force */
} Bands;

/* Bands of `planks`, whose list lives in `arena`; `start` is set by the caller. */
Bands bands_of(Arena *arena, const Planks *planks);

/* The lower edge of course `number`, any sign, into `foot`; returns its index in the list. */
int bands_foot(const Bands *bands, int64_t number, Length *foot);

/* The lowest course whose upper edge lies above the height `y`. */
int64_t bands_above(const Bands *bands, Length y);

/* Whether the height `y` lies in the gap between two courses, ends included. */
bool bands_gap_at(const Bands *bands, Length y);

#endif
