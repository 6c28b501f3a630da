/*
 *     turn, shift, runs, pass: joints, by arrange_joints
 *     swap     two pieces of about one length change boards
 *     move     a piece is cut from what is left of another board
 *     boards   two boards change what is cut from them
 *
 * Invariant: what is tried depends on the plan and the number of tries alone.
 */
#include "fill/looks/arrange.h"

#include "fill/looks/arrange_joints.h"

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

typedef struct Sorted {
    Length length;
    int index;
} Sorted;

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

struct Arrange {
    Arrangement *all;
    const Cover *start;
    int64_t start_weight;
    Random random;
    int64_t budget, heat;
    bool tones;        /* differ */
    Sorted *runs;      /* those that are whole, by length */
    int run_count;     /* of them */
    Sorted *boards;    /* by length */
    Sorted *pieces;    /* by length, as they were when they were sorted last */
    int piece_count;   /* of them: without those hung */
    int *spans;        /* that had wood left then */
    int span_count;    /* of them */
    int tries_to_sort; /* before they are sorted again */
};

static int by_length(const void *a, const void *b)
{
    const Sorted *one = a, *other = b;
    if (one->length != other->length)
        return one->length < other->length ? -1 : 1;
    return (one->index > other->index) - (one->index < other->index);
}

static void sort(Sorted *things, int count)
{
    if (count > 1)
        qsort(things, (size_t)count, sizeof *things, by_length);
}

static int below(Arrange *arrange, int bound)
{
    return (int)random_below(&arrange->random, (uint64_t)bound);
}

/* One of the things beside `at`, or the same. */
static int beside(Arrange *arrange, int at, int count)
{
    int other = at + below(arrange, 2 * BESIDE + 1) - BESIDE;
    return other < 0 ? 0 : other >= count ? count - 1 : other;
}

static void sort_pieces(Arrange *arrange)
{
    const Arrangement *all = arrange->all;
    arrange->piece_count = arrange->span_count = 0;
    for (int i = 0; i < all->rows->count; i++)
        for (int j = 0; j < all->rows->at[i].count; j++) {
            const Plank *plank = &all->rows->at[i].at[j];
            if (plank->run >= 0)
                arrange->pieces[arrange->piece_count++] = (Sorted){plank->right - plank->left, plank->piece};
        }
    sort(arrange->pieces, arrange->piece_count);
    for (int i = 0; i < all->pile->span_count; i++) {
        int board = all->pile->spans[i].board;
        if (all->left[i] >= all->pile->smallest && (all->cuts[board] > 0 || all->pile->boards[board].kind < 0))
            arrange->spans[arrange->span_count++] = i;
    }
    arrange->tries_to_sort = 4 * arrange->piece_count;
}

Arrange *arrange_new(Arena *arena, const Demand *demand, const Pile *pile, const Cover *covers)
{
    Arrange *arrange = arena_one(arena, Arrange);
    Arrangement *all = arrangement_new(arena, demand, pile, covers);
    if (all == NULL)
        return NULL;
    arrange->all = all;
    arrange->start = covers;
    arrange->start_weight = all->weight;
    arrange->random = (Random){1};
    for (int i = 1; i < pile->board_count; i++)
        arrange->tones = arrange->tones || all->rows->tones[i] != all->rows->tones[0];
    arrange->runs = arena_array(arena, Sorted, demand->run_count);
    for (int i = 0; i < demand->run_count; i++)
        if (all->runs[i].whole)
            arrange->runs[arrange->run_count++] = (Sorted){demand->runs[i].right - demand->runs[i].left, i};
    sort(arrange->runs, arrange->run_count);
    arrange->boards = arena_array(arena, Sorted, pile->board_count);
    for (int i = 0; i < pile->board_count; i++)
        arrange->boards[i] = (Sorted){pile->boards[i].length, i};
    sort(arrange->boards, pile->board_count);
    arrange->pieces = arena_array(arena, Sorted, all->piece_count);
    arrange->spans = arena_array(arena, int, pile->span_count);
    sort_pieces(arrange);
    int64_t budget = (int64_t)arrange->piece_count * WORK_PER_PIECE;
    arrange->budget = budget < WORK_MOST ? budget : WORK_MOST;
    if (budget > 0) /* less heat where there is less time to cool down */
        arrange->heat = HEAT_MOST * arrange->budget / budget;
    return arrange;
}

/* ---- what is tried ---- */

static int some_run(Arrange *arrange)
{
    return arrange->runs[below(arrange, arrange->run_count)].index;
}

