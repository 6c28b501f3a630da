/*
 *     base ──record 1──> plan ──record 2──> plan ──board gone──> plan        `plan`, one event after the other
 *              as planned: the piece is marked     │
 *                                                  └ not as planned: mended around the pieces held on to, ever fewer
 *                                                    of them (steady/held.h), until the shortfall is as small as that
 * of a plan made of all that is left
 *
 * Invariants: `plan` is that after the first `records` records and all boards gone or found by then, its pieces
 * numbered, with no findings; `laid` is the layout that it stands on; `solve` is the stepper under way, NULL between
 * two events.
 */
#include "fill/steady/in_force.h"

#include "fill/breaks.h"
#include "fill/closers.h"
#include "fill/relax/bound.h"
#include "fill/report.h"
#include "fill/report_findings.h"
#include "fill/solve.h"
#include "fill/steady/held.h"
#include "fill/steady/numbers.h"

#include <limits.h>

/* One piece in so many: where fewer could be held on to, nearly all changed in the end (bench-steady). */
enum { WORTH_HOLDING = 4 };

struct InForce {
    Arena *arena;
    const Layout *layout; /* of the whole wall */
    const Demand *demand;
    Wall *base_wall;  /* the wall without events */
    const Plan *base; /* its plan; NULL until it is known */
    const Layout *laid;
    Plan *plan;
    bool *hangs;   /* of each of its pieces: it hangs or is cut */
    HungWalk walk; /* records applied */
    int records;
    bool begun; /* boards gone or found before any record were seen to */
    Numbers numbers;

    /* the event under way */
    Solve *solve;
    Event event;
    bool anew_asked;
    bool asks_all; /* the solve under way is of all that is left */
    LetGo let_go;
    int can_stay;       /* pieces that nothing hinders from staying where they are */
    const Plan *mended; /* the last mend; NULL where none was made yet */
    const Plan *anew;   /* made of all that is left; NULL until it is known */
};

/* ---- walls ---- */

/* The wall before anything happened, as it was printed: every board that will be gone is there, none that will be
 * found. Those stand at the end of the stock; one that a hand wrote between others keeps its number and is not used. */
static Wall *wall_before_all(Arena *arena, const Wall *whole)
{
    Wall base = *whole;
    base.hung_pieces.count = base.hung_losses.count = base.hung_edges.count = 0;
    while (base.stock.count > 0 && base.stock.at[base.stock.count - 1].found_given)
        base.stock.count--;
    Wall *copy = wall_copy(arena, &base);
    for (int i = 0; i < copy->stock.count; i++) {
        copy->stock.at[i].gone_given = false;
        if (copy->stock.at[i].found_given)
            copy->stock.at[i].found = INT_MAX;
    }
    return copy;
}

/* Whether the wall has all records walked, perhaps more. */
static bool has_all(const Wall *wall, const HungWalk *walk)
{
    return walk->next[HUNG_PIECE] <= wall->hung_pieces.count && walk->next[HUNG_LOSS] <= wall->hung_losses.count &&
           walk->next[HUNG_EDGE] <= wall->hung_edges.count;
}

/* The wall after the records walked, all of which it has. */
static Wall *wall_after(Arena *arena, const Wall *whole, const HungWalk *walk)
{
    Wall after = *whole;
    after.hung_pieces.count = walk->next[HUNG_PIECE];
    after.hung_losses.count = walk->next[HUNG_LOSS];
    after.hung_edges.count = walk->next[HUNG_EDGE];
    return wall_copy(arena, &after);
}

static const Layout *lay_out(Arena *arena, const Wall *wall)
{
    Err err;
    return layout_wall_at(arena, wall, wall->start, &err);
}

/* Gives the records of pieces that hang as planned the plan's own figures: what was written may be rounded. */
static void take_planned_figures(const InForce *in_force, Wall *wall)
{
    bool *taken = arena_array(in_force->arena, bool, in_force->plan->piece_count + 1);
    for (int i = 0; i < wall->hung_pieces.count; i++) {
        HungPiece *record = &wall->hung_pieces.at[i];
        int index = same_recorded(in_force->laid, in_force->plan, record, &in_force->demand->hung[i], taken);
        if (index < 0) {
            record->offset = record->offset_given ? record->offset : in_force->demand->hung[i].offset;
            record->offset_given = true;
            continue;
        }
        taken[index] = true;
        const Piece *piece = &in_force->plan->pieces[index];
        record->left = piece->left;
        record->right = piece->right;
        record->offset_given = true;
        record->closer = piece->closer;
        record->exact = true;
        record->offset = piece->offset;
    }
}

