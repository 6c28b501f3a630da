#include "fill/steady/same.h"

static bool same_mark(Length a, Length b, Length round)
{
    return length_round(a, round) == length_round(b, round);
}

int64_t same_course(const Layout *layout, const Piece *piece)
{
    return layout->faces[piece->face].courses[piece->course].number;
}

bool same_piece(const Layout *layout, const Piece *piece, const Layout *other_layout, const Piece *other)
{
    Length round = layout->wall->round;
    return piece->face == other->face && piece->board == other->board &&
           same_course(layout, piece) == same_course(other_layout, other) &&
           same_mark(piece->offset, other->offset, round) && same_mark(piece->left, other->left, round) &&
           same_mark(piece->right, other->right, round);
}

/* Whether the record tells of the piece: to the nanometer, or as near as marks tell. */
static bool tells_of(const Layout *layout, const HungPiece *record, const Hung *hung, const Piece *piece, Length round)
{
    bool ends = (same_mark(piece->left, record->left, round) && same_mark(piece->right, record->right, round)) ||
                (same_mark(piece->left, hung->left, round) && same_mark(piece->right, hung->right, round));
    return ends && piece->face == hung->face && same_course(layout, piece) == record->course &&
           (!record->offset_given || same_mark(piece->offset, record->offset, round));
}

int same_recorded(const Layout *layout, const Plan *plan, const HungPiece *record, const Hung *hung, const bool *taken)
{
    const Length rounds[] = {1, layout->wall->round};
    if (record->board < 1 || record->board > plan->board_count)
        return -1;
    const BoardUse *use = &plan->boards[record->board - 1];
    for (int pass = 0; pass < 2; pass++)
        for (int i = use->first; i < use->first + use->count; i++) {
            int piece = plan->by_board[i];
            if (!taken[piece] && tells_of(layout, record, hung, &plan->pieces[piece], rounds[pass]))
                return piece;
        }
    return -1;
}
