/*
 *     stacked             staircase              neighbours of p
 *
 *     ======|======       ==========|==          =====|======
 *     ===|=========       ======|======          ==a=|=p=|=b=
 *     ======|======       ==|==========          ========|===
 *        < NEAR              step step
 *
 * Invariant: the weight of looks_measure is the sum of looks_around over parts of a wall that have no blemish in
 * common; so a change of some planks changes it by what looks_around changes by.
 */
#include "fill/looks/looks.h"

#include <string.h>

Length looks_short(const Wall *wall)
{
    Length half_more = wall->joints.shortest + wall->joints.shortest / 2;
    return half_more > LOOKS_SHORT ? half_more : LOOKS_SHORT;
}

int64_t looks_weight(const Looks *looks)
{
    int64_t joints = (int64_t)looks->stacked + looks->stairs + looks->short_pairs + looks->near_sides;
    return LOOKS_WEIGHT_TONE * (int64_t)looks->equal + LOOKS_WEIGHT_JOINT * joints +
           LOOKS_WEIGHT_LOOSE * (int64_t)looks->loose;
}

/* ---- joints ---- */

static Length distance(Length a, Length b)
{
    return a < b ? b - a : a - b;
}

/* Two courses up or down; -1 where there is none. */
static int second(const Facade *rows, int row, bool up)
{
    int next = up ? rows->at[row].above : rows->at[row].below;
    if (next < 0)
        return -1;
    return up ? rows->at[next].above : rows->at[next].below;
}

/* Joints of the row nearer to x than LOOKS_NEAR. */
static int count_stacked(const Facade *rows, int row, Length x, int64_t *work)
{
    if (row < 0)
        return 0;
    const FacadeRow *other = &rows->at[row];
    int count = 0;
    for (int i = facade_first_right_of(other, x - LOOKS_NEAR); i < other->count && other->at[i].left < x + LOOKS_NEAR;
         i++) {
        count += other->at[i].joined && distance(other->at[i].left, x) < LOOKS_NEAR;
        ++*work;
    }
    return count;
}

static bool is_stair(Length low, Length middle, Length high)
{
    Length first = middle - low, then = high - middle;
    if ((first > 0) != (then > 0) || distance(first, then) >= LOOKS_NEAR)
        return false;
    Length one = distance(low, middle), other = distance(middle, high);
    return one >= LOOKS_NEAR && one <= LOOKS_STEP && other >= LOOKS_NEAR && other <= LOOKS_STEP;
}

/* Whether a joint that can be part of a stair stands at the plank's left end. */
static bool is_step(const FacadePlank *plank)
{
    return plank->joined && plank->right - plank->left >= LOOKS_NEAR && plank[-1].right - plank[-1].left >= LOOKS_NEAR;
}

/* Which of the three joints of a stair is given. */
typedef enum Stand { STAND_LOW, STAND_MIDDLE, STAND_HIGH } Stand;

/* Stairs of the joint at the plank's left end with one joint of each of the two rows: those beside it, or the one
 * beside and the one beyond that. */
static int count_stairs(const Facade *rows, int one, int other, const FacadePlank *plank, Stand stand, int64_t *work)
{
    if (one < 0 || other < 0 || !is_step(plank))
        return 0;
    Length x = plank->left;
    const FacadeRow *near = &rows->at[one], *far = &rows->at[other];
    int count = 0;
    for (int i = facade_first_right_of(near, x - LOOKS_STEP); i < near->count && near->at[i].left <= x + LOOKS_STEP;
         i++) {
        Length y = near->at[i].left;
        ++*work;
        if (distance(x, y) < LOOKS_NEAR || !is_step(&near->at[i]))
            continue;
        Length aim = stand == STAND_MIDDLE ? 2 * x - y : 2 * y - x;
        for (int j = facade_first_right_of(far, aim - LOOKS_NEAR); j < far->count && far->at[j].left < aim + LOOKS_NEAR;
             j++) {
            Length z = far->at[j].left;
            ++*work;
            if (!is_step(&far->at[j]))
                continue;
            switch (stand) {
            case STAND_LOW: count += is_stair(x, y, z); break;
            case STAND_MIDDLE: count += is_stair(y, x, z); break;
            case STAND_HIGH: count += is_stair(z, y, x); break;
            }
        }
    }
    return count;
}

/* ---- neighbours ---- */

static bool short_pair(const FacadePlank *left, Length short_below)
{
    return left[0].right - left[0].left < short_below && left[1].right - left[1].left < short_below;
}

