/*
 * What the ends of pieces need at each joint of datumrow(5), "Corner", and the order in which faces are hung.
 */
#include "support/test.h"

#include "trade/corner.h"
#include "trade/corner_angle.h"

#include <string.h>

#define INCH LENGTH_INCH

typedef struct Room {
    Arena *arena;
    Wall *wall;
    Layout layout;
    FaceLayout faces[4];
} Room;

/* `count` faces 100 in wide, one course of 4 in each, in one segment; every corner the same. */
static void room_new(Room *room, int count, Corner corner)
{
    *room = (Room){.arena = arena_new()};
    room->wall = wall_new(room->arena, UNITS_IN);
    room->wall->planks.thickness = INCH / 2;
    static const char *const names[] = {"north", "east", "south", "west"};
    for (int i = 0; i < count; i++) {
        Face *face = arena_push(room->arena, &room->wall->faces);
        face->name = arena_text(room->arena, names[i], strlen(names[i]));
        face->width = 100 * INCH;
        face->corner = corner;
        FaceLayout *laid = &room->faces[i];
        laid->course_count = 1;
        laid->courses = arena_array(room->arena, Course, 1);
        Course *course = &laid->courses[0];
        *course = (Course){.top = 4 * INCH, .right = 100 * INCH, .segment_count = 1};
        course->segments = arena_array(room->arena, Segment, 2);
        course->segments[0].right = 100 * INCH;
        *arena_push(room->arena, &laid->left) = (Point){0, 0};
        *arena_push(room->arena, &laid->right) = (Point){100 * INCH, 0};
    }
    room->layout = (Layout){.wall = room->wall, .faces = room->faces};
}

/* The ends of a piece over the whole course of a face. */
static void ends_of(Room *room, int face, PieceEnd *left, PieceEnd *right)
{
    Course *course = &room->faces[face].courses[0];
    Piece piece = {.face = face, .left = course->left, .right = course->right};
    corner_piece_ends(room->arena, &room->layout, &piece, left, right);
}

START_TEST(of_an_inside_butt_one_piece_runs_through)
{
    Room room;
    PieceEnd left, right;
    room_new(&room, 2, (Corner){CORNER_INSIDE, CORNER_BUTT, THROUGH_LEFT, 0});
    ends_of(&room, 0, &left, &right);
    assert_int_equal(left.place, AT_SIDE); /* two faces have one corner */
    assert_int_equal(left.cut, END_SQUARE);
    assert_int_equal(right.place, AT_CORNER);
    assert_int_equal(right.other, 1);
    assert_holds(right.text, "behind east");
    ends_of(&room, 1, &left, &right);
    assert_int_equal(left.other, 0);
    assert_holds(left.text, "against the planks of north");
    assert_false(left.shows || left.covered);
    arena_free(room.arena);
}
END_TEST

START_TEST(an_outside_miter_cuts_both_ends)
{
    Room room;
    PieceEnd left, right;
    room_new(&room, 2, (Corner){CORNER_OUTSIDE, CORNER_MITER, THROUGH_LEFT, 0});
    ends_of(&room, 0, &left, &right);
    assert_int_equal(right.cut, END_MITER);
    assert_int_equal(right.shorter, INCH / 2); /* 45 degrees through the thickness */
    assert_string_equal(right.text, "45 degree miter, long point at the front, the back 1/2 in shorter");
    assert_false(right.leans);
    /* the side leans 1/4 in over the course: slanted across the width as well */
    Points *side = &room.faces[0].right;
    side->count = 0;
    *arena_push(room.arena, side) = (Point){100 * INCH, 0};
    *arena_push(room.arena, side) = (Point){100 * INCH - INCH / 4, 4 * INCH};
    ends_of(&room, 0, &left, &right);
    assert_int_equal(right.cut, END_MITER);
    assert_true(right.leans);
    assert_int_equal(right.slant, -INCH / 4);
    assert_holds(right.text, "slanted by 1/4 in over the plank's height, the lower edge longer");
    arena_free(room.arena);
}
END_TEST

/* Trigonometry alone: a corner of 92 or 88 degrees stands off 48 in x tan(2) = 1.676194 in at 4 ft. For wood 1/2 in
 * thick tan(2) makes 0.0174604 in of a square cut; the miter is set to 44 or 46 degrees, its back 1/2 in x tan of that
 * shorter, and two cuts at 45 degrees stand open by 2 x 1/2 in x root 2 x sin(1) = 0.0246818 in. */
#define OFF_TWO_DEGREES ((Length)42575328) /* nm */

