#include "wall/ranges.h"

#include "base/panic.h"
#include "base/text.h"
#include "base/utf8.h"
#include "wall/straight.h"

#include <inttypes.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/*
 * One row a figure. Kerf, widths, reveal, lengths, studs, `front` and `proud` are the rows of the wall file's table of
 * ranges; the others are common practice, wide enough that only a slip of the hand lies beyond.
 */

#define INCHES(n) (INT64_C(n) * LENGTH_INCH)
#define PART(n, of) (INT64_C(n) * LENGTH_INCH / (of))
#define MM(n) (INT64_C(n) * LENGTH_MM)
#define WHOLE(n) (INT64_C(n) * 1000) /* thousandths */

static const FigureRange rows[RANGED_COUNT][2] = {
    [RANGED_KERF] = {{0, 0, PART(1, 4), INCHES(1)}, {0, 0, MM(6), MM(25)}},
    [RANGED_PLANK_WIDTH] = {{0, 0, INCHES(12), INCHES(48)}, {0, 0, MM(300), MM(1200)}},
    [RANGED_THICKNESS] = {{0, 0, INCHES(3), INCHES(12)}, {0, 0, MM(75), MM(300)}},
    [RANGED_REVEAL] = {{0, 0, PART(1, 2), LENGTH_MOST}, {0, 0, MM(13), LENGTH_MOST}},
    [RANGED_LENGTH] = {{0, 0, INCHES(24 * 12), INCHES(100 * 12)}, {0, 0, MM(7500), MM(30000)}},
    [RANGED_BOARD_WIDTH] = {{0, 0, INCHES(24), INCHES(48)}, {0, 0, MM(600), MM(1200)}},
    [RANGED_STUDS] = {{INCHES(1), INCHES(6), LENGTH_MOST, LENGTH_MOST}, {MM(25), MM(150), LENGTH_MOST, LENGTH_MOST}},
    [RANGED_PROUD] = {{-INCHES(24), -INCHES(4), INCHES(4), INCHES(24)}, {-MM(600), -MM(100), MM(100), MM(600)}},
    [RANGED_BACKING] = {{0, 0, INCHES(4), INCHES(24)}, {0, 0, MM(100), MM(600)}},
    [RANGED_FASTENER] = {{0, 0, INCHES(6), INCHES(24)}, {0, 0, MM(150), MM(600)}},
    [RANGED_DRYWALL] = {{0, 0, INCHES(2), INCHES(24)}, {0, 0, MM(50), MM(600)}},
    [RANGED_TRIM_WIDTH] = {{0, 0, INCHES(12), INCHES(48)}, {0, 0, MM(300), MM(1200)}},
    [RANGED_EDGE] = {{0, 0, INCHES(1), INCHES(4)}, {0, 0, MM(25), MM(100)}},
    [RANGED_PLANE] = {{0, 0, PART(1, 2), INCHES(4)}, {0, 0, MM(13), MM(100)}},
    [RANGED_KEEP] = {{0, 0, INCHES(6), INCHES(24)}, {0, 0, MM(150), MM(600)}},
    [RANGED_BEAD] = {{PART(1, 32), PART(1, 8), PART(1, 2), INCHES(2)}, {MM(1), MM(3), MM(13), MM(50)}},
    [RANGED_SHEET_WIDTH] = {{INCHES(4), INCHES(12), INCHES(60), INCHES(48 * 12)},
                            {MM(100), MM(300), MM(1500), MM(15000)}},
    [RANGED_SHEET_LENGTH] = {{INCHES(4), INCHES(12), INCHES(12 * 12), INCHES(48 * 12)},
                             {MM(100), MM(300), MM(3600), MM(15000)}},
    [RANGED_NOMINAL] = {{PART(1, 16), PART(1, 4), INCHES(4), INCHES(12)}, {MM(1), MM(6), MM(100), MM(300)}},
    [RANGED_SPARE] = {{0, 0, WHOLE(50), WHOLE(1000)}, {0, 0, WHOLE(50), WHOLE(1000)}},
    [RANGED_FASTENERS] = {{WHOLE(1), WHOLE(1), WHOLE(6), WHOLE(100)}, {WHOLE(1), WHOLE(1), WHOLE(6), WHOLE(100)}},
    [RANGED_CARTRIDGE] = {{WHOLE(1), WHOLE(5), WHOLE(40), WHOLE(1000)},
                          {WHOLE(10), WHOLE(150), WHOLE(1200), WHOLE(30000)}},
    [RANGED_COATS] = {{0, 0, WHOLE(6), WHOLE(100)}, {0, 0, WHOLE(6), WHOLE(100)}},
    [RANGED_COVERAGE] = {{WHOLE(10), WHOLE(100), WHOLE(800), WHOLE(10000)},
                         {WHOLE(1), WHOLE(2), WHOLE(20), WHOLE(1000)}},
    [RANGED_THINNING] = {{0, 0, WHOLE(50), WHOLE(1000)}, {0, 0, WHOLE(50), WHOLE(1000)}},
};

