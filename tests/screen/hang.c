/* Hanging piece after piece, keys fed to the real loop: what is recorded is what the final plan says, and only what
 * does not hang is planned anew. */
#include "support/test.h"

#include "rig.h"

#include <stdio.h>
#include <string.h>

static const Wall *wall_of(const Rig *rig)
{
    return document_wall(rig->app->document);
}

static const Plan *plan_of(Rig *rig)
{
    return fill_plan(app_work(rig->app)->fill);
}

static const Piece *next_piece(Rig *rig)
{
    const Plan *plan = plan_of(rig);
    for (int i = 0; i < plan->piece_count; i++)
        if (!plan->pieces[i].hung)
            return &plan->pieces[i];
    return NULL;
}

/* The course of the next piece. */
static int64_t course_shown(Rig *rig)
{
    const Piece *piece = next_piece(rig);
    return app_work(rig->app)->layout->faces[piece->face].courses[piece->course].number;
}

/* All that is left of the course of the next piece. */
static void hang_course(Rig *rig)
{
    int64_t course = course_shown(rig);
    while (next_piece(rig) != NULL && course_shown(rig) == course)
        rig_key(rig, PRESS_ENTER);
}

static int faults_of_what_hangs(Rig *rig)
{
    const Job *job = work_job(app_work(rig->app));
    int count = 0;
    for (int i = 0; i < job->findings.count; i++)
        count += job->findings.at[i].rule == RULE_HUNG;
    return count;
}

static void assert_recorded(Rig *rig, const HungPiece *record, const Piece *piece)
{
    assert_string_equal(record->face, wall_of(rig)->faces.at[piece->face].name);
    assert_int_equal(record->left, piece->left);
    assert_int_equal(record->right, piece->right);
    assert_int_equal(record->board, piece->board);
    assert_true(record->offset_given);
    assert_int_equal(record->offset, piece->offset);
}

START_TEST(enter_records_the_piece_shown)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "H");
    assert_shows(rig, "Next: north, course 0, piece 1");
    assert_shows(rig, "0 hung");
    assert_shows(rig, "lower edge 2 1/4 up, upper edge 5 up");
    Piece piece = *next_piece(rig);
    rig_key(rig, PRESS_ENTER);
    assert_shows(rig, "1 hung");
    assert_int_equal(wall_of(rig)->hung_pieces.count, 1);
    assert_recorded(rig, &wall_of(rig)->hung_pieces.at[0], &piece);
    assert_int_equal(faults_of_what_hangs(rig), 0);
    rig_type(rig, " ");
    assert_int_equal(wall_of(rig)->hung_pieces.count, 2);
    rig_key(rig, PRESS_BACKSPACE);
    assert_int_equal(wall_of(rig)->hung_pieces.count, 1);
    assert_recorded(rig, &wall_of(rig)->hung_pieces.at[0], &piece);
    rig_key(rig, PRESS_CTRL | 'z');
    rig_key(rig, PRESS_CTRL | 'z');
    rig_key(rig, PRESS_CTRL | 'z');
    assert_int_equal(wall_of(rig)->hung_pieces.count, 0);
    rig_free(rig);
}
END_TEST

/* Keys that come before the boards are worked out to the end: what is recorded is of the final plan all the same. */
START_TEST(only_the_final_plan_is_hung)
{
    Rig *rig = rig_new(80, 24);
    Arena *arena = arena_new();
    Err err;
    for (int marks = 1; marks <= 6; marks++) {
        rig_type(rig, "H");
        rig_key(rig, PRESS_ESCAPE);
        memory_key(rig->term, PRESS_UP);
        memory_type(rig->term, "H");
        memory_key(rig->term, PRESS_ENTER);
        rig_settle(rig);
        if (wall_of(rig)->hung_pieces.count == 0) {
            assert_shows(rig, "not final yet");
        } else {
            Wall *bare = wall_copy(arena, wall_of(rig));
            bare->hung_pieces.count = 0;
            const Plan *plan = fill_wall(arena, layout_wall(arena, bare, &err));
            assert_recorded(rig, &wall_of(rig)->hung_pieces.at[0], &plan->pieces[0]);
            rig_key(rig, PRESS_BACKSPACE);
        }
        rig_key(rig, PRESS_ESCAPE);
        assert_int_equal(rig->app->layers.depth, 1);
    }
    arena_free(arena);
    rig_free(rig);
}
END_TEST

