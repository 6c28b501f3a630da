#include "trade/bill_parts.h"

#include "trade/backing.h"
#include "trade/caution_electric.h"
#include "trade/penny.h"
#include "trade/say.h"
#include "trade/spacer.h"
#include "trade/studs.h"

#include <inttypes.h>
#include <stdlib.h>

/* ---- fasteners and adhesive ---- */

/* Of each piece at the least: common practice. */
enum { PIECE_LEAST = 2 };

/* How many places of a piece are fastened: its studs, or where none are known as many as there may be. */
static int64_t places_of(const Bills *bills, const Piece *piece)
{
    if (bills->wall->faces.at[piece->face].studs.given)
        return studs_between(&bills->layout->faces[piece->face].studs, piece->left, piece->right);
    return (piece->right - piece->left) / assume(bills->wall, ASSUME_STUDS).value + 1;
}

/* Fasteners of all pieces, millionths. */
static int64_t fastener_count(const Bills *bills, int64_t each)
{
    Wide count = 0;
    for (int i = 0; i < bills->plan->piece_count; i++) {
        const Wide on_studs = (Wide)places_of(bills, &bills->plan->pieces[i]) * each;
        count += on_studs > PIECE_LEAST * ASSUME_ONE ? on_studs : PIECE_LEAST * ASSUME_ONE;
    }
    return assume_fit(count);
}

/* Height of the wood of a course at x. */
static Length height_at(const Course *course, Length x)
{
    for (int i = 0; i < course->slab_count; i++) {
        const Slab *slab = &course->slabs[i];
        if (x < slab->left || x > slab->right)
            continue;
        Wide height = 0;
        for (int j = 0; j < slab->part_count; j++) {
            const Part *part = &slab->parts[j];
            height += (Wide)(part->top_left - part->bottom_left) * (slab->right - x) +
                      (Wide)(part->top_right - part->bottom_right) * (x - slab->left);
        }
        return slab->right > slab->left ? wide_narrow(wide_divide(height, slab->right - slab->left)) : 0;
    }
    return 0;
}

/* The length of stud that wood covers: a joint on a stud is one place, though two pieces lie on it. */
static Length along_studs(const Bills *bills)
{
    const Length spacing = assume(bills->wall, ASSUME_STUDS).value;
    const Plan *plan = bills->plan;
    Length length = 0;
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        const FaceLayout *face = &bills->layout->faces[piece->face];
        const Course *course = &face->courses[piece->course];
        if (!bills->wall->faces.at[piece->face].studs.given) {
            const Length middle = piece->left + (piece->right - piece->left) / 2;
            length += ((piece->right - piece->left) / spacing + 1) * height_at(course, middle);
            continue;
        }
        /* pieces of a segment follow one another: the place where this one begins was the last one's */
        const bool follows = i > 0 && piece[-1].face == piece->face && piece[-1].course == piece->course &&
                             piece[-1].right == piece->left;
        for (int j = 0; j < face->studs.count; j++) {
            const Length stud = face->studs.at[j];
            if (stud >= piece->left && stud <= piece->right && !(follows && stud == piece->left))
                length += height_at(course, stud);
        }
    }
    return length;
}

static bool some_face_without_studs(const Wall *wall)
{
    for (int i = 0; i < wall->faces.count; i++)
        if (!wall->faces.at[i].studs.given)
            return true;
    return false;
}

/* What the longest fastener has to go through, and 3/4 in into the stud. */
static Length length_needed(const Wall *wall)
{
    Length most = 0;
    for (int i = 0; i < wall->faces.count; i++)
        if (wall->faces.at[i].backing > most)
            most = wall->faces.at[i].backing;
    return wall->planks.thickness + most + wall->fasteners.drywall + LENGTH_INCH * 3 / 4;
}

/* Common practice: 18 gauge to 2 in, 16 gauge beyond and in planks over 5/8 in thick. */
static const char *gauge_of(const Wall *wall, Length length)
{
    const bool thin = length <= 2 * LENGTH_INCH && wall->planks.thickness <= LENGTH_INCH * 5 / 8;
    return thin ? "18 gauge" : "16 gauge";
}

/* ", 18 gauge, or 5d nails by hand" */
static const char *size_words(Arena *arena, const Wall *wall, Length length)
{
    const int penny = wall->units == UNITS_IN ? penny_of(length) : 0;
    return penny == 0 ? gauge_of(wall, length) : say(arena, "%s, or %dd by hand", gauge_of(wall, length), penny);
}