FigureRange range_of(RangedFigure figure, Units units)
{
    BUG_UNLESS(figure < RANGED_COUNT);
    return rows[figure][units];
}

Length range_gap(Units units)
{
    return units == UNITS_IN ? PART(48, 5) : MM(240); /* arms of 4 ft and 1.2 m */
}

/* ---- what is asked ---- */

typedef struct Asking {
    Arena *arena;
    const Wall *wall;
    Findings *findings;
} Asking;

enum { SAID_MOST = LENGTH_TEXT_MAX + 8, NAME_CELLS = 60, NAME_MOST = 4 * NAME_CELLS + 1 };

__attribute__((format(printf, 3, 4))) static void ask(Asking *asking, Finding finding, const char *format, ...)
{
    va_list list;
    va_start(list, format);
    finding.text = text_in_list(asking->arena, format, list);
    va_end(list);
    *arena_push(asking->arena, asking->findings) = finding;
}

static const char *name_of(const char *name, char out[NAME_MOST])
{
    utf8_safe(out, NAME_MOST, name, NAME_CELLS, false);
    return out;
}

/* The exact value with its unit. */
static const char *exact(const Asking *asking, Length value, char out[SAID_MOST])
{
    char bare[LENGTH_TEXT_MAX];
    length_write(value, asking->wall->units, bare);
    const bool has_unit = strchr(bare, 'm') != NULL;
    snprintf(out, SAID_MOST, "%s%s", bare, has_unit ? "" : asking->wall->units == UNITS_IN ? " in" : " mm");
    return out;
}

/* "The kerf is 3/8 in. More than 1/4 in is unusual: check it." `subject` begins the sentence. */
static void ask_length(Asking *asking, Finding finding, RangedFigure figure, const char *subject, Length value)
{
    const FigureRange range = range_of(figure, asking->wall->units);
    char said[SAID_MOST];
    char limit[SAID_MOST];
    if (value >= range.low && value <= range.high)
        return;
    ask(asking, finding, "%s is %s. %s than %s is unusual: check it.", subject, exact(asking, value, said),
        value < range.low ? "Less" : "More", exact(asking, value < range.low ? range.low : range.high, limit));
}

static void ask_number(Asking *asking, RangedFigure figure, const char *subject, Number number)
{
    const FigureRange range = range_of(figure, asking->wall->units);
    if (!number.given || (number.thousandths >= range.low && number.thousandths <= range.high))
        return;
    const bool below = number.thousandths < range.low;
    ask(asking, finding_of(RULE_RANGE), "%s is unusual: %s than %" PRId64 ". Check it.", subject,
        below ? "less" : "more", (below ? range.low : range.high) / 1000);
}

/* ---- faces ---- */

