/*
 *     run 3            hung        run 4
 *     |=======|========|=====|     |=====|        |
 *             ^        ^     ^     ^     ^
 *             joined   joined ends starts ends        (beside what is left bare)
 *
 * Invariants: the planks of a row rise and do not overlap; `joined` says `starts`, except where two segments touch.
 */
#include "fill/looks/facade.h"

#include "layout/hold.h"

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

typedef struct OpeningCorner {
    Length x, y;
} OpeningCorner;

typedef struct OpeningCorners {
    OpeningCorner *at; /* rising by y */
    int count, room;
} OpeningCorners;

static int by_height(const void *a, const void *b)
{
    const OpeningCorner *one = a, *other = b;
    return one->y != other->y ? (one->y > other->y ? 1 : -1) : (one->x > other->x) - (one->x < other->x);
}

/* Of all openings that planks are cut for. */
static OpeningCorners corners_of(Arena *arena, const Layout *layout, int face)
{
    const Openings *openings = &layout->wall->faces.at[face].openings;
    OpeningCorners corners = {0};
    for (int i = 0; i < openings->count; i++) {
        const Box *box = &layout->faces[face].openings[i];
        for (int k = 0; k < 4 && openings->at[i].kind != OPENING_STOVE; k++)
            *arena_push(arena, &corners) =
                (OpeningCorner){k % 2 == 0 ? box->left : box->right, k < 2 ? box->bottom : box->top};
    }
    if (corners.count > 1)
        qsort(corners.at, (size_t)corners.count, sizeof *corners.at, by_height);
    return corners;
}

static int by_left(const void *a, const void *b)
{
    const FacadeZone *one = a, *other = b;
    return (one->left > other->left) - (one->left < other->left);
}

/* The greatest whole number whose square is below `square`, which is above 0. */
static Length root_below(Length square)
{
    Length low = 0, high = FACADE_CORNER;
    while (low < high) {
        const Length middle = high - (high - low) / 2;
        if (middle * middle < square)
            low = middle;
        else
            high = middle - 1;
    }
    return low;
}

/* How far to either side of a corner, so much above or below a course, a joint of the course is too near. */
static Length corner_reach(Length off)
{
    return root_below(FACADE_CORNER * FACADE_CORNER - off * off);
}

/* Joins those that touch. */
static void join_zones(FacadeZones *zones)
{
    if (zones->count == 0)
        return;
    qsort(zones->at, (size_t)zones->count, sizeof *zones->at, by_left);
    int last = 0;
    for (int i = 1; i < zones->count; i++) {
        const FacadeZone zone = zones->at[i];
        if (zone.left > zones->at[last].right)
            zones->at[++last] = zone;
        else if (zone.right > zones->at[last].right)
            zones->at[last].right = zone.right;
    }
    zones->count = last + 1;
}

static void put_zone(Arena *arena, FacadeZones *zones, Length x, Length reach)
{
    *arena_push(arena, zones) = (FacadeZone){x - reach, x + reach};
}

static void find_close(Arena *arena, const Course *course, const OpeningCorners *corners, FacadeZones *zones)
{
    for (int i = 0; i < course->cut_count; i++) {
        put_zone(arena, zones, course->cuts[i].box.left, FACADE_SIDE - 1);
        put_zone(arena, zones, course->cuts[i].box.right, FACADE_SIDE - 1);
    }
    int first = 0, end = corners->count;
    while (first < end) {
        const int middle = first + (end - first) / 2;
        if (corners->at[middle].y <= course->bottom - FACADE_CORNER)
            first = middle + 1;
        else
            end = middle;
    }
    for (int i = first; i < corners->count && corners->at[i].y < course->top + FACADE_CORNER; i++) {
        const OpeningCorner *corner = &corners->at[i];
        const Length off = corner->y < course->bottom ? course->bottom - corner->y
                           : corner->y > course->top  ? corner->y - course->top
                                                      : 0;
        put_zone(arena, zones, corner->x, corner_reach(off));
    }
    join_zones(zones);
}

bool facade_is_close(const FacadeRow *row, Length x)
{
    int low = 0, high = row->close.count;
    while (low < high) {
        const int middle = low + (high - low) / 2;
        if (row->close.at[middle].right < x)
            low = middle + 1;
        else
            high = middle;
    }
    return low < row->close.count && row->close.at[low].left <= x;
}

bool facade_is_loose(const FacadeRow *row, int plank)
{
    if (row->studs == NULL)
        return false;
    const FacadePlank *at = &row->at[plank];
    const bool goes_on = plank + 1 < row->count && at[1].joined;
    const Hold hold = hold_of(row->studs, &(HoldSpan){at->left, at->right, at->starts, at->ends || goes_on});
    return hold_is_loose(&hold);
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

/* What lies beside and behind each row. */
static void ready_rows(Facade *rows, const Demand *demand)
{
    OpeningCorners corners = {0};
    for (int i = 0, face = -1; i < demand->row_count; i++) {
        const Row *like = &demand->rows[i];
        if (like->face != face)
            corners = corners_of(rows->arena, demand->layout, like->face);
        face = like->face;
        const Face *wall = &demand->wall->faces.at[face];
        FacadeRow *row = &rows->at[i];
        row->below = like->below;
        row->above = like->above;
        row->studs = wall->wall == FACE_STUDS && wall->studs.given ? &demand->layout->faces[face].studs : NULL;
        find_close(rows->arena, &demand->layout->faces[face].courses[like->course], &corners, &row->close);
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
    ready_rows(rows, demand);
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
