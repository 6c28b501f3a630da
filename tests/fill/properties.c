/* What holds of every plan, on walls of every kind. */
#include "support/test.h"

#include "fill/fill.h"
#include "support/random_wall.h"
#include "support/rules.h"

#include <string.h>

/* Thousands of walls are filled by the first plan and some steps, some by all steps. */
enum { MANY = 400, FEW = 8, SOME_STEPS = 100 };

static Layout *lay_out(Arena *arena, uint64_t seed, RandomKind kind)
{
    Err err = {0};
    Layout *layout = layout_wall(arena, random_wall(arena, seed, kind), &err);
    if (layout == NULL)
        FAIL("%s wall %d: %s", random_kind_word(kind), (int)seed, err.text);
    return layout;
}

static void check_rules(const Layout *layout, const Plan *plan, uint64_t seed, RandomKind kind, const char *what)
{
    Err err = {0};
    if (!rules_hold(layout, plan, &err))
        FAIL("%s wall %d, %s: %s", random_kind_word(kind), (int)seed, what, err.text);
}

/* Every byte that a user could see of the two. */
static bool equal_plans(const Plan *a, const Plan *b)
{
    if (a->piece_count != b->piece_count || a->bare_count != b->bare_count || a->findings.count != b->findings.count ||
        a->length_opened != b->length_opened || a->length_bound != b->length_bound || a->joints != b->joints)
        return false;
    for (int i = 0; i < a->piece_count; i++) {
        const Piece *one = &a->pieces[i], *other = &b->pieces[i];
        if (one->number != other->number || one->left != other->left || one->right != other->right ||
            one->board != other->board || one->offset != other->offset || one->course != other->course)
            return false;
    }
    for (int i = 0; i < a->findings.count; i++)
        if (strcmp(a->findings.at[i].text, b->findings.at[i].text) != 0)
            return false;
    return true;
}

/* After an event what was printed stays, and what may be spent is, so that only the shortfall may not be worse. */
static bool is_worse(const Wall *wall, const Cost *cost, const Cost *than)
{
    return rules_happened(wall) || wall->joints.spend > 0 || wall->joints.spend_all ? cost->shortfall > than->shortfall
                                                                                    : cost_compare(cost, than) > 0;
}

static void check_plan(const Layout *layout, const Plan *plan, uint64_t seed, RandomKind kind)
{
    Arena *arena = arena_new();
    const Plan *hand = fill_by_hand(arena, layout);
    check_rules(layout, plan, seed, kind, "plan");
    check_rules(layout, hand, seed, kind, "by hand");
    Cost cost = rules_cost(layout, plan), by_hand = rules_cost(layout, hand);
    if (is_worse(layout->wall, &cost, &by_hand))
        FAIL("%s wall %d is worse than by hand", random_kind_word(kind), (int)seed);
    int told = 0;
    for (int i = 0; i < plan->findings.count; i++)
        told += rule_grade(plan->findings.at[i].rule) == GRADE_FAULT && plan->findings.at[i].rule != RULE_HUNG;
    assert_int_equal(told, plan->breaks + plan->bare_count);
    arena_free(arena);
}

START_TEST(first_plans_hold_and_are_no_worse_than_by_hand)
{
    for (RandomKind kind = 0; kind < RANDOM_KIND_COUNT; kind++)
        for (int seed = 0; seed < MANY / (kind < RANDOM_HOUSE ? 1 : 10); seed++) {
            Arena *arena = arena_new();
            const Layout *layout = lay_out(arena, (uint64_t)seed, kind);
            Fill *fill = fill_begin(layout);
            check_plan(layout, fill_plan(fill), (uint64_t)seed, kind);
            fill_step(fill, SOME_STEPS);
            check_plan(layout, fill_plan(fill), (uint64_t)seed, kind);
            fill_free(fill);
            arena_free(arena);
        }
}
END_TEST

