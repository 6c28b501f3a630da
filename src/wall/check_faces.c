#include "wall/checking.h"

#include "wall/straight.h"

#include <stdlib.h>
#include <string.h>

/*
 *      ceiling  up  |        .------.           marks rise along their limit; two at one place are a step,
 *                   |  -----'        '------    a third has no meaning there
 *      level line --+-----------------------    0 <= x <= width; marks may lie beyond
 *      floor  down  |  ------.
 *                   |        '--------------
 */

/* ---- marks ---- */

static void check_marks(Checking *checking, const Where *face, const char *key, const char *along, const Marks *marks)
{
    char owner[CHECK_OWNER_MOST];
    char said[CHECK_VALUE_MOST];
    char before[CHECK_VALUE_MOST];
    check_owner(face, owner);
    for (int i = 0; i < marks->count; i++) {
        const Mark *mark = &marks->at[i];
        const Where *where = WHERE_ITEM(face, key, i);
        if (!check_length(checking, where, "a mark", mark->at) || !check_length(checking, where, "a mark", mark->off))
            return;
        if (i > 0 && mark->at < marks->at[i - 1].at) {
            check_note(checking, where,
                       "the mark at %s on the %s%s stands behind one at %s; list them in rising order of `%s`",
                       check_say(checking, mark->at, said), key, owner,
                       check_say(checking, marks->at[i - 1].at, before), along);
            return;
        }
        if (i > 1 && mark->at == marks->at[i - 2].at) {
            check_note(checking, where, "the %s%s has three marks at %s; keep two, one for each side of the step", key,
                       owner, check_say(checking, mark->at, said));
            return;
        }
    }
}

/* Room between ceiling and floor at x, on one side of a step there; margins counted. */
static Length room_at(const Face *face, Length x, bool after)
{
    return marks_off(&face->ceiling, x, after) + marks_off(&face->floor, x, after) - face->margin.ceiling -
           face->margin.floor;
}

/* Straight between marks: the most room is at a mark, on one side of it, or at an end. */
static bool has_room(const Face *face)
{
    if (room_at(face, 0, true) > 0 || room_at(face, face->width, false) > 0)
        return true;
    const Marks *both[] = {&face->floor, &face->ceiling};
    for (int i = 0; i < 2; i++)
        for (int k = 0; k < both[i]->count; k++) {
            const Length x = both[i]->at[k].at;
            if ((x > 0 && x <= face->width && room_at(face, x, false) > 0) ||
                (x >= 0 && x < face->width && room_at(face, x, true) > 0))
                return true;
        }
    return false;
}

/* How far a side leans in at y; plumb where it has no mark. */
static Length lean_at(const Marks *side, Length y, bool after)
{
    return side->count > 0 ? marks_off(side, y, after) : 0;
}

/* Whether the sides leave breadth at y, on one side of a step there; margins counted, the corners not. */
static bool broad_at(const Face *face, Length y, bool after)
{
    return face->width >
           lean_at(&face->left, y, after) + lean_at(&face->right, y, after) + face->margin.left + face->margin.right;
}

/* Straight between marks, plumb beyond: the most breadth is at a mark, on one side of it. */
static bool has_breadth(const Face *face)
{
    const Marks *both[] = {&face->left, &face->right};
    if (face->left.count == 0 && face->right.count == 0)
        return broad_at(face, 0, true);
    for (int i = 0; i < 2; i++)
        for (int k = 0; k < both[i]->count; k++) {
            const Length y = both[i]->at[k].at;
            if (broad_at(face, y, false) || broad_at(face, y, true))
                return true;
        }
    return false;
}

/* Marks that can be reckoned with: at least one, in range, in order. */
static bool marks_hold(const Marks *marks)
{
    for (int i = 0; i < marks->count; i++) {
        const Mark *mark = &marks->at[i];
        if (mark->at < -LENGTH_MOST || mark->at > LENGTH_MOST || mark->off < -LENGTH_MOST || mark->off > LENGTH_MOST ||
            (i > 0 && mark->at < mark[-1].at))
            return false;
    }
    return marks->count > 0;
}

/* As marks_hold; a side without marks is plumb. */
static bool side_holds(const Marks *side)
{
    return side->count == 0 || marks_hold(side);
}

