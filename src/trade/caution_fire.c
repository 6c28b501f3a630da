#include "trade/caution_fire.h"

#include "base/wide.h"
#include "trade/say.h"
#include "trade/trim_runs.h"

/*
 *                  nearest wood
 *            d    [============      d      distance from the opening as it is written, not as it is grown
 *     +----+<---->                   p      what stands out of the masonry's face: underlay + thickness
 *     |fire|                              and, for a strip of trim, its own thickness more
 *     +----+      a quarter round the opening: d < 6 in; then p > d/8 up to 12 in
 *
 * International Residential Code R1001.11, exception 4 (2009 text): combustible trim on the front of a masonry
 * fireplace not within 6 in of the opening; within 12 in it may project 1/8 in for each inch of distance. Unlisted
 * stoves: 36 in to unprotected combustible walls, single-wall stovepipe 18 in (NFPA 211).
 *
 * Distances are compared as squares of whole nanometres; nothing is rounded. Of a part whose edges slant its bounding
 * box counts: the distance is never taken for larger than it is.
 */
#define TRIM_NEVER (6 * LENGTH_INCH)
#define TRIM_LESS (12 * LENGTH_INCH)
#define STOVE_BARE (36 * LENGTH_INCH)
#define PIPE_BARE (18 * LENGTH_INCH)

/* How far the stretch [low, high] lies from [from, to]; 0 where they touch. */
static Length apart(Length low, Length high, Length from, Length to)
{
    return low > to ? low - to : from > high ? from - high : 0;
}

static Wide square(Length length)
{
    return (Wide)length * length;
}

/* The wood of a face nearest to the box, as the square of its distance; `beside` more lies between them along x. False
 * where there is no wood. */
static bool nearest_wood(const FaceLayout *face, const Box *box, bool next_face, Length beside, Wide *nearest)
{
    bool any = false;
    for (int i = 0; i < face->course_count; i++)
        for (int j = 0; j < face->courses[i].slab_count; j++) {
            const Slab *slab = &face->courses[i].slabs[j];
            for (int k = 0; k < slab->part_count; k++) {
                const Part *part = &slab->parts[k];
                Length bottom = part->bottom_left < part->bottom_right ? part->bottom_left : part->bottom_right;
                Length top = part->top_left > part->top_right ? part->top_left : part->top_right;
                Length along = next_face ? beside : apart(slab->left, slab->right, box->left, box->right);
                Wide away = square(along) + square(apart(bottom, top, box->bottom, box->top));
                *nearest = any && *nearest < away ? *nearest : away;
                any = true;
            }
        }
    return any;
}

/* The largest whole root: for showing. */
static Length root_of(Wide square_of)
{
    Length low = 0;
    Length high = 2 * LENGTH_MOST;
    while (low < high) {
        Length middle = low + (high - low + 1) / 2;
        if (square(middle) <= square_of)
            low = middle;
        else
            high = middle - 1;
    }
    return low;
}

/* What the opening is as measured: its grown box less `clear`. */
static Box as_written(const Layout *layout, int face, int index)
{
    Box box = layout->faces[face].openings[index];
    Length clear = layout->wall->faces.at[face].openings.at[index].clear;
    return (Box){box.left + clear, box.right - clear, box.bottom + clear, box.top - clear};
}

/* Planks on the face round an inside corner stand out of their own wall toward the opening: what is left to them along
 * x. */
static void nearest_round_corners(const Layout *layout, int face, const Box *box, bool *any, Wide *nearest)
{
    const Wall *wall = layout->wall;
    int count = wall->faces.count;
    for (int side = 0; side < 2; side++) {
        bool through;
        Corner corner = side == 0 ? wall_corner_left(wall, face, &through) : wall_corner_right(wall, face, &through);
        if (corner.kind != CORNER_INSIDE)
            continue;
        int next = (face + (side == 0 ? count - 1 : 1)) % count;
        Length beside = side == 0 ? box->left : wall->faces.at[face].width - box->right;
        beside -= wall->faces.at[next].underlay + wall->planks.thickness;
        Wide away;
        if (!nearest_wood(&layout->faces[next], box, true, beside > 0 ? beside : 0, &away))
            continue;
        *nearest = *any && *nearest < away ? *nearest : away;
        *any = true;
    }
}

/* What of the rules for a masonry fireplace some wood breaks, the worse one first; nearer is worse. */
typedef struct Breach {
    bool within, projects;
    Wide away;        /* squared */
    Length out;       /* what it stands out of the masonry's face */
    const char *name; /* of the strip of trim; NULL: planks */
} Breach;

static void note_wood(Breach *worst, Wide away, Length out, const char *name)
{
    const bool within = away < square(TRIM_NEVER);
    const bool projects = !within && away <= square(TRIM_LESS) && square(out) * 64 > away;
    if (!within && !projects)
        return;
    const bool is_first = !worst->within && !worst->projects;
    if (is_first || (within && !worst->within) || (within == worst->within && away < worst->away))
        *worst = (Breach){within, projects, away, out, name};
}

