#include "trade/shown.h"

#include "trade/say.h"

#include <inttypes.h>

/* The first cutout over `x` of the face. */
static int opening_over(const Cutouts *cutouts, Length x)
{
    for (int i = 0; i < cutouts->count; i++)
        if (cutouts->at[i].box.left <= x && x <= cutouts->at[i].box.right)
            return cutouts->at[i].opening;
    return -1;
}

ShownList shown_on_piece(Arena *arena, const Layout *layout, const Piece *piece)
{
    const FaceLayout *face = &layout->faces[piece->face];
    const Stock *stock = wall_board(layout->wall, piece->board);
    ShownList list = {0};
    if (stock == NULL || stock->show.count == 0)
        return list;
    const Cutouts cutouts = layout_cutouts(arena, face, &face->courses[piece->course], piece->left, piece->right);
    for (int i = 0; i < stock->show.count; i++) {
        const Show *show = &stock->show.at[i];
        const Length along = show->at - piece->offset;
        if (along < 0 || along > piece->right - piece->left)
            continue;
        *arena_push(arena, &list) = (Shown){.what = show->what,
                                            .on_board = show->at,
                                            .on_piece = along,
                                            .at = piece->left + along,
                                            .opening = opening_over(&cutouts, piece->left + along)};
    }
    return list;
}

static Finding shown_finding(Arena *arena, const Layout *layout, const Piece *piece, const Shown *shown)
{
    const Wall *wall = layout->wall;
    const Face *face = &wall->faces.at[piece->face];
    Finding finding = finding_of(RULE_SHOW);
    finding.face = piece->face;
    finding.has_course = true;
    finding.course = layout->faces[piece->face].courses[piece->course].number;
    finding.has_at = true;
    finding.at = shown->at;
    finding.piece = piece->number;
    finding.board = piece->board;
    finding.opening = shown->opening;
    const char *cut =
        shown->opening < 0 ? "" : say(arena, "; the cut for %s may take it", face->openings.at[shown->opening].name);
    const char *place = say_place(arena, wall, shown->at);
    finding.text = say(arena,
                       "Board %d shows \"%s\" %s from its first end. It comes to be %s from the left end of %s (course "
                       "%" PRId64 ", piece %d)%s. Paint the wall behind it before you hang the piece, or enter that "
                       "part of the board as one to avoid.",
                       piece->board, shown->what, say_place(arena, wall, shown->on_board), place, face->name,
                       finding.course, piece->number, cut);
    finding.lead = "These places on the boards are worth seeing. Paint the wall behind a hole before you hang its "
                   "piece, or enter that part of the board as one to avoid:";
    finding.item = say(arena, "%s %s from the left end of %s (course %" PRId64 ", piece %d, board %d)%s", shown->what,
                       place, face->name, finding.course, piece->number, piece->board, cut);
    return finding;
}

/* Most walls have no such board: their pieces need no look. */
static bool any_shows(const Wall *wall)
{
    for (int i = 0; i < wall->stock.count; i++)
        if (wall->stock.at[i].show.count > 0)
            return true;
    return false;
}

void shown_findings(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings)
{
    const int count = any_shows(layout->wall) ? plan->piece_count : 0;
    for (int i = 0; i < count; i++) {
        if (plan->pieces[i].hung && !plan->pieces[i].cut)
            continue;
        const ShownList list = shown_on_piece(arena, layout, &plan->pieces[i]);
        for (int k = 0; k < list.count; k++)
            *arena_push(arena, findings) = shown_finding(arena, layout, &plan->pieces[i], &list.at[k]);
    }
}
