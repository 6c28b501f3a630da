/*
 * What layout finds to tell, in whole sentences. For layout.c alone; knows nothing of how courses are worked out.
 */
#ifndef LAYOUT_FINDINGS_H
#define LAYOUT_FINDINGS_H

#include "layout/bands.h"
#include "layout/strips.h"

/* Slivers of one course. */
void report_slivers(Arena *arena, Layout *layout, int face, const Course *course);

/* A course left away because it is nowhere higher than planks.leave; `height` is its greatest. */
void report_left_away(Arena *arena, Layout *layout, int face, int64_t number, Length height);

/* A measured edge that would leave its own course no height, and so does not count. */
void report_misfit(Arena *arena, Layout *layout, int face, const HungEdge *edge);

/* Measured edges that count but can hardly be meant: of a course that is nowhere on the face, or far from where its
 * planks end. */
void report_measured(Arena *arena, Layout *layout, int face, const CourseBands *bands);

/* Of the whole wall: a ceiling that is below its floor somewhere, openings that overlap or leave their face, courses
 * that cannot meet round a corner, a reference course that is nowhere. */
void report_wall(Arena *arena, Layout *layout);

#endif