/* Strips lie on the planks, those of the face round an inside corner too. */
static void note_trim(Arena *arena, const Layout *layout, int face, const Box *box, Breach *worst)
{
    const Wall *wall = layout->wall;
    if (wall->trim.runs.count == 0)
        return;
    const int count = wall->faces.count;
    bool through;
    const bool inside_left = wall_corner_left(wall, face, &through).kind == CORNER_INSIDE;
    const bool inside_right = wall_corner_right(wall, face, &through).kind == CORNER_INSIDE;
    const TrimStrips strips = trim_strips(arena, layout, NULL);
    for (int i = 0; i < strips.count; i++) {
        const TrimStrip *strip = &strips.at[i];
        const Box wood = trim_strip_box(layout, strip);
        const Length out = wall->faces.at[strip->face].underlay + wall->planks.thickness + strip->thickness;
        Length along;
        if (strip->face == face)
            along = apart(wood.left, wood.right, box->left, box->right);
        else if (inside_left && strip->face == (face + count - 1) % count)
            along = box->left - out;
        else if (inside_right && strip->face == (face + 1) % count)
            along = wall->faces.at[face].width - box->right - out;
        else
            continue;
        along = along > 0 ? along : 0;
        note_wood(worst, square(along) + square(apart(wood.bottom, wood.top, box->bottom, box->top)), out, strip->name);
    }
}

static void check_hearth(Arena *arena, const Layout *layout, int face, int index, Findings *findings)
{
    const Wall *wall = layout->wall;
    Box box = as_written(layout, face, index);
    Wide nearest = 0;
    bool any = nearest_wood(&layout->faces[face], &box, false, 0, &nearest);
    nearest_round_corners(layout, face, &box, &any, &nearest);
    Breach worst = {0};
    if (any)
        note_wood(&worst, nearest, wall->faces.at[face].underlay + wall->planks.thickness, NULL);
    note_trim(arena, layout, face, &box, &worst);
    if (!worst.within && !worst.projects)
        return;
    Finding finding = finding_of(RULE_FIRE);
    finding.face = face;
    finding.opening = index;
    const char *ask =
        "Ask the local code and building department before hanging wood there. An insert or a factory-built "
        "fireplace goes by its manual instead (write it as `stove`).";
    const char *name = wall->faces.at[face].openings.at[index].name;
    const char *wood = worst.name ? say(arena, "Trim (%s)", worst.name) : "Wood";
    const char *away = say_length(arena, wall, root_of(worst.away));
    if (worst.within)
        finding.text = say(arena,
                           "%s comes %s %s: model codes keep combustible trim %s from the opening of a "
                           "masonry fireplace, measured from the firebox itself. %s",
                           wood, worst.away == 0 ? "right up to" : say(arena, "within %s of", away), name,
                           say_length(arena, wall, TRIM_NEVER), ask);
    else
        finding.text =
            say(arena,
                "%s %s from %s stands %s out of the masonry's face: within %s of the opening of a masonry "
                "fireplace model codes allow combustible trim 1/8 in for each inch of distance. %s",
                wood, away, name, say_length(arena, wall, worst.out), say_length(arena, wall, TRIM_LESS), ask);
    *arena_push(arena, findings) = finding;
}

static void check_stove(Arena *arena, const Layout *layout, int face, int index, Findings *findings)
{
    const Wall *wall = layout->wall;
    const Opening *opening = &wall->faces.at[face].openings.at[index];
    Length stack = wall->faces.at[face].underlay + wall->planks.thickness;
    const char *left = "";
    if (opening->away_given)
        left = say(arena, "Of the %s from the bare wall to %s the planks leave %s. ",
                   say_length(arena, wall, opening->away), opening->name,
                   opening->away > stack ? say_length(arena, wall, opening->away - stack) : "nothing");
    Finding finding = finding_of(RULE_FIRE);
    finding.face = face;
    finding.opening = index;
    finding.text = say(
        arena,
        "%sHow far wood must keep from %s, behind, beside and above it and from its pipe, is for its manual and the "
        "local code to say (model-code figures for one without a listing: %s to bare wood, %s from single-wall "
        "stovepipe). Have a licensed installer look at it.",
        left, opening->name, say_length(arena, wall, STOVE_BARE), say_length(arena, wall, PIPE_BARE));
    *arena_push(arena, findings) = finding;
}

void fire_findings(Arena *arena, const Layout *layout, Findings *findings)
{
    for (int face = 0; face < layout->wall->faces.count; face++)
        for (int i = 0; i < layout->wall->faces.at[face].openings.count; i++) {
            OpeningKind kind = layout->wall->faces.at[face].openings.at[i].kind;
            if (kind == OPENING_HEARTH)
                check_hearth(arena, layout, face, i, findings);
            else if (kind == OPENING_STOVE)
                check_stove(arena, layout, face, i, findings);
        }
}
