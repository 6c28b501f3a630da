#include "trade/corner.h"

#include "trade/say.h"
#include "wall/straight.h"

#include <stdlib.h>

/*
 * Where an end stands is told by the numbers alone: an end inside its segment is a joint; one at the segment's end but
 * inside the course's extent stands at an opening; one at the extent's end stands at the side, if the side line passes
 * there within the band, else the course has run out under a limit.
 */

/* Whether the side comes as far out as `x` somewhere in the band. */
static bool side_reaches(const Points *points, const Course *course, Length x)
{
    for (int i = -2; i < points->count; i++) {
        Length y = i == -2 ? course->bottom : i == -1 ? course->top : points->at[i].y;
        if (y >= course->bottom && y <= course->top && llabs(layout_side_at(points, y) - x) <= 1)
            return true;
        if (i >= 0 && y >= course->bottom && y <= course->top && llabs(points->at[i].x - x) <= 1)
            return true;
    }
    return false;
}

static const char *back_shorter(Arena *arena, const Wall *wall)
{
    return say(arena, "45 degree miter, long point at the front, the back %s shorter",
               say_length(arena, wall, wall->planks.thickness));
}

static void at_corner(Arena *arena, const Wall *wall, const Corner *corner, bool through, PieceEnd *end)
{
    const char *other = wall->faces.at[end->other].name;
    switch (corner->joint) {
    case CORNER_BUTT:
        end->text = through ? say(arena, "square; it runs into the corner behind %s", other)
                            : say(arena, "square, tight against the planks of %s", other);
        break;
    case CORNER_TRIM:
        end->covered = true;
        end->text = "square; a strip covers the corner";
        break;
    case CORNER_LAP:
        end->shows = through;
        end->text = through ? say(arena, "square, flush with the planks of %s; its end shows", other)
                            : say(arena, "square, at the corner; %s covers it", other);
        break;
    case CORNER_MITER:
        end->cut = END_MITER;
        end->shorter = wall->planks.thickness;
        end->text = back_shorter(arena, wall);
        break;
    }
}

static PieceEnd end_of(Arena *arena, const Layout *layout, const Piece *piece, bool is_left)
{
    const Wall *wall = layout->wall;
    const FaceLayout *face = &layout->faces[piece->face];
    const Course *course = &face->courses[piece->course];
    const Segment *segment = &course->segments[piece->segment];
    Length x = is_left ? piece->left : piece->right;
    PieceEnd end = {.place = AT_JOINT, .cut = END_SQUARE, .other = -1, .text = "square"};
    if (x != (is_left ? segment->left : segment->right))
        return end;
    if (x != (is_left ? course->left : course->right)) {
        end.place = AT_OPENING;
        return end;
    }
    const Points *side = is_left ? &face->left : &face->right;
    if (!side_reaches(side, course, x)) {
        end.place = AT_RAKE;
        end.cut = END_SLANT;
        end.text = "runs out under the slant: long and short edge as given";
        return end;
    }
    bool through;
    Corner corner =
        is_left ? wall_corner_left(wall, piece->face, &through) : wall_corner_right(wall, piece->face, &through);
    end.place = AT_SIDE;
    end.slant = layout_side_at(side, course->top) - layout_side_at(side, course->bottom);
    bool slants = !marks_alike(wall, end.slant, 0); /* less is no slant that could be marked */
    if (!slants)
        end.slant = 0;
    end.cut = slants ? END_SLANT : END_SQUARE;
    if (corner.kind != CORNER_NONE) {
        int count = wall->faces.count;
        end.place = AT_CORNER;
        end.other = (piece->face + (is_left ? count - 1 : 1)) % count;
        at_corner(arena, wall, &corner, through, &end);
        end.leans = slants && end.cut == END_MITER;
    }
    if (slants)
        end.text =
            say(arena, "%s; slanted by %s over the plank's height, the %s edge longer", end.text,
                say_length(arena, wall, (Length)llabs(end.slant)), (end.slant > 0) == is_left ? "lower" : "upper");
    return end;
}

void corner_piece_ends(Arena *arena, const Layout *layout, const Piece *piece, PieceEnd *left, PieceEnd *right)
{
    *left = end_of(arena, layout, piece, true);
    *right = end_of(arena, layout, piece, false);
}

/* What the face waits for at one of its corners, or NULL. */
static const char *waits_for(Arena *arena, const Wall *wall, int face, bool is_left)
{
    int count = wall->faces.count;
    bool through;
    Corner corner = is_left ? wall_corner_left(wall, face, &through) : wall_corner_right(wall, face, &through);
    const char *other = wall->faces.at[(face + (is_left ? count - 1 : 1)) % count].name;
    if (corner.kind == CORNER_INSIDE && corner.joint == CORNER_BUTT && !through)
        return say(arena, "%s, on which it butts", other);
    if (corner.kind == CORNER_OUTSIDE && corner.joint == CORNER_LAP && through)
        return say(arena, "%s, whose ends it covers", other);
    return NULL;
}

/* The other faces of its group, which hang with it course by course; NULL where there is none. */
static const char *hung_with(Arena *arena, const Wall *wall, const int *group, int face)
{
    const char *with = NULL;
    for (int i = 0; i < wall->faces.count; i++)
        if (i != face && group[i] == group[face])
            with = with == NULL ? wall->faces.at[i].name : say(arena, "%s, %s", with, wall->faces.at[i].name);
    return with;
}

CornerTurn *corner_turns(Arena *arena, const Wall *wall)
{
    int order[WALL_FACES_MOST];
    int group[WALL_FACES_MOST];
    wall_face_order(wall, order);
    wall_face_groups(wall, group);
    CornerTurn *turns = arena_array(arena, CornerTurn, wall->faces.count);
    for (int i = 0; i < wall->faces.count; i++) {
        const char *left = waits_for(arena, wall, order[i], true);
        const char *right = waits_for(arena, wall, order[i], false);
        const char *text = i == 0 ? "first" : "in the order of the file";
        if (i > 0 && left && right)
            text = say(arena, "after %s, and %s", left, right);
        else if (i > 0 && (left || right))
            text = say(arena, "after %s", left ? left : right);
        else if (left || right)
            text = "first, since each waits for another";
        const char *with = hung_with(arena, wall, group, order[i]);
        if (with != NULL)
            text = say(arena, "%s; course by course with %s", text, with);
        turns[i] = (CornerTurn){order[i], text};
    }
    return turns;
}
