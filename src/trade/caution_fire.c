#include "trade/caution_fire.h"

#include "trade/say.h"
#include "trade/wood_near.h"

/*
 *                  nearest wood
 *            d    [============      d      distance from the opening as it is written, not as it is grown
 *     +----+<---->                   p      what stands out of the masonry's face: backing + thickness and, for a
 *     |fire|                                strip of trim, its own thickness more; a side wall without limit
 *     +----+      a quarter round the opening: d < 6 in; then p > d/8 up to 12 in
 *
 * International Residential Code R1001.11, exception 4 (2009 text): combustible trim on the front of a masonry
 * fireplace not within 6 in of the opening; within 12 in it may project 1/8 in for each inch of distance. Unlisted
 * stoves: 36 in to unprotected combustible walls, single-wall stovepipe 18 in (NFPA 211).
 *
 * Distances are compared as squares of whole nanometres and told rounded down. Where a stove or a pipe ends in front of
 * the wall is not known: its body goes on without end there, which makes no distance too long.
 */
#define TRIM_NEVER (6 * LENGTH_INCH)
#define TRIM_LESS (12 * LENGTH_INCH)
#define STOVE_BARE (36 * LENGTH_INCH)
#define PIPE_BARE (18 * LENGTH_INCH)

/* The nearest wood on one face. */
typedef struct Nearest {
    Reached reached;
    const WoodPart *part; /* NULL: no wood there */
    Wide away;            /* squared */
    Wide at_most;         /* the same from the part of the body that is known to be there */
} Nearest;

typedef struct Nearests {
    Nearest at[WALL_FACES_MOST]; /* the face itself, then those to its right, then those to its left */
    int count;
} Nearests;

/* What of the rules for a masonry fireplace the worst wood of one kind breaks. */
typedef struct Breach {
    int face;
    const WoodPart *part; /* NULL: none does */
    Wide away;
    Length out; /* of the masonry's face */
} Breach;

typedef struct Fire {
    Arena *arena;
    const Layout *layout;
    const Wall *wall;
    const WoodParts *wood; /* of each face */
    int face, index;
    const Opening *opening;
    Body body;   /* as far as it may reach */
    Body surely; /* as far as it is known to reach */
    Nearests nearest;
    Breach within, side, projects;
} Fire;

static Wide square(Length length)
{
    return (Wide)length * length;
}

static void note_breach(Breach *worst, const Reached *reached, const WoodPart *part, Wide away, Length out)
{
    if (!worst->part || away < worst->away)
        *worst = (Breach){reached->face, part, away, out};
}

static void note_rules(Fire *fire, const Reached *reached, const WoodPart *part, Wide away)
{
    if (fire->opening->kind != OPENING_FIREPLACE || away > square(TRIM_LESS))
        return;
    const Length out = wood_projection(fire->wall, reached, part);
    if (away < square(TRIM_NEVER))
        note_breach(&fire->within, reached, part, away, out);
    else if (out == LENGTH_MOST)
        note_breach(&fire->side, reached, part, away, out);
    else if (square(out) * 64 > away)
        note_breach(&fire->projects, reached, part, away, out);
}

/* `surely` is the same face reached from the known part of the body. */
static void look_at_face(Fire *fire, const Reached *reached, const Reached *surely)
{
    const WoodParts *parts = &fire->wood[reached->face];
    Nearest nearest = {.reached = *reached};
    for (int i = 0; i < parts->count; i++) {
        const Wide away = wood_distance(reached, &parts->at[i]);
        note_rules(fire, reached, &parts->at[i], away);
        const Wide at_most = wood_distance(surely, &parts->at[i]);
        if (!nearest.part || at_most < nearest.at_most)
            nearest.at_most = at_most;
        if (!nearest.part || away < nearest.away) {
            nearest.part = &parts->at[i];
            nearest.away = away;
        }
    }
    for (int i = 0; i < fire->nearest.count; i++) { /* round a ring a face is reached both ways */
        Nearest *before = &fire->nearest.at[i];
        if (before->reached.face != reached->face)
            continue;
        const bool nearer = nearest.part && nearest.away < before->away;
        const bool as_near = nearest.part && nearest.away == before->away;
        if (nearer || (as_near && reached->corners < before->reached.corners))
            *before = nearest;
        return;
    }
    fire->nearest.at[fire->nearest.count++] = nearest;
}

static void look_around(Fire *fire)
{
    const Reached start = reach_start(fire->face, &fire->body);
    const Reached sure_start = reach_start(fire->face, &fire->surely);
    look_at_face(fire, &start, &sure_start);
    for (int to_right = 1; to_right >= 0; to_right--) {
        Reached reached = start;
        Reached surely = sure_start;
        while (reached.corners + 1 < fire->wall->faces.count && reach_next(fire->wall, to_right, &reached)) {
            reach_next(fire->wall, to_right, &surely);
            look_at_face(fire, &reached, &surely);
        }
    }
}

