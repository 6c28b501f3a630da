/*
 * A set of pieces for one board is dominated where a piece left out still fits, or fits in place of a smaller one:
 * swapping the two, wherever the larger is, never costs more and never leaves more uncut. Boards are filled in order of
 * their largest piece, so that each way of cutting is met once.
 *
 *     board |-- largest left --|-- a set of smaller ones --|-- slack --|
 */
#include "pack/complete.h"

#include "base/wide.h"

#include <stdlib.h>

typedef struct Complete {
    PackWork *work;
    PackRest rest;
    int *by_rate; /* kinds, the cheapest for its capacity first */
    PackCut cuts[PACK_COMPLETE_MOST];
    PackPart parts[PACK_COMPLETE_MOST][PACK_COMPLETE_MOST]; /* of each cut */
    int count;
    int64_t left;    /* length still to be cut */
    int64_t missing; /* length given up */
    int64_t value;
    bool is_cut_short;
} Complete;

/* Least value of boards left that hold `length` in all, as if boards could be had in part; -1 where they do not. */
static int64_t least_value(const Complete *complete, int64_t length)
{
    const PackWork *work = complete->work;
    Wide value = 0;
    for (int i = 0; i < work->kind_count && length > 0; i++) {
        int k = complete->by_rate[i];
        Wide room = (Wide)work->capacity[k] * complete->rest.available[k];
        if (room < length) {
            value += (Wide)work->value[k] * complete->rest.available[k];
            length -= (int64_t)room;
        } else {
            value += wide_ceiling((Wide)length * work->value[k], work->capacity[k]);
            length = 0;
        }
    }
    return length > 0 ? -1 : wide_narrow(value);
}

/* Whether nothing better than the best known lies below. */
static bool is_hopeless(const Complete *complete)
{
    const PackWork *work = complete->work;
    if (complete->missing > work->best_missing)
        return true;
    int64_t value = least_value(complete, complete->left);
    int64_t short_by = 0;
    if (value < 0) {
        int64_t room = 0;
        for (int k = 0; k < work->kind_count; k++)
            room += work->capacity[k] * complete->rest.available[k];
        short_by = complete->left - room;
        value = least_value(complete, room);
    }
    if (complete->missing + short_by != work->best_missing)
        return complete->missing + short_by > work->best_missing;
    return pack_round_up(work, complete->value + value) >= work->best_value;
}

static bool is_dominated(const Complete *complete, const PackCut *cut, int64_t slack)
{
    const PackWork *work = complete->work;
    for (int i = work->size_count - 1; i >= 0 && work->size[i] <= slack; i--)
        if (complete->rest.demand[i] > 0)
            return true;
    for (int p = 0; p < cut->part_count; p++) {
        int64_t most = work->size[cut->parts[p].size] + slack;
        for (int i = cut->parts[p].size - 1; i >= 0 && work->size[i] <= most; i--)
            if (complete->rest.demand[i] > 0)
                return true;
    }
    return false;
}

static void next_board(Complete *complete);

/* Adds pieces of size `from` and smaller to the board begun, every number of each. */
static void fill(Complete *complete, PackCut *cut, int from, int64_t room)
{
    PackWork *work = complete->work;
    if (!pack_spend(work, 30)) {
        complete->is_cut_short = true;
        return;
    }
    while (from < work->size_count && (complete->rest.demand[from] == 0 || work->size[from] > room))
        from++;
    if (from == work->size_count) {
        pack_spend(work, 2 * (int64_t)cut->part_count * work->size_count);
        if (!is_dominated(complete, cut, room))
            next_board(complete);
        return;
    }
    int64_t fits = room / work->size[from];
    int most = fits < complete->rest.demand[from] ? (int)fits : complete->rest.demand[from];
    for (int count = most; count >= 0 && !complete->is_cut_short && !pack_is_proved(work); count--) {
        int64_t length = count * work->size[from];
        complete->rest.demand[from] -= count;
        complete->left -= length;
        cut->part_count += count > 0;
        if (count > 0)
            cut->parts[cut->part_count - 1] = (PackPart){from, count};
        fill(complete, cut, from + 1, room - length);
        cut->part_count -= count > 0;
        complete->left += length;
        complete->rest.demand[from] += count;
    }
}

static void next_board(Complete *complete)
{
    PackWork *work = complete->work;
    int largest = 0;
    while (largest < work->size_count && complete->rest.demand[largest] == 0)
        largest++;
    if (largest == work->size_count) {
        PackCuts cuts = {complete->cuts, complete->count, complete->count};
        pack_offer(work, &cuts);
        return;
    }
    if (is_hopeless(complete))
        return;
    int64_t size = work->size[largest];
    PackCut *cut = &complete->cuts[complete->count];
    for (int i = 0; i < work->kind_count; i++) {
        int k = complete->by_rate[i];
        if (complete->rest.available[k] == 0 || work->capacity[k] < size)
            continue;
        *cut = (PackCut){k, 1, 0, complete->parts[complete->count]};
        complete->count++;
        complete->rest.available[k]--;
        complete->value += work->value[k];
        int64_t fits = work->capacity[k] / size;
        int most = fits < complete->rest.demand[largest] ? (int)fits : complete->rest.demand[largest];
        for (int count = most; count > 0 && !complete->is_cut_short && !pack_is_proved(work); count--) {
            cut->part_count = 1;
            cut->parts[0] = (PackPart){largest, count};
            complete->rest.demand[largest] -= count;
            complete->left -= count * size;
            fill(complete, cut, largest + 1, work->capacity[k] - count * size);
            complete->left += count * size;
            complete->rest.demand[largest] += count;
        }
        complete->value -= work->value[k];
        complete->rest.available[k]++;
        complete->count--;
    }
    /* Or none of this size is cut any more. */
    int uncut = complete->rest.demand[largest];
    if (complete->missing + uncut * size > work->best_missing || complete->is_cut_short)
        return;
    complete->rest.demand[largest] = 0;
    complete->left -= uncut * size;
    complete->missing += uncut * size;
    next_board(complete);
    complete->missing -= uncut * size;
    complete->left += uncut * size;
    complete->rest.demand[largest] = uncut;
}

void pack_complete(PackWork *work)
{
    if (work->pieces > PACK_COMPLETE_MOST)
        return;
    Arena *arena = arena_new();
    PackRest whole = {work->demand, work->available};
    Complete *complete = arena_one(arena, Complete);
    complete->work = work;
    complete->rest = pack_rest_copy(arena, work, &whole);
    complete->left = work->total;
    complete->by_rate = arena_array(arena, int, work->kind_count);
    for (int k = 0; k < work->kind_count; k++) {
        int at = k;
        for (; at > 0; at--) {
            int other = complete->by_rate[at - 1];
            if ((Wide)work->value[other] * work->capacity[k] <= (Wide)work->value[k] * work->capacity[other])
                break;
            complete->by_rate[at] = other;
        }
        complete->by_rate[at] = k;
    }
    next_board(complete);
    work->is_exhausted = !complete->is_cut_short;
    arena_free(arena);
}
