#include "trade/caution.h"

#include "trade/say.h"
#include "trade/studs.h"

#include <inttypes.h>

/*
 * A section through plank and wall, the fastener from the left:
 *
 *     plank   backing  drywall    stud
 *     |<-t->|<---u--->|<----b---->|<- - - - - - - -
 *     ================================>              length
 *                                 |<-->| bite = length - t - u - b
 *
 * What is electric is in caution_electric.c.
 */

/* Common practice: 3/4 in at the least into what holds it. */
#define LEAST_BITE (LENGTH_INCH * 3 / 4)

/* ---- boxes and their plates ---- */

static Finding opening_finding(Rule rule, int face, int opening)
{
    Finding finding = finding_of(rule);
    finding.face = face;
    finding.opening = opening;
    return finding;
}

static void check_plate(Arena *arena, const Layout *layout, int face, int index, Findings *findings)
{
    const Wall *wall = layout->wall;
    const Opening *opening = &wall->faces.at[face].openings.at[index];
    const Box *cut = &layout->faces[face].openings[index];
    Length width = cut->right - cut->left;
    Length height = cut->top - cut->bottom;
    if (width <= opening->plate.width && (height <= opening->plate.height || opening->to_floor))
        return;
    Finding finding = opening_finding(RULE_PLATE, face, index);
    finding.text = say(
        arena,
        "The cover plate of %s, %s by %s, does not hide the cut of %s by %s. Cut closer, or take a larger "
        "plate that its box is made for.",
        opening->name, say_length(arena, wall, opening->plate.width), say_length(arena, wall, opening->plate.height),
        say_length(arena, wall, width), say_length(arena, wall, height));
    *arena_push(arena, findings) = finding;
}

static void check_openings(Arena *arena, const Layout *layout, Findings *findings)
{
    for (int face = 0; face < layout->wall->faces.count; face++)
        for (int i = 0; i < layout->wall->faces.at[face].openings.count; i++) {
            const Opening *opening = &layout->wall->faces.at[face].openings.at[i];
            if (opening->kind != OPENING_BOX || !opening_cuts(&layout->faces[face], i))
                continue;
            if (opening->plate.given)
                check_plate(arena, layout, face, i, findings);
        }
}

/* ---- fasteners ---- */

static Finding face_finding(Rule rule, int face)
{
    Finding finding = finding_of(rule);
    finding.face = face;
    return finding;
}

static void check_bite(Arena *arena, const Wall *wall, int face, Findings *findings)
{
    const Length stack = fastener_stack(wall, face);
    const Length bite = wall->fasteners.length - stack;
    const bool studs = wall->faces.at[face].wall == FACE_STUDS;
    if (bite >= LEAST_BITE || wall->faces.at[face].wall == FACE_MASONRY)
        return;
    const char *into = studs ? "into the stud" : "into the wood behind";
    Finding finding = face_finding(RULE_NAIL, face);
    finding.text = say(
        arena,
        "Fasteners of %s %s on %s: plank, backing and drywall take %s%s. Common practice is %s %s at the least, here a "
        "fastener of %s.",
        say_length(arena, wall, wall->fasteners.length),
        bite <= 0 ? (studs ? "do not reach the stud" : "do not reach the wood behind")
                  : say(arena, "go only %s %s", say_length(arena, wall, bite), into),
        wall->faces.at[face].name, say_length(arena, wall, stack),
        wall->fasteners.drywall > 0 ? "" : " (drywall counted as none)", say_length(arena, wall, LEAST_BITE), into,
        say_length(arena, wall, stack + LEAST_BITE));
    *arena_push(arena, findings) = finding;
}

/* What a piece lacks, for one of its kind and for several; `lead` NULL: nothing. */
typedef struct Lack {
    const char *text, *lead; /* `text` goes on behind "piece 7 (course 5 of north, ...)" */
} Lack;

static const Lack no_stud = {
    "no stud stands behind it: a fastener there holds nothing. Glue it, give it a backing strip or an anchor made for "
    "hollow walls, or move the joint.",
    "No stud stands behind these pieces: a fastener there holds nothing. Glue them, give them a backing strip or an "
    "anchor made for hollow walls, or move the joints:"};
