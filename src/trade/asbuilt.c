#include "trade/asbuilt.h"

#include "trade/say.h"
#include "trade/season.h"
#include "trade/spacer.h"
#include "wall/straight.h"

#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

/* The outermost measured edge of a face in one direction, or NULL. */
static const HungEdge *outermost(const Wall *wall, int face, bool up)
{
    const HungEdge *found = NULL;
    for (int i = 0; i < wall->hung_edges.count; i++) {
        const HungEdge *edge = &wall->hung_edges.at[i];
        if (edge->is_top != up || strcmp(edge->face, wall->faces.at[face].name) != 0)
            continue;
        if (!found || (up ? edge->course >= found->course : edge->course <= found->course))
            found = edge;
    }
    return found;
}

/* Where the edge was planned: by the numbers alone, since the course need not be on this face. A course number beyond
 * all walls ends at LENGTH_MOST. */
static Length planned_edge(const Wall *wall, int64_t course, bool up)
{
    int count = wall->planks.widths.count;
    Wide turn = wide_floor(course, count);
    Wide y = wall->start + turn * wall_run(wall);
    for (int64_t i = (int64_t)turn * count; i < course; i++)
        y += wall_course_face(wall, i) + wall->planks.reveal;
    if (up)
        y += wall_course_face(wall, course);
    return y > LENGTH_MOST ? LENGTH_MOST : y < -LENGTH_MOST ? -LENGTH_MOST : (Length)y;
}

/* The outermost course of a face, or NULL. */
static const Course *last_course(const FaceLayout *face, bool up)
{
    if (face->course_count == 0)
        return NULL;
    return &face->courses[up ? face->course_count - 1 : 0];
}

static const char *rip_words(Arena *arena, const Wall *wall, Length least, Length most)
{
    const char *low = say_length(arena, wall, least);
    const char *high = say_length(arena, wall, most);
    return strcmp(low, high) == 0 ? low : say(arena, "%s to %s", low, high);
}

/* Common practice: nobody eases reveals for a strip as thin as a pencil line. */
#define WON_LEAST (LENGTH_INCH / 16)

/* Why the reveals are not eased; NULL where they may be. */
static const char *not_eased_words(Arena *arena, const Wall *wall, const AsBuiltWay *way, const char *count)
{
    if (way->planned_most <= WON_LEAST)
        return "; a course as narrow as that is not worth winning back";
    if (way->eased < 0)
        return say(arena, "; the %s cannot take up %s", count, say_fine(arena, wall, (Length)llabs(way->off)));
    if (way->eased < way->grows)
        return say(arena, "; the %s would be %s each, and a plank grows by up to %s: leave them as they are", count,
                   say_thin(arena, wall, way->eased), say_thin(arena, wall, way->grows));
    return NULL;
}

/* What eased reveals do to courses that meet round a corner. */
static const char *beside_words(Arena *arena, const Wall *wall, const AsBuiltWay *way)
{
    if (way->beside < 0 || (marks_alike(wall, way->miss_eased, 0) && marks_alike(wall, way->miss_now, 0)))
        return "";
    return say(arena, "; at the corner with %s the courses then miss by up to %s, as they are by %s",
               wall->faces.at[way->beside].name, say_fine(arena, wall, way->miss_eased),
               say_fine(arena, wall, way->miss_now));
}

static const char *ease_words(Arena *arena, const Wall *wall, const AsBuiltWay *way)
{
    if (way->off == 0 || way->reveals == 0)
        return "";
    const char *count = say_count(arena, way->reveals, "reveal that is left", "reveals that are left");
    const char *none = not_eased_words(arena, wall, way, count);
    if (none != NULL)
        return none;
    if (way->eased == 0)
        return say(arena, "; to win it back close the %s%s", count, beside_words(arena, wall, way));
    Spacer spacer;
    const char *with = spacer_nearest(way->eased, &spacer)
                           ? say(arena, ", nearest at hand: %s (%s)", spacer_words(arena, &spacer),
                                 say_thin(arena, wall, spacer.thickness))
                           : "";
    return say(arena, "; to win it back make the %s %s each%s%s", count, say_thin(arena, wall, way->eased), with,
               beside_words(arena, wall, way));
}

static void put_words(Arena *arena, const Wall *wall, int face, bool up, AsBuiltWay *way)
{
    const char *off = way->off == 0 ? "where it was planned"
                                    : say(arena, "%s %s than planned", say_fine(arena, wall, (Length)llabs(way->off)),
                                          (way->off > 0) == up ? "higher" : "lower");
    const char *last = "";
    if (way->has_last)
        last = say(arena, "; the %s course becomes %s%s (planned: %s)", up ? "top" : "bottom",
                   rip_words(arena, wall, way->now_least, way->now_most),
                   way->last_now == way->last_planned ? "" : say(arena, ", now course %" PRId64, way->last_now),
                   rip_words(arena, wall, way->planned_least, way->planned_most));
    way->text = say(arena, "%s: the %s of course %" PRId64 " hangs %s%s%s", wall->faces.at[face].name,
                    up ? "top" : "bottom", way->course, off, last, ease_words(arena, wall, way));
}

