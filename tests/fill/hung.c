/* A plan and what is hung of it: the sheets that were printed before the first piece went up hold until the last one
 * does. */
#include "support/test.h"

#include "fill/fill.h"
#include "support/hanging.h"
#include "support/random_wall.h"
#include "support/rules.h"

#include <string.h>

enum { WALLS = 4, ROOMS = 2 };

static Layout *lay_out(Arena *arena, const Wall *wall)
{
    Err err = {0};
    Layout *layout = layout_wall(arena, wall, &err);
    if (layout == NULL)
        FAIL("%s", err.text);
    return layout;
}

static bool same_piece(const Piece *a, const Piece *b)
{
    return a->number == b->number && a->face == b->face && a->course == b->course && a->segment == b->segment &&
           a->left == b->left && a->right == b->right && a->board == b->board && a->offset == b->offset;
}

/* Whether a sheet of the one is a sheet of the other: every piece, every board, every sum. */
static bool same_sheets(const Plan *a, const Plan *b)
{
    if (a->piece_count != b->piece_count || a->bare_count != b->bare_count || a->board_count != b->board_count)
        return false;
    for (int i = 0; i < a->piece_count; i++)
        if (!same_piece(&a->pieces[i], &b->pieces[i]) || a->by_board[i] != b->by_board[i])
            return false;
    for (int i = 0; i < a->bare_count; i++)
        if (a->bare[i].left != b->bare[i].left || a->bare[i].right != b->bare[i].right)
            return false;
    for (int i = 0; i < a->board_count; i++)
        if (a->boards[i].count != b->boards[i].count || a->boards[i].left_over != b->boards[i].left_over)
            return false;
    return a->length_opened == b->length_opened && a->boards_opened == b->boards_opened && a->joints == b->joints &&
           a->length_used == b->length_used && a->bound_known == b->bound_known && a->length_bound == b->length_bound &&
           a->bare_length == b->bare_length && a->looks.touching == b->looks.touching &&
           a->looks.equal == b->looks.equal;
}

static int count_hung(const Plan *plan)
{
    int count = 0;
    for (int i = 0; i < plan->piece_count; i++)
        count += plan->pieces[i].hung;
    return count;
}

static int count_rule(const Plan *plan, Rule rule)
{
    int count = 0;
    for (int i = 0; i < plan->findings.count; i++)
        count += plan->findings.at[i].rule == rule;
    return count;
}

/* The plan of the wall as it hangs is the plan that it was hung from. */
static void check_kept(const Wall *wall, const Plan *before, int hung, const char *what, uint64_t seed)
{
    Arena *arena = arena_new();
    Err err = {0};
    const Layout *layout = lay_out(arena, wall);
    const Plan *plan = fill_wall(arena, layout);
    if (!rules_hold(layout, plan, &err))
        FAIL("%s wall %d, %d hung: %s", what, (int)seed, hung, err.text);
    if (!same_sheets(plan, before))
        FAIL("%s wall %d, %d hung of %d: another plan", what, (int)seed, hung, before->piece_count);
    assert_int_equal(count_hung(plan), hung);
    assert_int_equal(count_rule(plan, RULE_HUNG), 0);
    assert_true(plan->breaks <= before->breaks);
    assert_int_equal(plan->changed_count, before->changed_count);
    assert_int_equal(count_rule(plan, RULE_ANEW), plan->changed_count > 0);
    arena_free(arena);
}

START_TEST(hanging_changes_nothing_of_the_plan)
{
    for (RandomKind kind = 0; kind < RANDOM_KIND_COUNT; kind++)
        for (uint64_t seed = 0; seed < (kind < RANDOM_HOUSE ? WALLS : 1) && kind != RANDOM_HUNG; seed++) {
            Arena *arena = arena_new();
            Wall *wall = random_wall(arena, seed, kind);
            const Layout *layout = lay_out(arena, wall);
            const Plan *plan = fill_wall(arena, layout);
            Wall *built = wall_copy(arena, wall);
            const int stops[] = {1, 2, plan->piece_count / 2, plan->piece_count - 1, plan->piece_count};
            for (int i = 0, stop = 0; i < plan->piece_count; i++) {
                hang_piece(arena, built, layout, &plan->pieces[i]);
                while (stop < 5 && stops[stop] < i + 1)
                    stop++;
                if (stop < 5 && stops[stop] == i + 1)
                    check_kept(built, plan, i + 1, random_kind_word(kind), seed);
            }
            arena_free(arena);
        }
}
END_TEST

