/*
 *     board  |square|==piece==|kerf|==piece==|avoid|==piece==|   |square|
 *            0      offset                                              length
 */
#include "support/rules.h"

#include "fill/breaks.h"
#include "fill/demand.h"

#include <stdlib.h>

Cost rules_cost(const Layout *layout, const Plan *plan)
{
    Arena *arena = arena_new();
    Cost cost = {0};
    for (int i = 0; i < plan->bare_count; i++)
        cost.shortfall += plan->bare[i].right - plan->bare[i].left;
    cost.shortfall += breaks_find(arena, layout, plan).weighed * BREAK_COST;
    bool *opened = arena_array(arena, bool, wall_board_count(layout->wall) + 1);
    for (int i = 0; i < plan->piece_count; i++) {
        int board = plan->pieces[i].board;
        if (!plan->pieces[i].hung)
            cost.pieces++;
        if (opened[board])
            continue;
        opened[board] = true;
        cost.length_opened += wall_board(layout->wall, board)->length;
        cost.boards_opened++;
    }
    for (int i = 0; i < layout->wall->hung_losses.count; i++) {
        int board = layout->wall->hung_losses.at[i].board;
        if (board < 1 || board > wall_board_count(layout->wall) || opened[board])
            continue;
        opened[board] = true;
        cost.length_opened += wall_board(layout->wall, board)->length;
        cost.boards_opened++;
    }
    arena_free(arena);
    return cost;
}

bool rules_happened(const Wall *wall)
{
    bool happened = hung_count(wall) > 0;
    for (int i = 0; i < wall->stock.count; i++)
        happened = happened || wall->stock.at[i].gone_given || wall->stock.at[i].found_given;
    return happened;
}

/* ---- on the wall ---- */

static bool wrong(Err *err, const Piece *piece, const char *what)
{
    return err_set(err, ERR_VALUE, "piece %d %s", piece->number, what);
}

static const Segment *segment_of(const Layout *layout, int face, int course, int segment)
{
    if (face < 0 || face >= layout->wall->faces.count)
        return NULL;
    if (course < 0 || course >= layout->faces[face].course_count)
        return NULL;
    const Course *on = &layout->faces[face].courses[course];
    return segment >= 0 && segment < on->segment_count ? &on->segments[segment] : NULL;
}

/* ---- pins and bars ---- */

static bool is_of(const Layout *layout, const Piece *piece, const char *face, int course)
{
    return wall_face_named(layout->wall, face) == piece->face &&
           layout->faces[piece->face].courses[piece->course].number == course;
}

static bool is_pinned(const Layout *layout, const Piece *piece, Length x)
{
    const Pins *pins = &layout->wall->joints.pins;
    for (int i = 0; i < pins->count; i++)
        if (pins->at[i].at == x && is_of(layout, piece, pins->at[i].face, pins->at[i].course))
            return true;
    return false;
}

static bool is_barred(const Layout *layout, const Piece *piece, Length x)
{
    const Bars *bars = &layout->wall->joints.bars;
    for (int i = 0; i < bars->count; i++)
        if (bars->at[i].from <= x && x <= bars->at[i].to && is_of(layout, piece, bars->at[i].face, bars->at[i].course))
            return true;
    return false;
}

static bool runs_over_a_pin(const Layout *layout, const Piece *piece)
{
    const Pins *pins = &layout->wall->joints.pins;
    for (int i = 0; i < pins->count; i++)
        if (pins->at[i].at > piece->left && pins->at[i].at < piece->right &&
            is_of(layout, piece, pins->at[i].face, pins->at[i].course))
            return true;
    return false;
}

/* ---- joints ---- */

/* Whether the end of a piece at x, no end of its segment, is where a joint may stand (one off a stud is a break, not
 * wrong). */
static bool on_mark(const Layout *layout, const Piece *piece, const Segment *segment, Length x)
{
    if ((x - segment->left) % layout->wall->round == 0)
        return true;
    if (layout->wall->joints.land != LAND_STUDS)
        return false;
    const LengthList *studs = &layout->faces[piece->face].studs;
    for (int i = 0; i < studs->count; i++)
        if (studs->at[i] == x)
            return true;
    return false;
}

static bool joint_holds(const Layout *layout, const Plan *plan, int index, Length x)
{
    const Piece *piece = &plan->pieces[index];
    const Segment *segment = segment_of(layout, piece->face, piece->course, piece->segment);
    if (x == segment->left || x == segment->right || is_pinned(layout, piece, x) ||
        (on_mark(layout, piece, segment, x) && !is_barred(layout, piece, x)))
        return true;
    for (int i = index - 1; i <= index + 1; i += 2) { /* the joint of a hung neighbour */
        if (i < 0 || i >= plan->piece_count)
            continue;
        const Piece *other = &plan->pieces[i];
        if (other->hung && other->face == piece->face && other->course == piece->course &&
            other->segment == piece->segment && (other->left == x || other->right == x))
            return true;
    }
    return false;
}

