/*
 *     row 3          order[4]             order[5]          chosen from what rows 2 and 4 leave open
 *     row 2   =======|======  window =====|========= fixed
 *     row 1   ===|=========  window  ==========|=====       settled
 *
 * Invariant: the runs of a block are fixed from the lowest up, pair after pair, then the odd one; what is not fixed is
 * in the table.
 */
#include "fill/relax/path_fixing.h"

#define USED_LEAST (SIMPLEX_ONE / 64)

struct PathFixing {
    Relaxation *relaxation;
    const Solution *solution;
    int *order; /* of runs */
    int next;
    int *over;       /* of each run: the one above it in its block, -1 where there is none */
    int *pairs;      /* of each block: still in the table */
    bool *fixed;     /* of each run */
    Chosen *chosen;  /* of each run */
    bool *closed[2]; /* places of the run in hand and of the one over it */
    bool *reached;   /* places of a run above */
    int64_t looked;  /* places and columns looked at */
};

enum { LOOKED_PER_UNIT = 16 };

/* Bottom rows of all faces first, then those above them, and so on. */
static void find_order(Arena *arena, PathFixing *fixing)
{
    const Demand *demand = fixing->solution->demand;
    int *rank = arena_array(arena, int, demand->row_count);
    int *first = arena_array(arena, int, demand->row_count + 1); /* of each rank, in the order */
    for (int i = 0; i < demand->row_count; i++) {
        rank[i] = i > 0 && demand->rows[i].face == demand->rows[i - 1].face ? rank[i - 1] + 1 : 0;
        first[rank[i] + 1] += demand->rows[i].run_count;
    }
    for (int i = 0; i < demand->row_count; i++)
        first[i + 1] += first[i];
    for (int i = 0; i < demand->row_count; i++)
        for (int j = 0; j < demand->rows[i].run_count; j++)
            fixing->order[first[rank[i]]++] = demand->rows[i].run_first + j;
}

PathFixing *path_fixing_new(Arena *arena, Relaxation *relaxation, const Solution *solution)
{
    PathFixing *fixing = arena_one(arena, PathFixing);
    const Demand *demand = solution->demand;
    fixing->relaxation = relaxation;
    fixing->solution = solution;
    fixing->order = arena_array(arena, int, demand->run_count);
    fixing->over = arena_array(arena, int, demand->run_count);
    fixing->chosen = arena_array(arena, Chosen, demand->run_count);
    fixing->pairs = arena_array(arena, int, relaxation->block_count);
    fixing->fixed = arena_array(arena, bool, demand->run_count);
    int *last = arena_array(arena, int, relaxation->block_count);
    for (int i = 0; i < relaxation->block_count; i++) {
        fixing->pairs[i] = relaxation->blocks[i].pairs;
        last[i] = -1;
    }
    int places = 0;
    for (int i = 0; i < demand->run_count; i++) {
        int block = relaxation->block_of[i];
        fixing->chosen[i].column = -1;
        fixing->over[i] = -1;
        if (last[block] >= 0)
            fixing->over[last[block]] = i;
        last[block] = i;
        places = demand->runs[i].stud_count > places ? demand->runs[i].stud_count : places;
    }
    for (int i = 0; i < 2; i++)
        fixing->closed[i] = arena_array(arena, bool, places + 2);
    fixing->reached = arena_array(arena, bool, places + 2);
    find_order(arena, fixing);
    return fixing;
}

int64_t path_fixing_take_work(PathFixing *fixing)
{
    int64_t units = fixing->looked / LOOKED_PER_UNIT;
    fixing->looked %= LOOKED_PER_UNIT;
    return units;
}

const Chosen *path_fixing_chosen(const PathFixing *fixing)
{
    return fixing->chosen;
}

/* ---- stagger ---- */