START_TEST(final_plans_hold_and_are_no_worse_than_by_hand)
{
    for (RandomKind kind = 0; kind < RANDOM_KIND_COUNT; kind++)
        for (int seed = 0; seed < FEW; seed++) {
            Arena *arena = arena_new();
            const Layout *layout = lay_out(arena, (uint64_t)seed, kind);
            const Plan *plan = fill_wall(arena, layout);
            check_plan(layout, plan, (uint64_t)seed, kind);
            assert_true(plan->bound_known && plan->length_bound <= plan->length_opened);
            arena_free(arena);
        }
}
END_TEST

/* Slices of uneven length, the plan asked for between them, end in the plan of one run. */
START_TEST(slices_end_in_the_same_plan)
{
    for (RandomKind kind = 0; kind < RANDOM_KIND_COUNT; kind++)
        for (int seed = 0; seed < FEW / 4; seed++) {
            Arena *arena = arena_new();
            const Layout *layout = lay_out(arena, (uint64_t)seed, kind);
            const Plan *whole = fill_wall(arena, layout);
            Fill *fill = fill_begin(layout);
            Cost before = rules_cost(layout, fill_plan(fill));
            for (int slice = 1; !fill_step(fill, 37 * slice); slice++) {
                const Plan *plan = fill_plan(fill);
                Cost cost = rules_cost(layout, plan);
                if (is_worse(layout->wall, &cost, &before))
                    FAIL("%s wall %d gets worse in slice %d", random_kind_word(kind), seed, slice);
                before = cost;
                if (slice % 16 == 0)
                    check_rules(layout, plan, (uint64_t)seed, kind, "slice");
            }
            if (!equal_plans(whole, fill_plan(fill)))
                FAIL("%s wall %d: slices end in another plan", random_kind_word(kind), seed);
            assert_true(fill_step(fill, 1));
            fill_free(fill);
            arena_free(arena);
        }
}
END_TEST

/* Pieces, kerfs, leftovers, squared ends and avoided wood make up the board: from its first end to its last no
 * nanometre is in two of them. */
START_TEST(pieces_kerfs_and_offcuts_add_up_to_the_board)
{
    for (RandomKind kind = 0; kind < RANDOM_KIND_COUNT; kind++)
        for (int seed = 0; seed < 6 * FEW; seed++) {
            Arena *arena = arena_new();
            const Layout *layout = lay_out(arena, 1000 + (uint64_t)seed, kind);
            const Wall *wall = layout->wall;
            Fill *fill = fill_begin(layout);
            const Plan *plan = fill_plan(fill);
            for (int board = 1; board <= plan->board_count; board++) {
                const BoardUse *use = &plan->boards[board - 1];
                const Stock *stock = wall_board(wall, board);
                Length sum = use->left_over;
                bool hung = false;
                Length kerfs = 0, last = 0;
                for (int i = use->first; i < use->first + use->count; i++) {
                    const Piece *piece = &plan->pieces[plan->by_board[i]];
                    sum += piece->right - piece->left + piece->closer;
                    hung = hung || piece->hung;
                    if (i > use->first) /* between two pieces the greater of the two ends */
                        kerfs += last > piece->left_kerf ? last : piece->left_kerf;
                    last = piece->right_kerf;
                }
                assert_true(sum <= stock->length);
                if (stock->avoid.count == 0 && !hung && wall_stock_usable(stock, hung_count(wall)) &&
                    !plan_has_loss(wall, board) && use->count > 0 && 2 * wall->saw.square < stock->length) {
                    Length rest = stock->length - 2 * wall->saw.square - sum - kerfs;
                    assert_true(use->left_over > 0 ? rest == last : rest >= 0 && rest <= last);
                }
            }
            fill_free(fill);
            arena_free(arena);
        }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        first_plans_hold_and_are_no_worse_than_by_hand,
        final_plans_hold_and_are_no_worse_than_by_hand,
        slices_end_in_the_same_plan,
        pieces_kerfs_and_offcuts_add_up_to_the_board,
    };
    return RUN(tests);
}
