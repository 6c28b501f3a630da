#include "unkind_wall.h"

#include "base/hash.h"
#include "base/panic.h"
#include "support/making.h"
#include "support/random_wall.h"
#include "wall/check.h"
#include "wall/straight.h"

#include <stdio.h>

/*
 *      ______________      A side is marked below the floor and above the ceiling, so that it leans over the whole
 *      \            /      height. Openings are placed where the one before ends as often as anywhere. Hung records
 *       \          /       follow the courses' bands, so that some of them do fit.
 *        \________/
 *
 * What the checks of a wall refuse (a plate that became too small, sides that cross everywhere) is drawn again from the
 * same row; after so many tries a wall without that part is taken.
 */

enum { TRIES_MOST = 40, STOCK_LINES_MOST = 40 };

/* ---- limits ---- */

static int64_t mm_of(Length length)
{
    return length / LENGTH_MM;
}

/* A floor or ceiling `middle` away from the level line, on a face `tall` high. */
static void make_edge(Making *making, Marks *marks, Length width, Length middle, int64_t tall_mm)
{
    const int64_t wide_mm = mm_of(width);
    switch (pick(making, 8)) {
    case 0:
    case 1: add_mark(making, marks, measure(making, -50, wide_mm), middle); break;
    case 2: /* out of level, beyond 1 in 12 now and then */
        add_mark(making, marks, 0, middle);
        add_mark(making, marks, width, middle + measure(making, -wide_mm / 9, wide_mm / 9));
        break;
    case 3: /* a rake over all of it */
        add_mark(making, marks, 0, middle);
        add_mark(making, marks, width, middle + measure(making, -tall_mm, tall_mm));
        break;
    case 4: /* a gable, or a valley */
        add_mark(making, marks, 0, middle);
        add_mark(making, marks, measure(making, wide_mm / 5, wide_mm * 4 / 5),
                 middle + measure(making, -tall_mm, tall_mm));
        add_mark(making, marks, width, middle + measure(making, -tall_mm / 3, tall_mm / 3));
        break;
    case 5: /* steps like a stair */
    {
        Length at = measure(making, 0, wide_mm / 3 + 1);
        Length off = middle;
        for (int count = 1 + pick(making, 3); count > 0; count--) {
            add_mark(making, marks, at, off);
            off += measure(making, -tall_mm / 3, tall_mm / 3);
            add_mark(making, marks, at, off);
            at += measure(making, 1, wide_mm / 2 + 1);
        }
        break;
    }
    case 6: /* a short steep piece between level ones */
    {
        const Length at = measure(making, 0, wide_mm);
        add_mark(making, marks, at, middle);
        add_mark(making, marks, at + measure(making, 1, 200), middle + measure(making, -tall_mm / 2, tall_mm / 2));
        break;
    }
    default: /* as old houses are */
    {
        Length at = measure(making, -100, 0);
        for (int count = 2 + pick(making, 5); count > 0; count--) {
            add_mark(making, marks, at, middle + measure(making, -20, 20));
            at += measure(making, 5, wide_mm / 3 + 6);
        }
        break;
    }
    }
}

/* Leans by a third of the width at the most, between `low` and `high` or beyond them. */
static void make_lean(Making *making, Marks *marks, Length width, Length low, Length high)
{
    const int64_t third = mm_of(width) / 3;
    const int64_t small = third / 8 + 1;
    switch (pick(making, 6)) {
    case 0:
    case 1: return; /* plumb */
    case 2:         /* one long lean, to either side */
        add_mark(making, marks, low, 0);
        add_mark(making, marks, high, measure(making, -third, third));
        break;
    case 3: /* in, at the foot */
        add_mark(making, marks, low, measure(making, 0, third));
        add_mark(making, marks, high, 0);
        break;
    case 4: /* a step somewhere */
    {
        const Length at = between(making, low, high);
        add_mark(making, marks, at, measure(making, -small, small));
        add_mark(making, marks, at, measure(making, 0, third));
        break;
    }
    default: /* in and out */
    {
        Length at = low;
        for (int count = 2 + pick(making, 3); count > 0; count--) {
            add_mark(making, marks, at, measure(making, -small, third));
            at += (high - low) / 4 + measure(making, 1, 60);
        }
        break;
    }
    }
}

