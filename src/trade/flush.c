#include "trade/flush.h"

#include "trade/say.h"
#include "trade/studs.h"
#include "wall/straight.h"

bool flush_beyond(const Layout *layout, int face, int opening, Length *beyond)
{
    const Wall *wall = layout->wall;
    const Opening *of = &wall->faces.at[face].openings.at[opening];
    *beyond = wall->faces.at[face].backing + wall->planks.thickness - of->proud;
    return of->proud_given && opening_cuts(&layout->faces[face], opening);
}

static const char *around(OpeningKind kind)
{
    switch (kind) {
    case OPENING_WINDOW:
    case OPENING_DOOR: return "casing";
    case OPENING_FIREPLACE: return "surround";
    case OPENING_PIPE: return "collar";
    case OPENING_BOX:
    case OPENING_STOVE:
    case OPENING_VENT:
    case OPENING_OTHER: break;
    }
    return "front";
}

/* What would make them flush; a backing and a thickness are above 0, or there is none to name. */
static const char *mend_words(Arena *arena, const Wall *wall, const Face *face, Length beyond)
{
    const Length backing = face->backing - beyond, thickness = wall->planks.thickness - beyond;
    const char *of_backing = backing == 0 && face->backing > 0 ? say(arena, "No backing on %s", face->name)
                             : backing > 0
                                 ? say(arena, "A backing of %s on %s", say_length(arena, wall, backing), face->name)
                                 : NULL;
    const char *of_planks = thickness > 0 ? say(arena, "lanks %s thick", say_length(arena, wall, thickness)) : NULL;
    if (of_backing != NULL && of_planks != NULL)
        return say(arena, "%s, or p%s, would make them flush.", of_backing, of_planks);
    if (of_backing != NULL)
        return say(arena, "%s would make them flush.", of_backing);
    if (of_planks != NULL)
        return say(arena, "P%s would make them flush.", of_planks);
    return say(arena, "No planks are that thin: build the wall around it out, or pad it forward by %s.",
               say_length(arena, wall, beyond));
}

const char *flush_words(Arena *arena, const Layout *layout, int face, int opening)
{
    const Wall *wall = layout->wall;
    const Face *measured = &wall->faces.at[face];
    const Opening *of = &measured->openings.at[opening];
    Length beyond;
    if (!flush_beyond(layout, face, opening, &beyond))
        return NULL;
    if (marks_alike(wall, beyond, 0))
        return say(arena, "At %s the planks are flush with its %s.", of->name, around(of->kind));
    const char *by = say_length(arena, wall, beyond > 0 ? beyond : -beyond);
    const bool hot = of->kind == OPENING_FIREPLACE || of->kind == OPENING_PIPE;
    return say(arena, "At %s the planks %s its %s. %s%s", of->name,
               beyond > 0 ? say(arena, "stand out %s beyond", by) : say(arena, "end %s behind", by), around(of->kind),
               mend_words(arena, wall, measured, beyond), hot ? " First heed what is said of fire." : "");
}

void flush_findings(Arena *arena, const Layout *layout, Findings *findings)
{
    for (int face = 0; face < layout->wall->faces.count; face++)
        for (int i = 0; i < layout->wall->faces.at[face].openings.count; i++) {
            Length beyond;
            if (!flush_beyond(layout, face, i, &beyond) || marks_alike(layout->wall, beyond, 0))
                continue;
            Finding finding = finding_of(RULE_FLUSH);
            finding.face = face;
            finding.opening = i;
            finding.text = flush_words(arena, layout, face, i);
            *arena_push(arena, findings) = finding;
        }
}
