/*
 *     run  |=====|=========|      bare     |=====|======|
 *                ^         ^               ^     ^          joints: every end of a piece that is no end of its run
 *
 * Invariants: the pieces of a cover rise and do not overlap; bare, breaks and pieces are the sums over all runs, where
 * a pair of joints too near to one another counts once; the pile holds just these cuts.
 */
#include "fill/laid.h"

#include <string.h>

Laid *laid_new(Arena *arena, const Demand *demand, Pile *pile)
{
    Laid *laid = arena_one(arena, Laid);
    laid->demand = demand;
    laid->pile = pile;
    laid->arena = arena;
    laid->covers = arena_array(arena, Cover, demand->run_count);
    laid->bare = demand->total;
    return laid;
}

void laid_joints(const Laid *laid, int index, LengthList *out)
{
    const Run *run = &laid->demand->runs[index];
    const Cover *cover = &laid->covers[index];
    for (int i = 0; i < cover->count; i++) {
        Length left = cover->at[i].left;
        if (left != run->left && (i == 0 || cover->at[i - 1].right != left))
            *arena_push(laid->arena, out) = left;
        if (cover->at[i].right != run->right)
            *arena_push(laid->arena, out) = cover->at[i].right;
    }
}

static void row_joints(const Laid *laid, int index, LengthList *out)
{
    const Row *row = &laid->demand->rows[index];
    int from = out->count;
    for (int i = 0; i < row->run_count; i++)
        laid_joints(laid, row->run_first + i, out);
    for (int i = 0; i < row->joints.count; i++) {
        *arena_push(laid->arena, out) = 0;
        int at = out->count - 1;
        for (; at > from && out->at[at - 1] > row->joints.at[i]; at--)
            out->at[at] = out->at[at - 1];
        out->at[at] = row->joints.at[i];
    }
}

void laid_near(const Laid *laid, int run, LengthList *out)
{
    const Row *row = &laid->demand->rows[laid->demand->runs[run].row];
    out->count = 0;
    if (laid->demand->stagger == 0)
        return;
    if (row->below >= 0)
        row_joints(laid, row->below, out);
    int middle = out->count;
    if (row->above >= 0)
        row_joints(laid, row->above, out);
    for (int i = middle; i < out->count; i++) { /* insertion: both parts rise */
        Length x = out->at[i];
        int at = i;
        for (; at > 0 && out->at[at - 1] > x; at--)
            out->at[at] = out->at[at - 1];
        out->at[at] = x;
    }
}

/* Adds (or with -1 takes away) what the run's pieces count for, its pairs with the rows beside it included. */
static void tally(Laid *laid, int index, int sign)
{
    const Demand *demand = laid->demand;
    const Run *run = &demand->runs[index];
    const Cover *cover = &laid->covers[index];
    LengthList *near = &laid->near, *joints = &laid->joints;
    laid_near(laid, index, near);
    joints->count = 0;
    laid_joints(laid, index, joints);
    int breaks = 0;
    for (int i = 0; i < joints->count; i++) {
        breaks += demand_near(near, joints->at[i], demand->stagger);
        if (demand->on_studs && !demand_at_stud(demand, run, joints->at[i]))
            breaks++;
    }
    for (int i = 0; i < cover->count; i++) {
        Length length = cover->at[i].right - cover->at[i].left;
        laid->bare -= sign * length;
        if (length < run->shortest)
            breaks++;
    }
    laid->breaks += sign * breaks;
    laid->pieces += sign * cover->count;
}

void laid_clear(Laid *laid, int index)
{
    Cover *cover = &laid->covers[index];
    if (cover->count == 0)
        return;
    tally(laid, index, -1);
    for (int i = 0; i < cover->count; i++)
        pile_mend(laid->pile, cover->at[i].span, cover->at[i].right - cover->at[i].left, index);
    cover->count = 0;
}

void laid_set(Laid *laid, int index, const Placed *pieces, int count)
{
    Cover *cover = &laid->covers[index];
    laid_clear(laid, index);
    while (cover->room < count)
        *arena_push(laid->arena, cover) = (Placed){0};
    cover->count = count;
    if (count == 0)
        return;
    memcpy(cover->at, pieces, (size_t)count * sizeof *pieces);
    for (int i = 0; i < count; i++)
        pile_cut(laid->pile, pieces[i].span, pieces[i].right - pieces[i].left, index);
    tally(laid, index, 1);
}

Cost laid_cost(const Laid *laid)
{
    return (Cost){.shortfall = laid->bare + laid->breaks * BREAK_COST,
                  .length_opened = laid->pile->length_opened,
                  .boards_opened = laid->pile->boards_opened,
                  .pieces = laid->pieces};
}
