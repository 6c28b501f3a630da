#include "layout/outline.h"

#include "base/panic.h"

/*
 *             top <-----------+<------ top         Along a bottom edge to the right, along a top edge to the left.
 * Where |  part           up|  part      ^       an edge ends, up along the part's right side or down along its left v
 * |            |       side, until a neighbour begins or the part's next edge is reached. bottom ------> down | +----->
 * bottom
 *
 * Invariant: the wood is on the left hand. Edges are put down by the rail they lie on, so that one rail over many tiles
 * is one edge, with ends that are exact crossings.
 */

typedef struct Side {
    Point from, to;
    const Rail *rail; /* NULL: plumb */
} Side;

typedef struct Sides {
    Side *at;
    int count;
    int room;
} Sides;

/* Where the walk stands: at the height y on the right side (going up) or the left side (going down) of a part. */
typedef struct Walker {
    const Tiles *tiles;
    Arena *arena;
    Sides sides;
    int tile, part;
} Walker;

static void put(Walker *walker, Point from, Point to, const Rail *rail)
{
    Side *last = walker->sides.count > 0 ? &walker->sides.at[walker->sides.count - 1] : NULL;
    if (last != NULL && (last->to.x != from.x || last->to.y != from.y)) {
        put(walker, last->to, from, NULL);
        last = &walker->sides.at[walker->sides.count - 1];
    }
    if (from.x == to.x && from.y == to.y)
        return;
    if (last != NULL && last->rail == rail && (rail != NULL || last->from.x == to.x))
        last->to = to;
    else
        *arena_push(walker->arena, &walker->sides) = (Side){from, to, rail};
}

static const Tile *tile_at(const Walker *walker, int tile)
{
    return tile >= 0 && tile < walker->tiles->count ? &walker->tiles->at[tile] : NULL;
}

/* Whether the parts touch along more than a point. */
static bool touch(const TilePart *left, const TilePart *right)
{
    const Length low = left->bottom_right > right->bottom_left ? left->bottom_right : right->bottom_left;
    const Length high = left->top_right < right->top_left ? left->top_right : right->top_left;
    return low < high;
}

/* The lowest part right of the one at hand that reaches above y; -1 where none does. */
static int next_right(const Walker *walker, Length y)
{
    const Tile *tile = &walker->tiles->at[walker->tile];
    const Tile *next = tile_at(walker, walker->tile + 1);
    if (next == NULL || next->left.x != tile->right.x)
        return -1;
    for (int i = 0; i < next->part_count; i++)
        if (next->parts[i].top_left > y && touch(&tile->parts[walker->part], &next->parts[i]))
            return i;
    return -1;
}

/* The highest part left of the one at hand that reaches below y. */
static int next_left(const Walker *walker, Length y)
{
    const Tile *tile = &walker->tiles->at[walker->tile];
    const Tile *next = tile_at(walker, walker->tile - 1);
    if (next == NULL || next->right.x != tile->left.x)
        return -1;
    for (int i = next->part_count - 1; i >= 0; i--)
        if (next->parts[i].bottom_right < y && touch(&next->parts[i], &tile->parts[walker->part]))
            return i;
    return -1;
}

/* From the height y, going up the right side or down the left side of the part at hand, to the part whose bottom or top
 * edge is next. True: a bottom edge. */
static bool turn(Walker *walker, bool up, Length y)
{
    for (;;) {
        const TilePart *part = &walker->tiles->at[walker->tile].parts[walker->part];
        if (up) {
            const int next = y < part->top_right ? next_right(walker, y) : -1;
            if (next < 0)
                return false;
            walker->tile++;
            walker->part = next;
            if (walker->tiles->at[walker->tile].parts[next].bottom_left >= y)
                return true;
        } else {
            const int next = y > part->bottom_left ? next_left(walker, y) : -1;
            if (next < 0)
                return true;
            walker->tile--;
            walker->part = next;
            if (walker->tiles->at[walker->tile].parts[next].top_right <= y)
                return false;
        }
        up = !up;
    }
}

