/*
 * What one start height comes to on one face: every strip that it leaves. For starts.c alone; it knows nothing of ranks
 * and reasons.
 */
#ifndef LAYOUT_STARTS_WEIGH_H
#define LAYOUT_STARTS_WEIGH_H

#include "layout/starts_bands.h"
#include "layout/starts_face.h"

/* What one start comes to on one face; widths are -1 where there is no such strip. */
typedef struct StartWeight {
    Strip least;        /* of equal ones the first by course from the bottom, then x */
    Length ceiling;     /* narrowest strip cut by a ceiling and no opening (and no floor) */
    Length floor;       /* likewise by a floor */
    Length ceiling_cut; /* the most that a ceiling takes of a whole face; 0 where it takes nothing */
    Length floor_cut;
    Fine thin;     /* length of wall along which a strip is below bands->least */
    int cutouts;   /* pairs of a course and an opening that takes some of it */
    Length *above; /* for each opening of the face: narrowest strip that lies on its top edge */
    Length *below; /* likewise under its bottom edge */
} StartWeight;

/* `weight->above` and `below` point to room for every opening of the face. `scratch` is reset. */
void weigh_face(Arena *scratch, const WeighFace *face, const Bands *bands, StartWeight *weight);

#endif
