/*
 * Candidates, the sizes that are demanded and have a price, stand in falling order of price for length. Depth-first, a
 * node has decided how many of each candidate before `i` are taken:
 *
 *     |-- decided, worth `price` --|-------- room --------|
 *                                   can hold at most room x rate(i)
 */
#include "pack/pattern.h"

#include "base/wide.h"

#include <stdlib.h>
#include <string.h>

enum { NODES_FEWEST = 400, NODES_MOST = 10000000, TABLE_MOST = 24000000 };

typedef struct PricedSize {
    int size; /* index */
    int demand;
    int64_t length;
    int64_t price;
    int64_t least; /* smallest length among this candidate and those after it */
} PricedSize;

/* Lengths in rising order, each with the best price of any candidate no longer. */
typedef struct Single {
    int64_t length;
    int64_t price;
} Single;

typedef struct Pricing {
    Arena *arena;
    const PackWork *work;
    PricedSize *candidates;
    int count;
    int *taken; /* of each candidate */
    Single *singles;
    int single_count;
    int64_t nodes;
    int64_t open; /* most that what was left unsearched could be worth */
    PackPatterns *patterns;
} Pricing;

static int by_rate(const void *a, const void *b)
{
    const PricedSize *x = a, *y = b;
    Wide left = (Wide)x->price * y->length, right = (Wide)y->price * x->length;
    if (left != right)
        return left > right ? -1 : 1;
    return x->size < y->size ? -1 : x->size > y->size;
}

static PackPattern *add_pattern(PackPatterns *patterns, Arena *arena, int64_t price, int part_count)
{
    if (patterns->count == PACK_PATTERNS_MOST)
        memmove(patterns->at, patterns->at + 1, (PACK_PATTERNS_MOST - 1) * sizeof *patterns->at);
    else
        patterns->count++;
    PackPattern *pattern = &patterns->at[patterns->count - 1];
    patterns->worth = price;
    *pattern = (PackPattern){price, part_count, arena_array(arena, PackPart, part_count)};
    return pattern;
}

static void note_pattern(Pricing *pricing, int64_t price)
{
    int part_count = 0;
    for (int i = 0; i < pricing->count; i++)
        part_count += pricing->taken[i] > 0;
    PackPattern *pattern = add_pattern(pricing->patterns, pricing->arena, price, part_count);
    part_count = 0;
    for (int i = 0; i < pricing->count; i++)
        if (pricing->taken[i] > 0)
            pattern->parts[part_count++] = (PackPart){pricing->candidates[i].size, pricing->taken[i]};
}

/* The most that one more piece in `room` is worth. */
static int64_t best_single(const Pricing *pricing, int64_t room)
{
    int low = 0, high = pricing->single_count;
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (pricing->singles[middle].length <= room)
            low = middle + 1;
        else
            high = middle;
    }
    return low == 0 ? 0 : pricing->singles[low - 1].price;
}

static void search(Pricing *pricing, int i, int64_t room, int64_t price)
{
    if (price > pricing->patterns->worth)
        note_pattern(pricing, price);
    if (room < 2 * pricing->singles[0].length && price + best_single(pricing, room) <= pricing->patterns->worth) {
        pricing->nodes--;
        return;
    }
    for (; i < pricing->count && room >= pricing->candidates[i].least; i++) {
        const PricedSize *candidate = &pricing->candidates[i];
        int64_t missing = pricing->patterns->worth - price + 1;
        if ((Wide)room * candidate->price < (Wide)missing * candidate->length)
            return;
        if (pricing->nodes <= 0) {
            int64_t reach = price + (int64_t)((Wide)room * candidate->price / candidate->length);
            pricing->open = reach > pricing->open ? reach : pricing->open;
            return;
        }
        pricing->nodes--;
        if (candidate->length > room)
            continue;
        int64_t fits = room / candidate->length;
        for (int count = fits < candidate->demand ? (int)fits : candidate->demand; count > 0; count--) {
            pricing->taken[i] = count;
            search(pricing, i + 1, room - count * candidate->length, price + count * candidate->price);
        }
        pricing->taken[i] = 0;
    }
}

/* Dynamic programming over the length: worth[c] of the best pattern of length at most c; bundles of 1, 2, 4, ... pieces
 * stand in for counts, and `chosen` remembers for each bundle at which lengths it was taken. */