/* Boards are shared now, so that a piece matters to others. */
static void share_boards(Rig *rig)
{
    Saw saw = {LENGTH_INCH / 8, LENGTH_INCH / 4};
    Err err;
    assert_done(edit_saw(rig->app->document, &saw, &err), &err);
    Joints joints = wall_of(rig)->joints;
    joints.shortest = 0;
    assert_done(edit_joints(rig->app->document, &joints, &err), &err);
}

static bool same_place(const Piece *a, const Piece *b)
{
    return a->face == b->face && a->course == b->course && a->left == b->left && a->right == b->right &&
           a->board == b->board && a->offset == b->offset;
}

/* All of the plan hangs where `before` says, or will. */
static void assert_goes_on(Rig *rig, const Piece *before, int count, int hung)
{
    const Plan *plan = plan_of(rig);
    assert_int_equal(plan->piece_count, count);
    for (int i = 0; i < count; i++) {
        if (!same_place(&plan->pieces[i], &before[i]))
            FAIL("%d hung, and piece %d is another one", hung, i + 1);
        assert_int_equal(plan->pieces[i].hung, i < hung);
    }
}

static Piece *pieces_of(Arena *arena, const Plan *plan)
{
    Piece *pieces = arena_array(arena, Piece, plan->piece_count);
    memcpy(pieces, plan->pieces, (size_t)plan->piece_count * sizeof *pieces);
    return pieces;
}

/* One walks through the whole wall by the sheets that were printed before the first piece hung. */
START_TEST(the_plan_stays_until_the_last_piece_hangs)
{
    Rig *rig = rig_new(80, 24);
    Arena *arena = arena_new();
    share_boards(rig);
    rig_type(rig, "H");
    int count = plan_of(rig)->piece_count;
    Piece *before = pieces_of(arena, plan_of(rig));
    for (int i = 0; i < count; i++) {
        assert_true(next_piece(rig) == &plan_of(rig)->pieces[i]);
        memory_key(rig->term, PRESS_ENTER);
        loop_turn(rig->loop);
        assert_int_equal(wall_of(rig)->hung_pieces.count, i + 1);
        assert_true(app_work(rig->app)->filled); /* at once: nothing is worked out again */
        rig_settle(rig);
        assert_false(rig_shows(rig, "some pieces changed"));
        assert_int_equal(wall_of(rig)->hung_pieces.at[i].plan, PLAN_KEPT);
        assert_goes_on(rig, before, count, i + 1);
    }
    rig_key(rig, PRESS_BACKSPACE);
    assert_goes_on(rig, before, count, count - 1);
    arena_free(arena);
    rig_free(rig);
}
END_TEST

/* A board taken out changes the plan: that is told until one goes on by the new plan, which then stays. */
START_TEST(a_plan_that_changed_is_told)
{
    Rig *rig = rig_new(80, 24);
    Arena *arena = arena_new();
    share_boards(rig);
    rig_type(rig, "H");
    rig_keys(rig, PRESS_ENTER, 12);
    rig_type(rig, "x");
    assert_shows(rig, "some pieces changed");
    assert_true(plan_of(rig)->changed_count > 0);
    rig_key(rig, PRESS_CTRL | 'z'); /* the board is back */
    assert_false(rig_shows(rig, "some pieces changed"));
    rig_key(rig, PRESS_CTRL | 'y');
    assert_shows(rig, "some pieces changed");
    int count = plan_of(rig)->piece_count;
    Piece *before = pieces_of(arena, plan_of(rig));
    for (int i = 12; i < 24; i++) {
        rig_key(rig, PRESS_ENTER);
        assert_false(rig_shows(rig, "some pieces changed"));
        assert_int_equal(wall_of(rig)->hung_pieces.at[i].plan, PLAN_KEPT);
        assert_goes_on(rig, before, count, i + 1);
    }
    arena_free(arena);
    rig_free(rig);
}
END_TEST

/* Before anything hangs too: the sheets may have been printed. */
START_TEST(a_board_taken_out_before_the_first_piece_is_told)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "Hx");
    assert_shows(rig, "some pieces changed");
    rig_key(rig, PRESS_CTRL | 'z');
    assert_false(rig_shows(rig, "some pieces changed"));
    rig_free(rig);
}
END_TEST

