/*
 * A drawing to scale, as shapes in wall coordinates (nanometres, y upward): what the PDF and SVG writers draw. It knows
 * nothing of paper, scale or type; the writer fits it to its page and says to which scale.
 */
#ifndef SHEET_DRAWING_H
#define SHEET_DRAWING_H

#include "layout/layout.h"

typedef enum ShapeKind {
    SHAPE_PLANK,     /* a piece: outline, light fill by tone */
    SHAPE_REFERENCE, /* a piece of the reference course: outline, darker fill */
    SHAPE_OPENING,   /* a grown opening: white with a thin cross */
    SHAPE_BARE,      /* nothing hangs here: hatched */
    SHAPE_LIMIT,     /* floor, ceiling, sides: a thick line, open */
    SHAPE_LEVEL,     /* the level line: dashed */
    SHAPE_STUD       /* a stud's centre: dotted */
} ShapeKind;

typedef struct Shape {
    ShapeKind kind;
    bool closed;
    Points points;
} Shape;

typedef struct Shapes {
    Shape *at;
    int count;
    int room;
} Shapes;

/* A text at a place; it is left out where it does not fit into `wide` by `high`. */
typedef struct Label {
    Point middle;
    Length wide, high;
    const char *text;
} Label;

typedef struct Labels {
    Label *at;
    int count;
    int room;
} Labels;

/* What stands in the margin at the left of the stretch from `bottom` to `top`. */
typedef struct MarginLabel {
    Length bottom, top;
    const char *text;
} MarginLabel;

typedef struct MarginLabels {
    MarginLabel *at;
    int count;
    int room;
} MarginLabels;

typedef struct Drawing {
    Shapes shapes; /* later ones lie over earlier ones */
    Labels labels;
    MarginLabels margin;
    Box bounds;
    Units units;
} Drawing;

#endif
