/* A plan and what is hung of it: the sheets that were printed before the first piece went up hold until the last one
 * does. */
#include "check.h"

#include "fill/rules.h"
#include "support/random_wall.h"

#include <string.h>

enum { WALLS = 6 };

static Layout *lay_out(Arena *arena, const Wall *wall)
{
    Err err = {0};
    Layout *layout = layout_wall(arena, wall, &err);
    if (layout == NULL)
        fail_msg("%s", err.text);
    return layout;
}

static void hang(Arena *arena, Wall *wall, const Layout *layout, const Piece *piece)
{
    *arena_push(arena, &wall->hung_pieces) =
        (HungPiece){.face = wall->faces.at[piece->face].name,
                    .course = (int)layout->faces[piece->face].courses[piece->course].number,
                    .left = piece->left,
                    .right = piece->right,
                    .board = piece->board,
                    .offset_given = true,
                    .offset = piece->offset};
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
           a->bare_length == b->bare_length && a->touching == b->touching && a->touching_equal == b->touching_equal;
}

static int hung_count(const Plan *plan)
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
        fail_msg("%s wall %d, %d hung: %s", what, (int)seed, hung, err.text);
    if (!same_sheets(plan, before))
        fail_msg("%s wall %d, %d hung of %d: another plan", what, (int)seed, hung, before->piece_count);
    assert_int_equal(hung_count(plan), hung);
    assert_int_equal(count_rule(plan, RULE_HUNG), 0);
    assert_true(plan->breaks <= before->breaks);
    assert_false(plan->anew);
    arena_free(arena);
}

static void test_hanging_changes_nothing_of_the_plan(void **state)
{
    (void)state;
    for (RandomKind kind = 0; kind < RANDOM_KIND_COUNT; kind++)
        for (uint64_t seed = 0; seed < (kind < RANDOM_HOUSE ? WALLS : 1) && kind != RANDOM_HUNG; seed++) {
            Arena *arena = arena_new();
            Wall *wall = random_wall(arena, seed, kind);
            const Layout *layout = lay_out(arena, wall);
            const Plan *plan = fill_wall(arena, layout);
            Wall *built = wall_copy(arena, wall);
            const int stops[] = {1, 2, plan->piece_count / 2, plan->piece_count - 1, plan->piece_count};
            for (int i = 0, stop = 0; i < plan->piece_count; i++) {
                hang(arena, built, layout, &plan->pieces[i]);
                while (stop < 5 && stops[stop] < i + 1)
                    stop++;
                if (stop < 5 && stops[stop] == i + 1)
                    check_kept(built, plan, i + 1, random_kind_word(kind), seed);
            }
            arena_free(arena);
        }
}

/* Nobody has to go by the order. */
static void test_pieces_may_be_hung_in_any_order(void **state)
{
    (void)state;
    for (uint64_t seed = 0; seed < WALLS / 2; seed++) {
        Arena *arena = arena_new();
        Wall *wall = random_wall(arena, 50 + seed, RANDOM_HOUSE);
        const Layout *layout = lay_out(arena, wall);
        const Plan *plan = fill_wall(arena, layout);
        int hung = 0;
        for (int i = plan->piece_count - 1; i >= 0; i -= 3, hung++)
            hang(arena, wall, layout, &plan->pieces[i]);
        check_kept(wall, plan, hung, "disorderly", seed);
        arena_free(arena);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_hanging_changes_nothing_of_the_plan),
        cmocka_unit_test(test_pieces_may_be_hung_in_any_order),
    };
    return RUN(tests);
}
