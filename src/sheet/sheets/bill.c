#include "sheet/sheets/sheets.h"

#include <string.h>

#include "job/words.h"
#include "trade/bill.h"

/* The bill of materials: a line for each thing with its amount, and under it what is assumed and where that is from. */
enum { TICK = 0, WHAT = 4, AMOUNT = 52, AMOUNT_WIDTH = 9, UNIT = 62, ASSUMES = 8 };

enum { FIELD_GROUP, FIELD_WHAT, FIELD_AMOUNT, FIELD_UNIT, FIELD_ASSUMES, FIELD_SOURCE, FIELD_COUNT };
static const char *const field_names[FIELD_COUNT] = {"group", "what", "amount", "unit", "assumes", "source"};

/* `before` is the line in front of it in its group, NULL at the group's first: what both assume is said once. */
static void add_line(Sheet *sheet, SheetSection *section, const BillLine *bill, const BillLine *before)
{
    Arena *arena = sheet->arena;
    const char *amount = bill_amount(arena, bill);
    SheetLines *lines = &sheet_group(sheet, section)->lines;
    if (before == NULL) {
        SheetLine *head = sheet_line(sheet, lines);
        head->rule = true;
        sheet_cell(sheet, head, 0, SHEET_COLUMNS, ALIGN_LEFT, WEIGHT_WORDS, bill_group_words(bill->group));
    }
    SheetLine *line = sheet_line(sheet, lines);
    line->hair = before != NULL;
    sheet_tick(sheet, line, TICK, false);
    sheet_cell(sheet, line, WHAT, AMOUNT - WHAT - 1, ALIGN_LEFT, WEIGHT_TEXT, bill->what);
    sheet_cell(sheet, line, AMOUNT, AMOUNT_WIDTH, ALIGN_RIGHT, WEIGHT_STRONG, amount);
    sheet_cell(sheet, line, UNIT, SHEET_COLUMNS - UNIT, ALIGN_LEFT, WEIGHT_TEXT, bill->unit);
    bool said =
        before != NULL && strcmp(before->assumes, bill->assumes) == 0 && strcmp(before->source, bill->source) == 0;
    if (bill->assumes[0] != '\0' && !said)
        sheet_words(sheet, lines, ASSUMES, WEIGHT_TEXT,
                    bill->source[0] == '\0' ? bill->assumes : words(arena, "%s; %s", bill->assumes, bill->source));
    const char **field = sheet_record(sheet)->at;
    field[FIELD_GROUP] = bill_group_words(bill->group);
    field[FIELD_WHAT] = bill->what;
    field[FIELD_AMOUNT] = amount;
    field[FIELD_UNIT] = bill->unit;
    field[FIELD_ASSUMES] = bill->assumes;
    field[FIELD_SOURCE] = bill->source;
}

Sheet *sheet_bill(Arena *arena, const Job *job, const char *date)
{
    Sheet *sheet = sheet_of_job(arena, job, "Materials", date);
    sheet_records(sheet, field_names, FIELD_COUNT);
    SheetSection *section = sheet_section(sheet, "All faces", false);
    sheet_words(sheet, &sheet_group(sheet, section)->lines, 0, WEIGHT_TEXT,
                "What the wall takes as it is planned. What is assumed can be changed in the wall file.");
    BillHolding holding = bill_holding(arena, job->layout, job->plan);
    for (int i = 0; i < holding.count; i++) {
        SheetLines *lines = &sheet_group(sheet, section)->lines;
        if (i == 0)
            sheet_words(sheet, lines, 0, WEIGHT_WORDS, "How planks are held (common practice)");
        sheet_words(sheet, lines, WHAT, WEIGHT_TEXT, holding.at[i]);
    }
    BillLines bill = bill_lines(arena, job->layout, job->plan);
    for (int i = 0; i < bill.count; i++)
        add_line(sheet, section, &bill.at[i],
                 i > 0 && bill.at[i].group == bill.at[i - 1].group ? &bill.at[i - 1] : NULL);
    return sheet;
}
