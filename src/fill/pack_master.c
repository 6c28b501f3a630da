/*
 * Rows are of the form "at least", each with a surplus column -e; rows of sizes have a substitute column e besides.
 * With B the basis, its inverse stands row by row in `inverse`, amount = inverse x demand, price = cost of the basis x
 * inverse. The basis begins as substitutes and surpluses, so that its inverse is 1 and -1 along the diagonal.
 */
#include "fill/pack_master.h"

#include <float.h>
#include <string.h>

/* Every double is rounded to 64 bits after each operation, or the guide would differ from machine to machine. */
_Static_assert(FLT_EVAL_METHOD == 0, "build with arithmetic that rounds to binary64 (i386: -msse2 -mfpmath=sse)");

static const double TINY = 1e-9;  /* reduced costs and amounts below count as none */
static const double PIVOT = 1e-7; /* pivots below are not taken */

static const double SUBSTITUTE = 1.03; /* cost of a piece uncut over its share of the cheapest board */

enum { INVERT_EACH = 5 }; /* pivots for each row, between inversions */

PackMaster *pack_master_new(PackWork *work, Arena *arena, const PackRest *rest, const int64_t *most_boards)
{
    PackMaster *master = arena_one(arena, PackMaster);
    master->work = work;
    master->arena = arena;
    master->row_of_size = arena_array(arena, int, work->size_count);
    master->row_of_kind = arena_array(arena, int, work->kind_count);
    master->size_of_row = arena_array(arena, int, work->size_count);
    for (int i = 0; i < work->size_count; i++) {
        master->row_of_size[i] = rest->demand[i] > 0 ? master->rows : -1;
        if (rest->demand[i] > 0)
            master->size_of_row[master->rows++] = i;
    }
    master->size_rows = master->rows;
    for (int k = 0; k < work->kind_count; k++)
        master->row_of_kind[k] = rest->available[k] < most_boards[k] ? master->rows++ : -1;

    int rows = master->rows;
    size_t squared = (size_t)rows * (size_t)rows;
    master->demand = arena_array(arena, double, rows);
    master->substitute = arena_array(arena, double, rows);
    master->basic = arena_array(arena, int, rows);
    master->spare_basic = arena_array(arena, bool, 2 * rows);
    master->amount = arena_array(arena, double, rows);
    master->price = arena_array(arena, double, rows);
    master->entering = arena_array(arena, double, rows);
    master->inverse = arena_array(arena, double, squared);
    int64_t dearest = 1;
    for (int k = 0; k < work->kind_count; k++)
        dearest = work->value[k] > dearest ? work->value[k] : dearest;
    for (int r = 0; r < rows; r++) {
        bool is_size = r < master->size_rows;
        master->basic[r] = is_size ? -1 - rows - r : -1 - r;
        master->spare_basic[-1 - master->basic[r]] = true;
        master->inverse[(size_t)r * (size_t)rows + (size_t)r] = is_size ? 1 : -1;
        if (!is_size)
            continue;
        int64_t size = work->size[master->size_of_row[r]];
        double least = 0;
        for (int k = 0; k < work->kind_count && work->capacity[k] >= size; k++) {
            double rate = (double)work->value[k] / (double)dearest / (double)work->capacity[k];
            least = least == 0 || rate < least ? rate : least;
        }
        master->substitute[r] = master->price[r] = SUBSTITUTE * least * (double)size;
        master->demand[r] = master->amount[r] = rest->demand[master->size_of_row[r]];
    }
    for (int k = 0; k < work->kind_count; k++) {
        int r = master->row_of_kind[k];
        if (r < 0)
            continue;
        master->demand[r] = -rest->available[k];
        master->amount[r] = rest->available[k];
    }
    return master;
}

static void *copied(Arena *arena, const void *from, size_t count, size_t size)
{
    void *to = arena_array_bytes(arena, count, size);
    if (count > 0)
        memcpy(to, from, count * size);
    return to;
}

