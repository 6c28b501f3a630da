/*
 * The wall reckoned again, by other means than layout's: limits read off the marks at any x, wood looked for between
 * neighbouring heights, areas as polygons clipped by half planes. In long double, good to a few nanometres at a wall's
 * size; it shares no line with what it checks.
 */
#ifndef TESTS_LAYOUT_RECKON_H
#define TESTS_LAYOUT_RECKON_H

#include "layout/layout.h"

typedef long double Real;

typedef struct Reckoned {
    const Wall *wall;
    const Face *face;
    const Box *openings; /* grown; those that cut, `opening_count` of them */
    const int *opening_index;
    int opening_count;
    Length left_loss, right_loss; /* by corners */
} Reckoned;

Reckoned reckon_face(Arena *arena, const Wall *wall, int index);

/* Limits at x; at a step the value right of it. */
Real reckon_lower(const Reckoned *face, Real x);
Real reckon_upper(const Reckoned *face, Real x);

/* Height of wood at x in the band, within the sides. */
Real reckon_wood(const Reckoned *face, Length bottom, Length top, Real x);

/* How many stretches of height the sides leave of the band at x, openings left in. */
int reckon_stretches(const Reckoned *face, Length bottom, Length top, Real x);

/* nm2 of the band within the four limits; and less the grown openings. */
void reckon_area(const Reckoned *face, Length bottom, Length top, Real *region, Real *wood);

/* What a floor, a ceiling or an opening leaves at x of the band, bottom to top, sides left aside. */
typedef struct Left {
    Real bottom, top;
    bool strip; /* something cut it, and that is no rake */
    bool floor, ceiling;
    int opening; /* the lower one that bounds it, or -1 */
} Left;

enum { LEFT_MOST = 16 };
int reckon_parts(const Reckoned *face, Length bottom, Length top, Real x, Left parts[LEFT_MOST]);

#endif
