#include "sheet/face.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "job/edge_mark.h"
#include "job/words.h"

/* ---- shapes ---- */

static Points box_points(Arena *arena, Length left, Length bottom, Length right, Length top)
{
    Points points = {0};
    *arena_push(arena, &points) = (Point){left, bottom};
    *arena_push(arena, &points) = (Point){right, bottom};
    *arena_push(arena, &points) = (Point){right, top};
    *arena_push(arena, &points) = (Point){left, top};
    return points;
}

static void add_shape(Arena *arena, Drawing *drawing, ShapeKind kind, bool closed, Points points)
{
    if (points.count > 1)
        *arena_push(arena, &drawing->shapes) = (Shape){kind, closed, points};
}

static void add_line(Arena *arena, Drawing *drawing, ShapeKind kind, Length x0, Length y0, Length x1, Length y1)
{
    Points points = {0};
    *arena_push(arena, &points) = (Point){x0, y0};
    *arena_push(arena, &points) = (Point){x1, y1};
    add_shape(arena, drawing, kind, false, points);
}

static void stretch_bounds(Box *bounds, const Points *points)
{
    for (int i = 0; i < points->count; i++) {
        const Point *p = &points->at[i];
        bounds->left = p->x < bounds->left ? p->x : bounds->left;
        bounds->right = p->x > bounds->right ? p->x : bounds->right;
        bounds->bottom = p->y < bounds->bottom ? p->y : bounds->bottom;
        bounds->top = p->y > bounds->top ? p->y : bounds->top;
    }
}

static bool beside_opening(const Slab *slab)
{
    for (int i = 0; i < slab->part_count; i++)
        if (slab->parts[i].bottom_edge == EDGE_OPENING || slab->parts[i].top_edge == EDGE_OPENING)
            return true;
    return slab->part_count == 0;
}

/* In the middle of the piece's longest stretch without a cutout, or of all of it where it has none such. */
static Label piece_label(const Course *course, const Points *outline, const char *text)
{
    Box bounds = {outline->at[0].x, outline->at[0].x, outline->at[0].y, outline->at[0].y};
    stretch_bounds(&bounds, outline);
    Length best_left = bounds.left, best = 0, left = bounds.left;
    for (int i = 0; i < course->slab_count; i++) {
        const Slab *slab = &course->slabs[i];
        Length right = slab->right < bounds.right ? slab->right : bounds.right;
        if (slab->right <= bounds.left || slab->left >= bounds.right)
            continue;
        if (beside_opening(slab)) {
            left = right;
        } else if (right - left > best) {
            best = right - left;
            best_left = left;
        }
    }
    if (best > 0) {
        bounds.left = best_left;
        bounds.right = best_left + best;
    }
    return (Label){{(bounds.left + bounds.right) / 2, (bounds.bottom + bounds.top) / 2},
                   bounds.right - bounds.left,
                   bounds.top - bounds.bottom,
                   text};
}

static void add_pieces(Arena *arena, Drawing *drawing, const Job *job, int face_index, const Course *course,
                       Place place)
{
    const FaceLayout *face = &job->layout->faces[face_index];
    for (int i = place.piece_first; i < place.piece_first + place.piece_count; i++) {
        const Piece *piece = &job->plan->pieces[i];
        const Segment *segment = &course->segments[piece->segment];
        Points outline = layout_outline(arena, face, course, piece->left, piece->right);
        add_shape(arena, drawing, course->number == 0 ? SHAPE_REFERENCE : SHAPE_PLANK, true, outline);
        Length length = length_between(piece->left - segment->left, piece->right - segment->left, job->wall->round);
        *arena_push(arena, &drawing->labels) = piece_label(
            course, &outline, words(arena, "%d: %s", piece->number, words_length(arena, job->wall, length)));
    }
    for (int i = place.bare_first; i < place.bare_first + place.bare_count; i++) {
        const Bare *bare = &job->plan->bare[i];
        add_shape(arena, drawing, SHAPE_BARE, true, layout_outline(arena, face, course, bare->left, bare->right));
    }
}

