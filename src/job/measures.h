/*
 * What sheets say of one piece of plank and of one course, in words: rips, slanted ends, cutouts, laps, studs. The
 * figures come from plank.h; here they are rounded, once each, and put into sentences that the row sheet and the cut
 * sheet share.
 */
#ifndef JOB_MEASURES_H
#define JOB_MEASURES_H

#include "job/job.h"
#include "job/plank.h"

/* "full width, 2 3/4"; "taper off the upper edge, 2 1/2 at the left to 1 7/8 at the right"; "scribe off the lower edge:
 * width 2 1/2 at 0, 2 3/8 at 70, 2 3/4 at 141 3/8 from the left end", breaks nearer than a marking step as one, a step
 * as "2 1/2 and then 2 at 70". */
char *measures_rip(Arena *arena, const Wall *wall, const Plank *plank);

/* Whether the plank keeps the width that its course's planks have, all along. */
bool measures_full(const Course *course, const Plank *plank);

/* "Right end slants: lower edge 46 1/2 long, upper edge 40 1/4"; NULL where both ends print square. */
char *measures_ends(Arena *arena, const Wall *wall, const Plank *plank);

/* "Left end: mitered, ...": the ends that a corner wants mitered or beveled; NULL where none is. */
char *measures_miters(Arena *arena, const Layout *layout, const Piece *piece);

/* "Shows knot hole: 15 3/4 from the left end, 62 1/4 on the face": what of its board is worth seeing; NULL where
 * nothing is. */
char *measures_shows(Arena *arena, const Layout *layout, const Piece *piece);

/* One cutout: what it is, from the left end, from which edge, what it leaves. */
char *measures_cut(Arena *arena, const Wall *wall, const Face *face, const Plank *plank, const PlankCut *cut);

/* All of its cutouts in one text, a bar between them; "" where there is none. */
char *measures_cuts(Arena *arena, const Wall *wall, const Face *face, const Plank *plank);

/* Where the ceiling cuts the lap alone; NULL where it does not. */
char *measures_laps(Arena *arena, const Wall *wall, const Plank *plank);

/* "studs 2-4", "stud 2", "no stud"; "" where the face has none. */
char *measures_studs(Arena *arena, const FaceLayout *face, const Plank *plank);

#endif
