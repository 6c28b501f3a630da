#include "wall/species.h"

#include "base/nearest.h"
#include "base/panic.h"

#include <stddef.h>

/*
 * Rows rise by name. Shrinkages of softwoods not marked P below, and which rows were reckoned from 22 % instead of
 * 30 %, are from memory; each confirms the coefficient beside it, since C = 1 / (100 M / S - M + 10) gives every row to
 * the fifth decimal (tests/trade/season.c).
 */
static const Species table[] = {
    {"baldcypress", 130, 216, 0, 0, 30},
    {"cedar, incense", 112, 180, 33, 52, 30},              /* P */
    {"cedar, northern white", 101, 229, 22, 49, 22},       /* P */
    {"cedar, western red", 111, 234, 24, 50, 22},          /* P */
    {"douglas-fir, coast", 165, 267, 48, 76, 30},          /* P */
    {"douglas-fir, interior north", 130, 241, 38, 69, 30}, /* P */
    {"douglas-fir, interior west", 165, 263, 48, 75, 30},  /* P */
    {"fir, white", 112, 245, 33, 70, 30},                  /* P */
    {"hemlock, eastern", 102, 237, 30, 68, 30},
    {"hemlock, western", 144, 274, 42, 78, 30},
    {"maple, sugar", 165, 353, 0, 0, 30},
    {"oak, red", 158, 369, 0, 0, 30},   /* "commercial red" */
    {"oak, white", 180, 365, 0, 0, 30}, /* "commercial white" */
    {"pine, eastern white", 71, 212, 21, 61, 30},
    {"pine, jack", 126, 230, 37, 66, 30},
    {"pine, loblolly", 165, 259, 48, 74, 30},
    {"pine, lodgepole", 148, 234, 43, 67, 30},
    {"pine, longleaf", 176, 263, 51, 75, 30},
    {"pine, ponderosa", 133, 216, 39, 62, 30},
    {"pine, red", 130, 252, 38, 72, 30},
    {"pine, shortleaf", 158, 271, 46, 77, 30},
    {"pine, slash", 187, 267, 54, 76, 30},
    {"pine, sugar", 99, 194, 29, 56, 30},
    {"pine, western white", 141, 259, 41, 74, 30},
    {"redwood, old growth", 120, 205, 26, 44, 22},
    {"redwood, second growth", 101, 229, 22, 49, 22},
    {"spruce, black", 141, 237, 0, 0, 30},
    {"spruce, engelmann", 130, 248, 38, 71, 30},
    {"spruce, red", 130, 274, 38, 78, 30},
    {"spruce, sitka", 148, 263, 43, 75, 30},
    {"spruce, white", 130, 274, 0, 0, 30},
    {"yellow-poplar", 158, 289, 46, 82, 30}, /* P */
};

enum { COUNT = sizeof table / sizeof *table };

int species_count(void)
{
    return COUNT;
}

const Species *species_at(int index)
{
    BUG_UNLESS(index >= 0 && index < COUNT);
    return &table[index];
}

const Species *species_named(const char *name)
{
    for (int i = 0; i < COUNT; i++)
        if (nearest_same(table[i].name, name))
            return &table[i];
    return NULL;
}

int species_nearest(const char *name, const Species *near[], int most)
{
    const char *names[COUNT];
    int found[NEAREST_MOST];
    for (int i = 0; i < COUNT; i++)
        names[i] = table[i].name;
    const int count = nearest_names(name, names, COUNT, found, most);
    for (int i = 0; i < count; i++)
        near[i] = &table[found[i]];
    return count;
}
