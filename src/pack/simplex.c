/*
 * Which column enters the basis and which leaves it. The primal pivot keeps the values above 0 and lowers the cost:
 *
 *     enters: the column of greatest gain^2 / weight          leaves: the row whose value runs out first
 *
 * The dual pivot keeps the gains at 0 or below and raises the values (C. E. Lemke, Naval Research Logistics
 * Quarterly 1, 1954):
 *
 *     leaves: the row of least value below 0                  enters: the column whose gain comes to 0 first
 *
 * A number within rounding of 0 counts as 0; of candidates that tie, the one with the largest pivot is taken.
 */
#include "pack/simplex.h"

#define WEIGHT_ONE (INT64_C(1) << 16)
#define WEIGHT_MOST (INT64_C(1) << 40)
#define VALUE_LITTLE (SIMPLEX_ONE >> 30)

static int64_t magnitude(int64_t number)
{
    return number < 0 ? -number : number;
}

static int entering_column(Simplex *simplex, int64_t least)
{
    int best = -1;
    Wide most = 0;
    for (int i = 0; i < simplex->columns.count; i++) {
        const SimplexColumn *column = &simplex->columns.at[i];
        int64_t gain = column->basic >= 0 ? 0 : simplex_gain(simplex, i);
        if (gain <= least)
            continue;
        Wide score = (Wide)gain * gain / column->weight;
        if (best < 0 || score > most) {
            best = i;
            most = score;
        }
    }
    simplex->work += simplex->entries.count + simplex->columns.count;
    return best;
}

static int64_t value_left(const Simplex *simplex, int row)
{
    return simplex->value[row] > VALUE_LITTLE ? simplex->value[row] : 0;
}

/* The row whose basic column leaves, -1 where none does. */
static int leaving_row(const Simplex *simplex)
{
    int best = -1;
    for (int i = 0; i < simplex->rows; i++) {
        if (simplex->direction[i] < SIMPLEX_PIVOT_LEAST)
            continue;
        if (best < 0) {
            best = i;
            continue;
        }
        Wide one = (Wide)value_left(simplex, i) * simplex->direction[best];
        Wide two = (Wide)value_left(simplex, best) * simplex->direction[i];
        if (one < two || (one == two && simplex->direction[i] > simplex->direction[best]))
            best = i;
    }
    return best;
}

static void weigh_columns(Simplex *simplex, int entering, int leaves)
{
    int64_t by = simplex->direction[leaves];
    int64_t own = simplex->columns.at[entering].weight;
    for (int i = 0; i < simplex->columns.count; i++) {
        SimplexColumn *column = &simplex->columns.at[i];
        if (column->basic >= 0 || i == entering)
            continue;
        int64_t reach = simplex_across(simplex, leaves, i);
        if (reach == 0)
            continue;
        Wide part = magnitude(reach) < INT64_MAX / WEIGHT_ONE ? reach * WEIGHT_ONE / by : (Wide)reach * WEIGHT_ONE / by;
        Wide weight = ((part * part) >> 16) * own >> 16;
        if (weight > column->weight)
            column->weight = weight < WEIGHT_MOST ? (int64_t)weight : WEIGHT_MOST;
    }
    Wide part = (Wide)WEIGHT_ONE * SIMPLEX_ONE / by;
    Wide weight = ((part * part) >> 16) * own >> 16;
    SimplexColumn *left = &simplex->columns.at[simplex->basis[leaves]];
    left->weight = weight < WEIGHT_ONE ? WEIGHT_ONE : weight < WEIGHT_MOST ? (int64_t)weight : WEIGHT_MOST;
    simplex->work += simplex->entries.count + simplex->columns.count;
}

bool simplex_pivot(Simplex *simplex, int64_t least)
{
    if (simplex->overflowed)
        return false;
    int entering = entering_column(simplex, least);
    if (entering < 0) {
        simplex_find_prices(simplex); /* what rounding moved */
        entering = entering_column(simplex, least);
    }
    if (entering < 0)
        return false;
    simplex_find_direction(simplex, entering);
    int leaves = leaving_row(simplex);
    if (leaves < 0) {
        simplex->overflowed = true;
        return false;
    }
    weigh_columns(simplex, entering, leaves);
    simplex_exchange(simplex, entering, leaves);
    return !simplex->overflowed;
}

/* ---- the dual method ---- */

static int infeasible_row(const Simplex *simplex)
{
    int best = -1;
    int64_t least = -VALUE_LITTLE;
    for (int i = 0; i < simplex->rows; i++)
        if (simplex->value[i] < least) {
            least = simplex->value[i];
            best = i;
        }
    return best;
}

bool simplex_is_feasible(const Simplex *simplex)
{
    return infeasible_row(simplex) < 0;
}

/* Columns that would raise the row, into `raising`; gives the index there of the one that loses least for what it
 * raises, -1 where there is none. */
static int list_raising(Simplex *simplex, int row, int64_t tolerance)
{
    int best = -1;
    simplex->raising.count = 0;
    for (int i = 0; i < simplex->columns.count; i++) {
        if (simplex->columns.at[i].basic >= 0)
            continue;
        int64_t reach = -simplex_across(simplex, row, i);
        if (reach < SIMPLEX_PIVOT_LEAST)
            continue;
        int64_t gain = simplex_gain(simplex, i);
        SimplexRaising *raising = arena_push(simplex->arena, &simplex->raising);
        *raising = (SimplexRaising){i, reach, gain < 0 ? -gain : 0};
        const SimplexRaising *least = &simplex->raising.at[best < 0 ? 0 : best];
        if (best < 0 || (Wide)(raising->loss + tolerance) * least->reach < (Wide)(least->loss + tolerance) * reach)
            best = simplex->raising.count - 1;
    }
    simplex->work += 2 * (simplex->entries.count + simplex->columns.count);
    return best;
}

/* Of those that lose about the least for what they raise, the one that raises most (P. M. J. Harris, Mathematical
 * Programming 5, 1973). */
static int raising_column(Simplex *simplex, int row, int64_t tolerance)
{
    int least = list_raising(simplex, row, tolerance), best = least;
    for (int i = 0; i < simplex->raising.count; i++) {
        const SimplexRaising *one = &simplex->raising.at[i], *two = &simplex->raising.at[least];
        if (one->reach > simplex->raising.at[best].reach &&
            (Wide)one->loss * two->reach <= (Wide)(two->loss + tolerance) * one->reach)
            best = i;
    }
    return best < 0 ? -1 : simplex->raising.at[best].column;
}

bool simplex_dual_pivot(Simplex *simplex, int64_t tolerance)
{
    int leaves = simplex->overflowed ? -1 : infeasible_row(simplex);
    int entering = leaves < 0 ? -1 : raising_column(simplex, leaves, tolerance);
    if (entering < 0)
        return false;
    simplex_find_direction(simplex, entering);
    simplex_exchange(simplex, entering, leaves);
    return !simplex->overflowed;
}
