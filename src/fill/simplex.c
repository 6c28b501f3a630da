/*
 * Invariants: `inverse` is the inverse of the basis up to rounding in the 32nd binary place; value[i] is that of the
 * basic column of row i; `price` is cost of the basis times inverse. A few units in the last place are lost with every
 * turn.
 */
#include "fill/simplex.h"

#include "base/panic.h"
#include "base/wide.h"

#define ONE SIMPLEX_ONE
#define WEIGHT_ONE (INT64_C(1) << 16)
#define WEIGHT_MOST (INT64_C(1) << 40)
#define PIVOT_LEAST (INT64_C(1) << 22) /* no turn on less */
#define BELOW_LEAST (INT64_C(1) << 12) /* what is less below 0 is taken as rounding */
#define LOSS_LITTLE 50000              /* a turn may lose so much per lift more than the least */
#define ENTRY_MOST (INT64_C(1) << 52)  /* beyond it the table is worn out */

typedef struct Entry {
    int row;
    int amount;
} Entry;

typedef struct Column {
    int64_t cost;
    int64_t weight;   /* in 16 binary places: about how far a step along it goes, squared */
    int first, count; /* entries */
    int basic;        /* row, -1 where it is not in the basis */
} Column;

struct Simplex {
    Arena *arena;
    int rows;
    struct {
        Column *at;
        int count, room;
    } columns;
    struct {
        Entry *at;
        int count, room;
    } entries;
    int *basis;
    int64_t *inverse;
    int64_t *value;
    int64_t *price;
    int64_t *along; /* the entering column in terms of the basis */
    int *filled;    /* columns of the pivot row that are not 0 */
    bool worn;
};

static int64_t times(int64_t a, int64_t b)
{
    return (int64_t)(((Wide)a * b) >> 32);
}

static int64_t *row_of(const Simplex *simplex, int row)
{
    return simplex->inverse + (size_t)row * (size_t)simplex->rows;
}

Simplex *simplex_new(Arena *arena, int rows)
{
    Simplex *simplex = arena_one(arena, Simplex);
    simplex->arena = arena;
    simplex->rows = rows;
    simplex->basis = arena_array(arena, int, rows);
    simplex->inverse = arena_array(arena, int64_t, (size_t)rows * (size_t)rows);
    simplex->value = arena_array(arena, int64_t, rows);
    simplex->price = arena_array(arena, int64_t, rows);
    simplex->along = arena_array(arena, int64_t, rows);
    simplex->filled = arena_array(arena, int, rows);
    return simplex;
}

/* ---- columns ---- */

int simplex_column(Simplex *simplex, int64_t cost)
{
    *arena_push(simplex->arena, &simplex->columns) =
        (Column){.cost = cost, .weight = WEIGHT_ONE, .first = simplex->entries.count, .basic = -1};
    return simplex->columns.count - 1;
}

void simplex_entry(Simplex *simplex, int row, int amount)
{
    Column *column = &simplex->columns.at[simplex->columns.count - 1];
    for (int i = column->first; i < column->first + column->count; i++)
        if (simplex->entries.at[i].row == row) {
            simplex->entries.at[i].amount += amount;
            return;
        }
    *arena_push(simplex->arena, &simplex->entries) = (Entry){row, amount};
    column->count++;
}

void simplex_drop_last(Simplex *simplex)
{
    simplex->columns.count--;
    simplex->entries.count = simplex->columns.at[simplex->columns.count].first;
}

void simplex_set_cost(Simplex *simplex, int column, int64_t cost)
{
    simplex->columns.at[column].cost = cost;
}

int simplex_columns(const Simplex *simplex)
{
    return simplex->columns.count;
}

int64_t simplex_gain(const Simplex *simplex, int index)
{
    const Column *column = &simplex->columns.at[index];
    int64_t sum = -column->cost;
    for (int i = column->first; i < column->first + column->count; i++)
        sum += simplex->price[simplex->entries.at[i].row] * simplex->entries.at[i].amount;
    return sum;
}

/* ---- the first basis ---- */

void simplex_amount(Simplex *simplex, int row, int64_t amount)
{
    simplex->value[row] = amount;
}

void simplex_basic(Simplex *simplex, int row, int column)
{
    simplex->basis[row] = column;
    simplex->columns.at[column].basic = row;
}

static void find_prices(Simplex *simplex)
{
    for (int j = 0; j < simplex->rows; j++) {
        Wide sum = 0;
        for (int i = 0; i < simplex->rows; i++) {
            int64_t cost = simplex->columns.at[simplex->basis[i]].cost;
            if (cost != 0)
                sum += (Wide)cost * row_of(simplex, i)[j];
        }
        simplex->price[j] = (int64_t)wide_floor(sum, ONE);
    }
}

/* The basis is a triangle with 1 or -1 on its diagonal: columns of one entry, and columns that reach into their rows.
 */
