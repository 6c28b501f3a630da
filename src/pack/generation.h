/*
 * Column generation: prices from the master, the best pattern for them, a new column, until no pattern is worth more
 * than its board costs (P. Gilmore, R. Gomory, Operations Research 9, 1961). What the relaxation costs is then proved
 * in whole numbers: the prices, cut to whole parts, priced every pattern exactly, so that by weak duality (A. Farley,
 * "A note on bounding a class of linear programming problems", Operations Research 38, 1990) nothing cheaper cuts it
 * all.
 */
#ifndef PACK_GENERATION_H
#define PACK_GENERATION_H

#include "pack/master.h"

/* Prices and solves until what is proved, on top of `fixed`, cannot rise to another value of boards any more, or
 * reaches `enough`, or the steps run out. Gives what is proved: the least value that cuts `rest`, not rounded up to
 * what boards add up to. */
int64_t pack_generate_columns(PackMaster *master, const PackRest *rest, int64_t fixed, int64_t enough);

#endif
