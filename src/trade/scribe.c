#include "trade/scribe.h"

#include "trade/say.h"
#include "wall/straight.h"

/* Common practice: trim laps over what it hides by a quarter of an inch. */
#define OVER_LEAST (LENGTH_INCH / 4)

static bool varies(const Wall *wall, const Course *course)
{
    return !marks_alike(wall, course->rip.least, course->rip.most);
}

/* Common practice: 3 to 5 degrees. */
const char *scribe_words(const Layout *layout, int face)
{
    const FaceLayout *of = &layout->faces[face];
    for (int i = 0; i < of->course_count; i++)
        if (of->courses[i].rip.shape == RIP_SCRIBE && varies(layout->wall, &of->courses[i]))
            return "Where a rip is a scribe, back-bevel the cut 3 to 5 degrees: the front edge stays the longer one "
                   "and "
                   "closes, and the back stays clear.";
    return NULL;
}

/* Whether the ceiling, or the floor, cuts the course all along, no rake does, and nothing cuts its other edge. */
static bool cut_all_along(const Course *course, bool upper)
{
    for (int i = 0; i < course->slab_count; i++) {
        const Slab *slab = &course->slabs[i];
        if (slab->upper_edge != (upper ? EDGE_CEILING : EDGE_BAND) ||
            slab->lower_edge != (upper ? EDGE_BAND : EDGE_FLOOR))
            return false;
    }
    return course->slab_count > 0;
}

/* Whether enough of a plank that ends at `edge` lies behind a strip whose free edge is at `free`. */
static bool laps(const StraightRip *rip, Length edge, Length free)
{
    return (rip->upper ? edge - free : free - edge) >= OVER_LEAST;
}

/* Strips run straight between their ends, and planks level: what holds at both ends of a stretch holds between. */
static bool strip_hides(const TrimStrip *strip, const Course *course, const StraightRip *rip, Length edge)
{
    const Length left = strip->from > course->left ? strip->from : course->left;
    const Length right = strip->to < course->right ? strip->to : course->right;
    return left >= right ||
           (laps(rip, edge, straight_at(strip->from, strip->edge_from, strip->to, strip->edge_to, left)) &&
            laps(rip, edge, straight_at(strip->from, strip->edge_from, strip->to, strip->edge_to, right)));
}

static bool hidden(const Layout *layout, const TrimStrips *strips, int face, const Course *course,
                   const StraightRip *rip)
{
    const Length edge = rip->upper ? course->bottom + rip->face : course->top - rip->face;
    const TrimAlong along = rip->upper ? ALONG_CEILING : ALONG_FLOOR;
    bool any = false;
    for (int i = 0; i < strips->count; i++) {
        const TrimStrip *strip = &strips->at[i];
        if (strip->face != face || layout->wall->trim.runs.at[strip->run].along != along)
            continue;
        any = true;
        if (!strip_hides(strip, course, rip, edge))
            return false;
    }
    return any;
}

StraightRip scribe_straight(const Layout *layout, const TrimStrips *strips, int face, const Course *course)
{
    const Wall *wall = layout->wall;
    const Margin *margin = &wall->faces.at[face].margin;
    StraightRip rip = {.upper = cut_all_along(course, true)};
    if (!varies(wall, course) || (!rip.upper && !cut_all_along(course, false)))
        return rip;
    const Length lap = rip.upper ? 0 : wall->planks.lap;
    rip.rip = (course->rip.least + lap) / wall->round * wall->round;
    rip.face = rip.rip - lap;
    rip.gap = course->rip.most - rip.face + (rip.upper ? margin->ceiling : margin->floor);
    rip.offered = rip.face >= wall_least(wall) && hidden(layout, strips, face, course, &rip);
    return rip;
}

const char *scribe_straight_words(Arena *arena, const Layout *layout, const TrimStrips *strips, int face,
                                  const Course *course)
{
    const StraightRip rip = scribe_straight(layout, strips, face, course);
    if (!rip.offered)
        return NULL;
    return say(arena, "Or rip all of it straight to %s: the trim along the %s hides the gap of up to %s.",
               say_length(arena, layout->wall, rip.rip), rip.upper ? "ceiling" : "floor",
               say_length(arena, layout->wall, rip.gap));
}
