/*
 * The rules of a plan, checked from the outside: whatever made it, is it one? It trusts nothing that the plan says of
 * itself.
 */
#ifndef TESTS_SUPPORT_RULES_H
#define TESTS_SUPPORT_RULES_H

#include "fill/plan.h"
#include "layout/layout.h"

/* Recounts the plan's cost from its pieces and bare stretches alone. */
Cost rules_cost(const Layout *layout, const Plan *plan);

/* False, with the first thing wrong in `err`, where the plan breaks what may never be broken: pieces that overlap or
 * leave their segment or run over a pin, stretches neither covered nor told bare, joints off the grid or in a bar,
 * pieces that do not hang together, boards too short or too narrow, cuts nearer than a kerf, wood taken from an avoided
 * stretch or a squared end, a board used twice in one place. */
bool rules_hold(const Layout *layout, const Plan *plan, Err *err);

/* Whether something happened to the wall after its plan was printed: a record, a board gone or found. What was printed
 * stays then, even where a plan made anew would open less. */
bool rules_happened(const Wall *wall);

#endif
