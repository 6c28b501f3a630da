#include "screen/forms/forms.h"

#include "base/panic.h"
#include <stdio.h>
#include <string.h>

enum {
    OPENING_NAME,
    OPENING_KIND_FIELD,
    OPENING_LEFT,
    OPENING_WIDTH,
    OPENING_STANDS,
    OPENING_BOTTOM,
    OPENING_UPWARD,
    OPENING_HEIGHT,
    OPENING_CLEAR,
    OPENING_PLATE_WIDTH,
    OPENING_PLATE_HEIGHT,
    OPENING_FRONT,
    OPENING_PROUD,
    OPENING_AWAY
};

static const char *const kinds[] = {"box", "window", "door", "fireplace", "stove", "pipe", "vent", "other"};
enum { STANDS_AT_HEIGHT, STANDS_ON_FLOOR, STANDS_ABOVE_FLOOR };
static const char *const stands[] = {"at a height", "on the floor", "above the floor"};
static const char *const upward[] = {"height", "upper edge"};

/* What is around the opening, and how far it stands out. */
static void read_around(const Form *form, Opening *opening)
{
    opening->clear = form_value(form, OPENING_CLEAR);
    opening->plate.given = !form_is_empty(form, OPENING_PLATE_WIDTH) || !form_is_empty(form, OPENING_PLATE_HEIGHT);
    opening->plate.width = form_value(form, OPENING_PLATE_WIDTH);
    opening->plate.height = form_value(form, OPENING_PLATE_HEIGHT);
    opening->front_given = !form_is_empty(form, OPENING_FRONT);
    opening->front = form_value(form, OPENING_FRONT);
    opening->proud_given = !form_is_empty(form, OPENING_PROUD);
    opening->proud = form_value(form, OPENING_PROUD);
    opening->away_given = !form_is_empty(form, OPENING_AWAY);
    opening->away = form_value(form, OPENING_AWAY);
}

static bool take_opening(App *app, const Form *form, Err *err)
{
    const int foot = field_choice(&form->fields[OPENING_STANDS]);
    if (foot != STANDS_ON_FLOOR && form_is_empty(form, OPENING_BOTTOM)) {
        err_set(err, ERR_VALUE,
                foot == STANDS_AT_HEIGHT
                    ? "its lower edge is missing; give the height above the level line, or let it stand on the floor"
                    : "its lower edge is missing; give the height above the floor, or let it stand on the floor");
        return err_at(err, "bottom", 0, 0);
    }
    char name[FIELD_BYTES];
    memcpy(name, form->fields[OPENING_NAME].text, sizeof name);
    const Face *face = &app_wall(app)->faces.at[app_face_index(app)];
    int index = form->id != 0 ? wall_opening_index(face, form->id) : -1;
    Opening opening = index >= 0 ? face->openings.at[index] : (Opening){.id = 0}; /* what has no field stays as it is */
    opening.name = name;
    opening.left = form_value(form, OPENING_LEFT);
    opening.width = form_value(form, OPENING_WIDTH);
    opening.to_floor = foot == STANDS_ON_FLOOR;
    opening.above_given = foot == STANDS_ABOVE_FLOOR;
    opening.above = opening.above_given ? form_value(form, OPENING_BOTTOM) : 0;
    opening.bottom = foot == STANDS_AT_HEIGHT ? form_value(form, OPENING_BOTTOM) : 0;
    opening.top_given = field_choice(&form->fields[OPENING_UPWARD]) == 1;
    opening.top = opening.top_given ? form_value(form, OPENING_HEIGHT) : 0;
    opening.height = opening.top_given ? 0 : form_value(form, OPENING_HEIGHT);
    read_around(form, &opening);
    opening_kind_from(form->fields[OPENING_KIND_FIELD].text, &opening.kind);
    uint32_t id = form->id;
    bool done = id != 0 ? edit_opening(app->document, &opening, err)
                        : edit_add_opening(app->document, app->focus.face, &opening, &id, err);
    if (done) {
        app->focus.opening = id;
        app->focus.sight.away = false;
    }
    return forms_changed(app, form, done);
}

