#include "base/fold.h"
#include "screen/forms/form.h"

#include "base/utf8.h"

#include <stdio.h>

/*
 *     label            [what is typed    ]  the reading, or what would be good        a field of its own
 *     Floor marks
 *       at [        ]  down [        ]      ...                                       a line of a group
 *     [ Take it ]                                                                     focus == count
 *     what was cut beside the field in focus, or what no field is to blame for
 */

enum { FOOT_ROWS = 2, LABEL_LEAST = 22, FIELD_CELLS = 18 };

/* Which line of the form a field is drawn on. */
static int line_of(const Form *form, int index)
{
    int line = 0, shown_group = -1;
    for (int i = 0; i < form->count && i <= index; i++) {
        const Field *field = &form->fields[i];
        if (field->group >= 0 && field->group != shown_group)
            line++;
        shown_group = field->group;
        if (i == index)
            return line;
        if (field->group < 0 || field->column == form->groups[field->group].columns - 1)
            line++;
    }
    return line + 1; /* the line that takes it stands apart */
}

typedef struct FormColumns {
    int label, field, cells, says, right; /* x of each */
} FormColumns;

/* Three fields in a line leave no room beside them: what is said of one stands at the foot. */
static bool is_wide(const Form *form, const Field *field)
{
    return field->group >= 0 && form->groups[field->group].columns > 2;
}

static void draw_field(const Form *form, Grid *grid, int index, int y, FormColumns at, bool focus)
{
    const Field *field = &form->fields[index];
    if (field->group < 0) {
        grid_text(grid, at.label, y, at.field - at.label - 1, STYLE_PLAIN, field->label);
        field_draw(field, grid, at.field, y, at.cells, focus);
        grid_text(grid, at.says, y, at.right - at.says, field->bad ? STYLE_FAULT : STYLE_DIM, field->says);
        return;
    }
    int columns = form->groups[field->group].columns;
    int each = ((is_wide(form, field) ? at.right : at.says) - at.label - 4) / columns;
    int x = at.label + 2 + field->column * each;
    int label = utf8_cells(field->label) + 1;
    grid_text(grid, x, y, label, STYLE_LABEL, field->label);
    field_draw(field, grid, x + label, y, each - label - 1, focus);
    bool speaks = (focus || field->bad) && !is_wide(form, field);
    if (speaks)
        grid_text(grid, at.says, y, at.right - at.says, field->bad ? STYLE_FAULT : STYLE_DIM, field->says);
}

/* Whether all that belongs to the field in focus can be read beside it. */
static bool is_cut(const Form *form, FormColumns at)
{
    const Field *field = &form->fields[form->focus];
    bool label_cut = field->group < 0 && utf8_cells(field->label) > at.field - at.label - 1;
    return label_cut || is_wide(form, field) || utf8_cells(field->says) > at.right - at.says;
}

/* What is refused, or what is said of the field in focus where there was no room for it, in whole; NULL: nothing. */
static const char *foot_text(const Form *form, FormColumns at, int *style, char *out, size_t size)
{
    *style = STYLE_FAULT;
    if (form->refused[0] != '\0')
        return form->refused;
    if (form->focus == form->count || !is_cut(form, at))
        return NULL;
    const Field *field = &form->fields[form->focus];
    *style = field->bad ? STYLE_FAULT : STYLE_DIM;
    bool label_cut = field->group < 0 && utf8_cells(field->label) > at.field - at.label - 1;
    snprintf(out, size, "%s%s%s", label_cut ? field->label : "", label_cut && field->says[0] != '\0' ? ": " : "",
             field->says);
    return out;
}

static int draw_foot(Grid *grid, Rect foot, int style, const char *text, bool draw)
{
    int begin, length, line = 0;
    for (; text != NULL && line < foot.rows && (length = fold_line(text, foot.columns, line, &begin)) >= 0; line++)
        if (draw)
            grid_format(grid, foot.x, foot.y + line, foot.columns, style, "%.*s", length, text + begin);
    return line;
}

/* Labels take what the longest of them needs, as far as a field stays beside them. */
static FormColumns places_in(const Form *form, Rect inside)
{
    int label = LABEL_LEAST;
    for (int i = 0; i < form->count; i++)
        if (form->fields[i].group < 0 && utf8_cells(form->fields[i].label) + 1 > label)
            label = utf8_cells(form->fields[i].label) + 1;
    int cells = inside.columns < FIELD_CELLS * 3 ? inside.columns / 3 : FIELD_CELLS;
    if (label > inside.columns - cells)
        label = inside.columns - cells;
    if (label < 1)
        label = 1;
    int says = label + cells + 2;
    return (FormColumns){inside.x, inside.x + label, cells, inside.x + (says < inside.columns ? says : inside.columns),
                         inside.x + inside.columns};
}

void form_draw(Form *form, Grid *grid, Rect area)
{
    int lines = line_of(form, form->count) + 1;
    int wide = area.columns < 100 ? area.columns : 100;
    FormColumns at = places_in(form, (Rect){area.x + (area.columns - wide) / 2 + 2, 0, wide - 4, 0});
    int style;
    char whole[FIELD_SAYS + 100];
    const char *text = foot_text(form, at, &style, whole, sizeof whole);
    int foot = draw_foot(grid, (Rect){0, 0, wide - 4 > 1 ? wide - 4 : 1, area.rows - 3}, style, text, false);
    if (foot < FOOT_ROWS && lines + 2 + FOOT_ROWS <= area.rows)
        foot = FOOT_ROWS; /* so that the box does not jump */
    int rows = lines + 2 + foot < area.rows ? lines + 2 + foot : area.rows;
    Rect panel = {area.x + (area.columns - wide) / 2, area.y + (area.rows - rows) / 2, wide, rows};
    grid_panel(grid, panel, form->title);
    Rect inside = {panel.x + 2, panel.y + 1, panel.columns - 4, panel.rows - 2 - foot};
    int focus_line = line_of(form, form->focus);
    if (focus_line < form->top)
        form->top = focus_line;
    if (focus_line >= form->top + inside.rows)
        form->top = focus_line - inside.rows + 1;
    if (lines > inside.rows && inside.rows > 0)
        grid_format(grid, panel.x + panel.columns - 22, panel.y, 20, STYLE_DIM, " %d to %d of %d ", form->top + 1,
                    form->top + inside.rows < lines ? form->top + inside.rows : lines, lines);
    Rect before = grid_clip(grid, inside);
    int shown_group = -1;
    for (int i = 0; i < form->count; i++) {
        int y = inside.y + line_of(form, i) - form->top;
        int group = form->fields[i].group;
        if (group >= 0 && group != shown_group)
            grid_text(grid, at.label, y - 1, inside.columns, STYLE_PLAIN, form->groups[group].label);
        shown_group = group;
        draw_field(form, grid, i, y, at, i == form->focus);
    }
    int y = inside.y + line_of(form, form->count) - form->top;
    grid_text(grid, at.label, y, 11, form->focus == form->count ? STYLE_CHOSEN : STYLE_STRONG, " Take it ");
    if (form->focus == form->count)
        grid_cursor(grid, at.label + 1, y);
    grid_unclip(grid, before);
    draw_foot(grid, (Rect){inside.x, inside.y + inside.rows, inside.columns, foot}, style, text, true);
}
