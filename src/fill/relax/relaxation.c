/*
 * table.h draws the table.
 *
 * Invariants: `bound` is proved by the prices in `best_duals`, whatever the table says; every column of the table has
 * its info.
 */
#include "fill/relax/relaxation.h"

#include "base/wide.h"

#include <string.h>

#define GAIN_LEAST (LENGTH_MM / 20)  /* a column must be better by so much */
#define LITTLE (SIMPLEX_ONE / 65536) /* asked for beyond what is needed, up to 64 times, so that pivots do not tie */

enum {
    SIZES_MOST = 220,
    ROWS_MOST = 640,
    CELLS_MOST = 2048,
    BANDS_MOST = 360,
    RAISED_MOST = 3,
    RAISED_BY = 3,
    CLOSE = 4096,
    PIVOTS_A_ROW = 20,
    ROUND_MOST = 8000000, /* steps of paths in one round of columns */
    WORK_PER_UNIT = 32    /* products of the table or steps of paths that make one unit of the fill's work */
};

/* ---- blocks, bands ---- */

/* Every run of the block reaches beyond what all have in common by `left` and `right` at the most, and a piece of it
 * from end to end by both: it is taken shorter by as much, and `shortest` with it. */
static void widen(Block *block, const Run *run)
{
    Run *common = &block->run;
    common->left = run->left > common->left ? run->left : common->left;
    common->right = run->right < common->right ? run->right : common->right;
    block->left = run->left < block->left ? run->left : block->left;
    block->right = run->right > block->right ? run->right : block->right;
    block->shortest = run->shortest < block->shortest ? run->shortest : block->shortest;
    Length beyond = common->left - block->left + block->right - common->right;
    common->shortest = block->shortest > beyond ? block->shortest - beyond : 0;
}

/* Ends of a block's runs further apart than this make another block: it is taken shorter by as much. */
static bool alike(const Block *block, const Run *run)
{
    Length most = LENGTH_INCH / 2;
    return run->closer == block->run.closer && run->studs == block->run.studs &&
           run->stud_first == block->run.stud_first && run->stud_count == block->run.stud_count &&
           run->left - block->left < most && block->run.left - run->left < most && block->right - run->right < most &&
           run->right - block->run.right < most;
}

static void find_blocks(Relaxation *relaxation)
{
    const Demand *demand = relaxation->demand;
    int *block_of = arena_array(relaxation->arena, int, demand->run_count);
    relaxation->block_of = block_of;
    relaxation->blocks = arena_array(relaxation->arena, Block, demand->run_count);
    for (int i = 0; i < demand->run_count; i++) {
        const Run *run = &demand->runs[i];
        int below = demand->rows[run->row].below;
        block_of[i] = -1;
        for (int j = 0; below >= 0 && j < demand->rows[below].run_count && block_of[i] < 0; j++) {
            int other = block_of[demand->rows[below].run_first + j];
            if (alike(&relaxation->blocks[other], run))
                block_of[i] = other;
        }
        if (block_of[i] < 0) {
            block_of[i] = relaxation->block_count;
            relaxation->blocks[relaxation->block_count++] = (Block){.run = *run,
                                                                    .left = run->left,
                                                                    .right = run->right,
                                                                    .shortest = run->shortest,
                                                                    .pair_row = -1,
                                                                    .single_row = -1};
        } else {
            widen(&relaxation->blocks[block_of[i]], run);
        }
        relaxation->blocks[block_of[i]].singles++;
    }
}

static void find_bands(Relaxation *relaxation)
{
    int kinds = relaxation->supply->kind_count;
    relaxation->band_count = kinds < BANDS_MOST ? kinds : BANDS_MOST;
    relaxation->band_of_kind = arena_array(relaxation->arena, int, kinds);
    relaxation->band_boards = arena_array(relaxation->arena, int, relaxation->band_count);
    for (int i = 0; i < kinds; i++) {
        relaxation->band_of_kind[i] = (int)((int64_t)i * relaxation->band_count / kinds);
        relaxation->band_boards[relaxation->band_of_kind[i]] += relaxation->supply->kinds[i].count;
    }
}

/* The cheapest path of a run of the block that goes alone. */
static int64_t single_path(const Relaxation *relaxation, const Block *block)
{
    if (block->pairs > 0)
        return paths_cheapest_beside(relaxation->paths, &block->run, relaxation->duals, NULL);
    return paths_cheapest(relaxation->paths, &block->run, relaxation->duals, NULL);
}

