/*
 * What the shop does: rough boards and their milling, runs of trim, what the bill assumes. Where a field may be left
 * empty and the trade has a figure of its own, that figure stands beside it with its source.
 */
#include "screen/forms/forms.h"
#include "trade/assume.h"
#include "trade/say.h"

#include <string.h>

static void fill_length(Form *form, int field, bool given, Length value)
{
    if (given)
        field_set_length(&form->fields[field], value, form->units);
}

static OwnLength read_own(const Form *form, int field)
{
    return (OwnLength){.given = !form_is_empty(form, field), .length = form_value(form, field)};
}

static bool any_filled(const Form *form)
{
    for (int i = 0; i < form->count; i++)
        if (form->fields[i].kind != FIELD_CHOICE && !form_is_empty(form, i))
            return true;
    return false;
}

/* ---- milling ---- */

enum { MILL_EDGE, MILL_KERF, MILL_PLANE, MILL_KEEP };

static bool take_mill(App *app, const Form *form, Err *err)
{
    Mill mill = {.given = any_filled(form),
                 .edge = form_value(form, MILL_EDGE),
                 .kerf = read_own(form, MILL_KERF),
                 .plane = form_value(form, MILL_PLANE),
                 .keep = form_value(form, MILL_KEEP)};
    return forms_changed(app, form, edit_mill(app->document, &mill, err));
}

void forms_mill(App *app)
{
    const Wall *wall = app_wall(app);
    const Mill *mill = &wall->mill;
    Form *form = form_new("Milling of rough boards", wall->units, 0, take_mill);
    const char *kerf = say(form->arena, "that of the saw: %s", say_fine(form->arena, wall, wall->saw.kerf));
    fill_length(form, form_length(form, "To straighten an edge", "edge", "nothing"), mill->given, mill->edge);
    fill_length(form, form_length(form, "Kerf of a rip", "kerf", kerf), mill->kerf.given, mill->kerf.length);
    fill_length(form, form_length(form, "Planed off, both sides", "plane", "nothing"), mill->given, mill->plane);
    fill_length(form, form_length(form, "Trim strips kept, width", "keep", "none are kept"), mill->given, mill->keep);
    form_open(app, form);
}

/* ---- rough boards ---- */

enum { ROUGH_COUNT, ROUGH_LENGTH, ROUGH_WIDTH, ROUGH_THICKNESS, ROUGH_ENDS, ROUGH_TONE, ROUGH_LABEL, ROUGH_AVOID };

static const Rough *rough_of(const Wall *wall, uint32_t id)
{
    for (int i = 0; i < wall->rough.count; i++)
        if (wall->rough.at[i].id == id)
            return &wall->rough.at[i];
    return NULL;
}

static bool take_rough(App *app, const Form *form, Err *err)
{
    Arena *arena = arena_new();
    const char *label = form->fields[ROUGH_LABEL].text, *tone = form->fields[ROUGH_TONE].text;
    Rough rough = {.id = form->id,
                   .label = arena_text(arena, label, strlen(label)),
                   .width = form_value(form, ROUGH_WIDTH),
                   .thickness = form_value(form, ROUGH_THICKNESS),
                   .length = form_value(form, ROUGH_LENGTH),
                   .count = field_count(&form->fields[ROUGH_COUNT]),
                   .ends = form_value(form, ROUGH_ENDS),
                   .tone = arena_text(arena, tone, strlen(tone)),
                   .avoid = field_stretches(&form->fields[ROUGH_AVOID], arena, form->units)};
    bool done = form->id != 0 ? edit_rough(app->document, &rough, err)
                              : edit_add_rough(app->document, form->after, &rough, NULL, err);
    arena_free(arena);
    return forms_changed(app, form, done);
}

void forms_rough(App *app, uint32_t id, uint32_t after)
{
    const Wall *wall = app_wall(app);
    const Rough *rough = rough_of(wall, id);
    bool there = rough != NULL;
    Form *form = form_new(there ? "Rough boards alike" : "More rough boards, all alike", wall->units, there ? id : 0,
                          take_rough);
    form->after = after;
    int count = form_field(form, FIELD_COUNT, "How many", "count", NULL);
    field_set_count(&form->fields[count], there ? rough->count : 1);
    fill_length(form, form_length(form, "Length of each", "length", NULL), there, there ? rough->length : 0);
    fill_length(form, form_length(form, "Width, as it lies there", "width", NULL), there, there ? rough->width : 0);
    fill_length(form, form_length(form, "Thickness, not planed", "thickness", NULL), there,
                there ? rough->thickness : 0);
    fill_length(form, form_length(form, "Cut off at each end", "ends", "nothing"), there, there ? rough->ends : 0);
    int tone = form_field(form, FIELD_TEXT, "Tone", "tone", "does not matter");
    int label = form_field(form, FIELD_TEXT, "Label on its first end", "label", "none");
    int avoid = form_field(form, FIELD_STRETCHES, "Nails or rot, along it", "avoid",
                           form->units == UNITS_IN ? "all of it is good; else 31 to 34 1/2, ..."
                                                   : "all of it is good; else 790 to 880, ...");
    if (there) {
        field_set(&form->fields[tone], rough->tone, form->units);
        field_set(&form->fields[label], rough->label, form->units);
        field_set_stretches(&form->fields[avoid], &rough->avoid, form->units);
    }
    form->focus = there ? ROUGH_COUNT : ROUGH_LENGTH;
    form_open(app, form);
}

