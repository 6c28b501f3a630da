#include "store/align.h"

#include <stdlib.h>

/*
 * In passes, from the surest mark to the weakest. Each pass goes through the items now that have no partner yet, and
 * looks between the partners of their neighbours for the first as it was that has no partner and the same mark.
 */

typedef struct Marked {
    uint64_t mark;
    int index;
} Marked;

static int compare(const void *a, const void *b)
{
    const Marked *p = a;
    const Marked *q = b;
    if (p->mark != q->mark)
        return p->mark < q->mark ? -1 : 1;
    return p->index < q->index ? -1 : p->index > q->index;
}

/* The first entry not below (mark, index). */
static int lower_bound(const Marked *sorted, int count, uint64_t mark, int index)
{
    int low = 0;
    int high = count;
    const Marked wanted = {mark, index};
    while (low < high) {
        const int middle = low + (high - low) / 2;
        if (compare(&sorted[middle], &wanted) < 0)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

typedef uint64_t MarkOf(const AlignItem *item);

static uint64_t text_and_id(const AlignItem *item)
{
    return (item->text ^ (item->id * UINT64_C(0x9e3779b97f4a7c15))) | 1;
}

static uint64_t text_of(const AlignItem *item)
{
    return item->text | 1;
}

static uint64_t id_of(const AlignItem *item)
{
    return item->id;
}

static uint64_t name_of(const AlignItem *item)
{
    return item->name;
}

static uint64_t core_of(const AlignItem *item)
{
    return item->core;
}

static uint64_t first_of(const AlignItem *item)
{
    return item->first;
}

/* limit[i]: the partner of the next item behind i that has one, or `end`. */
static void find_limits(const int *partner, int count, int end, int *limit)
{
    for (int i = count - 1, next = end; i >= 0; i--) {
        limit[i] = next;
        if (partner[i] >= 0)
            next = partner[i];
    }
}

static void pass(const AlignItem *was, int was_count, const AlignItem *now, int now_count, int *partner, int *limit,
                 Marked *sorted, MarkOf *mark_of)
{
    int marked = 0;
    for (int i = 0; i < was_count; i++)
        if (mark_of(&was[i]) != 0)
            sorted[marked++] = (Marked){mark_of(&was[i]), i};
    if (marked == 0)
        return;
    qsort(sorted, (size_t)marked, sizeof *sorted, compare);
    find_limits(partner, now_count, was_count, limit);
    for (int i = 0, last = -1; i < now_count; i++) {
        const uint64_t mark = mark_of(&now[i]);
        if (partner[i] < 0 && mark != 0) {
            /* between two partners nothing as it was is taken, so the first found is free */
            const int at = lower_bound(sorted, marked, mark, last + 1);
            if (at < marked && sorted[at].mark == mark && sorted[at].index < limit[i])
                partner[i] = sorted[at].index;
        }
        if (partner[i] >= 0)
            last = partner[i];
    }
}

static void pair_the_rest(const AlignItem *was, int was_count, const AlignItem *now, int now_count, int *partner,
                          int *limit)
{
    find_limits(partner, now_count, was_count, limit);
    for (int i = 0, last = -1; i < now_count; i++) {
        if (partner[i] < 0 && now[i].id == 0 && now[i].name == 0 && last + 1 < limit[i] && was[last + 1].id == 0 &&
            was[last + 1].name == 0)
            partner[i] = last + 1;
        if (partner[i] >= 0)
            last = partner[i];
    }
}

void align_lists(Arena *arena, const AlignItem *was, int was_count, const AlignItem *now, int now_count, int *partner)
{
    static MarkOf *const marks[] = {text_and_id, text_of, id_of, name_of, core_of, first_of};
    Marked *sorted = arena_array(arena, Marked, was_count);
    int *limit = arena_array(arena, int, now_count);
    for (int i = 0; i < now_count; i++)
        partner[i] = -1;
    for (size_t i = 0; i < sizeof marks / sizeof *marks; i++)
        pass(was, was_count, now, now_count, partner, limit, sorted, marks[i]);
    pair_the_rest(was, was_count, now, now_count, partner, limit);
}
