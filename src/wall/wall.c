#include "wall/wall.h"

#include "base/panic.h"
#include "base/wide.h"
#include "wall/shop.h"

#include <string.h>

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
    COPY_LIST(arena, &copy->faces);
    for (int i = 0; i < copy->faces.count; i++)
        copy_face(arena, &copy->faces.at[i]);
    COPY_LIST(arena, &copy->stock);
    for (int i = 0; i < copy->stock.count; i++) {
        Stock *stock = &copy->stock.at[i];
        stock->label = copy_text(arena, stock->label);
        stock->tone = copy_text(arena, stock->tone);
        COPY_LIST(arena, &stock->avoid);
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
           a->lap == b->lap && a->least_given == b->least_given && (!a->least_given || a->least == b->least) &&
           a->leave == b->leave;
}

static bool same_opening(const Opening *a, const Opening *b)
{
    return same_text(a->name, b->name) && a->kind == b->kind && a->left == b->left && a->to_floor == b->to_floor &&
           (a->to_floor || a->bottom == b->bottom) && a->width == b->width && a->top_given == b->top_given &&
           (a->top_given ? a->top == b->top : a->height == b->height) && a->clear == b->clear &&
           a->plate.given == b->plate.given &&
           (!a->plate.given || (a->plate.width == b->plate.width && a->plate.height == b->plate.height)) &&
           a->front_given == b->front_given && (!a->front_given || a->front == b->front) &&
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
    return a->kind == b->kind && (a->kind == CORNER_NONE || (a->joint == b->joint && a->through == b->through));
}

static bool same_face(const Face *a, const Face *b)
{
    if (!same_text(a->name, b->name) || a->width != b->width || !same_marks(&a->floor, &b->floor) ||
        !same_marks(&a->ceiling, &b->ceiling) || !same_marks(&a->left, &b->left) || !same_marks(&a->right, &b->right))
        return false;
    if (a->margin.floor != b->margin.floor || a->margin.ceiling != b->margin.ceiling ||
        a->margin.left != b->margin.left || a->margin.right != b->margin.right || a->underlay != b->underlay)
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
        a->avoid.count != b->avoid.count)
        return false;
    for (int i = 0; i < a->avoid.count; i++)
        if (a->avoid.at[i].from != b->avoid.at[i].from || a->avoid.at[i].to != b->avoid.at[i].to)
            return false;
    return true;
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

static bool same_hung(const Wall *a, const Wall *b)
{
    if (a->hung_pieces.count != b->hung_pieces.count || a->hung_edges.count != b->hung_edges.count)
        return false;
    for (int i = 0; i < a->hung_pieces.count; i++) {
        const HungPiece *p = &a->hung_pieces.at[i];
        const HungPiece *q = &b->hung_pieces.at[i];
        if (!same_text(p->face, q->face) || p->course != q->course || p->left != q->left || p->right != q->right ||
            p->board != q->board || p->offset_given != q->offset_given || (p->offset_given && p->offset != q->offset))
            return false;
    }
    for (int i = 0; i < a->hung_edges.count; i++) {
        const HungEdge *p = &a->hung_edges.at[i];
        const HungEdge *q = &b->hung_edges.at[i];
        if (!same_text(p->face, q->face) || p->course != q->course || p->is_top != q->is_top || p->height != q->height)
            return false;
    }
    return true;
}

bool wall_equal(const Wall *a, const Wall *b)
{
    if (!same_text(a->title, b->title) || a->units != b->units || a->round != b->round || a->start != b->start)
        return false;
    if (!same_planks(&a->planks, &b->planks) || a->joints.land != b->joints.land ||
        a->joints.stagger != b->joints.stagger || a->joints.shortest != b->joints.shortest ||
        a->saw.kerf != b->saw.kerf || a->saw.square != b->saw.square)
        return false;
    if (a->faces.count != b->faces.count || a->stock.count != b->stock.count)
        return false;
    for (int i = 0; i < a->faces.count; i++)
        if (!same_face(&a->faces.at[i], &b->faces.at[i]))
            return false;
    for (int i = 0; i < a->stock.count; i++)
        if (!same_stock(&a->stock.at[i], &b->stock.at[i]))
            return false;
    if (a->fasteners.given != b->fasteners.given ||
        (a->fasteners.given &&
         (a->fasteners.length != b->fasteners.length || a->fasteners.wallboard != b->fasteners.wallboard)))
        return false;
    return same_trim(&a->trim, &b->trim) && same_wood(&a->wood, &b->wood) && shop_equal(a, b) && same_hung(a, b);
}

/* ---- a new wall, and what follows from one ---- */

Length wall_default_round(Units units)
{
    return units == UNITS_IN ? LENGTH_INCH / 16 : LENGTH_MM;
}