static const Lack only_at_end = {"its only stud stands less than 3/4 in from an end: a fastener there splits the end "
                                 "and holds nothing. Glue it, give "
                                 "it a backing strip, or move the joint.",
                                 "These pieces have a stud only less than 3/4 in from an end: a fastener there splits "
                                 "the end and holds nothing. Glue "
                                 "them, give them a backing strip, or move the joints:"};
static const Lack one_stud = {
    "one stud alone holds it, and it can turn on that. Glue it too, give it a backing strip, or move the joint.",
    "One stud alone holds each of these pieces, and they can turn on it. Glue them too, give them a backing strip, or "
    "move "
    "the joints:"};
static const Lack overhang = {
    "an end stands out more than 16 in beyond the last stud that holds it. Glue that end, give it a backing strip, or "
    "move "
    "the joint.",
    "An end of these pieces stands out more than 16 in beyond the last stud that holds it. Glue that end, give it a "
    "backing strip, or move the joint:"};

static const Lack *lack_of(const Layout *layout, const Piece *piece)
{
    const Face *face = &layout->wall->faces.at[piece->face];
    if (face->wall != FACE_STUDS || !face->studs.given)
        return NULL;
    if (studs_missing(layout, piece))
        return &no_stud;
    const Hold hold = studs_holding(layout, piece);
    if (hold.studs == 0)
        return &only_at_end;
    if (hold.left > OVERHANG_MOST || hold.right > OVERHANG_MOST)
        return &overhang;
    return hold.studs == 1 ? &one_stud : NULL;
}

static void check_piece(Arena *arena, const Layout *layout, const Piece *piece, Findings *findings)
{
    const Wall *wall = layout->wall;
    const Course *course = &layout->faces[piece->face].courses[piece->course];
    const Lack *lack = lack_of(layout, piece);
    if (lack == NULL)
        return;
    Finding finding = face_finding(RULE_ANCHOR, piece->face);
    finding.has_course = true;
    finding.course = course->number;
    finding.has_at = true;
    finding.at = piece->left;
    finding.piece = piece->number;
    const char *stretch = say(arena, "%s from %s", say_length(arena, wall, piece->right - piece->left),
                              say_place(arena, wall, piece->left));
    finding.text = say(arena, "Piece %d (course %" PRId64 " of %s, %s): %s", piece->number, course->number,
                       wall->faces.at[piece->face].name, stretch, lack->text);
    finding.lead = lack->lead;
    finding.item = lack == &one_stud
                       ? say(arena, "%d", piece->number)
                       : say(arena, "piece %d (course %" PRId64 ", %s)", piece->number, course->number, stretch);
    *arena_push(arena, findings) = finding;
}

/* What holds planks on this face, where that is not studs whose places are entered; NULL where it is. */
static const char *anchor_words(Arena *arena, const Face *face)
{
    if (face->wall == FACE_MASONRY)
        return say(arena,
                   "The wall of %s is masonry: nails made for studs do not hold in it. Put up furring strips with "
                   "anchors made for "
                   "that masonry, and fasten to them, or glue.%s",
                   face->name,
                   face->studs.given ? " Studs are entered for it too: remove them, or enter furring strips as backing."
                                     : "");
    if (face->wall == FACE_STUDS && !face->studs.given)
        return say(arena,
                   "No studs are entered for %s. Find them and mark their centers; do not assume where they are.",
                   face->name);
    return NULL;
}

static void check_fasteners(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings)
{
    const Wall *wall = layout->wall;
    for (int face = 0; face < wall->faces.count; face++) {
        if (layout->faces[face].course_count == 0)
            continue;
        if (wall->fasteners.length_given)
            check_bite(arena, wall, face, findings);
        const char *anchor = anchor_words(arena, &wall->faces.at[face]);
        if (!anchor)
            continue;
        Finding finding = face_finding(RULE_ANCHOR, face);
        finding.text = anchor;
        *arena_push(arena, findings) = finding;
    }
    for (int i = 0; i < plan->piece_count; i++)
        check_piece(arena, layout, &plan->pieces[i], findings);
}

void caution_findings(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings)
{
    check_openings(arena, layout, findings);
    check_fasteners(arena, layout, plan, findings);
}
