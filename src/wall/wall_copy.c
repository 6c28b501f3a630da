#include "wall/wall.h"

#include "wall/shop.h"

#include <string.h>

/*
 * What a wall holds, field by field: copied deep, and compared. A field that is added to wall.h is added here; text
 * that is NULL counts as "".
 */

/* ---- copies ---- */

static char *copy_text(Arena *arena, const char *text)
{
    return text == NULL ? arena_text(arena, "", 0) : arena_text(arena, text, strlen(text));
}

/* A copy of `count` elements in an array that has room for just those. */
static void *copy_array(Arena *arena, const void *at, int count, size_t size)
{
    if (count == 0)
        return NULL;
    void *copy = arena_array_bytes(arena, (size_t)count, size);
    memcpy(copy, at, (size_t)count * size);
    return copy;
}

#define COPY_LIST(arena, list) \
    ((list)->at = copy_array((arena), (list)->at, (list)->count, sizeof *(list)->at), (list)->room = (list)->count)

static void copy_face(Arena *arena, Face *face)
{
    face->name = copy_text(arena, face->name);
    COPY_LIST(arena, &face->floor);
    COPY_LIST(arena, &face->ceiling);
    COPY_LIST(arena, &face->left);
    COPY_LIST(arena, &face->right);
    COPY_LIST(arena, &face->studs.at);
    COPY_LIST(arena, &face->openings);
    for (int i = 0; i < face->openings.count; i++)
        face->openings.at[i].name = copy_text(arena, face->openings.at[i].name);
}

Wall *wall_copy(Arena *arena, const Wall *wall)
{
    Wall *copy = arena_one(arena, Wall);
    *copy = *wall;
    copy->title = copy_text(arena, wall->title);
    COPY_LIST(arena, &copy->planks.widths);
    COPY_LIST(arena, &copy->joints.pins);
    for (int i = 0; i < copy->joints.pins.count; i++)
        copy->joints.pins.at[i].face = copy_text(arena, copy->joints.pins.at[i].face);
    COPY_LIST(arena, &copy->joints.bars);
    for (int i = 0; i < copy->joints.bars.count; i++)
        copy->joints.bars.at[i].face = copy_text(arena, copy->joints.bars.at[i].face);
    COPY_LIST(arena, &copy->faces);
    for (int i = 0; i < copy->faces.count; i++)
        copy_face(arena, &copy->faces.at[i]);
    COPY_LIST(arena, &copy->stock);
    for (int i = 0; i < copy->stock.count; i++) {
        Stock *stock = &copy->stock.at[i];
        stock->label = copy_text(arena, stock->label);
        stock->tone = copy_text(arena, stock->tone);
        COPY_LIST(arena, &stock->avoid);
        COPY_LIST(arena, &stock->show);
        for (int k = 0; k < stock->show.count; k++)
            stock->show.at[k].what = copy_text(arena, stock->show.at[k].what);
    }
    COPY_LIST(arena, &copy->trim.stock);
    COPY_LIST(arena, &copy->trim.pieces);
    for (int i = 0; i < copy->trim.pieces.count; i++)
        copy->trim.pieces.at[i].name = copy_text(arena, copy->trim.pieces.at[i].name);
    copy->wood.species = copy_text(arena, wall->wood.species);
    shop_own(arena, copy);
    COPY_LIST(arena, &copy->hung_pieces);
    for (int i = 0; i < copy->hung_pieces.count; i++)
        copy->hung_pieces.at[i].face = copy_text(arena, copy->hung_pieces.at[i].face);
    COPY_LIST(arena, &copy->hung_losses);
    COPY_LIST(arena, &copy->hung_edges);
    for (int i = 0; i < copy->hung_edges.count; i++)
        copy->hung_edges.at[i].face = copy_text(arena, copy->hung_edges.at[i].face);
    return copy;
}

/* ---- equality ---- */

static bool same_text(const char *a, const char *b)
{
    return strcmp(a == NULL ? "" : a, b == NULL ? "" : b) == 0;
}

static bool same_marks(const Marks *a, const Marks *b)
{
    if (a->count != b->count)
        return false;
    for (int i = 0; i < a->count; i++)
        if (a->at[i].at != b->at[i].at || a->at[i].off != b->at[i].off)
            return false;
    return true;
}

static bool same_lengths(const LengthList *a, const LengthList *b)
{
    if (a->count != b->count)
        return false;
    for (int i = 0; i < a->count; i++)
        if (a->at[i] != b->at[i])
            return false;
    return true;
}