START_TEST(a_measured_edge_moves_the_courses_beyond)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "He");
    assert_shows(rig, "No course is all up yet");
    rig_key(rig, PRESS_ENTER);
    if (course_shown(rig) == 0) { /* one piece of course 0 is not all of it */
        rig_type(rig, "e");
        assert_shows(rig, "No course is all up yet");
    }
    hang_course(rig);
    rig_type(rig, "e");
    assert_shows(rig, "Upper edge of course 0 on north");
    assert_shows(rig, "as laid out 5 in");
    rig_type(rig, "5x");
    rig_key(rig, PRESS_ENTER);
    assert_int_equal(wall_of(rig)->hung_edges.count, 0);
    rig_key(rig, PRESS_BACKSPACE);
    rig_type(rig, " 1/8");
    rig_key(rig, PRESS_ENTER);
    assert_int_equal(wall_of(rig)->hung_edges.count, 1);
    assert_true(wall_of(rig)->hung_edges.at[0].is_top);
    Length measured = 41 * LENGTH_INCH / 8;
    assert_int_equal(wall_of(rig)->hung_edges.at[0].height, measured);
    const FaceLayout *face = &app_work(rig->app)->layout->faces[0];
    assert_int_equal(face->courses[layout_course_index(face, 1)].bottom, measured + LENGTH_INCH / 16);
    assert_shows(rig, "1/8 in higher than planned");
    assert_shows(rig, "course becomes");
    /* the same edge emptied is forgotten */
    rig_type(rig, "e");
    rig_keys(rig, PRESS_BACKSPACE, 8);
    rig_key(rig, PRESS_ENTER);
    assert_int_equal(wall_of(rig)->hung_edges.count, 0);
    rig_free(rig);
}
END_TEST

/* With a lap of 1/4 in the tape reaches the board's own edge; the record is of the face's. */
START_TEST(with_a_lap_the_boards_own_edge_is_asked_for)
{
    Rig *rig = rig_new(80, 24);
    Planks planks = wall_of(rig)->planks;
    Err err;
    planks.lap = LENGTH_INCH / 4;
    planks.hang_given = true;
    planks.hang = HANG_REFERENCE;
    assert_done(edit_planks(rig->app->document, &planks, &err), &err);
    rig_type(rig, "H");
    assert_shows(rig, "the board's own upper edge 5 up");
    hang_course(rig);
    rig_type(rig, "e");
    assert_shows(rig, "Upper edge of the boards of course 0 on north");
    assert_shows(rig, "as laid out 5 in");
    rig_type(rig, "5 1/8");
    rig_key(rig, PRESS_ENTER);
    assert_int_equal(wall_of(rig)->hung_edges.at[0].height, 39 * LENGTH_INCH / 8);
    rig_type(rig, "e");
    assert_shows(rig, "5 1/8");
    rig_free(rig);
}
END_TEST

START_TEST(a_lower_edge_is_typed_below_the_level_line)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "H");
    hang_course(rig);
    rig_type(rig, "e");
    rig_key(rig, PRESS_DOWN);
    assert_shows(rig, "Lower edge of course 0 on north");
    assert_shows(rig, "Below the level line; as laid out -2 1/4 in");
    rig_key(rig, PRESS_DOWN);
    assert_shows(rig, "not all up yet");
    rig_key(rig, PRESS_ESCAPE);
    while (course_shown(rig) != -1)
        hang_course(rig);
    hang_course(rig);
    rig_type(rig, "e");
    assert_shows(rig, "Lower edge of course -1 on north");
    assert_shows(rig, "Below the level line; as laid out 9/16 in");
    rig_type(rig, "1/2");
    rig_key(rig, PRESS_ENTER);
    assert_int_equal(wall_of(rig)->hung_edges.count, 1);
    assert_false(wall_of(rig)->hung_edges.at[0].is_top);
    assert_int_equal(wall_of(rig)->hung_edges.at[0].height, -LENGTH_INCH / 2);
    rig_free(rig);
}
END_TEST

START_TEST(esc_leaves_the_edge_and_then_the_view)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "H");
    hang_course(rig);
    rig_type(rig, "e9");
    rig_key(rig, PRESS_ESCAPE);
    assert_int_equal(wall_of(rig)->hung_edges.count, 0);
    assert_shows(rig, "Next: ");
    rig_key(rig, PRESS_ESCAPE);
    assert_int_equal(rig->app->layers.depth, 1);
    rig_free(rig);
}
END_TEST

static bool uses(Rig *rig, int board)
{
    const Plan *plan = plan_of(rig);
    for (int i = 0; i < plan->piece_count; i++)
        if (!plan->pieces[i].hung && plan->pieces[i].board == board)
            return true;
    return false;
}

