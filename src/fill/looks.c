/*
 * A load is all that is cut from one board. Loads are sorted by the length they need; a load is tried against those
 * next to it in that order, which are the likeliest to fit each other's board, and against boards of its kind that are
 * not opened.
 *
 * Invariant: board_of[load] and load_of[board] name each other (-1: not opened); tone_of[load] is the tone of its
 * board.
 */
#include "fill/looks.h"

#include "base/panic.h"

#include <stdlib.h>
#include <string.h>

enum { PASSES = 4, TRIED_BESIDE = 24 };

typedef struct Load {
    int board;      /* as laid */
    Length longest; /* span that it needs, where its board has one span */
    Length width;
    bool fixed;       /* a hung piece is cut from the board, or it has several spans: only boards of its kind will do */
    int first, count; /* of its edges */
} Load;

typedef struct Touch {
    int load, other;
} Touch;

typedef struct Touches {
    Touch *at;
    int count, room;
} Touches;

typedef struct Looks {
    const Demand *demand;
    const Pile *pile;
    Load *loads;
    int load_count;
    int *load_of;  /* board as laid -> load, -1 */
    int *board_of; /* load -> board now */
    int *tone_of_board;
    int *by_kind, *kind_first; /* boards sorted by kind */
    Touch *touches;            /* both ways, by load */
    int64_t work;
} Looks;

/* ---- who touches whom ---- */

static void touch(Arena *arena, Touches *out, const Looks *looks, const Placed *a, const Placed *b)
{
    int one = looks->load_of[looks->pile->spans[a->span].board];
    int other = looks->load_of[looks->pile->spans[b->span].board];
    if (one == other)
        return;
    *arena_push(arena, out) = (Touch){one, other};
    *arena_push(arena, out) = (Touch){other, one};
}

static void touch_rows(Arena *arena, Touches *out, const Looks *looks, const Cover *covers, const Row *low,
                       const Row *high)
{
    for (int i = high->run_first; i < high->run_first + high->run_count; i++)
        for (int j = low->run_first; j < low->run_first + low->run_count; j++) {
            int under = 0;
            for (int k = 0; k < covers[i].count; k++) {
                const Placed *piece = &covers[i].at[k];
                while (under < covers[j].count && covers[j].at[under].right <= piece->left)
                    under++;
                for (int l = under; l < covers[j].count && covers[j].at[l].left < piece->right; l++)
                    touch(arena, out, looks, &covers[j].at[l], piece);
            }
        }
}

static int by_load(const void *a, const void *b)
{
    const Touch *one = a, *other = b;
    if (one->load != other->load)
        return one->load < other->load ? -1 : 1;
    return (one->other > other->other) - (one->other < other->other);
}

static void find_touches(Arena *arena, Looks *looks, const Cover *covers)
{
    const Demand *demand = looks->demand;
    Touches touches = {0};
    for (int i = 0; i < demand->run_count; i++)
        for (int j = 1; j < covers[i].count; j++)
            if (covers[i].at[j - 1].right == covers[i].at[j].left)
                touch(arena, &touches, looks, &covers[i].at[j - 1], &covers[i].at[j]);
    for (int i = 0; i < demand->row_count; i++)
        if (demand->rows[i].below >= 0)
            touch_rows(arena, &touches, looks, covers, &demand->rows[demand->rows[i].below], &demand->rows[i]);
    if (touches.count > 1)
        qsort(touches.at, (size_t)touches.count, sizeof *touches.at, by_load);
    looks->touches = touches.at;
    for (int i = 0; i < touches.count; i++) {
        Load *load = &looks->loads[touches.at[i].load];
        if (load->count++ == 0)
            load->first = i;
    }
}

/* ---- loads ---- */

static int by_need(const void *a, const void *b)
{
    const Load *one = a, *other = b;
    if (one->longest != other->longest)
        return one->longest < other->longest ? -1 : 1;
    return (one->board > other->board) - (one->board < other->board);
}

