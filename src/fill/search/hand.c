#include "fill/search/hand.h"

#include "fill/report.h"

enum { OFFCUTS_TRIED = 64, BOARDS_TRIED = 16, SHORTER_TRIED = 8 };

typedef struct Offcuts {
    int *at; /* spans, the last one on top */
    int count, room;
} Offcuts;

typedef struct Pieces {
    Placed *at;
    int count, room;
} Pieces;

typedef struct Hand {
    Arena *arena;
    Solution *solution;
    Offcuts offcuts;
    int front; /* boards before it are opened */
    Pieces row;
    LengthList near;
} Hand;

/* The last place at or before x where a joint keeps the rules; the run's left end where there is none. */
static Length joint_before(const Hand *hand, const Run *run, Length x)
{
    const Demand *demand = hand->solution->demand;
    if (demand->on_studs) {
        const LengthList *studs = run->studs;
        for (int i = run->stud_count - 1; i >= 0; i--) {
            Length stud = studs->at[run->stud_first + i];
            if (stud <= x && demand_near(&hand->near, stud, demand->stagger) == 0)
                return stud;
        }
        return run->left;
    }
    x = demand_mark_down(demand, run, x);
    for (int i = hand->near.count - 1; i >= 0; i--)
        if (hand->near.at[i] < x + demand->stagger && hand->near.at[i] > x - demand->stagger)
            x = demand_mark_down(demand, run, hand->near.at[i] - demand->stagger);
    return x > run->left ? x : run->left;
}

/* Whether the piece is less than the whole of a run that has a single one. */
static bool is_part(const Hand *hand, const Run *run, Length left, Length right)
{
    return hand->solution->supply->single[run - hand->solution->demand->runs] &&
           (left != run->left || right != run->right);
}

/* How far a piece from x goes that is cut from wood of this length and width and keeps the rules; x where there is
 * none. */
static Length reach(const Hand *hand, const Run *run, Length x, Length wood, Length width)
{
    const Demand *demand = hand->solution->demand;
    Length to = run->right;
    for (int tried = 0; tried < SHORTER_TRIED; tried++) {
        if (to > x + wood || tried > 0) {
            Length last = run->right - (run->shortest > 0 ? run->shortest : 1);
            Length most = x + wood < last ? x + wood : last;
            to = joint_before(hand, run, tried == 0 || most < to ? most : to - 1);
        }
        if (to <= x || demand_is_short(run, x, to) || is_part(hand, run, x, to))
            return x;
        if (demand_wood(demand, run, x, to, true) <= wood && demand_whole(demand, run, x, to) &&
            (!hand->solution->supply->narrow || demand_need(demand, run, x, to) <= width))
            return to;
    }
    return x;
}

static void cut(Hand *hand, int run, int span, Length from, Length to)
{
    Supply *supply = hand->solution->supply;
    Length wood = demand_wood(hand->solution->demand, &hand->solution->demand->runs[run], from, to, true);
    supply_cut(supply, span, wood, run);
    *arena_push(hand->arena, &hand->row) = (Placed){from, to, span, wood};
    if (supply->spans[span].left >= hand->solution->demand->least)
        *arena_push(hand->arena, &hand->offcuts) = span;
}

static void drop_offcut(Hand *hand, int at)
{
    for (int i = at; i + 1 < hand->offcuts.count; i++)
        hand->offcuts.at[i] = hand->offcuts.at[i + 1];
    hand->offcuts.count--;
}

static bool unopened(const Supply *supply, int board)
{
    if (supply->boards[board].kind < 0)
        return false;
    for (int i = 0; i < supply->boards[board].span_count; i++)
        if (supply->spans[supply->boards[board].span_first + i].cuts > 0)
            return false;
    return supply->boards[board].span_count > 0;
}

/* Opens the board: its first span is cut, the others lie with the offcuts. */
static void open_board(Hand *hand, int run, int board, Length from, Length to)
{
    const SupplyBoard *entry = &hand->solution->supply->boards[board];
    for (int i = entry->span_count - 1; i > 0; i--)
        *arena_push(hand->arena, &hand->offcuts) = entry->span_first + i;
    cut(hand, run, entry->span_first, from, to);
}

