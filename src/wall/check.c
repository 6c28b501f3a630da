#include "wall/check.h"

#include "base/text.h"
#include "base/wide.h"
#include "wall/checking.h"
#include "wall/species.h"
#include "wall/straight.h"

#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

/*
 * In the order of the file's keys. Each value is held to its own range first; what holds between values (a lap against
 * its width) is looked at only where both are in range, so that one slip is told once.
 */

enum { NEAR_MOST = 3, SPEND_MOST = 1000 * 1000 };

static void check_round(Checking *checking)
{
    static const Length inch_steps[] = {LENGTH_INCH / 8, LENGTH_INCH / 16, LENGTH_INCH / 32, LENGTH_INCH / 64};
    static const Length mm_steps[] = {LENGTH_MM, LENGTH_MM / 2, LENGTH_MM / 10};
    const Wall *wall = checking->wall;
    const bool inches = wall->units == UNITS_IN;
    const Length *steps = inches ? inch_steps : mm_steps;
    const size_t count = inches ? sizeof inch_steps / sizeof *inch_steps : sizeof mm_steps / sizeof *mm_steps;
    char said[CHECK_VALUE_MOST];
    for (size_t i = 0; i < count; i++)
        if (wall->round == steps[i])
            return;
    check_note(checking, WHERE(NULL, "round"), "the marking resolution is %s; write %s",
               check_say(checking, wall->round, said), inches ? "1/8, 1/16, 1/32 or 1/64" : "1, 0.5 or 0.1");
}

static void check_planks(Checking *checking)
{
    const Planks *planks = &checking->wall->planks;
    const Where *where = WHERE(NULL, "planks");
    const bool many = planks->widths.count != 1;
    char said[CHECK_VALUE_MOST];
    bool widths_hold = true;
    if (planks->widths.count == 0)
        check_note(checking, WHERE(where, "width"),
                   "the planks have no width; write the full width after ripping, like 2 3/4");
    for (int i = 0; i < planks->widths.count; i++) {
        const Where *width = WHERE_ITEM(where, "width", many ? i : -1);
        widths_hold &= check_above(checking, width, "the width of a plank", planks->widths.at[i]) &&
                       check_range(checking, width, "the width of a plank", RANGED_PLANK_WIDTH, planks->widths.at[i]);
    }
    if (check_above(checking, WHERE(where, "thickness"), "the thickness of the planks", planks->thickness))
        check_range(checking, WHERE(where, "thickness"), "the thickness of the planks", RANGED_THICKNESS,
                    planks->thickness);
    const bool reveal_holds = check_not_below(checking, WHERE(where, "reveal"), "the reveal", planks->reveal);
    const bool lap_holds = check_not_below(checking, WHERE(where, "lap"), "the lap", planks->lap);
    if (widths_hold && lap_holds && planks->widths.count > 0) {
        Length narrowest = planks->widths.at[0];
        for (int i = 1; i < planks->widths.count; i++)
            narrowest = planks->widths.at[i] < narrowest ? planks->widths.at[i] : narrowest;
        if (planks->lap >= narrowest)
            check_note(checking, WHERE(where, "lap"),
                       "the lap hides the whole of a plank %s wide; write less than that",
                       check_say(checking, narrowest, said));
        else if (reveal_holds && planks->reveal >= narrowest - planks->lap)
            check_note(checking, WHERE(where, "reveal"),
                       "the reveal is as high as the face of a plank, %s; write 0 to less than that",
                       check_say(checking, narrowest - planks->lap, said));
    }
    if (planks->least_given)
        check_not_below(checking, WHERE(where, "least"), "the narrowest strip worth hanging", planks->least);
    check_not_below(checking, WHERE(where, "leave"), "the height up to which a course is left away", planks->leave);
}

/* ---- joints ---- */

/* Whether every face has a name that a file can hold. One that has not is told as that, and not again by every record
 * that would be of it. */
