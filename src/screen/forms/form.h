/*
 * A form: fields under one another, some of them in lines of several that grow (marks along a floor). A blank line is
 * always there at the end of such a group: what is typed into it is a new line, a line whose fields are all emptied is
 * gone. Enter goes on, and on the last line takes the form; what is bad is kept and said beside it. Esc asks before it
 * drops what was typed. The form knows nothing of what it is about: `take` does.
 */
#ifndef SCREEN_FORMS_FORM_H
#define SCREEN_FORMS_FORM_H

#include "screen/app/app.h"
#include "screen/forms/field.h"

enum { FORM_GROUPS_MOST = 6, FORM_COLUMNS_MOST = 3 };

typedef struct Form Form;

/* Takes what the fields say (all are good) into the document; false with `err` filled where it is refused: the field
 * whose path ends err->place is shown bad with err->text beside it; else the first that stands for an item, or for a
 * part, of what is named there. */
typedef bool FormTake(App *app, const Form *form, Err *err);

typedef struct FormGroup {
    const char *label;
    const char *path; /* "floor" of "floor[2].at" */
    int columns;
    Field blank[FORM_COLUMNS_MOST]; /* what a new line is made of */
    int lines;                      /* the blank one counted */
} FormGroup;

struct Form {
    Arena *arena; /* for words that its fields show */
    char title[120];
    Units units;
    uint32_t id;      /* of the thing that the form is about; 0: a new one */
    uint32_t after;   /* where a new thing goes */
    const char *path; /* a file that the form is about; outlives the form */
    FormTake *take;
    int units_field; /* the choice that says what bare numbers are in: inches, millimetres; -1: `units` stands */
    Field *fields;
    int count, room;
    FormGroup groups[FORM_GROUPS_MOST];
    int group_count;
    int focus; /* index into fields; `count`: the line that takes the form */
    int top;   /* first line shown */
    bool came; /* the focus has just come to the field: what is typed replaces a good value, an arrow edits it */
    bool changed;
    uint64_t version;           /* of the document that it is taken into */
    char refused[ERR_TEXT_MAX]; /* what no field is to blame for */
};

Form *form_new(const char *title, Units units, uint32_t id, FormTake *take);

/* Each adds a field at the end and returns its index. `empty` says what leaving it empty means; NULL: it may not be. */
int form_length(Form *form, const char *label, const char *path, const char *empty);
int form_field(Form *form, FieldKind kind, const char *label, const char *path, const char *empty);
int form_choice(Form *form, const char *label, const char *path, const char *const *choices, int count, int choice);
/* Fills in a usual value, one for inches and one for millimeters, which goes with the units until another is typed. */
void form_usual(Form *form, int field, const char *inches, const char *millimeters);
/* One of some names, typed. `notes`, one beside each name, may be NULL. */
int form_name(Form *form, const char *label, const char *path, const char *const *names, const char *const *notes,
              int count, const char *empty);

/* A group of lines; its columns are lengths or text. Returns the group's number. Add its lines before any field that
 * follows. */
int form_group(Form *form, const char *label, const char *path, int columns, const char *const *labels,
               const char *const *paths, const FieldKind *kinds);
/* A line of the group with what is in it: as many texts as it has columns; all "" is the blank one, which is added
 * last. */
void form_line(Form *form, int group, const char *const *texts);

/* Whether the field's line of the group has anything in it; the field of a group's line and column, NULL beyond the
 * last. */
const Field *form_cell(const Form *form, int group, int line, int column);
bool form_line_empty(const Form *form, int group, int line);

/* The fields' values. */
Length form_value(const Form *form, int field);
bool form_is_empty(const Form *form, int field);

/* Draws it in the middle of `area`, the field in focus in sight (`top` follows it), the cursor on it. */
void form_draw(Form *form, Grid *grid, Rect area);

/* Opens it; the form is freed with its layer. */
void form_open(App *app, Form *form);

/* Takes the form on top, if there is one: true where none is left open. */
bool form_take_top(App *app);

/* In the form on top: a key into the field in focus; the nearest known name into it. */
void form_type(App *app, Key key);
void form_next_name(App *app);

#endif