static Corner any_corner(Making *making)
{
    static const Corner corners[] = {
        {CORNER_INSIDE, CORNER_BUTT, THROUGH_LEFT, 0},   {CORNER_INSIDE, CORNER_BUTT, THROUGH_RIGHT, 0},
        {CORNER_INSIDE, CORNER_TRIM, THROUGH_LEFT, 0},   {CORNER_OUTSIDE, CORNER_TRIM, THROUGH_LEFT, 0},
        {CORNER_OUTSIDE, CORNER_LAP, THROUGH_LEFT, 0},   {CORNER_OUTSIDE, CORNER_LAP, THROUGH_RIGHT, 0},
        {CORNER_OUTSIDE, CORNER_MITER, THROUGH_LEFT, 0}, {CORNER_NONE, CORNER_BUTT, THROUGH_LEFT, 0},
    };
    return corners[pick(making, 8)];
}

static void make_studs(Making *making, Studs *studs, Length width)
{
    const int64_t wide_mm = mm_of(width);
    *studs = (Studs){.given = !chance(making, 6)};
    if (!studs->given)
        return;
    const int kind = pick(making, 8);
    studs->regular = kind < 3;
    if (studs->regular) {
        studs->first = measure(making, -200, 500);
        studs->spacing = kind == 0 ? measure(making, 30, 120) : measure(making, 250, 800);
        return;
    }
    /* one to four anywhere, the face's ends and beyond among them; in a few cases many */
    const int count = kind == 7 ? 5 + pick(making, 8) : 1 + pick(making, 4);
    Length at = measure(making, -60, wide_mm * 2 / 3);
    for (int i = 0; i < count; i++) {
        *arena_push(making->arena, &studs->at) = at;
        at += chance(making, 5) ? measure(making, 26, 60) : measure(making, 26, wide_mm * 2 / count + 100);
    }
}

/* ---- openings ---- */

/* Beside, above or upon the one before; or anywhere. */
static void place_opening(Making *making, const Face *face, Opening *opening, Length tall)
{
    const int64_t wide_mm = mm_of(face->width), tall_mm = mm_of(tall);
    const Opening *before = face->openings.count > 0 ? &face->openings.at[face->openings.count - 1] : NULL;
    opening->left = measure(making, chance(making, 12) ? -200 : 0, wide_mm);
    opening->bottom = measure(making, -tall_mm, tall_mm);
    if (before == NULL || chance(making, 3))
        return;
    const Length apart = chance(making, 2) ? 0 : between(making, -2, 2); /* touching, or by a nanometre or two not */
    switch (pick(making, 4)) {
    case 0: /* to the right of it */
        opening->left = before->left + before->width + apart;
        opening->bottom = before->bottom;
        break;
    case 1: /* its grown edge and this one's */
        opening->left = before->left + before->width + before->clear + opening->clear + apart;
        break;
    case 2: /* above it, as wide */
        opening->left = before->left;
        opening->width = before->width;
        opening->bottom = before->bottom + before->height + apart;
        break;
    default: /* within a plank's width of it */ opening->left += measure(making, 0, 60); break;
    }
}

static void make_opening(Making *making, Face *face, Length tall)
{
    const int64_t wide_mm = mm_of(face->width), tall_mm = mm_of(tall);
    char name[32];
    snprintf(name, sizeof name, "opening %d", face->openings.count + 1);
    Opening opening = {.id = making->wall->next_id++, .name = text_of(making, name)};
    opening.kind = (OpeningKind)pick(making, OPENING_OTHER + 1);
    const bool box = opening.kind == OPENING_BOX;
    opening.width = box ? measure(making, 40, 150) : measure(making, 20, wide_mm / (chance(making, 6) ? 1 : 3) + 21);
    opening.height = box ? measure(making, 60, 150) : measure(making, 20, tall_mm / (chance(making, 6) ? 1 : 3) + 21);
    opening.clear = measure_or_none(making, 2, 0, 8);
    place_opening(making, face, &opening, tall);
    if (!box && (opening.kind == OPENING_DOOR || chance(making, 5))) {
        opening.to_floor = true;
        opening.bottom = 0;
        opening.top_given = chance(making, 3);
        if (opening.top_given) {
            opening.top = opening_foot(face, &opening) + opening.height;
            opening.height = 0;
        }
    }
    opening.plate.given = box && chance(making, 2);
    if (opening.plate.given) {
        opening.plate.width = opening.width + 2 * opening.clear + measure_or_none(making, 3, 0, 30);
        opening.plate.height = opening.height + 2 * opening.clear + measure_or_none(making, 3, 0, 30);
    }
    opening.front_given = box && chance(making, 2);
    if (opening.front_given)
        opening.front = measure(making, -30, 60);
    opening.away_given = opening.kind == OPENING_STOVE && chance(making, 2);
    if (opening.away_given)
        opening.away = measure(making, 0, 1000);
    *arena_push(making->arena, &face->openings) = opening;
}

