#include "sheet/sheets/sheets.h"

#include <inttypes.h>
#include <string.h>

#include "base/text.h"
#include "job/words.h"

/*
 * Hazards, faults and cautions as a list: the check sheet, and the last section of others. What one rule finds several
 * times on one face is one item with a line each, or, where one sentence holds for all, that sentence and a list of
 * places. What holds on any such job comes last, without boxes to tick.
 *
 *     [ ] Caution, box: face north, desk outlet        4 cautions, wire: face north
 *         The front edge ...                           No stud stands behind these pieces. ...: piece 17 (course 5,
 *                                                      ...); piece 20 (course 5, ...).
 */

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

static void add_head(Sheet *sheet, SheetLines *lines, const char *text)
{
    SheetLine *line = sheet_line(sheet, lines);
    line->rule = true;
    sheet_tick(sheet, line, TICK, false);
    sheet_cell(sheet, line, GRADE, SHEET_COLUMNS - GRADE, ALIGN_LEFT, WEIGHT_STRONG, text);
}

static void add_one(Sheet *sheet, SheetSection *section, const Wall *wall, const Finding *finding)
{
    SheetLines *lines = &sheet_group(sheet, section)->lines;
    add_head(sheet, lines,
             words(sheet->arena, "%s, %s%s", words_capital(sheet->arena, grade_word(rule_grade(finding->rule))),
                   rule_word(finding->rule), place_words(sheet->arena, wall, finding)));
    sheet_words(sheet, lines, TEXT, WEIGHT_TEXT, words_capital(sheet->arena, finding->text));
}

/* How many from `first` on stand in one item: of one rule, on one face, with one lead or none. */
static int count_alike(const Findings *findings, int first)
{
    const Finding *one = &findings->at[first];
    int count = 1;
    while (first + count < findings->count) {
        const Finding *next = &findings->at[first + count];
        bool lead =
            one->lead == NULL || next->lead == NULL ? one->lead == next->lead : strcmp(one->lead, next->lead) == 0;
        if (next->rule != one->rule || next->face != one->face || !lead)
            break;
        count++;
    }
    return count;
}

static void add_several(Sheet *sheet, SheetSection *section, const Wall *wall, const Finding *findings, int count)
{
    Arena *arena = sheet->arena;
    const char *face = findings->face < 0 ? "" : words_name(arena, wall->faces.at[findings->face].name);
    SheetGroup *group = sheet_group(sheet, section);
    add_head(sheet, &group->lines,
             words(arena, "%d %ss, %s%s%s", count, grade_word(rule_grade(findings->rule)), rule_word(findings->rule),
                   findings->face < 0 ? "" : ": face ", face));
    if (findings->lead == NULL) {
        group->with_next = true;
        for (int i = 0; i < count; i++)
            sheet_words(sheet, &sheet_group(sheet, section)->lines, TEXT, WEIGHT_TEXT,
                        words_finding(arena, &findings[i]));
        return;
    }
    Text list;
    text_init(&list);
    text_format(&list, "%s ", findings->lead);
    for (int i = 0; i < count; i++)
        text_format(&list, "%s%s", findings[i].item, i + 1 < count ? "; " : ".");
    sheet_words(sheet, &group->lines, TEXT, WEIGHT_TEXT, arena_text(arena, list.bytes, list.length));
    text_finish(&list);
}

static void add_advice(Sheet *sheet, SheetSection *section, const Finding *findings, int count)
{
    SheetGroup *group = sheet_group(sheet, section);
    group->with_next = true;
    SheetLine *line = sheet_line(sheet, &group->lines);
    line->rule = true;
    sheet_cell(sheet, line, 0, SHEET_COLUMNS, ALIGN_LEFT, WEIGHT_STRONG, "Care, on any such job");
    for (int i = 0; i < count; i++)
        sheet_words(sheet, &sheet_group(sheet, section)->lines, TEXT, WEIGHT_TEXT, findings[i].text);
}

