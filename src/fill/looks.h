/*
 * Looks, the last tie-break: boards change places among what is cut from them so that neighbours of one tone come
 * apart, where each board takes the other's pieces; nothing else of the plan changes. Neighbours are pieces end to end
 * and pieces over one another; the measure is the count of neighbours of equal tone. Pairs are exchanged as long as
 * that lessens it. It knows nothing of joints.
 */
#ifndef FILL_LOOKS_H
#define FILL_LOOKS_H

#include "fill/laid.h"

/* The covers with their spans exchanged, in `arena`; adds its work to `work`. */
const Cover *looks_exchange(Arena *arena, const Demand *demand, const Pile *pile, const Cover *covers, int64_t *work);

#endif