static void exchange_runs(Arrange *arrange, int64_t most)
{
    int at = below(arrange, arrange->run_count);
    int other = below(arrange, 2) == 0 ? below(arrange, arrange->run_count) : beside(arrange, at, arrange->run_count);
    const Sorted *one = &arrange->runs[at], *two = &arrange->runs[other];
    if (at != other && one->length - two->length <= RUNS_ALIKE && two->length - one->length <= RUNS_ALIKE)
        joints_exchange(arrange->all, &arrange->random, one->index, two->index, most);
}

static void pass(Arrange *arrange, int64_t most)
{
    int run = some_run(arrange), other = some_run(arrange);
    if (run != other)
        joints_pass(arrange->all, &arrange->random, run, other, most);
}

/* A piece that has a neighbour of its tone, where a few draws find one; its place among the sorted. */
static int some_piece(Arrange *arrange)
{
    int at = 0;
    for (int i = 0; i < DRAWS; i++) {
        at = below(arrange, arrange->piece_count);
        if (arrangement_clashes(arrange->all, arrange->pieces[at].index))
            break;
    }
    return at;
}

static void swap(Arrange *arrange, int64_t most)
{
    int at = some_piece(arrange);
    int other = beside(arrange, at, arrange->piece_count);
    if (at != other)
        arrangement_swap(arrange->all, arrange->pieces[at].index, arrange->pieces[other].index, most);
}

static void move(Arrange *arrange, int64_t most)
{
    if (arrange->span_count == 0)
        return;
    int piece = arrange->pieces[some_piece(arrange)].index;
    arrangement_move(arrange->all, piece, arrange->spans[below(arrange, arrange->span_count)], most);
}

static void exchange_boards(Arrange *arrange, int64_t most)
{
    int count = arrange->all->pile->board_count;
    int at = below(arrange, count);
    int other = below(arrange, 2) == 0 ? below(arrange, count) : beside(arrange, at, count);
    if (at != other)
        arrangement_exchange(arrange->all, arrange->boards[at].index, arrange->boards[other].index, most);
}

static void try(Arrange *arrange, Change change, int64_t most)
{
    switch (change) {
    case CHANGE_TURN: joints_turn(arrange->all, &arrange->random, some_run(arrange), most); break;
    case CHANGE_SHIFT: joints_shift(arrange->all, &arrange->random, some_run(arrange), most); break;
    case CHANGE_RUNS: exchange_runs(arrange, most); break;
    case CHANGE_PASS: pass(arrange, most); break;
    case CHANGE_SWAP: swap(arrange, most); break;
    case CHANGE_MOVE: move(arrange, most); break;
    case CHANGE_BOARDS: exchange_boards(arrange, most); break;
    case CHANGES: break;
    }
}

/* How much worse the next change may look. */
static int64_t worse(Arrange *arrange)
{
    int64_t left = (arrange->budget - arrange->all->work) * 1000 / (arrange->budget + 1) - 200;
    if (left <= 0)
        return 0;
    int64_t heat = arrange->heat * left / 1000 * left / 1000;
    int64_t most = 0;
    while (most < WORSE_MOST && below(arrange, 1000) < heat)
        most++;
    return most;
}

bool arrange_once(Arrange *arrange, int64_t *work)
{
    Arrangement *all = arrange->all;
    int64_t before = all->work;
    bool joints = arrange->run_count > 0, tones = arrange->tones && arrange->piece_count > 0;
    if (all->weight == 0 || all->work >= arrange->budget || (!joints && !tones))
        return true;
    if (arrange->tries_to_sort-- == 0)
        sort_pieces(arrange);
    int first = joints ? CHANGE_TURN : CHANGE_SWAP;
    int last = tones ? CHANGE_BOARDS : CHANGE_PASS;
    int64_t most = worse(arrange);
    Change change = (Change)(first + below(arrange, last - first + 1));
    try(arrange, change, most);
    all->work += WORK_PER_TRY;
    *work += 1 + (all->work - before) / WORK_PER_UNIT;
    return false;
}

const Cover *arrange_covers(Arena *arena, const Arrange *arrange)
{
    const Arrangement *all = arrange->all;
    Looks looks = looks_measure(all->rows, all->short_below);
    /* A weight that was kept wrong says nothing of what it led to: then the plan stays as it was before. */
    bool better = looks_weight(&looks) == all->weight && all->weight < arrange->start_weight;
    return better ? arrangement_covers(arena, all) : arrange->start;
}
