#include "random_wall.h"

#include "base/panic.h"
#include "support/making.h"
#include "wall/check.h"
#include "wall/species.h"
#include "wall/straight.h"

#include <stdio.h>
#include <string.h>

/*
 * Every value is drawn in the range in which it is plausible, mostly on the marking grid of its units, now and then
 * between two marks. Where values hang together (a plate and its opening) the later one is drawn from the earlier.
 */

/* Texts that a writer has to take care of. */
static const char *const odd_texts[] = {
    "north",
    "no",
    "yes",
    "on",
    "y",
    "N",
    "null",
    "~",
    "12",
    "1e3",
    "0x1F",
    "-4",
    "1_000",
    ".nan",
    "2024-01-01",
    "12:30",
    "a # b",
    "# b",
    "a: b",
    "a:",
    ": a",
    "it's",
    "\"quoted\"",
    "'quoted'",
    "back\\sl",
    " leading",
    "trailing ",
    "two  blanks",
    "[a]",
    "{a: b}",
    "- a",
    "-",
    "? a",
    "!a",
    "&a",
    "*a",
    "%a",
    "@a",
    "`a`",
    "|",
    ">",
    "a, b",
    "T\xc3\xbcr",
    "\xe6\x9c\xa8",
    "a\xe2\x80\xae b",
    "a\xc2\xa0z",
    "\xef\xbb\xbfz",
    "\xf0\x9f\xaa\x9f",
    "<<",
    "=",
    "true",
    "datumrow: 1",
    "...",
    "---",
    "3/4 oak",
    "A7",
    "left of the door",
};
enum { ODD_TEXTS = sizeof odd_texts / sizeof *odd_texts };

/* A name that no other thing of this wall has. */
static char *new_name(Making *making)
{
    char name[64];
    if (making->names < ODD_TEXTS && chance(making, 3)) {
        /* each odd text once */
        return text_of(making, odd_texts[(making->first_odd + making->names++) % ODD_TEXTS]);
    }
    static const char *const words[] = {"desk outlet", "window", "hatch", "niche", "bay", "sill", "shelf"};
    snprintf(name, sizeof name, "%s %d.%d", words[pick(making, 7)], making->names, pick(making, 1000000));
    return text_of(making, name);
}

static char *any_text(Making *making)
{
    static const char *const tones[] = {"grey", "pale", "dark", "red", "brown"};
    if (chance(making, 3))
        return text_of(making, "");
    return text_of(making, chance(making, 3) ? odd_texts[pick(making, ODD_TEXTS)] : tones[pick(making, 5)]);
}

/* ---- limits ---- */

/* A limit `middle` away from the level line; `reach`: how far a rake may take it. Marks may lie beyond the face. */
static void make_limit(Making *making, Marks *marks, Length width, Length middle, int64_t reach_mm)
{
    const int64_t wide_mm = width / LENGTH_MM;
    switch (pick(making, 7)) {
    case 0: /* level */ add_mark(making, marks, measure(making, -100, wide_mm + 100), middle); break;
    case 1: /* out of level */
        add_mark(making, marks, 0, middle);
        add_mark(making, marks, width, middle + measure(making, -40, 40));
        break;
    case 2: /* a step, the face's end or a mark upon it now and then */
    {
        const Length at = chance(making, 6) ? (chance(making, 2) ? 0 : width) : measure(making, 0, wide_mm);
        if (at > 0)
            add_mark(making, marks, 0, middle);
        add_mark(making, marks, at, middle);
        add_mark(making, marks, at, middle + measure(making, -reach_mm / 2, reach_mm / 2));
        break;
    }
    case 3: /* one long rake */
        add_mark(making, marks, 0, middle);
        add_mark(making, marks, width, middle + measure(making, -reach_mm, reach_mm));
        break;
    case 4: /* a gable, or a valley */
    {
        const Length at = measure(making, wide_mm / 4, wide_mm * 3 / 4);
        add_mark(making, marks, 0, middle);
        add_mark(making, marks, at, middle + measure(making, -reach_mm, reach_mm));
        add_mark(making, marks, width, middle + measure(making, -50, 50));
        break;
    }
    default: /* uneven, with a step now and then */
    {
        Length at = measure(making, -200, wide_mm / 3);
        const int count = 2 + pick(making, 6);
        for (int i = 0; i < count; i++) {
            add_mark(making, marks, at, middle + measure(making, -25, 25));
            if (chance(making, 6))
                add_mark(making, marks, at, middle + measure(making, -150, 150));
            at += measure(making, 1, wide_mm / 3 + 2) + 1;
        }
        break;
    }
    }
}