static void find_loads(Arena *arena, Looks *looks, const Cover *covers)
{
    const Pile *pile = looks->pile;
    const Demand *demand = looks->demand;
    int *index = arena_array(arena, int, pile->board_count);
    looks->loads = arena_array(arena, Load, pile->board_count);
    for (int i = 0; i < demand->run_count; i++)
        for (int j = 0; j < covers[i].count; j++) {
            const Placed *piece = &covers[i].at[j];
            int board = pile->spans[piece->span].board;
            if (index[board] == 0) {
                const PileBoard *entry = &pile->boards[board];
                looks->loads[looks->load_count] = (Load){.board = board, .longest = -pile->kerf};
                looks->loads[looks->load_count].fixed = entry->kind < 0 || entry->span_count != 1;
                index[board] = ++looks->load_count;
            }
            Load *load = &looks->loads[index[board] - 1];
            load->longest += piece->right - piece->left + pile->kerf;
            Length need = pile->narrow ? demand_need(demand, &demand->runs[i], piece->left, piece->right) : 0;
            load->width = need > load->width ? need : load->width;
        }
    if (looks->load_count > 1)
        qsort(looks->loads, (size_t)looks->load_count, sizeof *looks->loads, by_need);
    looks->load_of = arena_array(arena, int, pile->board_count);
    looks->board_of = arena_array(arena, int, looks->load_count);
    for (int i = 0; i < pile->board_count; i++)
        looks->load_of[i] = -1;
    for (int i = 0; i < looks->load_count; i++) {
        looks->board_of[i] = looks->loads[i].board;
        looks->load_of[looks->loads[i].board] = i;
    }
}

static void sort_boards(Arena *arena, Looks *looks)
{
    const Pile *pile = looks->pile;
    looks->kind_first = arena_array(arena, int, pile->kind_count + 1);
    looks->by_kind = arena_array(arena, int, pile->board_count);
    int *put = arena_array(arena, int, pile->kind_count + 1);
    for (int i = 0; i < pile->board_count; i++)
        if (pile->boards[i].kind >= 0)
            looks->kind_first[pile->boards[i].kind + 1]++;
    for (int i = 0; i < pile->kind_count; i++)
        put[i + 1] = looks->kind_first[i + 1] += looks->kind_first[i];
    for (int i = 0; i < pile->board_count; i++)
        if (pile->boards[i].kind >= 0)
            looks->by_kind[put[pile->boards[i].kind]++] = i;
}

/* Tones by number, 0 where there is none; false where no two boards differ. */
static bool find_tones(Arena *arena, Looks *looks)
{
    const Wall *wall = looks->demand->wall;
    int lines = wall->stock.count;
    int *tones = arena_array(arena, int, lines);
    bool differ = false;
    looks->tone_of_board = arena_array(arena, int, looks->pile->board_count);
    int board = 0;
    for (int i = 0, last = 0; i < lines; i++) {
        const char *tone = wall->stock.at[i].tone;
        for (int j = i - 1; j >= 0 && j > i - 64 && tones[i] == 0 && tone[0] != '\0'; j--)
            if (strcmp(tone, wall->stock.at[j].tone) == 0)
                tones[i] = tones[j];
        if (tone[0] != '\0' && tones[i] == 0)
            tones[i] = ++last;
        differ = differ || tones[i] != tones[0];
        for (int j = 0; j < wall->stock.at[i].count; j++)
            looks->tone_of_board[board++] = tones[i];
    }
    return differ;
}

/* ---- exchanges ---- */

/* Neighbours of `load` of the tone, leaving out `but`. */
static int equal_beside(Looks *looks, int load, int tone, int but)
{
    int equal = 0;
    const Load *of = &looks->loads[load];
    BUG_UNLESS(of->count == 0 || looks->touches != NULL);
    looks->work++;
    for (int i = of->first; i < of->first + of->count && tone != 0; i++) {
        int other = looks->touches[i].other;
        equal += other != but && looks->tone_of_board[looks->board_of[other]] == tone;
    }
    return equal;
}

