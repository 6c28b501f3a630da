/* What catches the eye: the measure held against a plain recount and against walls counted by hand; and what is changed
 * for looks changes nothing else. */
#include "support/test.h"

#include "fill/fill.h"
#include "fill/looks/anneal.h"
#include "fill/looks/looks.h"
#include "fill/report.h"
#include "fill/search/hand.h"
#include "support/random_wall.h"
#include "support/rules.h"

#include <string.h>

#define IN LENGTH_INCH

/* ---- rows made by hand ---- */

enum { ROWS_MOST = 8, JOINTS_MOST = 8 };

/* Courses of planks from 0 to 200 in with joints at so many inches (0 ends the list), all of one row over the other. */
static Facade *rows_with(Arena *arena, int count, int joints[][JOINTS_MOST])
{
    Facade *rows = arena_one(arena, Facade);
    rows->arena = arena;
    rows->count = count;
    rows->at = arena_array(arena, FacadeRow, count);
    for (int i = 0; i < count; i++) {
        FacadeRow *row = &rows->at[i];
        row->below = i - 1;
        row->above = i + 1 < count ? i + 1 : -1;
        Length left = 0;
        for (int j = 0; j == 0 || joints[i][j - 1] != 0; j++) {
            Length right = joints[i][j] != 0 ? joints[i][j] * IN : 200 * IN;
            *arena_push(arena, row) = (FacadePlank){.left = left, .right = right, .joined = j > 0, .starts = j > 0};
            left = right;
        }
    }
    return rows;
}

static Looks measure(int count, int joints[][JOINTS_MOST])
{
    Arena *arena = arena_new();
    Looks looks = looks_measure(rows_with(arena, count, joints), LOOKS_SHORT);
    arena_free(arena);
    return looks;
}

START_TEST(joints_over_joints_are_counted)
{
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{60}, {100}, {60}}).stacked, 1);
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{60}, {100}, {61}}).stacked, 1);
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{60}, {100}, {62}}).stacked, 0);
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{60}, {100}, {58}}).stacked, 0);
    assert_int_equal(measure(4, (int[][JOINTS_MOST]){{60}, {100}, {60}, {100}}).stacked, 2);
    assert_int_equal(measure(4, (int[][JOINTS_MOST]){{60}, {100}, {140}, {60}}).stacked, 0);
    assert_int_equal(measure(2, (int[][JOINTS_MOST]){{60}, {60}}).stacked, 1);
}
END_TEST

START_TEST(stairs_of_joints_are_counted)
{
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{60}, {76}, {92}}).stairs, 1);
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{92}, {76}, {60}}).stairs, 1);
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{60}, {76}, {93}}).stairs, 1);
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{60}, {76}, {94}}).stairs, 0);
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{60}, {84}, {108}}).stairs, 1);
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{60}, {85}, {110}}).stairs, 0);
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{60}, {61}, {62}}).stairs, 0);
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{60}, {76}, {60}}).stairs, 0);
    assert_int_equal(measure(4, (int[][JOINTS_MOST]){{60}, {76}, {92}, {108}}).stairs, 2);
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{60}, {76}, {92, 94}}).stairs, 1);
    assert_int_equal(measure(3, (int[][JOINTS_MOST]){{60}, {76}, {92, 93}}).stairs, 0);
}
END_TEST

START_TEST(short_pieces_end_to_end)
{
    assert_int_equal(measure(1, (int[][JOINTS_MOST]){{15, 30}}).short_pairs, 1);
    assert_int_equal(measure(1, (int[][JOINTS_MOST]){{15, 185}}).short_pairs, 0);
    assert_int_equal(measure(1, (int[][JOINTS_MOST]){{16, 31}}).short_pairs, 0);
    assert_int_equal(measure(1, (int[][JOINTS_MOST]){{15, 30, 45}}).short_pairs, 2);
}
END_TEST

/* Three of one tone and one of the other, end to end: 2 of 3 pairs are alike; of the 12 ways to draw two of the four 6
 * draw alike ones, half of the pairs, 1.5, which is told as 2. */
START_TEST(tones_beside_chance)
{
    Arena *arena = arena_new();
    Facade *rows = rows_with(arena, 1, (int[][JOINTS_MOST]){{50, 100, 150}});
    rows->tone_count = 2;
    for (int i = 0; i < 4; i++)
        rows->at[0].at[i].tone = i < 3 ? 1 : 2;
    Looks looks = looks_measure(rows, LOOKS_SHORT);
    assert_int_equal(looks.touching, 3);
    assert_int_equal(looks.equal, 2);
    assert_int_equal(looks.chance, 2);
    rows->at[0].at[3].tone = 0;
    looks = looks_measure(rows, LOOKS_SHORT);
    assert_int_equal(looks.touching, 2);
    assert_int_equal(looks.chance, 2);
    arena_free(arena);
}
END_TEST