static void make_side(Making *making, Marks *marks)
{
    if (!chance(making, 3))
        return;
    Length up = measure(making, -1500, 0);
    const int count = 1 + pick(making, 4);
    for (int i = 0; i < count; i++) {
        add_mark(making, marks, up, measure(making, -30, 40));
        if (chance(making, 5))
            add_mark(making, marks, up, measure(making, -60, 120));
        up += measure(making, 1, 900) + 1;
    }
}

static Corner any_corner(Making *making)
{
    static const Corner corners[] = {
        {CORNER_INSIDE, CORNER_BUTT, THROUGH_LEFT, 0},   {CORNER_INSIDE, CORNER_BUTT, THROUGH_RIGHT, 0},
        {CORNER_INSIDE, CORNER_TRIM, THROUGH_LEFT, 0},   {CORNER_OUTSIDE, CORNER_TRIM, THROUGH_LEFT, 0},
        {CORNER_OUTSIDE, CORNER_LAP, THROUGH_LEFT, 0},   {CORNER_OUTSIDE, CORNER_LAP, THROUGH_RIGHT, 0},
        {CORNER_OUTSIDE, CORNER_MITER, THROUGH_LEFT, 0}, {CORNER_OUTSIDE, CORNER_MITER, THROUGH_RIGHT, 0},
    };
    return chance(making, 3) ? (Corner){0} : corners[pick(making, 8)];
}

static void make_studs(Making *making, Studs *studs, Length width)
{
    if (chance(making, 4))
        return;
    studs->given = true;
    studs->regular = !chance(making, 3);
    if (studs->regular) {
        studs->first = measure(making, -300, 600);
        studs->spacing = measure(making, 200, 800);
        return;
    }
    for (Length at = measure(making, -100, 400); at < width + 200 * LENGTH_MM; at += measure(making, 100, 900) + 1)
        *arena_push(making->arena, &studs->at) = at;
}

/* ---- openings ---- */

static void make_plate(Making *making, Opening *opening)
{
    const Length beyond = 2 * opening->clear;
    opening->plate.given = true;
    opening->plate.width = opening->width + beyond + measure_or_none(making, 4, 0, 40);
    opening->plate.height = opening->height + beyond + measure_or_none(making, 4, 0, 40);
}

static void make_opening(Making *making, Face *face)
{
    const int64_t wide_mm = face->width / LENGTH_MM;
    Opening opening = {.name = new_name(making), .kind = (OpeningKind)pick(making, OPENING_OTHER + 1)};
    opening.id = making->wall->next_id++;
    const bool box = opening.kind == OPENING_BOX;
    opening.left = measure(making, chance(making, 10) ? -300 : 0, wide_mm);
    opening.width = measure(making, box ? 40 : 100, box ? 150 : 1200);
    opening.height = measure(making, box ? 60 : 100, box ? 150 : 1500);
    opening.bottom = measure(making, -1200, 1200);
    opening.clear = measure_or_none(making, 2, 0, 8);
    if (!box && (opening.kind == OPENING_DOOR ? !chance(making, 4) : chance(making, 5))) {
        opening.to_floor = true;
        opening.bottom = 0;
        if (chance(making, 2)) {
            opening.top_given = true;
            opening.top = opening_foot(face, &opening) + opening.height;
            opening.height = 0;
        }
    }
    if (box && !chance(making, 3))
        make_plate(making, &opening);
    opening.front_given = box && chance(making, 2);
    if (opening.front_given)
        opening.front = measure(making, -20, 20);
    opening.away_given = opening.kind == OPENING_STOVE && chance(making, 2);
    if (opening.away_given)
        opening.away = measure(making, 0, 1000);
    *arena_push(making->arena, &face->openings) = opening;
}

/* ---- an odd wall ---- */

static Length ceiling_above(const Face *face)
{
    return face->margin.floor + face->margin.ceiling + LENGTH_MM;
}

