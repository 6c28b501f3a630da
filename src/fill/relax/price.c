/*
 * The table is drawn in price_work.h.
 *
 * Invariants: `bound` is proved by the prices and rents in `kept`, whatever the table says; there is a note for each
 * column of the table.
 */
#include "fill/relax/price_work.h"

#include "base/wide.h"

#include <string.h>

#define GAIN_LEAST (LENGTH_MM / 20)  /* a column must be better by so much */
#define LITTLE (SIMPLEX_ONE / 65536) /* asked for beyond what is needed, up to 64 times, so that turns do not tie */

enum {
    SIZES_MOST = 220,
    ROWS_MOST = 640,
    CELLS_MOST = 2048,
    BANDS_MOST = 360,
    RAISED_MOST = 3,
    RAISED_BY = 3,
    CLOSE = 4096,
    TURNS_A_ROW = 20
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
    return run->stud_first == block->run.stud_first && run->stud_count == block->run.stud_count &&
           run->left - block->left < most && block->run.left - run->left < most && block->right - run->right < most &&
           run->right - block->run.right < most;
}

static void find_blocks(Price *price)
{
    const Demand *demand = price->demand;
    int *block_of = arena_array(price->arena, int, demand->run_count);
    price->block_of = block_of;
    price->blocks = arena_array(price->arena, Block, demand->run_count);
    for (int i = 0; i < demand->run_count; i++) {
        const Run *run = &demand->runs[i];
        int below = demand->rows[run->row].below;
        block_of[i] = -1;
        for (int j = 0; below >= 0 && j < demand->rows[below].run_count && block_of[i] < 0; j++) {
            int other = block_of[demand->rows[below].run_first + j];
            if (alike(&price->blocks[other], run))
                block_of[i] = other;
        }
        if (block_of[i] < 0) {
            block_of[i] = price->block_count;
            price->blocks[price->block_count++] = (Block){.run = *run,
                                                          .left = run->left,
                                                          .right = run->right,
                                                          .shortest = run->shortest,
                                                          .pair_row = -1,
                                                          .single_row = -1};
        } else {
            widen(&price->blocks[block_of[i]], run);
        }
        price->blocks[block_of[i]].singles++;
    }
}

static void find_bands(Price *price)
{
    int kinds = price->pile->kind_count;
    price->band_count = kinds < BANDS_MOST ? kinds : BANDS_MOST;
    price->band_of_kind = arena_array(price->arena, int, kinds);
    price->band_boards = arena_array(price->arena, int, price->band_count);
    for (int i = 0; i < kinds; i++) {
        price->band_of_kind[i] = (int)((int64_t)i * price->band_count / kinds);
        price->band_boards[price->band_of_kind[i]] += price->pile->kinds[i].count;
    }
}

/* The cheapest way of a run of the block that goes alone. */
static int64_t single_way(const Price *price, const Block *block)
{
    if (block->pairs > 0)
        return ways_beside(price->ways, &block->run, price->prices, NULL);
    return ways_one(price->ways, &block->run, price->prices, NULL);
}

/* Pairs where stagger binds, and a row for each kind of ways; false where some block has no way. */
static bool find_pairs(Price *price)
{
    int row = price->sizes->count;
    for (int i = 0; i < price->block_count; i++) {
        Block *block = &price->blocks[i];
        if (ways_one(price->ways, &block->run, price->prices, NULL) < 0)
            return false;
        if (price->demand->stagger > 0 && block->singles > 1 && ways_has_two(price->ways) &&
            ways_two(price->ways, &block->run, price->prices, NULL, NULL) >= 0) {
            block->pairs = block->singles / 2;
            block->singles %= 2;
            block->pair_row = row++;
        }
        if (block->singles > 0)
            block->single_row = row++;
    }
    price->rows = row + price->band_count;
    return true;
}

/* ---- columns ---- */

static int begin_column(Price *price, int64_t cost, ColumnKind kind, int of)
{
    *arena_push(price->arena, &price->notes) = (Note){.kind = kind, .of = of, .first = price->parts.count};
    return simplex_column(price->table, cost);
}

static void add_part(Price *price, int at, int span)
{
    *arena_push(price->arena, &price->parts) = (ColumnPart){at, span};
    price->notes.at[price->notes.count - 1].count++;
}

