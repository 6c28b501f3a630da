/*
 * One line a course, the topmost first:
 *
 *     >   0    2 1/4  |----46 3/8----+---------- window ---+-----|  full
 *     gutter: mark,      track: the face's width in cells,          rip
 *     number, lower edge  one piece after the other
 */
#include "screen/views/courses.h"

#include "base/utf8.h"
#include "screen/views/figures.h"
#include "screen/views/shape.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

enum { GUTTER = 17, RIP = 19, RIP_WIDE = 22, WIDE_FROM = 100 };

/* Cells of the column of rips: where there is room, "2 15/16 > 2 13/16 ~" and a sign behind it. */
static int rip_cells(int columns)
{
    return columns < WIDE_FROM ? RIP : RIP_WIDE;
}

typedef struct Track {
    Grid *grid;
    int x, y, cells;
    Length width; /* of the face */
} Track;

static Length x_at(const Track *track, int cell)
{
    return (Length)((Wide)track->width * (2 * cell + 1) / (2 * track->cells));
}

static int cell_of(const Track *track, Length x)
{
    Length cell = (Length)wide_floor((Wide)x * track->cells, track->width);
    return cell < 0 ? 0 : cell >= track->cells ? track->cells - 1 : (int)cell;
}

/* What is left of the course at x: a whole plank, a notched one, two strips, nothing. */
static void draw_wood(const Track *track, const Course *course, Length least)
{
    int slab_index = 0;
    for (int cell = 0; cell < track->cells; cell++) {
        Length x = x_at(track, cell);
        while (slab_index < course->slab_count && course->slabs[slab_index].right <= x)
            slab_index++;
        if (slab_index == course->slab_count || course->slabs[slab_index].left > x)
            continue;
        const Slab *slab = &course->slabs[slab_index];
        if (slab->part_count == 0)
            continue;
        Glyph glyph = GLYPH_PLANK;
        int style = style_mosaic(course->number == 0       ? INK_REFERENCE
                                 : course->number % 2 == 0 ? INK_WOOD
                                                           : INK_WOOD_DARK,
                                 INK_NONE);
        if (slab->part_count > 1)
            glyph = GLYPH_HOLE;
        else if (slab->parts[0].bottom_edge == EDGE_OPENING)
            glyph = GLYPH_PLANK_TOP;
        else if (slab->parts[0].top_edge == EDGE_OPENING)
            glyph = GLYPH_PLANK_BOTTOM;
        for (int i = 0; i < slab->part_count; i++)
            if (shape_narrow(slab, &slab->parts[i], x, least))
                style = STYLE_FAULT;
        if (glyph != GLYPH_PLANK && style != STYLE_FAULT)
            style = STYLE_ACCENT;
        grid_glyph(track->grid, track->x + cell, track->y, glyph, style);
    }
}

/* Lengths stand in the middle of their pieces where there is room; all marks are rounded from the segment's left end,
 * so they add up. */
static void draw_piece(App *app, const Track *track, const Piece *piece, const Segment *segment, bool ends)
{
    const Wall *wall = app_wall(app);
    int from = cell_of(track, piece->left), to = cell_of(track, piece->right - 1);
    char text[LENGTH_TEXT_MAX], padded[LENGTH_TEXT_MAX + 2];
    length_show(length_between(piece->left - segment->left, piece->right - segment->left, wall->round), wall->units,
                wall->round, text);
    snprintf(padded, sizeof padded, " %s ", text);
    int cells = utf8_cells(padded);
    if (to - from - 3 >= cells)
        grid_text(track->grid, track->x + from + (to - from + 1 - cells) / 2, track->y, cells,
                  piece_is_up(piece) ? STYLE_GOOD
                  : piece->cut       ? STYLE_ACCENT
                                     : STYLE_FIGURE,
                  padded);
    grid_glyph(track->grid, track->x + from, track->y, piece->left == segment->left ? GLYPH_END_LEFT : GLYPH_JOINT,
               STYLE_STRONG);
    if (ends)
        grid_glyph(track->grid, track->x + to, track->y, GLYPH_END_RIGHT, STYLE_STRONG);
}

static void draw_pieces(App *app, const Track *track, const Plan *plan, int face, int course_index,
                        const Course *course)
{
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        if (piece->face != face || piece->course != course_index)
            continue;
        const Segment *segment = &course->segments[piece->segment];
        const Piece *next = i + 1 < plan->piece_count ? &plan->pieces[i + 1] : NULL;
        bool ends = next == NULL || next->face != face || next->course != course_index || next->left != piece->right;
        draw_piece(app, track, piece, segment, ends);
    }
    for (int i = 0; i < plan->bare_count; i++) {
        const Bare *bare = &plan->bare[i];
        if (bare->face != face || bare->course != course_index)
            continue;
        for (int cell = cell_of(track, bare->left); cell <= cell_of(track, bare->right - 1); cell++)
            grid_glyph(track->grid, track->x + cell, track->y, GLYPH_BARE, STYLE_FAULT);
    }
}

