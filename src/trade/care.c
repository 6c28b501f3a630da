#include "trade/care.h"

#include "base/panic.h"
#include "trade/say.h"

/* Ripped narrower than this, hands come near the blade: common practice. */
#define NARROW_RIP (2 * LENGTH_INCH)

static bool always(const Layout *layout)
{
    (void)layout;
    return true;
}

static bool rips_narrow(const Layout *layout)
{
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

static bool studs_assumed(const Layout *layout)
{
    for (int i = 0; i < layout->wall->faces.count; i++)
        if (layout->wall->faces.at[i].studs.given && layout->wall->faces.at[i].studs.regular)
            return true;
    return false;
}

static const struct {
    Care care;
    bool (*applies)(const Layout *layout);
} cares[] = {
    {{"Old paint",
      "Paint on boards from before 1978 may hold lead: have it tested before sanding, planing or sawing, keep children "
      "away, and "
      "ask a certified renovator.",
      "EPA Renovation, Repair and Painting rule: lead paint banned in housing in 1978, rule in force from April 22, "
      "2010"},
     always},
    {{"Treated wood",
      "Outdoor boards from before 2004 may be treated with arsenic (CCA): do not use them indoors, do not plane, sand "
      "or burn "
      "them; ask the local waste authority.",
      "EPA order of March 17, 2003: no CCA for most residential uses after December 30, 2003"},
     always},
    {{"Hidden nails",
      "Used boards hide nails, screws and grit: go over each with a metal detector before it meets a saw or planer, "
      "wear eye "
      "protection, and write what stays in as `avoid`.",
      "common practice"},
     always},
    {{"Dust",
      "Wood dust harms lungs and can burn: collect it at the saw, wear a respirator made for it, keep flames away.",
      "OSHA limits for nuisance dust 15 mg/m3 total, 5 mg/m3 respirable; NIOSH recommends 1 mg/m3"},
     always},
    {{"Acclimation",
      "Boards move until they have settled: let them lie, stickered, in the room where they will hang before they are "
      "ripped to "
      "width.",
      "common practice; Wood Handbook, FPL-GTR-282, ch. 13"},
     always},
    {{"Narrow rips",
      "Some planks or strips are ripped narrow: guard and riving knife on, push block instead of fingers, tapers in a "
      "jig, and "
      "never the strip "
      "between fence and blade without a way to push it through.",
      "common practice"},
     rips_narrow},
    {{"Studs",
      "Studs written as a first one and a spacing are counted, not found: find each one, and what runs beside it, "
      "before "
      "fastening.",
      "common practice"},
     studs_assumed},
    {{"Finish and adhesive",
      "Solvent vapour can burn and makes ill, and rags with drying oil can set themselves on fire: air the room, no "
      "flames, lay rags out flat "
      "outdoors or in a closed metal can of water, and follow the label.",
      "common practice (from memory)"},
     always},
};

enum { CARE_COUNT = sizeof cares / sizeof *cares };

int care_count(void)
{
    return CARE_COUNT;
}

const Care *care_at(int index)
{
    BUG_UNLESS(index >= 0 && index < CARE_COUNT);
    return &cares[index].care;
}

bool care_applies(const Layout *layout, int index)
{
    BUG_UNLESS(index >= 0 && index < CARE_COUNT);
    return cares[index].applies(layout);
}

void care_findings(Arena *arena, const Layout *layout, Findings *findings)
{
    if (layout->course_total == 0)
        return;
    for (int i = 0; i < CARE_COUNT; i++) {
        if (!care_applies(layout, i))
            continue;
        Finding finding = finding_of(RULE_CARE);
        finding.text = say(arena, "%s: %s", cares[i].care.head, cares[i].care.text);
        *arena_push(arena, findings) = finding;
    }
}
