#include "pack/work.h"

#include <string.h>

enum { OPERATIONS = 1000, LISTING_MOST = 16000000 };

bool pack_spend(PackWork *work, int64_t operations)
{
    work->spent += operations;
    work->steps -= work->spent / OPERATIONS;
    work->spent %= OPERATIONS;
    return work->steps > 0;
}

bool pack_is_proved(const PackWork *work)
{
    return work->best_missing == 0 && work->bound >= work->best_value;
}

PackRest pack_rest_copy(Arena *arena, const PackWork *work, const PackRest *rest)
{
    PackRest copy = {arena_array(arena, int, work->size_count), arena_array(arena, int, work->kind_count)};
    if (work->size_count > 0)
        memcpy(copy.demand, rest->demand, (size_t)work->size_count * sizeof *copy.demand);
    if (work->kind_count > 0)
        memcpy(copy.available, rest->available, (size_t)work->kind_count * sizeof *copy.available);
    return copy;
}

/* How often a pattern can be cut whole from the rest. */
static int times_whole(const PackRest *rest, const PackCut *cut, int most)
{
    int times = most < rest->available[cut->kind] ? most : rest->available[cut->kind];
    for (int i = 0; i < cut->part_count; i++) {
        int fits = rest->demand[cut->parts[i].size] / cut->parts[i].count;
        times = fits < times ? fits : times;
    }
    return times;
}

bool pack_offer(PackWork *work, const PackCuts *cuts)
{
    Arena *arena = arena_new();
    PackRest whole = {work->demand, work->available}, rest = pack_rest_copy(arena, work, &whole);
    PackCuts kept = {0};
    int64_t missing = work->total, value = 0;
    for (int i = 0; i < cuts->count; i++) {
        const PackCut *cut = &cuts->at[i];
        for (int left = cut->times; left > 0 && rest.available[cut->kind] > 0;) {
            int times = times_whole(&rest, cut, left);
            PackCut take = {cut->kind, times > 0 ? times : 1, 0, arena_array(arena, PackPart, cut->part_count)};
            left -= take.times;
            for (int p = 0; p < cut->part_count; p++) {
                PackPart part = cut->parts[p];
                if (times == 0 && part.count > rest.demand[part.size])
                    part.count = rest.demand[part.size];
                if (part.count == 0)
                    continue;
                take.parts[take.part_count++] = part;
                rest.demand[part.size] -= take.times * part.count;
                missing -= (int64_t)take.times * part.count * work->size[part.size];
            }
            if (take.part_count == 0)
                break;
            rest.available[take.kind] -= take.times;
            value += take.times * work->value[take.kind];
            *arena_push(arena, &kept) = take;
        }
    }
    bool better = missing < work->best_missing || (missing == work->best_missing && value < work->best_value);
    if (better) {
        work->best_missing = missing;
        work->best_value = value;
        work->best.count = 0;
        for (int i = 0; i < kept.count; i++) {
            PackCut *cut = arena_push(work->arena, &work->best);
            *cut = kept.at[i];
            cut->parts = arena_array(work->arena, PackPart, cut->part_count);
            memcpy(cut->parts, kept.at[i].parts, (size_t)cut->part_count * sizeof *cut->parts);
        }
    }
    pack_spend(work, 500 + 4 * ((int64_t)work->size_count + work->kind_count) + 60 * (int64_t)kept.count);
    arena_free(arena);
    return better;
}

int64_t pack_round_up(const PackWork *work, int64_t value)
{
    if (work->many == 0 || value <= 0)
        return value;
    int64_t cost = value / work->many;
    if (value - cost * work->many > work->boards_most)
        cost++;
    if (cost < work->costs_known)
        cost = work->next_cost[cost];
    int64_t least = cost * work->many;
    if (cost < work->costs_known)
        least += work->fewest_boards[cost];
    return value > least ? value : least;
}

void pack_raise_bound(PackWork *work, int64_t value)
{
    value = pack_round_up(work, value);
    if (value > work->bound)
        work->bound = value;
}

/* Dynamic programming over the cost, counts split into 1, 2, 4, ...: fewest boards, and apart from them the most that
 * boards of exactly that cost hold. */
void pack_list_costs(PackWork *work)
{
    if (work->many == 0 || work->best_missing > 0)
        return;
    int64_t width = work->best_value / work->many + 1, operations = 0;
    for (int k = 0; k < work->kind_count; k++)
        for (int left = work->available[k]; left > 0; left /= 2)
            operations += width;
    if (width > LISTING_MOST || operations > LISTING_MOST)
        return;
    Arena *arena = arena_new();
    int64_t *holds = arena_array(arena, int64_t, width);
    int *fewest = arena_array(work->arena, int, width);
    for (int64_t c = 1; c < width; c++)
        fewest[c] = -1;
    for (int k = 0; k < work->kind_count; k++) {
        int64_t unit = work->value[k] / work->many;
        for (int left = work->available[k], boards = 1; left > 0; left -= boards, boards *= 2) {
            if (boards > left)
                boards = left;
            for (int64_t c = width - 1; c >= boards * unit; c--) {
                int64_t before = c - boards * unit;
                if (fewest[before] < 0)
                    continue;
                if (fewest[c] < 0 || fewest[before] + boards < fewest[c])
                    fewest[c] = fewest[before] + boards;
                if (holds[before] + boards * work->capacity[k] > holds[c])
                    holds[c] = holds[before] + boards * work->capacity[k];
            }
        }
    }
    int *next = arena_array(work->arena, int, width);
    for (int64_t c = width - 1; c >= 0; c--) {
        if (holds[c] < work->total)
            fewest[c] = -1;
        next[c] = (int)(fewest[c] >= 0 ? c : c + 1 < width ? next[c + 1] : width);
    }
    work->costs_known = width;
    work->fewest_boards = fewest;
    work->next_cost = next;
    pack_spend(work, operations);
    pack_raise_bound(work, work->bound);
    arena_free(arena);
}
