/*
 * From a solution to the plan that people see: pieces in hanging order, the place of each on its board, what is left
 * over, sums, and a finding for every rule broken, stretch left bare and record of a hung piece that does not fit. It
 * decides nothing.
 */
#ifndef FILL_REPORT_H
#define FILL_REPORT_H

#include "fill/solution.h"

/* A fresh plan in `arena` of the runs' covers; the bound is not in it. */
Plan *report_plan(Arena *arena, const Demand *demand, const Supply *supply, const Cover *covers);

/* What became of each board, by the pieces' boards and offsets; opened and by_board with it. */
void report_boards(Arena *arena, const Wall *wall, Plan *plan);

#endif
