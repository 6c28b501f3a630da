/*
 * Every way of cutting a small job, board after board: the largest piece left goes into a board of each kind together
 * with every set of others that no other set dominates, or is left uncut (R. Korf, "A new algorithm for optimal bin
 * packing", AAAI 2002, after S. Martello and P. Toth; here with several kinds of stock, and with too little of it).
 */
#ifndef PACK_COMPLETE_H
#define PACK_COMPLETE_H

#include "pack/work.h"

enum { PACK_COMPLETE_MOST = 64 }; /* pieces of a job worth trying */

/* Searches until the steps run out or every way is weighed; says the latter in `work`. */
void pack_complete(PackWork *work);

#endif
