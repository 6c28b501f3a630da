#include "trade/trim_runs.h"

#include "trade/corner_angle.h"
#include "trade/say.h"
#include "trade/trim_level.h"
#include "trade/trim_slope.h"
#include "wall/straight.h"

#include <stdlib.h>
#include <string.h>

/*
 * Strips that stand, and casings. A strip that stands reaches from what lies along the floor to what hangs along the
 * ceiling, or from bare to bare:
 *
 *     ===================  strip along the ceiling
 *     |   |                from here ...
 *     |   |
 *     |   |                ... to here
 *     ===================  strip along the floor
 *
 * At an outside corner two strips, bevelled along one edge, meet in front of the planks: the planks of the other face
 * stand stack_out beyond the corner, the strip its own thickness more.
 */

static void tell(Arena *arena, Findings *findings, int face, int opening, const char *text)
{
    if (!findings)
        return;
    Finding finding = finding_of(RULE_TRIM);
    finding.face = face;
    finding.opening = opening;
    finding.text = text;
    *arena_push(arena, findings) = finding;
}

/* How far a side leaves the straight line from its lower to its upper end: what a strip along it is scribed by. */
static Length crooked(const Marks *marks, Length low, Length high)
{
    Length most = 0;
    Length least = 0;
    if (marks->count < 3 || high <= low)
        return 0;
    const Mark *first = &marks->at[0];
    const Mark *last = &marks->at[marks->count - 1];
    for (int i = 1; i + 1 < marks->count; i++) {
        const Mark *mark = &marks->at[i];
        if (mark->at <= low || mark->at >= high || last->at == first->at)
            continue;
        const Length off = mark->off - straight_at(first->at, first->off, last->at, last->off, mark->at);
        most = off > most ? off : most;
        least = off < least ? off : least;
    }
    return most - least;
}

/* A strip that stands on `face` at its left or right side, `width` along it. */
static TrimStrip standing(const Layout *layout, const TrimStrips *strips, int run, int face, bool is_left, Length width)
{
    const Wall *wall = layout->wall;
    const Face *of = &wall->faces.at[face];
    Length side = is_left ? bare_left(of, 0) : bare_right(of, 0);
    Length inner = is_left ? side + width : side - width;
    Length foot_a = over_floor_trim(layout, strips, face, side);
    Length foot_b = over_floor_trim(layout, strips, face, inner);
    Length head_a = under_ceiling_trim(layout, strips, face, side);
    Length head_b = under_ceiling_trim(layout, strips, face, inner);
    Length lowest = foot_a < foot_b ? foot_a : foot_b;
    Length highest = head_a > head_b ? head_a : head_b;
    Length at_a = head_a - foot_a;
    Length at_b = head_b - foot_b;
    TrimStrip strip = {.run = run,
                       .face = face,
                       .other = -1,
                       .opening = -1,
                       .thickness = run_thickness(wall, run),
                       .least = width,
                       .most = width,
                       .stands = true,
                       .at_left = is_left,
                       .long_point = highest - lowest,
                       .short_point = at_a < at_b ? at_a : at_b,
                       .from = lowest,
                       .to = highest};
    strip.start = !marks_alike(wall, foot_a - foot_b, 0) ? STRIP_FIT : STRIP_SQUARE;
    strip.end = !marks_alike(wall, head_a - head_b, 0) ? STRIP_FIT : STRIP_SQUARE;
    strip.start_shift = foot_b - foot_a;
    strip.end_shift = head_b - head_a;
    if (strip.start == STRIP_SQUARE && strip.end == STRIP_SQUARE)
        strip.short_point = strip.long_point;
    Length scribe = crooked(is_left ? &of->left : &of->right, lowest, highest);
    if (!marks_alike(wall, scribe, 0)) {
        strip.shape = STRIP_SCRIBE;
        strip.most += scribe;
    }
    return strip;
}

static int next_face(const Wall *wall, int face)
{
    return (face + 1) % wall->faces.count;
}

