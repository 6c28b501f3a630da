#include "wall/wall.h"

#include "base/panic.h"
#include "base/wide.h"

#include <string.h>

/* ---- a new wall, and what follows from one ---- */

Length wall_default_round(Units units)
{
    return units == UNITS_IN ? LENGTH_INCH / 16 : LENGTH_MM;
}

Wall *wall_new(Arena *arena, Units units)
{
    Wall *wall = arena_one(arena, Wall);
    wall->title = arena_text(arena, "", 0);
    wall->wood.species = arena_text(arena, "", 0);
    wall->units = units;
    wall->round = wall_default_round(units);
    wall->next_id = 1;
    return wall;
}

Length wall_course_width(const Wall *wall, int64_t number)
{
    const int count = wall->planks.widths.count;
    BUG_UNLESS(count > 0);
    const int64_t place = number % count;
    return wall->planks.widths.at[place < 0 ? place + count : place];
}

Length wall_course_face(const Wall *wall, int64_t number)
{
    return wall_course_width(wall, number) - wall->planks.lap;
}

Wide wall_course_bottom(const Wall *wall, int64_t number)
{
    const int count = wall->planks.widths.count;
    BUG_UNLESS(count > 0);
    int64_t place = number % count;
    place += place < 0 ? count : 0;
    Wide bottom = wall->start + (Wide)wall_run(wall) * ((number - place) / count);
    for (int64_t i = 0; i < place; i++)
        bottom += wall_course_face(wall, i) + wall->planks.reveal;
    return bottom;
}

Length wall_run(const Wall *wall)
{
    Length run = 0;
    for (int i = 0; i < wall->planks.widths.count; i++)
        run += wall_course_face(wall, i) + wall->planks.reveal;
    return run;
}

Length wall_least(const Wall *wall)
{
    if (wall->planks.least_given)
        return wall->planks.least;
    Length narrowest = wall_course_face(wall, 0);
    for (int i = 1; i < wall->planks.widths.count; i++) {
        const Length face = wall_course_face(wall, i);
        if (face < narrowest)
            narrowest = face;
    }
    return wide_narrow(wide_divide(narrowest, 3));
}

Length wall_widest(const Wall *wall)
{
    Length widest = wall_course_width(wall, 0);
    for (int i = 1; i < wall->planks.widths.count; i++) {
        const Length width = wall_course_width(wall, i);
        if (width > widest)
            widest = width;
    }
    return widest;
}

bool wall_hangs_upward(const Wall *wall)
{
    return wall->planks.hang_given ? wall->planks.hang == HANG_UPWARD : wall->planks.lap > 0;
}

/* ---- boards ---- */

int wall_board_count(const Wall *wall)
{
    int count = 0;
    for (int i = 0; i < wall->stock.count; i++)
        count += wall->stock.at[i].count;
    return count;
}

const Stock *wall_board(const Wall *wall, int number)
{
    if (number < 1)
        return NULL;
    for (int i = 0; i < wall->stock.count; i++) {
        if (number <= wall->stock.at[i].count)
            return &wall->stock.at[i];
        number -= wall->stock.at[i].count;
    }
    return NULL;
}

int wall_stock_first(const Wall *wall, int stock_index)
{
    BUG_UNLESS(stock_index >= 0 && stock_index < wall->stock.count);
    int first = 1;
    for (int i = 0; i < stock_index; i++)
        first += wall->stock.at[i].count;
    return first;
}

/* ---- faces, openings, studs ---- */

int wall_face_named(const Wall *wall, const char *name)
{
    for (int i = 0; i < wall->faces.count; i++)
        if (strcmp(wall->faces.at[i].name, name) == 0)
            return i;
    return -1;
}

int wall_face_index(const Wall *wall, uint32_t id)
{
    for (int i = 0; i < wall->faces.count; i++)
        if (wall->faces.at[i].id == id)
            return i;
    return -1;
}

int wall_opening_index(const Face *face, uint32_t id)
{
    for (int i = 0; i < face->openings.count; i++)
        if (face->openings.at[i].id == id)
            return i;
    return -1;
}