static void check_limits(Checking *checking, const Where *where, const Face *face)
{
    char owner[CHECK_OWNER_MOST];
    check_owner(where, owner);
    if (face->floor.count == 0)
        check_note(checking, WHERE(where, "floor"),
                   "the floor%s has no mark; write one at the least, like {at: 0, down: 40}", owner);
    check_marks(checking, where, "floor", "at", &face->floor);
    if (face->ceiling.count == 0)
        check_note(checking, WHERE(where, "ceiling"),
                   "the ceiling%s has no mark; write one at the least, like {at: 0, up: 53}", owner);
    check_marks(checking, where, "ceiling", "at", &face->ceiling);
    const bool wide = face->width > 0 && face->width <= LENGTH_MOST;
    if (wide && marks_hold(&face->floor) && marks_hold(&face->ceiling) && !has_room(face))
        check_note(checking, WHERE(where, "ceiling"),
                   "the ceiling%s is nowhere above the floor, margins counted; measure `up` and `down` from the level "
                   "line",
                   owner);
    check_marks(checking, where, "left", "up", &face->left);
    check_marks(checking, where, "right", "up", &face->right);
    if (wide && side_holds(&face->left) && side_holds(&face->right) && !has_breadth(face))
        check_note(checking, WHERE(where, "right"),
                   "the right edge%s is nowhere right of its left edge, margins counted; measure both `in` from the "
                   "ends of the face",
                   owner);
}

/* ---- margin, corner, studs ---- */

static void check_margin(Checking *checking, const Where *face, const Margin *margin)
{
    const Where *where = WHERE(face, "margin");
    check_not_below(checking, WHERE(where, "floor"), "the margin along the floor", margin->floor);
    check_not_below(checking, WHERE(where, "ceiling"), "the margin along the ceiling", margin->ceiling);
    check_not_below(checking, WHERE(where, "left"), "the margin along the left side", margin->left);
    check_not_below(checking, WHERE(where, "right"), "the margin along the right side", margin->right);
}

static bool pair_is_known(const Corner *corner)
{
    switch (corner->kind) {
    case CORNER_NONE: return true;
    case CORNER_INSIDE: return corner->joint == CORNER_BUTT || corner->joint == CORNER_TRIM;
    case CORNER_OUTSIDE:
        return corner->joint == CORNER_TRIM || corner->joint == CORNER_LAP || corner->joint == CORNER_MITER;
    }
    return false;
}

static void check_corner(Checking *checking, const Where *face, int index)
{
    const Faces *faces = &checking->wall->faces;
    const Corner *corner = &faces->at[index].corner;
    const bool inside = corner->kind == CORNER_INSIDE;
    char said[CHECK_VALUE_MOST];
    char owner[CHECK_OWNER_MOST];
    if (corner->kind == CORNER_NONE)
        return;
    check_owner(face, owner);
    if (!pair_is_known(corner))
        check_note(checking, WHERE(face, "corner"), "the corner%s has a joint that an %s corner cannot have; write %s",
                   owner, inside ? "inside" : "outside", inside ? "butt or trim" : "trim, lap or miter");
    else if (llabs(corner->gap) > range_gap(checking->wall->units))
        check_note(
            checking, WHERE(WHERE(face, "corner"), "gap"),
            "the corner%s stands off a 3-4-5 square by %s, more than a fifth of its arm; measure the gap at the 4 ft "
            "(1.2 m) arm, up to %s either way",
            owner, check_say(checking, corner->gap, said), checking->wall->units == UNITS_IN ? "9.6 in" : "240 mm");
    else if (index == faces->count - 1 && faces->count < 3)
        check_note(checking, WHERE(face, "corner"),
                   "the corner%s has no next face to meet: it is the last, and only the last of three or more meets "
                   "the first; "
                   "add the next face, or take the corner out",
                   owner);
}

