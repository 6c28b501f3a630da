#include "layout/tiles.h"

#include "wall/straight.h"

#include <stdlib.h>

/*
 *      top    ------------------------------+----.            A tile lies between two neighbouring breaks: places where
 *             :   part   :    part          :     `-. upper   an edge begins, ends or crosses another. Within it no two
 *             :          +---------+        :        `        edges cross, so that what is left of the band is a few
 *             :          | opening |        :                 trapezoids one above the other.
 *             :          +---------+        :
 *      bottom -----------:---------:--------:---------        What lies beyond a leaning side is taken out like an
 *           break      break     break    break               opening: below or above its rail, left or right of it.
 *
 * Invariants: tiles stand left to right and do not overlap; left.x < right.x; each part has some height at one of its
 * ends at least and is nowhere turned over. Breaks that round to one nanometre are one: the tile left of it ends at the
 * first, the tile right of it begins at the last.
 */

/* Something that takes a piece out of the band between left and right: from lo up to hi. */
typedef struct Obstacle {
    Length left, right;
    Rail lo, hi;
} Obstacle;

typedef struct Obstacles {
    Obstacle *at;
    int count;
    int room;
} Obstacles;

typedef struct ExactPlaces {
    ExactPlace *at;
    int count;
    int room;
} ExactPlaces;

typedef struct Edging {
    const Rail *rail;
} Edging;

typedef struct Edgings {
    Edging *at;
    int count;
    int room;
} Edgings;

typedef struct Tiling {
    Arena *arena;
    const TileField *field;
    Rail bottom, top;
    Rails lower, upper;
    Obstacles obstacles;
    ExactPlaces breaks;
} Tiling;

static Rail level_rail(Length y, Edge edge, int opening)
{
    return (Rail){.x0 = -LAYOUT_FAR, .y0 = y, .x1 = LAYOUT_FAR, .y1 = y, .edge = edge, .opening = opening};
}

static void add_obstacle(Tiling *tiling, Length left, Length right, Rail lo, Rail hi)
{
    if (left < right && right > tiling->field->from.x && left < tiling->field->to.x)
        *arena_push(tiling->arena, &tiling->obstacles) = (Obstacle){left, right, lo, hi};
}

/* What lies beyond one stretch of a side, (xa, ya) up to (xb, yb): all of it to one side, and a triangle where it
 * leans.
 */
static void add_side(Tiling *tiling, bool right, Point a, Point b)
{
    Rail lo = level_rail(a.y, EDGE_BAND, -1);
    Rail hi = level_rail(b.y, EDGE_BAND, -1);
    lo.side = hi.side = true;
    const Length inner = a.x < b.x ? a.x : b.x;
    const Length outer = a.x < b.x ? b.x : a.x;
    if (right)
        add_obstacle(tiling, outer, LAYOUT_FAR, lo, hi);
    else
        add_obstacle(tiling, -LAYOUT_FAR, inner, lo, hi);
    if (a.x == b.x)
        return;
    Rail lean = {.x0 = a.x, .y0 = a.y, .x1 = b.x, .y1 = b.y, .edge = EDGE_BAND, .opening = -1, .side = true};
    if (a.x > b.x)
        lean = (Rail){.x0 = b.x, .y0 = b.y, .x1 = a.x, .y1 = a.y, .edge = EDGE_BAND, .opening = -1, .side = true};
    /* Left of a rail that rises lies above it, right of it below; the other way round for one that falls. */
    if ((a.x < b.x) != right)
        add_obstacle(tiling, inner, outer, lean, hi);
    else
        add_obstacle(tiling, inner, outer, lo, lean);
}

static void add_sides(Tiling *tiling, bool right)
{
    const Points *side = right ? &tiling->field->face->right : &tiling->field->face->left;
    for (int i = 0; i <= side->count; i++) {
        Point a = side->at[i > 0 ? i - 1 : 0];
        Point b = side->at[i < side->count ? i : side->count - 1];
        if (i == 0)
            a.y = -LAYOUT_FAR;
        if (i == side->count)
            b.y = LAYOUT_FAR;
        if (a.y < b.y && a.y < tiling->field->top && b.y > tiling->field->bottom)
            add_side(tiling, right, a, b);
    }
}

static void add_cuts(Tiling *tiling)
{
    for (int i = 0; i < tiling->field->cut_count; i++) {
        const Cut *cut = &tiling->field->cuts[i];
        add_obstacle(tiling, cut->box.left, cut->box.right, level_rail(cut->box.bottom, EDGE_OPENING, cut->opening),
                     level_rail(cut->box.top, EDGE_OPENING, cut->opening));
    }
}

/* ---- breaks ---- */

