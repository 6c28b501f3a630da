#include "trade/mill.h"

#include "trade/assume.h"
#include "trade/say.h"
#include "trade/tally.h"

#include <stdlib.h>

/* The file's own widths give few patterns; where a long list would give many, the search stops with the best so far. */
enum { PATTERNS_MOST = 20000 };

static Length kerf_of(const Wall *wall)
{
    return wall->mill.kerf.given ? wall->mill.kerf.length : wall->saw.kerf;
}

/* More planks than this come out of no board. */
enum { PLANKS_MOST = 1000 };

static int few(Length count)
{
    return count < PLANKS_MOST ? (int)count : PLANKS_MOST;
}

/* How many strips of one width a board `across` gives, both edges of each sawn. */
static int strips_across(Length across, Length edge, Length kerf, Length width)
{
    Length free = across - 2 * edge;
    return free < width || width <= 0 ? 0 : few((free + kerf) / (width + kerf));
}

/* Different widths of the list, widest first. */
static Length *widths_of(Arena *arena, const Wall *wall, int *count)
{
    const LengthList *list = &wall->planks.widths;
    Length *widths = arena_array(arena, Length, list->count);
    *count = 0;
    for (int i = 0; i < list->count; i++) {
        int place = 0;
        while (place < *count && widths[place] > list->at[i])
            place++;
        if (place < *count && widths[place] == list->at[i])
            continue;
        for (int j = (*count)++; j > place; j--)
            widths[j] = widths[j - 1];
        widths[place] = list->at[i];
    }
    return widths;
}

/* ---- how a board is ripped ---- */

typedef struct Ripping {
    const Length *widths;
    int count;
    Length kerf;
    int *trial, *best; /* of each width */
    Length best_used;
    int tries;
} Ripping;

/* Fills what is free with widths from `place` on: most wood used, and of equal ones the widest planks. */
static void rip(Ripping *ripping, int place, Length free, Length used)
{
    if (used > ripping->best_used) {
        ripping->best_used = used;
        for (int i = 0; i < ripping->count; i++)
            ripping->best[i] = ripping->trial[i];
    }
    if (place == ripping->count || ++ripping->tries > PATTERNS_MOST)
        return;
    Length step = ripping->widths[place] + ripping->kerf;
    for (int n = few(free / step); n >= 0; n--) {
        ripping->trial[place] = n;
        rip(ripping, place + 1, free - n * step, used + n * ripping->widths[place]);
    }
    ripping->trial[place] = 0;
}

static void rip_line(Arena *arena, const Wall *wall, MillLine *line)
{
    const Rough *rough = &wall->rough.at[line->rough];
    int count;
    Length *widths = widths_of(arena, wall, &count);
    Ripping ripping = {.widths = widths,
                       .count = count,
                       .kerf = kerf_of(wall),
                       .trial = arena_array(arena, int, count),
                       .best = arena_array(arena, int, count)};
    Length free = rough->width - 2 * wall->mill.edge + ripping.kerf;
    if (free > 0)
        rip(&ripping, 0, free, 0);
    line->cuts = arena_array(arena, MillCut, count);
    line->off_rip = rough->width - wall->mill.edge;
    for (int i = 0; i < count; i++)
        if (ripping.best[i] > 0) {
            line->cuts[line->cut_count++] = (MillCut){widths[i], ripping.best[i]};
            line->off_rip -= ripping.best[i] * (widths[i] + ripping.kerf);
        }
    if (line->off_rip < 0) /* the last cut took less than a kerf */
        line->off_rip = 0;
    line->too_narrow = line->cut_count == 0;
    if (wall->mill.keep > 0 && !line->too_narrow && line->off_rip >= wall->mill.keep + wall->mill.edge)
        line->strips = few((line->off_rip - wall->mill.edge + ripping.kerf) / (wall->mill.keep + ripping.kerf));
}

