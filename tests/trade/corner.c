/*
 * What the ends of pieces need at each joint of datumrow(5), "Corner", and the order in which faces are hung.
 */
#include "support/test.h"

#include "trade/corner.h"

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
        of_an_inside_butt_one_piece_runs_through,
        an_outside_miter_cuts_both_ends,
        outside_lap_and_trim,
        an_end_at_an_opening_or_side_is_square,
        a_face_that_butts_hangs_after_the_one_it_meets,
    };
    return RUN(tests);
}
