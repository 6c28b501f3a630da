#include "sheet/sheet.h"

#include <string.h>

#include "base/fold.h"
#include "base/panic.h"
#include "base/utf8.h"
#include "job/words.h"

SheetSection *sheet_section(Sheet *sheet, const char *place, bool new_page)
{
    SheetSection *section = arena_push(sheet->arena, &sheet->sections);
    *section = (SheetSection){.place = place, .new_page = new_page};
    return section;
}

SheetGroup *sheet_group(Sheet *sheet, SheetSection *section)
{
    SheetGroup *group = arena_push(sheet->arena, &section->groups);
    *group = (SheetGroup){0};
    return group;
}

static SheetLine *push_line(Arena *arena, SheetLines *lines)
{
    SheetLine *line = arena_push(arena, lines);
    *line = (SheetLine){0};
    return line;
}

static void push_cell(Arena *arena, SheetLine *line, SheetCell cell)
{
    BUG_UNLESS(cell.at >= 0 && cell.width > 0 && cell.at + cell.width <= SHEET_COLUMNS);
    cell.text = fold_hold(arena, utf8_safe_in(arena, cell.text));
    *arena_push(arena, line) = cell;
}

SheetLine *sheet_line(Sheet *sheet, SheetLines *lines)
{
    return push_line(sheet->arena, lines);
}

void sheet_cell(Sheet *sheet, SheetLine *line, int at, int width, Align align, Weight weight, const char *text)
{
    push_cell(sheet->arena, line,
              (SheetCell){.weight = weight, .align = align, .at = at, .width = width, .text = text});
}

void sheet_number(Sheet *sheet, SheetLine *line, int at, int width, Weight weight, int number)
{
    push_cell(sheet->arena, line,
              (SheetCell){.weight = weight,
                          .align = ALIGN_RIGHT,
                          .at = at,
                          .width = width,
                          .foot = true,
                          .text = words(sheet->arena, "%d", number)});
}

void sheet_tick(Sheet *sheet, SheetLine *line, int at, bool ticked)
{
    push_cell(sheet->arena, line, (SheetCell){.kind = CELL_TICK, .at = at, .width = 3, .text = ticked ? "x" : ""});
}

void sheet_pencil(Sheet *sheet, SheetLine *line, int at, int width, const char *label)
{
    push_cell(sheet->arena, line, (SheetCell){.kind = CELL_PENCIL, .at = at, .width = width, .text = label});
}

void sheet_sketch(Sheet *sheet, SheetLines *lines, const Drawing *drawing, const char *text)
{
    SheetLine *line = sheet_line(sheet, lines);
    line->sketch = drawing;
    sheet_cell(sheet, line, 0, SHEET_COLUMNS, ALIGN_LEFT, WEIGHT_TEXT, text);
}

/* How much of a text goes into one line: a line is never split over pages, so it is kept well below a page. */
static size_t words_of_line(const char *text)
{
    enum { MOST = 900 };
    size_t length = strlen(text);
    if (length <= MOST)
        return length;
    for (size_t i = MOST; i > 0; i--)
        if (text[i] == ' ')
            return i + 1;
    return utf8_prefix(text, MOST / 2);
}

void sheet_words(Sheet *sheet, SheetLines *lines, int at, Weight weight, const char *text)
{
    text = fold_hold(sheet->arena, utf8_safe_in(sheet->arena, text));
    do {
        size_t bytes = words_of_line(text);
        sheet_cell(sheet, sheet_line(sheet, lines), at, SHEET_COLUMNS - at, ALIGN_LEFT, weight,
                   arena_text(sheet->arena, text, bytes));
        text += bytes;
    } while (*text != '\0');
}

void sheet_records(Sheet *sheet, const char *const *names, int count)
{
    sheet->records.name_count = count;
    sheet->records.names = arena_array(sheet->arena, const char *, count);
    memcpy(sheet->records.names, names, (size_t)count * sizeof *names);
}

SheetRecord *sheet_record(Sheet *sheet)
{
    SheetRecord *record = arena_push(sheet->arena, &sheet->records);
    record->at = arena_array(sheet->arena, const char *, sheet->records.name_count);
    for (int i = 0; i < sheet->records.name_count; i++)
        record->at[i] = "";
    return record;
}

enum {
    KIND = 20,
    PLAN_AT = 38,
    PLAN = 17,
    DATE_AT = 37,
    DATE = 20,
    PAGE_AT = 58,
    FILE_AT = 43,
    FILE_LEAST = 6,
    HASH_AT = 62
};

/* The job, the plan's number, the kind of sheet. */
static void head_title(Arena *arena, SheetLine *line, const Sheet *sheet, const SheetSection *section)
{
    push_cell(arena, line,
              (SheetCell){.weight = WEIGHT_WORDS,
                          .width = sheet->plan == NULL ? SHEET_COLUMNS - KIND : PLAN_AT - 1,
                          .cut = true,
                          .text = sheet->title});
    if (sheet->plan != NULL)
        push_cell(arena, line,
                  (SheetCell){.weight = WEIGHT_MARK,
                              .at = PLAN_AT,
                              .width = PLAN,
                              .cut = true,
                              .text = words(arena, "Plan %s", sheet->plan)});
    push_cell(arena, line,
              (SheetCell){.weight = WEIGHT_WORDS,
                          .align = ALIGN_RIGHT,
                          .at = SHEET_COLUMNS - KIND,
                          .width = KIND,
                          .cut = true,
                          .text = section->kind != NULL ? section->kind : sheet->kind});
}

static void head_place(Arena *arena, SheetLine *line, const Sheet *sheet, const SheetSection *section, const char *page)
{
    push_cell(arena, line,
              (SheetCell){.weight = WEIGHT_STRONG, .width = DATE_AT - 1, .cut = true, .text = section->place});
    if (sheet->date[0] == '\0')
        push_cell(arena, line, (SheetCell){.kind = CELL_PENCIL, .at = DATE_AT, .width = DATE, .text = "date"});
    else
        push_cell(arena, line, (SheetCell){.at = DATE_AT, .width = DATE, .cut = true, .text = sheet->date});
    push_cell(
        arena, line,
        (SheetCell){.align = ALIGN_RIGHT, .at = PAGE_AT, .width = SHEET_COLUMNS - PAGE_AT, .cut = true, .text = page});
}

/* The facts are never cut: the file's name makes room for them. */
static void head_facts(Arena *arena, SheetLine *line, const Sheet *sheet)
{
    int file_at = utf8_cells(sheet->facts) + 2;
    file_at = file_at < FILE_AT ? FILE_AT : file_at > HASH_AT - FILE_LEAST ? HASH_AT - FILE_LEAST : file_at;
    push_cell(arena, line, (SheetCell){.width = file_at - 1, .cut = true, .text = sheet->facts});
    push_cell(
        arena, line,
        (SheetCell){
            .align = ALIGN_RIGHT, .at = file_at, .width = HASH_AT - 1 - file_at, .cut = true, .text = sheet->file});
    push_cell(arena, line,
              (SheetCell){.align = ALIGN_RIGHT, .at = HASH_AT, .width = SHEET_COLUMNS - HASH_AT, .text = sheet->hash});
}

SheetLines sheet_page_head(Arena *arena, const Sheet *sheet, const SheetSection *section, int page, int pages)
{
    SheetLines lines = {0};
    head_title(arena, push_line(arena, &lines), sheet, section);
    head_place(arena, push_line(arena, &lines), sheet, section, words(arena, "page %d of %d", page, pages));
    head_facts(arena, push_line(arena, &lines), sheet);
    return lines;
}
