#include "trade/penny.h"

#include <stddef.h>

typedef struct Penny {
    int size, quarters; /* of an inch */
} Penny;

static const Penny pennies[] = {{2, 4},   {3, 5},   {4, 6},   {5, 7},   {6, 8},   {7, 9},   {8, 10},  {9, 11},
                                {10, 12}, {12, 13}, {16, 14}, {20, 16}, {30, 18}, {40, 20}, {50, 22}, {60, 24}};

int penny_of(Length length)
{
    for (size_t i = 0; i < sizeof pennies / sizeof *pennies; i++)
        if (length <= pennies[i].quarters * (LENGTH_INCH / 4))
            return pennies[i].size;
    return 0;
}
