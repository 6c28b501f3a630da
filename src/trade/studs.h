/*
 * Which studs lie behind a stretch of wall. It knows centres alone.
 */
#ifndef TRADE_STUDS_H
#define TRADE_STUDS_H

#include "wall/wall.h"

/* How many of the rising centres lie from `left` to `right`, ends included. */
int studs_between(const LengthList *studs, Length left, Length right);

#endif