static bool faces_are_named(const Checking *checking)
{
    const Faces *faces = &checking->wall->faces;
    Checking aside = {.arena = checking->arena, .wall = checking->wall};
    for (int i = 0; i < faces->count; i++)
        check_text(&aside, WHERE(NULL, "faces"), "the name", faces->at[i].name, true);
    return aside.problems.count == 0;
}

static void check_record(Checking *checking, const Where *where, const char *face, int course)
{
    if (check_text(checking, WHERE(where, "face"), "the face of a record", face, true) &&
        wall_face_named(checking->wall, face) < 0 && faces_are_named(checking))
        check_note(checking, WHERE(where, "face"), "there is no face \"%.60s\"; write the name of one under `faces`",
                   face);
    if (course < -WALL_COURSES_MOST || course > WALL_COURSES_MOST)
        check_note(checking, WHERE(where, "course"),
                   "course %d is beyond any wall; write its number, 0 for the reference course", course);
}

static void check_pins(Checking *checking)
{
    const Joints *joints = &checking->wall->joints;
    const Where *in = WHERE(NULL, "joints");
    for (int i = 0; i < joints->pins.count; i++) {
        const Where *where = WHERE_ITEM(in, "pins", i);
        check_record(checking, where, joints->pins.at[i].face, joints->pins.at[i].course);
        check_length(checking, WHERE(where, "at"), "the place of a pin", joints->pins.at[i].at);
    }
    for (int i = 0; i < joints->bars.count; i++) {
        const Bar *bar = &joints->bars.at[i];
        const Where *where = WHERE_ITEM(in, "bars", i);
        check_record(checking, where, bar->face, bar->course);
        const bool from_holds = check_length(checking, WHERE(where, "from"), "the left end of a bar", bar->from);
        if (check_length(checking, WHERE(where, "to"), "the right end of a bar", bar->to) && from_holds &&
            bar->to < bar->from)
            check_note(checking, WHERE(where, "to"),
                       "the right end of a bar lies left of its left end; measure both from the face's left end");
    }
}

/* The least `in` of a side over a band; plumb where it has no mark. */
static Length least_in(const Marks *side, Length bottom, Length top)
{
    if (side->count == 0)
        return 0;
    Length least = marks_off(side, bottom, true);
    const Length at_top = marks_off(side, top, false);
    least = at_top < least ? at_top : least;
    for (int i = 0; i < side->count; i++)
        if (side->at[i].at > bottom && side->at[i].at < top && side->at[i].off < least)
            least = side->at[i].off;
    return least;
}

/* Whether some of the course is there to both sides of the pin: between floor and ceiling, inside both ends. */
static bool is_on_course(const Wall *wall, const Pin *pin)
{
    const int index = wall_face_named(wall, pin->face);
    const Face *face = &wall->faces.at[index];
    const Wide start = wall_course_bottom(wall, pin->course);
    if (start < -2 * (Wide)LENGTH_MOST || start > 2 * (Wide)LENGTH_MOST)
        return false;
    const Length bottom = (Length)start;
    const Length top = bottom + wall_course_face(wall, pin->course);
    if (pin->at <= least_in(&face->left, bottom, top) + face->margin.left + wall_corner_loss_left(wall, index) ||
        pin->at >= face->width - least_in(&face->right, bottom, top) - face->margin.right -
                       wall_corner_loss_right(wall, index))
        return false;
    for (int after = 0; after < 2; after++)
        if (top > face->margin.floor - marks_off(&face->floor, pin->at, after) &&
            bottom < marks_off(&face->ceiling, pin->at, after) - face->margin.ceiling)
            return true;
    for (int i = 0; i < wall->hung_edges.count; i++) /* measured edges move courses; layout knows where to */
        if (strcmp(wall->hung_edges.at[i].face, pin->face) == 0)
            return true;
    return false;
}

/* Once nothing else is wrong. */
static void check_pins_on_courses(Checking *checking)
{
    const Pins *pins = &checking->wall->joints.pins;
    char said[CHECK_VALUE_MOST];
    if (checking->problems.count > 0)
        return;
    for (int i = 0; i < pins->count; i++)
        if (!is_on_course(checking->wall, &pins->at[i]))
            check_note(checking, WHERE_ITEM(WHERE(NULL, "joints"), "pins", i),
                       "the pin at %s lies off course %d of face \"%.60s\"; give a place within that course",
                       check_say(checking, pins->at[i].at, said), pins->at[i].course, pins->at[i].face);
}

