/*
 * The boards at hand while a plan is made: spans of usable wood, how much of each is left, which boards are opened.
 * Where on a span a piece lies stays open until the plan is reported: pieces are cut from its first end on, a kerf
 * apart, in any order, so only what is left counts. It knows nothing of walls.
 */
#ifndef FILL_SUPPLY_H
#define FILL_SUPPLY_H

#include "fill/buckets.h"
#include "fill/demand.h"

/* What a leftover is worth to the plan that is being made: a table over its length. */
typedef struct Salvage {
    Length width; /* of a cell */
    int count;
    int64_t *at; /* rising */
} Salvage;

/* A table by which no leftover is worth anything. */
const Salvage *salvage_none(void);

static inline int64_t salvage_of(const Salvage *salvage, Length left)
{
    if (left <= 0)
        return 0;
    Length cell = left / salvage->width;
    return salvage->at[cell < salvage->count ? cell : salvage->count - 1];
}

/* A stretch of a board clear of squared ends, avoided wood and hung pieces. */
typedef struct Span {
    int board;
    Length from, to;
    Length left; /* length of the longest piece that can still be cut; below 0 where nothing is left at all */
    int cuts;
    int *runs; /* that its pieces are in, one for each cut; in no order */
    int room;
} Span;

typedef struct SupplyBoard {
    int kind; /* -1: a hung piece is cut from it */
    Length length;
    int span_first, span_count;
    int cuts;
    int next, prev; /* in its kind's list of boards not opened; -1 at the ends */
} SupplyBoard;

/* Boards of one length, width and avoided stretches are alike. */
typedef struct Kind {
    Length length, width;
    Length
        slack; /* `apart` where an avoided stretch is narrower than that: a span may give up so much for it; else 0 */
    Length given; /* all that the spans of a board give up to such stretches, at the most */
    int count, unopened;
    int first;      /* board not opened, -1 where none is left */
    int slot_first; /* its spans among the slots */
    int span_count;
} Kind;

/* A span of a kind, for a board that is not opened yet. */
typedef struct Slot {
    int kind, span; /* `span`th of the board */
    Length left;
    int64_t price; /* of opening the board, less what its other spans are worth */
} Slot;

typedef struct Supply {
    const Wall *wall;
    Length kerf, smallest;
    Length slant;   /* the most that a blade takes more than a kerf at any end */
    Length apart;   /* kerf + slant */
    Length *widths; /* of each board */
    SupplyBoard *boards;
    int board_count;
    Span *spans;
    int span_count;
    Kind *kinds;
    int kind_count;
    Slot *slots;
    int slot_count;
    Buckets open;     /* spans of opened boards with something left */
    Buckets unopened; /* slots */
    Length longest;   /* span of all */
    bool narrow;      /* some board is too narrow for some piece */
    bool *single;     /* runs that have one piece: too short for two that keep the rules, and some board can give it */
    const Salvage *salvage;

    Length length_opened;
    int boards_opened;
    int64_t salvaged; /* sum of the worth of what is left on opened boards */
    Arena *arena;
} Supply;

/* Boards as the wall file has them, hung pieces cut. the salvage table may be NULL for now. */
Supply *supply_new(Arena *arena, const Demand *demand);

/* Prices by another table, from here on. */
void supply_use_salvage(Supply *supply, const Salvage *salvage);

/* Opens a board of the kind that is not opened; its index. */
int supply_open(Supply *supply, int kind);

/* Cuts a piece that takes so much wood besides a kerf; a board that is not opened is opened. The first piece of a span
 * may take more than there is, as long as its own length does not. */
void supply_cut(Supply *supply, int span, Length wood, int run);

/* Takes the cut back; a board with no cut left is closed again. */
void supply_uncut(Supply *supply, int span, Length wood, int run);

/* Keeps a board that is not opened from being opened, and back. */
void supply_withhold(Supply *supply, int board);
void supply_return(Supply *supply, int board);

/* Opening a board costs nothing, until supply_use_salvage is called again. */
void supply_open_free(Supply *supply);

#endif
