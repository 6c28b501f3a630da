/*
 *     turn     |=a=|==b==|===c===|    ->   |===c===|==b==|=a=|      a part of a run, or two pieces change places
 *     shift    |===a===|=b=|          ->   |==a==|==b==|            where the span of b has wood left
 *     runs     two runs of about one length change what lies on them
 *     swap     two pieces of about one length change boards
 *     move     a piece is cut from what is left of another board
 *     boards   two boards change what is cut from them
 *
 * Invariant: what is tried depends on the plan and the number of tries alone.
 */
#include "fill/arrange.h"

#include "base/panic.h"
#include "base/random.h"
#include "fill/arrangement.h"

#include <stdlib.h>

/* Work is counted in planks looked at. */
enum {
    WORK_PER_PIECE = 6000,
    WORK_MOST = 8000000,
    WORK_PER_TRY = 8,
    HEAT_MOST = 300, /* of 1000 tries may look worse by one at first, of those as many by two, and so on */
    WORSE_MOST = 4,
    BESIDE = 8 /* of things sorted by length, how far apart two may stand */
};

#define RUNS_ALIKE (LENGTH_INCH) /* lengths of runs that change what lies on them differ by no more */

typedef struct Sorted {
    Length length;
    int index;
} Sorted;

typedef enum Change { CHANGE_TURN, CHANGE_SHIFT, CHANGE_RUNS, CHANGE_SWAP, CHANGE_MOVE, CHANGE_BOARDS, CHANGES } Change;

struct Arrange {
    Arrangement *all;
    const Cover *start;
    int64_t start_weight;
    Random random;
    int64_t budget;
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
        arrange->boards[i] = (Sorted){wall_board(demand->wall, i + 1)->length, i};
    sort(arrange->boards, pile->board_count);
    arrange->pieces = arena_array(arena, Sorted, all->piece_count);
    arrange->spans = arena_array(arena, int, pile->span_count);
    sort_pieces(arrange);
    int64_t budget = (int64_t)arrange->piece_count * WORK_PER_PIECE;
    arrange->budget = budget < WORK_MOST ? budget : WORK_MOST;
    return arrange;
}

/* ---- what is tried ---- */

typedef struct Draft {
    Laying laying;
    int pieces[LAY_MOST];
    Length ends[LAY_MOST];
} Draft;

static Laying *begin(Draft *draft)
{
    draft->laying = (Laying){.pieces = draft->pieces, .ends = draft->ends};
    return &draft->laying;
}

/* The nearest place at or before x where a joint may stand. */
static Length place_joint(const Arrange *arrange, const Run *run, Length x)
{
    const Demand *demand = arrange->all->demand;
    if (!demand->on_studs)
        return demand_mark_down(demand, run, x);
    const LengthList *studs = demand_studs(demand, run);
    Length best = x, least = LENGTH_MOST;
    for (int i = run->stud_first; i < run->stud_first + run->stud_count; i++) {
        Length off = studs->at[i] > x ? studs->at[i] - x : x - studs->at[i];
        if (off < least) {
            least = off;
            best = studs->at[i];
        }
    }
    return best;
}

static void flip(Laying *laying, Length left, int from, int to)
{
    Length lengths[LAY_MOST];
    for (int i = 0; i < laying->count; i++)
        lengths[i] = laying->ends[i] - (i > 0 ? laying->ends[i - 1] : left);
    for (; from < to; from++, to--) {
        int piece = laying->pieces[from];
        laying->pieces[from] = laying->pieces[to];
        laying->pieces[to] = piece;
        Length length = lengths[from];
        lengths[from] = lengths[to];
        lengths[to] = length;
    }
    for (int i = 0; i < laying->count; i++)
        laying->ends[i] = left += lengths[i];
}

static void place_joints(const Arrange *arrange, Laying *laying)
{
    const Run *run = &arrange->all->demand->runs[laying->run];
    for (int i = 0; i + 1 < laying->count; i++)
        laying->ends[i] = place_joint(arrange, run, laying->ends[i]);
    laying->ends[laying->count - 1] = run->right;
}

static int some_run(Arrange *arrange)
{
    return arrange->runs[below(arrange, arrange->run_count)].index;
}

static void turn(Arrange *arrange, int64_t most)
{
    Draft draft;
    Laying *laying = begin(&draft);
    int run = some_run(arrange);
    arrangement_read(arrange->all, run, laying);
    if (laying->count < 2)
        return;
    int from = below(arrange, laying->count - 1);
    int to = from + 1 + below(arrange, laying->count - 1 - from);
    Length left = arrange->all->demand->runs[run].left;
    flip(laying, left, from, to);
    if (to - from > 2 && below(arrange, 2) == 0) /* those between as they were */
        flip(laying, left, from + 1, to - 1);
    place_joints(arrange, laying);
    arrangement_lay(arrange->all, laying, NULL, most);
}

