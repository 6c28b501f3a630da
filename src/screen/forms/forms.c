#include "screen/forms/forms.h"

#include <stdio.h>
#include <string.h>

static Units units_of(App *app)
{
    return app_wall(app)->units;
}

bool forms_changed(App *app, const Form *form, bool done)
{
    if (!done)
        return false;
    if (document_version(app->document) == form->version)
        app_say(app, STYLE_DIM, "Nothing was changed.");
    else
        app_say(app, STYLE_ACCENT, "Done: %s.", document_undo_name(app->document));
    return true;
}

static void fill_length(Form *form, int field, Length value)
{
    field_set_length(&form->fields[field], value, form->units);
}

/* ---- start ---- */

static bool take_start(App *app, const Form *form, Err *err)
{
    return forms_changed(app, form, edit_start(app->document, form_value(form, 0), err));
}

void forms_start(App *app)
{
    Form *form =
        form_new("Start: lower edge of the reference course, above the level line", units_of(app), 0, take_start);
    fill_length(form, form_length(form, "Start", "start", NULL), app_wall(app)->start);
    form_open(app, form);
}

/* ---- planks ---- */

enum { PLANKS_WIDTH, PLANKS_THICKNESS, PLANKS_REVEAL, PLANKS_LAP, PLANKS_LEAST, PLANKS_LEAVE };

static bool take_planks(App *app, const Form *form, Err *err)
{
    Arena *arena = arena_new();
    Planks planks = app_wall(app)->planks; /* what has no field stays as it is */
    planks.widths = field_lengths(&form->fields[PLANKS_WIDTH], arena, form->units);
    planks.thickness = form_value(form, PLANKS_THICKNESS);
    planks.reveal = form_value(form, PLANKS_REVEAL);
    planks.lap = form_value(form, PLANKS_LAP);
    planks.least_given = !form_is_empty(form, PLANKS_LEAST);
    planks.least = form_value(form, PLANKS_LEAST);
    planks.leave = form_value(form, PLANKS_LEAVE);
    bool done = forms_changed(app, form, edit_planks(app->document, &planks, err));
    arena_free(arena);
    return done;
}

void forms_planks(App *app)
{
    const Planks *planks = &app_wall(app)->planks;
    Form *form = form_new("Planks", units_of(app), 0, take_planks);
    int width = form_field(form, FIELD_LENGTHS, "Width, ripped", "width", NULL);
    field_set_lengths(&form->fields[width], &planks->widths, form->units);
    fill_length(form, form_length(form, "Thickness", "thickness", NULL), planks->thickness);
    fill_length(form, form_length(form, "Reveal", "reveal", "none: courses touch"), planks->reveal);
    fill_length(form, form_length(form, "Lap", "lap", "none: square edges"), planks->lap);
    int least = form_length(form, "Narrowest strip", "least", "a third of the narrowest face");
    if (planks->least_given)
        fill_length(form, least, planks->least);
    fill_length(form, form_length(form, "Leave out courses lower than", "leave", "every course is hung"),
                planks->leave);
    form_open(app, form);
}

/* ---- joints and saw ---- */

static bool take_joints(App *app, const Form *form, Err *err)
{
    Joints joints = app_wall(app)->joints;
    joints.land = field_choice(&form->fields[0]) == 1 ? LAND_STUDS : LAND_ANYWHERE;
    joints.stagger = form_value(form, 1);
    joints.shortest = form_value(form, 2);
    return forms_changed(app, form, edit_joints(app->document, &joints, err));
}

void forms_joints(App *app)
{
    static const char *const lands[] = {"anywhere", "studs"};
    const Joints *joints = &app_wall(app)->joints;
    Form *form = form_new("Joints between pieces", units_of(app), 0, take_joints);
    form_choice(form, "They may land", "land", lands, 2, joints->land == LAND_STUDS ? 1 : 0);
    fill_length(form, form_length(form, "Joints above and below, apart", "stagger", "they may stand over each other"),
                joints->stagger);
    fill_length(form, form_length(form, "Shortest piece", "shortest", "any length"), joints->shortest);
    form_open(app, form);
}

static bool take_saw(App *app, const Form *form, Err *err)
{
    Saw saw = app_wall(app)->saw;
    saw.kerf = form_value(form, 0);
    saw.square = form_value(form, 1);
    return forms_changed(app, form, edit_saw(app->document, &saw, err));
}

void forms_saw(App *app)
{
    const Saw *saw = &app_wall(app)->saw;
    Form *form = form_new("Saw", units_of(app), 0, take_saw);
    fill_length(form, form_length(form, "Kerf, each cut", "kerf", "nothing"), saw->kerf);
    fill_length(form, form_length(form, "Squaring an end", "square", "nothing"), saw->square);
    form_open(app, form);
}

/* ---- fasteners ---- */

