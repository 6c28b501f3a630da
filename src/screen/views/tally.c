/*
 *     Board 151   length          [ 52          ]  4' 4" = 1320.8 mm
 *                 tone            [ grey        ]
 *                 not to be used  [             ]
 *     covered, percent   there                 large
 *     # # ###            ...                   what is there, what is needed, what is missing
 *     last               the boards put down last
 */
#include "screen/views/tally.h"

#include "base/panic.h"
#include "job/words.h"
#include "screen/forms/field.h"
#include "screen/views/facts.h"
#include "screen/views/large.h"
#include "trade/say.h"
#include "trade/tally.h"

#include <stdlib.h>
#include <string.h>

enum { BOARD_LENGTH, BOARD_TONE, BOARD_AVOID, BOARD_FIELDS };
enum { LABEL_CELLS = 16, FIELD_CELLS = 24, FACT_CELLS = 10, LAST_SHOWN = 6 };

typedef struct Pile {
    Field fields[BOARD_FIELDS];
    int focus;
    int top; /* first line of the facts in sight */
} Pile;

static void empty_field(Pile *pile, int index, Units units)
{
    field_set(&pile->fields[index], "", units);
}

/* ---- boards ---- */

/* Whether one more of the last line's boards is just this one: the numbers of all others stay. */
static bool like_last(const Stocks *stock, const Stock *board)
{
    if (stock->count == 0)
        return false;
    const Stock *last = &stock->at[stock->count - 1];
    return last->length == board->length && strcmp(last->tone, board->tone) == 0 && last->label[0] == '\0' &&
           !last->width_given && last->avoid.count == 0 && board->avoid.count == 0;
}

static bool put_down(App *app, const Stock *board, Err *err)
{
    const Stocks *stock = &app_wall(app)->stock;
    if (!like_last(stock, board))
        return edit_add_stock(app->document, 0, board, NULL, err);
    Stock more = stock->at[stock->count - 1];
    more.count++;
    return edit_stock(app->document, &more, err);
}

/* The first field that is not good, -1 where all are. */
static int bad_field(Pile *pile, Units units)
{
    for (int i = 0; i < BOARD_FIELDS; i++) {
        field_judge(&pile->fields[i], units);
        if (pile->fields[i].bad || (i == BOARD_LENGTH && field_empty(&pile->fields[i])))
            return i;
    }
    return -1;
}

/* ---- what is seen ---- */

/* Returns the rows they took. */
static int fields_draw(App *app, const Pile *pile, Grid *grid, Rect area)
{
    grid_format(grid, area.x, area.y, area.columns, STYLE_STRONG, "Board %d", wall_board_count(app_wall(app)) + 1);
    grid_text(grid, area.x + LABEL_CELLS, area.y, area.columns - LABEL_CELLS, STYLE_DIM,
              "type its length, Enter, the next length, Enter");
    int wide = area.columns - LABEL_CELLS < FIELD_CELLS ? area.columns - LABEL_CELLS : FIELD_CELLS;
    for (int i = 0; i < BOARD_FIELDS; i++) {
        const Field *field = &pile->fields[i];
        int y = area.y + 1 + i, x = area.x + LABEL_CELLS;
        grid_text(grid, area.x, y, LABEL_CELLS - 1, STYLE_LABEL, field->label);
        field_draw(field, grid, x, y, wide, false);
        grid_text(grid, x + wide + 1, y, area.columns - LABEL_CELLS - wide - 1,
                  field->bad && !field_empty(field) ? STYLE_FAULT : STYLE_DIM, field->says);
    }
    return 1 + BOARD_FIELDS;
}

static void add_tones(Arena *arena, Facts *facts, const Wall *wall, const Tally *tally)
{
    for (int i = 0; i < tally->tone_count && tally->tone_count > 1; i++)
        facts_add(arena, facts, i == 0 ? "tones" : "", STYLE_PLAIN,
                  words(arena, "%s: %s, %s",
                        tally->tones[i].tone[0] != '\0' ? words_name(arena, tally->tones[i].tone) : "none",
                        say_count(arena, tally->tones[i].boards, "board", "boards"),
                        say_length(arena, wall, tally->tones[i].running)));
}

