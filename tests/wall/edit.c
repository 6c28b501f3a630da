/* Changes, each a step that can be undone; refused ones change nothing. */
#include "support/with_arena.h"

#include "base/random.h"
#include "support/edit_head.h"
#include "support/random_wall.h"
#include "wall/check.h"

#include <stdio.h>
#include <string.h>

#define INCH LENGTH_INCH

/* Three faces in a ring, openings, four lines of stock, two pieces hung. */
static Document *document_of_three(void)
{
    Wall *wall = wall_new(arena, UNITS_IN);
    *arena_push(arena, &wall->planks.widths) = 3 * INCH;
    wall->planks.thickness = INCH / 2;
    wall->saw = (Saw){.kerf = INCH / 8, .square = INCH / 4};
    static const char *const names[] = {"north", "east", "south"};
    for (int i = 0; i < 3; i++) {
        Face *face = arena_push(arena, &wall->faces);
        *face = (Face){.id = wall->next_id++, .name = text_in_arena(names[i]), .width = 100 * INCH};
        *arena_push(arena, &face->floor) = (Mark){0, 40 * INCH};
        *arena_push(arena, &face->ceiling) = (Mark){0, 50 * INCH};
        face->corner = (Corner){CORNER_INSIDE, CORNER_BUTT, THROUGH_LEFT, 0};
    }
    Opening *box = arena_push(arena, &wall->faces.at[0].openings);
    *box = (Opening){.id = wall->next_id++,
                     .name = text_in_arena("outlet"),
                     .kind = OPENING_BOX,
                     .left = 10 * INCH,
                     .bottom = -20 * INCH,
                     .width = 2 * INCH,
                     .height = 4 * INCH};
    Opening *door = arena_push(arena, &wall->faces.at[0].openings);
    *door = (Opening){.id = wall->next_id++,
                      .name = text_in_arena("door"),
                      .kind = OPENING_DOOR,
                      .left = 50 * INCH,
                      .to_floor = true,
                      .width = 36 * INCH,
                      .height = 80 * INCH};
    for (int i = 0; i < 4; i++) {
        Stock *line = arena_push(arena, &wall->stock);
        *line = (Stock){.id = wall->next_id++,
                        .label = text_in_arena(""),
                        .tone = text_in_arena(""),
                        .length = (60 + i) * INCH,
                        .count = 2};
    }
    *arena_push(arena, &wall->hung_pieces) =
        (HungPiece){.face = text_in_arena("north"), .right = 20 * INCH, .board = 3};
    *arena_push(arena, &wall->hung_pieces) =
        (HungPiece){.face = text_in_arena("north"), .left = 20 * INCH, .right = 50 * INCH, .board = 3};
    *arena_push(arena, &wall->hung_pieces) = (HungPiece){.face = text_in_arena("east"), .right = 20 * INCH, .board = 8};
    *arena_push(arena, &wall->hung_edges) =
        (HungEdge){.face = text_in_arena("north"), .course = 0, .is_top = true, .height = 3 * INCH};
    assert_int_equal(wall_check(arena, wall).count, 0);
    return document_new(wall);
}

/* ---- history ---- */

