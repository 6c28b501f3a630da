/*
 * Invariant: what a row takes from a span is known from its nodes alone; the supply is untouched while they are
 * compared.
 */
#include "fill/search/candidates.h"

/* The last node of the row up to `node` that cuts from the span, or from what the node `id` opened; -1 where none
 * does. */
static int last_cut(const Nodes *nodes, int node, WoodSource source, int id)
{
    for (; node >= 0; node = nodes->at[node].parent) {
        const Node *cut = &nodes->at[node];
        if ((source == SOURCE_OPEN && cut->source == SOURCE_OPEN && cut->id == id) ||
            (source == SOURCE_OWN && ((cut->source == SOURCE_OWN && cut->id == id) || node == id)))
            return node;
    }
    return -1;
}

static void add_span(const Front *front, Candidates *out, int span)
{
    const Supply *supply = front->supply;
    if (out->count == CANDIDATES_MOST)
        return;
    int cut = last_cut(front->nodes, front->node, SOURCE_OPEN, span);
    Length left = cut >= 0 ? front->nodes->at[cut].left : supply->spans[span].left;
    if (left >= supply->smallest)
        out->at[out->count++] = (Candidate){SOURCE_OPEN, span, left, supply->widths[supply->spans[span].board],
                                            salvage_of(supply->salvage, left)};
}

static void add_slot(const Front *front, Candidates *out, int index)
{
    const Supply *supply = front->supply;
    const Slot *slot = &supply->slots[index];
    const Kind *kind = &supply->kinds[slot->kind];
    int taken = 0;
    for (int node = front->node; node >= 0; node = front->nodes->at[node].parent)
        if (front->nodes->at[node].source == SOURCE_NEW && supply->slots[front->nodes->at[node].id].kind == slot->kind)
            taken++;
    if (out->count < CANDIDATES_MOST && taken < kind->unopened)
        out->at[out->count++] = (Candidate){SOURCE_NEW, index, slot->left, kind->width, slot->price};
}

static void add_own(const Front *front, Candidates *out)
{
    const Supply *supply = front->supply;
    for (int opener = front->node; opener >= 0; opener = front->nodes->at[opener].parent) {
        if (front->nodes->at[opener].source != SOURCE_NEW || out->count == CANDIDATES_MOST)
            continue;
        int slot = front->nodes->at[opener].id;
        Length left = front->nodes->at[last_cut(front->nodes, front->node, SOURCE_OWN, opener)].left;
        if (left >= supply->smallest)
            out->at[out->count++] = (Candidate){SOURCE_OWN, opener, left, supply->kinds[supply->slots[slot].kind].width,
                                                salvage_of(supply->salvage, left)};
    }
}

typedef void Add(const Front *front, Candidates *out, int thing);

/* Up to `most` things of `length` or more, the shortest first. */
static void add_longer(const Front *front, Candidates *out, const Buckets *buckets, Length length, int most, Add *add)
{
    int before = out->count;
    int thing = buckets_from(buckets, length);
    for (int tried = 0; thing != BUCKETS_NONE && tried < 4 * most && out->count < before + most; tried++) {
        int count = out->count;
        add(front, out, thing);
        if (out->count > count && out->at[count].left < length)
            out->count = count;
        thing = buckets_up(buckets, thing);
    }
}

/* Up to `most` things no longer than `length`, the longest first, each of another length. */
static void add_shorter(const Front *front, Candidates *out, const Buckets *buckets, Length length, int most, Add *add)
{
    int before = out->count;
    int thing = buckets_to(buckets, length);
    for (int tried = 0; thing != BUCKETS_NONE && tried < 4 * most && out->count < before + most; tried++) {
        int count = out->count;
        add(front, out, thing);
        if (out->count > count &&
            (out->at[count].left > length || (count > before && out->at[count].left == out->at[count - 1].left)))
            out->count = count;
        thing = buckets_down(buckets, thing);
    }
}

void candidates_gather(const Front *front, Random *random, Candidates *out)
{
    const Supply *supply = front->supply;
    Length rest = front->rest;
    Length useful = rest + supply->kerf + front->least;
    out->count = 0;
    add_own(front, out);
    add_longer(front, out, &supply->open, rest, 3, add_span);
    add_longer(front, out, &supply->open, useful, 2, add_span);
    add_shorter(front, out, &supply->open, rest - 1, 4, add_span);
    add_longer(front, out, &supply->unopened, rest, 2, add_slot);
    add_longer(front, out, &supply->unopened, useful, 2, add_slot);
    add_shorter(front, out, &supply->unopened, rest - 1, 4, add_slot);
    if (random == NULL)
        return;
    Length most = rest < supply->longest ? rest : supply->longest;
    Length drawn = (Length)random_below(random, (uint64_t)most + 1);
    add_shorter(front, out, &supply->open, drawn, 3, add_span);
    add_shorter(front, out, &supply->unopened, (Length)random_below(random, (uint64_t)most + 1), 3, add_slot);
}
