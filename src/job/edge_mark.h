/*
 * The marks of a course's own edges: which of them can be made on the wall. Where floor or ceiling cuts a course, its
 * nominal edge lies below the one or above the other, and no pencil reaches it; sheets then name the floor or the
 * ceiling in the mark's place. It knows the limits with their margins, as the layout has them, and nothing of pieces.
 */
#ifndef JOB_EDGE_MARK_H
#define JOB_EDGE_MARK_H

#include "job/job.h"

/* Whether the upper (else the lower) edge of the course lies off the wall all along: no marking step of it is left. */
bool edge_mark_off(const Wall *wall, const Course *course, bool upper);

/* "at the ceiling", "at the floor": what stands in the place of a mark that is off the wall. */
const char *edge_mark_limit(bool upper);

/* "13 7/16 up", or, where that is off the wall, edge_mark_limit. */
const char *edge_mark_words(Arena *arena, const Wall *wall, const Course *course, bool upper);

/* With a lap the board goes on behind the next course: the height of its own upper edge on the face. False without a
 * lap, and where floor or ceiling leave no whole board anywhere along the course, or cut its upper edge. */
bool edge_mark_own(const Layout *layout, int face, const Course *course, Length *height);

/* "13.4375", or edge_mark_limit: for spreadsheets. */
const char *edge_mark_decimal(Arena *arena, const Wall *wall, const Course *course, bool upper);

/* "Lower mark only from 0 to 63 1/2 along the face: the floor cuts the rest." NULL where it can be made all along or
 * nowhere. What a rake takes off is the slant of the course's ends, and no reason to say so. */
const char *edge_mark_part(Arena *arena, const Wall *wall, const Course *course, bool upper);

#endif
