/*
 * The table of the relaxation:
 *
 *                  ways      patterns  lacking   spare   over
 *     sizes     |  -count     count       1       -1              =  a little         price of a piece
 *     blocks    |    1                                            =  runs of it       price of a run
 *     bands     |               1                  1              =  boards of it     rent of a board (negative)
 *     studs     |  0 or 1                          1      -1      =  half the block   rent of a joint (negative)
 *
 * A block is a stack of runs with the same studs inside, each on the row above the one before; of two rows that follow
 * on each other only one may have a joint on a stud, so of `count` runs at most half, rounded up, have. All runs of a
 * block are taken as long as its shortest, which only makes the bound less. `lacking` is a piece from nowhere, `over` a
 * joint too many, both dear.
 *
 * Invariant: `bound` is proved by the prices and rents in `kept`, whatever the table says.
 */
#include "fill/price.h"

#include "base/wide.h"
#include "fill/simplex.h"

#include <string.h>

#define LITTLE (SIMPLEX_ONE / 65536) /* asked for beyond what is needed, up to 64 times, so that turns do not tie */
#define GAIN_LEAST (LENGTH_MM / 20)  /* a column must be better by so much */

enum {
    SIZES_MOST = 220,
    ROWS_MOST = 420,
    CELLS_MOST = 2048,
    BANDS_MOST = 16,
    RAISED_MOST = 3,
    RAISED_BY = 3,
    CLOSE = 4096,
    TURNS_A_ROW = 10
};

typedef struct Block {
    Run run; /* as short as the shortest of it on either side */
    int count;
    int stud_first; /* its first stud's rent, -1 where the rule does not bind */
} Block;

struct Price {
    Arena *arena;
    const Demand *demand;
    const Pile *pile;
    Sizes *sizes;
    Block *blocks;
    int block_count;
    int *band_of_kind; /* kinds of board, which rise by length, in bands of about as many kinds */
    int *band_boards;
    int band_count;
    int *stud_most; /* joints that each stud of each block may have */
    int stud_count;
    Simplex *table;
    int turns, turns_most;
    int raised; /* how often what lacks was made dearer */

