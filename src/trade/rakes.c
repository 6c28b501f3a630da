#include "trade/rakes.h"

#include "trade/say.h"
#include "trade/trim_slope.h"
#include "wall/straight.h"

/*
 * Planks lie level, so that a rake crosses their edges at its own slope:
 *
 *      ________________        off square: run over rise
 *     |               /  rise
 *     |______________/
 *                   run
 */
static bool is_rake(const Mark *from, const Mark *to)
{
    return to->at > from->at && straight_is_rake(to->at - from->at, to->off - from->off);
}

/* Whether some plank of the face ends there. */
static bool cuts_planks(const FaceLayout *face, bool upper, Length left, Length right)
{
    for (int i = 0; i < face->course_count; i++)
        for (int j = 0; j < face->courses[i].slab_count; j++) {
            const Slab *slab = &face->courses[i].slabs[j];
            if ((upper ? slab->upper_edge : slab->lower_edge) == EDGE_RAKE && slab->left < right && slab->right > left)
                return true;
        }
    return false;
}

static const char *stretch_words(Arena *arena, const Layout *layout, int face, bool upper, const Mark *from,
                                 const Mark *to)
{
    const Wall *wall = layout->wall;
    const Length width = wall->faces.at[face].width;
    const Length left = from->at > 0 ? from->at : 0;
    const Length right = to->at < width ? to->at : width;
    if (!cuts_planks(&layout->faces[face], upper, left, right))
        return "";
    const Length run = to->at - from->at;
    const Length rise = to->off - from->off;
    return say(arena, " %s from %s to %s: %s degrees off square (%s to the plank's edge).",
               upper ? "Under the ceiling" : "Over the floor", say_place(arena, wall, left),
               say_place(arena, wall, right), slope_degrees(arena, run, rise < 0 ? -rise : rise),
               slope_degrees(arena, rise, run));
}

const char *rake_words(Arena *arena, const Layout *layout, int face)
{
    const char *all = "";
    for (int upper = 1; upper >= 0; upper--) {
        const Marks *marks = upper ? &layout->wall->faces.at[face].ceiling : &layout->wall->faces.at[face].floor;
        for (int i = 0; i + 1 < marks->count; i++)
            if (is_rake(&marks->at[i], &marks->at[i + 1]))
                all = say(arena, "%s%s", all,
                          stretch_words(arena, layout, face, upper, &marks->at[i], &marks->at[i + 1]));
    }
    if (all[0] == '\0')
        return NULL;
    return say(arena, "Saw settings for slanted ends, one for every course of a stretch.%s Try each on scrap first.",
               all);
}