START_TEST(an_angle_gives_bevel_and_miter)
{
    Arena *arena = arena_new();
    for (int sign = 1; sign >= -1; sign -= 2) {
        const CornerAngle angle = {sign * OFF_TWO_DEGREES, 48 * INCH};
        assert_string_equal(corner_degrees(arena, angle), "2");
        assert_string_equal(corner_miter_degrees(arena, angle), sign > 0 ? "44" : "46");
        assert_near(corner_square_open(angle, INCH / 2), 443494, 100);
        assert_near(corner_miter_back(angle, INCH / 2), sign > 0 ? 12264257 : 13151235, 100);
        assert_near(corner_miter_open(angle, INCH / 2), 626918, 100);
    }
    /* the sharp corners of a 3-4-5 triangle: the tangent of half the one is 1/3, so that the back loses half */
    assert_int_equal(corner_miter_back((CornerAngle){36 * INCH, 48 * INCH}, INCH), INCH / 2);
    assert_int_equal(corner_miter_back((CornerAngle){-36 * INCH, 48 * INCH}, INCH), 2 * INCH);
    /* square */
    assert_string_equal(corner_miter_degrees(arena, (CornerAngle){0, 48 * INCH}), "45");
    assert_int_equal(corner_miter_back((CornerAngle){0, 48 * INCH}, INCH), INCH);
    assert_int_equal(corner_miter_open((CornerAngle){0, 48 * INCH}, INCH), 0);
    arena_free(arena);
}
END_TEST

/* The ends of both faces at the corner of 92 (wider) or 88 degrees. */
static void gap_ends(Room *room, CornerKind kind, CornerJoint joint, bool wider, PieceEnd *through, PieceEnd *other)
{
    PieceEnd unused;
    room_new(room, 2, (Corner){kind, joint, THROUGH_LEFT, wider ? OFF_TWO_DEGREES : -OFF_TWO_DEGREES});
    room->wall->round = INCH / 16;
    ends_of(room, 0, &unused, through);
    ends_of(room, 1, other, &unused);
}

/* Which side a square cut stands open at follows from a drawing: the piece that butts leaves the gap where the other
 * face leans away from it, inside at the front of a wide corner, outside at the front of a narrow one. */
START_TEST(a_corner_out_of_square_bevels_what_would_show)
{
    for (int wider = 0; wider < 2; wider++) {
        Room room;
        PieceEnd through, other;
        gap_ends(&room, CORNER_INSIDE, CORNER_BUTT, wider, &through, &other);
        assert_int_equal(through.cut, END_SQUARE);
        assert_int_equal(other.cut, wider ? END_BEVEL : END_SQUARE);
        assert_near(other.shorter, wider ? 443494 : 0, 100);
        assert_string_equal(other.text, wider ? "bevel 2 degrees off square, long point at the front, the back 1/64 in "
                                                "shorter, tight against the planks of north"
                                              : "square, tight against the planks of north");
        assert_string_equal(other.why, wider
                                           ? "cut square it would show a gap of 1/64 in"
                                           : "the corner is 2 degrees narrower than square: it stands open by 1/64 in "
                                             "at the back, out of sight");
        arena_free(room.arena);
        gap_ends(&room, CORNER_OUTSIDE, CORNER_LAP, wider, &through, &other);
        assert_int_equal(through.cut, END_BEVEL);
        assert_near(through.shorter, wider ? -443494 : 443494, 100);
        assert_holds(through.text, wider ? "long point at the back, the front 1/64 in shorter"
                                         : "long point at the front, the back 1/64 in shorter");
        assert_holds(through.why, wider ? "its front would stand out by 1/64 in" : "would fall short by 1/64 in");
        assert_int_equal(other.cut, wider ? END_SQUARE : END_BEVEL);
        assert_holds(other.why, wider ? "2 degrees wider than square: it stands open by 1/64 in at the back"
                                      : "it would show a gap of 1/64 in");
        arena_free(room.arena);
        gap_ends(&room, CORNER_OUTSIDE, CORNER_MITER, wider, &through, &other);
        assert_string_equal(through.text, other.text);
        assert_near(other.shorter, wider ? 12264257 : 13151235, 100);
        assert_string_equal(other.text, wider ? "44 degree miter, long point at the front, the back 1/2 in shorter"
                                              : "46 degree miter, long point at the front, the back 1/2 in shorter");
        assert_string_equal(other.why,
                            wider ? "cut at 45 degrees it would stand open by 1/32 in at the back, out of sight"
                                  : "cut at 45 degrees it would stand open by 1/32 in at the front");
        arena_free(room.arena);
        gap_ends(&room, CORNER_INSIDE, CORNER_TRIM, wider, &through, &other);
        assert_string_equal(other.text, "square; a strip covers the corner, and a gap of 1/64 in that opens there");
        arena_free(room.arena);
    }
}
END_TEST

