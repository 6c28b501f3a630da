/*
 * The table is drawn in price_work.h.
 *
 * Invariants: `bound` is proved by the prices and rents in `kept`, whatever the table says; there is a note for each
 * column of the table.
 */
#include "fill/price_work.h"

#include "base/wide.h"

#include <string.h>

#define GAIN_LEAST (LENGTH_MM / 20)  /* a column must be better by so much */
#define LITTLE (SIMPLEX_ONE / 65536) /* asked for beyond what is needed, up to 64 times, so that turns do not tie */

enum {
    SIZES_MOST = 220,
    ROWS_MOST = 420,
    CELLS_MOST = 2048,
    BANDS_MOST = 120,
    RAISED_MOST = 3,
    RAISED_BY = 3,
    CLOSE = 4096,
    TURNS_A_ROW = 10
};

/* ---- blocks, bands ---- */

static void widen(Block *block, const Run *run)
{
    Length more = 0; /* by how much a piece of the block may be longer than it is taken */
    if (run->left > block->run.left) {
        more += run->left - block->run.left;
        block->run.left = run->left;
    } else {
        Length less = block->run.left - run->left;
        more += less;
    }
    if (run->right < block->run.right) {
        more += block->run.right - run->right;
        block->run.right = run->right;
    } else {
        more += run->right - block->run.right;
    }
    Length shortest = run->shortest > more ? run->shortest - more : 0;
    if (shortest < block->run.shortest)
        block->run.shortest = shortest;
    block->count++;
}

