/*
 * Which pieces of the plan in force can stay where they are after an event, and which of them are let go of all the
 * same so that the wall can be covered again. What stays is written into the wall as records of planned pieces, so that
 * a solve works around it as around what hangs.
 */
#ifndef FILL_STEADY_HELD_H
#define FILL_STEADY_HELD_H

#include "fill/steady/same.h"

/* What is let go of beyond what cannot stay: nothing; the courses that the event touches; those beside them too; all
 * but what hangs. */
typedef enum LetGo { LET_NOTHING, LET_COURSES, LET_NEIGHBORS, LET_ALL } LetGo;

/* Whether a planned piece lies on a board that gives no more pieces after `records` records, or on wood that one of the
 * wall's first `losses` losses took. */
bool held_lost(const Wall *wall, int losses, int records, const Piece *piece);

/* Adds records of the pieces that are held on to, to `wall`, a copy of the event's. The courses that are touched are
 * those where `mended`, a plan made after the event, leaves wall bare or has other pieces than the plan before; NULL
 * where none was made yet: then all that can stay does. */
void held_add(Arena *arena, const Event *event, LetGo let_go, const Plan *mended, Wall *wall);

#endif
