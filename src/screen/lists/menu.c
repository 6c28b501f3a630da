#include "screen/lists/menu.h"

#include "base/fold.h"
#include "base/panic.h"
#include "base/utf8.h"

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
    TYPED_MOST = 40,
    FOLDS_MOST = 3,
    SIGNS = 9,
    HELP_LINES_MOST = FOLDS_MOST * (ACTION_COUNT + SIGNS) + 3 * (GROUP_COUNT + 1),
    MENU_WIDE = 72
};

typedef struct Menu {
    unsigned places; /* of the layer it was opened from */
    char typed[TYPED_MOST];
    size_t length;
    int focus, top;
} Menu;

/* Each word typed begins or stands in the action's words, whatever its case. */
static bool contains(const char *words, const char *typed, size_t length)
{
    for (; *words != '\0'; words++) {
        size_t i = 0;
        while (i < length && words[i] != '\0' && tolower((unsigned char)words[i]) == tolower((unsigned char)typed[i]))
            i++;
        if (i == length)
            return true;
    }
    return length == 0;
}

static bool matches(const Menu *menu, const Action *action)
{
    if ((action->places & menu->places) == 0 || action->id == ACTION_MENU || action->id == ACTION_BACK)
        return false;
    const char *at = menu->typed;
    while (*at != '\0') {
        at += strspn(at, " ");
        size_t length = strcspn(at, " ");
        if (!contains(action->menu, at, length) && !contains(action->help, at, length))
            return false;
        at += length;
    }
    return true;
}

static int matching(const Menu *menu, const Action **out)
{
    /* what the hints do not tell comes first */
    static const ActionGroup order[GROUP_COUNT] = {GROUP_WRITE, GROUP_HANG, GROUP_FILE,  GROUP_OPENINGS,
                                                   GROUP_LOOK,  GROUP_MOVE, GROUP_LISTS, GROUP_PROGRAM};
    int count = 0;
    for (int group = 0; group < GROUP_COUNT; group++)
        for (int id = 1; id < ACTION_COUNT; id++) {
            const Action *action = action_of((ActionId)id);
            if (action->group == order[group] && matches(menu, action))
                out[count++] = action;
        }
    return count;
}

static void menu_draw(App *app, void *state, Grid *grid, Rect area)
{
    (void)app;
    Menu *menu = state;
    const Action *found[ACTION_COUNT];
    int count = matching(menu, found);
    int wide = area.columns < MENU_WIDE ? area.columns : MENU_WIDE;
    Rect panel = {area.x + (area.columns - wide) / 2, area.y, wide, area.rows};
    grid_panel(grid, panel, "Menu");
    Rect inside = {panel.x + 2, panel.y + 1, panel.columns - 4, panel.rows - 2};
    int x = inside.x +
            grid_text(grid, inside.x, inside.y, inside.columns, STYLE_LABEL,
                      inside.columns >= 64 ? "Type a word to look for, or go with the arrows: " : "Type a word: ");
    grid_fill(grid, (Rect){x, inside.y, inside.x + inside.columns - x, 1}, ' ', STYLE_FIELD);
    grid_text(grid, x, inside.y, inside.x + inside.columns - x, STYLE_FIELD, menu->typed);
    int rows = inside.rows - 1;
    if (menu->focus >= count)
        menu->focus = count > 0 ? count - 1 : 0;
    if (menu->focus < menu->top)
        menu->top = menu->focus;
    if (menu->focus >= menu->top + rows)
        menu->top = menu->focus - rows + 1;
    grid_cursor(grid, x + utf8_cells(menu->typed), inside.y);
    if (count == 0)
        grid_text(grid, inside.x, inside.y + 1, inside.columns, STYLE_CAUTION, "Nothing here is called that.");
    for (int i = 0; i < rows && menu->top + i < count; i++) {
        const Action *action = found[menu->top + i];
        int y = inside.y + 1 + i;
        char keys[64];
        action_key_text(action, grid->ascii, false, keys, sizeof keys);
        grid_text(grid, inside.x, y, inside.columns - utf8_cells(keys) - 1, STYLE_PLAIN, action->menu);
        grid_text_right(grid, inside.x + inside.columns, y, 11, STYLE_KEY, keys);
        if (menu->top + i == menu->focus) {
            grid_restyle(grid, (Rect){inside.x, y, inside.columns, 1}, STYLE_CHOSEN);
            grid_glyph(grid, inside.x - 1, y, GLYPH_CHOSEN, STYLE_STRONG);
            if (menu->length == 0)
                grid_cursor(grid, inside.x, y);
        }
    }
}

