/*
 * The table of the linear relaxation, with what each of its columns stands for. For the files of this room alone.
 *
 *                  paths   patterns  slack    surplus
 *     sizes     | -count    count       1       -1      =  a little           dual: price of a piece
 *     pairs     |    1                                  =  half the block     dual: price of two runs
 *     singles   |    1                                  =  the odd run        dual: price of a run
 *     bands     |             1                  1      =  boards of it       dual: rent of a board (below 0)
 *
 * A block is a stack of runs with the same studs inside, each on the row above the one before. Two that follow each
 * other take a pair of paths whose joints keep their stagger; where the number of runs is odd, one takes a path of its
 * own. All runs of a block count as long as its shortest, and the joints of one pair are not held against those of the
 * next: both only lower the bound. A band is a kind of board, or, where there are very many kinds, some that follow
 * each other. A slack column supplies a piece from nowhere, at a high cost.
 */
#ifndef FILL_RELAX_TABLE_H
#define FILL_RELAX_TABLE_H

#include "fill/relax/paths.h"
#include "fill/salvage.h"
#include "pack/simplex.h"

typedef struct Block {
    Run run;            /* what its runs have in common; `shortest` less by what they reach beyond it */
    Length left, right; /* how far they reach, all together */
    Length shortest;    /* the least of theirs */
    int pairs, singles;
    int pair_row, single_row; /* of the table; -1 where there are none */
} Block;

typedef enum ColumnKind { COLUMN_SLACK, COLUMN_PATHS, COLUMN_PATTERN } ColumnKind;

/* One piece of a column: of a path, the place it ends at; of a pattern, its size and the span of the board it is cut
 * from. */
typedef struct ColumnPart {
    int at;   /* place or size */
    int span; /* of the board; 0 for a path */
} ColumnPart;

typedef struct ColumnInfo {
    ColumnKind kind;
    int of;           /* block, or kind of board */
    int first, count; /* parts; of paths from right to left, the lower of a pair first */
    int lower;        /* of paths: how many parts the lower, or only, one has */
} ColumnInfo;

typedef struct Relaxation {
    Arena *arena;
    const Demand *demand;
    const Supply *supply;
    Sizes *sizes;
    Block *blocks;
    int *block_of; /* of each run */
    int block_count;
    int *band_of_kind;
    int *band_boards;
    int band_count;
    int rows; /* of the table */
    Paths *paths;
    Simplex *table;
    struct {
        ColumnInfo *at; /* one for each column of the table */
        int count, room;
    } infos;
    struct {
        ColumnPart *at;
        int count, room;
    } parts;
    int pivots, pivots_most;
    int since;    /* pivots since columns were looked for */
    int raises;   /* how often the slack costs were raised */
    int64_t work; /* since it was taken last, but for that of the table and the paths */

    int64_t *duals;       /* tried, of sizes; none below 0 */
    int64_t *best_duals;  /* those of the best bound so far */
    Length bound;         /* -1 before the first */
    int64_t *slack_costs; /* of sizes, before they were raised */
    int64_t *best;        /* value of each capacity at the duals tried */
} Relaxation;

/* Takes the duals of the table as those tried, and works out the best that can be cut at them. */
void relaxation_read_duals(Relaxation *relaxation);

/* Raises the costs of the slack columns; does not reoptimize. */
void relaxation_raise_slack_costs(Relaxation *relaxation);

/* Adds every path and pattern that gains more than `least` at the duals tried; false where none does. */
bool relaxation_add_columns(Relaxation *relaxation, int64_t least);

/* Adds what `paths` found last as a column of the block; its index. */
int relaxation_add_path(Relaxation *relaxation, int block, bool pair);

/* One path of a column. */
typedef struct Path {
    const ColumnPart *parts; /* from right to left */
    int count;
} Path;

Path relaxation_path(const Relaxation *relaxation, int column, bool above);

/* Where the i-th piece of a path, from the right, begins: a place. */
static inline int path_from(const Path *path, int i)
{
    return i + 1 < path->count ? path->parts[i + 1].at : 0;
}

/* The size of that piece on the block's run. */
int relaxation_piece_size(const Relaxation *relaxation, const Block *block, const Path *path, int i);

/* Units of the fill's work since the last call: pivots, paths, patterns. */
int64_t relaxation_take_work(Relaxation *relaxation);

#endif
