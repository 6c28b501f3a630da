#include "screen/forms/forms.h"

#include "wall/straight.h"

#include <stdio.h>
#include <string.h>

enum { FACE_FLOOR, FACE_CEILING, FACE_LEFT, FACE_RIGHT, FACE_SIDES };

/* Indices of the fields that stand alone; those of the marks move as lines are added. */
static const char *const lone_paths[] = {
    "name",         "width",       "margin.floor", "margin.ceiling", "margin.left",
    "margin.right", "corner.kind", "corner.joint", "corner.through", "corner.gap",
    "wall",         "backing",     "studs.first",  "studs.spacing",  "studs.at",
};
enum {
    FACE_NAME,
    FACE_WIDTH,
    MARGIN_FLOOR,
    MARGIN_CEILING,
    MARGIN_LEFT,
    MARGIN_RIGHT,
    CORNER_KIND_FIELD,
    CORNER_JOINT_FIELD,
    CORNER_THROUGH_FIELD,
    CORNER_GAP,
    FACE_WALL,
    FACE_BACKING,
    STUDS_FIRST,
    STUDS_SPACING,
    STUDS_AT
};

static const char *const corner_kinds[] = {"none", "inside", "outside"};
static const char *const corner_joints[] = {"butt", "trim", "lap", "miter"};
static const char *const corner_throughs[] = {"this face", "the next face"};
static const char *const face_walls[] = {"studs", "masonry", "solid wood"};

static Field *lone(const Form *form, int which)
{
    for (int i = 0; i < form->count; i++)
        if (form->fields[i].group < 0 && strcmp(form->fields[i].path, lone_paths[which]) == 0)
            return &form->fields[i];
    return &form->fields[0];
}

static Length lone_length(const Form *form, int which)
{
    return field_length(lone(form, which), form->units);
}

static Marks read_marks(const Form *form, int group, Arena *arena)
{
    Marks marks = {0};
    for (int line = 0; line < form->groups[group].lines; line++)
        if (!form_line_empty(form, group, line))
            *arena_push(arena, &marks) = (Mark){.at = field_length(form_cell(form, group, line, 0), form->units),
                                                .off = field_length(form_cell(form, group, line, 1), form->units)};
    return marks;
}

static Studs read_studs(const Form *form, Arena *arena)
{
    Studs studs = {.at = field_lengths(lone(form, STUDS_AT), arena, form->units)};
    studs.regular = studs.at.count == 0;
    studs.first = lone_length(form, STUDS_FIRST);
    studs.spacing = lone_length(form, STUDS_SPACING);
    studs.given =
        studs.at.count > 0 || !field_empty(lone(form, STUDS_FIRST)) || !field_empty(lone(form, STUDS_SPACING));
    return studs;
}

static Corner read_corner(const Form *form)
{
    return (Corner){.kind = (CornerKind)field_choice(lone(form, CORNER_KIND_FIELD)),
                    .joint = (CornerJoint)field_choice(lone(form, CORNER_JOINT_FIELD)),
                    .through = (CornerThrough)field_choice(lone(form, CORNER_THROUGH_FIELD)),
                    .gap = lone_length(form, CORNER_GAP)};
}

/* What is said of a corner that there is not would be dropped without a word. */
static bool corner_stands(const Corner *corner, const Corner *before, Err *err)
{
    if (corner->kind != CORNER_NONE || before->kind != CORNER_NONE)
        return true;
    if (corner->joint == before->joint && corner->through == before->through && corner->gap == before->gap)
        return true;
    err_set(err, ERR_VALUE,
            corner->gap != before->gap ? "a gap takes a corner: choose inside or outside first"
                                       : "a joint takes a corner: choose inside or outside first");
    return err_at(err, lone_paths[CORNER_KIND_FIELD], 0, 0);
}

static bool take_face(App *app, const Form *form, Err *err)
{
    Arena *arena = arena_new();
    char name[FIELD_BYTES];
    memcpy(name, lone(form, FACE_NAME)->text, sizeof name);
    const Wall *wall = app_wall(app);
    int index = wall_face_index(wall, form->id);
    Face face = index >= 0 ? wall->faces.at[index] : (Face){.id = 0}; /* what has no field stays as it is */
    face.name = name;
    face.width = lone_length(form, FACE_WIDTH);
    face.floor = read_marks(form, FACE_FLOOR, arena);
    face.ceiling = read_marks(form, FACE_CEILING, arena);
    face.left = read_marks(form, FACE_LEFT, arena);
    face.right = read_marks(form, FACE_RIGHT, arena);
    face.margin = (Margin){lone_length(form, MARGIN_FLOOR), lone_length(form, MARGIN_CEILING),
                           lone_length(form, MARGIN_LEFT), lone_length(form, MARGIN_RIGHT)};
    face.corner = read_corner(form);
    face.wall = (FaceWall)field_choice(lone(form, FACE_WALL));
    if (index >= 0 && !corner_stands(&face.corner, &wall->faces.at[index].corner, err)) {
        arena_free(arena);
        return false;
    }
    face.backing = lone_length(form, FACE_BACKING);
    face.studs = read_studs(form, arena);
    uint32_t id = form->id;
    bool done =
        id != 0 ? edit_face(app->document, &face, err) : edit_add_face(app->document, app->focus.face, &face, &id, err);
    arena_free(arena);
    if (done) {
        if (app->focus.face != id)
            app->focus.opening = 0;
        app->focus.face = id;
    }
    return forms_changed(app, form, done);
}