static void check_studs(Checking *checking, const Where *face_where, const Face *face)
{
    const Studs *studs = &face->studs;
    const Where *where = WHERE(face_where, "studs");
    char owner[CHECK_OWNER_MOST];
    char said[CHECK_VALUE_MOST];
    if (!studs->given)
        return;
    check_owner(face_where, owner);
    if (studs->regular) {
        check_length(checking, WHERE(where, "first"), "the first stud", studs->first);
        if (check_above(checking, WHERE(where, "spacing"), "the spacing of the studs", studs->spacing) &&
            check_range(checking, WHERE(where, "spacing"), "the spacing of the studs", RANGED_STUDS, studs->spacing) &&
            face->width <= LENGTH_MOST && face->width / studs->spacing >= RANGES_STUDS_MOST)
            check_note(checking, WHERE(where, "spacing"),
                       "the spacing of the studs%s gives more than %d of them; write the distance between their "
                       "centres, or split the face",
                       owner, RANGES_STUDS_MOST);
        return;
    }
    if (studs->at.count > RANGES_STUDS_MOST)
        check_note(checking, WHERE(where, "at"), "the studs%s are more than %d; write fewer, or split the face", owner,
                   RANGES_STUDS_MOST);
    for (int i = 0; i < studs->at.count; i++) {
        const Length centre = studs->at.at[i];
        if (!check_length(checking, WHERE_ITEM(where, "at", i), "a stud", centre))
            return;
        if (i > 0 && centre <= studs->at.at[i - 1]) {
            check_note(
                checking, WHERE_ITEM(where, "at", i),
                "the stud at %s%s is no further right than the one before; list their centres from left to right",
                check_say(checking, centre, said), owner);
            return;
        }
    }
}

/* ---- openings ---- */

static void check_plate(Checking *checking, const Where *where, const Opening *opening, Length height,
                        bool height_holds)
{
    const Plate *plate = &opening->plate;
    const Where *width_where = WHERE(WHERE(where, "plate"), "width");
    const Where *height_where = WHERE(WHERE(where, "plate"), "height");
    const Length cut_width = opening->width + 2 * opening->clear;
    const Length cut_height = height + 2 * opening->clear;
    char owner[CHECK_OWNER_MOST];
    char said[CHECK_VALUE_MOST];
    check_owner(where, owner);
    if (check_above(checking, width_where, "the width of the cover plate", plate->width) && opening->width > 0 &&
        opening->clear >= 0 && plate->width < cut_width)
        check_note(checking, width_where,
                   "the cover plate%s does not cover the cut, which is %s wide with its clearance; write that or more",
                   owner, check_say(checking, cut_width, said));
    if (check_above(checking, height_where, "the height of the cover plate", plate->height) && height_holds &&
        opening->clear >= 0 && plate->height < cut_height)
        check_note(checking, height_where,
                   "the cover plate%s does not cover the cut, which is %s high with its clearance; write that or more",
                   owner, check_say(checking, cut_height, said));
}

/* True where the opening's height can be reckoned with; then it is in `height`. */
static bool check_height(Checking *checking, const Where *where, const Face *face, const Opening *opening,
                         Length *height)
{
    char owner[CHECK_OWNER_MOST];
    if (!opening->top_given) {
        *height = opening->height;
        return check_above(checking, WHERE(where, "height"), "the height", opening->height);
    }
    if (!check_length(checking, WHERE(where, "top"), "the upper edge", opening->top))
        return false;
    check_owner(where, owner);
    if (!opening->to_floor && !opening->above_given) {
        check_note(checking, WHERE(where, "top"),
                   "the upper edge%s is given, which goes with bottom: floor or above-floor; write its height", owner);
        return false;
    }
    if (!marks_hold(&face->floor))
        return false;
    *height = opening_head(face, opening) - opening_foot(face, opening);
    if (*height > 0)
        return true;
    check_note(checking, WHERE(where, "top"),
               opening->to_floor
                   ? "the upper edge%s is not above the floor there; measure `top` upward from the level line"
                   : "the upper edge%s is not above its lower edge; measure `top` upward from the level line",
               owner);
    return false;
}

/* `key` stands on an opening of another kind than the one that has it. */
static void note_kind(Checking *checking, const Where *where, const char *key, OpeningKind kind, OpeningKind wanted)
{
    char owner[CHECK_OWNER_MOST];
    check_note(checking, WHERE(where, key), "the `%s`%s stands on a %s, but only a %s has one; take it out", key,
               check_owner(where, owner), opening_kind_word(kind), opening_kind_word(wanted));
}

