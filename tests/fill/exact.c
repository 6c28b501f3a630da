/*
 * Small walls (hundreds of them where DATUMROW_EXACT is set) against an exact integer program, solved by glpsol (GNU
 * Linear Programming Kit; Debian package glpk-utils). Where it is missing the test is skipped and says so. One face, a
 * few courses, a few boards:
 *
 *     x[s,i,j,b]  the piece of segment s from place i to place j is cut from board b
 *     y[b]        board b is opened
 *     least sum of length[b] y[b], where every segment is a way from end to end, a board holds its pieces and kerfs,
 * joints too near to one another do not stand in both of two neighbors
 *
 * Where ends lie between marks, pieces are rounded up and boards down, so that what the program finds can be cut: a
 * bound above it is wrong.
 */
#include "support/test.h"

#include "base/random.h"
#include "fill/fill.h"
#include "support/rules.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#define IN LENGTH_INCH

#define UNIT (IN / 64) /* of the program */

enum {
    WALLS = 100,
    WALLS_QUICK = 40,
    WALLS_ODD = 300, /* each of the odd kinds, one after the other */
    WALLS_ODD_QUICK = 24,
    PLACES_MOST = 40,
    SEGMENTS_MOST = 16,
    NO_PLAN = -1,
    NO_SOLVER = -2,
    NO_ANSWER = -3
};

typedef enum SmallKind { SMALL_STUDS, SMALL_ANYWHERE, SMALL_LEANING, SMALL_RAKED, SMALL_MEASURED } SmallKind;

static Wall *kind_wall(Arena *arena, uint64_t seed, bool on_studs)
{
    Random random = {seed * 31 + 5};
    Wall *wall = wall_new(arena, UNITS_IN);
    wall->round = IN;
    wall->round_given = true;
    *arena_push(arena, &wall->planks.widths) = 3 * IN;
    wall->planks.thickness = IN / 2;
    wall->joints = (Joints){.land = on_studs ? LAND_STUDS : LAND_ANYWHERE,
                            .stagger = random_between(&random, 0, on_studs ? 10 : 3) * IN,
                            .shortest = random_between(&random, 2, on_studs ? 12 : 5) * IN};
    wall->saw = (Saw){random_between(&random, 0, 1) * IN / (on_studs ? 4 : 1), 0};
    Face *face = arena_push(arena, &wall->faces);
    *face = (Face){.id = wall->next_id++, .name = arena_text(arena, "small", 5)};
    face->width = random_between(&random, on_studs ? 50 : 9, on_studs ? 110 : 13) * IN;
    *arena_push(arena, &face->floor) = (Mark){0, 0};
    *arena_push(arena, &face->ceiling) = (Mark){0, random_between(&random, 2, 3) * 3 * IN};
    face->studs =
        (Studs){.given = true, .regular = true, .first = random_between(&random, 4, 15) * IN, .spacing = 16 * IN};
    Length have = 0;
    for (int i = 0; i < 9 && have < 4 * face->width; i++) {
        Length length = random_between(&random, on_studs ? 30 : 6, on_studs ? 100 : 14) * IN;
        *arena_push(arena, &wall->stock) =
            (Stock){.id = wall->next_id++, .label = "", .tone = "", .length = length, .count = 1};
        have += length;
    }
    return wall;
}

static Length eighths(Random *random, int low_in, int high_in)
{
    return random_between(random, low_in * 8, high_in * 8) * (IN / 8);
}

static void put_mark(Arena *arena, Marks *marks, Length at, Length off)
{
    *arena_push(arena, marks) = (Mark){at, off};
}

/* One to four studs anywhere, apart; sides that lean by up to a sixth of the width each. */
static void odd_face(Arena *arena, Random *random, Face *face, int courses)
{
    face->width = eighths(random, 36, 84);
    put_mark(arena, &face->floor, 0, 0);
    put_mark(arena, &face->ceiling, 0, courses * 3 * IN);
    int lean = (int)(face->width / IN) / 6;
    int sides = (int)random_between(random, 1, 3);
    for (int i = 0; i < 2; i++) {
        if ((sides >> i & 1) == 0)
            continue;
        Marks *marks = i == 0 ? &face->left : &face->right;
        Length bottom = random_between(random, 0, 2) > 0 ? 0 : eighths(random, 0, lean);
        put_mark(arena, marks, 0, bottom);
        put_mark(arena, marks, courses * 3 * IN,
                 bottom > 0 ? 0 : eighths(random, 0, (int)random_between(random, 1, lean)));
    }
    face->studs.given = true;
    Length x = 0;
    for (int i = (int)random_between(random, 1, 4); i > 0; i--) {
        x += eighths(random, 6, 30);
        if (x < face->width)
            *arena_push(arena, &face->studs.at) = x;
    }
}