PackMaster *pack_master_copy(Arena *arena, const PackMaster *master)
{
    size_t rows = (size_t)master->rows;
    PackMaster *copy = copied(arena, master, 1, sizeof *master);
    copy->arena = arena;
    copy->demand = copied(arena, master->demand, rows, sizeof *copy->demand);
    copy->substitute = copied(arena, master->substitute, rows, sizeof *copy->substitute);
    copy->basic = copied(arena, master->basic, rows, sizeof *copy->basic);
    copy->spare_basic = copied(arena, master->spare_basic, 2 * rows, sizeof *copy->spare_basic);
    copy->amount = copied(arena, master->amount, rows, sizeof *copy->amount);
    copy->price = copied(arena, master->price, rows, sizeof *copy->price);
    copy->entering = arena_array(arena, double, rows);
    copy->inverse = copied(arena, master->inverse, rows * rows, sizeof *copy->inverse);
    copy->columns.at = copied(arena, master->columns.at, (size_t)master->columns.count, sizeof *copy->columns.at);
    copy->columns.room = master->columns.count;
    return copy;
}

void pack_master_add(PackMaster *master, int kind, const PackPart *parts, int part_count)
{
    PackColumn column = {.kind = kind, .parts = arena_array(master->arena, PackPart, part_count)};
    int64_t dearest = 1;
    for (int k = 0; k < master->work->kind_count; k++)
        dearest = master->work->value[k] > dearest ? master->work->value[k] : dearest;
    column.cost = (double)master->work->value[kind] / (double)dearest;
    for (int i = 0; i < part_count; i++)
        if (master->row_of_size[parts[i].size] >= 0)
            column.parts[column.part_count++] = (PackPart){master->row_of_size[parts[i].size], parts[i].count};
    *arena_push(master->arena, &master->columns) = column;
}

static double reduced_cost(const PackMaster *master, const PackColumn *column)
{
    double sum = column->cost;
    for (int i = 0; i < column->part_count; i++)
        sum -= master->price[column->parts[i].size] * column->parts[i].count;
    int row = master->row_of_kind[column->kind];
    return row < 0 ? sum : sum + master->price[row];
}

/* Row `r` of the inverse times a column. */
static double row_times(const PackMaster *master, int r, const PackColumn *column)
{
    const double *row = master->inverse + (size_t)r * (size_t)master->rows;
    double sum = 0;
    for (int i = 0; i < column->part_count; i++)
        sum += row[column->parts[i].size] * column->parts[i].count;
    int kind_row = master->row_of_kind[column->kind];
    return kind_row < 0 ? sum : sum - row[kind_row];
}

static double cost_of(const PackMaster *master, int basic)
{
    if (basic >= 0)
        return master->columns.at[basic].cost;
    return basic >= -master->rows ? 0 : master->substitute[-1 - master->rows - basic];
}

static void set_basic(PackMaster *master, int r, int what)
{
    int old = master->basic[r];
    if (old >= 0)
        master->columns.at[old].is_basic = false;
    else
        master->spare_basic[-1 - old] = false;
    master->basic[r] = what;
    if (what >= 0)
        master->columns.at[what].is_basic = true;
    else
        master->spare_basic[-1 - what] = true;
}

/* The same for anything that may stand in the basis. */
static double row_times_any(const PackMaster *master, int r, int what)
{
    if (what >= 0)
        return row_times(master, r, &master->columns.at[what]);
    const double *row = master->inverse + (size_t)r * (size_t)master->rows;
    return what >= -master->rows ? -row[-1 - what] : row[-1 - master->rows - what];
}

static double reduced_cost_any(const PackMaster *master, int what)
{
    if (what >= 0)
        return reduced_cost(master, &master->columns.at[what]);
    int r = -1 - what;
    return r < master->rows ? master->price[r] : master->substitute[r - master->rows] - master->price[r - master->rows];
}

static void compute_entering(PackMaster *master, int what)
{
    for (int r = 0; r < master->rows; r++)
        master->entering[r] = row_times_any(master, r, what);
}

static void recompute_amounts(PackMaster *master)
{
    for (int r = 0; r < master->rows; r++) {
        const double *row = master->inverse + (size_t)r * (size_t)master->rows;
        double sum = 0;
        for (int i = 0; i < master->rows; i++)
            sum += row[i] * master->demand[i];
        master->amount[r] = sum;
    }
}

static void recompute_prices(PackMaster *master)
{
    memset(master->price, 0, (size_t)master->rows * sizeof *master->price);
    for (int r = 0; r < master->rows; r++) {
        const double *row = master->inverse + (size_t)r * (size_t)master->rows;
        double cost = cost_of(master, master->basic[r]);
        if (cost == 0)
            continue;
        for (int i = 0; i < master->rows; i++)
            master->price[i] += cost * row[i];
    }
}

