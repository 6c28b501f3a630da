#include "trade/caution_electric.h"

#include "trade/say.h"
#include "trade/studs.h"
#include "trade/trim_runs.h"
#include "trade/wood_near.h"

/*
 * NEC 314.20: in a wall of wood or other combustible material a box's front edge is flush with the finished surface or
 * stands out of it. NEC 300.4(A)(1): cables in bored holes stand at least 1 1/4 in behind the stud's edge, or a steel
 * plate covers them; beside studs and in old walls they may run anywhere.
 */
#define CABLE_DEPTH (LENGTH_INCH * 5 / 4)

static const char *const power_off =
    "Switch the power off and test that it is off before you cut, fasten or open anything near it, never cover a box, "
    "and ask a licensed electrician and the local code.";

static Box as_written(const Layout *layout, int face, int index)
{
    const Box box = layout->faces[face].openings[index];
    const Length clear = layout->wall->faces.at[face].openings.at[index].clear;
    return (Box){box.left + clear, box.right - clear, box.bottom + clear, box.top - clear};
}

Covers covers_of(Arena *arena, const Layout *layout)
{
    Covers covers = {.strips = trim_strips(arena, layout, NULL)};
    covers.parts = arena_array(arena, WoodPart, covers.strips.count);
    for (int i = 0; i < covers.strips.count; i++)
        covers.parts[i] = trim_strip_part(arena, layout, &covers.strips.at[i]);
    return covers;
}

/* Whether a strip lies over the opening; a casing does not lie over what it is put around. */
static bool lies_over(const Layout *layout, const Covers *covers, int index_of_strip, int face, int index)
{
    const TrimStrip *strip = &covers->strips.at[index_of_strip];
    if (strip->face != face || strip->opening == index)
        return false;
    const Box box = as_written(layout, face, index);
    if (!wood_covers(&covers->parts[index_of_strip], &box))
        return false;
    if (strip->opening < 0)
        return true;
    const Box within = as_written(layout, face, strip->opening); /* there is no casing */
    return box.left < within.left || box.right > within.right || box.bottom < within.bottom || box.top > within.top;
}

/* The thickest strip over the opening, NULL where none is. */
static const TrimStrip *strip_over(const Layout *layout, const Covers *covers, int face, int index)
{
    const TrimStrip *thickest = NULL;
    for (int i = 0; i < covers->strips.count; i++)
        if (lies_over(layout, covers, i, face, index) &&
            (!thickest || covers->strips.at[i].thickness > thickest->thickness))
            thickest = &covers->strips.at[i];
    return thickest;
}

/* The face round an inside corner whose backing and planks come in front of the opening, or of a box's plate; NULL
 * where none do. Sides count as plumb. */
static const Face *corner_over(const Layout *layout, int face, int index)
{
    const Wall *wall = layout->wall;
    const Face *of = &wall->faces.at[face];
    const Opening *box = &of->openings.at[index];
    const int count = wall->faces.count;
    const Length more = box->plate.given && box->plate.width > box->width ? (box->plate.width - box->width) / 2 : 0;
    bool through;
    for (int side = 0; side < 2; side++) {
        const Corner corner =
            side == 0 ? wall_corner_left(wall, face, &through) : wall_corner_right(wall, face, &through);
        const int other = (face + (side == 0 ? count - 1 : 1)) % count;
        const Length out = wall->faces.at[other].backing + wall->planks.thickness;
        if (corner.kind != CORNER_INSIDE || layout->faces[other].course_count == 0)
            continue;
        if (side == 0 ? box->left - more < out : box->left + box->width + more > of->width - out)
            return &wall->faces.at[other];
    }
    return NULL;
}

bool box_extender(const Layout *layout, const Covers *covers, int face, int opening, Length *depth)
{
    const Wall *wall = layout->wall;
    const TrimStrip *strip = strip_over(layout, covers, face, opening);
    *depth = wall->faces.at[face].backing + wall->planks.thickness + (strip ? strip->thickness : 0) -
             wall->faces.at[face].openings.at[opening].front;
    return strip || opening_cuts(&layout->faces[face], opening);
}

