/*
 * A band of a face taken apart into trapezoids: the one way in which slabs, segments, outlines and areas are worked
 * out. For the sources of layout alone. Knows nothing of rips, strips and pieces.
 */
#ifndef LAYOUT_TILES_H
#define LAYOUT_TILES_H

#include "layout/limits.h"

/* What is left of a tile between two straight edges. */
typedef struct TilePart {
    const Rail *bottom, *top;
    Length bottom_left, bottom_right, top_left, top_right;
} TilePart;

typedef struct Tile {
    ExactPlace left, right;
    const Rail *lower, *upper; /* the band's own edges or the limits, whatever else cuts */
    Length lower_left, lower_right, upper_left, upper_right;
    TilePart *parts; /* bottom to top */
    int part_count;
} Tile;

typedef struct Tiles {
    Tile *at; /* left to right; apart where the band has no height */
    int count;
    int room;
} Tiles;

/* What is to be taken apart. */
typedef struct TileField {
    const FaceLayout *face;
    Length bottom, top; /* of the band */
    ExactPlace from, to;
    const Cut *cuts; /* grown openings to take out; none for outlines */
    int cut_count;
    bool sides; /* take out what lies beyond leaning sides too; else from..to alone bounds it */
} TileField;

/* Lives in `arena`, rails and all. */
Tiles tiles_of(Arena *arena, const TileField *field);

/* Whether two tiles touch along more than a point, so that something is left where they meet. */
bool tiles_joined(const Tile *left, const Tile *right);

/* Whether the box takes something of the parts. */
bool tiles_meet(const Tiles *tiles, const Box *box);

/* Twice the area of the parts, nm2. */
Wide tiles_area(const Tiles *tiles);

#endif
