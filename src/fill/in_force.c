/*
 *     base ──record 1──> plan ──record 2──> plan ──board gone──> plan        `plan`, one event after the other
 *              as planned: the piece is marked     │
 *                                                  └ not as planned: mended around the pieces held on to, ever fewer
 *                                                    of them, until the shortfall is as small as that of a plan made
 *                                                    of all that is left
 *
 * Invariants: `plan` is that after the first `records` records and all boards gone or found by then, its pieces
 * numbered, with no findings; `laid` is the layout that it stands on; `solve` is the stepper under way, NULL between
 * two events.
 */
#include "fill/in_force.h"

#include "fill/breaks.h"
#include "fill/closers.h"
#include "fill/relax/bound.h"
#include "fill/report.h"
#include "fill/report_findings.h"
#include "fill/solve.h"

#include <limits.h>
#include <stdlib.h>

/* What is let go of when an event is mended: nothing that can stay; then the courses that it touches; then those beside
 * them too; then all but what hangs. */
enum { LET_NOTHING, LET_COURSES, LET_NEIGHBORS, LET_ALL };

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
    bool begun;  /* boards gone or found before any record were seen to */
    int highest; /* number ever given */
    int *changed;
    int changed_count;

    /* the event under way */
    Solve *solve;
    Wall *event_wall; /* after it */
    const Layout *event_laid;
    bool anew_asked;
    int level;
    const Plan *mended; /* the best mend so far, and its level's */
    const Plan *anew;   /* made of all that is left; NULL until it is known */
    bool making_anew;
};

/* ---- walls ---- */

