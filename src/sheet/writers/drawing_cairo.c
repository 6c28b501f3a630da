#include "sheet/writers/draw_cairo.h"

#include <math.h>
#include <stdio.h>

/*
 * A drawing fitted to its box:
 *
 *      margin labels | the wall, at 1 : scale          |
 *                    |                                 |
 *      -------------------------------------------------
 *      scale bar, the scale in words
 */
enum { MARGIN = 78, FOOT = 36, LEAST_POINTS = 5, MOST_POINTS = 11, ROW_POINTS = 8 };

typedef struct OnPage {
    double x0, y0;        /* of the point (bounds.left, bounds.bottom) on the page */
    double per_nanometre; /* points */
    const Drawing *drawing;
    int least; /* points of the smallest label */
} OnPage;

static double at_x(const OnPage *frame, Length x)
{
    return frame->x0 + (double)(x - frame->drawing->bounds.left) * frame->per_nanometre;
}

static double at_y(const OnPage *frame, Length y)
{
    return frame->y0 - (double)(y - frame->drawing->bounds.bottom) * frame->per_nanometre;
}

/* Round scales: those of 3 in, 1 1/2 in, 1 in, 3/4 in ... to the foot and some between; 1:5, 1:10, 1:20 ... in
 * millimetres. Common practice. */
static int scale_for(Units units, double least)
{
    static const int inches[] = {1, 2, 4, 8, 10, 12, 16, 20, 24, 30, 32, 40, 48, 64, 80, 96, 128, 160, 192};
    static const int metric[] = {1, 2, 5, 10, 20, 25, 50, 100, 200};
    const int *scales = units == UNITS_IN ? inches : metric;
    int count = units == UNITS_IN ? (int)(sizeof inches / sizeof *inches) : (int)(sizeof metric / sizeof *metric);
    for (int i = 0; i < count; i++)
        if (scales[i] >= least)
            return scales[i];
    int scale = units == UNITS_IN ? 384 : 500;
    while (scale < least)
        scale *= 2;
    return scale;
}

static void trace(cairo_t *cairo, const OnPage *frame, const Shape *shape)
{
    for (int i = 0; i < shape->points.count; i++)
        cairo_line_to(cairo, at_x(frame, shape->points.at[i].x), at_y(frame, shape->points.at[i].y));
    if (shape->closed)
        cairo_close_path(cairo);
}

static void fill(cairo_t *cairo, double grey)
{
    cairo_set_source_rgb(cairo, grey, grey, grey);
    cairo_fill_preserve(cairo);
    cairo_set_source_rgb(cairo, 0, 0, 0);
}

static void pen(cairo_t *cairo, double width, const double *dashes, int count)
{
    cairo_set_line_width(cairo, width);
    cairo_set_dash(cairo, dashes, count, 0);
    cairo_stroke(cairo);
    cairo_set_dash(cairo, NULL, 0, 0);
}

/* A cross over an opening, hatching over a bare stretch: inside the path, which is left as it was. */
static void mark_inside(cairo_t *cairo, ShapeKind kind)
{
    double x0, y0, x1, y1;
    cairo_path_t *path = cairo_copy_path(cairo);
    cairo_path_extents(cairo, &x0, &y0, &x1, &y1);
    cairo_save(cairo);
    cairo_clip(cairo);
    cairo_set_source_rgb(cairo, 0.55, 0.55, 0.55);
    cairo_set_line_width(cairo, 0.4);
    if (kind == SHAPE_OPENING) {
        cairo_move_to(cairo, x0, y0);
        cairo_line_to(cairo, x1, y1);
        cairo_move_to(cairo, x0, y1);
        cairo_line_to(cairo, x1, y0);
    } else {
        const int lines = (int)((x1 - x0 + y1 - y0) / 4) + 1;
        for (int i = 0; i < lines; i++) {
            const double x = x0 - (y1 - y0) + 4 * i;
            cairo_move_to(cairo, x, y1);
            cairo_line_to(cairo, x + (y1 - y0), y0);
        }
    }
    cairo_stroke(cairo);
    cairo_restore(cairo);
    cairo_append_path(cairo, path);
    cairo_path_destroy(path);
}

