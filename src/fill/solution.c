/*
 *     run  |=====|=========|      bare     |=====|======|
 *                ^         ^               ^     ^          joints: every end of a piece that is no end of its run
 *
 * Invariants: the pieces of a cover rise and do not overlap; bare, breaks and pieces are the sums over all runs, where
 * a pair of joints too near to one another counts once; the supply holds just these cuts.
 */
#include "fill/solution.h"

#include <string.h>

Solution *solution_new(Arena *arena, const Demand *demand, Supply *supply)
{
    Solution *solution = arena_one(arena, Solution);
    solution->demand = demand;
    solution->supply = supply;
    solution->arena = arena;
    solution->covers = arena_array(arena, Cover, demand->run_count);
    solution->bare = demand->total;
    return solution;
}

/* The joints of one run's pieces, rising, after what `out` holds. */
static void run_joints(const Solution *solution, int index, LengthList *out)
{
    const Run *run = &solution->demand->runs[index];
    const Cover *cover = &solution->covers[index];
    for (int i = 0; i < cover->count; i++) {
        Length left = cover->at[i].left;
        if (left != run->left && (i == 0 || cover->at[i - 1].right != left))
            *arena_push(solution->arena, out) = left;
        if (cover->at[i].right != run->right)
            *arena_push(solution->arena, out) = cover->at[i].right;
    }
}

static void row_joints(const Solution *solution, int index, LengthList *out)
{
    const Row *row = &solution->demand->rows[index];
    int from = out->count;
    for (int i = 0; i < row->run_count; i++)
        run_joints(solution, row->run_first + i, out);
    for (int i = 0; i < row->joints.count; i++) {
        *arena_push(solution->arena, out) = 0;
        int at = out->count - 1;
        for (; at > from && out->at[at - 1] > row->joints.at[i]; at--)
            out->at[at] = out->at[at - 1];
        out->at[at] = row->joints.at[i];
    }
}

void solution_joints_beside(const Solution *solution, int run, LengthList *out)
{
    const Row *row = &solution->demand->rows[solution->demand->runs[run].row];
    out->count = 0;
    if (solution->demand->stagger == 0)
        return;
    if (row->below >= 0)
        row_joints(solution, row->below, out);
    int middle = out->count;
    if (row->above >= 0)
        row_joints(solution, row->above, out);
    for (int i = middle; i < out->count; i++) { /* insertion: both parts rise */
        Length x = out->at[i];
        int at = i;
        for (; at > 0 && out->at[at - 1] > x; at--)
            out->at[at] = out->at[at - 1];
        out->at[at] = x;
    }
}

/* Adds (or with -1 takes away) what the run's pieces count for, its pairs with the rows beside it included. */
static void tally(Solution *solution, int index, int sign)
{
    const Demand *demand = solution->demand;
    const Run *run = &demand->runs[index];
    const Cover *cover = &solution->covers[index];
    LengthList *near = &solution->near, *joints = &solution->joints;
    solution_joints_beside(solution, index, near);
    joints->count = 0;
    run_joints(solution, index, joints);
    int breaks = 0;
    for (int i = 0; i < joints->count; i++) {
        breaks += demand_near(near, joints->at[i], demand->stagger);
        if (demand->on_studs && !demand_at_stud(run, joints->at[i]))
            breaks++;
    }
    for (int i = 0; i < cover->count; i++) {
        solution->bare -= sign * (cover->at[i].right - cover->at[i].left);
        breaks += demand_is_short(run, cover->at[i].left, cover->at[i].right);
        solution->closers_off += sign * laid_leaves_off(demand, run, &cover->at[i]);
    }
    solution->breaks += sign * breaks;
    solution->pieces += sign * cover->count;
}

void solution_clear(Solution *solution, int index)
{
    Cover *cover = &solution->covers[index];
    if (cover->count == 0)
        return;
    tally(solution, index, -1);
    for (int i = 0; i < cover->count; i++)
        supply_uncut(solution->supply, cover->at[i].span, cover->at[i].wood, index);
    cover->count = 0;
}

void solution_set(Solution *solution, int index, const Placed *pieces, int count)
{
    Cover *cover = &solution->covers[index];
    solution_clear(solution, index);
    while (cover->room < count)
        *arena_push(solution->arena, cover) = (Placed){0};
    cover->count = count;
    if (count == 0)
        return;
    memcpy(cover->at, pieces, (size_t)count * sizeof *pieces);
    for (int i = 0; i < count; i++)
        supply_cut(solution->supply, pieces[i].span, pieces[i].wood, index);
    tally(solution, index, 1);
}

Cost solution_cost(const Solution *solution)
{
    return (Cost){.shortfall = solution->bare + solution->breaks * BREAK_COST + solution->closers_off,
                  .length_opened = solution->supply->length_opened,
                  .boards_opened = solution->supply->boards_opened,
                  .pieces = solution->pieces};
}
