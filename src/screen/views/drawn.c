/*
 * The face in true proportion. A cell is twice as high as wide, and so is a dot, a quarter of it:
 *
 *      left ─┐        dot_wide
 *            v        <-->
 *     top  > ........................   row 0 of the mosaic
 *            .   ____________       .
 *            .  |  course k  |      .   dot_high = 2 dot_wide
 *            .  |____________|      .
 *            ........................   row rows-1
 *
 * At the usual scale a course is a whole number of dots high, with an edge of course 0 between two dots: stripes are
 * even and no course is lost. Farther away a dot stands for a whole number of courses. What is thinner than a dot is
 * drawn as one where nothing else is.
 */
#include "screen/views/drawn.h"

#include "base/utf8.h"
#include "screen/term/mosaic.h"
#include "screen/views/figures.h"
#include "screen/views/shape.h"

#include <inttypes.h>

enum { GUTTER = 8, EVERY = 5 };

typedef struct Frame {
    Mosaic mosaic;
    Rect area; /* cells that the mosaic covers */
    Length dot_wide, dot_high;
    Length left; /* x of its left edge */
    Length top;  /* y of its upper edge */
    const FaceLayout *face;
    Length least;
} Frame;

static Length y_middle(const Frame *frame, int row)
{
    return frame->top - row * frame->dot_high - frame->dot_high / 2;
}

static Length x_middle(const Frame *frame, int column)
{
    return frame->left + column * frame->dot_wide + frame->dot_wide / 2;
}

static int row_at(const Frame *frame, Length y)
{
    Length rows = (Length)wide_floor(frame->top - y, frame->dot_high);
    return rows < -1 ? -1 : rows > frame->mosaic.rows ? frame->mosaic.rows : (int)rows;
}

static int column_at(const Frame *frame, Length x)
{
    Length columns = (Length)wide_floor(x - frame->left, frame->dot_wide);
    return columns < -1 ? -1 : columns > frame->mosaic.columns ? frame->mosaic.columns : (int)columns;
}

/* Dots of a course for one pitch; 0: several pitches to a dot. */
static bool fits(const Frame *frame, Length width, Length height, Length dot_high)
{
    return wide_ceiling(width, dot_high / 2 > 0 ? dot_high / 2 : 1) <= frame->mosaic.columns &&
           wide_ceiling(height, dot_high) + 1 <= frame->mosaic.rows;
}

static Length choose_scale(const Frame *frame, const Sight *sight, Length pitch, Length width, Length height)
{
    int dots = 1; /* for a course; below 1: courses for a dot, 0 for two, -1 for three */
    while (dots < 40 && fits(frame, width, height, pitch / (dots + 1)))
        dots++;
    if (sight->whole)
        while (dots > -1000 && !fits(frame, width, height, dots >= 1 ? pitch / dots : pitch * (2 - dots)))
            dots--;
    else
        dots += sight->closer;
    Length high = dots >= 1 ? pitch / dots : pitch * (2 - dots);
    return high < 2 ? 2 : high;
}

/* Where to look: whole if it fits, else round the focus, never past the ends. */
static Length first_dot(Length low, Length high, Length dot, int dots, Length middle)
{
    Length count = (Length)wide_ceiling(high - low, dot);
    if (count <= dots)
        return (Length)wide_floor(low, dot) - (dots - count) / 2;
    Length first = (Length)wide_floor(middle, dot) - dots / 2;
    Length lowest = (Length)wide_floor(low, dot), highest = (Length)wide_ceiling(high, dot) - dots;
    return first < lowest ? lowest : first > highest ? highest : first;
}

static void place_frame(App *app, Frame *frame)
{
    const Wall *wall = app_wall(app);
    const Face *face = &wall->faces.at[app_face_index(app)];
    const Sight *sight = &app->focus.sight;
    Length low, high;
    shape_reach(frame->face, &low, &high);
    Length pitch = wall_run(wall) / wall->planks.widths.count;
    frame->dot_high = choose_scale(frame, sight, pitch > 0 ? pitch : 1, face->width, high - low);
    frame->dot_wide = frame->dot_high / 2;
    Length middle_x = sight->away ? sight->x : face->width / 2, middle_y = sight->away ? sight->y : wall->start;
    int opening = app_opening_index(app);
    if (opening >= 0 && !sight->away) {
        const Box *box = &frame->face->openings[opening];
        middle_x = box->left + (box->right - box->left) / 2;
        middle_y = (box->top + (box->bottom > low ? box->bottom : low)) / 2;
    }
    frame->left = frame->dot_wide * first_dot(0, face->width, frame->dot_wide, frame->mosaic.columns, middle_x);
    if (frame->left < 0) /* all of it fits: the room is left to the right */
        frame->left = 0;
    Length start = wall->start;
    Length first = first_dot(low - start, high - start, frame->dot_high, frame->mosaic.rows, middle_y - start);
    frame->top = start + (first + frame->mosaic.rows) * frame->dot_high;
}

static Dot wood_of(int64_t number)
{
    return number == 0 ? DOT_REFERENCE : number % 2 == 0 ? DOT_WOOD : DOT_WOOD_DARK;
}