static void tabulate(Pricing *pricing, int64_t capacity, int bundle_count)
{
    size_t width = (size_t)capacity + 1;
    int64_t *worth = arena_array(pricing->arena, int64_t, width);
    uint8_t *chosen = arena_array(pricing->arena, uint8_t, width * (size_t)bundle_count);
    PackPart *bundles = arena_array(pricing->arena, PackPart, bundle_count);
    int bundle = 0;
    for (int i = 0; i < pricing->count; i++) {
        const PricedSize *candidate = &pricing->candidates[i];
        int64_t fits = capacity / candidate->length;
        int left = fits < candidate->demand ? (int)fits : candidate->demand;
        for (int count = 1; left > 0; left -= count, count *= 2) {
            if (count > left)
                count = left;
            size_t length = (size_t)(count * candidate->length);
            int64_t price = count * candidate->price;
            uint8_t *row = chosen + width * (size_t)bundle;
            for (size_t c = width - 1; c >= length; c--) {
                int64_t with = worth[c - length] + price;
                row[c] = with > worth[c];
                worth[c] = with > worth[c] ? with : worth[c];
            }
            bundles[bundle++] = (PackPart){i, count};
        }
    }
    if (worth[capacity] <= pricing->patterns->worth)
        return;
    memset(pricing->taken, 0, (size_t)pricing->count * sizeof *pricing->taken);
    size_t at = width - 1;
    while (bundle-- > 0) {
        if (!chosen[width * (size_t)bundle + at])
            continue;
        const PackPart *part = &bundles[bundle];
        pricing->taken[part->size] += part->count;
        at -= (size_t)(part->count * pricing->candidates[part->size].length);
    }
    note_pattern(pricing, worth[capacity]);
}

static int bundles_of(int64_t count)
{
    int bundles = 0;
    for (; count > 0; count /= 2)
        bundles++;
    return bundles;
}

PackPatterns pack_best_pattern(PackWork *work, Arena *arena, const int64_t *price, const int *demand, int64_t capacity,
                               int64_t floor)
{
    PackPatterns patterns = {.worth = floor};
    Pricing pricing = {.arena = arena, .work = work, .patterns = &patterns};
    pricing.candidates = arena_array(arena, PricedSize, work->size_count);
    int bundle_count = 0;
    for (int i = 0; i < work->size_count; i++) {
        if (demand[i] == 0 || price[i] <= 0 || work->size[i] > capacity)
            continue;
        pricing.candidates[pricing.count++] = (PricedSize){i, demand[i], work->size[i], price[i], 0};
        int64_t fits = capacity / work->size[i];
        bundle_count += bundles_of(fits < demand[i] ? fits : demand[i]);
    }
    qsort(pricing.candidates, (size_t)pricing.count, sizeof *pricing.candidates, by_rate);
    int64_t least = capacity + 1;
    for (int i = pricing.count - 1; i >= 0; i--) {
        least = pricing.candidates[i].length < least ? pricing.candidates[i].length : least;
        pricing.candidates[i].least = least;
    }
    pricing.taken = arena_array(arena, int, pricing.count);
    if (pricing.count == 0)
        return patterns;
    pricing.singles = arena_array(arena, Single, pricing.count);
    for (int i = work->size_count - 1; i >= 0; i--) {
        if (demand[i] == 0 || price[i] <= 0 || work->size[i] > capacity)
            continue;
        int64_t best = pricing.single_count > 0 ? pricing.singles[pricing.single_count - 1].price : 0;
        pricing.singles[pricing.single_count++] = (Single){work->size[i], price[i] > best ? price[i] : best};
    }

    bool can_tabulate = capacity < TABLE_MOST / (bundle_count + 1);
    int64_t table = can_tabulate ? (capacity + 1) * bundle_count : 0;
    int64_t nodes = can_tabulate ? table / 8 + NODES_FEWEST : NODES_MOST;
    pricing.nodes = nodes;
    search(&pricing, 0, capacity, 0);
    pack_spend(work, 4 * (nodes - pricing.nodes) + 30 * pricing.count + 300);
    if (pricing.open > patterns.worth && patterns.count == 0 && can_tabulate) {
        tabulate(&pricing, capacity, bundle_count);
        pack_spend(work, table);
    } else if (pricing.open > patterns.worth) {
        patterns.worth = pricing.open; /* not searched to the end: what is certain all the same */
    }
    return patterns;
}
