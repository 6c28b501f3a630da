/*
 * Sizes stand in falling order; `next[i]` leads from size i to the first at or after it that is still demanded, found
 * by path halving, so that a hundred thousand pieces of as many sizes are cut in about the time of sorting them. Kinds
 * of stock are found in the same way, from either end.
 *
 *     board  |-- largest --|---- ... ----|--- slack ---|
 *             fixed         searched: each next size is no larger than the one before
 */
#include "pack/greedy.h"

#include "base/panic.h"
#include "base/wide.h"

#include <string.h>

enum { KINDS_TRIED = 12, PARTS_MOST = 512, STACK_MOST = 256 };

typedef struct Greedy {
    PackWork *work;
    PackRest *rest;
    int *next;
    int *next_kind; /* of smaller capacity */
    int *last_kind; /* of larger capacity, one above the index */
    int64_t least;  /* smallest size still demanded */
    /* the search for least slack on one board */
    PackPart parts[PARTS_MOST];
    int part_count;
    PackPart best[PARTS_MOST];
    int best_count;
    int64_t best_slack;
    int best_pieces;
    int64_t effort;
} Greedy;

static int follow(int *next, int i)
{
    while (next[i] != i) {
        next[i] = next[next[i]];
        i = next[i];
    }
    return i;
}

/* First size at or after `i` that is still demanded; size_count where there is none. */
static int next_demanded(Greedy *greedy, int i)
{
    return i >= greedy->work->size_count ? greedy->work->size_count : follow(greedy->next, i);
}

/* First size at or after `from`, still demanded, that is at most `room`; size_count where there is none. */
static int first_fitting(Greedy *greedy, int from, int64_t room)
{
    const PackWork *work = greedy->work;
    int low = from, high = work->size_count;
    if (low < high && work->size[low] <= room)
        return next_demanded(greedy, low);
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (work->size[middle] > room)
            low = middle + 1;
        else
            high = middle;
    }
    return next_demanded(greedy, low);
}

static int64_t fill_first_fit(Greedy *greedy, int64_t room)
{
    const PackWork *work = greedy->work;
    greedy->best_count = 0;
    int i = first_fitting(greedy, 0, room);
    while (i < work->size_count && greedy->best_count < PARTS_MOST) {
        int64_t fits = room / work->size[i];
        int count = fits < greedy->rest->demand[i] ? (int)fits : greedy->rest->demand[i];
        greedy->best[greedy->best_count++] = (PackPart){i, count};
        room -= count * work->size[i];
        i = first_fitting(greedy, i + 1, room);
    }
    return room;
}

/* Tries sizes from `from` on in `room`, many of one size first; keeps the fill of least slack. True when it can be no
 * better. */
static bool search_slack(Greedy *greedy, int from, int64_t room, int pieces, bool few)
{
    const PackWork *work = greedy->work;
    if (room < greedy->best_slack || (few && room == greedy->best_slack && pieces < greedy->best_pieces)) {
        greedy->best_slack = room;
        greedy->best_pieces = pieces;
        greedy->best_count = greedy->part_count;
        memcpy(greedy->best, greedy->parts, (size_t)greedy->part_count * sizeof *greedy->best);
        if (room == 0)
            return true;
    }
    if (room < greedy->least || greedy->part_count == STACK_MOST)
        return false;
    for (int i = first_fitting(greedy, from, room); i < work->size_count; i = next_demanded(greedy, i + 1)) {
        int64_t fits = room / work->size[i];
        int most = fits < greedy->rest->demand[i] ? (int)fits : greedy->rest->demand[i];
        for (int count = most; count > 0; count--) {
            if (greedy->effort-- <= 0)
                return true;
            greedy->parts[greedy->part_count++] = (PackPart){i, count};
            bool done = search_slack(greedy, i + 1, room - count * work->size[i], pieces + count, few);
            greedy->part_count--;
            if (done)
                return true;
        }
    }
    return false;
}

static int64_t fill_least_slack(Greedy *greedy, int64_t room, int64_t effort, bool few)
{
    const PackWork *work = greedy->work;
    int largest = first_fitting(greedy, 0, room);
    greedy->best_count = 0;
    greedy->part_count = 0;
    if (largest == work->size_count)
        return room;
    greedy->effort = effort;
    greedy->best_slack = room;
    greedy->best_pieces = 0;
    int64_t fits = room / work->size[largest];
    int most = fits < greedy->rest->demand[largest] ? (int)fits : greedy->rest->demand[largest];
    for (int count = most; count > 0; count--) {
        greedy->parts[0] = (PackPart){largest, count};
        greedy->part_count = 1;
        if (search_slack(greedy, largest + 1, room - count * work->size[largest], count, few))
            break;
    }
    pack_spend(greedy->work, 8 * (effort - greedy->effort));
    return greedy->best_slack;
}

/* Takes what is best for one board from the rest, as often as it can be repeated. */
static void cut_board(Greedy *greedy, int kind, const PackPart *parts, int part_count, Arena *arena, PackCuts *cuts)
{
    PackRest *rest = greedy->rest;
    int times = rest->available[kind];
    for (int i = 0; i < part_count; i++)
        if (rest->demand[parts[i].size] / parts[i].count < times)
            times = rest->demand[parts[i].size] / parts[i].count;
    BUG_UNLESS(times > 0);
    rest->available[kind] -= times;
    if (rest->available[kind] == 0) {
        greedy->next_kind[kind] = kind + 1;
        greedy->last_kind[kind + 1] = kind;
    }
    for (int i = 0; i < part_count; i++) {
        int size = parts[i].size;
        rest->demand[size] -= times * parts[i].count;
        if (rest->demand[size] == 0)
            greedy->next[size] = size + 1;
    }
    PackCut *cut = arena_push(arena, cuts);
    *cut = (PackCut){.kind = kind, .times = times, .part_count = part_count};
    cut->parts = arena_array(arena, PackPart, part_count);
    memcpy(cut->parts, parts, (size_t)part_count * sizeof *parts);
}