static void check_joints(Checking *checking)
{
    const Joints *joints = &checking->wall->joints;
    const Where *where = WHERE(NULL, "joints");
    check_not_below(checking, WHERE(where, "stagger"), "the stagger", joints->stagger);
    check_not_below(checking, WHERE(where, "shortest"), "the shortest piece", joints->shortest);
    check_not_below(checking, WHERE(where, "closer"), "what a closer keeps over", joints->closer);
    if (!joints->spend_all && (joints->spend < 0 || joints->spend > SPEND_MOST))
        check_note(checking, WHERE(where, "spend"),
                   "what may be spent is outside 0 to 1000; write a percentage in that range, or the word all");
    check_pins(checking);
}

/* ---- boards and trim ---- */

void check_stretches(Checking *checking, const Where *line, const Stretches *avoid, Length length)
{
    char from[CHECK_VALUE_MOST];
    char to[CHECK_VALUE_MOST];
    for (int i = 0; i < avoid->count; i++) {
        const Stretch *stretch = &avoid->at[i];
        const Where *where = WHERE_ITEM(line, "avoid", i);
        if (stretch->from >= 0 && stretch->from < stretch->to && stretch->to <= length &&
            (i == 0 || stretch->from >= stretch[-1].to))
            continue;
        check_say(checking, stretch->from, from);
        check_say(checking, stretch->to, to);
        if (stretch->from >= stretch->to)
            check_note(
                checking, where,
                "the stretch to avoid runs from %s to %s; write first the end that is nearer the board's first end",
                from, to);
        else if (stretch->from < 0 || stretch->to > length)
            check_note(checking, where,
                       "the stretch to avoid from %s to %s leaves the board; measure both from the board's first end",
                       from, to);
        else
            check_note(checking, where,
                       "the stretch to avoid from %s to %s does not lie behind the one before; list them in rising "
                       "order, apart",
                       from, to);
        return;
    }
}

void check_count(Checking *checking, const Where *where, const char *what, int count, int64_t *total)
{
    if (count < 1)
        check_note(checking, where, "the count of %s is %d; write 1 or more, or take the line out", what, count);
    else
        *total += count;
}

void check_total(Checking *checking, const Where *where, const char *what, int64_t total)
{
    if (total > WALL_BOARDS_MOST)
        check_note(checking, where, "there are %" PRId64 " %s, all counts added up; list %d at most", total, what,
                   WALL_BOARDS_MOST);
}

static void check_shows(Checking *checking, const Where *line, const Stock *stock, bool length_holds)
{
    char said[CHECK_VALUE_MOST];
    for (int i = 0; i < stock->show.count; i++) {
        const Show *show = &stock->show.at[i];
        const Where *where = WHERE_ITEM(line, "show", i);
        check_text(checking, WHERE(where, "what"), "what a board shows", show->what, true);
        if (check_not_below(checking, WHERE(where, "at"), "the place of what a board shows", show->at) &&
            length_holds && show->at > stock->length)
            check_note(checking, WHERE(where, "at"),
                       "what the board shows at %s lies beyond its end; measure from the board's first end",
                       check_say(checking, show->at, said));
    }
}

/* A number of records of `hung`, after which something happened. */
static bool check_after(Checking *checking, const Where *where, const char *what, int records)
{
    const int count = hung_count(checking->wall);
    if (records >= 0 && records <= count)
        return true;
    if (records < 0)
        check_note(checking, where, "%s after %d records of `hung`; write 0 or more", what, records);
    else
        check_note(checking, where, "%s after %d records of `hung`, but there are %d; write how many came before it",
                   what, records, count);
    return false;
}