/* Nobody has to go by the order. */
START_TEST(pieces_may_be_hung_in_any_order)
{
    for (uint64_t seed = 0; seed < ROOMS; seed++) {
        Arena *arena = arena_new();
        Wall *wall = random_wall(arena, 50 + seed, RANDOM_HOUSE);
        const Layout *layout = lay_out(arena, wall);
        const Plan *plan = fill_wall(arena, layout);
        int hung = 0;
        for (int i = plan->piece_count - 1; i >= 0; i -= 3, hung++)
            hang_piece(arena, wall, layout, &plan->pieces[i]);
        check_kept(wall, plan, hung, "disorderly", seed);
        arena_free(arena);
    }
}
END_TEST

/* Every byte of a plan that somebody could see. */
static bool same_plans(const Plan *a, const Plan *b)
{
    if (!same_sheets(a, b) || a->breaks != b->breaks || a->changed_count != b->changed_count ||
        a->findings.count != b->findings.count)
        return false;
    for (int i = 0; i < a->piece_count; i++)
        if (a->pieces[i].hung != b->pieces[i].hung)
            return false;
    for (int i = 0; i < a->findings.count; i++)
        if (strcmp(a->findings.at[i].text, b->findings.at[i].text) != 0)
            return false;
    return true;
}

static const Piece *first_not_hung(const Plan *plan)
{
    for (int i = 0; i < plan->piece_count; i++)
        if (!plan->pieces[i].hung)
            return &plan->pieces[i];
    return NULL;
}

/* A room half hung that had to go another way: the piece in the middle came out half an inch shorter. */
static Wall *hung_otherwise(Arena *arena, uint64_t seed)
{
    Wall *wall = random_wall(arena, seed, RANDOM_HOUSE);
    const Layout *layout = lay_out(arena, wall);
    const Plan *plan = fill_wall(arena, layout);
    int half = plan->piece_count / 2;
    while (half < plan->piece_count && plan->pieces[half].right - plan->pieces[half].left < 20 * LENGTH_INCH)
        half++;
    for (int i = 0; i <= half; i++)
        hang_piece(arena, wall, layout, &plan->pieces[i]);
    wall->hung_pieces.at[half].right -= LENGTH_INCH / 2;
    return wall;
}

/* How many pieces of the plan the other one has not, or has by another number. */
static int count_changed(const Plan *plan, const Plan *other)
{
    int changed = 0;
    for (int i = 0; i < plan->piece_count; i++) {
        bool same = false;
        for (int j = 0; j < other->piece_count && !same; j++)
            same = plan->pieces[i].number == other->pieces[j].number &&
                   plan->pieces[i].board == other->pieces[j].board && same_piece(&plan->pieces[i], &other->pieces[j]);
        changed += !same;
    }
    return changed;
}

/* What hangs stays where it is, and few pieces change: they are told, the others keep their numbers, and the plan that
 * comes of it is kept in its turn. */
START_TEST(a_piece_hung_otherwise_changes_few)
{
    for (uint64_t seed = 0; seed < ROOMS; seed++) {
        Arena *arena = arena_new();
        Err err = {0};
        Wall *wall = hung_otherwise(arena, seed);
        const int before = wall->hung_pieces.count;
        Wall *as_planned = wall_copy(arena, wall);
        as_planned->hung_pieces.count--;
        const Plan *first = fill_wall(arena, lay_out(arena, as_planned));
        const Layout *layout = lay_out(arena, wall);
        const Plan *plan = fill_wall(arena, layout);
        assert_done(rules_hold(layout, plan, &err), &err);
        assert_true(plan->changed_count > 0);
        assert_int_equal(plan->changed_count, count_changed(plan, first));
        assert_true(plan->changed_count <= plan->piece_count / 3);
        assert_int_equal(count_rule(plan, RULE_ANEW), 1);
        assert_int_equal(count_hung(plan), before);
        Wall *built = wall_copy(arena, wall);
        int hung = before;
        for (int i = 0; i < plan->piece_count; i++) {
            if (plan->pieces[i].hung)
                continue;
            hang_piece(arena, built, layout, &plan->pieces[i]);
            hung++;
            if (hung == before + 1 || hung == before + 7 || hung == plan->piece_count)
                check_kept(built, plan, hung, "otherwise", seed);
        }
        arena_free(arena);
    }
}
END_TEST

/* `plan: anew` asks for the best plan of all that is left; what hangs keeps its number, and the rest go on past them.
 */