/* One change of some kind, which may be refused. */
static void change_somehow(Document *document, Random *random)
{
    const Wall *wall = document_wall(document);
    const Face face = wall->faces.at[random_below(random, (uint64_t)wall->faces.count)];
    const int lines = wall->stock.count;
    const Length small = random_between(random, -3 * INCH, 3 * INCH);
    Err err;
    switch (random_below(random, 20)) {
    case 0:
    case 1: edit_nudge_start(document, small, &err); break;
    case 2:
        if (face.openings.count > 0)
            edit_nudge_opening(document, face.openings.at[0].id, small, -small, &err);
        break;
    case 3: edit_start(document, small, &err); break;
    case 4: edit_title(document, small > 0 ? "long wall" : "", &err); break;
    case 5:
        edit_units(document, small > 0 ? UNITS_IN : UNITS_MM, wall_default_round(small > 0 ? UNITS_IN : UNITS_MM),
                   &err);
        break;
    case 6: {
        Planks planks = wall->planks;
        planks.reveal = small;
        edit_planks(document, &planks, &err);
        break;
    }
    case 7: edit_joints(document, &(Joints){.land = LAND_STUDS, .stagger = small}, &err); break;
    case 8: edit_saw(document, &(Saw){.kerf = small, .square = -small}, &err); break;
    case 9: {
        Face other = face;
        other.width += small;
        other.name = text_in_arena(small > 0 ? "another name" : face.name);
        edit_face(document, &other, &err);
        break;
    }
    case 10: {
        Face other = face;
        char name[32];
        snprintf(name, sizeof name, "face %d", (int)random_below(random, 1000));
        other.name = name;
        edit_add_face(document, random_below(random, 2) == 0 ? 0 : face.id, &other, NULL, &err);
        break;
    }
    case 11: edit_remove_face(document, face.id, &err); break;
    case 12: {
        Opening opening = {.name = text_in_arena("hatch"), .left = 3 * small, .width = small, .height = INCH};
        edit_add_opening(document, face.id, &opening, NULL, &err);
        break;
    }
    case 13:
        if (face.openings.count > 0)
            edit_remove_opening(document, face.openings.at[0].id, &err);
        break;
    case 14: {
        Stock stock = {.length = 10 * small, .count = (int)random_below(random, 5)};
        edit_add_stock(document, lines > 0 ? wall->stock.at[0].id : 0, &stock, NULL, &err);
        break;
    }
    case 15:
        if (lines > 0)
            edit_remove_stock(document, wall->stock.at[random_below(random, (uint64_t)lines)].id, &err);
        break;
    case 16:
        if (lines > 0) {
            Stock stock = wall->stock.at[lines - 1];
            stock.count += small > 0 ? 1 : -1;
            edit_stock(document, &stock, &err);
        }
        break;
    case 17: {
        HungPiece piece = {.face = face.name, .left = small, .right = small + INCH, .board = 1};
        edit_hang(document, &piece, &err);
        break;
    }
    case 18: edit_take_down(document, 0, &err); break;
    default: {
        HungEdge edge = {.face = face.name, .course = 1, .is_top = true, .height = small};
        edit_measure(document, &edge, &err);
        break;
    }
    }
}

START_TEST(undo_all_gives_the_first)
{
    for (uint64_t seed = 0; seed < 300; seed++) {
        Arena *own = arena_new();
        const Wall *first = random_wall(own, seed, seed % 2 == 0 ? RANDOM_HUNG : RANDOM_HOUSE);
        Random random = {seed};
        Document *document = document_new(first);
        assert_null(document_undo_name(document));
        assert_false(document_changed(document));
        for (int i = 0; i < 60; i++) {
            change_somehow(document, &random);
            assert_int_equal(wall_check(own, document_wall(document)).count, 0);
            if (random_below(&random, 8) == 0)
                document_undo(document);
        }
        const Wall *last = wall_copy(own, document_wall(document));
        int steps = 0;
        for (uint64_t version = document_version(document); document_undo_name(document) != NULL; steps++) {
            assert_true(document_undo_name(document)[0] != '\0');
            assert_true(document_undo(document));
            assert_true(document_version(document) > version);
            version = document_version(document);
        }
        assert_false(document_undo(document));
        assert_true(wall_equal(document_wall(document), first));
        assert_false(document_changed(document));
        for (int i = 0; i < steps; i++)
            assert_true(document_redo(document));
        assert_true(wall_equal(document_wall(document), last));
        document_free(document);
        arena_free(own);
    }
}
END_TEST