static void add_break(Tiling *tiling, ExactPlace place)
{
    if (place_compare(&place, &tiling->field->from) > 0 && place_compare(&place, &tiling->field->to) < 0)
        *arena_push(tiling->arena, &tiling->breaks) = place;
}

static int compare_breaks(const void *left, const void *right)
{
    const ExactPlace *a = left;
    const ExactPlace *b = right;
    const int order = place_compare(a, b);
    return order != 0 ? order : (a->y > b->y) - (a->y < b->y);
}

static void add_edging(Tiling *tiling, Edgings *slanted, Edgings *flat, const Rail *rail)
{
    *arena_push(tiling->arena, rail->y0 == rail->y1 ? flat : slanted) = (Edging){rail};
}

/* Every rail that is not level, crossed with every other; a crossing outside the band breaks nothing. */
static void cross_rails(Tiling *tiling)
{
    const Length bottom = tiling->field->bottom;
    const Length top = tiling->field->top;
    Edgings slanted = {0};
    Edgings flat = {0};
    add_edging(tiling, &slanted, &flat, &tiling->bottom);
    add_edging(tiling, &slanted, &flat, &tiling->top);
    for (int i = 0; i < tiling->lower.count; i++)
        add_edging(tiling, &slanted, &flat, &tiling->lower.at[i]);
    for (int i = 0; i < tiling->upper.count; i++)
        add_edging(tiling, &slanted, &flat, &tiling->upper.at[i]);
    for (int i = 0; i < tiling->obstacles.count; i++) {
        const Rail *rails[] = {&tiling->obstacles.at[i].lo, &tiling->obstacles.at[i].hi};
        for (int j = 0; j < 2; j++)
            if (rails[j]->y0 != rails[j]->y1 || (rails[j]->y0 > bottom && rails[j]->y0 < top))
                add_edging(tiling, &slanted, &flat, rails[j]);
    }
    for (int i = 0; i < slanted.count; i++) {
        ExactPlace place;
        for (int j = 0; j < flat.count; j++)
            if (rails_cross(slanted.at[i].rail, flat.at[j].rail, &place))
                add_break(tiling, place);
        for (int j = i + 1; j < slanted.count; j++)
            if (rails_cross(slanted.at[i].rail, slanted.at[j].rail, &place) && place.y > bottom && place.y < top)
                add_break(tiling, place);
    }
}

static void find_breaks(Tiling *tiling)
{
    *arena_push(tiling->arena, &tiling->breaks) = tiling->field->from;
    const Rails *limits[] = {&tiling->lower, &tiling->upper};
    for (int i = 0; i < 2; i++)
        for (int j = 0; j < limits[i]->count; j++) {
            add_break(tiling, place_at(limits[i]->at[j].x0));
            add_break(tiling, place_at(limits[i]->at[j].x1));
        }
    for (int i = 0; i < tiling->obstacles.count; i++) {
        add_break(tiling, place_at(tiling->obstacles.at[i].left));
        add_break(tiling, place_at(tiling->obstacles.at[i].right));
    }
    cross_rails(tiling);
    *arena_push(tiling->arena, &tiling->breaks) = tiling->field->to;
    if (tiling->breaks.count > 2)
        qsort(tiling->breaks.at, (size_t)tiling->breaks.count, sizeof *tiling->breaks.at, compare_breaks);
}

/* ---- tiles ---- */

/* The stretch of a limit that spans the tile; NULL where the limit does not cut the band there. `next` walks along. */
static const Rail *limit_over(const Rails *limit, int *next, const Tile *tile)
{
    while (*next < limit->count && limit->at[*next].x1 <= tile->left.x)
        (*next)++;
    const Rail *rail = *next < limit->count ? &limit->at[*next] : NULL;
    return rail != NULL && rail->x0 <= tile->left.x && rail->x1 >= tile->right.x ? rail : NULL;
}

static void bound_below(Tile *tile, const Rail *rail)
{
    if (rail == NULL)
        return;
    const Length left = rail_at(rail, &tile->left);
    const Length right = rail_at(rail, &tile->right);
    if (left <= tile->lower_left && right <= tile->lower_right)
        return;
    tile->lower = rail;
    tile->lower_left = left > tile->lower_left ? left : tile->lower_left;
    tile->lower_right = right > tile->lower_right ? right : tile->lower_right;
}

static void bound_above(Tile *tile, const Rail *rail)
{
    if (rail == NULL)
        return;
    const Length left = rail_at(rail, &tile->left);
    const Length right = rail_at(rail, &tile->right);
    if (left >= tile->upper_left && right >= tile->upper_right)
        return;
    tile->upper = rail;
    tile->upper_left = left < tile->upper_left ? left : tile->upper_left;
    tile->upper_right = right < tile->upper_right ? right : tile->upper_right;
}

