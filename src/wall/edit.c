#include "wall/edit.h"

#include "base/panic.h"
#include "base/utf8.h"
#include "wall/change.h"

#include <stdio.h>
#include <string.h>

/*
 * Each change takes a copy of the wall, changes that, and commits it under a name that can stand behind "undo: ". What
 * a user took from the wall by its number (the board of a hung piece) or name (its face) is carried along when numbers
 * and names change.
 */

/* ---- finding what an id names ---- */

static Face *face_of(Wall *wall, uint32_t id)
{
    const int index = wall_face_index(wall, id);
    return index < 0 ? NULL : &wall->faces.at[index];
}

static Opening *opening_of(Wall *wall, uint32_t id, Face **face)
{
    for (int i = 0; i < wall->faces.count; i++) {
        const int index = wall_opening_index(&wall->faces.at[i], id);
        if (index >= 0) {
            *face = &wall->faces.at[i];
            return &wall->faces.at[i].openings.at[index];
        }
    }
    return NULL;
}

/* ---- nudges ---- */

/* "raise" or "lower", "right" or "left", ...: and how far, printed to the marking step. */
static const char *shown(const Wall *wall, Length by, char out[LENGTH_TEXT_MAX])
{
    length_show_unit(by < 0 ? -by : by, wall->units, wall->round, out);
    return out;
}

bool edit_nudge_start(Document *document, Length by, Err *err)
{
    const Nudged nudged = {.kind = NUDGED_START};
    Wall *wall = document_begin(document);
    char name[STEP_NAME_MOST];
    char far[LENGTH_TEXT_MAX];
    wall->start += by;
    const Length moved = wall->start - document_before_nudges(document, nudged)->start;
    snprintf(name, sizeof name, "%s the reference course %s", moved < 0 ? "lower" : "raise", shown(wall, moved, far));
    return document_commit(document, nudged, name, err);
}

bool edit_nudge_opening(Document *document, uint32_t id, Length dx, Length dy, Err *err)
{
    const Nudged nudged = {.kind = NUDGED_OPENING, .id = id};
    Wall *wall = document_begin(document);
    Face *face = NULL;
    Face *face_before = NULL;
    Opening *opening = opening_of(wall, id, &face);
    if (opening == NULL)
        return document_refuse(err, "", "there is no such opening any more; choose one that is there");
    if (dy != 0 && opening->to_floor)
        return document_refuse(err, "", "it goes down to the floor; change its height instead");
    /* the wall before is only looked at */
    Wall before_run = *document_before_nudges(document, nudged);
    const Opening *before = opening_of(&before_run, id, &face_before);
    opening->left += dx;
    *(opening->above_given ? &opening->above : &opening->bottom) += dy;
    const Length right = before == NULL ? dx : opening->left - before->left;
    const Length up = before == NULL         ? dy
                      : opening->above_given ? opening->above - before->above
                                             : opening->bottom - before->bottom;
    char name[STEP_NAME_MOST];
    char across[LENGTH_TEXT_MAX];
    char along[LENGTH_TEXT_MAX];
    char sideways[LENGTH_TEXT_MAX + 16] = "";
    char upward[LENGTH_TEXT_MAX + 16] = "";
    if (right != 0)
        snprintf(sideways, sizeof sideways, " %s %s", shown(wall, right, across), right < 0 ? "left" : "right");
    if (up != 0)
        snprintf(upward, sizeof upward, "%s %s %s", right != 0 ? "," : "", shown(wall, up, along),
                 up < 0 ? "down" : "up");
    snprintf(name, sizeof name, "move %.*s%s%s", STEP_NAME(opening->name), sideways, upward);
    return document_commit(document, nudged, name, err);
}

/* ---- the wall as a whole ---- */

bool edit_whole(Document *document, const Wall *wall, const char *name, Err *err)
{
    *document_begin(document) = *wall;
    return document_step(document, err, "%s", name);
}

bool edit_start(Document *document, Length start, Err *err)
{
    Wall *wall = document_begin(document);
    char there[LENGTH_TEXT_MAX];
    wall->start = start;
    length_show_unit(start, wall->units, wall->round, there);
    return document_step(document, err, "set the reference course at %s", there);
}

