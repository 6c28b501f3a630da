#include "sheet/sheets/sheets.h"

#include <inttypes.h>

#include "job/words.h"
#include "sheet/sheets/details.h"
#include "trade/mill.h"
#include "trade/say.h"

/* The mill sheet: what to do with each line of rough boards, whether the planks are enough, which rip width would make
 * the most of the pile. */
enum { TICK = 0, NAME = 4, STEP_TICK = 4, STEP = 8, WIDTH = 4, COLUMN = 12 };

enum {
    FIELD_LINE,
    FIELD_LABEL,
    FIELD_COUNT_OF,
    FIELD_FENCE,
    FIELD_PLANKS,
    FIELD_LENGTH,
    FIELD_PLANE,
    FIELD_STRIPS,
    FIELD_OFF_RIP,
    FIELD_USABLE,
    FIELD_AVOID,
    FIELD_WIDTH,
    FIELD_THICKNESS,
    FIELD_ROUGH_LENGTH,
    FIELD_STEPS,
    FIELD_COUNT
};
static const char *const field_names[FIELD_COUNT] = {
    "line",    "label",  "boards", "fence", "planks of each", "length",       "plane off", "strips",
    "off-rip", "usable", "avoid",  "width", "thickness",      "rough length", "steps"};

static const char *rough_words(Arena *arena, const Wall *wall, const Rough *rough)
{
    const char *label = rough->label[0] == '\0' ? "" : words(arena, " (%s)", words_name(arena, rough->label));
    return words(arena, "%s%s of %s by %s, %s long", words_count(arena, rough->count, "board", "boards"), label,
                 words_length(arena, wall, rough->width), words_length(arena, wall, rough->thickness),
                 words_length(arena, wall, rough->length));
}

static void record_line(Sheet *sheet, const Wall *wall, const MillLine *mill)
{
    Arena *arena = sheet->arena;
    const Rough *rough = &wall->rough.at[mill->rough];
    const char *steps = "";
    for (int i = 0; i < mill->step_count; i++)
        steps = words(arena, "%s%s%s", steps, i > 0 ? " | " : "", mill->steps[i]);
    for (int i = 0; i < mill->cut_count || i == 0; i++) {
        const char **field = sheet_record(sheet)->at;
        field[FIELD_LINE] = words(arena, "%d", mill->rough + 1);
        field[FIELD_LABEL] = rough->label;
        field[FIELD_COUNT_OF] = words(arena, "%d", rough->count);
        field[FIELD_FENCE] = i < mill->cut_count ? words_decimal(arena, wall, mill->cuts[i].width) : "";
        field[FIELD_PLANKS] = i < mill->cut_count ? words(arena, "%d", mill->cuts[i].count) : "0";
        field[FIELD_LENGTH] = words_decimal(arena, wall, mill->length);
        field[FIELD_PLANE] = words_decimal(arena, wall, mill->plane);
        field[FIELD_STRIPS] = words(arena, "%d", mill->strips);
        field[FIELD_OFF_RIP] = words_decimal(arena, wall, mill->off_rip);
        field[FIELD_USABLE] = words_decimal(arena, wall, mill->usable);
        field[FIELD_WIDTH] = words_decimal(arena, wall, rough->width);
        field[FIELD_THICKNESS] = words_decimal(arena, wall, rough->thickness);
        field[FIELD_ROUGH_LENGTH] = words_decimal(arena, wall, rough->length);
        field[FIELD_STEPS] = steps;
        field[FIELD_AVOID] = details_stretches(arena, wall, &rough->avoid);
    }
}

static void add_line(Sheet *sheet, SheetSection *section, const Wall *wall, const MillLine *mill)
{
    SheetLines *lines = &sheet_group(sheet, section)->lines;
    SheetLine *line = sheet_line(sheet, lines);
    line->rule = true;
    sheet_tick(sheet, line, TICK, false);
    sheet_cell(sheet, line, NAME, SHEET_COLUMNS - NAME, ALIGN_LEFT, WEIGHT_WORDS,
               rough_words(sheet->arena, wall, &wall->rough.at[mill->rough]));
    for (int i = 0; i < mill->step_count; i++) {
        line = sheet_line(sheet, lines);
        sheet_tick(sheet, line, STEP_TICK, false);
        sheet_cell(sheet, line, STEP, SHEET_COLUMNS - STEP, ALIGN_LEFT, WEIGHT_TEXT,
                   words_capital(sheet->arena, mill->steps[i]));
    }
    record_line(sheet, wall, mill);
}

