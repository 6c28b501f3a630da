#include "sheet/sheets/sheets.h"

#include <inttypes.h>

#include "job/start_words.h"
#include "job/start_work.h"
#include "job/words.h"
#include "layout/starts.h"
#include "trade/widths.h"

/*
 * Start heights worth considering, best first, each with what it does to top, bottom and openings:
 *
 *     [ ] 1.   start   3 9/16 up   least strip 1
 *         widest least strip
 *         at the ceiling 1 13/16, at the floor 1; thin along 0 of wall
 *         12 cutouts. About 131 boards, before the plan is improved.
 *         window (north): above a reveal, below 1 5/16
 */
enum { CHOICE = 4, CHOICE_BOARDS = 33, CHOICE_LEAST = 42, CHOICE_START = 56 }; /* of the other widths and reveals */
enum { TICK = 0, NUMBER = 4, WORD = 8, MARK = 15, MARK_WIDTH = 21, LEAST = 40, TEXT = 8 };

enum {
    FIELD_START,
    FIELD_LEAST,
    FIELD_CEILING,
    FIELD_FLOOR,
    FIELD_THIN,
    FIELD_WHERE,
    FIELD_CUTOUTS,
    FIELD_SHALLOW,
    FIELD_BOARDS,
    FIELD_WHY,
    FIELD_STRIPS,
    FIELD_WORK,
    FIELD_OPENINGS,
    FIELD_COUNT
};
static const char *const field_names[FIELD_COUNT] = {
    "start",  "least", "at the ceiling", "at the floor", "thin",    "narrowest where", "cutouts", "shallow",
    "boards", "why",   "strips",         "work",         "openings"};

/* All of them in one text, a bar between them, for the data. */
static const char *add_openings(Sheet *sheet, SheetLines *lines, const Wall *wall, const Start *start)
{
    Arena *arena = sheet->arena;
    const char *all = "";
    for (int i = 0; i < start->opening_count; i++) {
        const char *opening = start_words_opening(arena, wall, &start->openings[i]);
        sheet_words(sheet, lines, TEXT, WEIGHT_TEXT, opening);
        all = words(arena, "%s%s%s", all, i > 0 ? " | " : "", opening);
    }
    return all;
}

static void add_start(Sheet *sheet, SheetSection *section, const Job *job, const Start *start, const StartWork *work,
                      int number)
{
    Arena *arena = sheet->arena;
    const Wall *wall = job->wall;
    SheetLines *lines = &sheet_group(sheet, section)->lines;
    SheetLine *line = sheet_line(sheet, lines);
    line->rule = true;
    sheet_tick(sheet, line, TICK, start->start == wall->start);
    sheet_cell(sheet, line, NUMBER, WORD - NUMBER - 1, ALIGN_RIGHT, WEIGHT_TEXT, words(arena, "%d.", number));
    sheet_cell(sheet, line, WORD, MARK - WORD, ALIGN_LEFT, WEIGHT_TEXT, "start");
    sheet_cell(sheet, line, MARK, MARK_WIDTH, ALIGN_RIGHT, WEIGHT_MARK, words_mark(arena, wall, start->start));
    sheet_cell(sheet, line, LEAST, SHEET_COLUMNS - LEAST, ALIGN_LEFT, WEIGHT_WORDS,
               words(arena, "least strip %s", words_length(arena, wall, start->least)));
    const char *why = start_words_why(arena, start);
    const char *where = start_words_where(arena, wall, &start->narrowest);
    sheet_words(sheet, lines, TEXT, WEIGHT_STRONG, words_capital(arena, why));
    const char *strips = start_words_strips(arena, wall, start);
    const char *labor = start_words_work(arena, start, work);
    sheet_words(sheet, lines, TEXT, WEIGHT_TEXT, strips);
    sheet_words(sheet, lines, TEXT, WEIGHT_TEXT, labor);
    const char *openings = add_openings(sheet, lines, wall, start);
    const char **field = sheet_record(sheet)->at;
    field[FIELD_START] = words_decimal(arena, wall, start->start);
    field[FIELD_LEAST] = words_decimal(arena, wall, start->least);
    field[FIELD_CEILING] = words_decimal(arena, wall, start->ceiling);
    field[FIELD_FLOOR] = words_decimal(arena, wall, start->floor);
    field[FIELD_THIN] = words_decimal(arena, wall, start->thin);
    field[FIELD_WHERE] = where;
    field[FIELD_CUTOUTS] = words(arena, "%d", start->cutouts);
    field[FIELD_SHALLOW] = words(arena, "%d", work->shallow);
    field[FIELD_BOARDS] = work->boards != START_BOARDS_UNKNOWN ? words(arena, "%d", work->boards) : "";
    field[FIELD_WHY] = why;
    field[FIELD_STRIPS] = strips;
    field[FIELD_WORK] = labor;
    field[FIELD_OPENINGS] = openings;
}

