#include "pack/instances.h"

#include <stdlib.h>
#include <string.h>

FILE *instances_open(const char *file)
{
    const char *source = getenv("DATUMROW_SOURCE");
    char path[1024];
    snprintf(path, sizeof path, "%s/tests/pack/instances/%s", source != NULL ? source : ".", file);
    FILE *opened = fopen(path, "r");
    if (opened == NULL) {
        fprintf(stderr, "%s: cannot be opened; set DATUMROW_SOURCE to the top of the source\n", path);
        exit(99);
    }
    return opened;
}

static bool read_number(FILE *file, Length *out)
{
    long long number;
    bool read = fscanf(file, "%lld", &number) == 1;
    if (read)
        *out = number;
    return read;
}

static bool read_several(FILE *file, Arena *arena, Instance *out)
{
    Length stock, items, count = 0;
    bool read = read_number(file, &stock) && read_number(file, &items) && read_number(file, &out->lower) &&
                read_number(file, &out->upper);
    if (!read)
        return false;
    out->stock_count = (int)stock;
    out->item_count = (int)items;
    out->stock = arena_array(arena, PackStock, stock);
    out->items = arena_array(arena, PackItem, items);
    for (int i = 0; i < out->stock_count && read; i++) {
        read = read_number(file, &out->stock[i].capacity) && read_number(file, &count) &&
               read_number(file, &out->stock[i].cost);
        out->stock[i].count = (int)count;
    }
    for (int i = 0; i < out->item_count && read; i++) {
        read = read_number(file, &out->items[i].size) && read_number(file, &count);
        out->items[i].count = (int)count;
    }
    return read;
}

static bool read_one(FILE *file, Arena *arena, Instance *out)
{
    Length capacity, items;
    bool read = read_number(file, &capacity) && read_number(file, &items) && read_number(file, &out->lower);
    if (!read)
        return false;
    out->upper = out->lower;
    out->stock_count = 1;
    out->stock = arena_array(arena, PackStock, 1);
    out->stock[0] = (PackStock){capacity, 1, (int)items};
    out->item_count = (int)items;
    out->items = arena_array(arena, PackItem, items);
    for (int i = 0; i < out->item_count && read; i++) {
        out->items[i].count = 1;
        read = read_number(file, &out->items[i].size);
    }
    return read;
}

bool instance_read(FILE *file, bool several, Arena *arena, Instance *out)
{
    *out = (Instance){0};
    if (fscanf(file, "%63s", out->name) != 1)
        return false;
    bool read = several ? read_several(file, arena, out) : read_one(file, arena, out);
    if (!read) {
        fprintf(stderr, "%s: the instance is cut short\n", out->name);
        exit(99);
    }
    return true;
}

const char *instance_fault(const Instance *instance, const PackResult *result)
{
    const char *fault = NULL;
    int *cut = calloc((size_t)instance->item_count + 1, sizeof *cut);
    int *opened = calloc((size_t)instance->stock_count + 1, sizeof *opened);
    if (cut == NULL || opened == NULL)
        exit(99);
    Length cost = 0;
    int missing = 0;
    for (int b = 0; b < result->bin_count && fault == NULL; b++) {
        const PackBin *bin = &result->bins[b];
        if (bin->stock < 0 || bin->stock >= instance->stock_count || bin->item_count == 0) {
            fault = "a bin of no stock or with nothing in it";
            break;
        }
        Length filled = 0;
        for (int i = 0; i < bin->item_count; i++) {
            if (bin->items[i] < 0 || bin->items[i] >= instance->item_count) {
                fault = "an item that there is not";
                break;
            }
            cut[bin->items[i]]++;
            filled += instance->items[bin->items[i]].size;
        }
        if (fault == NULL && filled > instance->stock[bin->stock].capacity)
            fault = "a bin over its capacity";
        if (++opened[bin->stock] > instance->stock[bin->stock].count)
            fault = "more bins than stock";
        cost += instance->stock[bin->stock].cost;
    }
    for (int i = 0; i < instance->item_count && fault == NULL; i++) {
        missing += result->missing[i];
        if (result->missing[i] < 0 || cut[i] + result->missing[i] != instance->items[i].count)
            fault = "an item neither cut nor missing, or twice";
    }
    if (fault == NULL && (missing != result->missing_count || cost != result->cost))
        fault = "sums that do not add up";
    if (fault == NULL && result->cost_bound > result->cost)
        fault = "a bound above the cost";
    if (fault == NULL && (result->cost_proved || result->proved) && result->cost_bound != result->cost)
        fault = "a proof without a bound at the cost";
    free(cut);
    free(opened);
    return fault;
}
