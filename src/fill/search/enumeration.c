/*
 * Invariants: `sets` rise by length, then by boards; between two tries the solution is empty and every board is back in
 * the supply.
 */
#include "fill/search/enumeration.h"

#include "fill/search/backtracking.h"

#include <stdlib.h>

enum { BOARDS_MOST = 12, RUNS_MOST = 16, TRIES = 32, BEAM_WIDTH = 8, NODES_MOST = 30000 };

/* Boards as bits. */
typedef struct BoardSet {
    uint32_t boards;
    int count;
    Length length;
} BoardSet;

struct Enumeration {
    Solution *solution;
    Beam *beam;
    Backtracking *backtracking; /* NULL where the wall is too large for it */
    Random random;
    BoardSet *sets;
    int set_count;
    int set, tried;
};

static int by_cost(const void *a, const void *b)
{
    const BoardSet *one = a, *other = b;
    if (one->length != other->length)
        return one->length < other->length ? -1 : 1;
    if (one->count != other->count)
        return one->count < other->count ? -1 : 1;
    return (one->boards > other->boards) - (one->boards < other->boards);
}

/* Of boards alike the first are taken first, so that no choice is tried twice. */
static bool first_of_kind(const Supply *supply, uint32_t boards)
{
    for (int i = 1; i < supply->board_count; i++)
        for (int j = 0; j < i; j++)
            if (supply->boards[i].kind == supply->boards[j].kind && (boards >> i & 1) && !(boards >> j & 1))
                return false;
    return true;
}

/* Whether their spans could hold the runs, a kerf for each. */
static bool reaches(const Solution *solution, uint32_t boards)
{
    const Supply *supply = solution->supply;
    Length have = 0;
    for (int i = 0; i < supply->board_count; i++)
        for (int j = 0; j < supply->boards[i].span_count && (boards >> i & 1); j++) {
            const Span *span = &supply->spans[supply->boards[i].span_first + j];
            have += span->to - span->from + supply->kerf;
        }
    return have >= solution->demand->total + solution->demand->closers + solution->demand->run_count * supply->kerf;
}

Enumeration *enumeration_new(Arena *arena, Solution *solution, Beam *beam, Cost best)
{
    const Supply *supply = solution->supply;
    if (supply->board_count > BOARDS_MOST || supply->board_count == 0 || solution->demand->run_count > RUNS_MOST ||
        solution->demand->run_count == 0)
        return NULL;
    for (int i = 0; i < supply->board_count; i++)
        if (supply->boards[i].kind < 0)
            return NULL;
    Enumeration *enumeration = arena_one(arena, Enumeration);
    enumeration->solution = solution;
    enumeration->beam = beam;
    enumeration->backtracking = backtracking_new(arena, solution);
    enumeration->random.state = UINT64_C(0x666577);
    enumeration->sets = arena_array(arena, BoardSet, 1 << supply->board_count);
    for (uint32_t boards = 1; boards < UINT32_C(1) << supply->board_count; boards++) {
        BoardSet set = {.boards = boards};
        for (int i = 0; i < supply->board_count; i++)
            if (boards >> i & 1) {
                set.length += supply->kinds[supply->boards[i].kind].length;
                set.count++;
            }
        Cost cost = {.length_opened = set.length, .boards_opened = set.count};
        if (cost_compare(&cost, &best) < 0 && first_of_kind(supply, boards) && reaches(solution, boards))
            enumeration->sets[enumeration->set_count++] = set;
    }
    if (enumeration->set_count > 1)
        qsort(enumeration->sets, (size_t)enumeration->set_count, sizeof *enumeration->sets, by_cost);
    return enumeration;
}

static void clear(Solution *solution)
{
    for (int i = 0; i < solution->demand->run_count; i++)
        solution_clear(solution, i);
}

/* Weaves every run in a drawn order, as long as nothing stays bare. */
static bool cover_all(Enumeration *enumeration, int64_t *work)
{
    Solution *solution = enumeration->solution;
    int order[RUNS_MOST];
    int count = solution->demand->run_count;
    Length bare = solution->demand->total;
    for (int i = 0; i < count; i++)
        order[i] = i;
    for (int i = count - 1; i > 0; i--) {
        int other = (int)random_below(&enumeration->random, (uint64_t)i + 1);
        int held = order[i];
        order[i] = order[other];
        order[other] = held;
    }
    for (int i = 0; i < count; i++) {
        const Run *run = &solution->demand->runs[order[i]];
        *work += beam_cover(enumeration->beam, order[i], BEAM_WIDTH, &enumeration->random);
        bare -= run->right - run->left;
        if (solution->bare > bare || solution->breaks > 0 || solution->closers_off > 0)
            return false;
    }
    return true;
}

/* One try with the boards: the solution is laid, or empty again. */
static bool try_boards(Enumeration *enumeration, uint32_t boards, int64_t *work)
{
    Solution *solution = enumeration->solution;
    for (int i = 0; i < solution->supply->board_count; i++)
        if (!(boards >> i & 1))
            supply_withhold(solution->supply, i);
    supply_open_free(solution->supply);
    const bool found = cover_all(enumeration, work);
    supply_use_salvage(solution->supply, solution->supply->salvage);
    for (int i = solution->supply->board_count - 1; i >= 0; i--)
        if (!(boards >> i & 1))
            supply_return(solution->supply, i);
    if (!found)
        clear(solution);
    return found;
}

bool enumeration_step(Enumeration *enumeration, int64_t *work, bool *found)
{
    *found = false;
    *work += 16;
    if (enumeration->set >= enumeration->set_count)
        return true;
    const uint32_t boards = enumeration->sets[enumeration->set].boards;
    BacktrackingEnd end = BACKTRACKING_LEFT;
    clear(enumeration->solution);
    if (enumeration->backtracking != NULL && enumeration->tried == 0)
        end = backtracking_cover(enumeration->backtracking, boards, NODES_MOST, work);
    *found = end == BACKTRACKING_FOUND || (end == BACKTRACKING_LEFT && try_boards(enumeration, boards, work));
    if (*found)
        return true;
    if (++enumeration->tried == TRIES || end == BACKTRACKING_NONE) {
        enumeration->tried = 0;
        enumeration->set++;
    }
    return enumeration->set >= enumeration->set_count;
}