/* A reveal to a mark where it is one, else finer: 1.5 mm on a wall marked to 1. */
static const char *reveal_words(Arena *arena, const Wall *wall, Length reveal)
{
    if (reveal % wall->round == 0)
        return words_length(arena, wall, reveal);
    char text[LENGTH_TEXT_MAX];
    length_show(reveal, wall->units, wall->units == UNITS_IN ? LENGTH_INCH / 64 : LENGTH_MM / 10, text);
    return words(arena, "%s", text);
}

/* Other widths or reveals on the same wall, each with its own best start; of widths, how many boards could give them.
 */
static void add_choices(Sheet *sheet, const Wall *wall, const char *head, const WidthChoices *choices, bool boards)
{
    Arena *arena = sheet->arena;
    if (choices->count == 0)
        return;
    SheetSection *section = sheet_section(sheet, "All faces", false);
    sheet_words(sheet, &section->heads, 0, WEIGHT_WORDS, head);
    SheetLine *heads = sheet_line(sheet, &section->heads);
    int end = boards ? CHOICE_BOARDS : CHOICE_LEAST;
    if (boards)
        sheet_cell(sheet, heads, CHOICE_BOARDS, CHOICE_LEAST - CHOICE_BOARDS - 1, ALIGN_RIGHT, WEIGHT_TEXT, "boards");
    sheet_cell(sheet, heads, CHOICE_LEAST, CHOICE_START - CHOICE_LEAST - 1, ALIGN_RIGHT, WEIGHT_TEXT, "least strip");
    sheet_cell(sheet, heads, CHOICE_START, SHEET_COLUMNS - CHOICE_START, ALIGN_RIGHT, WEIGHT_TEXT, "start");
    for (int i = 0; i < choices->count; i++) {
        const WidthChoice *choice = &choices->at[i];
        SheetLines *lines = &sheet_group(sheet, section)->lines;
        SheetLine *line = sheet_line(sheet, lines);
        line->rule = i == 0;
        line->hair = i > 0;
        sheet_tick(sheet, line, TICK, choice->change == 0);
        sheet_cell(sheet, line, CHOICE, end - CHOICE - 1, ALIGN_LEFT, WEIGHT_STRONG,
                   words(arena, "width %s, reveal %s", words_length(arena, wall, choice->width),
                         choice->by_spacer ? spacer_words(arena, &choice->spacer)
                                           : reveal_words(arena, wall, choice->reveal)));
        if (boards)
            sheet_cell(sheet, line, CHOICE_BOARDS, CHOICE_LEAST - CHOICE_BOARDS - 1, ALIGN_RIGHT, WEIGHT_TEXT,
                       words(arena, "%d", choice->boards));
        sheet_cell(sheet, line, CHOICE_LEAST, CHOICE_START - CHOICE_LEAST - 1, ALIGN_RIGHT, WEIGHT_TEXT,
                   choice->whole ? "whole courses" : words_length(arena, wall, choice->best.least));
        sheet_cell(sheet, line, CHOICE_START, SHEET_COLUMNS - CHOICE_START, ALIGN_RIGHT, WEIGHT_STRONG,
                   words_mark(arena, wall, choice->best.start));
    }
}

Sheet *sheet_starts(Arena *arena, const Job *job, const char *date)
{
    const Wall *wall = job->wall;
    Sheet *sheet = sheet_of_job(arena, job, "Start heights", date);
    sheet_records(sheet, field_names, FIELD_COUNT);
    SheetSection *section = sheet_section(sheet, "All faces", false);
    Starts starts = starts_of_layout(arena, job->layout);
    if (starts.count == 0) {
        sheet_words(sheet, &section->heads, 0, WEIGHT_TEXT, "Courses hang already: the start height is theirs.");
        return sheet;
    }
    SheetLines *lines = &sheet_group(sheet, section)->lines;
    sheet_words(sheet, lines, 0, WEIGHT_TEXT,
                words(arena,
                      "Lower edge of course 0 from the level line. %d heights that can be marked were weighed over all "
                      "faces together; these are worth a look, best first. The file's own is ticked.",
                      starts.weighed));
    sheet_words(sheet, lines, 0, WEIGHT_TEXT,
                words(arena, "Narrowest strip worth hanging: %s.", words_length_unit(arena, wall, wall_least(wall))));
    const StartWork *work = start_work(arena, wall, &starts);
    for (int i = 0; i < starts.count; i++)
        add_start(sheet, section, job, &starts.at[i], &work[i], i + 1);
    WidthChoices widths = widths_worth(arena, job->layout), reveals = reveals_worth(arena, job->layout);
    const bool stock = wall->stock.count > 0;
    add_choices(sheet, wall,
                stock ? "Rip widths worth considering, and the boards at hand that are wide enough"
                      : "Rip widths worth considering",
                &widths, stock);
    add_choices(sheet, wall, "Reveals that things at hand would keep", &reveals, false);
    return sheet;
}
