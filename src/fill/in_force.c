/*
 *     hung:  - a   - b   - c {plan: anew}   - d   - e
 *            |_______|   |______________________|
 *            before      since: each must be in the plan made around `before`
 *
 * Invariants: until it is known, `base` is that plan's stepper, on a wall and a layout of our own; then `plan` is a
 * copy of what it made, with no findings, and NULL where it does not hold.
 */
#include "fill/in_force.h"

#include "fill/breaks.h"
#include "fill/report_findings.h"
#include "fill/solve.h"

struct InForce {
    Arena *arena;
    const Demand *demand;
    Wall *wall; /* with the pieces hung before the plan in force was made */
    Layout *base_layout;
    Solve *base; /* NULL once it is known */
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

/* What was found is ours where it holds. */
static void conclude(InForce *in_force, const Plan *found)
{
    const Demand *demand = in_force->demand;
    int *pieces = find_pieces(in_force->arena, found, demand);
    for (int i = 0; i < demand->hung_count; i++)
        if (pieces[i] < 0 && demand->hung[i].fault == HUNG_FITS) {
            in_force->breach = i;
            return;
        }
    in_force->pieces = pieces;
    in_force->plan = plan_copy(in_force->arena, found);
}

InForce *in_force_new(const Layout *layout, const Demand *demand, KnownPlan known)
{
    const Wall *whole = layout->wall;
    int before = count_before(&whole->hung_pieces);
    Wall base = *whole;
    base.hung_pieces.count = before;
    bool is_known = known.wall != NULL && wall_equal(&base, known.wall);
    if (before == whole->hung_pieces.count && !is_known)
        return NULL; /* the plan in force is the one to be made */
    Arena *arena = arena_new();
    InForce *in_force = arena_one(arena, InForce);
    in_force->arena = arena;
    in_force->demand = demand;
    in_force->breach = -1;
    in_force->wall = wall_copy(arena, &base);
    if (is_known) {
        conclude(in_force, known.plan);
        return in_force;
    }
    Err err;
    in_force->base_layout = layout_wall(arena, in_force->wall, &err);
    if (in_force->base_layout == NULL) { /* then no plan was in force: all is planned around what hangs */
        arena_free(arena);
        return NULL;
    }
    in_force->base = solve_new(in_force->base_layout);
    return in_force;
}

void in_force_free(InForce *in_force)
{
    if (in_force == NULL)
        return;
    solve_free(in_force->base);
    arena_free(in_force->arena);
}

bool in_force_step(InForce *in_force, int steps)
{
    if (in_force->base == NULL)
        return true;
    if (!solve_step(in_force->base, steps))
        return false;
    conclude(in_force, solve_plan(in_force->base, in_force->arena));
    solve_free(in_force->base);
    in_force->base = NULL;
    return true;
}

bool in_force_holds(const InForce *in_force)
{
    return in_force->plan != NULL;
}

int in_force_breach(const InForce *in_force)
{
    return in_force->breach;
}

KnownPlan in_force_known(const InForce *in_force)
{
    return (KnownPlan){in_force->wall, in_force->plan};
}

/* A break of hung pieces alone is none any more; all else of the plan is as it was. */
Plan *in_force_plan(const InForce *in_force, Arena *arena)
{
    const Demand *demand = in_force->demand;
    Plan *plan = plan_copy(arena, in_force->plan);
    Demand fitting = *demand; /* a piece of the plan fits, however near to the end of its segment it has a joint */
    fitting.hung = arena_array(arena, Hung, demand->hung_count);
    for (int i = 0; i < demand->hung_count; i++) {
        fitting.hung[i] = demand->hung[i];
        if (in_force->pieces[i] < 0)
            continue;
        plan->pieces[in_force->pieces[i]].hung = true;
        fitting.hung[i].fault = HUNG_FITS;
    }
    Breaks breaks = breaks_find(arena, demand->layout, plan);
    plan->breaks = breaks.count;
    plan->shortfall = plan->bare_length + plan->breaks * BREAK_COST;
    report_findings(arena, &fitting, &breaks, plan);
    report_bound(arena, (Bound){plan->length_bound, plan->boards_bound}, plan);
    return plan;
}
