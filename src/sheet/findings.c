#include "sheet/sheets.h"

#include <inttypes.h>

#include "sheet/words.h"

/* Faults and cautions as a list, each with its place: the check sheet, and the last section of others. */

enum { TICK = 0, GRADE = 4, TEXT = 4 };

enum {
    FIELD_GRADE,
    FIELD_RULE,
    FIELD_FACE,
    FIELD_COURSE,
    FIELD_AT,
    FIELD_PIECE,
    FIELD_BOARD,
    FIELD_OPENING,
    FIELD_TEXT,
    FIELD_COUNT
};
static const char *const field_names[FIELD_COUNT] = {"grade", "rule",  "face",    "course", "at",
                                                     "piece", "board", "opening", "text"};

static const char *grade_word(const Finding *finding)
{
    return rule_grade(finding->rule) == GRADE_FAULT ? "fault" : "caution";
}

/* "Fault, stagger: face north, course 3, at 46 1/2, piece 12" */
static const char *place_words(Arena *arena, const Wall *wall, const Finding *finding)
{
    const char *place = "";
    if (finding->face >= 0)
        place = words(arena, ": face %s", words_name(arena, wall->faces.at[finding->face].name));
    if (finding->has_course)
        place = words(arena, "%s, course %" PRId64, place, finding->course);
    if (finding->has_at)
        place = words(arena, "%s, %s from the face's left end", place, words_length(arena, wall, finding->at));
    if (finding->piece > 0)
        place = words(arena, "%s, piece %d", place, finding->piece);
    if (finding->board > 0)
        place = words(arena, "%s, board %s", place, words_board(arena, wall, finding->board));
    if (finding->face >= 0 && finding->opening >= 0)
        place = words(arena, "%s, %s", place,
                      words_name(arena, wall->faces.at[finding->face].openings.at[finding->opening].name));
    return place;
}

static void add_finding(Sheet *sheet, SheetSection *section, const Wall *wall, const Finding *finding)
{
    SheetLines *lines = &sheet_group(sheet, section)->lines;
    SheetLine *line = sheet_line(sheet, lines);
    line->rule = true;
    sheet_tick(sheet, line, TICK, false);
    sheet_cell(sheet, line, GRADE, SHEET_COLUMNS - GRADE, ALIGN_LEFT, WEIGHT_STRONG,
               words(sheet->arena, "%s, %s%s", rule_grade(finding->rule) == GRADE_FAULT ? "Fault" : "Caution",
                     rule_word(finding->rule), place_words(sheet->arena, wall, finding)));
    sheet_words(sheet, lines, TEXT, WEIGHT_TEXT, words_capital(sheet->arena, finding->text));
}

void sheet_add_findings(Sheet *sheet, const Job *job)
{
    if (job->findings.count == 0)
        return;
    SheetSection *section = sheet_section(sheet, "All faces", true);
    sheet_words(sheet, &section->heads, 0, WEIGHT_WORDS, "Faults and cautions");
    for (int i = 0; i < job->findings.count; i++)
        add_finding(sheet, section, job->wall, &job->findings.at[i]);
}

static void record_finding(Sheet *sheet, const Wall *wall, const Finding *finding)
{
    Arena *arena = sheet->arena;
    const char **field = sheet_record(sheet)->at;
    field[FIELD_GRADE] = grade_word(finding);
    field[FIELD_RULE] = rule_word(finding->rule);
    if (finding->face >= 0)
        field[FIELD_FACE] = wall->faces.at[finding->face].name;
    if (finding->has_course)
        field[FIELD_COURSE] = words(arena, "%" PRId64, finding->course);
    if (finding->has_at)
        field[FIELD_AT] = words_decimal(arena, wall, finding->at);
    if (finding->piece > 0)
        field[FIELD_PIECE] = words(arena, "%d", finding->piece);
    if (finding->board > 0)
        field[FIELD_BOARD] = words(arena, "%d", finding->board);
    if (finding->face >= 0 && finding->opening >= 0)
        field[FIELD_OPENING] = wall->faces.at[finding->face].openings.at[finding->opening].name;
    field[FIELD_TEXT] = finding->text;
}

Sheet *sheet_check(Arena *arena, const Job *job, const char *date)
{
    Sheet *sheet = sheet_of_job(arena, job, "Faults and cautions", date);
    sheet_records(sheet, field_names, FIELD_COUNT);
    SheetSection *section = sheet_section(sheet, "All faces", false);
    int faults = findings_faults(&job->findings);
    int cautions = job->findings.count - faults;
    sheet_words(sheet, &section->heads, 0, WEIGHT_WORDS,
                words(arena, "%s, %s.", words_count(arena, faults, "fault", "faults"),
                      words_count(arena, cautions, "caution", "cautions")));
    if (job->findings.count == 0)
        sheet_words(sheet, &section->heads, 0, WEIGHT_TEXT,
                    "Nothing was found by the checks that there are. That is no word on codes, manuals or licences: "
                    "ask those who answer for them.");
    for (int i = 0; i < job->findings.count; i++) {
        add_finding(sheet, section, job->wall, &job->findings.at[i]);
        record_finding(sheet, job->wall, &job->findings.at[i]);
    }
    return sheet;
}