/* The lines put down last, the last one first. */
static void add_last(Arena *arena, Facts *facts, const Wall *wall)
{
    for (int i = wall->stock.count - 1, shown = 0; i >= 0 && shown < LAST_SHOWN; i--, shown++) {
        const Stock *stock = &wall->stock.at[i];
        int first = wall_stock_first(wall, i);
        const char *numbers = stock->count == 1 ? words(arena, "board %d", first)
                                                : words(arena, "boards %d to %d", first, first + stock->count - 1);
        const char *avoid =
            stock->avoid.count == 0
                ? ""
                : words(arena, ", %s not to be used", say_count(arena, stock->avoid.count, "stretch", "stretches"));
        facts_add(arena, facts, shown == 0 ? "last" : "", STYLE_PLAIN,
                  words(arena, "%s: %s%s%s%s", numbers, words_length_unit(arena, wall, stock->length),
                        stock->tone[0] != '\0' ? ", " : "", words_name(arena, stock->tone), avoid));
    }
}

static void counts_draw(Arena *arena, Pile *pile, const Layout *layout, Grid *grid, Rect area)
{
    const Wall *wall = layout->wall;
    Tally tally = tally_of(arena, layout);
    int rows = area.rows > 6 ? 1 + large_rows(grid) : 0;
    if (rows > 0) {
        grid_text(grid, area.x, area.y, area.columns, STYLE_LABEL, "percent of the wall covered, and boards there");
        int cells = large_draw(grid, area.x, area.y + 1, tally.share == 10000 ? STYLE_GOOD : STYLE_FIGURE,
                               words(arena, "%d", tally.share / 100));
        large_draw(grid, area.x + cells + 6, area.y + 1, STYLE_PLAIN, words(arena, "%d", tally.boards));
    }
    Facts facts = {.label_cells = FACT_CELLS};
    facts_add(arena, &facts, "pile", tally.missing > 0 ? STYLE_CAUTION : STYLE_GOOD, words_capital(arena, tally.text));
    if (tally.too_wide > 0)
        facts_add(arena, &facts, "too wide", STYLE_FAULT,
                  words(arena, "%s of course are wider than any board", say_length(arena, wall, tally.too_wide)));
    if (tally.hung > 0)
        facts_add(arena, &facts, "hung", STYLE_PLAIN, say_length(arena, wall, tally.hung));
    add_last(arena, &facts, wall);
    add_tones(arena, &facts, wall, &tally);
    facts_draw(grid, (Rect){area.x, area.y + rows, area.columns, area.rows - rows}, &facts, &pile->top);
}

static void tally_draw(App *app, void *state, Grid *grid, Rect area)
{
    Pile *pile = state;
    grid_fill(grid, area, ' ', STYLE_PLAIN);
    Rect inside = {area.x + 1, area.y, area.columns - 2, area.rows};
    int rows = fields_draw(app, pile, grid, inside);
    Rect below = {inside.x, inside.y + rows, inside.columns, inside.rows - rows};
    if (app_work(app)->layout == NULL) {
        grid_text(grid, below.x, below.y, below.columns, STYLE_FAULT, app->work.err.text);
    } else if (below.rows > 0 && below.columns > FACT_CELLS) {
        Arena *arena = arena_new();
        counts_draw(arena, pile, app_work(app)->layout, grid, below);
        arena_free(arena);
    }
    int wide = inside.columns - LABEL_CELLS < FIELD_CELLS ? inside.columns - LABEL_CELLS : FIELD_CELLS;
    field_draw(&pile->fields[pile->focus], grid, inside.x + LABEL_CELLS, inside.y + 1 + pile->focus, wide, true);
}

/* ---- keys ---- */

