/*
 * Invariants: `inverse` is the inverse of the basis up to rounding in the 40th binary place; value = inverse x right
 * side; price = cost of the basis x inverse. Every exchange loses about one unit in the last place, more where the
 * pivot is small; simplex_reinvert starts over.
 *
 * Entries stay below SIMPLEX_MOST, and products of two are formed in two words, so that nothing wraps around: a number
 * that would be larger is held at SIMPLEX_MOST, and the table counts as overflowed.
 */
#include "pack/simplex_table.h"

#include "base/wide.h"

#include <string.h>

enum { PLACES = 40, DUST = 8 };

static const Wide HALF_A_WORD = (Wide)1 << 63;

/* A product of two numbers in fixed point. */
static Wide rounded(Wide product)
{
    return (product + SIMPLEX_ONE / 2) >> PLACES;
}

static int64_t held(Simplex *simplex, Wide number)
{
    simplex->overflowed = simplex->overflowed || number > SIMPLEX_MOST || number < -SIMPLEX_MOST;
    return simplex_clamped(number);
}

static int64_t held_amount(Simplex *simplex, Wide number)
{
    const int64_t most = INT64_C(1) << 61;
    simplex->overflowed = simplex->overflowed || number > most || number < -most;
    return number > most ? most : number < -most ? -most : (int64_t)number;
}

Simplex *simplex_new(Arena *arena, int rows)
{
    Simplex *simplex = arena_one(arena, Simplex);
    simplex->arena = arena;
    simplex->rows = rows;
    simplex->right_side = arena_array(arena, int64_t, rows);
    simplex->basis = arena_array(arena, int, rows);
    simplex->inverse = arena_array(arena, int64_t, (size_t)rows * (size_t)rows);
    simplex->spare = arena_array(arena, int64_t, (size_t)rows * (size_t)rows);
    simplex->value = arena_array(arena, int64_t, rows);
    simplex->price = arena_array(arena, int64_t, rows);
    simplex->direction = arena_array(arena, int64_t, rows);
    simplex->place = arena_array(arena, int, rows);
    simplex->part = arena_array(arena, int64_t, rows);
    return simplex;
}

static void copy_bytes(void *to, const void *from, size_t count, size_t size)
{
    if (count > 0)
        memcpy(to, from, count * size);
}

Simplex *simplex_copy(Arena *arena, const Simplex *simplex)
{
    size_t rows = (size_t)simplex->rows, columns = (size_t)simplex->columns.count;
    size_t entries = (size_t)simplex->entries.count;
    Simplex *copy = simplex_new(arena, simplex->rows);
    copy->columns.at = arena_array(arena, SimplexColumn, columns);
    copy->columns.count = copy->columns.room = simplex->columns.count;
    copy->entries.at = arena_array(arena, SimplexEntry, entries);
    copy->entries.count = copy->entries.room = simplex->entries.count;
    copy_bytes(copy->columns.at, simplex->columns.at, columns, sizeof *copy->columns.at);
    copy_bytes(copy->entries.at, simplex->entries.at, entries, sizeof *copy->entries.at);
    copy_bytes(copy->right_side, simplex->right_side, rows, sizeof *copy->right_side);
    copy_bytes(copy->basis, simplex->basis, rows, sizeof *copy->basis);
    copy_bytes(copy->inverse, simplex->inverse, rows * rows, sizeof *copy->inverse);
    copy_bytes(copy->value, simplex->value, rows, sizeof *copy->value);
    copy_bytes(copy->price, simplex->price, rows, sizeof *copy->price);
    copy->overflowed = simplex->overflowed;
    return copy;
}

/* ---- columns ---- */

enum { WEIGHT_ONE = 1 << 16 };

int simplex_column(Simplex *simplex, int64_t cost)
{
    *arena_push(simplex->arena, &simplex->columns) =
        (SimplexColumn){.cost = cost, .weight = WEIGHT_ONE, .first = simplex->entries.count, .basic = -1};
    return simplex->columns.count - 1;
}

void simplex_entry(Simplex *simplex, int row, int coefficient)
{
    SimplexColumn *column = &simplex->columns.at[simplex->columns.count - 1];
    for (int i = column->first; i < column->first + column->count; i++)
        if (simplex->entries.at[i].row == row) {
            simplex->entries.at[i].coefficient += coefficient;
            return;
        }
    *arena_push(simplex->arena, &simplex->entries) = (SimplexEntry){row, coefficient};
    column->count++;
}

void simplex_drop_last(Simplex *simplex)
{
    simplex->columns.count--;
    simplex->entries.count = simplex->columns.at[simplex->columns.count].first;
}

int simplex_columns(const Simplex *simplex)
{
    return simplex->columns.count;
}

int64_t simplex_column_cost(const Simplex *simplex, int column)
{
    return simplex->columns.at[column].cost;
}

void simplex_set_cost(Simplex *simplex, int column, int64_t cost)
{
    simplex->columns.at[column].cost = cost;
}

