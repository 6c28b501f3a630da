#include "screen/forms/form.h"

#include "base/panic.h"
#include "screen/forms/question.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/*
 * Fields of a group stand together in `fields`, line by line; its last line is blank. A form is drawn by form_draw.c.
 */

Form *form_new(const char *title, Units units, uint32_t id, FormTake *take)
{
    Form *form = calloc(1, sizeof *form);
    if (form == NULL)
        panic_no_memory();
    form->arena = arena_new();
    snprintf(form->title, sizeof form->title, "%s", title);
    form->units = units;
    form->id = id;
    form->take = take;
    form->units_field = -1;
    form->came = true;
    return form;
}

static Field *insert(Form *form, int index, const Field *field)
{
    if (form->count == form->room) {
        form->room = form->room * 2 + 16;
        form->fields = realloc(form->fields, (size_t)form->room * sizeof *form->fields);
        if (form->fields == NULL)
            panic_no_memory();
    }
    memmove(&form->fields[index + 1], &form->fields[index], (size_t)(form->count - index) * sizeof *form->fields);
    form->fields[index] = *field;
    form->count++;
    return &form->fields[index];
}

int form_field(Form *form, FieldKind kind, const char *label, const char *path, const char *empty)
{
    Field field = {.kind = kind, .label = label, .path = path, .empty = empty, .needed = empty == NULL, .group = -1};
    field_judge(&field, form->units);
    insert(form, form->count, &field);
    return form->count - 1;
}

void form_usual(Form *form, int field, const char *inches, const char *millimeters)
{
    Field *of = &form->fields[field];
    of->usual[UNITS_IN] = inches;
    of->usual[UNITS_MM] = millimeters;
    field_set(of, of->usual[form->units], form->units);
}

int form_length(Form *form, const char *label, const char *path, const char *empty)
{
    return form_field(form, FIELD_LENGTH, label, path, empty);
}

int form_choice(Form *form, const char *label, const char *path, const char *const *choices, int count, int choice)
{
    int index = form_field(form, FIELD_CHOICE, label, path, "");
    form->fields[index].choices = choices;
    form->fields[index].choice_count = count;
    field_set_choice(&form->fields[index], choice);
    return index;
}

int form_name(Form *form, const char *label, const char *path, const char *const *names, const char *const *notes,
              int count, const char *empty)
{
    int index = form_field(form, FIELD_NAME, label, path, empty);
    form->fields[index].choices = names;
    form->fields[index].notes = notes;
    form->fields[index].choice_count = count;
    return index;
}

int form_group(Form *form, const char *label, const char *path, int columns, const char *const *labels,
               const char *const *paths, const FieldKind *kinds)
{
    BUG_UNLESS(form->group_count < FORM_GROUPS_MOST && columns <= FORM_COLUMNS_MOST);
    FormGroup *group = &form->groups[form->group_count];
    *group = (FormGroup){.label = label, .path = path, .columns = columns};
    for (int i = 0; i < columns; i++)
        group->blank[i] = (Field){.kind = kinds[i],
                                  .label = labels[i],
                                  .path = paths[i],
                                  .empty = "",
                                  .group = form->group_count,
                                  .column = i};
    return form->group_count++;
}

static int add_line(Form *form, int group, int index, const char *const *texts)
{
    FormGroup *lines = &form->groups[group];
    for (int i = 0; i < lines->columns; i++) {
        Field *field = insert(form, index + i, &lines->blank[i]);
        field->line = lines->lines;
        field_set(field, texts == NULL ? "" : texts[i], form->units);
    }
    lines->lines++;
    return index + lines->columns;
}

void form_line(Form *form, int group, const char *const *texts)
{
    add_line(form, group, form->count, texts);
}

static int cell_index(const Form *form, int group, int line, int column)
{
    for (int i = 0; i < form->count; i++) {
        const Field *field = &form->fields[i];
        if (field->group == group && field->line == line && field->column == column)
            return i;
    }
    return -1;
}

const Field *form_cell(const Form *form, int group, int line, int column)
{
    int index = cell_index(form, group, line, column);
    return index < 0 ? NULL : &form->fields[index];
}

bool form_line_empty(const Form *form, int group, int line)
{
    for (int column = 0; column < form->groups[group].columns; column++)
        if (!field_empty(form_cell(form, group, line, column)))
            return false;
    return true;
}