/* ---- a face ---- */

static void make_face(Making *making, int number, UnkindSize size, Length tall)
{
    static const char *const names[] = {"north", "east", "south", "west"};
    Face face = {.id = making->wall->next_id++, .name = text_of(making, names[number])};
    face.width =
        size == UNKIND_BIG ? measure(making, 1500, 4500) : measure(making, chance(making, 10) ? 60 : 500, 2300);
    const Length down = chance(making, 3) ? 0 : measure(making, 0, mm_of(tall) - 1);
    if (chance(making, 2))
        face.margin = (Margin){measure_or_none(making, 2, 0, 12), measure_or_none(making, 2, 0, 12),
                               measure_or_none(making, 2, 0, 12), measure_or_none(making, 2, 0, 12)};
    make_edge(making, &face.floor, face.width, down, mm_of(tall));
    make_edge(making, &face.ceiling, face.width, tall - down, mm_of(tall));
    make_lean(making, &face.left, face.width, -down, tall - down);
    make_lean(making, &face.right, face.width, -down, tall - down);
    face.corner = any_corner(making);
    face.backing = measure_or_none(making, 2, 1, 20);
    make_studs(making, &face.studs, face.width);
    for (int count = chance(making, 2) ? 0 : 1 + pick(making, 4); count > 0; count--)
        make_opening(making, &face, tall);
    *arena_push(making->arena, &making->wall->faces) = face;
}

/* ---- planks, joints, saw ---- */

static void make_planks(Making *making, Length tall, int courses)
{
    Planks *planks = &making->wall->planks;
    const int64_t usual = mm_of(tall) / courses + 20;
    Length narrowest = LENGTH_METRE;
    *planks = (Planks){0};
    for (int count = chance(making, 2) ? 1 : 2 + pick(making, 4); count > 0; count--) {
        const Length width = measure(making, usual * 2 / 3, usual * 4 / 3);
        narrowest = width < narrowest ? width : narrowest;
        *arena_push(making->arena, &planks->widths) = width;
    }
    planks->thickness = measure(making, 4, 25);
    planks->lap = chance(making, 3) ? measure(making, 0, mm_of(narrowest) / 3) : 0;
    planks->reveal = measure_or_none(making, 2, 0, 6);
    planks->least_given = chance(making, 2);
    planks->least = planks->least_given ? measure(making, 0, mm_of(narrowest)) : 0;
    planks->leave = chance(making, 5) ? measure(making, 0, mm_of(narrowest) / 2) : 0;
}

static void make_rules(Making *making)
{
    Wall *wall = making->wall;
    Joints *joints = &wall->joints;
    *joints = (Joints){0};
    joints->land = chance(making, 3) ? LAND_ANYWHERE : LAND_STUDS;
    joints->stagger = measure_or_none(making, 3, 0, chance(making, 4) ? 900 : 250);
    joints->shortest = measure_or_none(making, 3, 0, chance(making, 4) ? 1500 : 350);
    wall->saw.kerf = measure_or_none(making, 4, 0, chance(making, 8) ? 25 : 5);
    wall->saw.square = measure_or_none(making, 3, 0, chance(making, 8) ? 200 : 15);
}

/* ---- boards ---- */

static void add_avoids(Making *making, Stock *stock)
{
    Length from = measure(making, 0, 300);
    for (int count = pick(making, 7); count > 0; count--) {
        const Length to = from + measure(making, 1, chance(making, 3) ? 200 : 20);
        if (to > stock->length || to == from)
            break;
        *arena_push(making->arena, &stock->avoid) = (Stretch){from, to};
        from = to + measure_or_none(making, 4, 1, 600); /* one right behind the other now and then */
    }
}

