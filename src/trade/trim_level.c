#include "trade/trim_level.h"

#include "trade/say.h"
#include "trade/trim_slope.h"
#include "wall/straight.h"

#include <stdlib.h>
#include <string.h>

/*
 * A limit is taken apart where an opening reaches it, at steps, and at rakes (steeper than 1 in 12):
 *
 *          rake  /-------- gentle --------\     opening     /--- gentle
 *               /                          |               |
 *
 * Faces that meet at corners have their strips' free edges at one height, if all of them together are out of level by
 * no more than half the strip's width. Else, over each gentle part one strip runs with its free edge level, if the
 * limit is out of level there by no more than half the strip's width; else it follows the straight line between its
 * ends. A rake gets a strip of its own along its slope. Strips of two slopes that touch are mitered to one another;
 * every other end of a sloped strip is plumb.
 */

Length bare_floor(const Face *face, Length x)
{
    return -marks_off(&face->floor, x, true);
}

Length bare_ceiling(const Face *face, Length x)
{
    return marks_off(&face->ceiling, x, true);
}

Length bare_left(const Face *face, Length y)
{
    return face->left.count > 0 ? marks_off(&face->left, y, true) : 0;
}

Length bare_right(const Face *face, Length y)
{
    return face->width - (face->right.count > 0 ? marks_off(&face->right, y, true) : 0);
}

Length run_thickness(const Wall *wall, int run)
{
    const TrimRun *of = &wall->trim.runs.at[run];
    return of->thickness_given ? of->thickness : wall->planks.thickness;
}

Length stack_out(const Wall *wall, int face)
{
    return wall->faces.at[face].backing + wall->planks.thickness;
}

/* A part of a limit that one strip covers. */
typedef struct Reach {
    Length left, right;
    Length y_left, y_right;   /* the limit at its ends */
    Length low, high;         /* over all of it */
    Length off_low, off_high; /* how far it leaves the straight line between its ends, below and above */
    bool rake;
    bool sloped;     /* its strip follows the line between its ends; else its free edge is level */
    bool joins_next; /* the next one goes on where it ends */
} Reach;

typedef struct Reaches {
    Reach *at;
    int count;
    int room;
} Reaches;

static Length line_between(const Reach *reach, Length x)
{
    return straight_at(reach->left, reach->y_left, reach->right, reach->y_right, x);
}

static bool is_rake(const Point *from, const Point *to)
{
    return straight_is_rake(to->x - from->x, to->y - from->y);
}

/* Points first..last of the limit as one part. */
static Reach reach_of(const Point *points, int first, int last)
{
    Reach reach = {.left = points[first].x,
                   .right = points[last].x,
                   .y_left = points[first].y,
                   .y_right = points[last].y,
                   .low = points[first].y,
                   .high = points[first].y,
                   .rake = is_rake(&points[first], &points[first + 1])};
    for (int i = first; i <= last; i++) {
        Length off = points[i].y - line_between(&reach, points[i].x);
        reach.low = points[i].y < reach.low ? points[i].y : reach.low;
        reach.high = points[i].y > reach.high ? points[i].y : reach.high;
        reach.off_low = off < reach.off_low ? off : reach.off_low;
        reach.off_high = off > reach.off_high ? off : reach.off_high;
    }
    return reach;
}

/* The limit at x; beyond the face it goes on level. */
static void put_limit(Arena *arena, const Face *face, bool upper, Length x, Points *points)
{
    const Length on = x < 0 ? 0 : x > face->width ? face->width : x;
    *arena_push(arena, points) = (Point){x, upper ? bare_ceiling(face, on) : bare_floor(face, on)};
}

/* The parts of a limit between left and right. Round an outside corner they reach beyond the face, where the limit goes
 * on level. */
