#include "fill/report.h"

#include "base/panic.h"
#include "fill/breaks.h"
#include "fill/looks/looks.h"
#include "fill/report_findings.h"

#include <stdlib.h>
#include <string.h>

/* ---- pieces ---- */

static int by_left(const void *a, const void *b)
{
    const Piece *one = a, *other = b;
    if (one->left != other->left)
        return one->left < other->left ? -1 : 1;
    return (one->right > other->right) - (one->right < other->right);
}

/* Hung pieces of each row: first[row], then next[record], records + 1; 0 at the end. */
typedef struct HungRows {
    int *first, *next;
} HungRows;

static HungRows hung_rows(Arena *arena, const Demand *demand)
{
    HungRows rows = {arena_array(arena, int, demand->row_count), arena_array(arena, int, demand->hung_count)};
    int *face_first = arena_array(arena, int, demand->wall->faces.count + 1);
    for (int i = 0; i < demand->wall->faces.count; i++)
        face_first[i + 1] = face_first[i] + demand->layout->faces[i].course_count;
    for (int i = 0; i < demand->hung_count; i++) {
        const Hung *hung = &demand->hung[i];
        if (hung->fault != HUNG_FITS)
            continue;
        int row = face_first[hung->face] + hung->course;
        rows.next[i] = rows.first[row];
        rows.first[row] = i + 1;
    }
    return rows;
}

static void put_row(const Demand *demand, const Cover *covers, const HungRows *hung, int index, Plan *plan)
{
    const Row *row = &demand->rows[index];
    int first = plan->piece_count;
    for (int i = hung->first[index]; i > 0; i = hung->next[i - 1]) {
        const Hung *record = &demand->hung[i - 1];
        plan->pieces[plan->piece_count++] = (Piece){.face = row->face,
                                                    .course = row->course,
                                                    .segment = record->segment,
                                                    .left = record->left,
                                                    .right = record->right,
                                                    .board = record->board,
                                                    .offset = record->offset,
                                                    .hung = record->state != PIECE_PLANNED,
                                                    .cut = record->state == PIECE_CUT,
                                                    .closer = record->closer,
                                                    .left_kerf = record->left_kerf,
                                                    .right_kerf = record->right_kerf};
    }
    for (int i = row->run_first; i < row->run_first + row->run_count; i++) {
        const Run *run = &demand->runs[i];
        const Cover *cover = &covers[i];
        for (int j = 0; j < cover->count; j++)
            plan->pieces[plan->piece_count++] =
                (Piece){.face = row->face,
                        .course = row->course,
                        .segment = run->segment,
                        .left = cover->at[j].left,
                        .right = cover->at[j].right,
                        .offset = cover->at[j].span, /* placed later */
                        .left_kerf = demand_left_kerf(demand, run, cover->at[j].left),
                        .right_kerf = demand_right_kerf(demand, run, cover->at[j].right),
                        .closer = demand_length(run, cover->at[j].left, cover->at[j].right) -
                                  (cover->at[j].right - cover->at[j].left),
                        .closer_off = laid_leaves_off(demand, run, &cover->at[j])};
    }
    for (int i = first; i < plan->piece_count; i++)
        if (plan->pieces[i].closer_off)
            plan->pieces[i].closer = 0;
    if (plan->piece_count - first > 1)
        qsort(plan->pieces + first, (size_t)(plan->piece_count - first), sizeof *plan->pieces, by_left);
}

/* The order in which pieces are cut from one span: those whose ends take most of the blade first, so that their wood
 * (demand_wood) is enough for them; else hanging order. */
typedef struct Cutting {
    Length slant;
    int piece;
} Cutting;

static int by_slant(const void *a, const void *b)
{
    const Cutting *one = a, *other = b;
    if (one->slant != other->slant)
        return one->slant > other->slant ? -1 : 1;
    return (one->piece > other->piece) - (one->piece < other->piece);
}

static Cutting *cutting_order(Arena *arena, const Supply *supply, const Plan *plan)
{
    Cutting *order = arena_array(arena, Cutting, plan->piece_count);
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        Length most = piece->left_kerf > piece->right_kerf ? piece->left_kerf : piece->right_kerf;
        order[i] = (Cutting){most - supply->kerf, i};
    }
    if (supply->slant > 0 && plan->piece_count > 1)
        qsort(order, (size_t)plan->piece_count, sizeof *order, by_slant);
    return order;
}

/* On each span from its first end on, what the two ends between them take apart. What hangs at a span's first end is a
 * kerf of its own from it. */
static void place_on_boards(Arena *arena, const Supply *supply, Plan *plan)
{
    Length *next = arena_array(arena, Length, supply->span_count);
    Length *kerf = arena_array(arena, Length, supply->span_count); /* of the end that the next piece faces */
    const Cutting *order = cutting_order(arena, supply, plan);
    for (int i = 0; i < supply->span_count; i++) {
        bool hung = supply->boards[supply->spans[i].board].kind < 0;
        next[i] = supply->spans[i].from - (hung ? supply->kerf : 0);
        kerf[i] = hung ? supply->kerf : 0;
    }
    for (int i = 0; i < plan->piece_count; i++) {
        plan->pieces[i].number = i + 1;
        Piece *piece = &plan->pieces[order[i].piece];
        if (piece->board > 0) /* placed already */
            continue;
        int span = (int)piece->offset;
        piece->board = supply->spans[span].board + 1;
        piece->offset = next[span] + (kerf[span] == 0 || kerf[span] > piece->left_kerf ? kerf[span] : piece->left_kerf);
        next[span] = piece->offset + piece->right - piece->left + piece->closer;
        kerf[span] = piece->right_kerf;
    }
}

