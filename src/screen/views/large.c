/*
 * A figure is 3 dots wide and 5 high, a dot half a cell high, one column free behind it:
 *
 *     ###      each row is three bits, the left dot the highest
 *     # #
 *     # #
 *     # #
 *     ###
 */
#include "screen/views/large.h"

#include "base/utf8.h"

#include <string.h>

enum { DOTS_HIGH = 5, ROWS = 3, UPPER = 0x2580, LOWER = 0x2584, BOTH = 0x2588 };

typedef struct Figure {
    char sign;
    int wide;
    unsigned char rows[DOTS_HIGH];
} Figure;

static const Figure figures[] = {
    {'0', 3, {7, 5, 5, 5, 7}}, {'1', 3, {2, 6, 2, 2, 7}},  {'2', 3, {7, 1, 7, 4, 7}}, {'3', 3, {7, 1, 3, 1, 7}},
    {'4', 3, {5, 5, 7, 1, 1}}, {'5', 3, {7, 4, 7, 1, 7}},  {'6', 3, {7, 4, 7, 5, 7}}, {'7', 3, {7, 1, 1, 2, 2}},
    {'8', 3, {7, 5, 7, 5, 7}}, {'9', 3, {7, 5, 7, 1, 7}},  {'/', 3, {1, 1, 2, 4, 4}}, {'-', 2, {0, 0, 6, 0, 0}},
    {'.', 1, {0, 0, 0, 0, 4}}, {'\'', 1, {4, 4, 0, 0, 0}}, {'"', 3, {5, 5, 0, 0, 0}}, {' ', 1, {0, 0, 0, 0, 0}},
};

static const Figure *figure_of(char sign)
{
    for (size_t i = 0; i < sizeof figures / sizeof *figures; i++)
        if (figures[i].sign == sign)
            return &figures[i];
    return figure_of(' ');
}

int large_rows(const Grid *grid)
{
    return grid->ascii ? 1 : ROWS;
}

static bool dot(const Figure *figure, int column, int row)
{
    return row < DOTS_HIGH && (figure->rows[row] >> (2 - column) & 1) != 0;
}

int large_draw(Grid *grid, int x, int y, int style, const char *text)
{
    if (grid->ascii)
        return grid_text(grid, x, y, utf8_cells(text), style, text);
    int from = x;
    for (; *text != '\0'; text++) {
        const Figure *figure = figure_of(*text);
        for (int row = 0; row < ROWS; row++)
            for (int column = 0; column < figure->wide; column++) {
                bool upper = dot(figure, column, 2 * row), lower = dot(figure, column, 2 * row + 1);
                if (upper || lower)
                    grid_put(grid, x + column, y + row, upper && lower ? BOTH : upper ? UPPER : LOWER, style);
            }
        x += figure->wide + 1;
    }
    return x - from;
}