START_TEST(a_spoiled_board_is_used_no_more)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "H");
    rig_key(rig, PRESS_ENTER);
    rig_key(rig, PRESS_ENTER);
    HungPiece hung[2] = {wall_of(rig)->hung_pieces.at[0], wall_of(rig)->hung_pieces.at[1]};
    int boards = wall_board_count(wall_of(rig));
    int spoiled = next_piece(rig)->board;
    rig_type(rig, "x");
    assert_shows(rig, "is out");
    assert_false(uses(rig, spoiled));
    assert_int_equal(wall_board_count(wall_of(rig)), boards);
    for (int i = 0; i < 2; i++) {
        assert_int_equal(wall_of(rig)->hung_pieces.at[i].board, hung[i].board);
        assert_int_equal(wall_of(rig)->hung_pieces.at[i].left, hung[i].left);
        assert_int_equal(wall_of(rig)->hung_pieces.at[i].offset, hung[i].offset);
    }
    assert_int_equal(faults_of_what_hangs(rig), 0);
    rig_key(rig, PRESS_CTRL | 'z');
    assert_true(uses(rig, spoiled));
    assert_int_equal(wall_of(rig)->stock.count, 3);
    rig_free(rig);
}
END_TEST

/* What hangs of a board that is spoiled later stays on the wall. */
START_TEST(what_hangs_of_a_spoiled_board_stays)
{
    Rig *rig = rig_new(80, 24);
    share_boards(rig);
    rig_type(rig, "H");
    int spoiled = 0;
    for (int i = 0; i < 12 && spoiled == 0; i++) {
        const Piece *piece = next_piece(rig);
        for (int j = 0; j < wall_of(rig)->hung_pieces.count; j++)
            if (wall_of(rig)->hung_pieces.at[j].board == piece->board)
                spoiled = piece->board;
        if (spoiled == 0)
            rig_key(rig, PRESS_ENTER);
    }
    if (spoiled == 0) { /* look on for one that is cut from a board of which something hangs */
        for (int i = 0; i < 200 && spoiled == 0; i++) {
            rig_key(rig, PRESS_RIGHT);
            int before = wall_of(rig)->hung_pieces.at[0].board;
            char wanted[80];
            const Plan *plan = plan_of(rig);
            for (int j = 0; j < plan->piece_count; j++) {
                snprintf(wanted, sizeof wanted, "piece %d ", plan->pieces[j].number);
                if (!plan->pieces[j].hung && plan->pieces[j].board == before && rig_shows(rig, wanted))
                    spoiled = before;
            }
        }
    }
    assert_true(spoiled > 0);
    int hung = wall_of(rig)->hung_pieces.count;
    rig_type(rig, "x");
    assert_shows(rig, "is out");
    assert_false(uses(rig, spoiled));
    assert_int_equal(wall_of(rig)->hung_pieces.count, hung);
    assert_int_equal(faults_of_what_hangs(rig), 0);
    rig_free(rig);
}
END_TEST

START_TEST(a_board_found_goes_behind_all_others)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "Ha");
    assert_shows(rig, "More boards");
    rig_type(rig, "77 1/2");
    rig_key(rig, PRESS_F1 + 7);
    assert_int_equal(wall_of(rig)->stock.count, 4);
    assert_int_equal(wall_of(rig)->stock.at[3].length, 155 * LENGTH_INCH / 2);
    assert_int_equal(wall_of(rig)->stock.at[3].count, 1);
    assert_shows(rig, "0 hung");
    rig_free(rig);
}
END_TEST

START_TEST(one_looks_ahead_and_comes_back)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "H");
    rig_keys(rig, PRESS_RIGHT, 2);
    assert_shows(rig, "Later: ");
    assert_shows(rig, "piece 3");
    rig_key(rig, PRESS_HOME);
    assert_shows(rig, "Next: north, course 0, piece 1");
    rig_key(rig, PRESS_LEFT);
    assert_shows(rig, "This is the first piece.");
    rig_free(rig);
}
END_TEST

START_TEST(the_last_piece_ends_it)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "H");
    for (int i = 0; next_piece(rig) != NULL; i++) {
        assert_in_range(i, 0, 2000);
        rig_key(rig, PRESS_ENTER);
    }
    assert_shows(rig, "Every piece of the plan hangs.");
    assert_shows(rig, "0 to go");
    assert_int_equal(wall_of(rig)->hung_pieces.count, plan_of(rig)->piece_count);
    assert_int_equal(faults_of_what_hangs(rig), 0);
    rig_key(rig, PRESS_ENTER);
    assert_shows(rig, "nothing left to hang");
    rig_free(rig);
}
END_TEST