START_TEST(a_change_ends_what_could_be_redone)
{
    Err err;
    Document *document = document_of_three();
    assert_done(edit_start(document, INCH, &err), &err);
    assert_done(edit_title(document, "a", &err), &err);
    assert_true(document_undo(document));
    assert_string_equal(document_redo_name(document), "change the title");
    assert_string_equal(document_undo_name(document), "set the reference course at 1 in");
    assert_done(edit_start(document, 2 * INCH, &err), &err);
    assert_null(document_redo_name(document));
    assert_false(document_redo(document));
    document_free(document);
}
END_TEST

START_TEST(what_changes_nothing_is_no_step)
{
    Err err;
    Document *document = document_of_three();
    const uint64_t version = document_version(document);
    assert_done(edit_start(document, document_wall(document)->start, &err), &err);
    assert_done(edit_planks(document, &document_wall(document)->planks, &err), &err);
    assert_done(edit_nudge_start(document, 0, &err), &err);
    assert_null(document_undo_name(document));
    assert_int_equal(document_version(document), version);
    document_free(document);
}
END_TEST

START_TEST(a_document_knows_whether_it_is_saved)
{
    Err err;
    Document *document = document_of_three();
    assert_done(edit_start(document, INCH, &err), &err);
    assert_true(document_changed(document));
    document_mark_saved(document);
    assert_false(document_changed(document));
    assert_true(document_undo(document));
    assert_true(document_changed(document)); /* not what was saved any more */
    assert_true(document_redo(document));
    assert_false(document_changed(document));
    document_free(document);
}
END_TEST

/* ---- nudges ---- */

START_TEST(a_run_of_nudges_is_one_step)
{
    Err err;
    Document *document = document_of_three();
    const Wall *first = wall_copy(arena, document_wall(document));
    for (int i = 0; i < 8; i++)
        assert_done(edit_nudge_start(document, INCH / 16, &err), &err);
    assert_string_equal(document_undo_name(document), "raise the reference course 1/2 in");
    for (int i = 0; i < 12; i++)
        assert_done(edit_nudge_start(document, -INCH / 16, &err), &err);
    assert_string_equal(document_undo_name(document), "lower the reference course 1/4 in");
    assert_true(document_undo(document));
    assert_null(document_undo_name(document));
    assert_true(wall_equal(document_wall(document), first));
    document_free(document);
}
END_TEST

START_TEST(a_run_that_leads_back_is_no_step)
{
    Err err;
    Document *document = document_of_three();
    assert_done(edit_title(document, "a", &err), &err);
    assert_done(edit_nudge_start(document, INCH, &err), &err);
    assert_done(edit_nudge_start(document, -INCH, &err), &err);
    assert_string_equal(document_undo_name(document), "change the title");
    assert_done(edit_nudge_start(document, INCH, &err), &err);
    assert_true(document_undo(document));
    assert_string_equal(document_wall(document)->title, "a");
    document_free(document);
}
END_TEST

START_TEST(a_run_of_nudges_ends_where_another_begins)
{
    Err err;
    Document *document = document_of_three();
    const uint32_t box = document_wall(document)->faces.at[0].openings.at[0].id;
    assert_done(edit_nudge_start(document, INCH, &err), &err);
    document_end_run(document);
    assert_done(edit_nudge_start(document, INCH, &err), &err);
    assert_done(edit_nudge_opening(document, box, INCH / 2, 0, &err), &err);
    assert_done(edit_nudge_opening(document, box, 0, -INCH, &err), &err);
    assert_string_equal(document_undo_name(document), "move outlet 1/2 in right, 1 in down");
    assert_done(edit_nudge_start(document, INCH, &err), &err);
    document_mark_saved(document);
    assert_done(edit_nudge_start(document, INCH, &err), &err);
    int steps = 0;
    while (document_undo(document))
        steps++;
    assert_int_equal(steps, 5);
    document_free(document);
}
END_TEST

/* ---- refusals ---- */

static void is_refused(Document *document, bool done, const Err *err, const char *place, const char *part)
{
    assert_false(done);
    assert_string_equal(err->place, place);
    assert_holds(err->text, part);
    assert_int_equal(document_version(document), 1);
    assert_null(document_undo_name(document));
}

