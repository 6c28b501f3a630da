#include "layout/layout.h"

#include "base/panic.h"
#include "layout/outline.h"
#include "layout/tiles.h"
#include "wall/straight.h"

#include <stdlib.h>

/*
 * Questions about a piece between two ends of a course.
 *
 *      top     -----+-----------------+-----.           left, right: its ends. An end of a whole segment at a leaning
 *                   |                 |      `.         side is slanted: its outermost x is the segment's, rounded, so
 *      bottom  -----+-----------------+--------`        that nothing is clipped there.
 *                  left             right
 */

static bool leans(const Points *side, const Course *course)
{
    Length lowest, highest;
    limit_range(side, true, course->bottom, course->top, &lowest, &highest);
    return lowest != highest;
}

static bool ends_segment(const Course *course, Length x, bool right)
{
    for (int i = 0; i < course->segment_count; i++)
        if ((right ? course->segments[i].right : course->segments[i].left) == x)
            return true;
    return false;
}

/* Whether the tiles have wood left of `left`, right of `right`. */
static bool reaches_left(const Tiles *tiles, Length left)
{
    for (int i = 0; i < tiles->count && tiles->at[i].left.x < left; i++)
        if (tiles->at[i].part_count > 0)
            return true;
    return false;
}

static bool reaches_right(const Tiles *tiles, Length right)
{
    for (int i = tiles->count - 1; i >= 0 && tiles->at[i].right.x > right; i--)
        if (tiles->at[i].part_count > 0)
            return true;
    return false;
}

/* The course's region between the ends, openings left in; `field` gets what it was cut from. */
static Tiles region_between(Arena *arena, const FaceLayout *face, const Course *course, Length left, Length right,
                            TileField *field)
{
    *field = (TileField){.face = face,
                         .bottom = course->bottom,
                         .top = course->top,
                         .from = place_at(left),
                         .to = place_at(right),
                         .sides = leans(&face->left, course) || leans(&face->right, course)};
    const bool slant_left = field->sides && ends_segment(course, left, false);
    const bool slant_right = field->sides && ends_segment(course, right, true);
    if (!slant_left && !slant_right)
        return tiles_of(arena, field);
    /* The end at a leaning side was rounded; the exact one may lie a little further out. Where it is an opening's, the
     * region goes on beyond it and is cut there. */
    if (slant_left)
        field->from = place_at(left - 1);
    if (slant_right)
        field->to = place_at(right + 1);
    const Tiles tiles = tiles_of(arena, field);
    const bool beyond_left = reaches_left(&tiles, left);
    const bool beyond_right = reaches_right(&tiles, right);
    if (!beyond_left && !beyond_right)
        return tiles;
    if (beyond_left)
        field->from = place_at(left);
    if (beyond_right)
        field->to = place_at(right);
    return tiles_of(arena, field);
}

Points layout_outline(Arena *arena, const FaceLayout *face, const Course *course, Length left, Length right)
{
    if (left >= right)
        return (Points){0};
    TileField field;
    const Tiles tiles = region_between(arena, face, course, left, right, &field);
    return outline_of(arena, &tiles);
}

Wide layout_area(Arena *arena, const FaceLayout *face, const Course *course, Length left, Length right)
{
    if (left >= right)
        return 0;
    TileField field;
    Tiles tiles = region_between(arena, face, course, left, right, &field);
    if (course->cut_count > 0) {
        field.cuts = course->cuts;
        field.cut_count = course->cut_count;
        tiles = tiles_of(arena, &field);
    }
    return wide_divide(tiles_area(&tiles), 2);
}

/* ---- cutouts ---- */

static const char *const shape_words[] = {
    [CUT_HOLE] = "hole",   [CUT_TOP] = "top",       [CUT_BOTTOM] = "bottom", [CUT_LEFT] = "left",
    [CUT_RIGHT] = "right", [CUT_CORNER] = "corner", [CUT_EDGE] = "edge",
};

const char *cut_shape_word(CutShape shape)
{
    BUG_UNLESS((size_t)shape < sizeof shape_words / sizeof *shape_words);
    return shape_words[shape];
}

/* Whether the box reaches the outline's lower or upper side anywhere along the stretch that both have. */
static bool breaks_long(const Tiles *tiles, const Box *box, bool top)
{
    for (int i = 0; i < tiles->count; i++) {
        const Tile *tile = &tiles->at[i];
        const ExactPlace left = box->left > tile->left.x ? place_at(box->left) : tile->left;
        const ExactPlace right = box->right < tile->right.x ? place_at(box->right) : tile->right;
        if (left.x >= right.x)
            continue;
        const Rail *rail = top ? tile->upper : tile->lower;
        const Length a = rail_at(rail, &left);
        const Length b = rail_at(rail, &right);
        if (top ? box->top >= a || box->top >= b : box->bottom <= a || box->bottom <= b)
            return true;
    }
    return false;
}

/* Whether the box reaches the piece's end, be that a joint or the side. */
static bool breaks_end(const FaceLayout *face, const Box *box, Length end, bool right)
{
    Length lowest, highest;
    limit_range(right ? &face->right : &face->left, true, box->bottom, box->top, &lowest, &highest);
    if (right)
        return box->right >= end || box->right >= lowest;
    return box->left <= end || box->left <= highest;
}

static CutShape shape_of(bool top, bool bottom, bool left, bool right)
{
    const bool side = top || bottom;
    if (side && (left || right))
        return left && right ? CUT_EDGE : CUT_CORNER;
    if (side)
        return top ? CUT_TOP : CUT_BOTTOM;
    if (left && right)
        return CUT_EDGE;
    return left ? CUT_LEFT : right ? CUT_RIGHT : CUT_HOLE;
}