static void add_findings(Sheet *sheet, SheetSection *section, const Wall *wall, const Findings *findings)
{
    for (int place = 0; place < findings->count;) {
        int count = count_alike(findings, place);
        if (findings->at[place].rule == RULE_CARE)
            add_advice(sheet, section, &findings->at[place], count);
        else if (count == 1)
            add_one(sheet, section, wall, &findings->at[place]);
        else
            add_several(sheet, section, wall, &findings->at[place], count);
        place += count;
    }
}

/* "4 cautions and 11 hazards of any such job": what is left off. */
static const char *rest_words(Arena *arena, int cautions, int general)
{
    const char *first = cautions == 0 ? "" : words_count(arena, cautions, "caution", "cautions");
    const char *second =
        general == 0 ? "" : words_count(arena, general, "hazard of any such job", "hazards of any such job");
    return words(arena, "%s%s%s", first, cautions > 0 && general > 0 ? " and " : "", second);
}

void sheet_add_findings(Sheet *sheet, const Job *job)
{
    Arena *arena = sheet->arena;
    if (job->findings.count == 0)
        return;
    Findings grave = {0};
    int cautions = 0, general = 0;
    for (int i = 0; i < job->read.count; i++) {
        const Finding *finding = &job->read.at[i];
        if (finding->rule == RULE_CARE)
            general++;
        else if (rule_grade(finding->rule) == GRADE_CAUTION)
            cautions++;
        else
            *arena_push(arena, &grave) = *finding;
    }
    SheetSection *section = sheet_section(sheet, "All faces", false);
    SheetLine *line = sheet_line(sheet, &section->heads);
    line->rule = true;
    sheet_cell(sheet, line, 0, SHEET_COLUMNS, ALIGN_LEFT, WEIGHT_WORDS, "Hazards and faults");
    add_findings(sheet, section, job->wall, &grave);
    if (cautions + general > 0)
        sheet_words(sheet, &sheet_group(sheet, section)->lines, 0, WEIGHT_STRONG,
                    words(arena, "%s%s: read them on the first page.", grave.count > 0 ? "Also " : "",
                          rest_words(arena, cautions, general)));
}

static void record_finding(Sheet *sheet, const Wall *wall, const Finding *finding)
{
    Arena *arena = sheet->arena;
    const char **field = sheet_record(sheet)->at;
    field[FIELD_GRADE] = grade_word(rule_grade(finding->rule));
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

/* Their numbers, and what to say where there is none, above all of them. */
static void put_findings(Sheet *sheet, SheetSection *section, const Job *job)
{
    int general = 0;
    sheet_records(sheet, field_names, FIELD_COUNT);
    for (int i = 0; i < job->findings.count; i++) {
        const Finding *finding = &job->read.at[i];
        general += finding->rule == RULE_CARE;
        record_finding(sheet, job->wall, finding);
    }
    SheetLines *lines = &section->heads;
    sheet_words(sheet, lines, 0, WEIGHT_WORDS, words_grades(sheet->arena, &job->findings, general));
    if (job->findings.count == 0)
        sheet_words(sheet, lines, 0, WEIGHT_TEXT,
                    "These checks found nothing. They do not cover codes, manuals or licenses.");
    add_findings(sheet, section, job->wall, &job->read);
}

void sheet_add_every_finding(Sheet *sheet, const Job *job)
{
    SheetSection *section = sheet_section(sheet, "All faces", false);
    SheetLine *line = sheet_line(sheet, &section->heads);
    line->rule = true;
    sheet_cell(sheet, line, 0, SHEET_COLUMNS, ALIGN_LEFT, WEIGHT_WORDS, "Hazards, faults and cautions");
    put_findings(sheet, section, job);
}

Sheet *sheet_check(Arena *arena, const Job *job, const char *date)
{
    Sheet *sheet = sheet_of_job(arena, job, "Hazards and faults", date);
    put_findings(sheet, sheet_section(sheet, "All faces", false), job);
    return sheet;
}