/* An opening down to the floor is drawn as far as the floor goes. */
static void add_openings(Arena *arena, Drawing *drawing, const Job *job, int face_index)
{
    const Face *face = &job->wall->faces.at[face_index];
    for (int i = 0; i < face->openings.count; i++) {
        const Opening *opening = &face->openings.at[i];
        Box box = job->layout->faces[face_index].openings[i];
        if (opening->kind == OPENING_STOVE)
            continue;
        if (box.bottom < drawing->bounds.bottom)
            box.bottom = drawing->bounds.bottom;
        add_shape(arena, drawing, SHAPE_OPENING, true, box_points(arena, box.left, box.bottom, box.right, box.top));
        *arena_push(arena, &drawing->labels) = (Label){{(box.left + box.right) / 2, (box.bottom + box.top) / 2},
                                                       box.right - box.left,
                                                       box.top - box.bottom,
                                                       words_name(arena, opening->name)};
    }
}

Drawing *drawing_of_face(Arena *arena, const Job *job, const Places *places, int face_index)
{
    const FaceLayout *face = &job->layout->faces[face_index];
    Length width = job->wall->faces.at[face_index].width;
    Drawing *drawing = arena_one(arena, Drawing);
    drawing->units = job->wall->units;
    drawing->bounds = (Box){.right = width, .bottom = face->lower.at[0].y, .top = face->upper.at[0].y};
    stretch_bounds(&drawing->bounds, &face->lower);
    stretch_bounds(&drawing->bounds, &face->upper);
    for (int i = 0; i < face->course_count; i++) {
        const Course *course = &face->courses[i];
        Box edges = {course->left, course->right, drawing->bounds.bottom, drawing->bounds.top};
        Points corners = box_points(arena, edges.left, edges.bottom, edges.right, edges.top);
        stretch_bounds(&drawing->bounds, &corners);
        add_pieces(arena, drawing, job, face_index, course, places_get(places, face_index, i));
        *arena_push(arena, &drawing->margin) = (MarginLabel){
            course->bottom, course->top,
            words(arena, "%" PRId64 ":  %s", course->number, edge_mark_words(arena, job->wall, course, false))};
    }
    add_openings(arena, drawing, job, face_index);
    for (int i = 0; i < face->studs.count; i++)
        add_line(arena, drawing, SHAPE_STUD, face->studs.at[i], drawing->bounds.bottom, face->studs.at[i],
                 drawing->bounds.top);
    add_shape(arena, drawing, SHAPE_LIMIT, false, face->lower);
    add_shape(arena, drawing, SHAPE_LIMIT, false, face->upper);
    add_line(arena, drawing, SHAPE_LEVEL, drawing->bounds.left, 0, drawing->bounds.right, 0);
    return drawing;
}

/* ---- characters ---- */

static const Slab *slab_at(const Course *course, Length x)
{
    for (int i = 0; i < course->slab_count; i++)
        if (x >= course->slabs[i].left && x < course->slabs[i].right)
            return &course->slabs[i];
    return NULL;
}

/* A character for the wood that is left at a slab of the course; what an opening takes goes before what floor and
 * ceiling do. */
static char wood_of(const Course *course, const Slab *slab)
{
    if (slab == NULL || slab->part_count == 0)
        return ' ';
    if (slab->part_count > 1)
        return ':';
    const Part *part = &slab->parts[0];
    bool lower_gone = part->bottom_edge != EDGE_BAND, upper_gone = part->top_edge != EDGE_BAND;
    if (lower_gone && upper_gone) {
        bool lower_cut = part->bottom_edge == EDGE_OPENING, upper_cut = part->top_edge == EDGE_OPENING;
        return lower_cut == upper_cut ? '-' : (lower_cut ? '"' : '_');
    }
    if (lower_gone)
        return '"';
    if (upper_gone)
        return '_';
    return course->number == 0 ? '=' : '-';
}

