/*
 *     run 3            hung        run 4
 *     |=======|========|=====|     |=====|        |
 *             ^        ^     ^     ^     ^
 *             joined   joined ends starts ends        (beside what is left bare)
 *
 * Invariants: the planks of a row rise and do not overlap; `joined` says `starts`, except where two segments touch.
 */
#include "fill/looks/facade.h"

#include <stdlib.h>
#include <string.h>

/* ---- tones ---- */

typedef struct Tone {
    const char *word;
    int line;
} Tone;

static int by_word(const void *a, const void *b)
{
    const Tone *one = a, *other = b;
    int order = strcmp(one->word, other->word);
    return order != 0 ? order : (one->line > other->line) - (one->line < other->line);
}

static void number_tones(Facade *rows, const Wall *wall, int boards)
{
    int lines = wall->stock.count;
    Tone *tones = arena_array(rows->arena, Tone, lines);
    int *number = arena_array(rows->arena, int, lines);
    for (int i = 0; i < lines; i++)
        tones[i] = (Tone){wall->stock.at[i].tone, i};
    if (lines > 1)
        qsort(tones, (size_t)lines, sizeof *tones, by_word);
    for (int i = 0; i < lines; i++) {
        if (tones[i].word[0] == '\0')
            continue;
        if (i == 0 || strcmp(tones[i - 1].word, tones[i].word) != 0)
            rows->tone_count++;
        number[tones[i].line] = rows->tone_count;
    }
    rows->tones = arena_array(rows->arena, int, boards);
    int board = 0;
    for (int i = 0; i < lines; i++)
        for (int j = 0; j < wall->stock.at[i].count && board < boards; j++)
            rows->tones[board++] = number[i];
}

/* ---- rows ---- */

static int by_length(const void *a, const void *b)
{
    Length one = *(const Length *)a, other = *(const Length *)b;
    return (one > other) - (one < other);
}

static void find_sides(Arena *arena, const Course *course, LengthList *sides)
{
    for (int i = 0; i < course->cut_count; i++) {
        *arena_push(arena, sides) = course->cuts[i].box.left;
        *arena_push(arena, sides) = course->cuts[i].box.right;
    }
    if (sides->count > 1)
        qsort(sides->at, (size_t)sides->count, sizeof *sides->at, by_length);
}

/* The run that the piece is in, from `run` of the row on; -1 where it hangs or is held on to. */
static int run_of(const Demand *demand, const Row *row, int run, const Piece *piece)
{
    const int end = row->run_first + row->run_count;
    while (run < end && (demand->runs[run].segment != piece->segment || demand->runs[run].right <= piece->left))
        run++;
    return run < end && demand->runs[run].left <= piece->left ? run : -1;
}

/* Puts the row's pieces, which are plan->pieces[first .. first+count). */
static void put_row(Facade *rows, const Demand *demand, const Plan *plan, int index, int first, int count)
{
    FacadeRow *row = &rows->at[index];
    const Row *like = &demand->rows[index];
    const Segment *segments = demand->layout->faces[like->face].courses[like->course].segments;
    int run = like->run_first;
    for (int i = first; i < first + count; i++) {
        const Piece *piece = &plan->pieces[i];
        const Piece *before = i > first && piece[-1].segment == piece->segment ? piece - 1 : NULL;
        const Piece *next = i + 1 < first + count && piece[1].segment == piece->segment ? piece + 1 : NULL;
        const int in = run_of(demand, like, run, piece);
        run = in >= 0 ? in : run;
        *arena_push(rows->arena, row) = (FacadePlank){.left = piece->left,
                                                      .right = piece->right,
                                                      .piece = i,
                                                      .run = in,
                                                      .tone = rows->tones[piece->board - 1],
                                                      .joined = before != NULL && before->right == piece->left,
                                                      .starts = piece->left != segments[piece->segment].left,
                                                      .ends = piece->right != segments[piece->segment].right &&
                                                              (next == NULL || next->left != piece->right)};
    }
}

Facade *facade_new(Arena *arena, const Demand *demand, const Plan *plan)
{
    Facade *rows = arena_one(arena, Facade);
    rows->arena = arena;
    rows->count = demand->row_count;
    rows->at = arena_array(arena, FacadeRow, demand->row_count);
    number_tones(rows, demand->wall, plan->board_count);
    int faces = demand->wall->faces.count;
    int *row_first = arena_array(arena, int, faces + 1);
    for (int i = 0; i < faces; i++)
        row_first[i + 1] = row_first[i] + demand->layout->faces[i].course_count;
    for (int i = 0; i < demand->row_count; i++) {
        const Row *like = &demand->rows[i];
        rows->at[i].below = like->below;
        rows->at[i].above = like->above;
        find_sides(arena, &demand->layout->faces[like->face].courses[like->course], &rows->at[i].sides);
    }
    for (int first = 0, next = 0; first < plan->piece_count; first = next) {
        const Piece *piece = &plan->pieces[first];
        while (next < plan->piece_count && plan->pieces[next].face == piece->face &&
               plan->pieces[next].course == piece->course)
            next++;
        put_row(rows, demand, plan, row_first[piece->face] + piece->course, first, next - first);
    }
    return rows;
}

int facade_first_right_of(const FacadeRow *row, Length x)
{
    int low = 0, high = row->count;
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (row->at[middle].right <= x)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

void facade_put(Facade *rows, int row, int first, int old, const FacadePlank *put, int count)
{
    FacadeRow *in = &rows->at[row];
    int tail = in->count - first - old;
    while (in->room < first + count + tail) {
        int kept = in->count;
        in->count = in->room;
        *arena_push(rows->arena, in) = (FacadePlank){0};
        in->count = kept;
    }
    if (tail > 0)
        memmove(in->at + first + count, in->at + first + old, (size_t)tail * sizeof *in->at);
    if (count > 0)
        memcpy(in->at + first, put, (size_t)count * sizeof *put);
    in->count = first + count + tail;
}
