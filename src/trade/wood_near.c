#include "trade/wood_near.h"

#include "trade/backing.h"
#include "trade/say.h"
#include "trade/trim_level.h"
#include "trade/trim_runs.h"
#include "wall/straight.h"

/*
 * The body and the part are both a shape of the face's plane by a stretch of z, so that the square of their distance is
 * that of the shapes and that of the stretches together. The shapes are a rectangle and a trapezoid: 0 where they
 * touch, else the least from a corner of one to an edge of the other.
 */

Length root_down(Wide square)
{
    Length low = 0;
    Length high = 4 * BODY_FAR;
    while (low < high) {
        const Length middle = low + (high - low + 1) / 2;
        if ((Wide)middle * middle <= square)
            low = middle;
        else
            high = middle - 1;
    }
    return low;
}

/* How far the stretch [low, high] lies from [from, to]; 0 where they touch. */
static Length apart(Length low, Length high, Length from, Length to)
{
    return low > to ? low - to : from > high ? from - high : 0;
}

static Wide square(Length length)
{
    return (Wide)length * length;
}

static Wide to_point(const Body *body, Point point)
{
    return square(apart(point.x, point.x, body->left, body->right)) +
           square(apart(point.y, point.y, body->bottom, body->top));
}

/* Where the edge from a to b, a left of b or below it, comes into the body's stretch of x, its y there. */
static Length edge_at(Point a, Point b, Length x)
{
    return straight_at(a.x, a.y, b.x, b.y, x);
}

static bool edge_meets(const Body *body, Point a, Point b)
{
    const Length left = a.x > body->left ? a.x : body->left;
    const Length right = b.x < body->right ? b.x : body->right;
    if (left > right)
        return false;
    const Length y0 = a.x == b.x ? a.y : edge_at(a, b, left);
    const Length y1 = a.x == b.x ? b.y : edge_at(a, b, right);
    return apart(y0 < y1 ? y0 : y1, y0 < y1 ? y1 : y0, body->bottom, body->top) == 0;
}

/* From a corner of the body square onto the edge; `least` where it does not meet it between its ends. */
static Wide onto_edge(Point corner, Point a, Point b, Wide least)
{
    const Length dx = b.x - a.x;
    const Length dy = b.y - a.y;
    const Wide along = (Wide)(corner.x - a.x) * dx + (Wide)(corner.y - a.y) * dy;
    const Wide whole = square(dx) + square(dy);
    if (along <= 0 || along >= whole)
        return least;
    Wide cross = (Wide)(corner.x - a.x) * dy - (Wide)(corner.y - a.y) * dx;
    cross = cross < 0 ? -cross : cross;
    const Length root = root_down(whole);
    const Wide away = cross / (square(root) < whole ? root + 1 : root); /* rounded down */
    return away * away < least ? away * away : least;
}

/* The square of the distance in the plane of the face. */
static Wide in_plane(const Body *body, const WoodPart *part)
{
    const Point at[4] = {{part->left, part->bottom_left},
                         {part->right, part->bottom_right},
                         {part->right, part->top_right},
                         {part->left, part->top_left}};
    if (part->bottom_left == part->bottom_right && part->top_left == part->top_right)
        return square(apart(part->left, part->right, body->left, body->right)) +
               square(apart(part->bottom_left, part->top_left, body->bottom, body->top));
    const Point corners[4] = {
        {body->left, body->bottom}, {body->right, body->bottom}, {body->right, body->top}, {body->left, body->top}};
    /* one corner of the body within the part: either all of it is, or an edge meets it */
    if (corners[0].x >= part->left && corners[0].x <= part->right && part->left < part->right &&
        corners[0].y >= edge_at(at[0], at[1], corners[0].x) && corners[0].y <= edge_at(at[3], at[2], corners[0].x))
        return 0;
    Wide least = to_point(body, at[0]);
    for (int i = 0; i < 4; i++) {
        /* edges run to the right, or up */
        const Point a = i < 2 ? at[i] : at[i == 2 ? 3 : 0];
        const Point b = i < 2 ? at[i + 1] : at[i == 2 ? 2 : 3];
        if (edge_meets(body, a, b))
            return 0;
        const Wide away = to_point(body, at[i]);
        least = away < least ? away : least;
        for (int j = 0; j < 4; j++)
            least = onto_edge(corners[j], a, b, least);
    }
    return least;
}

