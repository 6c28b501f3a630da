/*
 * A new wall: the sizes that it cannot do without, and those without which a plan costs boards: what the saw takes, how
 * joints are staggered, the shortest piece. The rest takes its default and is asked nowhere.
 */
#include "screen/forms/file.h"
#include "screen/forms/forms.h"
#include "wall/check.h"

enum {
    NEW_UNITS,
    NEW_WIDTH,
    NEW_DOWN,
    NEW_UP,
    NEW_PLANK,
    NEW_THICKNESS,
    NEW_REVEAL,
    NEW_START,
    NEW_KERF,
    NEW_STAGGER,
    NEW_SHORTEST,
    NEW_BOARD,
    NEW_COUNT
};

static void make_face(const Form *form, Arena *arena, Wall *wall, Units units)
{
    Face *face = arena_push(arena, &wall->faces);
    *face = (Face){.id = wall->next_id++,
                   .name = arena_text(arena, "wall", 4),
                   .width = field_length(&form->fields[NEW_WIDTH], units)};
    *arena_push(arena, &face->floor) = (Mark){.at = 0, .off = field_length(&form->fields[NEW_DOWN], units)};
    *arena_push(arena, &face->ceiling) = (Mark){.at = 0, .off = field_length(&form->fields[NEW_UP], units)};
}

/* How long and how many go together. */
static bool check_boards(const Form *form, Err *err)
{
    bool length = !field_empty(&form->fields[NEW_BOARD]), count = !field_empty(&form->fields[NEW_COUNT]);
    if (length == count)
        return true;
    int missing = length ? NEW_COUNT : NEW_BOARD;
    err_set(err, ERR_VALUE, "%s",
            length ? "say how many boards of that length there are, or empty the length"
                   : "say how long those boards are, or empty the count");
    err_at(err, form->fields[missing].path, 0, 0);
    return false;
}

static bool take_new(App *app, const Form *form, Err *err)
{
    if (!check_boards(form, err))
        return false;
    Units units = field_choice(&form->fields[NEW_UNITS]) == 1 ? UNITS_MM : UNITS_IN;
    Arena *arena = arena_new();
    Wall *wall = wall_new(arena, units);
    *arena_push(arena, &wall->planks.widths) = field_length(&form->fields[NEW_PLANK], units);
    wall->planks.thickness = field_length(&form->fields[NEW_THICKNESS], units);
    wall->planks.reveal = field_length(&form->fields[NEW_REVEAL], units);
    wall->start = field_length(&form->fields[NEW_START], units);
    wall->saw.kerf = field_length(&form->fields[NEW_KERF], units);
    wall->joints.stagger = field_length(&form->fields[NEW_STAGGER], units);
    wall->joints.shortest = field_length(&form->fields[NEW_SHORTEST], units);
    make_face(form, arena, wall, units);
    if (!field_empty(&form->fields[NEW_BOARD])) {
        Stock *stock = arena_push(arena, &wall->stock);
        *stock = (Stock){.id = wall->next_id++,
                         .label = arena_text(arena, "", 0),
                         .tone = arena_text(arena, "", 0),
                         .length = field_length(&form->fields[NEW_BOARD], units),
                         .count = field_count(&form->fields[NEW_COUNT])};
    }
    Problems problems = wall_check(arena, wall);
    bool done = problems.count == 0;
    if (!done) {
        err_set(err, ERR_VALUE, "%s", problems.at[0].text);
        err_at(err, problems.at[0].path, 0, 0);
    } else {
        done = file_begin(app, form->path, wall, err);
    }
    arena_free(arena);
    return done;
}

void forms_new(App *app, const char *path)
{
    static const char *const units[] = {"inches", "millimetres"};
    Form *form =
        form_new("A new wall: heights are measured from a level line struck round the job", UNITS_IN, 0, take_new);
    form->path = path;
    form->units_field = form_choice(form, "Bare numbers are in", "units", units, 2, 0);
    form_length(form, "Width of the wall", "faces[0].width", NULL);
    form_length(form, "Down to the floor", "floor[0].down", NULL);
    form_length(form, "Up to the ceiling", "ceiling[0].up", NULL);
    form_length(form, "Plank width, ripped", "planks.width", NULL);
    form_length(form, "Plank thickness", "planks.thickness", NULL);
    form_length(form, "Reveal between them", "planks.reveal", "none: courses touch");
    form_length(form, "First course, up", "start", "its lower edge on the level line");
    /* Common practice: a blade of 1/8 in, joints a hand's span apart, and no piece that one stud alone could hold. */
    form_usual(form, form_length(form, "Saw cut, its width", "saw.kerf", "nothing: measure a cut"), "1/8", "3");
    form_usual(form, form_length(form, "Joints above, apart", "joints.stagger", "they may stand over each other"), "6",
               "150");
    form_usual(form, form_length(form, "Shortest piece", "joints.shortest", "any length"), "12", "300");
    form_length(form, "Boards: length", "stock[0].length", "none yet; t counts uneven ones");
    form_field(form, FIELD_COUNT, "Boards: how many", "stock[0].count", "no boards yet");
    form_open(app, form);
}