Wall *wall_new(Arena *arena, Units units)
{
    Wall *wall = arena_one(arena, Wall);
    wall->title = copy_text(arena, "");
    wall->wood.species = copy_text(arena, "");
    wall->units = units;
    wall->round = wall_default_round(units);
    wall->next_id = 1;
    return wall;
}

Length wall_course_width(const Wall *wall, int64_t number)
{
    const int count = wall->planks.widths.count;
    BUG_UNLESS(count > 0);
    const int64_t place = number % count;
    return wall->planks.widths.at[place < 0 ? place + count : place];
}

Length wall_course_face(const Wall *wall, int64_t number)
{
    return wall_course_width(wall, number) - wall->planks.lap;
}

Length wall_run(const Wall *wall)
{
    Length run = 0;
    for (int i = 0; i < wall->planks.widths.count; i++)
        run += wall_course_face(wall, i) + wall->planks.reveal;
    return run;
}

Length wall_least(const Wall *wall)
{
    if (wall->planks.least_given)
        return wall->planks.least;
    Length narrowest = wall_course_face(wall, 0);
    for (int i = 1; i < wall->planks.widths.count; i++) {
        const Length face = wall_course_face(wall, i);
        if (face < narrowest)
            narrowest = face;
    }
    return wide_narrow(wide_divide(narrowest, 3));
}

Length wall_widest(const Wall *wall)
{
    Length widest = wall_course_width(wall, 0);
    for (int i = 1; i < wall->planks.widths.count; i++) {
        const Length width = wall_course_width(wall, i);
        if (width > widest)
            widest = width;
    }
    return widest;
}

/* ---- boards ---- */

int wall_board_count(const Wall *wall)
{
    int count = 0;
    for (int i = 0; i < wall->stock.count; i++)
        count += wall->stock.at[i].count;
    return count;
}

const Stock *wall_board(const Wall *wall, int number)
{
    if (number < 1)
        return NULL;
    for (int i = 0; i < wall->stock.count; i++) {
        if (number <= wall->stock.at[i].count)
            return &wall->stock.at[i];
        number -= wall->stock.at[i].count;
    }
    return NULL;
}

int wall_stock_first(const Wall *wall, int stock_index)
{
    BUG_UNLESS(stock_index >= 0 && stock_index < wall->stock.count);
    int first = 1;
    for (int i = 0; i < stock_index; i++)
        first += wall->stock.at[i].count;
    return first;
}

/* ---- faces, openings, studs ---- */

int wall_face_named(const Wall *wall, const char *name)
{
    for (int i = 0; i < wall->faces.count; i++)
        if (same_text(wall->faces.at[i].name, name))
            return i;
    return -1;
}

int wall_face_index(const Wall *wall, uint32_t id)
{
    for (int i = 0; i < wall->faces.count; i++)
        if (wall->faces.at[i].id == id)
            return i;
    return -1;
}

int wall_opening_index(const Face *face, uint32_t id)
{
    for (int i = 0; i < face->openings.count; i++)
        if (face->openings.at[i].id == id)
            return i;
    return -1;
}

Length marks_off(const Marks *marks, Length at, bool after)
{
    BUG_UNLESS(marks->count > 0);
    /* The first mark beyond `at`: behind it, or with `after` strictly behind it. */
    int next = 0;
    while (next < marks->count && (after ? marks->at[next].at <= at : marks->at[next].at < at))
        next++;
    if (next == 0)
        return marks->at[0].off;
    if (next == marks->count)
        return marks->at[next - 1].off;
    const Mark *before = &marks->at[next - 1];
    const Mark *behind = &marks->at[next];
    const Wide run = behind->at - before->at;
    const Wide rise = (Wide)(behind->off - before->off) * (at - before->at);
    return wide_narrow(wide_divide(before->off * run + rise, run));
}

Length opening_foot(const Face *face, const Opening *opening)
{
    return opening->to_floor ? -marks_off(&face->floor, opening->left, true) : opening->bottom;
}

Length opening_head(const Face *face, const Opening *opening)
{
    return opening->top_given ? opening->top : opening_foot(face, opening) + opening->height;
}

LengthList wall_studs(Arena *arena, const Face *face)
{
    LengthList studs = {0};
    if (!face->studs.given)
        return studs;
    if (!face->studs.regular) {
        for (int i = 0; i < face->studs.at.count; i++) {
            const Length centre = face->studs.at.at[i];
            if (centre >= 0 && centre <= face->width)
                *arena_push(arena, &studs) = centre;
        }
        return studs;
    }
    const Length spacing = face->studs.spacing;
    BUG_UNLESS(spacing > 0);
    /* The first centre on the face: `first` may lie left of it. */
    Length centre = face->studs.first;
    if (centre < 0)
        centre += wide_narrow(wide_ceiling(-(Wide)centre, spacing)) * spacing;
    for (; centre <= face->width; centre += spacing)
        *arena_push(arena, &studs) = centre;
    return studs;
}

