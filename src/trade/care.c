#include "trade/care.h"

#include "trade/say.h"
#include "wall/straight.h"

/* Ripped narrower than this, hands come near the blade: common practice. */
#define NARROW_RIP (2 * LENGTH_INCH)

/* Higher over the floor nobody fastens standing on it: common practice. */
#define REACH (78 * LENGTH_INCH)

/* Pieces shorter than this cannot be held at a saw: common practice. */
#define SHORT_PIECE (4 * LENGTH_INCH)

static bool always(const Layout *layout, const Plan *plan)
{
    (void)layout;
    (void)plan;
    return true;
}

static bool rips_narrow(const Layout *layout, const Plan *plan)
{
    (void)plan;
    const Wall *wall = layout->wall;
    for (int i = 0; i < wall->faces.count; i++)
        for (int j = 0; j < layout->faces[i].course_count; j++)
            if (layout->faces[i].courses[j].rip.least < NARROW_RIP)
                return true;
    for (int i = 0; i < wall->trim.runs.count; i++)
        if (wall->trim.runs.at[i].width < NARROW_RIP)
            return true;
    return wall->rough.count > 0 && wall->mill.keep > 0 && wall->mill.keep < NARROW_RIP;
}

static bool cuts_short(const Layout *layout, const Plan *plan)
{
    for (int i = 0; i < plan->piece_count; i++)
        if (!plan->pieces[i].hung && plan->pieces[i].right - plan->pieces[i].left < SHORT_PIECE)
            return true;
    for (int i = 0; i < layout->wall->trim.pieces.count; i++)
        if (layout->wall->trim.pieces.at[i].length < SHORT_PIECE)
            return true;
    return false;
}

/* Whether a plank is ripped on a slant or along a line. */
static bool rips_slanted(const Layout *layout, const Plan *plan)
{
    (void)plan;
    for (int i = 0; i < layout->wall->faces.count; i++)
        for (int j = 0; j < layout->faces[i].course_count; j++) {
            const Rip *rip = &layout->faces[i].courses[j].rip;
            if ((rip->shape == RIP_TAPER || rip->shape == RIP_SCRIBE) &&
                !marks_alike(layout->wall, rip->least, rip->most))
                return true;
        }
    return false;
}

static bool cuts_out(const Layout *layout, const Plan *plan)
{
    (void)plan;
    for (int i = 0; i < layout->wall->faces.count; i++)
        for (int j = 0; j < layout->faces[i].course_count; j++)
            if (layout->faces[i].courses[j].cut_count > 0)
                return true;
    return false;
}

/* Whether wood hangs higher over the lowest floor of its face than one reaches. */
static bool hangs_high(const Layout *layout, const Plan *plan)
{
    (void)plan;
    for (int i = 0; i < layout->wall->faces.count; i++) {
        const Marks *floor = &layout->wall->faces.at[i].floor;
        Length lowest = 0;
        for (int j = 0; j < floor->count; j++)
            lowest = j == 0 || floor->at[j].off > lowest ? floor->at[j].off : lowest;
        for (int j = 0; floor->count > 0 && j < layout->faces[i].course_count; j++)
            if (layout->faces[i].courses[j].bottom + lowest > REACH)
                return true;
    }
    return false;
}

static bool studs_assumed(const Layout *layout, const Plan *plan)
{
    (void)plan;
    for (int i = 0; i < layout->wall->faces.count; i++)
        if (layout->wall->faces.at[i].wall == FACE_STUDS && layout->wall->faces.at[i].studs.given &&
            layout->wall->faces.at[i].studs.regular)
            return true;
    return false;
}

