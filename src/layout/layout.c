#include "layout/layout.h"

#include "base/panic.h"
#include "layout/bands.h"
#include "layout/findings.h"
#include "layout/rip.h"
#include "layout/slant.h"
#include "layout/strips.h"
#include "layout/tiles.h"
#include "wall/straight.h"

#include <stdio.h>

/*
 *                upper(x): ceiling less margin
 *              ________________________-------
 *             /                               |
 *      left(y)/  top     ------------------   | right(y): width less side, margin and corner
 *            /             course k           |
 *           /    bottom  ------------------   |
 *           `-----._______                    |
 *                         `-------------------+
 *                lower(x): floor plus margin
 *
 * A course's region is its band cut by the four limits. Where the sides are plumb within the band its tiles are its
 * slabs. Where they lean, tiles with the sides in them tell its extent, its segments and its area; the slabs then tile
 * that extent by floor, ceiling and openings alone.
 *
 * Invariants: courses rise by number; slabs and segments stand left to right; every slab has height; left < right.
 */

/* A course of less than 0.001 mm2 does not exist. */
#define AREA_LEAST ((Wide)1000000000)

typedef struct Bench {
    Arena *arena;   /* of the result */
    Arena *scratch; /* of one course */
    Layout *layout;
    bool texts;
    Length start;
} Bench;

typedef struct CourseList {
    Course *at;
    int count;
    int room;
} CourseList;

/* ---- a face's limits ---- */

static Points limit_of(Arena *arena, const Marks *marks, bool up, Length margin)
{
    Points points = {.at = arena_array(arena, Point, marks->count), .count = marks->count, .room = marks->count};
    for (int i = 0; i < marks->count; i++) {
        const Mark *mark = &marks->at[i];
        points.at[i] = (Point){mark->at, up ? mark->off - margin : margin - mark->off};
    }
    return points;
}

/* A side without marks is plumb. */
static Points side_of(Arena *arena, const Marks *marks, Length plumb, int sign)
{
    const int count = marks->count > 0 ? marks->count : 1;
    Points points = {.at = arena_array(arena, Point, count), .count = count, .room = count};
    points.at[0] = (Point){plumb, 0};
    for (int i = 0; i < marks->count; i++)
        points.at[i] = (Point){plumb + sign * marks->at[i].off, marks->at[i].at};
    return points;
}

/* The opening grown by `clear` on all sides: a height above the floor is measured where its left edge stands; one that
 * reaches to below the floor has its bottom 4 km down. */
static Box grown_box(const Face *face, const Opening *opening)
{
    Box box = {.left = opening->left - opening->clear,
               .right = opening->left + opening->width + opening->clear,
               .bottom = opening_foot(face, opening) - opening->clear,
               .top = opening_head(face, opening) + opening->clear};
    if (opening->to_floor || opening->kind == OPENING_DOOR)
        box.bottom = -LAYOUT_FAR;
    return box;
}

static void lay_limits(Bench *bench, int index)
{
    const Wall *wall = bench->layout->wall;
    const Face *face = &wall->faces.at[index];
    FaceLayout *laid = &bench->layout->faces[index];
    laid->lower = limit_of(bench->arena, &face->floor, false, face->margin.floor);
    laid->upper = limit_of(bench->arena, &face->ceiling, true, face->margin.ceiling);
    laid->left = side_of(bench->arena, &face->left, face->margin.left + wall_corner_loss_left(wall, index), 1);
    laid->right =
        side_of(bench->arena, &face->right, face->width - face->margin.right - wall_corner_loss_right(wall, index), -1);
    laid->openings = arena_array(bench->arena, Box, face->openings.count);
    for (int i = 0; i < face->openings.count; i++)
        laid->openings[i] = grown_box(face, &face->openings.at[i]);
    laid->studs = wall_studs(bench->arena, face);
}

/* ---- one course ---- */

static Slab slab_of(Arena *arena, const Tile *tile)
{
    Slab slab = {.left = tile->left.x,
                 .right = tile->right.x,
                 .lower_left = tile->lower_left,
                 .lower_right = tile->lower_right,
                 .upper_left = tile->upper_left,
                 .upper_right = tile->upper_right,
                 .lower_edge = tile->lower->edge,
                 .upper_edge = tile->upper->edge,
                 .parts = arena_array(arena, Part, tile->part_count),
                 .part_count = tile->part_count};
    for (int i = 0; i < tile->part_count; i++) {
        const TilePart *part = &tile->parts[i];
        slab.parts[i] = (Part){.bottom_left = part->bottom_left,
                               .bottom_right = part->bottom_right,
                               .top_left = part->top_left,
                               .top_right = part->top_right,
                               .bottom_edge = part->bottom->edge,
                               .top_edge = part->top->edge,
                               .bottom_opening = part->bottom->opening,
                               .top_opening = part->top->opening};
    }
    return slab;
}

