/*
 * The four dots of a cell, as bits of a pattern:      1 | 2
 *                                                    ---+---
 *                                                     4 | 8
 * A set bit is the front ink, a clear one the back ink.
 */
#include "screen/term/mosaic.h"

#include "base/panic.h"

#include <stdlib.h>

Mosaic mosaic_new(int columns, int rows)
{
    Mosaic mosaic = {.columns = columns > 0 ? columns * 2 : 0, .rows = rows > 0 ? rows * 2 : 0};
    mosaic.dots = calloc((size_t)mosaic.columns * (size_t)mosaic.rows + 1, 1);
    if (mosaic.dots == NULL)
        panic_no_memory();
    return mosaic;
}

void mosaic_finish(Mosaic *mosaic)
{
    free(mosaic->dots);
    *mosaic = (Mosaic){0};
}

void mosaic_set(Mosaic *mosaic, int x, int y, Dot dot)
{
    if (x >= 0 && y >= 0 && x < mosaic->columns && y < mosaic->rows)
        mosaic->dots[(size_t)y * (size_t)mosaic->columns + (size_t)x] = (unsigned char)dot;
}

Dot mosaic_get(const Mosaic *mosaic, int x, int y)
{
    if (x < 0 || y < 0 || x >= mosaic->columns || y >= mosaic->rows)
        return DOT_NOTHING;
    return (Dot)mosaic->dots[(size_t)y * (size_t)mosaic->columns + (size_t)x];
}

static const uint32_t quarters[16] = {
    ' ',    0x2598, 0x259d, 0x2580, 0x2596, 0x258c, 0x259e, 0x259b,
    0x2597, 0x259a, 0x2590, 0x259c, 0x2584, 0x2599, 0x259f, 0x2588,
};

static Ink ink_of(Dot dot)
{
    switch (dot) {
    case DOT_WOOD: return INK_WOOD;
    case DOT_WOOD_DARK: return INK_WOOD_DARK;
    case DOT_REFERENCE: return INK_REFERENCE;
    case DOT_SLIVER: return INK_SLIVER;
    case DOT_NOTHING:
    case DOT_GAP:
    case DOT_BARE: break;
    }
    return INK_NONE;
}

static bool has(const Dot dots[4], Dot dot)
{
    return dots[0] == dot || dots[1] == dot || dots[2] == dot || dots[3] == dot;
}

/* Beside two kinds of wood there is no third ink: a gap takes the ink of the other wood, and is seen as a notch in its
 * own. */
static void settle_gaps(const Dot dots[4], Ink inks[4])
{
    for (int i = 0; i < 4; i++)
        if (dots[i] == DOT_GAP) {
            Ink above = inks[i ^ 2], beside = inks[i ^ 1];
            inks[i] = above != INK_NONE && beside != INK_NONE && above != beside ? above : INK_NONE;
        }
}

/* The two inks that the cell shows: the most frequent, and the next that has a pair with it. */
static void choose_inks(const Ink inks[4], Ink *front, Ink *back)
{
    int counts[INK_COUNT] = {0};
    for (int i = 0; i < 4; i++)
        counts[inks[i]]++;
    *front = inks[0];
    for (int ink = 0; ink < INK_COUNT; ink++)
        if (counts[ink] > counts[*front])
            *front = (Ink)ink;
    *back = *front;
    for (int i = 0; i < 4; i++)
        if (inks[i] != *front && style_has_pair(*front, inks[i]) &&
            (*back == *front || counts[inks[i]] > counts[*back]))
            *back = inks[i];
    if (*front == INK_NONE && *back != *front) { /* the ink in front, the nothing behind */
        *front = *back;
        *back = INK_NONE;
    }
}

static void draw_colour(Grid *grid, int x, int y, const Dot dots[4])
{
    Ink inks[4], front, back;
    for (int i = 0; i < 4; i++)
        inks[i] = ink_of(dots[i]);
    settle_gaps(dots, inks);
    choose_inks(inks, &front, &back);
    int pattern = 0;
    for (int i = 0; i < 4; i++)
        if (inks[i] == front || (inks[i] != back && inks[i] != INK_NONE))
            pattern |= 1 << i;
    if (front == back)
        grid_put(grid, x, y, front == INK_NONE ? ' ' : quarters[15], style_mosaic(front, INK_NONE));
    else
        grid_put(grid, x, y, quarters[pattern], style_mosaic(front, back));
}

/* Without colour an even course is filled and an odd one left open; a gap is the other of the two. */
static void draw_plain(Grid *grid, int x, int y, const Dot dots[4])
{
    if (dots[0] == DOT_WOOD_DARK && dots[1] == DOT_WOOD_DARK && dots[2] == DOT_WOOD_DARK && dots[3] == DOT_WOOD_DARK) {
        grid_put(grid, x, y, 0x2591, STYLE_DIM);
        return;
    }
    if (has(dots, DOT_SLIVER)) {
        grid_put(grid, x, y, 0x2592, STYLE_STRONG);
        return;
    }
    int pattern = 0;
    for (int i = 0; i < 4; i++) {
        bool dark = dots[i ^ 1] == DOT_WOOD_DARK || dots[i ^ 1] == DOT_NOTHING;
        if (dots[i] == DOT_WOOD || dots[i] == DOT_REFERENCE || (dots[i] == DOT_GAP && dark))
            pattern |= 1 << i;
    }
    grid_put(grid, x, y, quarters[pattern], STYLE_PLAIN);
}

static char ascii_sign(const Dot dots[4])
{
    if (has(dots, DOT_SLIVER))
        return '%';
    if (has(dots, DOT_GAP))
        return '|';
    Dot upper = dots[0] != DOT_NOTHING ? dots[0] : dots[1], lower = dots[2] != DOT_NOTHING ? dots[2] : dots[3];
    if (upper == DOT_NOTHING)
        return '_';
    if (lower == DOT_NOTHING)
        return '"';
    if (upper != lower)
        return '=';
    return upper == DOT_WOOD_DARK ? '-' : upper == DOT_REFERENCE ? '*' : '#';
}

void mosaic_draw(const Mosaic *mosaic, Grid *grid, int x, int y)
{
    for (int row = 0; row < mosaic->rows; row += 2)
        for (int column = 0; column < mosaic->columns; column += 2) {
            Dot dots[4];
            for (int i = 0; i < 4; i++)
                dots[i] = mosaic_get(mosaic, column + (i & 1), row + (i >> 1));
            int to_x = x + column / 2, to_y = y + row / 2;
            if (dots[0] == DOT_NOTHING && dots[1] == DOT_NOTHING && dots[2] == DOT_NOTHING && dots[3] == DOT_NOTHING)
                continue;
            if (has(dots, DOT_BARE))
                grid_glyph(grid, to_x, to_y, GLYPH_BARE, STYLE_FAULT);
            else if (grid->ascii)
                grid_put(grid, to_x, to_y, (uint32_t)ascii_sign(dots), STYLE_PLAIN);
            else if (grid->colour)
                draw_colour(grid, to_x, to_y, dots);
            else
                draw_plain(grid, to_x, to_y, dots);
        }
}
