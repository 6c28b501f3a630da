/*
 * Invariants: the planks of run i are rows->at[row].at[first .. first+count); the cuts of a span are a list by
 * first_cut and next_cut; left = to - from - sum over them of (wood + kerf); weight is that of the
 * planks as they are.
 */
#include "fill/looks/arrangement.h"

#include "base/panic.h"
#include "fill/report.h"

/* ---- the start ---- */

static void list_cut(Arrangement *all, int piece, int span)
{
    all->span_of[piece] = span;
    all->next_cut[piece] = all->first_cut[span];
    all->first_cut[span] = piece;
    all->cuts[all->supply->spans[span].board]++;
}

static void unlist_cut(Arrangement *all, int piece)
{
    int span = all->span_of[piece];
    int *link = &all->first_cut[span];
    while (*link != piece) {
        BUG_UNLESS(*link >= 0);
        link = &all->next_cut[*link];
    }
    *link = all->next_cut[piece];
    all->cuts[all->supply->spans[span].board]--;
}

/* False where the planks are not those of the covers. */
static bool find_runs(Arrangement *all, const Cover *covers)
{
    const Demand *demand = all->demand;
    for (int i = 0; i < demand->row_count; i++) {
        const FacadeRow *row = &all->rows->at[i];
        for (int j = 0; j < row->count; j++) {
            const FacadePlank *plank = &row->at[j];
            all->run_of[plank->piece] = plank->run;
            all->span_of[plank->piece] = -1;
            if (plank->run < 0)
                continue;
            RunPlace *run = &all->runs[plank->run];
            if (run->count == 0)
                run->first = j;
            if (run->count == covers[plank->run].count)
                return false;
            const Placed *placed = &covers[plank->run].at[run->count++];
            if (placed->left != plank->left || placed->right != plank->right)
                return false;
            list_cut(all, plank->piece, placed->span);
            all->leaves_off[plank->run] |= laid_leaves_off(demand, &demand->runs[plank->run], placed);
            all->left[placed->span] -= placed->wood + all->supply->kerf;
        }
    }
    for (int i = 0; i < demand->run_count; i++) {
        const Run *run = &demand->runs[i];
        const Cover *cover = &covers[i];
        if (cover->count != all->runs[i].count)
            return false;
        Length bare = run->right - run->left;
        for (int j = 0; j < cover->count; j++)
            bare -= cover->at[j].right - cover->at[j].left;
        all->runs[i].whole = bare == 0 && cover->count <= LAY_MOST && !all->leaves_off[i];
    }
    return true;
}

Arrangement *arrangement_new(Arena *arena, const Demand *demand, const Supply *supply, const Cover *covers)
{
    Arrangement *all = arena_one(arena, Arrangement);
    const Plan *plan = report_plan(arena, demand, supply, covers);
    all->arena = arena;
    all->demand = demand;
    all->supply = supply;
    all->rows = facade_new(arena, demand, plan);
    all->short_below = looks_short(demand->wall);
    all->weight = looks_weight(&plan->looks);
    all->piece_count = plan->piece_count;
    all->runs = arena_array(arena, RunPlace, demand->run_count);
    all->run_of = arena_array(arena, int, plan->piece_count);
    all->leaves_off = arena_array(arena, bool, demand->run_count);
    all->span_of = arena_array(arena, int, plan->piece_count);
    all->next_cut = arena_array(arena, int, plan->piece_count);
    all->first_cut = arena_array(arena, int, supply->span_count);
    all->left = arena_array(arena, Length, supply->span_count);
    all->cuts = arena_array(arena, int, supply->board_count);
    for (int i = 0; i < supply->span_count; i++) {
        all->first_cut[i] = -1;
        all->left[i] = supply->spans[i].to - supply->spans[i].from;
    }
    return find_runs(all, covers) ? all : NULL;
}