static void mark(InForce *in_force, int index, const HungPiece *record)
{
    Piece *piece = &in_force->plan->pieces[index];
    in_force->hangs[index] = true;
    piece->hung = true;
    piece->cut = record->state == PIECE_CUT;
}

/* ---- does an event change anything ---- */

static bool any_takes_lost_wood(const InForce *in_force, const Wall *wall, int records)
{
    for (int i = 0; i < in_force->plan->piece_count; i++)
        if (held_lost(wall, in_force->walk.next[HUNG_LOSS], records, &in_force->plan->pieces[i]))
            return true;
    return false;
}

static bool any_found(const Wall *wall, int records)
{
    for (int i = 0; i < wall->stock.count; i++)
        if (wall->stock.at[i].found_given && wall->stock.at[i].found == records)
            return true;
    return false;
}

/* ---- mending ---- */

/* Begins to plan around what hangs and, unless all is asked for, what is held on to. False where that cannot be laid
 * out, or where the plan of all that is left is known and so little would be held on to that it changes little more. */
static bool begin_solve(InForce *in_force)
{
    Wall *wall = wall_copy(in_force->arena, in_force->event.wall);
    if (!in_force->asks_all) {
        const int held = held_add(in_force->arena, &in_force->event, &in_force->let_go, wall);
        if (in_force->let_go.distance == LET_NOTHING)
            in_force->can_stay = held;
        if (in_force->anew != NULL && held <= in_force->can_stay / WORTH_HOLDING)
            return false;
    }
    const Layout *laid = lay_out(in_force->arena, wall);
    if (laid == NULL)
        return false;
    in_force->solve = solve_new(laid);
    return true;
}

/* The bound over plans that keep all that hangs, where what is held on to did not count. */
static void set_bound(const InForce *in_force, Plan *plan)
{
    if (in_force->anew != NULL && in_force->anew->bound_known && plan->shortfall == 0 &&
        in_force->anew->shortfall == 0 && plan->closers == in_force->anew->closers) {
        plan->bound_known = true;
        plan->length_bound = in_force->anew->length_bound;
        plan->boards_bound = in_force->anew->boards_bound;
        return;
    }
    Arena *arena = arena_new();
    const Layout *laid = lay_out(arena, in_force->event.wall);
    plan->bound_known = laid != NULL;
    if (laid != NULL) {
        Demand *demand = demand_new(arena, laid);
        const Supply *supply = supply_new(arena, demand);
        Bound bound = bound_covered(demand, supply, demand->total - plan->bare_length + plan->closers);
        plan->length_bound = bound.length;
        plan->boards_bound = bound.boards;
        plan->bound_known = bound.length <= plan->length_opened && bound.boards <= plan->boards_opened;
    }
    arena_free(arena);
}

/* ---- one event after the other ---- */

/* From here on the plan is this one. */
static void set_plan(InForce *in_force, Plan *plan)
{
    in_force->plan = plan;
    in_force->hangs = arena_array(in_force->arena, bool, plan->piece_count + 1);
    for (int i = 0; i < plan->piece_count; i++)
        in_force->hangs[i] = plan->pieces[i].hung;
}

static void take(InForce *in_force, const Plan *found)
{
    Plan *plan = plan_copy(in_force->arena, found);
    if (in_force->anew_asked)
        numbers_anew(&in_force->event, plan, &in_force->numbers);
    else
        numbers_keep(in_force->arena, &in_force->event, plan, &in_force->numbers);
    closers_settle(in_force->event.after, plan);
    if (in_force->let_go.distance != LET_ALL)
        set_bound(in_force, plan);
    set_plan(in_force, plan);
    in_force->laid = in_force->event.after;
}

/* Takes what was found, as one that let go of so much. */
static void settle(InForce *in_force, const Plan *found, bool of_all)
{
    in_force->let_go.distance = of_all ? LET_ALL : LET_NOTHING;
    take(in_force, found);
}

/* Whether no plan made of all that is left is known to fall less short. */
static bool is_good_enough(const InForce *in_force, const Plan *mended)
{
    return mended->shortfall == 0 || (in_force->anew != NULL && mended->shortfall <= in_force->anew->shortfall);
}