static void make_face(Making *making, Length tall)
{
    Face face = {.id = making->wall->next_id++, .name = new_name(making), .width = measure(making, 150, 4000)};
    const Length down = measure(making, -200, 1200);
    if (!chance(making, 3))
        face.margin = (Margin){measure_or_none(making, 2, 0, 15), measure_or_none(making, 2, 0, 15),
                               measure_or_none(making, 2, 0, 10), measure_or_none(making, 2, 0, 10)};
    make_limit(making, &face.floor, face.width, down, tall / LENGTH_MM);
    make_limit(making, &face.ceiling, face.width, tall - down, tall / LENGTH_MM);
    /* a ceiling that rakes below the floor everywhere is no wall */
    if (marks_off(&face.ceiling, 0, true) + marks_off(&face.floor, 0, true) < ceiling_above(&face))
        face.ceiling = (Marks){0};
    if (face.ceiling.count == 0)
        add_mark(making, &face.ceiling, 0, ceiling_above(&face) + tall - marks_off(&face.floor, 0, true));
    make_side(making, &face.left);
    make_side(making, &face.right);
    face.corner = any_corner(making);
    face.backing = measure_or_none(making, 2, 1, 20);
    make_studs(making, &face.studs, face.width);
    *arena_push(making->arena, &making->wall->faces) = face;
    Face *kept = &making->wall->faces.at[making->wall->faces.count - 1];
    for (int count = pick(making, 2) * pick(making, 6); count > 0; count--)
        make_opening(making, kept);
}

static void make_stock(Making *making)
{
    const int lines = chance(making, 8) ? 0 : pick(making, 30);
    for (int i = 0; i < lines; i++) {
        Stock stock = {.label = any_text(making), .tone = any_text(making), .count = 1};
        stock.id = making->wall->next_id++;
        stock.length = measure(making, chance(making, 10) ? 1 : 200, 3000);
        if (chance(making, 2))
            stock.count = 1 + pick(making, 20);
        stock.width_given = chance(making, 5);
        if (stock.width_given)
            stock.width = measure(making, 10, 300);
        Length from = measure(making, 0, 400);
        while (chance(making, 3)) {
            const Length to = from + measure(making, 1, 300) + 1;
            if (to > stock.length)
                break;
            *arena_push(making->arena, &stock.avoid) = (Stretch){from, to};
            from = to + measure(making, 0, 500);
        }
        *arena_push(making->arena, &making->wall->stock) = stock;
    }
}

static void make_trim(Making *making)
{
    Trim *trim = &making->wall->trim;
    trim->given = chance(making, 3);
    if (!trim->given)
        return;
    for (int count = pick(making, 4); count > 0; count--)
        *arena_push(making->arena, &trim->stock) = (TrimStock){measure(making, 100, 4000), 1 + pick(making, 9)};
    for (int count = pick(making, 8); count > 0; count--)
        *arena_push(making->arena, &trim->pieces) =
            (TrimPiece){new_name(making), measure(making, 10, 3000), 1 + pick(making, 4)};
}

static void make_runs(Making *making)
{
    Trim *trim = &making->wall->trim;
    const Faces *faces = &making->wall->faces;
    for (int count = pick(making, 4); trim->given && count > 0; count--) {
        TrimRun run = {.along = (TrimAlong)pick(making, ALONG_EDGES + 1), .width = measure(making, 10, 120)};
        run.thickness_given = chance(making, 2);
        if (run.thickness_given)
            run.thickness = measure(making, 3, 30);
        const Openings *openings = &faces->at[pick(making, faces->count)].openings;
        const bool named = run.along == ALONG_OPENINGS && openings->count > 0 && chance(making, 2);
        run.opening = text_of(making, named ? openings->at[0].name : "");
        *arena_push(making->arena, &trim->runs) = run;
    }
}

static void make_rough(Making *making)
{
    Mill *mill = &making->wall->mill;
    for (int count = chance(making, 3) ? pick(making, 8) : 0; count > 0; count--) {
        Rough rough = {.id = making->wall->next_id++,
                       .label = any_text(making),
                       .tone = any_text(making),
                       .width = measure(making, 60, 400),
                       .thickness = measure(making, 10, 60),
                       .length = measure(making, 300, 4000),
                       .count = 1 + pick(making, 6),
                       .ends = measure_or_none(making, 2, 0, 100)};
        const Length from = measure(making, 0, 150);
        if (chance(making, 3))
            *arena_push(making->arena, &rough.avoid) = (Stretch){from, from + measure(making, 1, 140) + 1};
        *arena_push(making->arena, &making->wall->rough) = rough;
    }
    mill->given = chance(making, 3);
    if (mill->given)
        *mill = (Mill){.given = true,
                       .edge = measure_or_none(making, 2, 0, 10),
                       .kerf = {.given = chance(making, 2)},
                       .plane = measure_or_none(making, 2, 0, 6),
                       .keep = measure_or_none(making, 2, 0, 40)};
    if (mill->kerf.given)
        mill->kerf.length = measure(making, 0, 4);
}