/* The wall before anything happened: every board that will be gone is there, none that will be found. */
static Wall *wall_before_all(Arena *arena, const Wall *whole)
{
    Wall base = *whole;
    base.hung_pieces.count = base.hung_losses.count = base.hung_edges.count = 0;
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

/* ---- the same piece ---- */

static bool same_mark(Length a, Length b, Length round)
{
    return length_round(a, round) == length_round(b, round);
}

static int64_t course_number(const Layout *layout, const Piece *piece)
{
    return layout->faces[piece->face].courses[piece->course].number;
}

static bool is_same(const Layout *layout, const Piece *piece, const Layout *other_layout, const Piece *other)
{
    Length round = layout->wall->round;
    return piece->face == other->face && piece->board == other->board &&
           course_number(layout, piece) == course_number(other_layout, other) &&
           same_mark(piece->offset, other->offset, round) && same_mark(piece->left, other->left, round) &&
           same_mark(piece->right, other->right, round);
}

/* ---- a record of a piece ---- */

/* Whether the record tells of the piece: to the nanometer, or as near as marks tell. */
static bool tells_of(const InForce *in_force, const HungPiece *record, const Hung *hung, const Piece *piece,
                     Length round)
{
    bool ends = (same_mark(piece->left, record->left, round) && same_mark(piece->right, record->right, round)) ||
                (same_mark(piece->left, hung->left, round) && same_mark(piece->right, hung->right, round));
    return ends && piece->face == hung->face && course_number(in_force->laid, piece) == record->course &&
           (!record->offset_given || same_mark(piece->offset, record->offset, round));
}

/* The plan's piece that the record tells of, one that is not taken by another record; -1 where there is none. Where the
 * record has no offset, any place on the board will do. */
static int piece_of_record(const InForce *in_force, const HungPiece *record, const Hung *hung, const bool *taken)
{
    const Plan *plan = in_force->plan;
    const Length rounds[] = {1, in_force->layout->wall->round};
    if (record->board < 1 || record->board > plan->board_count)
        return -1;
    const BoardUse *use = &plan->boards[record->board - 1];
    for (int pass = 0; pass < 2; pass++)
        for (int i = use->first; i < use->first + use->count; i++) {
            int piece = plan->by_board[i];
            if (!taken[piece] && tells_of(in_force, record, hung, &plan->pieces[piece], rounds[pass]))
                return piece;
        }
    return -1;
}

/* Gives the records of pieces that hang as planned the plan's own figures: what was written may be rounded. */
static void take_planned_figures(const InForce *in_force, Wall *wall)
{
    bool *taken = arena_array(in_force->arena, bool, in_force->plan->piece_count + 1);
    for (int i = 0; i < wall->hung_pieces.count; i++) {
        HungPiece *record = &wall->hung_pieces.at[i];
        int index = piece_of_record(in_force, record, &in_force->demand->hung[i], taken);
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

/* Whether something planned lies on a board that gives no more pieces, or on wood that is lost. */
static bool takes_lost_wood(const InForce *in_force, const Wall *wall, int records, const Piece *piece)
{
    if (piece->hung)
        return false;
    if (!wall_stock_usable(wall_board(wall, piece->board), records))
        return true;
    Length from = piece->offset - piece->left_kerf;
    Length to = piece->offset + piece->right - piece->left + piece->closer + piece->right_kerf;
    for (int i = 0; i < in_force->walk.next[HUNG_LOSS]; i++) {
        const HungLoss *loss = &wall->hung_losses.at[i];
        if (loss->board == piece->board && loss->offset < to && loss->offset + loss->length > from)
            return true;
    }
    return false;
}

static bool any_takes_lost_wood(const InForce *in_force, const Wall *wall, int records)
{
    for (int i = 0; i < in_force->plan->piece_count; i++)
        if (takes_lost_wood(in_force, wall, records, &in_force->plan->pieces[i]))
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

static bool touches(const Layout *laid, int face, int course, const bool *const *courses, int level)
{
    int from = course - (level == LET_NEIGHBORS), to = course + (level == LET_NEIGHBORS);
    for (int i = from; i <= to; i++)
        if (i >= 0 && i < laid->faces[face].course_count && courses[face][i])
            return true;
    return false;
}

/* Courses of the event's layout where the mend so far leaves wall bare or has pieces that the plan had not, or where
 * nothing was tried yet those whose pieces cannot stay. */
static bool **touched_courses(Arena *arena, const InForce *in_force, const Plan *mended)
{
    const Layout *laid = in_force->event_laid;
    int faces = laid->wall->faces.count;
    bool **courses = arena_array(arena, bool *, faces);
    for (int i = 0; i < faces; i++)
        courses[i] = arena_array(arena, bool, laid->faces[i].course_count + 1);
    for (int i = 0; i < mended->bare_count; i++)
        courses[mended->bare[i].face][mended->bare[i].course] = true;
    for (int i = 0; i < mended->piece_count; i++) {
        const Piece *piece = &mended->pieces[i];
        const BoardUse *use = &in_force->plan->boards[piece->board - 1];
        bool same = false;
        for (int j = use->first; j < use->first + use->count && !same; j++)
            same = is_same(laid, piece, in_force->laid, &in_force->plan->pieces[in_force->plan->by_board[j]]);
        if (!same)
            courses[piece->face][piece->course] = true;
    }
    return courses;
}

/* A piece of the plan as it comes to lie after the event. */
typedef struct Held {
    bool stays;
    int course, segment; /* of its face, after the event */
    Length left, right, left_kerf, right_kerf;
} Held;

/* The segment that the piece lies on for the greatest length, or -1. */
static int segment_under(const Course *course, const Piece *piece)
{
    int best = -1;
    Length most = 0;
    for (int i = 0; i < course->segment_count; i++) {
        const Segment *segment = &course->segments[i];
        Length from = piece->left > segment->left ? piece->left : segment->left;
        Length to = piece->right < segment->right ? piece->right : segment->right;
        if (to - from > most) {
            most = to - from;
            best = i;
        }
    }
    return best;
}

/* Whether a piece that hangs ends there. */
static bool ends_at_hung(const Demand *demand, const Piece *piece, int64_t course, const Wall *wall, Length x)
{
    for (int i = 0; i < wall->hung_pieces.count; i++) {
        const Hung *hung = &demand->hung[i];
        if (hung->face == piece->face && wall->hung_pieces.at[i].course == course &&
            (hung->left == x || hung->right == x))
            return true;
    }
    return false;
}

/* Where the end of a piece comes to be: at its segment's end where it was there, at its stud or at what hangs, else on
 * the nearest mark of the segment as it is now. */
static Length moved_end(const InForce *in_force, const Piece *piece, const Segment *old, const Segment *now, Length x)
{
    const Length round = in_force->layout->wall->round;
    if (x == old->left)
        return now->left;
    if (x == old->right)
        return now->right;
    const int64_t course = course_number(in_force->laid, piece);
    if (old->left == now->left || ends_at_hung(in_force->demand, piece, course, in_force->event_wall, x) ||
        pins_pinned(in_force->event_wall, piece->face, course, x))
        return x;
    if (in_force->demand->on_studs && (x - old->left) % round != 0)
        return x;
    return now->left + length_round(x - now->left, round);
}

/* What the blade takes and the board gives: whether a piece may lie between two others or a record and the ends. */
static bool fits_board(const InForce *in_force, const Piece *piece, const Held *held)
{
    const Wall *wall = in_force->event_wall;
    const Stock *stock = wall_board(wall, piece->board);
    Length from = piece->offset, to = piece->offset + held->right - held->left + piece->closer;
    if (from < wall->saw.square || to > stock->length - wall->saw.square)
        return false;
    for (int i = 0; i < stock->avoid.count; i++)
        if (from < stock->avoid.at[i].to && to > stock->avoid.at[i].from)
            return false;
    for (int i = 0; i < wall->hung_pieces.count; i++) {
        const HungPiece *record = &wall->hung_pieces.at[i];
        const Hung *hung = &in_force->demand->hung[i];
        if (record->board != piece->board || hung->fault != HUNG_FITS)
            continue;
        Length offset = record->offset_given ? record->offset : hung->offset;
        Length length = record->exact ? record->right - record->left : hung->right - hung->left;
        Length end = offset + length + record->closer;
        Length before = hung->right_kerf > held->left_kerf ? hung->right_kerf : held->left_kerf;
        Length behind = hung->left_kerf > held->right_kerf ? hung->left_kerf : held->right_kerf;
        if (from < end + before && offset < to + behind)
            return false;
    }
    return true;
}

/* Whether the piece can still be cut: its course may have become higher than its board is wide, or it may fall apart.
 */
static bool fits_wall(const InForce *in_force, const Piece *piece, const Course *course, const Held *held)
{
    const Wall *wall = in_force->event_wall;
    const Stock *stock = wall_board(wall, piece->board);
    Length width = stock->width_given ? stock->width : wall_widest(wall);
    return held->left < held->right && layout_need(wall, course, held->left, held->right) <= width &&
           layout_whole(course, held->left, held->right) &&
           pins_allow(wall, piece->face, course->number, &course->segments[held->segment], held->left, held->right);
}

/* The piece after the event, whatever lies beside it on its board. */
static Held hold_piece(const InForce *in_force, const Piece *piece)
{
    Held held = {.course = -1, .segment = -1};
    const FaceLayout *face = &in_force->event_laid->faces[piece->face];
    if (piece->hung || takes_lost_wood(in_force, in_force->event_wall, in_force->records, piece))
        return held;
    held.course = layout_course_index(face, course_number(in_force->laid, piece));
    if (held.course < 0)
        return held;
    const Course *course = &face->courses[held.course];
    held.segment = segment_under(course, piece);
    if (held.segment < 0)
        return held;
    const Segment *now = &course->segments[held.segment];
    const Segment *old = &in_force->laid->faces[piece->face].courses[piece->course].segments[piece->segment];
    held.left = moved_end(in_force, piece, old, now, piece->left);
    held.right = moved_end(in_force, piece, old, now, piece->right);
    held.left_kerf = held.left == now->left ? now->left_kerf : in_force->demand->kerf;
    held.right_kerf = held.right == now->right ? now->right_kerf : in_force->demand->kerf;
    held.stays = held.left >= now->left && held.right <= now->right && fits_wall(in_force, piece, course, &held) &&
                 fits_board(in_force, piece, &held);
    return held;
}

/* Every piece of the plan after the event; of two that have come too near on their board the second goes. */
static Held *hold_pieces(const InForce *in_force, Arena *arena)
{
    const Plan *plan = in_force->plan;
    Held *held = arena_array(arena, Held, plan->piece_count + 1);
    for (int i = 0; i < plan->piece_count; i++)
        held[i] = hold_piece(in_force, &plan->pieces[i]);
    for (int i = 0; i < plan->board_count; i++) {
        const BoardUse *use = &plan->boards[i];
        const Held *before = NULL;
        Length end = 0;
        for (int j = use->first; j < use->first + use->count; j++) {
            const Piece *piece = &plan->pieces[plan->by_board[j]];
            Held *here = &held[plan->by_board[j]];
            if (!here->stays)
                continue;
            if (before != NULL) {
                Length kerf = before->right_kerf > here->left_kerf ? before->right_kerf : here->left_kerf;
                here->stays = piece->offset >= end + kerf;
            }
            if (here->stays) {
                before = here;
                end = piece->offset + here->right - here->left + piece->closer;
            }
        }
    }
    return held;
}

/* Adds to the wall's records those pieces of the plan that are held on to. */
static void hold_on(const InForce *in_force, Arena *arena, Wall *wall)
{
    const Plan *plan = in_force->plan;
    const bool lets_go = in_force->mended != NULL && in_force->level > LET_NOTHING;
    bool **courses = lets_go ? touched_courses(arena, in_force, in_force->mended) : NULL;
    const Held *held = hold_pieces(in_force, arena);
    int place = hung_next_place(wall);
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        if (!held[i].stays || (courses != NULL && touches(in_force->event_laid, piece->face, held[i].course,
                                                          (const bool *const *)courses, in_force->level)))
            continue;
        *arena_push(arena, &wall->hung_pieces) = (HungPiece){.face = wall->faces.at[piece->face].name,
                                                             .course = (int)course_number(in_force->laid, piece),
                                                             .left = held[i].left,
                                                             .right = held[i].right,
                                                             .board = piece->board,
                                                             .offset_given = true,
                                                             .offset = piece->offset,
                                                             .state = PIECE_PLANNED,
                                                             .exact = true,
                                                             .closer = piece->closer,
                                                             .place = place};
    }
}

/* Begins to plan around what hangs and, but for LET_ALL, what is held on to. False where that cannot be laid out. */
static bool begin_solve(InForce *in_force)
{
    Wall *wall = wall_copy(in_force->arena, in_force->event_wall);
    if (in_force->level < LET_ALL)
        hold_on(in_force, in_force->arena, wall);
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
    const Layout *laid = lay_out(arena, in_force->event_wall);
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

/* ---- numbers ---- */

typedef struct Numbered {
    int *old;    /* of each piece of the new plan: the same piece in the old one, -1 where there is none */
    bool *taken; /* of each piece of the old one: it is the same in the new */
} Numbered;

static Numbered find_same(Arena *arena, const InForce *in_force, const Plan *plan)
{
    const Plan *old = in_force->plan;
    Numbered same = {arena_array(arena, int, plan->piece_count), arena_array(arena, bool, old->piece_count)};
    for (int i = 0; i < plan->piece_count; i++) {
        const BoardUse *use = &old->boards[plan->pieces[i].board - 1];
        same.old[i] = -1;
        for (int j = use->first; j < use->first + use->count && same.old[i] < 0; j++) {
            int other = old->by_board[j];
            if (!same.taken[other] &&
                is_same(in_force->event_laid, &plan->pieces[i], in_force->laid, &old->pieces[other])) {
                same.old[i] = other;
                same.taken[other] = true;
            }
        }
    }
    return same;
}

static int ascending(const void *a, const void *b)
{
    int one = *(const int *)a, other = *(const int *)b;
    return (one > other) - (one < other);
}

/* Pieces that did not change keep their numbers; the others of a course take, from left to right, those that became
 * free there, then the next ones after the highest ever given. Free numbers are not used again. */
static void number_changed(InForce *in_force, Plan *plan)
{
    Arena *arena = arena_new();
    const Plan *old = in_force->plan;
    Numbered same = find_same(arena, in_force, plan);
    int *free_numbers = arena_array(arena, int, old->piece_count + 1);
    in_force->changed = arena_array(in_force->arena, int, plan->piece_count);
    in_force->changed_count = 0;
    for (int first = 0; first < plan->piece_count;) {
        const Piece *like = &plan->pieces[first];
        int64_t course = course_number(in_force->event_laid, like);
        int free_count = 0, used = 0, end = first;
        for (int i = 0; i < old->piece_count; i++)
            if (!same.taken[i] && old->pieces[i].face == like->face &&
                course_number(in_force->laid, &old->pieces[i]) == course)
                free_numbers[free_count++] = old->pieces[i].number;
        if (free_count > 1)
            qsort(free_numbers, (size_t)free_count, sizeof *free_numbers, ascending);
        for (; end < plan->piece_count && plan->pieces[end].face == like->face &&
               plan->pieces[end].course == like->course;
             end++) {
            Piece *piece = &plan->pieces[end];
            if (same.old[end] >= 0) {
                piece->number = old->pieces[same.old[end]].number;
                continue;
            }
            piece->number = used < free_count ? free_numbers[used++] : ++in_force->highest;
            in_force->changed[in_force->changed_count++] = piece->number;
        }
        first = end;
    }
    if (in_force->changed_count > 1)
        qsort(in_force->changed, (size_t)in_force->changed_count, sizeof *in_force->changed, ascending);
    arena_free(arena);
}

/* `plan: anew`: what hangs or is cut keeps its number, all else is numbered afresh, past them. */
static void number_anew(InForce *in_force, Plan *plan)
{
    Arena *arena = arena_new();
    Numbered same = find_same(arena, in_force, plan);
    int highest = 0;
    for (int i = 0; i < plan->piece_count; i++)
        if (plan->pieces[i].hung && same.old[i] >= 0 && in_force->plan->pieces[same.old[i]].number > highest)
            highest = in_force->plan->pieces[same.old[i]].number;
    in_force->changed = NULL;
    in_force->changed_count = 0;
    for (int i = 0; i < plan->piece_count; i++) {
        bool keeps = plan->pieces[i].hung && same.old[i] >= 0;
        plan->pieces[i].number = keeps ? in_force->plan->pieces[same.old[i]].number : ++highest;
    }
    in_force->highest = highest;
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
        number_anew(in_force, plan);
    else
        number_changed(in_force, plan);
    closers_settle(in_force->event_laid, plan);
    if (in_force->level < LET_ALL)
        set_bound(in_force, plan);
    set_plan(in_force, plan);
    in_force->laid = in_force->event_laid;
}

/* What came of the fill under way: taken, or another one is begun. */
static void weigh(InForce *in_force, const Plan *found)
{
    if (in_force->level == LET_ALL) {
        in_force->anew = found;
        if (in_force->anew_asked || in_force->mended == NULL || in_force->mended->shortfall <= found->shortfall) {
            in_force->level = in_force->anew_asked || in_force->mended == NULL ? LET_ALL : LET_NOTHING;
            take(in_force, in_force->level == LET_ALL ? found : in_force->mended);
            return;
        }
        in_force->level = LET_COURSES;
    } else {
        in_force->mended = found;
        if (found->shortfall == 0 || (in_force->anew != NULL && found->shortfall <= in_force->anew->shortfall)) {
            take(in_force, found);
            return;
        }
        in_force->level++;
    }
    if (in_force->anew == NULL)
        in_force->level = LET_ALL; /* how small the shortfall can be */
    if (in_force->level == LET_ALL && in_force->anew != NULL) {
        take(in_force, in_force->anew);
        return;
    }
    if (!begin_solve(in_force))
        take(in_force, in_force->anew != NULL ? in_force->anew : in_force->mended);
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
        int piece = piece_of_record(in_force, record, hung, in_force->hangs);
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
        in_force->event_wall = wall_after(in_force->arena, in_force->layout->wall, &in_force->walk);
        take_planned_figures(in_force, in_force->event_wall);
        in_force->event_laid = lay_out(in_force->arena, in_force->event_wall);
        in_force->level = in_force->anew_asked ? LET_ALL : LET_NOTHING;
        in_force->mended = in_force->anew = NULL;
        if (in_force->event_laid != NULL && begin_solve(in_force))
            return true;
    }
}

static void take_base(InForce *in_force, const Plan *base)
{
    in_force->base = plan_copy(in_force->arena, base);
    set_plan(in_force, plan_copy(in_force->arena, base));
    in_force->highest = base->piece_count;
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
    in_force->changed = arena_array(arena, int, before->changed_count + 1);
    for (int i = 0; i < before->changed_count; i++)
        in_force->changed[i] = before->changed[i];
    in_force->changed_count = before->changed_count;
    in_force->walk = before->walk;
    in_force->records = before->records;
    in_force->begun = true;
    in_force->highest = before->highest;
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
        int piece = piece_of_record(in_force, &demand->wall->hung_pieces.at[i], &demand->hung[i], taken);
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
    plan->changed = in_force->changed;
    plan->changed_count = in_force->changed_count;
    report_findings(arena, &fitting, &breaks, plan);
    report_changed(arena, demand, plan);
    return plan;
}