/* Length of the board between its cut ends, and how much of that is of use. */
static void measure_line(const Wall *wall, MillLine *line)
{
    const Rough *rough = &wall->rough.at[line->rough];
    line->length = rough->length - 2 * rough->ends;
    line->usable = tally_usable(wall, rough->ends, rough->length - rough->ends, &rough->avoid);
    line->too_short = line->usable == 0;
    line->plane = rough->thickness - wall->planks.thickness;
    line->too_thin = line->plane < wall->mill.plane;
}

static void add_step(MillLine *line, const char *text)
{
    line->steps[line->step_count++] = text;
}

static void put_steps(Arena *arena, const Wall *wall, MillLine *line)
{
    const Rough *rough = &wall->rough.at[line->rough];
    line->steps = arena_array(arena, const char *, line->cut_count + 6);
    if (line->too_short || line->too_thin || line->too_narrow) {
        Length needed = wall->planks.thickness + wall->mill.plane;
        add_step(line, line->too_thin    ? say(arena, "leave it: %s thick, %s is needed before planing",
                                               say_length(arena, wall, rough->thickness), say_length(arena, wall, needed))
                       : line->too_short ? "leave it: too little of its length is of use"
                                         : "leave it: too narrow for a plank with both edges sawn");
        return;
    }
    if (rough->ends > 0)
        add_step(line, say(arena, "cut %s off each end", say_length(arena, wall, rough->ends)));
    if (wall->mill.edge > 0)
        add_step(line,
                 say(arena, "take %s off one edge to make it straight", say_length(arena, wall, wall->mill.edge)));
    for (int i = 0; i < line->cut_count; i++)
        add_step(line, say(arena, "fence at %s: rip %s", say_length(arena, wall, line->cuts[i].width),
                           say_count(arena, line->cuts[i].count, "plank", "planks")));
    if (line->strips > 0)
        add_step(line,
                 say(arena, "fence at %s: rip %s out of the off-rip of %s", say_length(arena, wall, wall->mill.keep),
                     say_count(arena, line->strips, "trim strip", "trim strips"),
                     say_length(arena, wall, line->off_rip)));
    if (line->plane > 0)
        add_step(line, say(arena, "plane %s off, both sides together, to %s", say_length(arena, wall, line->plane),
                           say_length(arena, wall, wall->planks.thickness)));
}

/* ---- what is needed and what is there ---- */

/* Length of a stock board that can be cut from. */
static Length usable_stock(const Wall *wall, const Stock *stock)
{
    return tally_usable(wall, wall->saw.square, stock->length - wall->saw.square, &stock->avoid);
}

/* Counts a board where its width is first needed: the widest plank that it gives. */
static void count_stock(const Wall *wall, MillNeed *needs, int count)
{
    for (int i = 0; i < wall->stock.count; i++) {
        const Stock *stock = &wall->stock.at[i];
        Length width = stock->width_given ? stock->width : wall_widest(wall);
        for (int j = 0; j < count; j++)
            if (width >= needs[j].width) {
                needs[j].at_hand += usable_stock(wall, stock) * stock->count;
                break;
            }
    }
}

static void count_courses(const Layout *layout, MillNeed *needs, int count)
{
    for (int i = 0; i < layout->wall->faces.count; i++)
        for (int j = 0; j < layout->faces[i].course_count; j++) {
            const Course *course = &layout->faces[i].courses[j];
            for (int k = 0; k < count; k++)
                for (int s = 0; s < course->segment_count && needs[k].width == course->width; s++)
                    needs[k].needed += course->segments[s].right - course->segments[s].left;
        }
}

/* Running length that one board of the line gives of a width. */
static Length given_by(const MillLine *line, Length width)
{
    for (int i = 0; i < line->cut_count; i++)
        if (line->cuts[i].width == width)
            return line->usable * line->cuts[i].count;
    return 0;
}

static void count_rough(const Wall *wall, const MillSheet *sheet, MillNeed *need)
{
    Length most = 0;
    for (int i = 0; i < sheet->line_count; i++) {
        Length each = given_by(&sheet->lines[i], need->width);
        need->milled = assume_fit(need->milled + (Wide)each * wall->rough.at[sheet->lines[i].rough].count);
        most = each > most ? each : most;
    }
    need->over = assume_fit((Wide)need->at_hand + need->milled - need->needed - need->spare);
    if (most > 0) {
        need->boards = need->over / most;
        if (need->over < 0 && need->over % most != 0)
            need->boards--;
    }
}

