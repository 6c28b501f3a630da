/*
 * Trim worked out from the wall: each run of the wall file (`trim: runs:`) becomes strips, with what to rip them to,
 * how to cut their ends, and how long they are at the long and the short point. Strips lie on the planks, so lengths
 * count backing and thickness at every corner. It cuts nothing: fill/trim does, together with what was measured by
 * hand.
 *
 *   along a ceiling: its free edge level          round an opening                outside corner, from above
 *   ~~~~~~~~~~-------___  ceiling                 \______head______/              ________
 *   |              taper |                         |              |              |_______/|  two strips bevelled to
 *   +--------------------+  level                  |leg        leg|                     / |  45 degrees along their
 *                                                                                      |__|  length
 */
#ifndef TRADE_TRIM_RUNS_H
#define TRADE_TRIM_RUNS_H

#include "layout/layout.h"
#include "wall/finding.h"

typedef enum StripEnd {
    STRIP_SQUARE,
    STRIP_ACROSS, /* 45 degrees across the width: the corner of a casing */
    STRIP_BEVEL,  /* 45 degrees through the thickness: round an outside corner */
    STRIP_PLUMB,  /* of a sloped strip: cut along a plumb line */
    STRIP_MITER,  /* halves the angle to the strip of another slope that goes on there */
    STRIP_FIT     /* of one that stands: cut to what slopes below or above it */
} StripEnd;

typedef enum StripShape {
    STRIP_STRAIGHT,
    STRIP_TAPER, /* ripped along one straight slanted line, from `least` to `most` */
    STRIP_SCRIBE /* ripped to `most`, one edge scribed to what it meets; `least` is left at the narrowest */
} StripShape;

typedef struct TrimStrip {
    int run;     /* index into wall->trim.runs */
    int face;    /* index */
    int other;   /* the face round the corner, or -1 */
    int opening; /* index on the face, or -1 */
    const char *name;
    Length thickness;
    Length least, most; /* width; to the long point where `bevelled` */
    StripShape shape;
    bool stands;                    /* upright: its ends are a lower and an upper one */
    bool at_left;                   /* of one that stands at a side of the face: the left side */
    bool bevelled;                  /* one long edge at 45 degrees, its front edge the wider */
    StripEnd start, end;            /* left and right, or lower and upper end */
    Length start_shift, end_shift;  /* how far along the strip its inner edge (free; on a strip that stands the one away
                                       from the side) begins and ends beyond the other: the slant of its ends */
    Length long_point, short_point; /* the blank it is cut from; its shorter edge. Equal where both ends are square */
    Length from,
        to; /* along the wall: x of a strip along floor or ceiling, heights of one that stands; at the long points */
    Length edge_from, edge_to; /* along floor or ceiling: height of its free edge at both */
    const char *text;          /* in words: "rip 1 1/2 to 1 11/16 in (taper); left end square, right end ..." */
} TrimStrip;

typedef struct TrimStrips {
    TrimStrip *at;
    int count;
    int room;
} TrimStrips;

/* The strips of all runs, run by run, face by face, left to right. RULE_TRIM is added to `findings` (may be NULL) where
 * a strip does not fit, covers nothing, or has nowhere to go. */
TrimStrips trim_strips(Arena *arena, const Layout *layout, Findings *findings);

/* What of its face the strip covers, slanted edges and all; for a part of a casing the whole casing, opening and all.
 */
Box trim_strip_box(const Layout *layout, const TrimStrip *strip);

/* What is to be cut from trim stock: the file's own pieces, then the strips at their long points, alike ones counted
 * together. */
TrimPieces trim_pieces(Arena *arena, const Layout *layout);

#endif