/* Planks of the row over or under the plank that have its tone, or with `any` some tone. */
static int count_beside(const Facade *rows, int row, const FacadePlank *plank, int tone, bool any, int64_t *work)
{
    if (row < 0)
        return 0;
    const FacadeRow *other = &rows->at[row];
    int count = 0;
    for (int i = facade_first_right_of(other, plank->left); i < other->count && other->at[i].left < plank->right; i++) {
        count += any ? other->at[i].tone != 0 : other->at[i].tone == tone;
        ++*work;
    }
    return count;
}

int looks_like(const Facade *rows, int row, int plank, int tone, int64_t *work)
{
    const FacadeRow *in = &rows->at[row];
    const FacadePlank *of = &in->at[plank];
    int count = of->joined && of[-1].tone == tone;
    count += plank + 1 < in->count && of[1].joined && of[1].tone == tone;
    return count + count_beside(rows, in->below, of, tone, false, work) +
           count_beside(rows, in->above, of, tone, false, work);
}

/* ---- sums ---- */

int64_t looks_around(const Facade *rows, Length short_below, int row, int first, int count, int64_t *work)
{
    const FacadeRow *in = &rows->at[row];
    Looks looks = {0};
    for (int i = first; i < first + count; i++) {
        const FacadePlank *plank = &in->at[i];
        looks.loose += facade_is_loose(in, i);
        if (plank->tone == 0)
            continue;
        looks.equal += count_beside(rows, in->below, plank, plank->tone, false, work) +
                       count_beside(rows, in->above, plank, plank->tone, false, work);
    }
    for (int i = first; i <= first + count && i < in->count; i++) {
        const FacadePlank *plank = &in->at[i];
        Length x = plank->left;
        if (!plank->joined)
            continue;
        int under = second(rows, row, false), over = second(rows, row, true);
        looks.equal += plank->tone != 0 && plank[-1].tone == plank->tone;
        looks.short_pairs += short_pair(plank - 1, short_below);
        looks.near_sides += facade_is_close(in, x);
        looks.stacked += count_stacked(rows, under, x, work) + count_stacked(rows, in->below, x, work) +
                         count_stacked(rows, in->above, x, work) + count_stacked(rows, over, x, work);
        looks.stairs += count_stairs(rows, in->above, over, plank, STAND_LOW, work) +
                        count_stairs(rows, in->below, in->above, plank, STAND_MIDDLE, work) +
                        count_stairs(rows, in->below, under, plank, STAND_HIGH, work);
    }
    *work += count;
    return looks_weight(&looks);
}

/* How many of `touching` pairs would be of one tone, were they drawn from all pieces that have one; to the nearest. */
static int by_chance(const Facade *rows, int touching)
{
    Arena *arena = arena_new();
    int64_t *pieces = arena_array(arena, int64_t, rows->tone_count + 1);
    for (int i = 0; i < rows->count; i++)
        for (int j = 0; j < rows->at[i].count; j++)
            pieces[rows->at[i].at[j].tone]++;
    int64_t all = 0, same = 0;
    for (int i = 1; i <= rows->tone_count; i++) {
        all += pieces[i];
        same += pieces[i] * (pieces[i] - 1);
    }
    arena_free(arena);
    int64_t pairs = all * (all - 1);
    return pairs > 0 ? (int)((2 * touching * same + pairs) / (2 * pairs)) : 0;
}

Looks looks_measure(const Facade *rows, Length short_below)
{
    Looks looks = {0};
    int64_t work = 0;
    for (int i = 0; i < rows->count; i++) {
        const FacadeRow *row = &rows->at[i];
        for (int j = 0; j < row->count; j++) {
            const FacadePlank *plank = &row->at[j];
            looks.loose += facade_is_loose(row, j);
            if (plank->tone != 0) {
                looks.touching +=
                    count_beside(rows, row->below, plank, 0, true, &work) + (plank->joined && plank[-1].tone != 0);
                looks.equal += count_beside(rows, row->below, plank, plank->tone, false, &work) +
                               (plank->joined && plank[-1].tone == plank->tone);
            }
            if (!plank->joined)
                continue;
            int under = second(rows, i, false);
            looks.stacked +=
                count_stacked(rows, row->below, plank->left, &work) + count_stacked(rows, under, plank->left, &work);
            looks.stairs += count_stairs(rows, row->below, under, plank, STAND_HIGH, &work);
            looks.short_pairs += short_pair(plank - 1, short_below);
            looks.near_sides += facade_is_close(row, plank->left);
        }
    }
    looks.chance = by_chance(rows, looks.touching);
    return looks;
}
