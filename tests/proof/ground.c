#include "proof/ground.h"

#include "base/wide.h"

#include <stdlib.h>

/*
 *        |   |     |  |        Every x at which two lines of the band meet is an event; between two events the same
 *     ---+---+-.---+--+---     lines follow one another from bottom to top. Points asked for lie on a grid of 2^-12 nm,
 *        |   |/ '. |  |        well inside their column, so that products of three such numbers fit in 127 bits and
 *     ---+---/    `+--+---     every answer is exact.
 */

enum { GRID = 4096, EVENTS_MOST = 60 };
#define NARROW ((Real)1 / 256) /* nm: no column is narrower, no part lower */
#define FAR ((Real)8e12L)

typedef struct Events {
    Real *at;
    int count;
    int room;
} Events;

/* ---- lines ---- */

/* Stretch `i` of a limit, 0 .. count: before its first mark, between two, behind its last. */
typedef struct Line {
    Length from, to; /* along the limit */
    Length off, off_to;
    bool level;
} Line;

static Line line_of(const Marks *marks, int i)
{
    if (marks->count == 0)
        return (Line){.level = true};
    const Mark *before = &marks->at[i > 0 ? i - 1 : 0];
    const Mark *after = &marks->at[i < marks->count ? i : marks->count - 1];
    return (Line){before->at, after->at, before->off, after->off, i == 0 || i == marks->count};
}

/* Which stretch `at` is on, the one behind where it is on a mark and `after`. */
static int line_at(const Marks *marks, Real at, bool after)
{
    int i = 0;
    while (i < marks->count && (after ? (Real)marks->at[i].at <= at : (Real)marks->at[i].at < at))
        i++;
    return i;
}

static Real off_on(const Line *line, Real at)
{
    if (line->level || line->to == line->from)
        return (Real)line->off;
    return (Real)line->off + (Real)(line->off_to - line->off) * (at - (Real)line->from) / (Real)(line->to - line->from);
}

/* The value at the stretch before the first mark is that mark's, behind the last that one's. */
static Real limit_off(const Marks *marks, Real at, bool after)
{
    const Line line = line_of(marks, line_at(marks, at, after));
    return off_on(&line, at);
}

Real ground_lower(const Ground *ground, Real x, bool right)
{
    return (Real)ground->face->margin.floor - limit_off(&ground->face->floor, x, right);
}

Real ground_upper(const Ground *ground, Real x, bool right)
{
    return limit_off(&ground->face->ceiling, x, right) - (Real)ground->face->margin.ceiling;
}

Real ground_side(const Ground *ground, bool right, Real y)
{
    const Real off = limit_off(right ? &ground->face->right : &ground->face->left, y, true);
    return right ? (Real)ground->right - off : (Real)ground->left + off;
}

/* ---- exact questions, of points on the grid ---- */

/* Sign of off(at) - value, both on the grid. */
static int compare_off(const Marks *marks, int64_t at, int64_t value)
{
    int i = 0;
    while (i < marks->count && marks->at[i].at * GRID <= at)
        i++;
    const Line line = line_of(marks, i);
    Wide difference = (Wide)line.off * GRID - value;
    if (!line.level && line.to > line.from)
        difference = difference * (line.to - line.from) + (Wide)(line.off_to - line.off) * (at - line.from * GRID);
    return (difference > 0) - (difference < 0);
}

static bool within(const Ground *ground, int64_t x, int64_t y, bool sides)
{
    const Face *face = ground->face;
    /* y >= margin - floor(x), y <= ceiling(x) - margin */
    if (compare_off(&face->floor, x, face->margin.floor * GRID - y) < 0 ||
        compare_off(&face->ceiling, x, y + face->margin.ceiling * GRID) < 0)
        return false;
    return !sides || (compare_off(&face->left, y, x - ground->left * GRID) <= 0 &&
                      compare_off(&face->right, y, ground->right * GRID - x) <= 0);
}

static bool taken(const Ground *ground, int64_t x, int64_t y)
{
    for (int i = 0; i < ground->box_count; i++) {
        const GroundBox *box = &ground->boxes[i];
        if (x > box->left * GRID && x < box->right * GRID && y > box->bottom * GRID && y < box->top * GRID)
            return true;
    }
    return false;
}

