/*
 * The table:
 *
 *                 substitutes  surpluses  patterns
 *     sizes     |      1          -1       count     =   demand
 *     kinds     |                 -1        -1       =  -available      scarce ones only
 *
 * It begins as substitutes, which stand for pieces left uncut, and the surpluses of the kinds.
 */
#include "pack/master.h"

#include "base/wide.h"

#include <string.h>

#define FINER 16                               /* costs in the table, over those outside it */
#define GAIN_LEAST (FINER * (PACK_UNIT >> 33)) /* gains below count as none */
#define TRACE (SIMPLEX_ONE >> 20)              /* amounts below count as none */

enum { RENEW_EACH = 5 }; /* pivots a row, between reinversions */

/* Cost of a piece uncut over its share of the cheapest board. */
enum { SUBSTITUTE = 103, SUBSTITUTE_OF = 100 };

/* Counts what the table has done: a product in two words takes about as long as two elementary operations. */
static bool spend(PackMaster *master)
{
    return pack_spend(master->work, 2 * simplex_work(master->table));
}

static int64_t substitute_cost(const PackMaster *master, int size)
{
    const PackWork *work = master->work;
    Wide least = 0;
    for (int k = 0; k < work->kind_count && work->capacity[k] >= work->size[size]; k++) {
        Wide value = master->value[k] > 0 ? master->value[k] : 1;
        Wide cost = value * SUBSTITUTE * work->size[size] / ((Wide)SUBSTITUTE_OF * work->capacity[k]);
        least = k == 0 || cost < least ? cost : least;
    }
    return least > 0 ? wide_narrow(least) : 1;
}

static void set_amounts(PackMaster *master, const PackRest *rest)
{
    for (int r = 0; r < master->size_rows; r++)
        simplex_set_right_side(master->table, r, rest->demand[master->size_of_row[r]] * SIMPLEX_ONE);
    for (int k = 0; k < master->work->kind_count; k++)
        if (master->row_of_kind[k] >= 0)
            simplex_set_right_side(master->table, master->row_of_kind[k], -rest->available[k] * SIMPLEX_ONE);
}

static void put_rows(PackMaster *master, const PackRest *rest, const int64_t *most_boards)
{
    const PackWork *work = master->work;
    master->row_of_size = arena_array(master->arena, int, work->size_count);
    master->row_of_kind = arena_array(master->arena, int, work->kind_count);
    master->size_of_row = arena_array(master->arena, int, work->size_count);
    for (int i = 0; i < work->size_count; i++) {
        master->row_of_size[i] = rest->demand[i] > 0 ? master->rows : -1;
        if (rest->demand[i] > 0)
            master->size_of_row[master->rows++] = i;
    }
    master->size_rows = master->rows;
    for (int k = 0; k < work->kind_count; k++)
        master->row_of_kind[k] = rest->available[k] < most_boards[k] ? master->rows++ : -1;
}

PackMaster *pack_master_new(PackWork *work, Arena *arena, const PackRest *rest, const int64_t *most_boards)
{
    PackMaster *master = arena_one(arena, PackMaster);
    master->work = work;
    master->arena = arena;
    put_rows(master, rest, most_boards);
    int64_t dearest = 1;
    for (int k = 0; k < work->kind_count; k++)
        dearest = work->value[k] > dearest ? work->value[k] : dearest;
    master->value = arena_array(arena, int64_t, work->kind_count);
    for (int k = 0; k < work->kind_count; k++)
        master->value[k] = wide_narrow(wide_floor((Wide)work->value[k] * PACK_UNIT, dearest));

    master->table = simplex_new(arena, master->rows);
    for (int r = 0; r < master->size_rows; r++) {
        simplex_basic(master->table, r,
                      simplex_column(master->table, FINER * substitute_cost(master, master->size_of_row[r])));
        simplex_entry(master->table, r, 1);
    }
    for (int r = 0; r < master->rows; r++) {
        int surplus = simplex_column(master->table, 0);
        simplex_entry(master->table, r, -1);
        if (r >= master->size_rows)
            simplex_basic(master->table, r, surplus);
    }
    set_amounts(master, rest);
    simplex_start(master->table); /* a table that overflowed has no prices to guide by, and proves nothing */
    spend(master);
    return master;
}

