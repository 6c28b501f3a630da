/*
 * The table of the relaxation. Columns: ways (one for a kind of run and a way through its studs), patterns (one for a board and the pieces cut from it), `lacking` (a
 * piece from nowhere, dear), spare (a piece or a board too many).
 *
 *                     ways      patterns   lacking   spare
 *     sizes        |  -count     count       1        -1       =  a little    price of a piece
 *     run kinds    |    1                                      =  how many    price of a run
 *     bands        |               1                   1       =  how many    (negative) rent of a board
 *
 * Invariants: `inverse` is the inverse of the basis up to rounding in the 32nd binary place; `value` are the basic columns' values; `dual` are the prices of the rows in nm. A few units in the last
 * place are lost with every pivot: that may cost a better price, never the bound's truth.
 */
#include "fill/price.h"

#include "base/wide.h"

#include <string.h>

#define ONE (INT64_C(1) << 32)
#define WEIGHT_ONE (INT64_C(1) << 16)
#define WEIGHT_MOST (INT64_C(1) << 40)
#define LITTLE (INT64_C(1) << 22)       /* asked for beyond what is needed, so that pivots do not tie */
#define PIVOT_LEAST (INT64_C(1) << 22)  /* no pivot on less */
#define ENTRY_MOST (INT64_C(1) << 52)   /* beyond it the table is worn out */
#define GAIN_LEAST (LENGTH_MM / 20)   /* a column must be better by so much */

enum { SIZES_MOST = 200, ROWS_MOST = 420, CELLS_MOST = 2048, RAISED_MOST = 3, RAISED_BY = 3, CLOSE = 4096, BANDS_MOST = 16 };

typedef struct Entry {
    int row;
    int amount;
} Entry;

typedef struct Column {
    int64_t cost;
    int first, count; /* entries */
    int64_t weight;   /* in 16 binary places: about how long a step along it is, squared */
    bool basic;
} Column;

/* Runs that ask for the same sizes. */
typedef struct RunKind {
    int run; /* one of them */
    int count;
} RunKind;

struct Price {
    Arena *arena;
    const Demand *demand;
    const Pile *pile;
    Sizes *sizes;
    RunKind *run_kinds;
    int run_kind_count;
    int *kind_of_run;
    int *band_of_kind; /* kinds of board, which rise by length, in bands of about as many kinds */
    int *band_boards;  /* how many boards each has */
    int band_count;
    int row_count; /* sizes, run kinds, bands */

    struct {
        Column *at;
        int count, room;
    } columns;
    struct {
        Entry *at;
        int count, room;
    } entries;

    int *basis;       /* column of each row */
    int64_t *inverse; /* row_count x row_count */
    int64_t *value;
    int64_t *dual; /* nm */
    int64_t *ratio; /* of the entering column */

    int64_t *prices; /* duals of the sizes, none below 0 */
    int64_t *best;
    int64_t *reached; /* of one run */
    int *from;
    int64_t *kept; /* the prices of the best bound so far */
    Length bound;  /* at them; -1 before the first */
    int pivots, pivots_most;
    int raised; /* how often what lacks was made dearer */
    bool worn;
};

static int64_t times(int64_t a, int64_t b)
{
    return (int64_t)wide_floor((Wide)a * b, ONE);
}

/* ---- sizes and kinds of runs ---- */

static Length place(const Demand *demand, const Run *run, int index)
{
    if (index == 0)
        return run->left;
    return index == run->stud_count + 1 ? run->right : demand_studs(demand, run)->at[run->stud_first + index - 1];
}

/* The size of a piece between two places of the run, -1 where no board or rule allows one. */
static int size_between(const Price *price, const Run *run, int i, int j)
{
    Length length = place(price->demand, run, j) - place(price->demand, run, i);
    if (length > price->pile->longest || length < run->shortest)
        return -1;
    return price->sizes->index[(length + price->demand->kerf) / price->sizes->width];
}

static bool same_sizes(const Price *price, const Run *one, const Run *other)
{
    if (one->stud_count != other->stud_count)
        return false;
    for (int i = 0; i <= one->stud_count; i++)
        for (int j = i + 1; j <= one->stud_count + 1; j++) {
            int size = size_between(price, one, i, j);
            if (size != size_between(price, other, i, j))
                return false;
            if (size < 0 && place(price->demand, one, j) - place(price->demand, one, i) > price->pile->longest)
                break;
        }
    return true;
}