static int64_t on_grid(Real value)
{
    const Real scaled = value * GRID;
    return (int64_t)(scaled < 0 ? scaled - 0.5L : scaled + 0.5L);
}

/* ---- events along x ---- */

static void add_event(Arena *arena, Events *events, Real x)
{
    if (x > -FAR && x < FAR)
        *arena_push(arena, events) = x;
}

/* Where a floor or ceiling (sign -1, 1) is at height y. */
static void add_height(Arena *arena, Events *events, const Marks *marks, Real sign, Real margin, Real y)
{
    for (int i = 1; i < marks->count; i++) {
        const Line line = line_of(marks, i);
        const Real a = sign * ((Real)line.off - margin) - y, b = sign * ((Real)line.off_to - margin) - y;
        if ((a < 0) != (b < 0) && line.to > line.from)
            add_event(arena, events, (Real)line.from + (Real)(line.to - line.from) * a / (a - b));
    }
}

/* Where a side is at height y, on both sides of a step. */
static void add_side(Arena *arena, Events *events, const Ground *ground, bool right, Real y)
{
    const Marks *marks = right ? &ground->face->right : &ground->face->left;
    for (int after = 0; after < 2; after++) {
        const Real off = limit_off(marks, y, after == 1);
        add_event(arena, events, right ? (Real)ground->right - off : (Real)ground->left + off);
    }
}

/* Where the straight stretch p of one side meets what a floor or ceiling does, or the other side: looked for by the
 * signs at its ends. x(y) = x0 + m y is put into the other's line. */
static void add_meetings(Arena *arena, Events *events, const Ground *ground, bool right)
{
    const Face *face = ground->face;
    const Marks *marks = right ? &face->right : &face->left;
    const Marks *others[] = {&face->floor, &face->ceiling};
    for (int i = 0; i <= marks->count; i++) {
        const Line side = line_of(marks, i);
        const Real lean = side.level || side.to == side.from
                              ? 0
                              : (Real)(side.off_to - side.off) / (Real)(side.to - side.from) * (right ? -1 : 1);
        const Real x0 = (right ? (Real)ground->right - (Real)side.off : (Real)ground->left + (Real)side.off) -
                        lean * (Real)side.from;
        for (int k = 0; k < 2; k++)
            for (int j = 0; j <= others[k]->count; j++) {
                /* y = c + s x */
                const Line line = line_of(others[k], j);
                const Real sign = k == 0 ? -1 : 1;
                const Real s = line.level || line.to == line.from
                                   ? 0
                                   : sign * (Real)(line.off_to - line.off) / (Real)(line.to - line.from);
                const Real margin = k == 0 ? (Real)face->margin.floor : (Real)face->margin.ceiling;
                const Real c = sign * ((Real)line.off - margin) - s * (Real)line.from;
                if (1 - lean * s > 1e-12L || 1 - lean * s < -1e-12L)
                    add_event(arena, events, (x0 + lean * c) / (1 - lean * s));
            }
        if (right)
            for (int j = 1; j < face->left.count; j++) {
                const Line other = line_of(&face->left, j);
                if (other.to == other.from)
                    continue;
                const Real m = (Real)(other.off_to - other.off) / (Real)(other.to - other.from);
                const Real z0 = (Real)ground->left + (Real)other.off - m * (Real)other.from;
                if (m - lean > 1e-12L || m - lean < -1e-12L)
                    add_event(arena, events, x0 + lean * (x0 - z0) / (m - lean));
            }
    }
}

static int by_value(const void *a, const void *b)
{
    const Real p = *(const Real *)a, q = *(const Real *)b;
    return (p > q) - (p < q);
}

