/*
 *     segment   |=========hung=========|                              |==hung==|               |
 *               origin                 run.left             run.right          run.left        run.right
 *               |----|----|----|----|--   marks: origin + k round   --|
 *
 * Invariants: rows stand face by face, bottom to top; runs row by row, left to right, each longer than 0; a run ends at
 * its segment's end or at a hung piece; the two rows of a pair of neighbours name each other.
 */
#include "fill/demand.h"

#include "base/panic.h"
#include "base/wide.h"
#include "fill/closers.h"

#include <stdlib.h>
#include <string.h>

/* ---- hung pieces ---- */

typedef struct HungList {
    int *at; /* records, rising by left end (of a row) or offset (of a board) */
    int count, room;
} HungList;

static Length distance(Length a, Length b)
{
    return a < b ? b - a : a - b;
}

/* The segment that the piece lies on for the greatest length, or -1. */
static int segment_under(const Course *course, Length left, Length right)
{
    int best = -1;
    Length most = 0;
    for (int i = 0; i < course->segment_count; i++) {
        Length from = left > course->segments[i].left ? left : course->segments[i].left;
        Length to = right < course->segments[i].right ? right : course->segments[i].right;
        if (to - from > most) {
            most = to - from;
            best = i;
        }
    }
    return best;
}

static HungFault place_on_wall(const Layout *layout, const HungPiece *record, Hung *hung)
{
    hung->face = wall_face_named(layout->wall, record->face);
    if (hung->face < 0 || record->right <= record->left)
        return HUNG_NO_PLACE;
    const FaceLayout *face = &layout->faces[hung->face];
    hung->course = layout_course_index(face, record->course);
    if (hung->course < 0)
        return HUNG_NO_PLACE;
    const Course *course = &face->courses[hung->course];
    hung->left_kerf = hung->right_kerf = layout->wall->saw.kerf;
    hung->segment = segment_under(course, record->left, record->right);
    if (hung->segment < 0)
        return HUNG_NO_PLACE;
    const Segment *segment = &course->segments[hung->segment];
    const Length closer = layout->wall->joints.closer;
    const bool planned = record->state == PIECE_PLANNED; /* then its ends are where they should be */
    const Length near = planned ? 0 : record->exact ? LENGTH_MM / 2 : closer > HUNG_NEAR ? closer : HUNG_NEAR;
    if (distance(hung->left, segment->left) <= near)
        hung->left = segment->left;
    if (distance(hung->right, segment->right) <= near)
        hung->right = segment->right;
    if (hung->left == segment->left)
        hung->left_kerf = segment->left_kerf;
    if (hung->right == segment->right)
        hung->right_kerf = segment->right_kerf;
    if (hung->left < segment->left || hung->right > segment->right || hung->right <= hung->left)
        return HUNG_LEAVES;
    return HUNG_FITS;
}

/* Puts record `index` into a list that rises by `key` unless it overlaps one that is there. */
static bool put_apart(Arena *arena, HungList *list, const Hung *hung, int index, bool on_board)
{
    Length from = on_board ? hung[index].offset : hung[index].left;
    Length to = from + (hung[index].right - hung[index].left);
    int at = 0;
    for (int i = 0; i < list->count; i++) {
        const Hung *other = &hung[list->at[i]];
        Length other_from = on_board ? other->offset : other->left;
        Length other_to = other_from + (other->right - other->left);
        if (from < other_to && other_from < to)
            return false;
        if (other_from < from)
            at = i + 1;
    }
    *arena_push(arena, list) = 0;
    memmove(list->at + at + 1, list->at + at, (size_t)(list->count - 1 - at) * sizeof *list->at);
    list->at[at] = index;
    return true;
}

/* The first stretch to avoid that the piece takes wood of. */
static const Stretch *avoided_by(const Stock *stock, const Hung *hung)
{
    Length to = hung->offset + (hung->right - hung->left);
    for (int i = 0; i < stock->avoid.count; i++)
        if (hung->offset < stock->avoid.at[i].to && to > stock->avoid.at[i].from)
            return &stock->avoid.at[i];
    return NULL;
}

static void drop(HungList *list, int index)
{
    int kept = 0;
    for (int i = 0; i < list->count; i++)
        if (list->at[i] != index)
            list->at[kept++] = list->at[i];
    list->count = kept;
}

/* The piece recorded last of a board. */
typedef struct Recorded {
    bool is_there;
    Length end; /* what it keeps over as a closer with it */
    Length kerf;
} Recorded;

/* Where a piece lies of which no record says it: the first of a board where it is squared, each next one by the kerf
 * that the two ends take further. */
static Length next_offset(const Wall *wall, const Recorded *last, const Hung *hung)
{
    if (!last->is_there)
        return wall->saw.square;
    return last->end + (last->kerf > hung->left_kerf ? last->kerf : hung->left_kerf);
}