static bool fits(const Looks *looks, int load, int board)
{
    const Load *of = &looks->loads[load];
    const PileBoard *from = &looks->pile->boards[of->board], *to = &looks->pile->boards[board];
    if (from->kind >= 0 && from->kind == to->kind)
        return true;
    if (of->fixed || to->kind < 0 || to->span_count != 1)
        return false;
    const Span *span = &looks->pile->spans[to->span_first];
    return of->longest <= span->to - span->from && of->width <= looks->pile->widths[board];
}

static bool exchange(Looks *looks, int one, int other)
{
    int a = looks->board_of[one], b = looks->board_of[other];
    int tone_a = looks->tone_of_board[a], tone_b = looks->tone_of_board[b];
    if (tone_a == tone_b || !fits(looks, one, b) || !fits(looks, other, a))
        return false;
    int before = equal_beside(looks, one, tone_a, other) + equal_beside(looks, other, tone_b, one);
    int after = equal_beside(looks, one, tone_b, other) + equal_beside(looks, other, tone_a, one);
    if (after >= before)
        return false;
    looks->board_of[one] = b;
    looks->board_of[other] = a;
    return true;
}

/* Takes a board of the same kind that is not opened. */
static bool take_fresh(Looks *looks, int load, bool *opened)
{
    int board = looks->board_of[load];
    int kind = looks->pile->boards[board].kind;
    if (kind < 0)
        return false;
    int best = -1, least = equal_beside(looks, load, looks->tone_of_board[board], -1);
    int tried = 0;
    for (int i = looks->kind_first[kind]; i < looks->kind_first[kind + 1] && tried < 4 * TRIED_BESIDE; i++) {
        int fresh = looks->by_kind[i];
        if (opened[fresh])
            continue;
        tried++;
        int equal = equal_beside(looks, load, looks->tone_of_board[fresh], -1);
        if (equal < least) {
            least = equal;
            best = fresh;
        }
    }
    if (best < 0)
        return false;
    opened[board] = false;
    opened[best] = true;
    looks->board_of[load] = best;
    return true;
}

static void improve(Arena *arena, Looks *looks)
{
    bool *opened = arena_array(arena, bool, looks->pile->board_count);
    for (int i = 0; i < looks->load_count; i++)
        opened[looks->board_of[i]] = true;
    bool better = true;
    for (int pass = 0; pass < PASSES && better; pass++) {
        better = false;
        for (int i = 0; i < looks->load_count; i++) {
            if (equal_beside(looks, i, looks->tone_of_board[looks->board_of[i]], -1) == 0)
                continue;
            better = take_fresh(looks, i, opened) || better;
            for (int j = i - TRIED_BESIDE; j <= i + TRIED_BESIDE; j++)
                if (j >= 0 && j < looks->load_count && j != i)
                    better = exchange(looks, i, j) || better;
        }
    }
}

const Cover *looks_exchange(Arena *arena, const Demand *demand, const Pile *pile, const Cover *covers, int64_t *work)
{
    Looks looks = {.demand = demand, .pile = pile};
    if (!find_tones(arena, &looks))
        return covers;
    find_loads(arena, &looks, covers);
    find_touches(arena, &looks, covers);
    sort_boards(arena, &looks);
    improve(arena, &looks);
    Cover *out = arena_array(arena, Cover, demand->run_count);
    for (int i = 0; i < demand->run_count; i++) {
        out[i].count = covers[i].count;
        out[i].at = arena_array(arena, Placed, covers[i].count);
        for (int j = 0; j < covers[i].count; j++) {
            const Placed *piece = &covers[i].at[j];
            int board = pile->spans[piece->span].board;
            int now = looks.board_of[looks.load_of[board]];
            out[i].at[j] = *piece;
            out[i].at[j].span = pile->boards[now].span_first + (piece->span - pile->boards[board].span_first);
        }
    }
    *work += looks.work;
    return out;
}
