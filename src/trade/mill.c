#include "trade/mill.h"

#include "trade/assume.h"
#include "trade/say.h"
#include "trade/tally.h"

#include <stdlib.h>

/* The file's own widths give few patterns; where a long list would give many, the search stops with the best so far. */
enum { PATTERNS_MOST = 20000 };

/* Common practice: planks are ripped by up to so much full, since boards move when they are ripped. */
#define RIP_FULL_INCH (LENGTH_INCH / 8)
#define RIP_FULL_MM (3 * LENGTH_MM)

/* Narrower planks bring hands near the blade: none is weighed under half the file's width or this, the lesser. */
#define WIDTH_LEAST (2 * LENGTH_INCH)

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

static int plank_count(const MillLine *line)
{
    int count = 0;
    for (int i = 0; i < line->cut_count; i++)
        count += line->cuts[i].count;
    return count;
}

/* What is left across, strips for trim taken out, is shared among the planks in whole marks. */
static void rip_full(const Wall *wall, MillLine *line)
{
    const int planks = plank_count(line);
    if (planks == 0)
        return;
    Length left = wall->rough.at[line->rough].width - 2 * wall->mill.edge - (planks - 1) * kerf_of(wall);
    for (int i = 0; i < line->cut_count; i++)
        left -= line->cuts[i].count * line->cuts[i].width;
    if (line->strips > 0)
        left -= line->strips * (wall->mill.keep + kerf_of(wall));
    const Length each = length_round_down(left > 0 ? left / planks : 0, wall->round);
    const Length most = length_round_down(wall->units == UNITS_IN ? RIP_FULL_INCH : RIP_FULL_MM, wall->round);
    line->full = each < most ? each : most;
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
    rip_full(wall, line);
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
    line->steps = arena_array(arena, const char *, 2 * line->cut_count + rough->avoid.count + 6);
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
    for (int i = 0; i < rough->avoid.count; i++)
        add_step(line,
                 say(arena, "mark %s to %s from the first end: do not use it",
                     say_place(arena, wall, rough->avoid.at[i].from), say_place(arena, wall, rough->avoid.at[i].to)));
    add_step(line, "flatten one face");
    add_step(line, wall->mill.edge > 0 ? say(arena, "joint one edge straight and square to that face: take %s off",
                                             say_length(arena, wall, wall->mill.edge))
                                       : "joint one edge straight and square to that face");
    if (line->plane > 0)
        add_step(line, say(arena, "plane %s off, both sides together, to %s", say_length(arena, wall, line->plane),
                           say_length(arena, wall, wall->planks.thickness)));
    for (int i = 0; i < line->cut_count; i++)
        add_step(line, say(arena, "fence at %s: rip %s%s", say_length(arena, wall, line->cuts[i].width + line->full),
                           say_count(arena, line->cuts[i].count, "plank", "planks"), line->full > 0 ? " full" : ""));
    if (line->strips > 0)
        add_step(line,
                 say(arena, "fence at %s: rip %s out of the off-rip of %s", say_length(arena, wall, wall->mill.keep),
                     say_count(arena, line->strips, "trim strip", "trim strips"),
                     say_length(arena, wall, line->off_rip - plank_count(line) * line->full)));
    for (int i = 0; i < line->cut_count && line->full > 0; i++)
        add_step(line, say(arena, "let them rest, then finish to %s", say_length(arena, wall, line->cuts[i].width)));
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

/* Boards of one line, and what each gives of a width. */
typedef struct Yield {
    Length each;
    int count;
} Yield;

static int most_first(const void *left, const void *right)
{
    const Yield *a = left;
    const Yield *b = right;
    return (a->each < b->each) - (a->each > b->each);
}

static void count_rough(Arena *arena, const Wall *wall, const MillSheet *sheet, MillNeed *need)
{
    Yield *yields = arena_array(arena, Yield, sheet->line_count);
    for (int i = 0; i < sheet->line_count; i++) {
        yields[i] = (Yield){given_by(&sheet->lines[i], need->width), wall->rough.at[sheet->lines[i].rough].count};
        need->milled = assume_fit(need->milled + (Wide)yields[i].each * yields[i].count);
        need->givers += yields[i].each > 0 ? yields[i].count : 0;
    }
    need->over = assume_fit((Wide)need->at_hand + need->milled - need->needed - need->spare);
    if (need->over < 0 && need->milled > 0)
        need->boards = -assume_fit(wide_ceiling(-(Wide)need->over * need->givers, need->milled));
    if (sheet->line_count > 1)
        qsort(yields, (size_t)sheet->line_count, sizeof *yields, most_first);
    Length left = need->over;
    for (int i = 0; i < sheet->line_count && left > 0 && yields[i].each > 0; i++) {
        const int64_t spared = left / yields[i].each < yields[i].count ? left / yields[i].each : yields[i].count;
        need->boards += spared;
        left = spared < yields[i].count ? 0 : left - spared * yields[i].each;
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
        count_rough(arena, wall, &sheet, &sheet.needs[i]);
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

static int compare_lengths(const void *left, const void *right)
{
    const Length a = *(const Length *)left;
    const Length b = *(const Length *)right;
    return (a > b) - (a < b);
}

typedef struct Widths {
    Length *at;
    int count;
    int room;
} Widths;

/* For each board and each number of planks across it the widest width on the grid. */
static Widths widths_to_weigh(Arena *arena, const Wall *wall, Length wish)
{
    Length step = wall->round;
    while (step < LENGTH_MM)
        step *= 2;
    Length least = wish / 2 < WIDTH_LEAST ? wish / 2 : WIDTH_LEAST;
    if (least <= wall->planks.lap)
        least = wall->planks.lap + 1;
    const Length kerf = kerf_of(wall);
    Widths widths = {0};
    *arena_push(arena, &widths) = wish;
    for (int i = 0; i < wall->rough.count; i++) {
        const Length free = wall->rough.at[i].width - 2 * wall->mill.edge + kerf;
        for (int planks = 1; planks <= PLANKS_MOST; planks++) {
            const Length width = length_round_down(free / planks - kerf, step);
            if (free / planks <= kerf || width < least)
                break;
            *arena_push(arena, &widths) = width;
        }
    }
    qsort(widths.at, (size_t)widths.count, sizeof *widths.at, compare_lengths);
    int kept = 0;
    for (int i = 0; i < widths.count; i++)
        if (i == 0 || widths.at[i] != widths.at[kept - 1])
            widths.at[kept++] = widths.at[i];
    widths.count = kept;
    return widths;
}

/* Whether one use of the pile is the better: more of it becomes planks; then nearer to the wish; then narrower. */
static bool is_better(const MillWidth *one, const MillWidth *other, Length wish)
{
    if (one->used != other->used)
        return one->used > other->used;
    const Length off = (Length)llabs(one->width - wish);
    const Length other_off = (Length)llabs(other->width - wish);
    return off != other_off ? off < other_off : one->width < other->width;
}

MillWidths mill_widths(Arena *arena, const Wall *wall)
{
    MillWidths best = {.at = arena_array(arena, MillWidth, MILL_WIDTHS_MOST + 1)};
    const Length wish = wall_widest(wall);
    if (wall->rough.count == 0)
        return best;
    const Widths widths = widths_to_weigh(arena, wall, wish);
    MillWidth own = {0};
    for (int i = 0; i < widths.count; i++) {
        const MillWidth width = width_of_pile(wall, widths.at[i]);
        if (width.planks == 0)
            continue;
        if (width.width == wish)
            own = width;
        int place = best.count;
        for (; place > 0 && is_better(&width, &best.at[place - 1], wish); place--)
            best.at[place] = best.at[place - 1];
        best.at[place] = width;
        best.count = best.count < MILL_WIDTHS_MOST ? best.count + 1 : MILL_WIDTHS_MOST;
    }
    bool has_own = own.planks == 0;
    for (int i = 0; i < best.count; i++)
        has_own |= best.at[i].width == wish;
    if (!has_own)
        best.at[best.count - 1] = own;
    return best;
}