static void lay_slabs(Arena *arena, Course *course, const Tiles *tiles)
{
    course->slabs = arena_array(arena, Slab, tiles->count);
    course->slab_count = tiles->count;
    for (int i = 0; i < tiles->count; i++)
        course->slabs[i] = slab_of(arena, &tiles->at[i]);
}

typedef struct SegmentList {
    Segment *at;
    int count;
    int room;
} SegmentList;

/* One end of the wood in the tiles first..last of a course. */
typedef struct WoodEnd {
    const Tiles *wood;
    int first, last;
    bool right;
    Length side; /* where the face's side reaches furthest out within the course */
} WoodEnd;

/* What ends the segment there, and what the blade takes. */
static void end_segment(const Layout *layout, int face, const Course *course, const WoodEnd *at, Segment *segment)
{
    bool through;
    const bool right = at->right;
    const Slant slant = slant_of_end(at->wood, at->first, at->last, right);
    const Length x = right ? at->wood->at[at->last].right.x : at->wood->at[at->first].left.x;
    const Corner corner =
        right ? wall_corner_right(layout->wall, face, &through) : wall_corner_left(layout->wall, face, &through);
    SegmentEnd end = slant.side || x == at->side ? SEGMENT_AT_SIDE : SEGMENT_AT_LIMIT;
    const bool miter = end == SEGMENT_AT_SIDE && corner.kind == CORNER_OUTSIDE && corner.joint == CORNER_MITER;
    for (int i = 0; i < course->cut_count && end == SEGMENT_AT_LIMIT; i++)
        if (x == (right ? course->cuts[i].box.left : course->cuts[i].box.right))
            end = SEGMENT_AT_OPENING;
    *(right ? &segment->right_end : &segment->left_end) = end;
    *(right ? &segment->right_kerf : &segment->left_kerf) = slant_kerf(layout->wall->saw.kerf, &slant, miter);
}

/* `left` and `right` are where the face's sides reach furthest out within the course. */
static void lay_segments(Bench *bench, int face, Course *course, const Tiles *wood, Length left, Length right)
{
    SegmentList segments = {0};
    int first = 0; /* the segment's first tile */
    for (int i = 0; i < wood->count; i++) {
        const Tile *tile = &wood->at[i];
        if (tile->part_count == 0)
            continue;
        if (i == 0 || segments.count == 0 || !tiles_joined(&wood->at[i - 1], tile)) {
            first = i;
            *arena_push(bench->scratch, &segments) = (Segment){.left = tile->left.x};
            end_segment(bench->layout, face, course, &(WoodEnd){wood, i, wood->count - 1, false, left},
                        &segments.at[segments.count - 1]);
        }
        Segment *segment = &segments.at[segments.count - 1];
        segment->right = tile->right.x;
        if (i + 1 == wood->count || wood->at[i + 1].part_count == 0 || !tiles_joined(tile, &wood->at[i + 1]))
            end_segment(bench->layout, face, course, &(WoodEnd){wood, first, i, true, right}, segment);
    }
    course->segments = arena_array(bench->arena, Segment, segments.count);
    course->segment_count = segments.count;
    int slab = 0;
    for (int i = 0; i < segments.count; i++) {
        Segment *segment = &course->segments[i];
        *segment = segments.at[i];
        while (slab < course->slab_count && course->slabs[slab].right <= segment->left)
            slab++;
        int end = slab;
        while (end < course->slab_count && course->slabs[end].left < segment->right)
            end++;
        segment->slab_first = slab;
        segment->slab_count = end - slab;
    }
}

typedef struct CutList {
    Cut *at;
    int count;
    int room;
} CutList;

