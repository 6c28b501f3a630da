/*
 * Sixteen pairs at the most: 0 is the terminal's own, 1 to 7 one ink on the terminal's own background, the rest two
 * kinds of wood in one cell. Blue is left out: it cannot be read on black. Both of a mosaic's inks are seen by turning
 * the cell inside out where only the opposite pair is there.
 */
#include "screen/term/style.h"

#include "base/panic.h"

typedef struct PairInks {
    Ink front, back;
} PairInks;

static const PairInks pairs[STYLE_PAIRS] = {
    {INK_NONE, INK_NONE},        {INK_WOOD, INK_NONE},        {INK_WOOD_DARK, INK_NONE},      {INK_REFERENCE, INK_NONE},
    {INK_SLIVER, INK_NONE},      {INK_GOOD, INK_NONE},        {INK_CAUTION, INK_NONE},        {INK_ACCENT, INK_NONE},
    {INK_WOOD, INK_WOOD_DARK},   {INK_REFERENCE, INK_WOOD},   {INK_REFERENCE, INK_WOOD_DARK}, {INK_SLIVER, INK_WOOD},
    {INK_SLIVER, INK_WOOD_DARK}, {INK_SLIVER, INK_REFERENCE},
};

/* Per ink: in 8 colours, in 16, in 256 (numbers of the xterm palette). */
static const short inks[INK_COUNT][3] = {
    [INK_NONE] = {-1, -1, -1},  [INK_WOOD] = {3, 3, 179}, [INK_WOOD_DARK] = {7, 7, 137}, [INK_REFERENCE] = {6, 14, 229},
    [INK_SLIVER] = {1, 9, 160}, [INK_GOOD] = {2, 2, 71},  [INK_CAUTION] = {3, 3, 172},   [INK_ACCENT] = {6, 6, 73},
};

static int pair_of(Ink front, Ink back, bool *turned)
{
    *turned = false;
    for (int i = 0; i < STYLE_PAIRS; i++)
        if (pairs[i].front == front && pairs[i].back == back)
            return i;
    *turned = true;
    for (int i = 0; i < STYLE_PAIRS; i++)
        if (pairs[i].front == back && pairs[i].back == front)
            return i;
    return -1;
}

int style_mosaic(Ink front, Ink back)
{
    return STYLE_MOSAIC + (int)front * INK_COUNT + (int)back;
}

bool style_has_pair(Ink front, Ink back)
{
    bool turned;
    return pair_of(front, back, &turned) >= 0;
}

static Look mosaic_look(int style, bool colour)
{
    Ink front = (Ink)((style - STYLE_MOSAIC) / INK_COUNT);
    Ink back = (Ink)((style - STYLE_MOSAIC) % INK_COUNT);
    Look look = {0};
    if (!colour)
        return look;
    bool turned;
    int pair = pair_of(front, back, &turned);
    if (pair < 0)
        pair = pair_of(front, INK_NONE, &turned);
    look.pair = pair < 0 ? 0 : pair;
    look.reverse = turned;
    return look;
}

Look style_look(int style, bool colour)
{
    if (style >= STYLE_MOSAIC)
        return mosaic_look(style, colour);
    bool turned;
    Look look = {0};
    Ink ink = INK_NONE;
    switch ((Style)style) {
    case STYLE_PLAIN: break;
    case STYLE_DIM:
    case STYLE_LABEL:
    case STYLE_FRAME: look.dim = true; break;
    case STYLE_STRONG:
    case STYLE_FIGURE: look.bold = true; break;
    case STYLE_KEY:
        look.bold = true;
        ink = INK_ACCENT;
        break;
    case STYLE_TITLE:
    case STYLE_CHOSEN: look.reverse = true; break;
    case STYLE_FIELD: look.underline = true; break;
    case STYLE_FAULT:
        look.bold = true;
        ink = INK_SLIVER;
        break;
    case STYLE_CAUTION: ink = INK_CAUTION; break;
    case STYLE_GOOD: ink = INK_GOOD; break;
    case STYLE_ACCENT: ink = INK_ACCENT; break;
    case STYLE_MOSAIC: break;
    }
    look.pair = colour ? pair_of(ink, INK_NONE, &turned) : 0;
    return look;
}

void style_pair(int pair, int depth, int *front, int *back)
{
    BUG_UNLESS(pair >= 0 && pair < STYLE_PAIRS);
    int column = depth >= 256 ? 2 : depth >= 16 ? 1 : 0;
    *front = inks[pairs[pair].front][column];
    *back = inks[pairs[pair].back][column];
}

static const struct {
    uint32_t utf8;
    char ascii;
} glyphs[GLYPH_COUNT] = {
    [GLYPH_LEVEL] = {0x2500, '-'},     [GLYPH_UPRIGHT] = {0x2502, '|'},     [GLYPH_TOP_LEFT] = {0x250c, '+'},
    [GLYPH_TOP_RIGHT] = {0x2510, '+'}, [GLYPH_BOTTOM_LEFT] = {0x2514, '+'}, [GLYPH_BOTTOM_RIGHT] = {0x2518, '+'},
    [GLYPH_JOINT] = {0x253c, '+'},     [GLYPH_END_LEFT] = {0x251c, '['},    [GLYPH_END_RIGHT] = {0x2524, ']'},
    [GLYPH_PLANK] = {0x2500, '-'},     [GLYPH_PLANK_TOP] = {0x2580, '"'},   [GLYPH_PLANK_BOTTOM] = {0x2584, '_'},
    [GLYPH_HOLE] = {0x25a1, 'o'},      [GLYPH_BARE] = {0x2573, '?'},        [GLYPH_BOX] = {0x25a1, 'o'},
    [GLYPH_STUD] = {0x2575, '\''},     [GLYPH_POINT_LEFT] = {0x25c2, '<'},  [GLYPH_POINT_RIGHT] = {0x25b8, '>'},
    [GLYPH_POINT_UP] = {0x2191, '^'},  [GLYPH_POINT_DOWN] = {0x2193, 'v'},  [GLYPH_HERE] = {0x25b8, '>'},
    [GLYPH_DOT] = {0x00b7, '-'},       [GLYPH_TO] = {0x2192, '>'},          [GLYPH_MORE] = {0x2026, '~'},
    [GLYPH_TICK] = {0x2713, '*'},      [GLYPH_CHOSEN] = {0x00bb, '='},
};

uint32_t style_glyph(Glyph glyph, bool ascii)
{
    return ascii ? (uint32_t)(unsigned char)glyphs[glyph].ascii : glyphs[glyph].utf8;
}
