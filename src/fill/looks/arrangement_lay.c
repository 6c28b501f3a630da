/*
 *     run   |===a===|====b====|==c==|        pieces a b c, ends at | | |
 *           |====b====|===a===|==c==|        the same anew
 *
 * The joints of a run count against the rows beside it; what stands at the run's two ends stays, and so do the breaks
 * that it is part of.
 */
#include "fill/looks/arrangement.h"

#include "base/panic.h"

/* ---- rules ---- */

/* Rules broken, and how far in all: what joints are too near, and what pieces are too short. */
typedef struct Broken {
    int count;
    Length by;
} Broken;

static void add_near(Broken *broken, Length x, Length other, Length stagger)
{
    Length apart = x < other ? other - x : x - other;
    if (apart >= stagger)
        return;
    broken->count++;
    broken->by += stagger - apart;
}

/* Joints of the row, and joints to be, nearer to x than the stagger. */
static void add_near_row(Broken *broken, const Facade *rows, int row, Length x, Length stagger, int64_t *work)
{
    if (row < 0 || stagger == 0)
        return;
    const FacadeRow *in = &rows->at[row];
    for (int i = facade_first_right_of(in, x - stagger); i < in->count && in->at[i].left < x + stagger; i++) {
        if (in->at[i].starts)
            add_near(broken, x, in->at[i].left, stagger);
        if (in->at[i].ends)
            add_near(broken, x, in->at[i].right, stagger);
        ++*work;
    }
}

/* What pieces of the run break which end there, with the joints between them. */
static Broken find_broken(Arrangement *all, const Laying *laying)
{
    const Demand *demand = all->demand;
    const Run *in = &demand->runs[laying->run];
    const FacadeRow *row = &all->rows->at[in->row];
    Broken broken = {0};
    Length left = in->left;
    for (int i = 0; i < laying->count; i++) {
        Length length = laying->ends[i] - left;
        if (demand_is_short(in, left, laying->ends[i])) {
            broken.count++;
            broken.by += in->shortest - length;
        }
        left = laying->ends[i];
        if (i + 1 == laying->count)
            break;
        broken.count += demand->on_studs && !demand_at_stud(in, left);
        add_near_row(&broken, all->rows, row->below, left, demand->stagger, &all->work);
        add_near_row(&broken, all->rows, row->above, left, demand->stagger, &all->work);
    }
    return broken;
}

/* Whether the joints may stand there and each piece is one, out of a board that is wide enough. */
static bool can_lie(const Arrangement *all, const Laying *laying)
{
    const Demand *demand = all->demand;
    const Run *run = &demand->runs[laying->run];
    if (!all->runs[laying->run].whole || laying->count == 0 ||
        (laying->count > 1 && all->supply->single[laying->run]) || laying->ends[laying->count - 1] != run->right)
        return false;
    Length left = run->left;
    for (int i = 0; i < laying->count; i++) {
        Length right = laying->ends[i];
        if (right <= left)
            return false;
        bool joint = i + 1 < laying->count;
        if (joint && (right - run->origin) % demand->round != 0 && !(demand->on_studs && demand_at_stud(run, right)))
            return false;
        int board = all->supply->spans[all->span_of[laying->pieces[i]]].board;
        if (!demand_whole(demand, run, left, right) ||
            (all->supply->narrow && demand_need(demand, run, left, right) > all->supply->widths[board]))
            return false;
        left = right;
    }
    return true;
}

/* ---- wood ---- */

/* Takes the pieces from their spans (sign 1), or gives them back (-1); false where a span has not as much. */
static bool take(Arrangement *all, const Laying *laying, int sign)
{
    const Run *run = &all->demand->runs[laying->run];
    Length left = run->left;
    bool enough = true;
    for (int i = 0; i < laying->count; i++) {
        Length *rest = &all->left[all->span_of[laying->pieces[i]]];
        *rest -= sign * arrangement_wood(all, laying->run, left, laying->ends[i]);
        enough = enough && *rest >= -all->supply->kerf;
        left = laying->ends[i];
    }
    return enough;
}

/* ---- planks ---- */

void arrangement_read(const Arrangement *all, int run, Laying *out)
{
    const RunPlace *place = &all->runs[run];
    const FacadePlank *planks = &all->rows->at[all->demand->runs[run].row].at[place->first];
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
    FacadePlank planks[LAY_MOST];
    FacadePlank like = all->rows->at[run->row].at[place->first];
    like.ends = false;
    Length left = run->left;
    for (int i = 0; i < laying->count; i++) {
        int piece = laying->pieces[i];
        planks[i] = like;
        planks[i].left = left;
        planks[i].right = left = laying->ends[i];
        planks[i].piece = piece;
        planks[i].tone = all->rows->tones[all->supply->spans[all->span_of[piece]].board];
        all->run_of[piece] = laying->run;
        like.joined = like.starts = true;
    }
    int more = laying->count - place->count;
    facade_put(all->rows, run->row, place->first, place->count, planks, laying->count);
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

/* Adds what the run breaks more as `laying` than as `old`. */
static void add_more(Broken *more, Arrangement *all, const Laying *old, const Laying *laying)
{
    Broken now = find_broken(all, laying), then = find_broken(all, old);
    more->count += now.count - then.count;
    more->by += now.by - then.by;
}

static bool is_kept(const Broken *more)
{
    return more->count == 0 && more->by <= 0;
}

static bool lay_run(Arrangement *all, const Laying *old, const Laying *laying, int64_t most)
{
    Broken more = {0};
    add_more(&more, all, old, laying);
    if (!is_kept(&more))
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
    Broken more = {0};
    add_more(&more, all, old_one, one);
    int64_t change = lay(all, one);
    add_more(&more, all, old_other, other); /* beside what lies now */
    if (is_kept(&more)) {
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