/* An obstacle as it stands in one tile. */
typedef struct Taken {
    const Rail *lo, *hi;
    Length lo_left, lo_right, hi_left, hi_right;
    int order;
} Taken;

static int compare_taken(const void *left, const void *right)
{
    const Taken *a = left;
    const Taken *b = right;
    const Wide low_a = (Wide)a->lo_left + a->lo_right;
    const Wide low_b = (Wide)b->lo_left + b->lo_right;
    if (low_a != low_b)
        return low_a < low_b ? -1 : 1;
    return a->order - b->order;
}

static void add_part(Arena *arena, Tile *tile, int *room, TilePart part)
{
    if (part.top_left < part.bottom_left)
        part.top_left = part.bottom_left;
    if (part.top_right < part.bottom_right)
        part.top_right = part.bottom_right;
    if (part.top_left == part.bottom_left && part.top_right == part.bottom_right)
        return;
    TilePart *last = arena_grow(arena, tile->parts, &tile->part_count, room, sizeof *tile->parts);
    tile->parts = last;
    tile->parts[tile->part_count - 1] = part;
}

/* What the obstacles leave of the tile, bottom to top. */
static void part_tile(Arena *arena, Tile *tile, const Taken *taken, int count)
{
    int room = 0;
    TilePart part = {tile->lower, NULL, tile->lower_left, tile->lower_right, 0, 0};
    for (int i = 0; i < count; i++) {
        const Taken *cut = &taken[i];
        if ((Wide)cut->lo_left + cut->lo_right > (Wide)part.bottom_left + part.bottom_right) {
            part.top = cut->lo;
            part.top_left = cut->lo_left;
            part.top_right = cut->lo_right;
            add_part(arena, tile, &room, part);
        }
        if ((Wide)cut->hi_left + cut->hi_right > (Wide)part.bottom_left + part.bottom_right) {
            part.bottom = cut->hi;
            part.bottom_left = cut->hi_left;
            part.bottom_right = cut->hi_right;
        }
    }
    part.top = tile->upper;
    part.top_left = tile->upper_left;
    part.top_right = tile->upper_right;
    add_part(arena, tile, &room, part);
}

/* Obstacles that stand in the tile at hand, by index. */
typedef struct Standing {
    int *at;
    int count;
    int room;
} Standing;

static void take_from_tile(Tiling *tiling, Tile *tile, const Standing *standing)
{
    Taken *taken = standing->count > 0 ? arena_array(tiling->arena, Taken, standing->count) : NULL;
    int count = 0;
    for (int i = 0; i < standing->count; i++) {
        const Obstacle *obstacle = &tiling->obstacles.at[standing->at[i]];
        Taken cut = {.lo = &obstacle->lo, .hi = &obstacle->hi, .order = i};
        cut.lo_left = rail_at(cut.lo, &tile->left);
        cut.lo_right = rail_at(cut.lo, &tile->right);
        cut.hi_left = rail_at(cut.hi, &tile->left);
        cut.hi_right = rail_at(cut.hi, &tile->right);
        const bool above = cut.lo_left >= tile->upper_left && cut.lo_right >= tile->upper_right;
        const bool below = cut.hi_left <= tile->lower_left && cut.hi_right <= tile->lower_right;
        if (!above && !below)
            taken[count++] = cut;
    }
    if (count > 1)
        qsort(taken, (size_t)count, sizeof *taken, compare_taken);
    part_tile(tiling->arena, tile, taken, count);
}

static int compare_obstacles(const void *left, const void *right)
{
    const Obstacle *a = left;
    const Obstacle *b = right;
    if (a->left != b->left)
        return a->left < b->left ? -1 : 1;
    if (a->lo.y0 != b->lo.y0)
        return a->lo.y0 < b->lo.y0 ? -1 : 1;
    return (a->lo.opening > b->lo.opening) - (a->lo.opening < b->lo.opening);
}

static Tiles cut_tiles(Tiling *tiling)
{
    const ExactPlaces *breaks = &tiling->breaks;
    Tiles tiles = {0};
    Standing standing = {0};
    int lower = 0, upper = 0, next = 0;
    for (int i = 0; i + 1 < breaks->count; i++) {
        if (breaks->at[i].x == breaks->at[i + 1].x)
            continue;
        Tile tile = {.left = breaks->at[i],
                     .right = breaks->at[i + 1],
                     .lower = &tiling->bottom,
                     .upper = &tiling->top,
                     .lower_left = tiling->bottom.y0,
                     .lower_right = tiling->bottom.y0,
                     .upper_left = tiling->top.y0,
                     .upper_right = tiling->top.y0};
        bound_below(&tile, limit_over(&tiling->lower, &lower, &tile));
        bound_above(&tile, limit_over(&tiling->upper, &upper, &tile));
        for (; next < tiling->obstacles.count && tiling->obstacles.at[next].left <= tile.left.x; next++)
            *arena_push(tiling->arena, &standing) = next;
        int kept = 0;
        for (int j = 0; j < standing.count; j++)
            if (tiling->obstacles.at[standing.at[j]].right >= tile.right.x)
                standing.at[kept++] = standing.at[j];
        standing.count = kept;
        if (tile.upper_left <= tile.lower_left && tile.upper_right <= tile.lower_right)
            continue;
        if (tile.upper_left < tile.lower_left)
            tile.upper_left = tile.lower_left;
        if (tile.upper_right < tile.lower_right)
            tile.upper_right = tile.lower_right;
        take_from_tile(tiling, &tile, &standing);
        *arena_push(tiling->arena, &tiles) = tile;
    }
    return tiles;
}