void simplex_ready(Simplex *simplex)
{
    int rows = simplex->rows;
    for (int i = 0; i < rows; i++)
        row_of(simplex, i)[i] = ONE;
    for (int i = 0; i < rows; i++) { /* what reaches into other rows */
        const Column *column = &simplex->columns.at[simplex->basis[i]];
        int64_t amount = simplex->value[i];
        for (int j = column->first; j < column->first + column->count && column->count > 1; j++) {
            const Entry *entry = &simplex->entries.at[j];
            if (entry->row == i)
                continue;
            simplex->value[entry->row] -= times(amount, entry->amount * ONE);
            row_of(simplex, entry->row)[i] -= entry->amount * ONE;
        }
    }
    for (int i = 0; i < rows; i++) { /* signs */
        const Column *column = &simplex->columns.at[simplex->basis[i]];
        int sign = 0;
        for (int j = column->first; j < column->first + column->count; j++)
            if (simplex->entries.at[j].row == i)
                sign = simplex->entries.at[j].amount;
        BUG_UNLESS(sign == 1 || sign == -1);
        for (int j = 0; j < rows && sign < 0; j++)
            row_of(simplex, i)[j] = -row_of(simplex, i)[j];
        simplex->value[i] *= sign;
    }
    find_prices(simplex);
}

/* ---- turns ---- */

static int entering_column(const Simplex *simplex, int64_t least)
{
    int best = -1;
    int64_t most = 0;
    for (int i = 0; i < simplex->columns.count; i++) {
        const Column *column = &simplex->columns.at[i];
        int64_t now = column->basic >= 0 ? 0 : simplex_gain(simplex, i);
        if (now <= least)
            continue;
        if (best < 0 || (Wide)now * now / column->weight > (Wide)most * most / simplex->columns.at[best].weight) {
            best = i;
            most = now;
        }
    }
    return best;
}

/* The row whose basic column leaves, -1 where none does. */
static int leaving_row(const Simplex *simplex)
{
    int best = -1;
    for (int i = 0; i < simplex->rows; i++) {
        if (simplex->along[i] < PIVOT_LEAST)
            continue;
        if (best < 0) {
            best = i;
            continue;
        }
        int64_t value = simplex->value[i] > 0 ? simplex->value[i] : 0;
        int64_t other = simplex->value[best] > 0 ? simplex->value[best] : 0;
        Wide one = (Wide)value * simplex->along[best], two = (Wide)other * simplex->along[i];
        if (one < two || (one == two && simplex->along[i] > simplex->along[best]))
            best = i;
    }
    return best;
}

static void find_along(Simplex *simplex, int entering)
{
    const Column *column = &simplex->columns.at[entering];
    for (int i = 0; i < simplex->rows; i++) {
        const int64_t *row = row_of(simplex, i);
        int64_t sum = 0;
        for (int j = column->first; j < column->first + column->count; j++)
            sum += row[simplex->entries.at[j].row] * simplex->entries.at[j].amount;
        simplex->along[i] = sum;
    }
}

static void weigh_columns(Simplex *simplex, int entering, int leaves)
{
    const int64_t *row = row_of(simplex, leaves);
    int64_t by = simplex->along[leaves];
    int64_t own = simplex->columns.at[entering].weight;
    for (int i = 0; i < simplex->columns.count; i++) {
        Column *column = &simplex->columns.at[i];
        if (column->basic >= 0 || i == entering)
            continue;
        int64_t reach = 0;
        for (int j = column->first; j < column->first + column->count; j++)
            reach += row[simplex->entries.at[j].row] * simplex->entries.at[j].amount;
        if (reach == 0)
            continue;
        Wide part = (Wide)reach * WEIGHT_ONE / by;
        Wide weight = ((part * part) >> 16) * own >> 16;
        if (weight > column->weight)
            column->weight = weight < WEIGHT_MOST ? (int64_t)weight : WEIGHT_MOST;
    }
    Wide part = (Wide)WEIGHT_ONE * ONE / by;
    Wide weight = ((part * part) >> 16) * own >> 16;
    Column *left = &simplex->columns.at[simplex->basis[leaves]];
    left->weight = weight < WEIGHT_ONE ? WEIGHT_ONE : weight < WEIGHT_MOST ? (int64_t)weight : WEIGHT_MOST;
}