bool wood_covers(const WoodPart *part, const Box *box)
{
    /* touching is not covering: a body that is smaller all round */
    const Body body = {box->left + 1, box->right - 1, box->bottom + 1, box->top - 1, 0, 0};
    return body.left <= body.right && body.bottom <= body.top && in_plane(&body, part) == 0;
}

Wide wood_distance(const Reached *reached, const WoodPart *part)
{
    const Body *body = &reached->body;
    return in_plane(body, part) + square(apart(0, part->out, body->back, body->front));
}

/* ---- over corners ---- */

Reached reach_start(int face, const Body *body)
{
    return (Reached){.face = face, .body = *body, .sign = 1};
}

/* z of the first face, told in x and z of this one, where x is `x_sign` times the next one's z and `x_from` more, and z
 * is `z_sign` times its x and `z_from` more. */
static void turn(Reached *reached, int x_sign, Length x_from, int z_sign, Length z_from)
{
    reached->from += reached->sign * (reached->along ? x_from : z_from);
    reached->sign *= reached->along ? x_sign : z_sign;
    reached->along = !reached->along;
}

bool reach_next(const Wall *wall, bool to_right, Reached *reached)
{
    bool through;
    const Corner corner =
        to_right ? wall_corner_right(wall, reached->face, &through) : wall_corner_left(wall, reached->face, &through);
    if (corner.kind == CORNER_NONE)
        return false;
    const int count = wall->faces.count;
    const Body old = reached->body;
    const Length own = wall->faces.at[reached->face].width;
    const int next = (reached->face + (to_right ? 1 : count - 1)) % count;
    const Length width = wall->faces.at[next].width;
    Body *body = &reached->body;
    if (to_right && corner.kind == CORNER_INSIDE) {
        *body = (Body){old.back, old.front, old.bottom, old.top, own - old.right, own - old.left};
        turn(reached, -1, own, 1, 0);
    } else if (to_right) {
        *body = (Body){-old.front, -old.back, old.bottom, old.top, old.left - own, old.right - own};
        turn(reached, 1, own, -1, 0);
    } else if (corner.kind == CORNER_INSIDE) {
        *body = (Body){width - old.front, width - old.back, old.bottom, old.top, old.left, old.right};
        turn(reached, 1, 0, -1, width);
    } else {
        *body = (Body){width + old.back, width + old.front, old.bottom, old.top, -old.right, -old.left};
        turn(reached, -1, 0, 1, -width);
    }
    reached->face = next;
    reached->corners++;
    reached->kind = corner.kind;
    return true;
}

Length wood_projection(const Wall *wall, const Reached *reached, const WoodPart *part)
{
    const Length width = wall->faces.at[reached->face].width;
    if (reached->along && (reached->from > 0 || reached->from + reached->sign * width > 0))
        return LENGTH_MOST;
    const Length low = reached->along ? part->left : 0;
    const Length high = reached->along ? part->right : part->out;
    const Length out = reached->from + reached->sign * (reached->sign > 0 ? high : low);
    return out > 0 ? out : 0;
}

/* ---- wood ---- */

static void add_planks(Arena *arena, const Layout *layout, int face, WoodParts *parts)
{
    const FaceLayout *laid = &layout->faces[face];
    const Length out = stack_out(layout->wall, face);
    for (int i = 0; i < laid->course_count; i++)
        for (int j = 0; j < laid->courses[i].slab_count; j++) {
            const Slab *slab = &laid->courses[i].slabs[j];
            for (int k = 0; k < slab->part_count; k++) {
                const Part *part = &slab->parts[k];
                *arena_push(arena, parts) =
                    (WoodPart){slab->left,      slab->right, part->bottom_left, part->bottom_right, part->top_left,
                               part->top_right, out,         "planks"};
            }
        }
}

/* Strips lie on the planks. */
static void add_trim(Arena *arena, const Layout *layout, WoodParts *faces)
{
    const Wall *wall = layout->wall;
    if (wall->trim.runs.count == 0)
        return;
    const TrimStrips strips = trim_strips(arena, layout, NULL);
    for (int i = 0; i < strips.count; i++) {
        *arena_push(arena, &faces[strips.at[i].face]) = trim_strip_part(arena, layout, &strips.at[i]);
    }
}

WoodParts *wood_of_faces(Arena *arena, const Layout *layout)
{
    WoodParts *faces = arena_array(arena, WoodParts, layout->wall->faces.count);
    for (int i = 0; i < layout->wall->faces.count; i++) {
        add_planks(arena, layout, i, &faces[i]);
        backing_parts(arena, layout, i, &faces[i]);
    }
    add_trim(arena, layout, faces);
    return faces;
}