START_TEST(what_cannot_be_is_refused)
{
    Err err;
    Document *document = document_of_three();
    const Wall *wall = document_wall(document);
    Planks planks = wall->planks;
    planks.lap = 3 * INCH;
    is_refused(document, edit_planks(document, &planks, &err), &err, "planks.lap", "less");
    is_refused(document, edit_start(document, 2 * LENGTH_MOST, &err), &err, "start", "1 km");
    is_refused(document, edit_units(document, UNITS_MM, INCH, &err), &err, "round", "0.5");
    is_refused(document, edit_saw(document, &(Saw){.kerf = -1}, &err), &err, "saw.kerf", "0 or more");
    Face face = wall->faces.at[1];
    face.name = text_in_arena("north");
    is_refused(document, edit_face(document, &face, &err), &err, "faces[1].name", "same name");
    is_refused(document, edit_add_face(document, face.id, &face, NULL, &err), &err, "faces[2].name", "same name");
    face.id = 999;
    is_refused(document, edit_face(document, &face, &err), &err, "", "no such face");
    is_refused(document, edit_add_face(document, 999, &face, NULL, &err), &err, "", "no such face");
    is_refused(document, edit_remove_face(document, 999, &err), &err, "", "no such face");
    is_refused(document, edit_remove_face(document, wall->faces.at[0].id, &err), &err, "hung", "records");
    Opening opening = wall->faces.at[0].openings.at[0];
    opening.width = 0;
    is_refused(document, edit_opening(document, &opening, &err), &err, "faces[0].openings[0].width", "above 0");
    is_refused(document, edit_add_opening(document, wall->faces.at[0].id, &opening, NULL, &err), &err,
               "faces[0].openings[2].name", "same name");
    is_refused(document, edit_remove_opening(document, 999, &err), &err, "", "no such opening");
    is_refused(document, edit_nudge_opening(document, 999, 1, 1, &err), &err, "", "no such opening");
    is_refused(document, edit_nudge_opening(document, wall->faces.at[0].openings.at[1].id, 0, INCH, &err), &err, "",
               "floor");
    Stock stock = wall->stock.at[0];
    stock.count = 0;
    is_refused(document, edit_stock(document, &stock, &err), &err, "stock[0].count", "1 or more");
    is_refused(document, edit_add_stock(document, 0, &stock, NULL, &err), &err, "stock[4].count", "1 or more");
    is_refused(document, edit_add_stock(document, 999, &stock, NULL, &err), &err, "", "no such line");
    is_refused(document, edit_remove_stock(document, 999, &err), &err, "", "no such line");
    is_refused(document, edit_remove_stock(document, wall->stock.at[1].id, &err), &err, "hung", "board 3");
    stock = wall->stock.at[3];
    stock.count = 1; /* board 8, its second, hangs */
    is_refused(document, edit_stock(document, &stock, &err), &err, "hung", "board 8");
    is_refused(document, edit_take_down(document, 3, &err), &err, "hung", "no such record");
    is_refused(document, edit_forget_measure(document, -1, &err), &err, "hung", "no such record");
    HungPiece piece = {.face = text_in_arena("nowhere"), .right = INCH, .board = 1};
    is_refused(document, edit_hang(document, &piece, &err), &err, "hung.pieces[3].face", "nowhere");
    HungEdge edge = {.face = text_in_arena("north"), .course = -1, .is_top = true};
    is_refused(document, edit_measure(document, &edge, &err), &err, "hung.edges[1].top", "bottom");
    document_free(document);
}
END_TEST

/* ---- what goes with a change ---- */