void simplex_find_direction(Simplex *simplex, int index)
{
    const SimplexColumn *column = &simplex->columns.at[index];
    for (int i = 0; i < simplex->rows; i++)
        simplex->direction[i] = held(simplex, simplex_times_column(simplex, simplex_row(simplex, i), column));
    simplex->work += (int64_t)simplex->rows * (column->count + 1);
}

/* ---- the inverse ---- */

static int64_t magnitude(int64_t number)
{
    return number < 0 ? -number : number;
}

/* Divides the row by the pivot and puts what it is then, where it is not 0, into `place` and `part`. Gives the greatest
 * size of a part. */
static int64_t divide_row(Simplex *simplex, int pivot, int *count)
{
    int64_t *row = simplex_row(simplex, pivot);
    int64_t by = simplex->direction[pivot], longest = 0;
    *count = 0;
    for (int j = 0; j < simplex->rows; j++) {
        if (row[j] == 0)
            continue;
        Wide quotient = by == SIMPLEX_ONE    ? row[j]
                        : by == -SIMPLEX_ONE ? -(Wide)row[j]
                                             : (Wide)row[j] * SIMPLEX_ONE / by;
        int64_t part = held(simplex, quotient);
        if (magnitude(part) < DUST)
            continue;
        simplex->place[*count] = j;
        simplex->part[(*count)++] = part;
        longest = magnitude(part) > longest ? magnitude(part) : longest;
    }
    return longest;
}

/* Divides the row by the pivot, and subtracts it from every other row `direction` times. False, with nothing
 * changed, where a number would grow too large.
 *
 * A product is wanted without its last PLACES bits: both factors are moved up so far that these are its lower word. */
static bool eliminate(Simplex *simplex, int pivot)
{
    int rows = simplex->rows, count = 0, up = 0;
    int64_t longest = divide_row(simplex, pivot, &count), farthest = 0;
    for (int i = 0; i < rows; i++) {
        if (magnitude(simplex->direction[i]) < DUST)
            simplex->direction[i] = 0;
        if (i != pivot && magnitude(simplex->direction[i]) > farthest)
            farthest = magnitude(simplex->direction[i]);
    }
    if (simplex->overflowed || (Wide)longest * farthest > (Wide)SIMPLEX_MOST * SIMPLEX_ONE) {
        simplex->overflowed = true;
        return false;
    }
    int64_t *row = simplex_row(simplex, pivot);
    memset(row, 0, (size_t)rows * sizeof *row);
    while (up < 64 - PLACES && longest << up <= INT64_MAX / 4)
        up++;
    for (int k = 0; k < count; k++) {
        row[simplex->place[k]] = simplex->part[k];
        simplex->part[k] *= INT64_C(1) << up;
    }
    uint64_t reach = 0;
    int changed = 0;
    for (int i = 0; i < rows; i++) {
        if (i == pivot || simplex->direction[i] == 0)
            continue;
        changed++;
        int64_t direction = simplex->direction[i] * (INT64_C(1) << (64 - PLACES - up));
        int64_t *other = simplex_row(simplex, i);
        for (int k = 0; k < count; k++) {
            int64_t *entry = &other[simplex->place[k]];
            *entry -= (int64_t)(((Wide)direction * simplex->part[k] + HALF_A_WORD) >> 64);
            reach |= (uint64_t)*entry + (uint64_t)SIMPLEX_MOST;
        }
    }
    simplex->overflowed = reach >> (SIMPLEX_MOST_PLACES + 1) != 0;
    simplex->work += (int64_t)changed * count + 8 * count + 2 * rows;
    return true;
}

static void find_values(Simplex *simplex)
{
    for (int i = 0; i < simplex->rows; i++) {
        const int64_t *row = simplex_row(simplex, i);
        Wide sum = 0;
        for (int j = 0; j < simplex->rows; j++)
            sum += rounded((Wide)row[j] * simplex->right_side[j]);
        simplex->value[i] = held_amount(simplex, sum);
    }
    simplex->work += (int64_t)simplex->rows * simplex->rows;
}

void simplex_find_prices(Simplex *simplex)
{
    int rows = simplex->rows;
    Arena *arena = arena_new();
    Wide *sums = arena_array(arena, Wide, rows);
    for (int i = 0; i < rows; i++) {
        int64_t cost = simplex->columns.at[simplex->basis[i]].cost;
        const int64_t *row = simplex_row(simplex, i);
        for (int j = 0; j < rows && cost != 0; j++)
            sums[j] += (Wide)cost * row[j];
        simplex->work += cost != 0 ? rows : 1;
    }
    for (int j = 0; j < rows; j++)
        simplex->price[j] = held(simplex, rounded(sums[j]));
    arena_free(arena);
}

void simplex_costs_changed(Simplex *simplex)
{
    simplex_find_prices(simplex);
}