/* How many kinds, left or not, have at least this capacity. */
static int kinds_holding(const PackWork *work, int64_t length)
{
    int low = 0, high = work->kind_count;
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (work->capacity[middle] >= length)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

/* Of the kinds left, those to try for the next board: all where they are few, else some spread over all capacities. */
static int choose_kinds(Greedy *greedy, int64_t largest, int kinds[KINDS_TRIED])
{
    int holding = kinds_holding(greedy->work, largest), count = 0;
    for (int i = 0, at = 0; i < KINDS_TRIED && at < holding; i++) {
        int spread = (int)((int64_t)i * holding / KINDS_TRIED);
        at = follow(greedy->next_kind, at > spread ? at : spread);
        if (at < holding)
            kinds[count++] = at++;
    }
    return count;
}

/* The board of least capacity that still holds `cut`, where that is cheaper than one of `kind`. */
static int shorten(Greedy *greedy, int kind, int64_t cut)
{
    int other = follow(greedy->last_kind, kinds_holding(greedy->work, cut)) - 1;
    return other >= 0 && greedy->work->value[other] < greedy->work->value[kind] ? other : kind;
}

/* Of boards of two kinds: is the first the cheaper for what is cut from it? One that takes all that is left is weighed
 * by its value alone. */
static bool is_cheaper(const PackWork *work, int64_t left, int kind, int64_t cut, int other, int64_t other_cut)
{
    bool whole = cut >= left, other_whole = other_cut >= left;
    if (whole && other_whole)
        return work->value[kind] < work->value[other];
    Wide mine = (Wide)work->value[kind] * other_cut, its = (Wide)work->value[other] * cut;
    return mine != its ? mine < its : cut > other_cut;
}

static Greedy *greedy_new(Arena *arena, PackWork *work, PackRest *rest)
{
    Greedy *greedy = arena_one(arena, Greedy);
    greedy->work = work;
    greedy->rest = rest;
    greedy->next = arena_array(arena, int, work->size_count + 1);
    for (int i = 0; i <= work->size_count; i++)
        greedy->next[i] = i < work->size_count && rest->demand[i] == 0 ? i + 1 : i;
    greedy->next_kind = arena_array(arena, int, work->kind_count + 1);
    greedy->last_kind = arena_array(arena, int, work->kind_count + 1);
    for (int k = 0; k < work->kind_count; k++) {
        greedy->next_kind[k] = rest->available[k] == 0 ? k + 1 : k;
        greedy->last_kind[k + 1] = rest->available[k] == 0 ? k : k + 1;
    }
    greedy->next_kind[work->kind_count] = work->kind_count;
    return greedy;
}

/* How boards are filled, and how much of all sizes is still demanded. */
typedef struct GreedyWay {
    PackGreed greed;
    int64_t effort;
    int64_t left;
} GreedyWay;

/* A board to be cut. */
typedef struct GreedyBoard {
    int kind; /* -1: none yet */
    int64_t cut;
    PackPart *parts; /* room for PARTS_MOST */
    int part_count;
} GreedyBoard;

/* The cheapest of some kinds, as each would be filled. */
static void fill_cheapest(Greedy *greedy, const int *kinds, int kind_count, const GreedyWay *way, GreedyBoard *board)
{
    board->kind = -1;
    board->cut = 0;
    for (int i = 0; i < kind_count; i++) {
        const int64_t room = greedy->work->capacity[kinds[i]];
        const int64_t slack = way->greed == PACK_FIRST_FIT
                                  ? fill_first_fit(greedy, room)
                                  : fill_least_slack(greedy, room, way->effort, way->greed == PACK_LEAST_SLACK_LONG);
        pack_spend(greedy->work, 32);
        if (board->kind >= 0 && !is_cheaper(greedy->work, way->left, kinds[i], room - slack, board->kind, board->cut))
            continue;
        board->kind = kinds[i];
        board->cut = room - slack;
        board->part_count = greedy->best_count;
        memcpy(board->parts, greedy->best, (size_t)board->part_count * sizeof *board->parts);
    }
}

void pack_greedily(PackWork *work, PackRest *rest, PackGreed greed, int64_t effort, Arena *arena, PackCuts *cuts)
{
    Greedy *greedy = greedy_new(arena, work, rest);
    GreedyWay way = {greed, effort, 0};
    for (int i = 0; i < work->size_count; i++)
        way.left += rest->demand[i] * work->size[i];
    GreedyBoard board = {.parts = arena_array(arena, PackPart, PARTS_MOST)};
    int smallest = work->size_count - 1;
    /* A size that no kind left can hold stays in `rest`: it is missing. */
    for (int largest = next_demanded(greedy, 0); largest < work->size_count;) {
        int kinds[KINDS_TRIED];
        const int kind_count = choose_kinds(greedy, work->size[largest], kinds);
        if (kind_count == 0) {
            way.left -= rest->demand[largest] * work->size[largest];
            largest = next_demanded(greedy, largest + 1);
            continue;
        }
        while (rest->demand[smallest] == 0)
            smallest--;
        greedy->least = work->size[smallest];
        fill_cheapest(greedy, kinds, kind_count, &way, &board);
        const int kind = shorten(greedy, board.kind, board.cut);
        const int before = rest->available[kind];
        cut_board(greedy, kind, board.parts, board.part_count, arena, cuts);
        way.left -= (before - rest->available[kind]) * board.cut;
        largest = next_demanded(greedy, largest);
    }
}