bool edit_head(Document *document, const char *title, Units units, Length round, Err *err)
{
    Wall *wall = document_begin(document);
    const bool other_title = strcmp(title, wall->title) != 0;
    const bool other_marks = units != wall->units || round != wall->round;
    char copy[WALL_NAME_MOST + 8]; /* longer ones are refused by the check */
    snprintf(copy, sizeof copy, "%s", title);
    wall->title = copy;
    wall->units = units;
    wall->round = round;
    wall->round_given |= round != wall_default_round(units); /* once written, it stays written */
    return document_step(document, err, "%s",
                         !other_marks  ? "change the title"
                         : other_title ? "change title, units and marking"
                                       : "change units and marking");
}

bool edit_planks(Document *document, const Planks *planks, Err *err)
{
    document_begin(document)->planks = *planks;
    return document_step(document, err, "change the planks");
}

bool edit_joints(Document *document, const Joints *joints, Err *err)
{
    document_begin(document)->joints = *joints;
    return document_step(document, err, "change the joints");
}

bool edit_saw(Document *document, const Saw *saw, Err *err)
{
    document_begin(document)->saw = *saw;
    return document_step(document, err, "change the saw");
}

bool edit_fasteners(Document *document, const Fasteners *fasteners, Err *err)
{
    document_begin(document)->fasteners = *fasteners;
    return document_step(document, err, "change the fasteners");
}

bool edit_wood(Document *document, const Wood *wood, Err *err)
{
    document_begin(document)->wood = *wood;
    return document_step(document, err, "change the wood");
}

/* ---- faces ---- */

/* What hangs on a face, its pins and its bars follow when the face gets another name. */
static void rename_hung(Wall *wall, const char *from, char *to)
{
    for (int i = 0; i < wall->hung_pieces.count; i++)
        if (strcmp(wall->hung_pieces.at[i].face, from) == 0)
            wall->hung_pieces.at[i].face = to;
    for (int i = 0; i < wall->hung_edges.count; i++)
        if (strcmp(wall->hung_edges.at[i].face, from) == 0)
            wall->hung_edges.at[i].face = to;
    for (int i = 0; i < wall->joints.pins.count; i++)
        if (strcmp(wall->joints.pins.at[i].face, from) == 0)
            wall->joints.pins.at[i].face = to;
    for (int i = 0; i < wall->joints.bars.count; i++)
        if (strcmp(wall->joints.bars.at[i].face, from) == 0)
            wall->joints.bars.at[i].face = to;
}

bool edit_face(Document *document, const Face *changed, Err *err)
{
    Wall *wall = document_begin(document);
    Face *face = face_of(wall, changed->id);
    if (face == NULL)
        return document_refuse(err, "", "there is no such face any more; choose one that is there");
    const char *name_before = face->name;
    const Openings openings = face->openings;
    *face = *changed;
    face->openings = openings;
    if (face->name == NULL)
        face->name = arena_text(document_arena(document), "", 0);
    /* a name that is taken already is refused below: what hangs on the other must not be mixed with this one's */
    if (wall_face_named(wall, face->name) == (int)(face - wall->faces.at))
        rename_hung(wall, name_before, face->name);
    return document_step(document, err, "change face %.*s", STEP_NAME(face->name));
}

bool edit_add_face(Document *document, uint32_t after, const Face *added, uint32_t *id, Err *err)
{
    Wall *wall = document_begin(document);
    const int index = after == 0 ? 0 : wall_face_index(wall, after) + 1;
    if (after != 0 && index == 0)
        return document_refuse(err, "", "there is no such face any more; choose one that is there");
    Face face = *added;
    face.id = wall->next_id++;
    face.openings = (Openings){0};
    for (int i = 0; i < added->openings.count; i++) {
        Opening *opening = arena_push(document_arena(document), &face.openings);
        *opening = added->openings.at[i];
        opening->id = wall->next_id++;
    }
    PUT_IN(document, &wall->faces, index, face);
    const bool done = document_step(document, err, "add face %.*s", STEP_NAME(face.name == NULL ? "" : face.name));
    if (done && id != NULL)
        *id = face.id;
    return done;
}