/* Pairs where stagger binds and their paths are no more work than a round may be, and a row for each kind of paths;
 * false where some block has no path, or single paths alone are too much work. */
static bool find_pairs(Relaxation *relaxation)
{
    int row = relaxation->sizes->count;
    int64_t round = 0;
    for (int i = 0; i < relaxation->block_count && round <= ROUND_MOST; i++) {
        if (paths_cheapest(relaxation->paths, &relaxation->blocks[i].run, relaxation->duals, NULL) < 0)
            return false;
        round += paths_take_work(relaxation->paths);
    }
    if (round > ROUND_MOST)
        return false;
    for (int i = 0; i < relaxation->block_count; i++) {
        Block *block = &relaxation->blocks[i];
        int64_t work = relaxation->demand->stagger > 0 && block->singles > 1
                           ? paths_work_of_pair(relaxation->paths, &block->run)
                           : -1;
        if (work >= 0 && round + work <= ROUND_MOST &&
            paths_cheapest_pair(relaxation->paths, &block->run, relaxation->duals, NULL, NULL) >= 0) {
            round += work;
            block->pairs = block->singles / 2;
            block->singles %= 2;
            block->pair_row = row++;
        }
        if (block->singles > 0)
            block->single_row = row++;
    }
    relaxation->rows = row + relaxation->band_count;
    return true;
}

/* ---- columns ---- */

static int begin_column(Relaxation *relaxation, int64_t cost, ColumnKind kind, int of)
{
    *arena_push(relaxation->arena, &relaxation->infos) =
        (ColumnInfo){.kind = kind, .of = of, .first = relaxation->parts.count};
    return simplex_column(relaxation->table, cost);
}

static void add_part(Relaxation *relaxation, int at, int span)
{
    *arena_push(relaxation->arena, &relaxation->parts) = (ColumnPart){at, span};
    relaxation->infos.at[relaxation->infos.count - 1].count++;
}

static void drop_column(Relaxation *relaxation)
{
    simplex_drop_last(relaxation->table);
    relaxation->parts.count = relaxation->infos.at[--relaxation->infos.count].first;
}

Path relaxation_path(const Relaxation *relaxation, int column, bool above)
{
    const ColumnInfo *info = &relaxation->infos.at[column];
    if (above)
        return (Path){relaxation->parts.at + info->first + info->lower, info->count - info->lower};
    return (Path){relaxation->parts.at + info->first, info->lower};
}

int relaxation_piece_size(const Relaxation *relaxation, const Block *block, const Path *path, int i)
{
    Length left = paths_place(&block->run, path_from(path, i));
    Length right = paths_place(&block->run, path->parts[i].at);
    return sizes_index(relaxation->sizes, demand_length(&block->run, left, right) + relaxation->demand->kerf);
}

int relaxation_add_path(Relaxation *relaxation, int index, bool pair)
{
    const Block *block = &relaxation->blocks[index];
    int column = begin_column(relaxation, 0, COLUMN_PATHS, index);
    for (int above = 0; above <= (pair ? 1 : 0); above++) {
        int count;
        const int *places = paths_found(relaxation->paths, above != 0, &count);
        for (int i = 0; i < count; i++)
            add_part(relaxation, places[i], 0);
        if (above == 0)
            relaxation->infos.at[column].lower = count;
        Path path = relaxation_path(relaxation, column, above != 0);
        for (int i = 0; i < count; i++)
            simplex_entry(relaxation->table, relaxation_piece_size(relaxation, block, &path, i), -1);
    }
    int row = pair ? block->pair_row : block->single_row;
    if (row >= 0)
        simplex_entry(relaxation->table, row, 1);
    return column;
}

/* The best that can be cut from a span of this length; `slack` is what it may be longer. */
static int64_t best_of(const Relaxation *relaxation, Length length, Length slack)
{
    int64_t capacity = (length + slack + relaxation->demand->kerf) / relaxation->sizes->width;
    return relaxation->best[capacity < relaxation->sizes->cell_count ? capacity : relaxation->sizes->cell_count - 1];
}

static int64_t best_of_kind(const Relaxation *relaxation, int kind)
{
    const Kind *board = &relaxation->supply->kinds[kind];
    int64_t sum = 0;
    for (int i = 0; i < board->span_count; i++)
        sum += best_of(relaxation, relaxation->supply->slots[board->slot_first + i].left, board->slack);
    return sum;
}