/* Whether a joint at x is too near to one of a run on that path. */
static bool is_near(const PathFixing *fixing, const Run *run, const Path *path, Length x)
{
    Length stagger = fixing->solution->demand->stagger;
    for (int i = 1; i < path->count; i++) {
        Length joint = paths_place(run, path->parts[i].at);
        if (joint > x - stagger && joint < x + stagger)
            return true;
    }
    return false;
}

/* Whether a joint at x keeps its stagger to the fixed paths and to what hangs. */
static bool keeps_stagger(const PathFixing *fixing, const Run *run, Length x)
{
    const Demand *demand = fixing->solution->demand;
    const int beside[] = {demand->rows[run->row].below, demand->rows[run->row].above};
    for (int i = 0; i < 2 && demand->stagger > 0; i++) {
        if (beside[i] < 0)
            continue;
        const Row *row = &demand->rows[beside[i]];
        if (demand_near(&row->joints, x, demand->stagger) > 0)
            return false;
        for (int j = row->run_first; j < row->run_first + row->run_count; j++) {
            if (fixing->chosen[j].column < 0)
                continue;
            Path path = relaxation_path(fixing->relaxation, fixing->chosen[j].column, fixing->chosen[j].above);
            if (is_near(fixing, &demand->runs[j], &path, x))
                return false;
        }
    }
    return true;
}

static void close_places(PathFixing *fixing, int run, bool *closed)
{
    const Demand *demand = fixing->solution->demand;
    int end = demand->runs[run].stud_count + 1;
    fixing->looked += 8 * end;
    for (int i = 1; i < end; i++)
        closed[i] = !keeps_stagger(fixing, &demand->runs[run], paths_place(&demand->runs[run], i));
    closed[0] = closed[end] = false;
}

/* Whether the run itself, which may be longer than its block, can take the path. */
static bool can_be_laid(const PathFixing *fixing, const Run *run, const Path *path)
{
    const Demand *demand = fixing->solution->demand;
    for (int i = 0; i < path->count; i++) {
        Length right = paths_place(run, path->parts[i].at);
        Length left = paths_place(run, path_from(path, i));
        if (demand_is_short(run, left, right) || demand_length(run, left, right) > fixing->solution->supply->longest ||
            !demand_whole(demand, run, left, right))
            return false;
    }
    return true;
}

static bool keeps_clear(const Path *path, const bool *closed)
{
    for (int i = 1; i < path->count; i++)
        if (closed[path->parts[i].at])
            return false;
    return true;
}

/* Whether `other`, above the run, still has a path when the run takes this one. */
static bool leaves_way(PathFixing *fixing, const Run *run, const Path *path, const Run *other)
{
    int end = other->stud_count + 1;
    bool *reached = fixing->reached;
    reached[0] = true;
    fixing->looked += (int64_t)end * (path->count + 1);
    for (int to = 1; to <= end; to++) {
        Length x = paths_place(other, to);
        reached[to] = false;
        if (to < end && (is_near(fixing, run, path, x) || !keeps_stagger(fixing, other, x)))
            continue;
        for (int from = to - 1; from >= 0 && !reached[to]; from--) {
            Length length = x - paths_place(other, from);
            if (length > fixing->solution->supply->longest)
                break;
            fixing->looked++;
            reached[to] = reached[from] && !demand_is_short(other, paths_place(other, from), x);
        }
    }
    return reached[end];
}

static bool leaves_ways(PathFixing *fixing, int index, const Path *path)
{
    const Demand *demand = fixing->solution->demand;
    const Run *run = &demand->runs[index];
    int above = demand->rows[run->row].above;
    if (above < 0 || demand->stagger == 0)
        return true;
    const Row *row = &demand->rows[above];
    for (int i = row->run_first; i < row->run_first + row->run_count; i++)
        if (!leaves_way(fixing, run, path, &demand->runs[i]))
            return false;
    return true;
}

/* ---- choosing ---- */