/* Boards for about `wanted` of wall: far too few, few, enough or plenty. */
static void make_stock(Making *making, Length wanted, int64_t span_mm)
{
    static const int percents[] = {0, 40, 90, 102, 108, 120, 140, 200, 300, 400};
    static const char *const tones[] = {"", "", "gray", "pale", "brown"};
    Wall *wall = making->wall;
    wall->stock = (Stocks){0};
    const Length enough = wanted / 100 * percents[pick(making, 10)];
    const int lengths = chance(making, 3) ? 1 : chance(making, 2) ? 3 : 100; /* how many of them differ */
    Length known[3];
    for (int i = 0; i < 3; i++)
        known[i] = measure(making, 150, span_mm);
    const bool avoids = chance(making, 3), widths = chance(making, 3);
    Length there = 0;
    for (int line = 0; there < enough && line < STOCK_LINES_MOST; line++) {
        Stock stock = {.id = wall->next_id++, .count = 1, .label = text_of(making, "")};
        stock.tone = text_of(making, tones[pick(making, 5)]);
        if (chance(making, 4))
            stock.label = text_of(making, chance(making, 5) ? "A1" : "K");
        stock.length = lengths < 100       ? known[pick(making, lengths)]
                       : chance(making, 9) ? measure(making, 1, 150)
                                           : measure(making, 150, span_mm);
        if (lengths < 100 || chance(making, 3))
            stock.count = 1 + pick(making, 6);
        if (widths && chance(making, 2)) {
            stock.width_given = true;
            stock.width = mm_of(wall_widest(wall)) > 30 && chance(making, 2)
                              ? measure(making, 20, mm_of(wall_widest(wall)) + 20)
                              : wall->planks.widths.at[pick(making, wall->planks.widths.count)];
        }
        if (avoids && !chance(making, 3))
            add_avoids(making, &stock);
        there += stock.length * stock.count;
        *arena_push(making->arena, &wall->stock) = stock;
    }
}

/* ---- what hangs ---- */

static bool edge_is_there(const Wall *wall, const HungEdge *edge)
{
    for (int i = 0; i < wall->hung_edges.count; i++) {
        const HungEdge *there = &wall->hung_edges.at[i];
        if (strcmp(there->face, edge->face) == 0 && there->course == edge->course && there->is_top == edge->is_top)
            return true;
    }
    return false;
}

static void measure_edges(Making *making)
{
    Wall *wall = making->wall;
    const Length pitch = wall_run(wall) / wall->planks.widths.count;
    const int64_t reach = chance(making, 3) ? mm_of(pitch) : 6;
    for (int count = 1 + pick(making, 3); count > 0; count--) {
        const Face *face = &wall->faces.at[pick(making, wall->faces.count)];
        HungEdge edge = {.face = text_of(making, face->name), .course = pick(making, 7) - 3};
        edge.is_top = wall_hangs_upward(wall) || edge.course > 0 || (edge.course == 0 && chance(making, 2));
        edge.height = wall->start + (edge.course + (edge.is_top ? 1 : 0)) * pitch + measure(making, -reach, reach);
        if (!edge_is_there(wall, &edge))
            *arena_push(making->arena, &wall->hung_edges) = edge;
    }
}

static void hang_pieces(Making *making)
{
    Wall *wall = making->wall;
    const int boards = wall_board_count(wall);
    for (int count = 1 + pick(making, 5); count > 0; count--) {
        const Face *face = &wall->faces.at[pick(making, wall->faces.count)];
        const Studs *studs = &face->studs;
        HungPiece piece = {.face = text_of(making, face->name), .course = pick(making, 6) - 1};
        piece.left = chance(making, 2) ? measure(making, -3, 3) : measure(making, 0, mm_of(face->width));
        piece.right = chance(making, 4) ? face->width : piece.left + measure(making, 10, mm_of(face->width));
        if (studs->at.count > 0 && chance(making, 2))
            piece.right = studs->at.at[pick(making, studs->at.count)];
        if (piece.right <= piece.left)
            piece.right = piece.left + 100 * LENGTH_MM;
        piece.board = 1 + pick(making, boards == 0 || chance(making, 8) ? 1000 : boards);
        piece.offset_given = chance(making, 2);
        piece.offset = piece.offset_given ? measure_or_none(making, 2, 0, 900) : 0;
        piece.plan = chance(making, 8) ? PLAN_ANEW : PLAN_KEPT;
        *arena_push(making->arena, &wall->hung_pieces) = piece;
    }
}