/* Puts what is best cut from a board of the kind into the table. */
static int add_pattern(Relaxation *relaxation, int kind)
{
    const Kind *board = &relaxation->supply->kinds[kind];
    const int64_t *best = relaxation->best;
    int column = begin_column(relaxation, board->length, COLUMN_PATTERN, kind);
    for (int i = 0; i < board->span_count; i++) {
        int64_t left = relaxation->supply->slots[board->slot_first + i].left;
        int capacity = (int)((left + relaxation->demand->kerf) / relaxation->sizes->width);
        while (best[capacity] > 0) {
            while (best[capacity - 1] == best[capacity])
                capacity--;
            int size = 0;
            for (;; size++) {
                int cell = relaxation->sizes->cells[size];
                if (cell > 0 && cell <= capacity && relaxation->duals[size] + best[capacity - cell] == best[capacity])
                    break;
            }
            simplex_entry(relaxation->table, size, 1);
            add_part(relaxation, size, i);
            capacity -= relaxation->sizes->cells[size];
        }
    }
    simplex_entry(relaxation->table, relaxation->rows - relaxation->band_count + relaxation->band_of_kind[kind], 1);
    return column;
}

/* ---- the bound ---- */

/* What the relaxation costs at least by the prices tried, for which `best` was found (J. E. Beasley, in: C. R. Reeves
 * (ed.), Modern Heuristic Techniques, 1993, on Lagrangian relaxation). */
static Length bound_now(const Relaxation *relaxation)
{
    Length bound = 0;
    for (int i = 0; i < relaxation->block_count; i++) {
        const Block *block = &relaxation->blocks[i];
        if (block->pairs > 0)
            bound += block->pairs * paths_cheapest_pair(relaxation->paths, &block->run, relaxation->duals, NULL, NULL);
        if (block->singles > 0)
            bound += block->singles * single_path(relaxation, block);
    }
    for (int i = 0; i < relaxation->supply->kind_count; i++) {
        int64_t over = best_of_kind(relaxation, i) - relaxation->supply->kinds[i].length;
        if (over > 0)
            bound -= over * relaxation->supply->kinds[i].count;
    }
    for (int i = 0; i < relaxation->supply->board_count; i++) {
        const SupplyBoard *board = &relaxation->supply->boards[i];
        if (board->kind >= 0)
            continue;
        bound += board->length;
        for (int j = board->span_first; j < board->span_first + board->span_count; j++)
            bound -= best_of(relaxation, relaxation->supply->spans[j].to - relaxation->supply->spans[j].from,
                             relaxation->supply->apart);
    }
    return bound;
}

/* The prices of the table, or, `smooth`, a mean of them and the best so far, which swings less (P. Wentges,
 * International Transactions in Operational Research 4, 1997). */
static void read_prices(Relaxation *relaxation, bool smooth)
{
    const int64_t *rows = simplex_prices(relaxation->table);
    int sizes = relaxation->sizes->count;
    for (int i = 0; i < sizes; i++) {
        int64_t now = rows[i] > 0 && relaxation->sizes->cells[i] > 0 ? rows[i] : 0;
        relaxation->duals[i] = smooth ? (3 * relaxation->best_duals[i] + now) / 4 : now;
    }
    salvage_best(relaxation->sizes, relaxation->duals, relaxation->best);
    relaxation->work += (int64_t)sizes * relaxation->sizes->cell_count + relaxation->supply->kind_count;
}

void relaxation_read_duals(Relaxation *relaxation)
{
    read_prices(relaxation, false);
}

static void better_bound(Relaxation *relaxation)
{
    Length bound = bound_now(relaxation);
    if (bound <= relaxation->bound)
        return;
    relaxation->bound = bound;
    memcpy(relaxation->best_duals, relaxation->duals,
           (size_t)relaxation->sizes->count * sizeof *relaxation->best_duals);
}

/* ---- begin ---- */

/* What a piece costs where nothing else is cut from a board: its price is no more, as long as boards are not short. */
static int64_t slack_cost(const Relaxation *relaxation, int size)
{
    int64_t least = INT64_MAX;
    int cell = relaxation->sizes->cells[size];
    for (int i = 0; i < relaxation->supply->kind_count; i++) {
        const Kind *kind = &relaxation->supply->kinds[i];
        int64_t fit = 0;
        for (int j = 0; j < kind->span_count && cell > 0; j++)
            fit += (relaxation->supply->slots[kind->slot_first + j].left + relaxation->demand->kerf) /
                   relaxation->sizes->width / cell;
        if (fit > 0 && kind->length / fit < least)
            least = kind->length / fit;
    }
    return least == INT64_MAX ? relaxation->sizes->width * (cell + 1) : least + least / 64 + 1;
}