START_TEST(a_plan_made_anew_on_request_numbers_past_what_hangs)
{
    Arena *arena = arena_new();
    Err err = {0};
    Wall *wall = hung_otherwise(arena, 3);
    wall->hung_pieces.at[wall->hung_pieces.count - 1].plan = PLAN_ANEW;
    const Layout *layout = lay_out(arena, wall);
    const Plan *plan = fill_wall(arena, layout);
    assert_done(rules_hold(layout, plan, &err), &err);
    int highest = 0;
    for (int i = 0; i < plan->piece_count; i++)
        if (plan->pieces[i].hung && plan->pieces[i].number > highest)
            highest = plan->pieces[i].number;
    for (int i = 0; i < plan->piece_count; i++)
        assert_true(plan->pieces[i].hung || plan->pieces[i].number > wall->hung_pieces.count - 1);
    assert_int_equal(plan->changed_count, 0);
    arena_free(arena);
}
END_TEST

/* A board of which nothing hangs goes while some hang: the same. */
START_TEST(a_spoiled_board_changes_few)
{
    for (uint64_t seed = 0; seed < ROOMS; seed++) {
        Arena *arena = arena_new();
        Wall *wall = random_wall(arena, 20 + seed, RANDOM_HOUSE);
        const Layout *layout = lay_out(arena, wall);
        const Plan *plan = fill_wall(arena, layout);
        const int before = plan->piece_count / 3;
        for (int i = 0; i < before; i++)
            hang_piece(arena, wall, layout, &plan->pieces[i]);
        const int spoiled = board_to_spoil(plan, before);
        assert_true(spoiled > 0);
        spoil_board(arena, wall, spoiled);
        layout = lay_out(arena, wall);
        plan = fill_wall(arena, layout);
        assert_int_equal(count_hung(plan), before);
        assert_int_equal(plan->boards[spoiled - 1].count, 0);
        hang_piece(arena, wall, layout, first_not_hung(plan));
        check_kept(wall, plan, before + 1, "spoiled", seed);
        arena_free(arena);
    }
}
END_TEST

/* A board is found, longer than any at hand, while all is covered: nothing changes, whatever the sheets say. */
START_TEST(a_board_found_in_need_of_none_changes_nothing)
{
    for (uint64_t seed = 0; seed < ROOMS; seed++) {
        Arena *arena = arena_new();
        Wall *wall = random_wall(arena, 40 + seed, RANDOM_HOUSE);
        const Layout *layout = lay_out(arena, wall);
        const Plan *plan = fill_wall(arena, layout);
        assert_int_equal(plan->shortfall, 0);
        const int before = plan->piece_count / 3;
        for (int i = 0; i < before; i++)
            hang_piece(arena, wall, layout, &plan->pieces[i]);
        Stock found = wall->stock.at[0];
        found.length += 10 * LENGTH_INCH;
        found.count = 1;
        found.found_given = true;
        found.found = hung_count(wall);
        *arena_push(arena, &wall->stock) = found;
        const Plan *now = fill_wall(arena, lay_out(arena, wall));
        assert_int_equal(now->board_count, plan->board_count + 1);
        assert_int_equal(now->changed_count, 0);
        assert_int_equal(count_changed(now, plan), 0);
        arena_free(arena);
    }
}
END_TEST

/* Course 0 came out a quarter inch high: all above it moves, what hangs does not, and the plan made from there on is
 * kept in its turn. */
START_TEST(a_measured_edge_moves_nothing_that_hangs)
{
    for (uint64_t seed = 0; seed < ROOMS; seed++) {
        Arena *arena = arena_new();
        Wall *wall = random_wall(arena, 30 + seed, RANDOM_HOUSE_STUDS);
        const Layout *layout = lay_out(arena, wall);
        const Plan *plan = fill_wall(arena, layout);
        const FaceLayout *face = &layout->faces[plan->pieces[0].face];
        const Course *course = &face->courses[plan->pieces[0].course];
        const Piece *first = plan->pieces;
        int before = 0;
        while (plan->pieces[before].face == first->face && plan->pieces[before].course == first->course)
            before++;
        for (int i = 0; i < before; i++)
            hang_piece(arena, wall, layout, &plan->pieces[i]);
        *arena_push(arena, &wall->hung_edges) = (HungEdge){.face = wall->faces.at[first->face].name,
                                                           .course = (int)course->number,
                                                           .is_top = true,
                                                           .height = course->top + LENGTH_INCH / 4,
                                                           .place = hung_next_place(wall)};
        const Layout *moved = lay_out(arena, wall);
        const Plan *now = fill_wall(arena, moved);
        Err err = {0};
        assert_done(rules_hold(moved, now, &err), &err);
        assert_int_equal(count_hung(now), before);
        assert_int_equal(count_rule(now, RULE_HUNG), 0);
        for (int i = 0; i < before; i++)
            assert_true(now->pieces[i].hung && same_piece(&now->pieces[i], &plan->pieces[i]));
        for (int i = before; i < before + 5; i++) {
            hang_piece(arena, wall, moved, &now->pieces[i]);
        }
        check_kept(wall, now, before + 5, "measured", seed);
        arena_free(arena);
    }
}
END_TEST