static void shift(Arrange *arrange, int64_t most)
{
    Draft draft;
    Laying *laying = begin(&draft);
    Arrangement *all = arrange->all;
    int index = some_run(arrange);
    arrangement_read(all, index, laying);
    if (laying->count < 2)
        return;
    const Run *run = &all->demand->runs[index];
    int joint = below(arrange, laying->count - 1);
    bool right = below(arrange, 2) == 0;
    int grows = laying->pieces[right ? joint : joint + 1];
    Length most_by = all->left[all->span_of[grows]] + all->pile->kerf;
    Length x = laying->ends[joint];
    if (most_by <= 0)
        return;
    if (all->demand->on_studs) {
        Length by = most_by < 2 * LOOKS_STEP ? most_by : 2 * LOOKS_STEP;
        x = place_joint(arrange, run, right ? x + by / (1 + below(arrange, 2)) : x - by / (1 + below(arrange, 2)));
    } else {
        Length marks = most_by / all->demand->round;
        Length farthest = 2 * LOOKS_STEP / all->demand->round;
        marks = marks < farthest ? marks : farthest;
        if (marks == 0)
            return;
        Length by = (Length)random_between(&arrange->random, 1, marks) * all->demand->round;
        x = demand_mark_down(all->demand, run, right ? x + by : x - by);
    }
    laying->ends[joint] = x;
    arrangement_lay(all, laying, NULL, most);
}

/* What lies on `from` as it would lie on `run`, with `mirrored` the other way round. */
static void carry(const Arrange *arrange, const Laying *from, int run, bool mirrored, Laying *out)
{
    const Demand *demand = arrange->all->demand;
    Length by = demand->runs[run].left - demand->runs[from->run].left;
    out->run = run;
    out->count = from->count;
    for (int i = 0; i < from->count; i++) {
        out->pieces[i] = from->pieces[i];
        out->ends[i] = from->ends[i] + by;
    }
    if (mirrored)
        flip(out, demand->runs[run].left, 0, out->count - 1);
    place_joints(arrange, out);
}

static void exchange_runs(Arrange *arrange, int64_t most)
{
    int at = below(arrange, arrange->run_count);
    int other = below(arrange, 2) == 0 ? below(arrange, arrange->run_count) : beside(arrange, at, arrange->run_count);
    const Sorted *one = &arrange->runs[at], *two = &arrange->runs[other];
    if (at == other || one->length - two->length > RUNS_ALIKE || two->length - one->length > RUNS_ALIKE)
        return;
    Draft drafts[4];
    Laying *from = begin(&drafts[0]), *to = begin(&drafts[1]);
    arrangement_read(arrange->all, one->index, from);
    arrangement_read(arrange->all, two->index, to);
    Laying *new_one = begin(&drafts[2]), *new_two = begin(&drafts[3]);
    carry(arrange, to, one->index, below(arrange, 2) == 0, new_one);
    carry(arrange, from, two->index, below(arrange, 2) == 0, new_two);
    arrangement_lay(arrange->all, new_one, new_two, most);
}

static void swap(Arrange *arrange, int64_t most)
{
    int at = below(arrange, arrange->piece_count);
    int other = beside(arrange, at, arrange->piece_count);
    if (at != other)
        arrangement_swap(arrange->all, arrange->pieces[at].index, arrange->pieces[other].index, most);
}

static void move(Arrange *arrange, int64_t most)
{
    if (arrange->span_count == 0)
        return;
    int piece = arrange->pieces[below(arrange, arrange->piece_count)].index;
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
    case CHANGE_TURN: turn(arrange, most); break;
    case CHANGE_SHIFT: shift(arrange, most); break;
    case CHANGE_RUNS: exchange_runs(arrange, most); break;
    case CHANGE_SWAP: swap(arrange, most); break;
    case CHANGE_MOVE: move(arrange, most); break;
    case CHANGE_BOARDS: exchange_boards(arrange, most); break;
    case CHANGES: break;
    }
}

/* How much worse the next change may look. */
static int64_t worse(Arrange *arrange)
{
    int64_t left = (arrange->budget - arrange->all->work) * 1000 / arrange->budget - 200;
    if (left <= 0)
        return 0;
    int64_t heat = HEAT_MOST * left / 1000 * left / 1000;
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
    int last = tones ? CHANGE_BOARDS : CHANGE_RUNS;
    try(arrange, (Change)(first + below(arrange, last - first + 1)), worse(arrange));
    all->work += WORK_PER_TRY;
    *work += all->work - before;
    return false;
}

const Cover *arrange_covers(Arena *arena, const Arrange *arrange)
{
    const Arrangement *all = arrange->all;
    Looks looks = looks_measure(all->rows, all->short_below);
    BUG_UNLESS(looks_weight(&looks) == all->weight);
    return all->weight < arrange->start_weight ? arrangement_covers(arena, all) : arrange->start;
}