static bool tally_key(App *app, void *state, Key key)
{
    Pile *pile = state;
    if (key == PRESS_PAGE_DOWN || key == PRESS_PAGE_UP) {
        pile->top += key == PRESS_PAGE_DOWN ? 3 : pile->top > 3 ? -3 : -pile->top;
        return true;
    }
    if (key == PRESS_UP || key == (PRESS_SHIFT | PRESS_TAB)) {
        pile->focus = (pile->focus + BOARD_FIELDS - 1) % BOARD_FIELDS;
        return true;
    }
    return field_key(&pile->fields[pile->focus], key, app_wall(app)->units);
}

static void tally_paste(App *app, void *state, const char *text)
{
    Pile *pile = state;
    if (!field_paste(&pile->fields[pile->focus], text, app_wall(app)->units))
        app_say(app, STYLE_CAUTION, "What was pasted does not fit whole.");
}

/* A length half typed is no board: Esc drops it, and only then the view. */
static bool tally_back(App *app, void *state)
{
    Pile *pile = state;
    if (field_empty(&pile->fields[BOARD_LENGTH]) && field_empty(&pile->fields[BOARD_AVOID]))
        return true;
    empty_field(pile, BOARD_LENGTH, app_wall(app)->units);
    empty_field(pile, BOARD_AVOID, app_wall(app)->units);
    pile->focus = BOARD_LENGTH;
    app_say(app, STYLE_DIM, "What was typed is dropped; Esc again goes back.");
    return false;
}

static const View tally_view = {
    .places = PLACE_TALLY,
    .draw = tally_draw,
    .key = tally_key,
    .paste = tally_paste,
    .back = tally_back,
    .finish = free,
};

void tally_open(App *app)
{
    Pile *pile = calloc(1, sizeof *pile);
    if (pile == NULL)
        panic_no_memory();
    pile->fields[BOARD_LENGTH] = (Field){.kind = FIELD_LENGTH, .label = "length", .path = "", .empty = ""};
    pile->fields[BOARD_TONE] = (Field){.kind = FIELD_TEXT, .label = "tone", .path = "", .empty = "none"};
    bool inches = app_wall(app)->units == UNITS_IN;
    pile->fields[BOARD_AVOID] = (Field){.kind = FIELD_STRETCHES,
                                        .label = "not to be used",
                                        .path = "",
                                        .empty = inches ? "else 31 to 34 1/2, ..." : "else 790 to 880, ..."};
    for (int i = 0; i < BOARD_FIELDS; i++)
        empty_field(pile, i, app_wall(app)->units);
    layers_push(&app->layers, &tally_view, pile);
}

void tally_put_down(App *app)
{
    Pile *pile = layers_state(&app->layers, &tally_view);
    Units units = app_wall(app)->units;
    int bad = bad_field(pile, units);
    if (bad >= 0) {
        pile->focus = bad;
        app_say(app, STYLE_CAUTION, "%s",
                pile->fields[bad].bad && !field_empty(&pile->fields[bad]) ? pile->fields[bad].says
                                                                          : "Type the board's length first.");
        return;
    }
    Arena *arena = arena_new();
    char label[] = "";
    Stock board = {.label = label,
                   .length = field_length(&pile->fields[BOARD_LENGTH], units),
                   .count = 1,
                   .tone = pile->fields[BOARD_TONE].text,
                   .avoid = field_stretches(&pile->fields[BOARD_AVOID], arena, units)};
    Err err;
    if (!put_down(app, &board, &err)) {
        app_tell(app, &err);
    } else {
        app_say(app, STYLE_GOOD, "Board %d: %s%s%s.", wall_board_count(app_wall(app)),
                words_length_unit(arena, app_wall(app), board.length), board.tone[0] != '\0' ? ", " : "",
                words_name(arena, board.tone));
        empty_field(pile, BOARD_LENGTH, units);
        empty_field(pile, BOARD_AVOID, units);
        pile->focus = BOARD_LENGTH;
    }
    arena_free(arena);
}

void tally_next_field(App *app)
{
    Pile *pile = layers_state(&app->layers, &tally_view);
    pile->focus = (pile->focus + 1) % BOARD_FIELDS;
}