static void ask_studs(Asking *asking, int index)
{
    const Face *face = &asking->wall->faces.at[index];
    const Studs *studs = &face->studs;
    const FigureRange range = range_of(RANGED_STUDS, asking->wall->units);
    Finding finding = finding_of(RULE_RANGE);
    char name[NAME_MOST];
    char said[SAID_MOST];
    char limit[SAID_MOST];
    finding.face = index;
    if (!studs->given)
        return;
    name_of(face->name, name);
    if (face->wall == FACE_SOLID_WOOD) /* of masonry the trade says more */
        ask(asking, finding, "%s is solid wood, and yet studs are listed for it. Check it.", name);
    if (studs->regular) {
        if (studs->spacing < range.low)
            ask(asking, finding, "The studs of %s are %s apart. Less than %s is unusual: check it.", name,
                exact(asking, studs->spacing, said), exact(asking, range.low, limit));
        return;
    }
    for (int i = 1; i < studs->at.count; i++) {
        const Length apart = studs->at.at[i] - studs->at.at[i - 1];
        if (apart >= range.low)
            continue;
        finding.has_at = true;
        finding.at = studs->at.at[i - 1];
        ask(asking, finding, "Two studs of %s are %s apart. Less than %s is unusual: check it.", name,
            exact(asking, apart, said), exact(asking, range.low, limit));
    }
}

/* Common practice: what two careful readings of a tape may differ by. */
static Length tape(Units units)
{
    return units == UNITS_IN ? LENGTH_INCH / 8 : 3 * LENGTH_MM;
}

/* Floor and ceiling of two faces are one at their corner, but for a step there. */
static void ask_corner(Asking *asking, int index)
{
    const Wall *wall = asking->wall;
    const int next = (index + 1) % wall->faces.count;
    const Face *here = &wall->faces.at[index], *there = &wall->faces.at[next];
    bool through;
    if (next == index || wall_corner_right(wall, index, &through).kind == CORNER_NONE)
        return;
    for (int upper = 0; upper < 2; upper++) {
        const Length a = marks_off(upper ? &here->ceiling : &here->floor, here->width, false);
        const Length b = marks_off(upper ? &there->ceiling : &there->floor, 0, true);
        const Length off = a > b ? a - b : b - a;
        char name[NAME_MOST], other[NAME_MOST], said[SAID_MOST];
        Finding finding = finding_of(RULE_RANGE);
        finding.face = index;
        finding.has_at = true;
        finding.at = here->width;
        if (off > tape(wall->units))
            ask(asking, finding,
                "The %s of %s ends %s %s than the %s of %s begins, round their corner. Measure both there again from "
                "the "
                "level line; a step there is no mistake.",
                upper ? "ceiling" : "floor", name_of(here->name, name), exact(asking, off, said),
                (a > b) == (upper == 1) ? "higher" : "lower", upper ? "ceiling" : "floor", name_of(there->name, other));
    }
}

/* Marks are straight between, level beyond: the highest and lowest of a limit over a face are at its marks. */
static void reach_of(const Marks *marks, Length *least, Length *most)
{
    *least = *most = marks->at[0].off;
    for (int i = 1; i < marks->count; i++) {
        *least = marks->at[i].off < *least ? marks->at[i].off : *least;
        *most = marks->at[i].off > *most ? marks->at[i].off : *most;
    }
}

static void ask_stove(Asking *asking, const Face *face, const Opening *opening, Finding finding)
{
    char name[NAME_MOST];
    char on[NAME_MOST];
    Length least;
    Length lowest;
    Length highest;
    if (opening->kind != OPENING_STOVE)
        return;
    reach_of(&face->floor, &least, &lowest);
    reach_of(&face->ceiling, &least, &highest);
    const bool beside = opening->left < 0 || opening->left + opening->width > face->width;
    const bool over = opening_foot(face, opening) >= highest || opening_head(face, opening) <= -lowest;
    if (beside || over)
        ask(asking, finding, "%s stands beyond %s, before which it is. Check where it is measured from.",
            name_of(opening->name, name), name_of(face->name, on));
}

static void ask_openings(Asking *asking, int index)
{
    const Face *face = &asking->wall->faces.at[index];
    for (int i = 0; i < face->openings.count; i++) {
        const Opening *opening = &face->openings.at[i];
        Finding finding = finding_of(RULE_RANGE);
        char name[NAME_MOST];
        char subject[NAME_MOST + 64];
        finding.face = index;
        finding.opening = i;
        name_of(opening->name, name);
        if (opening->front_given) {
            snprintf(subject, sizeof subject, "What the front edge of %s stands out of the bare wall", name);
            ask_length(asking, finding, RANGED_PROUD, subject, opening->front);
        }
        if (opening->proud_given) {
            snprintf(subject, sizeof subject, "What stands out of the bare wall around %s", name);
            ask_length(asking, finding, RANGED_PROUD, subject, opening->proud);
        }
        ask_stove(asking, face, opening, finding);
    }
}

