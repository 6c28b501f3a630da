/*
 * A linear program that grows by columns: least cost, rows that are equations, columns not below 0. The revised simplex
 * method with the inverse of the basis held in fixed point, so that every machine takes the same turns; Devex weights
 * choose the entering column (P. M. J. Harris, Mathematical Programming 5, 1973). Right sides may change: turns of the
 * dual method then meet them again. Its answers are near enough to guide a search and prove nothing. It knows nothing
 * of walls.
 */
#ifndef PACK_SIMPLEX_H
#define PACK_SIMPLEX_H

#include "base/arena.h"

#include <stdbool.h>
#include <stdint.h>

#define SIMPLEX_ONE (INT64_C(1) << 40) /* 1 of a row's amount */

typedef struct Simplex Simplex;

/* A table of so many rows; every row's amount is 0 to begin with. */
Simplex *simplex_new(Arena *arena, int rows);

/* A copy in the state it is in, whose columns are its own. */
Simplex *simplex_copy(Arena *arena, const Simplex *simplex);

/* A column is begun, its entries are put (several to one row add up), and it stays or is dropped before the next one is
 * begun. Costs are below 2^52. */
int simplex_column(Simplex *simplex, int64_t cost);
void simplex_entry(Simplex *simplex, int row, int right_side);
void simplex_drop_last(Simplex *simplex);
int simplex_columns(const Simplex *simplex);

/* What a column costs. Where that of a basic one is set, call simplex_costs_changed to bring the prices to it; without,
 * they come to it before simplex_pivot finds nothing more. */
int64_t simplex_column_cost(const Simplex *simplex, int column);
void simplex_set_cost(Simplex *simplex, int column, int64_t cost);
void simplex_costs_changed(Simplex *simplex);

/* How much dearer the row prices make a column than it costs: above 0 it would better the table. */
int64_t simplex_gain(const Simplex *simplex, int column);

/* The first basis: a column for each row, together regular, and with it the `amount` on the right side of each row,
 * below 2^60. Call simplex_start when every row is done: false where the numbers are too large, and the table is worn
 * out from the start. */
void simplex_basic(Simplex *simplex, int row, int column);
void simplex_set_right_side(Simplex *simplex, int row, int64_t right_side);
bool simplex_start(Simplex *simplex);

/* One turn: the best column enters. False where none gains more than `least`, or the table is worn out. */
bool simplex_pivot(Simplex *simplex, int64_t least);

/* After simplex_set_right_side for rows of a table that was ready: the values anew, which may fall below 0. */
void simplex_right_sides_changed(Simplex *simplex);

/* Settles `times` of the column: they are taken from the right sides. What is basic may fall below 0 by that, until
 * simplex_dual_pivot has put it right. */
void simplex_fix(Simplex *simplex, int column, int times);

/* One turn of the dual method: what lies farthest below 0 leaves, the prices move by the least that they can, and
 * `little` more. False where nothing is below 0 or nothing can be done about it; simplex_is_feasible tells which. */
bool simplex_dual_pivot(Simplex *simplex, int64_t tolerance);
bool simplex_is_feasible(const Simplex *simplex);

/* Works the inverse out anew, so that what rounding lost does not add up; worth it every few turns a row. */
void simplex_reinvert(Simplex *simplex);

/* Prices of the rows now; value of a column; the column basic in a row; what the basis costs. */
const int64_t *simplex_prices(const Simplex *simplex);
int64_t simplex_value(const Simplex *simplex, int column);
int simplex_basic_in(const Simplex *simplex, int row);
int64_t simplex_cost(const Simplex *simplex);

/* Its numbers have outgrown their places: no more turns. */
bool simplex_overflowed(const Simplex *simplex);

/* Products formed since the last call: the same on every machine. */
int64_t simplex_work(Simplex *simplex);

#endif
