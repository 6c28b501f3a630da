/*
 * One face as one sees it: as shapes for a drawn page, and as rows of characters, one a course, for a text page.
 */
#ifndef SHEET_FACE_H
#define SHEET_FACE_H

#include "job/job.h"
#include "job/places.h"
#include "sheet/drawing.h"

Drawing *drawing_of_face(Arena *arena, const Job *job, const Places *places, int face);

/* The course in `columns` characters that cover the face from its left end to its right end:
 * `|` a piece begins or ends, `-` plank (`=` in the reference course), `_` only its lower part is left, `"` only its
 * upper part, `:` a hole within it, `.` left bare, a space where nothing is hung; the number of a piece where there is
 * room. */
char *drawing_row(Arena *arena, const Job *job, const Places *places, int face, int course, int columns);

#endif
