/*
 * What lies behind planks where a fastener goes in: studs, by their centers alone, and how thick what covers them is.
 */
#ifndef TRADE_STUDS_H
#define TRADE_STUDS_H

#include "fill/plan.h"
#include "layout/layout.h"

/* How many of the rising centres lie from `left` to `right`, ends included. */
int studs_between(const LengthList *studs, Length left, Length right);

/* Whether the piece is on a face whose studs are entered and none of them stands behind it. */
bool studs_missing(const Layout *layout, const Piece *piece);

/* Common practice: a fastener nearer to an end splits it, unless the joint itself stands on the stud; and wood that
 * stands out further from what holds it moves. */
#define STUD_END_LEAST (LENGTH_INCH * 3 / 4)
#define OVERHANG_MOST (16 * LENGTH_INCH)

/* What holds a piece: studs behind it that are far enough from its ends, or that a joint at an end stands on. */
typedef struct Hold {
    int studs;
    Length left, right; /* how far it stands out beyond the first and the last of them; 0 where there is none */
} Hold;

/* Of a piece on a face whose studs are entered. */
Hold studs_holding(const Layout *layout, const Piece *piece);

/* What a fastener goes through on a face before it reaches what holds it: plank, backing, drywall. */
Length fastener_stack(const Wall *wall, int face);

/* Whether planks of the face are cut for the opening. */
bool opening_cuts(const FaceLayout *face, int opening);

#endif