LengthList wall_studs(Arena *arena, const Face *face)
{
    LengthList studs = {0};
    if (!face->studs.given)
        return studs;
    if (!face->studs.regular) {
        for (int i = 0; i < face->studs.at.count; i++) {
            const Length centre = face->studs.at.at[i];
            if (centre >= 0 && centre <= face->width)
                *arena_push(arena, &studs) = centre;
        }
        return studs;
    }
    const Length spacing = face->studs.spacing;
    BUG_UNLESS(spacing > 0);
    /* The first centre on the face: `first` may lie left of it. */
    Length centre = face->studs.first;
    if (centre < 0)
        centre += wide_narrow(wide_ceiling(-(Wide)centre, spacing)) * spacing;
    for (; centre <= face->width; centre += spacing)
        *arena_push(arena, &studs) = centre;
    return studs;
}

/* ---- corners ---- */

Corner wall_corner_right(const Wall *wall, int face_index, bool *runs_through)
{
    const int count = wall->faces.count;
    BUG_UNLESS(face_index >= 0 && face_index < count);
    Corner corner = wall->faces.at[face_index].corner;
    if (face_index == count - 1 && count < 3)
        corner.kind = CORNER_NONE;
    *runs_through = corner.kind != CORNER_NONE && corner.through == THROUGH_LEFT;
    return corner;
}

Corner wall_corner_left(const Wall *wall, int face_index, bool *runs_through)
{
    const int count = wall->faces.count;
    bool before_runs = false;
    Corner corner = {.kind = CORNER_NONE};
    BUG_UNLESS(face_index >= 0 && face_index < count);
    if (face_index > 0 || count >= 3)
        corner = wall_corner_right(wall, (face_index + count - 1) % count, &before_runs);
    *runs_through = corner.kind != CORNER_NONE && !before_runs;
    return corner;
}

/*
 * s: backing of the face that is met; t = s + thickness of the planks (datumrow(5), "Corner").
 */
static Length corner_loss(const Wall *wall, Corner corner, bool runs_through, const Face *met)
{
    const Length s = met->backing;
    const Length t = s + wall->planks.thickness;
    if (corner.kind == CORNER_NONE)
        return 0;
    switch (corner.joint) {
    case CORNER_BUTT: return runs_through ? s : t;
    case CORNER_TRIM: return corner.kind == CORNER_INSIDE ? s : 0;
    case CORNER_LAP: return runs_through ? -t : -s;
    case CORNER_MITER: return -t;
    }
    return 0;
}

Length wall_corner_loss_left(const Wall *wall, int face_index)
{
    const int count = wall->faces.count;
    bool runs_through;
    const Corner corner = wall_corner_left(wall, face_index, &runs_through);
    return corner_loss(wall, corner, runs_through, &wall->faces.at[(face_index + count - 1) % count]);
}

Length wall_corner_loss_right(const Wall *wall, int face_index)
{
    bool runs_through;
    const Corner corner = wall_corner_right(wall, face_index, &runs_through);
    return corner_loss(wall, corner, runs_through, &wall->faces.at[(face_index + 1) % wall->faces.count]);
}

/* ---- hanging order ---- */

/* The face that comes later at corner `at` and the one it waits for; -1 where neither waits: at an inside butt the face
 * that runs through comes first, at an outside lap the one whose ends are covered. */
typedef struct Wait {
    int later, earlier;
} Wait;

static Wait wait_at(const Wall *wall, int at)
{
    bool runs_through;
    const Corner corner = wall_corner_right(wall, at, &runs_through);
    const int next = (at + 1) % wall->faces.count;
    const int through = runs_through ? at : next;
    const int other = runs_through ? next : at;
    if (corner.kind == CORNER_INSIDE && corner.joint == CORNER_BUTT)
        return (Wait){other, through};
    if (corner.kind == CORNER_OUTSIDE && corner.joint == CORNER_LAP)
        return (Wait){through, other};
    return (Wait){-1, -1};
}

static bool is_mitered(const Wall *wall, int at)
{
    bool runs_through;
    const Corner corner = wall_corner_right(wall, at, &runs_through);
    return corner.kind == CORNER_OUTSIDE && corner.joint == CORNER_MITER;
}