START_TEST(hung_pieces_keep_their_boards)
{
    Err err;
    Document *document = document_of_three();
    const Length of_3 = wall_board(document_wall(document), 3)->length;
    const Length of_8 = wall_board(document_wall(document), 8)->length;
    assert_done(edit_remove_stock(document, document_wall(document)->stock.at[0].id, &err), &err);
    const Wall *wall = document_wall(document);
    assert_int_equal(wall->hung_pieces.at[0].board, 1);
    assert_int_equal(wall->hung_pieces.at[2].board, 6);
    Stock found = wall->stock.at[0];
    found.count = 5;
    uint32_t id = 0;
    assert_done(edit_add_stock(document, wall->stock.at[0].id, &found, &id, &err), &err);
    wall = document_wall(document);
    assert_int_equal(wall->stock.at[1].id, id);
    assert_int_equal(wall->hung_pieces.at[2].board, 11);
    Stock more = wall->stock.at[0];
    more.count = 3;
    assert_done(edit_stock(document, &more, &err), &err);
    wall = document_wall(document);
    assert_int_equal(wall_board(wall, wall->hung_pieces.at[0].board)->length, of_3);
    assert_int_equal(wall_board(wall, wall->hung_pieces.at[2].board)->length, of_8);
    document_free(document);
}
END_TEST

START_TEST(hung_pieces_follow_their_face)
{
    Err err;
    Document *document = document_of_three();
    Face face = document_wall(document)->faces.at[0];
    face.name = text_in_arena("window side");
    face.openings.count = 0; /* openings are left as they are */
    assert_done(edit_face(document, &face, &err), &err);
    const Wall *wall = document_wall(document);
    assert_string_equal(wall->hung_pieces.at[0].face, "window side");
    assert_string_equal(wall->hung_pieces.at[2].face, "east");
    assert_string_equal(wall->hung_edges.at[0].face, "window side");
    assert_int_equal(wall->faces.at[0].openings.count, 2);
    document_free(document);
}
END_TEST

/* Two pieces of board 3: the second lies a kerf behind the first, at 1/4 + 20 + 1/8, also when the first is gone. */
START_TEST(taken_down_pieces_move_no_other)
{
    Err err;
    Document *document = document_of_three();
    assert_done(edit_take_down(document, 0, &err), &err);
    const HungPieces *pieces = &document_wall(document)->hung_pieces;
    assert_int_equal(pieces->count, 2);
    assert_true(pieces->at[0].offset_given);
    assert_int_equal(pieces->at[0].offset, 20 * INCH + 3 * INCH / 8);
    assert_false(pieces->at[1].offset_given);
    document_free(document);
}
END_TEST

/* The plan that was made anew goes on from the next piece where its first is taken down. */
START_TEST(the_mark_of_a_plan_made_anew_passes_on)
{
    Err err;
    Document *document = document_of_three();
    HungPiece piece = document_wall(document)->hung_pieces.at[2];
    piece.plan = PLAN_ANEW;
    piece.left += 40 * INCH;
    piece.right += 40 * INCH;
    assert_done(edit_hang(document, &piece, &err), &err);
    piece.plan = PLAN_KEPT;
    piece.course++;
    assert_done(edit_hang(document, &piece, &err), &err);
    assert_done(edit_take_down(document, 1, &err), &err);
    const HungPieces *pieces = &document_wall(document)->hung_pieces;
    assert_int_equal(pieces->count, 4);
    assert_int_equal(pieces->at[2].plan, PLAN_ANEW);
    assert_int_equal(pieces->at[3].plan, PLAN_KEPT);
    assert_done(edit_take_down(document, 2, &err), &err);
    pieces = &document_wall(document)->hung_pieces;
    assert_int_equal(pieces->at[1].plan, PLAN_KEPT);
    assert_int_equal(pieces->at[2].plan, PLAN_ANEW);
    assert_done(edit_take_down(document, 2, &err), &err);
    pieces = &document_wall(document)->hung_pieces;
    assert_int_equal(pieces->count, 2);
    assert_int_equal(pieces->at[1].plan, PLAN_KEPT);
    document_free(document);
}
END_TEST