/* Puts `what`, computed as `entering`, with reduced cost `gain`, into the basis at row r. */
static void pivot(PackMaster *master, int what, int r, double gain)
{
    size_t rows = (size_t)master->rows;
    double *pivot_row = master->inverse + (size_t)r * rows;
    double scale = 1 / master->entering[r];
    for (size_t i = 0; i < rows; i++)
        pivot_row[i] *= scale;
    master->amount[r] *= scale;
    for (size_t s = 0; s < rows; s++) {
        double factor = master->entering[s];
        if (s == (size_t)r || factor == 0)
            continue;
        double *row = master->inverse + s * rows;
        for (size_t i = 0; i < rows; i++)
            row[i] -= factor * pivot_row[i];
        master->amount[s] -= factor * master->amount[r];
        if (master->amount[s] < 0 && master->amount[s] > -TINY)
            master->amount[s] = 0;
    }
    for (size_t i = 0; i < rows; i++)
        master->price[i] += gain * pivot_row[i];
    set_basic(master, r, what);
    pack_spend(master->work, (int64_t)(rows * rows / 2 + 8 * rows));
}

/* The inverse worked out anew, by elimination with the largest pivot of each column, so that errors do not add up. */
static void invert(PackMaster *master)
{
    size_t rows = (size_t)master->rows;
    Arena *work = arena_new();
    double *basis = arena_array(work, double, rows *rows);
    int *basic = copied(work, master->basic, rows, sizeof *basic);
    double *inverse = arena_array(work, double, rows *rows);
    for (size_t c = 0; c < rows; c++) {
        inverse[c * rows + c] = 1;
        if (basic[c] >= 0) {
            const PackColumn *column = &master->columns.at[basic[c]];
            for (int i = 0; i < column->part_count; i++)
                basis[(size_t)column->parts[i].size * rows + c] = column->parts[i].count;
            if (master->row_of_kind[column->kind] >= 0)
                basis[(size_t)master->row_of_kind[column->kind] * rows + c] = -1;
        } else if (basic[c] >= -master->rows) {
            basis[(size_t)(-1 - basic[c]) * rows + c] = -1;
        } else {
            basis[(size_t)(-1 - master->rows - basic[c]) * rows + c] = 1;
        }
    }
    bool regular = true;
    for (size_t c = 0; c < rows && regular; c++) {
        size_t best = c;
        for (size_t r = c; r < rows; r++) {
            double here = basis[r * rows + c], there = basis[best * rows + c];
            if ((here < 0 ? -here : here) > (there < 0 ? -there : there))
                best = r;
        }
        double value = basis[best * rows + c];
        regular = value > PIVOT || value < -PIVOT;
        if (!regular)
            break;
        for (size_t i = 0; i < rows; i++) {
            double swap = basis[c * rows + i];
            basis[c * rows + i] = basis[best * rows + i] / value;
            basis[best * rows + i] = best == c ? basis[c * rows + i] : swap;
            swap = inverse[c * rows + i];
            inverse[c * rows + i] = inverse[best * rows + i] / value;
            inverse[best * rows + i] = best == c ? inverse[c * rows + i] : swap;
        }
        for (size_t r = 0; r < rows; r++) {
            double factor = basis[r * rows + c];
            if (r == c || factor == 0)
                continue;
            for (size_t i = c; i < rows; i++)
                basis[r * rows + i] -= factor * basis[c * rows + i];
            for (size_t i = 0; i < rows; i++)
                inverse[r * rows + i] -= factor * inverse[c * rows + i];
        }
    }
    if (regular) {
        memcpy(master->inverse, inverse, rows * rows * sizeof *inverse);
        recompute_amounts(master);
        recompute_prices(master);
    }
    pack_spend(master->work, (int64_t)(rows * rows * rows / 2));
    master->since_inverted = 0;
    arena_free(work);
}

/* What to bring into the basis: the column or surplus of least reduced cost below nothing; false where there is none.
 */