/* Ends of a block's runs further apart than this make another block: it is taken shorter by as much. */
static bool alike(const Block *block, const Run *run)
{
    Length left = run->left - block->run.left, right = run->right - block->run.right;
    Length most = LENGTH_INCH / 2;
    return run->stud_first == block->run.stud_first && run->stud_count == block->run.stud_count && left < most &&
           left > -most && right < most && right > -most;
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
        if (block_of[i] >= 0) {
            widen(&price->blocks[block_of[i]], run);
            continue;
        }
        block_of[i] = price->block_count;
        price->blocks[price->block_count++] = (Block){.run = *run, .count = 1, .stud_first = -1};
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

/* A row for each stud of each block, as long as there is room for `most`. */
static void find_studs(Price *price, int most)
{
    price->stud_most = arena_array(price->arena, int, most > 0 ? most : 1);
    for (int i = 0; i < price->block_count && price->demand->stagger > 0; i++) {
        Block *block = &price->blocks[i];
        if (block->count < 2 || price->stud_count + block->run.stud_count > most)
            continue;
        block->stud_first = price->stud_count;
        for (int j = 0; j < block->run.stud_count; j++)
            price->stud_most[price->stud_count++] = (block->count + 1) / 2;
    }
}

/* ---- ways and patterns at the prices tried ---- */

Length price_place(const Demand *demand, const Run *run, int place)
{
    if (place == 0)
        return run->left;
    return place == run->stud_count + 1 ? run->right : demand_studs(demand, run)->at[run->stud_first + place - 1];
}

int price_size(const Price *price, Length length)
{
    int64_t cell = (length + price->demand->kerf) / price->sizes->width;
    return cell < price->sizes->cell_count ? price->sizes->index[cell] : -1;
}

int64_t price_cheapest_way(Price *price, const Block *block, const bool *closed)
{
    const Run *run = &block->run;
    const int64_t *rents = price->prices + price->sizes->count;
    int last = run->stud_count + 1;
    price->reached[0] = 0;
    for (int j = 1; j <= last; j++) {
        int64_t least = -1;
        for (int i = j - 1; i >= 0 && (closed == NULL || !closed[j]); i--) {
            Length length = price_place(price->demand, run, j) - price_place(price->demand, run, i);
            if (length > price->pile->longest)
                break;
            if (length < run->shortest || price->reached[i] < 0)
                continue;
            int size = price_size(price, length);
            int64_t cost = price->reached[i] + price->prices[size];
            if (least < 0 || cost < least) {
                least = cost;
                price->from[j] = i;
            }
        }
        bool rented = least >= 0 && j < last && block->stud_first >= 0;
        price->reached[j] = least + (rented ? rents[block->stud_first + j - 1] : 0);
    }
    return price->reached[last];
}

/* ---- columns ---- */

static int begin_column(Price *price, int64_t cost, ColumnKind kind, int of)
{
    *arena_push(price->arena, &price->notes) = (Note){kind, of, price->parts.count, 0};
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

int price_put_way(Price *price, int index)
{
    const Block *block = &price->blocks[index];
    const Run *run = &block->run;
    int studs = price->sizes->count + price->block_count + price->band_count;
    int column = begin_column(price, 0, COLUMN_WAY, index);
    for (int j = run->stud_count + 1; j > 0; j = price->from[j]) {
        int from = price->from[j];
        Length length = price_place(price->demand, run, j) - price_place(price->demand, run, from);
        simplex_entry(price->table, price_size(price, length), -1);
        add_part(price, j, 0);
        if (from > 0 && block->stud_first >= 0)
            simplex_entry(price->table, studs + block->stud_first + from - 1, 1);
    }
    simplex_entry(price->table, price->sizes->count + index, 1);
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
    simplex_entry(price->table, price->sizes->count + price->block_count + price->band_of_kind[kind], 1);
    return column;
}

/* ---- the bound ---- */

/* What the relaxation costs at least by the prices tried, for which `best` was found (J. E. Beasley, in: C. R. Reeves
 * (ed.), Modern Heuristic Techniques, 1993, on Lagrangian relaxation). */
static Length bound_now(Price *price)
{
    Length bound = 0;
    for (int i = 0; i < price->stud_count; i++)
        bound -= price->prices[price->sizes->count + i] * price->stud_most[i];
    for (int i = 0; i < price->block_count; i++)
        bound += price->blocks[i].count * price_cheapest_way(price, &price->blocks[i], NULL);
    for (int i = 0; i < price->pile->kind_count; i++) {
        int64_t over = best_of_kind(price, i) - price->pile->kinds[i].length;
        if (over > 0)
            bound -= over * price->pile->kinds[i].count;
    }
    for (int i = 0; i < price->pile->board_count; i++) {
        const PileBoard *board = &price->pile->boards[i];
        if (board->kind >= 0)
            continue;
        bound += wall_board(price->pile->wall, i + 1)->length;
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
    const int64_t *rents = rows + sizes + price->block_count + price->band_count;
    for (int i = 0; i < sizes + price->stud_count; i++) {
        int64_t now = i < sizes ? rows[i] : -rents[i - sizes];
        if (now < 0 || (i < sizes && price->sizes->cells[i] == 0))
            now = 0;
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
    memcpy(price->kept, price->prices, (size_t)(price->sizes->count + price->stud_count) * sizeof *price->kept);
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

/* Every piece lacking, every run by its shortest way, every board and joint spare or over. The columns of what lacks
 * are the even ones of the first. */
static void begin_table(Price *price)
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
    int64_t *joints = arena_array(price->arena, int64_t, price->stud_count + 1);
    for (int i = 0; i < price->block_count; i++, row++) {
        const Block *block = &price->blocks[i];
        price_cheapest_way(price, block, NULL);
        simplex_basic(table, row, price_put_way(price, i));
        simplex_amount(table, row, block->count * SIMPLEX_ONE);
        for (int j = price->from[block->run.stud_count + 1]; j > 0 && block->stud_first >= 0; j = price->from[j])
            joints[block->stud_first + j - 1] += block->count;
    }
    for (int i = 0; i < price->band_count; i++, row++) {
        simplex_basic(table, row, begin_column(price, 0, COLUMN_SLACK, i));
        simplex_entry(table, row, 1);
        simplex_amount(table, row, price->band_boards[i] * SIMPLEX_ONE);
    }
    for (int i = 0; i < price->stud_count; i++, row++) {
        int spare = begin_column(price, 0, COLUMN_SLACK, i);
        simplex_entry(table, row, 1);
        int over = begin_column(price, 2 * price->pile->longest, COLUMN_SLACK, i);
        simplex_entry(table, row, -1);
        simplex_basic(table, row, joints[i] > price->stud_most[i] ? over : spare);
        simplex_amount(table, row, price->stud_most[i] * SIMPLEX_ONE + LITTLE * (1 + (i * 29) % 64));
    }
    simplex_ready(table);
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
    int places = 0;
    for (int i = 0; i < price->block_count; i++) {
        runs[i] = price->blocks[i].run;
        places = runs[i].stud_count > places ? runs[i].stud_count : places;
    }
    for (int most = CELLS_MOST; price->sizes == NULL || price->sizes->count > SIZES_MOST; most /= 2)
        price->sizes = worth_sizes(arena, demand, runs, price->block_count, pile->longest, most);
    int rows = price->sizes->count + price->block_count + price->band_count;
    if (rows > ROWS_MOST)
        return NULL;
    find_studs(price, ROWS_MOST - rows);
    rows += price->stud_count;
    price->reached = arena_array(arena, int64_t, places + 2);
    price->from = arena_array(arena, int, places + 2);
    price->prices = arena_array(arena, int64_t, price->sizes->count + price->stud_count);
    price->kept = arena_array(arena, int64_t, price->sizes->count + price->stud_count);
    price->best = arena_array(arena, int64_t, price->sizes->cell_count);
    for (int i = 0; i < price->sizes->count; i++)
        price->prices[i] = price->sizes->cells[i] * price->sizes->width;
    for (int i = 0; i < price->block_count; i++)
        if (price_cheapest_way(price, &price->blocks[i], NULL) < 0)
            return NULL;
    price->table = simplex_new(arena, rows);
    price->turns_most = TURNS_A_ROW * rows + 200;
    begin_table(price);
    return price;
}

/* ---- steps ---- */

bool price_add_columns(Price *price, int64_t least)
{
    int before = simplex_columns(price->table);
    for (int i = 0; i < price->pile->kind_count && price->best[price->sizes->cell_count - 1] > 0; i++)
        if (simplex_gain(price->table, put_pattern(price, i)) <= least)
            drop_column(price);
    for (int i = 0; i < price->block_count; i++) {
        price_cheapest_way(price, &price->blocks[i], NULL);
        if (simplex_gain(price->table, price_put_way(price, i)) <= least)
            drop_column(price);
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

bool price_once(Price *price, int64_t *work)
{
    int rows = price->sizes->count + price->block_count + price->band_count + price->stud_count;
    *work += (int64_t)rows * rows / 32;
    if (price->turns++ < price->turns_most && simplex_turn(price->table, GAIN_LEAST))
        return false;
    *work += (int64_t)price->sizes->count * price->sizes->cell_count / 32;
    if (price->turns >= price->turns_most || simplex_worn(price->table)) {
        read_prices(price, true);
        better_bound(price);
        return true;
    }
    bool close = price->bound >= 0 && simplex_cost(price->table) - price->bound < price->bound / CLOSE;
    if (!close && ((price->bound >= 0 && improve(price, true)) || improve(price, false)))
        return false;
    return !raise_costs(price);
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
