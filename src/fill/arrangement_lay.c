/*
 *     run   |===a===|====b====|==c==|        pieces a b c, ends at | | |
 *           |====b====|===a===|==c==|        the same anew
 *
 * The joints of a run count against the rows beside it; what stands at the run's two ends stays, and so do the breaks
 * that it is part of.
 */
#include "fill/arrangement.h"

#include "base/panic.h"

/* ---- rules ---- */

/* Joints of the row, and joints to be, nearer to x than the stagger. */
static int count_near(const PlankRows *rows, int row, Length x, Length stagger, int64_t *work)
{
    if (row < 0 || stagger == 0)
        return 0;
    const PlankRow *in = &rows->at[row];
    int near = 0;
    for (int i = planks_behind(in, x - stagger); i < in->count && in->at[i].left < x + stagger; i++) {
        near += in->at[i].starts && in->at[i].left > x - stagger;
        near += in->at[i].ends && in->at[i].right < x + stagger;
        ++*work;
    }
    return near;
}

/* Rules that pieces of the run break which end there, with the joints between them. */
static int count_breaks(Arrangement *all, int run, const Length *ends, int count)
{
    const Demand *demand = all->demand;
    const Run *in = &demand->runs[run];
    const PlankRow *row = &all->rows->at[in->row];
    int breaks = 0;
    Length left = in->left;
    for (int i = 0; i < count; i++) {
        breaks += ends[i] - left < in->shortest;
        left = ends[i];
        if (i + 1 == count)
            break;
        breaks += demand->on_studs && !demand_at_stud(demand, in, left);
        breaks += count_near(all->rows, row->below, left, demand->stagger, &all->work) +
                  count_near(all->rows, row->above, left, demand->stagger, &all->work);
    }
    return breaks;
}

/* Whether the joints may stand there and each piece is one, out of a board that is wide enough. */
static bool can_lie(const Arrangement *all, const Laying *laying)
{
    const Demand *demand = all->demand;
    const Run *run = &demand->runs[laying->run];
    if (!all->runs[laying->run].whole || laying->count == 0 || laying->ends[laying->count - 1] != run->right)
        return false;
    Length left = run->left;
    for (int i = 0; i < laying->count; i++) {
        Length right = laying->ends[i];
        if (right <= left)
            return false;
        bool joint = i + 1 < laying->count;
        if (joint && (right - run->origin) % demand->round != 0 &&
            !(demand->on_studs && demand_at_stud(demand, run, right)))
            return false;
        int board = all->pile->spans[all->span_of[laying->pieces[i]]].board;
        if (!demand_whole(demand, run, left, right) ||
            (all->pile->narrow && demand_need(demand, run, left, right) > all->pile->widths[board]))
            return false;
        left = right;
    }
    return true;
}

/* ---- wood ---- */

/* Takes the pieces from their spans (sign 1), or gives them back (-1); false where a span has not as much. */
static bool take(Arrangement *all, const Laying *laying, int sign)
{
    Length left = all->demand->runs[laying->run].left;
    bool enough = true;
    for (int i = 0; i < laying->count; i++) {
        Length *rest = &all->left[all->span_of[laying->pieces[i]]];
        *rest -= sign * (laying->ends[i] - left);
        enough = enough && *rest >= -all->pile->kerf;
        left = laying->ends[i];
    }
    return enough;
}

/* ---- planks ---- */

void arrangement_read(const Arrangement *all, int run, Laying *out)
{
    const RunPlace *place = &all->runs[run];
    const Plank *planks = &all->rows->at[all->demand->runs[run].row].at[place->first];
    BUG_UNLESS(place->count <= LAY_MOST);
    out->run = run;
    out->count = place->count;
    for (int i = 0; i < place->count; i++) {
        out->pieces[i] = planks[i].piece;
        out->ends[i] = planks[i].right;
    }
}

static void put_planks(Arrangement *all, const Laying *laying)
{
    const Run *run = &all->demand->runs[laying->run];
    const Row *row = &all->demand->rows[run->row];
    RunPlace *place = &all->runs[laying->run];
    Plank planks[LAY_MOST];
    Plank like = all->rows->at[run->row].at[place->first];
    like.ends = false;
    Length left = run->left;
    for (int i = 0; i < laying->count; i++) {
        int piece = laying->pieces[i];
        planks[i] = like;
        planks[i].left = left;
        planks[i].right = left = laying->ends[i];
        planks[i].piece = piece;
        planks[i].tone = all->rows->tones[all->pile->spans[all->span_of[piece]].board];
        all->run_of[piece] = laying->run;
        like.joined = like.starts = true;
    }
    int more = laying->count - place->count;
    planks_put(all->rows, run->row, place->first, place->count, planks, laying->count);
    place->count = laying->count;
    for (int i = laying->run + 1; i < row->run_first + row->run_count; i++)
        all->runs[i].first += more;
}

static int64_t weight_of(Arrangement *all, int run)
{
    const RunPlace *place = &all->runs[run];
    return looks_around(all->rows, all->short_below, all->demand->runs[run].row, place->first, place->count,
                        &all->work);
}

/* Lays the run anew; by how much that changes the weight. */
static int64_t lay(Arrangement *all, const Laying *laying)
{
    int64_t before = weight_of(all, laying->run);
    put_planks(all, laying);
    return weight_of(all, laying->run) - before;
}

static int more_breaks(Arrangement *all, const Laying *old, const Laying *laying)
{
    return count_breaks(all, laying->run, laying->ends, laying->count) -
           count_breaks(all, old->run, old->ends, old->count);
}

static bool lay_run(Arrangement *all, const Laying *old, const Laying *laying, int64_t most)
{
    if (more_breaks(all, old, laying) != 0)
        return false;
    int64_t change = lay(all, laying);
    if (change > most) {
        put_planks(all, old);
        return false;
    }
    all->weight += change;
    return true;
}

static bool lay_runs(Arrangement *all, const Laying *old_one, const Laying *old_other, const Laying *one,
                     const Laying *other, int64_t most)
{
    int breaks = more_breaks(all, old_one, one);
    int64_t change = lay(all, one);
    breaks += more_breaks(all, old_other, other); /* beside what lies now */
    if (breaks == 0) {
        change += lay(all, other);
        if (change <= most) {
            all->weight += change;
            return true;
        }
    }
    put_planks(all, old_other); /* also where only the first was laid: its pieces may have come from here */
    put_planks(all, old_one);
    return false;
}

bool arrangement_lay(Arrangement *all, const Laying *one, const Laying *other, int64_t most)
{
    all->work += one->count + (other != NULL ? other->count : 0);
    if (!can_lie(all, one) || (other != NULL && !can_lie(all, other)))
        return false;
    int pieces[2][LAY_MOST];
    Length ends[2][LAY_MOST];
    Laying old_one = {.pieces = pieces[0], .ends = ends[0]}, old_other = {.pieces = pieces[1], .ends = ends[1]};
    arrangement_read(all, one->run, &old_one);
    take(all, &old_one, -1);
    if (other != NULL) {
        arrangement_read(all, other->run, &old_other);
        take(all, &old_other, -1);
    }
    bool enough = take(all, one, 1);
    if (other != NULL)
        enough = take(all, other, 1) && enough;
    if (enough &&
        (other != NULL ? lay_runs(all, &old_one, &old_other, one, other, most) : lay_run(all, &old_one, one, most)))
        return true;
    take(all, one, -1);
    take(all, &old_one, 1);
    if (other != NULL) {
        take(all, other, -1);
        take(all, &old_other, 1);
    }
    return false;
}