static Finding opening_finding(Rule rule, int face, int opening)
{
    Finding finding = finding_of(rule);
    finding.face = face;
    finding.opening = opening;
    return finding;
}

/* What comes in front of a box: planks round a corner, a strip of trim; "" where nothing does. */
static const char *over_words(Arena *arena, const TrimStrip *strip, const Face *corner)
{
    if (corner)
        return say(arena,
                   " In the corner the planks of %s come in front of it or of its plate: have it moved, or end them "
                   "before it.",
                   corner->name);
    return strip
               ? say(arena, " A strip of trim (%s) lies over it: cut the strip around it or keep it away.", strip->name)
               : "";
}

static void check_box(Arena *arena, const Layout *layout, const Covers *covers, int face, int index, Findings *findings)
{
    const Wall *wall = layout->wall;
    const Opening *box = &wall->faces.at[face].openings.at[index];
    Length depth;
    const Face *corner = corner_over(layout, face, index);
    if (!box_extender(layout, covers, face, index, &depth) && corner == NULL)
        return;
    const TrimStrip *strip = strip_over(layout, covers, face, index);
    const char *over = over_words(arena, strip, corner);
    Finding finding = opening_finding(RULE_BOX, face, index);
    const char *by = depth > 0 ? say_length(arena, wall, depth) : "";
    if (depth > 0)
        finding.text = say(arena,
                           "The front edge of %s ends %s behind the face of the wood around it. Codes ask for it to be "
                           "flush with wood, by an extender of that depth.%s %s",
                           box->name, by, over, power_off);
    else
        finding.text = say(arena, "Wood is cut around %s, whose front edge comes out as far as the wood.%s %s",
                           box->name, over, power_off);
    if (!strip && !corner) {
        finding.lead = depth > 0
                           ? say(arena,
                                 "The front edges of these end behind the face of the wood around them. Codes ask "
                                 "for them to be flush with wood, by extenders of that depth. %s These are:",
                                 power_off)
                           : say(arena,
                                 "Wood is cut around these, whose front edges come out as far as the wood. %s "
                                 "These are:",
                                 power_off);
        finding.item = depth > 0 ? say(arena, "%s (by %s)", box->name, by) : box->name;
    }
    *arena_push(arena, findings) = finding;
}

/* An opening that planks round a corner would stand in front of was measured from elsewhere, or they must end before
 * it: a vent that is covered no longer draws. */
static void check_corner(Arena *arena, const Layout *layout, int face, int index, Findings *findings)
{
    const Opening *opening = &layout->wall->faces.at[face].openings.at[index];
    const Face *corner = opening->kind == OPENING_STOVE ? NULL : corner_over(layout, face, index);
    if (!corner)
        return;
    Finding finding = opening_finding(RULE_RANGE, face, index);
    finding.text = say(
        arena,
        "The opening %s lies so near the corner that the planks of %s come in front of it. Check where it is measured "
        "from, or end them before it.",
        opening->name, corner->name);
    *arena_push(arena, findings) = finding;
}

static void check_covered(Arena *arena, const Layout *layout, const Covers *covers, int face, int index,
                          Findings *findings)
{
    const Opening *opening = &layout->wall->faces.at[face].openings.at[index];
    const TrimStrip *strip = strip_over(layout, covers, face, index);
    if (!strip || opening->kind == OPENING_STOVE)
        return;
    Finding finding = opening_finding(RULE_TRIM, face, index);
    finding.text = say(arena, "A strip of trim (%s) lies over %s. Cut it around that, end it there, or leave it out.",
                       strip->name, opening->name);
    *arena_push(arena, findings) = finding;
}

/* ---- what a fastener may meet ---- */