/* What came of the fill under way: taken, or another one is begun. */
static void weigh(InForce *in_force, const Plan *found)
{
    Arena *arena = in_force->arena;
    const bool of_all = in_force->asks_all;
    if (of_all)
        in_force->anew = found;
    else {
        let_go_trouble(arena, &in_force->event, found, in_force->mended == NULL, &in_force->let_go);
        in_force->mended = found;
    }
    if (in_force->anew_asked || in_force->mended == NULL) {
        settle(in_force, in_force->anew, true);
        return;
    }
    if (is_good_enough(in_force, in_force->mended)) {
        settle(in_force, in_force->mended, false);
        return;
    }
    in_force->asks_all = in_force->anew == NULL; /* how small the shortfall can be */
    if (!in_force->asks_all)
        let_go_more(&in_force->event, &in_force->let_go);
    if (in_force->let_go.distance == LET_ALL)
        settle(in_force, in_force->anew, true);
    else if (!begin_solve(in_force))
        settle(in_force, in_force->anew != NULL ? in_force->anew : in_force->mended, in_force->anew != NULL);
}

/* Whether the next event, which is `in_force->walk` now, changes the plan; marks what hangs as planned. */
static bool changes(InForce *in_force, bool is_record)
{
    const Wall *whole = in_force->layout->wall;
    bool change = false;
    in_force->anew_asked = false;
    if (is_record && in_force->walk.kind == HUNG_PIECE) {
        const HungPiece *record = &whole->hung_pieces.at[in_force->walk.index];
        const Hung *hung = &in_force->demand->hung[in_force->walk.index];
        in_force->anew_asked = record->plan == PLAN_ANEW;
        int piece = same_recorded(in_force->laid, in_force->plan, record, hung, in_force->hangs);
        if (piece >= 0)
            mark(in_force, piece, record);
        else
            change = hung->fault == HUNG_FITS;
    } else if (is_record && in_force->walk.kind == HUNG_EDGE) {
        in_force->anew_asked = whole->hung_edges.at[in_force->walk.index].plan == PLAN_ANEW;
        change = true;
    } else if (is_record) {
        in_force->anew_asked = whole->hung_losses.at[in_force->walk.index].plan == PLAN_ANEW;
    }
    return change || in_force->anew_asked || any_takes_lost_wood(in_force, whole, in_force->records) ||
           (in_force->plan->shortfall > 0 && any_found(whole, in_force->records));
}

/* Goes on to the next event that changes something and begins to mend it; false where there is none left. */
static bool next_event(InForce *in_force)
{
    for (;;) {
        bool is_record = in_force->begun;
        if (is_record && !hung_walk(in_force->layout->wall, &in_force->walk))
            return false;
        in_force->begun = true;
        in_force->records += is_record;
        if (!changes(in_force, is_record))
            continue;
        Wall *wall = wall_after(in_force->arena, in_force->layout->wall, &in_force->walk);
        take_planned_figures(in_force, wall);
        in_force->event = (Event){.demand = in_force->demand,
                                  .plan = in_force->plan,
                                  .before = in_force->laid,
                                  .wall = wall,
                                  .after = lay_out(in_force->arena, wall),
                                  .records = in_force->records};
        in_force->asks_all = in_force->anew_asked;
        in_force->mended = in_force->anew = NULL;
        if (in_force->event.after == NULL)
            continue;
        in_force->let_go = let_go_nothing(in_force->arena, &in_force->event);
        if (begin_solve(in_force))
            return true;
    }
}

/* A copy that knows of all boards of the whole wall, those that are found later unopened. */
static Plan *with_all_boards(const InForce *in_force, const Plan *base)
{
    Arena *arena = in_force->arena;
    Plan *plan = plan_copy(arena, base);
    const int count = wall_board_count(in_force->layout->wall);
    BoardUse *boards = arena_array(arena, BoardUse, count + 1);
    for (int i = 0; i < count; i++)
        boards[i] = i < plan->board_count ? plan->boards[i] : (BoardUse){0};
    plan->boards = boards;
    plan->board_count = count;
    return plan;
}

static void take_base(InForce *in_force, const Plan *base)
{
    in_force->base = plan_copy(in_force->arena, base);
    set_plan(in_force, with_all_boards(in_force, base));
    in_force->numbers.highest = base->piece_count;
}