static void drop_column(Price *price)
{
    simplex_drop_last(price->table);
    price->parts.count = price->notes.at[--price->notes.count].first;
}

Way price_way(const Price *price, int column, bool above)
{
    const Note *note = &price->notes.at[column];
    if (above)
        return (Way){price->parts.at + note->first + note->lower, note->count - note->lower};
    return (Way){price->parts.at + note->first, note->lower};
}

int price_size(const Price *price, const Block *block, const Way *way, int i)
{
    Length length = ways_place(price->demand, &block->run, way->parts[i].at) -
                    ways_place(price->demand, &block->run, way_from(way, i));
    return worth_size(price->sizes, length + price->demand->kerf);
}

int price_put_ways(Price *price, int index, bool pair)
{
    const Block *block = &price->blocks[index];
    int column = begin_column(price, 0, COLUMN_WAYS, index);
    for (int above = 0; above <= (pair ? 1 : 0); above++) {
        int count;
        const int *places = ways_found(price->ways, above != 0, &count);
        for (int i = 0; i < count; i++)
            add_part(price, places[i], 0);
        if (above == 0)
            price->notes.at[column].lower = count;
        Way way = price_way(price, column, above != 0);
        for (int i = 0; i < count; i++)
            simplex_entry(price->table, price_size(price, block, &way, i), -1);
    }
    int row = pair ? block->pair_row : block->single_row;
    if (row >= 0)
        simplex_entry(price->table, row, 1);
    return column;
}

/* The best that can be cut from a span of this length; `slack` is what it may be longer. */
static int64_t best_of(const Price *price, Length length, Length slack)
{
    int64_t capacity = (length + slack + price->demand->kerf) / price->sizes->width;
    return price->best[capacity < price->sizes->cell_count ? capacity : price->sizes->cell_count - 1];
}

static int64_t best_of_kind(const Price *price, int kind)
{
    const Kind *board = &price->pile->kinds[kind];
    int64_t sum = 0;
    for (int i = 0; i < board->span_count; i++)
        sum += best_of(price, price->pile->slots[board->slot_first + i].left, board->slack);
    return sum;
}

/* Puts what is best cut from a board of the kind into the table. */
static int put_pattern(Price *price, int kind)
{
    const Kind *board = &price->pile->kinds[kind];
    const int64_t *best = price->best;
    int column = begin_column(price, board->length, COLUMN_PATTERN, kind);
    for (int i = 0; i < board->span_count; i++) {
        int64_t left = price->pile->slots[board->slot_first + i].left;
        int capacity = (int)((left + price->demand->kerf) / price->sizes->width);
        while (best[capacity] > 0) {
            while (best[capacity - 1] == best[capacity])
                capacity--;
            int size = 0;
            for (;; size++) {
                int cell = price->sizes->cells[size];
                if (cell > 0 && cell <= capacity && price->prices[size] + best[capacity - cell] == best[capacity])
                    break;
            }
            simplex_entry(price->table, size, 1);
            add_part(price, size, i);
            capacity -= price->sizes->cells[size];
        }
    }
    simplex_entry(price->table, price->rows - price->band_count + price->band_of_kind[kind], 1);
    return column;
}

/* ---- the bound ---- */

/* What the relaxation costs at least by the prices tried, for which `best` was found (J. E. Beasley, in: C. R. Reeves
 * (ed.), Modern Heuristic Techniques, 1993, on Lagrangian relaxation). */
static Length bound_now(const Price *price)
{
    Length bound = 0;
    for (int i = 0; i < price->block_count; i++) {
        const Block *block = &price->blocks[i];
        if (block->pairs > 0)
            bound += block->pairs * ways_two(price->ways, &block->run, price->prices, NULL, NULL);
        if (block->singles > 0)
            bound += block->singles * single_way(price, block);
    }
    for (int i = 0; i < price->pile->kind_count; i++) {
        int64_t over = best_of_kind(price, i) - price->pile->kinds[i].length;
        if (over > 0)
            bound -= over * price->pile->kinds[i].count;
    }
    for (int i = 0; i < price->pile->board_count; i++) {
        const PileBoard *board = &price->pile->boards[i];
        if (board->kind >= 0)
            continue;
        bound += board->length;
        for (int j = board->span_first; j < board->span_first + board->span_count; j++)
            bound -= best_of(price, price->pile->spans[j].to - price->pile->spans[j].from, price->demand->kerf);
    }
    return bound;
}

