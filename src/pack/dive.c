/*
 * A dive is a list of fixed patterns, the rest that they leave, and a master whose right side is that rest. Its value
 * so far and the bound of the rest together tell when no better way lies below it. On the way back the rest is restored
 * and the master brought to it again, which takes few pivots: its prices stay good. Once a good part of the rows asks
 * for nothing any more, what is left goes into a smaller master of its own.
 */
#include "pack/dive.h"

#include "pack/generation.h"
#include "pack/greedy.h"

#include <string.h>

enum { ROWS_MOST = 900, DISCREPANCIES_MOST = 40, CHOICES = 8, DEPTH_MOST = 20000 };

#define ALMOST (SIMPLEX_ONE >> 20) /* within it of 0 or of 1 is 0 or 1 */

typedef struct PackDive {
    PackWork *work;
    Arena *arena;
    PackMaster *master;
    PackRest rest;
    int64_t pieces; /* left */
    PackCuts fixed;
    int64_t value;  /* of those fixed */
    bool is_gentle; /* fixes one board at a time */
    int64_t tried;  /* pieces left when least slack was tried last */
} PackDive;

static int64_t enough(const PackWork *work)
{
    return work->best_missing == 0 ? work->best_value : INT64_MAX;
}

static PackMaster *new_master(PackWork *work, Arena *arena, const PackRest *rest, int64_t value)
{
    int64_t *most_boards = arena_array(arena, int64_t, work->kind_count);
    for (int k = 0; k < work->kind_count; k++)
        most_boards[k] = work->best_missing == 0 ? (work->best_value - 1 - value) / work->value[k] : work->pieces;
    return pack_master_new(work, arena, rest, most_boards);
}

/* Cuts one board by a pattern of the master, as far as the rest still asks for it; false where it asks for nothing. */
static bool fix(PackDive *dive, const PackColumn *column)
{
    if (dive->rest.available[column->kind] == 0)
        return false;
    PackCut cut = {.kind = column->kind, .times = 1};
    cut.parts = arena_array(dive->arena, PackPart, column->part_count);
    for (int i = 0; i < column->part_count; i++) {
        int size = column->parts[i].size;
        int count = column->parts[i].count < dive->rest.demand[size] ? column->parts[i].count : dive->rest.demand[size];
        if (count == 0)
            continue;
        cut.parts[cut.part_count++] = (PackPart){size, count};
        dive->rest.demand[size] -= count;
        dive->pieces -= count;
    }
    if (cut.part_count == 0)
        return false;
    dive->rest.available[cut.kind]--;
    dive->value += dive->work->value[cut.kind];
    *arena_push(dive->arena, &dive->fixed) = cut;
    return true;
}

/* Fixes what the relaxation takes whole, or one board of it where the dive is gentle; false where there is nothing
 * such. */
static bool fix_whole(PackDive *dive)
{
    bool some = false;
    for (int r = 0; r < dive->master->rows && !(some && dive->is_gentle); r++) {
        int64_t amount;
        const PackColumn *column = pack_master_basic(dive->master, r, &amount);
        for (; column != NULL && amount > SIMPLEX_ONE - ALMOST && !(some && dive->is_gentle); amount -= SIMPLEX_ONE)
            some = fix(dive, column) || some;
    }
    return some;
}

/* The columns that the relaxation takes most of short of whole, at most CHOICES. */
static int choose(const PackMaster *master, const PackColumn *chosen[CHOICES])
{
    int64_t amounts[CHOICES];
    int count = 0;
    for (int r = 0; r < master->rows; r++) {
        int64_t amount;
        const PackColumn *column = pack_master_basic(master, r, &amount);
        if (column == NULL || amount < ALMOST || amount > SIMPLEX_ONE - ALMOST)
            continue;
        int at = count;
        while (at > 0 && amount > amounts[at - 1] + ALMOST)
            at--;
        if (at == CHOICES)
            continue;
        count += count < CHOICES;
        for (int i = count - 1; i > at; i--) {
            amounts[i] = amounts[i - 1];
            chosen[i] = chosen[i - 1];
        }
        amounts[at] = amount;
        chosen[at] = column;
    }
    return count;
}

/* Cuts the rest greedily and offers the whole. */
static void finish_greedily(PackDive *dive, PackGreed greed, int64_t effort)
{
    PackWork *work = dive->work;
    arena_reset(work->scratch);
    PackRest rest = pack_rest_copy(work->scratch, work, &dive->rest);
    PackCuts cuts = {0};
    for (int i = 0; i < dive->fixed.count; i++)
        *arena_push(work->scratch, &cuts) = dive->fixed.at[i];
    pack_greedily(work, &rest, greed, effort, work->scratch, &cuts);
    pack_offer(work, &cuts);
}