/* Takes over what came of the first events where they are the same. */
static void go_on_from(InForce *in_force, const InForce *before)
{
    if (!in_force_holds(before) || !has_all(in_force->layout->wall, &before->walk))
        return;
    Arena *arena = in_force->arena;
    const Wall *after = wall_after(arena, in_force->layout->wall, &before->walk);
    if (hung_count(after) != before->records || !wall_equal(after, before->layout->wall))
        return;
    in_force->laid = lay_out(arena, after);
    set_plan(in_force, plan_copy(arena, before->plan));
    in_force->numbers = numbers_copy(arena, &before->numbers);
    in_force->walk = before->walk;
    in_force->records = before->records;
    in_force->begun = true;
}

InForce *in_force_new(const Layout *layout, const Demand *demand, KnownPlan known)
{
    const Wall *whole = layout->wall;
    bool happened = hung_count(whole) > 0;
    for (int i = 0; i < whole->stock.count; i++)
        happened |= whole->stock.at[i].gone_given || whole->stock.at[i].found_given;
    if (!happened)
        return NULL;
    Arena *arena = arena_new();
    InForce *in_force = arena_one(arena, InForce);
    in_force->arena = arena;
    in_force->layout = layout;
    in_force->demand = demand;
    in_force->base_wall = wall_before_all(arena, whole);
    in_force->laid = lay_out(arena, in_force->base_wall);
    if (in_force->laid == NULL) { /* then no plan was in force: all is planned around what hangs */
        arena_free(arena);
        return NULL;
    }
    if (known.wall != NULL && wall_equal(in_force->base_wall, known.wall)) {
        take_base(in_force, known.plan);
        if (known.in_force != NULL)
            go_on_from(in_force, known.in_force);
    } else
        in_force->solve = solve_new(in_force->laid);
    return in_force;
}

void in_force_free(InForce *in_force)
{
    if (in_force == NULL)
        return;
    solve_free(in_force->solve);
    arena_free(in_force->arena);
}

bool in_force_step(InForce *in_force, int steps)
{
    if (in_force->solve == NULL)
        return !next_event(in_force);
    if (!solve_step(in_force->solve, steps))
        return false;
    Solve *done = in_force->solve;
    const Plan *found = solve_plan(done, in_force->arena);
    in_force->solve = NULL;
    if (in_force->base == NULL)
        take_base(in_force, found);
    else
        weigh(in_force, found);
    solve_free(done);
    return false;
}

bool in_force_holds(const InForce *in_force)
{
    return in_force->plan != NULL && in_force->solve == NULL &&
           in_force->records == hung_count(in_force->layout->wall) && in_force->begun;
}

KnownPlan in_force_known(const InForce *in_force)
{
    return (KnownPlan){in_force->base_wall, in_force->base, in_force};
}

/* A break of hung pieces alone is none any more; all else of the plan is as it was. */
Plan *in_force_plan(const InForce *in_force, Arena *arena)
{
    const Demand *demand = in_force->demand;
    Plan *plan = plan_copy(arena, in_force->plan);
    Demand fitting = *demand; /* a piece of the plan fits, however near to the end of its segment it has a joint */
    fitting.hung = arena_array(arena, Hung, demand->hung_count);
    bool *taken = arena_array(arena, bool, plan->piece_count + 1); /* by a record before */
    for (int i = 0; i < demand->hung_count; i++) {
        int piece =
            same_recorded(in_force->laid, in_force->plan, &demand->wall->hung_pieces.at[i], &demand->hung[i], taken);
        fitting.hung[i] = demand->hung[i];
        if (piece >= 0) {
            const Piece *as_planned = &plan->pieces[piece];
            const Stretch *across = fitting.hung[i].across;
            fitting.hung[i].fault = HUNG_FITS;
            if (across != NULL && (as_planned->offset >= across->to ||
                                   as_planned->offset + as_planned->right - as_planned->left <= across->from))
                fitting.hung[i].across = NULL;
            taken[piece] = true;
        }
    }
    closers_settle(demand->layout, plan);
    report_boards(arena, demand->wall, plan);
    Breaks breaks = breaks_find(arena, demand->layout, plan);
    plan->breaks = breaks.count;
    plan->shortfall = plan->bare_length + breaks.weighed * BREAK_COST;
    plan->length_least = in_force->base != NULL ? in_force->base->length_least : 0;
    plan->changed_count = in_force->numbers.changed_count;
    plan->changed = arena_array(arena, int, plan->changed_count + 1); /* it outlives the numbers */
    for (int i = 0; i < plan->changed_count; i++)
        plan->changed[i] = in_force->numbers.changed[i];
    report_findings(arena, &fitting, &breaks, plan);
    report_changed(arena, demand, plan);
    return plan;
}