/* 1/16 in at 4 ft opens 0.0007 in of wood 1/2 in thick: no saw is set for that (common practice: under 1/64 in). */
START_TEST(a_gap_that_nobody_sees_changes_no_cut)
{
    Room room;
    PieceEnd left, right;
    room_new(&room, 2, (Corner){CORNER_OUTSIDE, CORNER_MITER, THROUGH_LEFT, -INCH / 16});
    ends_of(&room, 0, &left, &right);
    assert_int_equal(right.shorter, INCH / 2);
    assert_string_equal(right.text, "45 degree miter, long point at the front, the back 1/2 in shorter");
    arena_free(room.arena);
    room_new(&room, 2, (Corner){CORNER_INSIDE, CORNER_BUTT, THROUGH_LEFT, INCH / 16});
    ends_of(&room, 1, &left, &right);
    assert_int_equal(left.cut, END_SQUARE);
    assert_string_equal(left.text, "square, tight against the planks of north");
    arena_free(room.arena);
}
END_TEST

START_TEST(outside_lap_and_trim)
{
    Room room;
    PieceEnd left, right;
    room_new(&room, 2, (Corner){CORNER_OUTSIDE, CORNER_LAP, THROUGH_RIGHT, 0});
    ends_of(&room, 0, &left, &right);
    assert_false(right.shows);
    assert_holds(right.text, "east covers it");
    ends_of(&room, 1, &left, &right);
    assert_true(left.shows);
    arena_free(room.arena);
    room_new(&room, 2, (Corner){CORNER_OUTSIDE, CORNER_TRIM, THROUGH_LEFT, 0});
    ends_of(&room, 0, &left, &right);
    assert_true(right.covered);
    assert_int_equal(right.cut, END_SQUARE);
    arena_free(room.arena);
}
END_TEST

START_TEST(an_end_at_an_opening_or_side_is_square)
{
    Room room;
    PieceEnd left, right;
    room_new(&room, 1, (Corner){CORNER_NONE, CORNER_BUTT, THROUGH_LEFT, 0});
    Course *course = &room.faces[0].courses[0];
    course->segment_count = 2;
    course->segments[0].right = 40 * INCH;
    course->segments[1] = (Segment){.left = 60 * INCH, .right = 100 * INCH};
    Piece piece = {.left = 10 * INCH, .right = 40 * INCH};
    corner_piece_ends(room.arena, &room.layout, &piece, &left, &right);
    assert_int_equal(left.place, AT_JOINT);
    assert_int_equal(right.place, AT_OPENING);
    piece = (Piece){.segment = 1, .left = 60 * INCH, .right = 100 * INCH};
    course->right = 100 * INCH;
    *arena_push(room.arena, &room.faces[0].right) = (Point){100 * INCH, 50 * INCH};
    corner_piece_ends(room.arena, &room.layout, &piece, &left, &right);
    assert_int_equal(left.place, AT_OPENING);
    assert_int_equal(right.place, AT_SIDE);
    room.faces[0].right.count = 0; /* the side stands further out: the course runs out under a rake before it */
    *arena_push(room.arena, &room.faces[0].right) = (Point){104 * INCH, 0};
    corner_piece_ends(room.arena, &room.layout, &piece, &left, &right);
    assert_int_equal(right.place, AT_RAKE);
    assert_int_equal(right.cut, END_SLANT);
    arena_free(room.arena);
}
END_TEST

START_TEST(a_face_that_butts_hangs_after_the_one_it_meets)
{
    Room room;
    room_new(&room, 2, (Corner){CORNER_INSIDE, CORNER_BUTT, THROUGH_RIGHT, 0});
    CornerTurn *turns = corner_turns(room.arena, room.wall);
    assert_int_equal(turns[0].face, 1);
    assert_string_equal(turns[0].text, "first");
    assert_int_equal(turns[1].face, 0);
    assert_string_equal(turns[1].text, "after east, on which it butts");
    arena_free(room.arena);
    room_new(&room, 2, (Corner){CORNER_OUTSIDE, CORNER_LAP, THROUGH_LEFT, 0});
    turns = corner_turns(room.arena, room.wall);
    assert_string_equal(turns[1].text, "after east, whose ends it covers");
    arena_free(room.arena);
    room_new(&room, 4, (Corner){CORNER_INSIDE, CORNER_BUTT, THROUGH_LEFT, 0}); /* a ring */
    turns = corner_turns(room.arena, room.wall);
    assert_int_equal(turns[0].face, 0);
    assert_string_equal(turns[0].text, "first, since each waits for another");
    arena_free(room.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        of_an_inside_butt_one_piece_runs_through, an_outside_miter_cuts_both_ends,
        an_angle_gives_bevel_and_miter,           a_corner_out_of_square_bevels_what_would_show,
        a_gap_that_nobody_sees_changes_no_cut,    outside_lap_and_trim,
        an_end_at_an_opening_or_side_is_square,   a_face_that_butts_hangs_after_the_one_it_meets,
    };
    return RUN(tests);
}
