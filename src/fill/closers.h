/* Which pieces of a finished plan close their segments, and what they keep over for it. */
#ifndef FILL_CLOSERS_H
#define FILL_CLOSERS_H

#include "fill/plan.h"
#include "layout/layout.h"

/* Whether the piece that ends the segment is closed in there: by an opening, or by a side that meets nothing or an
 * inside corner. */
bool closers_closed_in(const Wall *wall, int face, const Segment *segment);

/* After something was hung, cut or planned anew beside them: gives the planned pieces that close their segments what
 * they keep over where their boards have room for it, and takes it from those that close none. What hangs or is cut
 * keeps what it was cut with. The plan's totals follow. */
void closers_settle(const Layout *layout, Plan *plan);

#endif