static void check_gone(Checking *checking, const Where *line, const Stock *stock)
{
    const bool gone_holds =
        stock->gone_given && check_after(checking, WHERE(line, "gone"), "the board is gone", stock->gone);
    const bool found_holds =
        stock->found_given && check_after(checking, WHERE(line, "found"), "the board was found", stock->found);
    if (gone_holds && found_holds && stock->found >= stock->gone)
        check_note(
            checking, WHERE(line, "found"),
            "the board was found after %d records of `hung` and gone after %d; write a `found` before its `gone`",
            stock->found, stock->gone);
}

static void check_stock(Checking *checking)
{
    const Stocks *stocks = &checking->wall->stock;
    int64_t total = 0;
    for (int i = 0; i < stocks->count; i++) {
        const Stock *stock = &stocks->at[i];
        const Where *where = WHERE_ITEM(NULL, "stock", i);
        check_text(checking, WHERE(where, "label"), "the label of a board", stock->label, false);
        const bool length_holds =
            check_above(checking, WHERE(where, "length"), "the length of a board", stock->length) &&
            check_range(checking, WHERE(where, "length"), "the length of a board", RANGED_LENGTH, stock->length);
        check_count(checking, WHERE(where, "count"), "boards", stock->count, &total);
        check_text(checking, WHERE(where, "tone"), "the tone of a board", stock->tone, false);
        if (stock->width_given && check_above(checking, WHERE(where, "width"), "the width of a board", stock->width))
            check_range(checking, WHERE(where, "width"), "the width of a board", RANGED_BOARD_WIDTH, stock->width);
        if (length_holds)
            check_stretches(checking, where, &stock->avoid, stock->length);
        check_shows(checking, where, stock, length_holds);
        check_gone(checking, where, stock);
    }
    check_total(checking, WHERE(NULL, "stock"), "boards", total);
}

static void check_trim(Checking *checking)
{
    const Trim *trim = &checking->wall->trim;
    const Where *where = WHERE(NULL, "trim");
    int64_t total = 0;
    if (!trim->given)
        return;
    for (int i = 0; i < trim->stock.count; i++) {
        const Where *line = WHERE_ITEM(where, "stock", i);
        if (check_above(checking, WHERE(line, "length"), "the length of a board of trim", trim->stock.at[i].length))
            check_range(checking, WHERE(line, "length"), "the length of a board of trim", RANGED_LENGTH,
                        trim->stock.at[i].length);
        check_count(checking, WHERE(line, "count"), "boards of trim", trim->stock.at[i].count, &total);
    }
    check_total(checking, WHERE(where, "stock"), "boards of trim", total);
    total = 0;
    for (int i = 0; i < trim->pieces.count; i++) {
        const TrimPiece *piece = &trim->pieces.at[i];
        const Where *line = WHERE_ITEM(where, "pieces", i);
        check_text(checking, WHERE(line, "name"), "the name of a piece of trim", piece->name, true);
        if (check_above(checking, WHERE(line, "length"), "the length of a piece of trim", piece->length))
            check_range(checking, WHERE(line, "length"), "the length of a piece of trim", RANGED_LENGTH, piece->length);
        check_count(checking, WHERE(line, "count"), "pieces of trim", piece->count, &total);
    }
    check_total(checking, WHERE(where, "pieces"), "pieces of trim", total);
}

/* ---- fasteners and wood ---- */

static void check_fasteners(Checking *checking)
{
    const Fasteners *fasteners = &checking->wall->fasteners;
    const Where *where = WHERE(NULL, "fasteners");
    if (!fasteners->given)
        return;
    if (fasteners->length_given &&
        check_above(checking, WHERE(where, "length"), "the length of the fasteners", fasteners->length))
        check_range(checking, WHERE(where, "length"), "the length of the fasteners", RANGED_FASTENER,
                    fasteners->length);
    if (check_not_below(checking, WHERE(where, "drywall"), "the thickness of the drywall", fasteners->drywall))
        check_range(checking, WHERE(where, "drywall"), "the thickness of the drywall", RANGED_DRYWALL,
                    fasteners->drywall);
}