/* The prices of the table, or, `smooth`, a mean of them and the best so far, which swings less (P. Wentges,
 * International Transactions in Operational Research 4, 1997). */
static void read_prices(Price *price, bool smooth)
{
    const int64_t *rows = simplex_prices(price->table);
    int sizes = price->sizes->count;
    for (int i = 0; i < sizes; i++) {
        int64_t now = rows[i] > 0 && price->sizes->cells[i] > 0 ? rows[i] : 0;
        price->prices[i] = smooth ? (3 * price->kept[i] + now) / 4 : now;
    }
    worth_best(price->sizes, price->prices, price->best);
}

void price_read(Price *price)
{
    read_prices(price, false);
}

static void better_bound(Price *price)
{
    Length bound = bound_now(price);
    if (bound <= price->bound)
        return;
    price->bound = bound;
    memcpy(price->kept, price->prices, (size_t)price->sizes->count * sizeof *price->kept);
}

/* ---- begin ---- */

/* What a piece costs where nothing else is cut from a board: its price is no more, as long as boards are not short. */
static int64_t lacking_cost(const Price *price, int size)
{
    int64_t least = INT64_MAX;
    int cell = price->sizes->cells[size];
    for (int i = 0; i < price->pile->kind_count; i++) {
        const Kind *kind = &price->pile->kinds[i];
        int64_t fit = 0;
        for (int j = 0; j < kind->span_count && cell > 0; j++)
            fit += (price->pile->slots[kind->slot_first + j].left + price->demand->kerf) / price->sizes->width / cell;
        if (fit > 0 && kind->length / fit < least)
            least = kind->length / fit;
    }
    return least == INT64_MAX ? price->sizes->width * (cell + 1) : least + least / 64 + 1;
}

/* Every piece lacking, every run by its cheapest way, every board spare. The columns of what lacks are the even ones of
 * the first. False where the table cannot hold the numbers. */
static bool begin_table(Price *price)
{
    Simplex *table = price->table;
    int sizes = price->sizes->count, row = 0;
    for (int i = 0; i < sizes; i++, row++) {
        int lacking = begin_column(price, lacking_cost(price, i), COLUMN_SLACK, i);
        simplex_entry(table, row, 1);
        simplex_basic(table, row, lacking);
        simplex_amount(table, row, LITTLE * (1 + (i * 37) % 64));
        begin_column(price, 0, COLUMN_SLACK, i);
        simplex_entry(table, row, -1);
    }
    for (int i = 0; i < price->block_count; i++) {
        const Block *block = &price->blocks[i];
        if (block->pairs > 0) {
            ways_two(price->ways, &block->run, price->prices, NULL, NULL);
            simplex_basic(table, row, price_put_ways(price, i, true));
            simplex_amount(table, row++, block->pairs * SIMPLEX_ONE);
        }
        if (block->singles > 0) {
            single_way(price, block);
            simplex_basic(table, row, price_put_ways(price, i, false));
            simplex_amount(table, row++, block->singles * SIMPLEX_ONE);
        }
    }
    for (int i = 0; i < price->band_count; i++, row++) {
        simplex_basic(table, row, begin_column(price, 0, COLUMN_SLACK, i));
        simplex_entry(table, row, 1);
        simplex_amount(table, row, price->band_boards[i] * SIMPLEX_ONE + LITTLE * (1 + (i * 53) % 64));
    }
    return simplex_ready(table);
}

