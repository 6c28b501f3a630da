/*
 * What a dressed board is sold as: nominal sizes of PS 20 (American Softwood Lumber Standard), boards, dry. Board feet
 * are counted from them.
 */
#ifndef TRADE_NOMINAL_H
#define TRADE_NOMINAL_H

#include "length/length.h"

/* The least nominal width whose dressed width is not under `dressed`; wider than all of them: whole inches above. */
Length nominal_width(Length dressed);

/* Likewise thickness; what is thicker than boards: quarter inches above. */
Length nominal_thickness(Length dressed);

#endif