static void sort_runs(Price *price)
{
    const Demand *demand = price->demand;
    price->run_kinds = arena_array(price->arena, RunKind, demand->run_count);
    price->kind_of_run = arena_array(price->arena, int, demand->run_count);
    for (int i = 0; i < demand->run_count; i++) {
        int kind = 0;
        while (kind < price->run_kind_count &&
               !same_sizes(price, &demand->runs[price->run_kinds[kind].run], &demand->runs[i]))
            kind++;
        if (kind == price->run_kind_count)
            price->run_kinds[price->run_kind_count++] = (RunKind){.run = i};
        price->run_kinds[kind].count++;
        price->kind_of_run[i] = kind;
        if (price->run_kind_count > ROWS_MOST)
            return;
    }
}

static void sort_boards(Price *price)
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

/* ---- ways through a run ---- */

/* The least price of the run from its left end to its right; -1 where there is no way. `from` gets the way back. */
static int64_t cheapest_way(const Price *price, const Run *run)
{
    int last = run->stud_count + 1;
    price->reached[0] = 0;
    for (int j = 1; j <= last; j++) {
        int64_t least = -1;
        for (int i = j - 1; i >= 0; i--) {
            Length length = place(price->demand, run, j) - place(price->demand, run, i);
            if (length > price->pile->longest)
                break;
            int size = size_between(price, run, i, j);
            if (size < 0 || price->reached[i] < 0)
                continue;
            int64_t cost = price->reached[i] + price->prices[size];
            if (least < 0 || cost < least) {
                least = cost;
                price->from[j] = i;
            }
        }
        price->reached[j] = least;
    }
    return price->reached[last];
}

/* ---- columns ---- */

static void begin_column(Price *price, int64_t cost)
{
    *arena_push(price->arena, &price->columns) = (Column){.cost = cost, .weight = WEIGHT_ONE, .first = price->entries.count};
}

static void put_entry(Price *price, int row, int amount)
{
    Column *column = &price->columns.at[price->columns.count - 1];
    for (int i = column->first; i < column->first + column->count; i++)
        if (price->entries.at[i].row == row) {
            price->entries.at[i].amount += amount;
            return;
        }
    *arena_push(price->arena, &price->entries) = (Entry){row, amount};
    column->count++;
}

/* The way that `cheapest_way` found last. */
static void add_way(Price *price, int run_kind)
{
    const Run *run = &price->demand->runs[price->run_kinds[run_kind].run];
    begin_column(price, 0);
    for (int j = run->stud_count + 1; j > 0; j = price->from[j])
        put_entry(price, size_between(price, run, price->from[j], j), -1);
    put_entry(price, price->sizes->count + run_kind, 1);
}

