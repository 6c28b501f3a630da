/*
 * A dive is a list of fixed patterns, the rest that they leave, and a master whose right side is that rest. Its value
 * so far and the bound of the rest together tell when no better way lies below it.
 */
#include "fill/pack_dive.h"

#include "fill/pack_greedy.h"
#include "fill/pack_price.h"

enum { ROWS_MOST = 900, DIVES_MOST = 400 };

static const double ALMOST = 1e-6;

typedef struct Dive {
    PackWork *work;
    Arena *arena;
    PackMaster *master;
    PackRest rest;
    int64_t pieces; /* left */
    PackCuts fixed;
    int64_t value; /* of those fixed */
    int64_t tried; /* pieces left when least slack was tried last */
} Dive;

static int64_t enough(const PackWork *work)
{
    return work->best_missing == 0 ? work->best_value : INT64_MAX;
}

/* Cuts one board by a pattern of the master, as far as the rest still asks for it; false where it asks for nothing. */
static bool fix(Dive *dive, const PackColumn *column)
{
    if (dive->rest.available[column->kind] == 0)
        return false;
    PackCut cut = {.kind = column->kind, .times = 1};
    cut.parts = arena_array(dive->arena, PackPart, column->part_count);
    for (int i = 0; i < column->part_count; i++) {
        int size = dive->master->size_of_row[column->parts[i].size];
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

/* Fixes what the relaxation takes whole, else the pattern it takes most of, or second most where `second`. */
static bool fix_some(Dive *dive, bool second)
{
    PackMaster *master = dive->master;
    int first_row = -1, second_row = -1;
    bool some = false;
    for (int r = 0; r < master->rows; r++) {
        if (master->basic[r] < 0 || master->amount[r] < ALMOST)
            continue;
        double amount = master->amount[r];
        for (; amount > 1 - ALMOST; amount -= 1)
            some = fix(dive, &master->columns.at[master->basic[r]]) || some;
        if (first_row < 0 || amount > master->amount[first_row] + ALMOST) {
            second_row = first_row;
            first_row = r;
        } else if (second_row < 0 || amount > master->amount[second_row] + ALMOST) {
            second_row = r;
        }
    }
    if (some || first_row < 0)
        return some;
    return fix(dive, &master->columns.at[master->basic[second && second_row >= 0 ? second_row : first_row]]);
}

/* Cuts the rest greedily and offers the whole. */
static void finish_greedily(Dive *dive, PackGreed greed, int64_t effort)
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

static void dive_down(Dive *dive, int second_at)
{
    PackWork *work = dive->work;
    for (int depth = 0;; depth++) {
        finish_greedily(dive, PACK_FIRST_FIT, 0);
        if (dive->pieces * 10 <= dive->tried * 9) {
            dive->tried = dive->pieces;
            finish_greedily(dive, PACK_LEAST_SLACK, 2000);
        }
        if (dive->pieces == 0 || pack_is_proved(work))
            return;
        if (depth > 0) {
            PackPriced priced = pack_price(dive->master, &dive->rest, dive->value, enough(work));
            if (pack_round_up(work, dive->value + priced.bound) >= enough(work) || !pack_spend(work, 0))
                return;
        }
        if (!fix_some(dive, depth == second_at) || !pack_master_change(dive->master, &dive->rest))
            return;
    }
}

void pack_dive(PackWork *work)
{
    int64_t most_rows = work->size_count;
    if (most_rows > ROWS_MOST)
        return;
    Arena *arena = arena_new();
    PackRest whole = {.demand = work->demand, .available = work->available};
    int64_t *most_boards = arena_array(arena, int64_t, work->kind_count);
    for (int k = 0; k < work->kind_count; k++) {
        most_boards[k] = work->best_missing == 0 ? (work->best_value - 1) / work->value[k] : work->pieces;
        most_rows += work->available[k] < most_boards[k];
    }
    if (most_rows <= ROWS_MOST) {
        PackMaster *root = pack_master_new(work, arena, &whole, most_boards);
        for (int i = 0; i < work->best.count; i++)
            pack_master_add(root, work->best.at[i].kind, work->best.at[i].parts, work->best.at[i].part_count);
        pack_raise_bound(work, pack_price(root, &whole, 0, enough(work)).bound);
        for (int i = 0; i < DIVES_MOST && !pack_is_proved(work) && pack_spend(work, 0); i++) {
            Arena *below = arena_new();
            Dive dive = {.work = work, .arena = below, .pieces = work->pieces, .tried = INT64_MAX / 10};
            dive.master = pack_master_copy(below, root);
            dive.rest = pack_rest_copy(below, work, &whole);
            dive_down(&dive, i - 1);
            arena_free(below);
        }
    }
    arena_free(arena);
}