void wall_face_groups(const Wall *wall, int *group)
{
    const int count = wall->faces.count;
    BUG_UNLESS(count <= WALL_FACES_MOST);
    for (int i = 0; i < count; i++)
        group[i] = i;
    for (int at = 0; at < count; at++) {
        if (!is_mitered(wall, at))
            continue;
        const int one = group[at], other = group[(at + 1) % count];
        const int first = one < other ? one : other;
        for (int i = 0; i < count; i++)
            group[i] = group[i] == one || group[i] == other ? first : group[i];
    }
}

/* Whether a face of the group waits for one that has no place in the order yet. */
static bool group_waits(const Wall *wall, const int *group, int which, const bool *placed)
{
    for (int at = 0; at < wall->faces.count; at++) {
        const Wait wait = wait_at(wall, at);
        if (wait.later >= 0 && group[wait.later] == which && group[wait.earlier] != which && !placed[wait.earlier])
            return true;
    }
    return false;
}

void wall_face_order(const Wall *wall, int *order)
{
    const int count = wall->faces.count;
    bool placed[WALL_FACES_MOST] = {false};
    int group[WALL_FACES_MOST];
    wall_face_groups(wall, group);
    for (int put = 0; put < count;) {
        int first_left = -1, next = -1;
        for (int face = 0; face < count && next < 0; face++) {
            if (placed[face] || group[face] != face)
                continue;
            first_left = first_left < 0 ? face : first_left;
            next = group_waits(wall, group, face, placed) ? -1 : face;
        }
        next = next < 0 ? first_left : next;
        for (int face = 0; face < count; face++)
            if (group[face] == next) {
                order[put++] = face;
                placed[face] = true;
            }
    }
}

/* ---- as built ---- */

bool hung_walk(const Wall *wall, HungWalk *walk)
{
    const int count[HUNG_KINDS] = {wall->hung_pieces.count, wall->hung_losses.count, wall->hung_edges.count};
    int least = 0;
    bool found = false;
    for (HungKind kind = HUNG_PIECE; kind < HUNG_KINDS; kind++) {
        const int i = walk->next[kind];
        if (i == count[kind])
            continue;
        const int place = kind == HUNG_PIECE  ? wall->hung_pieces.at[i].place
                          : kind == HUNG_LOSS ? wall->hung_losses.at[i].place
                                              : wall->hung_edges.at[i].place;
        if (found && place >= least)
            continue;
        walk->kind = kind;
        walk->index = i;
        least = place;
        found = true;
    }
    if (found)
        walk->next[walk->kind]++;
    return found;
}

int hung_count(const Wall *wall)
{
    return wall->hung_pieces.count + wall->hung_losses.count + wall->hung_edges.count;
}

int hung_next_place(const Wall *wall)
{
    int place = 0;
    for (int i = 0; i < wall->hung_pieces.count; i++)
        place = wall->hung_pieces.at[i].place >= place ? wall->hung_pieces.at[i].place + 1 : place;
    for (int i = 0; i < wall->hung_losses.count; i++)
        place = wall->hung_losses.at[i].place >= place ? wall->hung_losses.at[i].place + 1 : place;
    for (int i = 0; i < wall->hung_edges.count; i++)
        place = wall->hung_edges.at[i].place >= place ? wall->hung_edges.at[i].place + 1 : place;
    return place;
}

/* ---- words ---- */

static const char *const opening_words[] = {
    [OPENING_BOX] = "box",     [OPENING_WINDOW] = "window", [OPENING_DOOR] = "door", [OPENING_FIREPLACE] = "fireplace",
    [OPENING_STOVE] = "stove", [OPENING_PIPE] = "pipe",     [OPENING_VENT] = "vent", [OPENING_OTHER] = "other",
};

const char *opening_kind_word(OpeningKind kind)
{
    BUG_UNLESS((size_t)kind < sizeof opening_words / sizeof *opening_words);
    return opening_words[kind];
}

bool opening_kind_from(const char *word, OpeningKind *kind)
{
    for (size_t i = 0; i < sizeof opening_words / sizeof *opening_words; i++)
        if (strcmp(word, opening_words[i]) == 0) {
            *kind = (OpeningKind)i;
            return true;
        }
    return false;
}

bool wall_stock_usable(const Stock *stock, int records)
{
    return !(stock->gone_given && stock->gone <= records) && !(stock->found_given && stock->found > records);
}
