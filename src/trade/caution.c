#include "trade/caution.h"

#include "trade/caution_fire.h"
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
 * Electrical figures are those of the National Electrical Code (NFPA 70); the program defers to the code in force where
 * the wall stands.
 */

/* NEC 300.4(A)(1): cables in bored holes stand at least 1 1/4 in behind the stud's edge, or a steel plate covers them.
 */
#define CABLE_DEPTH (LENGTH_INCH * 5 / 4)

/* Common practice: 3/4 in at the least into what holds it. */
#define LEAST_BITE (LENGTH_INCH * 3 / 4)

/* ---- boxes and their plates ---- */

static bool is_cut(const FaceLayout *face, int opening)
{
    for (int i = 0; i < face->course_count; i++)
        for (int j = 0; j < face->courses[i].cut_count; j++)
            if (face->courses[i].cuts[j].opening == opening)
                return true;
    return false;
}

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

/* NEC 314.20: in a wall of wood or other combustible material the box's front edge is flush with the finished surface
 * or stands out of it. */
static void check_box(Arena *arena, const Layout *layout, int face, int index, Findings *findings)
{
    const Wall *wall = layout->wall;
    const Opening *opening = &wall->faces.at[face].openings.at[index];
    Length depth = wall->faces.at[face].backing + wall->planks.thickness - opening->front;
    if (depth <= 0)
        return;
    Finding finding = opening_finding(RULE_BOX, face, index);
    finding.text =
        say(arena,
            "The front edge of %s ends %s behind the face of the planks. Codes ask for it to be flush with wood, by an "
            "extender of that depth. Switch the power off and test that it is off before a box is opened; ask a "
            "licensed electrician and the local code.",
            opening->name, say_length(arena, wall, depth));
    finding.lead = "The front edges of these end behind the face of the planks. Codes ask for them to be flush with "
                   "wood, by extenders of that depth. Switch the power off and test that it is off before a box is "
                   "opened; ask a licensed electrician and the local code:";
    finding.item = say(arena, "%s (by %s)", opening->name, say_length(arena, wall, depth));
    *arena_push(arena, findings) = finding;
}

static void check_openings(Arena *arena, const Layout *layout, Findings *findings)
{
    for (int face = 0; face < layout->wall->faces.count; face++)
        for (int i = 0; i < layout->wall->faces.at[face].openings.count; i++) {
            const Opening *opening = &layout->wall->faces.at[face].openings.at[i];
            if (opening->kind != OPENING_BOX || !is_cut(&layout->faces[face], i))
                continue;
            if (opening->plate.given)
                check_plate(arena, layout, face, i, findings);
            check_box(arena, layout, face, i, findings);
        }
}

/* ---- fasteners ---- */

/* What a fastener goes through on a face before it reaches a stud. */
static Length stack_of(const Wall *wall, int face)
{
    return wall->planks.thickness + wall->faces.at[face].backing + wall->fasteners.drywall;
}

static Finding face_finding(Rule rule, int face)
{
    Finding finding = finding_of(rule);
    finding.face = face;
    return finding;
}

static void check_bite(Arena *arena, const Wall *wall, int face, Findings *findings)
{
    Length stack = stack_of(wall, face);
    Length bite = wall->fasteners.length - stack;
    if (bite < LEAST_BITE) {
        Finding finding = face_finding(RULE_NAIL, face);
        finding.text = say(
            arena,
            "Fasteners of %s %s on %s: plank, backing and drywall take %s. Common practice is %s into the stud at "
            "the least, here a fastener of %s.",
            say_length(arena, wall, wall->fasteners.length),
            bite <= 0 ? "do not reach the stud" : say(arena, "go only %s into the stud", say_length(arena, wall, bite)),
            wall->faces.at[face].name, say_length(arena, wall, stack), say_length(arena, wall, LEAST_BITE),
            say_length(arena, wall, stack + LEAST_BITE));
        *arena_push(arena, findings) = finding;
    }
    if (bite > CABLE_DEPTH) {
        Finding finding = face_finding(RULE_WIRE, face);
        finding.text = say(
            arena,
            "Fasteners of %s reach %s into the studs of %s: cables and pipes may run from %s in. Take shorter ones, "
            "and find what runs in the wall before fastening.",
            say_length(arena, wall, wall->fasteners.length), say_length(arena, wall, bite), wall->faces.at[face].name,
            say_length(arena, wall, CABLE_DEPTH));
        *arena_push(arena, findings) = finding;
    }
}

/* A piece that no stud stands behind: what it could be held by, and what a fastener that goes through may meet. */
static void check_piece(Arena *arena, const Layout *layout, const Piece *piece, Findings *findings)
{
    const Wall *wall = layout->wall;
    const Course *course = &layout->faces[piece->face].courses[piece->course];
    bool reaches = wall->fasteners.length_given && wall->fasteners.length > stack_of(wall, piece->face);
    Finding finding = face_finding(reaches ? RULE_WIRE : RULE_ANCHOR, piece->face);
    finding.has_course = true;
    finding.course = course->number;
    finding.has_at = true;
    finding.at = piece->left;
    finding.piece = piece->number;
    const char *stretch = say(arena, "%s from %s", say_length(arena, wall, piece->right - piece->left),
                              say_place(arena, wall, piece->left));
    const char *glue = reaches ? "A fastener there holds nothing and may reach a cable or pipe: glue" : "Glue";
    finding.text = say(arena,
                       "No stud stands behind piece %d (course %" PRId64 " of %s, %s). %s it, give it a backing strip "
                       "or an anchor made for hollow walls, or move the joint.",
                       piece->number, course->number, wall->faces.at[piece->face].name, stretch, glue);
    finding.lead = say(arena,
                       "No stud stands behind these pieces. %s them, give them a backing strip or an anchor made for "
                       "hollow walls, or move the joints:",
                       glue);
    finding.item = say(arena, "piece %d (course %" PRId64 ", %s)", piece->number, course->number, stretch);
    *arena_push(arena, findings) = finding;
}

static void check_fasteners(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings)
{
    const Wall *wall = layout->wall;
    for (int face = 0; face < wall->faces.count; face++) {
        if (layout->faces[face].course_count == 0)
            continue;
        if (wall->fasteners.length_given)
            check_bite(arena, wall, face, findings);
        if (!wall->faces.at[face].studs.given) {
            Finding finding = face_finding(RULE_ANCHOR, face);
            finding.text = say(arena,
                               "No studs are written down for %s. Find them and mark their centres (`studs`), do not "
                               "assume where they are.",
                               wall->faces.at[face].name);
            *arena_push(arena, findings) = finding;
        }
    }
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        if (wall->faces.at[piece->face].studs.given &&
            studs_between(&layout->faces[piece->face].studs, piece->left, piece->right) == 0)
            check_piece(arena, layout, piece, findings);
    }
}

void caution_findings(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings)
{
    check_openings(arena, layout, findings);
    fire_findings(arena, layout, findings);
    check_fasteners(arena, layout, plan, findings);
}