static int column_of(Length x, Length width, int columns)
{
    int column = (int)wide_floor((Wide)x * columns, width);
    return column < 0 ? 0 : (column >= columns ? columns - 1 : column);
}

/* One course as it is filled in. `cut` is the character of a column that an opening takes something of, else 0. */
typedef struct TextRow {
    Length width;
    int columns;
    char *shown, *cut;
} TextRow;

/* Between the ends of a piece, `left` and `right`, the cutouts that are narrower than a column and lie off its middle,
 * or under an end: each in the column nearest to it. */
static void put_narrow_cutouts(TextRow *row, const Course *course, const Piece *piece, int left, int right)
{
    for (int i = 0; i < course->slab_count && right - left > 1; i++) {
        const Slab *slab = &course->slabs[i];
        if (slab->left >= piece->right || slab->right <= piece->left || !beside_opening(slab))
            continue;
        int from = column_of(slab->left, row->width, row->columns);
        int to = column_of(slab->right, row->width, row->columns);
        bool seen = false;
        for (int k = from > left ? from : left + 1; k <= to && k < right; k++)
            seen |= row->cut[k] != 0;
        if (seen)
            continue;
        int at = column_of((slab->left + slab->right) / 2, row->width, row->columns);
        at = at <= left ? left + 1 : (at >= right ? right - 1 : at);
        row->shown[at] = row->cut[at] = wood_of(course, slab);
    }
}

/* The number in the middle of the longest stretch of the piece over which the openings take the same of it. */
static void put_number(TextRow *row, int number, int left, int right)
{
    char text[16];
    int length = snprintf(text, sizeof text, " %d ", number);
    int best = 0, best_end = 0;
    for (int i = left + 1, run = 0; i < right; i++) {
        run = i > left + 1 && row->cut[i] == row->cut[i - 1] ? run + 1 : 1;
        if (run > best) {
            best = run;
            best_end = i + 1;
        }
    }
    int at = best_end - best + (best - length) / 2;
    bool among_cutouts = best > 0 && row->cut[at] != 0; /* of which some has to stay in sight */
    if (best < length + (among_cutouts ? 2 : 0) || right - left - 1 < length + 2)
        return;
    for (int i = 0; i < length; i++)
        if (strchr("-=_\"", row->shown[at + i]) == NULL)
            return;
    memcpy(row->shown + at, text, (size_t)length);
}

static void put_piece(TextRow *row, const Course *course, const Piece *piece)
{
    int left = column_of(piece->left, row->width, row->columns);
    int right = column_of(piece->right, row->width, row->columns);
    row->shown[left] = '|';
    row->shown[right] = '|';
    put_narrow_cutouts(row, course, piece, left, right);
    put_number(row, piece->number, left, right);
}

char *drawing_row(Arena *arena, const Job *job, const Places *places, int face_index, int course_index, int columns)
{
    const Course *course = &job->layout->faces[face_index].courses[course_index];
    Length width = job->wall->faces.at[face_index].width;
    Place place = places_get(places, face_index, course_index);
    TextRow row = {width, columns, arena_bytes(arena, (size_t)columns + 1), arena_bytes(arena, (size_t)columns + 1)};
    for (int i = 0; i < columns; i++) {
        Length x = wide_narrow(wide_floor((Wide)width * (2 * i + 1), 2 * columns));
        const Slab *slab = slab_at(course, x);
        row.shown[i] = wood_of(course, slab);
        row.cut[i] = slab != NULL && beside_opening(slab) ? row.shown[i] : 0;
        for (int k = place.bare_first; k < place.bare_first + place.bare_count; k++)
            if (x >= job->plan->bare[k].left && x < job->plan->bare[k].right)
                row.shown[i] = '.';
    }
    for (int i = place.piece_first; i < place.piece_first + place.piece_count; i++)
        put_piece(&row, course, &job->plan->pieces[i]);
    return row.shown;
}
