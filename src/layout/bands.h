/*
 * Which courses a face could have, and their bands: counted from the reference course up and down, an edge measured
 * after hanging taken in. For layout.c; knows nothing of limits but how far they reach.
 */
#ifndef LAYOUT_BANDS_H
#define LAYOUT_BANDS_H

#include "layout/courses.h"

typedef struct CourseBand {
    int64_t number;
    Length bottom, top;
} CourseBand;

typedef struct CourseBands {
    CourseBand *at; /* by number, rising */
    int count;
    int room;
    HungEdges misfits; /* measured edges that would leave their own course no height: they do not count */
} CourseBands;

typedef struct BandsAsked {
    Length start;           /* height of the reference course's lower edge */
    Length lowest, highest; /* courses with some part between these heights */
    int most;               /* how many there may be */
} BandsAsked;

/* The bands of the face that are asked for, all of it in `arena`; false where they are more than `most`. */
bool bands_of_face(Arena *arena, const Wall *wall, int face, const BandsAsked *asked, CourseBands *bands);

#endif
