/*
 * Invariant: what a row takes from a span is known from its labels alone; the pile is untouched while they are weighed.
 */
#include "fill/search/wood.h"

/* The last label of the row up to `label` that cuts from the span, or from what the label `id` opened; -1 where none
 * does. */
static int last_cut(const Labels *labels, int label, Source source, int id)
{
    for (; label >= 0; label = labels->at[label].parent) {
        const Label *cut = &labels->at[label];
        if ((source == SOURCE_OPEN && cut->source == SOURCE_OPEN && cut->id == id) ||
            (source == SOURCE_OWN && ((cut->source == SOURCE_OWN && cut->id == id) || label == id)))
            return label;
    }
    return -1;
}

static void add_span(const Front *front, Candidates *out, int span)
{
    const Pile *pile = front->pile;
    if (out->count == CANDIDATES_MOST)
        return;
    int cut = last_cut(front->labels, front->label, SOURCE_OPEN, span);
    Length left = cut >= 0 ? front->labels->at[cut].left : pile->spans[span].left;
    if (left >= pile->smallest)
        out->at[out->count++] =
            (Candidate){SOURCE_OPEN, span, left, pile->widths[pile->spans[span].board], worth_of(pile->worth, left)};
}

static void add_slot(const Front *front, Candidates *out, int index)
{
    const Pile *pile = front->pile;
    const Slot *slot = &pile->slots[index];
    const Kind *kind = &pile->kinds[slot->kind];
    int taken = 0;
    for (int label = front->label; label >= 0; label = front->labels->at[label].parent)
        if (front->labels->at[label].source == SOURCE_NEW &&
            pile->slots[front->labels->at[label].id].kind == slot->kind)
            taken++;
    if (out->count < CANDIDATES_MOST && taken < kind->unopened)
        out->at[out->count++] = (Candidate){SOURCE_NEW, index, slot->left, kind->width, slot->price};
}

static void add_own(const Front *front, Candidates *out)
{
    const Pile *pile = front->pile;
    for (int opener = front->label; opener >= 0; opener = front->labels->at[opener].parent) {
        if (front->labels->at[opener].source != SOURCE_NEW || out->count == CANDIDATES_MOST)
            continue;
        int slot = front->labels->at[opener].id;
        Length left = front->labels->at[last_cut(front->labels, front->label, SOURCE_OWN, opener)].left;
        if (left >= pile->smallest)
            out->at[out->count++] = (Candidate){SOURCE_OWN, opener, left, pile->kinds[pile->slots[slot].kind].width,
                                                worth_of(pile->worth, left)};
    }
}

typedef void Add(const Front *front, Candidates *out, int thing);

/* Up to `most` things of `length` or more, the shortest first. */
static void add_longer(const Front *front, Candidates *out, const Rack *rack, Length length, int most, Add *add)
{
    int before = out->count;
    int thing = rack_from(rack, length);
    for (int tried = 0; thing != RACK_NONE && tried < 4 * most && out->count < before + most; tried++) {
        int count = out->count;
        add(front, out, thing);
        if (out->count > count && out->at[count].left < length)
            out->count = count;
        thing = rack_up(rack, thing);
    }
}

/* Up to `most` things no longer than `length`, the longest first, each of another length. */
static void add_shorter(const Front *front, Candidates *out, const Rack *rack, Length length, int most, Add *add)
{
    int before = out->count;
    int thing = rack_to(rack, length);
    for (int tried = 0; thing != RACK_NONE && tried < 4 * most && out->count < before + most; tried++) {
        int count = out->count;
        add(front, out, thing);
        if (out->count > count &&
            (out->at[count].left > length || (count > before && out->at[count].left == out->at[count - 1].left)))
            out->count = count;
        thing = rack_down(rack, thing);
    }
}

void wood_gather(const Front *front, Random *random, Candidates *out)
{
    const Pile *pile = front->pile;
    Length rest = front->rest;
    Length useful = rest + pile->kerf + front->least;
    out->count = 0;
    add_own(front, out);
    add_longer(front, out, &pile->open, rest, 3, add_span);
    add_longer(front, out, &pile->open, useful, 2, add_span);
    add_shorter(front, out, &pile->open, rest - 1, 4, add_span);
    add_longer(front, out, &pile->unopened, rest, 2, add_slot);
    add_longer(front, out, &pile->unopened, useful, 2, add_slot);
    add_shorter(front, out, &pile->unopened, rest - 1, 4, add_slot);
    if (random == NULL)
        return;
    Length most = rest < pile->longest ? rest : pile->longest;
    Length drawn = (Length)random_below(random, (uint64_t)most + 1);
    add_shorter(front, out, &pile->open, drawn, 3, add_span);
    add_shorter(front, out, &pile->unopened, (Length)random_below(random, (uint64_t)most + 1), 3, add_slot);
}
