/*
 * How an end of a segment is cut across the width: how far the straight lines of the marks that bound it lean, and what
 * the blade then takes. For the sources of layout alone. Knows nothing of corners, boards and joints.
 */
#ifndef LAYOUT_SLANT_H
#define LAYOUT_SLANT_H

#include "layout/tiles.h"

/* The flattest line that bounds an end: it goes `run` along x while it goes `rise` up or down. 0 and 1: a square end.
 */
typedef struct Slant {
    Length run, rise; /* run >= 0, rise > 0 */
    bool side;        /* a leaning side bounds the end somewhere */
} Slant;

/* The slant of the left (or right) end of the wood in the tiles first..last, which hang together: leaning sides, and
 * floor or ceiling where it is a rake that runs out toward that end. */
Slant slant_of_end(const Tiles *tiles, int first, int last, bool right);

/* What a blade of this kerf takes at such an end: kerf x sqrt(1 + (run/rise)^2 + m^2), m 1 at an outside miter, else 0;
 * rounded up to the nanometre, reckoned exactly. A plain cut takes the kerf. */
Length slant_kerf(Length kerf, const Slant *slant, bool miter);

#endif