    int64_t *prices; /* tried: of sizes, then rents of studs; none below 0 */
    int64_t *kept;   /* those of the best bound so far */
    Length bound;    /* -1 before the first */
    int64_t *best;   /* worth of each capacity at the prices tried */
    int64_t *reached;
    int *from; /* the way that was looked for last */
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

static Length place(const Price *price, const Run *run, int index)
{
    if (index == 0)
        return run->left;
    return index == run->stud_count + 1 ? run->right
                                        : demand_studs(price->demand, run)->at[run->stud_first + index - 1];
}

/* The least price of a run of the block from end to end; -1 where there is no way. `from` gets the way back. */
static int64_t cheapest_way(const Price *price, const Block *block)
{
    const Run *run = &block->run;
    const int64_t *rents = price->prices + price->sizes->count;
    int last = run->stud_count + 1;
    price->reached[0] = 0;
    for (int j = 1; j <= last; j++) {
        int64_t least = -1;
        for (int i = j - 1; i >= 0; i--) {
            Length length = place(price, run, j) - place(price, run, i);
            if (length > price->pile->longest)
                break;
            if (length < run->shortest || price->reached[i] < 0)
                continue;
            int size = price->sizes->index[(length + price->demand->kerf) / price->sizes->width];
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

/* Puts the way that was looked for last into the table. */
static int put_way(Price *price, int index)
{
    const Block *block = &price->blocks[index];
    const Run *run = &block->run;
    int studs = price->sizes->count + price->block_count + price->band_count;
    int column = simplex_column(price->table, 0);
    for (int j = run->stud_count + 1; j > 0; j = price->from[j]) {
        Length length = place(price, run, j) - place(price, run, price->from[j]);
        simplex_entry(price->table, price->sizes->index[(length + price->demand->kerf) / price->sizes->width], -1);
        if (price->from[j] > 0 && block->stud_first >= 0)
            simplex_entry(price->table, studs + block->stud_first + price->from[j] - 1, 1);
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
    int column = simplex_column(price->table, board->length);
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
            capacity -= price->sizes->cells[size];
        }
    }
    simplex_entry(price->table, price->sizes->count + price->block_count + price->band_of_kind[kind], 1);
    return column;
}

/* ---- the bound ---- */

/* What the relaxation costs at least by the prices tried, for which `best` was found (J. E. Beasley, in: C. R. Reeves
 * (ed.), Modern Heuristic Techniques, 1993, on Lagrangian relaxation). */
static Length bound_now(const Price *price)
{
    Length bound = 0;
    for (int i = 0; i < price->stud_count; i++)
        bound -= price->prices[price->sizes->count + i] * price->stud_most[i];
    for (int i = 0; i < price->block_count; i++)
        bound += price->blocks[i].count * cheapest_way(price, &price->blocks[i]);
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

/* Takes the prices of the table, or, `smooth`, a mean of them and the best so far, which swings less (P. Wentges,
 * International Transactions in Operational Research 4, 1997). */
static void try_prices(Price *price, bool smooth)
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
    Length bound = bound_now(price);
    if (bound <= price->bound)
        return;
    price->bound = bound;
    memcpy(price->kept, price->prices, (size_t)(sizes + price->stud_count) * sizeof *price->kept);
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
        int lacking = simplex_column(table, lacking_cost(price, i));
        simplex_entry(table, row, 1);
        simplex_basic(table, row, lacking);
        simplex_amount(table, row, LITTLE * (1 + (i * 37) % 64));
        simplex_column(table, 0);
        simplex_entry(table, row, -1);
    }
    int64_t *joints = arena_array(price->arena, int64_t, price->stud_count + 1);
    for (int i = 0; i < price->block_count; i++, row++) {
        const Block *block = &price->blocks[i];
        cheapest_way(price, block);
        simplex_basic(table, row, put_way(price, i));
        simplex_amount(table, row, block->count * SIMPLEX_ONE);
        for (int j = price->from[block->run.stud_count + 1]; j > 0 && block->stud_first >= 0; j = price->from[j])
            joints[block->stud_first + j - 1] += block->count;
    }
    for (int i = 0; i < price->band_count; i++, row++) {
        simplex_basic(table, row, simplex_column(table, 0));
        simplex_entry(table, row, 1);
        simplex_amount(table, row, price->band_boards[i] * SIMPLEX_ONE);
    }
    for (int i = 0; i < price->stud_count; i++, row++) {
        int spare = simplex_column(table, 0);
        simplex_entry(table, row, 1);
        int over = simplex_column(table, 2 * price->pile->longest);
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
        if (cheapest_way(price, &price->blocks[i]) < 0)
            return NULL;
    price->table = simplex_new(arena, rows);
    price->turns_most = TURNS_A_ROW * rows + 200;
    begin_table(price);
    return price;
}

/* ---- steps ---- */

/* Puts every way and pattern into the table that betters it; false where none does. */
static bool add_columns(Price *price, bool smooth)
{
    int before = simplex_columns(price->table);
    try_prices(price, smooth);
    for (int i = 0; i < price->pile->kind_count && price->best[price->sizes->cell_count - 1] > 0; i++)
        if (simplex_gain(price->table, put_pattern(price, i)) <= GAIN_LEAST)
            simplex_drop_last(price->table);
    for (int i = 0; i < price->block_count; i++) {
        cheapest_way(price, &price->blocks[i]);
        if (simplex_gain(price->table, put_way(price, i)) <= GAIN_LEAST)
            simplex_drop_last(price->table);
    }
    return simplex_columns(price->table) > before;
}

/* Makes what lacks dearer; false where nothing does, or often enough. */
static bool raise_costs(Price *price)
{
    bool lacks = false;
    for (int i = 0; i < price->sizes->count; i++)
        lacks = lacks || simplex_value(price->table, 2 * i) > SIMPLEX_ONE / 16;
    if (!lacks || price->raised++ >= RAISED_MOST)
        return false;
    for (int i = 0; i < price->sizes->count; i++) {
        int64_t cost = lacking_cost(price, i);
        for (int j = 0; j < price->raised; j++)
            cost *= RAISED_BY;
        simplex_set_cost(price->table, 2 * i, cost);
    }
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
        try_prices(price, true);
        return true;
    }
    bool close = price->bound >= 0 && simplex_cost(price->table) - price->bound < price->bound / CLOSE;
    if (!close && ((price->bound >= 0 && add_columns(price, true)) || add_columns(price, false)))
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