static void corner_strips(Arena *arena, const Layout *layout, int run, TrimStrips *strips, Findings *findings)
{
    const Wall *wall = layout->wall;
    bool inside = wall->trim.runs.at[run].along == ALONG_INSIDE;
    Length width = wall->trim.runs.at[run].width;
    for (int face = 0; face < wall->faces.count; face++) {
        bool through;
        Corner corner = wall_corner_right(wall, face, &through);
        if (corner.kind != (inside ? CORNER_INSIDE : CORNER_OUTSIDE))
            continue;
        int next = next_face(wall, face);
        const char *name = say(arena, "%s corner %s and %s", inside ? "inside" : "outside", wall->faces.at[face].name,
                               wall->faces.at[next].name);
        for (int i = 0; i < (inside ? 1 : 2); i++) {
            int on = i == 0 ? face : next;
            TrimStrip strip = standing(layout, strips, run, on, i == 1, width);
            strip.other = i == 0 ? next : face;
            strip.name = name;
            strip.bevelled = !inside;
            *arena_push(arena, strips) = strip;
            Length beyond = stack_out(wall, strip.other) + strip.thickness;
            if (inside || corner.joint != CORNER_TRIM)
                beyond = strip.thickness; /* planks reach the corner themselves */
            if (!inside && width <= beyond)
                tell(
                    arena, findings, on, -1,
                    say(arena,
                        "The strip at %s does not reach the planks of %s: %s stand out of the corner, it is %s wide to "
                        "its long point.",
                        name, wall->faces.at[on].name, say_length(arena, wall, beyond),
                        say_length(arena, wall, width)));
        }
    }
}

/* Sides that meet no other face: the planks' ends show there. */
static void edge_strips(Arena *arena, const Layout *layout, int run, TrimStrips *strips, Findings *findings)
{
    const Wall *wall = layout->wall;
    Length width = wall->trim.runs.at[run].width;
    for (int face = 0; face < wall->faces.count; face++)
        for (int side = 0; side < 2; side++) {
            bool through;
            Corner corner =
                side == 0 ? wall_corner_left(wall, face, &through) : wall_corner_right(wall, face, &through);
            if (corner.kind != CORNER_NONE)
                continue;
            TrimStrip strip = standing(layout, strips, run, face, side == 0, width);
            strip.name = say(arena, "%s %s edge", wall->faces.at[face].name, side == 0 ? "left" : "right");
            *arena_push(arena, strips) = strip;
            if (width < stack_out(wall, face))
                tell(arena, findings, face, -1,
                     say(arena, "The strip at the %s does not hide the planks' ends: they stand out %s, it is %s wide.",
                         strip.name, say_length(arena, wall, stack_out(wall, face)), say_length(arena, wall, width)));
        }
}

/* ---- casings ---- */

/* The opening as it is measured, without `clear`; to the floor where it goes there. */
static Box measured(const Layout *layout, int face, int index)
{
    const Opening *opening = &layout->wall->faces.at[face].openings.at[index];
    Box box = layout->faces[face].openings[index];
    return (Box){box.left + opening->clear, box.right - opening->clear, box.bottom + opening->clear,
                 box.top - opening->clear};
}

static bool stands_on_floor(const Opening *opening)
{
    return opening->to_floor || opening->kind == OPENING_DOOR;
}

/* What keeps a casing of `width` from going round, or NULL. */
static const char *in_the_way(Arena *arena, const Layout *layout, int face, int index, Length width)
{
    const Face *of = &layout->wall->faces.at[face];
    Box box = measured(layout, face, index);
    bool on_floor = stands_on_floor(&of->openings.at[index]);
    Box outer = {box.left - width, box.right + width, on_floor ? box.bottom : box.bottom - width, box.top + width};
    for (int i = 0; i < 2; i++) {
        Length x = i == 0 ? outer.left : outer.right;
        if (outer.top > bare_ceiling(of, x))
            return "the ceiling";
        if (!on_floor && outer.bottom < bare_floor(of, x))
            return "the floor";
    }
    if (outer.left < bare_left(of, box.top) || outer.right > bare_right(of, box.top))
        return "the side of the face";
    for (int i = 0; i < of->openings.count; i++) {
        Box other = measured(layout, face, i);
        if (i != index && of->openings.at[i].kind != OPENING_STOVE && other.left < outer.right &&
            other.right > outer.left && other.bottom < outer.top && other.top > outer.bottom)
            return say(arena, "%s", of->openings.at[i].name);
    }
    return NULL;
}