/* The best pattern of a board of the kind by `best`. */
static void add_pattern(Price *price, int kind)
{
    const Kind *board = &price->pile->kinds[kind];
    begin_column(price, board->length);
    for (int i = 0; i < board->span_count; i++) {
        int capacity =
            (int)((price->pile->slots[board->slot_first + i].left + price->demand->kerf) / price->sizes->width);
        while (price->best[capacity] > 0) {
            while (capacity > 0 && price->best[capacity - 1] == price->best[capacity])
                capacity--;
            for (int j = 0; j < price->sizes->count; j++) {
                int cell = price->sizes->cells[j];
                if (cell > 0 && cell <= capacity && price->prices[j] > 0 &&
                    price->prices[j] + price->best[capacity - cell] == price->best[capacity]) {
                    put_entry(price, j, 1);
                    capacity -= cell;
                    break;
                }
            }
        }
    }
    put_entry(price, price->sizes->count + price->run_kind_count + price->band_of_kind[kind], 1);
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

/* ---- the simplex method ---- */

/* The duals of the sizes, or, `smooth`, a mean of them and the best prices so far, which swings less (P. Wentges, International Transactions in Operational Research 4, 1997). */
static void copy_prices(Price *price, bool smooth)
{
    for (int i = 0; i < price->sizes->count; i++) {
        int64_t now = price->dual[i] > 0 && price->sizes->cells[i] > 0 ? price->dual[i] : 0;
        price->prices[i] = smooth ? (3 * price->kept[i] + now) / 4 : now;
    }
}

static int64_t gain(const Price *price, const Column *column)
{
    int64_t sum = -column->cost;
    for (int i = column->first; i < column->first + column->count; i++)
        sum += price->dual[price->entries.at[i].row] * price->entries.at[i].amount;
    return sum;
}

/* Drops the column that was begun last unless it is better than what the table has. */
static void keep_column(Price *price)
{
    const Column *column = &price->columns.at[price->columns.count - 1];
    if (gain(price, column) > GAIN_LEAST)
        return;
    price->entries.count = column->first;
    price->columns.count--;
}

static void find_duals(Price *price)
{
    int rows = price->row_count;
    for (int j = 0; j < rows; j++) {
        Wide sum = 0;
        for (int i = 0; i < rows; i++) {
            int64_t cost = price->columns.at[price->basis[i]].cost;
            if (cost != 0)
                sum += (Wide)cost * price->inverse[(size_t)i * (size_t)rows + (size_t)j];
        }
        price->dual[j] = (int64_t)wide_floor(sum, ONE);
    }
}

/* The row whose basic column leaves, -1 where none does. */
static int leaving_row(const Price *price)
{
    int best = -1;
    for (int i = 0; i < price->row_count; i++) {
        if (price->ratio[i] < PIVOT_LEAST)
            continue;
        int64_t value = price->value[i] > 0 ? price->value[i] : 0;
        if (best < 0) {
            best = i;
            continue;
        }
        int64_t other = price->value[best] > 0 ? price->value[best] : 0;
        Wide one = (Wide)value * price->ratio[best], two = (Wide)other * price->ratio[i];
        if (one < two || (one == two && price->ratio[i] > price->ratio[best]))
            best = i;
    }
    return best;
}

/* Weights for the next choice (P. M. J. Harris, Mathematical Programming 5, 1973: Devex). */
static void weigh_columns(Price *price, int entering, int leaves)
{
    const int64_t *row = price->inverse + (size_t)leaves * (size_t)price->row_count;
    int64_t by = price->ratio[leaves];
    int64_t own = price->columns.at[entering].weight;
    for (int i = 0; i < price->columns.count; i++) {
        Column *column = &price->columns.at[i];
        if (column->basic || i == entering)
            continue;
        int64_t along = 0;
        for (int j = column->first; j < column->first + column->count; j++)
            along += row[price->entries.at[j].row] * price->entries.at[j].amount;
        if (along == 0)
            continue;
        Wide part = wide_floor((Wide)along * WEIGHT_ONE, by);
        Wide weight = wide_floor(wide_floor(part * part, WEIGHT_ONE) * own, WEIGHT_ONE);
        if (weight > column->weight)
            column->weight = weight < WEIGHT_MOST ? (int64_t)weight : WEIGHT_MOST;
    }
    Wide part = wide_floor((Wide)WEIGHT_ONE * ONE, by);
    Wide weight = wide_floor(wide_floor(part * part, WEIGHT_ONE) * own, WEIGHT_ONE);
    Column *left = &price->columns.at[price->basis[leaves]];
    left->weight = weight < WEIGHT_ONE ? WEIGHT_ONE : weight < WEIGHT_MOST ? (int64_t)weight : WEIGHT_MOST;
}

static void pivot(Price *price, int entering)
{
    int rows = price->row_count;
    const Column *column = &price->columns.at[entering];
    for (int i = 0; i < rows; i++) {
        int64_t sum = 0;
        for (int j = column->first; j < column->first + column->count; j++)
            sum += price->inverse[(size_t)i * (size_t)rows + (size_t)price->entries.at[j].row] *
                   price->entries.at[j].amount;
        price->ratio[i] = sum;
    }
    int leaves = leaving_row(price);
    if (leaves < 0) {
        price->worn = true;
        return;
    }
    int64_t *row = price->inverse + (size_t)leaves * (size_t)rows;
    int64_t by = price->ratio[leaves];
    weigh_columns(price, entering, leaves);
    for (int j = 0; j < rows; j++)
        if (row[j] != 0)
            row[j] = (int64_t)wide_floor((Wide)row[j] * ONE, by);
    int64_t step = (int64_t)wide_floor((Wide)price->value[leaves] * ONE, by);
    for (int i = 0; i < rows; i++) {
        if (i == leaves || price->ratio[i] == 0)
            continue;
        int64_t *other = price->inverse + (size_t)i * (size_t)rows;
        for (int j = 0; j < rows; j++) {
            if (row[j] == 0)
                continue;
            other[j] -= times(price->ratio[i], row[j]);
            if (other[j] > ENTRY_MOST || other[j] < -ENTRY_MOST)
                price->worn = true;
        }
        price->value[i] -= times(price->ratio[i], step);
    }
    price->value[leaves] = step;
    price->columns.at[price->basis[leaves]].basic = false;
    price->columns.at[entering].basic = true;
    price->basis[leaves] = entering;
    find_duals(price);
}

/* ---- begin ---- */

static void put_basic(Price *price, int row)
{
    price->basis[row] = price->columns.count - 1;
    price->columns.at[price->columns.count - 1].basic = true;
}

/* What one piece costs where nothing else is cut from a board: at most this is its price, as long as boards are not short. */
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

/* Every piece lacking, every run by one way, every board spare. */
static void begin_table(Price *price)
{
    const Sizes *sizes = price->sizes;
    int rows = price->row_count;
    for (int i = 0; i < rows; i++)
        price->inverse[(size_t)i * (size_t)rows + (size_t)i] = ONE;
    for (int i = 0; i < sizes->count; i++) {
        begin_column(price, lacking_cost(price, i));
        put_entry(price, i, 1);
        put_basic(price, i);
        price->value[i] = LITTLE / 64 * (1 + (i * 37) % 64);
        begin_column(price, 0); /* a piece too many */
        put_entry(price, i, -1);
    }
    for (int i = 0; i < price->run_kind_count; i++) {
        int row = sizes->count + i;
        cheapest_way(price, &price->demand->runs[price->run_kinds[i].run]);
        add_way(price, i);
        put_basic(price, row);
        price->value[row] = price->run_kinds[i].count * ONE;
        const Column *way = &price->columns.at[price->columns.count - 1];
        for (int j = way->first; j < way->first + way->count; j++) {
            const Entry *entry = &price->entries.at[j];
            if (entry->row == row)
                continue;
            price->value[entry->row] -= entry->amount * price->value[row];
            price->inverse[(size_t)entry->row * (size_t)rows + (size_t)row] = -entry->amount * ONE;
        }
    }
    for (int i = 0; i < price->band_count; i++) {
        int row = sizes->count + price->run_kind_count + i;
        begin_column(price, 0);
        put_entry(price, row, 1);
        put_basic(price, row);
        price->value[row] = price->band_boards[i] * ONE;
    }
    find_duals(price);
}

Price *price_new(Arena *arena, const Demand *demand, const Pile *pile)
{
    Price *price = arena_one(arena, Price);
    price->arena = arena;
    price->demand = demand;
    price->pile = pile;
    if (pile->kind_count == 0 || demand->run_count == 0)
        return NULL;
    for (int most = CELLS_MOST;; most /= 2) {
        price->sizes = worth_sizes(arena, demand, pile->longest, most);
        if (price->sizes->count <= SIZES_MOST)
            break;
        if (most <= 64)
            return NULL;
    }
    sort_runs(price);
    sort_boards(price);
    price->row_count = price->sizes->count + price->run_kind_count + price->band_count;
    if (price->row_count > ROWS_MOST)
        return NULL;
    int places = 0;
    for (int i = 0; i < demand->run_count; i++)
        if (demand->runs[i].stud_count > places)
            places = demand->runs[i].stud_count;
    size_t rows = (size_t)price->row_count;
    price->reached = arena_array(arena, int64_t, places + 2);
    price->from = arena_array(arena, int, places + 2);
    price->prices = arena_array(arena, int64_t, price->sizes->count);
    price->best = arena_array(arena, int64_t, price->sizes->cell_count);
    price->kept = arena_array(arena, int64_t, price->sizes->count);
    price->bound = -1;
    for (int i = 0; i < price->sizes->count; i++)
        price->prices[i] = price->sizes->cells[i] * price->sizes->width;
    for (int i = 0; i < price->run_kind_count; i++)
        if (cheapest_way(price, &demand->runs[price->run_kinds[i].run]) < 0)
            return NULL;
    price->basis = arena_array(arena, int, rows);
    price->inverse = arena_array(arena, int64_t, rows * rows);
    price->value = arena_array(arena, int64_t, rows);
    price->dual = arena_array(arena, int64_t, rows);
    price->ratio = arena_array(arena, int64_t, rows);
    price->pivots_most = 8 * price->row_count + 200;
    begin_table(price);
    return price;
}

/* ---- steps ---- */

/* The Lagrangian bound at the prices of now, for which `best` was found. */
static Length bound_now(const Price *price)
{
    Length bound = 0;
    for (int i = 0; i < price->run_kind_count; i++)
        bound += price->run_kinds[i].count * cheapest_way(price, &price->demand->runs[price->run_kinds[i].run]);
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

/* Adds every way and pattern that is better than what the table has, found at prices that are smoothed or not; false where none is. */
static bool add_columns(Price *price, bool smooth, int64_t *work)
{
    int before = price->columns.count;
    copy_prices(price, smooth);
    worth_best(price->sizes, price->prices, price->best);
    *work += (int64_t)price->sizes->count * price->sizes->cell_count / 64;
    Length bound = bound_now(price);
    if (bound > price->bound) {
        price->bound = bound;
        memcpy(price->kept, price->prices, (size_t)price->sizes->count * sizeof *price->kept);
    }
    for (int i = 0; i < price->pile->kind_count; i++) {
        int64_t rent = price->dual[price->sizes->count + price->run_kind_count + price->band_of_kind[i]];
        if (price->best[price->sizes->cell_count - 1] == 0)
            break;
        if (!smooth && best_of_kind(price, i) + rent - price->pile->kinds[i].length <= GAIN_LEAST)
            continue;
        add_pattern(price, i);
        keep_column(price);
    }
    for (int i = 0; i < price->run_kind_count; i++) {
        cheapest_way(price, &price->demand->runs[price->run_kinds[i].run]);
        add_way(price, i);
        keep_column(price);
    }
    *work += price->run_kind_count;
    return price->columns.count > before;
}

/* What the basis costs. */
static Length table_cost(const Price *price)
{
    Wide sum = 0;
    for (int i = 0; i < price->row_count; i++)
        sum += (Wide)price->columns.at[price->basis[i]].cost * price->value[i];
    return (Length)wide_floor(sum, ONE);
}

/* Makes what lacks dearer; false where nothing lacks, or often enough. The columns of what lacks are the first of each pair. */
static bool raise_costs(Price *price)
{
    bool lacks = false;
    for (int i = 0; i < price->row_count; i++)
        if (price->basis[i] < 2 * price->sizes->count && price->basis[i] % 2 == 0 && price->value[i] > ONE / 16)
            lacks = true;
    if (!lacks || price->raised++ >= RAISED_MOST)
        return false;
    for (int i = 0; i < price->sizes->count; i++)
        price->columns.at[2 * i].cost *= RAISED_BY;
    find_duals(price);
    return true;
}

/* The column of most gain for a step of one length, -1 where none gains. */
static int entering_column(const Price *price)
{
    int best = -1;
    int64_t most = 0;
    for (int i = 0; i < price->columns.count; i++) {
        const Column *column = &price->columns.at[i];
        int64_t now = column->basic ? 0 : gain(price, column);
        if (now <= GAIN_LEAST)
            continue;
        if (best < 0 || (Wide)now * now / column->weight > (Wide)most * most / price->columns.at[best].weight) {
            best = i;
            most = now;
        }
    }
    return best;
}

bool price_once(Price *price, int64_t *work)
{
    *work += 1;
    if (price->worn || price->pivots >= price->pivots_most)
        return true;
    int entering = entering_column(price);
    if (entering < 0) {
        bool close = price->bound >= 0 && table_cost(price) - price->bound < price->bound / CLOSE;
        if (!close && ((price->bound >= 0 && add_columns(price, true, work)) || add_columns(price, false, work)))
            return false;
        return !raise_costs(price);
    }
    pivot(price, entering);
    price->pivots++;
    *work += (int64_t)price->row_count * price->row_count / 32;
    return false;
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
    return price->bound;
}