/* ---- runs of trim ---- */

enum { RUN_ALONG, RUN_WIDTH, RUN_THICKNESS, RUN_OPENING };

static const char *const alongs[] = {"floor", "ceiling", "inside", "outside", "openings", "edges"};

/* `id` is one more than the index of the run, `after` the index that a new one gets. */
static bool take_trim_run(App *app, const Form *form, Err *err)
{
    char opening[FIELD_BYTES] = "";
    const Field *field = &form->fields[RUN_OPENING];
    int name = field_name(field);
    if (name >= 0)
        memcpy(opening, field->choices[name], strlen(field->choices[name]) + 1);
    TrimRun run = {.along = (TrimAlong)field_choice(&form->fields[RUN_ALONG]),
                   .width = form_value(form, RUN_WIDTH),
                   .thickness_given = !form_is_empty(form, RUN_THICKNESS),
                   .thickness = form_value(form, RUN_THICKNESS),
                   .opening = opening};
    bool done = form->id != 0 ? edit_trim_run(app->document, (int)form->id - 1, &run, err)
                              : edit_add_trim_run(app->document, (int)form->after, &run, err);
    return forms_changed(app, form, done);
}

/* The names of all openings, each once, with what and where the first of that name is. */
static void add_openings(Form *form, const Wall *wall)
{
    int most = 0, count = 0;
    for (int i = 0; i < wall->faces.count; i++)
        most += wall->faces.at[i].openings.count;
    const char **names = arena_array(form->arena, const char *, most);
    const char **notes = arena_array(form->arena, const char *, most);
    for (int i = 0; i < wall->faces.count; i++)
        for (int k = 0; k < wall->faces.at[i].openings.count; k++) {
            const Opening *opening = &wall->faces.at[i].openings.at[k];
            bool known = false;
            for (int other = 0; other < count; other++)
                known = known || strcmp(names[other], opening->name) == 0;
            if (known)
                continue;
            names[count] = arena_text(form->arena, opening->name, strlen(opening->name));
            notes[count++] = say(form->arena, "%s on %s", opening_kind_word(opening->kind), wall->faces.at[i].name);
        }
    form_name(form, "Round one opening", "opening", names, notes, count,
              "none by name: openings are every window and door");
}

static void open_trim_run(App *app, const TrimRun *run, int index)
{
    static const char *const notes[] = {
        "along every floor",
        "along every ceiling",
        "one strip in each inside corner",
        "two strips at each outside corner; width to the long point",
        "a casing round windows and doors, or one opening",
        "at sides that meet no other face",
    };
    const Wall *wall = app_wall(app);
    Form *form = form_new(run != NULL ? "A run of trim" : "A new run of trim", wall->units,
                          run != NULL ? (uint32_t)index + 1 : 0, take_trim_run);
    form->after = (uint32_t)index;
    int along = form_choice(form, "Along", "along", alongs, 6, run != NULL ? (int)run->along : 0);
    form->fields[along].notes = notes;
    field_judge(&form->fields[along], form->units);
    fill_length(form, form_length(form, "Width", "width", NULL), run != NULL, run != NULL ? run->width : 0);
    const char *planks =
        say(form->arena, "that of the planks: %s", say_fine(form->arena, wall, wall->planks.thickness));
    fill_length(form, form_length(form, "Thickness", "thickness", planks), run != NULL && run->thickness_given,
                run != NULL ? run->thickness : 0);
    add_openings(form, wall);
    if (run != NULL)
        field_set(&form->fields[RUN_OPENING], run->opening, form->units);
    form_open(app, form);
}

void forms_trim_run(App *app, int index)
{
    open_trim_run(app, &app_wall(app)->trim.runs.at[index], index);
}

void forms_new_trim_run(App *app, int index)
{
    open_trim_run(app, NULL, index);
}

/* ---- the bill ---- */

enum {
    BILL_SPARE,
    BILL_FASTENERS,
    BILL_GLUE,
    BILL_BEAD,
    BILL_CARTRIDGE,
    BILL_COATS,
    BILL_COVERAGE,
    BILL_THINNING,
    BILL_SHEET_WIDTH,
    BILL_SHEET_LENGTH,
    BILL_NOMINAL
};

static const char *const glues[] = {"as assumed", "none", "pieces", "studs"};

static Number read_number(const Form *form, int field)
{
    return (Number){.given = !form_is_empty(form, field), .thousandths = field_thousandths(&form->fields[field])};
}

