/*
 * Which courses a face could have, and their bands: counted from the reference course up and down, an edge measured
 * after hanging taken in. For layout.c alone; knows nothing of limits but how far they reach.
 */
#ifndef LAYOUT_ROWS_H
#define LAYOUT_ROWS_H

#include "layout/courses.h"

typedef struct Row {
    int64_t number;
    Length bottom, top;
} Row;

typedef struct Rows {
    Row *at; /* by number, rising */
    int count;
    int room;
} Rows;

/* Every row of the face with some part between the heights `lowest` and `highest`; false where they are more than
 * `most`. `misfits`, in `arena`, are the measured edges that would leave their own course no height: they do not count.
 */
bool rows_of_face(Arena *arena, const Wall *wall, int face, Length start, Length lowest, Length highest, int most,
                  Rows *rows, HungEdges *misfits);

#endif
