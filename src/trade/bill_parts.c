#include "trade/bill_parts.h"

#include "trade/say.h"
#include "trade/spacer.h"
#include "trade/studs.h"

#include <inttypes.h>
#include <stdlib.h>

/* ---- fasteners and adhesive ---- */

/* How often the pieces of a face lie on a stud, and the length of stud that they cover. */
static int64_t crossings(const Bills *bills, Length *along_studs)
{
    const Layout *layout = bills->layout;
    Length spacing = assume(bills->wall, ASSUME_STUDS).value;
    int64_t count = 0;
    *along_studs = 0;
    for (int i = 0; i < bills->plan->piece_count; i++) {
        const Piece *piece = &bills->plan->pieces[i];
        const FaceLayout *face = &layout->faces[piece->face];
        int64_t on = 0;
        if (bills->wall->faces.at[piece->face].studs.given)
            on = studs_between(&face->studs, piece->left, piece->right);
        else
            on = (piece->right - piece->left) / spacing + 1;
        count += on;
        *along_studs += on * face->courses[piece->course].rip.most;
    }
    return count;
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

static void put_fasteners(Bills *bills, int64_t on_studs)
{
    const Wall *wall = bills->wall;
    int64_t each = assume(wall, ASSUME_FASTENERS).value;
    int64_t count = assume_fit(wide_ceiling((Wide)on_studs * each, ASSUME_ONE));
    int64_t with_spare =
        assume_fit(wide_ceiling(assume_more(count * ASSUME_ONE, assume(wall, ASSUME_SPARE).value), ASSUME_ONE));
    const char *long_by =
        wall->fasteners.length_given
            ? say(bills->arena, "fasteners, %s", say_length(bills->arena, wall, wall->fasteners.length))
            : say(bills->arena, "fasteners, at least %s", say_length(bills->arena, wall, length_needed(wall)));
    BillLine *line = bill_put(bills, BILL_FASTENING, with_spare * ASSUME_ONE, 0, "piece|s", long_by);
    bill_assumes(bills, line, ASSUME_FASTENERS,
                 say(bills->arena, "%s in each plank on each stud", bill_number(bills->arena, each)));
    if (some_face_without_studs(wall))
        bill_assumes(bills, line, ASSUME_STUDS,
                     say(bills->arena, "studs every %s where none are written down",
                         say_length(bills->arena, wall, assume(wall, ASSUME_STUDS).value)));
    bill_spare(bills, line);
}

static void put_adhesive(Bills *bills, Length along_studs)
{
    const Wall *wall = bills->wall;
    Glue glue = (Glue)(assume(wall, ASSUME_GLUE).value / ASSUME_ONE);
    if (glue == GLUE_NONE)
        return;
    Length bead = assume(wall, ASSUME_BEAD).value;
    int64_t cartridge = assume(wall, ASSUME_CARTRIDGE).value;
    Length length = glue == GLUE_PIECES ? bills->plan->length_used : along_studs;
    if (bead <= 0 || cartridge <= 0)
        return;
    Length each = bill_bead_length(cartridge, wall->units == UNITS_IN, bead);
    BillLine *line = bill_put(bills, BILL_FASTENING, bill_running(bills, length), 1, bills->running,
                              say(bills->arena, "adhesive bead, %s across", say_length(bills->arena, wall, bead)));
    bill_assumes(bills, line, ASSUME_GLUE, glue == GLUE_PIECES ? "one along each piece" : "one along each stud");
    int64_t count = each > 0 ? assume_fit(wide_ceiling(length, each)) : 0;
    line = bill_put(bills, BILL_FASTENING, count * ASSUME_ONE, 0, "cartridge|s",
                    say(bills->arena, "adhesive, cartridges of %s %s", bill_number(bills->arena, cartridge),
                        wall->units == UNITS_IN ? "fl oz" : "ml"));
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
    Length along_studs;
    int64_t on_studs = crossings(bills, &along_studs);
    put_fasteners(bills, on_studs);
    put_adhesive(bills, along_studs);
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
                 say(arena, "%s %s", bill_number(arena, coverage), inch ? "sq ft a gallon" : "m2 a litre"));
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
                area += bills->layout->faces[j].area;
        int64_t spare = assume(wall, ASSUME_SPARE).value;
        Wide with_spare = wide_ceiling(area, 100 * ASSUME_ONE) * (100 * ASSUME_ONE + spare);
        BillLine *line = bill_put(
            bills, BILL_BEHIND, assume_fit(wide_ceiling(with_spare, (Wide)width * length)) * ASSUME_ONE, 0, "sheet|s",
            say(bills->arena, "backing %s thick, sheets of %s by %s", say_length(bills->arena, wall, thick),
                say_length(bills->arena, wall, width), say_length(bills->arena, wall, length)));
        bill_assumes(bills, line, ASSUME_SHEET_WIDTH, "sheet size");
        bill_spare(bills, line);
    }
}

/* How far behind the planks' face a box ends that wood is hung round; 0 where it needs nothing. */
static Length extender(const Layout *layout, int face, int index)
{
    const Wall *wall = layout->wall;
    const Opening *opening = &wall->faces.at[face].openings.at[index];
    bool cut = false;
    for (int i = 0; i < layout->faces[face].course_count && !cut; i++)
        for (int j = 0; j < layout->faces[face].courses[i].cut_count && !cut; j++)
            cut = layout->faces[face].courses[i].cuts[j].opening == index;
    Length depth = wall->faces.at[face].backing + wall->planks.thickness - opening->front;
    return opening->kind == OPENING_BOX && cut && depth > 0 ? depth : 0;
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
    for (int i = 0; i < bills->wall->faces.count; i++)
        for (int j = 0; j < bills->wall->faces.at[i].openings.count; j++) {
            Length depth = extender(bills->layout, i, j);
            if (depth > 0)
                *arena_push(bills->arena, &depths) = depth;
        }
    if (depths.count > 1)
        qsort(depths.at, (size_t)depths.count, sizeof *depths.at, compare_lengths);
    for (int i = 0; i < depths.count;) {
        int next = i;
        while (next < depths.count && depths.at[next] == depths.at[i])
            next++;
        BillLine *line =
            bill_put(bills, BILL_BEHIND, (next - i) * ASSUME_ONE, 0, "piece|s",
                     say(bills->arena, "box extenders, %s", say_length(bills->arena, bills->wall, depths.at[i])));
        line->assumes = "box fronts flush with the planks";
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
                              say(bills->arena, "spacers for the reveal of %s; nearest at hand: %s (%s)",
                                  say_fine(bills->arena, wall, wall->planks.reveal),
                                  spacer_words(bills->arena, &spacer), say_thin(bills->arena, wall, spacer.thickness)));
    const char *how = off < LENGTH_MM / 100
                          ? "just as thick"
                          : say(bills->arena, "off by %s in each reveal", say_thin(bills->arena, wall, off));
    line->assumes = say(bills->arena, "two for each piece of a course; %s", how);
    line->source = "common practice";
}