void simplex_exchange(Simplex *simplex, int entering, int leaves)
{
    int64_t gain = simplex_gain(simplex, entering);
    int64_t step =
        held_amount(simplex, wide_divide((Wide)simplex->value[leaves] * SIMPLEX_ONE, simplex->direction[leaves]));
    if (simplex->overflowed || !eliminate(simplex, leaves))
        return;
    const int64_t *row = simplex_row(simplex, leaves);
    for (int i = 0; i < simplex->rows; i++) {
        if (i != leaves)
            simplex->value[i] = held_amount(simplex, simplex->value[i] - rounded((Wide)simplex->direction[i] * step));
        simplex->price[i] = held(simplex, simplex->price[i] - rounded((Wide)gain * row[i]));
    }
    simplex->value[leaves] = step;
    simplex->columns.at[simplex->basis[leaves]].basic = -1;
    simplex_basic(simplex, leaves, entering);
}

/* ---- the basis ---- */

void simplex_basic(Simplex *simplex, int row, int column)
{
    simplex->basis[row] = column;
    simplex->columns.at[column].basic = row;
}

void simplex_set_right_side(Simplex *simplex, int row, int64_t right_side)
{
    simplex->right_side[row] = right_side;
}

void simplex_right_sides_changed(Simplex *simplex)
{
    find_values(simplex);
}

void simplex_fix(Simplex *simplex, int index, int times)
{
    const SimplexColumn *column = &simplex->columns.at[index];
    for (int i = column->first; i < column->first + column->count; i++) {
        SimplexEntry entry = simplex->entries.at[i];
        simplex->right_side[entry.row] =
            held_amount(simplex, simplex->right_side[entry.row] - (Wide)times * entry.coefficient * SIMPLEX_ONE);
    }
    if (column->basic >= 0) {
        simplex->value[column->basic] = held_amount(simplex, simplex->value[column->basic] - (Wide)times * SIMPLEX_ONE);
        return;
    }
    simplex_find_direction(simplex, index);
    for (int i = 0; i < simplex->rows; i++)
        simplex->value[i] = held_amount(simplex, simplex->value[i] - (Wide)simplex->direction[i] * times);
}

/* Puts the column where no other was put before: in the row where most of it is left. */
static bool place_column(Simplex *simplex, int column)
{
    simplex_find_direction(simplex, column);
    int best = -1;
    int64_t most = SIMPLEX_PIVOT_LEAST;
    for (int i = 0; i < simplex->rows; i++) {
        int64_t size = simplex->direction[i] < 0 ? -simplex->direction[i] : simplex->direction[i];
        if (simplex->basis[i] < 0 && size > most) {
            most = size;
            best = i;
        }
    }
    if (best < 0 || !eliminate(simplex, best))
        return false;
    simplex->basis[best] = column;
    return true;
}

/* From the unit matrix, the columns of one entry first, which fill nothing in. False where the basis is not regular, as
 * near as can be told. */
static bool invert(Simplex *simplex, const int *basis)
{
    int rows = simplex->rows;
    memset(simplex->inverse, 0, (size_t)rows * (size_t)rows * sizeof *simplex->inverse);
    for (int i = 0; i < rows; i++) {
        simplex_row(simplex, i)[i] = SIMPLEX_ONE;
        simplex->basis[i] = -1;
    }
    for (int pass = 0; pass < 2; pass++)
        for (int i = 0; i < rows; i++)
            if ((simplex->columns.at[basis[i]].count > 1) == (pass == 1) && !place_column(simplex, basis[i]))
                return false;
    return true;
}

void simplex_reinvert(Simplex *simplex)
{
    int rows = simplex->rows;
    int64_t *before = simplex->inverse;
    Arena *arena = arena_new();
    int *basis = arena_array(arena, int, rows);
    copy_bytes(basis, simplex->basis, (size_t)rows, sizeof *basis);
    bool was_overflowed = simplex->overflowed;
    simplex->overflowed = false;
    simplex->inverse = simplex->spare;
    bool done = invert(simplex, basis);
    if (!done) {
        simplex->inverse = before;
        simplex->overflowed = was_overflowed;
        copy_bytes(simplex->basis, basis, (size_t)rows, sizeof *basis);
    } else {
        simplex->spare = before;
    }
    for (int i = 0; i < rows; i++)
        simplex_basic(simplex, i, simplex->basis[i]);
    find_values(simplex);
    simplex_find_prices(simplex);
    arena_free(arena);
}

bool simplex_start(Simplex *simplex)
{
    simplex->overflowed = true;
    simplex_reinvert(simplex);
    return !simplex->overflowed;
}

/* ---- what stands in it ---- */

const int64_t *simplex_prices(const Simplex *simplex)
{
    return simplex->price;
}

int64_t simplex_value(const Simplex *simplex, int column)
{
    int row = simplex->columns.at[column].basic;
    return row >= 0 ? simplex->value[row] : 0;
}

int simplex_basic_in(const Simplex *simplex, int row)
{
    return simplex->basis[row];
}

int64_t simplex_cost(const Simplex *simplex)
{
    Wide sum = 0;
    for (int i = 0; i < simplex->rows; i++)
        sum += rounded((Wide)simplex->columns.at[simplex->basis[i]].cost * simplex->value[i]);
    return simplex_clamped(sum);
}

bool simplex_overflowed(const Simplex *simplex)
{
    return simplex->overflowed;
}

int64_t simplex_work(Simplex *simplex)
{
    int64_t work = simplex->work;
    simplex->work = 0;
    return work;
}
