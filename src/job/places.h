/*
 * Where in a plan the pieces and bare stretches of a course stand, and in which order courses are hung. An index over
 * what the plan lists in hanging order; it knows nothing of sheets.
 */
#ifndef JOB_PLACES_H
#define JOB_PLACES_H

#include "fill/plan.h"
#include "layout/layout.h"

/* Runs in plan->pieces and plan->bare. */
typedef struct Place {
    int piece_first, piece_count;
    int bare_first, bare_count;
} Place;

typedef struct Places {
    const int *face_first; /* of each face: index of its first course in `at` */
    Place *at;             /* one for each course of each face, bottom to top */
} Places;

Places places_of_plan(Arena *arena, const Layout *layout, const Plan *plan);
Place places_get(const Places *places, int face, int course);

/* The face's courses, as indices, in hanging order: 0, 1, 2, ... up, then -1, -2, ... down; upward from the lowest
 * where the wall hangs so. */
int *places_course_order(Arena *arena, const Wall *wall, const FaceLayout *face);

#endif
