#include "fill/closers.h"

bool closers_closed_in(const Wall *wall, int face, const Segment *segment)
{
    bool through;
    if (segment->right_end != SEGMENT_AT_SIDE)
        return segment->right_end == SEGMENT_AT_OPENING;
    return wall_corner_right(wall, face, &through).kind != CORNER_OUTSIDE;
}

static const Segment *segment_of(const Layout *layout, const Piece *piece)
{
    return &layout->faces[piece->face].courses[piece->course].segments[piece->segment];
}

static bool share_segment(const Piece *one, const Piece *other)
{
    return one->face == other->face && one->course == other->course && one->segment == other->segment;
}

/* No planned piece and no bare stretch of its segment lies to its right, and what it ends at stays where it is. */
static bool closes(const Layout *layout, const Plan *plan, int index)
{
    const Piece *piece = &plan->pieces[index];
    if (piece->hung)
        return false;
    for (int i = index + 1; i < plan->piece_count && share_segment(piece, &plan->pieces[i]); i++)
        if (!plan->pieces[i].hung)
            return false;
    for (int i = 0; i < plan->bare_count; i++)
        if (plan->bare[i].face == piece->face && plan->bare[i].course == piece->course &&
            plan->bare[i].segment == piece->segment && plan->bare[i].left >= piece->right)
            return false;
    const Segment *segment = segment_of(layout, piece);
    return piece->right < segment->right || closers_closed_in(layout->wall, piece->face, segment);
}

static Length larger(Length a, Length b)
{
    return a > b ? a : b;
}

/* Whether its board has so much more wood beyond the piece: clear of the next piece, what is lost, what is to be
 * avoided and the squared end. */
static bool has_room(const Wall *wall, const Plan *plan, const Piece *piece, Length closer)
{
    const Stock *stock = wall_board(wall, piece->board);
    const BoardUse *use = &plan->boards[piece->board - 1];
    const Length end = piece->offset + piece->right - piece->left, to = end + closer;
    if (!wall_stock_usable(stock, hung_count(wall)) || to > stock->length - wall->saw.square)
        return false;
    for (int i = 0; i < stock->avoid.count; i++)
        if (stock->avoid.at[i].from < to && stock->avoid.at[i].to > end)
            return false;
    for (int i = use->first; i < use->first + use->count; i++) {
        const Piece *other = &plan->pieces[plan->by_board[i]];
        if (other != piece && other->offset >= end && other->offset - larger(piece->right_kerf, other->left_kerf) < to)
            return false;
    }
    for (int i = 0; i < wall->hung_losses.count; i++) {
        const HungLoss *loss = &wall->hung_losses.at[i];
        if (loss->board == piece->board && loss->offset + loss->length > end &&
            loss->offset - larger(piece->right_kerf, wall->saw.kerf) < to)
            return false;
    }
    return true;
}

void closers_settle(const Layout *layout, Plan *plan)
{
    const Wall *wall = layout->wall;
    plan->closers = 0;
    plan->closers_off = 0;
    for (int i = 0; i < plan->piece_count; i++) {
        Piece *piece = &plan->pieces[i];
        if (!piece->hung) {
            const bool is_closer = wall->joints.closer > 0 && closes(layout, plan, i);
            piece->closer = is_closer && has_room(wall, plan, piece, wall->joints.closer) ? wall->joints.closer : 0;
            piece->closer_off = is_closer && piece->closer == 0;
        }
        plan->closers += piece->closer;
        plan->closers_off += piece->closer_off;
    }
}