static void take_apart(Arena *arena, const Face *face, bool upper, Length left, Length right, Reaches *reaches)
{
    const Marks *marks = upper ? &face->ceiling : &face->floor;
    Points points = {0};
    put_limit(arena, face, upper, left, &points);
    if (left < 0 && right > 0)
        put_limit(arena, face, upper, 0, &points);
    const Length begins = points.at[points.count - 1].x;
    for (int i = 0; i < marks->count; i++)
        if (marks->at[i].at > begins && marks->at[i].at < right && marks->at[i].at < face->width)
            *arena_push(arena, &points) = (Point){marks->at[i].at, upper ? marks->at[i].off : -marks->at[i].off};
    if (left < face->width && right > face->width)
        put_limit(arena, face, upper, face->width, &points);
    put_limit(arena, face, upper, right, &points);
    for (int i = 0; i + 1 < points.count;) {
        if (points.at[i].x == points.at[i + 1].x) { /* a step */
            i++;
            continue;
        }
        int last = i + 1;
        if (!is_rake(&points.at[i], &points.at[i + 1]))
            while (last + 1 < points.count && points.at[last].x < points.at[last + 1].x &&
                   !is_rake(&points.at[last], &points.at[last + 1]))
                last++;
        Reach reach = reach_of(points.at, i, last);
        reach.joins_next = last + 1 < points.count && points.at[last + 1].x > points.at[last].x;
        *arena_push(arena, reaches) = reach;
        i = last;
    }
}

bool run_cases(const TrimRun *run, const Opening *opening)
{
    if (run->along != ALONG_OPENINGS)
        return false;
    if (run->opening && run->opening[0])
        return strcmp(run->opening, opening->name) == 0;
    return opening->kind == OPENING_WINDOW || opening->kind == OPENING_DOOR;
}

/* Width of the casing that is to go round the opening; 0 where none is. */
static Length casing_width(const Wall *wall, const Opening *opening)
{
    for (int i = 0; i < wall->trim.runs.count; i++)
        if (run_cases(&wall->trim.runs.at[i], opening))
            return wall->trim.runs.at[i].width;
    return 0;
}

/* Where an opening, with its casing if there is to be one, takes the limit away. */
static bool opening_takes(const Layout *layout, int face, int index, bool upper, Length *left, Length *right)
{
    const Wall *wall = layout->wall;
    const Opening *opening = &wall->faces.at[face].openings.at[index];
    if (opening->kind == OPENING_STOVE)
        return false;
    Box box = layout->faces[face].openings[index];
    Length casing = casing_width(wall, opening);
    Length more = casing > 0 ? casing - opening->clear : 0;
    *left = box.left - more;
    *right = box.right + more;
    Length middle = box.left + (box.right - box.left) / 2;
    return upper ? box.top >= bare_ceiling(&wall->faces.at[face], middle)
                 : box.bottom <= bare_floor(&wall->faces.at[face], middle);
}

/* Where the strips of a face begin and end at its sides, and how. */
static void at_side(const Wall *wall, int run, int face, bool is_left, Length y, Length *x, StripEnd *end)
{
    bool through;
    int count = wall->faces.count;
    Corner corner = is_left ? wall_corner_left(wall, face, &through) : wall_corner_right(wall, face, &through);
    int other = (face + (is_left ? count - 1 : 1)) % count;
    Length inward = 0;
    *end = STRIP_SQUARE;
    if (corner.kind == CORNER_INSIDE) { /* one strip runs to the planks, the other to that strip */
        inward = stack_out(wall, other) + (through ? 0 : run_thickness(wall, run));
    } else if (corner.kind == CORNER_OUTSIDE) {
        inward = -stack_out(wall, other) - run_thickness(wall, run);
        *end = STRIP_BEVEL;
    }
    *x = is_left ? bare_left(&wall->faces.at[face], y) + inward : bare_right(&wall->faces.at[face], y) - inward;
}

/* Lowest and highest place of a whole bare limit of a face. */
static void limit_range_of(const Face *face, bool upper, Length *low, Length *high)
{
    const Marks *marks = upper ? &face->ceiling : &face->floor;
    *low = *high = upper ? bare_ceiling(face, 0) : bare_floor(face, 0);
    for (int i = 0; i <= marks->count; i++) {
        bool inside = i == marks->count || (marks->at[i].at > 0 && marks->at[i].at < face->width);
        Length y = i < marks->count ? (upper ? marks->at[i].off : -marks->at[i].off)
                                    : (upper ? bare_ceiling(face, face->width) : bare_floor(face, face->width));
        *low = inside && y < *low ? y : *low;
        *high = inside && y > *high ? y : *high;
    }
}

/* Whether the faces that meet `face`, one after the other, can have their free edges at one height; `base` is where the
 * limit comes nearest to it. */