static void add_marks(Form *form, const char *label, const char *path, const char *at, const char *off,
                      const Marks *marks)
{
    static const FieldKind kinds[] = {FIELD_LENGTH, FIELD_LENGTH};
    /* the labels are the words of the file too */
    const char *words[] = {at, off};
    int group = form_group(form, label, path, 2, words, words, kinds);
    for (int i = 0; i < marks->count; i++) {
        char first[LENGTH_TEXT_MAX], second[LENGTH_TEXT_MAX];
        length_write(marks->at[i].at, form->units, first);
        length_write(marks->at[i].off, form->units, second);
        form_line(form, group, (const char *[]){first, second});
    }
    form_line(form, group, NULL);
}

static void add_length(Form *form, const char *label, int which, const char *empty, bool given, Length value)
{
    int field = form_length(form, label, lone_paths[which], empty);
    if (given)
        field_set_length(&form->fields[field], value, form->units);
}

static void add_studs(Form *form, const Studs *studs)
{
    add_length(form, "Studs: first centre", STUDS_FIRST, "not known", studs->given && studs->regular, studs->first);
    add_length(form, "Studs: spacing", STUDS_SPACING, "not known", studs->given && studs->regular, studs->spacing);
    int at = form_field(form, FIELD_LENGTHS, "or their centres", lone_paths[STUDS_AT],
                        form->units == UNITS_IN ? "evenly spaced; else 14 1/4, 30 1/4, ..."
                                                : "evenly spaced; else 360, 770, ...");
    if (studs->given && !studs->regular)
        field_set_lengths(&form->fields[at], &studs->at, form->units);
}

void forms_face(App *app, uint32_t id)
{
    const Wall *wall = app_wall(app);
    bool fresh = id == 0;
    const Face *face = &wall->faces.at[app_face_index(app)];
    Face blank = {.width = 0};
    Mark floor, ceiling;
    if (fresh) { /* it begins at the corner where the other ends: floor and ceiling are as high there */
        floor = (Mark){.at = 0, .off = marks_off(&face->floor, face->width, false)};
        ceiling = (Mark){.at = 0, .off = marks_off(&face->ceiling, face->width, false)};
        blank.floor = (Marks){.at = &floor, .count = 1};
        blank.ceiling = (Marks){.at = &ceiling, .count = 1};
        blank.margin = face->margin;
        blank.backing = face->backing;
        face = &blank;
    }
    Form *form =
        form_new(fresh ? "A new face, to the right of this one" : "Face", wall->units, fresh ? 0 : id, take_face);
    int name = form_field(form, FIELD_TEXT, "Name", lone_paths[FACE_NAME], NULL);
    add_length(form, "Width", FACE_WIDTH, NULL, !fresh, face->width);
    add_marks(form, "Floor, measured down from the level line", "floor", "at", "down", &face->floor);
    add_marks(form, "Ceiling, measured up from the level line", "ceiling", "at", "up", &face->ceiling);
    add_marks(form, "Left edge: how far in, at a height (empty: plumb)", "left", "up", "in", &face->left);
    add_marks(form, "Right edge: how far in, at a height (empty: plumb)", "right", "up", "in", &face->right);
    add_length(form, "Kept clear: floor", MARGIN_FLOOR, "nothing", true, face->margin.floor);
    add_length(form, "Kept clear: ceiling", MARGIN_CEILING, "nothing", true, face->margin.ceiling);
    add_length(form, "Kept clear: left", MARGIN_LEFT, "nothing", true, face->margin.left);
    add_length(form, "Kept clear: right", MARGIN_RIGHT, "nothing", true, face->margin.right);
    form_choice(form, "Corner to the next", lone_paths[CORNER_KIND_FIELD], corner_kinds, 3, (int)face->corner.kind);
    form_choice(form, "Its joint", lone_paths[CORNER_JOINT_FIELD], corner_joints, 4, (int)face->corner.joint);
    form_choice(form, "Runs through", lone_paths[CORNER_THROUGH_FIELD], corner_throughs, 2, (int)face->corner.through);
    add_length(form, "A 3-4-5 square stands off", CORNER_GAP, "square; else by so much at 4 ft (1.2 m)",
               face->corner.gap != 0, face->corner.gap);
    form_choice(form, "The wall is of", lone_paths[FACE_WALL], face_walls, 3, (int)face->wall);
    add_length(form, "Backing", FACE_BACKING, "none", true, face->backing);
    add_studs(form, &face->studs);
    if (!fresh)
        field_set(&form->fields[name], face->name, form->units);
    form_open(app, form);
}