/* Between two whole numbers, now and then with decimals. */
static Number any_number(Making *making, int64_t low, int64_t high)
{
    Number number = {.given = chance(making, 2)};
    if (number.given)
        number.thousandths = chance(making, 3) ? random_between(&making->random, low * 1000, high * 1000)
                                               : random_between(&making->random, low, high) * 1000;
    return number;
}

static void make_bill(Making *making)
{
    Bill *bill = &making->wall->bill;
    bill->given = chance(making, 3);
    if (!bill->given)
        return;
    bill->spare = any_number(making, 0, 30);
    bill->fasteners = any_number(making, 1, 4);
    bill->glue_given = chance(making, 2);
    if (bill->glue_given)
        bill->glue = (Glue)pick(making, 3);
    bill->bead.given = chance(making, 2);
    if (bill->bead.given)
        bill->bead.length = measure(making, 2, 12);
    bill->cartridge = any_number(making, 10, 600);
    bill->coats = any_number(making, 0, 5);
    bill->coverage = any_number(making, 10, 600);
    bill->thinning = any_number(making, 0, 100);
    bill->sheet.given = chance(making, 2);
    if (bill->sheet.given) {
        bill->sheet.width = measure(making, 500, 1500);
        bill->sheet.length = measure(making, 1000, 3000);
    }
    bill->nominal.given = chance(making, 2);
    if (bill->nominal.given)
        bill->nominal.length = measure(making, 5, 60);
}

static Air any_air(Making *making)
{
    Air air = {.celsius = chance(making, 2), .humidity = 100 * pick(making, 981)};
    air.temperature =
        air.celsius ? random_between(&making->random, -1000, 99000) : 1000 * random_between(&making->random, 30, 210);
    return air;
}

static void make_wood(Making *making)
{
    Wood *wood = &making->wall->wood;
    wood->given = chance(making, 3);
    if (!wood->given)
        return;
    wood->species = text_of(making, species_at(pick(making, species_count()))->name);
    wood->grain = (Grain)pick(making, 2);
    wood->hung = any_air(making);
    wood->dry = any_air(making);
    wood->damp = any_air(making);
}

static void make_planks(Making *making, Length tall)
{
    Planks *planks = &making->wall->planks;
    const int64_t least_mm = tall / LENGTH_MM / 45 + 10; /* so many courses at the most, or nearly */
    Length narrowest = LENGTH_METRE;
    for (int count = chance(making, 3) ? 1 + pick(making, 4) : 1; count > 0; count--) {
        const Length width = measure(making, least_mm, least_mm + 150);
        narrowest = width < narrowest ? width : narrowest;
        *arena_push(making->arena, &planks->widths) = width;
    }
    planks->thickness = measure(making, 4, 25);
    planks->reveal = measure_or_none(making, 3, 0, 6);
    planks->lap = chance(making, 3) ? measure(making, 0, narrowest / LENGTH_MM / 3) : 0;
    planks->least_given = chance(making, 2);
    if (planks->least_given)
        planks->least = measure(making, 0, narrowest / LENGTH_MM);
    planks->leave = chance(making, 4) ? measure(making, 0, narrowest / LENGTH_MM / 2) : 0;
}

static void make_round(Making *making)
{
    Wall *wall = making->wall;
    static const Length inch_steps[] = {LENGTH_INCH / 8, LENGTH_INCH / 16, LENGTH_INCH / 32, LENGTH_INCH / 64};
    static const Length mm_steps[] = {LENGTH_MM, LENGTH_MM / 2, LENGTH_MM / 10};
    wall->round_given = chance(making, 2);
    if (wall->round_given)
        wall->round = wall->units == UNITS_IN ? inch_steps[pick(making, 4)] : mm_steps[pick(making, 3)];
}