static void draw_part(Frame *frame, const Slab *slab, const Part *part, int column, Dot wood)
{
    Length x = x_middle(frame, column);
    Length bottom = shape_between(slab->left, slab->right, part->bottom_left, part->bottom_right, x);
    Length top = shape_between(slab->left, slab->right, part->top_left, part->top_right, x);
    if (top <= bottom)
        return;
    if (shape_narrow(slab, part, x, frame->least))
        wood = DOT_SLIVER;
    int drawn = 0;
    int last = row_at(frame, bottom);
    for (int row = row_at(frame, top); row <= last; row++) {
        Length y = y_middle(frame, row);
        if (y < bottom || y >= top)
            continue;
        mosaic_set(&frame->mosaic, column, row, wood);
        drawn++;
    }
    int middle = row_at(frame, bottom + (top - bottom) / 2);
    if (drawn == 0 && mosaic_get(&frame->mosaic, column, middle) == DOT_NOTHING)
        mosaic_set(&frame->mosaic, column, middle, wood);
}

static void draw_course(Frame *frame, const Course *course)
{
    if (row_at(frame, course->top) >= frame->mosaic.rows || row_at(frame, course->bottom) < 0)
        return;
    Dot wood = wood_of(course->number);
    Length y = course->bottom + (course->top - course->bottom) / 2;
    Length leftmost = layout_side_at(&frame->face->left, y), rightmost = layout_side_at(&frame->face->right, y);
    for (int i = 0; i < course->slab_count; i++) {
        const Slab *slab = &course->slabs[i];
        int first = column_at(frame, slab->left > leftmost ? slab->left : leftmost);
        int last = column_at(frame, slab->right < rightmost ? slab->right : rightmost);
        for (int column = first < 0 ? 0 : first; column <= last && column < frame->mosaic.columns; column++) {
            Length x = x_middle(frame, column);
            if (x < slab->left || x >= slab->right || x < leftmost || x > rightmost)
                continue;
            for (int p = 0; p < slab->part_count; p++)
                draw_part(frame, slab, &slab->parts[p], column, wood);
        }
    }
}

static bool is_wood(Dot dot)
{
    return dot == DOT_WOOD || dot == DOT_WOOD_DARK || dot == DOT_REFERENCE;
}

/* Puts `dot` on the course's wood from column `first` to `last`. */
static void mark_course(Frame *frame, const Course *course, int first, int last, Dot dot)
{
    int top = row_at(frame, course->top), bottom = row_at(frame, course->bottom);
    for (int row = top < 0 ? 0 : top; row <= bottom && row < frame->mosaic.rows; row++) {
        Length y = y_middle(frame, row);
        if (y < course->bottom || y >= course->top)
            continue;
        for (int column = first < 0 ? 0 : first; column <= last && column < frame->mosaic.columns; column++)
            if (is_wood(mosaic_get(&frame->mosaic, column, row)))
                mosaic_set(&frame->mosaic, column, row, dot);
    }
}

static void draw_plan(Frame *frame, const Plan *plan, int face)
{
    for (int i = 0; i + 1 < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i], *next = &plan->pieces[i + 1];
        if (piece->face != face || next->face != face || next->course != piece->course || next->left != piece->right)
            continue;
        int column = column_at(frame, piece->right);
        mark_course(frame, &frame->face->courses[piece->course], column, column, DOT_GAP);
    }
    for (int i = 0; i < plan->bare_count; i++) {
        const Bare *bare = &plan->bare[i];
        if (bare->face == face)
            mark_course(frame, &frame->face->courses[bare->course], column_at(frame, bare->left),
                        column_at(frame, bare->right - 1), DOT_BARE);
    }
}

static void draw_openings(App *app, Frame *frame, Grid *grid)
{
    const Face *face = &app_wall(app)->faces.at[app_face_index(app)];
    int focus = app_opening_index(app);
    Length low, high;
    shape_reach(frame->face, &low, &high);
    for (int i = 0; i < face->openings.count; i++) {
        Box box = frame->face->openings[i];
        if (box.bottom < low)
            box.bottom = low;
        int left = column_at(frame, box.left), right = column_at(frame, box.right);
        int top = row_at(frame, box.top), bottom = row_at(frame, box.bottom);
        if (right < 0 || left >= frame->mosaic.columns || bottom < 0 || top >= frame->mosaic.rows)
            continue;
        int cells = (right - left) / 2;
        int x = frame->area.x + (left + right) / 4, y = frame->area.y + (top + bottom) / 4;
        int style = i == focus ? STYLE_CHOSEN : STYLE_ACCENT;
        const char *name = face->openings.at[i].name;
        int length = utf8_cells(name);
        if (cells < 4) {
            grid_glyph(grid, x, y, GLYPH_BOX, style);
        } else {
            int shown = length < cells - 1 ? length : cells - 1;
            x -= shown / 2;
            grid_text(grid, x, y, shown, style, name);
        }
        if (i == focus)
            grid_cursor(grid, x, y);
    }
}

/* Where there is room to the right of the face: what each course's lower mark and rip are, or those of the cut ones
 * alone where two courses share a line. */