static void put_fasteners(Bills *bills)
{
    const Wall *wall = bills->wall;
    Arena *arena = bills->arena;
    const int64_t each = assume(wall, ASSUME_FASTENERS).value;
    const int64_t count = assume_fit(wide_ceiling(fastener_count(bills, each), ASSUME_ONE));
    const int64_t with_spare =
        assume_fit(wide_ceiling(assume_more(count * ASSUME_ONE, assume(wall, ASSUME_SPARE).value), ASSUME_ONE));
    const Length length = wall->fasteners.length_given ? wall->fasteners.length : length_needed(wall);
    const char *what = say(arena, "%s, %s%s, %s", count == 1 ? "fastener" : "fasteners",
                           wall->fasteners.length_given ? "" : "at least ", say_length(arena, wall, length),
                           size_words(arena, wall, length));
    BillLine *line =
        bill_put(bills, BILL_FASTENING, with_spare * ASSUME_ONE, 0, "piece|s", bill_with_spare(bills, what));
    bill_assumes(bills, line, ASSUME_FASTENERS,
                 say(arena, "%s in each plank on each stud, two in each piece at least", bill_number(arena, each)));
    if (some_face_without_studs(wall))
        bill_assumes(bills, line, ASSUME_STUDS,
                     say(arena, "studs every %s where none are entered",
                         say_length(arena, wall, assume(wall, ASSUME_STUDS).value)));
    bill_spare(bills, line);
}

static void put_adhesive(Bills *bills)
{
    const Wall *wall = bills->wall;
    Glue glue = (Glue)(assume(wall, ASSUME_GLUE).value / ASSUME_ONE);
    Length bead = assume(wall, ASSUME_BEAD).value;
    int64_t cartridge = assume(wall, ASSUME_CARTRIDGE).value;
    if (glue == GLUE_NONE || bead <= 0 || cartridge <= 0)
        return;
    const int64_t spare = assume(wall, ASSUME_SPARE).value;
    const Length length = assume_more(glue == GLUE_PIECES ? bills->plan->length_used : along_studs(bills), spare);
    Length each = bill_bead_length(cartridge, wall->units == UNITS_IN, bead);
    BillLine *line = bill_put(
        bills, BILL_FASTENING, bill_running(bills, length), 1, bills->running,
        bill_with_spare(bills, say(bills->arena, "adhesive bead, %s across", say_length(bills->arena, wall, bead))));
    bill_assumes(bills, line, ASSUME_GLUE, glue == GLUE_PIECES ? "one along each piece" : "one along each stud");
    bill_spare(bills, line);
    int64_t count = each > 0 ? assume_fit(wide_ceiling(length, each)) : 0;
    line = bill_put(
        bills, BILL_FASTENING, count * ASSUME_ONE, 0, "cartridge|s",
        bill_with_spare(bills, say(bills->arena, "adhesive, %s of %s %s", count == 1 ? "a cartridge" : "cartridges",
                                   bill_number(bills->arena, cartridge), wall->units == UNITS_IN ? "fl oz" : "ml")));
    char shown[LENGTH_TEXT_MAX];
    length_show_long(each, wall->units, wall->units == UNITS_IN ? LENGTH_INCH : 10 * LENGTH_MM, shown);
    bill_assumes(bills, line, ASSUME_CARTRIDGE, say(bills->arena, "%s of bead each", shown));
    bill_assumes(bills, line, ASSUME_BEAD,
                 say(bills->arena, "a round bead of %s", say_length(bills->arena, wall, bead)));
}

void bill_put_fastening(Bills *bills)
{
    if (bills->plan->piece_count == 0)
        return;
    put_fasteners(bills);
    put_adhesive(bills);
}

/* ---- finish ---- */

void bill_put_finish(Bills *bills, Wide area)
{
    const Wall *wall = bills->wall;
    Arena *arena = bills->arena;
    bool inch = wall->units == UNITS_IN;
    int64_t coats = assume(wall, ASSUME_COATS).value;
    int64_t coverage = assume(wall, ASSUME_COVERAGE).value;
    int64_t thinning = assume(wall, ASSUME_THINNING).value;
    if (coats <= 0 || coverage <= 0 || area <= 0)
        return;
    int64_t finish = assume_fit(wide_divide((Wide)bill_area(bills, area) * coats, coverage));
    BillLine *line = bill_put(bills, BILL_FINISH, finish, 1, inch ? "gal" : "l", "finish, all coats");
    bill_assumes(bills, line, ASSUME_COATS, say(arena, "coats: %s", bill_number(arena, coats)));
    bill_assumes(bills, line, ASSUME_COVERAGE,
                 say(arena, "%s %s", bill_number(arena, coverage), inch ? "sq ft a gallon" : "m2 a liter"));
    line->source = assume(wall, ASSUME_COVERAGE).source;
    if (thinning > 0) {
        int64_t thinner = assume_fit(wide_divide((Wide)finish * thinning, 100 * ASSUME_ONE));
        line = bill_put(bills, BILL_FINISH, thinner, 1, inch ? "gal" : "l", "thinner for it");
        bill_assumes(bills, line, ASSUME_THINNING, say(arena, "%s %%", bill_number(arena, thinning)));
    }
}