/* What a recorded piece was given over when it was cut: as much as its record tells, else what one that closes its
 * segment takes. */
static Length kept_over(const Demand *demand, const Hung *hung)
{
    if (hung->fault == HUNG_NO_PLACE || hung->closer > 0)
        return hung->closer;
    const Segment *segment = &demand->layout->faces[hung->face].courses[hung->course].segments[hung->segment];
    const bool closes = hung->right == segment->right && closers_closed_in(demand->wall, hung->face, segment);
    return closes ? demand->wall->joints.closer : 0;
}

/* Reads every record; `by_row` gets those that fit. */
static void read_hung(Arena *arena, Demand *demand, HungList *by_row, const int *row_first)
{
    const Wall *wall = demand->wall;
    int board_count = wall_board_count(wall);
    demand->hung_count = wall->hung_pieces.count;
    demand->hung = arena_array(arena, Hung, demand->hung_count);
    if (demand->hung_count == 0)
        return;
    Recorded *before = arena_array(arena, Recorded, board_count + 1);
    HungList *by_board = arena_array(arena, HungList, board_count + 1);
    for (int i = 0; i < demand->hung_count; i++) {
        const HungPiece *record = &wall->hung_pieces.at[i];
        Hung *hung = &demand->hung[i];
        *hung = (Hung){.face = -1, .course = -1, .segment = -1, .board = record->board, .state = record->state};
        hung->closer = record->closer;
        hung->left = record->left;
        hung->right = record->right;
        hung->fault = place_on_wall(demand->layout, record, hung);
        if (record->board < 1 || record->board > board_count) {
            hung->fault = HUNG_NO_BOARD;
            continue;
        }
        Recorded *last = &before[record->board];
        hung->offset = record->offset_given ? record->offset : next_offset(wall, last, hung);
        *last = (Recorded){true, hung->offset + (hung->right - hung->left) + kept_over(demand, hung), hung->right_kerf};
        if (hung->fault != HUNG_FITS)
            continue;
        if (hung->offset < 0 ||
            hung->offset + (record->right - record->left) > wall_board(wall, record->board)->length) {
            hung->fault = HUNG_TOO_SHORT;
            continue;
        }
        int row = row_first[hung->face] + hung->course;
        if (!put_apart(arena, &by_row[row], demand->hung, i, false)) {
            hung->fault = HUNG_OVERLAPS;
        } else if (!put_apart(arena, &by_board[record->board], demand->hung, i, true)) {
            hung->fault = HUNG_TWICE;
            drop(&by_row[row], i);
        } else {
            hung->across = avoided_by(wall_board(wall, record->board), hung);
        }
    }
}

/* ---- runs ---- */

typedef struct Runs {
    Run *at;
    int count, room;
} Runs;

static void add_joint(Arena *arena, LengthList *joints, Length x)
{
    if (joints->count == 0 || joints->at[joints->count - 1] != x)
        *arena_push(arena, joints) = x;
}

/* Stretches of the segment where some slab has more than one part, joined where they touch. */
static Intervals find_forks(Arena *arena, const Course *course, const Segment *segment)
{
    Intervals forks = {0};
    for (int i = segment->slab_first; i < segment->slab_first + segment->slab_count; i++) {
        const Slab *slab = &course->slabs[i];
        if (slab->part_count < 2)
            continue;
        if (forks.count > 0 && forks.at[forks.count - 1].right == slab->left)
            forks.at[forks.count - 1].right = slab->right;
        else
            *arena_push(arena, &forks) = (Interval){slab->left, slab->right};
    }
    return forks;
}

static void add_run(Arena *arena, Demand *demand, Runs *runs, const Run *like, Length left, Length right)
{
    if (right <= left)
        return;
    Run run = *like;
    const Course *course = demand_course(demand, &run);
    const LengthList *studs = run.studs;
    const Segment *segment = &course->segments[run.segment];
    run.left = left;
    run.right = right;
    run.left_kerf = left == segment->left ? segment->left_kerf : demand->kerf;
    run.right_kerf = right == segment->right ? segment->right_kerf : demand->kerf;
    run.need = layout_need(demand->wall, course, left, right);
    run.varies = course->rip.shape != RIP_FULL || run.need < course->width;
    while (run.stud_first < studs->count && studs->at[run.stud_first] <= left)
        run.stud_first++;
    while (run.stud_first + run.stud_count < studs->count && studs->at[run.stud_first + run.stud_count] < right)
        run.stud_count++;
    *arena_push(arena, runs) = run;
    demand->total += right - left;
    if (right - left > demand->longest)
        demand->longest = right - left;
}