static void make_any(Making *making)
{
    Wall *wall = making->wall;
    const Length tall = measure(making, 250, 2600);
    wall->title = any_text(making);
    make_round(making);
    make_planks(making, tall);
    wall->start = chance(making, 15) ? measure(making, -9000, 9000) : measure(making, -300, 300);
    wall->joints = (Joints){.land = (JointLand)chance(making, 3),
                            .stagger = measure_or_none(making, 3, 0, 400),
                            .shortest = measure_or_none(making, 3, 0, 500)};
    wall->saw = (Saw){measure_or_none(making, 4, 0, 4), measure_or_none(making, 3, 0, 15)};
    for (int count = chance(making, 2) ? 1 : 1 + pick(making, 5); count > 0; count--)
        make_face(making, tall);
    if (wall->faces.count < 3)
        wall->faces.at[wall->faces.count - 1].corner = (Corner){0};
    make_stock(making);
    wall->fasteners.given = chance(making, 2);
    if (wall->fasteners.given)
        wall->fasteners = (Fasteners){.given = true,
                                      .length_given = true,
                                      .length = measure(making, 10, 100),
                                      .drywall = measure_or_none(making, 3, 0, 20)};
    make_trim(making);
    make_runs(making);
    make_rough(making);
    make_bill(making);
    make_wood(making);
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

static void hang(Making *making)
{
    Wall *wall = making->wall;
    const Length run = wall_run(wall);
    const int boards = wall_board_count(wall);
    for (int count = pick(making, 12); count > 0; count--) {
        const Face *face = &wall->faces.at[pick(making, wall->faces.count)];
        HungPiece piece = {.face = text_of(making, face->name), .course = pick(making, 9) - 3, .board = 1};
        piece.left = chance(making, 3) ? 0 : measure(making, -20, face->width / LENGTH_MM);
        piece.right = chance(making, 3) ? face->width : piece.left + measure(making, 1, 1500);
        if (piece.right <= piece.left)
            piece.right = piece.left + LENGTH_INCH;
        piece.board = chance(making, 8) || boards == 0 ? 1 + pick(making, 1000) : 1 + pick(making, boards);
        piece.offset_given = chance(making, 2);
        if (piece.offset_given)
            piece.offset = measure_or_none(making, 2, 0, 1500);
        piece.plan = chance(making, 8) ? PLAN_ANEW : PLAN_KEPT;
        *arena_push(making->arena, &wall->hung_pieces) = piece;
    }
    for (int count = pick(making, 5); count > 0; count--) {
        HungEdge edge = {.face = text_of(making, wall->faces.at[pick(making, wall->faces.count)].name),
                         .course = pick(making, 9) - 4};
        edge.is_top = wall_hangs_upward(wall) || edge.course > 0 || (edge.course == 0 && chance(making, 2));
        const int64_t steps = edge.course + (edge.is_top ? 1 : 0);
        edge.height = wall->start + steps * (run / wall->planks.widths.count) + measure(making, -10, 10);
        if (!edge_is_there(wall, &edge))
            *arena_push(making->arena, &wall->hung_edges) = edge;
    }
}

/* ---- what came to the file later, by draws of its own: what was drawn before stays as it was ---- */

void make_later(Making *making)
{
    static const PlanksHang hangs[] = {HANG_REFERENCE, HANG_UPWARD};
    Wall *wall = making->wall;
    const bool tops_alone = wall_hangs_upward(wall) || wall->hung_edges.count == 0;
    if (chance(making, 3)) {
        wall->planks.hang_given = true;
        wall->planks.hang = tops_alone ? hangs[pick(making, 2)] : HANG_REFERENCE;
        if (wall->hung_edges.count > 0 && tops_alone)
            wall->planks.hang = HANG_UPWARD;
    }
    wall->joints.closer = measure_or_none(making, 2, 0, 12);
    wall->joints.spend_all = chance(making, 6);
    wall->joints.spend = wall->joints.spend_all || chance(making, 2) ? 0 : pick(making, 1000001);
    for (int count = chance(making, 2) ? pick(making, 4) : 0; count > 0; count--) {
        const Face *face = &wall->faces.at[pick(making, wall->faces.count)];
        const Length at = measure(making, 0, face->width / LENGTH_MM);
        *arena_push(making->arena, &wall->joints.pins) = (Pin){text_of(making, face->name), pick(making, 9) - 3, at};
        if (wall_check(making->arena, wall).count > 0) /* it may lie off its course */
            wall->joints.pins.count--;
        *arena_push(making->arena, &wall->joints.bars) =
            (Bar){text_of(making, face->name), pick(making, 9) - 3, at, at + measure_or_none(making, 4, 0, 300)};
    }
    for (int i = 0; i < wall->faces.count; i++) {
        Face *face = &wall->faces.at[i];
        face->wall = chance(making, 3) ? (FaceWall)pick(making, FACE_SOLID_WOOD + 1) : FACE_STUDS;
        if (face->corner.kind != CORNER_NONE)
            face->corner.gap = measure_or_none(making, 2, -20, 20);
        for (int k = 0; k < face->openings.count; k++) {
            Opening *opening = &face->openings.at[k];
            opening->proud_given = chance(making, 3);
            opening->proud = opening->proud_given ? measure_or_none(making, 3, 0, 40) : 0;
            if (!opening->to_floor && chance(making, 3)) {
                opening->above =
                    opening->bottom - opening_foot(face, &(Opening){.to_floor = true, .left = opening->left});
                opening->above_given = opening->above >= -LENGTH_MOST && opening->above <= LENGTH_MOST;
                opening->bottom = opening->above_given ? 0 : opening->bottom;
            }
        }
    }
    for (int i = 0; i < wall->stock.count; i++) {
        Stock *stock = &wall->stock.at[i];
        for (int count = chance(making, 4) ? 1 + pick(making, 2) : 0; count > 0; count--)
            *arena_push(making->arena, &stock->show) = (Show){
                length_round_down(stock->length / (1 + pick(making, 5)), LENGTH_MM), text_of(making, "knot hole")};
        stock->gone_given = chance(making, 6);
        stock->gone = stock->gone_given ? pick(making, hung_count(wall) + 1) : 0;
        stock->found_given = chance(making, 6) && (!stock->gone_given || stock->gone > 0);
        if (stock->found_given)
            stock->found = pick(making, stock->gone_given ? stock->gone : hung_count(wall) + 1);
    }
}

void make_later_records(Making *making)
{
    Wall *wall = making->wall;
    const int boards = wall_board_count(wall);
    for (int i = 0; i < wall->hung_pieces.count; i++)
        wall->hung_pieces.at[i].state = chance(making, 3) ? PIECE_CUT : PIECE_HUNG;
    for (int count = boards == 0 ? 0 : pick(making, 4); count > 0; count--) {
        const int number = 1 + pick(making, boards);
        const Length length = wall_board(wall, number)->length;
        const Length offset = random_between(&making->random, 0, length - 1);
        *arena_push(making->arena, &wall->hung_losses) =
            (HungLoss){number, offset, random_between(&making->random, 1, length - offset),
                       chance(making, 8) ? PLAN_ANEW : PLAN_KEPT, 0};
    }
    /* shuffled into each other, each kind in its own order */
    int places[3] = {0};
    for (int i = 0; i < wall->hung_pieces.count; i++)
        wall->hung_pieces.at[i].place = places[0] += pick(making, 3);
    for (int i = 0; i < wall->hung_losses.count; i++)
        wall->hung_losses.at[i].place = places[1] += pick(making, 9);
    for (int i = 0; i < wall->hung_edges.count; i++)
        wall->hung_edges.at[i].place = places[2] += pick(making, 9);
    for (int i = 0; i < wall->hung_edges.count; i++)
        wall->hung_edges.at[i].plan = chance(making, 8) ? PLAN_ANEW : PLAN_KEPT;
}

/* ---- a plain wall ---- */

static void make_plain(Making *making)
{
    Wall *wall = making->wall;
    const Length tall = measure(making, 1000, 2600);
    const Length down = measure(making, 500, 900);
    Face face = {.id = wall->next_id++, .name = text_of(making, "north"), .width = measure(making, 1000, 4000)};
    wall->title = text_of(making, "plain");
    *arena_push(making->arena, &wall->planks.widths) = measure(making, 60, 150);
    wall->planks.thickness = measure(making, 8, 20);
    wall->start = measure(making, -60, 60);
    add_mark(making, &face.floor, 0, down);
    add_mark(making, &face.ceiling, 0, tall - down);
    *arena_push(making->arena, &wall->faces) = face;
    Stock stock = {.id = wall->next_id++, .label = text_of(making, ""), .tone = text_of(making, ""), .count = 400};
    stock.length = measure(making, 600, 2500);
    *arena_push(making->arena, &wall->stock) = stock;
}

/* ---- a house ---- */

/* So many eighths of an inch between two whole inches. */
static Length eighths(Making *making, int low_in, int high_in)
{
    return random_between(&making->random, (int64_t)low_in * 8, (int64_t)high_in * 8) * (LENGTH_INCH / 8);
}

static bool overlaps(const Face *face, const Opening *opening)
{
    for (int i = 0; i < face->openings.count; i++) {
        const Opening *there = &face->openings.at[i];
        if (opening->left - LENGTH_INCH < there->left + there->width &&
            there->left < opening->left + opening->width + LENGTH_INCH)
            return true;
    }
    return false;
}

/* Beside those that are there already; left away where it finds no room. */
static void house_opening(Making *making, Face *face, OpeningKind kind, const char *name)
{
    const int wide_in = (int)(face->width / LENGTH_INCH);
    Opening opening = {.id = making->wall->next_id++, .name = text_of(making, name), .kind = kind};
    if (kind == OPENING_DOOR) {
        opening.width = eighths(making, 33, 39);
        opening.to_floor = true;
        opening.height = eighths(making, 81, 84);
    } else if (kind == OPENING_WINDOW) {
        opening.width = eighths(making, 24, 44);
        opening.bottom = eighths(making, -12, 2);
        opening.height = eighths(making, 30, 48);
    } else {
        opening.width = 9 * (LENGTH_INCH / 4);
        opening.bottom = eighths(making, -30, -24);
        opening.height = 15 * (LENGTH_INCH / 4);
        opening.clear = LENGTH_INCH / 16;
    }
    for (int tries = 0; tries < 20; tries++) {
        opening.left = eighths(making, 6, wide_in - 6 - (int)(opening.width / LENGTH_INCH));
        if (!overlaps(face, &opening)) {
            *arena_push(making->arena, &face->openings) = opening;
            return;
        }
    }
}

static void house_face(Making *making, int number, int faces)
{
    static const char *const names[] = {"north", "east", "south", "west"};
    Face face = {
        .id = making->wall->next_id++, .name = text_of(making, names[number]), .width = eighths(making, 70, 170)};
    add_mark(making, &face.floor, 0, eighths(making, 39, 40));
    add_mark(making, &face.floor, face.width, eighths(making, 39, 40));
    add_mark(making, &face.ceiling, 0, eighths(making, 52, 54));
    add_mark(making, &face.ceiling, face.width / 2, eighths(making, 52, 54));
    add_mark(making, &face.ceiling, face.width, eighths(making, 52, 54));
    face.margin = (Margin){LENGTH_INCH / 4, LENGTH_INCH / 8, 0, 0};
    if (number + 1 < faces || (faces == 4 && chance(making, 2)))
        face.corner = (Corner){CORNER_INSIDE, CORNER_BUTT, chance(making, 2) ? THROUGH_LEFT : THROUGH_RIGHT, 0};
    face.studs = (Studs){.given = true, .regular = true, .first = eighths(making, 3, 15), .spacing = 16 * LENGTH_INCH};
    *arena_push(making->arena, &making->wall->faces) = face;
    Face *kept = &making->wall->faces.at[making->wall->faces.count - 1];
    if (chance(making, 3))
        house_opening(making, kept, OPENING_DOOR, "door");
    else if (!chance(making, 3))
        house_opening(making, kept, OPENING_WINDOW, "window");
    for (int count = pick(making, 3); count > 0; count--)
        house_opening(making, kept, OPENING_BOX, count == 1 ? "outlet" : "second outlet");
}

/* Length of plank that the wall takes: bare area, less what openings cut, over the pitch. */
static Length house_length(const Wall *wall)
{
    int64_t square_inches = 0;
    for (int i = 0; i < wall->faces.count; i++) {
        const Face *face = &wall->faces.at[i];
        square_inches += face->width / LENGTH_INCH * 93;
        for (int k = 0; k < face->openings.count; k++)
            square_inches -= face->openings.at[k].width / LENGTH_INCH * (face->openings.at[k].height / LENGTH_INCH);
    }
    return square_inches * LENGTH_INCH / (wall_run(wall) / (LENGTH_INCH / 16)) * 16;
}

static void house_stock(Making *making, bool one_length)
{
    static const int lengths[] = {48, 60, 72, 84, 96, 105};
    static const char *const tones[] = {"grey", "pale", "brown"};
    const Length wanted = house_length(making->wall) / 100 * (108 + pick(making, 30));
    const Length alike = lengths[pick(making, 6)] * LENGTH_INCH;
    Length there = 0;
    for (int label = 1; there < wanted; label++) {
        Stock stock = {.label = text_of(making, ""), .tone = text_of(making, tones[pick(making, 3)]), .count = 1};
        stock.id = making->wall->next_id++;
        stock.length = one_length ? alike : eighths(making, 24, 105);
        if (chance(making, 6)) { /* a knot or a nail hole somewhere */
            const int long_in = (int)(stock.length / LENGTH_INCH);
            const Length from = eighths(making, 2, long_in - 8);
            char text[16];
            snprintf(text, sizeof text, "K%d", label);
            stock.label = text_of(making, text);
            *arena_push(making->arena, &stock.avoid) = (Stretch){from, from + eighths(making, 1, 5)};
        } else {
            stock.count = one_length ? 5 + pick(making, 20) : 1 + pick(making, 5);
        }
        there += stock.length * stock.count;
        *arena_push(making->arena, &making->wall->stock) = stock;
    }
}

static void make_house(Making *making, JointLand land, bool one_length)
{
    Wall *wall = making->wall;
    const int faces = 2 + pick(making, 3);
    const Length spacing = (chance(making, 2) ? 16 : 24) * LENGTH_INCH;
    wall->title = text_of(making, "house");
    *arena_push(making->arena, &wall->planks.widths) = eighths(making, 2, 5) + LENGTH_INCH / 2;
    wall->planks.thickness = LENGTH_INCH / 2;
    wall->planks.reveal = pick(making, 3) * (LENGTH_INCH / 16);
    wall->start = eighths(making, -2, 2);
    wall->joints = (Joints){.land = land,
                            .stagger = land == LAND_STUDS ? eighths(making, 6, 15) : eighths(making, 6, 12),
                            .shortest = land == LAND_STUDS ? eighths(making, 10, 16) : eighths(making, 8, 16)};
    wall->saw = (Saw){LENGTH_INCH / 8, LENGTH_INCH / 4};
    for (int i = 0; i < faces; i++) {
        house_face(making, i, faces);
        wall->faces.at[i].studs.spacing = spacing;
    }
    house_stock(making, one_length);
}

/* ---- any of them ---- */

Wall *random_wall(Arena *arena, uint64_t seed, RandomKind kind)
{
    Making making = {.arena = arena, .random = {seed * 1000003 + (uint64_t)kind}};
    const bool house = kind >= RANDOM_HOUSE;
    making.wall = wall_new(arena, house || chance(&making, 2) ? UNITS_IN : UNITS_MM);
    making.first_odd = pick(&making, ODD_TEXTS);
    switch (kind) {
    case RANDOM_ANY: make_any(&making); break;
    case RANDOM_HUNG:
        make_any(&making);
        hang(&making);
        break;
    case RANDOM_PLAIN: make_plain(&making); break;
    case RANDOM_HOUSE: make_house(&making, LAND_ANYWHERE, false); break;
    case RANDOM_HOUSE_STUDS: make_house(&making, LAND_STUDS, false); break;
    case RANDOM_HOUSE_ONE_LENGTH: make_house(&making, LAND_ANYWHERE, true); break;
    case RANDOM_HOUSE_STUDS_ONE_LENGTH: make_house(&making, LAND_STUDS, true); break;
    case RANDOM_KIND_COUNT: break;
    }
    making.random = (Random){seed * 1000033 + (uint64_t)kind};
    if (kind == RANDOM_HUNG)
        make_later_records(&making);
    if (kind == RANDOM_ANY || kind == RANDOM_HUNG)
        make_later(&making);
    const Problems problems = wall_check(arena, making.wall);
    if (problems.count > 0)
        panic(problems.at[0].path, (int)seed, problems.at[0].text);
    return making.wall;
}

const char *random_kind_word(RandomKind kind)
{
    static const char *const words[RANDOM_KIND_COUNT] = {
        [RANDOM_ANY] = "any",
        [RANDOM_HUNG] = "hung",
        [RANDOM_PLAIN] = "plain",
        [RANDOM_HOUSE] = "house",
        [RANDOM_HOUSE_STUDS] = "house, studs",
        [RANDOM_HOUSE_ONE_LENGTH] = "house, one length",
        [RANDOM_HOUSE_STUDS_ONE_LENGTH] = "house, studs, one length",
    };
    BUG_UNLESS(kind < RANDOM_KIND_COUNT);
    return words[kind];
}