/* ---- a plain recount ---- */

typedef struct Seen {
    const Layout *layout;
    const Plan *plan;
} Seen;

static bool beside(const Piece *one, const Piece *other)
{
    return one->face == other->face && one->course == other->course && one->segment == other->segment &&
           one->right == other->left;
}

static int64_t number_of(const Seen *seen, const Piece *piece)
{
    return seen->layout->faces[piece->face].courses[piece->course].number;
}

/* How many courses the other is above the one; 0 on another face. */
static int64_t above(const Seen *seen, const Piece *one, const Piece *other)
{
    return one->face == other->face ? number_of(seen, other) - number_of(seen, one) : 0;
}

static bool has_joint(const Seen *seen, int piece)
{
    return piece > 0 && beside(&seen->plan->pieces[piece - 1], &seen->plan->pieces[piece]);
}

/* A joint between pieces that are not scraps. */
static bool has_step(const Seen *seen, int piece)
{
    const Piece *right = &seen->plan->pieces[piece];
    return has_joint(seen, piece) && right->right - right->left >= 2 * IN && right[-1].right - right[-1].left >= 2 * IN;
}

static Length apart(Length a, Length b)
{
    return a < b ? b - a : a - b;
}

/* Whether a joint at x of the course is nearer than 2 in to a corner of an opening, by Pythagoras. */
static bool near_corner(const Seen *seen, int face, const Course *course, Length x)
{
    const Openings *openings = &seen->layout->wall->faces.at[face].openings;
    for (int i = 0; i < openings->count; i++) {
        if (openings->at[i].kind == OPENING_STOVE)
            continue;
        const Box *box = &seen->layout->faces[face].openings[i];
        const Length xs[2] = {box->left, box->right}, ys[2] = {box->bottom, box->top};
        for (int k = 0; k < 4; k++) {
            const Length y = ys[k / 2] < course->bottom ? course->bottom
                             : ys[k / 2] > course->top  ? course->top
                                                        : ys[k / 2];
            const Wide across = x - xs[k % 2], up = ys[k / 2] - y, within = 2 * IN;
            if (across * across + up * up < within * within)
                return true;
        }
    }
    return false;
}

/* Whether the piece has fewer than two studs 3/4 in or more from its ends or under its joints, or more than 16 in
 * beyond them; stud by stud. */
static bool is_loose(const Seen *seen, int index)
{
    const Piece *piece = &seen->plan->pieces[index];
    const Face *face = &seen->layout->wall->faces.at[piece->face];
    const FaceLayout *laid = &seen->layout->faces[piece->face];
    const Segment *segment = &laid->courses[piece->course].segments[piece->segment];
    if (face->wall != FACE_STUDS || !face->studs.given)
        return false;
    int count = 0;
    Length first = 0, last = 0;
    for (int i = 0; i < laid->studs.count; i++) {
        const Length x = laid->studs.at[i];
        const bool inside = x >= piece->left + IN * 3 / 4 && x <= piece->right - IN * 3 / 4;
        const bool at_joint = (x == piece->left && x != segment->left) || (x == piece->right && x != segment->right);
        if (!inside && !at_joint)
            continue;
        first = count == 0 ? x : first;
        last = x;
        count++;
    }
    return count < 2 || first - piece->left > 16 * IN || piece->right - last > 16 * IN;
}

static void recount_joint(const Seen *seen, int index, Looks *looks)
{
    const Plan *plan = seen->plan;
    const Piece *piece = &plan->pieces[index];
    const Course *course = &seen->layout->faces[piece->face].courses[piece->course];
    bool near = near_corner(seen, piece->face, course, piece->left);
    for (int i = 0; i < course->cut_count; i++)
        near = near || apart(course->cuts[i].box.left, piece->left) < IN ||
               apart(course->cuts[i].box.right, piece->left) < IN;
    looks->near_sides += near;
    Length few = looks_short(seen->layout->wall);
    looks->short_pairs += piece->right - piece->left < few && piece[-1].right - piece[-1].left < few;
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *next = &plan->pieces[i];
        int64_t up = above(seen, piece, next);
        if (up < 1 || up > 2 || !has_joint(seen, i))
            continue;
        looks->stacked += apart(next->left, piece->left) < 2 * IN;
        Length step = next->left - piece->left;
        if (up != 1 || !has_step(seen, index) || !has_step(seen, i) || apart(step, 0) < 2 * IN ||
            apart(step, 0) > 24 * IN)
            continue;
        for (int j = 0; j < plan->piece_count; j++) {
            const Piece *third = &plan->pieces[j];
            Length then = third->left - next->left;
            looks->stairs += above(seen, next, third) == 1 && has_step(seen, j) && (then > 0) == (step > 0) &&
                             apart(then, step) < 2 * IN && apart(then, 0) >= 2 * IN && apart(then, 0) <= 24 * IN;
        }
    }
}

