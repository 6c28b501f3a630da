/*
 * Nails as they are asked for in the United States: by the penny, which tells the length (common and finish nails
 * alike). 2d is 1 in long and 60d 6 in (NAVEDTRA 14119, figure 3-50); the steps between are the usual table: a quarter
 * inch for each penny to 10d, then 12d, 16d, 20d and every ten.
 */
#ifndef TRADE_PENNY_H
#define TRADE_PENNY_H

#include "length/length.h"

/* The least penny size that is at least so long; 0 where none is. */
int penny_of(Length length);

#endif