/* Every piece from slack, every run by its cheapest path, every board unused. The slack columns are the even ones of
 * the first. False where the table cannot hold the numbers. */
static bool begin_table(Relaxation *relaxation)
{
    Simplex *table = relaxation->table;
    int sizes = relaxation->sizes->count, row = 0;
    for (int i = 0; i < sizes; i++, row++) {
        relaxation->slack_costs[i] = slack_cost(relaxation, i);
        int slack = begin_column(relaxation, relaxation->slack_costs[i], COLUMN_SLACK, i);
        simplex_entry(table, row, 1);
        simplex_basic(table, row, slack);
        simplex_set_right_side(table, row, LITTLE * (1 + (i * 37) % 64));
        begin_column(relaxation, 0, COLUMN_SLACK, i);
        simplex_entry(table, row, -1);
    }
    for (int i = 0; i < relaxation->block_count; i++) {
        const Block *block = &relaxation->blocks[i];
        if (block->pairs > 0) {
            paths_cheapest_pair(relaxation->paths, &block->run, relaxation->duals, NULL, NULL);
            simplex_basic(table, row, relaxation_add_path(relaxation, i, true));
            simplex_set_right_side(table, row++, block->pairs * SIMPLEX_ONE);
        }
        if (block->singles > 0) {
            single_path(relaxation, block);
            simplex_basic(table, row, relaxation_add_path(relaxation, i, false));
            simplex_set_right_side(table, row++, block->singles * SIMPLEX_ONE);
        }
    }
    for (int i = 0; i < relaxation->band_count; i++, row++) {
        simplex_basic(table, row, begin_column(relaxation, 0, COLUMN_SLACK, i));
        simplex_entry(table, row, 1);
        simplex_set_right_side(table, row, relaxation->band_boards[i] * SIMPLEX_ONE + LITTLE * (1 + (i * 53) % 64));
    }
    return simplex_start(table);
}

Relaxation *relaxation_new(Arena *arena, const Demand *demand, const Supply *supply)
{
    Relaxation *relaxation = arena_one(arena, Relaxation);
    relaxation->arena = arena;
    relaxation->demand = demand;
    relaxation->supply = supply;
    relaxation->bound = -1;
    if (supply->kind_count == 0 || demand->run_count == 0)
        return NULL;
    find_blocks(relaxation);
    find_bands(relaxation);
    Run *runs = arena_array(arena, Run, relaxation->block_count);
    int studs = 0;
    for (int i = 0; i < relaxation->block_count; i++) {
        runs[i] = relaxation->blocks[i].run;
        studs = runs[i].stud_count > studs ? runs[i].stud_count : studs;
    }
    for (int most = CELLS_MOST; relaxation->sizes == NULL || relaxation->sizes->count > SIZES_MOST; most /= 2)
        relaxation->sizes = sizes_find(arena, demand, runs, relaxation->block_count, supply->longest, most);
    if (relaxation->sizes->count + 2 * relaxation->block_count + relaxation->band_count > ROWS_MOST)
        return NULL;
    relaxation->paths = paths_new(arena, demand, relaxation->sizes, supply->longest, studs);
    relaxation->duals = arena_array(arena, int64_t, relaxation->sizes->count);
    relaxation->best_duals = arena_array(arena, int64_t, relaxation->sizes->count);
    relaxation->best = arena_array(arena, int64_t, relaxation->sizes->cell_count);
    relaxation->slack_costs = arena_array(arena, int64_t, relaxation->sizes->count);
    for (int i = 0; i < relaxation->sizes->count; i++)
        relaxation->duals[i] = relaxation->sizes->cells[i] * relaxation->sizes->width;
    if (!find_pairs(relaxation))
        return NULL;
    relaxation->table = simplex_new(arena, relaxation->rows);
    relaxation->pivots_most = PIVOTS_A_ROW * relaxation->rows + 200;
    return begin_table(relaxation) ? relaxation : NULL;
}

/* ---- steps ---- */

static void keep_if_it_gains(Relaxation *relaxation, int column, int64_t least)
{
    if (simplex_gain(relaxation->table, column) <= least)
        drop_column(relaxation);
}