/* Whether the run can take this path of the column, and the one over it (-1: none) the other. */
static bool fits(PathFixing *fixing, int column, bool above, int run, int over)
{
    const Run *runs = fixing->solution->demand->runs;
    Path path = relaxation_path(fixing->relaxation, column, above);
    if (!keeps_clear(&path, fixing->closed[0]) || !can_be_laid(fixing, &runs[run], &path))
        return false;
    if (over < 0)
        return leaves_ways(fixing, run, &path);
    path = relaxation_path(fixing->relaxation, column, !above);
    return keeps_clear(&path, fixing->closed[1]) && can_be_laid(fixing, &runs[over], &path) &&
           leaves_ways(fixing, over, &path);
}

/* The column of the block that the table uses most of those that fit, pairs where there is a run over this one. */
static Chosen most_used(PathFixing *fixing, int run, int over)
{
    const Relaxation *relaxation = fixing->relaxation;
    Chosen best = {.column = -1};
    int64_t most = USED_LEAST;
    fixing->looked += relaxation->infos.count;
    for (int i = 0; i < relaxation->infos.count; i++) {
        const ColumnInfo *info = &relaxation->infos.at[i];
        if (info->kind != COLUMN_PATHS || info->of != relaxation->block_of[run] ||
            (info->lower < info->count) != (over >= 0) || simplex_value(relaxation->table, i) <= most)
            continue;
        for (int above = 0; above <= (over >= 0 ? 1 : 0); above++)
            if (fits(fixing, i, above != 0, run, over)) {
                best = (Chosen){i, above != 0};
                most = simplex_value(relaxation->table, i);
                break;
            }
    }
    return best;
}

/* The cheapest at the prices of now, which keeps clear of closed places as far as can be; column -1 where there is
 * none. */
static Chosen cheapest(PathFixing *fixing, int run, int over)
{
    Relaxation *relaxation = fixing->relaxation;
    int index = relaxation->block_of[run];
    const Block *block = &relaxation->blocks[index];
    relaxation_read_duals(relaxation);
    int64_t cost = over >= 0 ? paths_cheapest_pair(relaxation->paths, &block->run, relaxation->duals, fixing->closed[0],
                                                   fixing->closed[1])
                             : paths_cheapest(relaxation->paths, &block->run, relaxation->duals, fixing->closed[0]);
    if (cost < 0)
        return (Chosen){.column = -1};
    return (Chosen){relaxation_add_path(relaxation, index, over >= 0), false};
}

/* The run takes the path if it can; otherwise it is left to the beam search. */
static void take(PathFixing *fixing, int run, Chosen chosen)
{
    fixing->fixed[run] = true;
    if (chosen.column < 0)
        return;
    Path path = relaxation_path(fixing->relaxation, chosen.column, chosen.above);
    if (can_be_laid(fixing, &fixing->solution->demand->runs[run], &path))
        fixing->chosen[run] = chosen;
}

bool path_fixing_step(PathFixing *fixing)
{
    const Demand *demand = fixing->solution->demand;
    while (fixing->next < demand->run_count && fixing->fixed[fixing->order[fixing->next]])
        fixing->next++;
    if (fixing->next == demand->run_count)
        return false;
    int run = fixing->order[fixing->next++];
    int *pairs = &fixing->pairs[fixing->relaxation->block_of[run]];
    int over = *pairs > 0 ? fixing->over[run] : -1;
    close_places(fixing, run, fixing->closed[0]);
    if (over >= 0)
        close_places(fixing, over, fixing->closed[1]);
    Chosen chosen = most_used(fixing, run, over);
    if (chosen.column < 0)
        chosen = cheapest(fixing, run, over);
    if (chosen.column >= 0)
        simplex_fix(fixing->relaxation->table, chosen.column, 1);
    take(fixing, run, chosen);
    if (over >= 0) {
        take(fixing, over, (Chosen){chosen.column, !chosen.above});
        --*pairs;
    }
    return true;
}