static void casing_part(Arena *arena, const Layout *layout, int run, int face, int index, const char *part, bool stands,
                        Length inner, int miters, TrimStrips *strips)
{
    const Wall *wall = layout->wall;
    Length width = wall->trim.runs.at[run].width;
    const char *opening = wall->faces.at[face].openings.at[index].name;
    *arena_push(arena, strips) = (TrimStrip){.run = run,
                                             .face = face,
                                             .other = -1,
                                             .opening = index,
                                             .name = say(arena, "%s %s", opening, part),
                                             .thickness = run_thickness(wall, run),
                                             .least = width,
                                             .most = width,
                                             .stands = stands,
                                             .start = miters == 2 ? STRIP_ACROSS : STRIP_SQUARE,
                                             .end = STRIP_ACROSS,
                                             .short_point = inner,
                                             .long_point = inner + miters * width};
}

static void case_opening(Arena *arena, const Layout *layout, int run, int face, int index, TrimStrips *strips,
                         Findings *findings)
{
    const Wall *wall = layout->wall;
    const Face *of = &wall->faces.at[face];
    Length width = wall->trim.runs.at[run].width;
    const char *what = in_the_way(arena, layout, face, index, width);
    if (what) {
        tell(arena, findings, face, index,
             say(arena,
                 "A casing %s wide does not fit round %s: %s is in the way. Take a narrower one or leave it out.",
                 say_length(arena, wall, width), of->openings.at[index].name, what));
        return;
    }
    Box box = measured(layout, face, index);
    casing_part(arena, layout, run, face, index, "head", false, box.right - box.left, 2, strips);
    if (stands_on_floor(&of->openings.at[index])) {
        casing_part(arena, layout, run, face, index, "left leg", true, box.top - bare_floor(of, box.left), 1, strips);
        casing_part(arena, layout, run, face, index, "right leg", true, box.top - bare_floor(of, box.right), 1, strips);
    } else {
        casing_part(arena, layout, run, face, index, "left leg", true, box.top - box.bottom, 2, strips);
        casing_part(arena, layout, run, face, index, "right leg", true, box.top - box.bottom, 2, strips);
        casing_part(arena, layout, run, face, index, "sill", false, box.right - box.left, 2, strips);
    }
}

static void casing_strips(Arena *arena, const Layout *layout, int run, TrimStrips *strips, Findings *findings)
{
    const Wall *wall = layout->wall;
    const char *wanted = wall->trim.runs.at[run].opening;
    bool named = wanted && wanted[0];
    bool found = false;
    for (int face = 0; face < wall->faces.count; face++)
        for (int i = 0; i < wall->faces.at[face].openings.count; i++) {
            const Opening *opening = &wall->faces.at[face].openings.at[i];
            if (!run_cases(&wall->trim.runs.at[run], opening))
                continue;
            found = true;
            case_opening(arena, layout, run, face, i, strips, findings);
        }
    if (named && !found)
        tell(arena, findings, -1, -1,
             say(arena, "Trim is to go round %s, but no opening has that name. Write one that has, or leave it out.",
                 wanted));
}

/* ---- all together ---- */

/* Which edge is the longer one at an end that slants: the inner one where it reaches out beyond the other. */
static const char *long_edge(const Wall *wall, const TrimStrip *strip, bool inner)
{
    if (strip->stands)
        return inner == strip->at_left ? "right" : "left";
    return inner == (wall->trim.runs.at[strip->run].along == ALONG_FLOOR) ? "upper" : "lower";
}

