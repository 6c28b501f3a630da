#include "screen/views/facts.h"

#include "base/fold.h"

void facts_add(Arena *arena, Facts *facts, const char *label, int style, const char *text)
{
    if (text != NULL && text[0] != '\0')
        *arena_push(arena, facts) = (Fact){label, text, style};
}

void facts_gap(Arena *arena, Facts *facts)
{
    *arena_push(arena, facts) = (Fact){"", NULL, STYLE_PLAIN};
}

static int fact_lines(const Fact *fact, int wide)
{
    int begin, lines = 0;
    if (fact->text == NULL)
        return 1;
    while (fold_line(fact->text, wide, lines, &begin) >= 0)
        lines++;
    return lines;
}

static void fact_draw(Grid *grid, Rect area, const Fact *fact, int cells, int line, int count)
{
    int wide = area.columns - cells, begin;
    for (int fold = 0; fold < count; fold++, line++) {
        if (line < 0 || line >= area.rows)
            continue;
        if (fold == 0)
            grid_text(grid, area.x, area.y + line, cells - 1, STYLE_LABEL, fact->label);
        int length = fact->text == NULL ? 0 : fold_line(fact->text, wide, fold, &begin);
        if (length > 0)
            grid_format(grid, area.x + cells, area.y + line, wide, fact->style, "%.*s", length, fact->text + begin);
    }
}

int facts_draw(Grid *grid, Rect area, const Facts *facts, int *top)
{
    int cells = facts->label_cells, count = 0;
    int wide = area.columns - cells > 1 ? area.columns - cells : 1;
    for (int i = 0; i < facts->count; i++)
        count += fact_lines(&facts->at[i], wide);
    if (*top > count - area.rows)
        *top = count > area.rows ? count - area.rows : 0;
    int line = -*top;
    for (int i = 0; i < facts->count && line < area.rows; i++) {
        int lines = fact_lines(&facts->at[i], wide);
        fact_draw(grid, area, &facts->at[i], cells, line, lines);
        line += lines;
    }
    return count;
}
