/*
 * What each end of a piece needs: where it stands, how it is cut, what becomes of it. The geometry of corners is
 * wall.h's; this says in the trade's words what the saw is set to. It knows nothing of sheets.
 *
 *      inside butt          outside lap           outside miter        (seen from above)
 *      |  |====== met       ======|through        =====\  long point
 *      |  |  through stops      ||                     \\ at the front,
 *      |  |  at the wall        ||other                ||\  45 degrees
 */
#ifndef TRADE_CORNER_H
#define TRADE_CORNER_H

#include "fill/plan.h"
#include "layout/layout.h"

typedef enum EndPlace {
    AT_JOINT,   /* butts against the next piece of its course */
    AT_OPENING, /* stands at a cutout, or where floor or ceiling ends the segment */
    AT_CORNER,  /* stands at a corner with another face */
    AT_SIDE,    /* stands at the side of a face that meets no other */
    AT_RAKE     /* runs out under a slanted floor or ceiling */
} EndPlace;

typedef enum EndCut {
    END_SQUARE,
    END_MITER, /* half the corner through the thickness, 45 degrees where it is square; long point at the front */
    END_BEVEL, /* some degrees through the thickness: a corner that is not square in plan */
    END_SLANT  /* square through the thickness, slanted across the width: a leaning side or a rake */
} EndCut;

typedef struct PieceEnd {
    EndPlace place;
    EndCut cut;
    bool leans;      /* a miter or bevel at a side that leans: slanted across the width as well */
    bool covered;    /* a strip of trim covers it */
    bool shows;      /* its end grain is seen */
    int other;       /* AT_CORNER: the face that it meets; else -1 */
    Length shorter;  /* the back is shorter than the front by this: the thickness at a miter of 45 degrees; below 0 at a
                        bevel whose front is the shorter; else 0 */
    Length slant;    /* END_SLANT, or leans: how far the end runs along x from the lower to the upper edge; above 0: the
                        upper edge is the   farther right */
    const char *why; /* at a corner out of square: what another cut would leave; NULL: nothing to say */
    const char *text; /* "45 degree miter, long point at the front, the back 1/2 in shorter" */
} PieceEnd;

/* The two ends of a piece of the plan. */
void corner_piece_ends(Arena *arena, const Layout *layout, const Piece *piece, PieceEnd *left, PieceEnd *right);

/* Faces in the order in which they are hung, each with its reason: "hung after north, whose ends it covers". */
typedef struct CornerTurn {
    int face;
    const char *text;
} CornerTurn;

/* One for each face of the wall. */
CornerTurn *corner_turns(Arena *arena, const Wall *wall);

#endif