static void odd_stock(Arena *arena, Random *random, Wall *wall, Length area_length)
{
    Length lengths[4];
    int lengths_count = (int)random_between(random, 1, 4);
    for (int i = 0; i < lengths_count; i++)
        lengths[i] = eighths(random, 24, 100);
    Length have = 0;
    for (int i = 0; i < 12 && have < area_length / 4 * 7; i++) {
        Length length = lengths[random_between(random, 0, lengths_count - 1)];
        *arena_push(arena, &wall->stock) =
            (Stock){.id = wall->next_id++, .label = "", .tone = "", .length = length, .count = 1};
        have += length;
    }
}

static Wall *odd_wall(Arena *arena, uint64_t seed, SmallKind kind)
{
    Random random = {seed * 97 + (uint64_t)kind};
    Wall *wall = wall_new(arena, UNITS_IN);
    *arena_push(arena, &wall->planks.widths) = 3 * IN;
    wall->planks.thickness = IN / 2;
    wall->joints = (Joints){.land = LAND_STUDS,
                            .stagger = random_between(&random, 0, 1) * eighths(&random, 0, 12),
                            .shortest = random_between(&random, 0, 3) > 0 ? eighths(&random, 1, 16) : 0};
    wall->saw = (Saw){random_between(&random, 0, 2) * IN / 8, 0};
    Face *face = arena_push(arena, &wall->faces);
    *face = (Face){.id = wall->next_id++, .name = arena_text(arena, "small", 5)};
    int courses = (int)random_between(&random, 2, 6);
    odd_face(arena, &random, face, courses);
    if (kind == SMALL_RAKED)
        put_mark(arena, &face->ceiling, face->width, random_between(&random, 0, courses * 2) * IN);
    for (int i = 1; kind == SMALL_MEASURED && i < courses; i += (int)random_between(&random, 1, 3))
        *arena_push(arena, &wall->hung_edges) = (HungEdge){.face = face->name,
                                                           .course = i - 1,
                                                           .is_top = true,
                                                           .height = i * 3 * IN + eighths(&random, 0, 1) - IN / 2};
    odd_stock(arena, &random, wall, courses * face->width);
    return wall;
}

static Wall *small_wall(Arena *arena, uint64_t seed, SmallKind kind)
{
    if (kind <= SMALL_ANYWHERE)
        return kind_wall(arena, seed, kind == SMALL_STUDS);
    return odd_wall(arena, seed, kind);
}

/* A segment and the places where its pieces may end, from its left end to its right. */
typedef struct Places {
    int64_t course;
    Length at[PLACES_MOST];
    int count;
} Places;

typedef struct Program {
    FILE *file;
    const Wall *wall;
    Places segments[SEGMENTS_MOST];
    int count;
    bool narrow; /* some segment is shorter than any piece should be */
} Program;

static void find_places(const FaceLayout *face, const Wall *wall, const Segment *segment, Places *places)
{
    bool on_studs = wall->joints.land == LAND_STUDS;
    Length next = segment->left;
    places->at[places->count++] = segment->left;
    for (int i = 0;; i++) {
        if (on_studs && i >= face->studs.count)
            break;
        next = on_studs ? face->studs.at[i] : next + wall->round;
        if (next >= segment->right && !on_studs)
            break;
        if (next > segment->left && next < segment->right)
            places->at[places->count++] = next;
    }
    places->at[places->count++] = segment->right;
}

static void find_segments(Program *program, const Layout *layout)
{
    const FaceLayout *face = &layout->faces[0];
    program->wall = layout->wall;
    for (int i = 0; i < face->course_count; i++)
        for (int j = 0; j < face->courses[i].segment_count; j++) {
            const Segment *segment = &face->courses[i].segments[j];
            Places *places = &program->segments[program->count++];
            *places = (Places){.course = face->courses[i].number};
            find_places(face, layout->wall, segment, places);
            if (segment->right - segment->left < layout->wall->joints.shortest)
                program->narrow = true;
        }
}

