/*
 * A band of a face as it is measured and nothing else: where between its limits and its openings there is something to
 * cover. Reckoned by cutting the band into columns in which no line crosses another, and asking in each, exactly and in
 * whole numbers, which points lie within. It shares nothing with the storeys that it is held against but the document.
 */
#ifndef TESTS_PROOF_GROUND_H
#define TESTS_PROOF_GROUND_H

#include "wall/wall.h"

typedef long double Real; /* only for where to look, and for areas */

enum { PARTS_MOST = 24 };

/* A stretch of height, at the column's left end and at its right, both just inside. */
typedef struct GroundPart {
    Real bottom[2], top[2];
} GroundPart;

typedef struct Column {
    Real left, right;
    GroundPart parts[PARTS_MOST]; /* of what is to be covered, bottom to top */
    int part_count;
    Real wood;   /* their height in the middle */
    Real region; /* the same, openings left in */
} Column;

typedef struct Columns {
    Column *at;
    int count;
    int room;
} Columns;

typedef struct GroundBox {
    int opening; /* index on its face */
    Length left, right, bottom, top;
} GroundBox;

/* What takes one face: limits come from the wall at each question. */
typedef struct Ground {
    const Wall *wall;
    const Face *face;
    Length left, right; /* x of the plumb lines, corners and margins counted, leans not */
    GroundBox *boxes;   /* grown openings, but for stoves */
    int box_count;
} Ground;

Ground ground_of(Arena *arena, const Wall *wall, int face);

/* The band's columns from left to right; ends fall on every x of `cuts` that lies among them. `sides`: whether the
 * sides bound it, or nothing but its first and last event. */
Columns ground_columns(Arena *arena, const Ground *ground, Length bottom, Length top, const Length *cuts, int cut_count,
                       bool sides);

/* Both limits at x with their margins, just to the right of it and just to the left. */
Real ground_lower(const Ground *ground, Real x, bool right);
Real ground_upper(const Ground *ground, Real x, bool right);

/* x of a side at a height, corners and margins counted; at a step the upper part's. */
Real ground_side(const Ground *ground, bool right, Real y);

/* nm2 between two x of its columns' ends. */
Real ground_area(const Columns *columns, Real left, Real right, bool with_openings);

#endif
