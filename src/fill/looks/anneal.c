/*
 *     turn, shift, runs, pass: joints, by joint_moves
 *     swap     two pieces of about one length change boards
 *     move     a piece is cut from what is left of another board
 *     boards   two boards change what is cut from them
 *
 * Invariant: what is tried depends on the plan and the number of tries alone.
 */
#include "fill/looks/anneal.h"

#include "fill/looks/joint_moves.h"

#include <stdlib.h>

/* Work is counted in planks looked at. */
enum {
    WORK_PER_PIECE = 12000,
    WORK_MOST = 24000000,
    WORK_PER_TRY = 8,
    WORK_PER_UNIT = 4, /* of the fill's units of work */
    HEAT_MOST = 300,   /* of 1000 tries may look worse by one at first, of those as many by two, and so on */
    WORSE_MOST = 4,
    DRAWS = 4, /* for a piece beside one of its tone */
    BESIDE = 8 /* of things sorted by length, how far apart two may stand */
};

#define RUNS_ALIKE (LENGTH_INCH) /* lengths of runs that change what lies on them differ by no more */

typedef struct ByLength {
    Length length;
    int index;
} ByLength;

typedef enum Change {
    CHANGE_TURN,
    CHANGE_SHIFT,
    CHANGE_RUNS,
    CHANGE_PASS,
    CHANGE_SWAP,
    CHANGE_MOVE,
    CHANGE_BOARDS,
    CHANGES
} Change;

struct Anneal {
    Arrangement *all;
    const Cover *start;
    int64_t start_weight;
    Random random;
    int64_t budget, heat;
    bool tones;        /* differ */
    ByLength *runs;    /* those that are whole, by length */
    int run_count;     /* of them */
    ByLength *boards;  /* by length */
    ByLength *pieces;  /* by length, as they were when they were sorted last */
    int piece_count;   /* of them: without those hung */
    int *spans;        /* that had wood left then */
    int span_count;    /* of them */
    int tries_to_sort; /* before they are sorted again */
};

static int by_length(const void *a, const void *b)
{
    const ByLength *one = a, *other = b;
    if (one->length != other->length)
        return one->length < other->length ? -1 : 1;
    return (one->index > other->index) - (one->index < other->index);
}

static void sort(ByLength *things, int count)
{
    if (count > 1)
        qsort(things, (size_t)count, sizeof *things, by_length);
}

static int below(Anneal *anneal, int bound)
{
    return (int)random_below(&anneal->random, (uint64_t)bound);
}

/* One of the things beside `at`, or the same. */
static int beside(Anneal *anneal, int at, int count)
{
    int other = at + below(anneal, 2 * BESIDE + 1) - BESIDE;
    return other < 0 ? 0 : other >= count ? count - 1 : other;
}

static void sort_pieces(Anneal *anneal)
{
    const Arrangement *all = anneal->all;
    anneal->piece_count = anneal->span_count = 0;
    for (int i = 0; i < all->rows->count; i++)
        for (int j = 0; j < all->rows->at[i].count; j++) {
            const FacadePlank *plank = &all->rows->at[i].at[j];
            if (plank->run >= 0)
                anneal->pieces[anneal->piece_count++] = (ByLength){plank->right - plank->left, plank->piece};
        }
    sort(anneal->pieces, anneal->piece_count);
    for (int i = 0; i < all->supply->span_count; i++) {
        int board = all->supply->spans[i].board;
        if (all->left[i] >= all->supply->smallest && (all->cuts[board] > 0 || all->supply->boards[board].kind < 0))
            anneal->spans[anneal->span_count++] = i;
    }
    anneal->tries_to_sort = 4 * anneal->piece_count;
}

Anneal *anneal_new(Arena *arena, const Demand *demand, const Supply *supply, const Cover *covers)
{
    Anneal *anneal = arena_one(arena, Anneal);
    Arrangement *all = arrangement_new(arena, demand, supply, covers);
    if (all == NULL)
        return NULL;
    anneal->all = all;
    anneal->start = covers;
    anneal->start_weight = all->weight;
    anneal->random = (Random){1};
    for (int i = 1; i < supply->board_count; i++)
        anneal->tones = anneal->tones || all->rows->tones[i] != all->rows->tones[0];
    anneal->runs = arena_array(arena, ByLength, demand->run_count);
    for (int i = 0; i < demand->run_count; i++)
        if (all->runs[i].whole)
            anneal->runs[anneal->run_count++] = (ByLength){demand->runs[i].right - demand->runs[i].left, i};
    sort(anneal->runs, anneal->run_count);
    anneal->boards = arena_array(arena, ByLength, supply->board_count);
    for (int i = 0; i < supply->board_count; i++)
        anneal->boards[i] = (ByLength){supply->boards[i].length, i};
    sort(anneal->boards, supply->board_count);
    anneal->pieces = arena_array(arena, ByLength, all->piece_count);
    anneal->spans = arena_array(arena, int, supply->span_count);
    sort_pieces(anneal);
    int64_t budget = (int64_t)anneal->piece_count * WORK_PER_PIECE;
    anneal->budget = budget < WORK_MOST ? budget : WORK_MOST;
    if (budget > 0) /* less heat where there is less time to cool down */
        anneal->heat = HEAT_MOST * anneal->budget / budget;
    return anneal;
}