static void add_need(Sheet *sheet, SheetSection *section, const Wall *wall, const MillNeed *need)
{
    Arena *arena = sheet->arena;
    Length over = need->over < 0 ? -need->over : need->over;
    int64_t boards = need->boards < 0 ? -need->boards : need->boards;
    SheetLines *lines = &sheet_group(sheet, section)->lines;
    SheetLine *line = sheet_line(sheet, lines);
    line->rule = true;
    const char *of_boards =
        need->givers == 0 ? "; no rough board gives it"
        : need->over < 0  ? words(arena, ", about %s more like these", say_count(arena, boards, "board", "boards"))
                          : words(arena, ", %s of these", say_count(arena, boards, "board", "boards"));
    sheet_cell(sheet, line, 0, SHEET_COLUMNS, ALIGN_LEFT, WEIGHT_STRONG,
               words(arena, "Planks %s wide: %s %s%s", words_length(arena, wall, need->width),
                     words_length_unit(arena, wall, over), need->over < 0 ? "short" : "to spare", of_boards));
    sheet_words(sheet, lines, 0, WEIGHT_TEXT,
                words(arena, "Needed: %s and %s spare. On hand: %s. From milling: %s.",
                      words_length_unit(arena, wall, need->needed), words_length_unit(arena, wall, need->spare),
                      words_length_unit(arena, wall, need->at_hand), words_length_unit(arena, wall, need->milled)));
}

/* Common practice. */
static void add_order(Sheet *sheet, SheetSection *section)
{
    sheet_words(sheet, &section->heads, 0, WEIGHT_WORDS, "Order of work");
    sheet_words(
        sheet, &section->heads, 0, WEIGHT_TEXT,
        "Find every nail with a metal detector first. Flatten one face, joint one edge, plane the other face, rip "
        "full, let the planks rest, finish them to width. Boards move when they are ripped: where a step says no "
        "\"full\", the board has no width left for a second cut. Never rip a cupped, twisted or crooked board "
        "freehand: flatten it and joint an edge first, or leave it.");
}

/* What other rip widths would make of the pile. */
static void add_widths(Sheet *sheet, const Wall *wall)
{
    Arena *arena = sheet->arena;
    MillWidths widths = mill_widths(arena, wall);
    if (widths.count == 0)
        return;
    SheetSection *section = sheet_section(sheet, "All boards", false);
    sheet_words(sheet, &section->heads, 0, WEIGHT_WORDS, "Rip widths, best use of the pile first");
    for (int i = 0; i < widths.count; i++) {
        const MillWidth *width = &widths.at[i];
        SheetLine *line = sheet_line(sheet, &sheet_group(sheet, section)->lines);
        line->hair = true;
        sheet_cell(sheet, line, WIDTH, COLUMN, ALIGN_RIGHT, WEIGHT_STRONG, words_length(arena, wall, width->width));
        sheet_cell(sheet, line, WIDTH + COLUMN + 2, SHEET_COLUMNS - WIDTH - COLUMN - 2, ALIGN_LEFT, WEIGHT_TEXT,
                   words(arena, "%d.%02d %% of the faces, %" PRId64 " planks, %s of them%s", width->used / 100,
                         width->used % 100, width->planks, words_length_unit(arena, wall, width->running),
                         width->width == wall_widest(wall) ? "; as written" : ""));
    }
}

Sheet *sheet_mill(Arena *arena, const Job *job, const char *date)
{
    const Wall *wall = job->wall;
    Sheet *sheet = sheet_of_job(arena, job, "Mill sheet", date);
    sheet_records(sheet, field_names, FIELD_COUNT);
    SheetSection *section = sheet_section(sheet, "All boards", false);
    MillSheet mill = mill_sheet(arena, job->layout);
    if (mill.line_count == 0) {
        sheet_words(sheet, &section->heads, 0, WEIGHT_TEXT,
                    "No rough boards are written down: see `rough` and `mill` in datumrow(5).");
        return sheet;
    }
    add_order(sheet, section);
    for (int i = 0; i < mill.line_count; i++)
        add_line(sheet, section, wall, &mill.lines[i]);
    for (int i = 0; i < mill.need_count; i++)
        add_need(sheet, section, wall, &mill.needs[i]);
    if (mill.strips > 0)
        sheet_words(sheet, &sheet_group(sheet, section)->lines, 0, WEIGHT_TEXT,
                    words(arena, "Off-rips give %" PRId64 " strips for trim, %s together.", mill.strips,
                          words_length_unit(arena, wall, mill.strip_length)));
    add_widths(sheet, wall);
    return sheet;
}
