/*
 * What lies behind planks where a fastener goes in: studs, by their centers alone, and how thick what covers them is.
 */
#ifndef TRADE_STUDS_H
#define TRADE_STUDS_H

#include "fill/plan.h"
#include "layout/hold.h"
#include "layout/layout.h"

/* Whether the piece is on a face whose studs are entered and none of them stands behind it. */
bool studs_missing(const Layout *layout, const Piece *piece);

/* Of a piece on a face whose studs are entered. */
Hold studs_holding(const Layout *layout, const Piece *piece);

/* What a fastener goes through on a face before it reaches what holds it: plank, backing, drywall. */
Length fastener_stack(const Wall *wall, int face);

/* Whether planks of the face are cut for the opening. */
bool opening_cuts(const FaceLayout *face, int opening);

#endif