static bool piece_holds(const Layout *layout, const Plan *plan, int index, Err *err)
{
    const Piece *piece = &plan->pieces[index];
    const Segment *segment = segment_of(layout, piece->face, piece->course, piece->segment);
    if (segment == NULL)
        return wrong(err, piece, "is on no segment");
    if (piece->left >= piece->right || piece->left < segment->left || piece->right > segment->right)
        return wrong(err, piece, "leaves its segment");
    if (piece->hung)
        return true;
    if (!joint_holds(layout, plan, index, piece->left) || !joint_holds(layout, plan, index, piece->right))
        return wrong(err, piece, "ends between two marks, or in a bar");
    if (runs_over_a_pin(layout, piece))
        return wrong(err, piece, "runs over a pin");
    const Course *course = &layout->faces[piece->face].courses[piece->course];
    if (!layout_whole(course, piece->left, piece->right))
        return wrong(err, piece, "does not hang together");
    const Stock *stock = wall_board(layout->wall, piece->board);
    if (stock == NULL)
        return wrong(err, piece, "is from a board that is not there");
    Length width = stock->width_given ? stock->width : wall_widest(layout->wall);
    if (layout_need(layout->wall, course, piece->left, piece->right) > width)
        return wrong(err, piece, "is from a board too narrow");
    return true;
}

/* Pieces and bare stretches must tile every segment, in hanging order. */
static bool tiles(const Layout *layout, const Demand *demand, const int *order, const Plan *plan, Err *err)
{
    int piece = 0, bare = 0;
    for (int i = 0; i < demand->row_count; i++) {
        const Row *row = &demand->rows[order[i]];
        const Course *course = &layout->faces[row->face].courses[row->course];
        for (int j = 0; j < course->segment_count; j++) {
            Length x = course->segments[j].left;
            while (x < course->segments[j].right) {
                const Piece *next = piece < plan->piece_count ? &plan->pieces[piece] : NULL;
                const Bare *gap = bare < plan->bare_count ? &plan->bare[bare] : NULL;
                if (next != NULL && next->face == row->face && next->course == row->course && next->segment == j &&
                    next->left == x) {
                    x = next->right;
                    piece++;
                } else if (gap != NULL && gap->face == row->face && gap->course == row->course && gap->segment == j &&
                           gap->left == x && gap->right > x) {
                    x = gap->right;
                    bare++;
                } else {
                    return err_set(err, ERR_VALUE,
                                   "face %d, course %lld, segment %d: at %lld nm neither a piece nor told bare",
                                   row->face, (long long)course->number, j, (long long)x);
                }
            }
            if (x != course->segments[j].right)
                return err_set(err, ERR_VALUE, "face %d, course %lld, segment %d is left", row->face,
                               (long long)course->number, j);
        }
    }
    if (piece != plan->piece_count || bare != plan->bare_count)
        return err_set(err, ERR_VALUE, "a piece or a bare stretch is out of order");
    return true;
}

/* As written, or with its ends taken as those of its segment. */
static bool hangs_there(const Hung *hung, const HungPiece *record, const Piece *piece)
{
    bool there = (piece->left == hung->left && piece->right == hung->right) ||
                 (piece->left == record->left && piece->right == record->right);
    return piece->hung && there && piece->face == hung->face && piece->course == hung->course &&
           piece->board == hung->board && (!record->offset_given || piece->offset == record->offset);
}

static bool hung_holds(const Demand *demand, const Plan *plan, Err *err)
{
    const HungPiece *records = demand->wall->hung_pieces.at;
    for (int i = 0; i < demand->hung_count; i++) {
        bool found = demand->hung[i].fault != HUNG_FITS;
        for (int j = 0; j < plan->piece_count && !found; j++)
            found = hangs_there(&demand->hung[i], &records[i], &plan->pieces[j]);
        if (!found)
            return err_set(err, ERR_VALUE, "hung piece %d was moved", i + 1);
    }
    for (int j = 0; j < plan->piece_count; j++) {
        bool found = !plan->pieces[j].hung;
        for (int i = 0; i < demand->hung_count && !found; i++)
            found = hangs_there(&demand->hung[i], &records[i], &plan->pieces[j]);
        if (!found)
            return wrong(err, &plan->pieces[j], "hangs by no record");
    }
    return true;
}

/* ---- on the boards ---- */

static bool cut_holds(const Wall *wall, const Piece *piece, Err *err)
{
    const Stock *stock = wall_board(wall, piece->board);
    Length to = piece->offset + (piece->right - piece->left) + piece->closer;
    if (piece->hung)
        return true;
    if (piece->offset < wall->saw.square || to > stock->length - wall->saw.square)
        return wrong(err, piece, "takes wood of a squared end");
    for (int i = 0; i < stock->avoid.count; i++)
        if (piece->offset < stock->avoid.at[i].to && to > stock->avoid.at[i].from)
            return wrong(err, piece, "takes wood that is to be avoided");
    return true;
}