/* ---- behind the planks ---- */

static void put_backing(Bills *bills)
{
    const Wall *wall = bills->wall;
    Length width = assume(wall, ASSUME_SHEET_WIDTH).value;
    Length length = assume(wall, ASSUME_SHEET_LENGTH).value;
    if (width <= 0 || length <= 0)
        return;
    for (int i = 0; i < wall->faces.count; i++) {
        Length thick = wall->faces.at[i].backing;
        bool first = thick > 0;
        for (int j = 0; j < i; j++)
            first &= wall->faces.at[j].backing != thick;
        if (!first)
            continue;
        Wide area = 0;
        for (int j = i; j < wall->faces.count; j++)
            if (wall->faces.at[j].backing == thick)
                area += bare_area(bills->arena, bills->layout, j);
        int64_t spare = assume(wall, ASSUME_SPARE).value;
        Wide with_spare = wide_ceiling(area, 100 * ASSUME_ONE) * (100 * ASSUME_ONE + spare);
        BillLine *line = bill_put(
            bills, BILL_BEHIND, assume_fit(wide_ceiling(with_spare, (Wide)width * length)) * ASSUME_ONE, 0, "sheet|s",
            bill_with_spare(bills, say(bills->arena, "backing %s thick, sheets of %s by %s",
                                       say_length(bills->arena, wall, thick), say_length(bills->arena, wall, width),
                                       say_length(bills->arena, wall, length))));
        bill_assumes(bills, line, ASSUME_SHEET_WIDTH, "sheets cover the bare wall, behind the reveals too; sheet size");
        bill_spare(bills, line);
    }
}

typedef struct Depths {
    Length *at;
    int count;
    int room;
} Depths;

static int compare_lengths(const void *left, const void *right)
{
    const Length a = *(const Length *)left;
    const Length b = *(const Length *)right;
    return (a > b) - (a < b);
}

static void put_extenders(Bills *bills)
{
    Depths depths = {0};
    const Covers covers = covers_of(bills->arena, bills->layout);
    for (int i = 0; i < bills->wall->faces.count; i++)
        for (int j = 0; j < bills->wall->faces.at[i].openings.count; j++) {
            Length depth;
            if (bills->wall->faces.at[i].openings.at[j].kind == OPENING_BOX &&
                box_extender(bills->layout, &covers, i, j, &depth) && depth > 0)
                *arena_push(bills->arena, &depths) = depth;
        }
    if (depths.count > 1)
        qsort(depths.at, (size_t)depths.count, sizeof *depths.at, compare_lengths);
    for (int i = 0; i < depths.count;) {
        int next = i;
        while (next < depths.count && depths.at[next] == depths.at[i])
            next++;
        BillLine *line = bill_put(bills, BILL_BEHIND, (next - i) * ASSUME_ONE, 0, "piece|s",
                                  say(bills->arena, "box %s, %s", next - i == 1 ? "extender" : "extenders",
                                      say_length(bills->arena, bills->wall, depths.at[i])));
        line->assumes = "box fronts flush with the wood around them";
        line->source = "NEC 314.20; the local code rules";
        i = next;
    }
}

void bill_put_behind(Bills *bills)
{
    put_backing(bills);
    put_extenders(bills);
}

/* ---- spacers ---- */

void bill_put_spacers(Bills *bills)
{
    const Wall *wall = bills->wall;
    Spacer spacer;
    if (wall->planks.reveal <= 0 || !spacer_nearest(wall->planks.reveal, &spacer))
        return;
    int most = 0; /* pieces in one course */
    int here = 0;
    for (int i = 0; i < bills->plan->piece_count; i++) {
        const Piece *piece = &bills->plan->pieces[i];
        bool same = i > 0 && piece[-1].face == piece->face && piece[-1].course == piece->course;
        here = same ? here + 1 : 1;
        most = here > most ? here : most;
    }
    if (most == 0)
        return;
    Length off = (Length)llabs(spacer.thickness - wall->planks.reveal);
    BillLine *line = bill_put(bills, BILL_SPACERS, 2 * most * ASSUME_ONE, 0, "place|s",
                              say(bills->arena, "spacers for the reveal of %s; nearest on hand: %s (%s)",
                                  say_fine(bills->arena, wall, wall->planks.reveal),
                                  spacer_words(bills->arena, &spacer), say_thin(bills->arena, wall, spacer.thickness)));
    const char *how = off < LENGTH_MM / 100
                          ? "just as thick"
                          : say(bills->arena, "off by %s in each reveal", say_thin(bills->arena, wall, off));
    line->assumes = say(bills->arena, "two for each piece of a course; %s", how);
    line->source = "common practice";
}