static int compare_cutouts(const void *left, const void *right)
{
    const Cutout *a = left;
    const Cutout *b = right;
    if (a->box.left != b->box.left)
        return a->box.left < b->box.left ? -1 : 1;
    if (a->box.bottom != b->box.bottom)
        return a->box.bottom < b->box.bottom ? -1 : 1;
    return a->opening - b->opening;
}

Cutouts layout_cutouts(Arena *arena, const FaceLayout *face, const Course *course, Length left, Length right)
{
    Cutouts cutouts = {0};
    Tiles tiles = {0};
    bool ready = false;
    for (int i = 0; i < course->cut_count; i++) {
        const Cut *cut = &course->cuts[i];
        Box box = cut->box;
        box.left = box.left > left ? box.left : left;
        box.right = box.right < right ? box.right : right;
        box.bottom = box.bottom > course->bottom ? box.bottom : course->bottom;
        box.top = box.top < course->top ? box.top : course->top;
        if (box.left >= box.right || box.bottom >= box.top)
            continue;
        if (!ready) {
            TileField field;
            tiles = region_between(arena, face, course, left, right, &field);
            ready = true;
        }
        if (!tiles_meet(&tiles, &box))
            continue;
        const CutShape shape = shape_of(breaks_long(&tiles, &box, true), breaks_long(&tiles, &box, false),
                                        breaks_end(face, &box, left, false), breaks_end(face, &box, right, true));
        *arena_push(arena, &cutouts) = (Cutout){.opening = cut->opening, .shape = shape, .box = box};
    }
    if (cutouts.count > 1)
        qsort(cutouts.at, (size_t)cutouts.count, sizeof *cutouts.at, compare_cutouts);
    return cutouts;
}

/* ---- does it hang together, and how wide is it ---- */

/* The course's slabs that have some stretch between the ends: from `first` on, `count` of them. */
static void slabs_between(const Course *course, Length left, Length right, int *first, int *count)
{
    int low = 0, high = course->slab_count;
    while (low < high) {
        const int middle = low + (high - low) / 2;
        if (course->slabs[middle].right <= left)
            low = middle + 1;
        else
            high = middle;
    }
    *first = low;
    while (low < course->slab_count && course->slabs[low].left < right)
        low++;
    *count = low - *first;
}

static bool parts_touch(const Part *left, const Part *right)
{
    const Length low = left->bottom_right > right->bottom_left ? left->bottom_right : right->bottom_left;
    const Length high = left->top_right < right->top_left ? left->top_right : right->top_left;
    return low < high;
}

/* Each part points to another of its body, in the end to the one that points to itself. */
static int body_of(const int *of, int part)
{
    while (of[part] != part)
        part = of[part];
    return part;
}

/* Joins the bodies of parts that touch across neighbouring slabs; returns how many pairs became one. */
static int join_bodies(int *of, int base, const Slab *here, const Slab *next)
{
    int joined = 0;
    for (int i = 0; i < here->part_count; i++)
        for (int j = 0; j < next->part_count; j++) {
            if (!parts_touch(&here->parts[i], &next->parts[j]))
                continue;
            const int a = body_of(of, base + i);
            const int b = body_of(of, base + here->part_count + j);
            joined += a != b;
            of[b] = a;
        }
    return joined;
}

bool layout_whole(const Course *course, Length left, Length right)
{
    int first, count, total = 0;
    slabs_between(course, left, right, &first, &count);
    const Slab *slabs = &course->slabs[first];
    for (int i = 0; i < count; i++) {
        total += slabs[i].part_count;
        if (slabs[i].part_count == 0 || (i > 0 && slabs[i - 1].right != slabs[i].left))
            return false;
    }
    if (total <= 1)
        return total == 1;
    int *of = malloc((size_t)total * sizeof *of);
    if (of == NULL)
        panic_no_memory();
    for (int i = 0; i < total; i++)
        of[i] = i;
    int bodies = total, base = 0;
    for (int i = 0; i + 1 < count; i++) {
        bodies -= join_bodies(of, base, &slabs[i], &slabs[i + 1]);
        base += slabs[i].part_count;
    }
    free(of);
    return bodies == 1;
}

/* y of an edge of the slab at x, to the nearest nanometre. */
static Length edge_at(const Slab *slab, Length y_left, Length y_right, Length x)
{
    return straight_at(slab->left, y_left, slab->right, y_right, x);
}

Length layout_height(const Course *course, Length left, Length right)
{
    int first, count;
    Length lowest = course->top, highest = course->bottom;
    slabs_between(course, left, right, &first, &count);
    for (int i = 0; i < count; i++) {
        const Slab *slab = &course->slabs[first + i];
        const Length ends[] = {slab->left > left ? slab->left : left, slab->right < right ? slab->right : right};
        for (int j = 0; j < 2; j++) {
            const Length lower = edge_at(slab, slab->lower_left, slab->lower_right, ends[j]);
            const Length upper = edge_at(slab, slab->upper_left, slab->upper_right, ends[j]);
            lowest = lower < lowest ? lower : lowest;
            highest = upper > highest ? upper : highest;
        }
    }
    return highest > lowest ? highest - lowest : 0;
}

Length layout_need(const Wall *wall, const Course *course, Length left, Length right)
{
    int first, count;
    bool cut = true;
    slabs_between(course, left, right, &first, &count);
    for (int i = 0; i < count; i++) {
        const Slab *slab = &course->slabs[first + i];
        const bool taken = slab->part_count == 0 || slab->parts[slab->part_count - 1].top_edge != EDGE_BAND;
        cut &= taken;
    }
    /* A measured edge can leave a course more room than its planks fill. */
    const Length need = layout_height(course, left, right) + (cut ? 0 : wall->planks.lap);
    return need < course->width ? need : course->width;
}
