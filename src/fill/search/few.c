/*
 * Invariants: `choices` rise by length, then by boards; between two tries nothing is laid and every board is back on
 * the pile.
 */
#include "fill/search/few.h"

#include <stdlib.h>

enum { BOARDS_MOST = 12, RUNS_MOST = 16, TRIES = 32, BEAM = 8 };

/* Boards as bits. */
typedef struct Choice {
    uint32_t boards;
    int count;
    Length length;
} Choice;

struct Few {
    Laid *laid;
    Weave *weave;
    Random random;
    Choice *choices;
    int choice_count;
    int choice, tried;
};

static int by_cost(const void *a, const void *b)
{
    const Choice *one = a, *other = b;
    if (one->length != other->length)
        return one->length < other->length ? -1 : 1;
    if (one->count != other->count)
        return one->count < other->count ? -1 : 1;
    return (one->boards > other->boards) - (one->boards < other->boards);
}

/* Of boards alike the first are taken first, so that no choice is tried twice. */
static bool first_of_kind(const Pile *pile, uint32_t boards)
{
    for (int i = 1; i < pile->board_count; i++)
        for (int j = 0; j < i; j++)
            if (pile->boards[i].kind == pile->boards[j].kind && (boards >> i & 1) && !(boards >> j & 1))
                return false;
    return true;
}

/* Whether their spans could hold the runs, a kerf for each. */
static bool reaches(const Laid *laid, uint32_t boards)
{
    const Pile *pile = laid->pile;
    Length have = 0;
    for (int i = 0; i < pile->board_count; i++)
        for (int j = 0; j < pile->boards[i].span_count && (boards >> i & 1); j++) {
            const Span *span = &pile->spans[pile->boards[i].span_first + j];
            have += span->to - span->from + pile->kerf;
        }
    return have >= laid->demand->total + laid->demand->run_count * pile->kerf;
}

Few *few_new(Arena *arena, Laid *laid, Weave *weave, Cost best)
{
    const Pile *pile = laid->pile;
    if (pile->board_count > BOARDS_MOST || pile->board_count == 0 || laid->demand->run_count > RUNS_MOST ||
        laid->demand->run_count == 0)
        return NULL;
    for (int i = 0; i < pile->board_count; i++)
        if (pile->boards[i].kind < 0)
            return NULL;
    Few *few = arena_one(arena, Few);
    few->laid = laid;
    few->weave = weave;
    few->random.state = UINT64_C(0x666577);
    few->choices = arena_array(arena, Choice, 1 << pile->board_count);
    for (uint32_t boards = 1; boards < UINT32_C(1) << pile->board_count; boards++) {
        Choice choice = {.boards = boards};
        for (int i = 0; i < pile->board_count; i++)
            if (boards >> i & 1) {
                choice.length += pile->kinds[pile->boards[i].kind].length;
                choice.count++;
            }
        Cost cost = {.length_opened = choice.length, .boards_opened = choice.count};
        if (cost_compare(&cost, &best) < 0 && first_of_kind(pile, boards) && reaches(laid, boards))
            few->choices[few->choice_count++] = choice;
    }
    if (few->choice_count > 1)
        qsort(few->choices, (size_t)few->choice_count, sizeof *few->choices, by_cost);
    return few;
}

static void clear(Laid *laid)
{
    for (int i = 0; i < laid->demand->run_count; i++)
        laid_clear(laid, i);
}

/* Weaves every run in a drawn order, as long as nothing stays bare. */
static bool cover_all(Few *few, int64_t *work)
{
    Laid *laid = few->laid;
    int order[RUNS_MOST];
    int count = laid->demand->run_count;
    Length bare = laid->demand->total;
    for (int i = 0; i < count; i++)
        order[i] = i;
    for (int i = count - 1; i > 0; i--) {
        int other = (int)random_below(&few->random, (uint64_t)i + 1);
        int held = order[i];
        order[i] = order[other];
        order[other] = held;
    }
    for (int i = 0; i < count; i++) {
        const Run *run = &laid->demand->runs[order[i]];
        *work += weave_run(few->weave, order[i], BEAM, &few->random);
        bare -= run->right - run->left;
        if (laid->bare > bare || laid->breaks > 0)
            return false;
    }
    return true;
}

bool few_once(Few *few, int64_t *work, bool *found)
{
    *found = false;
    *work += 16;
    if (few->choice >= few->choice_count)
        return true;
    Laid *laid = few->laid;
    uint32_t boards = few->choices[few->choice].boards;
    clear(laid);
    for (int i = 0; i < laid->pile->board_count; i++)
        if (!(boards >> i & 1))
            pile_withhold(laid->pile, i);
    pile_open_free(laid->pile);
    *found = cover_all(few, work);
    pile_price(laid->pile, laid->pile->worth);
    for (int i = laid->pile->board_count - 1; i >= 0; i--)
        if (!(boards >> i & 1))
            pile_return(laid->pile, i);
    if (*found)
        return true;
    clear(laid);
    if (++few->tried == TRIES) {
        few->tried = 0;
        few->choice++;
    }
    return few->choice >= few->choice_count;
}
