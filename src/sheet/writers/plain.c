#include "sheet/writers/plain.h"

#include <string.h>

#include "base/fold.h"
#include "base/utf8.h"
#include "job/words.h"
#include "sheet/flow.h"

enum { HEAD_LINES = 4 }; /* three of the page head and the rule under it */

static int cell_lines(const SheetCell *cell)
{
    if (cell->kind != CELL_TEXT || cell->cut)
        return 1;
    return fold_lines(cell->text, cell->width);
}

static int line_lines(const SheetLine *line)
{
    int most = 1;
    for (int i = 0; i < line->count; i++) {
        int lines = cell_lines(&line->at[i]);
        if (lines > most)
            most = lines;
    }
    return most;
}

static int64_t line_height(const void *self, const SheetLine *line)
{
    (void)self;
    return line_lines(line) + (line->rule ? 1 : 0);
}

/* `count` bytes of `text` within the cell. */
static void put_aligned(Text *out, const SheetCell *cell, const char *text, size_t count)
{
    if (cell->align == ALIGN_RIGHT) {
        Text part;
        text_init(&part);
        text_put_bytes(&part, text, count);
        text_put_times(out, ' ', cell->width - utf8_cells(part.bytes));
        text_finish(&part);
    }
    fold_put(out, text, count);
}

/* The part of the cell that stands in the `number`-th of its line's lines. */
static void put_cell(Text *out, const SheetCell *cell, int number)
{
    int begin = 0;
    switch (cell->kind) {
    case CELL_TICK:
        if (number == 0)
            text_put(out, cell->text[0] == '\0' ? "[ ]" : "[x]");
        break;
    case CELL_PENCIL:
        if (number == 0) {
            text_put(out, cell->text);
            text_put(out, " ");
            text_put_times(out, '_', cell->width - 1 - utf8_cells(cell->text));
        }
        break;
    case CELL_TEXT: {
        if (cell->cut) {
            if (number == 0)
                put_aligned(out, cell, cell->text, utf8_prefix(cell->text, cell->width));
            break;
        }
        int bytes = fold_line(cell->text, cell->width, number, &begin);
        if (bytes > 0)
            put_aligned(out, cell, cell->text + begin, (size_t)bytes);
        break;
    }
    }
}

static void put_rule(Text *out)
{
    text_put_times(out, '-', SHEET_COLUMNS);
    text_put(out, "\n");
}

/* `top`: right under the page head, whose rule is enough. */
static void put_line(Text *out, const SheetLine *line, bool top)
{
    if (line->rule && !top)
        put_rule(out);
    int lines = line_lines(line);
    for (int number = 0; number < lines; number++) {
        size_t from = out->length;
        for (int i = 0; i < line->count; i++) {
            text_pad(out, from, line->at[i].at);
            put_cell(out, &line->at[i], number);
        }
        while (out->length > from && out->bytes[out->length - 1] == ' ')
            out->bytes[--out->length] = '\0';
        text_put(out, "\n");
    }
}

static void put_lines(Text *out, const SheetLines *lines, int first, int count, bool *top)
{
    for (int i = first; i < first + count; i++) {
        put_line(out, &lines->at[i], *top);
        *top = false;
    }
}

void plain_write(const Sheet *sheet, Text *out)
{
    Arena *arena = arena_new();
    Medium medium = {.room = SHEET_LINES - HEAD_LINES, .space = 1, .height = line_height};
    SheetPages pages = flow_pages(arena, sheet, &medium);
    for (int i = 0; i < pages.count; i++) {
        const SheetPage *page = &pages.at[i];
        if (i > 0)
            text_put(out, "\f");
        SheetLines head = sheet_page_head(arena, sheet, &sheet->sections.at[page->section], i + 1, pages.count);
        bool top = true;
        put_lines(out, &head, 0, head.count, &top);
        put_rule(out);
        top = true;
        for (int k = 0; k < page->count; k++) {
            const Slice *slice = &page->at[k];
            const SheetSection *section = &sheet->sections.at[slice->section];
            if (slice->heads)
                put_lines(out, &section->heads, 0, section->heads.count, &top);
            if (slice->space)
                text_put(out, "\n");
            if (slice->again)
                put_lines(out, &section->groups.at[slice->group].lines, 0, 1, &top);
            if (slice->group >= 0)
                put_lines(out, &section->groups.at[slice->group].lines, slice->first, slice->count, &top);
        }
    }
    arena_free(arena);
}