/* ---- words ---- */

/* Rounded down: never told as further than it is. */
static const char *away_words(const Fire *fire, Wide away)
{
    const Length whole = root_down(away);
    const Length shown = length_round_down(whole, fire->wall->round);
    if (shown == 0 && away > 0)
        return say(fire->arena, "under %s", say_length(fire->arena, fire->wall, fire->wall->round));
    return say_length(fire->arena, fire->wall, shown);
}

static const char *place_words(const Fire *fire, const Reached *reached)
{
    const char *name = fire->wall->faces.at[reached->face].name;
    if (reached->corners == 0)
        return say(fire->arena, "on %s", name);
    if (reached->corners == 1)
        return say(fire->arena, "on %s, around the %s corner,", name,
                   reached->kind == CORNER_INSIDE ? "inside" : "outside");
    return say(fire->arena, "on %s, around %d corners,", name, reached->corners);
}

/* Whether it is where the body's unknown end decides: behind a stove, or in front of it. */
static bool not_known(const Fire *fire, const Reached *reached)
{
    if (fire->opening->kind == OPENING_STOVE && !fire->opening->away_given && reached->corners == 0)
        return true;
    return fire->opening->kind != OPENING_FIREPLACE && !reached->along && reached->sign < 0;
}

/* Whether it may be further, as the body's unknown side decides. */
static bool is_least(const Fire *fire, const Nearest *nearest)
{
    return nearest->away < nearest->at_most || (fire->opening->kind == OPENING_STOVE && !fire->opening->away_given);
}

static const char *nearest_words(const Fire *fire, const Nearest *nearest)
{
    Arena *arena = fire->arena;
    const char *place = place_words(fire, &nearest->reached);
    if (!nearest->part)
        return say(arena, "%s no planks", place);
    if (not_known(fire, &nearest->reached))
        return say(arena, "%s not known: measure it", place);
    return say(arena, "%s %s%s (%s)", place, is_least(fire, nearest) ? "as near as " : "",
               away_words(fire, nearest->away), nearest->part->what);
}

/* Faces that no corner joins to it. */
static const char *unjoined_words(const Fire *fire)
{
    const char *names = "";
    for (int i = 0; i < fire->wall->faces.count; i++) {
        bool reached = false;
        for (int j = 0; j < fire->nearest.count; j++)
            reached |= fire->nearest.at[j].reached.face == i;
        if (!reached)
            names = say(fire->arena, "%s%s%s", names, names[0] ? ", " : "", fire->wall->faces.at[i].name);
    }
    return names[0] ? say(fire->arena, " No corner joins %s to it: measure from it to wood there.", names) : "";
}

/* Trim that was measured by hand hangs nobody knows where. */
static const char *uncounted_words(const Fire *fire)
{
    const TrimPieces *pieces = &fire->wall->trim.pieces;
    if (pieces->count == 0)
        return "";
    const char *more = pieces->count == 1
                           ? ""
                           : say(fire->arena, " and %s", say_count(fire->arena, pieces->count - 1, "other", "others"));
    return say(fire->arena, " Trim that is entered by its length alone (%s%s) is not counted: measure to it.",
               pieces->at[0].name, more);
}

static const char *all_nearest(const Fire *fire)
{
    const char *all = "";
    for (int i = 0; i < fire->nearest.count; i++)
        all = say(fire->arena, "%s%s%s", all, i > 0 ? "; " : "", nearest_words(fire, &fire->nearest.at[i]));
    return say(fire->arena, "Nearest wood to %s: %s.%s%s", fire->opening->name, all, unjoined_words(fire),
               uncounted_words(fire));
}

/* "Wood (planks) on north"; a sentence goes on from it. */
static const char *breach_words(const Fire *fire, const Breach *breach)
{
    return say(fire->arena, "Wood (%s) on %s", breach->part->what, fire->wall->faces.at[breach->face].name);
}