/* The ranges in which eq. 4-5 of the Wood Handbook is given (datumrow(5), "Seasons"). */
static void check_air(Checking *checking, const char *key, const Air *air)
{
    const Where *where = WHERE(WHERE(NULL, "wood"), key);
    const int64_t low = air->celsius ? -1000 : 30000;
    const int64_t high = air->celsius ? 99000 : 210000;
    if (air->temperature < low || air->temperature > high)
        check_note(checking, WHERE(where, "temperature"),
                   "the temperature is outside what the moisture tables cover; write 30 F to 210 F, or -1 C to 99 C");
    if (air->humidity < 0 || air->humidity > 98000)
        check_note(checking, WHERE(where, "humidity"),
                   "the humidity is outside what the moisture tables cover; write 0 to 98, in percent");
}

static void check_species(Checking *checking, const char *name)
{
    const Where *where = WHERE(WHERE(NULL, "wood"), "species");
    if (!check_text(checking, where, "the species", name, true) || species_named(name) != NULL)
        return;
    const Species *near[NEAR_MOST];
    const int count = species_nearest(name, near, NEAR_MOST);
    Text names;
    text_init(&names);
    for (int i = 0; i < count; i++)
        text_format(&names, "%s\"%s\"", i == 0 ? "" : i == count - 1 ? " or " : ", ", near[i]->name);
    check_note(checking, where, "the species \"%.60s\" is not in the table of datumrow(5); the nearest there: %s", name,
               names.bytes);
    text_finish(&names);
}

static void check_wood(Checking *checking)
{
    const Wood *wood = &checking->wall->wood;
    if (!wood->given)
        return;
    check_species(checking, wood->species);
    check_air(checking, "hung", &wood->hung);
    check_air(checking, "dry", &wood->dry);
    check_air(checking, "damp", &wood->damp);
}

/* ---- as built ---- */

static void check_hung_pieces(Checking *checking)
{
    const HungPieces *pieces = &checking->wall->hung_pieces;
    const Where *hung = WHERE(NULL, "hung");
    for (int i = 0; i < pieces->count; i++) {
        const HungPiece *piece = &pieces->at[i];
        const Where *where = WHERE_ITEM(hung, "pieces", i);
        check_record(checking, where, piece->face, piece->course);
        const bool left_holds =
            check_length(checking, WHERE(where, "left"), "the left end of a hung piece", piece->left);
        if (check_length(checking, WHERE(where, "right"), "the right end of a hung piece", piece->right) &&
            left_holds && piece->right <= piece->left)
            check_note(
                checking, WHERE(where, "right"),
                "the right end of a hung piece is not right of its left end; measure both from the face's left end");
        if (piece->board < 1)
            check_note(checking, WHERE(where, "board"),
                       "board %d is none; boards are numbered from 1, in the order of `stock`", piece->board);
        if (piece->offset_given)
            check_not_below(checking, WHERE(where, "offset"), "the offset of a hung piece", piece->offset);
    }
}

static void check_hung_losses(Checking *checking)
{
    const HungLosses *losses = &checking->wall->hung_losses;
    const Where *hung = WHERE(NULL, "hung");
    char end[CHECK_VALUE_MOST];
    char length[CHECK_VALUE_MOST];
    for (int i = 0; i < losses->count; i++) {
        const HungLoss *loss = &losses->at[i];
        const Where *where = WHERE_ITEM(hung, "losses", i);
        const Stock *board = wall_board(checking->wall, loss->board);
        if (loss->board < 1)
            check_note(checking, WHERE(where, "board"),
                       "board %d is none; boards are numbered from 1, in the order of `stock`", loss->board);
        const bool offset_holds =
            check_not_below(checking, WHERE(where, "offset"), "the offset of a lost part", loss->offset);
        if (check_above(checking, WHERE(where, "length"), "the length of a lost part", loss->length) && offset_holds &&
            board != NULL && board->length > 0 && loss->offset + loss->length > board->length)
            check_note(checking, WHERE(where, "length"),
                       "the lost part ends at %s, but board %d is %s long; measure from the board's first end",
                       check_say(checking, loss->offset + loss->length, end), loss->board,
                       check_say(checking, board->length, length));
    }
}