static const char *slant_words(Arena *arena, const Wall *wall, const TrimStrip *strip, bool at_start)
{
    const Length shift = at_start ? strip->start_shift : strip->end_shift;
    const bool inner = at_start ? shift < 0 : shift > 0;
    return say(arena, "%s degrees off square with the %s edge the longer", slope_degrees(arena, shift, strip->most),
               long_edge(wall, strip, inner));
}

/* How far off square two strips are beveled that meet round the corner at a side of the face. */
static const char *bevel_degrees(Arena *arena, const Wall *wall, int face, bool is_left)
{
    bool through;
    const Corner corner = is_left ? wall_corner_left(wall, face, &through) : wall_corner_right(wall, face, &through);
    return corner_miter_degrees(arena, corner_angle(wall, &corner));
}

static const char *end_words(Arena *arena, const Wall *wall, const TrimStrip *strip, bool at_start)
{
    const Length shift = at_start ? strip->start_shift : strip->end_shift;
    const char *degrees = bevel_degrees(arena, wall, strip->face, at_start);
    switch (at_start ? strip->start : strip->end) {
    case STRIP_SQUARE: return "square";
    case STRIP_ACROSS: return "mitered 45 degrees";
    case STRIP_BEVEL:
        if (!marks_alike(wall, shift, 0))
            return say(arena, "plumb (%s), beveled %s degrees, long point at the front",
                       slant_words(arena, wall, strip, at_start), degrees);
        return say(arena, "beveled %s degrees, long point at the front", degrees);
    case STRIP_PLUMB: return say(arena, "plumb, %s", slant_words(arena, wall, strip, at_start));
    case STRIP_MITER: return say(arena, "mitered to the next strip, %s", slant_words(arena, wall, strip, at_start));
    case STRIP_FIT: return say(arena, "cut to fit, %s", slant_words(arena, wall, strip, at_start));
    }
    return "";
}

static const char *strip_words(Arena *arena, const Wall *wall, const TrimStrip *strip)
{
    const char *width = say_length(arena, wall, strip->most);
    if (strip->shape == STRIP_TAPER)
        width = say(arena, "%s to %s (taper)", say_length(arena, wall, strip->least), width);
    else if (strip->shape == STRIP_SCRIBE)
        width = say(arena, "%s, scribed to leave %s at the narrowest", width, say_length(arena, wall, strip->least));
    return say(arena, "rip %s%s; %s end %s; %s end %s", width,
               strip->bevelled ? say(arena, " to the long point, that edge beveled %s degrees",
                                     bevel_degrees(arena, wall, strip->face, strip->at_left))
                               : "",
               strip->stands ? "lower" : "left", end_words(arena, wall, strip, true), strip->stands ? "upper" : "right",
               end_words(arena, wall, strip, false));
}

static int compare_runs(const void *left, const void *right)
{
    const TrimStrip *const *a = left;
    const TrimStrip *const *b = right;
    if ((*a)->run != (*b)->run)
        return (*a)->run - (*b)->run;
    return (*a > *b) - (*a < *b); /* as they were added */
}

/* Strips along floor and ceiling were worked out first, since the others end at them: back into the order of the runs.
 */
static TrimStrips in_order(Arena *arena, const TrimStrips *strips)
{
    const TrimStrip **order = arena_array(arena, const TrimStrip *, strips->count);
    for (int i = 0; i < strips->count; i++)
        order[i] = &strips->at[i];
    if (strips->count > 1)
        qsort(order, (size_t)strips->count, sizeof *order, compare_runs);
    TrimStrips ordered = {0};
    for (int i = 0; i < strips->count; i++)
        *arena_push(arena, &ordered) = *order[i];
    return ordered;
}

