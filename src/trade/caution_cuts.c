#include "trade/caution_cuts.h"

#include "layout/notch.h"
#include "trade/say.h"

#include <inttypes.h>

/*
 *           upper edge
 *         /-----------\        an end that is cut on a slant is part of no edge
 *        /             |
 *       /      +---+   |       a notch is as deep as it reaches in from the outline
 *      /_______|   |___|
 *           lower edge
 */

/* Common practice: shorter than a hand is wide, and an edge that leaves a point. */
#define LONGER_LEAST (4 * LENGTH_INCH)
#define SHORTER_LEAST LENGTH_INCH

static Length lesser(Length a, Length b)
{
    return a < b ? a : b;
}

static Length greater(Length a, Length b)
{
    return a > b ? a : b;
}

/* A finding at `at` of the piece. */
static Finding piece_finding(Rule rule, const Layout *layout, const Piece *piece, Length at)
{
    Finding finding = finding_of(rule);
    finding.face = piece->face;
    finding.has_course = true;
    finding.course = layout->faces[piece->face].courses[piece->course].number;
    finding.has_at = true;
    finding.at = at;
    finding.piece = piece->number;
    finding.board = piece->board;
    return finding;
}

/* ---- pieces too short to hold ---- */

/* Lengths of the lower and the upper edge: the parts of the outline no steeper than 1 in 12. */
static void edge_lengths(const Points *outline, Length *lower, Length *upper)
{
    *lower = *upper = 0;
    for (int i = 0; i < outline->count; i++) {
        const Point a = outline->at[i], b = outline->at[(i + 1) % outline->count];
        const Length run = a.x < b.x ? b.x - a.x : a.x - b.x, rise = a.y < b.y ? b.y - a.y : a.y - b.y;
        if (rise > run / 12)
            continue;
        *(a.x < b.x ? lower : upper) += run;
    }
}

/* How many of the piece's ends are mitered round an outside corner. */
static int mitered_ends(const Layout *layout, const Piece *piece)
{
    const Segment *segment = &layout->faces[piece->face].courses[piece->course].segments[piece->segment];
    bool through;
    const Corner left = wall_corner_left(layout->wall, piece->face, &through);
    const Corner right = wall_corner_right(layout->wall, piece->face, &through);
    int count = piece->left == segment->left && segment->left_end == SEGMENT_AT_SIDE && left.kind == CORNER_OUTSIDE &&
                left.joint == CORNER_MITER;
    count += piece->right == segment->right && segment->right_end == SEGMENT_AT_SIDE && right.kind == CORNER_OUTSIDE &&
             right.joint == CORNER_MITER;
    return count;
}

static void check_length(Arena *arena, const Layout *layout, const Piece *piece, const Points *outline,
                         Findings *findings)
{
    const Wall *wall = layout->wall;
    Length lower, upper;
    edge_lengths(outline, &lower, &upper);
    const Length longer = greater(lower, upper);
    const Length shorter = lesser(lower, upper) - mitered_ends(layout, piece) * wall->planks.thickness;
    if (longer >= LONGER_LEAST && shorter >= SHORTER_LEAST)
        return;
    Finding finding = piece_finding(RULE_STUB, layout, piece, piece->left);
    const char *size = longer < LONGER_LEAST ? say(arena, "%s long", say_length(arena, wall, longer))
                       : shorter <= 0        ? "pointed: its shorter edge is nothing"
                                             : say(arena, "%s at its shorter edge", say_length(arena, wall, shorter));
    finding.text =
        say(arena,
            "Piece %d (course %" PRId64 " of %s) is %s: hard to hold at the saw, and quick to split. Cut it off "
            "a longer board that is clamped, or move the joint.",
            piece->number, finding.course, wall->faces.at[piece->face].name, size);
    finding.lead = "These pieces are hard to hold at the saw, and quick to split. Cut them off longer boards that are "
                   "clamped, or move the joints:";
    finding.item = say(arena, "piece %d (course %" PRId64 ", %s)", piece->number, finding.course, size);
    *arena_push(arena, findings) = finding;
}

/* ---- notches too shallow to cut ---- */

static void check_cutouts(Arena *arena, const Layout *layout, const Piece *piece, const Points *outline,
                          Findings *findings)
{
    const Wall *wall = layout->wall;
    const FaceLayout *face = &layout->faces[piece->face];
    const Cutouts cutouts = layout_cutouts(arena, face, &face->courses[piece->course], piece->left, piece->right);
    for (int i = 0; i < cutouts.count; i++) {
        const Cutout *cut = &cutouts.at[i];
        const Length depth = notch_depth(cut, outline, piece->left, piece->right);
        if (depth >= NOTCH_LEAST)
            continue;
        Finding finding = piece_finding(RULE_SHALLOW, layout, piece, cut->box.left);
        const char *opening = wall->faces.at[piece->face].openings.at[cut->opening].name;
        finding.opening = cut->opening;
        finding.text =
            say(arena,
                "The notch for %s in piece %d (course %" PRId64 " of %s) is nowhere deeper than %s: plane it "
                "off, or move the courses a mark or two so that none is needed.",
                opening, piece->number, finding.course, wall->faces.at[piece->face].name, say_fine(arena, wall, depth));
        finding.lead =
            "These notches are nowhere 1/8 in (3 mm) deep: plane them off, or move the courses a mark or two "
            "so that none is needed:";
        finding.item = say(arena, "for %s in piece %d (course %" PRId64 ", %s)", opening, piece->number, finding.course,
                           say_fine(arena, wall, depth));
        *arena_push(arena, findings) = finding;
    }
}

/* ---- a saw that takes nothing ---- */

static void check_kerf(const Layout *layout, const Plan *plan, Arena *arena, Findings *findings)
{
    bool cut_in_two = false;
    for (int i = 0; i < plan->board_count && !cut_in_two; i++)
        cut_in_two = plan->boards[i].count > 1;
    if (layout->wall->saw.kerf > 0 || !cut_in_two)
        return;
    Finding finding = finding_of(RULE_KERF);
    finding.text =
        "No kerf is given, and boards are cut in two: each cut takes as much as the blade is thick, often 1/8 in "
        "(3 mm). Measure a cut of your saw and enter it as the kerf, or the last piece of a board comes out too "
        "short.";
    *arena_push(arena, findings) = finding;
}

void cut_findings(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings)
{
    check_kerf(layout, plan, arena, findings);
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        if (piece->hung)
            continue;
        const FaceLayout *face = &layout->faces[piece->face];
        const Points outline = layout_outline(arena, face, &face->courses[piece->course], piece->left, piece->right);
        check_length(arena, layout, piece, &outline, findings);
        check_cutouts(arena, layout, piece, &outline, findings);
    }
}