static bool allowed(const Program *program, int segment, int i, int j, int board)
{
    const Places *places = &program->segments[segment];
    Length length = places->at[j] - places->at[i];
    bool alone = i == 0 && j == places->count - 1;
    return i < j && (alone || length >= program->wall->joints.shortest) &&
           length <= program->wall->stock.at[board].length;
}

/* Puts + x for every piece of the segment from `from` to `to` (-1: any), of the board (-1: any); with a size before it
 * where asked for. */
static void put_pieces(const Program *program, int segment, int from, int to, int board, const char *sign, bool sized)
{
    const Places *places = &program->segments[segment];
    for (int i = 0; i < places->count; i++)
        for (int j = i + 1; j < places->count; j++)
            for (int b = 0; b < program->wall->stock.count; b++) {
                if ((from >= 0 && i != from) || (to >= 0 && j != to) || (board >= 0 && b != board) ||
                    !allowed(program, segment, i, j, b))
                    continue;
                Length size = places->at[j] - places->at[i] + program->wall->saw.kerf;
                fprintf(program->file, " %s", sign);
                if (sized)
                    fprintf(program->file, " %lld", (long long)(length_round_up(size, UNIT) / UNIT));
                fprintf(program->file, " x_%d_%d_%d_%d\n", segment, i, j, b);
            }
}

static void put_stagger(const Program *program, int low, int high)
{
    const Places *one = &program->segments[high], *other = &program->segments[low];
    for (int i = 1; i < one->count - 1; i++)
        for (int j = 1; j < other->count - 1; j++) {
            Length apart = one->at[i] - other->at[j];
            if (apart >= program->wall->joints.stagger || apart <= -program->wall->joints.stagger)
                continue;
            fprintf(program->file, " near_%d_%d_%d_%d: 0 z\n", low, high, i, j);
            put_pieces(program, high, i, -1, -1, "+", false);
            put_pieces(program, low, j, -1, -1, "+", false);
            fprintf(program->file, " <= 1\n");
        }
}

static void write_program(const Program *program)
{
    const Wall *wall = program->wall;
    FILE *file = program->file;
    fprintf(file, "Minimize\n");
    for (int b = 0; b < wall->stock.count; b++)
        fprintf(file, " + %lld y_%d\n", (long long)(wall->stock.at[b].length / UNIT), b);
    fprintf(file, "Subject To\n");
    for (int s = 0; s < program->count; s++)
        for (int i = 0; i < program->segments[s].count - 1; i++) {
            fprintf(file, " way_%d_%d: 0 z\n", s, i);
            put_pieces(program, s, i, -1, -1, "+", false);
            if (i > 0)
                put_pieces(program, s, -1, i, -1, "-", false);
            fprintf(file, " = %d\n", i == 0);
        }
    for (int b = 0; b < wall->stock.count; b++) {
        Length capacity = wall->stock.at[b].length + wall->saw.kerf;
        fprintf(file, " board_%d: - %lld y_%d\n", b, (long long)(capacity / UNIT), b);
        for (int s = 0; s < program->count; s++)
            put_pieces(program, s, -1, -1, b, "+", true);
        fprintf(file, " <= 0\n");
        for (int other = b + 1; other < wall->stock.count; other++)
            if (wall->stock.at[other].length == wall->stock.at[b].length) {
                fprintf(file, " alike_%d: y_%d - y_%d >= 0\n", b, b, other);
                break;
            }
    }
    for (int high = 1; high < program->count; high++)
        for (int low = 0; low < high; low++)
            if (program->segments[high].course == program->segments[low].course + 1)
                put_stagger(program, low, high);
    fprintf(file, "Binary\n");
    for (int b = 0; b < wall->stock.count; b++)
        fprintf(file, " y_%d\n", b);
    for (int s = 0; s < program->count; s++)
        put_pieces(program, s, -1, -1, -1, "", false);
    fprintf(file, "End\n");
}

/* Runs glpsol on the program; units opened at the least, or why there is no such number. */
static int solve(const char *program, const char *answer)
{
    pid_t child = fork();
    if (child == 0) {
        if (freopen("/dev/null", "w", stdout) == NULL)
            _exit(126);
        execlp("glpsol", "glpsol", "--lp", program, "--tmlim", "1", "--write", answer, (char *)NULL);
        _exit(127);
    }
    int status = 0;
    if (child < 0 || waitpid(child, &status, 0) != child || !WIFEXITED(status) || WEXITSTATUS(status) == 127)
        return NO_SOLVER;
    FILE *file = fopen(answer, "r");
    if (file == NULL)
        return NO_ANSWER;
    char line[256], kind = 0;
    double value = 0;
    int found = NO_ANSWER;
    while (found == NO_ANSWER && fgets(line, sizeof line, file) != NULL)
        if (sscanf(line, "s mip %*d %*d %c %lf", &kind, &value) >= 1)
            found = kind == 'o' ? (int)(value + 0.5) : kind == 'n' ? NO_PLAN : NO_ANSWER;
    fclose(file);
    return found;
}