TrimStrips trim_strips(Arena *arena, const Layout *layout, Findings *findings)
{
    const Wall *wall = layout->wall;
    TrimStrips strips = {0};
    for (int level = 1; level >= 0; level--)
        for (int run = 0; run < wall->trim.runs.count; run++) {
            TrimAlong along = wall->trim.runs.at[run].along;
            if (level != (along == ALONG_FLOOR || along == ALONG_CEILING))
                continue;
            for (int face = 0; level && face < wall->faces.count; face++)
                level_strips(arena, layout, run, face, &strips);
            if (along == ALONG_INSIDE || along == ALONG_OUTSIDE)
                corner_strips(arena, layout, run, &strips, findings);
            else if (along == ALONG_EDGES)
                edge_strips(arena, layout, run, &strips, findings);
            else if (along == ALONG_OPENINGS)
                casing_strips(arena, layout, run, &strips, findings);
        }
    strips = in_order(arena, &strips);
    for (int i = 0; i < strips.count; i++)
        strips.at[i].text = strip_words(arena, wall, &strips.at[i]);
    return strips;
}

static Length on_line(const TrimStrip *strip, Length x)
{
    return straight_at(strip->from, strip->edge_from, strip->to, strip->edge_to, x);
}

WoodPart trim_strip_part(Arena *arena, const Layout *layout, const TrimStrip *strip)
{
    const Wall *wall = layout->wall;
    const Face *of = &wall->faces.at[strip->face];
    WoodPart part = {.out = stack_out(wall, strip->face) + strip->thickness,
                     .what = say(arena, "trim (%s)", strip->name)};
    if (strip->opening >= 0) {
        const Box box = measured(layout, strip->face, strip->opening);
        part.left = box.left - strip->most;
        part.right = box.right + strip->most;
        part.bottom_left = part.bottom_right = box.bottom - strip->most;
        part.top_left = part.top_right = box.top + strip->most;
    } else if (strip->stands) {
        const Length side = strip->at_left ? bare_left(of, 0) : bare_right(of, 0);
        /* round an outside corner its long point stands in front of the other face's strip */
        const Length beyond = strip->bevelled ? stack_out(wall, strip->other) + strip->thickness : 0;
        part.left = strip->at_left ? side - beyond : side - strip->most;
        part.right = strip->at_left ? side + strip->most : side + beyond;
        part.bottom_left = part.bottom_right = strip->from;
        part.top_left = part.top_right = strip->to;
    } else {
        const Length upright =
            slope_upright(strip->most, (Slope){strip->to - strip->from, strip->edge_to - strip->edge_from});
        const bool on_floor = wall->trim.runs.at[strip->run].along == ALONG_FLOOR;
        part.left = strip->from - (strip->start == STRIP_MITER ? (Length)llabs(strip->start_shift) : 0);
        part.right = strip->to + (strip->end == STRIP_MITER ? (Length)llabs(strip->end_shift) : 0);
        part.bottom_left = on_line(strip, part.left) - (on_floor ? upright : 0);
        part.bottom_right = on_line(strip, part.right) - (on_floor ? upright : 0);
        part.top_left = part.bottom_left + upright;
        part.top_right = part.bottom_right + upright;
    }
    return part;
}

TrimPieces trim_pieces(Arena *arena, const Layout *layout)
{
    TrimPieces pieces = {0};
    for (int i = 0; i < layout->wall->trim.pieces.count; i++)
        *arena_push(arena, &pieces) = layout->wall->trim.pieces.at[i];
    const int own = pieces.count;
    TrimStrips strips = trim_strips(arena, layout, NULL);
    for (int i = 0; i < strips.count; i++) {
        const TrimStrip *strip = &strips.at[i];
        bool alike = false;
        for (int j = own; j < pieces.count && !alike; j++)
            if (pieces.at[j].length == strip->long_point && strcmp(pieces.at[j].name, strip->name) == 0) {
                pieces.at[j].count++;
                alike = true;
            }
        if (!alike && strip->long_point > 0)
            *arena_push(arena, &pieces) = (TrimPiece){
                .name = arena_text(arena, strip->name, strlen(strip->name)), .length = strip->long_point, .count = 1};
    }
    return pieces;
}
