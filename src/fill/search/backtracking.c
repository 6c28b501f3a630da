/*
 *     run k     |--piece--|--piece--x                      x: where the next piece begins
 *                                   |----------------|     to a stud or the run's end, the furthest first
 *
 * Invariants: `left` and `cut` tell what is left of each span after the pieces laid; `pieces` are those of the runs
 * before the one in hand, and of it up to x.
 */
#include "fill/search/backtracking.h"

enum { RUNS_MOST = 16, STUDS_MOST = 12, PIECES_MOST = RUNS_MOST * (STUDS_MOST + 1), SPANS_MOST = 64 };

struct Backtracking {
    Solution *solution;
    Length least;               /* no piece is shorter */
    Length rest[RUNS_MOST + 1]; /* length of the runs from this one on, a kerf for each */
    int spans[SPANS_MOST];      /* of the boards that are tried, as the supply counts them */
    Length left[SPANS_MOST];
    int cut[SPANS_MOST]; /* pieces */
    int span_count;
    Placed pieces[PIECES_MOST];
    int first[RUNS_MOST + 1]; /* piece of each run */
    int nodes, nodes_most;
};

static Length place_of(const Run *run, int place)
{
    return place == run->stud_count ? run->right : run->studs->at[run->stud_first + place];
}

Backtracking *backtracking_new(Arena *arena, Solution *solution)
{
    const Demand *demand = solution->demand;
    if (!demand->on_studs || demand->run_count > RUNS_MOST)
        return NULL;
    Backtracking *all = arena_one(arena, Backtracking);
    all->solution = solution;
    all->least = demand->longest;
    for (int i = demand->run_count - 1; i >= 0; i--) {
        const Run *run = &demand->runs[i];
        if (run->stud_count > STUDS_MOST)
            return NULL;
        all->rest[i] = all->rest[i + 1] + run->right - run->left + demand->kerf;
        for (int from = -1; from < run->stud_count; from++)
            for (int to = from + 1; to <= run->stud_count; to++) {
                const Length x = from < 0 ? run->left : place_of(run, from), right = place_of(run, to);
                if (!demand_is_short(run, x, right) && right - x < all->least)
                    all->least = right - x;
            }
    }
    return all;
}

/* Whether what is left of the boards could still hold a wall of that length. */
static bool reaches(const Backtracking *all, Length length)
{
    const Length kerf = all->solution->demand->kerf;
    Length have = 0;
    for (int i = 0; i < all->span_count; i++)
        have += all->left[i] >= all->least ? all->left[i] + kerf : 0;
    return have >= length;
}

/* Whether a joint at x keeps its stagger to what hangs beside the run, and to the pieces laid in the row below. */
static bool keeps_stagger(const Backtracking *all, int index, Length x)
{
    const Demand *demand = all->solution->demand;
    const Row *row = &demand->rows[demand->runs[index].row];
    if (demand->stagger == 0)
        return true;
    if (row->above >= 0 && demand_near(&demand->rows[row->above].joints, x, demand->stagger) > 0)
        return false;
    if (row->below < 0)
        return true;
    const Row *below = &demand->rows[row->below];
    if (demand_near(&below->joints, x, demand->stagger) > 0)
        return false;
    for (int run = below->run_first; run < below->run_first + below->run_count; run++)
        for (int i = all->first[run]; i + 1 < all->first[run + 1]; i++) {
            const Length apart = all->pieces[i].right - x;
            if (apart < demand->stagger && -apart < demand->stagger)
                return false;
        }
    return true;
}

/* The span of least length, longer than `after`, that gives the piece; -1 where none does. */
static int next_span(const Backtracking *all, const Run *run, Length x, Length right, Length after)
{
    const Demand *demand = all->solution->demand;
    const Supply *supply = all->solution->supply;
    const Length length = demand_length(run, x, right), wood = demand_wood(demand, run, x, right, true);
    const Length need = demand_need(demand, run, x, right);
    int best = -1;
    for (int i = 0; i < all->span_count; i++)
        if (all->left[i] > after && (all->cut[i] == 0 ? length : wood) <= all->left[i] &&
            supply->widths[supply->spans[all->spans[i]].board] >= need && (best < 0 || all->left[i] < all->left[best]))
            best = i;
    return best;
}

static BacktrackingEnd cover_from(Backtracking *all, int index, int count, Length x);

/* Every span of another length once. */
static BacktrackingEnd try_piece(Backtracking *all, int index, int count, Length x, Length right)
{
    const Demand *demand = all->solution->demand;
    const Run *run = &demand->runs[index];
    const Length wood = demand_wood(demand, run, x, right, true);
    Length after = -1;
    for (int span = next_span(all, run, x, right, after); span >= 0; span = next_span(all, run, x, right, after)) {
        after = all->left[span];
        all->pieces[count] = (Placed){x, right, all->spans[span], wood};
        all->left[span] -= wood + demand->kerf;
        all->cut[span]++;
        const BacktrackingEnd end = cover_from(all, index, count + 1, right);
        all->left[span] = after;
        all->cut[span]--;
        if (end != BACKTRACKING_NONE)
            return end;
    }
    return BACKTRACKING_NONE;
}

/* Covers run `index` from x on, and all runs behind it; `count` pieces are laid. */
static BacktrackingEnd cover_from(Backtracking *all, int index, int count, Length x)
{
    const Demand *demand = all->solution->demand;
    const bool single = all->solution->supply->single[index];
    const Run *run = &demand->runs[index];
    if (++all->nodes > all->nodes_most)
        return BACKTRACKING_LEFT;
    if (x == run->right) {
        all->first[index + 1] = count;
        if (index + 1 == demand->run_count)
            return BACKTRACKING_FOUND;
        return cover_from(all, index + 1, count, demand->runs[index + 1].left);
    }
    if (!reaches(all, all->rest[index + 1] + run->right - x))
        return BACKTRACKING_NONE;
    for (int place = run->stud_count; place >= 0; place--) {
        const Length right = place_of(run, place);
        if (right <= x)
            break;
        if ((single && right != run->right) || demand_is_short(run, x, right) || !demand_whole(demand, run, x, right) ||
            (right != run->right && !keeps_stagger(all, index, right)))
            continue;
        const BacktrackingEnd end = try_piece(all, index, count, x, right);
        if (end != BACKTRACKING_NONE)
            return end;
    }
    return BACKTRACKING_NONE;
}

BacktrackingEnd backtracking_cover(Backtracking *all, uint32_t boards, int nodes_most, int64_t *work)
{
    Solution *solution = all->solution;
    const Supply *supply = solution->supply;
    all->span_count = 0;
    for (int i = 0; i < supply->span_count; i++) {
        if (!(boards >> supply->spans[i].board & 1))
            continue;
        if (all->span_count == SPANS_MOST)
            return BACKTRACKING_LEFT;
        all->spans[all->span_count] = i;
        all->left[all->span_count] = supply->spans[i].left;
        all->cut[all->span_count++] = 0;
    }
    all->nodes = 0;
    all->nodes_most = nodes_most;
    const BacktrackingEnd end = cover_from(all, 0, 0, solution->demand->runs[0].left);
    *work += all->nodes;
    for (int run = 0; end == BACKTRACKING_FOUND && run < solution->demand->run_count; run++)
        solution_set(solution, run, all->pieces + all->first[run], all->first[run + 1] - all->first[run]);
    return end;
}