static void draw_marks(App *app, Frame *frame, Grid *grid)
{
    Length width = app_wall(app)->faces.at[app_face_index(app)].width;
    int x = frame->area.x + column_at(frame, width) / 2 + 2;
    int room = frame->area.x + frame->area.columns - x;
    bool each = frame->face->course_count > 1 &&
                frame->dot_high * 2 <= frame->face->courses[1].bottom - frame->face->courses[0].bottom;
    if (room < (each ? 24 : 12))
        return;
    int last = -1;
    for (int i = 0; i < frame->face->course_count; i++) {
        const Course *course = &frame->face->courses[i];
        int row = row_at(frame, course->bottom + (course->top - course->bottom) / 2);
        if (row < 0 || row >= frame->mosaic.rows || row / 2 == last || (!each && course->rip.shape == RIP_FULL))
            continue;
        last = row / 2;
        char mark[LENGTH_TEXT_MAX], rip[128];
        int at = x, y = frame->area.y + row / 2;
        if (each) {
            grid_text_right(grid, at + 10, y, 10, STYLE_LABEL, app_length(app, course->bottom, mark));
            at += 12;
        }
        bool narrow = course->rip.shape != RIP_FULL && course->rip.least < frame->least;
        int cells = frame->area.x + frame->area.columns - at;
        figures_rip_within(app, course, cells, rip, sizeof rip);
        grid_text(grid, at, y, cells,
                  narrow                          ? STYLE_FAULT
                  : course->rip.shape == RIP_FULL ? STYLE_DIM
                                                  : STYLE_FIGURE,
                  rip);
    }
}

/* Returns the line, -1 where it is out of sight. */
static int draw_number(Frame *frame, Grid *grid, const Course *course, int style, const char *sign)
{
    int row = row_at(frame, course->bottom + (course->top - course->bottom) / 2);
    if (row < 0 || row >= frame->mosaic.rows)
        return -1;
    int x = frame->area.x - GUTTER, y = frame->area.y + row / 2;
    grid_fill(grid, (Rect){x, y, GUTTER, 1}, ' ', STYLE_PLAIN);
    grid_format(grid, x + 2, y, GUTTER - 3, style, "%4" PRId64 "%s", course->number, sign);
    return y;
}

/* Course numbers, the reference course, the level line and what is too narrow, beside their rows. */
static void draw_gutter(App *app, Frame *frame, Grid *grid)
{
    int x = frame->area.x - GUTTER;
    int level = row_at(frame, 0);
    if (level >= 0 && level < frame->mosaic.rows)
        grid_text(grid, x + 1, frame->area.y + level / 2, GUTTER - 2, STYLE_DIM, "level");
    const Course *reference = NULL;
    for (int i = 0; i < frame->face->course_count; i++) {
        const Course *course = &frame->face->courses[i];
        bool narrow = course->rip.shape != RIP_FULL && course->rip.least < frame->least;
        if (course->number == 0)
            reference = course;
        else if (course->number % EVERY == 0 || narrow)
            draw_number(frame, grid, course, narrow ? STYLE_FAULT : STYLE_LABEL, narrow ? "!" : "");
    }
    if (reference == NULL)
        return;
    int y = draw_number(frame, grid, reference, STYLE_FIGURE, "");
    if (y < 0)
        return;
    grid_glyph(grid, x + 1, y, GLYPH_HERE, STYLE_FIGURE);
    if (app->focus.opening == 0)
        grid_cursor(grid, x + 1, y);
}

static void draw_studs(const Frame *frame, Grid *grid, int y)
{
    if (frame->face->studs.count == 0)
        return;
    grid_text(grid, frame->area.x - GUTTER + 1, y, GUTTER - 2, STYLE_DIM, "studs");
    for (int i = 0; i < frame->face->studs.count; i++) {
        int column = column_at(frame, frame->face->studs.at[i]);
        if (column >= 0 && column < frame->mosaic.columns)
            grid_glyph(grid, frame->area.x + column / 2, y, GLYPH_STUD, STYLE_LABEL);
    }
}

void drawn_draw(App *app, Grid *grid, Rect area)
{
    const Job *job = work_job(app_work(app));
    int index = app_face_index(app);
    Frame frame = {.area = {area.x + GUTTER, area.y, area.columns - GUTTER - 1, area.rows - 1},
                   .face = &job->layout->faces[index],
                   .least = wall_least(app_wall(app))};
    frame.mosaic = mosaic_new(frame.area.columns, frame.area.rows);
    place_frame(app, &frame);
    for (int i = 0; i < frame.face->course_count; i++)
        draw_course(&frame, &frame.face->courses[i]);
    draw_plan(&frame, job->plan, index);
    mosaic_draw(&frame.mosaic, grid, frame.area.x, frame.area.y);
    grid_cursor(grid, area.x, area.y);
    draw_gutter(app, &frame, grid);
    draw_marks(app, &frame, grid);
    draw_openings(app, &frame, grid);
    draw_studs(&frame, grid, area.y + area.rows - 1);
    mosaic_finish(&frame.mosaic);
}