static bool take_fasteners(App *app, const Form *form, Err *err)
{
    Fasteners fasteners = app_wall(app)->fasteners;
    fasteners.length_given = !form_is_empty(form, 0);
    fasteners.length = form_value(form, 0);
    fasteners.drywall = form_value(form, 1);
    fasteners.given = fasteners.length_given || fasteners.drywall != 0;
    return forms_changed(app, form, edit_fasteners(app->document, &fasteners, err));
}

void forms_fasteners(App *app)
{
    const Fasteners *fasteners = &app_wall(app)->fasteners;
    Form *form = form_new("Fasteners", units_of(app), 0, take_fasteners);
    int length = form_length(form, "Length", "length", "not looked at");
    int drywall = form_length(form, "Drywall behind", "drywall", "none");
    if (fasteners->given) {
        if (fasteners->length_given)
            fill_length(form, length, fasteners->length);
        fill_length(form, drywall, fasteners->drywall);
    }
    form_open(app, form);
}

/* ---- trim ---- */

enum { TRIM_STOCK, TRIM_PIECES };

/* As in the file: one where no count is written. */
static int count_of(const Field *field)
{
    return field_empty(field) ? 1 : field_count(field);
}

static bool take_trim(App *app, const Form *form, Err *err)
{
    Arena *arena = arena_new();
    Trim trim = app_wall(app)->trim;
    trim.stock = (TrimStocks){0};
    trim.pieces = (TrimPieces){0};
    for (int line = 0; line < form->groups[TRIM_STOCK].lines; line++)
        if (!form_line_empty(form, TRIM_STOCK, line))
            *arena_push(arena, &trim.stock) =
                (TrimStock){.length = field_length(form_cell(form, TRIM_STOCK, line, 0), form->units),
                            .count = count_of(form_cell(form, TRIM_STOCK, line, 1))};
    for (int line = 0; line < form->groups[TRIM_PIECES].lines; line++) {
        if (form_line_empty(form, TRIM_PIECES, line))
            continue;
        const char *name = form_cell(form, TRIM_PIECES, line, 0)->text;
        *arena_push(arena, &trim.pieces) =
            (TrimPiece){.name = arena_text(arena, name, strlen(name)),
                        .length = field_length(form_cell(form, TRIM_PIECES, line, 1), form->units),
                        .count = count_of(form_cell(form, TRIM_PIECES, line, 2))};
    }
    trim.given = trim.stock.count + trim.pieces.count + trim.runs.count > 0;
    bool done = forms_changed(app, form, edit_trim(app->document, &trim, err));
    arena_free(arena);
    return done;
}

void forms_trim(App *app)
{
    static const char *const stock_labels[] = {"length", "count"};
    static const char *const stock_paths[] = {"length", "count"};
    static const FieldKind stock_kinds[] = {FIELD_LENGTH, FIELD_COUNT};
    static const char *const piece_labels[] = {"name", "length", "count"};
    static const char *const piece_paths[] = {"name", "length", "count"};
    static const FieldKind piece_kinds[] = {FIELD_TEXT, FIELD_LENGTH, FIELD_COUNT};
    const Trim *trim = &app_wall(app)->trim;
    Form *form = form_new("Trim", units_of(app), 0, take_trim);
    char length[LENGTH_TEXT_MAX], count[16];
    form_group(form, "Stock at hand", "stock", 2, stock_labels, stock_paths, stock_kinds);
    for (int i = 0; i < trim->stock.count; i++) {
        length_write(trim->stock.at[i].length, form->units, length);
        snprintf(count, sizeof count, "%d", trim->stock.at[i].count);
        form_line(form, TRIM_STOCK, (const char *[]){length, count});
    }
    form_line(form, TRIM_STOCK, NULL);
    form_group(form, "Pieces, as measured on the wall", "pieces", 3, piece_labels, piece_paths, piece_kinds);
    for (int i = 0; i < trim->pieces.count; i++) {
        length_write(trim->pieces.at[i].length, form->units, length);
        snprintf(count, sizeof count, "%d", trim->pieces.at[i].count);
        form_line(form, TRIM_PIECES, (const char *[]){trim->pieces.at[i].name, length, count});
    }
    form_line(form, TRIM_PIECES, NULL);
    form_open(app, form);
}

/* ---- wall ---- */

enum { WALL_TITLE, WALL_UNITS, WALL_ROUND };

static const char *const unit_words[] = {"inches", "millimetres"};

static bool take_wall(App *app, const Form *form, Err *err)
{
    Units units = field_choice(&form->fields[WALL_UNITS]) == 1 ? UNITS_MM : UNITS_IN;
    Length round = field_length(&form->fields[WALL_ROUND], units);
    if (form_is_empty(form, WALL_ROUND))
        round = wall_default_round(units);
    return forms_changed(app, form, edit_head(app->document, form->fields[WALL_TITLE].text, units, round, err));
}