Price *price_new(Arena *arena, const Demand *demand, const Pile *pile)
{
    Price *price = arena_one(arena, Price);
    price->arena = arena;
    price->demand = demand;
    price->pile = pile;
    price->bound = -1;
    if (pile->kind_count == 0 || demand->run_count == 0)
        return NULL;
    find_blocks(price);
    find_bands(price);
    Run *runs = arena_array(arena, Run, price->block_count);
    int studs = 0;
    for (int i = 0; i < price->block_count; i++) {
        runs[i] = price->blocks[i].run;
        studs = runs[i].stud_count > studs ? runs[i].stud_count : studs;
    }
    for (int most = CELLS_MOST; price->sizes == NULL || price->sizes->count > SIZES_MOST; most /= 2)
        price->sizes = worth_sizes(arena, demand, runs, price->block_count, pile->longest, most);
    if (price->sizes->count + 2 * price->block_count + price->band_count > ROWS_MOST)
        return NULL;
    price->ways = ways_new(arena, demand, price->sizes, pile->longest, studs);
    price->prices = arena_array(arena, int64_t, price->sizes->count);
    price->kept = arena_array(arena, int64_t, price->sizes->count);
    price->best = arena_array(arena, int64_t, price->sizes->cell_count);
    for (int i = 0; i < price->sizes->count; i++)
        price->prices[i] = price->sizes->cells[i] * price->sizes->width;
    if (!find_pairs(price))
        return NULL;
    price->table = simplex_new(arena, price->rows);
    price->turns_most = TURNS_A_ROW * price->rows + 200;
    return begin_table(price) ? price : NULL;
}

/* ---- steps ---- */

static void keep_if_better(Price *price, int column, int64_t least)
{
    if (simplex_gain(price->table, column) <= least)
        drop_column(price);
}

bool price_add_columns(Price *price, int64_t least)
{
    int before = simplex_columns(price->table);
    for (int i = 0; i < price->pile->kind_count && price->best[price->sizes->cell_count - 1] > 0; i++)
        keep_if_better(price, put_pattern(price, i), least);
    for (int i = 0; i < price->block_count; i++) {
        const Block *block = &price->blocks[i];
        if (block->pairs > 0) {
            ways_two(price->ways, &block->run, price->prices, NULL, NULL);
            keep_if_better(price, price_put_ways(price, i, true), least);
        }
        if (block->singles > 0) {
            single_way(price, block);
            keep_if_better(price, price_put_ways(price, i, false), least);
        }
    }
    return simplex_columns(price->table) > before;
}

static bool improve(Price *price, bool smooth)
{
    read_prices(price, smooth);
    better_bound(price);
    return price_add_columns(price, GAIN_LEAST);
}

void price_raise(Price *price)
{
    price->raised++;
    for (int i = 0; i < price->sizes->count; i++) {
        int64_t cost = lacking_cost(price, i);
        for (int j = 0; j < price->raised; j++)
            cost *= RAISED_BY;
        simplex_set_cost(price->table, 2 * i, cost);
    }
}

/* Makes what lacks dearer; false where nothing does, or often enough. */
static bool raise_costs(Price *price)
{
    bool lacks = false;
    for (int i = 0; i < price->sizes->count; i++)
        lacks = lacks || simplex_value(price->table, 2 * i) > SIMPLEX_ONE / 16;
    if (!lacks || price->raised >= RAISED_MOST)
        return false;
    price_raise(price);
    return true;
}

int64_t price_turn_work(const Price *price)
{
    return (int64_t)price->rows * price->rows / 32;
}

int64_t price_column_work(const Price *price)
{
    return (int64_t)price->sizes->count * price->sizes->cell_count / 32;
}

bool price_once(Price *price, int64_t *work)
{
    *work += price_turn_work(price);
    bool turned = price->turns++ < price->turns_most && simplex_turn(price->table, GAIN_LEAST);
    if (turned && ++price->since < price->rows)
        return false;
    price->since = 0;
    *work += price_column_work(price);
    if (price->turns >= price->turns_most || simplex_worn(price->table)) {
        read_prices(price, true);
        better_bound(price);
        return true;
    }
    bool close = price->bound >= 0 && simplex_cost(price->table) - price->bound < price->bound / CLOSE;
    if (!close && ((price->bound >= 0 && improve(price, true)) || improve(price, false)))
        return false;
    return (close || !turned) && !raise_costs(price);
}

const Sizes *price_sizes(const Price *price)
{
    return price->sizes;
}

const int64_t *price_prices(const Price *price)
{
    return price->kept;
}

Length price_bound(const Price *price)
{
    return price->bound > 0 ? price->bound : 0;
}