typedef struct Tally {
    int compared, equal;
} Tally;

/* The plan against what the solver says. */
static void hold_against(const Program *program, const Plan *plan, int least, SmallKind kind, int seed, Tally *tally)
{
    if (least == NO_PLAN && !program->narrow)
        assert_true(plan->shortfall > 0);
    if (least < 0)
        return;
    tally->compared++;
    if (plan->length_bound > least * UNIT && plan->shortfall == 0)
        FAIL("wall %d, kind %d: bound %lld is above %d", seed, (int)kind, (long long)(plan->length_bound / UNIT),
             least);
    for (int i = 0; i < plan->findings.count; i++)
        assert_true(plan->findings.at[i].rule != RULE_BOUND);
    bool same = plan->shortfall == 0 && plan->length_opened <= least * UNIT;
    tally->equal += same;
    if (!same)
        printf("# wall %d, kind %d: opened %lld/64 in, least %d/64 in, shortfall %lld mm\n", seed, (int)kind,
               (long long)(plan->length_opened / UNIT), least, (long long)(plan->shortfall / LENGTH_MM));
    if (plan->shortfall == 0 && kind <= SMALL_ANYWHERE)
        assert_true(plan->length_opened >= least * UNIT);
}

/* Walls of the kind from seed 0 on, until so many are compared in all. */
static void compare(SmallKind kind, int walls, Tally *tally)
{
    char program_name[] = "/tmp/fill-exact-XXXXXX", answer_name[] = "/tmp/fill-answer-XXXXXX";
    int one = mkstemp(program_name), other = mkstemp(answer_name);
    assert_true(one >= 0 && other >= 0);
    close(one);
    close(other);
    int least = NO_ANSWER;
    for (int seed = 0; tally->compared < walls && seed < 4 * walls && least != NO_SOLVER; seed++) {
        Arena *arena = arena_new();
        Err err;
        const Layout *layout = layout_wall(arena, small_wall(arena, (uint64_t)seed, kind), &err);
        Program program = {.file = fopen(program_name, "w")};
        assert_non_null(program.file);
        find_segments(&program, layout);
        write_program(&program);
        fclose(program.file);
        least = solve(program_name, answer_name);
        if (least != NO_SOLVER) {
            const Plan *plan = fill_wall(arena, layout);
            assert_done(rules_hold(layout, plan, &err), &err);
            hold_against(&program, plan, least, kind, seed, tally);
        }
        arena_free(arena);
    }
    unlink(program_name);
    unlink(answer_name);
    if (least == NO_SOLVER)
        SKIP("glpsol is not installed (Debian: glpk-utils)");
}

START_TEST(small_walls_reach_the_optimum)
{
    Tally tally = {0};
    int walls = getenv("DATUMROW_EXACT") != NULL ? WALLS : WALLS_QUICK;
    compare(SMALL_STUDS, 7 * walls / 10, &tally);
    compare(SMALL_ANYWHERE, walls, &tally);
    printf("# %d of %d small walls at the optimum\n", tally.equal, tally.compared);
    assert_int_equal(tally.compared, walls);
    assert_true(tally.equal * 100 >= tally.compared * 95);
}
END_TEST

/* Sides that lean, rakes, measured edges: ends that differ from course to course. The bound is never above what can be
 * done. */
START_TEST(the_bound_holds_on_odd_walls)
{
    Tally tally = {0};
    int walls = getenv("DATUMROW_EXACT") != NULL ? WALLS_ODD : WALLS_ODD_QUICK;
    for (SmallKind kind = SMALL_LEANING; kind <= SMALL_MEASURED; kind++)
        compare(kind, ((int)kind - 1) * walls / 3, &tally);
    printf("# %d of %d odd small walls at the optimum\n", tally.equal, tally.compared);
    assert_true(tally.compared * 2 >= walls);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        small_walls_reach_the_optimum,
        the_bound_holds_on_odd_walls,
    };
    return RUN(tests);
}