/* By how much at most the courses beyond the measured edge, `reveal` apart, miss those of another face. */
static Length miss_of(const Layout *layout, const AsBuiltWay *way, bool up, int other, Length reveal)
{
    const FaceLayout *face = &layout->faces[other];
    const int step = up ? 1 : -1;
    Length edge = way->height, most = 0;
    int64_t number = way->course;
    for (int i = 0; i < way->reveals; i++) {
        number += step;
        edge += step * reveal;
        const int index = layout_course_index(face, number);
        if (index >= 0) {
            const Length there = up ? face->courses[index].bottom : face->courses[index].top;
            const Length miss = (Length)llabs(edge - there);
            most = miss > most ? miss : most;
        }
        edge += step * wall_course_face(layout->wall, number);
    }
    return most;
}

/* The faces that meet this one, and the one whose courses eased reveals would miss by most. */
static void put_beside(const Layout *layout, int face, bool up, AsBuiltWay *way)
{
    const Wall *wall = layout->wall;
    const int count = wall->faces.count;
    bool through;
    for (int side = 0; side < 2; side++) {
        const Corner corner =
            side == 0 ? wall_corner_left(wall, face, &through) : wall_corner_right(wall, face, &through);
        const int other = (face + (side == 0 ? count - 1 : 1)) % count;
        if (corner.kind == CORNER_NONE || other == face)
            continue;
        const Length miss = miss_of(layout, way, up, other, way->eased);
        if (way->beside >= 0 && miss <= way->miss_eased)
            continue;
        way->beside = other;
        way->miss_eased = miss;
        way->miss_now = miss_of(layout, way, up, other, wall->planks.reveal);
    }
}

/* What eased reveals would be, and whether they may. */
static void put_eased(const Layout *layout, int face, bool up, AsBuiltWay *way)
{
    const Wall *wall = layout->wall;
    const Seasons seasons = season_of_wall(wall);
    way->reveals = (int)llabs(way->last_planned - way->course);
    way->eased = wall->planks.reveal - wide_narrow(wide_divide(way->off, way->reveals));
    if (seasons.given)
        way->grows = seasons.damp.change > seasons.dry.change ? seasons.damp.change : seasons.dry.change;
    way->can_win_back = way->eased >= 0 && way->eased >= way->grows && way->planned_most > WON_LEAST;
    if (way->can_win_back)
        put_beside(layout, face, up, way);
}

static AsBuiltWay way_of(Arena *arena, const Layout *layout, const Layout *planned, int face, bool up)
{
    const Wall *wall = layout->wall;
    AsBuiltWay way = {.text = "", .beside = -1};
    const HungEdge *edge = outermost(wall, face, up);
    if (!edge)
        return way;
    way.measured = true;
    way.course = edge->course;
    way.height = edge->height;
    way.off = edge->height - planned_edge(wall, edge->course, up);
    if (!up)
        way.off = -way.off;
    const Course *then = last_course(&planned->faces[face], up);
    const Course *now = last_course(&layout->faces[face], up);
    if (then && now && (up ? then->number > edge->course : then->number < edge->course)) {
        way.has_last = true;
        way.last_planned = then->number;
        way.last_now = now->number;
        way.planned_least = then->rip.least;
        way.planned_most = then->rip.most;
        way.now_least = now->rip.least;
        way.now_most = now->rip.most;
        put_eased(layout, face, up, &way);
    }
    put_words(arena, wall, face, up, &way);
    return way;
}

AsBuilt *asbuilt_of(Arena *arena, const Layout *layout, const Plan *plan, Err *err)
{
    const Wall *wall = layout->wall;
    Wall *unmeasured = wall_copy(arena, wall);
    unmeasured->hung_edges.count = 0;
    Layout *planned = layout_wall_at(arena, unmeasured, wall->start, err);
    if (!planned)
        return NULL;
    AsBuilt *built = arena_one(arena, AsBuilt);
    built->faces = arena_array(arena, AsBuiltFace, wall->faces.count);
    for (int i = 0; i < wall->faces.count; i++) {
        built->faces[i].up = way_of(arena, layout, planned, i, true);
        built->faces[i].down = way_of(arena, layout, planned, i, false);
    }
    built->next = -1;
    for (int i = 0; i < plan->piece_count; i++) {
        if (piece_is_up(&plan->pieces[i]))
            built->hung++;
        else if (built->next < 0)
            built->next = i;
    }
    built->left = plan->piece_count - built->hung;
    if (built->next > 0) {
        const Piece *next = &plan->pieces[built->next];
        built->course_done = piece_is_up(&next[-1]) && (next[-1].face != next->face || next[-1].course != next->course);
    }
    return built;
}

HungPiece asbuilt_record(const Layout *layout, const Piece *piece)
{
    const Wall *wall = layout->wall;
    return (HungPiece){.face = wall->faces.at[piece->face].name,
                       .course = (int)layout->faces[piece->face].courses[piece->course].number,
                       .left = piece->left,
                       .right = piece->right,
                       .board = piece->board,
                       .offset_given = true,
                       .offset = piece->offset};
}