static Looks recount(const Layout *layout, const Plan *plan)
{
    Seen seen = {layout, plan};
    Looks looks = {0};
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        const char *tone = wall_board(layout->wall, piece->board)->tone;
        for (int j = 0; j < plan->piece_count; j++) {
            const Piece *other = &plan->pieces[j];
            const char *other_tone = wall_board(layout->wall, other->board)->tone;
            bool over = above(&seen, piece, other) == 1 && other->left < piece->right && piece->left < other->right;
            if ((!over && !beside(piece, other)) || tone[0] == '\0' || other_tone[0] == '\0')
                continue;
            looks.touching++;
            looks.equal += strcmp(tone, other_tone) == 0;
        }
        looks.loose += is_loose(&seen, i);
        if (has_joint(&seen, i))
            recount_joint(&seen, i, &looks);
    }
    return looks;
}

static void check_count(const Layout *layout, const Plan *plan, RandomKind kind, int seed)
{
    Looks plain = recount(layout, plan);
    plain.chance = plan->looks.chance;
    if (memcmp(&plain, &plan->looks, sizeof plain) != 0)
        FAIL("%s wall %d: %d of %d alike, %d stacked, %d stairs, %d short, %d beside an opening, %d loose; a recount "
             "says %d, %d, %d, %d, %d, %d, %d",
             random_kind_word(kind), seed, plan->looks.equal, plan->looks.touching, plan->looks.stacked,
             plan->looks.stairs, plan->looks.short_pairs, plan->looks.near_sides, plan->looks.loose, plain.equal,
             plain.touching, plain.stacked, plain.stairs, plain.short_pairs, plain.near_sides, plain.loose);
}

/* ---- what is changed ---- */

typedef struct Arranged {
    const Layout *layout;
    const Plan *before, *after;
} Arranged;

/* The hand method's plan, before and after it was arranged for looks. */
static Arranged anneal(Arena *arena, const Wall *wall)
{
    Err err;
    Arranged all = {.layout = layout_wall(arena, wall, &err)};
    assert_non_null(all.layout);
    const Demand *demand = demand_new(arena, all.layout);
    Supply *supply = supply_new(arena, demand);
    Solution *solution = solution_new(arena, demand, supply);
    hand_cover(arena, solution);
    all.before = report_plan(arena, demand, supply, solution->covers);
    Anneal *search = anneal_new(arena, demand, supply, solution->covers);
    int64_t work = 0;
    while (!anneal_step(search, &work))
        continue;
    all.after = report_plan(arena, demand, supply, anneal_covers(arena, search));
    return all;
}

static bool equal_bare(const Plan *one, const Plan *other)
{
    for (int i = 0; i < one->bare_count && i < other->bare_count; i++)
        if (one->bare[i].left != other->bare[i].left || one->bare[i].right != other->bare[i].right ||
            one->bare[i].face != other->bare[i].face || one->bare[i].course != other->bare[i].course)
            return false;
    return one->bare_count == other->bare_count;
}

enum { WALLS = 40 };

/* Neither what is opened, nor pieces, bare wall, broken rules or what hangs; and looks become no worse. */
START_TEST(looks_cost_nothing)
{
    int better = 0;
    for (RandomKind kind = 0; kind < RANDOM_KIND_COUNT; kind++)
        for (int seed = 0; seed < (kind < RANDOM_HOUSE ? WALLS : WALLS / 8); seed++) {
            Arena *arena = arena_new();
            Arranged all = anneal(arena, random_wall(arena, (uint64_t)seed, kind));
            Err err = {0};
            if (!rules_hold(all.layout, all.after, &err))
                FAIL("%s wall %d: %s", random_kind_word(kind), seed, err.text);
            Cost before = rules_cost(all.layout, all.before), after = rules_cost(all.layout, all.after);
            if (cost_compare(&before, &after) != 0 || all.before->breaks != all.after->breaks ||
                !equal_bare(all.before, all.after))
                FAIL("%s wall %d costs more or less than before", random_kind_word(kind), seed);
            int64_t weight = looks_weight(&all.after->looks), was = looks_weight(&all.before->looks);
            if (weight > was)
                FAIL("%s wall %d looks worse", random_kind_word(kind), seed);
            better += weight < was;
            check_count(all.layout, all.before, kind, seed);
            check_count(all.layout, all.after, kind, seed);
            arena_free(arena);
        }
    assert_true(better > WALLS); /* of some 140 */
}
END_TEST

/* ---- walls whose best is known ---- */