Cover *arrangement_covers(Arena *arena, const Arrangement *all)
{
    Cover *covers = arena_array(arena, Cover, all->demand->run_count);
    for (int i = 0; i < all->demand->run_count; i++) {
        const RunPlace *run = &all->runs[i];
        const FacadeRow *row = &all->rows->at[all->demand->runs[i].row];
        covers[i].count = covers[i].room = run->count;
        covers[i].at = arena_array(arena, Placed, run->count);
        for (int j = 0; j < run->count; j++) {
            const FacadePlank *plank = &row->at[run->first + j];
            Length wood = arrangement_wood(all, i, plank->left, plank->right);
            covers[i].at[j] = (Placed){plank->left, plank->right, all->span_of[plank->piece], wood};
        }
    }
    return covers;
}

/* ---- one piece ---- */

static FacadePlank *plank_of(Arrangement *all, int piece)
{
    int run = all->run_of[piece];
    FacadePlank *first = &all->rows->at[all->demand->runs[run].row].at[all->runs[run].first];
    FacadePlank *plank = first;
    while (plank->piece != piece)
        plank++;
    all->work += (plank - first) / 4;
    return plank;
}

static Length wood_of(const Arrangement *all, const FacadePlank *plank)
{
    return arrangement_wood(all, plank->run, plank->left, plank->right);
}

static bool is_wide(const Arrangement *all, int run, Length left, Length right, int board)
{
    return !all->supply->narrow ||
           demand_need(all->demand, &all->demand->runs[run], left, right) <= all->supply->widths[board];
}

/* Gives the piece the tone; by how much that changes the weight. */
static int64_t retone(Arrangement *all, int piece, int tone)
{
    FacadePlank *plank = plank_of(all, piece);
    int row = all->demand->runs[all->run_of[piece]].row;
    int at = (int)(plank - all->rows->at[row].at);
    int64_t change = 0;
    if (plank->tone == tone)
        return 0;
    if (plank->tone != 0)
        change -= looks_like(all->rows, row, at, plank->tone, &all->work);
    if (tone != 0)
        change += looks_like(all->rows, row, at, tone, &all->work);
    plank->tone = tone;
    return change * LOOKS_WEIGHT_TONE;
}

bool arrangement_clashes(Arrangement *all, int piece)
{
    const FacadePlank *plank = plank_of(all, piece);
    int row = all->demand->runs[all->run_of[piece]].row;
    int at = (int)(plank - all->rows->at[row].at);
    return plank->tone != 0 && looks_like(all->rows, row, at, plank->tone, &all->work) > 0;
}

static int tone_of_span(const Arrangement *all, int span)
{
    return all->rows->tones[all->supply->spans[span].board];
}

static void recut(Arrangement *all, int piece, int span)
{
    Length with_kerf = wood_of(all, plank_of(all, piece)) + all->supply->kerf;
    all->left[all->span_of[piece]] += with_kerf;
    unlist_cut(all, piece);
    list_cut(all, piece, span);
    all->left[span] -= with_kerf;
}

bool arrangement_swap(Arrangement *all, int piece, int other, int64_t most)
{
    int from = all->span_of[piece], to = all->span_of[other];
    all->work += 2;
    if (from < 0 || to < 0 || tone_of_span(all, from) == tone_of_span(all, to))
        return false;
    const FacadePlank *one = plank_of(all, piece), *two = plank_of(all, other);
    Length more = wood_of(all, two) - wood_of(all, one);
    if (all->left[from] - more < -all->supply->kerf || all->left[to] + more < -all->supply->kerf ||
        !is_wide(all, one->run, one->left, one->right, all->supply->spans[to].board) ||
        !is_wide(all, two->run, two->left, two->right, all->supply->spans[from].board))
        return false;
    int64_t change = retone(all, piece, tone_of_span(all, to));
    change += retone(all, other, tone_of_span(all, from));
    if (change > most) {
        retone(all, piece, tone_of_span(all, from));
        retone(all, other, tone_of_span(all, to));
        return false;
    }
    recut(all, piece, to);
    recut(all, other, from);
    all->weight += change;
    return true;
}