/* The name of an opening stands once, on the course in the middle of it, where the opening takes the whole height. */
static void draw_names(App *app, const Track *track, const FaceLayout *layout, const Course *course)
{
    const Face *face = &app_wall(app)->faces.at[app_face_index(app)];
    int focus = app_opening_index(app);
    for (int i = 0; i < course->cut_count; i++) {
        const Cut *cut = &course->cuts[i];
        Length low, high;
        shape_reach(layout, &low, &high);
        Length bottom = cut->box.bottom > low ? cut->box.bottom : low;
        Length middle = bottom + (cut->box.top - bottom) / 2;
        int from = cell_of(track, cut->box.left), to = cell_of(track, cut->box.right - 1);
        if (cut->opening == focus)
            grid_restyle(track->grid, (Rect){track->x + from, track->y, to - from + 1, 1}, STYLE_CHOSEN);
        if (middle < course->bottom || middle >= course->top)
            continue;
        const char *name = face->openings.at[cut->opening].name;
        int cells = utf8_cells(name), room = to - from - 1;
        if (cells > room)
            cells = room;
        int x = track->x + from + (to - from + 1 - cells) / 2;
        if (cells >= 3)
            grid_text(track->grid, x, track->y, cells, cut->opening == focus ? STYLE_CHOSEN : STYLE_ACCENT, name);
        if (cut->opening == focus)
            grid_cursor(track->grid, x, track->y);
    }
}

static void draw_ends(App *app, Grid *grid, Rect row, const Course *course, Length least)
{
    char mark[LENGTH_TEXT_MAX], rip[128];
    bool here = course->number == 0;
    bool narrow = course->rip.shape != RIP_FULL && course->rip.least < least;
    int style = here ? STYLE_FIGURE : STYLE_PLAIN;
    if (here) {
        grid_glyph(grid, row.x + 1, row.y, GLYPH_HERE, STYLE_FIGURE);
        if (app->focus.opening == 0)
            grid_cursor(grid, row.x + 1, row.y);
    }
    grid_format(grid, row.x + 2, row.y, 5, style, "%4" PRId64, course->number);
    grid_text_right(grid, row.x + GUTTER - 1, row.y, 9, style, app_length(app, course->bottom, mark));
    int cells = rip_cells(row.columns);
    figures_rip_within(app, course, cells - 2, rip, sizeof rip);
    int rip_style = narrow ? STYLE_FAULT : course->rip.shape == RIP_FULL ? STYLE_DIM : STYLE_FIGURE;
    int x = row.x + row.columns - cells + 1;
    x += grid_text(grid, x, row.y, cells - 2, rip_style, rip);
    if (narrow)
        grid_text(grid, x, row.y, 1, STYLE_FAULT, "!");
}

/* The course on the first line, so that the focus stands in the middle. */
static int first_shown(App *app, const FaceLayout *face, int rows)
{
    const Wall *wall = app_wall(app);
    Length y = app->focus.sight.away ? app->focus.sight.y : wall->start;
    int opening = app_opening_index(app);
    if (opening >= 0 && !app->focus.sight.away)
        y = face->openings[opening].top;
    int middle = 0;
    while (middle + 1 < face->course_count && face->courses[middle].top <= y)
        middle++;
    int first = middle + rows / 2;
    if (first > face->course_count - 1)
        first = face->course_count - 1;
    if (first < rows - 1)
        first = rows - 1 < face->course_count - 1 ? rows - 1 : face->course_count - 1;
    return first;
}

static void draw_studs(const Track *track, const FaceLayout *face)
{
    for (int i = 0; i < face->studs.count; i++)
        grid_glyph(track->grid, track->x + cell_of(track, face->studs.at[i]), track->y, GLYPH_STUD, STYLE_LABEL);
}

void courses_draw(App *app, Grid *grid, Rect area)
{
    const Job *job = work_job(app_work(app));
    int index = app_face_index(app);
    const FaceLayout *face = &job->layout->faces[index];
    int cells = rip_cells(area.columns);
    Track track = {grid, area.x + GUTTER, area.y, area.columns - GUTTER - cells, app_wall(app)->faces.at[index].width};
    grid_cursor(grid, area.x, area.y);
    grid_text(grid, area.x + 1, area.y, GUTTER - 1, STYLE_LABEL, "course   lower");
    grid_text(grid, area.x + area.columns - cells + 1, area.y, cells - 1, STYLE_LABEL, "rip, left to right");
    if (track.cells < 4)
        return;
    draw_studs(&track, face);
    Length least = wall_least(app_wall(app));
    int rows = area.rows - 1;
    int first = first_shown(app, face, rows);
    for (int i = 0; i < rows && first - i >= 0; i++) {
        const Course *course = &face->courses[first - i];
        track.y = area.y + 1 + i;
        draw_wood(&track, course, least);
        draw_pieces(app, &track, job->plan, index, first - i, course);
        draw_names(app, &track, face, course);
        draw_ends(app, grid, (Rect){area.x, track.y, area.columns, 1}, course, least);
    }
}