static bool one_height(const Wall *wall, int face, bool upper, Length width, Length *base)
{
    bool through;
    int count = wall->faces.count;
    int first = face;
    while (first > 0 && wall_corner_right(wall, first - 1, &through).kind != CORNER_NONE)
        first--;
    Length low, high;
    limit_range_of(&wall->faces.at[first], upper, &low, &high);
    for (int i = first; i + 1 < count && wall_corner_right(wall, i, &through).kind != CORNER_NONE; i++) {
        Length least, most;
        limit_range_of(&wall->faces.at[i + 1], upper, &least, &most);
        low = least < low ? least : low;
        high = most > high ? most : high;
    }
    *base = upper ? low : high;
    return (high - low) * 2 <= width;
}

static void settle_slope(const Wall *wall, int face, bool upper, Length width, Reach *reach)
{
    Length base;
    const bool level =
        one_height(wall, face, upper, width, &base) || (!reach->rake && (reach->high - reach->low) * 2 <= width);
    reach->sloped = !level;
}

static Slope slope_of(const Reach *reach)
{
    return reach->sloped ? (Slope){reach->right - reach->left, reach->y_right - reach->y_left} : (Slope){1, 0};
}

/* How far along the strip its free edge ends (begins) beyond the limit's edge; `other` is the reach that it is mitered
 * to, NULL where the end is plumb. */
static Length end_shift(const Reach *reach, const Reach *other, bool at_start, bool upper, Length width)
{
    const Slope own = slope_of(reach);
    Length shift = slope_tangent(width, own);
    if (other && at_start)
        shift = -slope_miter(width, slope_of(other), own);
    else if (other)
        shift = slope_miter(width, own, slope_of(other));
    return upper ? -shift : shift;
}

/* Ends that slant make the blank longer than the limit's edge, or the free edge shorter. */
static void put_ends(const Wall *wall, const Reach *before, const Reach *reach, const Reach *after, bool upper,
                     TrimStrip *strip)
{
    const Length edge = reach->sloped ? slanted(reach->right - reach->left, reach->y_right - reach->y_left)
                                      : reach->right - reach->left;
    strip->start_shift = end_shift(reach, before, true, upper, strip->most);
    strip->end_shift = end_shift(reach, after, false, upper, strip->most);
    if (strip->start == STRIP_SQUARE && !marks_alike(wall, strip->start_shift, 0))
        strip->start = before ? STRIP_MITER : STRIP_PLUMB;
    if (strip->end == STRIP_SQUARE && !marks_alike(wall, strip->end_shift, 0))
        strip->end = after ? STRIP_MITER : STRIP_PLUMB;
    const Length free_edge = edge + strip->end_shift - strip->start_shift;
    strip->long_point =
        edge + (strip->end_shift > 0 ? strip->end_shift : 0) - (strip->start_shift < 0 ? strip->start_shift : 0);
    strip->short_point = free_edge < edge ? free_edge : edge;
    const int bevels = (strip->start == STRIP_BEVEL) + (strip->end == STRIP_BEVEL);
    strip->short_point -= bevels * slope_upright(strip->thickness, slope_of(reach));
    if (strip->short_point < 0)
        strip->short_point = 0;
}

/* `before` and `after`: the reaches that its ends are mitered to, or NULL. */
static void put_strip(Arena *arena, const Layout *layout, int run, int face, bool upper, const Reach *before,
                      const Reach *reach, const Reach *after, StripEnd start, StripEnd end, TrimStrips *strips)
{
    const Wall *wall = layout->wall;
    Length width = wall->trim.runs.at[run].width;
    TrimStrip strip = {.run = run,
                       .face = face,
                       .other = -1,
                       .opening = -1,
                       .thickness = run_thickness(wall, run),
                       .least = width,
                       .most = width,
                       .start = start,
                       .end = end,
                       .from = reach->left,
                       .to = reach->right};
    Length out_of_level = reach->high - reach->low;
    Length crooked = reach->off_high - reach->off_low;
    if (!reach->sloped) {
        Length base;
        if (!one_height(wall, face, upper, width, &base))
            base = upper ? reach->low : reach->high;
        strip.edge_from = strip.edge_to = base + (upper ? -width : width);
        strip.least += upper ? reach->low - base : base - reach->high;
        strip.most = strip.least;
        if (!marks_alike(wall, out_of_level, 0)) {
            strip.shape = !marks_alike(wall, crooked, 0) ? STRIP_SCRIBE : STRIP_TAPER;
            strip.most += out_of_level;
        }
    } else {
        const Length upright = slope_upright(width, slope_of(reach));
        const Length off = upper ? reach->off_low - upright : reach->off_high + upright;
        strip.edge_from = reach->y_left + off;
        strip.edge_to = reach->y_right + off;
        if (!marks_alike(wall, crooked, 0)) {
            strip.shape = STRIP_SCRIBE;
            strip.most += crooked;
        }
    }
    put_ends(wall, before, reach, after, upper, &strip);
    strip.name = say(arena, "%s %s", wall->faces.at[face].name, upper ? "ceiling" : "floor");
    *arena_push(arena, strips) = strip;
}