/* Grown openings that reach into the band. */
static CutList cuts_in_band(Bench *bench, int index, const TileField *field)
{
    const Face *face = &bench->layout->wall->faces.at[index];
    CutList cuts = {0};
    for (int i = 0; i < face->openings.count; i++) {
        const Box *box = &field->face->openings[i];
        if (face->openings.at[i].kind != OPENING_STOVE && box->bottom < field->top && box->top > field->bottom &&
            box->left < field->to.x && box->right > field->from.x)
            *arena_push(bench->scratch, &cuts) = (Cut){.opening = i, .box = *box};
    }
    return cuts;
}

/* Those of them that take something of the region. */
static CutList cuts_that_meet(Arena *arena, const CutList *in_band, const Tiles *region)
{
    CutList cuts = {.at = arena_array(arena, Cut, in_band->count), .room = in_band->count};
    for (int i = 0; i < in_band->count; i++)
        if (tiles_meet(region, &in_band->at[i].box))
            cuts.at[cuts.count++] = in_band->at[i];
    return cuts;
}

static Length greatest_height(const Tiles *tiles)
{
    Length most = 0;
    for (int i = 0; i < tiles->count; i++) {
        const Tile *tile = &tiles->at[i];
        const Length left = tile->upper_left - tile->lower_left;
        const Length right = tile->upper_right - tile->lower_right;
        most = left > most ? left : most;
        most = right > most ? right : most;
    }
    return most;
}

/* Leaves out tiles at either end of which nothing but what lies beyond the sides was. */
static Tiles trim_ends(Tiles tiles)
{
    while (tiles.count > 0 && tiles.at[0].part_count == 0) {
        tiles.at++;
        tiles.count--;
    }
    while (tiles.count > 0 && tiles.at[tiles.count - 1].part_count == 0)
        tiles.count--;
    return tiles;
}

/* A course that is nowhere higher than the wall says is left away. */
static bool is_left_away(const Bench *bench, int index, int64_t number, const Tiles *region)
{
    const Length height = greatest_height(region);
    const bool away = height <= bench->layout->wall->planks.leave;
    if (away && bench->texts)
        report_left_away(bench->arena, bench->layout, index, number, height);
    return away;
}

/* What of the course stays in parts where openings are taken out: as `wood`, or, where sides lean, so far beyond them
 * that each part ends upright. */
static Tiles slabs_of(Bench *bench, TileField cut, const CutList *in_band, const Tiles *region, const Tiles *wood)
{
    if (!cut.sides)
        return *wood;
    cut.cuts = in_band->at;
    cut.cut_count = in_band->count;
    cut.sides = false;
    cut.from = region->at[0].left;
    cut.to = region->at[region->count - 1].right;
    return tiles_of(bench->scratch, &cut);
}

/* False where the face has no such course. Adds to `area` twice what its wood covers. */
static bool lay_course(Bench *bench, int index, const CourseBand *band, Course *course, Wide *area)
{
    const FaceLayout *face = &bench->layout->faces[index];
    Length left, left_inner, right_inner, right;
    limit_range(&face->left, true, band->bottom, band->top, &left, &left_inner);
    limit_range(&face->right, true, band->bottom, band->top, &right_inner, &right);
    if (left >= right)
        return false;
    TileField field = {.face = face,
                       .bottom = band->bottom,
                       .top = band->top,
                       .from = place_at(left),
                       .to = place_at(right),
                       .sides = left != left_inner || right != right_inner};
    const Tiles region = trim_ends(tiles_of(bench->scratch, &field));
    if (region.count == 0 || tiles_area(&region) < 2 * AREA_LEAST || is_left_away(bench, index, band->number, &region))
        return false;
    const CutList in_band = cuts_in_band(bench, index, &field);
    const CutList cuts = cuts_that_meet(bench->arena, &in_band, &region);
    *course = (Course){.number = band->number,
                       .bottom = band->bottom,
                       .top = band->top,
                       .width = wall_course_width(bench->layout->wall, band->number),
                       .left = region.at[0].left.x,
                       .right = region.at[region.count - 1].right.x,
                       .cuts = cuts.at,
                       .cut_count = cuts.count};
    field.cuts = cuts.at;
    field.cut_count = cuts.count;
    const Tiles wood = cuts.count > 0 ? tiles_of(bench->scratch, &field) : region;
    const Tiles slabs = slabs_of(bench, field, &in_band, &region, &wood);
    course->rip = rip_of(bench->arena, bench->scratch, &slabs, band->top - band->bottom);
    lay_slabs(bench->arena, course, &slabs);
    lay_segments(bench, index, course, &wood, left, right);
    *area += tiles_area(&wood);
    return true;
}