static Events events_of(Arena *arena, const Ground *ground, Length bottom, Length top, bool sides)
{
    const Face *face = ground->face;
    Events events = {0};
    Events heights = {0};
    add_event(arena, &heights, (Real)bottom);
    add_event(arena, &heights, (Real)top);
    for (int i = 0; i < ground->box_count; i++) {
        add_event(arena, &events, (Real)ground->boxes[i].left);
        add_event(arena, &events, (Real)ground->boxes[i].right);
        add_event(arena, &heights, (Real)ground->boxes[i].bottom);
        add_event(arena, &heights, (Real)ground->boxes[i].top);
    }
    for (int i = 0; i < face->left.count; i++)
        add_event(arena, &heights, (Real)face->left.at[i].at);
    for (int i = 0; i < face->right.count; i++)
        add_event(arena, &heights, (Real)face->right.at[i].at);
    for (int i = 0; i < face->floor.count; i++)
        add_event(arena, &events, (Real)face->floor.at[i].at);
    for (int i = 0; i < face->ceiling.count; i++)
        add_event(arena, &events, (Real)face->ceiling.at[i].at);
    add_event(arena, &events, (Real)ground->left);
    add_event(arena, &events, (Real)ground->right);
    for (int i = 0; i < heights.count; i++) {
        add_height(arena, &events, &face->floor, -1, (Real)face->margin.floor, heights.at[i]);
        add_height(arena, &events, &face->ceiling, 1, (Real)face->margin.ceiling, heights.at[i]);
        if (sides) {
            add_side(arena, &events, ground, false, heights.at[i]);
            add_side(arena, &events, ground, true, heights.at[i]);
        }
    }
    /* floor meets ceiling: both straight between the marks of both */
    Events marks = {0};
    for (int i = 0; i < face->floor.count; i++)
        add_event(arena, &marks, (Real)face->floor.at[i].at);
    for (int i = 0; i < face->ceiling.count; i++)
        add_event(arena, &marks, (Real)face->ceiling.at[i].at);
    qsort(marks.at, (size_t)marks.count, sizeof *marks.at, by_value);
    for (int i = 0; i + 1 < marks.count; i++) {
        const Real p = marks.at[i], q = marks.at[i + 1];
        const Real a = ground_upper(ground, p, true) - ground_lower(ground, p, true);
        const Real b = ground_upper(ground, q, false) - ground_lower(ground, q, false);
        if ((a < 0) != (b < 0))
            add_event(arena, &events, p + (q - p) * a / (a - b));
    }
    if (sides) {
        add_meetings(arena, &events, ground, false);
        add_meetings(arena, &events, ground, true);
    }
    return events;
}

/* ---- a column ---- */

static int heights_at(const Ground *ground, Length bottom, Length top, Real x, bool sides, Real *heights)
{
    const Face *face = ground->face;
    int count = 0;
    heights[count++] = (Real)bottom;
    heights[count++] = (Real)top;
    heights[count++] = ground_lower(ground, x, true);
    heights[count++] = ground_upper(ground, x, true);
    for (int i = 0; i < ground->box_count && count + 2 <= EVENTS_MOST; i++)
        if ((Real)ground->boxes[i].left < x && x < (Real)ground->boxes[i].right) {
            heights[count++] = (Real)ground->boxes[i].bottom;
            heights[count++] = (Real)ground->boxes[i].top;
        }
    for (int side = 0; sides && side < 2; side++) {
        const Marks *marks = side == 0 ? &face->left : &face->right;
        const Real off = side == 0 ? x - (Real)ground->left : (Real)ground->right - x;
        for (int i = 0; i < marks->count && count + 2 <= EVENTS_MOST; i++) {
            heights[count++] = (Real)marks->at[i].at;
            const Line line = line_of(marks, i);
            const Real a = (Real)line.off - off, b = (Real)line.off_to - off;
            if (!line.level && (a < 0) != (b < 0) && line.to > line.from)
                heights[count++] = (Real)line.from + (Real)(line.to - line.from) * a / (a - b);
        }
    }
    qsort(heights, (size_t)count, sizeof *heights, by_value);
    return count;
}

/* The parts at x; `end` 0 or 1 to put them in, -1 only to add their heights up. */
static int look_at(const Ground *ground, Length bottom, Length top, Real x, bool sides, int end, Column *column)
{
    Real heights[EVENTS_MOST];
    const int count = heights_at(ground, bottom, top, x, sides, heights);
    const int64_t at = on_grid(x);
    int parts = 0;
    bool before = false;
    for (int i = 0; i + 1 < count; i++) {
        const Real low = heights[i], high = heights[i + 1], middle = (low + high) / 2;
        if (high - low < NARROW)
            continue;
        const bool in_band = middle > (Real)bottom && middle < (Real)top;
        const bool region = in_band && within(ground, at, on_grid(middle), sides);
        const bool wood = region && !taken(ground, at, on_grid(middle));
        if (end < 0) {
            column->region += region ? high - low : 0;
            column->wood += wood ? high - low : 0;
        } else if (wood && before && parts > 0) {
            column->parts[parts - 1].top[end] = high;
        } else if (wood && parts < PARTS_MOST) {
            column->parts[parts].bottom[end] = low;
            column->parts[parts++].top[end] = high;
        }
        before = wood;
    }
    return parts;
}

