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

/* What a fastener goes through on a face before it reaches what holds it: plank, backing, drywall. */
Length fastener_stack(const Wall *wall, int face);

/* Whether planks of the face are cut for the opening. */
bool opening_cuts(const FaceLayout *face, int opening);

#endif
