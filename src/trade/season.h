/*
 * How the planks move through the year: moisture content from the air, and from it the width of a plank and the reveal
 * beside it. The equations are those of the Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-282, 2021; the same
 * in FPL-GTR-190, 2010): eq. 4-5 for the moisture content that wood comes to in air, eq. 13-2 and 13-3 for the change
 * of size. This is the one place with floating point in what a length comes from: nothing is rounded on the way, each
 * result once. A board scatters round these means; the handbook says so itself.
 */
#ifndef TRADE_SEASON_H
#define TRADE_SEASON_H

#include "layout/layout.h"
#include "wall/finding.h"
#include "wall/species.h"
#include "wall/wall.h"

/* Moisture content, percent, that wood comes to in this air (eq. 4-5), by the coefficients of the unit that the
 * temperature is written in. The air is within the ranges that wall_check allows. */
double season_moisture(const Air *air);

/* By how much a piece of `size` grows (below 0: shrinks) from moisture content `from` to `to`, percent: eq. 13-2 where
 * both lie within 6 to 14 %, else eq. 13-3 with the table's green to ovendry shrinkage or, where it has none, the S
 * that gives C; its 30 is what C was reckoned from (`green`). Rises with `to`, also where the one equation takes over
 * from the other. In the unit of `size`. */
double season_change(const Species *species, Grain grain, double size, double from, double to);

/* One time of the year. */
typedef struct Season {
    int64_t moisture; /* hundredths of a percent, rounded once */
    Length change;    /* of the widest plank, against what it was when hung: above 0 it has grown */
    Length reveal;    /* what is left between two planks held at their middles; never below 0 */
    Length closes;    /* how much the planks want beyond the reveal; 0 where they have room */
} Season;

typedef struct Seasons {
    bool given; /* the wall says of what wood it is, and the table has it; else nothing else is set */
    const Species *species;
    Season hung, dry, damp;
} Seasons;

Seasons season_of_wall(const Wall *wall);

/* What the wood of one face as a whole does: the planks from lowest to highest added up where that is most. */
typedef struct SeasonFace {
    Length wood; /* width of all courses' planks on it, one above the other, as hung */
    Length dry;  /* what that grows to the dry and the damp season; below 0: shrinks */
    Length damp;
} SeasonFace;

/* One for each face of the layout; none (NULL) where seasons are not given. */
SeasonFace *season_faces(Arena *arena, const Layout *layout);

/* RULE_SEASON: the reveal would close, with the spacer that would do; the seasons stand the wrong way round. */
void season_findings(Arena *arena, const Layout *layout, Findings *findings);

#endif