static Column column_of(const Ground *ground, Length bottom, Length top, Real left, Real right, bool sides)
{
    Column column = {.left = left, .right = right};
    const Real in = right - left > 1 ? 1.0L / 16 : (right - left) / 16;
    look_at(ground, bottom, top, (left + right) / 2, sides, -1, &column);
    const int at_left = look_at(ground, bottom, top, left + in, sides, 0, &column);
    const int at_right = look_at(ground, bottom, top, right - in, sides, 1, &column);
    column.part_count = at_left < at_right ? at_left : at_right;
    return column;
}

Columns ground_columns(Arena *arena, const Ground *ground, Length bottom, Length top, const Length *cuts, int cut_count,
                       bool sides)
{
    Events events = events_of(arena, ground, bottom, top, sides);
    Columns columns = {0};
    for (int i = 0; i < cut_count; i++)
        add_event(arena, &events, (Real)cuts[i]);
    qsort(events.at, (size_t)events.count, sizeof *events.at, by_value);
    for (int i = 0; i + 1 < events.count; i++)
        if (events.at[i + 1] - events.at[i] >= NARROW) {
            const Column column = column_of(ground, bottom, top, events.at[i], events.at[i + 1], sides);
            if (column.region > 0)
                *arena_push(arena, &columns) = column;
        }
    return columns;
}

Real ground_area(const Columns *columns, Real left, Real right, bool with_openings)
{
    Real area = 0;
    for (int i = 0; i < columns->count; i++) {
        const Column *column = &columns->at[i];
        if (column->left >= left - NARROW && column->right <= right + NARROW)
            area += (column->right - column->left) * (with_openings ? column->region : column->wood);
    }
    return area;
}

/* ---- a face ---- */

/* What the corner at a face's side takes from it; less than nothing where it gains. `met` is the other face, `own` says
 * whether this one runs through. */
static Length corner_takes(const Wall *wall, const Corner *corner, const Face *met, bool runs_through)
{
    const Length s = met->backing, t = s + wall->planks.thickness;
    switch (corner->kind) {
    case CORNER_INSIDE: return corner->joint == CORNER_BUTT && !runs_through ? t : s;
    case CORNER_OUTSIDE:
        return corner->joint == CORNER_TRIM ? 0 : corner->joint == CORNER_LAP && !runs_through ? -s : -t;
    case CORNER_NONE: break;
    }
    return 0;
}

static GroundBox box_of(const Face *face, int index)
{
    const Opening *opening = &face->openings.at[index];
    const Real level = -limit_off(&face->floor, (Real)opening->left, true);
    const Length foot = (Length)(level < 0 ? level - 0.5L : level + 0.5L);
    const Length bottom = opening->to_floor ? foot : opening->above_given ? foot + opening->above : opening->bottom;
    const Length top = opening->top_given ? opening->top : bottom + opening->height;
    const bool down = opening->to_floor || opening->kind == OPENING_DOOR;
    return (GroundBox){.opening = index,
                       .left = opening->left - opening->clear,
                       .right = opening->left + opening->width + opening->clear,
                       .bottom = down ? -4 * LENGTH_MOST : bottom - opening->clear,
                       .top = top + opening->clear};
}

Ground ground_of(Arena *arena, const Wall *wall, int index)
{
    const Faces *faces = &wall->faces;
    const Face *face = &faces->at[index];
    Ground ground = {.wall = wall, .face = face, .left = face->margin.left, .right = face->width - face->margin.right};
    const int before = (index + faces->count - 1) % faces->count, behind = (index + 1) % faces->count;
    ground.left += corner_takes(wall, &faces->at[before].corner, &faces->at[before],
                                faces->at[before].corner.through == THROUGH_RIGHT);
    ground.right -= corner_takes(wall, &face->corner, &faces->at[behind], face->corner.through == THROUGH_LEFT);
    ground.boxes = arena_array(arena, GroundBox, face->openings.count);
    for (int i = 0; i < face->openings.count; i++)
        if (face->openings.at[i].kind != OPENING_STOVE)
            ground.boxes[ground.box_count++] = box_of(face, i);
    return ground;
}