static void put_bare(Arena *arena, const Demand *demand, const Cover *covers, int index, Plan *plan, int *room)
{
    const Row *row = &demand->rows[index];
    struct {
        Bare *at;
        int count, room;
    } bare = {plan->bare, plan->bare_count, *room};
    for (int i = row->run_first; i < row->run_first + row->run_count; i++) {
        const Run *run = &demand->runs[i];
        const Cover *cover = &covers[i];
        Length from = run->left;
        for (int j = 0; j <= cover->count; j++) {
            Length to = j < cover->count ? cover->at[j].left : run->right;
            Bare *before = bare.count > 0 ? &bare.at[bare.count - 1] : NULL;
            if (to > from && before != NULL && before->face == row->face && before->course == row->course &&
                before->segment == run->segment && before->right == from) /* on both sides of a pin */
                before->right = to;
            else if (to > from)
                *arena_push(arena, &bare) = (Bare){row->face, row->course, run->segment, from, to, false};
            if (j < cover->count)
                from = cover->at[j].right;
        }
    }
    plan->bare = bare.at;
    plan->bare_count = bare.count;
    *room = bare.room;
}

/* ---- boards ---- */

typedef struct ByOffset {
    int board;
    Length offset;
    int piece;
} ByOffset;

static int by_board_and_offset(const void *a, const void *b)
{
    const ByOffset *one = a, *other = b;
    if (one->board != other->board)
        return one->board < other->board ? -1 : 1;
    if (one->offset != other->offset)
        return one->offset < other->offset ? -1 : 1;
    return (one->piece > other->piece) - (one->piece < other->piece);
}

void report_boards(Arena *arena, const Wall *wall, Plan *plan)
{
    plan->length_opened = 0;
    plan->boards_opened = 0;
    plan->board_count = wall_board_count(wall);
    plan->boards = arena_array(arena, BoardUse, plan->board_count);
    plan->by_board = arena_array(arena, int, plan->piece_count);
    ByOffset *order = arena_array(arena, ByOffset, plan->piece_count);
    for (int i = 0; i < plan->piece_count; i++)
        order[i] = (ByOffset){plan->pieces[i].board, plan->pieces[i].offset, i};
    if (plan->piece_count > 1)
        qsort(order, (size_t)plan->piece_count, sizeof *order, by_board_and_offset);
    for (int i = 0; i < plan->piece_count; i++) {
        plan->by_board[i] = order[i].piece;
        BoardUse *use = &plan->boards[order[i].board - 1];
        if (use->count++ == 0)
            use->first = i;
    }
    int board = 0;
    for (int line = 0; line < wall->stock.count; line++) {
        const Stock *stock = &wall->stock.at[line];
        Length untouched = -1;
        for (int i = 0; i < stock->count; i++, board++) {
            BoardUse *use = &plan->boards[board];
            bool lost = plan_has_loss(wall, board + 1);
            if (use->count == 0 && !lost) {
                if (untouched < 0)
                    untouched = plan_left_over(wall, board + 1, plan, NULL, 0);
                use->left_over = untouched;
                continue;
            }
            use->left_over = plan_left_over(wall, board + 1, plan, plan->by_board + use->first, use->count);
            plan->length_opened += stock->length;
            plan->boards_opened++;
        }
    }
}

/* ---- sums ---- */

static void report_sums(Plan *plan)
{
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        plan->length_used += piece->right - piece->left;
        plan->closers += piece->closer;
        plan->closers_off += piece->closer_off;
        plan->joints += i > 0 && piece[-1].face == piece->face && piece[-1].course == piece->course &&
                        piece[-1].segment == piece->segment && piece[-1].right == piece->left;
    }
    for (int i = 0; i < plan->bare_count; i++)
        plan->bare_length += plan->bare[i].right - plan->bare[i].left;
}

Plan *report_plan(Arena *arena, const Demand *demand, const Supply *supply, const Cover *covers)
{
    Plan *plan = arena_one(arena, Plan);
    int count = 0;
    for (int i = 0; i < demand->run_count; i++)
        count += covers[i].count;
    for (int i = 0; i < demand->hung_count; i++)
        count += demand->hung[i].fault == HUNG_FITS;
    plan->pieces = arena_array(arena, Piece, count);
    int *order = demand_row_order(arena, demand);
    HungRows hung = hung_rows(arena, demand);
    int bare_room = 0;
    for (int i = 0; i < demand->row_count; i++) {
        put_row(demand, covers, &hung, order[i], plan);
        put_bare(arena, demand, covers, order[i], plan, &bare_room);
    }
    place_on_boards(arena, supply, plan);
    report_boards(arena, demand->wall, plan);
    report_sums(plan);
    plan->looks = looks_measure(facade_new(arena, demand, plan), looks_short(demand->wall));
    Breaks breaks = breaks_find(arena, demand->layout, plan);
    plan->breaks = breaks.count;
    plan->shortfall = plan->bare_length + breaks.weighed * BREAK_COST;
    report_findings(arena, demand, &breaks, plan);
    return plan;
}