static bool same_planks(const Planks *a, const Planks *b)
{
    return same_lengths(&a->widths, &b->widths) && a->thickness == b->thickness && a->reveal == b->reveal &&
           a->lap == b->lap && a->hang_given == b->hang_given && (!a->hang_given || a->hang == b->hang) &&
           a->least_given == b->least_given && (!a->least_given || a->least == b->least) && a->leave == b->leave;
}

static bool same_joints(const Joints *a, const Joints *b)
{
    if (a->land != b->land || a->stagger != b->stagger || a->shortest != b->shortest || a->closer != b->closer ||
        a->spend_all != b->spend_all || (!a->spend_all && a->spend != b->spend) || a->pins.count != b->pins.count ||
        a->bars.count != b->bars.count)
        return false;
    for (int i = 0; i < a->pins.count; i++) {
        const Pin *p = &a->pins.at[i];
        const Pin *q = &b->pins.at[i];
        if (!same_text(p->face, q->face) || p->course != q->course || p->at != q->at)
            return false;
    }
    for (int i = 0; i < a->bars.count; i++) {
        const Bar *p = &a->bars.at[i];
        const Bar *q = &b->bars.at[i];
        if (!same_text(p->face, q->face) || p->course != q->course || p->from != q->from || p->to != q->to)
            return false;
    }
    return true;
}

/* A lower edge is written in one of three ways; what is not written does not count. */
static bool same_foot(const Opening *a, const Opening *b)
{
    if (a->to_floor != b->to_floor || a->above_given != b->above_given)
        return false;
    return a->above_given ? a->above == b->above : a->to_floor || a->bottom == b->bottom;
}

static bool same_opening(const Opening *a, const Opening *b)
{
    return same_text(a->name, b->name) && a->kind == b->kind && a->left == b->left && same_foot(a, b) &&
           a->width == b->width && a->top_given == b->top_given &&
           (a->top_given ? a->top == b->top : a->height == b->height) && a->clear == b->clear &&
           a->plate.given == b->plate.given &&
           (!a->plate.given || (a->plate.width == b->plate.width && a->plate.height == b->plate.height)) &&
           a->front_given == b->front_given && (!a->front_given || a->front == b->front) &&
           a->proud_given == b->proud_given && (!a->proud_given || a->proud == b->proud) &&
           a->away_given == b->away_given && (!a->away_given || a->away == b->away);
}

static bool same_studs(const Studs *a, const Studs *b)
{
    if (a->given != b->given || (a->given && a->regular != b->regular))
        return false;
    if (!a->given)
        return true;
    return a->regular ? a->first == b->first && a->spacing == b->spacing : same_lengths(&a->at, &b->at);
}

static bool same_corner(const Corner *a, const Corner *b)
{
    return a->kind == b->kind &&
           (a->kind == CORNER_NONE || (a->joint == b->joint && a->through == b->through && a->gap == b->gap));
}

static bool same_face(const Face *a, const Face *b)
{
    if (!same_text(a->name, b->name) || a->width != b->width || !same_marks(&a->floor, &b->floor) ||
        !same_marks(&a->ceiling, &b->ceiling) || !same_marks(&a->left, &b->left) || !same_marks(&a->right, &b->right))
        return false;
    if (a->margin.floor != b->margin.floor || a->margin.ceiling != b->margin.ceiling ||
        a->margin.left != b->margin.left || a->margin.right != b->margin.right || a->wall != b->wall ||
        a->backing != b->backing)
        return false;
    if (!same_corner(&a->corner, &b->corner) || !same_studs(&a->studs, &b->studs))
        return false;
    if (a->openings.count != b->openings.count)
        return false;
    for (int i = 0; i < a->openings.count; i++)
        if (!same_opening(&a->openings.at[i], &b->openings.at[i]))
            return false;
    return true;
}

static bool same_stock(const Stock *a, const Stock *b)
{
    if (!same_text(a->label, b->label) || a->length != b->length || a->count != b->count ||
        !same_text(a->tone, b->tone) || a->width_given != b->width_given || (a->width_given && a->width != b->width) ||
        a->avoid.count != b->avoid.count || a->show.count != b->show.count || a->gone_given != b->gone_given ||
        (a->gone_given && a->gone != b->gone) || a->found_given != b->found_given ||
        (a->found_given && a->found != b->found))
        return false;
    for (int i = 0; i < a->avoid.count; i++)
        if (a->avoid.at[i].from != b->avoid.at[i].from || a->avoid.at[i].to != b->avoid.at[i].to)
            return false;
    for (int i = 0; i < a->show.count; i++)
        if (a->show.at[i].at != b->show.at[i].at || !same_text(a->show.at[i].what, b->show.at[i].what))
            return false;
    return true;
}

