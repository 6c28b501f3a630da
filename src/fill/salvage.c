#include "fill/salvage.h"

#include "base/wide.h"

enum { SALVAGE_CELLS = 4096 };

static Length cell_width(const Demand *demand, Length longest, int most)
{
    Length width = demand->round;
    while ((longest + demand->kerf) / width >= most - 1)
        width *= 2;
    return width;
}

static void mark(const Demand *demand, const Run *run, Length from, Length to, Length longest, Sizes *sizes)
{
    Length length = demand_length(run, from, to);
    if (!demand_is_short(run, from, to) && length <= longest)
        sizes->index[(length + demand->kerf) / sizes->width] = 1;
}

/* Marks the sizes of pieces from stud to stud. Runs of one face share most of their studs: `marked` holds of each stud
 * of the face how far to the right that is done. */
static void mark_studs(const Demand *demand, const Run *run, Length longest, int *marked, Sizes *sizes)
{
    const LengthList *studs = run->studs;
    int end = run->stud_first + run->stud_count;
    for (int i = run->stud_first; i < end; i++) {
        for (int j = marked[i] > i ? marked[i] : i + 1; j < end && studs->at[j] - studs->at[i] <= longest; j++)
            mark(demand, run, studs->at[i], studs->at[j], longest, sizes);
        marked[i] = end > marked[i] ? end : marked[i];
    }
}

/* Marks the sizes of pieces that begin or end where the run does. */
static void mark_ends(const Demand *demand, const Run *run, Length longest, Sizes *sizes)
{
    const Length *studs = run->studs->at + run->stud_first;
    if (run->right - run->left <= longest)
        mark(demand, run, run->left, run->right, longest, sizes);
    for (int i = 0; i < run->stud_count && studs[i] - run->left <= longest; i++)
        mark(demand, run, run->left, studs[i], longest, sizes);
    for (int i = run->stud_count - 1; i >= 0 && run->right - studs[i] <= longest; i--)
        mark(demand, run, studs[i], run->right, longest, sizes);
}

static void mark_runs(const Demand *demand, const Run *runs, int run_count, Length longest, Sizes *sizes)
{
    Arena *arena = arena_new();
    int *marked = NULL;
    for (int i = 0; i < run_count; i++) {
        if (i == 0 || runs[i].face != runs[i - 1].face || runs[i].shortest != runs[i - 1].shortest) {
            arena_reset(arena);
            marked = arena_array(arena, int, runs[i].studs->count);
        }
        mark_studs(demand, &runs[i], longest, marked, sizes);
        mark_ends(demand, &runs[i], longest, sizes);
    }
    arena_free(arena);
}

Sizes *sizes_find(Arena *arena, const Demand *demand, const Run *runs, int run_count, Length longest, int most)
{
    Sizes *sizes = arena_one(arena, Sizes);
    sizes->width = cell_width(demand, longest, most);
    sizes->cell_count = (int)((longest + demand->kerf) / sizes->width) + 1;
    sizes->index = arena_array(arena, int, sizes->cell_count);
    mark_runs(demand, runs, run_count, longest, sizes);
    sizes->cells = arena_array(arena, int, sizes->cell_count);
    for (int i = 0; i < sizes->cell_count; i++) {
        if (sizes->index[i] != 0)
            sizes->cells[sizes->count++] = i;
        sizes->index[i] = sizes->count - 1;
    }
    return sizes;
}

void salvage_best(const Sizes *sizes, const int64_t *prices, int64_t *best)
{
    for (int capacity = 0; capacity < sizes->cell_count; capacity++) {
        int64_t most = capacity > 0 ? best[capacity - 1] : 0;
        for (int i = 0; i < sizes->count && sizes->cells[i] <= capacity; i++) {
            if (sizes->cells[i] == 0)
                continue;
            int64_t value = prices[i] + best[capacity - sizes->cells[i]];
            if (value > most)
                most = value;
        }
        best[capacity] = most;
    }
}

/* Scraps below `least`: a quarter of the longest run that lies wholly below it and fits, since few of them are asked
 * for. */
static void price_scraps(const Demand *demand, Salvage *salvage)
{
    for (int i = 0; i < demand->run_count; i++) {
        Length length = demand->runs[i].right - demand->runs[i].left;
        if (length >= demand->least)
            continue;
        Length cell = length_round_up(length, salvage->width) / salvage->width;
        if (cell < salvage->count && salvage->at[cell] < length / 4)
            salvage->at[cell] = length / 4;
    }
    for (int i = 1; i < salvage->count && i * salvage->width < demand->least; i++)
        if (salvage->at[i] < salvage->at[i - 1])
            salvage->at[i] = salvage->at[i - 1];
}

Salvage *salvage_table(Arena *arena, const Demand *demand, Length longest, const Sizes *sizes, const int64_t *best,
                       int keep)
{
    Salvage *salvage = arena_one(arena, Salvage);
    salvage->width = sizes != NULL ? sizes->width : cell_width(demand, longest, SALVAGE_CELLS);
    salvage->count = (int)(longest / salvage->width) + 1;
    salvage->at = arena_array(arena, int64_t, salvage->count);
    Length most = longest + demand->kerf > 0 ? longest + demand->kerf : 1;
    for (int i = 0; i < salvage->count; i++) {
        Length left = i * salvage->width;
        int64_t plain = left < demand->least ? 0 : left + demand->kerf;
        if (sizes != NULL)
            plain = best[(left + demand->kerf) / sizes->width];
        salvage->at[i] =
            (int64_t)wide_floor((Wide)plain * (keep * (Wide)most + plain), (SALVAGE_FULL + 1) * (Wide)most);
    }
    if (sizes == NULL)
        price_scraps(demand, salvage);
    return salvage;
}
