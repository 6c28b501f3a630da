/*
 * How far wood is from something hot, in space: planks, the backing under them and strips of trim, on the face it is
 * at and on every face that corners join to it. Faces meet at right angles, so that a box in the frame of one face is
 * a box in the frame of the next: x along it, y up, z out of its bare wall.
 *
 *          face               inside corner          outside corner
 *      z ^                     ___________| x'           z ^
 *        |   [hot]                        |                |  [hot]
 *        +------------> x      z' <--- the next one        +---------+---> z'
 *          bare wall                                                 | the next one
 *                                                                    v x'
 *
 * Distances are straight, through whatever lies between, to the nanometre and never too long.
 */
#ifndef TRADE_WOOD_NEAR_H
#define TRADE_WOOD_NEAR_H

#include "base/wide.h"
#include "layout/layout.h"
#include "trade/wood_part.h"

/* Further than any wall: a side of a body that is not known. */
#define BODY_FAR (4 * LENGTH_MOST)

/* A box in the frame of a face. */
typedef struct Body {
    Length left, right, bottom, top;
    Length back, front; /* along z */
} Body;

/* Everything of wood on each face, wall->faces.count of them. */
WoodParts *wood_of_faces(Arena *arena, const Layout *layout);

/* A face as it is reached from another, over corners to the right or to the left. */
typedef struct Reached {
    int face;
    int corners;     /* how many lie between; 0: the face itself */
    CornerKind kind; /* of the last of them */
    Body body;       /* the hot body in this face's frame */
    /* z of the first face is `from` + `sign` times x (where `along`) or z of this one */
    bool along;
    int sign;
    Length from;
} Reached;

Reached reach_start(int face, const Body *body);

/* Goes on over the corner at the right or the left side; false where none joins it. */
bool reach_next(const Wall *wall, bool to_right, Reached *reached);

/* The square of the distance from the body to the part. */
Wide wood_distance(const Reached *reached, const WoodPart *part);

/* Whether the part lies over some of the box, seen from the front. */
bool wood_covers(const WoodPart *part, const Box *box);

/* How far the part stands out of the first face's bare wall; LENGTH_MOST where it goes on as far as a side wall does.
 */
Length wood_projection(const Wall *wall, const Reached *reached, const WoodPart *part);

/* The largest whole number whose square is not above `square`. */
Length root_down(Wide square);

#endif