/* All the way round from the bottom edge of a part. */
static void walk(Walker *walker)
{
    const int tile = walker->tile, part = walker->part;
    bool bottom = true;
    do {
        const Tile *at = &walker->tiles->at[walker->tile];
        const TilePart *here = &at->parts[walker->part];
        if (bottom) {
            put(walker, (Point){at->left.x, here->bottom_left}, (Point){at->right.x, here->bottom_right}, here->bottom);
            bottom = turn(walker, true, here->bottom_right);
        } else {
            put(walker, (Point){at->right.x, here->top_right}, (Point){at->left.x, here->top_left}, here->top);
            bottom = turn(walker, false, here->top_left);
        }
    } while (!bottom || walker->tile != tile || walker->part != part);
    put(walker, walker->sides.at[0].from, walker->sides.at[0].from, NULL);
}

static void start_at_widest(Walker *walker)
{
    Wide most = -1;
    for (int i = 0; i < walker->tiles->count; i++)
        for (int j = 0; j < walker->tiles->at[i].part_count; j++) {
            const Tile *tile = &walker->tiles->at[i];
            const TilePart *part = &tile->parts[j];
            const Wide area = (Wide)(tile->right.x - tile->left.x) *
                              ((part->top_left - part->bottom_left) + (part->top_right - part->bottom_right));
            if (area > most) {
                most = area;
                walker->tile = i;
                walker->part = j;
            }
        }
}

/* The side that begins at the lower left corner: at the leftmost point, or where the left side coming down from it
 * ends.
 */
static int lower_left(const Sides *sides)
{
    int first = 0;
    for (int i = 1; i < sides->count; i++) {
        const Point *a = &sides->at[i].from;
        const Point *b = &sides->at[first].from;
        if (a->x < b->x || (a->x == b->x && a->y < b->y))
            first = i;
    }
    for (int i = 0; i < sides->count; i++) {
        const Side *side = &sides->at[first];
        const bool down = side->to.y < side->from.y && (side->rail == NULL || side->rail->side);
        if (!down)
            break;
        first = (first + 1) % sides->count;
    }
    return first;
}

static bool straight(const Point *a, const Point *b, const Point *c)
{
    return ((Wide)b->x - a->x) * ((Wide)c->y - a->y) == ((Wide)c->x - a->x) * ((Wide)b->y - a->y);
}

/* Takes out points on a straight line between their neighbours; the first stays first. */
static void thin_out(Points *points)
{
    bool again = true;
    while (again) {
        again = false;
        int kept = 0;
        const int count = points->count;
        for (int i = 0; i < count; i++) {
            const Point *before = kept > 0 ? &points->at[kept - 1] : &points->at[count - 1];
            const Point here = points->at[i];
            const Point *after = i + 1 < count ? &points->at[i + 1] : &points->at[0];
            if (count > 3 && (i > 0 || count - kept > 3) && straight(before, &here, after)) {
                again = kept + (count - i - 1) > 3;
                continue;
            }
            points->at[kept++] = here;
        }
        points->count = kept;
    }
}

Points outline_of(Arena *arena, const Tiles *tiles)
{
    Points points = {0};
    Walker walker = {.tiles = tiles, .arena = arena};
    bool any = false;
    for (int i = 0; i < tiles->count; i++)
        any |= tiles->at[i].part_count > 0;
    if (!any)
        return points;
    start_at_widest(&walker);
    walk(&walker);
    Sides *sides = &walker.sides;
    /* The walk may have begun in the middle of an edge. */
    while (sides->count > 3 && sides->at[0].rail != NULL && sides->at[sides->count - 1].rail == sides->at[0].rail) {
        sides->at[0].from = sides->at[sides->count - 1].from;
        sides->count--;
    }
    const int first = lower_left(sides);
    for (int i = 0; i < sides->count; i++)
        *arena_push(arena, &points) = sides->at[(first + i) % sides->count].from;
    thin_out(&points);
    return points;
}
