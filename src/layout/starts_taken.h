/*
 * How many cutouts one start height asks for on one face: pairs of a course that is there and an opening that takes
 * some of it but not all. For starts*.c alone; it knows nothing of pieces, so that a cutout which a joint divides
 * counts once.
 */
#ifndef LAYOUT_STARTS_TAKEN_H
#define LAYOUT_STARTS_TAKEN_H

#include "layout/starts_reach.h"

int taken_count(Reaches *reaches);

#endif