bool arrangement_move(Arrangement *all, int piece, int span, int64_t most)
{
    int from = all->span_of[piece];
    all->work += 2;
    if (from < 0 || tone_of_span(all, from) == tone_of_span(all, span))
        return false;
    const FacadePlank *plank = plank_of(all, piece);
    int board = all->supply->spans[from].board, to = all->supply->spans[span].board;
    bool opened = all->cuts[to] > 0 || all->supply->boards[to].kind < 0;
    bool stays = all->cuts[board] > 1 || all->supply->boards[board].kind < 0;
    if (!opened || !stays || all->left[span] < wood_of(all, plank) ||
        !is_wide(all, plank->run, plank->left, plank->right, to))
        return false;
    int64_t change = retone(all, piece, tone_of_span(all, span));
    if (change > most) {
        retone(all, piece, tone_of_span(all, from));
        return false;
    }
    recut(all, piece, span);
    all->weight += change;
    return true;
}

/* ---- one board ---- */

/* Whether all that is cut from `board` can be cut from `other`, which nothing is cut from. */
static bool fits(Arrangement *all, int board, int other)
{
    const SupplyBoard *from = &all->supply->boards[board], *to = &all->supply->boards[other];
    if (from->kind < 0 || to->kind < 0)
        return false;
    if (from->kind == to->kind || all->cuts[board] == 0)
        return true;
    if (from->span_count != 1 || to->span_count != 1)
        return false;
    const Span *span = &all->supply->spans[from->span_first], *room = &all->supply->spans[to->span_first];
    Length used = span->to - span->from - all->left[from->span_first];
    if (used > room->to - room->from + all->supply->kerf)
        return false;
    for (int i = all->first_cut[from->span_first]; i >= 0 && all->supply->narrow; i = all->next_cut[i]) {
        const FacadePlank *plank = plank_of(all, i);
        if (!is_wide(all, plank->run, plank->left, plank->right, other))
            return false;
    }
    return true;
}

static int64_t retone_board(Arrangement *all, int board, int tone)
{
    const SupplyBoard *entry = &all->supply->boards[board];
    int64_t change = 0;
    for (int i = entry->span_first; i < entry->span_first + entry->span_count; i++)
        for (int cut = all->first_cut[i]; cut >= 0; cut = all->next_cut[cut])
            change += retone(all, cut, tone);
    return change;
}

/* Lists the cuts of the board's spans for the other's. */
static void exchange_spans(Arrangement *all, int board, int other)
{
    const SupplyBoard *one = &all->supply->boards[board], *two = &all->supply->boards[other];
    for (int i = 0; i < one->span_count; i++) {
        int a = one->span_first + i, b = two->span_first + i;
        Length length_a = all->supply->spans[a].to - all->supply->spans[a].from;
        Length length_b = all->supply->spans[b].to - all->supply->spans[b].from;
        Length used_a = length_a - all->left[a], used_b = length_b - all->left[b];
        int first = all->first_cut[a];
        all->first_cut[a] = all->first_cut[b];
        all->first_cut[b] = first;
        all->left[a] = length_a - used_b;
        all->left[b] = length_b - used_a;
        for (int cut = all->first_cut[a]; cut >= 0; cut = all->next_cut[cut])
            all->span_of[cut] = a;
        for (int cut = all->first_cut[b]; cut >= 0; cut = all->next_cut[cut])
            all->span_of[cut] = b;
    }
    int cuts = all->cuts[board];
    all->cuts[board] = all->cuts[other];
    all->cuts[other] = cuts;
}

bool arrangement_exchange(Arrangement *all, int board, int other, int64_t most)
{
    int tone = all->rows->tones[board], other_tone = all->rows->tones[other];
    const SupplyBoard *one = &all->supply->boards[board], *two = &all->supply->boards[other];
    all->work += 2;
    bool both = all->cuts[board] > 0 && all->cuts[other] > 0;
    if (tone == other_tone || (all->cuts[board] == 0 && all->cuts[other] == 0) || one->span_count != two->span_count ||
        !fits(all, board, other) || !fits(all, other, board))
        return false;
    if (!both && all->supply->kinds[one->kind].length != all->supply->kinds[two->kind].length)
        return false;
    int64_t change = retone_board(all, board, other_tone);
    change += retone_board(all, other, tone);
    if (change > most) {
        retone_board(all, board, tone);
        retone_board(all, other, other_tone);
        return false;
    }
    exchange_spans(all, board, other);
    all->weight += change;
    return true;
}