static void turn(Simplex *simplex, int entering, int leaves)
{
    int rows = simplex->rows;
    int64_t *row = row_of(simplex, leaves);
    int64_t by = simplex->along[leaves];
    int64_t gain = simplex_gain(simplex, entering);
    for (int j = 0; j < rows; j++)
        if (row[j] != 0)
            row[j] = (int64_t)((Wide)row[j] * ONE / by);
    int64_t step = (int64_t)((Wide)simplex->value[leaves] * ONE / by);
    int count = 0;
    for (int j = 0; j < rows; j++)
        if (row[j] != 0)
            simplex->filled[count++] = j;
    int64_t seen = 0; /* the bits of all entries, those below 0 turned over */
    for (int i = 0; i < rows; i++) {
        int64_t along = simplex->along[i];
        if (i == leaves || along == 0)
            continue;
        int64_t *other = row_of(simplex, i);
        for (int k = 0; k < count; k++) {
            int j = simplex->filled[k];
            other[j] -= times(along, row[j]);
            seen |= other[j] ^ (other[j] >> 63);
        }
        simplex->value[i] -= times(along, step);
    }
    simplex->worn = simplex->worn || seen >= ENTRY_MOST;
    simplex->value[leaves] = step;
    for (int j = 0; j < rows; j++)
        if (row[j] != 0)
            simplex->price[j] -= times(gain, row[j]);
    simplex->columns.at[simplex->basis[leaves]].basic = -1;
    simplex_basic(simplex, leaves, entering);
}

bool simplex_turn(Simplex *simplex, int64_t least)
{
    if (simplex->worn)
        return false;
    int entering = entering_column(simplex, least);
    if (entering < 0) {
        find_prices(simplex); /* what rounding moved */
        entering = entering_column(simplex, least);
    }
    if (entering < 0)
        return false;
    find_along(simplex, entering);
    int leaves = leaving_row(simplex);
    if (leaves < 0) {
        simplex->worn = true;
        return false;
    }
    weigh_columns(simplex, entering, leaves);
    turn(simplex, entering, leaves);
    return true;
}

/* ---- what is settled ---- */

void simplex_settle(Simplex *simplex, int index, int times)
{
    int row = simplex->columns.at[index].basic;
    if (row >= 0) {
        simplex->value[row] -= times * ONE;
        return;
    }
    find_along(simplex, index);
    for (int i = 0; i < simplex->rows; i++)
        simplex->value[i] -= simplex->along[i] * times;
}

/* How far a step along the column lifts the row, and what the step loses; false where it does not lift it. */
static bool lifts(const Simplex *simplex, int row, int index, int64_t *reach, int64_t *loss)
{
    const Column *column = &simplex->columns.at[index];
    const int64_t *inverse = row_of(simplex, row);
    *reach = 0;
    if (column->basic >= 0)
        return false;
    for (int i = column->first; i < column->first + column->count; i++)
        *reach -= inverse[simplex->entries.at[i].row] * simplex->entries.at[i].amount;
    if (*reach < PIVOT_LEAST)
        return false;
    int64_t gain = simplex_gain(simplex, index);
    *loss = gain < 0 ? -gain : 0;
    return true;
}

/* The column that enters for `row`: of those that lose about the least per lift, the one that lifts most (P. M. J.
 * Harris, Mathematical Programming 5, 1973); -1 where none lifts it. */
static int mending_column(const Simplex *simplex, int row)
{
    int64_t reach, loss, least_loss = 0, least_reach = 0;
    for (int i = 0; i < simplex->columns.count; i++)
        if (lifts(simplex, row, i, &reach, &loss) &&
            (least_reach == 0 || (Wide)(loss + LOSS_LITTLE) * least_reach < (Wide)least_loss * reach)) {
            least_loss = loss + LOSS_LITTLE;
            least_reach = reach;
        }
    int best = -1;
    int64_t most = 0;
    for (int i = 0; i < simplex->columns.count && least_reach > 0; i++)
        if (lifts(simplex, row, i, &reach, &loss) && reach > most &&
            (Wide)loss * least_reach <= (Wide)least_loss * reach) {
            best = i;
            most = reach;
        }
    return best;
}

bool simplex_mend(Simplex *simplex)
{
    int leaves = -1;
    for (int i = 0; i < simplex->rows; i++)
        if (simplex->value[i] < -BELOW_LEAST && (leaves < 0 || simplex->value[i] < simplex->value[leaves]))
            leaves = i;
    int entering = leaves >= 0 && !simplex->worn ? mending_column(simplex, leaves) : -1;
    if (entering < 0)
        return false;
    find_along(simplex, entering);
    turn(simplex, entering, leaves);
    return true;
}

const int64_t *simplex_prices(const Simplex *simplex)
{
    return simplex->price;
}

int64_t simplex_value(const Simplex *simplex, int column)
{
    int row = simplex->columns.at[column].basic;
    return row >= 0 ? simplex->value[row] : 0;
}

int64_t simplex_cost(const Simplex *simplex)
{
    Wide sum = 0;
    for (int i = 0; i < simplex->rows; i++)
        sum += (Wide)simplex->columns.at[simplex->basis[i]].cost * simplex->value[i];
    return (int64_t)wide_floor(sum, ONE);
}

bool simplex_worn(const Simplex *simplex)
{
    return simplex->worn;
}