START_TEST(a_later_measure_replaces)
{
    Err err;
    Document *document = document_of_three();
    HungEdge edge = {.face = text_in_arena("north"), .course = 0, .is_top = true, .height = 4 * INCH};
    assert_done(edit_measure(document, &edge, &err), &err);
    assert_int_equal(document_wall(document)->hung_edges.count, 1);
    assert_int_equal(document_wall(document)->hung_edges.at[0].height, 4 * INCH);
    edge.is_top = false;
    assert_done(edit_measure(document, &edge, &err), &err);
    assert_int_equal(document_wall(document)->hung_edges.count, 2);
    assert_done(edit_forget_measure(document, 0, &err), &err);
    assert_false(document_wall(document)->hung_edges.at[0].is_top);
    document_free(document);
}
END_TEST

START_TEST(faces_come_and_go)
{
    Err err;
    Document *document = document_of_three();
    Face face = document_wall(document)->faces.at[0];
    uint32_t id = 0;
    face.name = text_in_arena("porch");
    assert_done(edit_add_face(document, document_wall(document)->faces.at[0].id, &face, &id, &err), &err);
    const Wall *wall = document_wall(document);
    assert_string_equal(wall->faces.at[1].name, "porch");
    assert_int_equal(wall->faces.at[1].id, id);
    assert_int_equal(wall->faces.at[1].openings.count, 2);
    assert_true(wall->faces.at[1].openings.at[0].id != wall->faces.at[0].openings.at[0].id);
    assert_done(edit_remove_face(document, id, &err), &err);
    wall = document_wall(document);
    assert_int_equal(wall->faces.count, 3);
    assert_int_equal(wall->faces.at[0].corner.kind, CORNER_NONE); /* its neighbour is gone */
    assert_int_equal(wall->faces.at[2].corner.kind, CORNER_INSIDE);
    assert_done(edit_remove_face(document, wall->faces.at[2].id, &err), &err);
    wall = document_wall(document);
    assert_int_equal(wall->faces.count, 2);
    assert_int_equal(wall->faces.at[1].corner.kind, CORNER_NONE);
    face.name = text_in_arena("first");
    assert_done(edit_add_face(document, 0, &face, NULL, &err), &err);
    assert_string_equal(document_wall(document)->faces.at[0].name, "first");
    document_free(document);
}
END_TEST

/* What is lent to a change may be the document's own, or gone right after. */
START_TEST(what_is_lent_to_a_change_may_go_right_after)
{
    Err err;
    Document *document = document_of_three();
    Arena *lent = arena_new();
    Opening opening = {
        .name = arena_text(lent, "hatch", 5), .kind = OPENING_OTHER, .left = INCH, .width = INCH, .height = INCH};
    uint32_t id = 0;
    assert_done(edit_add_opening(document, document_wall(document)->faces.at[2].id, &opening, &id, &err), &err);
    arena_free(lent);
    assert_string_equal(document_wall(document)->faces.at[2].openings.at[0].name, "hatch");
    assert_done(edit_opening(document, &document_wall(document)->faces.at[2].openings.at[0], &err), &err);
    assert_done(edit_whole(document, document_wall(document), "nothing", &err), &err);
    assert_done(edit_remove_opening(document, id, &err), &err);
    assert_string_equal(document_undo_name(document), "remove hatch");
    document_free(document);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        undo_all_gives_the_first,
        a_change_ends_what_could_be_redone,
        what_changes_nothing_is_no_step,
        a_document_knows_whether_it_is_saved,
        a_run_of_nudges_is_one_step,
        a_run_that_leads_back_is_no_step,
        a_run_of_nudges_ends_where_another_begins,
        what_cannot_be_is_refused,
        hung_pieces_keep_their_boards,
        hung_pieces_follow_their_face,
        taken_down_pieces_move_no_other,
        the_mark_of_a_plan_made_anew_passes_on,
        a_later_measure_replaces,
        faces_come_and_go,
        what_is_lent_to_a_change_may_go_right_after,
    };
    return RUN_WITH_ARENA(tests);
}