/* What lies between `left` and `right`, parted by the pins in it. */
static void add_runs(Arena *arena, Demand *demand, Runs *runs, const Run *like, Length left, Length right,
                     const RowPins *pins)
{
    for (int i = 0; pins != NULL && i < pins->pins.count; i++) {
        const Length at = pins->pins.at[i];
        if (at <= left || at >= right)
            continue;
        add_run(arena, demand, runs, like, left, at);
        add_joint(arena, &demand->rows[like->row].joints, at);
        left = at;
    }
    add_run(arena, demand, runs, like, left, right);
}

static const LengthList *studs_not_barred(Arena *arena, const LengthList *studs, const Intervals *bars)
{
    LengthList *clear = arena_one(arena, LengthList);
    for (int i = 0; i < studs->count; i++)
        if (!pins_barred(bars, studs->at[i]))
            *arena_push(arena, clear) = studs->at[i];
    return clear;
}

/* The last run of a segment is closed by its last piece, where that is closed in: by what hangs, or at the segment's
 * end. */
static void close_last(Demand *demand, Run *last, const Segment *segment)
{
    if (last->right < segment->right || closers_closed_in(demand->wall, last->face, segment))
        last->closer = demand->wall->joints.closer;
    demand->closers += last->closer;
}

static void add_segment(Arena *arena, Demand *demand, Runs *runs, int row_index, int segment_index,
                        const HungList *hung, const RowPins *pins)
{
    Row *row = &demand->rows[row_index];
    const Course *course = &demand->layout->faces[row->face].courses[row->course];
    const Segment *segment = &course->segments[segment_index];
    const int before = runs->count;
    Run like = {.row = row_index, .face = row->face, .course = row->course, .segment = segment_index};
    like.origin = segment->left;
    like.shortest = demand->wall->joints.shortest;
    like.forks = find_forks(arena, course, segment);
    like.studs = &demand->layout->faces[row->face].studs;
    if (pins != NULL && pins->bars.count > 0) {
        like.bars = pins->bars;
        like.studs = studs_not_barred(arena, like.studs, &pins->bars);
    }
    Length from = segment->left;
    for (int i = 0; i < hung->count; i++) {
        const Hung *piece = &demand->hung[hung->at[i]];
        if (piece->segment != segment_index)
            continue;
        add_runs(arena, demand, runs, &like, from, piece->left, pins);
        if (piece->left > segment->left)
            add_joint(arena, &row->joints, piece->left);
        if (piece->right < segment->right)
            add_joint(arena, &row->joints, piece->right);
        from = piece->right;
    }
    add_runs(arena, demand, runs, &like, from, segment->right, pins);
    if (runs->count > before)
        close_last(demand, &runs->at[runs->count - 1], segment);
}

/* Rows whose course numbers differ by one are neighbours. */
static void join_rows(Demand *demand)
{
    for (int i = 0; i < demand->row_count; i++)
        demand->rows[i].below = demand->rows[i].above = -1;
    for (int i = 1; i < demand->row_count; i++) {
        Row *low = &demand->rows[i - 1];
        Row *high = &demand->rows[i];
        if (low->face != high->face)
            continue;
        const Course *courses = demand->layout->faces[low->face].courses;
        if (courses[high->course].number == courses[low->course].number + 1) {
            low->above = i;
            high->below = i - 1;
        }
    }
}

static void find_sizes(Demand *demand)
{
    Length shortest = demand->wall->joints.shortest;
    Length little = 2 * LENGTH_INCH; /* shorter scraps are not worth a joint, where no rule says so */
    Length whole = shortest;         /* the least of the runs that are shorter than any piece should be */
    for (int i = 0; i < demand->run_count; i++) {
        const Run *run = &demand->runs[i];
        if (run->right - run->left < whole)
            whole = run->right - run->left;
    }
    demand->least = shortest > little ? shortest : little;
    if (demand->least > demand->longest)
        demand->least = demand->longest;
    demand->smallest = whole < BREAK_COST ? whole : BREAK_COST;
    if (demand->smallest < 1)
        demand->smallest = 1;
}

Demand *demand_new(Arena *arena, const Layout *layout)
{
    Demand *demand = arena_one(arena, Demand);
    const Wall *wall = layout->wall;
    demand->layout = layout;
    demand->wall = wall;
    demand->on_studs = wall->joints.land == LAND_STUDS;
    demand->round = wall->round;
    demand->stagger = wall->joints.stagger;
    demand->kerf = wall->saw.kerf;
    int *row_first = arena_array(arena, int, wall->faces.count + 1);
    for (int i = 0; i < wall->faces.count; i++)
        row_first[i + 1] = row_first[i] + layout->faces[i].course_count;
    demand->row_count = row_first[wall->faces.count];
    demand->rows = arena_array(arena, Row, demand->row_count);
    HungList *hung = arena_array(arena, HungList, demand->row_count);
    read_hung(arena, demand, hung, row_first);
    const RowPins *pins = pins_by_row(arena, layout, row_first);
    Runs runs = {0};
    for (int face = 0; face < wall->faces.count; face++) {
        for (int course = 0; course < layout->faces[face].course_count; course++) {
            int index = row_first[face] + course;
            Row *row = &demand->rows[index];
            *row = (Row){.face = face, .course = course, .run_first = runs.count};
            for (int i = 0; i < layout->faces[face].courses[course].segment_count; i++)
                add_segment(arena, demand, &runs, index, i, &hung[index], pins == NULL ? NULL : &pins[index]);
            row->run_count = runs.count - row->run_first;
        }
    }
    demand->runs = runs.at;
    demand->run_count = runs.count;
    join_rows(demand);
    find_sizes(demand);
    return demand;
}