static void draw_shape(cairo_t *cairo, const OnPage *frame, const Shape *shape)
{
    static const double dotted[] = {0.8, 2.4}, dashed[] = {7, 3, 1.5, 3};
    trace(cairo, frame, shape);
    switch (shape->kind) {
    case SHAPE_PLANK:
        fill(cairo, 1);
        pen(cairo, 0.5, NULL, 0);
        break;
    case SHAPE_REFERENCE:
        fill(cairo, 0.86);
        pen(cairo, 0.5, NULL, 0);
        break;
    case SHAPE_OPENING:
    case SHAPE_BARE:
        fill(cairo, 1);
        mark_inside(cairo, shape->kind);
        pen(cairo, 0.9, NULL, 0);
        break;
    case SHAPE_LIMIT: pen(cairo, 1.6, NULL, 0); break;
    case SHAPE_LEVEL: pen(cairo, 0.7, dashed, 4); break;
    case SHAPE_STUD:
        cairo_set_source_rgb(cairo, 0.45, 0.45, 0.45);
        pen(cairo, 0.4, dotted, 2);
        cairo_set_source_rgb(cairo, 0, 0, 0);
        break;
    }
}

static void draw_label(Press *press, cairo_t *cairo, const OnPage *frame, const Label *label)
{
    double room = (double)label->wide * frame->per_nanometre - 4;
    double points = fmin(floor((double)label->high * frame->per_nanometre * 0.66 * 2) / 2, MOST_POINTS);
    double width, height;
    for (;; points -= 0.5) {
        if (points < frame->least)
            return;
        press_label(press, NULL, 0, 0, points, label->text, &width, &height);
        if (width <= room)
            break;
    }
    double x = at_x(frame, label->middle.x), y = at_y(frame, label->middle.y);
    double ground = fmin(height * 0.8, (double)label->high * frame->per_nanometre - 1);
    cairo_set_source_rgb(cairo, 1, 1, 1);
    cairo_rectangle(cairo, x - width / 2 - 1, y - ground / 2, width + 2, ground);
    cairo_fill(cairo);
    cairo_set_source_rgb(cairo, 0, 0, 0);
    press_label(press, cairo, x, y, points, label->text, &width, &height);
}

/* Labels of courses, as many as there is room for, from the lowest up. */
static void draw_margin(Press *press, cairo_t *cairo, const OnPage *frame, double right)
{
    double last = HUGE_VAL;
    for (int i = 0; i < frame->drawing->margin.count; i++) {
        const MarginLabel *label = &frame->drawing->margin.at[i];
        const Box *bounds = &frame->drawing->bounds;
        Length bottom = label->bottom > bounds->bottom ? label->bottom : bounds->bottom;
        Length top = label->top < bounds->top ? label->top : bounds->top;
        double y = (at_y(frame, bottom) + at_y(frame, top)) / 2;
        if (last - y < ROW_POINTS + 1)
            continue;
        double width, height;
        press_label(press, NULL, 0, 0, ROW_POINTS, label->text, &width, &height);
        press_label(press, cairo, right - width / 2, y, ROW_POINTS, label->text, &width, &height);
        last = y;
    }
}

static void draw_words(Press *press, cairo_t *cairo, double left, double y, const char *text)
{
    double width, height;
    press_label(press, NULL, 0, 0, 12, text, &width, &height);
    press_label(press, cairo, left + width / 2, y, 12, text, &width, &height);
}