Length form_value(const Form *form, int field)
{
    return field_length(&form->fields[field], form->units);
}

bool form_is_empty(const Form *form, int field)
{
    return field_empty(&form->fields[field]);
}

/* Bare numbers mean something else now. */
static void change_units(Form *form)
{
    const Units before = form->units;
    form->units = field_choice(&form->fields[form->units_field]) == 1 ? UNITS_MM : UNITS_IN;
    for (int i = 0; i < form->count; i++)
        if (form->fields[i].usual[before] != NULL && strcmp(form->fields[i].text, form->fields[i].usual[before]) == 0)
            field_set(&form->fields[i], form->fields[i].usual[form->units], form->units);
    for (int i = 0; i < form->count; i++)
        field_judge(&form->fields[i], form->units);
}

/* Something was typed: the group's last line may no longer be blank. */
static void note_change(Form *form)
{
    form->changed = true;
    form->refused[0] = '\0';
    if (form->focus >= form->count)
        return;
    if (form->focus == form->units_field)
        change_units(form);
    int group = form->fields[form->focus].group;
    if (group < 0)
        return;
    int last = form->groups[group].lines - 1;
    if (!form_line_empty(form, group, last))
        add_line(form, group, cell_index(form, group, last, form->groups[group].columns - 1) + 1, NULL);
}

/* In a line that has something in it nothing may be missing. */
static void judge_lines(Form *form)
{
    for (int i = 0; i < form->count; i++) {
        Field *field = &form->fields[i];
        if (field->group >= 0 && field->kind == FIELD_LENGTH && field_empty(field) &&
            !form_line_empty(form, field->group, field->line)) {
            field->bad = true;
            snprintf(field->says, sizeof field->says, "the other half is missing; empty the whole line to drop it");
        }
    }
}

/* "floor[2].at" for a cell of a group, lines without anything in them not counted; else the field's own path. */
static void field_path(const Form *form, const Field *field, char *out, size_t size)
{
    if (field->group < 0) {
        snprintf(out, size, "%s", field->path);
        return;
    }
    int number = 0;
    for (int line = 0; line < field->line; line++)
        if (!form_line_empty(form, field->group, line))
            number++;
    snprintf(out, size, "%s[%d].%s", form->groups[field->group].path, number, field->path);
}

static bool ends_with(const char *text, const char *end)
{
    size_t length = strlen(text), tail = strlen(end);
    if (tail == 0 || tail > length || strcmp(text + length - tail, end) != 0)
        return false;
    return tail == length || text[length - tail - 1] == '.';
}

/* The field that `place` names: itself, the list whose item it is ("avoid" for "stock[0].avoid[2]"), or the first part
 * of it ("sheet.width" for "bill.sheet"); -1: none. */
static int blamed_field(const Form *form, const char *place)
{
    char list[ERR_PLACE_MAX], path[160];
    snprintf(list, sizeof list, "%s", place);
    char *item = strrchr(list, '[');
    if (item != NULL && item[strcspn(item, "]")] == ']' && item[strcspn(item, "]") + 1] == '\0')
        *item = '\0';
    for (int look = 0; look < 3; look++)
        for (int i = 0; i < form->count; i++) {
            field_path(form, &form->fields[i], path, sizeof path);
            if (look == 2)
                path[strcspn(path, ".")] = '\0';
            if (ends_with(look == 1 ? list : place, path))
                return i;
        }
    return -1;
}

static void show_refusal(Form *form, const Err *err)
{
    int index = blamed_field(form, err->place);
    if (index < 0) {
        snprintf(form->refused, sizeof form->refused, "%s", err->text);
        return;
    }
    form->fields[index].bad = true;
    snprintf(form->fields[index].says, sizeof form->fields[index].says, "%.239s", err->text);
    form->focus = index;
    form->came = true;
}