/* A face 140 in wide of so many courses of 3 in, nothing lost at the saw. */
static Wall *plain_wall(Arena *arena, int courses)
{
    Wall *wall = wall_new(arena, UNITS_IN);
    *arena_push(arena, &wall->planks.widths) = 3 * IN;
    wall->planks.thickness = IN / 2;
    wall->joints.stagger = 6 * IN;
    Face *face = arena_push(arena, &wall->faces);
    *face = (Face){.id = wall->next_id++, .name = arena_text(arena, "north", 5), .width = 140 * IN};
    *arena_push(arena, &face->floor) = (Mark){0, 0};
    *arena_push(arena, &face->ceiling) = (Mark){0, courses * 3 * IN};
    return wall;
}

static void put_stock(Arena *arena, Wall *wall, Length length, int count, const char *tone)
{
    *arena_push(arena, &wall->stock) = (Stock){.id = wall->next_id++,
                                               .label = "",
                                               .tone = arena_text(arena, tone, strlen(tone)),
                                               .length = length,
                                               .count = count};
}

static Looks looks_of(Arena *arena, const Wall *wall)
{
    Err err;
    const Layout *layout = layout_wall(arena, wall, &err);
    assert_non_null(layout);
    const Plan *plan = fill_wall(arena, layout);
    assert_done(rules_hold(layout, plan, &err), &err);
    assert_int_equal(plan->shortfall, 0);
    return plan->looks;
}

/* Six whole courses, three of each tone: they take turns. */
START_TEST(tones_take_turns)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 6);
    put_stock(arena, wall, 140 * IN, 3, "grey");
    put_stock(arena, wall, 140 * IN, 3, "pale");
    Looks looks = looks_of(arena, wall);
    assert_int_equal(looks.touching, 5);
    assert_int_equal(looks.equal, 0);
    arena_free(arena);
}
END_TEST

/* One grey board is in stock for each pale one; five pieces end to end of two lengths, which no board of the other
 * length can replace: grey, pale, grey, pale, grey only where the pieces change places. */
START_TEST(pieces_of_a_run_change_places)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 1);
    put_stock(arena, wall, 32 * IN, 3, "grey");
    put_stock(arena, wall, 22 * IN, 2, "pale");
    Looks looks = looks_of(arena, wall);
    assert_int_equal(looks.touching, 4);
    assert_int_equal(looks.equal, 0);
    arena_free(arena);
}
END_TEST

/* 40 + 100 and 60 + 80, two courses of each: no joint need be over another, none in a stair. */
START_TEST(joints_come_apart)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 4);
    for (int i = 0; i < 4; i++)
        put_stock(arena, wall, (40 + 20 * i) * IN, 2, "");
    Looks looks = looks_of(arena, wall);
    assert_int_equal(looks_weight(&looks), 0);
    arena_free(arena);
}
END_TEST

/* Two scraps and a long board, laid in the order of the pile: the long one goes between them. */
START_TEST(short_pieces_come_apart)
{
    Arena *arena = arena_new();
    Wall *wall = plain_wall(arena, 1);
    put_stock(arena, wall, 15 * IN, 2, "");
    put_stock(arena, wall, 110 * IN, 1, "");
    Arranged all = anneal(arena, wall);
    assert_int_equal(all.before->looks.short_pairs, 1);
    assert_int_equal(all.after->looks.short_pairs, 0);
    arena_free(arena);
}
END_TEST

/* A joint at 60 would be at the outlet's side; at 80 it is not. */
START_TEST(joints_keep_off_cutouts)
{
    for (int mirrored = 0; mirrored < 2; mirrored++) {
        Arena *arena = arena_new();
        Wall *wall = plain_wall(arena, 1);
        put_stock(arena, wall, 60 * IN, 1, "");
        put_stock(arena, wall, 80 * IN, 1, "");
        Opening *outlet = arena_push(arena, &wall->faces.at[0].openings);
        *outlet = (Opening){.id = wall->next_id++, .name = arena_text(arena, "outlet", 6), .kind = OPENING_BOX};
        outlet->left = mirrored ? 80 * IN - IN / 2 : 60 * IN - IN / 2;
        outlet->bottom = 2 * IN;
        outlet->width = 3 * IN;
        outlet->height = 4 * IN;
        assert_int_equal(looks_of(arena, wall).near_sides, 0);
        arena_free(arena);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        joints_over_joints_are_counted,
        stairs_of_joints_are_counted,
        short_pieces_end_to_end,
        tones_beside_chance,
        looks_cost_nothing,
        tones_take_turns,
        pieces_of_a_run_change_places,
        joints_come_apart,
        short_pieces_come_apart,
        joints_keep_off_cutouts,
    };
    return RUN(tests);
}