static Length from_offcuts(Hand *hand, int index, Length x)
{
    const Supply *supply = hand->solution->supply;
    const Run *run = &hand->solution->demand->runs[index];
    int last = hand->offcuts.count > OFFCUTS_TRIED ? hand->offcuts.count - OFFCUTS_TRIED : 0;
    for (int i = hand->offcuts.count - 1; i >= last; i--) {
        int span = hand->offcuts.at[i];
        Length to = reach(hand, run, x, supply->spans[span].left, supply->widths[supply->spans[span].board]);
        if (to > x) {
            drop_offcut(hand, i);
            cut(hand, index, span, x, to);
            return to;
        }
    }
    return x;
}

static Length from_boards(Hand *hand, int index, Length x)
{
    const Supply *supply = hand->solution->supply;
    const Run *run = &hand->solution->demand->runs[index];
    while (hand->front < supply->board_count && !unopened(supply, hand->front))
        hand->front++;
    for (int board = hand->front, tried = 0; board < supply->board_count && tried < BOARDS_TRIED; board++) {
        if (!unopened(supply, board))
            continue;
        tried++;
        Length to = reach(hand, run, x, supply->spans[supply->boards[board].span_first].left, supply->widths[board]);
        if (to > x) {
            open_board(hand, index, board, x, to);
            return to;
        }
    }
    return x;
}

/* The next whole board as it comes, where that hangs more than the rules it breaks weigh; else x. */
static Length against_rules(Hand *hand, int index, Length x)
{
    const Demand *demand = hand->solution->demand;
    const Supply *supply = hand->solution->supply;
    const Run *run = &demand->runs[index];
    if (hand->front >= supply->board_count || !unopened(supply, hand->front))
        return x;
    Length to = demand_mark_down(demand, run, x + supply->spans[supply->boards[hand->front].span_first].left);
    int breaks = 0;
    if (to >= run->right)
        to = run->right;
    else
        breaks = demand_near(&hand->near, to, demand->stagger) + (demand->on_studs && !demand_at_stud(run, to) ? 1 : 0);
    breaks += demand_is_short(run, x, to);
    if (to <= x || to - x <= breaks * BREAK_COST || is_part(hand, run, x, to) || !demand_whole(demand, run, x, to) ||
        demand_wood(demand, run, x, to, true) > supply->spans[supply->boards[hand->front].span_first].left ||
        demand_need(demand, run, x, to) > supply->widths[hand->front])
        return x;
    open_board(hand, index, hand->front, x, to);
    return to;
}

static void lay_run(Hand *hand, int index)
{
    const Run *run = &hand->solution->demand->runs[index];
    solution_joints_beside(hand->solution, index, &hand->near);
    hand->row.count = 0;
    for (Length x = run->left; x < run->right;) {
        Length to = from_offcuts(hand, index, x);
        if (to == x)
            to = from_boards(hand, index, x);
        if (to == x)
            to = against_rules(hand, index, x);
        if (to == x)
            break;
        x = to;
    }
    for (int i = 0; i < hand->row.count; i++)
        supply_uncut(hand->solution->supply, hand->row.at[i].span, hand->row.at[i].wood, index);
    solution_set(hand->solution, index, hand->row.at, hand->row.count);
}

void hand_cover(Arena *arena, Solution *solution)
{
    Hand hand = {.arena = arena, .solution = solution};
    const Supply *supply = solution->supply;
    for (int i = supply->span_count - 1; i >= 0; i--)
        if (supply->boards[supply->spans[i].board].kind < 0)
            *arena_push(arena, &hand.offcuts) = i;
    const int *order = demand_row_order(arena, solution->demand);
    for (int i = 0; i < solution->demand->row_count; i++) {
        const Row *row = &solution->demand->rows[order[i]];
        for (int j = 0; j < row->run_count; j++)
            lay_run(&hand, row->run_first + j);
    }
}