/* ---- the whole ---- */

/* Plank that the faces take, openings not counted. */
static Length wanted_length(const Wall *wall, Length tall)
{
    Length wanted = 0;
    const Length pitch = wall_run(wall) / wall->planks.widths.count;
    for (int i = 0; i < wall->faces.count; i++)
        wanted += wall->faces.at[i].width / LENGTH_MM * (tall / (pitch / LENGTH_MM + 1));
    return wanted;
}

/* A corner on the last face wants three faces. */
static void mend_corners(Wall *wall)
{
    if (wall->faces.count < 3)
        wall->faces.at[wall->faces.count - 1].corner = (Corner){0};
}

static void make_unkind(Making *making, UnkindSize size)
{
    Wall *wall = making->wall;
    const Length tall = size == UNKIND_TINY   ? measure(making, 150, 600)
                        : size == UNKIND_ROOM ? measure(making, 300, 1400)
                                              : measure(making, 900, 2600);
    const int courses = size == UNKIND_TINY ? 3 + pick(making, 4) : 4 + pick(making, size == UNKIND_ROOM ? 9 : 28);
    wall->faces = (Faces){0};
    wall->hung_pieces = (HungPieces){0};
    wall->hung_losses = (HungLosses){0};
    wall->hung_edges = (HungEdges){0};
    make_planks(making, tall, courses);
    make_rules(making);
    wall->start = chance(making, 12) ? measure(making, -9000, 9000) : measure(making, -60, 60);
    const int faces = size == UNKIND_TINY ? 1 + pick(making, 6) / 5 : 1 + pick(making, 4);
    for (int i = 0; i < faces; i++)
        make_face(making, i, size, tall);
    mend_corners(wall);
    make_stock(making, wanted_length(wall, tall), size == UNKIND_TINY ? 1800 : 3000);
    if (chance(making, 6))
        measure_edges(making);
    if (chance(making, 8)) {
        hang_pieces(making);
        make_later_records(making);
    }
    if (chance(making, 2))
        make_later(making);
}

/* Kept from the odd wall that this one began as: texts, fasteners, trim, bill, mill, wood. A casing goes round an
 * opening by its name: there is none of that name now. */
static void keep_shop(Making *making)
{
    for (int i = 0; i < making->wall->trim.runs.count; i++)
        making->wall->trim.runs.at[i].opening = text_of(making, "");
}

static Wall *made(Making *making, uint64_t seed, UnkindSize size)
{
    making->wall = random_wall(making->arena, seed, RANDOM_ANY);
    keep_shop(making);
    for (int tries = 0; tries < TRIES_MOST; tries++) {
        make_unkind(making, size);
        if (wall_check(making->arena, making->wall).count == 0)
            return making->wall;
    }
    panic("unkind wall", (int)seed, wall_check(making->arena, making->wall).at[0].text);
}

UnkindSize unkind_size(uint64_t seed)
{
    Random random = {seed * 7919 + 17};
    const uint64_t tenth = random_below(&random, 10);
    return tenth < 5 ? UNKIND_TINY : tenth < 9 ? UNKIND_ROOM : UNKIND_BIG;
}

Wall *unkind_wall(Arena *arena, uint64_t seed)
{
    Making making = {.arena = arena, .random = {seed * 1000003 + 977}};
    return made(&making, seed, unkind_size(seed));
}

Wall *unkind_wall_of_bytes(Arena *arena, const uint8_t *bytes, size_t count)
{
    const uint64_t hash = hash_bytes(bytes, count);
    Making making = {.arena = arena, .random = {hash}, .bytes = bytes, .byte_count = count};
    const UnkindSize size = chance(&making, 3) ? UNKIND_ROOM : UNKIND_TINY;
    const uint64_t shop = (uint64_t)pick(&making, 1000);
    return made(&making, shop, size);
}
