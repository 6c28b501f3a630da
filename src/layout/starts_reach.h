/*
 * Which courses there are for one start height on one face, and from where to where each reaches. Both depend on
 * leaning sides, limits and `leave`; a course is worked out when it is first asked for. For starts_*.c alone.
 */
#ifndef LAYOUT_STARTS_REACH_H
#define LAYOUT_STARTS_REACH_H

#include "layout/starts_bands.h"
#include "layout/starts_face.h"

typedef struct CourseReach {
    bool asked;
    bool hung;
    Fine left, right; /* leftmost and rightmost x of the course's region */
} CourseReach;

typedef struct Reaches {
    const WeighFace *face;
    const Bands *bands;
    int64_t first, last; /* numbers of the courses that at[0] and the last are of */
    CourseReach *at;
} Reaches;

/* Of a face that has columns; lives in `arena`. */
Reaches reaches_of(Arena *arena, const WeighFace *face, const Bands *bands);

/* Of a course from `first` to `last`. */
const CourseReach *reach_of(Reaches *reaches, int64_t course);

/* What lies between two heights in one column of the face and between its sides: twice the area, in nm2 / 2^40, and
 * where there is some, how far left and right it reaches. */
Wide band_in_column(const WeighFace *face, const Column *column, Fine bottom, Fine top, Fine *left, Fine *right);

#endif
