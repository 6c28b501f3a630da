/*
 * From the relaxation to a solution: diving (R. Sadykov, F. Vanderbeck, A. Pessoa, I. Tahiri, E. Uchoa, INFORMS Journal
 * on Computing 31, 2019). Paths from stud to stud are fixed run by run (path_fixing.h); after each the table is
 * reoptimized, and the rest takes the new duals. Then boards are fixed, pattern by pattern. assignment.h turns the
 * result into pieces; runs that got no wood are covered by the beam search. Joints on studs only. It knows nothing of
 * how well it did.
 */
#ifndef FILL_RELAX_DIVE_H
#define FILL_RELAX_DIVE_H

#include "fill/relax/relaxation.h"
#include "fill/search/beam.h"

typedef struct Dive Dive;

/* Uses up the relaxation's table. The solution must be empty. `budget`: units of work, of which the last step may take
 * more. */
Dive *dive_new(Arena *arena, Relaxation *relaxation, Solution *solution, Beam *beam, int64_t budget);

/* Fixes one more path or pattern and adds its work; true when the wall is covered. */
bool dive_step(Dive *dive, int64_t *work);

#endif
