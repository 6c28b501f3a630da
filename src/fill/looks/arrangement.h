/*
 * A whole plan that may still be arranged otherwise at no cost: its planks, the span that each is cut from, and the
 * changes that look different and nothing more. A change keeps what is opened, what is covered, the number of pieces
 * and of rules broken, and breaks none by more; where it would not, or would look worse than `most` allows, nothing is
 * changed. Hung pieces never move. It knows nothing of which change to try.
 */
#ifndef FILL_LOOKS_ARRANGEMENT_H
#define FILL_LOOKS_ARRANGEMENT_H

#include "fill/looks/looks.h"
#include "fill/solution.h"

/* Where the planks of a run are in its row. */
typedef struct RunPlace {
    int first, count;
    bool whole; /* nothing of the run is bare, and it has no more pieces than LAY_MOST: its joints may move */
} RunPlace;

typedef struct Arrangement {
    const Demand *demand;
    const Supply *supply;
    Facade *rows;
    RunPlace *runs; /* the demand's */
    Length short_below;
    int piece_count;
    int *run_of;      /* of each piece; -1: hung */
    bool *leaves_off; /* of each run: its closer is left off */
    int *span_of;     /* of each piece; -1: hung */
    int *next_cut;    /* of each piece: the next one cut from its span; -1 at the end */
    int *first_cut;   /* of each span; -1: none */
    Length *left;     /* of each span: the longest piece that can still be cut */
    int *cuts;        /* of each board, those that hang left out */
    int64_t weight;   /* of the looks */
    int64_t work;     /* planks looked at */
    Arena *arena;
} Arrangement;

enum { LAY_MOST = 256 }; /* runs of more pieces stay as they are */

/* The planks of one run to be: pieces left to right, and where each ends. The last ends where the run does. */
typedef struct Laying {
    int run, count;
    int *pieces;
    Length *ends;
} Laying;

/* What a piece of the run takes of a span besides a kerf. */
static inline Length arrangement_wood(const Arrangement *all, int run, Length left, Length right)
{
    return demand_wood(all->demand, &all->demand->runs[run], left, right, !all->leaves_off[run]);
}

/* What the covers hold; NULL where the planks made from them are not theirs. */
Arrangement *arrangement_new(Arena *arena, const Demand *demand, const Supply *supply, const Cover *covers);

/* The covers of what it holds now, in `arena`. */
Cover *arrangement_covers(Arena *arena, const Arrangement *all);

/* How a run that is whole lies now; `out` has room for LAY_MOST. */
void arrangement_read(const Arrangement *all, int run, Laying *out);

/* Covers one or (`other` not NULL) two runs again with the pieces that they have together; none is left
 * without. */
bool arrangement_lay(Arrangement *all, const Laying *one, const Laying *other, int64_t most);

/* Whether the piece has a neighbor of its tone. */
bool arrangement_clashes(Arrangement *all, int piece);

/* Cuts each of two pieces from the other's span. */
bool arrangement_swap(Arrangement *all, int piece, int other, int64_t most);

/* Cuts the piece from another opened board's span. */
bool arrangement_move(Arrangement *all, int piece, int span, int64_t most);

/* Cuts all that is cut from one board from the other, and the other way round. One of them may be unopened. */
bool arrangement_exchange(Arrangement *all, int board, int other, int64_t most);

#endif