void forms_wall(App *app)
{
    const Wall *wall = app_wall(app);
    Form *form = form_new("Wall", units_of(app), 0, take_wall);
    int title = form_field(form, FIELD_TEXT, "Title", "title", "without a title");
    field_set(&form->fields[title], wall->title, form->units);
    form->units_field = form_choice(form, "Units", "units", unit_words, 2, wall->units == UNITS_MM ? 1 : 0);
    int round = form_length(form, "Marked to", "round", "1/16 in or 1 mm");
    fill_length(form, round, wall->round);
    form_open(app, form);
}

/* ---- boards at hand ---- */

enum { STOCK_COUNT, STOCK_LENGTH, STOCK_WIDTH, STOCK_TONE, STOCK_LABEL, STOCK_AVOID };

/* The group of what the boards show. */
enum { STOCK_SHOW };

static Shows read_shows(const Form *form, Arena *arena)
{
    Shows shows = {0};
    for (int line = 0; line < form->groups[STOCK_SHOW].lines; line++) {
        if (form_line_empty(form, STOCK_SHOW, line))
            continue;
        const char *what = form_cell(form, STOCK_SHOW, line, 1)->text;
        *arena_push(arena, &shows) = (Show){.at = field_length(form_cell(form, STOCK_SHOW, line, 0), form->units),
                                            .what = arena_text(arena, what, strlen(what))};
    }
    return shows;
}

static void add_shows(Form *form, const Stock *stock)
{
    static const char *const words[] = {"at", "what"};
    static const FieldKind kinds[] = {FIELD_LENGTH, FIELD_TEXT};
    form_group(form, "Worth seeing: from the first end, and what", "show", 2, words, words, kinds);
    for (int i = 0; stock != NULL && i < stock->show.count; i++) {
        char at[LENGTH_TEXT_MAX];
        length_write(stock->show.at[i].at, form->units, at);
        form_line(form, STOCK_SHOW, (const char *[]){at, stock->show.at[i].what});
    }
    form_line(form, STOCK_SHOW, NULL);
}

static const Stock *stock_of(const Wall *wall, uint32_t id)
{
    for (int i = 0; i < wall->stock.count; i++)
        if (wall->stock.at[i].id == id)
            return &wall->stock.at[i];
    return NULL;
}

static bool take_stock(App *app, const Form *form, Err *err)
{
    Arena *arena = arena_new();
    char label[FIELD_BYTES], tone[FIELD_BYTES];
    memcpy(label, form->fields[STOCK_LABEL].text, sizeof label);
    memcpy(tone, form->fields[STOCK_TONE].text, sizeof tone);
    const Stock *before = stock_of(app_wall(app), form->id);
    Stock stock = before != NULL ? *before : (Stock){.id = 0};
    stock.label = label;
    stock.length = form_value(form, STOCK_LENGTH);
    stock.count = field_count(&form->fields[STOCK_COUNT]);
    stock.tone = tone;
    stock.width_given = !form_is_empty(form, STOCK_WIDTH);
    stock.width = form_value(form, STOCK_WIDTH);
    stock.avoid = field_stretches(&form->fields[STOCK_AVOID], arena, form->units);
    stock.show = read_shows(form, arena);
    bool done = form->id != 0 ? edit_stock(app->document, &stock, err)
                              : edit_add_stock(app->document, form->after, &stock, NULL, err);
    arena_free(arena);
    return forms_changed(app, form, done);
}

void forms_stock(App *app, uint32_t id, uint32_t after)
{
    const Stock *stock = stock_of(app_wall(app), id);
    Form *form = form_new(stock != NULL ? "Boards alike" : "More boards, all alike", units_of(app),
                          stock != NULL ? id : 0, take_stock);
    form->after = after;
    int count = form_field(form, FIELD_COUNT, "How many", "count", NULL);
    int length = form_length(form, "Length of each", "length", NULL);
    int width = form_length(form, "Width, if not ripped", "width", "as wide as the planks");
    int tone = form_field(form, FIELD_TEXT, "Tone", "tone", "does not matter");
    int label = form_field(form, FIELD_TEXT, "Label on its first end", "label", "none");
    int avoid = form_field(form, FIELD_STRETCHES, "Not to be used", "avoid",
                           form->units == UNITS_IN ? "all of it is good; else 31 to 34 1/2, ..."
                                                   : "all of it is good; else 790 to 880, ...");
    field_set_count(&form->fields[count], stock != NULL ? stock->count : 1);
    if (stock != NULL) {
        fill_length(form, length, stock->length);
        if (stock->width_given)
            fill_length(form, width, stock->width);
        field_set(&form->fields[tone], stock->tone, form->units);
        field_set(&form->fields[label], stock->label, form->units);
        field_set_stretches(&form->fields[avoid], &stock->avoid, form->units);
    }
    add_shows(form, stock);
    form->focus = stock != NULL ? 0 : length;
    form_open(app, form);
}
