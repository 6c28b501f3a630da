/*
 * The linear relaxation of cutting stock over the patterns known so far, each taken as often as it likes, in parts too:
 *
 *     least sum of cost x   with   sum of count x >= demand for each size,   sum of x >= -available for each scarce
 * kind
 *
 * It guides: it prices the sizes so that new patterns can be looked for, and shows which patterns to try first. Nothing
 * that it says is a proof: generation.c checks its prices. Costs and prices are whole parts of PACK_UNIT,
 * which stands for the greatest value of any kind; how much of a pattern is taken is counted in parts of SIMPLEX_ONE.
 */
#ifndef PACK_MASTER_H
#define PACK_MASTER_H

#include "pack/simplex.h"
#include "pack/work.h"

#define PACK_UNIT (INT64_C(1) << 36)

/* A pattern as a column of the table. */
typedef struct PackColumn {
    int kind;
    int part_count;
    PackPart *parts;
} PackColumn;

typedef struct PackColumns {
    PackColumn *at;
    int count;
    int room;
} PackColumns;

typedef struct PackMaster {
    PackWork *work;
    Arena *arena;
    int rows;         /* a row for each size demanded, then one for each scarce kind */
    int size_rows;    /* of sizes */
    int *row_of_size; /* -1 where none */
    int *row_of_kind; /* -1 where the kind is not scarce */
    int *size_of_row;
    int64_t *value;      /* of each kind, in parts of PACK_UNIT, rounded down */
    PackColumns columns; /* of the table, after the substitutes and surpluses */
    Simplex *table;
    int since_renewed; /* pivots */
    int dearness;      /* how often the cost of substitutes was raised */
} PackMaster;

/* A master for `rest`, begun with substitutes alone. `most_boards` bounds the boards that are ever opened of a kind:
 * one that has fewer left is scarce. */
PackMaster *pack_master_new(PackWork *work, Arena *arena, const PackRest *rest, const int64_t *most_boards);

/* A copy in the state it is in, whose columns are its own. */
PackMaster *pack_master_copy(Arena *arena, const PackMaster *master);

/* Adds a pattern as a column; parts of sizes without a row are left out. */
void pack_master_add(PackMaster *master, int kind, const PackPart *parts, int part_count);

/* Brings the columns known to their optimum, from where demand was met before; false when the steps ran out. */
bool pack_master_solve(PackMaster *master);

/* Sets the right side to `rest` and makes it met again, the prices staying as near to optimal as they were. */
bool pack_master_change(PackMaster *master, const PackRest *rest);

/* The pattern that stands in the basis at a row and how much of it, in parts of SIMPLEX_ONE; NULL where none does. */
const PackColumn *pack_master_basic(const PackMaster *master, int row, int64_t *amount);

/* Price of a size or of a kind: 0 where it has no row. */
int64_t pack_master_size_price(const PackMaster *master, int size);
int64_t pack_master_kind_price(const PackMaster *master, int kind);

/* What the relaxation costs. */
int64_t pack_master_cost(const PackMaster *master);

/* Whether substitutes stand in for more than a trace of what is demanded. */
bool pack_master_uses_slack(const PackMaster *master);

/* Raises the cost of leaving pieces uncut. */
void pack_master_raise_slack_costs(PackMaster *master);

#endif