static bool is_over(const PackWork *work)
{
    return pack_is_proved(work) || work->steps <= 0;
}

static void explore(PackDive *dive, int discrepancies, int depth);

/* Goes on below in a master of the sizes still demanded, begun with the columns known. */
static void explore_smaller(const PackDive *dive, int discrepancies, int depth)
{
    Arena *arena = arena_new();
    const PackMaster *old = dive->master;
    PackDive below = *dive;
    below.arena = arena;
    below.rest = pack_rest_copy(arena, dive->work, &dive->rest);
    below.fixed = (PackCuts){0};
    for (int i = 0; i < dive->fixed.count; i++)
        *arena_push(arena, &below.fixed) = dive->fixed.at[i];
    below.master = new_master(dive->work, arena, &below.rest, below.value);
    for (int i = 0; i < old->columns.count; i++) {
        const PackColumn *column = &old->columns.at[i];
        bool fits = below.rest.available[column->kind] > 0;
        for (int p = 0; p < column->part_count && fits; p++)
            fits = column->parts[p].count <= below.rest.demand[column->parts[p].size];
        if (fits)
            pack_master_add(below.master, column->kind, column->parts, column->part_count);
    }
    explore(&below, discrepancies, depth);
    arena_free(arena);
}

static bool is_sparse(const PackDive *dive)
{
    int live = 0;
    for (int r = 0; r < dive->master->size_rows; r++)
        live += dive->rest.demand[dive->master->size_of_row[r]] > 0;
    return live * 4 < dive->master->size_rows * 3;
}

/* All that lies below the patterns fixed, as far as so many second choices lead. */
static void explore(PackDive *dive, int discrepancies, int depth)
{
    PackWork *work = dive->work;
    finish_greedily(dive, PACK_FIRST_FIT, 0);
    if (dive->pieces * 10 <= dive->tried * 9) {
        dive->tried = dive->pieces;
        finish_greedily(dive, PACK_LEAST_SLACK, 2000);
    }
    if (dive->pieces == 0 || depth == DEPTH_MOST || is_over(work))
        return;
    if (is_sparse(dive)) {
        explore_smaller(dive, discrepancies, depth);
        return;
    }
    int64_t bound = pack_generate_columns(dive->master, &dive->rest, dive->value, enough(work));
    if (pack_round_up(work, dive->value + bound) >= enough(work) || is_over(work))
        return;

    int fixed = dive->fixed.count;
    int64_t pieces = dive->pieces, value = dive->value;
    PackRest rest = pack_rest_copy(dive->arena, work, &dive->rest);
    const PackColumn *chosen[CHOICES] = {0};
    int choices = choose(dive->master, chosen);
    bool whole = fix_whole(dive);
    for (int i = 0; i < choices + whole && i <= discrepancies; i++) {
        if ((whole && i == 0) || fix(dive, chosen[i - whole])) {
            if (pack_master_change(dive->master, &dive->rest))
                explore(dive, discrepancies - i, depth + 1);
        }
        if (is_over(work))
            return;
        dive->fixed.count = fixed;
        dive->pieces = pieces;
        dive->value = value;
        memcpy(dive->rest.demand, rest.demand, (size_t)work->size_count * sizeof *rest.demand);
        memcpy(dive->rest.available, rest.available, (size_t)work->kind_count * sizeof *rest.available);
        if (!pack_master_change(dive->master, &dive->rest))
            return;
    }
}

void pack_dive(PackWork *work)
{
    int64_t most_rows = work->size_count + work->kind_count;
    if (most_rows > ROWS_MOST)
        return;
    Arena *arena = arena_new();
    PackRest whole = {.demand = work->demand, .available = work->available};
    PackMaster *root = new_master(work, arena, &whole, 0);
    for (int i = 0; i < work->best.count; i++)
        pack_master_add(root, work->best.at[i].kind, work->best.at[i].parts, work->best.at[i].part_count);
    pack_raise_bound(work, pack_generate_columns(root, &whole, 0, enough(work)));
    for (int turn = 0; turn <= 2 * DISCREPANCIES_MOST && !is_over(work); turn++) {
        Arena *below = arena_new();
        PackDive dive = {
            .work = work, .arena = below, .pieces = work->pieces, .tried = INT64_MAX / 10, .is_gentle = turn % 2 == 1};
        dive.master = pack_master_copy(below, root);
        dive.rest = pack_rest_copy(below, work, &whole);
        explore(&dive, turn / 2, 0);
        arena_free(below);
    }
    arena_free(arena);
}