/* What the blade takes between two pieces of a board: the greater of the two ends that face each other. */
static Length kerf_between(const Piece *one, const Piece *other)
{
    return one->right_kerf > other->left_kerf ? one->right_kerf : other->left_kerf;
}

/* Whether the piece's ends are told as the wall has them. */
static bool kerfs_hold(const Layout *layout, const Piece *piece)
{
    const Segment *segment = segment_of(layout, piece->face, piece->course, piece->segment);
    Length kerf = layout->wall->saw.kerf;
    return piece->left_kerf == (piece->left == segment->left ? segment->left_kerf : kerf) &&
           piece->right_kerf == (piece->right == segment->right ? segment->right_kerf : kerf);
}

static bool boards_hold(const Layout *layout, const Plan *plan, Err *err)
{
    const Wall *wall = layout->wall;
    if (plan->board_count != wall_board_count(wall))
        return err_set(err, ERR_VALUE, "%d boards are told of", plan->board_count);
    int listed = 0;
    for (int board = 1; board <= plan->board_count; board++) {
        const BoardUse *use = &plan->boards[board - 1];
        if (use->count < 0 || (use->count > 0 && (use->first < 0 || use->first + use->count > plan->piece_count)))
            return err_set(err, ERR_VALUE, "board %d lists pieces that are not there", board);
        const Piece *before = NULL;
        for (int i = use->first; i < use->first + use->count; i++) {
            const Piece *piece = &plan->pieces[plan->by_board[i]];
            if (piece->board != board)
                return wrong(err, piece, "is listed under another board");
            if (!kerfs_hold(layout, piece))
                return wrong(err, piece, "has other ends than its segment");
            if (!cut_holds(wall, piece, err))
                return false;
            Length apart =
                before == NULL ? 0 : piece->offset - before->offset - (before->right - before->left) - before->closer;
            if (before != NULL && apart < kerf_between(before, piece) && !(piece->hung && before->hung))
                return wrong(err, piece, "is nearer than the blade to the one before on its board");
            before = piece;
            listed++;
        }
        if (use->left_over != plan_left_over(wall, board, plan, plan->by_board + use->first, use->count))
            return err_set(err, ERR_VALUE, "board %d has another left-over", board);
    }
    if (listed != plan->piece_count)
        return err_set(err, ERR_VALUE, "%d pieces are listed under boards, of %d", listed, plan->piece_count);
    return true;
}

static bool sums_hold(const Layout *layout, const Plan *plan, Err *err)
{
    Cost cost = rules_cost(layout, plan);
    Length used = 0;
    int joints = 0;
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        used += piece->right - piece->left;
        joints += i > 0 && piece[-1].face == piece->face && piece[-1].course == piece->course &&
                  piece[-1].segment == piece->segment && piece[-1].right == piece->left;
    }
    if (cost.shortfall != plan->shortfall || plan->bare_length + plan->breaks * BREAK_COST < plan->shortfall)
        return err_set(err, ERR_VALUE, "the shortfall is %lld nm", (long long)cost.shortfall);
    if (cost.length_opened != plan->length_opened || cost.boards_opened != plan->boards_opened)
        return err_set(err, ERR_VALUE, "%d boards are opened", cost.boards_opened);
    if (used != plan->length_used || joints != plan->joints)
        return err_set(err, ERR_VALUE, "%lld nm are used, %d joints", (long long)used, joints);
    if (plan->bound_known && (plan->length_bound > plan->length_opened || plan->boards_bound > plan->boards_opened))
        return err_set(err, ERR_VALUE, "the bound is above what is opened");
    return true;
}

static int ascending(const void *a, const void *b)
{
    int one = *(const int *)a, other = *(const int *)b;
    return (one > other) - (one < other);
}

/* Every piece has a number of its own, from 1. */
static bool numbers_hold(Arena *arena, const Plan *plan, Err *err)
{
    int *numbers = arena_array(arena, int, plan->piece_count + 1);
    for (int i = 0; i < plan->piece_count; i++)
        numbers[i] = plan->pieces[i].number;
    if (plan->piece_count > 1)
        qsort(numbers, (size_t)plan->piece_count, sizeof *numbers, ascending);
    for (int i = 0; i < plan->piece_count; i++)
        if (numbers[i] < 1 || (i > 0 && numbers[i] == numbers[i - 1]))
            return err_set(err, ERR_VALUE, "two pieces are numbered %d", numbers[i]);
    return true;
}

bool rules_hold(const Layout *layout, const Plan *plan, Err *err)
{
    for (int i = 0; i < plan->piece_count; i++)
        if (!piece_holds(layout, plan, i, err))
            return false;
    Arena *arena = arena_new();
    const Demand *demand = demand_new(arena, layout);
    const int *order = demand_row_order(arena, demand);
    bool hold = numbers_hold(arena, plan, err) && tiles(layout, demand, order, plan, err) &&
                hung_holds(demand, plan, err) && boards_hold(layout, plan, err) && sums_hold(layout, plan, err);
    arena_free(arena);
    return hold;
}
