/*
 * One piece of plank as a carpenter measures it at the bench: how wide to rip it along its length, how long its two
 * edges are where an end slants, where each cutout lies from its own left end and from its straight edge, which studs
 * it crosses. All of it is of the whole plank, with the part that the next course hides. It knows nothing of boards,
 * rounding or words.
 */
#ifndef JOB_PLANK_H
#define JOB_PLANK_H

#include "layout/layout.h"

/* Where the width changes its run: `at` from the plank's left end. Two at one place are a step. */
typedef struct PlankWidth {
    Length at, width;
} PlankWidth;

/* One end. `lower` and `upper` tell how far inside the plank's outermost point its lower and its upper edge end; 0 and
 * 0 is a square cut over the whole end. */
typedef struct PlankEnd {
    Length lower, upper;
    Length height; /* of the square part at the outermost point; 0 where it runs to a point */
} PlankEnd;

/* The edge that cutouts are measured from: the lower one, or the upper where the lower is ripped to a taper or a
 * scribe; where both are, the line of the course's lower mark. */
typedef enum PlankFrom { FROM_LOWER, FROM_UPPER, FROM_MARK } PlankFrom;

/* `left` and `right` from the plank's left end; `near` and `far` from the edge that cutouts are measured from, `far`
 * further from it. `below` and `above`: the strip of face that it leaves there, -1 where none. */
typedef struct PlankCut {
    int opening; /* index into the face's openings */
    CutShape shape;
    bool lap_only;                 /* it takes nothing of the face */
    bool opens_lower, opens_upper; /* it goes through that edge of the plank */
    Length left, right;
    Length near, far;
    Length below, above;
} PlankCut;

/* A stretch where floor or ceiling takes something of the lap and nothing of the face. */
typedef struct PlankLap {
    Length left, right; /* from the plank's left end */
} PlankLap;

typedef struct Plank {
    Length length;
    RipShape shape; /* of the whole plank between slanted ends */
    PlankWidth *widths;
    int width_count; /* at least two */
    bool lower_cut, upper_cut;
    PlankEnd left, right;
    PlankFrom from;
    PlankCut *cuts;
    int cut_count;
    PlankLap *laps;
    int lap_count;
    int stud_first, stud_count; /* of the face's studs, those with left <= centre <= right */
} Plank;

/* Measures the piece of `course`, one of face `face_index`, from `left` to `right`. */
Plank plank_measure(Arena *arena, const Layout *layout, int face_index, const Course *course, Length left,
                    Length right);

#endif