static bool menu_key(App *app, void *state, Key key)
{
    (void)app;
    Menu *menu = state;
    if (key == PRESS_BACKSPACE && menu->length > 0) {
        while (menu->length > 0 && ((unsigned char)menu->typed[--menu->length] & 0xc0) == 0x80)
            continue;
        menu->typed[menu->length] = '\0';
    } else if (key_is_text(key)) {
        char bytes[4];
        size_t count = (size_t)utf8_encode(key, bytes);
        if (menu->length + count >= sizeof menu->typed)
            return true;
        memcpy(menu->typed + menu->length, bytes, count);
        menu->length += count;
        menu->typed[menu->length] = '\0';
    } else {
        return false;
    }
    menu->focus = menu->top = 0;
    return true;
}

static void menu_step(App *app, void *state, int by)
{
    (void)app;
    Menu *menu = state;
    const Action *found[ACTION_COUNT];
    int count = matching(menu, found);
    if (count > 0)
        menu->focus = (menu->focus + by + count) % count;
}

static void menu_choose(App *app, void *state)
{
    const Menu *menu = state;
    const Action *found[ACTION_COUNT];
    if (matching(menu, found) == 0)
        return;
    app->wanted = found[menu->focus]->id;
    layers_pop(&app->layers);
}

static const View menu_view = {
    .places = PLACE_MENU,
    .draw = menu_draw,
    .key = menu_key,
    .step = menu_step,
    .choose = menu_choose,
    .finish = free,
};

void menu_open(App *app)
{
    Menu *menu = calloc(1, sizeof *menu);
    if (menu == NULL)
        panic_no_memory();
    menu->places = layers_places(&app->layers, app);
    layers_push(&app->layers, &menu_view, menu);
}

typedef struct Help {
    int top;
} Help;

/* The signs on the wall that do not speak for themselves. */
static const struct Sign {
    Glyph glyph; /* GLYPH_COUNT: `word` stands for it */
    const char *word, *help;
} signs[SIGNS] = {
    {GLYPH_HERE, "", "the reference course, number 0"},
    {GLYPH_BARE, "", "bare: no board is left for this stretch; more boards at hand (6) fill it"},
    {GLYPH_BOX, "", "an opening that is too small to be drawn, or the cut for one in the middle of a plank"},
    {GLYPH_PLANK_TOP, "", "row by row: the lower side of the plank is cut away here"},
    {GLYPH_PLANK_BOTTOM, "", "row by row: the upper side of the plank is cut away here"},
    {GLYPH_JOINT, "", "row by row: two pieces meet"},
    {GLYPH_STUD, "", "the centre of a stud"},
    {GLYPH_COUNT, "!", "a strip that is narrower than the narrowest allowed"},
    {GLYPH_COUNT, "~", "between or behind two widths: a scribe, no straight taper"},
};

/* A line of the help: a heading, an action or a sign with its words, more of its words, or nothing between them. */
typedef struct HelpLine {
    const char *heading;
    const Action *action;
    const struct Sign *sign;
    int fold; /* which line of the words */
} HelpLine;

static const char *help_words(const HelpLine *line)
{
    return line->action != NULL ? line->action->help : line->sign != NULL ? line->sign->help : NULL;
}

/* Puts the line in, and as many more as its words take when they are folded. */
static int help_fold(HelpLine *lines, int count, HelpLine line, int wide)
{
    int begin;
    for (; line.fold < FOLDS_MOST && fold_line(help_words(&line), wide, line.fold, &begin) >= 0; line.fold++)
        lines[count++] = line;
    return count;
}

