/*
 * Which figures make sense. Each has a range: what lies outside it is refused by wall_check, with the range named; what
 * lies at its rim is asked about as a finding (RULE_RANGE), since it may be a slip of the hand. The limits are those of
 * datumrow(5), "Ranges": one for files in inches, one for files in millimetres.
 */
#ifndef WALL_RANGES_H
#define WALL_RANGES_H

#include "wall/finding.h"
#include "wall/wall.h"

typedef enum RangedFigure {
    RANGED_KERF, /* of either saw */
    RANGED_PLANK_WIDTH,
    RANGED_THICKNESS, /* of planks, trim, rough boards */
    RANGED_REVEAL,    /* its error is at the narrowest face of a plank */
    RANGED_LENGTH,    /* of boards, trim and rough ones too */
    RANGED_BOARD_WIDTH,
    RANGED_STUDS, /* from one stud to the next */
    RANGED_PROUD, /* how far a box, a casing, a surround or a collar stands out of the wall, or a box in */
    RANGED_BACKING,
    RANGED_FASTENER,
    RANGED_DRYWALL,
    RANGED_TRIM_WIDTH,
    RANGED_EDGE,  /* taken off an edge to make it straight */
    RANGED_PLANE, /* taken off the thickness */
    RANGED_KEEP,
    RANGED_BEAD,
    RANGED_SHEET_WIDTH,
    RANGED_SHEET_LENGTH,
    RANGED_NOMINAL,
    /* thousandths of plain numbers */
    RANGED_SPARE,
    RANGED_FASTENERS,
    RANGED_CARTRIDGE,
    RANGED_COATS,
    RANGED_COVERAGE,
    RANGED_THINNING,
    RANGED_COUNT
} RangedFigure;

/* least <= low <= high <= most. Below `low` or above `high` a figure is asked about, below `least` or above `most` it
 * is refused. Nanometres, or thousandths of a plain number. */
typedef struct FigureRange {
    int64_t least, low, high, most;
} FigureRange;

FigureRange range_of(RangedFigure figure, Units units);

/* The most studs that a face may have. */
enum { RANGES_STUDS_MOST = 1000 };

/* What a 3-4-5 square may stand off by at its arm: a fifth of it. */
Length range_gap(Units units);

/* A finding for each figure of the wall that is at the rim of its range, and for what is no figure and yet may be a
 * slip: a board ten times the median, two boards of one label, studs on solid wood, a stove
 * off its face, floors or ceilings that do not meet round a corner. `wall` has no problem that wall_check finds. */
void ranges_ask(Arena *arena, const Wall *wall, Findings *findings);

#endif