/* ---- hanging order ---- */

/* A row, as it is put in order. */
typedef struct Turn {
    int group; /* place of its group of faces */
    int64_t course;
    int face; /* in the file's order */
    int row;
    bool upward;
} Turn;

/* Course 0 and up, then down; upward from the lowest. */
static int by_course(const Turn *one, const Turn *other)
{
    const bool down = one->course < 0 && !one->upward, other_down = other->course < 0 && !other->upward;
    if (down != other_down)
        return down ? 1 : -1;
    const int rising = (one->course > other->course) - (one->course < other->course);
    return down ? -rising : rising;
}

static int by_turn(const void *a, const void *b)
{
    const Turn *one = a, *other = b;
    if (one->group != other->group)
        return one->group < other->group ? -1 : 1;
    const int course = by_course(one, other);
    return course != 0 ? course : (one->face > other->face) - (one->face < other->face);
}

int *demand_row_order(Arena *arena, const Demand *demand)
{
    const Wall *wall = demand->wall;
    const int faces = wall->faces.count;
    int *order = arena_array(arena, int, demand->row_count + 1);
    int *group = arena_array(arena, int, faces), *place = arena_array(arena, int, faces);
    int *face_order = arena_array(arena, int, faces);
    wall_face_groups(wall, group);
    wall_face_order(wall, face_order);
    for (int i = 0; i < faces; i++)
        place[face_order[i]] = i;
    Turn *turns = arena_array(arena, Turn, demand->row_count + 1);
    for (int i = 0; i < demand->row_count; i++) {
        const int face = demand->rows[i].face;
        turns[i] = (Turn){place[group[face]], demand->layout->faces[face].courses[demand->rows[i].course].number, face,
                          i, wall_hangs_upward(wall)};
    }
    if (demand->row_count > 1)
        qsort(turns, (size_t)demand->row_count, sizeof *turns, by_turn);
    for (int i = 0; i < demand->row_count; i++)
        order[i] = turns[i].row;
    return order;
}

/* ---- questions ---- */

Length demand_mark_down(const Demand *demand, const Run *run, Length x)
{
    x = run->origin + length_round_down(x - run->origin, demand->round);
    while (run->bars.count > 0 && pins_barred(&run->bars, x))
        x = run->origin + length_round_down(pins_clear_down(&run->bars, x) - run->origin, demand->round);
    return x;
}

Length demand_mark_up(const Demand *demand, const Run *run, Length x)
{
    x = run->origin + length_round_up(x - run->origin, demand->round);
    while (run->bars.count > 0 && pins_barred(&run->bars, x))
        x = run->origin + length_round_up(pins_clear_up(&run->bars, x) - run->origin, demand->round);
    return x;
}

/* Index of the first of rising lengths that is not below x. */
int demand_first_from(const LengthList *list, Length x)
{
    int low = 0, high = list->count;
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (list->at[middle] < x)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

bool demand_at_stud(const Run *run, Length x)
{
    const LengthList *studs = run->studs;
    int index = demand_first_from(studs, x);
    return index < studs->count && studs->at[index] == x;
}

bool demand_whole(const Demand *demand, const Run *run, Length left, Length right)
{
    if (run->bars.count > 0 && ((left != run->left && pins_barred(&run->bars, left)) ||
                                (right != run->right && pins_barred(&run->bars, right))))
        return false;
    for (int i = 0; i < run->forks.count; i++)
        if (left < run->forks.at[i].right && right > run->forks.at[i].left)
            return layout_whole(demand_course(demand, run), left, right);
    return true;
}

Length demand_need(const Demand *demand, const Run *run, Length left, Length right)
{
    if (!run->varies || (left == run->left && right == run->right))
        return run->need;
    return layout_need(demand->wall, demand_course(demand, run), left, right);
}

int demand_near(const LengthList *joints, Length x, Length stagger)
{
    int near = 0;
    for (int i = demand_first_from(joints, x - stagger + 1); i < joints->count && joints->at[i] < x + stagger; i++)
        near++;
    return near;
}