MillSheet mill_sheet(Arena *arena, const Layout *layout)
{
    const Wall *wall = layout->wall;
    MillSheet sheet = {.line_count = wall->rough.count};
    sheet.lines = arena_array(arena, MillLine, wall->rough.count);
    for (int i = 0; i < wall->rough.count; i++) {
        MillLine *line = &sheet.lines[i];
        line->rough = i;
        measure_line(wall, line);
        if (!line->too_thin && !line->too_short)
            rip_line(arena, wall, line);
        put_steps(arena, wall, line);
        sheet.strips += (int64_t)line->strips * wall->rough.at[i].count;
        sheet.strip_length =
            assume_fit(sheet.strip_length + (Wide)line->strips * line->usable * wall->rough.at[i].count);
    }
    Length *widths = widths_of(arena, wall, &sheet.need_count);
    sheet.needs = arena_array(arena, MillNeed, sheet.need_count);
    int64_t spare = assume(wall, ASSUME_SPARE).value;
    for (int i = 0; i < sheet.need_count; i++)
        sheet.needs[i].width = widths[i];
    count_courses(layout, sheet.needs, sheet.need_count);
    count_stock(wall, sheet.needs, sheet.need_count);
    for (int i = 0; i < sheet.need_count; i++) {
        sheet.needs[i].spare = assume_more(sheet.needs[i].needed, spare) - sheet.needs[i].needed;
        count_rough(wall, &sheet, &sheet.needs[i]);
    }
    return sheet;
}

/* ---- which width makes the most of the pile ---- */

static MillWidth width_of_pile(const Wall *wall, Length width)
{
    MillWidth result = {.width = width};
    Wide used = 0;
    Wide whole = 0;
    for (int i = 0; i < wall->rough.count; i++) {
        const Rough *rough = &wall->rough.at[i];
        MillLine line = {.rough = i};
        measure_line(wall, &line);
        whole += (Wide)rough->width * rough->length * rough->count;
        if (line.too_thin || line.too_short)
            continue;
        int planks = strips_across(rough->width, wall->mill.edge, kerf_of(wall), width);
        result.planks += (int64_t)planks * rough->count;
        result.running = assume_fit(result.running + (Wide)line.usable * planks * rough->count);
        used += (Wide)line.usable * planks * rough->count * width;
    }
    result.used = whole > 0 ? (int)wide_divide(used, wide_ceiling(whole, 10000)) : 0;
    return result;
}

static int compare(const void *left, const void *right)
{
    const MillWidth *a = left;
    const MillWidth *b = right;
    return a->used != b->used ? b->used - a->used : (a->width > b->width) - (a->width < b->width);
}

MillWidths mill_widths(Arena *arena, const Wall *wall)
{
    MillWidths widths = {0};
    if (wall->rough.count == 0)
        return widths;
    Length wish = wall_widest(wall);
    Length step = wall->round;
    while (step < LENGTH_MM)
        step *= 2;
    widths.at = arena_array(arena, MillWidth, LENGTH_INCH / step + 3);
    widths.at[widths.count++] = width_of_pile(wall, wish);
    for (Length width = length_round_up(wish - LENGTH_INCH / 2, step); width <= wish + LENGTH_INCH / 2; width += step)
        if (width != wish && (width - wall->planks.lap) * 2 >= wish - wall->planks.lap)
            widths.at[widths.count++] = width_of_pile(wall, width);
    qsort(widths.at, (size_t)widths.count, sizeof *widths.at, compare);
    for (int i = MILL_WIDTHS_MOST; i < widths.count; i++)
        if (widths.at[i].width == wish)
            widths.at[MILL_WIDTHS_MOST - 1] = widths.at[i];
    widths.count = widths.count < MILL_WIDTHS_MOST ? widths.count : MILL_WIDTHS_MOST;
    return widths;
}