static bool take_bill(App *app, const Form *form, Err *err)
{
    int glue = field_choice(&form->fields[BILL_GLUE]);
    Bill bill = {.given = any_filled(form) || glue > 0,
                 .spare = read_number(form, BILL_SPARE),
                 .fasteners = read_number(form, BILL_FASTENERS),
                 .glue_given = glue > 0,
                 .glue = glue > 0 ? (Glue)(glue - 1) : GLUE_NONE,
                 .bead = read_own(form, BILL_BEAD),
                 .cartridge = read_number(form, BILL_CARTRIDGE),
                 .coats = read_number(form, BILL_COATS),
                 .coverage = read_number(form, BILL_COVERAGE),
                 .thinning = read_number(form, BILL_THINNING),
                 .sheet = {.given = !form_is_empty(form, BILL_SHEET_WIDTH) || !form_is_empty(form, BILL_SHEET_LENGTH),
                           .width = form_value(form, BILL_SHEET_WIDTH),
                           .length = form_value(form, BILL_SHEET_LENGTH)},
                 .nominal = read_own(form, BILL_NOMINAL)};
    Wall same = *app_wall(app); /* a bill that stands there and says nothing may stay */
    same.bill = bill;
    same.bill.given = true;
    bill.given = bill.given || wall_equal(&same, app_wall(app));
    return forms_changed(app, form, edit_bill(app->document, &bill, err));
}

/* What holds where the file says nothing: "10 (common practice)". */
static const char *assumed(Arena *arena, const Wall *wall, Assumed which, const char *const *words)
{
    Wall silent = *wall;
    silent.bill = (Bill){.given = false};
    Assumption assumption = assume(&silent, which);
    char value[LENGTH_TEXT_MAX];
    /* millionths are written as a plain decimal number where nanometres would be millimetres */
    length_write(assumption.value, assumption.is_length ? wall->units : UNITS_MM, value);
    const char *unit = !assumption.is_length ? "" : wall->units == UNITS_IN ? " in" : " mm";
    return say(arena, "%s%s (%s)", words != NULL ? words[assumption.value / ASSUME_ONE] : value, unit,
               assumption.source);
}

static void add_number(Form *form, FieldKind kind, const char *label, const char *path, const Wall *wall, Assumed which,
                       Number number)
{
    int field = form_field(form, kind, label, path, assumed(form->arena, wall, which, NULL));
    if (number.given)
        field_set_thousandths(&form->fields[field], number.thousandths);
}

static void add_own(Form *form, const char *label, const char *path, const Wall *wall, Assumed which, OwnLength own)
{
    int field = form_length(form, label, path, assumed(form->arena, wall, which, NULL));
    fill_length(form, field, own.given, own.length);
}

static void add_glue(Form *form, const Wall *wall)
{
    const Bill *bill = &wall->bill;
    const char **notes = arena_array(form->arena, const char *, 4);
    notes[0] = assumed(form->arena, wall, ASSUME_GLUE, &glues[1]);
    notes[1] = "no adhesive";
    notes[2] = "a bead behind each piece";
    notes[3] = "a bead along each stud";
    int field = form_choice(form, "Adhesive along", "glue", glues, 4, bill->glue_given ? (int)bill->glue + 1 : 0);
    form->fields[field].notes = notes;
    field_judge(&form->fields[field], form->units);
}

void forms_bill(App *app)
{
    const Wall *wall = app_wall(app);
    const Bill *bill = &wall->bill;
    bool inches = wall->units == UNITS_IN;
    Form *form = form_new("Bill: what it assumes", wall->units, 0, take_bill);
    add_number(form, FIELD_PERCENT, "Spare, percent", "spare", wall, ASSUME_SPARE, bill->spare);
    add_number(form, FIELD_NUMBER, "Fasteners at each stud", "fasteners", wall, ASSUME_FASTENERS, bill->fasteners);
    add_glue(form, wall);
    add_own(form, "Its bead, diameter", "bead", wall, ASSUME_BEAD, bill->bead);
    add_number(form, FIELD_NUMBER, inches ? "Its cartridge, fl oz" : "Its cartridge, ml", "cartridge", wall,
               ASSUME_CARTRIDGE, bill->cartridge);
    add_number(form, FIELD_NUMBER, "Finish, coats", "coats", wall, ASSUME_COATS, bill->coats);
    add_number(form, FIELD_NUMBER, inches ? "Finish, sq ft a gallon" : "Finish, m2 a litre", "coverage", wall,
               ASSUME_COVERAGE, bill->coverage);
    add_number(form, FIELD_PERCENT, "Finish, thinner, percent", "thinning", wall, ASSUME_THINNING, bill->thinning);
    add_own(form, "Backing sheet, width", "sheet.width", wall, ASSUME_SHEET_WIDTH,
            (OwnLength){bill->sheet.given, bill->sheet.width});
    add_own(form, "Backing sheet, length", "sheet.length", wall, ASSUME_SHEET_LENGTH,
            (OwnLength){bill->sheet.given, bill->sheet.length});
    add_own(form, "Board feet, thickness", "nominal", wall, ASSUME_NOMINAL, bill->nominal);
    form_open(app, form);
}