static const char *masonry_words(const Fire *fire)
{
    Arena *arena = fire->arena;
    const Wall *wall = fire->wall;
    const char *text = "";
    if (fire->within.part)
        text = say(
            arena, "%s comes %s %s: model codes keep combustible trim %s from the opening of a masonry fireplace. ",
            breach_words(fire, &fire->within),
            fire->within.away == 0 ? "right up to" : say(arena, "within %s of", away_words(fire, fire->within.away)),
            fire->opening->name, say_length(arena, wall, TRIM_NEVER));
    if (fire->side.part)
        text = say(arena,
                   "%s%s is %s from %s and stands out of the masonry's face without limit, as a side wall does: model "
                   "codes keep that %s from the opening. ",
                   text, breach_words(fire, &fire->side), away_words(fire, fire->side.away), fire->opening->name,
                   say_length(arena, wall, TRIM_LESS));
    if (fire->projects.part)
        text =
            say(arena,
                "%s%s, %s from %s, stands %s out of the masonry's face: within %s of the opening of a masonry "
                "fireplace model codes allow combustible trim 1/8 in for each inch of distance. ",
                text, breach_words(fire, &fire->projects), away_words(fire, fire->projects.away), fire->opening->name,
                say_length(arena, wall, fire->projects.out), say_length(arena, wall, TRIM_LESS));
    return say(
        arena,
        "%s%s Model codes give figures for trim on the front of a masonry fireplace alone: none within %s of the "
        "firebox opening, up to %s no more out of the masonry than an eighth of its distance. What was measured may "
        "be a surround; an insert or a factory-built fireplace goes by its manual (enter it as a stove). Ask the "
        "local code and the building department before hanging wood there.",
        text, all_nearest(fire), say_length(arena, wall, TRIM_NEVER), say_length(arena, wall, TRIM_LESS));
}

static const char *stove_words(const Fire *fire)
{
    Arena *arena = fire->arena;
    const Wall *wall = fire->wall;
    const Opening *stove = fire->opening;
    const Length stack = wall->faces.at[fire->face].backing + wall->planks.thickness;
    const char *left =
        say(arena, "How far %s stands off the wall is not entered: measure from its nearest hot side. ", stove->name);
    if (stove->away_given)
        left = say(arena, "The planks reduce the %s from the bare wall to %s to %s. ",
                   say_length(arena, wall, stove->away), stove->name,
                   stove->away > stack ? say_length(arena, wall, stove->away - stack) : "nothing");
    return say(arena,
               "%s%s Its depth is not known: measure in front of it. How far wood must keep from it, behind, beside, "
               "above and in front, and from its pipe, is for its manual and the local code to say (model-code figures "
               "for one without a listing: %s to bare wood, %s from single-wall stovepipe). Have a licensed installer "
               "look at it.",
               left, all_nearest(fire), say_length(arena, wall, STOVE_BARE), say_length(arena, wall, PIPE_BARE));
}

static const char *pipe_words(const Fire *fire)
{
    return say(
        fire->arena,
        "%s How far wood must keep from %s, in front of the wall and inside it, is for the manual of its "
        "appliance, its own label and the local code to say (model-code figure for single-wall stovepipe: %s to "
        "bare wood). What was measured may be a collar: measure from the pipe. Have a licensed installer look at "
        "it.",
        all_nearest(fire), fire->opening->name, say_length(fire->arena, fire->wall, PIPE_BARE));
}

static bool is_hot(OpeningKind kind)
{
    return kind == OPENING_FIREPLACE || kind == OPENING_STOVE || kind == OPENING_PIPE;
}

static void add_fire(Arena *arena, const Layout *layout, const WoodParts *wood, int face, int index, Findings *findings)
{
    const Opening *opening = &layout->wall->faces.at[face].openings.at[index];
    const Box box = layout->faces[face].openings[index]; /* grown */
    const Length clear = opening->clear;
    Fire *fire = arena_one(arena, Fire);
    *fire = (Fire){.arena = arena,
                   .layout = layout,
                   .wall = layout->wall,
                   .wood = wood,
                   .face = face,
                   .index = index,
                   .opening = opening,
                   .body = {box.left + clear, box.right - clear, box.bottom + clear, box.top - clear, 0, 0}};
    fire->surely = fire->body;
    if (opening->kind == OPENING_STOVE) {
        fire->body.back = opening->away_given ? opening->away : 0;
        fire->body.front = BODY_FAR;
        fire->surely.back = fire->surely.front = fire->body.back;
    }
    if (opening->kind == OPENING_PIPE) {
        fire->body.back = -BODY_FAR;
        fire->body.front = BODY_FAR;
    }
    look_around(fire);
    Finding finding = finding_of(RULE_FIRE);
    finding.face = face;
    finding.opening = index;
    finding.text = opening->kind == OPENING_FIREPLACE ? masonry_words(fire)
                   : opening->kind == OPENING_PIPE    ? pipe_words(fire)
                                                      : stove_words(fire);
    *arena_push(arena, findings) = finding;
}

void fire_findings(Arena *arena, const Layout *layout, Findings *findings)
{
    const WoodParts *wood = NULL;
    for (int face = 0; face < layout->wall->faces.count; face++)
        for (int i = 0; i < layout->wall->faces.at[face].openings.count; i++) {
            if (!is_hot(layout->wall->faces.at[face].openings.at[i].kind))
                continue;
            if (!wood)
                wood = wood_of_faces(arena, layout);
            add_fire(arena, layout, wood, face, i, findings);
        }
}