static int pieces_between_studs(const Layout *layout, const Plan *plan, int face)
{
    int count = 0;
    for (int i = 0; i < plan->piece_count; i++)
        count += plan->pieces[i].face == face && studs_missing(layout, &plan->pieces[i]);
    return count;
}

/* How far they go in, as far as it is known. */
static const char *depth_words(Arena *arena, const Wall *wall, int face)
{
    const char *into = wall->faces.at[face].wall == FACE_STUDS        ? "the studs"
                       : wall->faces.at[face].wall == FACE_SOLID_WOOD ? "the wood behind"
                                                                      : "the masonry";
    const char *none = wall->fasteners.drywall > 0 ? "" : ", drywall counted as none";
    if (!wall->fasteners.length_given)
        return say(arena, "No fastener length is entered, so that it is not known how far they go into %s%s.", into,
                   none);
    const Length bite = wall->fasteners.length - fastener_stack(wall, face);
    const char *length = say_length(arena, wall, wall->fasteners.length);
    if (bite <= 0)
        return say(arena, "Fasteners of %s end before %s%s, but in a hollow or with a thinner plank they go deeper.",
                   length, into, none);
    if (bite > CABLE_DEPTH)
        return say(arena,
                   "Fasteners of %s reach %s into %s%s, more than the %s behind which codes let cables run without a "
                   "steel plate: take shorter ones.",
                   length, say_length(arena, wall, bite), into, none, say_length(arena, wall, CABLE_DEPTH));
    return say(arena,
               "Fasteners of %s reach %s into %s%s; cables and pipes may lie nearer to the surface than that, against "
               "the rules or behind a plate.",
               length, say_length(arena, wall, bite), into, none);
}

static const char *place_words(Arena *arena, const Layout *layout, const Plan *plan, int face)
{
    const Face *of = &layout->wall->faces.at[face];
    if (of->wall == FACE_MASONRY)
        return " Cables, pipes and flues may run in chases of the masonry.";
    if (of->wall == FACE_SOLID_WOOD)
        return " Cables may run in grooves or holes of the wood.";
    if (!of->studs.given)
        return " No studs are known there: a fastener may go into the hollow, where cables and pipes run.";
    const int between = pieces_between_studs(layout, plan, face);
    const char *assumed = of->studs.regular ? " Evenly spaced studs are assumed; find each one." : "";
    if (between == 0)
        return assumed;
    return say(arena, "%s Behind %s no stud stands: a fastener there goes into the hollow, where cables and pipes run.",
               assumed, say_count(arena, between, "piece", "pieces"));
}

static bool has_trim(const Covers *covers, int face)
{
    for (int i = 0; i < covers->strips.count; i++)
        if (covers->strips.at[i].face == face)
            return true;
    return false;
}

static void check_wires(Arena *arena, const Layout *layout, const Plan *plan, const Covers *covers, int face,
                        Findings *findings)
{
    if (layout->faces[face].course_count == 0 && !has_trim(covers, face))
        return;
    Finding finding = finding_of(RULE_WIRE);
    finding.face = face;
    finding.text = say(arena,
                       "%s%s Find what runs in %s before you fasten, switch off the power of its circuits, and ask a "
                       "licensed electrician or plumber where it is not certain.",
                       depth_words(arena, layout->wall, face), place_words(arena, layout, plan, face),
                       layout->wall->faces.at[face].name);
    *arena_push(arena, findings) = finding;
}

void electric_findings(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings)
{
    const Wall *wall = layout->wall;
    const Covers covers = covers_of(arena, layout);
    for (int face = 0; face < wall->faces.count; face++) {
        check_wires(arena, layout, plan, &covers, face, findings);
        for (int i = 0; i < wall->faces.at[face].openings.count; i++)
            if (wall->faces.at[face].openings.at[i].kind == OPENING_BOX) {
                check_box(arena, layout, &covers, face, i, findings);
            } else {
                check_covered(arena, layout, &covers, face, i, findings);
                check_corner(arena, layout, face, i, findings);
            }
    }
}