/* Pins and bars go with their face. */
static void remove_pins(Wall *wall, const char *face)
{
    Joints *joints = &wall->joints;
    for (int i = joints->pins.count - 1; i >= 0; i--)
        if (strcmp(joints->pins.at[i].face, face) == 0)
            TAKE_OUT(&joints->pins, i);
    for (int i = joints->bars.count - 1; i >= 0; i--)
        if (strcmp(joints->bars.at[i].face, face) == 0)
            TAKE_OUT(&joints->bars, i);
}

static bool something_hangs_on(const Wall *wall, const char *face)
{
    for (int i = 0; i < wall->hung_pieces.count; i++)
        if (strcmp(wall->hung_pieces.at[i].face, face) == 0)
            return true;
    for (int i = 0; i < wall->hung_edges.count; i++)
        if (strcmp(wall->hung_edges.at[i].face, face) == 0)
            return true;
    return false;
}

bool edit_remove_face(Document *document, uint32_t id, Err *err)
{
    Wall *wall = document_begin(document);
    const int index = wall_face_index(wall, id);
    if (index < 0)
        return document_refuse(err, "", "there is no such face any more; choose one that is there");
    const char *name = wall->faces.at[index].name;
    if (something_hangs_on(wall, name))
        return document_refuse(err, "hung", "planks hang on this face already; take their records out first");
    const int count = wall->faces.count;
    /* the one before loses the neighbour that its corner was made with */
    if (index > 0 || count >= 3)
        wall->faces.at[(index + count - 1) % count].corner = (Corner){.kind = CORNER_NONE};
    remove_pins(wall, name);
    TAKE_OUT(&wall->faces, index);
    /* two faces are no ring any more */
    if (wall->faces.count > 0 && wall->faces.count < 3)
        wall->faces.at[wall->faces.count - 1].corner = (Corner){.kind = CORNER_NONE};
    return document_step(document, err, "remove face %.*s", STEP_NAME(name));
}

/* ---- openings ---- */

bool edit_add_opening(Document *document, uint32_t face_id, const Opening *added, uint32_t *id, Err *err)
{
    Wall *wall = document_begin(document);
    Face *face = face_of(wall, face_id);
    if (face == NULL)
        return document_refuse(err, "", "there is no such face any more; choose one that is there");
    Opening opening = *added;
    opening.id = wall->next_id++;
    PUT_IN(document, &face->openings, face->openings.count, opening);
    const bool done = document_step(document, err, "add %.*s", STEP_NAME(added->name == NULL ? "" : added->name));
    if (done && id != NULL)
        *id = opening.id;
    return done;
}

/* A run of trim that goes round openings of the name follows when the last of them gets another. */
static void rename_cased(Wall *wall, const char *from, char *to)
{
    for (int i = 0; i < wall->faces.count; i++)
        for (int k = 0; k < wall->faces.at[i].openings.count; k++)
            if (strcmp(wall->faces.at[i].openings.at[k].name, from) == 0)
                return;
    for (int i = 0; i < wall->trim.runs.count; i++)
        if (strcmp(wall->trim.runs.at[i].opening, from) == 0)
            wall->trim.runs.at[i].opening = to;
}

bool edit_opening(Document *document, const Opening *changed, Err *err)
{
    Wall *wall = document_begin(document);
    Face *face = NULL;
    Opening *opening = opening_of(wall, changed->id, &face);
    if (opening == NULL)
        return document_refuse(err, "", "there is no such opening any more; choose one that is there");
    const char *name_before = opening->name;
    BUG_UNLESS(name_before != NULL);
    *opening = *changed;
    if (opening->name == NULL)
        opening->name = arena_text(document_arena(document), "", 0);
    rename_cased(wall, name_before, opening->name);
    return document_step(document, err, "change %.*s", STEP_NAME(opening->name));
}

bool edit_remove_opening(Document *document, uint32_t id, Err *err)
{
    Wall *wall = document_begin(document);
    Face *face = NULL;
    const Opening *opening = opening_of(wall, id, &face);
    if (opening == NULL)
        return document_refuse(err, "", "there is no such opening any more; choose one that is there");
    const char *name = opening->name;
    TAKE_OUT(&face->openings, (int)(opening - face->openings.at));
    return document_step(document, err, "remove %.*s", STEP_NAME(name));
}
