/*
 * From the relaxation to a plan: diving (R. Sadykov, F. Vanderbeck, A. Pessoa, I. Tahiri, E. Uchoa, INFORMS Journal on
 * Computing 31, 2019). Paths from stud to stud are settled run by run (climb.h), the table is put right after each, and
 * what is left to be chosen takes new prices; then the boards are settled, pattern by pattern. What comes out is laid
 * (deal.h); runs for which no wood was found are woven. Joints on studs only. It knows nothing of how well it did.
 */
#ifndef FILL_RELAX_DIVE_H
#define FILL_RELAX_DIVE_H

#include "fill/relax/relaxation.h"
#include "fill/search/beam.h"

typedef struct Dive Dive;

/* `price` is done with; its table is used up. Nothing may be laid. */
Dive *dive_new(Arena *arena, Relaxation *relaxation, Solution *solution, Beam *beam);

/* Settles one more way or pattern and adds its work; true when the wall is laid. */
bool dive_step(Dive *dive, int64_t *work);

#endif