Tiles tiles_of(Arena *arena, const TileField *field)
{
    /* The rails live as long as the tiles that point to them. */
    Tiling *tiling = arena_one(arena, Tiling);
    tiling->arena = arena;
    tiling->field = field;
    tiling->bottom = level_rail(field->bottom, EDGE_BAND, -1);
    tiling->top = level_rail(field->top, EDGE_BAND, -1);
    tiling->lower = limit_rails(arena, &field->face->lower, false, field->bottom, field->from.x, field->to.x);
    tiling->upper = limit_rails(arena, &field->face->upper, true, field->top, field->from.x, field->to.x);
    add_cuts(tiling);
    if (field->sides) {
        add_sides(tiling, false);
        add_sides(tiling, true);
    }
    if (tiling->obstacles.count > 1)
        qsort(tiling->obstacles.at, (size_t)tiling->obstacles.count, sizeof *tiling->obstacles.at, compare_obstacles);
    find_breaks(tiling);
    return cut_tiles(tiling);
}

bool tiles_joined(const Tile *left, const Tile *right)
{
    if (left->right.x != right->left.x)
        return false;
    int i = 0, j = 0;
    while (i < left->part_count && j < right->part_count) {
        const TilePart *a = &left->parts[i];
        const TilePart *b = &right->parts[j];
        const Length low = a->bottom_right > b->bottom_left ? a->bottom_right : b->bottom_left;
        const Length high = a->top_right < b->top_left ? a->top_right : b->top_left;
        if (low < high)
            return true;
        if (a->top_right < b->top_left)
            i++;
        else
            j++;
    }
    return false;
}

/* Height of part and box together at x, negative where they are apart. */
static Wide shared_height(const Tile *tile, const TilePart *part, const Box *box, Length x)
{
    const Length bottom = straight_at(tile->left.x, part->bottom_left, tile->right.x, part->bottom_right, x);
    const Length top = straight_at(tile->left.x, part->top_left, tile->right.x, part->top_right, x);
    return (Wide)(top < box->top ? top : box->top) - (bottom > box->bottom ? bottom : box->bottom);
}

/* The x in the tile where the edge from y0 to y1 has the height y, or its left end where it never has. */
static Length height_place(const Tile *tile, Length y0, Length y1, Length y)
{
    if (y0 == y1)
        return tile->left.x;
    const Wide run = tile->right.x - tile->left.x;
    const Wide along = wide_divide(((Wide)y - y0) * run, (Wide)y1 - y0);
    return along < 0 || along > run ? tile->left.x : tile->left.x + (Length)along;
}

bool tiles_meet(const Tiles *tiles, const Box *box)
{
    for (int i = 0; i < tiles->count; i++) {
        const Tile *tile = &tiles->at[i];
        const Length left = box->left > tile->left.x ? box->left : tile->left.x;
        const Length right = box->right < tile->right.x ? box->right : tile->right.x;
        if (left >= right)
            continue;
        for (int j = 0; j < tile->part_count; j++) {
            const TilePart *part = &tile->parts[j];
            /* The shared height bends only where the part's edges cross the box's: it is greatest there or at an end.
             */
            const Length places[] = {left, right,
                                     height_place(tile, part->bottom_left, part->bottom_right, box->bottom),
                                     height_place(tile, part->top_left, part->top_right, box->top)};
            for (int k = 0; k < 4; k++) {
                const Length x = places[k] < left ? left : places[k] > right ? right : places[k];
                if (shared_height(tile, part, box, x) > 0)
                    return true;
            }
        }
    }
    return false;
}

Wide tiles_area(const Tiles *tiles)
{
    Wide twice = 0;
    for (int i = 0; i < tiles->count; i++) {
        const Tile *tile = &tiles->at[i];
        const Wide run = tile->right.x - tile->left.x;
        for (int j = 0; j < tile->part_count; j++) {
            const TilePart *part = &tile->parts[j];
            twice += run * ((part->top_left - part->bottom_left) + (part->top_right - part->bottom_right));
        }
    }
    return twice;
}