/* A name that no opening of the face has yet. */
static void free_name(const Face *face, char *out, size_t size)
{
    BUG_UNLESS(face->openings.count == 0 || face->openings.at != NULL);
    for (int number = face->openings.count + 1;; number++) {
        snprintf(out, size, "opening %d", number);
        bool taken = false;
        for (int i = 0; i < face->openings.count; i++)
            taken = taken || strcmp(face->openings.at[i].name, out) == 0;
        if (!taken)
            return;
    }
}

static void add_fields(Form *form, const Opening *opening)
{
    form_field(form, FIELD_TEXT, "Name", "name", NULL);
    form_choice(form, "Kind", "kind", kinds, sizeof kinds / sizeof *kinds, opening != NULL ? (int)opening->kind : 0);
    form_length(form, "From the left end", "left", NULL);
    form_length(form, "Width", "width", NULL);
    form_choice(form, "Its lower edge", "stands", stands, 3,
                opening == NULL        ? STANDS_AT_HEIGHT
                : opening->to_floor    ? STANDS_ON_FLOOR
                : opening->above_given ? STANDS_ABOVE_FLOOR
                                       : STANDS_AT_HEIGHT);
    const bool above = opening != NULL && opening->above_given;
    form_length(form, "Lower edge, above it", above ? "above-floor" : "bottom", "on the floor, or give its height");
    form_choice(form, "What was measured", "upward", upward, 2, opening != NULL && opening->top_given ? 1 : 0);
    form_length(form, "Height, or upper edge", opening != NULL && opening->top_given ? "top" : "height", NULL);
    form_length(form, "Gap left around it", "clear", "nothing");
    form_length(form, "Plate, width", "plate.width", "no plate");
    form_length(form, "Plate, height", "plate.height", "no plate");
    form_length(form, "Front of the box", "front", "flush with the bare wall");
    form_length(form, "Its casing stands out", "proud", "not measured: from the bare wall");
    form_length(form, "Stove: wall to its hot side", "away", "only for a stove: to its nearest hot side");
}

static void fill(Form *form, int field, bool given, Length value)
{
    if (given)
        field_set_length(&form->fields[field], value, form->units);
}

void forms_opening(App *app, uint32_t id)
{
    const Wall *wall = app_wall(app);
    const Face *face = &wall->faces.at[app_face_index(app)];
    int index = id != 0 ? wall_opening_index(face, id) : -1;
    const Opening *opening = index >= 0 ? &face->openings.at[index] : NULL;
    char title[300];
    snprintf(title, sizeof title, opening != NULL ? "Opening on %s" : "A new opening on %s", face->name);
    Form *form = form_new(title, wall->units, opening != NULL ? id : 0, take_opening);
    add_fields(form, opening);
    if (opening == NULL) {
        char name[40];
        free_name(face, name, sizeof name);
        field_set(&form->fields[OPENING_NAME], name, form->units);
        form_open(app, form);
        return;
    }
    field_set(&form->fields[OPENING_NAME], opening->name, form->units);
    fill(form, OPENING_LEFT, true, opening->left);
    fill(form, OPENING_WIDTH, true, opening->width);
    fill(form, OPENING_BOTTOM, !opening->to_floor, opening->above_given ? opening->above : opening->bottom);
    fill(form, OPENING_HEIGHT, true, opening->top_given ? opening->top : opening->height);
    fill(form, OPENING_CLEAR, true, opening->clear);
    fill(form, OPENING_PLATE_WIDTH, opening->plate.given, opening->plate.width);
    fill(form, OPENING_PLATE_HEIGHT, opening->plate.given, opening->plate.height);
    fill(form, OPENING_FRONT, opening->front_given, opening->front);
    fill(form, OPENING_PROUD, opening->proud_given, opening->proud);
    fill(form, OPENING_AWAY, opening->away_given, opening->away);
    form->focus = OPENING_LEFT;
    form_open(app, form);
}