/* ---- what is tried ---- */

static int some_run(Anneal *anneal)
{
    return anneal->runs[below(anneal, anneal->run_count)].index;
}

static void exchange_runs(Anneal *anneal, int64_t most)
{
    int at = below(anneal, anneal->run_count);
    int other = below(anneal, 2) == 0 ? below(anneal, anneal->run_count) : beside(anneal, at, anneal->run_count);
    const ByLength *one = &anneal->runs[at], *two = &anneal->runs[other];
    if (at != other && one->length - two->length <= RUNS_ALIKE && two->length - one->length <= RUNS_ALIKE)
        joints_exchange(anneal->all, &anneal->random, one->index, two->index, most);
}

static void pass(Anneal *anneal, int64_t most)
{
    int run = some_run(anneal), other = some_run(anneal);
    if (run != other)
        joints_pass(anneal->all, &anneal->random, run, other, most);
}

/* A piece that has a neighbor of its tone, where a few draws find one; its place among the sorted. */
static int some_piece(Anneal *anneal)
{
    int at = 0;
    for (int i = 0; i < DRAWS; i++) {
        at = below(anneal, anneal->piece_count);
        if (arrangement_clashes(anneal->all, anneal->pieces[at].index))
            break;
    }
    return at;
}

static void swap(Anneal *anneal, int64_t most)
{
    int at = some_piece(anneal);
    int other = beside(anneal, at, anneal->piece_count);
    if (at != other)
        arrangement_swap(anneal->all, anneal->pieces[at].index, anneal->pieces[other].index, most);
}

static void move(Anneal *anneal, int64_t most)
{
    if (anneal->span_count == 0)
        return;
    int piece = anneal->pieces[some_piece(anneal)].index;
    arrangement_move(anneal->all, piece, anneal->spans[below(anneal, anneal->span_count)], most);
}

static void exchange_boards(Anneal *anneal, int64_t most)
{
    int count = anneal->all->supply->board_count;
    int at = below(anneal, count);
    int other = below(anneal, 2) == 0 ? below(anneal, count) : beside(anneal, at, count);
    if (at != other)
        arrangement_exchange(anneal->all, anneal->boards[at].index, anneal->boards[other].index, most);
}

static void try(Anneal *anneal, Change change, int64_t most)
{
    switch (change) {
    case CHANGE_TURN: joints_turn(anneal->all, &anneal->random, some_run(anneal), most); break;
    case CHANGE_SHIFT: joints_shift(anneal->all, &anneal->random, some_run(anneal), most); break;
    case CHANGE_RUNS: exchange_runs(anneal, most); break;
    case CHANGE_PASS: pass(anneal, most); break;
    case CHANGE_SWAP: swap(anneal, most); break;
    case CHANGE_MOVE: move(anneal, most); break;
    case CHANGE_BOARDS: exchange_boards(anneal, most); break;
    case CHANGES: break;
    }
}

/* How much worse the next change may look. */
static int64_t worse(Anneal *anneal)
{
    int64_t left = (anneal->budget - anneal->all->work) * 1000 / (anneal->budget + 1) - 200;
    if (left <= 0)
        return 0;
    int64_t heat = anneal->heat * left / 1000 * left / 1000;
    int64_t most = 0;
    while (most < WORSE_MOST && below(anneal, 1000) < heat)
        most++;
    return most;
}

bool anneal_step(Anneal *anneal, int64_t *work)
{
    Arrangement *all = anneal->all;
    int64_t before = all->work;
    bool joints = anneal->run_count > 0, tones = anneal->tones && anneal->piece_count > 0;
    if (all->weight == 0 || all->work >= anneal->budget || (!joints && !tones))
        return true;
    if (anneal->tries_to_sort-- == 0)
        sort_pieces(anneal);
    int first = joints ? CHANGE_TURN : CHANGE_SWAP;
    int last = tones ? CHANGE_BOARDS : CHANGE_PASS;
    int64_t most = worse(anneal);
    Change change = (Change)(first + below(anneal, last - first + 1));
    try(anneal, change, most);
    all->work += WORK_PER_TRY;
    *work += 1 + (all->work - before) / WORK_PER_UNIT;
    return false;
}

const Cover *anneal_covers(Arena *arena, const Anneal *anneal)
{
    const Arrangement *all = anneal->all;
    Looks looks = looks_measure(all->rows, all->short_below);
    /* A weight that was kept wrong says nothing of what it led to: then the plan stays as it was before. */
    bool better = looks_weight(&looks) == all->weight && all->weight < anneal->start_weight;
    return better ? arrangement_covers(arena, all) : anneal->start;
}
