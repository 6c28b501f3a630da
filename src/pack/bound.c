#include "pack/bound.h"

#include "base/wide.h"
#include "pack/knapsack.h"

enum { FUNCTIONS = 24, COVERED_MOST = 1000000 };

int64_t pack_cover_bound(PackWork *work, int64_t length)
{
    Arena *arena = arena_new();
    KnapsackKind *kinds = arena_array(arena, KnapsackKind, work->kind_count);
    int64_t boards = 0, value = 0;
    bool fits = length > 0;
    for (int k = 0; k < work->kind_count; k++) {
        int64_t most = (length - 1) / work->capacity[k] + 1;
        kinds[k] = (KnapsackKind){work->capacity[k], work->value[k], work->available[k]};
        if (kinds[k].count > most)
            kinds[k].count = (int)most;
        boards += kinds[k].count;
        fits = fits && work->capacity[k] <= LENGTH_MOST && work->value[k] <= LENGTH_MOST;
    }
    if (fits && boards <= COVERED_MOST)
        value = knapsack_cover(arena, kinds, work->kind_count, length, 0)->cost_bound;
    arena_free(arena);
    return value;
}

static int64_t rounded_up(Wide a, Wide b)
{
    return wide_narrow(wide_ceiling(a, b));
}

/* For each `least` up to half a board, pieces below it forgotten: pieces above half a board each take one of their own,
 * those that leave room for `least` take others in.
 *
 *     capacity |-------- long --------|   no room for anything
 *              |---- middle ----|.....|   room for pieces of `least` or more
 *              |- short -|                 up to half a board, at least `least`
 */
static int64_t boards_of_halves(const PackWork *work)
{
    int64_t capacity = work->capacity[0];
    int64_t halves = 0;
    int first_short = 0;
    for (; first_short < work->size_count && 2 * work->size[first_short] > capacity; first_short++)
        halves += work->demand[first_short];
    int64_t best = halves;
    /* As `least` falls, more and more of the halves turn from long to middle: those from `middle` on. */
    int middle = first_short;
    Wide middle_room = 0, short_sum = 0;
    for (int i = first_short; i < work->size_count; i++) {
        short_sum += (Wide)work->demand[i] * work->size[i];
        for (; middle > 0 && work->size[middle - 1] <= capacity - work->size[i]; middle--)
            middle_room += (Wide)work->demand[middle - 1] * (capacity - work->size[middle - 1]);
        int64_t boards = halves;
        if (short_sum > middle_room)
            boards += rounded_up(short_sum - middle_room, capacity);
        best = boards > best ? boards : best;
    }
    return best;
}

/* u(k) maps x of a board to x where (k + 1) x is whole, else to floor((k + 1) x) / k; what fits still fits. */
static int64_t boards_of_function(const PackWork *work, int k)
{
    Wide sum = 0;
    for (int i = 0; i < work->size_count; i++) {
        Wide scaled = (Wide)work->size[i] * (k + 1);
        Wide mapped =
            scaled % work->capacity[0] == 0 ? (Wide)work->size[i] * k : scaled / work->capacity[0] * work->capacity[0];
        sum += mapped * work->demand[i];
    }
    return rounded_up(sum, (Wide)work->capacity[0] * k);
}

void pack_bound(PackWork *work)
{
    pack_raise_bound(work, pack_cover_bound(work, work->total));
    if (work->kind_count != 1)
        return;
    pack_raise_bound(work, boards_of_halves(work) * work->value[0]);
    for (int k = 1; k <= FUNCTIONS; k++)
        pack_raise_bound(work, boards_of_function(work, k) * work->value[0]);
}
