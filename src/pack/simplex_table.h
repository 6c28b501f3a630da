/*
 * The table of simplex.c: columns, the basis and its inverse in fixed point, and what is worked out from them. It puts
 * a column into the basis where it is told to; which one and where, it does not know. Not for other files than
 * simplex.c.
 */
#ifndef PACK_SIMPLEX_TABLE_H
#define PACK_SIMPLEX_TABLE_H

#include "base/wide.h"
#include "pack/simplex.h"

enum { SIMPLEX_MOST_PLACES = 56 };

#define SIMPLEX_MOST (INT64_C(1) << SIMPLEX_MOST_PLACES) /* no number is larger */
#define SIMPLEX_PIVOT_LEAST (SIMPLEX_ONE / 4096)         /* no exchange on less */

typedef struct SimplexEntry {
    int row;
    int right_side;
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

struct Simplex {
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
    int64_t *right_side; /* right side of each row */
    int *basis;          /* column basic in each row */
    int64_t *inverse, *spare;
    int64_t *value;     /* of the basic columns */
    int64_t *price;     /* of each row */
    int64_t *direction; /* the entering column in terms of the basis */
    int *place;         /* where the row exchanged is not 0, and what it is there */
    int64_t *part;
    struct {
        SimplexRaising *at;
        int count, room;
    } raising;
    int64_t work;
    bool overflowed;
};

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
        sum += (Wide)row[entries[i].row] * entries[i].right_side;
    return sum;
}

/* Row of the inverse times a column: how much of what is basic there one of the column stands for. */
static inline int64_t simplex_across(const Simplex *simplex, int row, int column)
{
    return simplex_clamped(simplex_times_column(simplex, simplex_row(simplex, row), &simplex->columns.at[column]));
}

static inline int64_t simplex_gain_of(const Simplex *simplex, int index)
{
    const SimplexColumn *column = &simplex->columns.at[index];
    return simplex_clamped(simplex_times_column(simplex, simplex->price, column) - column->cost);
}

/* Works out `along` for a column. */
void simplex_find_direction(Simplex *simplex, int column);

/* Puts the column that `along` belongs to into the basis in place of that of row `leaves`; inverse, values and prices
 * follow. Where numbers would outgrow their places nothing changes but that the table is worn. */
void simplex_exchange(Simplex *simplex, int entering, int leaves);

/* From the inverse, as exactly as it is. */
void simplex_find_values(Simplex *simplex);
void simplex_find_prices(Simplex *simplex);

#endif