static int help_lines(HelpLine *lines, int wide)
{
    int count = 0;
    for (int group = 0; group < GROUP_COUNT; group++) {
        lines[count++] = (HelpLine){.heading = action_group_name((ActionGroup)group)};
        for (int id = 1; id < ACTION_COUNT; id++) {
            const Action *action = action_of((ActionId)id);
            if ((int)action->group == group)
                count = help_fold(lines, count, (HelpLine){.action = action}, wide);
        }
        lines[count++] = (HelpLine){0};
    }
    lines[count++] = (HelpLine){.heading = "Signs on the wall"};
    for (int i = 0; i < SIGNS; i++)
        count = help_fold(lines, count, (HelpLine){.sign = &signs[i]}, wide);
    return count;
}

static void help_line_draw(const HelpLine *line, Grid *grid, Rect row, int keys_wide)
{
    const char *words = help_words(line);
    if (line->heading != NULL)
        grid_text(grid, row.x, row.y, row.columns, STYLE_STRONG, line->heading);
    if (words == NULL)
        return;
    char keys[80] = "";
    if (line->action != NULL)
        action_key_text(line->action, grid->ascii, true, keys, sizeof keys);
    else
        snprintf(keys, sizeof keys, "%s", line->sign->word);
    if (line->fold == 0)
        grid_text(grid, row.x + 1, row.y, keys_wide - 2, STYLE_KEY, keys);
    if (line->fold == 0 && line->sign != NULL && line->sign->glyph != GLYPH_COUNT)
        grid_glyph(grid, row.x + 1, row.y, line->sign->glyph, STYLE_KEY);
    int begin = 0;
    int length = fold_line(words, row.columns - keys_wide, line->fold, &begin);
    grid_format(grid, row.x + keys_wide, row.y, row.columns - keys_wide, STYLE_PLAIN, "%.*s", length > 0 ? length : 0,
                words + begin);
}

static void help_draw(App *app, void *state, Grid *grid, Rect area)
{
    (void)app;
    Help *help = state;
    HelpLine lines[HELP_LINES_MOST];
    grid_panel(grid, area, "All keys and signs");
    Rect inside = {area.x + 2, area.y + 1, area.columns - 4, area.rows - 2};
    int keys_wide = inside.columns >= 70 ? 22 : inside.columns >= 50 ? 18 : 14;
    int count = help_lines(lines, inside.columns > keys_wide + 10 ? inside.columns - keys_wide : 10);
    int last = count > inside.rows ? count - inside.rows : 0;
    if (help->top > last)
        help->top = last;
    for (int i = 0; i < inside.rows && help->top + i < count; i++)
        help_line_draw(&lines[help->top + i], grid, (Rect){inside.x, inside.y + i, inside.columns, 1}, keys_wide);
    grid_cursor(grid, inside.x, inside.y);
    if (last > 0)
        grid_format(grid, area.x + area.columns - 18, area.y, 16, STYLE_DIM, " %d to %d of %d ", help->top + 1,
                    help->top + inside.rows < count ? help->top + inside.rows : count, count);
}

static bool help_key(App *app, void *state, Key key)
{
    Help *help = state;
    int page = app->grid->rows > 10 ? app->grid->rows - 10 : 1;
    if (key == PRESS_PAGE_DOWN || key == ' ')
        help->top += page;
    else if (key == PRESS_PAGE_UP)
        help->top -= page;
    else if (key == PRESS_HOME)
        help->top = 0;
    else if (key == PRESS_END)
        help->top = HELP_LINES_MOST;
    else if (key == 'j' || key == 'k')
        help->top += key == 'j' ? 1 : -1;
    else if (key == 'q' || key == '?' || key == PRESS_ENTER)
        layers_pop(&app->layers);
    else
        return false;
    if ((key == PRESS_PAGE_UP || key == 'k') && help->top < 0)
        help->top = 0;
    return true;
}

static void help_step(App *app, void *state, int by)
{
    (void)app;
    Help *help = state;
    if (by > 0 || help->top > 0)
        help->top += by;
}

static const View help_view = {
    .places = PLACE_HELP,
    .draw = help_draw,
    .key = help_key,
    .step = help_step,
    .finish = free,
};

void help_open(App *app)
{
    Help *help = calloc(1, sizeof *help);
    if (help == NULL)
        panic_no_memory();
    layers_push(&app->layers, &help_view, help);
}