/* Each with its source. */
static const struct Care {
    const char *head; /* "Old paint" */
    const char *text; /* whole sentences */
    bool (*applies)(const Layout *layout, const Plan *plan);
} cares[] = {
    /* 16 CFR 1303: lead paint banned for homes from February 27, 1978; EPA, 40 CFR 745: renovators from April 22, 2010
     */
    {"Old paint",
     "Old paint may hold lead, on the boards and on the wall itself (in the United States before 1978; elsewhere other "
     "dates hold): have it tested before you sand, plane, saw, scrape or drill, keep children away, and ask a "
     "certified renovator.",
     always},
    /* EPA, 40 CFR 61 subpart M (from memory) */
    {"Old wall",
     "Old drywall, joint compound, plaster, putty and tile adhesive may hold asbestos: have them tested before you "
     "sand, scrape, cut or drill them, and leave what holds it to a licensed contractor.",
     always},
    /* EPA, 68 FR 17366, order of March 17, 2003: no CCA for most residential uses after December 30, 2003; creosote and
       fumigants from memory */
    {"Treated wood",
     "Wood from docks, fences, decks, railroad ties and poles may be treated with creosote, arsenic or other "
     "preservatives, whatever its date, and crates may be fumigated: do not use such wood indoors, do not plane, sand "
     "or burn it; ask the local waste authority.",
     always},
    /* common practice */
    {"Hidden nails",
     "Used boards hide nails, screws and grit: go over each with a metal detector before it meets a saw or planer, "
     "wear eye protection, and enter what stays in as a stretch to avoid.",
     always},
    /* NIOSH 98-126: 85 dBA over eight hours (from memory) */
    {"Hearing",
     "Saws, planers, routers and nailers harm hearing: wear muffs or plugs, and let those near you wear them.", always},
    /* OSHA limits for nuisance dust 15 mg/m3 total, 5 mg/m3 respirable; NIOSH recommends 1 mg/m3 */
    {"Dust",
     "Wood dust harms lungs and can burn: collect it at the saw, wear a respirator made for it, keep flames away.",
     always},
    /* common practice; FPL-GTR-282, ch. 13 */
    {"Acclimation",
     "Boards move until they have settled: let them lie, stickered, in the room where they will hang before they are "
     "ripped to width.",
     always},
    /* common practice */
    {"Narrow rips",
     "Some planks or strips are ripped narrow: guard and riving knife on, push block instead of fingers, tapers in a "
     "jig, and never the strip between fence and blade without a way to push it through.",
     rips_narrow},
    /* common practice */
    {"Tapers",
     "Some planks are ripped on a slant or along a scribed line: hold a taper in a jig or saw it along a clamped "
     "straightedge, saw a scribe with a jigsaw and plane it to the line, and never push either freehand along a fence.",
     rips_slanted},
    /* common practice */
    {"Cutouts",
     "Planks are notched or holed: clamp the piece, drill the corners and saw with a jigsaw; never lower a piece onto "
     "a "
     "running table saw, and support a thin strip that is left beside a cutout.",
     cuts_out},
    /* common practice: 4 in (100 mm) */
    {"Short pieces",
     "Some pieces are shorter than a hand is wide: cut them off a longer board that is clamped, never hold them by "
     "hand at the blade, and let the blade stop before you reach in.",
     cuts_short},
    /* common practice */
    {"Studs", "Evenly spaced studs are assumed. Find each one, and what runs beside it, before you fasten.",
     studs_assumed},
    /* common practice: 6 ft 6 in (2 m); falls from ladders: NIOSH (from memory) */
    {"Ladder",
     "Some courses hang higher than one reaches from the floor: stand on a firm ladder or platform as its label says, "
     "have someone hold long pieces, and do not lean out with a saw or a nailer.",
     hangs_high},
    /* common practice (from memory) */
    {"Finish and adhesive",
     "Solvent vapor can burn and makes ill, and rags with drying oil can set themselves on fire: air the room, no "
     "flames, lay rags out flat outdoors or in a closed metal can of water, and follow the label.",
     always},
};

enum { CARE_COUNT = sizeof cares / sizeof *cares };

/* Openings of no known kind may give off heat: told by name. */
static const char *others(Arena *arena, const Wall *wall)
{
    const char *names = "";
    for (int i = 0; i < wall->faces.count; i++)
        for (int j = 0; j < wall->faces.at[i].openings.count; j++) {
            const Opening *opening = &wall->faces.at[i].openings.at[j];
            if (opening->kind == OPENING_OTHER || opening->kind == OPENING_VENT)
                names = say(arena, "%s%s%s", names, names[0] ? ", " : "", opening->name);
        }
    return names;
}

static void add_care(Arena *arena, const char *text, Findings *findings)
{
    Finding finding = finding_of(RULE_CARE);
    finding.text = text;
    *arena_push(arena, findings) = finding;
}

void care_findings(Arena *arena, const Layout *layout, const Plan *plan, Findings *findings)
{
    if (layout->course_total == 0)
        return;
    const char *names = others(arena, layout->wall);
    if (names[0])
        add_care(arena,
                 say(arena,
                     "Heat: %s may be or hide something hot. A heater, range, lamp, register, flue or its chase sets "
                     "wood near it on fire. Enter a stovepipe or flue as a pipe and an appliance as a stove; keep the "
                     "distances of its manual and the local code.",
                     names),
                 findings);
    for (int i = 0; i < CARE_COUNT; i++)
        if (cares[i].applies(layout, plan))
            add_care(arena, say(arena, "%s: %s", cares[i].head, cares[i].text), findings);
}