static bool same_fasteners(const Fasteners *a, const Fasteners *b)
{
    if (a->given != b->given || !a->given)
        return a->given == b->given;
    return a->length_given == b->length_given && (!a->length_given || a->length == b->length) &&
           a->drywall == b->drywall;
}

static bool same_trim(const Trim *a, const Trim *b)
{
    if (a->given != b->given)
        return false;
    if (!a->given)
        return true;
    if (a->stock.count != b->stock.count || a->pieces.count != b->pieces.count)
        return false;
    for (int i = 0; i < a->stock.count; i++)
        if (a->stock.at[i].length != b->stock.at[i].length || a->stock.at[i].count != b->stock.at[i].count)
            return false;
    for (int i = 0; i < a->pieces.count; i++) {
        const TrimPiece *p = &a->pieces.at[i];
        const TrimPiece *q = &b->pieces.at[i];
        if (!same_text(p->name, q->name) || p->length != q->length || p->count != q->count)
            return false;
    }
    return true;
}

static bool same_air(const Air *a, const Air *b)
{
    return a->temperature == b->temperature && a->celsius == b->celsius && a->humidity == b->humidity;
}

static bool same_wood(const Wood *a, const Wood *b)
{
    if (a->given != b->given)
        return false;
    return !a->given || (same_text(a->species, b->species) && a->grain == b->grain && same_air(&a->hung, &b->hung) &&
                         same_air(&a->dry, &b->dry) && same_air(&a->damp, &b->damp));
}

static bool same_piece(const HungPiece *a, const HungPiece *b)
{
    return same_text(a->face, b->face) && a->course == b->course && a->left == b->left && a->right == b->right &&
           a->board == b->board && a->offset_given == b->offset_given && (!a->offset_given || a->offset == b->offset) &&
           a->state == b->state && a->plan == b->plan;
}

static bool same_loss(const HungLoss *a, const HungLoss *b)
{
    return a->board == b->board && a->offset == b->offset && a->length == b->length && a->plan == b->plan;
}

static bool same_edge(const HungEdge *a, const HungEdge *b)
{
    return same_text(a->face, b->face) && a->course == b->course && a->is_top == b->is_top && a->height == b->height &&
           a->plan == b->plan;
}

/* The same records in the same order; their places do not count. */
static bool same_hung(const Wall *a, const Wall *b)
{
    if (a->hung_pieces.count != b->hung_pieces.count || a->hung_losses.count != b->hung_losses.count ||
        a->hung_edges.count != b->hung_edges.count)
        return false;
    HungWalk p = {0};
    HungWalk q = {0};
    while (hung_walk(a, &p) && hung_walk(b, &q)) {
        if (p.kind != q.kind)
            return false;
        const bool same = p.kind == HUNG_PIECE  ? same_piece(&a->hung_pieces.at[p.index], &b->hung_pieces.at[q.index])
                          : p.kind == HUNG_LOSS ? same_loss(&a->hung_losses.at[p.index], &b->hung_losses.at[q.index])
                                                : same_edge(&a->hung_edges.at[p.index], &b->hung_edges.at[q.index]);
        if (!same)
            return false;
    }
    return true;
}

bool wall_equal(const Wall *a, const Wall *b)
{
    if (!same_text(a->title, b->title) || a->units != b->units || a->round != b->round || a->start != b->start)
        return false;
    if (!same_planks(&a->planks, &b->planks) || !same_joints(&a->joints, &b->joints) || a->saw.kerf != b->saw.kerf ||
        a->saw.square != b->saw.square)
        return false;
    if (a->faces.count != b->faces.count || a->stock.count != b->stock.count)
        return false;
    for (int i = 0; i < a->faces.count; i++)
        if (!same_face(&a->faces.at[i], &b->faces.at[i]))
            return false;
    for (int i = 0; i < a->stock.count; i++)
        if (!same_stock(&a->stock.at[i], &b->stock.at[i]))
            return false;
    return same_fasteners(&a->fasteners, &b->fasteners) && same_trim(&a->trim, &b->trim) &&
           same_wood(&a->wood, &b->wood) && shop_equal(a, b) && same_hung(a, b);
}