static int compare_reach(const void *left, const void *right)
{
    const Reach *a = left;
    const Reach *b = right;
    return (a->left > b->left) - (a->left < b->left);
}

void level_strips(Arena *arena, const Layout *layout, int run, int face, TrimStrips *strips)
{
    const Wall *wall = layout->wall;
    const Face *of = &wall->faces.at[face];
    bool upper = wall->trim.runs.at[run].along == ALONG_CEILING;
    Length left, right;
    StripEnd start, end;
    at_side(wall, run, face, true, upper ? bare_ceiling(of, 0) : bare_floor(of, 0), &left, &start);
    at_side(wall, run, face, false, upper ? bare_ceiling(of, of->width) : bare_floor(of, of->width), &right, &end);

    Reaches taken = {0}; /* stretches that openings take, left to right */
    for (int i = 0; i < of->openings.count; i++) {
        Reach *gap = arena_push(arena, &taken);
        if (!opening_takes(layout, face, i, upper, &gap->left, &gap->right))
            taken.count--;
    }
    if (taken.count > 1)
        qsort(taken.at, (size_t)taken.count, sizeof *taken.at, compare_reach);
    Length from = left;
    for (int i = 0; i <= taken.count; i++) {
        Length to = i < taken.count ? taken.at[i].left : right;
        to = to < right ? to : right;
        Reaches reaches = {0};
        if (to > from)
            take_apart(arena, of, upper, from, to, &reaches);
        for (int j = 0; j < reaches.count; j++)
            settle_slope(wall, face, upper, wall->trim.runs.at[run].width, &reaches.at[j]);
        for (int j = 0; j < reaches.count; j++)
            put_strip(arena, layout, run, face, upper,
                      j > 0 && reaches.at[j - 1].joins_next ? &reaches.at[j - 1] : NULL, &reaches.at[j],
                      reaches.at[j].joins_next ? &reaches.at[j + 1] : NULL,
                      j == 0 && from == left ? start : STRIP_SQUARE,
                      j + 1 == reaches.count && to == right ? end : STRIP_SQUARE, strips);
        if (i < taken.count && taken.at[i].right > from)
            from = taken.at[i].right;
    }
}

static Length free_edge(const Layout *layout, const TrimStrips *strips, int face, bool upper, Length x)
{
    const Wall *wall = layout->wall;
    const TrimStrip *nearest = NULL;
    Length least = 0;
    for (int i = 0; i < strips->count; i++) {
        const TrimStrip *strip = &strips->at[i];
        if (strip->face != face || wall->trim.runs.at[strip->run].along != (upper ? ALONG_CEILING : ALONG_FLOOR))
            continue;
        Length away = x < strip->from ? strip->from - x : x > strip->to ? x - strip->to : 0;
        if (!nearest || away < least) {
            nearest = strip;
            least = away;
        }
    }
    if (!nearest)
        return upper ? bare_ceiling(&wall->faces.at[face], x) : bare_floor(&wall->faces.at[face], x);
    return straight_at(nearest->from, nearest->edge_from, nearest->to, nearest->edge_to, x);
}

Length over_floor_trim(const Layout *layout, const TrimStrips *strips, int face, Length x)
{
    return free_edge(layout, strips, face, false, x);
}

Length under_ceiling_trim(const Layout *layout, const TrimStrips *strips, int face, Length x)
{
    return free_edge(layout, strips, face, true, x);
}