/* ---- the faces ---- */

/* No room of planks is this high: what is measured so is the slip, else the planks are too narrow. */
#define HIGH (100 * (Length)1000000000)

/* The place is the field path of what makes the courses so many. */
static bool too_many(const Wall *wall, int index, Length lowest, Length highest, Err *err)
{
    char path[64];
    bool high = highest - lowest > HIGH;
    if (high)
        snprintf(path, sizeof path, "faces[%d].%s", index, highest > -lowest ? "ceiling" : "floor");
    else
        snprintf(path, sizeof path, "planks.width%s", wall->planks.widths.count > 1 ? "[0]" : "");
    err_set(err, ERR_LIMIT, "%s more than %d courses; write %s",
            high ? "a wall this high takes" : "planks this narrow make", WALL_COURSES_MOST,
            high ? "how high it is, from the level line" : "wider planks, or measure the faces again");
    return err_at(err, path, 0, 0);
}

static bool lay_face(Bench *bench, int index, Err *err)
{
    Layout *layout = bench->layout;
    FaceLayout *face = &layout->faces[index];
    lay_limits(bench, index);
    Length left, right, unused, lowest, highest;
    limit_range(&face->left, true, -LAYOUT_FAR, LAYOUT_FAR, &left, &unused);
    limit_range(&face->right, true, -LAYOUT_FAR, LAYOUT_FAR, &unused, &right);
    if (left >= right)
        return true;
    limit_range(&face->lower, false, left, right, &lowest, &unused);
    limit_range(&face->upper, false, left, right, &unused, &highest);
    arena_reset(bench->scratch);
    const BandsAsked asked = {bench->start, lowest, highest, WALL_COURSES_MOST - layout->course_total};
    CourseBands bands;
    Arena *own = arena_new();
    bool fits = bands_of_face(own, layout->wall, index, &asked, &bands);
    for (int i = 0; bench->texts && i < bands.misfits.count; i++)
        report_misfit(bench->arena, layout, index, &bands.misfits.at[i]);
    if (bench->texts && fits)
        report_measured(bench->arena, layout, index, &bands);
    CourseList courses = {0};
    Wide area = 0;
    for (int i = 0; fits && i < bands.count; i++) {
        Course course;
        arena_reset(bench->scratch);
        if (lay_course(bench, index, &bands.at[i], &course, &area))
            *arena_push(bench->arena, &courses) = course;
    }
    arena_free(own);
    face->courses = courses.at;
    face->course_count = courses.count;
    face->area = wide_divide(area, 2);
    layout->course_total += courses.count;
    return fits || too_many(layout->wall, index, lowest, highest, err);
}

static Layout *lay_wall(Arena *arena, const Wall *wall, Length start, bool texts, Err *err)
{
    BUG_UNLESS(wall->planks.widths.count > 0);
    Bench bench = {.arena = arena, .scratch = arena_new(), .texts = texts, .start = start};
    Layout *layout = arena_one(arena, Layout);
    bench.layout = layout;
    layout->wall = wall;
    layout->faces = arena_array(arena, FaceLayout, wall->faces.count);
    bool done = true;
    for (int i = 0; done && i < wall->faces.count; i++) {
        done = lay_face(&bench, i, err);
        for (int j = 0; j < layout->faces[i].course_count; j++) {
            strips_weigh(layout, i, &layout->faces[i].courses[j]);
            if (texts)
                report_slivers(arena, layout, i, &layout->faces[i].courses[j]);
        }
    }
    if (done && texts)
        report_wall(arena, layout);
    arena_free(bench.scratch);
    return done ? layout : NULL;
}

Length layout_side_at(const Points *side, Length y)
{
    const Point *at = side->at;
    BUG_UNLESS(side->count > 0);
    if (y <= at[0].y)
        return at[0].x;
    for (int i = 1; i < side->count; i++)
        if (y <= at[i].y)
            return straight_at(at[i - 1].y, at[i - 1].x, at[i].y, at[i].x, y);
    return at[side->count - 1].x;
}

Layout *layout_wall(Arena *arena, const Wall *wall, Err *err)
{
    return lay_wall(arena, wall, wall->start, true, err);
}

Layout *layout_wall_at(Arena *arena, const Wall *wall, Length start, Err *err)
{
    return lay_wall(arena, wall, start, false, err);
}
