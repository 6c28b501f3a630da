#include "trade/corner.h"

#include "trade/corner_angle.h"
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

/* Common practice: a narrower gap is not seen, and no saw is set for it. */
#define SEEN_LEAST (LENGTH_INCH / 64)

typedef struct Meeting {
    Arena *arena;
    const Wall *wall;
    CornerAngle angle;
    const char *other; /* the face that is met */
    const char *open;  /* how far a square cut stands open, in words; NULL where nobody sees it */
    Length by;         /* the same */
    bool wide;         /* the corner is wider than square */
} Meeting;

static Meeting meeting_of(Arena *arena, const Wall *wall, const Corner *corner, int other)
{
    Meeting meeting = {arena, wall, corner_angle(wall, corner), wall->faces.at[other].name, NULL, 0, corner->gap > 0};
    meeting.by = corner_square_open(meeting.angle, wall->planks.thickness);
    if (meeting.by >= SEEN_LEAST)
        meeting.open = say_fine(arena, wall, meeting.by);
    return meeting;
}

/* A cut some degrees off square, with its long point at the front or at the back. */
static const char *bevel_end(const Meeting *meeting, bool front, PieceEnd *end)
{
    end->cut = END_BEVEL;
    end->shorter = front ? meeting->by : -meeting->by;
    return say(meeting->arena, "bevel %s degrees off square, long point at the %s, the %s %s shorter",
               corner_degrees(meeting->arena, meeting->angle), front ? "front" : "back", front ? "back" : "front",
               meeting->open);
}

/* What becomes of a square end whose gap lies at the back. */
static const char *open_behind(const Meeting *meeting)
{
    if (meeting->open == NULL)
        return NULL;
    return say(meeting->arena,
               "the corner is %s degrees %s than square: it stands open by %s at the back, out of sight",
               corner_degrees(meeting->arena, meeting->angle), meeting->wide ? "wider" : "narrower", meeting->open);
}

/* What a square cut would show where the end is beveled. */
static const char *open_in_sight(const Meeting *meeting)
{
    return say(meeting->arena, "cut square it would show a gap of %s", meeting->open);
}

static void butt_end(const Meeting *meeting, bool through, PieceEnd *end)
{
    Arena *arena = meeting->arena;
    if (through) {
        end->text = say(arena, "square; it runs into the corner behind %s", meeting->other);
    } else if (meeting->open != NULL && meeting->wide) {
        end->text = say(arena, "%s, tight against the planks of %s", bevel_end(meeting, true, end), meeting->other);
        end->why = open_in_sight(meeting);
    } else {
        end->text = say(arena, "square, tight against the planks of %s", meeting->other);
        end->why = open_behind(meeting);
    }
}

static void lap_end(const Meeting *meeting, bool through, PieceEnd *end)
{
    Arena *arena = meeting->arena;
    const bool seen = meeting->open != NULL;
    end->shows = through;
    if (through) {
        end->text = say(arena, "%s, flush with the planks of %s; its end shows",
                        seen ? bevel_end(meeting, !meeting->wide, end) : "square", meeting->other);
        if (seen)
            end->why = say(arena, "cut square its front would %s by %s", meeting->wide ? "stand out" : "fall short",
                           meeting->open);
        return;
    }
    const bool bevel = seen && !meeting->wide;
    end->text =
        say(arena, "%s, at the corner; %s covers it", bevel ? bevel_end(meeting, true, end) : "square", meeting->other);
    end->why = bevel ? open_in_sight(meeting) : open_behind(meeting);
}

static void miter_end(const Meeting *meeting, PieceEnd *end)
{
    Arena *arena = meeting->arena;
    const Wall *wall = meeting->wall;
    const Length thickness = wall->planks.thickness, open = corner_miter_open(meeting->angle, thickness);
    const bool seen = open >= SEEN_LEAST;
    end->cut = END_MITER;
    end->shorter = seen ? corner_miter_back(meeting->angle, thickness) : thickness;
    end->text = say(arena, "%s degree miter, long point at the front, the back %s shorter",
                    seen ? corner_miter_degrees(arena, meeting->angle) : "45", say_length(arena, wall, end->shorter));
    if (seen)
        end->why = say(arena, "cut at 45 degrees it would stand open by %s at the %s", say_fine(arena, wall, open),
                       meeting->wide ? "back, out of sight" : "front");
}

static void at_corner(Arena *arena, const Wall *wall, const Corner *corner, bool through, PieceEnd *end)
{
    const Meeting meeting = meeting_of(arena, wall, corner, end->other);
    switch (corner->joint) {
    case CORNER_BUTT: butt_end(&meeting, through, end); break;
    case CORNER_TRIM:
        end->covered = true;
        end->text =
            meeting.open == NULL
                ? "square; a strip covers the corner"
                : say(arena, "square; a strip covers the corner, and a gap of %s that opens there", meeting.open);
        break;
    case CORNER_LAP: lap_end(&meeting, through, end); break;
    case CORNER_MITER: miter_end(&meeting, end); break;
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
        end.leans = slants && (end.cut == END_MITER || end.cut == END_BEVEL);
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
