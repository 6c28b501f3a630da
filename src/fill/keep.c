/*
 *     hung:  - a   - b   - c {plan: anew}   - d   - e
 *            |_______|   |______________________|
 *            before      since: each must be in the plan made around `before`
 *
 * Invariants: until it is known, `base` is that plan's stepper, on a wall and a layout of our own; then `plan` is a
 * copy of what it made, with no findings, and NULL where it does not hold.
 */
#include "fill/keep.h"

#include "fill/breaks.h"
#include "fill/fill.h"
#include "fill/tell_findings.h"

#include <string.h>

struct Keep {
    Arena *arena;
    const Demand *demand;
    Wall *wall; /* with the pieces hung before the plan in force was made */
    Layout *base_layout;
    Fill *base; /* NULL once it is known */
    Plan *plan;
    int *pieces; /* of the plan, the one that each record is of; -1 where none */
    int breach;  /* the first record that is none of them, -1 where there is none, or it is not known */
};

/* How many records the plan in force was made around. */
static int count_before(const HungPieces *pieces)
{
    int before = pieces->count;
    while (before > 0 && pieces->at[before - 1].plan != PLAN_ANEW)
        before--;
    return before > 0 ? before - 1 : 0;
}

/* A record is of the piece that lies where it is written, or where its ends are taken to lie. */
static bool is_of(const Hung *hung, const HungPiece *record, const Piece *piece)
{
    return piece->face == hung->face && piece->course == hung->course && piece->segment == hung->segment &&
           piece->offset == hung->offset &&
           ((piece->left == record->left && piece->right == record->right) ||
            (piece->left == hung->left && piece->right == hung->right));
}

/* For each record the plan's piece that it is of, -1 where there is none that no record before it is of. */
static int *find_pieces(Arena *arena, const Plan *plan, const Demand *demand)
{
    int *found = arena_array(arena, int, demand->hung_count);
    bool *taken = arena_array(arena, bool, plan->piece_count);
    for (int i = 0; i < demand->hung_count; i++) {
        const Hung *hung = &demand->hung[i];
        found[i] = -1;
        if (hung->board < 1 || hung->board > plan->board_count)
            continue;
        const BoardUse *use = &plan->boards[hung->board - 1];
        for (int j = use->first; j < use->first + use->count && found[i] < 0; j++) {
            int piece = plan->by_board[j];
            if (!taken[piece] && is_of(hung, &demand->wall->hung_pieces.at[i], &plan->pieces[piece]))
                found[i] = piece;
        }
        if (found[i] >= 0)
            taken[found[i]] = true;
    }
    return found;
}

#define COPY(arena, Type, from, count) \
    memcpy(arena_array((arena), Type, (count)), (from), (size_t)(count) * sizeof(Type))

static Plan *plan_copy(Arena *arena, const Plan *plan)
{
    Plan *copy = arena_one(arena, Plan);
    *copy = *plan;
    copy->findings = (Findings){0};
    copy->anew = false;
    if (plan->piece_count > 0) {
        copy->pieces = COPY(arena, Piece, plan->pieces, plan->piece_count);
        copy->by_board = COPY(arena, int, plan->by_board, plan->piece_count);
    }
    if (plan->bare_count > 0)
        copy->bare = COPY(arena, Bare, plan->bare, plan->bare_count);
    if (plan->board_count > 0)
        copy->boards = COPY(arena, BoardUse, plan->boards, plan->board_count);
    return copy;
}

/* What was found is ours where it holds. */
static void conclude(Keep *keep, const Plan *found)
{
    const Demand *demand = keep->demand;
    int *pieces = find_pieces(keep->arena, found, demand);
    for (int i = 0; i < demand->hung_count; i++)
        if (pieces[i] < 0 && demand->hung[i].fault == HUNG_FITS) {
            keep->breach = i;
            return;
        }
    keep->pieces = pieces;
    keep->plan = plan_copy(keep->arena, found);
}

Keep *keep_new(const Layout *layout, const Demand *demand, InForce known)
{
    const Wall *whole = layout->wall;
    int before = count_before(&whole->hung_pieces);
    Wall base = *whole;
    base.hung_pieces.count = before;
    bool is_known = known.wall != NULL && wall_equal(&base, known.wall);
    if (before == whole->hung_pieces.count && !is_known)
        return NULL; /* the plan in force is the one to be made */
    Arena *arena = arena_new();
    Keep *keep = arena_one(arena, Keep);
    keep->arena = arena;
    keep->demand = demand;
    keep->breach = -1;
    keep->wall = wall_copy(arena, &base);
    if (is_known) {
        conclude(keep, known.plan);
        return keep;
    }
    Err err;
    keep->base_layout = layout_wall(arena, keep->wall, &err);
    if (keep->base_layout == NULL) { /* then no plan was in force: all is planned around what hangs */
        arena_free(arena);
        return NULL;
    }
    keep->base = fill_begin_anew(keep->base_layout);
    return keep;
}

void keep_free(Keep *keep)
{
    if (keep == NULL)
        return;
    fill_free(keep->base);
    arena_free(keep->arena);
}

bool keep_step(Keep *keep, int steps)
{
    if (keep->base == NULL)
        return true;
    if (!fill_step(keep->base, steps))
        return false;
    conclude(keep, fill_plan(keep->base));
    fill_free(keep->base);
    keep->base = NULL;
    return true;
}

bool keep_holds(const Keep *keep)
{
    return keep->plan != NULL;
}

int keep_breach(const Keep *keep)
{
    return keep->breach;
}

InForce keep_in_force(const Keep *keep)
{
    return (InForce){keep->wall, keep->plan};
}

/* A break of hung pieces alone is none any more; all else of the plan is as it was. */
Plan *keep_plan(const Keep *keep, Arena *arena)
{
    const Demand *demand = keep->demand;
    Plan *plan = plan_copy(arena, keep->plan);
    Demand fitting = *demand; /* a piece of the plan fits, however near to the end of its segment it has a joint */
    fitting.hung = arena_array(arena, Hung, demand->hung_count);
    for (int i = 0; i < demand->hung_count; i++) {
        fitting.hung[i] = demand->hung[i];
        if (keep->pieces[i] < 0)
            continue;
        plan->pieces[keep->pieces[i]].hung = true;
        fitting.hung[i].fault = HUNG_FITS;
    }
    Breaks breaks = breaks_find(arena, demand->layout, plan);
    plan->breaks = breaks.count;
    plan->shortfall = plan->bare_length + plan->breaks * BREAK_COST;
    tell_findings(arena, &fitting, &breaks, plan);
    tell_bound(arena, (Bound){plan->length_bound, plan->boards_bound}, plan);
    return plan;
}
