/*
 * What an event does to the plan in force, and which piece of it is meant: pieces of two plans are the same where their
 * figures fall on the same marks; a record tells of the piece that its figures fall on.
 */
#ifndef FILL_STEADY_SAME_H
#define FILL_STEADY_SAME_H

#include "fill/demand.h"
#include "fill/plan.h"

/* Something that happened: a record of `hung`, a board gone or found. */
typedef struct Event {
    const Demand *demand; /* of the whole wall, with all its records */
    const Plan *plan;     /* before it, pieces numbered */
    const Layout *before; /* what that plan stands on */
    const Wall *wall;     /* with the records up to it; what hangs as planned has the plan's own figures */
    const Layout *after;  /* of that wall */
    int records;          /* how many there are by then */
} Event;

/* The number of the course that the piece hangs on: counted from the reference course, so the same in every layout. */
int64_t same_course(const Layout *layout, const Piece *piece);

/* Whether the two are one piece, as near as marks tell. */
bool same_piece(const Layout *layout, const Piece *piece, const Layout *other_layout, const Piece *other);

/* The plan's piece that the record tells of, to the nanometer or as near as marks tell, and that is not taken by
 * another record; -1 where there is none. Where the record has no offset, any place on the board will do. `hung` is the
 * record as it fits the wall. */
int same_recorded(const Layout *layout, const Plan *plan, const HungPiece *record, const Hung *hung, const bool *taken);

#endif
