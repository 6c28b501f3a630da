#include "trade/asbuilt.h"

#include "trade/say.h"
#include "trade/spacer.h"

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

static const char *ease_words(Arena *arena, const Wall *wall, const AsBuiltWay *way)
{
    if (way->off == 0 || way->reveals == 0)
        return "";
    const char *count = say_count(arena, way->reveals, "reveal that is left", "reveals that are left");
    if (!way->can_win_back)
        return say(arena, "; the %s cannot take up %s", count, say_fine(arena, wall, (Length)llabs(way->off)));
    if (way->eased == 0)
        return say(arena, "; to win it back close the %s", count);
    Spacer spacer;
    const char *with = spacer_nearest(way->eased, &spacer)
                           ? say(arena, ", nearest at hand: %s (%s)", spacer_words(arena, &spacer),
                                 say_thin(arena, wall, spacer.thickness))
                           : "";
    return say(arena, "; to win it back make the %s %s each%s", count, say_thin(arena, wall, way->eased), with);
}

static void put_words(Arena *arena, const Wall *wall, int face, bool up, AsBuiltWay *way)
{
    const char *off = way->off == 0 ? "where it was planned"
                                    : say(arena, "%s %s than planned", say_fine(arena, wall, (Length)llabs(way->off)),
                                          (way->off > 0) == up ? "higher" : "lower");
    const char *last = "";
    if (way->has_last)
        last = say(arena, "; the %s course becomes %s%s, planned were %s", up ? "top" : "bottom",
                   rip_words(arena, wall, way->now_least, way->now_most),
                   way->last_now == way->last_planned ? "" : say(arena, " (course %" PRId64 ")", way->last_now),
                   rip_words(arena, wall, way->planned_least, way->planned_most));
    way->text = say(arena, "%s: the %s of course %" PRId64 " hangs %s%s%s", wall->faces.at[face].name,
                    up ? "top" : "bottom", way->course, off, last, ease_words(arena, wall, way));
}

static AsBuiltWay way_of(Arena *arena, const Layout *layout, const Layout *planned, int face, bool up)
{
    const Wall *wall = layout->wall;
    AsBuiltWay way = {.text = ""};
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
        way.reveals = (int)llabs(then->number - edge->course);
        way.eased = wall->planks.reveal - wide_narrow(wide_divide(way.off, way.reveals));
        way.can_win_back = way.eased >= 0;
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
        if (plan->pieces[i].hung)
            built->hung++;
        else if (built->next < 0)
            built->next = i;
    }
    built->left = plan->piece_count - built->hung;
    if (built->next > 0) {
        const Piece *next = &plan->pieces[built->next];
        built->course_done = next[-1].hung && (next[-1].face != next->face || next[-1].course != next->course);
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