static bool choose_entering(PackMaster *master, int *what, double *gain)
{
    double least = -TINY;
    bool found = false;
    int64_t operations = master->rows;
    for (int i = 0; i < master->columns.count; i++) {
        const PackColumn *column = &master->columns.at[i];
        operations += column->part_count + 2;
        if (column->is_basic)
            continue;
        double cost = reduced_cost(master, column);
        if (cost < least) {
            least = cost;
            *what = i;
            found = true;
        }
    }
    for (int r = 0; r < master->rows; r++) {
        if (master->price[r] < least && !master->spare_basic[r]) {
            least = master->price[r];
            *what = -1 - r;
            found = true;
        }
    }
    pack_spend(master->work, operations);
    *gain = least;
    return found;
}

bool pack_master_solve(PackMaster *master)
{
    int what = 0, stalled = 0;
    double gain = 0;
    while (choose_entering(master, &what, &gain)) {
        compute_entering(master, what);
        int leave = -1;
        double least = 0;
        for (int r = 0; r < master->rows; r++) {
            double by = master->entering[r];
            if (by <= PIVOT)
                continue;
            double ratio = (master->amount[r] > 0 ? master->amount[r] : 0) / by;
            if (leave < 0 || ratio < least - TINY || (ratio < least + TINY && by > master->entering[leave])) {
                least = leave < 0 || ratio < least ? ratio : least;
                leave = r;
            }
        }
        stalled = least > TINY ? 0 : stalled + 1;
        if (leave < 0 || stalled > 20 * master->rows + 100)
            return true; /* a standstill: the prices are as good as they get */
        pivot(master, what, leave, gain);
        if (++master->since_inverted >= INVERT_EACH * master->rows)
            invert(master);
        if (!pack_spend(master->work, 0))
            return false;
    }
    return true;
}

bool pack_master_change(PackMaster *master, const PackRest *rest)
{
    for (int r = 0; r < master->size_rows; r++)
        master->demand[r] = rest->demand[master->size_of_row[r]];
    for (int k = 0; k < master->work->kind_count; k++)
        if (master->row_of_kind[k] >= 0)
            master->demand[master->row_of_kind[k]] = -rest->available[k];
    recompute_amounts(master);
    pack_spend(master->work, (int64_t)master->rows * master->rows + 100);
    for (int turn = 0; turn < 50 * master->rows + 100; turn++) {
        int leave = -1;
        double least = -TINY;
        for (int r = 0; r < master->rows; r++) {
            if (master->amount[r] < least) {
                least = master->amount[r];
                leave = r;
            }
        }
        if (leave < 0)
            return true;
        /* The dual method: of all that would raise this row, what changes the prices least. */
        int what = 0;
        bool found = false;
        double best = 0, best_by = 0, best_gain = 0;
        int64_t operations = 0;
        for (int i = -master->rows - master->size_rows; i < master->columns.count; i++) {
            if (i < 0 ? master->spare_basic[-1 - i] : master->columns.at[i].is_basic)
                continue;
            double by = row_times_any(master, leave, i);
            operations += i < 0 ? 2 : 3 * master->columns.at[i].part_count + 4;
            if (by >= -PIVOT)
                continue;
            double gain = reduced_cost_any(master, i);
            double ratio = (gain > 0 ? gain : 0) / -by;
            if (!found || ratio < best - TINY || (ratio < best + TINY && by < best_by)) {
                best = !found || ratio < best ? ratio : best;
                best_by = by;
                best_gain = gain;
                what = i;
                found = true;
            }
        }
        if (!pack_spend(master->work, operations) || !found)
            return false;
        compute_entering(master, what);
        pivot(master, what, leave, best_gain);
        if (++master->since_inverted >= INVERT_EACH * master->rows)
            invert(master);
    }
    return false;
}

double pack_master_cost(const PackMaster *master)
{
    double sum = 0;
    for (int r = 0; r < master->rows; r++)
        sum += cost_of(master, master->basic[r]) * master->amount[r];
    return sum;
}

double pack_master_uncut(const PackMaster *master)
{
    double sum = 0;
    for (int r = 0; r < master->rows; r++)
        if (master->basic[r] < -master->rows)
            sum += master->amount[r];
    return sum;
}

void pack_master_dearer(PackMaster *master)
{
    master->dearness++;
    double factor = master->dearness == 1 ? 1.1 : master->dearness == 2 ? 1.5 : 2;
    for (int r = 0; r < master->size_rows; r++)
        master->substitute[r] *= factor;
    recompute_prices(master);
}
