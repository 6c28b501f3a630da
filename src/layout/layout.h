/*
 * From the document to courses: bands, tapers, segments, cutouts. A pure function: the same wall gives the same layout,
 * byte for byte, on every machine; no clock, locale, environment, global, thread or floating point. It takes a const
 * wall and returns a fresh result in one arena. It knows nothing of boards and joints (the fill) nor of how anything is
 * shown.
 */
#ifndef LAYOUT_LAYOUT_H
#define LAYOUT_LAYOUT_H

#include "base/err.h"
#include "layout/courses.h"

/* Lays out `wall`, which has passed wall_check. NULL only where a limit of sizes is passed (`err`: too many courses,
 * its place the field path that makes them so many).
 */
Layout *layout_wall(Arena *arena, const Wall *wall, Err *err);

/* The same without findings' texts and for another start height; what the search for starts uses. */
Layout *layout_wall_at(Arena *arena, const Wall *wall, Length start, Err *err);

/* Where a side's line stands at a height: straight between its points (at least one), plumb beyond; at a step its lower
 * side. Rounded to the nearest nanometre. */
Length layout_side_at(const Points *side, Length y);

/* ---- questions about one piece, given by its course and its left and right end ---- */

/* Its outline, anticlockwise from the lower left corner, tapers, leaning and raked ends in it, cutouts not. */
Points layout_outline(Arena *arena, const FaceLayout *face, const Course *course, Length left, Length right);

typedef enum CutShape { CUT_HOLE, CUT_TOP, CUT_BOTTOM, CUT_LEFT, CUT_RIGHT, CUT_CORNER, CUT_EDGE } CutShape;

/* A grown opening clipped to the piece's ends and its course's band. */
typedef struct Cutout {
    int opening; /* index into the face's openings */
    CutShape shape;
    Box box;
} Cutout;

typedef struct Cutouts {
    Cutout *at;
    int count;
    int room;
} Cutouts;

const char *cut_shape_word(CutShape shape);

/* Those that take something of the piece, from left to right, then bottom to top. */
Cutouts layout_cutouts(Arena *arena, const FaceLayout *face, const Course *course, Length left, Length right);

/* Whether the wood left between the two ends hangs together in one piece. */
bool layout_whole(const Course *course, Length left, Length right);

/* Height of the outline between the ends, from its lowest point to its highest: a plank hangs level, so that this is
 * what must come out of the board. Sides that lean are not counted. */
Length layout_height(const Course *course, Length left, Length right);

/* The width of board that it needs: layout_height, and `lap` more unless its upper side is cut all along; never more
 * than the plank's own width. */
Length layout_need(const Wall *wall, const Course *course, Length left, Length right);

/* Area of the piece less its cutouts, nm2, rounded to the nearest. */
Wide layout_area(Arena *arena, const FaceLayout *face, const Course *course, Length left, Length right);

#endif
