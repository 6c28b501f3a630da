/*
 * A linear program that grows by columns: least cost, rows that are equations, columns not below 0. The revised simplex
 * method with the inverse of the basis held in fixed point, so that every machine takes the same turns; Devex weights
 * choose the entering column (P. M. J. Harris, Mathematical Programming 5, 1973). Its answers are near enough to guide
 * a search and prove nothing. It knows nothing of walls.
 */
#ifndef FILL_SIMPLEX_H
#define FILL_SIMPLEX_H

#include "base/arena.h"

#include <stdbool.h>
#include <stdint.h>

#define SIMPLEX_ONE (INT64_C(1) << 32) /* 1 of a row's amount */

typedef struct Simplex Simplex;

/* A table of so many rows; every row's amount is 0 to begin with. */
Simplex *simplex_new(Arena *arena, int rows);

/* A column is begun, its entries are put (several to one row add up), and it stays or is dropped before the next one is
 * begun. */
int simplex_column(Simplex *simplex, int64_t cost);
void simplex_entry(Simplex *simplex, int row, int amount);
void simplex_drop_last(Simplex *simplex);
void simplex_set_cost(Simplex *simplex, int column, int64_t cost);
int simplex_columns(const Simplex *simplex);

/* How much dearer the row prices make a column than it costs: above 0 it would better the table. */
int64_t simplex_gain(const Simplex *simplex, int column);

/* The first basis, row by row: the column must have an entry of 1 or -1 in `row` and others only in rows that are made
 * basic later or were so with a column of that row alone; `amount` is the row's right side. Call simplex_ready when
 * every row is done. */
void simplex_basic(Simplex *simplex, int row, int column);
void simplex_amount(Simplex *simplex, int row, int64_t amount);
void simplex_ready(Simplex *simplex);

/* One turn: the best column enters. False where none gains more than `least`, or the table is worn out. */
bool simplex_turn(Simplex *simplex, int64_t least);

/* Settles `times` of the column: they are taken from the right sides. What is basic may fall below 0 by that, until
 * simplex_mend has put it right. */
void simplex_settle(Simplex *simplex, int column, int times);

/* One turn of the dual method (C. E. Lemke, Naval Research Logistics Quarterly 1, 1954): what lies furthest below 0
 * leaves. False where nothing does, or nothing can be done about it. */
bool simplex_mend(Simplex *simplex);

/* Prices of the rows now; value of a column; what the basis costs. */
const int64_t *simplex_prices(const Simplex *simplex);
int64_t simplex_value(const Simplex *simplex, int column);
int64_t simplex_cost(const Simplex *simplex);
bool simplex_worn(const Simplex *simplex);

#endif