static bool take_form(App *app, Form *form)
{
    for (int i = 0; i < form->count; i++) /* what was refused may be mended by another field */
        field_judge(&form->fields[i], form->units);
    judge_lines(form);
    int bad = 0, first = 0;
    for (int i = form->count - 1; i >= 0; i--)
        if (form->fields[i].bad) {
            bad++;
            first = i;
        }
    if (bad > 0) {
        form->focus = first;
        form->came = true;
        const char *label = form->fields[first].label;
        if (bad == 1)
            app_say(app, STYLE_FAULT, "One entry is not good yet: %s.", label);
        else
            app_say(app, STYLE_FAULT, "%d entries are not good yet; the first is: %s.", bad, label);
        return false;
    }
    Err err = {0};
    form->version = app->document != NULL ? document_version(app->document) : 0;
    if (form->take(app, form, &err)) {
        layers_remove(&app->layers, form); /* it may have laid something over itself */
        return true;
    }
    show_refusal(form, &err);
    return false;
}

static void form_finish(void *state)
{
    Form *form = state;
    arena_free(form->arena);
    free(form->fields);
    free(form);
}

static void replace_typed(Form *form, bool text)
{
    Field *field = &form->fields[form->focus];
    if (form->came && text && !field->bad && field->kind != FIELD_CHOICE)
        field_set(field, "", form->units);
}

static bool form_key(App *app, void *state, Key key)
{
    Form *form = state;
    if (key == PRESS_ENTER && form->focus == form->count) {
        take_form(app, form); /* the form may be gone */
        return true;
    }
    if (key == PRESS_ENTER) {
        form->focus++;
        form->came = true;
        return true;
    }
    if (form->focus == form->count)
        return key_is_text(key);
    Field *field = &form->fields[form->focus];
    char before[FIELD_BYTES];
    memcpy(before, field->text, sizeof before);
    replace_typed(form, key_is_text(key));
    if (!field_key(field, key, form->units))
        return false;
    form->came = false;
    if (strcmp(before, field->text) != 0)
        note_change(form);
    else if (field->kind == FIELD_CHOICE && key_is_text(key) && !field_chooses(field, key))
        app_say(app, STYLE_CAUTION, "No word to choose from begins so; the left and right arrows go through them.");
    return true;
}

static void form_paste(App *app, void *state, const char *text)
{
    Form *form = state;
    if (form->focus < form->count)
        replace_typed(form, true);
    form->came = false;
    if (form->focus == form->count || form->fields[form->focus].kind == FIELD_CHOICE)
        app_say(app, STYLE_CAUTION, "What was pasted is left out: text goes only into a field.");
    else if (!field_paste(&form->fields[form->focus], text, form->units))
        app_say(app, STYLE_CAUTION, "What was pasted did not fit whole.");
    note_change(form);
}

static void form_step(App *app, void *state, int by)
{
    (void)app;
    Form *form = state;
    int stations = form->count + 1;
    form->focus = (form->focus + by + stations) % stations;
    form->came = true;
}

static void answer_drop(App *app, int choice)
{
    if (choice == 0)
        form_take_top(app);
    else if (choice == 1)
        layers_pop(&app->layers);
}

static bool form_back(App *app, void *state)
{
    const Form *form = state;
    if (!form->changed)
        return true;
    static const Choice choices[] = {{'t', "take what the form says"}, {'d', "drop it"}, {'s', "stay in the form"}};
    question_ask(app, form->title, "Something was typed into this form and has not been taken yet.", choices, 3,
                 answer_drop);
    return false;
}

static unsigned form_place(const App *app, const void *state)
{
    (void)app;
    const Form *form = state;
    if (form->focus == form->count)
        return PLACE_FORM;
    FieldKind kind = form->fields[form->focus].kind;
    return PLACE_FORM | (kind == FIELD_CHOICE ? PLACE_CHOICE : kind == FIELD_NAME ? PLACE_NAME : 0u);
}

static void draw(App *app, void *state, Grid *grid, Rect area)
{
    (void)app;
    form_draw(state, grid, area);
}

static const View form_view = {
    .place = form_place,
    .draw = draw,
    .key = form_key,
    .step = form_step,
    .paste = form_paste,
    .back = form_back,
    .finish = form_finish,
};

void form_open(App *app, Form *form)
{
    layers_push(&app->layers, &form_view, form);
}

bool form_take_top(App *app)
{
    const Layer *top = layers_top(&app->layers);
    return top->view != &form_view || take_form(app, top->state);
}

void form_type(App *app, Key key)
{
    form_key(app, layers_state(&app->layers, &form_view), key);
}

void form_next_name(App *app)
{
    Form *form = layers_state(&app->layers, &form_view);
    field_next_name(&form->fields[form->focus], form->units);
    form->came = false;
    note_change(form);
}
