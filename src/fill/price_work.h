/*
 * What the relaxation (price.h) and the dive from it (dive.h) share: the table of both, with what each of its columns
 * stands for. Not for other parts.
 *
 *                  ways      patterns  lacking   spare   over
 *     sizes     |  -count     count       1       -1              =  a little         price of a piece
 *     blocks    |    1                                            =  runs of it       price of a run
 *     bands     |               1                  1              =  boards of it     rent of a board (negative)
 *     studs     |  0 or 1                          1      -1      =  half the block   rent of a joint (negative)
 *
 * A block is a stack of runs with the same studs inside, each on the row above the one before; of two rows that follow
 * on each other only one may have a joint on a stud, so of `count` runs at most half, rounded up, have. All runs of a
 * block are taken as long as its shortest, which only makes the bound less. A band is a kind of board, or, where there
 * are very many, some that follow on each other. `lacking` is a piece from nowhere, `over` a joint too many, both dear.
 */
#ifndef FILL_PRICE_WORK_H
#define FILL_PRICE_WORK_H

#include "fill/price.h"
#include "fill/simplex.h"

typedef struct Block {
    Run run; /* as short as the shortest of it on either side */
    int count;
    int stud_first; /* its first stud's rent, -1 where the rule does not bind */
} Block;

typedef enum ColumnKind { COLUMN_SLACK, COLUMN_WAY, COLUMN_PATTERN } ColumnKind;

/* One piece of a column: of a way, the place it ends at (1 is the first stud, the last the right end); of a pattern,
 * its size and the span of the board it is cut from. */
typedef struct ColumnPart {
    int at;   /* place or size */
    int span; /* of the board; 0 for a way */
} ColumnPart;

typedef struct Note {
    ColumnKind kind;
    int of;           /* block, or kind of board */
    int first, count; /* parts, a way's from right to left */
} Note;

struct Price {
    Arena *arena;
    const Demand *demand;
    const Pile *pile;
    Sizes *sizes;
    Block *blocks;
    int *block_of; /* of each run */
    int block_count;
    int *band_of_kind;
    int *band_boards;
    int band_count;
    int *stud_most; /* joints that each stud of each block may have */
    int stud_count;
    Simplex *table;
    struct {
        Note *at; /* one for each column of the table */
        int count, room;
    } notes;
    struct {
        ColumnPart *at;
        int count, room;
    } parts;
    int turns, turns_most;
    int raised; /* how often what lacks was made dearer */

    int64_t *prices; /* tried: of sizes, then rents of studs; none below 0 */
    int64_t *kept;   /* those of the best bound so far */
    Length bound;    /* -1 before the first */
    int64_t *best;   /* worth of each capacity at the prices tried */
    int64_t *reached;
    int *from; /* the way that was looked for last: the place before each place */
};

/* x of a place of the run: 0 its left end, then its studs, then its right end. */
Length price_place(const Demand *demand, const Run *run, int place);

/* Takes the prices of the table as those tried, and what can best be cut at them. */
void price_read(Price *price);

/* The size of a piece, an index; -1 where it is shorter than all. */
int price_size(const Price *price, Length length);

/* Makes what lacks some times dearer; the table is not put right. */
void price_raise(Price *price);

/* Puts every way and pattern into the table that betters it by more than `least` at the prices tried; false where none
 * does. */
bool price_add_columns(Price *price, int64_t least);

/* The least price of a run of the block from end to end at the prices tried, without a joint at the places that are
 * `closed` (NULL: none); -1 where there is no way. `from` gets the way back. */
int64_t price_cheapest_way(Price *price, const Block *block, const bool *closed);

/* Puts the way that leads back through `from` from the right end into the table; its column. */
int price_put_way(Price *price, int block);

#endif