PackMaster *pack_master_copy(Arena *arena, const PackMaster *master)
{
    PackMaster *copy = arena_one(arena, PackMaster);
    *copy = *master;
    copy->arena = arena;
    copy->table = simplex_copy(arena, master->table);
    copy->columns.at = arena_array(arena, PackColumn, master->columns.count);
    copy->columns.room = master->columns.count;
    if (master->columns.count > 0)
        memcpy(copy->columns.at, master->columns.at, (size_t)master->columns.count * sizeof *copy->columns.at);
    return copy;
}

void pack_master_add(PackMaster *master, int kind, const PackPart *parts, int part_count)
{
    PackColumn column = {.kind = kind, .parts = arena_array(master->arena, PackPart, part_count)};
    simplex_column(master->table, FINER * master->value[kind]);
    for (int i = 0; i < part_count; i++) {
        int row = master->row_of_size[parts[i].size];
        if (row < 0)
            continue;
        simplex_entry(master->table, row, parts[i].count);
        column.parts[column.part_count++] = parts[i];
    }
    if (master->row_of_kind[kind] >= 0)
        simplex_entry(master->table, master->row_of_kind[kind], -1);
    *arena_push(master->arena, &master->columns) = column;
}

/* After a pivot: counts it and reinverts where that is due; false where the steps have run out. */
static bool count_turn(PackMaster *master)
{
    if (++master->since_renewed >= RENEW_EACH * master->rows || simplex_overflowed(master->table)) {
        simplex_reinvert(master->table);
        master->since_renewed = 0;
    }
    return spend(master);
}

bool pack_master_solve(PackMaster *master)
{
    int64_t cost = simplex_cost(master->table);
    int stalled = 0;
    while (simplex_pivot(master->table, GAIN_LEAST)) {
        if (!count_turn(master))
            return false;
        int64_t before = cost;
        cost = simplex_cost(master->table);
        stalled = cost < before ? 0 : stalled + 1;
        if (stalled > 20 * master->rows + 100)
            return true; /* a standstill: the prices are as good as they get */
    }
    return spend(master);
}

bool pack_master_change(PackMaster *master, const PackRest *rest)
{
    set_amounts(master, rest);
    simplex_right_sides_changed(master->table);
    for (int turn = 0; turn < 50 * master->rows + 100; turn++) {
        if (!simplex_dual_pivot(master->table, GAIN_LEAST))
            return spend(master) && simplex_is_feasible(master->table);
        if (!count_turn(master))
            return false;
    }
    return false;
}

const PackColumn *pack_master_basic(const PackMaster *master, int row, int64_t *amount)
{
    int column = simplex_basic_in(master->table, row);
    *amount = simplex_value(master->table, column);
    int first = master->size_rows + master->rows;
    return column >= first ? &master->columns.at[column - first] : NULL;
}

int64_t pack_master_size_price(const PackMaster *master, int size)
{
    int row = master->row_of_size[size];
    return row < 0 ? 0 : simplex_prices(master->table)[row] / FINER;
}

int64_t pack_master_kind_price(const PackMaster *master, int kind)
{
    int row = master->row_of_kind[kind];
    return row < 0 ? 0 : simplex_prices(master->table)[row] / FINER;
}

int64_t pack_master_cost(const PackMaster *master)
{
    return simplex_cost(master->table) / FINER;
}

bool pack_master_uses_slack(const PackMaster *master)
{
    int64_t sum = 0;
    for (int r = 0; r < master->size_rows && sum <= TRACE; r++)
        sum += simplex_value(master->table, r);
    return sum > TRACE;
}

void pack_master_raise_slack_costs(PackMaster *master)
{
    master->dearness++;
    int64_t times = master->dearness == 1 ? 11 : master->dearness == 2 ? 15 : 20;
    for (int r = 0; r < master->size_rows; r++)
        simplex_set_cost(master->table, r, simplex_column_cost(master->table, r) * times / 10);
    simplex_costs_changed(master->table);
}
