/*
 * Boards to segments: which board is cut where, and where the butt joints stand. The rules and the order of what is
 * best are those of datumrow(5), "Pieces", "Boards", "What is best". A stepper over one layout: begin, so many steps,
 * the plan so far. Its state lives in an arena of its own and depends on the document and the number of steps alone, so
 * that slices between keys and one run end in the same bytes. It knows nothing of time, of how a plan is shown, nor of
 * any rule of geometry beyond what layout answers.
 */
#ifndef FILL_FILL_H
#define FILL_FILL_H

#include "fill/plan.h"
#include "layout/layout.h"

typedef struct Fill Fill;

/* Starts on a layout, which must outlive it. The first plan (constructive) is there when it returns. Where pieces hang
 * just as a plan said, the final plan is that very plan (keep.h). */
Fill *fill_begin(const Layout *layout);

/* The same, sooner: a plan that `before` knows is not worked out again where it holds on. `before` may be NULL, or of
 * another wall altogether; the final plan does not depend on it. */
Fill *fill_begin_after(Fill *before, const Layout *layout);

void fill_free(Fill *fill);

/* Works on for about `steps` units of work (one is some microseconds); true when there is nothing left to do: the
 * budget of the wall is used up or the plan is proved. */
bool fill_step(Fill *fill, int steps);

/* The best plan so far, whole and consistent; it lives until the next fill_step or fill_free. */
const Plan *fill_plan(Fill *fill);

/* Begin, work to the end, the final plan copied into `arena`. */
Plan *fill_wall(Arena *arena, const Layout *layout);

/* The hand method: row by row in hanging order, the last offcut first, whole boards in the order of the stock, the last
 * piece cut to fit. The yardstick of tests and benchmark. It keeps the rules where it can see them and reports what it
 * breaks. */
Plan *fill_by_hand(Arena *arena, const Layout *layout);

#endif