/* A bar of a round length, a quarter of the page long at the most, in four parts. */
static void draw_scale(Press *press, cairo_t *cairo, const OnPage *frame, int scale, double left, double bottom,
                       double most)
{
    static const int inches[] = {4, 12, 24, 48, 96, 240, 480, 1200, 2400, 4800, 12000, 48000};
    static const int metric[] = {100, 200, 400, 1000, 2000, 4000, 10000, 20000, 40000, 100000, 400000};
    Units units = frame->drawing->units;
    const int *steps = units == UNITS_IN ? inches : metric;
    int count = units == UNITS_IN ? (int)(sizeof inches / sizeof *inches) : (int)(sizeof metric / sizeof *metric);
    double unit = (double)(units == UNITS_IN ? LENGTH_INCH : LENGTH_MM) * frame->per_nanometre;
    int whole = steps[0];
    for (int i = 1; i < count && steps[i] * unit <= most; i++)
        whole = steps[i];
    double y = bottom - 14, width, height;
    for (int i = 0; i < 4; i++) {
        cairo_rectangle(cairo, left + whole * unit * i / 4, y, whole * unit / 4, 5);
        fill(cairo, i % 2 == 0 ? 0 : 1);
        pen(cairo, 0.6, NULL, 0);
    }
    char text[160];
    for (int i = 0; i <= 4; i += 2) {
        snprintf(text, sizeof text, i == 4 ? "%d %s" : "%d", whole * i / 4, units == UNITS_IN ? "in" : "mm");
        press_label(press, cairo, left + whole * unit * i / 4, y - 6, 9, text, &width, &height);
    }
    double x = left + whole * unit + 40;
    snprintf(text, sizeof text, "Scale 1:%d when printed at its own size. Use the numbers, do not measure the drawing.",
             scale);
    draw_words(press, cairo, x, bottom - 24, text);
    draw_words(press, cairo, x, bottom - 9,
               "In each piece its number and its length; at the left the course and its lower mark.");
}

void press_drawing(Press *press, cairo_t *cairo, const Drawing *drawing, double left, double top, double width,
                   double height)
{
    const double points_per_nanometre = 72.0 / (double)LENGTH_INCH;
    double wide = (double)(drawing->bounds.right - drawing->bounds.left) * points_per_nanometre;
    double high = (double)(drawing->bounds.top - drawing->bounds.bottom) * points_per_nanometre;
    double room_wide = width - MARGIN - 4, room_high = height - FOOT - 4;
    int scale = scale_for(drawing->units, fmax(fmax(wide / room_wide, high / room_high), 1));
    OnPage frame = {.drawing = drawing, .per_nanometre = points_per_nanometre / scale, .least = LEAST_POINTS};
    frame.x0 = left + MARGIN + (room_wide - wide / scale) / 2;
    frame.y0 = top + 2 + (room_high + high / scale) / 2;
    cairo_set_line_join(cairo, CAIRO_LINE_JOIN_ROUND);
    for (int i = 0; i < drawing->shapes.count; i++)
        draw_shape(cairo, &frame, &drawing->shapes.at[i]);
    for (int i = 0; i < drawing->labels.count; i++)
        draw_label(press, cairo, &frame, &drawing->labels.at[i]);
    draw_margin(press, cairo, &frame, frame.x0 - 6);
    draw_scale(press, cairo, &frame, scale, left, top + height, width / 5);
}

double press_sketch(Press *press, cairo_t *cairo, const Drawing *drawing, double top, double width, double most)
{
    enum { RIM = 2, LEAST = 7 };
    const double wide = (double)(drawing->bounds.right - drawing->bounds.left);
    const double high = (double)(drawing->bounds.top - drawing->bounds.bottom);
    if (wide <= 0 || high <= 0)
        return 0;
    OnPage frame = {
        .drawing = drawing, .per_nanometre = fmin((width - 2 * RIM) / wide, (most - 2 * RIM) / high), .least = LEAST};
    const double height = high * frame.per_nanometre + 2 * RIM;
    if (cairo == NULL)
        return height;
    frame.x0 = (width - wide * frame.per_nanometre) / 2;
    frame.y0 = top + height - RIM;
    cairo_save(cairo);
    cairo_new_path(cairo); /* the text before left a point */
    cairo_set_line_join(cairo, CAIRO_LINE_JOIN_ROUND);
    for (int i = 0; i < drawing->shapes.count; i++)
        draw_shape(cairo, &frame, &drawing->shapes.at[i]);
    for (int i = 0; i < drawing->labels.count; i++)
        draw_label(press, cairo, &frame, &drawing->labels.at[i]);
    cairo_restore(cairo);
    return height;
}