/* Records that fit nowhere are told, and do no harm to the plan. */
START_TEST(records_that_fit_nowhere_change_nothing)
{
    Arena *arena = arena_new();
    Wall *wall = random_wall(arena, 3, RANDOM_HOUSE);
    const Layout *layout = lay_out(arena, wall);
    const Plan *plan = fill_wall(arena, layout);
    for (int i = 0; i < 9; i++)
        hang_piece(arena, wall, layout, &plan->pieces[i]);
    hang_piece(arena, wall, layout, &plan->pieces[4]); /* twice */
    hang_piece(arena, wall, layout, &plan->pieces[9]);
    wall->hung_pieces.at[10].board = 100000;
    const Plan *now = fill_wall(arena, lay_out(arena, wall));
    assert_true(same_sheets(plan, now));
    assert_int_equal(count_hung(now), 9);
    assert_int_equal(count_rule(now, RULE_HUNG), 2);
    arena_free(arena);
}
END_TEST

static const Plan *fill_in_slices(const Layout *layout, Fill *fill)
{
    Err err = {0};
    for (int slice = 1; !fill_step(fill, 41 * slice); slice++)
        if (slice % 8 == 0)
            assert_done(rules_hold(layout, fill_plan(fill), &err), &err);
    const Plan *plan = fill_plan(fill);
    assert_done(rules_hold(layout, plan, &err), &err);
    return plan;
}

/* Slices and one run, with and without knowing the plan before: the same bytes, whether it holds or not. */
START_TEST(slices_and_what_is_known_end_in_the_same_plan)
{
    for (int otherwise = 0; otherwise < 2; otherwise++) {
        Arena *arena = arena_new();
        Wall *wall = otherwise ? hung_otherwise(arena, 7) : random_wall(arena, 8, RANDOM_HOUSE);
        const Layout *layout = lay_out(arena, wall);
        Fill *before = fill_begin(layout);
        const Plan *plan = fill_in_slices(layout, before);
        assert_int_equal(plan->changed_count > 0, otherwise);
        assert_true(same_plans(plan, fill_wall(arena, layout)));
        for (int i = 0; i < 2; i++) {
            Wall *next = wall_copy(arena, wall);
            hang_piece(arena, next, layout, first_not_hung(plan));
            const Layout *next_layout = lay_out(arena, next);
            Fill *after = fill_begin_after(before, next_layout);
            assert_true(fill_step(after, 0)); /* nothing is worked out again */
            Fill *cold = fill_begin(next_layout);
            assert_true(same_plans(fill_plan(after), fill_in_slices(next_layout, cold)));
            assert_true(same_sheets(fill_plan(after), plan));
            fill_free(cold);
            fill_free(before);
            before = after;
            wall = next;
            layout = next_layout;
            plan = fill_plan(before);
        }
        fill_free(before);
        arena_free(arena);
    }
}
END_TEST

/* What another wall's plan knows is of no use, and does no harm. */
START_TEST(what_another_wall_knows_is_left_alone)
{
    Arena *arena = arena_new();
    Wall *wall = random_wall(arena, 5, RANDOM_HOUSE), *other = wall_copy(arena, wall);
    other->saw.kerf += LENGTH_MM;
    const Layout *layout = lay_out(arena, wall), *other_layout = lay_out(arena, other);
    const Plan *plan = fill_wall(arena, layout);
    Fill *known = fill_begin(other_layout);
    while (!fill_step(known, 100000))
        continue;
    for (int hung = 0; hung < 2; hung++) {
        const Layout *now = lay_out(arena, wall);
        Fill *fill = fill_begin_after(known, now);
        assert_true(same_sheets(fill_in_slices(now, fill), plan));
        fill_free(fill);
        hang_piece(arena, wall, layout, &plan->pieces[0]);
    }
    fill_free(known);
    arena_free(arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        hanging_changes_nothing_of_the_plan,
        pieces_may_be_hung_in_any_order,
        a_piece_hung_otherwise_changes_few,
        a_plan_made_anew_on_request_numbers_past_what_hangs,
        a_spoiled_board_changes_few,
        a_board_found_in_need_of_none_changes_nothing,
        a_measured_edge_moves_nothing_that_hangs,
        records_that_fit_nowhere_change_nothing,
        slices_and_what_is_known_end_in_the_same_plan,
        what_another_wall_knows_is_left_alone,
    };
    return RUN(tests);
}