/* An edge and its place in the file. */
typedef struct EdgeAt {
    const HungEdge *edge;
    int index;
} EdgeAt;

static int compare_edges(const void *a, const void *b)
{
    const HungEdge *p = ((const EdgeAt *)a)->edge;
    const HungEdge *q = ((const EdgeAt *)b)->edge;
    const int order = strcmp(p->face, q->face);
    if (order != 0)
        return order;
    if (p->course != q->course)
        return p->course < q->course ? -1 : 1;
    return p->is_top - q->is_top;
}

/* Those of one edge in the order of the file. */
static int compare_places(const void *a, const void *b)
{
    const int order = compare_edges(a, b);
    return order != 0 ? order : ((const EdgeAt *)a)->index - ((const EdgeAt *)b)->index;
}

/* The same edge measured twice: told at the later one in the file. */
static void check_edges_apart(Checking *checking, const HungEdges *edges)
{
    if (edges->count < 2)
        return;
    EdgeAt *sorted = arena_array(checking->arena, EdgeAt, edges->count);
    for (int i = 0; i < edges->count; i++)
        sorted[i] = (EdgeAt){&edges->at[i], i};
    qsort(sorted, (size_t)edges->count, sizeof *sorted, compare_places);
    for (int i = 1; i < edges->count; i++)
        if (compare_edges(&sorted[i - 1], &sorted[i]) == 0) {
            const EdgeAt *later = &sorted[i];
            check_note(checking, WHERE_ITEM(WHERE(NULL, "hung"), "edges", later->index),
                       "this edge of course %d on face \"%.60s\" is measured twice; keep one", later->edge->course,
                       later->edge->face);
        }
}

static void check_hung_edges(Checking *checking)
{
    const HungEdges *edges = &checking->wall->hung_edges;
    const Where *hung = WHERE(NULL, "hung");
    for (int i = 0; i < edges->count; i++) {
        const HungEdge *edge = &edges->at[i];
        const Where *where = WHERE_ITEM(hung, "edges", i);
        const Where *height = WHERE(where, edge->is_top ? "top" : "bottom");
        check_record(checking, where, edge->face, edge->course);
        check_length(checking, height, "a measured edge", edge->height);
        if (wall_hangs_upward(checking->wall) && !edge->is_top)
            check_note(checking, height, "the courses are hung from the lowest up; measure the `top` of course %d",
                       edge->course);
        else if (wall_hangs_upward(checking->wall))
            continue;
        else if (edge->is_top && edge->course < 0)
            check_note(checking, height, "course %d hangs below the reference course; measure its `bottom`",
                       edge->course);
        else if (!edge->is_top && edge->course > 0)
            check_note(checking, height, "course %d hangs above the reference course; measure its `top`", edge->course);
    }
    check_edges_apart(checking, edges);
}

Problems wall_check(Arena *arena, const Wall *wall)
{
    Checking checking = {.arena = arena, .wall = wall};
    check_text(&checking, WHERE(NULL, "title"), "the title", wall->title, false);
    check_round(&checking);
    check_planks(&checking);
    check_length(&checking, WHERE(NULL, "start"), "the start height", wall->start);
    check_joints(&checking);
    if (check_not_below(&checking, WHERE(WHERE(NULL, "saw"), "kerf"), "the kerf", wall->saw.kerf))
        check_range(&checking, WHERE(WHERE(NULL, "saw"), "kerf"), "the kerf", RANGED_KERF, wall->saw.kerf);
    check_not_below(&checking, WHERE(WHERE(NULL, "saw"), "square"), "what squaring an end takes", wall->saw.square);
    check_faces(&checking);
    check_stock(&checking);
    check_fasteners(&checking);
    check_trim(&checking);
    check_trim_runs(&checking);
    check_wood(&checking);
    check_shop(&checking);
    check_hung_pieces(&checking);
    check_hung_losses(&checking);
    check_hung_edges(&checking);
    check_pins_on_courses(&checking);
    return checking.problems;
}
