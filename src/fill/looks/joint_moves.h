/*
 * Changes of joints for looks: runs covered again with the same pieces, each drawn at random and tried once. Joints are
 * put on the nearest place where they may stand. It knows nothing of when to try which.
 */
#ifndef FILL_LOOKS_JOINT_MOVES_H
#define FILL_LOOKS_JOINT_MOVES_H

#include "base/random.h"
#include "fill/looks/arrangement.h"

/* Turns a part of the run end for end, or lets two pieces of it change places. */
void joints_turn(Arrangement *all, Random *random, int run, int64_t most);

/* Moves one joint towards the board that has not as much left as the other. */
void joints_shift(Arrangement *all, Random *random, int run, int64_t most);

/* Lets two runs of about one length change all that lies on them, either way round. */
void joints_exchange(Arrangement *all, Random *random, int run, int other, int64_t most);

/* Lets some pieces of one run change places with some of another that are about as long together. */
void joints_pass(Arrangement *all, Random *random, int run, int other, int64_t most);

#endif