START_TEST(the_menu_lists_what_one_can_do_while_hanging)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "Hm");
    assert_shows(rig, "This piece hangs");
    assert_shows(rig, "This board is spoiled");
    rig_key(rig, PRESS_ENTER);
    assert_shows(rig, "1 hung");
    rig_free(rig);
}
END_TEST

START_TEST(every_size_is_survived)
{
    static const int sizes[][2] = {{1, 1}, {20, 6}, {60, 18}, {80, 24}, {140, 50}};
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "H");
    hang_course(rig);
    for (int i = 0; i < 5; i++) {
        memory_resize(rig->term, sizes[i][0], sizes[i][1]);
        rig_type(rig, "e1");
        rig_key(rig, PRESS_ESCAPE);
        rig_key(rig, PRESS_PAGE_DOWN);
        rig_key(rig, PRESS_RIGHT);
        assert_int_equal(rig->app->layers.depth, 2);
    }
    rig_free(rig);
}
END_TEST

static int count_state(const Rig *rig, PieceState state)
{
    int count = 0;
    for (int i = 0; i < wall_of(rig)->hung_pieces.count; i++)
        count += wall_of(rig)->hung_pieces.at[i].state == state;
    return count;
}

/* Pieces of the first one's board, or of its face. */
static int count_like(Rig *rig, bool board)
{
    const Plan *plan = plan_of(rig);
    int count = 0;
    for (int i = 0; i < plan->piece_count; i++)
        count += board ? plan->pieces[i].board == plan->pieces[0].board : plan->pieces[i].face == plan->pieces[0].face;
    return count;
}

/* Ticked pieces stay as planned, hang in their turn, and can be taken back; nothing of the plan changes. */
START_TEST(pieces_are_ticked_as_cut_one_a_board_and_a_face)
{
    Rig *rig = rig_new(80, 24);
    rig_type(rig, "H");
    const int pieces = plan_of(rig)->piece_count, of_board = count_like(rig, true), of_face = count_like(rig, false);
    Piece first = *next_piece(rig);
    rig_type(rig, "c");
    assert_shows(rig, "Next, cut: north, course 0, piece 1");
    assert_shows(rig, "0 hung");
    assert_int_equal(count_state(rig, PIECE_CUT), 1);
    assert_recorded(rig, &wall_of(rig)->hung_pieces.at[0], &first);
    rig_type(rig, "c");
    assert_shows(rig, "Piece 1 counts as not cut");
    assert_int_equal(wall_of(rig)->hung_pieces.count, 0);
    rig_type(rig, "b");
    assert_int_equal(count_state(rig, PIECE_CUT), of_board);
    rig_type(rig, "C");
    assert_true(count_state(rig, PIECE_CUT) >= of_face);
    const int cut = count_state(rig, PIECE_CUT);
    rig_type(rig, "C");
    assert_shows(rig, "Nothing is left to cut there");
    rig_key(rig, PRESS_ENTER);
    assert_shows(rig, "1 hung");
    assert_shows(rig, "Next, cut");
    assert_int_equal(count_state(rig, PIECE_HUNG), 1);
    assert_int_equal(count_state(rig, PIECE_CUT), cut - 1);
    assert_int_equal(wall_of(rig)->hung_pieces.at[0].state, PIECE_HUNG);
    assert_int_equal(plan_of(rig)->changed_count, 0);
    assert_int_equal(plan_of(rig)->piece_count, pieces);
    assert_int_equal(faults_of_what_hangs(rig), 0);
    rig_key(rig, PRESS_CTRL | 'z');
    assert_int_equal(count_state(rig, PIECE_CUT), cut);
    rig_free(rig);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        pieces_are_ticked_as_cut_one_a_board_and_a_face,
        enter_records_the_piece_shown,
        only_the_final_plan_is_hung,
        the_plan_stays_until_the_last_piece_hangs,
        a_plan_that_changed_is_told,
        a_board_taken_out_before_the_first_piece_is_told,
        a_measured_edge_moves_the_courses_beyond,
        with_a_lap_the_boards_own_edge_is_asked_for,
        a_lower_edge_is_typed_below_the_level_line,
        esc_leaves_the_edge_and_then_the_view,
        a_spoiled_board_is_used_no_more,
        what_hangs_of_a_spoiled_board_stays,
        a_board_found_goes_behind_all_others,
        one_looks_ahead_and_comes_back,
        the_last_piece_ends_it,
        the_menu_lists_what_one_can_do_while_hanging,
        every_size_is_survived,
    };
    return RUN(tests);
}
