/*
 *     turn     |=a=|==b==|===c===|    ->   |===c===|==b==|=a=|
 *     shift    |===a===|=b=|          ->   |==a==|==b==|              the span of b has wood left
 *     exchange |=a=|==b==|  |=c=|=d=| ->   |=d=|=c=|    |=a=|==b==|
 *     pass     |=a=|==b==|=c=|        ->   |=a=|==x==|=c=|            and b lies where x was
 *
 * A draft says where each piece ends; whether it may lie so is for the arrangement to say.
 */
#include "fill/looks/joint_moves.h"

static int below(Random *random, int bound)
{
    return (int)random_below(random, (uint64_t)bound);
}

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
static Length place_joint(const Arrangement *all, const Run *run, Length x)
{
    const Demand *demand = all->demand;
    if (!demand->on_studs)
        return demand_mark_down(demand, run, x);
    const LengthList *studs = run->studs;
    if (run->stud_count == 0)
        return x;
    int last = run->stud_first + run->stud_count - 1, i = demand_first_from(studs, x);
    i = i < run->stud_first ? run->stud_first : i > last ? last : i;
    return i > run->stud_first && x - studs->at[i - 1] <= studs->at[i] - x ? studs->at[i - 1] : studs->at[i];
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

static void place_joints(const Arrangement *all, Laying *laying)
{
    const Run *run = &all->demand->runs[laying->run];
    for (int i = 0; i + 1 < laying->count; i++)
        laying->ends[i] = place_joint(all, run, laying->ends[i]);
    laying->ends[laying->count - 1] = run->right;
}

void joints_turn(Arrangement *all, Random *random, int run, int64_t most)
{
    Draft draft;
    Laying *laying = begin(&draft);
    arrangement_read(all, run, laying);
    if (laying->count < 2)
        return;
    int from = below(random, laying->count - 1);
    int to = from + 1 + below(random, laying->count - 1 - from);
    Length left = all->demand->runs[run].left;
    flip(laying, left, from, to);
    if (to - from > 2 && below(random, 2) == 0) /* those between as they were */
        flip(laying, left, from + 1, to - 1);
    place_joints(all, laying);
    arrangement_lay(all, laying, NULL, most);
}

void joints_shift(Arrangement *all, Random *random, int run, int64_t most)
{
    Draft draft;
    Laying *laying = begin(&draft);
    arrangement_read(all, run, laying);
    if (laying->count < 2)
        return;
    const Run *in = &all->demand->runs[run];
    int joint = below(random, laying->count - 1);
    bool right = below(random, 2) == 0;
    int grows = laying->pieces[right ? joint : joint + 1];
    Length most_by = all->left[all->span_of[grows]] + all->supply->kerf;
    Length x = laying->ends[joint];
    if (most_by <= 0)
        return;
    if (all->demand->on_studs) {
        Length by = most_by < 2 * LOOKS_STEP ? most_by : 2 * LOOKS_STEP;
        x = place_joint(all, in, right ? x + by / (1 + below(random, 2)) : x - by / (1 + below(random, 2)));
    } else {
        Length marks = most_by / all->demand->round;
        Length farthest = 2 * LOOKS_STEP / all->demand->round;
        marks = marks < farthest ? marks : farthest;
        if (marks == 0)
            return;
        Length by = (Length)random_between(random, 1, marks) * all->demand->round;
        x = demand_mark_down(all->demand, in, right ? x + by : x - by);
    }
    laying->ends[joint] = x;
    arrangement_lay(all, laying, NULL, most);
}

/* What lies on `from` as it would lie on `run`, with `mirrored` the other way round. */
static void carry(const Arrangement *all, const Laying *from, int run, bool mirrored, Laying *out)
{
    const Demand *demand = all->demand;
    Length by = demand->runs[run].left - demand->runs[from->run].left;
    out->run = run;
    out->count = from->count;
    for (int i = 0; i < from->count; i++) {
        out->pieces[i] = from->pieces[i];
        out->ends[i] = from->ends[i] + by;
    }
    if (mirrored)
        flip(out, demand->runs[run].left, 0, out->count - 1);
    place_joints(all, out);
}

void joints_exchange(Arrangement *all, Random *random, int run, int other, int64_t most)
{
    Draft drafts[4];
    Laying *from = begin(&drafts[0]), *to = begin(&drafts[1]);
    arrangement_read(all, run, from);
    arrangement_read(all, other, to);
    Laying *new_run = begin(&drafts[2]), *new_other = begin(&drafts[3]);
    carry(all, to, run, below(random, 2) == 0, new_run);
    carry(all, from, other, below(random, 2) == 0, new_other);
    arrangement_lay(all, new_run, new_other, most);
}

enum { PASS_MOST = 3 };

/* Pieces first .. first+count-1 of a laying. */
typedef struct RunPart {
    int first, count;
    Length left, right;
} RunPart;

static RunPart part_of(const Arrangement *all, const Laying *laying, int first, int count)
{
    return (RunPart){first, count, first > 0 ? laying->ends[first - 1] : all->demand->runs[laying->run].left,
                     laying->ends[first + count - 1]};
}

/* Whether the last piece of the part can be as much longer as the part is to be. */
static bool can_fill(const Arrangement *all, const Laying *laying, const RunPart *part, Length length)
{
    int last = laying->pieces[part->first + part->count - 1];
    return length - (part->right - part->left) <= all->left[all->span_of[last]] + all->supply->kerf;
}

/* The laying with the part of another in the place of its own, between the same two ends. */
static void put_part(const Arrangement *all, const Laying *laying, const RunPart *own, const Laying *other,
                     const RunPart *part, Laying *out)
{
    const Run *run = &all->demand->runs[laying->run];
    out->run = laying->run;
    out->count = 0;
    for (int i = 0; i < own->first; i++, out->count++) {
        out->pieces[out->count] = laying->pieces[i];
        out->ends[out->count] = laying->ends[i];
    }
    for (int i = part->first; i < part->first + part->count; i++, out->count++) {
        out->pieces[out->count] = other->pieces[i];
        out->ends[out->count] = place_joint(all, run, own->left + other->ends[i] - part->left);
    }
    out->ends[out->count - 1] = own->right;
    for (int i = own->first + own->count; i < laying->count; i++, out->count++) {
        out->pieces[out->count] = laying->pieces[i];
        out->ends[out->count] = laying->ends[i];
    }
}

void joints_pass(Arrangement *all, Random *random, int run, int other, int64_t most)
{
    Draft drafts[4];
    Laying *one = begin(&drafts[0]), *two = begin(&drafts[1]);
    arrangement_read(all, run, one);
    arrangement_read(all, other, two);
    int first = below(random, one->count), from = below(random, two->count);
    int count = 1 + below(random, one->count - first < PASS_MOST ? one->count - first : PASS_MOST);
    RunPart own = part_of(all, one, first, count);
    all->work += two->count;
    for (int i = 0; i < two->count; i++) {
        int at = (from + i) % two->count;
        for (int j = 1; j <= PASS_MOST && at + j <= two->count; j++) {
            RunPart part = part_of(all, two, at, j);
            if (!can_fill(all, one, &own, part.right - part.left) || !can_fill(all, two, &part, own.right - own.left) ||
                one->count - count + j > LAY_MOST || two->count - j + count > LAY_MOST)
                continue;
            Laying *new_one = begin(&drafts[2]), *new_two = begin(&drafts[3]);
            put_part(all, one, &own, two, &part, new_one);
            put_part(all, two, &part, one, &own, new_two);
            arrangement_lay(all, new_one, new_two, most);
            return;
        }
    }
}