static void check_opening(Checking *checking, const Where *face_where, const Face *face, int index)
{
    const Opening *opening = &face->openings.at[index];
    const Where *where = &(const Where){face_where, "openings", index, "opening", opening->name};
    char owner[CHECK_OWNER_MOST];

    if (check_text(checking, WHERE(where, "name"), "the name of an opening", opening->name, true))
        for (int i = 0; i < index; i++)
            if (strcmp(face->openings.at[i].name, opening->name) == 0) {
                check_note(checking, WHERE(where, "name"),
                           "openings %d and %d%s have the same name; give this one another", i + 1, index + 1,
                           check_owner(face_where, owner));
                break;
            }
    const bool left_holds = check_length(checking, WHERE(where, "left"), "the left edge", opening->left);
    if (opening->above_given)
        check_length(checking, WHERE(where, "above-floor"), "the lower edge above the floor", opening->above);
    else if (!opening->to_floor)
        check_length(checking, WHERE(where, "bottom"), "the lower edge", opening->bottom);
    check_above(checking, WHERE(where, "width"), "the width", opening->width);
    Length height = 0;
    const bool height_holds = left_holds && check_height(checking, where, face, opening, &height);
    check_not_below(checking, WHERE(where, "clear"), "the clearance", opening->clear);
    if (opening->plate.given) {
        if (opening->kind != OPENING_BOX)
            note_kind(checking, where, "plate", opening->kind, OPENING_BOX);
        else
            check_plate(checking, where, opening, height, height_holds);
    }
    if (opening->front_given) {
        if (opening->kind != OPENING_BOX)
            note_kind(checking, where, "front", opening->kind, OPENING_BOX);
        else
            check_range(checking, WHERE(where, "front"), "the front edge", RANGED_PROUD, opening->front);
    }
    if (opening->proud_given && opening->proud < 0)
        check_not_below(checking, WHERE(where, "proud"), "what stands out of the wall", opening->proud);
    else if (opening->proud_given)
        check_range(checking, WHERE(where, "proud"), "what stands out of the wall", RANGED_PROUD, opening->proud);
    if (opening->away_given) {
        if (opening->kind != OPENING_STOVE)
            note_kind(checking, where, "away", opening->kind, OPENING_STOVE);
        else
            check_not_below(checking, WHERE(where, "away"), "the distance to the wall", opening->away);
    }
}

/* ---- faces ---- */

static void check_face(Checking *checking, int index)
{
    const Face *face = &checking->wall->faces.at[index];
    const Where *where = &(const Where){NULL, "faces", index, "face", face->name};

    if (check_text(checking, WHERE(where, "name"), "the name of a face", face->name, true)) {
        const int first = wall_face_named(checking->wall, face->name);
        if (first < index)
            check_note(checking, WHERE(where, "name"), "faces %d and %d have the same name; give this one another",
                       first + 1, index + 1);
    }
    check_above(checking, WHERE(where, "width"), "the width", face->width);
    check_limits(checking, where, face);
    check_margin(checking, where, &face->margin);
    check_corner(checking, where, index);
    if (check_not_below(checking, WHERE(where, "backing"), "the backing", face->backing))
        check_range(checking, WHERE(where, "backing"), "the backing", RANGED_BACKING, face->backing);
    check_studs(checking, where, face);
    for (int i = 0; i < face->openings.count; i++)
        check_opening(checking, where, face, i);
}

void check_faces(Checking *checking)
{
    const Faces *faces = &checking->wall->faces;
    const Where *where = WHERE(NULL, "faces");
    int openings = 0;
    if (faces->count == 0)
        check_note(checking, where,
                   "there is no face; write one at the least, with its name, width, floor and ceiling");
    for (int i = 0; i < faces->count; i++)
        openings += faces->at[i].openings.count;
    if (faces->count > WALL_FACES_MOST)
        check_note(checking, where, "there are %d faces; split the wall into files of %d at most", faces->count,
                   WALL_FACES_MOST);
    else if (openings > WALL_OPENINGS_MOST)
        check_note(checking, where, "there are %d openings; split the wall into files of %d at most", openings,
                   WALL_OPENINGS_MOST);
    else
        for (int i = 0; i < faces->count; i++)
            check_face(checking, i);
}
