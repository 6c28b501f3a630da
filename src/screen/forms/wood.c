/*
 * What the planks are of, and the air that they live in. All of it or nothing: a form whose fields are all empty says
 * that the wood is not known.
 */
#include "screen/forms/forms.h"
#include "trade/say.h"
#include "wall/species.h"

#include <string.h>

enum {
    WOOD_SPECIES,
    WOOD_GRAIN,
    WOOD_HUNG_TEMPERATURE,
    WOOD_HUNG_HUMIDITY,
    WOOD_DRY_TEMPERATURE,
    WOOD_DRY_HUMIDITY,
    WOOD_DAMP_TEMPERATURE,
    WOOD_DAMP_HUMIDITY,
    WOOD_FIELDS
};

static const char temperature_wanted[] = "like 68 F or 20 C", humidity_wanted[] = "relative, in percent, like 45";

/* ---- taking it ---- */

static bool is_blank(const Form *form)
{
    for (int i = 0; i < WOOD_FIELDS; i++)
        if (i != WOOD_GRAIN && !form_is_empty(form, i))
            return false;
    return true;
}

static bool refuse_missing(const Form *form, Err *err)
{
    for (int i = 0; i < WOOD_FIELDS; i++)
        if (form_is_empty(form, i)) {
            err_set(err, ERR_VALUE, "this is missing; write %s, or empty all fields to leave the wood open",
                    i == WOOD_SPECIES                           ? "the name of a species"
                    : form->fields[i].kind == FIELD_TEMPERATURE ? "it like 68 F or 20 C"
                                                                : "it in percent, like 45");
            return err_at(err, form->fields[i].path, 0, 0);
        }
    return true;
}

static Air read_air(const Form *form, int temperature)
{
    Air air = field_temperature(&form->fields[temperature]);
    air.humidity = field_thousandths(&form->fields[temperature + 1]);
    return air;
}

static bool take_wood(App *app, const Form *form, Err *err)
{
    char species[FIELD_BYTES];
    Wood wood = {.given = !is_blank(form), .species = species};
    memcpy(species, form->fields[WOOD_SPECIES].text, sizeof species);
    if (wood.given) {
        if (!refuse_missing(form, err))
            return false;
        wood.grain = field_choice(&form->fields[WOOD_GRAIN]) == 1 ? GRAIN_QUARTER : GRAIN_FLAT;
        wood.hung = read_air(form, WOOD_HUNG_TEMPERATURE);
        wood.dry = read_air(form, WOOD_DRY_TEMPERATURE);
        wood.damp = read_air(form, WOOD_DAMP_TEMPERATURE);
    }
    return forms_changed(app, form, edit_wood(app->document, &wood, err));
}

/* ---- opening it ---- */

static void add_species(Form *form)
{
    int count = species_count();
    const char **names = arena_array(form->arena, const char *, count);
    const char **notes = arena_array(form->arena, const char *, count);
    for (int i = 0; i < count; i++) {
        const Species *species = species_at(i);
        names[i] = species->name;
        notes[i] = say(form->arena, "each %% of moisture: 0.%03d %% flat, 0.%03d %% quarter", species->tangential,
                       species->radial);
    }
    char key[32];
    action_key_text(action_of(ACTION_NAME_NEXT), true, false, key, sizeof key);
    form_name(form, "Species", "species", names, notes, count,
              say(form->arena, "not known: no seasons; %s goes through the names", key));
}

static void add_air(Form *form, const char *const labels[2], const char *const paths[2], const Air *air)
{
    int temperature = form_field(form, FIELD_TEMPERATURE, labels[0], paths[0], temperature_wanted);
    int humidity = form_field(form, FIELD_PERCENT, labels[1], paths[1], humidity_wanted);
    if (air != NULL) {
        field_set_temperature(&form->fields[temperature], air);
        field_set_thousandths(&form->fields[humidity], air->humidity);
    }
}

void forms_wood(App *app)
{
    static const char *const grains[] = {"flat", "quarter"};
    static const char *const notes[] = {"growth rings lie along the face", "growth rings stand square to the face"};
    const Wood *wood = &app_wall(app)->wood;
    Form *form = form_new("Wood, moisture and seasons", app_wall(app)->units, 0, take_wood);
    add_species(form);
    int grain = form_choice(form, "Grain", "grain", grains, 2, wood->given && wood->grain == GRAIN_QUARTER ? 1 : 0);
    form->fields[grain].notes = notes;
    field_judge(&form->fields[grain], form->units);
    add_air(form, (const char *[]){"When hung: temperature", "When hung: humidity"},
            (const char *[]){"hung.temperature", "hung.humidity"}, wood->given ? &wood->hung : NULL);
    add_air(form, (const char *[]){"At its driest: temperature", "At its driest: humidity"},
            (const char *[]){"dry.temperature", "dry.humidity"}, wood->given ? &wood->dry : NULL);
    add_air(form, (const char *[]){"At its dampest: temperature", "At its dampest: humidity"},
            (const char *[]){"damp.temperature", "damp.humidity"}, wood->given ? &wood->damp : NULL);
    if (wood->given)
        field_set(&form->fields[WOOD_SPECIES], wood->species, form->units);
    form_open(app, form);
}