/* ---- boards ---- */

typedef struct Lengths {
    Length length;
    int count;
} Lengths;

static int compare_lengths(const void *a, const void *b)
{
    const Length x = ((const Lengths *)a)->length;
    const Length y = ((const Lengths *)b)->length;
    return x < y ? -1 : x > y;
}

/* The length of board `place` (from 0) of sorted ones. */
static Length length_at(const Lengths *sorted, int place)
{
    while (place >= sorted->count)
        place -= sorted++->count;
    return sorted->length;
}

/* Twice the median, which lies half way between two boards where their number is even. */
static Length twice_median(const Asking *asking, int total)
{
    const Stocks *stocks = &asking->wall->stock;
    Lengths *sorted = arena_array(asking->arena, Lengths, stocks->count);
    for (int i = 0; i < stocks->count; i++)
        sorted[i] = (Lengths){stocks->at[i].length, stocks->at[i].count};
    qsort(sorted, (size_t)stocks->count, sizeof *sorted, compare_lengths); /* equal ones are alike */
    return length_at(sorted, (total - 1) / 2) + length_at(sorted, total / 2);
}

/* A label and the line that has it. */
typedef struct Labelled {
    const char *label;
    int line;
} Labelled;

static int compare_labels(const void *a, const void *b)
{
    const Labelled *p = a;
    const Labelled *q = b;
    const int order = strcmp(p->label, q->label);
    return order != 0 ? order : p->line - q->line;
}

static void ask_label(Asking *asking, int line, const char *label)
{
    Finding finding = finding_of(RULE_RANGE);
    char name[NAME_MOST];
    finding.board = wall_stock_first(asking->wall, line);
    ask(asking, finding,
        "Two boards are labeled %s: on the wall nobody can tell which is meant. Give one another label.",
        name_of(label, name));
}

static void ask_labels(Asking *asking)
{
    const Stocks *stocks = &asking->wall->stock;
    Labelled *sorted = arena_array(asking->arena, Labelled, stocks->count);
    int count = 0;
    for (int i = 0; i < stocks->count; i++)
        if (stocks->at[i].label[0] != '\0')
            sorted[count++] = (Labelled){stocks->at[i].label, i};
    qsort(sorted, (size_t)count, sizeof *sorted, compare_labels);
    for (int i = 0; i < count; i++) {
        const bool again = i > 0 && strcmp(sorted[i - 1].label, sorted[i].label) == 0;
        if (again || stocks->at[sorted[i].line].count > 1)
            ask_label(asking, sorted[i].line, sorted[i].label);
    }
}

static void ask_stock(Asking *asking)
{
    const Wall *wall = asking->wall;
    const int total = wall_board_count(wall);
    if (total == 0)
        return;
    const Length twice = twice_median(asking, total);
    char said[SAID_MOST];
    char limit[SAID_MOST];
    int first = 1;
    for (int i = 0; i < wall->stock.count; i++) {
        const Stock *stock = &wall->stock.at[i];
        Finding finding = finding_of(RULE_RANGE);
        finding.board = first;
        first += stock->count;
        ask_length(asking, finding, RANGED_LENGTH, "A board's length", stock->length);
        if (stock->length > 5 * twice && stock->length <= range_of(RANGED_LENGTH, wall->units).high)
            ask(asking, finding, "A board is %s long, more than ten times the median of %s. Check it.",
                exact(asking, stock->length, said), exact(asking, (twice + 1) / 2, limit));
        if (stock->width_given)
            ask_length(asking, finding, RANGED_BOARD_WIDTH, "A board's width", stock->width);
    }
    ask_labels(asking);
}

/* ---- the shop ---- */