/* ---- corners ---- */

Corner wall_corner_right(const Wall *wall, int face_index, bool *runs_through)
{
    const int count = wall->faces.count;
    BUG_UNLESS(face_index >= 0 && face_index < count);
    Corner corner = wall->faces.at[face_index].corner;
    if (face_index == count - 1 && count < 3)
        corner.kind = CORNER_NONE;
    *runs_through = corner.kind != CORNER_NONE && corner.through == THROUGH_LEFT;
    return corner;
}

Corner wall_corner_left(const Wall *wall, int face_index, bool *runs_through)
{
    const int count = wall->faces.count;
    bool before_runs = false;
    Corner corner = {.kind = CORNER_NONE};
    BUG_UNLESS(face_index >= 0 && face_index < count);
    if (face_index > 0 || count >= 3)
        corner = wall_corner_right(wall, (face_index + count - 1) % count, &before_runs);
    *runs_through = corner.kind != CORNER_NONE && !before_runs;
    return corner;
}

/*
 * s: underlay of the face that is met; t = s + thickness of the planks (datumrow(5), "Corner").
 */
static Length corner_loss(const Wall *wall, Corner corner, bool runs_through, const Face *met)
{
    const Length s = met->underlay;
    const Length t = s + wall->planks.thickness;
    if (corner.kind == CORNER_NONE)
        return 0;
    switch (corner.joint) {
    case CORNER_BUTT: return runs_through ? s : t;
    case CORNER_TRIM: return corner.kind == CORNER_INSIDE ? s : 0;
    case CORNER_LAP: return runs_through ? -t : -s;
    case CORNER_MITRE: return -t;
    }
    return 0;
}

Length wall_corner_loss_left(const Wall *wall, int face_index)
{
    const int count = wall->faces.count;
    bool runs_through;
    const Corner corner = wall_corner_left(wall, face_index, &runs_through);
    return corner_loss(wall, corner, runs_through, &wall->faces.at[(face_index + count - 1) % count]);
}

Length wall_corner_loss_right(const Wall *wall, int face_index)
{
    bool runs_through;
    const Corner corner = wall_corner_right(wall, face_index, &runs_through);
    return corner_loss(wall, corner, runs_through, &wall->faces.at[(face_index + 1) % wall->faces.count]);
}

/*
 * Hanging order: at an inside corner the face that runs through comes before the one that butts on it; at an outside
 * lap the one that laps comes after the one whose ends it covers. Taken as "a before b" rules, the first face in the
 * file that waits for none is next; where all wait (a ring), the first in the file that is left.
 */
void wall_face_order(const Wall *wall, int *order)
{
    const int count = wall->faces.count;
    bool taken[WALL_FACES_MOST] = {false};
    int before[WALL_FACES_MOST]; /* corner i: the face that comes first there, or -1 */
    int after[WALL_FACES_MOST];
    BUG_UNLESS(count <= WALL_FACES_MOST);
    for (int i = 0; i < count; i++) {
        bool runs_through;
        const Corner corner = wall_corner_right(wall, i, &runs_through);
        const int next = (i + 1) % count;
        const int through = runs_through ? i : next;
        const int other = runs_through ? next : i;
        before[i] = after[i] = -1;
        if (corner.kind == CORNER_INSIDE && corner.joint == CORNER_BUTT) {
            before[i] = through;
            after[i] = other;
        } else if (corner.kind == CORNER_OUTSIDE && corner.joint == CORNER_LAP) {
            before[i] = other;
            after[i] = through;
        }
    }
    for (int place = 0; place < count; place++) {
        int first_left = -1;
        int next = -1;
        for (int face = 0; face < count && next < 0; face++) {
            if (taken[face])
                continue;
            if (first_left < 0)
                first_left = face;
            bool waits = false;
            for (int i = 0; i < count; i++)
                waits |= after[i] == face && !taken[before[i]];
            if (!waits)
                next = face;
        }
        order[place] = next >= 0 ? next : first_left;
        taken[order[place]] = true;
    }
}

/* ---- words ---- */

static const char *const opening_words[] = {
    [OPENING_BOX] = "box",     [OPENING_WINDOW] = "window", [OPENING_DOOR] = "door",   [OPENING_HEARTH] = "hearth",
    [OPENING_STOVE] = "stove", [OPENING_VENT] = "vent",     [OPENING_OTHER] = "other",
};

const char *opening_kind_word(OpeningKind kind)
{
    BUG_UNLESS((size_t)kind < sizeof opening_words / sizeof *opening_words);
    return opening_words[kind];
}

bool opening_kind_from(const char *word, OpeningKind *kind)
{
    for (size_t i = 0; i < sizeof opening_words / sizeof *opening_words; i++)
        if (strcmp(word, opening_words[i]) == 0) {
            *kind = (OpeningKind)i;
            return true;
        }
    return false;
}
