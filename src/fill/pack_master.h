/*
 * The linear relaxation of cutting stock over the patterns known so far, each taken as often as it likes, in parts too:
 *
 *     least sum of cost x   with   sum of count x >= demand for each size,   sum of x >= -available for each scarce
 * kind
 *
 * A revised simplex method with a dense inverse of the basis. It guides: it prices the sizes so that new patterns can
 * be looked for, and shows which patterns to try first. It works in binary64 with nothing but + - x / in one order, so
 * that it takes the same way on every machine, and nothing that it says is a proof: pack_price.c checks its prices in
 * whole numbers.
 */
#ifndef FILL_PACK_MASTER_H
#define FILL_PACK_MASTER_H

#include "fill/pack_work.h"

typedef struct PackColumn {
    int kind;
    double cost; /* value of the kind over the greatest value of any */
    int part_count;
    PackPart *parts; /* `size` is the row */
    bool is_basic;
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
    double *demand;     /* right side of each row; negative for a kind */
    double *substitute; /* cost of leaving a piece uncut, of each size's row */
    PackColumns columns;
    /* the basis: for each row what stands in it, how much of it, and the inverse */
    int *basic;        /* >= 0: a column; -1 - row: surplus of the row; -1 - rows - row: substitute of the row */
    bool *spare_basic; /* of surpluses and substitutes, by -1 - what stands in `basic` */
    double *amount;
    double *price; /* of each row */
    double *inverse;
    double *entering; /* a column in terms of the basis */
    int since_inverted;
    int dearness; /* how often substitutes were made dearer */
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

/* What the relaxation costs, over the greatest value of any kind. */
double pack_master_cost(const PackMaster *master);

/* How much of what is uncut the substitutes stand in for. */
double pack_master_uncut(const PackMaster *master);

/* Makes leaving pieces uncut dearer. */
void pack_master_dearer(PackMaster *master);

#endif