/* Of the band that begins with the kind `next`, the kind whose boards are worth most beyond their length; `next` goes
 * on to the next band. */
static int best_of_band(const Relaxation *relaxation, int *next)
{
    int band = relaxation->band_of_kind[*next], best = *next;
    int64_t most = 0;
    for (int i = *next; i < relaxation->supply->kind_count && relaxation->band_of_kind[i] == band; i++, ++*next) {
        int64_t worth = best_of_kind(relaxation, i) - relaxation->supply->kinds[i].length;
        if (i == best || worth > most) {
            best = i;
            most = worth;
        }
    }
    return best;
}

bool relaxation_add_columns(Relaxation *relaxation, int64_t least)
{
    int before = simplex_columns(relaxation->table);
    for (int i = 0; i < relaxation->supply->kind_count && relaxation->best[relaxation->sizes->cell_count - 1] > 0;)
        keep_if_it_gains(relaxation, add_pattern(relaxation, best_of_band(relaxation, &i)), least);
    for (int i = 0; i < relaxation->block_count; i++) {
        const Block *block = &relaxation->blocks[i];
        if (block->pairs > 0) {
            paths_cheapest_pair(relaxation->paths, &block->run, relaxation->duals, NULL, NULL);
            keep_if_it_gains(relaxation, relaxation_add_path(relaxation, i, true), least);
        }
        if (block->singles > 0) {
            single_path(relaxation, block);
            keep_if_it_gains(relaxation, relaxation_add_path(relaxation, i, false), least);
        }
    }
    return simplex_columns(relaxation->table) > before;
}

static bool improve(Relaxation *relaxation, bool smooth)
{
    read_prices(relaxation, smooth);
    better_bound(relaxation);
    return relaxation_add_columns(relaxation, GAIN_LEAST);
}

void relaxation_raise_slack_costs(Relaxation *relaxation)
{
    relaxation->raises++;
    for (int i = 0; i < relaxation->sizes->count; i++) {
        int64_t cost = relaxation->slack_costs[i];
        for (int j = 0; j < relaxation->raises; j++)
            cost *= RAISED_BY;
        simplex_set_cost(relaxation->table, 2 * i, cost);
    }
}

/* Raises the slack costs; false where no slack is used, or they were raised often enough. */
static bool raise_slack_costs(Relaxation *relaxation)
{
    bool uses_slack = false;
    for (int i = 0; i < relaxation->sizes->count; i++)
        uses_slack = uses_slack || simplex_value(relaxation->table, 2 * i) > SIMPLEX_ONE / 16;
    if (!uses_slack || relaxation->raises >= RAISED_MOST)
        return false;
    relaxation_raise_slack_costs(relaxation);
    return true;
}

int64_t relaxation_take_work(Relaxation *relaxation)
{
    int64_t *work = &relaxation->work;
    *work += simplex_work(relaxation->table) + paths_take_work(relaxation->paths);
    int64_t units = *work / WORK_PER_UNIT;
    *work %= WORK_PER_UNIT;
    return units;
}

static bool step(Relaxation *relaxation)
{
    bool pivoted = relaxation->pivots++ < relaxation->pivots_most && simplex_pivot(relaxation->table, GAIN_LEAST);
    if (pivoted && ++relaxation->since < relaxation->rows)
        return false;
    relaxation->since = 0;
    if (relaxation->pivots >= relaxation->pivots_most || simplex_overflowed(relaxation->table)) {
        read_prices(relaxation, true);
        better_bound(relaxation);
        return true;
    }
    bool close =
        relaxation->bound >= 0 && simplex_cost(relaxation->table) - relaxation->bound < relaxation->bound / CLOSE;
    if (!close && ((relaxation->bound >= 0 && improve(relaxation, true)) || improve(relaxation, false)))
        return false;
    return (close || !pivoted) && !raise_slack_costs(relaxation);
}

bool relaxation_step(Relaxation *relaxation, int64_t *work)
{
    bool done = step(relaxation);
    *work += relaxation_take_work(relaxation);
    return done;
}

const Sizes *relaxation_sizes(const Relaxation *relaxation)
{
    return relaxation->sizes;
}

const int64_t *relaxation_duals(const Relaxation *relaxation)
{
    return relaxation->best_duals;
}

Length relaxation_bound(const Relaxation *relaxation)
{
    return relaxation->bound > 0 ? relaxation->bound : 0;
}
