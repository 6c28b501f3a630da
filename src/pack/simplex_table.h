/*
 * The table of the simplex method: columns, the basis and its inverse in fixed point, and what is worked out from them.
 * It puts a column into the basis where it is told to; which one and where is decided in simplex.c.
 */
#ifndef PACK_SIMPLEX_TABLE_H
#define PACK_SIMPLEX_TABLE_H

#include "base/arena.h"
#include "base/wide.h"

#include <stdbool.h>
#include <stdint.h>

#define SIMPLEX_ONE (INT64_C(1) << 40) /* 1 of a row's right side */

enum { SIMPLEX_MOST_PLACES = 56 };

#define SIMPLEX_MOST (INT64_C(1) << SIMPLEX_MOST_PLACES) /* no number is larger */
#define SIMPLEX_PIVOT_LEAST (SIMPLEX_ONE / 4096)         /* no exchange on less */

typedef struct SimplexEntry {
    int row;
    int coefficient;
} SimplexEntry;

typedef struct SimplexColumn {
    int64_t cost;
    int64_t weight;   /* in 16 binary places: about how far a step along it goes, squared */
    int first, count; /* entries */
    int basic;        /* row, -1 where it is not in the basis */
} SimplexColumn;

/* A column that would raise a row. */
typedef struct SimplexRaising {
    int column;
    int64_t reach; /* how far one of it raises the row */
    int64_t loss;  /* what one of it costs beyond what it is worth */
} SimplexRaising;

typedef struct Simplex {
    Arena *arena;
    int rows;
    struct {
        SimplexColumn *at;
        int count, room;
    } columns;
    struct {
        SimplexEntry *at;
        int count, room;
    } entries;
    int64_t *right_side; /* of each row */
    int *basis;          /* column basic in each row */
    int64_t *inverse, *spare;
    int64_t *value;     /* of the basic columns */
    int64_t *price;     /* dual of each row */
    int64_t *direction; /* the entering column in terms of the basis */
    int *place;         /* scratch of an exchange: where the pivot row is not 0, */
    int64_t *part;      /* and its number there */
    struct {
        SimplexRaising *at;
        int count, room;
    } raising;
    int64_t work;
    bool overflowed;
} Simplex;

/* A table of so many rows; every right side is 0 to begin with. */
Simplex *simplex_new(Arena *arena, int rows);

/* A copy with columns of its own. */
Simplex *simplex_copy(Arena *arena, const Simplex *simplex);

/* Begins a column, which gets its entries (several in one row add up) and may be dropped again before the next one is
 * begun. Costs are below 2^52. */
int simplex_column(Simplex *simplex, int64_t cost);
void simplex_entry(Simplex *simplex, int row, int coefficient);
void simplex_drop_last(Simplex *simplex);
int simplex_columns(const Simplex *simplex);

/* The cost of a column. After setting that of a basic one call simplex_costs_changed to bring the duals up to date;
 * otherwise simplex_pivot does so before it reports that nothing gains. */
int64_t simplex_column_cost(const Simplex *simplex, int column);
void simplex_set_cost(Simplex *simplex, int column, int64_t cost);
void simplex_costs_changed(Simplex *simplex);

/* The first basis: a column for each row, together regular, and the right side of each row, below 2^60. Call
 * simplex_start when every row has both: false where the numbers are too large; then the table counts as overflowed. */
void simplex_basic(Simplex *simplex, int row, int column);
void simplex_set_right_side(Simplex *simplex, int row, int64_t right_side);
bool simplex_start(Simplex *simplex);

/* Call it after simplex_set_right_side on a table that was started: works out the values again. They may be below 0. */
void simplex_right_sides_changed(Simplex *simplex);

/* Fixes `times` of the column: they are taken off the right sides. Basic values may fall below 0; dual pivots make the
 * table feasible again. */
void simplex_fix(Simplex *simplex, int column, int times);

/* Reinversion: works out the inverse afresh, so that rounding errors do not add up. Worth it every few pivots a row. */
void simplex_reinvert(Simplex *simplex);

/* The duals of the rows; the value of a column; the column that is basic in a row; the cost of the basis. */
const int64_t *simplex_prices(const Simplex *simplex);
int64_t simplex_value(const Simplex *simplex, int column);
int simplex_basic_in(const Simplex *simplex, int row);
int64_t simplex_cost(const Simplex *simplex);

/* Whether its numbers have grown too large for fixed point: no more pivots are made. */
bool simplex_overflowed(const Simplex *simplex);

/* Products formed since the last call: the same on every machine. */
int64_t simplex_work(Simplex *simplex);

/* ---- for simplex.c alone ---- */

static inline int64_t simplex_clamped(Wide number)
{
    return number > SIMPLEX_MOST ? SIMPLEX_MOST : number < -SIMPLEX_MOST ? -SIMPLEX_MOST : (int64_t)number;
}

static inline int64_t *simplex_row(const Simplex *simplex, int row)
{
    return simplex->inverse + (size_t)row * (size_t)simplex->rows;
}

static inline Wide simplex_times_column(const Simplex *simplex, const int64_t *row, const SimplexColumn *column)
{
    const SimplexEntry *entries = simplex->entries.at + column->first;
    Wide sum = 0;
    for (int i = 0; i < column->count; i++)
        sum += (Wide)row[entries[i].row] * entries[i].coefficient;
    return sum;
}

/* Row of the inverse times a column: how much of what is basic there one of the column stands for. */
static inline int64_t simplex_across(const Simplex *simplex, int row, int column)
{
    return simplex_clamped(simplex_times_column(simplex, simplex_row(simplex, row), &simplex->columns.at[column]));
}

/* Less the reduced cost: how much more a column is worth at the duals of the rows than it costs. Above 0 it would lower
 * the cost of the basis. */
static inline int64_t simplex_gain(const Simplex *simplex, int index)
{
    const SimplexColumn *column = &simplex->columns.at[index];
    return simplex_clamped(simplex_times_column(simplex, simplex->price, column) - column->cost);
}

/* Works out `direction` for a column. */
void simplex_find_direction(Simplex *simplex, int column);

/* Puts the column that `direction` belongs to into the basis in place of that of row `leaves`, and updates inverse,
 * values and duals. Where a number would grow too large, nothing changes and the table counts as overflowed. */
void simplex_exchange(Simplex *simplex, int entering, int leaves);

/* The duals from the inverse, as exactly as it is. */
void simplex_find_prices(Simplex *simplex);

#endif