static void ask_shop(Asking *asking)
{
    const Wall *wall = asking->wall;
    const Finding finding = finding_of(RULE_RANGE);
    for (int i = 0; wall->trim.given && i < wall->trim.stock.count; i++)
        ask_length(asking, finding, RANGED_LENGTH, "The length of a board of trim", wall->trim.stock.at[i].length);
    for (int i = 0; wall->trim.given && i < wall->trim.pieces.count; i++)
        ask_length(asking, finding, RANGED_LENGTH, "The length of a piece of trim", wall->trim.pieces.at[i].length);
    for (int i = 0; i < wall->trim.runs.count; i++) {
        const TrimRun *run = &wall->trim.runs.at[i];
        ask_length(asking, finding, RANGED_TRIM_WIDTH, "The width of a run of trim", run->width);
        if (run->thickness_given)
            ask_length(asking, finding, RANGED_THICKNESS, "The thickness of a run of trim", run->thickness);
    }
    for (int i = 0; i < wall->rough.count; i++) {
        const Rough *rough = &wall->rough.at[i];
        ask_length(asking, finding, RANGED_LENGTH, "The length of a rough board", rough->length);
        ask_length(asking, finding, RANGED_BOARD_WIDTH, "The width of a rough board", rough->width);
        ask_length(asking, finding, RANGED_THICKNESS, "The thickness of a rough board", rough->thickness);
    }
    if (wall->mill.given) {
        ask_length(asking, finding, RANGED_EDGE, "What straightening an edge takes", wall->mill.edge);
        if (wall->mill.kerf.given)
            ask_length(asking, finding, RANGED_KERF, "The kerf of a rip", wall->mill.kerf.length);
        ask_length(asking, finding, RANGED_PLANE, "What planing takes", wall->mill.plane);
        ask_length(asking, finding, RANGED_KEEP, "The width of kept strips", wall->mill.keep);
    }
    const Bill *bill = &wall->bill;
    if (!bill->given)
        return;
    ask_number(asking, RANGED_SPARE, "The spare, in percent,", bill->spare);
    ask_number(asking, RANGED_FASTENERS, "The number of fasteners on a stud", bill->fasteners);
    if (bill->bead.given)
        ask_length(asking, finding, RANGED_BEAD, "The bead of adhesive", bill->bead.length);
    ask_number(asking, RANGED_CARTRIDGE, "The size of a cartridge", bill->cartridge);
    ask_number(asking, RANGED_COATS, "The number of coats", bill->coats);
    ask_number(asking, RANGED_COVERAGE, "What the finish covers", bill->coverage);
    ask_number(asking, RANGED_THINNING, "The thinning, in percent,", bill->thinning);
    if (bill->sheet.given) {
        ask_length(asking, finding, RANGED_SHEET_WIDTH, "The width of a sheet of backing", bill->sheet.width);
        ask_length(asking, finding, RANGED_SHEET_LENGTH, "The length of a sheet of backing", bill->sheet.length);
    }
    if (bill->nominal.given)
        ask_length(asking, finding, RANGED_NOMINAL, "The nominal thickness", bill->nominal.length);
}

void ranges_ask(Arena *arena, const Wall *wall, Findings *findings)
{
    Asking asking = {arena, wall, findings};
    const Finding finding = finding_of(RULE_RANGE);
    for (int i = 0; i < wall->planks.widths.count; i++)
        ask_length(&asking, finding, RANGED_PLANK_WIDTH, "The width of a plank", wall->planks.widths.at[i]);
    ask_length(&asking, finding, RANGED_THICKNESS, "The thickness of the planks", wall->planks.thickness);
    ask_length(&asking, finding, RANGED_REVEAL, "The reveal", wall->planks.reveal);
    ask_length(&asking, finding, RANGED_KERF, "The kerf", wall->saw.kerf);
    for (int i = 0; i < wall->faces.count; i++) {
        Finding on_face = finding;
        on_face.face = i;
        ask_length(&asking, on_face, RANGED_BACKING, "The backing", wall->faces.at[i].backing);
        ask_studs(&asking, i);
        ask_corner(&asking, i);
        ask_openings(&asking, i);
    }
    ask_stock(&asking);
    if (wall->fasteners.given) {
        if (wall->fasteners.length_given)
            ask_length(&asking, finding, RANGED_FASTENER, "The length of the fasteners", wall->fasteners.length);
        ask_length(&asking, finding, RANGED_DRYWALL, "The thickness of the drywall", wall->fasteners.drywall);
    }
    ask_shop(&asking);
}
