/*
 *     paths       of all runs, one after another
 *     patterns    whole boards first, then always the one nearest to one board more
 *     assignment  pieces of the paths to slots of the patterns
 *
 * Invariant: need[] is what the fixed paths ask for less what the fixed patterns supply, size by size; below 0 where a
 * pattern supplies more than is asked for.
 */
#include "fill/relax/dive.h"

#include "fill/relax/assignment.h"
#include "fill/relax/path_fixing.h"

enum {
    BEAM_WIDTH = 8,
    PIVOTS = 400,
    PIVOTS_A_ROW = 40,
    TOGETHER = 96 /* runs or boards fixed one by one; of more, several at once */
};

#define NEAR_ONE (SIMPLEX_ONE / 64)
#define ROUND (SIMPLEX_ONE / 4 * 3)
#define GAIN LENGTH_MM          /* of a pivot; less is not worth it here */
#define LITTLE (LENGTH_MM / 20) /* what a turn may lose beyond the least */

struct Dive {
    Arena *arena;
    Relaxation *relaxation;
    Solution *solution;
    Beam *beam;
    PathFixing *fixing;
    int pivots;       /* of the table that may still be made: a table that turns without end is left as it is */
    int64_t budget;   /* units of work that may still be done; what is not settled by then is left to others */
    bool paths_fixed; /* every way is settled, and `need` counted */
    int *need;
    FixedPatterns fixed;
};

/* ---- begin ---- */

Dive *dive_new(Arena *arena, Relaxation *relaxation, Solution *solution, Beam *beam, int64_t budget)
{
    Dive *dive = arena_one(arena, Dive);
    dive->arena = arena;
    dive->relaxation = relaxation;
    dive->solution = solution;
    dive->beam = beam;
    dive->budget = budget;
    dive->fixing = path_fixing_new(arena, relaxation, solution);
    dive->need = arena_array(arena, int, relaxation->sizes->count);
    dive->pivots = PIVOTS_A_ROW * relaxation->rows;
    relaxation_raise_slack_costs(relaxation); /* a whole board is dear at the end, but cheaper than nothing */
    relaxation_raise_slack_costs(relaxation);
    return dive;
}

/* ---- the table ---- */

static void reoptimize(Dive *dive)
{
    Simplex *table = dive->relaxation->table;
    int most = dive->pivots < PIVOTS ? dive->pivots : PIVOTS;
    int left = most;
    while (left > 0 && simplex_dual_pivot(table, LITTLE))
        left--;
    while (left > 0 && simplex_pivot(table, GAIN))
        left--;
    dive->pivots -= most - left;
}

static void find_columns(Dive *dive)
{
    Relaxation *relaxation = dive->relaxation;
    relaxation_read_duals(relaxation);
    if (relaxation_add_columns(relaxation, GAIN))
        reoptimize(dive);
}

/* ---- patterns ---- */

static void fix_pattern(Dive *dive, int column, int times)
{
    const ColumnInfo *info = &dive->relaxation->infos.at[column];
    *arena_push(dive->arena, &dive->fixed) = (FixedPattern){column, times};
    simplex_fix(dive->relaxation->table, column, times);
    for (int i = info->first; i < info->first + info->count; i++)
        dive->need[dive->relaxation->parts.at[i].at] -= times;
}

static bool is_needed(const Dive *dive, const ColumnInfo *info)
{
    for (int i = info->first; i < info->first + info->count; i++)
        if (dive->need[dive->relaxation->parts.at[i].at] > 0)
            return true;
    return false;
}

static bool all_needed(const Dive *dive, const ColumnInfo *info)
{
    const ColumnPart *parts = dive->relaxation->parts.at + info->first;
    for (int i = 0; i < info->count; i++) {
        int alike = 0;
        for (int j = 0; j < info->count; j++)
            alike += parts[j].at == parts[i].at;
        if (dive->need[parts[i].at] < alike)
            return false;
    }
    return true;
}

/* Settles what is whole, or nearly; then the pattern of which most is missing to a whole board no more. False where
 * none is left. */
static bool fix_patterns(Dive *dive)
{
    const Relaxation *relaxation = dive->relaxation;
    int best = -1;
    int64_t most = NEAR_ONE;
    bool whole = false;
    for (int i = 0; i < relaxation->infos.count; i++) {
        if (relaxation->infos.at[i].kind != COLUMN_PATTERN)
            continue;
        int64_t value = simplex_value(relaxation->table, i);
        int times = (int)((value + NEAR_ONE) / SIMPLEX_ONE);
        if (times == 0 && value >= ROUND && all_needed(dive, &relaxation->infos.at[i]))
            times = 1;
        if (times > 0) {
            fix_pattern(dive, i, times);
            whole = true;
        } else if (value > most && is_needed(dive, &relaxation->infos.at[i])) {
            best = i;
            most = value;
        }
    }
    if (whole)
        return true;
    if (best >= 0)
        fix_pattern(dive, best, 1);
    return best >= 0;
}

static bool is_covered(const Dive *dive)
{
    for (int i = 0; i < dive->relaxation->sizes->count; i++)
        if (dive->need[i] > 0)
            return false;
    return true;
}

/* ---- laying ---- */

static void lay(Dive *dive, int64_t *work)
{
    Solution *solution = dive->solution;
    assignment_cover(dive->arena, dive->relaxation, solution, path_fixing_chosen(dive->fixing), &dive->fixed);
    for (int i = 0; i < solution->demand->run_count; i++)
        if (solution->covers[i].count == 0)
            *work += beam_cover(dive->beam, i, BEAM_WIDTH, NULL);
}

/* ---- steps ---- */

static void count_need(Dive *dive)
{
    const Relaxation *relaxation = dive->relaxation;
    const Chosen *chosen = path_fixing_chosen(dive->fixing);
    for (int i = 0; i < dive->solution->demand->run_count; i++) {
        if (chosen[i].column < 0)
            continue;
        Path path = relaxation_path(relaxation, chosen[i].column, chosen[i].above);
        for (int j = 0; j < path.count; j++)
            dive->need[relaxation_piece_size(relaxation, &relaxation->blocks[relaxation->block_of[i]], &path, j)]++;
    }
}

static void spend(Dive *dive, int64_t *work)
{
    int64_t units = relaxation_take_work(dive->relaxation) + path_fixing_take_work(dive->fixing);
    *work += units;
    dive->budget -= units;
}

bool dive_step(Dive *dive, int64_t *work)
{
    *work += 1;
    if (!dive->paths_fixed && dive->budget > 0) {
        int together = 1 + dive->solution->demand->run_count / TOGETHER;
        for (int i = 0; i < together && !dive->paths_fixed; i++)
            dive->paths_fixed = !path_fixing_step(dive->fixing);
        reoptimize(dive);
        find_columns(dive);
        spend(dive, work);
        if (dive->paths_fixed)
            count_need(dive);
        return false;
    }
    if (dive->budget > 0 && !is_covered(dive) && !simplex_overflowed(dive->relaxation->table)) {
        find_columns(dive);
        int together = 1 + dive->solution->supply->board_count / (8 * TOGETHER);
        bool fixed = true;
        for (int i = 0; i < together && fixed; i++)
            fixed = fix_patterns(dive);
        reoptimize(dive);
        spend(dive, work);
        if (fixed)
            return false;
    }
    lay(dive, work);
    return true;
}
